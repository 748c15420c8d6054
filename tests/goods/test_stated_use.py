"""Names that say together, or as a whole, what goods do or whom, when and where they are for: TMEP 1209.03(i) (users)
and 1209.01(b) (purpose), EUTMR Article 7(1)(c); from memory. The names are our own."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.doing import does
from namescreen.goods.stated_use import states_use
from namescreen.goods.tells import EvidenceKind


def _is_barred(name: str, goods: str, market: str) -> bool:
    found = distinctiveness(name, goods, markets=(market,))
    return isinstance(found, Distinctiveness) and found.category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Lint Lifter", "clothes brushes", "US"), ("Seed Starter", "seedling trays", "GB"),
        ("Veg Saver", "fridge storage bags", "GB"), ("Saddle Restorer", "balm for leather tack", "US"),
        ("Frizz Tamer", "hair serum", "GB"), ("Drip Catch", "silicone spoon rests", "GB"),
        ("Stops Squeaks", "lubricating sprays for hinges", "US"), ("For Left Handers", "scissors and peelers", "GB"),
        ("Quitamanchas", "jabón para ropa", "ES"), ("Corta Todo", "cuchillos de cocina", "ES"),
        ("Salvaspazio", "scatole pieghevoli", "IT"), ("Range Tout", "boîtes de rangement", "FR"),
        ("Para o Jardim", "ferramentas de jardim", "PT"), ("Voor de Hond", "hondenriemen", "NL"),
        ("Per Cani", "guinzagli", "IT"), ("Dla Wędkarzy", "kamizelki i termosy", "PL"),
        ("Antes da Corrida", "barras energéticas de aveia", "PT"), ("Fürs Bad", "Seifenschalen", "DE"),
        ("Zum Mitnehmen", "Trinkbecher", "DE"), ("Recién Hecho", "pan", "ES"), ("Comme Neuf", "cirage", "FR"),
        ("Net als Thuis", "maaltijden", "NL"), ("Qualität, die bleibt", "Bräter aus Gusseisen", "DE"),
        ("Planet First", "bamboo toothbrushes", "GB"), ("Hora do Banho", "esponjas", "PT"),
        ("Ora della Nanna", "luci notturne", "IT"), ("Spice Grinding", "mortars", "GB"),
        ("Fellpflege", "Hundebürsten", "DE"), ("Leeshoek", "lampen en kussens", "NL"),
        ("Garlic Chopper", "kitchen knives", "GB"), ("Lunch Hour", "lunch boxes", "GB"),
        ("Crumb Catcher", "toaster trays", "GB"), ("Sweat Tamer", "headbands", "US"),
        ("Hedge Trimmer Mate", "shears for hedges", "GB"),
        ("Wedding Guest", "hats and fascinators", "GB"), ("Kneel & Weed", "kneeling pads for gardeners", "GB"),
    ],
)  # fmt: skip
def test_what_goods_do_and_are_for_describes_them(name: str, goods: str, market: str) -> None:
    assert _is_barred(name, goods, market)


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Moon Lifter", "clothes brushes"), ("Dragon Keeper", "storage boxes"),
        ("Wolf Tamer", "hair serum"), ("After the Storm", "perfume"), ("For the Birds", "mugs"),
        ("Star Catcher", "rugs"), ("Moonbadger", "school bags"),
        ("Tea Singing", "tea"),
        ("Plum Evening", "scented candles"), ("Clover Hour", "honey"), ("Thrush Evening", "garden spades"),
        ("Gnat Party", "tea"), ("Zinc Hour", "watering cans"), ("Storm Tamer", "umbrellas"), ("Resin Tamer", "incense"),
        ("Tooth Painter", "teapots"), ("Eye Catcher", "scissors"), ("Bone Setter", "bread knives"),
        ("Secret Keeper", "biscuits"), ("Lighthouse Keeper", "marmalade"), ("Thunder Maker", "scarves"),
    ],
)  # fmt: skip
def test_images_do_not(name: str, goods: str) -> None:
    assert not _is_barred(name, goods, "GB")


def test_a_doer_says_something_of_what_goods_keep_off_hold_or_treat() -> None:
    assert does("rust", "eater", "oil for tools", tie=None)
    assert not does("rust", "eater", "cotton towels", tie=None)
    assert does("bread", "saver", "storage bags", tie=None)
    assert not does("bread", "saver", "wool hats", tie=None)
    assert not does("bottle", "opener", "wine", tie=EvidenceKind.TERM)  # another ware
    assert not does("wall", "covering", "snow suits", tie=None)  # another one, whatever the act


def test_a_use_is_stated_in_the_language_of_its_small_words() -> None:
    assert states_use(("para", "ninos"), "juguetes", ("es",)) == "es"
    assert states_use(("para", "ninos"), "juguetes", ("de",)) == ""
    assert states_use(("before", "breakfast"), "coffee", ()) == "en"
    assert states_use(("for", "sale"), "tables", ()) in ("", "en")
    assert states_use(("gardeners",), "trowels", ()) == ""


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Before Breakfast", "coffee beans", "GB"), ("After the Gym", "protein bars", "GB"),
        ("Before the Race", "energy gels", "GB"), ("After Dinner", "chocolate mints", "GB"),
        ("Nach dem Sport", "Duschgel", "DE"), ("Po Kąpieli", "ręczniki", "PL"), ("Dopo il Bagno", "accappatoi", "IT"),
        ("For Women", "razors", "GB"), ("Für Kinder", "Fahrräder", "DE"), ("For Knitters", "yarn", "GB"),
        ("For the Kitchen", "knives", "GB"), ("Till Köket", "knivar", "SE"), ("For Relaxing", "scented candles", "GB"),
        ("Pour la Plage", "serviettes de plage", "FR"), ("Hora de la Siesta", "hamacas", "ES"),
    ],
)  # fmt: skip
def test_a_time_act_or_user_of_these_goods_is_stated(name: str, goods: str, market: str) -> None:
    assert _is_barred(name, goods, market)


@pytest.mark.parametrize("goods", ["phone cases", "garden trowels", "kitchen knives"])
@pytest.mark.parametrize(
    ("name", "market"),
    [
        ("After the Trial", "GB"), ("Before Midnight", "GB"), ("Pre War", "US"), ("For Heretics", "GB"),
        ("For the Widow", "GB"), ("Before the Eclipse", "GB"), ("After Curfew", "GB"), ("For Smugglers", "US"),
        ("Für Ritter", "DE"), ("Vor dem Urteil", "DE"), ("Pour les Corsaires", "FR"), ("Para Piratas", "ES"),
        ("Depois do Baile", "PT"), ("Voor de Koning", "NL"), ("Dla Zbója", "PL"), ("Efter Stormen", "SE"),
        ("Per i Poeti", "IT"), ("Nach alter Eule", "DE"),
    ],
)  # fmt: skip
def test_any_time_act_or_person_is_not(name: str, goods: str, market: str) -> None:
    assert not _is_barred(name, goods, market)
