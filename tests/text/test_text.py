from __future__ import annotations

import re
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.text import MAX_LENGTH, best_split, fold, number_words, parse, split_closed_compound, tokenize

anything = st.text(max_size=60)
words_of_letters = st.lists(st.text("abcdefghijklmnopqrstuvwxyz", min_size=2, max_size=9), min_size=1, max_size=4)


# Folding: Unicode Standard Annex 15 (normalisation), chapter 3.13 (case folding); the ligatures by
# common practice.
@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("CAFÉ", "cafe"),
        ("cafe\u0301", "cafe"),  # the same accent as a mark of its own
        ("Ångström", "angstrom"),
        ("Straße", "strasse"),
        ("STRASSE", "strasse"),
        ("Œuvre Æther", "oeuvre aether"),
        ("ﬁne", "fine"),  # a ligature of print
        ("Ｗｉｄｅ", "wide"),  # full-width letters
        ("Łódź Øre", "lodz ore"),
        ("Ａ\u200bb\u202ec", "abc"),  # zero-width and direction characters say nothing
        ("a\tb", "a b"),
        ("ΠΌΛΗ", "πολη"),
        ("Йогурт", "иогурт"),
        ("東京", "東京"),
        ("हिन्दी", "हिन्दी"),  # here the marks are the vowels
        ("مَرحبا", "مَرحبا"),
        ("ガ", "ガ"),
        ("", ""),
    ],
)
def test_folding_keeps_what_is_heard_and_drops_what_is_not(text: str, folded: str) -> None:
    assert fold(text) == folded


@given(anything)
def test_folding_twice_changes_nothing(text: str) -> None:
    assert fold(fold(text)) == fold(text)


@given(anything)
def test_folding_ignores_how_characters_are_composed(text: str) -> None:
    assert fold(unicodedata.normalize("NFD", text)) == fold(unicodedata.normalize("NFC", text))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Morning Fountain", ("morning", "fountain")),
        ("morning-fountain", ("morning", "fountain")),
        ("MorningFountain", ("morning", "fountain")),
        ("MORNING", ("morning",)),
        ("  Loamlet ", ("loamlet",)),
        ("Potter's Shelf", ("potters", "shelf")),
        ("Potter’s", ("potters",)),
        ("B.V.D.", ("bvd",)),
        ("Clay & Wick", ("clay", "and", "wick")),
        ("Clay+Wick", ("clay", "plus", "wick")),
        ("Y!kes", ("yikes",)),
        ("C@t", ("cat",)),
        ("Pot24", ("pot", "24")),
        ("2nd Pot", ("2nd", "pot")),
        ("Wick.", ("wick",)),
        ("Глина дом", ("глина", "дом")),
        ("陶器", ("陶器",)),
        ("🌱", ()),
        ("🌱 Pot", ("pot",)),
        ("...", ()),
        ("", ()),
    ],
)
def test_a_name_is_divided_where_a_reader_divides_it(text: str, words: tuple[str, ...]) -> None:
    assert tokenize(text) == words


@given(words_of_letters, st.sampled_from([" ", "-", "  ", " - ", ". ", " / "]))
def test_separators_are_all_alike(words: list[str], separator: str) -> None:
    assert tokenize(separator.join(words)) == tuple(words)
    assert tokenize(separator.join(words).upper()) == tuple(words)
    assert tokenize("".join(word.capitalize() for word in words)) == tuple(words)


@given(anything)
def test_any_text_is_a_name_of_clean_words(text: str) -> None:
    name = parse(text)
    for word in name.words:
        assert word == fold(word)
        assert word
        assert not any(character.isspace() or unicodedata.category(character)[0] == "C" for character in word)
    assert name.letters == "".join(name.words)
    assert bool(name.spoken) == bool(name.words)
    assert not any(unicodedata.category(character) in ("Cc", "Cf", "Cs") for character in name.text)


@given(anything)
def test_every_way_of_speaking_is_of_words(text: str) -> None:
    for way in parse(text).spoken:
        assert way
        assert all(word and not word.isspace() for word in way)
    assert len(set(parse(text).spoken)) == len(parse(text).spoken)


@given(anything)
def test_case_and_outer_space_do_not_matter_where_no_capital_divides(text: str) -> None:
    lower = text.lower()
    assert parse(f"  {lower} ").words == parse(lower).words


@given(st.text(st.characters(categories=["Lo"]), min_size=1, max_size=8))
def test_letters_of_scripts_without_case_are_kept(text: str) -> None:
    assert parse(text).letters


def test_many_spaces_cost_no_more_than_one() -> None:
    # Tried in every way in which they can be told apart, they would take years.
    assert tokenize("Fen" + 100 * " " + "9") == ("fen", "9")


def test_a_very_long_name_costs_no_more_than_a_long_one() -> None:
    assert len(parse("ab " * 100_000).text) <= MAX_LENGTH


# Numerals and letters as they are read aloud (TMEP 1207.01(b)(iv): similarity in sound; the readings are
# everyday English).
@pytest.mark.parametrize(
    ("text", "way"),
    [
        ("4 Pots", "for pots"),
        ("4 Pots", "four pots"),
        ("Pots 2 Go", "pots to go"),
        ("Pots 2 Go", "pots two go"),
        ("Pot 4 U", "pot for you"),
        ("Xtra", "extra"),
        ("Xpress", "express"),
        ("C-Thru", "see through"),
        ("Kwik Pot", "quick pot"),
        ("Clay & Wick", "clay and wick"),
        ("4ever", "for ever"),
        ("360", "three sixty"),
        ("360", "three hundred sixty"),
        ("21", "twenty one"),
        ("007", "zero zero seven"),
        ("1984", "nineteen eighty four"),
        ("BVD", "bee vee dee"),
        ("Loamlet", "loamlet"),
    ],
)
def test_numerals_and_letters_are_read_aloud(text: str, way: str) -> None:
    assert way in {" ".join(words) for words in parse(text).spoken}


@given(st.integers(0, 10**7))
def test_every_numeral_has_a_reading_in_words(value: int) -> None:
    for way in number_words(str(value)):
        assert way
        assert all(word.isalpha() for word in way)


# Number words by the usual rules of English counting (any grammar).
@pytest.mark.parametrize(
    ("digits", "first"),
    [
        ("0", "zero"),
        ("7", "seven"),
        ("12", "twelve"),
        ("40", "forty"),
        ("99", "ninety nine"),
        ("100", "one hundred"),
        ("105", "one hundred five"),
        ("110", "one ten"),
        ("1000", "one thousand"),
        ("2000", "two thousand"),
        ("1905", "nineteen oh five"),
        ("10000", "ten thousand"),
        ("100000", "one hundred thousand"),
    ],
)
def test_the_likeliest_reading_of_a_numeral_comes_first(digits: str, first: str) -> None:
    assert " ".join(number_words(digits)[0]) == first


FREQUENCY = {
    "car": 5.5,
    "garden": 4.7,
    "carpet": 4.2,
    "pet": 4.9,
    "herb": 3.9,
    "well": 6.2,
    "the": 7.7,
    "me": 7.0,
}


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("gardenwell", ("garden", "well")),
        ("herbwell", ("herb", "well")),
        ("carpet", ("carpet",)),  # a word of its own
        ("theme", ("theme",)),  # too short a part
        ("zzqqzz", ("zzqqzz",)),
        ("", ("",)),
    ],
)
def test_a_closed_compound_is_opened_where_both_parts_are_known(word: str, parts: tuple[str, ...]) -> None:
    assert split_closed_compound(word, lambda text: FREQUENCY.get(text, 0.0)) == parts


@given(st.text("abcdefgh", max_size=12), st.dictionaries(st.text("abcdefgh", max_size=6), st.floats(0, 8)))
def test_opening_a_compound_loses_no_letter(word: str, frequency: dict[str, float]) -> None:
    assert "".join(split_closed_compound(word, lambda text: frequency.get(text, 0.0))) == word


@given(st.text("aBzZx  ", max_size=16) | st.text("abAB 1.&'-é\n", max_size=10))
def test_a_plain_name_is_divided_as_any_other(text: str) -> None:
    divided = tokenize(text)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("namescreen.text.tokenization._PLAIN", re.compile("(?!)"))  # nothing is plain
        assert tokenize(text) == divided


@given(st.text("abcd", max_size=9), st.integers(1, 4), st.dictionaries(st.text("abcd"), st.integers(0, 9)))
def test_the_best_split_is_the_best_of_all_cuts(word: str, shortest: int, seen: dict[str, int]) -> None:
    def score(first: str, second: str) -> float | None:
        return seen[first] + seen[second] if first in seen and second in seen else None

    cuts = [(word[:at], word[at:]) for at in range(shortest, len(word) - shortest + 1)]
    scores = [value for value in (score(*cut) for cut in cuts) if value is not None]
    best = best_split(word, score, shortest)
    if best is None:
        assert not scores
    else:
        assert best in cuts
        assert score(*best) == max(scores)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Rose d'hiver", ("rose", "d", "hiver")),
        ("L’étoile d’argent", ("l", "etoile", "d", "argent")),
        ("Dell'Orto", ("dell", "orto")),
        ("women's", ("womens",)),
        ("O'Brien", ("obrien",)),
        ("She'll", ("shell",)),
        ("I'm", ("im",)),
    ],
)
def test_an_elision_stands_apart_and_other_apostrophes_join(text: str, words: tuple[str, ...]) -> None:
    """Elision before a vowel or a mute h: French and Italian grammar, from memory."""
    assert tokenize(text) == words
