"""What a search knows of the words and names that it brought: what the register keeps of them, and how words of the
name compare with theirs, which it works out for all at once. The functions that would work it out for one ask here
first, as the names are then compared one by one; they give the same whether it is kept or not, but for the last bits,
as sums run in another order: so closenesses are rounded before they are compared or shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    from .weights import OwnWeight

__all__ = ["KeptName", "KeptWord", "forget", "forgotten", "keep", "keep_meanings", "keep_similarities", "kept_meaning",
           "kept_name", "kept_similarity", "kept_word"]  # fmt: skip

MOST = 1 << 13
"""Words, and names, that are kept: those of some dozens of searches, a few megabytes."""
MOST_COMPARED = 1 << 7
"""Words of which is kept how others compare with them: those of some searches, as many megabytes."""
MOST_UNREAD = 8
"""Searches of which is kept how others compare with a word while none is asked for."""

Words = tuple[str, ...]


class KeptWord(NamedTuple):
    """Of one word: `sound.phoneme_codes_of`, `weights.own_weight`, and some `word_facts.WordFacts`."""

    codes: Words
    weight: OwnWeight
    english: tuple[Words, ...]
    has_senses: bool
    is_known: bool
    is_surname: bool
    is_meant: bool
    is_said: bool
    is_abroad: bool
    is_everyday_abroad: bool


class KeptName(NamedTuple):
    """Of one name: the ways to divide it into words (`features.segmentations_of`), and the phoneme codes of it all."""

    divisions: tuple[Words, ...]
    codes: Words


_words: dict[str, KeptWord] = {}
_names: dict[Words, KeptName] = {}

kept_word = _words.get
"""What is kept of a word, or None."""
kept_name = _names.get
"""What is kept of a name, given by its words, or None."""


_forgotten = 0


def forgotten() -> int:
    """How often what was kept of words and names was forgotten."""
    return _forgotten


def forget() -> None:
    """Forget what was kept of words and names."""
    global _forgotten
    _forgotten += 1
    _words.clear()
    _names.clear()


def keep(words: Mapping[str, KeptWord], names: Mapping[Words, KeptName]) -> None:
    """Keep what is known of some words and names; it takes the place of what was kept before where that is much."""
    if max(len(_words), len(_names)) > MOST:
        forget()
    _words.update(words)
    _names.update(names)


Values = tuple[float, ...]


class _Compared:
    """How one word compares with others: what was asked for, and what is yet to be read, as most never is."""

    __slots__ = ("_found", "_unread")

    def __init__(self) -> None:
        self._found: dict[str, Values] = {}
        self._unread: list[Callable[[], Iterable[tuple[str, Values]]]] = []

    def add(self, read: Callable[[], Iterable[tuple[str, Values]]]) -> None:
        """Others and how the word compares with each, to be read when one is asked for."""
        self._unread = [*self._unread[1 - MOST_UNREAD :], read]

    def get(self, other: str) -> Values | None:
        """How the word compares with another, or None."""
        for read in self._unread:
            if len(self._found) > MOST:
                self._found.clear()
            self._found.update(read())
        self._unread = []
        return self._found.get(other)


_similarities: dict[str, _Compared] = {}
_meanings: dict[str, _Compared] = {}


def keep_similarities(word: str, read: Callable[[], Iterable[tuple[str, Values]]]) -> None:
    """Keep how a word compares with others: `read` gives these, each with its `word_similarity.WordSimilarity`."""
    _keep_compared(_similarities, word, read)


def keep_meanings(word: str, read: Callable[[], Iterable[tuple[str, Values]]]) -> None:
    """Keep how a word compares with others in meaning: `read` gives these, each with its `word_meaning.Meaning`, of NaN
    where there is none."""
    _keep_compared(_meanings, word, read)


def _keep_compared(
    kept: dict[str, _Compared], word: str, read: Callable[[], Iterable[tuple[str, Values]]]
) -> None:
    if len(kept) > MOST_COMPARED:
        kept.clear()
    kept.setdefault(word, _Compared()).add(read)


def kept_similarity(one: str, other: str) -> Values | None:
    """What is kept of the similarity of two words, or None."""
    return _of(_similarities, one, other)


def kept_meaning(one: str, other: str) -> Values | None:
    """What is kept of the closeness of two words in meaning, or None."""
    return _of(_meanings, one, other)


def _of(kept: dict[str, _Compared], one: str, other: str) -> Values | None:
    for word, match in ((one, other), (other, one)):
        if (compared := kept.get(word)) is not None and (found := compared.get(match)) is not None:
            return found
    return None
