"""What further markets and languages, misspellings, joined words and half-words do to a name."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import CATEGORIES, Distinctiveness, distinctiveness
from namescreen.goods.coinage import divided

PANNIERS = "bicycle panniers; bags adapted for bicycles; bicycle tail lights; backpacks"
NAMES = ("Prime Carry", "Panyer", "Sanfter Riese", "Grand Vent", "Otter", "Velmura", "Fahrradtasche", "Brandstetter",
         "Soft Bag", "Girona", "Emberleaf", "Verse Koffie", "Rode Tas", "Sacoche", "Snugglo")  # fmt: skip
UNKNOWN = CATEGORIES.index("descriptive")
MARKETS = ("US", "GB", "DE", "FR", "ES", "IT", "NL")


def judged(name: str, goods: str, *, markets: list[str], languages: list[str] | None = None) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets, languages=languages)
    assert isinstance(found, Distinctiveness)
    return found


def place(name: str, markets: list[str], languages: list[str] | None = None) -> int:
    """The place on the continuum; a name that cannot be judged may be anything that is not known to be worse."""
    found = distinctiveness(name, PANNIERS, markets=markets, languages=languages)
    return CATEGORIES.index(found.category) if isinstance(found, Distinctiveness) else UNKNOWN


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(NAMES), st.lists(st.sampled_from(MARKETS), min_size=2, unique=True))
def test_a_further_market_never_makes_a_name_better(name: str, markets: list[str]) -> None:
    """A name must be registrable in each of its markets."""
    fewer, more = (place(name, asked) for asked in (markets[:-1], markets))
    assert more <= fewer


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(NAMES), st.lists(st.sampled_from(("de", "fr", "es", "it", "nl")), min_size=1, unique=True))
def test_a_further_language_never_makes_a_name_better(name: str, languages: list[str]) -> None:
    """EUTMR Article 7(2): a name is refused if it describes in one language of the Union."""
    fewer, more = (place(name, ["US", "DE"], stated) for stated in (languages[:-1], languages))
    assert more <= fewer


@pytest.mark.parametrize(
    ("name", "heard"),
    [("Panyer", "pannier"), ("Bysicle", "bicycle"), ("Bakpack", "backpack"), ("Ruksak", "rucksack")],
)
def test_a_misspelt_word_for_the_goods_is_that_word_in_english(name: str, heard: str) -> None:
    """TMEP 1209.03(j): buyers hear no difference; it is no word of another language."""
    goods = f"{PANNIERS}; rucksacks"
    found = judged(name, goods, markets=["US", "NL", "GB"], languages=["de", "es"])
    assert found.category in ("generic", "descriptive")
    assert heard in found.reasons[0]
    assert all(one.ground == "misspelling" for one in found.markets)


@pytest.mark.parametrize("name", ["Emberleaf", "Mossgate", "Briarwell", "Foxglade", "Lanternfox", "Wrenfield"])
def test_two_whole_words_run_together_are_judged_as_such(name: str) -> None:
    """A closed compound is no coinage (TMEP 1209.03(d) judges it by its parts)."""
    assert len(divided(name.lower(), "teapots")) == 2
    assert judged(name, "teapots", markets=["US", "GB"]).category in ("suggestive", "arbitrary")


@pytest.mark.parametrize("name", ["Velmura", "Tozivan", "Quendaro", "Relkova"])
def test_a_coinage_is_not_taken_apart(name: str) -> None:
    assert divided(name.lower(), "teapots") == (name.lower(),)
    assert judged(name, "teapots", markets=["US", "GB"]).category == "fanciful"


@pytest.mark.parametrize(("name", "goods"), [("Snugglo", "blankets"), ("Zestora", "lemon cordials")])
def test_a_coinage_from_half_a_quality_only_hints(name: str, goods: str) -> None:
    """Buyers must take it apart: suggestive (TMEP 1209.01(a))."""
    assert judged(name, goods, markets=["US", "GB"]).category in ("suggestive", "fanciful")


def test_a_word_that_has_nothing_to_do_with_the_goods_is_not_told_of_them() -> None:
    """A quill is a tail feather, and a pannier is not: its tail light brings no feather to mind."""
    assert "quill" not in " ".join(judged("Quillory", PANNIERS, markets=["US", "GB"]).reasons[0].split()[1:])


def test_a_word_of_another_language_is_no_coinage_elsewhere() -> None:
    found = judged("Fahrradtasche", PANNIERS, markets=["DE", "GB"])
    assert {one.market: one.category for one in found.markets} == {"DE": "generic", "GB": "arbitrary", "EU": "generic"}


def test_spanish_is_not_asked_of_american_buyers_where_languages_are_stated() -> None:
    found = judged("Otter", "tea", markets=["US"], languages=["de", "fr"])
    assert not {one.language for one in found.languages} & {"es"}


@pytest.mark.parametrize(
    ("name", "goods", "markets"),
    [("Sanfter Riese", "wind chimes", "DE"), ("Grand Vent", "candles", "FR"), ("Superb Anvil", "tea", "US GB")],
)
def test_praise_of_something_else_does_not_describe(name: str, goods: str, markets: str) -> None:
    assert judged(name, goods, markets=markets.split()).category in ("suggestive", "arbitrary")


@pytest.mark.parametrize(
    ("name", "goods"), [("Boxx", "boxes"), ("Kandlz", "candles"), ("Sope Dishez", "soap dishes"), ("Bredd", "bread")]
)
def test_several_respelt_words_describe_together(name: str, goods: str) -> None:
    """Doubled letters, a lost e, z for s: as descriptive as the words they are heard as (TMEP 1209.03(j))."""
    assert judged(name, goods, markets=["US", "GB"]).category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "market"),
    [("Optimum", "US"), ("Excelsior", "GB"), ("Maximus", "DE"), ("Unvergleichlich", "DE"), ("Voortreffelijk", "NL"),
     ("Enastående", "SE"), ("Fremragende", "DK"), ("Ypperlig Kvalitet", "NO"), ("Erinomainen", "FI"),
     ("Imbattable", "FR"), ("Inigualable", "ES"), ("Impareggiabile", "IT"), ("Imbatível", "PT"), ("Inegalabil", "RO"),
     ("Niezrównany", "PL"), ("Nejlepší", "CZ"), ("Páratlan", "HU"), ("Mükemmel", "TR"), ("Izvrsno", "HR")],
)  # fmt: skip
def test_praise_of_the_market_is_praise(name: str, market: str) -> None:
    """TMEP 1209.03(k); EUTMR Article 7(1)(b): words of praise are free to all."""
    assert judged(name, "garden shears", markets=[market]).category == "descriptive"


@pytest.mark.parametrize(
    ("name", "goods"), [("Sapone", "soap"), ("Escoba", "brooms"), ("Mantel", "tablecloths"), ("Echarpe", "scarves")]
)
def test_to_state_a_language_lifts_no_bar(name: str, goods: str) -> None:
    """American and European law read a word of another language whatever languages the maker states (TMEP 1209.03(g);
    EUTMR Article 7(2), from memory)."""
    read = judged(name, goods, markets=["US", "GB", "DE"], languages=["de"])
    found = {one.market: one.category for one in read.markets}
    assert {found["US"], found["EU"]} <= {"generic", "descriptive"}
    assert found["DE"] not in ("generic", "descriptive")  # few buyers there read it


def test_a_word_that_buyers_understand_is_kept_beside_a_strange_one() -> None:
    """Ours: a place or claim in the buyers' own tongue says something, whatever stands beside it."""
    found = distinctiveness("Marseille Lather", "shaving soap", markets=["GB", "FR"])
    assert isinstance(found, Distinctiveness)
    by_market = {one.market: one for one in found.markets}
    assert (by_market["GB"].category, by_market["FR"].category) == ("descriptive", "suggestive")


@pytest.mark.parametrize(
    ("name", "category"),
    [("Grey Heron", "arbitrary"), ("Hobrook Corvandel", "fanciful"), ("Glattrasur", "descriptive")],
)
def test_images_coinages_and_compounds_of_two_plain_words(name: str, category: str) -> None:
    """TMEP 1209.01; 1209.03(g); from memory."""
    assert judged(name, "shaving soap", markets=["DE", "FR"]).category == category
