"""Words of other languages that no table has: what they are derived from, the parts of compounds, and how they look.

The words are our own, from memory of each language; the glosses of their bases from general dictionaries."""

from __future__ import annotations

import pytest

from namescreen.lexicon.foreign_derivation import compound_of, derived
from namescreen.lexicon.native_words import native_word


@pytest.mark.parametrize(
    ("language", "word", "base", "english"),
    [
        ("fr", "savonnerie", "savonn", "soap"),
        ("es", "jaboneria", "jabon", "soap"),
        ("it", "coltelleria", "coltello", "knife"),
        ("pt", "livreiro", "livro", "book"),
        ("pl", "mydlarnia", "mydlo", "soap"),
        ("ro", "cutitarie", "cutit", "knife"),
        ("de", "nebelhaft", "nebel", "fog"),
    ],
)
def test_a_derivation_leads_to_its_base(language: str, word: str, base: str, english: str) -> None:
    found = derived(word, language)
    assert english in {one.english for one in found}
    assert base in {one.parts[0] for one in found if one.english == english}
    assert all(one.score <= 0.9 for one in found)


@pytest.mark.parametrize(
    ("language", "word", "parts"),
    [
        ("de", "schleifwerk", ("grinding", "factory")),
        ("de", "mahlstein", ("grinding", "stone")),
        ("sv", "nymald", ("new", "grind")),
        ("nl", "zaagwerk", ("saw", "work")),
        ("da", "friskmalet", ("fresh", "ground")),
    ],
)
def test_a_compound_may_hold_stems_of_verbs_and_participles(language: str, word: str, parts: tuple[str, ...]) -> None:
    found = compound_of(word, language)
    assert len(found) == 2
    for part, english in zip(found, parts, strict=True):
        assert english in {one.english for one in part.senses}


@pytest.mark.parametrize("word", ["zantrix", "velmo", "snuzzle", "glowster", "peakling", "xyz"])
def test_a_coined_name_looks_like_no_language(word: str) -> None:
    assert native_word(word, ("de", "nl", "fr", "es", "it")) is None


def test_a_language_without_letter_patterns_is_told_by_parts() -> None:
    assert native_word("zantrix", ("lt", "et")) is None
    assert native_word("x", ()) is None
