"""The facts on one word that a register keeps."""

from __future__ import annotations

from typing import NamedTuple

from ..lexicon import lexicon
from ..lexicon.association import form_defined
from ..lexicon.embedding import row_of
from .said_abroad import language_read_in
from .vocabulary import (
    base_forms,
    english_choices,
    everyday_in_others,
    has_senses,
    is_familiar,
    is_known,
    is_surname,
    meaning_keys,
    meant,
    said_in_english,
)

__all__ = ["WordFacts", "word_facts"]


class WordFacts(NamedTuple):
    """What is asked of one word before it is compared, so that a register can keep it: whether it
    `has_senses`, has `base_forms`, `is_known`, is a surname, `is_familiar`, is `meant` as it stands, is
    `said_in_english`, looks like a word of another language (`said_abroad.language_read_in`), and is an everyday
    word of one (`everyday_in_others`); its row in the embedding (-1: none) and the form that definitions use; its
    `meaning_keys`; and its `english_choices`."""

    has_senses: bool
    has_base_forms: bool
    is_known: bool
    is_surname: bool
    is_familiar: bool
    is_meant: bool
    is_said: bool
    is_abroad: bool
    is_everyday_abroad: bool
    vector_row: int
    form_defined: str
    keys: tuple[str, ...]
    english: tuple[tuple[str, ...], ...]


def word_facts(word: str, in_english: bool = True) -> WordFacts:
    """The facts on one folded word, without `in_english` for one that only stands in the English meaning of others."""
    return WordFacts(
        has_senses(word),
        bool(base_forms(word)),
        is_known(word),
        is_surname(word),
        is_familiar(word),
        meant(word) == word,
        bool(said_in_english(word)),
        bool(language_read_in(word)),
        bool(everyday_in_others(word)),
        row_of(word, lexicon().bases),
        form_defined(word),
        meaning_keys(word),
        english_choices(word) if in_english else (),
    )
