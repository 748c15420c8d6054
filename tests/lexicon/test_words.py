"""Frequency and kinds of words."""

from __future__ import annotations

import pytest

from namescreen.errors import DataError
from namescreen.lexicon import (
    KINDS,
    frequency_languages,
    kinds,
    name_rank,
    proper_name,
    words_of_kind,
    zipf,
)
from namescreen.tables import open_table, wordlists_folder
from namescreen.text.segmentation import LONGEST


class TestFrequency:
    def test_common_words_are_more_frequent(self) -> None:
        ladder = [zipf(word) for word in ("the", "water", "garden", "pottery", "terracotta", "zzyzxq")]
        assert ladder == sorted(ladder, reverse=True)
        assert ladder[-1] == 0.0

    def test_other_languages(self) -> None:
        assert zipf("garten", "de") > zipf("garten", "en")
        assert {"en", "de", "fr", "ja", "zh", "ar", "ru"} <= set(frequency_languages())

    def test_no_word_of_a_list_is_longer_than_those_looked_up(self) -> None:
        tables = [open_table(f"frequency/{language}.tsv") for language in frequency_languages()]
        assert max(len(word) for table in tables for word, _ in table.items()) <= LONGEST

    def test_an_unknown_language_is_an_error_that_names_it(self) -> None:
        with pytest.raises(DataError, match=r"xx\.tsv"):
            zipf("garden", "xx")

    @pytest.mark.parametrize("language", frequency_languages())
    def test_tables_are_whole_and_within_the_scale(self, language: str) -> None:
        table = open_table(f"frequency/{language}.tsv")
        table.verify()
        values = [float(value) for _, value in table.items()]
        assert len(values) == len(table) > 20_000
        assert 0.0 < min(values) < max(values) < 8.5


class TestKinds:
    @pytest.mark.parametrize(
        ("word", "kind"),
        [("best", "laudatory"), ("mini", "quality"), ("the", "function word"), ("gmbh", "company form"),
         ("com", "domain ending"), ("tuscany", "place"), ("parisian", "place"), ("smith", "surname"),
         ("mary", "given name"), ("three", "number"), ("green", "colour"), ("shop", "generic head"),
         ("kids", "people")],
    )  # fmt: skip
    def test_examples(self, word: str, kind: str) -> None:
        assert kind in kinds(word)

    def test_most_words_are_of_no_kind(self) -> None:
        assert kinds("planter") == kinds("zzyzxq") == frozenset()

    def test_every_kind_in_the_table_is_documented(self) -> None:
        for word, value in open_table("word_kinds.tsv").items():
            if not word.startswith("*"):
                assert {entry.partition(":")[0] for entry in value.split(",")} <= set(KINDS)

    def test_ranks(self) -> None:
        assert name_rank("smith") == 1
        assert name_rank("mary", "given name") == 1
        assert name_rank("planter") is None

    def test_closed_kinds_agree_with_their_words(self) -> None:
        for kind in ("laudatory", "company form", "people"):
            assert words_of_kind(kind)
            assert all(kind in kinds(word) for word in words_of_kind(kind))
        assert words_of_kind("surname") == ()

    def test_the_curated_list_is_in_the_table(self) -> None:
        text = (wordlists_folder() / "curated" / "word_kinds.txt").read_text(encoding="utf-8")
        for line in text.splitlines():
            if line and not line.startswith("#"):
                kind, listed = line.split(":")
                assert all(kind in kinds(word.replace("_", " ")) for word in listed.split())


class TestProperNames:
    """What places are called where they lie, and elsewhere: plain geography, from memory."""

    @pytest.mark.parametrize(
        "place", ["München", "Firenze", "Lisboa", "Wien", "Köln", "Praha", "Warszawa", "Nizza", "Genève", "Bayern"]
    )
    def test_places_in_the_languages_of_their_people_and_neighbours(self, place: str) -> None:
        assert "place" in proper_name(place)

    @pytest.mark.parametrize("word", ["Messer", "Kaffee", "planter", "zzyzxq"])
    def test_other_words_are_no_places(self, word: str) -> None:
        assert "place" not in proper_name(word)
