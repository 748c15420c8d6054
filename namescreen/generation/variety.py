"""Which of the scored names make a page: good ones of every kind, no word more than twice, no idea repeated.

The names of a page are chosen one by one: each is the best of the rest, after a penalty for what it has in common with
the names before it. So a page reads as a person's list would, and the scores do not fall evenly.
"""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from ..lexicon import kinds, lexicon
from ..text import fold
from .candidate import Candidate, Proposal, form_of

__all__ = ["FIRST", "FURTHER", "PAGE", "Composition", "Judged", "choose", "composition", "judged"]

PAGE = 20
"""Variety is looked after within a page of this many."""


class Judged(NamedTuple):
    """A scored name, and what a page asks of it: `rank` is its score moved by what the maker likes, `worth` that less
    what no name of the page changes, `about` the terms of the brief that it is about. `pull` is what of its rank it
    owes to what the maker asked for just now, `drawn` in [0, 1] how plainly it is such a name."""

    candidate: Candidate
    proposal: Proposal
    rank: float
    worth: float
    kind: str
    about: frozenset[str]
    words: frozenset[str]
    pull: float = 0.0
    drawn: float = 0.0


FIRST = {
    "found": 22, "saying": 5, "pair": 0.7, "pair joined": 0.4, "changed": 0.8, "figure": 3, "affix": 0.6, "foreign": 2,
    "local": 22,
}  # fmt: skip
"""How many of each construction a page holds if all come off equally well, after how they fared with readers."""
FURTHER = {**FIRST, "found": 5, "saying": 4, "pair": 0.8, "pair joined": 0.6, "changed": 1.2, "local": 5}
"""The same of steered pages: who has seen the best existing words wants the other kinds too, of which few come off (of
72 joined pairs read for 12 briefs none was rated 5 or more)."""
_ABROAD = 0.1
"""What is left of the shares of English names where no buyer reads English; ours."""
_SAME_KIND = 0.07  # what the name costs with which a share of its construction is used up
_SAME_WORD = 0.06  # what each earlier name with the same word costs
_SAME_IDEA = 0.12  # what an earlier name costs whose meaning says all the same
_ASKED_FOR = 5.0
"""So many names like one of which more is wanted, or about a word that was just added, and what pulled them onto the
page pulls no further one: who asks for more has a choice in mind, not a page of one trick."""
_SAME_BEGINNING = 5  # letters with which only one name of a page may begin
_SPREAD = 1.5  # how steeply a share that is used up costs more


class Composition(NamedTuple):
    """What makes a page: how many names of each construction, how many with one word, and what a whole page about one
    term of the brief costs."""

    shares: Mapping[str, float]
    with_a_word: int
    same_term: float


def composition(*, local: bool, further: bool) -> Composition:
    """The composition of a page; `local`: for buyers who do not read English, `further`: after one that was steered."""
    held = FURTHER if further else FIRST
    if local:
        held = {kind: many if kind == "local" else _ABROAD * many for kind, many in held.items()}
    return Composition(held, 1, 0.4) if further else Composition(held, 2, 0.05)


def judged(
    candidate: Candidate, proposal: Proposal, rank: float, about: frozenset[str], worn: float, pull: float = 0.0,
    drawn: float = 0.0,
) -> Judged:  # fmt: skip
    """A scored name ready for pages; `worn` is a penalty for what earlier pages have shown."""
    words = _words(candidate, proposal)
    return Judged(candidate, proposal, rank, rank - worn, form_of(candidate), about, words, pull, drawn)


def choose(
    in_hand: Sequence[Judged], fits: Callable[[Judged], Candidate | None], made: Composition | None = None
) -> tuple[list[Candidate], list[Judged]]:
    """The best page of those in hand, best first, and the rest.

    `fits` gives the candidate with its remarks, or None if it must not be shown: it is asked of few, as it may cost
    much. `made` is what the page is made of, that of a first page if not told.
    """
    made = made or composition(local=False, further=False)
    used: Counter[str] = Counter()
    asked_for = 0.0
    page: list[Candidate] = []
    meanings: list[frozenset[str]] = []
    gone: set[int] = set()
    heaps: dict[str, list[tuple[float, int]]] = {}
    for place, entry in enumerate(in_hand):
        heaps.setdefault(entry.kind, []).append((-entry.worth, place))
    for heap in heaps.values():
        heapq.heapify(heap)
    while heaps and len(page) < PAGE:
        # what its kind costs is the same for all of a heap, so that few names are looked at
        kind = min(heaps, key=lambda one: (heaps[one][0][0] + _cost_of_kind(one, used, made.shares), heaps[one][0][1]))
        value, place = heapq.heappop(heaps[kind])
        if not heaps[kind]:
            del heaps[kind]
        entry = in_hand[place]
        proposal = entry.proposal
        if any(used[f"word {word}"] >= made.with_a_word for word in entry.words) or used[f"stem {_stem(proposal)}"]:
            continue
        if len(proposal.letters) >= _SAME_BEGINNING and used[f"begins {proposal.letters[:_SAME_BEGINNING]}"]:
            continue  # ingle, inglenook
        meaning = _telling(proposal.meaning)
        now = _cost(entry, used, made.same_term) + _SAME_IDEA * _said_before(meaning, meanings) - entry.worth
        now += entry.pull * min(1.0, asked_for / _ASKED_FOR) ** 2
        if now > value + 1e-9:  # a similar name has been chosen since
            heapq.heappush(heaps.setdefault(kind, []), (now, place))
            continue
        gone.add(place)
        shown = fits(entry)
        if shown is None:
            continue
        page.append(shown)
        meanings.append(meaning)
        asked_for += entry.drawn
        used.update(f"word {word}" for word in entry.words)
        used[f"begins {proposal.letters[:_SAME_BEGINNING]}"] += 1
        used.update((f"stem {_stem(proposal)}", f"kind {entry.kind}", *(f"term {term}" for term in entry.about)))
    return page, [entry for place, entry in enumerate(in_hand) if place not in gone]


def _cost_of_kind(kind: str, used: Counter[str], shares: Mapping[str, float]) -> float:
    """What names of a kind cost after those of the page."""
    share = (used[f"kind {kind}"] + 1) / shares.get(kind, 1)
    return float(_SAME_KIND * share**_SPREAD)


def _cost(entry: Judged, used: Counter[str], whole_page: float) -> float:
    """What a name costs for the words that it has in common with those of the page, and for that one of its terms which
    fewest of them are about: as much of `whole_page` as they are of a page."""
    same_words = sum(used[f"word {word}"] for word in entry.words)
    same_term = min((used[f"term {term}"] for term in entry.about), default=0)
    return whole_page * same_term / PAGE + _SAME_WORD * same_words


def _said_before(meaning: frozenset[str], meanings: Sequence[frozenset[str]]) -> float:
    """The largest share of the words of a meaning, or of an earlier one if that is longer, that both have."""
    return max((len(meaning & other) / max(len(meaning), len(other)) for other in meanings if other), default=0.0)


@lru_cache(maxsize=1 << 12)
def _telling(text: str) -> frozenset[str]:
    """The words of a text that say something."""
    words = (word for word in fold(text).replace("-", " ").split() if word.isalpha())
    return frozenset(next(iter(lexicon().bases(word)), word) for word in words if "function word" not in kinds(word))


def _words(candidate: Candidate, proposal: Proposal) -> frozenset[str]:
    """The words of a name, and those it was made of."""
    return frozenset(word for text in (*proposal.words, *candidate.sources) for word in text.casefold().split()) - {
        "and"
    }


def _stem(proposal: Proposal) -> str:
    """What only one name of a page may have: one original, one ordered start of a closed name."""
    return f"{proposal.original}" if proposal.original else f"{proposal.construction} {proposal.stem}"
