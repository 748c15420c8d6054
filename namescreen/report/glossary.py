"""The terms a report uses, in plain words, each with the source a reader can look up.

The sources were cited from memory by section; the words are ours.
"""

from __future__ import annotations

from typing import NamedTuple

from ..policy import LIKELY_REFUSED, OTHER_GOODS, PLAINLY_DESCRIPTIVE, PLAINLY_OTHER, STEPS

__all__ = ["GLOSSARY", "Term"]


class Term(NamedTuple):
    """A term, what it means here, and where the trade defines it."""

    term: str
    meaning: str
    source: str


_TMEP = "USPTO, Trademark Manual of Examining Procedure (TMEP)"
_STEPS = ", ".join(f"{level.words} from {least:g}" for least, level in reversed(STEPS)).capitalize()
_EUIPO = "EUIPO, Trade mark guidelines, part C, section 2"

GLOSSARY = (
    Term(
        "closeness",
        "How alike a name and a mark are, from 0 to 1, as this program computes it. It is not the chance "
        "of a conflict and not a legal opinion.",
        "this program",
    ),
    Term(
        "distinctiveness",
        "How well a name can tell one maker's goods from another's: generic (the name of the goods), "
        "descriptive (says what they are), suggestive (hints), arbitrary (a word of something else), "
        "fanciful (invented). A surname or a place (geographic) is refused on grounds of its own.",
        f"{_TMEP} 1209.01, 1210, 1211",
    ),
    Term(
        "goods relatedness",
        "How alike the goods of the name and of the mark are, from 0 to 1. It is shown beside closeness "
        "and never mixed into it.",
        f"{_TMEP} 1207.01(a); {_EUIPO}, chapter 2",
    ),
    Term(
        "knockout",
        "A live mark identical or nearly identical to the name (appearance from 0.92 or sound from 0.95) for the "
        "same or closely related goods (from 0.55, or not compared): a reason to stop before paying for more "
        "searching.",
        "common usage among searchers",
    ),
    Term(
        LIKELY_REFUSED,
        "A name that names the goods in a market, plainly describes them in half of the markets or more, or holds a "
        "sign that the law keeps for others or forbids. An office may well refuse it whatever marks there are. It is a "
        "guess from word lists: the office decides, and use can make some such names registrable.",
        "this program; the grounds are named beside each name, from memory",
    ),
    Term(
        "live, dead",
        "Whether the list says that a mark is in force or applied for, or has lapsed, been refused or "
        "withdrawn. A dead mark can still be in use, and use alone can give rights.",
        "status as each office states it",
    ),
    Term(
        "minor, look closer, serious",
        "How much attention a finding asks for; none is a legal finding. A mark goes by its concern, from 0 to 1: "
        "overall closeness, halved where the goods are unrelated and in proportion between; 1 for a knockout; "
        f"halved again for a dead mark, and never serious for goods under {OTHER_GOODS:g}, and under "
        f"{PLAINLY_OTHER:g} no more than minor, unless it is the same name. "
        f"{_STEPS}. A mark taken over, but for a house mark, praise or words that say little, counts by what is left. "
        f"A reading goes by its severity; a descriptive name is serious below a distinctiveness of "
        f"{PLAINLY_DESCRIPTIVE:g}, and else asks for a closer look.",
        "this program; the steps are chosen, not fitted",
    ),
    Term(
        "reading",
        "A word that the name is, holds or resembles in another language, with its meaning and how badly "
        "it may be taken: severity 0 (an ordinary word) to 3 (offends or repels).",
        "this program",
    ),
)
