"""A sign in a name that not everyone may register, or that would mislead, as it is told; and what the kinds have in
common."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from ..records import dataclass
from .grounds import Ground

__all__ = ["EVOKING", "ORIGIN", "ProtectedSign", "with_law"]

ORIGIN = frozenset(("origin", "craft"))
"""Names of origin: of food, drink and other products of the land, and of crafts and industry. Of other goods they are
asked about as well, as their reputation is protected."""
EVOKING = frozenset(("EU", "GB", "CH"))
"""Laws under which a name may not evoke a protected name of origin of such goods; from memory."""


@dataclass(frozen=True, slots=True)
class ProtectedSign:
    """A sign found in a name. `serious` if it is likely to stand in the way for these goods, else worth a question.
    `reason` says what it is, from memory; `ask` whom to ask; `grounds` the law by market; `bars` the markets whose law
    keeps it, or () where all of them do that know it."""

    sign: str
    kind: str
    territory: str
    serious: bool
    reason: str
    ask: str
    grounds: tuple[Ground, ...] = ()
    bars: tuple[str, ...] = ()

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary, the same for the same input."""
        return {
            "sign": self.sign,
            "kind": self.kind,
            "territory": self.territory,
            "serious": self.serious,
            "reason": self.reason,
            "ask": self.ask,
            "bars": list(self.bars),
            "grounds": [ground.to_json() for ground in self.grounds],
            "source": "from memory",
        }


def with_law(what: str, grounds: Iterable[Ground]) -> str:
    """What a sign is, with the law of each market."""
    return "; ".join((what, *(f"{one.market}: {one.law}" for one in grounds), "from memory"))
