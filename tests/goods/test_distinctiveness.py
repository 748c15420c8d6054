"""Where names stand for their goods, and how little a word says."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import CATEGORIES, Distinctiveness, distinctiveness, weakness
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


@pytest.mark.parametrize(("name", "goods"), [("Sprig", ""), ("", PLANTER), ("!!!", PLANTER), ("花盆", PLANTER)])
def test_nothing_to_judge_is_not_checked(name: str, goods: str) -> None:
    assert isinstance(distinctiveness(name, goods), NotChecked)


def test_the_continuum() -> None:
    """The same goods, from their own name to a coined word (TMEP 1209.01)."""
    names = ("Planter", "Best Herb Planter", "Otter", "Kelbo")
    assert [judged(name).category for name in names] == ["generic", "descriptive", "arbitrary", "fanciful"]
    scores = [judged(name).score for name in names]
    assert scores[0] < 0.3
    assert scores[1] < 0.3
    assert scores[2] > 0.7
    assert scores[3] == 1.0


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
    assert judged(name).score == pytest.approx(judged(as_plain).score, abs=0.15)
    assert judged(name).category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("Supreme", "praise"),
        ("Mini", "quality"),
        ("Parisian", "place"),
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


class TestForeignWords:
    """Doctrine of foreign equivalents, TMEP 1209.03(g)."""

    @staticmethod
    def german(word: str) -> tuple[str, ...]:
        return {"kräuter": ("herbs",), "krauter": ("herbs",), "eule": ("owl",)}.get(word, ())

    def test_a_translation_that_describes(self) -> None:
        found = distinctiveness("Kräuter", PLANTER, translate=self.german)
        assert isinstance(found, Distinctiveness)
        assert found.category in ("generic", "descriptive")
        assert 'means "herbs"' in found.reasons[0]

    def test_everyday_words_are_known_without_help(self) -> None:
        assert judged("Aardewerk", "pottery").score < 0.2
        assert "(nl)" in judged("Aardewerk", "pottery").reasons[0]
        assert judged("Aardewerk", "insurance").category == "arbitrary"

    def test_a_translation_that_does_not(self) -> None:
        found = distinctiveness("Eule", PLANTER, translate=self.german)
        assert isinstance(found, Distinctiveness)
        assert found.category == "arbitrary"


class TestCoinage:
    @pytest.mark.parametrize(
        ("word", "goods", "parts"),
        [("oatnut", "bread of oats and nuts", ("oat", "nut")), ("kelbo", PLANTER, ("kelbo",)),
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
        assert "newer word" in judged("Barista").reasons[0]


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
