"""Goods worded in other languages. The examples are from memory of each language; no source."""

from __future__ import annotations

from time import process_time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from namescreen.goods import (
    GOODS_AS_WORDED,
    Distinctiveness,
    Relatedness,
    classes,
    distinctiveness,
    in_english,
    items,
    not_read,
    relatedness,
    remark,
)
from namescreen.goods.classification import chance_in
from namescreen.outcome import NotChecked
from tests.conftest import ROOT, Run

TERMS = ROOT / "wordlists" / "curated" / "nice_terms.txt"

SAID = [
    ("de", "Blumentöpfe aus Ton und Gießkannen", 21, "flower pots", "motor oil"),
    ("fr", "bijoux en argent", 14, "jewellery", "fire extinguishers"),
    ("es", "jabones de lavanda", 3, "soaps", "bicycles"),
    ("it", "candele profumate", 4, "candles", "dog food"),
    ("nl", "hondenspeelgoed", 28, "toys", "wine"),
    ("sv", "kattmat", 31, "cat food", "jewellery"),
    ("fi", "hunajaa", 30, "honey", "bicycles"),
    ("hu", "gyertyák", 4, "candles", "tea"),
    ("pl", "mydło i szampon", 3, "soap", "furniture"),
    ("pt", "mel e geleias", 30, "honey", "furniture"),
    ("cs", "sýr a máslo", 29, "cheese", "jewellery"),
    ("ro", "lumânări parfumate", 4, "candles", "cheese"),
]


@pytest.mark.parametrize(("language", "goods", "number", "same", "other"), SAID)
def test_goods_of_other_languages_are_read(language: str, goods: str, number: int, same: str, other: str) -> None:
    assert in_english(goods).language == language
    assert number in [guess.number for guess in classes(goods)]
    near, far = relatedness(goods, same), relatedness(goods, other)
    assert isinstance(near, Relatedness)
    assert isinstance(far, Relatedness)
    assert near.grade in ("high", "identical")
    assert far.grade in ("none", "low")
    assert remark(goods) in near.reasons


@pytest.mark.parametrize(
    "goods",
    [
        "tea", "herb planters of glazed clay; herb seeds", "kimono", "women's clothing", "bijou gift boxes",
        "chat software", "kombucha", "smartwatches", "pet treats", "skincare",
        "wine, pain relief sprays", "T-shirts", "3D printers", "",
    ],
)  # fmt: skip
def test_english_goods_stay_as_they_are(goods: str) -> None:
    assert in_english(goods).english == goods
    assert not remark(goods)


def test_words_that_are_english_too_are_read_in_the_language_of_the_list() -> None:
    assert [item.head for item in items("Tee, Kräutertee, Kaffee")] == ["tea", "tea", "coffee"]
    assert [item.head for item in items("Tee")] == ["tee"]


@pytest.mark.parametrize(("goods", "english"), [("savon", "soap"), ("fromage", "cheese")])
def test_a_single_word_that_english_has_not_is_read_though_lists_of_goods_have_it(goods: str, english: str) -> None:
    assert in_english(goods).english == english


def test_one_foreign_item_of_an_english_list_is_read() -> None:
    assert in_english("tea, Kräutertee, coffee").english == "tea, herbal tea, coffee"


def test_a_name_that_says_the_goods_is_as_weak_as_for_english_goods() -> None:
    for name in ("Herbal Tea", "Velpora"):
        found, plain = distinctiveness(name, "Kräutertee"), distinctiveness(name, "herbal tea")
        assert isinstance(found, Distinctiveness)
        assert isinstance(plain, Distinctiveness)
        assert (found.category, found.score) == (plain.category, plain.score)


def test_goods_that_cannot_be_read_are_said_and_the_classes_used() -> None:
    goods = "草本茶"
    assert "not read" in not_read(goods)
    assert classes(goods) == []
    assert isinstance(relatedness(goods, "tea"), NotChecked)
    by_class = relatedness(goods, "tea", [30])
    assert isinstance(by_class, Relatedness)
    assert any("not read" in reason and "classes" in reason for reason in by_class.reasons)
    assert isinstance(distinctiveness("Tea Leaf", goods), NotChecked)
    found = distinctiveness("Tea Leaf", goods, classes=[30])
    assert isinstance(found, Distinctiveness)
    assert found.not_assessed[0].check == GOODS_AS_WORDED
    assert "class 30" in found.not_assessed[0].because


def test_each_item_of_a_list_in_many_languages_is_read_in_its_own() -> None:
    pots = "Blumentöpfe; flower pots; macetas; vasi da fiori; bloempotten; blomkrukor; doniczki"
    read = in_english(pots)
    assert set(read.english.split("; ")) == {"flower pot", "flower pots"}
    assert (read.language, read.unread) == ("mul", ())
    assert in_english("Seife; savon; jabón; sapone; zeep; sabão").english == "; ".join(["soap"] * 6)
    assert remark(pots).startswith("several languages: ")
    assert [guess.number for guess in classes(pots)][:1] == [21]


def test_words_left_over_are_named() -> None:
    assert "not read: zzyzxq" in remark("Kräutertee mit Zzyzxq").lower()


@settings(deadline=None)
@given(st.text(max_size=60))
@example("AA:AA,È")
def test_any_text_is_read_or_said_not_to_be(goods: str) -> None:
    read = in_english(goods)
    assert read == in_english(goods)
    assert bool(not_read(goods)) is not read.understood


def test_the_command_says_how_goods_were_read(run: Run) -> None:
    done = run("classes", "Kräutertee")
    assert done.returncode == 0, done.stderr
    assert " 30 " in done.stdout
    assert 'de: "Kräutertee" read as "herbal tea"' in done.stderr


def test_a_screening_says_what_was_used_for_goods_that_are_not_read(run: Run) -> None:
    done = run("screen", "--name", "Velpora", "--goods", "草本茶", "--classes", "30", "--format", "jsonl")
    assert done.returncode == 0, done.stderr
    assert "class 30 was used instead" in done.stdout


def test_a_finding_says_how_goods_were_read_and_which_words_were_not() -> None:
    found = distinctiveness("Otter", "poiré, cidre bouché zwrblk", markets=["FR"])
    assert isinstance(found, Distinctiveness)
    assert any('fr: "poiré' in reason and 'read as "perry' in reason for reason in found.reasons)
    missing = [one.because for one in found.not_assessed if one.check == "distinctiveness for the goods as worded"]
    assert missing == ['of the goods "zwrblk" could not be read; the rest was used']


@pytest.mark.parametrize(
    ("goods", "english"),
    [
        ("poiré", "perry"),
        ("bière", "beer"),
        ("poiré, cidre bouché", "perry, corked bottle cider"),
        ("bière artisanale", "craft beer"),
        ("sidra natural", "natural cider"),
        ("bougies parfumées", "scented candle"),
    ],
)
def test_names_of_wares_are_read_by_their_accents(goods: str, english: str) -> None:
    """From memory of French and Spanish; poire, without its accent, is a pear."""
    assert in_english(goods).english == english
    assert in_english("poires").english == "pear"


@pytest.mark.parametrize(
    ("goods", "languages", "english"),
    [
        ("Hut; Rock", ("de",), "hat; skirt"),
        ("pain", ("en", "fr"), "bread"),
        ("pain relief", ("fr",), "pain relief"),
        ("Hut, soap", ("de",), "Hut, soap"),
        ("Hut", ("es",), "Hut"),
        ("jeans", ("de",), "jeans"),
    ],
)
def test_words_that_are_english_too_are_read_in_a_language_that_is_known(
    goods: str, languages: tuple[str, ...], english: str
) -> None:
    assert in_english(goods, languages).english == english
    assert in_english(goods).english == goods


def test_the_languages_of_goods_are_asked_in_relatedness_and_told() -> None:
    found, plain = relatedness("hats", "Hut", languages_b=("de",)), relatedness("hats", "Hut")
    assert isinstance(found, Relatedness)
    assert isinstance(plain, Relatedness)
    assert found.grade == "identical"
    assert 'de: "Hut" read as "hat"' in found.reasons
    assert plain.grade in ("none", "low")


@pytest.mark.parametrize(
    ("goods", "language", "english"),
    [
        ("lit pour chat", "fr", "cat bed"),
        ("protector solar", "es", "sun cream"),
        ("masque visage", "fr", "face mask"),
        ("savates", "fr", "slippers"),
        ("lampe de table", "fr", "table lamp"),
    ],
)
def test_names_of_wares_are_read_though_their_words_seem_english(goods: str, language: str, english: str) -> None:
    read = in_english(goods)
    assert (read.language, read.english, read.unread) == (language, english, ())
    for said in ("candles", "soap"):
        assert in_english(f"{said}; {goods}").english == f"{said}; {english}"


@pytest.mark.parametrize("goods", ["eau de Cologne", "hot chocolate", "crème brûlée", "prêt-à-porter"])
def test_what_english_took_over_stays(goods: str) -> None:
    assert in_english(goods).english == goods


@pytest.mark.parametrize(
    ("goods", "heads"),
    [
        ("Boîtes à pain; torchons; maniques", ["bin", "towel", "glove"]),
        ("raquettes de badminton", ["racket"]),
        ("Servicios de venta al por menor de muebles", ["furniture"]),
        ("Sprzedaż detaliczna zabawek", ["toy"]),
        ("lampy stojące", ["lamp"]),
        ("cajas de herramientas", ["toolbox"]),
        ("chauffe-biberons", ["warmer"]),
        ("Küchenbehälter, Frischhaltebeutel", ["container", "bag"]),
        ("Food for dogs and cats; watering cans", ["food", "can"]),
    ],
)
def test_each_item_is_the_thing_that_it_names(goods: str, heads: list[str]) -> None:
    """From memory of each language: the head of each item as a shop there means it."""
    assert [item.head for item in items(goods)] == heads


@pytest.mark.parametrize(
    ("goods", "english"),
    [
        ("Brotbeutel aus Stoff", "bread bag of fabric"),
        ("moules à gâteau", "cake tin"),
        ("planches à découper", "cutting board"),
        ("ruedas de bicicleta", "bicycle wheel"),
    ],
)
def test_what_stands_after_its_noun_stands_before_it_in_english(goods: str, english: str) -> None:
    """From memory of each language; a stuff stays where it is."""
    assert in_english(goods).english == english


def test_a_compound_whose_parts_say_nothing_together_is_not_read() -> None:
    """Invented compounds of known German words."""
    assert in_english("Frischaltdosen aus Holz").unread
    assert not in_english("Hundekissen").unread


@pytest.mark.parametrize(
    ("goods", "number", "english"),
    [
        ("Geschirr", 21, "crockery"), ("Geschirr", 18, "harness"), ("bougies", 4, "candle"),
        ("bougies", 7, "spark plug"), ("cire", 4, "wax"), ("velas", 22, "sail"), ("timbres", 15, "bell"),
    ],
)  # fmt: skip
def test_the_stated_class_chooses_the_sense_of_a_word(goods: str, number: int, english: str) -> None:
    assert in_english(goods, (), chance_in((number,))).english == english


def test_a_word_longer_than_any_compound_is_not_divided_at_every_place() -> None:
    began = process_time()
    in_english("blumen" * 800)
    assert process_time() - began < 10  # 4,800 letters took over a minute, by the cube of the length


def test_whole_classes_of_goods_are_read_at_once() -> None:
    """The terms of two classes, as registrations of large firms list them (Nice Classification)."""
    listed = dict(line.split(":", 1) for line in TERMS.read_text().splitlines() if line[:1].isdecimal())
    began = process_time()
    assert all(in_english(listed[number]).understood for number in ("28", "12"))
    assert process_time() - began < 10  # half a minute each, while every word was held against all wares abroad
