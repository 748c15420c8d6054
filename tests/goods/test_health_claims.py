"""Claims of health in names, in the languages of the buyers: Regulation (EC) No 1924/2006 (food), Regulation (EU) No
655/2013 (cosmetics), EUTMR Article 7(1)(c) and (g), Lanham Act s. 2(a) and FDA rules on claims; from memory. The names
are our own, written down before the first run."""

from __future__ import annotations

import pytest

from namescreen.goods import protected_signs
from namescreen.goods.health import closed_claims


def _is_claim(name: str, goods: str, market: str) -> bool:
    signs = protected_signs(name, goods, markets=(market,))
    return any(one.serious and one.kind == "cure and illness" for one in signs)


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Herzgesund", "Hafercracker", "DE"), ("Anti-Rhumatisme", "bracelets de cuivre", "FR"),
        ("Adiós Migraña", "infusiones de hierbas", "ES"), ("Stop Mal di Testa", "tisane", "IT"),
        ("Arthritis Bracelet", "copper bracelets", "US"), ("Migraine Tea", "herbal tea", "GB"),
        ("Eczema", "skin balm", "GB"), ("Healing Honey", "honey", "US"), ("Detox Tea", "herbal tea", "GB"),
        ("Fat Burner", "coffee", "GB"), ("Immune Honey", "honey with ginger", "GB"),
        ("Schmerzfrei", "Wärmekissen", "DE"),
        ("Rheumasalbe", "Salben auf Kräuterbasis", "DE"), ("Pijnvrij", "magneetarmbanden", "NL"),
        ("Odporność Plus", "syrop z czarnego bzu", "PL"), ("Curaeczema", "creams", "ES"),
        ("Zeropain", "insoles", "US"), ("Colesterolo Stop", "riso rosso", "IT"), ("Gut Health", "kefir", "GB"),
        ("Quitadolor", "gel de árnica", "ES"), ("Respirabene", "caramelle balsamiche", "IT"),
        ("Stress Away Tea", "tea", "GB"), ("Healthy Feet Socks", "socks", "GB"),
        ("Painaway", "rubbing balm", "AU"), ("Collagen Repair", "face serum", "US"),
    ],
)  # fmt: skip
def test_what_is_treated_beside_what_is_done_for_it_is_a_claim(name: str, goods: str, market: str) -> None:
    assert _is_claim(name, goods, market)


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Fever Pitch", "footballs"), ("Cold Comfort", "ice cream"), ("Blood Orange Boost", "soap"),
        ("Bone Idle", "dog beds"),
        ("Stroke of Luck", "paint brushes"), ("Retail Therapy", "tote bags"), ("Gut Feeling", "leather wallets"),
        ("Muscle Memory", "guitar straps"), ("Joint Venture", "woodworking clamps"), ("Heart Repair", "necklaces"),
        ("Healing Bench", "garden furniture"), ("Kater Carlo", "Katzenspielzeug"),
        ("Tooth & Claw", "kitchen knives"), ("Elbow Room", "sofas"), ("Shoulder of Giants", "rucksacks"),
    ],
)  # fmt: skip
def test_words_of_health_in_another_sense_or_on_other_goods_are_none(name: str, goods: str) -> None:
    assert not _is_claim(name, goods, "GB")


def test_a_closed_word_is_taken_apart_where_both_parts_make_a_claim() -> None:
    assert [part for part, _ in closed_claims("gelenkwohl")] == ["gelenk", "wohl"]
    assert [part for part, _ in closed_claims("immunitatsbooster")] == ["immunitat", "booster"]
    assert [part for part, _ in closed_claims("antimigrana")] == ["anti", "migrana"]
    assert closed_claims("heartwood") == closed_claims("zelkovane") == ()


@pytest.mark.parametrize(
    "goods",
    ["earrings", "wrist watches", "bookshelves", "curtains", "work gloves", "hats", "running shoes", "table lamps",
     "dining chairs", "bed linen", "board games"],
)  # fmt: skip
@pytest.mark.parametrize("name", ["Remedy", "Antidote", "Heal", "Painkiller"])
def test_a_cure_alone_is_a_figure_of_speech_on_goods_that_treat_nobody(name: str, goods: str) -> None:
    assert not _is_claim(name, goods, "GB")


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Remedy", "herbal tea"), ("Antidote", "skin cream"), ("Heal", "heat pads"), ("Remedy", "food supplements"),
     ("Remedy", "magnetic bracelets"), ("Heal", "bracelets for arthritis"), ("Remedy", "shoe insoles"),
     ("Antidote", "compression socks")],
)  # fmt: skip
def test_a_cure_alone_is_a_claim_of_what_is_taken_or_put_on_for_health(name: str, goods: str) -> None:
    assert _is_claim(name, goods, "GB")


@pytest.mark.parametrize(
    ("name", "goods", "asked"),
    [("Happy Feet", "biscuits", False), ("Happy Hands", "tea", False), ("Happy Elbow", "jam", False),
     ("Happy Belly", "biscuits", True), ("Happy Heart", "tea", True)],
)  # fmt: skip
def test_food_does_nothing_to_limbs(name: str, goods: str, asked: bool) -> None:
    signs = protected_signs(name, goods, markets=("GB",))
    assert any(one.kind in ("health", "cure and illness") for one in signs) is asked


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Tummy Tamer", "ginger drops", "GB"), ("Headache Hero", "peppermint roll-ons", "GB"),
        ("ColdKiller", "ginger shots", "US"), ("Liver Lover", "milk thistle drops", "US"),
        ("Circulation Socks", "compression socks", "GB"), ("Snooze Aid", "lavender sachets", "GB"),
        ("Digestea", "herbal tea with fennel", "US"), ("Fertilitea", "herbal tea", "GB"),
        ("Hip & Joint Hound", "chews for dogs", "GB"), ("Blemish Be Gone", "face gel", "GB"),
        ("Teething Calm", "amber necklaces for babies", "GB"), ("Chakra Balance", "bracelets of beads", "GB"),
        ("Nervenbalsam", "Tee mit Melisse", "DE"), ("Wadenwohl", "Kompressionssocken", "DE"),
        ("Bauchfrieden", "Kräutertee", "DE"), ("Ventre Heureux", "tisane au fenouil", "FR"),
        ("Apaise Gorge", "sirop de thym", "FR"), ("Alivio Rápido", "bálsamo de menta", "ES"),
        ("Difesa Immunitaria", "sciroppo di sambuco", "IT"), ("Buikrust", "venkelthee", "NL"),
        ("Noite Tranquila", "chá de valeriana", "PT"), ("Zdrowe Stawy", "kapsułki z kurkumą", "PL"),
        ("Ventre Plat Minute", "jus de fruits", "FR"), ("Flat Belly Bella", "seed mixes", "GB"),
        ("Lugn Mage", "örtte med fänkål", "SE"), ("Ont i Halsen", "honungspastiller", "SE"),
    ],
)  # fmt: skip
def test_of_what_is_sold_as_a_remedy_the_body_is_no_play_on_words(name: str, goods: str, market: str) -> None:
    assert _is_claim(name, goods, market)


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Happy Hippo", "herbal tea", "GB"), ("Mage Light", "herbal tea", "US"), ("Sore Loser", "board games", "US"),
        ("Cold Harbour", "ginger beer", "GB"), ("Dream Catcher", "wool blankets", "GB"),
        ("Night Owl", "herbal tea", "GB"), ("Head Gardener", "nettle soup", "GB"),
        ("Sugar Rush", "mint chocolate", "GB"),
        ("Stone Bridge", "herbal tea", "GB"), ("Lever House", "lavender oil", "US"),
    ],
)  # fmt: skip
def test_play_on_other_goods_and_words_of_languages_that_nobody_speaks_there_claim_nothing(
    name: str, goods: str, market: str
) -> None:
    assert not _is_claim(name, goods, market)


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Gas Chaser", "shaving soap"), ("Pressure Cutter", "hand cream"), ("Wind Stopper", "hair wax"),
        ("Sugar Eraser", "dog shampoo"), ("Cold Friend", "ginger shots"), ("Sugar Love", "protein powder"),
        ("Happy Hands", "beeswax balm"), ("Foot Friend", "insoles"), ("Cold Feet", "compression socks"),
        ("Itchy Feet", "foot balm"), ("Gentle Heart", "herbal tea"), ("Dry Stone", "bath salts"),
    ],
)  # fmt: skip
def test_everyday_words_and_idioms_beside_a_loose_effect_claim_nothing(name: str, goods: str) -> None:
    assert not _is_claim(name, goods, "GB")


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Itch Chaser", "hand cream"), ("Itch Stopper", "dog shampoo"), ("Wrinkle Eraser", "face oil"),
        ("Cold Stopper", "ginger shots"), ("Gas Relief", "fennel tea"), ("Heart Tonic", "hawthorn drops"),
        ("Foot Relief", "insoles"), ("Sleep Well", "herbal tea"), ("Gut Friend", "probiotic capsules"),
    ],
)  # fmt: skip
def test_complaints_of_the_skin_and_plain_effects_still_do(name: str, goods: str) -> None:
    assert _is_claim(name, goods, "GB")
