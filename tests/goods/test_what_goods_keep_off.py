"""Names that say what goods keep off or are for, closed words that hold the word for the goods, and who reads what.

The names are our own; that such words describe: TMEP 1209.01(b) (function, purpose), 1209.03(d) (combined terms);
EUTMR Article 7(1)(c). Whether an office agrees on each is common practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, ProtectedSign, distinctiveness, protected_signs
from namescreen.goods.kept_off import keep_off

BARRED = ("generic", "descriptive")
EXCLUDERS, SEEDS = "draught excluders for doors", "seed blends for wild garden birds"


def _judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets or ("US", "GB"))
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Draughty", EXCLUDERS), ("Draftless", EXCLUDERS), ("Windstopper", EXCLUDERS), ("Wind", EXCLUDERS),
        ("Mothless", "moth traps for wardrobes"), ("Flyguard", "fly screens for windows"), ("Songbird Mix", SEEDS),
        ("MTB Gear", "gloves and knee pads for mountain biking"), ("Loiterbag", "bags of canvas"),
    ],
)  # fmt: skip
def test_what_goods_keep_off_are_for_or_hold_describes_them(name: str, goods: str) -> None:
    assert _judged(name, goods).category in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Breezeblock", EXCLUDERS), ("Mossy", "kitchen scales"), ("Windstopper Owl", "wooden toys"),
        ("Copper Kettle", "bread bags of waxed cotton"), ("Songbird", "leather belts"), ("Loiterbag", "candles"),
    ],
)  # fmt: skip
def test_the_same_words_say_nothing_of_other_goods(name: str, goods: str) -> None:
    assert _judged(name, goods).category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Frost Guard", "fleece for garden plants"), ("Rain Away", "waxed jackets"), ("Dustcatcher", "mops"),
        ("Spark Guard", "fireplace screens"), ("Lintless", "tea towels"),
        ("Bye Limescale", "descaling powder for kettles"), ("Flea Begone", "collars for dogs"),
        ("No Slugs", "copper tape for plant pots"), ("Theft Guard", "bicycle locks"),
        ("Pigeon Stopper", "netting for balconies"), ("Rustless", "garden tools"), ("Snore Stopper", "pillows"),
        ("Tangle Free", "hair brushes"), ("Spill Stopper", "lids for cups"),
        ("Sun Shield", "parasols"), ("Mould Stopper", "bread bags of cotton"), ("Plaque Fighter", "toothbrushes"),
        ("Zero Odour", "shoe insoles"), ("Anti-Slip", "bath mats"),
    ],
)  # fmt: skip
def test_a_name_for_what_such_goods_are_against_describes_them(name: str, goods: str) -> None:
    assert _judged(name, goods).category in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Frost Guard", "chess sets"), ("Rain Away", "dark chocolate"), ("Spark Guard", "roasted coffee"),
        ("Dustcatcher", "ginger biscuits"), ("Mudless", "honey"), ("Bye Rabbit", "wooden toys"),
        ("Flea Begone", "wall clocks"), ("No Slugs", "board games"), ("Theft Guard", "herbal tea"),
        ("Pigeon Stopper", "hand soap"), ("Dustless", "greeting cards"), ("Snow Stopper", "guitar strings"),
        ("Badger Trap", "chocolate"), ("Stormcatcher", "leather wallets"), ("Sun Catcher", "scented candles"),
        ("Windless", "candles"), ("Anti-Storm", "honey"), ("Moth Free", "guitar strings"), ("Wolf Guard", "jam"),
    ],
)  # fmt: skip
def test_the_same_of_goods_that_are_not_against_it_is_an_image(name: str, goods: str) -> None:
    assert _judged(name, goods).category not in BARRED


@pytest.mark.parametrize(
    ("word", "goods", "off"),
    [
        ("rain", "umbrellas", True), ("rain", "tea", False), ("moths", "cedar balls for wardrobes", True),
        ("moth", "wall clocks", False), ("badger", "fences", True), ("badger", "chocolate", False),
        ("breeze", EXCLUDERS, True), ("rabbit", "wooden toys", False), ("rabbit", "wire cages for plants", True),
        ("badger", "badger repellents", True), ("squeak", "oil for door hinges", True), ("squeak", "jam", False),
    ],
)  # fmt: skip
def test_goods_keep_off_what_they_say_or_are_for(word: str, goods: str, off: bool) -> None:
    assert keep_off(word, goods) is off


def test_a_rare_word_that_describes_does_not_lift_what_all_understand() -> None:
    """Those who know no beeswax read a bread bag (Matratzen Concord, C-421/04, asks what the buyers understand)."""
    found = _judged("Beeswax Bread Bag", "bread bags of cotton coated with beeswax", "DE", "FR")
    assert {one.called for one in found.markets} <= {"generic", "descriptive"}


def test_words_that_a_state_has_itself_are_not_foreign_there() -> None:
    found = _judged("Pure Perfection", "soap", "FR")
    assert [one.ground for one in found.markets if one.market == "FR"] != ["foreign word"]


def test_a_word_for_the_goods_in_a_language_that_few_read_is_no_strong_name() -> None:
    """Ours; common practice, no source: others of the trade who read it use it too."""
    found = _judged("Brotbeutel", "bread bags", "GB", "DE")
    by_market = {one.market: one for one in found.markets}
    assert by_market["DE"].category == "generic"
    assert by_market["GB"].score <= 0.65


def test_a_trade_as_a_surname_stays_one_though_it_can_be_taken_apart() -> None:
    """TMEP 1211.01(a)(vi), on the structure of surnames; the endings are from memory."""
    found = _judged("Brettschneider", "bread bags", "US", "DE")
    assert {one.market: one.called for one in found.markets}["US"] == "surname"


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Cancer Shield", "green tea bags"), ("Flexicoxib", "gel for sore joints"),
     ("Roquefort Crackle", "crackers flavoured with blue cheese")],
)  # fmt: skip
def test_claims_stems_and_names_of_origin_are_seen_by_what_goods_hold_or_treat(name: str, goods: str) -> None:
    """Regulation (EC) 1924/2006; the WHO's stems; Champagner Sorbet, C-393/16, on names of what goods hold; memory."""
    assert any(one.serious for one in _judged(name, goods, "FR", "GB").protected)


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Fleckenfrei", "Tischdecken", "DE"), ("Wühlmausstopp", "Pflanzkörbe aus Draht", "DE"),
        ("Anti-Tiques", "colliers pour chiens", "FR"), ("Antipolvo", "fundas de sofá", "ES"),
        ("Squeakless", "oil for door hinges", "GB"), ("No More Moths", "cedar balls for wardrobes", "GB"),
        ("Gnatguard", "fine mesh screens for windows", "US"), ("Trivet", "iron stands for hot pots", "US"),
    ],
)  # fmt: skip
def test_what_is_kept_off_is_read_in_the_buyers_language(name: str, goods: str, market: str) -> None:
    assert _judged(name, goods, market).category in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Mondziege", "Geldbörsen", "DE"), ("Frostfuchs", "Geldbörsen", "DE"), ("Anti-Owl", "wooden toys", "GB"),
     ("Moth & Moon", "knitted scarves", "GB")],
)  # fmt: skip
def test_images_stay_images(name: str, goods: str, market: str) -> None:
    found = distinctiveness(name, goods, markets=(market,))
    assert not isinstance(found, Distinctiveness) or found.category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Immunstark", "sea buckthorn juice", "DE"), ("Cholesterol Down", "oat biscuits", "GB"),
        ("Heart Healthy", "oat biscuits", "GB"), ("Boosts Digestion", "kombucha", "GB"), ("Heals the Gut", "tea", "GB"),
        ("Joint Support", "food supplements", "GB"), ("Brain Support", "tea", "GB"), ("Strong Bones", "coffee", "GB"),
        ("Guardia Civil", "whistles of metal", "ES"),
        ("Cashmere Cloud", "acrylic scarves", "GB"), ("Idiazabal", "sheep cheese", "ES"),
    ],
)  # fmt: skip
def test_claims_of_health_bodies_of_states_and_false_stuffs_are_serious(name: str, goods: str, market: str) -> None:
    """Regulation (EC) 1924/2006, Article 10; Paris Convention, Article 6ter; EUTMR Article 7(1)(g) and (j); from memory
    of what is protected."""
    assert any(one.serious for one in _signs(name, goods, market))


def test_an_organ_by_itself_is_no_claim() -> None:
    assert not any(one.serious for one in _signs("Lion Heart", "coffee", "GB"))
    assert not any(one.serious for one in _signs("Happy Heart", "wooden toys", "GB"))


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Happy Heart", "tea"), ("Happy Belly", "chocolate"),
     ("Liver Guard", "soft drinks"), ("Happy Gut", "yoghurt")],
)  # fmt: skip
def test_a_happy_part_of_the_body_is_asked_about_on_food_and_bars_nothing(name: str, goods: str) -> None:
    """Regulation (EC) 1924/2006, Article 10: claims of health need an authorisation; from memory."""
    (sign,) = (one for one in _signs(name, goods, "DE") if one.kind in ("health", "cure and illness"))
    assert sign.kind == "health"
    assert not sign.serious
    assert "authorisation" in sign.reason


def _signs(name: str, goods: str, market: str) -> tuple[ProtectedSign, ...]:
    return protected_signs(name, goods, markets=(market,))
