"""Pages of a steered session: good names only, until the maker asks for weaker ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice
from statistics import median

from .candidate import Candidate
from .ranking import WHOLE

__all__ = ["good_names", "least_score"]

_OF_FIRST = 0.75  # of the middle score of the first page, a name that may stand on any page has at least this much
_LOWER = 0.2  # what is taken off that share each time the maker goes on past the good names
_RELATED = 0.75  # of that score, a name that is just like one of which more is wanted
_LOOKED_AT = 8  # names drawn for each that a page has room for, before it is shown with fewer; all common practice


def least_score(first: Sequence[float], lowered: int) -> float:
    """The score that a name of a later page needs, by those of the first page (0 for that page itself), after the maker
    went on past the good names `lowered` times."""
    return max(0.0, _OF_FIRST - _LOWER * lowered) * median(first) if first else 0.0


def good_names(
    stream: Iterator[Candidate], floor: float, size: int
) -> tuple[list[Candidate], list[Candidate], bool]:  # fmt: skip
    """The next `size` names of at least this score, fewer where they are rare; those good enough that wait for a later
    page, as this one has a made name with one of their words; and whether weaker ones were passed over. A name plainly
    related to one of which more is wanted may be somewhat weaker (`_RELATED`), and no more: who likes a name does not
    ask for weak ones."""
    page: list[Candidate] = []
    waiting: list[Candidate] = []
    used: set[str] = set()
    weaker = False
    for one in islice(stream, _LOOKED_AT * size):
        made = set() if one.construction in WHOLE else {*map(str.casefold, one.sources)}
        if one.score < floor * (1 - (1 - _RELATED) * one.parts.get("resemblance", 0.0)):
            weaker = True
        elif used & made:
            waiting.append(one)
        else:
            page.append(one)
            used |= made
        if len(page) == size:
            break
    return page, waiting, weaker
