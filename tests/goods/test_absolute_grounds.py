"""Slogans, qualities by their form, kinds of goods by one word, surnames that are words: names of our own, common
practice without a source unless one is named."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.phrases import items
from namescreen.goods.slogans import slogan_in
from namescreen.outcome import NotChecked

BARRED = ("generic", "descriptive")


def judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets or ("US", "GB", "EU"))
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("words", "language"),
    [
        ("made with care", "en"), ("because you are worth it", "en"), ("the art of tea", "en"),
        ("more than a mug", "en"), ("mit liebe gemacht", "de"), ("parce que vous aimez", "fr"),
        ("hecho con amor", "es"), ("fatto con amore", "it"),
        ("po prostu dobre", "pl"),
        ("wish you were here", ""), ("green thumb", ""), ("copper moth", ""), ("tea", ""),
    ],
)  # fmt: skip
def test_a_promotional_message_is_known_by_its_formula(words: str, language: str) -> None:
    assert slogan_in(tuple(words.split())) == language


def test_a_slogan_is_praise_that_any_maker_may_use() -> None:
    """TMEP 1202.04(b); EUTMR Article 7(1)(b), from memory."""
    found = judged("Born to Ride", "bicycles")
    assert [one.ground for one in found.markets] == ["laudatory"] * 3
    assert "promotional message" in found.reasons[0]


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Mothproof", "wool jumpers"), ("Seedless", "jam"), ("Tangle Free", "dog leads"),
        ("Fold Away", "camping stools"), ("Sugar Free", "jam without sugar"), ("Salt Free", "crackers without salt"),
        ("Slow Risen", "bread"), ("Five Star", "pet food"), ("XXL", "shirts"), ("Snuffle", "mats for dogs"),
        ("Balance", "bicycles without pedals"), ("Rocking", "chairs"), ("Needle Nose", "pliers"),
    ],
)  # fmt: skip
def test_what_goods_lack_can_do_or_are_describes_them(name: str, goods: str) -> None:
    assert all(one.category in BARRED for one in judged(name, goods, "US", "GB").markets)


@pytest.mark.parametrize(
    ("name", "goods"), [("Fearless", "wool jumpers"), ("Timeless Otter", "jam"), ("Snuffle", "garden forks")]
)
def test_what_says_nothing_of_the_goods_does_not(name: str, goods: str) -> None:
    assert all(one.category not in BARRED for one in judged(name, goods, "US", "GB").markets)


@pytest.mark.parametrize(
    ("name", "called"),
    [
        ("Thatcher", "surname"), ("Greenwood", "surname"), ("Hammock", ""), ("Finch", ""), ("Bramquist", ""),
        ("Velmworth", ""),
    ],
)  # fmt: skip
def test_a_word_is_a_surname_by_those_who_bear_it(name: str, called: str) -> None:
    """TMEP 1211.01(a): how many bear it, and whether it means something else; an ending alone makes none."""
    (american,) = judged(name, "soap", "US").markets
    assert (american.called == "surname") == bool(called)


def test_an_english_name_is_not_read_word_by_word_in_another_language() -> None:
    """Danish and Swedish barn is a child; read and sold as English beside a plainly English word."""
    assert judged("Purple Barn", "soap", "DK").category not in BARRED


def test_what_goods_lack_is_not_what_they_are() -> None:
    assert [one.head for one in items("bicycles without pedals")] == ["bicycle"]


@pytest.mark.parametrize(
    ("name", "goods"), [("Forty Winks", "pillows"), ("Green Thumb", "garden gloves"), ("Hat Trick", "hats"),
                      ("Two Shakes", "salt shakers"), ("Two Ticks", "clocks")]
)
def test_a_saying_with_a_sense_of_its_own_has_two(name: str, goods: str) -> None:
    """A double entendre is no mere description: TMEP 1213.05(c), from memory."""
    found = judged(name, goods)
    assert found.category not in BARRED
    assert not any("a number" in one for one in found.reasons)


def test_a_number_of_things_that_is_no_saying_is_counted() -> None:
    assert "a number" in judged("Two Shakers", "salt shakers").reasons[0]


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Sugar Free", "jam without sugar", "US"), ("Sans Gluten", "bread without gluten", "FR"),
     ("Sin Lactosa", "milk without lactose", "ES"), ("No Salt", "crackers without salt", "GB")],
)  # fmt: skip
def test_to_say_what_goods_lack_promises_nothing_that_they_are_not(name: str, goods: str, market: str) -> None:
    found = judged(name, goods, market)
    assert found.category in BARRED
    assert found.protected == ()


def test_what_a_closed_word_holds_is_not_told_as_to_be_disclaimed() -> None:
    """A closed compound is one mark, of which no part is disclaimed: TMEP 1213.05(a), from memory."""
    assert not any("disclaim" in one for one in judged("Emberhand", "hand-forged knives", "US").reasons)
    assert any("disclaim" in one for one in judged("Ember Knives", "hand-forged knives", "US").reasons)


@pytest.mark.parametrize(("name", "goods"), [("Kwikdri", "towels"), ("Krispkrust", "bread"), ("Doggeybed", "dog beds")])
def test_a_closed_word_of_misspelt_parts_says_what_they_say(name: str, goods: str) -> None:
    """TMEP 1209.03(d) and (j), from memory."""
    assert judged(name, goods, "US").category in BARRED


def test_english_that_few_learn_bars_nothing_where_it_is_not_spoken() -> None:
    """T-435/07, New Look: English is understood in the Scandinavian countries, the Netherlands and Finland; elsewhere
    its everyday words. From memory."""
    def bars(market: str, name: str = "Dibber") -> bool:
        found = judged(name, "garden tools", market)
        return next(one for one in found.markets if one.market in (market, "BX")).category in BARRED

    assert [bars(market) for market in ("GB", "IE", "NL", "ES", "PL")] == [True, True, True, False, False]
    assert bars("ES", "Garden")


WAXED = "dog coats of waxed cotton and tweed; dog beds"


@pytest.mark.parametrize("name", ["Puddle", "Puddlehop", "Rise", "Climb", "Hop"])
def test_a_rare_sense_or_a_chain_of_senses_is_no_ground(name: str) -> None:
    """Puddle is clay to who builds ponds, and wax, as the moon does, is to rise: TMEP 1209.01(b) asks what buyers take
    from the word for such goods."""
    found = judged(name, WAXED, "GB")
    assert found.category not in BARRED
    assert not any("material" in one or "wax" in one for one in found.reasons)


@pytest.mark.parametrize(("name", "goods"), [("Beeswax", "hand balms"), ("Wool", "scarves"), ("Leather", "belts")])
def test_a_material_of_the_trade_is_one(name: str, goods: str) -> None:
    assert judged(name, goods, "GB").category in BARRED


def test_what_ends_in_a_foreign_name_of_the_goods_is_no_coinage() -> None:
    """Dutch tol is a spinning top: what glimtol says no table here tells."""
    found = distinctiveness("Glimtol", "wooden spinning tops", markets=("NL",))
    assert isinstance(found, NotChecked)
    assert "tol" in found.because


def test_a_number_is_read_as_one_whatever_game_it_belongs_to() -> None:
    reasons = judged("Seven Larks", "fireplace pokers").reasons
    assert "a number" in reasons[0]


@pytest.mark.parametrize("name", ["Applewood", "Pearwood", "Oak"])
def test_a_sort_of_the_stuff_that_goods_are_of_describes_them(name: str) -> None:
    assert judged(name, "wooden spinning tops", "GB").category in BARRED
    assert judged(name, "knitted scarves", "GB").category not in BARRED


def test_no_rare_sense_of_a_word_of_the_product_is_a_material() -> None:
    """WordNet has puddle as a mixture of clay first; nobody makes coats of it."""
    product = "a waxed cotton coat for dogs that hop through puddles"
    found = distinctiveness("Puddlehop", "coats for dogs", markets=("GB", "DE"), product=product)
    assert isinstance(found, Distinctiveness)
    assert found.category not in BARRED
    cotton = distinctiveness("Cotton", "parasols", markets=("GB",), product="a parasol of cotton")
    assert isinstance(cotton, Distinctiveness)
    assert cotton.category in BARRED


def test_compounds_of_everyday_english_are_understood_by_those_who_learnt_it() -> None:
    markets = judged("Weatherproof Hound", "dog coats", "GB", "DE").markets
    assert all(one.category in BARRED for one in markets)


def test_what_is_written_with_an_accent_is_no_english_word() -> None:
    assert judged("Fer Forgé", "wrought iron gates", "FR").category in BARRED


def test_beside_a_word_for_the_goods_an_unknown_word_of_that_language_is_not_judged() -> None:
    """Read in Slovenian, fer would be fair, and an own word; those who may know battu read iron."""
    found = distinctiveness("Fer Battu", "iron pans", markets=("FR",))
    assert isinstance(found, NotChecked)
    assert "battu" in found.because


def test_a_loose_tie_beside_a_word_without_any_is_no_ground() -> None:
    """A name that takes a thought to reach the goods is suggestive: TMEP 1209.01(a), from memory. A word for a part of
    them describes."""
    assert judged("Morning Clapper", "bells").category not in BARRED
    assert judged("Clapper", "bells").category in BARRED
    assert judged("Quick Clapper", "bells").category in BARRED
