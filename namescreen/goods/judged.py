"""One word of a name as judged for goods, and what a word of another language means."""

from __future__ import annotations

from typing import NamedTuple

from ..lexicon import lexicon, zipf
from .description import NOTHING, Evidence, EvidenceKind
from .grounds import under_law
from .places import place_of
from .proper_names import is_surname
from .trade_words import is_term, meaning_of

__all__ = ["IN_USE", "LONGEST_ACRONYM", "SHORTEST_ACRONYM", "WORD", "Judged", "Meaning", "as_told_nothing",
           "is_acronym"]  # fmt: skip

WORD = (
    "tie", "names the goods", "in the goods", "head of the goods", "associated", "associated with the item",
    "same class", "heard as", "laudatory", "quality", "people", "business", "number", "colour", "place", "surname",
    "personal", "letter", "coined", "in use", "frequency", "plain verb or idea",
)  # fmt: skip
"""What is asked of every word, each from 0 to 1: the plainest tie to the goods (`description.describe`); whether it
names them, stands in their text, is what they are; how much it brings them to mind (vectors); whether it is a word for
goods of their class; whether it is heard as a describing word; its kinds; whether no dictionary has it."""

IN_USE = 2.5
"""Zipf value from which a word that no dictionary holds is in use: a few times in ten million words."""
NO_TIE = "no tie to the goods was found"
_VOWELS = frozenset("aeiouy")
SHORTEST_ACRONYM, LONGEST_ACRONYM = 2, 5


class Meaning(NamedTuple):
    """What a word of another language means in English, and how surely, 0 to 1."""

    english: str
    language: str
    sure: float = 1.0
    guessed: bool = False
    """Whether no table has the word, and its parts or its spelling say so."""
    about: bool = False
    """Whether only that is known from which it is derived: it is about it, and may be a maker, a place or a quality."""
    written_for: str = ""
    """The word that it is a respelling of."""
    said: Evidence = NOTHING
    """What labels say with it of such goods."""


class Judged(NamedTuple):
    """One content word of a name: the plainest evidence that it describes the goods, and everything asked of it."""

    word: str
    evidence: Evidence
    coined: bool
    asked: tuple[float, ...]
    meaning: Meaning | None = None
    heard: str = ""
    """The word for the goods that it is heard as."""
    own: bool = False
    """Whether it is a known word that nothing ties to the goods, whose labels are known and do not have it."""

    @property
    def stands_for(self) -> str:
        """The English word or words that it comes to."""
        return self.heard or (self.meaning.english if self.meaning else self.word)

    @property
    def tells_surname(self) -> bool:
        """Whether its reason says that it is a surname."""
        if self.evidence.is_told:
            return self.evidence.kind is EvidenceKind.SURNAME
        return not self.coined and not is_acronym(self.word) and is_surname(self.word)

    def reason(self, *, american: bool) -> str:
        """The evidence in a sentence, with the section of the American manual where American law counts."""
        by_parts = ", by its parts," if self.meaning and self.meaning.guessed else ""
        if self.meaning and self.meaning.written_for:
            by_parts = f', for "{self.meaning.written_for}",'
        means = f' means{by_parts} "{self.meaning.english}":' if self.meaning else ":"
        if self.evidence.is_told:
            return f'"{self.word}"{means} {self.evidence.told(american=american)}'
        if is_acronym(self.word):
            return f'"{self.word}" is read as letters; nothing here says what they stand for'
        if self.coined and zipf(self.word) >= IN_USE:
            return (
                f'"{self.word}" is in use but in no dictionary here: a brand, a name or a newer word, taken as coined'
            )
        if self.coined:
            return f'"{self.word}": no dictionary at hand knows it; coined, if it is no term of the trade'
        if is_surname(self.word):  # that is the ground, whatever else a dictionary has under it
            meant = self.meaning
            sure = meant is not None and meant.english and not meant.guessed and meant.sure >= 1  # no form of another
            means = f'{means.rstrip(":")}, and is' if sure else ":"
        return f'"{self.word}"{means} {_without_tie(self.word, american=american)}'


def as_told_nothing(one: Judged) -> Judged:
    """A word as if nothing tied it to the goods."""
    gone = ("tie", "names the goods")
    kept = tuple(0.0 if what in gone else value for what, value in zip(WORD, one.asked, strict=True))
    return one._replace(evidence=NOTHING, asked=kept)


def _without_tie(word: str, *, american: bool) -> str:
    """What to say of a known word without a tie to the goods."""
    place = place_of(word)
    if is_term(word) and not lexicon().known(word):
        return f"{meaning_of(word)}; {NO_TIE}"
    if is_surname(word):
        return "a surname, usually registrable in the EU and the UK (Nichols, C-404/02)"
    if place is not None and not place.home:
        why = "a place, and not where buyers expect such goods to come from"
        return under_law(why, "1210.04(d)", american=american)
    return NO_TIE


def is_acronym(word: str) -> bool:
    """Whether a reader can only spell `word` (folded) letter by letter."""
    letters = word.isascii() and word.isalpha() and not set(word) & _VOWELS
    return letters and SHORTEST_ACRONYM <= len(word) <= LONGEST_ACRONYM
