"""Places and words that may evoke a protected name of origin, without holding it."""

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs
from namescreen.goods.known_places import known_places


@pytest.mark.parametrize(
    ("name", "goods", "market", "sign", "names"),
    [
        # Scotch Whisky Association v Klotz, C-44/17 (2018), and Landgericht Hamburg, 327 O 127/16 (2019): "Glen" calls
        # Scotch Whisky to mind
        ("Glen Buchenbach", "whisky", "DE", "glen", "Scotch Whisky"),
        # Queso Manchego, C-614/17 (2019): signs of Don Quixote and his country may evoke the cheese
        ("Rocinante Dairy", "cheese", "ES", "rocinante", "Queso Manchego"),
        # the rest: common practice, no source
        ("Normandy Kiss", "cider", "GB", "normandy", "Calvados"),
        ("Kiss Normand", "cidre", "FR", "normand", "Calvados"),
        ("Breton Larder", "perry", "FR", "breton", "Cidre de Bretagne"),
        ("Black Forest Fox", "ham", "DE", "black forest", "Schwarzwälder Schinken"),
        ("Herefordshire Hare", "perry", "GB", "herefordshire", "Cider and Perry"),
    ],
)
def test_a_place_brings_a_protected_name_to_mind(name: str, goods: str, market: str, sign: str, names: str) -> None:
    found = [one for one in protected_signs(name, goods, markets=[market]) if one.kind == "evocation"]
    assert [one.sign for one in found] == [sign]
    assert names in found[0].reason
    assert "from memory" in found[0].reason
    assert found[0].serious
    assert found[0].grounds
    assert all("not known" not in one.law for one in found[0].grounds)


@pytest.mark.parametrize(
    ("name", "goods"), [("Normandy Kiss", "soap"), ("Glen Otter", "tents"), ("Otter Kiss", "cider"), ("Normandy", "")]
)
def test_other_goods_and_other_words_evoke_nothing(name: str, goods: str) -> None:
    assert not protected_signs(name, goods, markets=["GB"])


@pytest.mark.parametrize(
    ("name", "goods", "market", "of", "serious"),
    [
        ("Champanillo", "sparkling wine", "ES", "champagne", True),  # CIVC v GB, C-783/19 (2021)
        ("Verlados", "apple brandy", "FI", "calvados", False),  # Viiniverla, C-75/15 (2016): left to the national court
        ("Cambozola", "blue cheese", "DE", "gorgonzola", False),  # Gorgonzola, C-87/97 (1999): could be evoked
        ("Veltrano", "glass vases", "IT", "", False),  # a common ending is not the name: common practice, no source
        # the rest: common practice, no source
        ("Prosecchella", "sparkling wine", "IT", "prosecco", True),
        ("Tequilito", "agave spirit", "GB", "tequila", True),
        ("Ouzaki", "ouzo", "GR", "", False),
        ("Champion", "sparkling wine", "FR", "", False),
        ("Portello", "wine", "PT", "", False),
        ("Champanillo", "garden forks", "ES", "", False),
    ],
)
def test_a_word_made_like_a_protected_name_evokes_it(
    name: str, goods: str, market: str, of: str, serious: bool
) -> None:
    found = [one for one in protected_signs(name, goods, markets=[market]) if one.kind == "evocation"]
    assert [f'"{of}"' in one.reason for one in found] == ([True] if of else [])
    assert all(one.serious == serious for one in found)


def test_a_word_made_like_a_protected_name_is_no_place_and_bars_nothing_in_the_united_states() -> None:
    (american,) = protected_signs("Prosecchella", "sparkling wine", markets=["US"])
    assert not american.serious
    (union,) = protected_signs("Prosecchella", "sparkling wine", markets=["US", "IT"])
    assert [one.market for one in union.grounds] == ["EU"]


@pytest.mark.parametrize(
    ("name", "goods", "sign", "serious"),
    [
        ("Pure Merino", "acrylic socks", "merino", True),
        ("Solid Gold", "gold-plated rings", "solid gold", True),
        ("Real Leather", "vegan belts", "leather", True),
        ("Sugar Free", "sweetened iced tea", "sugar free", True),
        ("Genuine Swiss", "watches made in Portugal", "swiss", True),
        ("Italian Leather", "bags from Turkey", "italian", True),
        ("Cherry", "plum jam", "cherry", True),
        ("Leather Heron", "vegan belts", "leather", False),
        ("Swiss Roll", "cakes from Leeds", "", False),
        ("Nordic Wool", "Norwegian jumpers", "wool", False),
        ("Plain Gold", "rings of gold", "", False),
        ("Real Leather", "leather belts", "", False),
        ("Genuine Swiss", "watches made in Switzerland", "", False),
        ("Whole Bean", "coffee", "", False),
        ("Vegan Balm", "beeswax-free lip balm", "", False),
    ],
)
def test_a_plain_promise_that_the_goods_rule_out_misleads(name: str, goods: str, sign: str, serious: bool) -> None:
    """EUTMR Article 7(1)(g); TMA 1994 s. 3(3)(b); Lanham Act s. 2(a), from memory; the names: common practice."""
    signs = protected_signs(name, goods, markets=["US", "DE"])
    found = [one for one in signs if one.kind in ("material", "misleading")]
    assert [(one.sign, one.serious) for one in found] == ([(sign, serious)] if sign else [])


@pytest.mark.parametrize(
    ("name", "goods", "called"),
    [
        ("Kilimanjaro", "roasted coffee", "geographic"), ("Kilimanjaro", "bicycle bells", "arbitrary"),
        ("Cotopaxi", "chocolate", "geographic"), ("Cotopaxi", "umbrellas", "arbitrary"),
        ("Titicaca", "alpaca jumpers", "geographic"),
    ],
)  # fmt: skip
def test_a_wild_place_tells_where_goods_come_from_that_it_is_known_for(name: str, goods: str, called: str) -> None:
    """TMEP 1210.04; Windsurfing Chiemsee, C-108/97; what places are known for is from memory."""
    found = distinctiveness(name, goods, markets=["US"])
    assert isinstance(found, Distinctiveness)
    assert found.markets[0].called == called


def test_a_protected_name_itself_says_enough() -> None:
    assert {one.kind for one in protected_signs("Calvados Normandy", "apple brandy", markets=["FR"])} == {"origin"}


def test_american_law_does_not_bar_what_only_evokes() -> None:
    """From memory: in the United States a place misleads or not, Lanham Act s. 2(e)(3); for the EU and the UK see the
    grounds."""
    (american,) = protected_signs("Spreewald Sunday", "pickled gherkins", markets=["US"])
    (union,) = protected_signs("Spreewald Sunday", "pickled gherkins", markets=["US", "DE"])
    assert not american.serious
    assert "2(e)(3)" in american.reason
    assert union.serious
    assert "Article 26(1)(b)" in union.reason


@pytest.mark.parametrize(
    ("name", "goods", "sign"),
    [
        ("Oak Otter", "wooden building blocks made of ash and beech", "oak"),
        ("Silk & Tide", "scarves of cotton", "silk"),
        ("Oak Block Works", "wooden toy building blocks", ""),
        ("Oak Block Works", "building blocks of oak and beech", ""),
        ("Otter Works", "wooden toy building blocks made of ash and beech", ""),
    ],
)
def test_a_material_that_the_goods_contradict_is_asked_about(name: str, goods: str, sign: str) -> None:
    """EUTMR Article 7(1)(g); TMA 1994 s. 3(3)(b); Lanham Act s. 2(a) and 2(e)(1), from memory."""
    found = [one for one in protected_signs(name, goods, markets=["US", "DE", "GB"]) if one.kind == "material"]
    assert [one.sign for one in found] == ([sign] if sign else [])
    assert all(not one.serious and "mislead" in one.reason and "7(1)(g)" in one.reason for one in found)


def test_a_false_material_with_nothing_of_its_own_beside_it_misleads() -> None:
    """Lanham Act s. 2(a); TMEP 1203.02, from memory: the word for the goods and for a workshop leave nothing else."""
    found = protected_signs("Oak Block Works", "wooden building blocks made of ash and beech", markets=["US", "GB"])
    assert [(one.sign, one.serious) for one in found if one.kind == "material"] == [("oak", True)]


def test_a_place_of_crafts_is_told_under_the_law_on_crafts() -> None:
    (found,) = protected_signs("Erzgebirge Blocks", "wooden toys", markets=["GB", "DE"])
    assert "2023/2411" in found.reason
    assert "2024/1143" not in found.reason
    assert not found.serious


@pytest.mark.parametrize(
    ("name", "goods", "serious"),
    [("Gorgonella", "blue cheese", True), ("Prosetto", "sparkling wine", True), ("Bainne", "milk", False)],
)
def test_a_word_made_of_most_letters_of_a_name_of_origin_evokes_it(name: str, goods: str, serious: bool) -> None:
    """Gorgonzola and Cambozola, C-87/97; an Irish word for milk is none, however like one it looks."""
    found = [one for one in protected_signs(name, goods, markets=["EU"]) if one.kind == "evocation"]
    assert any(one.serious for one in found) is serious


@pytest.mark.parametrize(
    ("name", "goods", "market", "kind"),
    [
        ("Joux Valley Time", "wristwatches", "CH", "evocation"), ("Mostviertler Art", "perry", "DE", "origin"),
        ("Picodonna", "goat cheese", "FR", "evocation"), ("Oeconomie Tropea", "onions", "IT", "origin"),
        ("Maniago Edge", "kitchen knives", "IT", "craft"), ("Arraiolos Room", "rugs", "PT", "craft"),
        ("Boleslawiec Blue", "stoneware mugs", "PL", "craft"), ("Seiffen Star", "wooden toys", "DE", "craft"),
    ],
)  # fmt: skip
def test_names_of_origin_product_by_product(name: str, goods: str, market: str, kind: str) -> None:
    """Registers of names of origin and laws on crafts, from memory; Regulation (EU) 2024/1143, Article 26."""
    assert any(one.serious and one.kind == kind for one in protected_signs(name, goods, markets=(market,)))


@pytest.mark.parametrize(
    ("name", "goods"), [("Maniago", "soap"), ("Banon", "jam"), ("Chabichou Lane", "marmalade"), ("Arraiolos", "tea")],
)
def test_a_name_that_few_know_says_nothing_of_goods_of_another_sort(name: str, goods: str) -> None:
    """Its fame cannot be taken advantage of; ours, after Article 26(1)(a) of the Regulation."""
    told = {one.kind for one in protected_signs(name, goods, markets=("EU",))}
    assert told.isdisjoint(("origin", "craft", "evocation"))


def test_of_places_told_together_each_brings_its_own_names_to_mind() -> None:
    """Marseille is known for its soap, and Grasse for what perfumes are made of (from memory)."""
    (marseille, *_) = known_places("marseille", "soap")
    assert "Savon de Marseille" in marseille.names
    assert "Grasse" not in marseille.names
    (norman, *_) = known_places("normand", "cider")
    assert {"Calvados", "Cidre de Normandie"} <= set(norman.names.split(", "))  # Calvados is no other place here
