"""What is read as a whole: terms with hyphens, terms at large, initials in their order, a class that is not known. The
names are our own; no source but general knowledge of the words."""

from __future__ import annotations

import pytest

from namescreen.goods import (
    Distinctiveness,
    Relatedness,
    classes,
    distinctiveness,
    likely_classes,
    protected_signs,
    relatedness,
)
from namescreen.goods.initials import initials_of
from namescreen.goods.known_places import known_places

EVERYWHERE = ("US", "GB", "DE", "FR", "IT", "NL")


@pytest.mark.parametrize("goods", ["door draught excluders", "sourdough starter kits", "12", ""])
def test_a_class_that_is_not_known_is_used_nowhere(goods: str) -> None:
    assert classes(goods) == []
    assert likely_classes(goods) == ()
    assert not any(one.serious for one in protected_signs("Champagne Cork", goods, markets=EVERYWHERE))


@pytest.mark.parametrize(
    ("name", "serious"),
    [("Pique-nique", False), ("Cul-de-sac", False), ("Cul de Sac", False), ("Nique", True), ("Pique la nique", True),
     ("Shit-hot", True)],
)  # fmt: skip
def test_a_coarse_word_is_not_seen_in_a_longer_term(name: str, serious: bool) -> None:
    found = protected_signs(name, "picnic hampers", markets=EVERYWHERE)
    assert any(one.kind == "morality" and one.serious for one in found) is serious


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Pique-nique", "picnic hampers"), ("Fai-da-te", "pliers"), ("Tout-petits", "bibs"),
     ("Petit-déjeuner", "breakfast cereals")],
)  # fmt: skip
def test_a_use_that_is_written_with_hyphens_is_read(name: str, goods: str) -> None:
    found = distinctiveness(name, goods, markets=EVERYWHERE)
    assert isinstance(found, Distinctiveness)
    assert found.category in ("descriptive", "generic")


@pytest.mark.parametrize(
    ("term", "goods", "held"),
    [
        ("toilet preparations", "shaving brushes", False), ("toilet preparations", "hairbrushes", False),
        ("toilet articles", "hairbrushes", True), ("toilet requisites", "shaving brushes", True),
        ("medicated skin care preparations", "face cream", False), ("medicated cosmetics", "lipsticks", False),
        ("non-medicated skin care preparations", "face cream", True), ("non medicated cosmetics", "lipsticks", True),
        ("household articles", "stoneware mugs", True), ("articles of clothing", "knitted scarves", True),
    ],
)  # fmt: skip
def test_a_term_at_large_holds_what_is_used_up_or_what_it_is_done_with(term: str, goods: str, held: bool) -> None:
    found = relatedness(goods, term)
    assert isinstance(found, Relatedness)
    assert (found.score >= 0.9) is held


@pytest.mark.parametrize(
    ("letters", "goods", "stands_for"),
    [
        ("gfdf", "biscuits without gluten and dairy", "gluten free dairy free"),
        ("gfb", "biscuits without gluten and butter", ""), ("fdf", "biscuits without gluten and dairy", ""),
        ("asf", "soap without added sugar, salt", ""),
    ],
)  # fmt: skip
def test_initials_are_those_of_whole_claims_in_their_order(letters: str, goods: str, stands_for: str) -> None:
    why = initials_of(letters, goods).why
    assert (stands_for in why) if stands_for else not why


def test_a_place_brings_only_its_own_names_to_mind() -> None:
    assert [one.names for one in known_places("guernsey", "jumpers") if one.names] == ["Guernsey sweaters"]
    assert [one.names for one in known_places("purbeck", "stone") if one.names] == ["Purbeck and Portland stone"]


@pytest.mark.parametrize(("name", "asked"), [("Persian Cat", False), ("Persian Moon", True)])
def test_a_set_phrase_of_its_own_brings_no_place_to_mind(name: str, asked: bool) -> None:
    found = protected_signs(name, "carpets", markets=EVERYWHERE)
    assert any(one.kind == "evocation" for one in found) is asked


@pytest.mark.parametrize(
    ("word", "language", "not_meant"),
    [("Kobolt", "nb", "co"), ("Bolton", "fr", "boltonia"), ("Montara", "de", "monterey"), ("Kalina", "sv", "potash")],
)
def test_a_symbol_or_a_place_or_plant_of_like_spelling_is_no_meaning(
    word: str, language: str, not_meant: str
) -> None:
    found = distinctiveness(word, "lamps", languages=[language])
    assert isinstance(found, Distinctiveness)
    assert not any(f'"{not_meant}"' in reason for reason in found.reasons)


def test_a_word_of_labels_is_told_of_the_goods_that_are_named() -> None:
    found = distinctiveness("Driver", "golf clubs")
    assert isinstance(found, Distinctiveness)
    assert any('said of "golf club" on labels' in reason for reason in found.reasons)


def test_what_one_ware_is_said_to_be_says_nothing_of_others_of_its_class() -> None:
    found = distinctiveness("Copper Kettle", "tea")
    assert isinstance(found, Distinctiveness)
    assert not any("fudge" in reason for reason in found.reasons)


@pytest.mark.parametrize(
    ("name", "goods"), [("Chinese Whispers", "cups"), ("Lemon Squeezy", "dish soap"), ("Apple Cart", "cider")]
)
def test_a_familiar_saying_promises_nothing(name: str, goods: str) -> None:
    assert not any(one.kind in ("misleading", "material") for one in protected_signs(name, goods, markets=["GB"]))
