"""What a search returns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from .mark import Mark

if TYPE_CHECKING:
    from ..closeness import Closeness

__all__ = ["Hit"]


@dataclass(frozen=True, slots=True)
class Hit:
    """A mark that is close to the `name` searched for; `overall` closeness in [0, 1], 1 = identical."""

    mark: Mark
    overall: float
    name: str

    @property
    def closeness(self) -> Closeness:
        """Every aspect, with reasons; worked out when asked for."""
        from ..closeness import compare

        return compare(self.name, self.mark.text)
