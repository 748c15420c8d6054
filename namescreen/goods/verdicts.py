"""What the views of the markets on a name add up to, the same wherever names are shown, made or screened."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol, TypeVar

from ..policy import PLAINLY_DESCRIPTIVE
from ..territories import law_of

__all__ = ["FREE", "REFUSED", "View", "in_most_markets", "of_the_markets", "only_for_the_union"]

FREE = ("suggestive", "arbitrary", "fanciful")
"""What a name is called that is inherently distinctive."""
REFUSED = ("generic", "descriptive")
"""The categories that offices refuse."""


class View(Protocol):
    """How a name stands under the law of one market (see `MarketFinding`)."""

    @property
    def market(self) -> str:
        """The code of the market."""

    @property
    def called(self) -> str:
        """What the law calls the name there."""

    @property
    def score(self) -> float:
        """Its distinctiveness there, in [0, 1], 1 = most."""


Seen = TypeVar("Seen", bound=View)


def of_the_markets(views: Sequence[Seen]) -> list[Seen]:
    """The views of the markets without that of the Union, which is told beside its states; all of them where none of
    its states is a market."""
    states = any(law_of(one.market) == "EU" and one.market != "EU" for one in views)
    return [one for one in views if one.market != "EU" or not states]


def in_most_markets(views: Sequence[View]) -> bool:
    """Whether a name is plainly descriptive in half of the markets or more: what is fine in one alone is no name for
    the others."""
    own = of_the_markets(views)
    plainly = [one for one in own if one.called in REFUSED and one.score < PLAINLY_DESCRIPTIVE]
    return bool(own) and 2 * len(plainly) >= len(own)


def only_for_the_union(category: str, views: Sequence[View], barred_in: tuple[str, ...] | None) -> bool:
    """Whether a name meets a bar as an EU mark, which is judged in every language of the Union, and none in any of the
    markets, where a state of the Union is one of them. `barred_in` are the markets whose law bars a sign in it; None
    where no sign is barred."""
    own = of_the_markets(views)
    if len(own) == len(views):  # no state of the Union is a market, or it is not told apart
        return False
    if barred_in is not None:
        return barred_in == ("EU",)
    return category in REFUSED and all(one.called in FREE for one in own)
