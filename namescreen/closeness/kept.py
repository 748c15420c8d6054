"""What a register keeps of the words and names that a search brought. The functions that would work it out ask here
first, as the names are then compared one by one; they give the same whether it is kept or not."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    from .weights import OwnWeight

__all__ = ["KeptName", "KeptWord", "keep", "kept_name", "kept_word"]

MOST = 1 << 13
"""Words, and names, that are kept: those of some dozens of searches, a few megabytes."""

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
