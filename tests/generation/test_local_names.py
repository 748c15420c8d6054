"""Names in the language of buyers who do not read English. Which words a language has is from memory."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief, Concept
from namescreen.generation import brainstorm, candidates
from namescreen.generation.buyers import local_language, understood
from namescreen.tables import open_table


def _brief(*markets: str) -> Brief:
    concepts = tuple(map(Concept, ("wool", "warm", "winter")))
    return Brief(goods="wool blankets", concepts=concepts, markets=markets)


def _local(brief: Brief) -> int:
    return sum(one.construction == "local" for one in brainstorm(brief, limit=20))


@pytest.mark.parametrize(
    ("markets", "language"),
    [
        ((), ""), (("US",), ""), (("DE",), "de"), (("US", "FR"), ""), (("DE", "EU"), "de"), (("EU",), ""),
        (("NL",), ""), (("DE", "AT", "CH"), "de"), (("DE", "FR"), ""), (("CH",), ""), (("PL",), "pl"),
    ],
)  # fmt: skip
def test_what_buyers_read(markets: tuple[str, ...], language: str) -> None:
    """That English is widely known in the Netherlands: General Court, T-435/07, New Look, from memory."""
    assert local_language(_brief(*markets)) == language


@pytest.mark.parametrize(("words", "least", "most"), [
    (("panda",), 1, 1), (("polka",), 1, 1), (("inglenook",), 0, 0), (("window",), 0.1, 0.5),
    (("good", "night"), 0, 0.3),
])  # fmt: skip
def test_english_words_are_understood_where_they_are_words_too(
    words: tuple[str, ...], least: float, most: float
) -> None:
    assert least <= understood(words, "de") <= most


def test_buyers_are_offered_names_in_their_language() -> None:
    assert _local(_brief("DE")) >= 10
    assert not _local(_brief("US", "DE"))
    assert not _local(_brief("US"))


def test_every_name_of_the_lists_has_a_meaning_and_a_rating() -> None:
    rows = [value for _, value in open_table("naming_local.tsv").items()]
    assert len(rows) > 600
    for row in rows:
        about, _, names = row.partition("|")
        assert about
        for name in names.split("; "):
            written, rating, meaning = name.split("=")
            assert written
            assert 5 <= float(rating) <= 7
            assert meaning


def test_a_language_without_names_is_told() -> None:
    assert candidates(_brief("PL")).not_held() == "pl"
    assert candidates(_brief("DE")).not_held() == ""
