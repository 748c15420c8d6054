"""Where names stand for their goods, and how little a word says."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import CATEGORIES, Distinctiveness, distinctiveness, distinctiveness_by_item, weakness
from namescreen.goods.coinage import divided, is_coined
from namescreen.outcome import NotChecked

PLANTER = "self-watering herb planter"


def judged(name: str, goods: str = PLANTER) -> Distinctiveness:
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    return found


@settings(deadline=None)
@given(st.text(max_size=40), st.sampled_from((PLANTER, "beer", "banking services", "zzyzxq")))
def test_any_name_has_a_place_or_is_not_checked(name: str, goods: str) -> None:
    found = distinctiveness(name, goods)
    if isinstance(found, Distinctiveness):
        assert found.category in CATEGORIES
        assert 0.0 <= found.score <= 1.0
        assert found.reasons
        assert found.hint
        assert json.loads(json.dumps(found.to_json()))["score"] == found.score
    else:
        assert isinstance(found, NotChecked)


@pytest.mark.parametrize(("name", "goods"), [("Sprig", ""), ("", PLANTER), ("花盆", PLANTER)])
def test_nothing_to_judge_is_not_checked(name: str, goods: str) -> None:
    assert isinstance(distinctiveness(name, goods), NotChecked)


def test_the_continuum() -> None:
    """The same goods, from their own name to a coined word (TMEP 1209.01)."""
    names = ("Planter", "Best Herb Planter", "Otter", "Kelbo")
    assert [judged(name).category for name in names] == ["generic", "descriptive", "arbitrary", "fanciful"]
    scores = [judged(name).score for name in names]
    assert scores[0] < 0.3
    assert scores[1] < 0.3
    assert scores[2] > 0.65
    assert scores[3] > scores[2]


def test_the_goods_decide() -> None:
    """Ivory describes tusks and is arbitrary for soap (Abercrombie & Fitch v. Hunting World, 2d Cir. 1976)."""
    assert judged("Ivory", "products made of elephant tusks").score < judged("Ivory", "soap").score
    assert judged("Basil", "dried herbs").score < judged("Basil", "insurance").score


@pytest.mark.parametrize(
    ("name", "as_plain"),
    [("Kwik Pot", "Quick Pot"), ("Plannter", "Planter"), ("Herb-Pot", "Herb Pot"), ("HERB POT", "herb pot"),
     ("Herb Pot Ltd", "Herb Pot"), ("The Herb Pot", "Herb Pot"), ("herbpot.com", "Herb Pot")],
)  # fmt: skip
def test_spelling_and_trimmings_do_not_make_a_name_distinctive(name: str, as_plain: str) -> None:
    """TMEP 1209.03(j) misspelling, 1209.03(m) domain endings, 1213.03(d) company forms."""
    assert judged(name).score == pytest.approx(judged(as_plain).score, abs=0.3)
    assert judged(name).category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("Supreme", "praise"),
        ("Mini", "quality"),
        ("Parisian", "geographic"),
        ("Patel", "surname"),
        ("Kids", "for whom"),
        ("Plannter", "sounds like"),
        ("Kelbo", "coined"),
        ("Otter", "no tie"),
        ("Herb", "word for the goods"),
    ],
)
def test_reasons_say_what_was_found(name: str, says: str) -> None:
    assert says in " ".join(judged(name).reasons)


def test_wild_places_are_not_where_goods_come_from() -> None:
    """TMEP 1210.04(d): a place where no such goods come from may be arbitrary."""
    assert judged("Matterhorn").score > judged("Paris").score


@pytest.mark.parametrize(
    ("name", "goods", "says"),
    [
        ("J. Kelbo & Sons", "pottery", "surname"),
        ("SWHP", "self-watering herb planter", "initials"),
        ("See-Thru", "transparent pots", "see-through"),
        ("Plantpot", PLANTER, "related to"),
    ],
)
def test_names_that_describe_in_a_roundabout_way(name: str, goods: str, says: str) -> None:
    """TMEP 1211 surnames, 1209.03(h) initials, (j) sound, (d) compounds."""
    found = judged(name, goods)
    assert found.category in ("generic", "descriptive")
    assert says in " ".join(found.reasons)


def test_a_goods_word_as_a_domain_is_generic() -> None:
    """In re Hotels.com (Fed. Cir. 2009); TMEP 1215.05."""
    assert judged("Pots.com", "planters and pots").category == "generic"


class TestLanguages:
    """Doctrine of foreign equivalents, TMEP 1209.03(g); EUTMR Article 7(2)."""

    @pytest.mark.parametrize(
        ("name", "goods", "language", "meaning"),
        [
            ("Kräutertee", "tea", "de", "tea"), ("Fahrrad", "bicycles", "de", "bicycle"),
            ("Vela", "candles", "es", "candle"), ("Sapone", "soap", "it", "soap"),
            ("Chocolat", "confectionery", "fr", "chocolate"),
            ("Koffie", "coffee", "nl", "coffee"), ("Aardewerk", "pottery", "nl", "pottery"),
            ("Miel", "honey", "fr", "honey"), ("Mermelada", "jam", "es", "jam"), ("Ost", "cheese", "sv", "cheese"),
            ("Handschuhe", "gloves", "de", "glove"), ("Zapatos", "shoes", "es", "shoe"),
        ],
    )  # fmt: skip
    def test_a_word_for_the_goods_in_the_language_of_the_buyers(
        self, name: str, goods: str, language: str, meaning: str
    ) -> None:
        found = distinctiveness(name, goods, languages=[language])
        assert isinstance(found, Distinctiveness)
        assert found.category in ("generic", "descriptive")
        first = found.languages[0]
        assert (first.language, first.category) == (language, found.category)
        assert meaning in first.meaning
        assert first.meaning in found.reasons[0]
        assert found.languages[0].score <= found.languages[-1].score

    @pytest.mark.parametrize(
        ("name", "goods", "language"),
        [("Eule", PLANTER, "de"), ("Hibou", "soap", "fr"), ("Ardilla", "bicycles", "es"), ("Uil", "tea", "nl")],
    )
    def test_a_word_for_something_else(self, name: str, goods: str, language: str) -> None:
        found = distinctiveness(name, goods, languages=[language])
        assert isinstance(found, Distinctiveness)
        assert found.category not in ("generic", "descriptive")

    def test_markets_bring_their_languages(self) -> None:
        german, british = (distinctiveness("Kräutertee", "tea", markets=[code]) for code in ("DE", "GB"))
        assert isinstance(german, Distinctiveness)
        assert isinstance(british, Distinctiveness)
        assert german.category == "generic"
        assert (british.category, british.markets[0].ground) == ("arbitrary", "foreign word")  # few there read it

    def test_a_near_language_speaks_for_one_that_lacks_the_word(self) -> None:
        found = distinctiveness("Tisana", "tea", markets=["ES"])
        assert isinstance(found, Distinctiveness)
        assert found.category in ("generic", "descriptive")

    def test_a_language_without_words_is_said(self) -> None:
        found = distinctiveness("Kelbo", PLANTER, languages=["th", "de"])
        assert isinstance(found, Distinctiveness)
        assert [str(one) for one in found.not_assessed] == [
            "distinctiveness in th: not checked, because no words of that language are shipped"
        ]


class TestKinds:
    @pytest.mark.parametrize("name", ["Hargreaves", "Patel", "Petersen", "Kowalski"])
    def test_a_surname_is_one_by_law(self, name: str) -> None:
        """US: primarily merely a surname (TMEP 1211); EU and UK: usually registrable (Nichols, C-404/02)."""
        found = judged(name, "tea")
        assert "surname" in found.kinds
        by_market = {one.market: one for one in found.markets}
        assert by_market["US"].category == "descriptive"
        assert "2(e)(4)" in by_market["US"].law
        assert by_market["EU"].category not in ("generic", "descriptive")
        abroad = distinctiveness(name, "tea", markets=["GB", "IE"])
        assert isinstance(abroad, Distinctiveness)
        assert abroad.category not in ("generic", "descriptive")

    @pytest.mark.parametrize("name", ["TLB", "KRW", "BNT"])
    def test_letters_are_not_coined(self, name: str) -> None:
        found = judged(name, "tea")
        assert found.category != "fanciful"
        assert "acronym" in found.kinds
        assert "read as letters" in found.reasons[0]

    def test_letters_that_stand_for_the_goods(self) -> None:
        """TMEP 1209.03(h)."""
        assert judged("SWHP", "self-watering herb planter").category in ("generic", "descriptive")

    @pytest.mark.parametrize(
        ("name", "goods"), [("Matcha", "lighters for smokers"), ("Skyline", "kite lines and winders")]
    )
    def test_no_tie_from_chance(self, name: str, goods: str) -> None:
        found = judged(name, goods)
        assert found.category not in ("generic", "descriptive")
        assert "sounds like" not in " ".join(found.reasons)

    @pytest.mark.parametrize(("name", "goods"), [("Matcha", "tea"), ("Kombucha", "soft drinks")])
    def test_new_words_of_the_trade_are_not_coined(self, name: str, goods: str) -> None:
        assert judged(name, goods).category in ("generic", "descriptive")

    @pytest.mark.parametrize(
        ("name", "language"), [("Superbe", "fr"), ("Delicioso", "es"), ("Wunderbar", "de"), ("Ottimo", "it")]
    )
    def test_praise_in_the_languages_of_the_buyers(self, name: str, language: str) -> None:
        found = distinctiveness(name, "jam", languages=[language])
        assert isinstance(found, Distinctiveness)
        assert found.category == "descriptive"

    def test_grounds_follow_the_markets(self) -> None:
        found = distinctiveness("Delicious", "jam", markets=["US", "DE", "GB", "BR"])
        assert isinstance(found, Distinctiveness)
        laws = {one.market: one.law for one in found.markets}
        assert list(laws) == ["US", "DE", "GB", "BR", "EU"]
        assert "1209.03(k)" in laws["US"]
        assert "7(1)(b)" in laws["EU"]
        assert "ask the local office" in laws["BR"]


class TestCoinage:
    @pytest.mark.parametrize(
        ("word", "goods", "parts"),
        [("figseed", "bars of figs and seeds", ("fig", "seed")), ("kelbo", PLANTER, ("kelbo",)),
         ("herbpot", PLANTER, ("herb", "pot")), ("planter", PLANTER, ("planter",))],
    )  # fmt: skip
    def test_closed_compounds(self, word: str, goods: str, parts: tuple[str, ...]) -> None:
        assert divided(word, goods) == parts

    def test_trade_names_in_the_lexicon_are_coined(self) -> None:
        """WordNet marks Kleenex as a trademark."""
        assert is_coined("kleenex")
        assert not is_coined("tissue")
        assert not is_coined("champagne")
        assert not is_coined("fang")
        assert "newer word" in judged("Blogosphere").reasons[0]


class TestWeakness:
    @settings(deadline=None)
    @given(st.text("abcdefghiklmnoprstuvwyz", min_size=1, max_size=9))
    def test_within_range(self, word: str) -> None:
        assert 0.0 <= weakness(word) <= weakness(word, ("herb", "planter")) <= 1.0

    def test_what_carries_no_weight(self) -> None:
        for word in ("the", "inc", "gmbh", "com"):
            assert weakness(word) == 1.0

    def test_the_order_of_words(self) -> None:
        words = ("planter", "best", "green", "otter", "kelbo")
        scores = [weakness(word, ("herb", "planter")) for word in words]
        assert scores == sorted(scores, reverse=True)
        assert scores[-1] == 0.0

    def test_only_the_goods_make_a_goods_word_weak(self) -> None:
        assert weakness("planter", ("herb", "planter")) > 0.8 > 0.2 > weakness("planter")


@pytest.mark.parametrize("name", ["Fietstas", "Cykeltaske", "Fahrradtasche", "Alforja"])
def test_in_the_union_every_language_of_its_members_counts(name: str) -> None:
    """EUTMR Article 7(2): a ground in a part of the Union is enough."""
    found = distinctiveness(name, "bicycle panniers", markets=("US", "EU"))
    assert isinstance(found, Distinctiveness)
    assert {one.market: one.category for one in found.markets}["EU"] in ("generic", "descriptive")
    assert [one.check for one in found.not_assessed] == ["distinctiveness in mt"]


@pytest.mark.parametrize("name", ["Loamlet", "Fernling", "Potlet"])
def test_a_living_ending_is_no_word_inside_a_coined_name(name: str) -> None:
    found = distinctiveness(name, "self-watering planters")
    assert isinstance(found, Distinctiveness)
    assert found.category in ("fanciful", "suggestive")


@pytest.mark.parametrize(
    ("name", "goods"),
    [("75 Centilitre", "wine"), ("3 Kilo", "flour"), ("20 Volt", "drills"), ("10 Yard", "ribbon")],
)
def test_a_quantity_of_the_goods_describes_them(name: str, goods: str) -> None:
    """EUTMR Article 7(1)(c) names the quantity (from memory)."""
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive")
    assert any("quantity" in reason for reason in found.reasons)


@pytest.mark.parametrize(("name", "goods"), [("3 Kilo", "sandals"), ("20 Volt", "marmalade"), ("900 Mile", "scarves")])
def test_a_unit_in_which_the_goods_are_not_measured_is_no_quantity_of_them(name: str, goods: str) -> None:
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    assert not any("quantity" in reason for reason in found.reasons)


@pytest.mark.parametrize(("name", "goods"), [("Extra Long", "curtains"), ("Extra Strong", "glue")])
def test_a_quality_that_is_praised_is_no_image(name: str, goods: str) -> None:
    """Common practice, no source: a degree of a quality describes as the quality does."""
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    assert found.category == "descriptive"


def test_a_reason_says_for_which_of_several_goods_a_word_describes() -> None:
    """A name that describes one of several goods is refused for it (common practice, no source)."""
    several, other = distinctiveness("Saucer", "umbrellas, plates, soap"), distinctiveness("Saucer", "umbrellas, soap")
    assert isinstance(several, Distinctiveness)
    assert isinstance(other, Distinctiveness)
    assert several.category == "descriptive"
    assert any('"plate' in reason for reason in several.reasons)
    assert other.category not in ("generic", "descriptive")


@pytest.mark.parametrize("name", ["PCC Proper Chutney Company", "Authentic Farm Chutney AFC"])
def test_letters_share_the_fate_of_the_words_whose_initials_they_are(name: str) -> None:
    """Strigl, C-90/11 and C-91/11 (Multi Markets Fund MMF)."""
    found = distinctiveness(name, "chutney", markets=["US", "GB", "DE"])
    assert isinstance(found, Distinctiveness)
    assert found.category == "descriptive"
    assert any("the initials of" in reason for reason in found.reasons)
    assert not any('"pee"' in reason for reason in found.reasons)


def test_letters_of_other_words_are_their_own() -> None:
    found = distinctiveness("TLB Proper Chutney Company", "chutney", markets=["GB"])
    assert isinstance(found, Distinctiveness)
    assert not any("the initials of" in reason for reason in found.reasons)


def test_one_market_alone_is_told_as_beside_others() -> None:
    """A descriptive French name is no coinage in the United Kingdom, and barred where buyers understand it (TMA 1994
    s. 3(1)(c), from memory)."""
    told = []
    for markets in (["GB"], ["US", "GB", "DE", "FR"]):
        found = distinctiveness("Cornichons Croquants", "pickles, gherkins", markets=markets)
        assert isinstance(found, Distinctiveness)
        told.append(next((one.category, one.ground) for one in found.markets if one.market == "GB"))
    assert told[0] == told[1] == ("arbitrary", "foreign word")


def test_a_barred_name_is_judged_for_each_of_the_goods() -> None:
    found = distinctiveness_by_item("Lantern", "lanterns, beard oil", markets=["GB"])
    assert not isinstance(found, NotChecked)
    assert [one.called for one in found.by_item] == ["generic", "arbitrary"]
    alone = distinctiveness_by_item("Lantern", "lanterns", markets=["GB"])
    assert not isinstance(alone, NotChecked)
    assert alone.by_item == ()
