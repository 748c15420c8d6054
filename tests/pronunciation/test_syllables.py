"""Syllables, rhyme and alliteration."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.pronunciation import (
    alliterates,
    may_open,
    pronounce,
    rhyme,
    stress_pattern,
    syllabify,
    syllable_count,
)
from namescreen.pronunciation.phones import CONSONANTS, VOWELS, is_vowel
from namescreen.pronunciation.syllables import sonority
from namescreen.tables import open_table

PHONES = st.sampled_from(sorted((*CONSONANTS, *(vowel + stress for vowel in VOWELS for stress in "012"))))
READINGS = st.lists(PHONES, max_size=12)


@given(READINGS)
def test_syllables_join_to_the_reading_again(phones: list[str]) -> None:
    syllables = syllabify(phones)
    joined = [p for s in syllables for p in (*s.onset, f"{s.nucleus}{s.stress}", *s.coda)]
    assert joined == (phones if syllables else [])


@given(READINGS)
def test_one_syllable_a_vowel_with_its_stress(phones: list[str]) -> None:
    assert len(syllabify(phones)) == syllable_count(phones) == len(stress_pattern(phones))
    assert "".join(str(syllable.stress) for syllable in syllabify(phones)) == stress_pattern(phones)


@given(READINGS)
def test_inner_onsets_are_the_longest_a_word_may_begin_with(phones: list[str]) -> None:
    """The maximal onset principle (D. Kahn, Syllable-based Generalizations in English Phonology, 1976)."""
    syllables = syllabify(phones)
    for before, after in pairwise(syllables):
        assert may_open(after.onset)
        if before.coda:
            assert not may_open((before.coda[-1], *after.onset))


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        # Divisions that follow from the maximal onset principle, as handbooks illustrate it (Giegerich, English
        # Phonology, 1992, section 6.4, for the principle; the words are ours).
        ("extra", ["EH1 K", "S T R AH0"]),
        ("construct", ["K AH0 N", "S T R AH1 K T"]),
        ("atlas", ["AE1 T", "L AH0 S"]),
        ("metro", ["M EH1", "T R OW2"]),
        ("singer", ["S IH1 NG", "ER0"]),
        ("planter", ["P L AE1 N", "T ER0"]),
    ],
)
def test_words_divide_where_handbooks_divide_them(word: str, parts: list[str]) -> None:
    syllables = syllabify(pronounce(word)[0].phones)
    assert [" ".join((*s.onset, f"{s.nucleus}{s.stress}", *s.coda)) for s in syllables] == parts


@pytest.mark.parametrize(
    ("a", "b", "rhymes"),
    [
        ("light", "kite", True), ("planter", "canter", True), ("kettle", "metal", True), ("glow", "though", True),
        ("light", "late", False), ("leaf", "leaf", False), ("leaf", "belief", False), ("motion", "ocean", True),
        ("water", "otter", False),
    ],
)  # fmt: skip
def test_rhyme(a: str, b: str, rhymes: bool) -> None:
    """leaf and belief are the same from the consonant before the vowel on: rime riche, not a rhyme in English."""
    one, two = pronounce(a)[0].phones, pronounce(b)[0].phones
    assert rhyme(one, two) is rhyme(two, one) is rhymes


@pytest.mark.parametrize(
    ("a", "b", "same"),
    [
        ("planter", "pot", True), ("kettle", "cup", True), ("phone", "fern", True), ("city", "seed", True),
        ("gem", "glow", False), ("apple", "oak", False), ("stone", "spoon", False), ("stone", "stem", True),
    ],
)  # fmt: skip
def test_alliteration_is_by_sound(a: str, b: str, same: bool) -> None:
    one, two = pronounce(a)[0].phones, pronounce(b)[0].phones
    assert alliterates(one, two) is alliterates(two, one) is same


def test_onsets_rise_in_sonority() -> None:
    """Sonority sequencing (G. Clements, "The role of the sonority cycle in core syllabification", 1990): an onset
    rises towards the vowel; in English only s before an obstruent or nasal stands outside it."""
    for first in CONSONANTS:
        for second in CONSONANTS:
            if may_open((first, second)) and first != "S":
                assert sonority(first) < sonority(second)


def test_every_common_word_begins_as_the_onsets_allow() -> None:
    """Against the dictionary: 99 % of words of Zipf frequency 3 and more begin with an onset of ours."""
    from namescreen.lexicon import zipf
    from namescreen.pronunciation.phones import from_marked

    seen = allowed = 0
    for word, value in open_table("pronunciations.tsv").items():
        if zipf(word) >= 3.0 and len(word) > 2:
            phones = from_marked(value.split(" ")[0])
            vowel = next((at for at, phone in enumerate(phones) if is_vowel(phone)), None)
            if vowel is not None:
                seen += 1
                allowed += may_open(phones[:vowel])
    assert seen > 15_000
    assert allowed / seen > 0.99
