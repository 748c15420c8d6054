"""What a search returns, and what it asks of a scorer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Protocol

from .mark import Mark

__all__ = ["Close", "Hit", "Scorer"]


class Close(Protocol):
    """How close a name is to a mark: at least an overall closeness in [0, 1], 1 for identical."""

    @property
    def overall(self) -> float: ...  # noqa: D102


class Scorer(Protocol):
    """Closeness with the work of one name (features) apart from the work of a pair (score)."""

    def features(self, text: str) -> Any:
        """Everything about one name that every comparison with it needs."""

    def score(self, name: Any, mark: Any) -> Close:
        """The closeness of two names by their features."""


@dataclass(frozen=True, slots=True)
class Hit:
    """A mark that is close to the name searched for, and how close."""

    mark: Mark
    closeness: Close
