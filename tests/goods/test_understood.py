"""What buyers of a market understand, and what is refused there in whatever language; the names are ours, common
practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs

BARRED = ("generic", "descriptive")


def category(name: str, goods: str, market: str) -> str:
    """The category in the market itself, not in the Union beside it."""
    found = distinctiveness(name, goods, markets=[market])
    assert isinstance(found, Distinctiveness)
    return next(one.category for one in found.markets if one.market == market)


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Zamsz", "handbags", "PL"), ("Daim", "gloves", "FR"), ("Feutre", "hats", "FR"), ("Korek", "handbags", "PL")],
)
def test_what_labels_say_of_the_goods_describes_in_their_language(name: str, goods: str, market: str) -> None:
    """Labels leave no choice of meanings, as a dictionary does."""
    assert category(name, goods, market) in BARRED


@pytest.mark.parametrize(("name", "goods", "market"), [("1000", "jigsaw puzzles", "FR"), ("Chantilly", "lace", "PL")])
def test_figures_and_places_are_read_everywhere(name: str, goods: str, market: str) -> None:
    assert category(name, goods, market) in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market", "barred"),
    [
        ("Cannella", "herbal tea", "FR", True),
        ("Cannella", "herbal tea", "GB", False),
        ("Olio", "olive oil", "DE", False),
        ("Zucchero", "sugar", "DE", True),
    ],
)
def test_a_word_much_like_their_own_is_understood(name: str, goods: str, market: str, barred: bool) -> None:
    """Cannelle, Zucker: after Matratzen Concord, C-421/04, what counts is whether buyers understand it."""
    assert (category(name, goods, market) in BARRED) is barred


@pytest.mark.parametrize(
    ("name", "goods", "barred"),
    [("Burgonya", "potatoes", True), ("Zwiebel", "onions", True), ("Weich", "towels", False)],
)
def test_canada_refuses_the_name_of_the_goods_in_any_language(name: str, goods: str, barred: bool) -> None:
    """Trademarks Act s. 12(1)(c); what only describes counts in English and French, s. 12(1)(b)."""
    assert (category(name, goods, "CA") in BARRED) is barred


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Nulli Secundus", "kettles", "GB"), ("Erste Wahl", "lamps", "DE"), ("Merino", "cardigans", "GB")],
)
def test_praise_of_several_words_and_stuffs_of_like_goods(name: str, goods: str, market: str) -> None:
    assert category(name, goods, market) in BARRED


@pytest.mark.parametrize("name", ["Rosalind Bankgate", "Beatrice Shopfield"])
def test_a_full_name_is_someones(name: str) -> None:
    """TMEP 1211.01(b)(iii): no word is seen in what follows a first name."""
    assert category(name, "lamps", "US") not in BARRED


def test_a_further_market_takes_no_better_reading() -> None:
    """A misspelling of the English word that is the word of another language is as plain as either."""
    markets = (["GB"], ["EU"], ["GB", "EU", "US", "DE"])
    found = [distinctiveness("Bergamotte", "soap", markets=one) for one in markets]
    scores = [one.score for one in found if isinstance(one, Distinctiveness)]
    assert scores == sorted(scores, reverse=True)


@pytest.mark.parametrize(
    ("name", "goods", "sign", "serious"),
    [
        ("Jojoba Heron", "hand cream", "jojoba", False),
        ("Almond Heron", "soap containing milk and oil", "almond", False),
        ("Austrian Heron", "hand cream", "austrian", False),
        ("Danish Lantern", "butter biscuits made in Leeds", "danish", True),
        ("Bean Heron", "coffee", "", False),
        ("Quiet Heron", "hand cream", "", False),
    ],
)
def test_what_a_name_says_and_the_goods_do_not_state_is_asked(name: str, goods: str, sign: str, serious: bool) -> None:
    """EUTMR Article 7(1)(g); Lanham Act s. 2(a), 2(e)(3): one question, a bar only where the goods say otherwise."""
    signs = [one for one in protected_signs(name, goods, markets=["GB"]) if one.kind in ("material", "misleading")]
    assert [(one.sign, one.serious) for one in signs] == ([(sign, serious)] if sign else [])
