"""What a search knows of the words and names that it brought: what the register keeps of them, and how words of the
name compare with theirs, which it works out for all at once. The functions that would work it out for one ask here
first, as the names are then compared one by one; they give the same whether it is kept or not."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from .weights import OwnWeight

__all__ = ["KeptName", "KeptWord", "keep", "keep_compared", "kept_meaning", "kept_name", "kept_similarity", "kept_word"]

MOST = 1 << 13
"""Words, and names, that are kept: those of some dozens of searches, a few megabytes."""
MOST_COMPARED = 1 << 7
"""Words of which is kept how others compare with them: those of some searches, as many megabytes."""

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


def keep(words: Mapping[str, KeptWord], names: Mapping[Words, KeptName]) -> None:
    """Keep what is known of some words and names; it takes the place of what was kept before where that is much."""
    for kept, new in ((_words, words), (_names, names)):
        if len(kept) > MOST:
            kept.clear()
        kept.update(new)  # type: ignore[arg-type]


Values = tuple[float, ...]
Compared = dict[str, dict[str, Values]]

_similarities: Compared = {}
_meanings: Compared = {}


def keep_compared(
    others: Sequence[str], similarities: Mapping[str, Iterable[Values]], meanings: Mapping[str, Iterable[Values]]
) -> None:
    """Keep how some words compare with others: of the first of these each `word_similarity.WordSimilarity`, and of all
    `word_meaning.Meaning`, NaN where there is none."""
    for kept, new in ((_similarities, similarities), (_meanings, meanings)):
        if len(kept) > MOST_COMPARED:
            kept.clear()
        for word, values in new.items():
            kept.setdefault(word, {}).update(zip(others, values, strict=False))


def kept_similarity(one: str, other: str) -> Values | None:
    """What is kept of the similarity of two words, or None."""
    return _of(_similarities, one, other)


def kept_meaning(one: str, other: str) -> Values | None:
    """What is kept of the closeness of two words in meaning, or None."""
    return _of(_meanings, one, other)


def _of(kept: Compared, one: str, other: str) -> Values | None:
    for word, match in ((one, other), (other, one)):
        if (compared := kept.get(word)) is not None and (found := compared.get(match)) is not None:
            return found
    return None
