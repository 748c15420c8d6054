"""Words of labels: what is said of a ware describes it, in the language it is said in.

Expectations are common practice, no source, unless a line says otherwise."""

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, weakness
from namescreen.goods.trade_table import areas_of, label_senses
from namescreen.goods.trade_words import covered_names, label_term, term_for


@pytest.mark.parametrize(
    ("name", "goods", "markets"),
    [
        ("Unfiltered", "cider", "GB"),
        ("Keg Conditioned", "beer", "US"),
        ("Dry", "perry", "GB"),
        ("Brut", "cider", "FR"),
        ("Cidre Fermier", "cider", "FR"),
        ("Poiré", "perry", "FR"),
        ("Naturtrüb", "cider", "DE"),
        ("Thé en Vrac", "tea", "FR"),
        ("Holzofenbrot", "bread", "DE"),
        ("Vela de Soja", "candles", "ES"),
    ],
)
def test_what_labels_say_of_a_ware_describes_it(name: str, goods: str, markets: str) -> None:
    found = distinctiveness(name, goods, markets=markets.split())
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive"), found


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Otter Cider", "cider"), ("Ebb & Fudge", "fudge"), ("Lullaby Caramel", "caramels"), ("Velpora", "cider")],
)
def test_a_word_that_no_label_has_is_an_own_word_beside_the_goods(name: str, goods: str) -> None:
    found = distinctiveness(name, goods, markets=["GB", "FR", "DE"])
    assert isinstance(found, Distinctiveness)
    assert found.category not in ("generic", "descriptive"), found


def test_a_reason_tells_the_meaning_and_of_what_it_is_said() -> None:
    found = distinctiveness("Cidre Fermier", "cider", markets=["FR"])
    assert isinstance(found, Distinctiveness)
    assert any('"fermier" means "farm' in reason and "on labels" in reason for reason in found.reasons)


def test_accents_are_looked_at_first() -> None:
    assert label_senses("poiré", "fr")[0].english == "perry"
    assert label_senses("poire", "fr")[0].english != "perry"
    assert "perry" in {one.english for one in label_senses("poire", "fr")}  # written without its accent


@pytest.mark.parametrize(
    ("form", "base", "language"), [("bougies", "bougie", "fr"), ("Kerzen", "Kerze", "de"), ("candele", "candela", "it")]
)
def test_an_inflected_form_is_less_sure_than_the_word(form: str, base: str, language: str) -> None:
    inflected, listed = label_senses(form, language), label_senses(base, language)
    assert inflected[0].english == listed[0].english == "candle"
    assert inflected[0].sure <= listed[0].sure


def test_nearer_goods_are_described_more_plainly() -> None:
    near, other, far = (term_for("keeved", goods) for goods in ("cider", "wine", "socks"))
    assert near is not None
    assert other is not None
    assert far is not None
    assert near.weight > other.weight >= far.weight == 0


def test_an_everyday_word_says_little_of_other_wares() -> None:
    own, other = term_for("dry", "cider"), term_for("dry", "kites")
    assert own is not None
    assert own.weight > 0.7
    assert other is None or other.weight < 0.5


def test_covered_names_one_ware_go_together() -> None:
    assert {"cider", "perry"} <= covered_names("cider")
    term = label_term("poiré", "cider", "fr")
    assert term is not None
    assert term.english == "perry"


def test_places_in_the_table_of_trades_are_wares_or_kinds() -> None:
    assert any(area.is_ware for area in areas_of("cider"))
    assert not areas_of("*1")
    assert not areas_of("+conditioned")


@pytest.mark.parametrize("name", ["Saure Gurke", "Saure Gurken", "Cornichon", "Pickles"])
def test_the_name_of_the_goods_in_a_language_of_the_buyers_is_generic(name: str) -> None:
    found = distinctiveness(name, "pickles, pickled gherkins", markets=["DE", "FR"])
    assert isinstance(found, Distinctiveness)
    assert found.category == "generic", found.reasons
    assert "sounds like" not in found.reasons[0]


def test_a_sign_for_and_changes_nothing() -> None:
    with_sign, without = (
        distinctiveness(name, "caramels and fudge", markets=["GB", "US", "DE"]) for name in ("Ebb & Fudge", "Ebb Fudge")
    )
    assert isinstance(with_sign, Distinctiveness)
    assert isinstance(without, Distinctiveness)
    assert (with_sign.category, with_sign.score, with_sign.reasons) == (
        without.category,
        without.score,
        without.reasons,
    )
    assert all("means" not in reason for reason in with_sign.reasons)  # plain English words are not translated


@pytest.mark.parametrize(
    ("name", "goods", "said"),
    [("Lovespoon", "carved wooden spoons", 'a kind of "spoon"'), ("Whittler", "wooden spoons", "on labels")],
)
def test_other_forms_and_sorts_describe_too(name: str, goods: str, said: str) -> None:
    found = distinctiveness(name, goods, markets=["GB"])
    assert isinstance(found, Distinctiveness)
    assert found.category == "descriptive"
    assert said in found.reasons[0]


@pytest.mark.parametrize("goods", ["cider", "soap", "wooden toys", "lamps"])
def test_category_and_score_do_not_contradict_each_other(goods: str) -> None:
    names = ("Otter", "Dry", "Lantern Hill", "Hand Poured", "Ember", "Velpora", "Bramble & Ash", "Quiet", "First Light")
    order = ["generic", "descriptive", "suggestive", "arbitrary"]
    found = [distinctiveness(name, goods, markets=["US", "DE"]) for name in names]
    told = sorted((one.score, order.index(one.category)) for one in found
                  if isinstance(one, Distinctiveness) and one.category in order)  # fmt: skip
    barred = [place for score, place in told if score < 0.4]
    assert all(place <= 1 for place in barred)
    assert [place for score, place in told if score > 0.65] == [3] * sum(score > 0.65 for score, _ in told)


@pytest.mark.parametrize("name", ["Blox", "Stackin Blox", "Kidz Blox"])
def test_label_words_are_heard_in_other_spellings(name: str) -> None:
    """TMEP 1209.03(j); Postkantoor, C-363/99."""
    found = distinctiveness(name, "wooden toys", markets=["GB", "US"])
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive")
    assert any("sounds like" in reason for reason in found.reasons)


def test_a_compound_with_a_diminutive_is_taken_apart() -> None:
    found = distinctiveness("Holzklötzchen", "wooden toys, wooden building blocks", markets=["DE"])
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "goods", "heard"),
    [("Kandlewood", "candles", "candle"), ("Koffeecraft", "coffee beans", "coffee"), ("Bathsope", "soap bars", "soap"),
     ("Lether", "leather belts", "leather")],
)  # fmt: skip
def test_a_respelt_word_for_the_goods_is_heard_in_a_closed_word(name: str, goods: str, heard: str) -> None:
    """A misspelling heard as the descriptive word is as descriptive (TMEP 1209.03(j))."""
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    assert found.category in ("descriptive", "generic")
    assert any(f'sounds like "{heard}"' in reason for reason in found.reasons)


def test_what_is_said_of_an_animal_does_not_describe_the_goods() -> None:
    """A sleeping bag is a bag, a sleeping badger an animal; nor is an animal weak for bags that its skin may make."""
    found = distinctiveness("Sleeping Badger", "canvas bags")
    assert isinstance(found, Distinctiveness)
    assert found.category in ("suggestive", "arbitrary")
    assert weakness("otter", "leather bags") < 0.5
