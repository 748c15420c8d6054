"""What words of other languages mean, and the way back. The meanings are plain dictionary knowledge, from memory."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.lexicon import equivalents, equivalents_in, languages, lexicon, translations
from namescreen.lexicon.foreign_forms import BITS, languages_by_stem, possible_stems, skeleton
from namescreen.tables import open_table

REQUIRED = "de fr es it pt nl sv da nb fi pl cs hu ro el tr".split()
CHANGED = "toare ori ces eaux euses kset det tta larna kare cker bnik ele ives vende huizen druiven nsk ova".split()
"""Ends of words in which more than an ending may change, in some language."""
ENGLISH = [english for english, _ in open_table("foreign_of.tsv").items()][::997]


def english(word: str, language: str | None = None) -> list[str]:
    return [one.english for one in translations(word, language)]


class TestTranslations:
    @pytest.mark.parametrize(
        ("language", "word", "meaning"),
        [("de", "Messer", "knife"), ("fr", "couteau", "knife"), ("es", "cuchillo", "knife"),
         ("it", "coltello", "knife"), ("pt", "faca", "knife"), ("nl", "mes", "knife"),
         ("sv", "kniv", "knife"), ("da", "kniv", "knife"), ("nb", "kniv", "knife"),
         ("fi", "veitsi", "knife"), ("pl", "nóż", "knife"), ("cs", "nůž", "knife"), ("hu", "kés", "knife"),
         ("ro", "cuțit", "knife"), ("el", "μαχαίρι", "knife"), ("tr", "bıçak", "knife")],
    )  # fmt: skip
    def test_a_plain_word_in_every_language_wanted(self, language: str, word: str, meaning: str) -> None:
        assert meaning in english(word, language)
        assert meaning in english(word)

    @pytest.mark.parametrize(
        ("language", "word", "meaning"),
        [("de", "Lampen", "lamp"), ("nl", "kaarsen", "candle"), ("sv", "filtar", "blanket"),
         ("fr", "couteaux", "knife"), ("es", "cuchillos", "knife"), ("it", "candele", "candle"),
         ("pl", "świece", "candle"), ("hu", "gyertyák", "candle"), ("fi", "kynttilät", "candle"),
         ("es", "lápices", "pencil"), ("it", "funghi", "mushroom"), ("ro", "prosoape", "towel"),
         ("ro", "mese", "table"), ("fi", "sängyt", "bed"), ("fi", "sängyn", "bed"), ("fi", "hatut", "hat"),
         ("sv", "nycklar", "key"),
         ("pl", "pędzle", "brush"), ("cs", "hrnky", "mug"), ("pt", "pastéis", "pastry"), ("fr", "danseuses", "dancer")],
    )  # fmt: skip
    def test_inflected_forms_are_found(self, language: str, word: str, meaning: str) -> None:
        assert meaning in english(word, language)

    @pytest.mark.parametrize(
        ("language", "word", "parts"),
        [("de", "Honiglöffel", ("honig", "loffel")), ("sv", "honungssked", ("honungs", "sked")),
         ("nl", "honinglepel", ("honing", "lepel")), ("hu", "mézeskanál", ("mezes", "kanal"))],
    )  # fmt: skip
    def test_compounds_are_taken_apart(self, language: str, word: str, parts: tuple[str, ...]) -> None:
        found = translations(word, language)
        assert found
        assert found[0].parts == parts
        assert found[0].source == "compound"
        assert "honey spoon" in [one.english for one in found]

    def test_herbal_tea_is_known(self) -> None:
        assert {"herb tea", "herbal tea"} & set(english("Kräutertee", "de"))

    @pytest.mark.parametrize(
        ("language", "word", "meaning"),
        [("es", "ventanita", "little window"), ("it", "fuochetto", "little fire"), ("de", "Mäuschen", "little mouse")],
    )
    def test_diminutives_of_everyday_words(self, language: str, word: str, meaning: str) -> None:
        assert meaning in english(word, language)

    def test_an_international_word_in_another_spelling(self) -> None:
        assert skeleton("kronometer") == skeleton("chronometer")
        assert "chronometer" in english("kronometer", "sv")

    @pytest.mark.parametrize(
        ("english_word", "language", "foreign"), [("knife", "de", "messer"), ("bread", "fi", "leipa")]
    )
    def test_the_way_back(self, english_word: str, language: str, foreign: str) -> None:
        assert foreign in equivalents_in(english_word, language)
        assert equivalents_in(english_word, "ja") == equivalents_in("zzyzxq", language) == ()

    @given(st.sampled_from(ENGLISH), st.sampled_from(REQUIRED))
    def test_the_way_back_leads_home(self, english_word: str, language: str) -> None:
        for foreign in equivalents_in(english_word, language):
            assert english_word in english(foreign, language)

    @given(st.text(max_size=14))
    def test_any_text_has_an_answer_in_order(self, text: str) -> None:
        found = translations(text)
        assert [one.score for one in found] == sorted((one.score for one in found), reverse=True)
        assert all(0.0 < one.score <= 1.0 and one.language in languages() for one in found)

    def test_a_language_without_a_table_is_told_apart(self) -> None:
        assert set(REQUIRED) <= set(languages())
        assert "ja" not in languages()
        assert translations("neko", "ja") == ()

    def test_tables_are_whole(self) -> None:
        tables = "foreign_words", "foreign_of", "foreign_parts", "foreign_phrases", "foreign_places"
        for name in (*tables, "international_words"):
            open_table(f"{name}.tsv").verify()


class TestForms:
    @given(st.sampled_from(REQUIRED), st.text("abcdefghijklmnoprstuvz", min_size=1, max_size=14))
    def test_stems_are_beginnings_of_sorts(self, language: str, word: str) -> None:
        found = possible_stems(word, language)
        assert found
        assert len(set(found)) == len(found)
        assert all(stem for stem in found)

    @given(
        st.one_of(
            st.text("abcdefghijklmnoprstuvz", min_size=1, max_size=14),
            st.builds(str.__add__, st.text("aeioubklnrstvz", max_size=6), st.sampled_from(CHANGED)),
        )
    )
    def test_stems_in_all_languages_at_once_are_those_of_each(self, word: str) -> None:
        at_once = languages_by_stem(word)
        for language, bit in BITS.items():
            assert {stem for stem, those in at_once.items() if bit & those} == {*possible_stems(word, language)}

    def test_every_language_with_a_table_has_endings(self) -> None:
        assert {*languages()} == {*BITS}


class TestEquivalents:
    def test_what_is_read_as_english_is_not_translated(self) -> None:
        assert equivalents("pain") == equivalents("kettle") == ()
        assert "knife" in [one.english for one in equivalents("messer")]

    def test_invented_words_mean_nothing(self) -> None:
        assert [word for word in ("kelbo", "zarvo", "quintrel", "drovexa") if equivalents(word)] == []
        assert not lexicon().known("kelbo")
