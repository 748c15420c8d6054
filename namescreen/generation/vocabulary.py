"""What is known of single words: part of speech, frequency, how concrete and how pleasant, sounds, leading sense.

The facts on our own ideas stand in one table, so that a page of names needs few look-ups; any other word is looked up
in the lexicon, with the same result.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from itertools import compress
from typing import TYPE_CHECKING, Any, NamedTuple

from ..lexicon import Among, concreteness, feeling, lexicon, zipf
from ..tables import open_table
from .word_sounds import is_vowel, sounds_of

if TYPE_CHECKING:
    import numpy as np

    Row = np.ndarray[Any, np.dtype[np.float32]]

__all__ = [
    "Word",
    "are_rivals",
    "associations",
    "broader",
    "frequencies",
    "is_known",
    "leading_noun",
    "pictures",
    "places",
    "pos_of",
    "rivals",
    "synonyms",
    "word",
]


_BATCH = 200
_WORN, _SELDOM = 5.2, 2.2  # Zipf frequencies of a word that says nothing new, and of one that is seldom met


class Word(NamedTuple):
    """A word: `pos` n, v, a or r; `zipf` its frequency; `picture` in [0, 1] how concrete (0.5 for what is no noun);
    `pleasant` in [0, 1], 0.5 neutral or unknown; `charm` 1 for a word whose picture pleases in any name, 0 for one that
    weighs a name down, 0.5 for the rest (by our own judgement); `places` 1, 2 or 12, where it stands well in a closed
    pair; `sounds` ARPAbet; `sense` its leading sense if that is a noun's, and `above` the senses one and two steps
    broader."""

    text: str
    pos: str
    zipf: float
    picture: float
    pleasant: float
    charm: float
    places: str
    sounds: tuple[str, ...]
    sense: str
    above: frozenset[str]

    @property
    def beats(self) -> int:
        """Its syllables."""
        return sum(map(is_vowel, self.sounds))

    @property
    def fresh(self) -> float:
        """How little worn it is, in [0, 1]: 0 = as common as any word, 1 = seldom met."""
        return max(0.0, min(1.0, (_WORN - self.zipf) / (_WORN - _SELDOM)))

    @property
    def domain(self) -> str:
        """The WordNet domain of its leading sense (noun.plant); "" if that is no noun's."""
        return lexicon().domain(self.sense) if self.sense else ""


@cache
def _rows() -> Mapping[str, str]:
    return dict(open_table("naming_vocabulary.tsv").items())


def is_known(text: str) -> bool:
    """Whether a word is one of our ideas, or stands in a meaning of one."""
    return text in _rows()


@cache
def places() -> Mapping[str, int]:
    """Every word of our ideas, their meanings and facets, with its place in rows of numbers about them."""
    return {text: place for place, text in enumerate(_rows())}


@cache
def _columns() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The row of the vector of the word at each place, "" for none, and its frequency, as they are written."""
    rows, _, frequency, _ = zip(*[row.split("|", 3) for row in _rows().values()], strict=True)
    return rows, frequency


def frequencies() -> list[float]:
    """The Zipf frequency of the word at each place."""
    steps = {step: float(step) for step in set(_columns()[1])}  # some hundreds
    return [steps[step] for step in _columns()[1]]


@cache
def _among() -> tuple[Among, list[int]]:
    """The words with a vector, and their places."""
    rows = _columns()[0]
    at = [place for place, row in enumerate(rows) if row]
    return Among([*compress(_rows(), rows)], [int(row) for row in rows if row]), at


def vectors() -> tuple[Row, list[int]]:
    """The vectors of the words that have one, a row for each, and the places of these words."""
    words, at = _among()
    return words.vectors, at


def associations(texts: Sequence[str]) -> Row:
    """How strongly each text is associated with the word at each place, in [0, 1]: a row for each."""
    import numpy as np

    found = np.zeros((len(texts), len(_rows())), np.float32)
    words, at = _among()
    for start in range(0, len(texts), _BATCH):  # many at once are one product of matrices, too many fill the memory
        found[start : start + _BATCH, at] = words.associations(texts[start : start + _BATCH])
    return found


@lru_cache(maxsize=1 << 15)
def word(text: str) -> Word:
    """What is known of a word, folded."""
    row = _rows().get(text)
    if row is None:
        known, concrete, sense = feeling(text), concreteness(text), leading_noun(text)
        return Word(
            text, pos_of(text), zipf(text), 0.5 if concrete is None else concrete, 0.5 + 0.5 * (known or 0.0), 0.5, "",
            sounds_of(text), sense, frozenset(broader(sense)) if sense else frozenset(),
        )  # fmt: skip
    _, pos, frequency, picture, known_feeling, charm, where, sounds, senses = row.split("|")
    sense, *above = senses.split() or [""]
    return Word(
        text, pos, float(frequency), float(picture or 0.5), 0.5 + 0.5 * float(known_feeling or 0.0),
        float(charm or 0.5), where, tuple(sounds.split()), sense, frozenset(above),
    )  # fmt: skip


@cache
def pictures() -> tuple[str, ...]:
    """Short words whose picture pleases in any name."""
    return tuple([text for text, row in _rows().items() if "|1|" in row and row.split("|")[5] == "1"])


def are_rivals(one: str, other: str) -> bool:
    """Whether two words name different things of one kind, so that one in place of the other misleads: they share a
    broader sense one or two steps up, and neither is a kind of the other (WordNet 3.0, leading senses)."""
    first, second = word(one), word(other)
    if not first.sense or not second.sense or first.sense == second.sense:
        return False
    return bool(first.above & second.above) and second.sense not in first.above and first.sense not in second.above


@cache
def _by_sense() -> tuple[Mapping[str, list[int]], Mapping[str, list[int]]]:
    """Sense -> the places of the words whose leading sense it is; and of those that stand one or two steps below it."""
    own: dict[str, list[int]] = {}
    below: dict[str, list[int]] = {}
    for place, value in enumerate(_rows().values()):
        sense, *above = value.rpartition("|")[2].split() or [""]
        if sense:
            own.setdefault(sense, []).append(place)
            for one in above:
                below.setdefault(one, []).append(place)
    return own, below


def rivals(text: str) -> list[int]:
    """The places of the words that are rivals of `text`, see `are_rivals`."""
    one = word(text)
    if not one.sense:
        return []
    own, below = _by_sense()
    beside = {place for sense in one.above for place in below.get(sense, ())}
    kin = {place for sense in (one.sense, *one.above) for place in own.get(sense, ())}
    return sorted(beside - kin - set(below.get(one.sense, ())))


def synonyms(text: str) -> list[int]:
    """The places of the words that have the leading sense of `text`, a noun's."""
    sense = word(text).sense
    return _by_sense()[0].get(sense, []) if sense else []


def leading_noun(text: str) -> str:
    """The leading sense of a word or its base form, if that is a noun's; else nothing."""
    book = lexicon()
    for base in (text, *book.bases(text)):
        strengths = book.sense_strengths(base)
        if strengths:
            return strengths[0][0] if strengths[0][0][0] == "n" else ""
    return ""


def broader(sense: str) -> tuple[str, ...]:
    """The senses one and two steps broader."""
    book = lexicon()
    once = book.related_ids(sense, "@")
    return tuple(dict.fromkeys((*once, *(other for one in once for other in book.related_ids(one, "@")))))


@lru_cache(maxsize=1 << 14)
def pos_of(text: str) -> str:
    """The part of speech of a word: of its leading sense; a noun if it is not in the lexicon."""
    book = lexicon()
    strengths = book.sense_strengths(text) or [
        entry for base in book.bases(text) for entry in book.sense_strengths(base)
    ]
    return strengths[0][0][0] if strengths else "n"
