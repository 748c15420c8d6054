"""What a name is for its goods, market by market, and how that ranks it; every name is invented."""

from __future__ import annotations

from dataclasses import replace

import pytest

from namescreen.outcome import NotChecked, Unread
from namescreen.policy import EVERYWHERE, LIKELY_REFUSED, Level
from namescreen.report import Report, to_markdown
from namescreen.report.findings import finding_of, findings, worst
from namescreen.report.model import Addresses, Distinctiveness, ItemView, MarketView, NameEntry, ProtectedSign
from namescreen.report.open_markets import lost, open_markets
from namescreen.report.questions import grave_questions, questions
from namescreen.report.sensitivity import standings, weighed
from tests.report.test_worksheets import close, entry

FREE, BARRED = "arbitrary", "descriptive"


def views(**called: str) -> tuple[MarketView, ...]:
    return tuple(MarketView(market, what, 0.1 if what == BARRED else 0.7) for market, what in called.items())


@pytest.mark.parametrize(
    ("called", "bars", "told"),
    [
        ({"US": FREE, "GB": FREE, "DE": BARRED}, False, "descriptive (0.10) in DE; no bar found in US and GB"),
        ({"US": BARRED, "GB": FREE, "DE": BARRED, "EU": BARRED}, True,
         "descriptive (0.10) in US and DE; no bar found in GB"),
        ({"US": BARRED, "GB": BARRED}, True, "descriptive (0.10)"),
    ],
)  # fmt: skip
def test_a_name_falls_where_most_markets_refuse_it_and_says_where(
    called: dict[str, str], bars: bool, told: str
) -> None:
    one = entry(name="Warm Felt", distinctiveness=Distinctiveness("descriptive", 0.1, markets=views(**called)))
    found = finding_of(one, "distinctiveness")
    assert (found.bars, found.level, found.evidence) == (bars, Level.SERIOUS, told)


def test_a_place_in_a_name_is_looked_at_and_asked_about(report: Report) -> None:
    """TMEP 1210; it may mislead wherever goods come from elsewhere."""
    held = Distinctiveness("suggestive", 0.62, markets=views(US=FREE, DE=FREE), places=("torvale",))
    one = entry(name="Torvale Hive", distinctiveness=held)
    found = finding_of(one, "distinctiveness")
    assert (found.level, found.bars) == (Level.LOOK, False)
    assert '"torvale" names a place' in found.evidence
    (question, *_) = questions(one, replace(report, markets=("US", "DE")))
    assert "come from there" in question
    assert "section 8(2)" in question
    assert "2(e)(2)" in question


def test_addresses_that_nobody_asked_about_count_nothing(report: Report) -> None:
    fits, unfit = (entry(name=name, addresses=Addresses(fit)) for name, fit in (("Fits", 1.0), ("Fitless", 0.1)))
    both = replace(report, names=(unfit, fits))
    assert "addresses" not in weighed(both)
    assert {row.low for row in standings(both)} == {standings(both)[0].low}


def test_of_names_alike_in_their_worst_finding_the_one_stopped_in_fewer_markets_stands_first(report: Report) -> None:
    def stopped(name: str, *held: str) -> object:
        return entry(replace(close("DUSKFALL", 0.9), knockout=True, concern=1.0, held=held, bites=True), name=name)

    three, one, every = stopped("Three", "GB", "DE", "FR"), stopped("One", "GB"), stopped("Every")
    whole = replace(report, names=(every, three, one))  # type: ignore[arg-type]
    assert [row.name for row in standings(whole)] == ["One", "Three", "Every"]
    assert [row.reach for row in standings(whole)] == [1, 3, EVERYWHERE]


def test_a_closed_name_of_known_words_is_told_as_coined(report: Report) -> None:
    judged = Distinctiveness("arbitrary", 0.65)
    made = entry(name="Hearthloop", words=("hearth", "loop"), distinctiveness=judged)
    assert findings(made)[1].evidence.startswith("a new compound")
    assert "A new compound, 0.65" in to_markdown(replace(report, names=(made,)))
    word = entry(name="Tallow", words=("tallow",), distinctiveness=judged)
    assert findings(word)[1].evidence.startswith("arbitrary")


def test_a_name_that_falls_in_some_markets_is_told_apart_from_one_that_falls_in_all(report: Report) -> None:
    def stopped(name: str, *held: str) -> NameEntry:
        return entry(replace(close("DUSKFALL", 0.9), knockout=True, concern=1.0, held=held, bites=True), name=name)

    of_four = replace(report, markets=("US", "GB", "DE", "FR"), names=(stopped("Nowhere"), stopped("Three", "DE")))
    falls = to_markdown(of_four).split("**Falls.** ")[1].splitlines()[0]
    assert falls == (
        "Strike, or ask about first: Nowhere (knockout: DUSKFALL). Falls in some markets, and nothing serious stands "
        "in those that are left: Three (knockout: DUSKFALL in DE; left: US, GB and FR)."
    )


def test_reach_counts_the_markets_where_a_name_is_as_grave_as_at_worst() -> None:
    """Descriptive in two markets, and plainly so in one; all of them in the second case, though "EU" is left out."""

    def reach(category: str, score: float, *told: MarketView) -> int:
        one = entry(name="Warm Felt", distinctiveness=Distinctiveness(category, score, markets=told))
        return finding_of(one, "distinctiveness").reach

    mild, plain = MarketView("GB", "descriptive", 0.5), MarketView("US", "descriptive", 0.1)
    assert reach("descriptive", 0.1, plain, mild, MarketView("DE", "arbitrary", 0.7)) == 1
    assert reach("descriptive", 0.1, plain, mild) == 1
    assert reach("descriptive", 0.5, mild, MarketView("DE", "arbitrary", 0.7)) == 1
    states = MarketView("DE", "generic", 0.05), MarketView("FR", "descriptive", 0.1)
    assert reach("generic", 0.05, *states, MarketView("EU", "generic", 0.05)) == EVERYWHERE


def test_a_name_that_falls_in_every_state_is_not_told_as_falling_in_some_markets_only(report: Report) -> None:
    told = (MarketView("DE", "generic", 0.05), MarketView("FR", "descriptive", 0.1), MarketView("EU", "generic", 0.05))
    one = entry(name="Warmfilz", distinctiveness=Distinctiveness("generic", 0.05, markets=told))
    text = to_markdown(replace(report, markets=("DE", "FR", "EU"), names=(one,)))
    assert "Falls in some markets only" not in text
    assert "Strike, or ask about first: Warmfilz" in text


def test_a_market_where_something_serious_stands_is_not_left(report: Report) -> None:
    knocked = replace(close("DUSKFALL", 0.9), knockout=True, concern=1.0, held=("DE",), bites=True)
    grave = replace(close("DUSKFELL", 0.8), concern=0.8, held=("US", "GB"), bites=True)
    barred = Distinctiveness(
        "generic", 0.1, markets=(MarketView("FR", "generic", 0.1), MarketView("GB", "arbitrary", 0.7))
    )
    of_four = replace(report, markets=("US", "GB", "DE", "FR"))
    assert open_markets(entry(knocked), of_four) == ("US", "GB", "FR")
    assert open_markets(entry(knocked, grave), of_four) == ("FR",)
    assert open_markets(entry(knocked, grave, distinctiveness=barred), of_four) == ()
    falls = to_markdown(replace(of_four, names=(entry(knocked, grave, distinctiveness=barred), entry(name="Else"))))
    assert "nothing serious stands in those that are left" not in falls
    assert "(knockout: DUSKFALL in DE; serious: DUSKFELL in US and GB)" in to_markdown(
        replace(of_four, markets=("US", "GB", "DE"), names=(entry(knocked, grave),))
    )
    assert "(knockout: DUSKFALL in DE; serious: DUSKFELL in US and GB; left: FR)" in to_markdown(
        replace(of_four, names=(entry(knocked, grave),))
    )


def test_a_name_that_could_not_be_judged_stands_behind_those_of_its_group(report: Report) -> None:
    grave = replace(close("DUSKFELL", 0.8), concern=0.8, held=("DE",), bites=True)
    unjudged = entry(grave, name="Unjudged", distinctiveness=NotChecked("distinctiveness", "not read"))
    strange = replace(unjudged, marks=(), unread=(Unread("weidlingen", "looks like a word of German"),))
    assert (worst(strange).level, worst(strange).title) == (Level.LOOK, "not judged")
    coined = Distinctiveness("fanciful", 0.9)
    wider = entry(replace(grave, held=("DE", "FR")), name="Wider", distinctiveness=coined)
    whole = replace(report, names=(unjudged, wider))
    assert [row.name for row in standings(whole)] == ["Wider", "Unjudged"]
    alone = replace(report, names=(unjudged, replace(unjudged, name="Other")))  # of none is it known
    assert not any(row.unjudged for row in standings(alone))


def test_a_name_that_falls_asks_about_every_grave_mark(report: Report) -> None:
    knocked = replace(close("DUSKFALL", 0.9), knockout=True, concern=1.0)
    grave = replace(close("DUSKFELL", 0.8), concern=0.8)
    mild = replace(close("DUSKER", 0.55), concern=0.52)
    text = to_markdown(replace(report, names=(entry(knocked, grave, mild), entry(name="Else"))))
    asked = text.split("If it is to be kept, ask:")[1].split("\n### ")[0].strip().splitlines()
    assert asked[0].startswith("1. DUSKFALL")
    assert asked[1].startswith("2. DUSKFELL")
    assert not any("DUSKER" in line for line in asked)


def test_what_a_name_is_for_each_of_the_goods_is_told_where_it_differs(report: Report) -> None:
    each = (ItemView("shaving brushes", "generic"), ItemView("beard oil", "arbitrary"))
    one = entry(name="Bristler", distinctiveness=Distinctiveness("generic", 0.1, by_item=each))
    (question, *_) = questions(one, report)
    assert 'Bristler reads as the name of "shaving brushes"' in question
    assert "A refusal covers these goods alone: can it be filed for the rest?" in question
    text = to_markdown(replace(report, names=(one,)))
    assert 'By goods: generic for "shaving brushes"; arbitrary for "beard oil".' in text
    barred = replace(each[1], called="descriptive")
    both = replace(one, distinctiveness=Distinctiveness("generic", 0.1, by_item=(each[0], barred)))
    assert "covers these goods alone" not in questions(both, report)[0]


@pytest.mark.parametrize(
    ("strange", "level", "told"),
    [
        ((), Level.LOOK, "that buyers know:"),
        (("US",), Level.LOOK, "that buyers know in DE:"),
        (("US", "DE"), Level.NOTHING, "few buyers"),
    ],
)
def test_a_place_is_looked_at_where_buyers_know_it(strange: tuple[str, ...], level: Level, told: str) -> None:
    """TMEP 1210.04(c): of a place that nobody knows nothing is to be feared."""
    held = Distinctiveness(
        "arbitrary", 0.72, markets=views(US=FREE, DE=FREE), places=("torvale",), strange_in=strange
    )
    found = finding_of(entry(name="Torvale Hive", distinctiveness=held), "distinctiveness")
    assert (found.level, found.bars) == (level, False)
    assert told in found.evidence


@pytest.mark.parametrize(
    ("category", "serious", "title", "level", "group"),
    [
        ("suggestive", True, "deceptive", Level.SERIOUS, True),
        ("generic", True, "deceptive", Level.SERIOUS, True),
        ("suggestive", False, "look closer", Level.LOOK, False),
        ("descriptive", False, LIKELY_REFUSED, Level.SERIOUS, True),
    ],
)
def test_deception_is_a_verdict_of_its_own(
    category: str, serious: bool, title: str, level: Level, group: bool
) -> None:
    """Whatever else the name is: use does not cure it (TMEP 1203.02; EUTMR Article 7(1)(g) and 7(3))."""
    sign = ProtectedSign("walnut", serious, "says it; US: law; from memory", "an office", (), True, "says it")
    part = Distinctiveness(category, 0.1, protected=(sign,), markets=views(US=category, DE=category))
    one = entry(name="Walnut Hollow", distinctiveness=part)
    found = finding_of(one, "distinctiveness")
    assert (found.title, found.level, found.bars) == (title, level, group)
    assert '"walnut"' in found.evidence
    assert "law" not in found.evidence


def test_what_may_deceive_is_told_beside_another_sign_that_is_asked_about() -> None:
    royal = ProtectedSign("regal", False, "may suggest patronage; from memory", "an office", (), False, "patronage")
    walnut = ProtectedSign("walnut", False, "says it; from memory", "an office", (), True, "says it")
    part = Distinctiveness("suggestive", 0.6, protected=(royal, walnut), markets=views(US="suggestive"))
    told = finding_of(entry(name="Regal Walnut", distinctiveness=part), "distinctiveness").evidence
    assert '"regal"' in told
    assert 'may deceive: "walnut"' in told


def test_a_word_that_few_understand_is_told_apart_from_no_bar(report: Report) -> None:
    seen = (
        MarketView("DE", "generic", 0.04, ground="generic", language="de"),
        MarketView("GB", FREE, 0.65, ground="foreign word"),
        MarketView("US", FREE, 0.75, ground="little-known place"),
    )
    one = entry(name="Schal", distinctiveness=Distinctiveness("generic", 0.04, markets=seen))
    found = finding_of(one, "distinctiveness")
    assert found.evidence == (
        "generic (0.04) in DE; free only as far as buyers do not understand it in GB; little known as a place in US"
    )
    assert "no bar found" not in found.evidence
    text = to_markdown(replace(report, names=(one, entry()), markets=("DE", "GB", "US")))
    assert "left: GB and US, as far as buyers there do not understand it" in text


def test_of_names_that_fall_those_stand_first_that_are_left_more_markets(report: Report) -> None:
    """Both are knocked out in one market; what else is serious closes further ones."""
    views = {market: replace(close("M", 0.9), held=(market,), bites=True) for market in ("US", "GB", "DE")}
    out = replace(views["US"], knockout=True, concern=1.0)
    grave = [replace(views[one], concern=0.7) for one in ("GB", "DE")]
    held, free = entry(out, *grave, name="Held"), entry(out, name="Free")
    assert (lost(held), lost(free)) == (3, 1)
    order = standings(replace(report, names=(held, free), markets=("US", "GB", "DE", "FR")))
    assert [row.name for row in order] == ["Free", "Held"]


def test_a_mark_of_a_market_that_is_left_is_asked_about(report: Report) -> None:
    out = replace(close("SORREL", 1.0), appearance=1.0, held=("US",), bites=True, knockout=True, concern=1.0)
    there = replace(close("SORRELHAY", 0.65), held=("DE",), bites=True, concern=0.55)
    one = entry(out, there, name="Sorrel", words=("sorrel",))
    asked = grave_questions(one, replace(report, names=(one, entry()), markets=("US", "DE")))
    assert any("SORRELHAY" in question for question in asked)


def test_a_market_without_a_law_of_its_own_here_is_told(report: Report) -> None:
    """An EU mark's law says nothing of the national marks of a state."""
    text = to_markdown(replace(report, markets=("PL", "HU")))
    assert "Poland" in text
    assert "HU (national marks)" in text
