"""Which marks are asked about and shown, and what is told once: the order is one for rows and questions."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from namescreen.closeness.reason import About
from namescreen.marks import Mark
from namescreen.outcome import NotChecked
from namescreen.policy import LIKELY_REFUSED, STEPS
from namescreen.report import Report, to_markdown
from namescreen.report.findings import findings, matters
from namescreen.report.layout import laid_out
from namescreen.report.mark_choice import marks_shown
from namescreen.report.mark_tables import close_marks
from namescreen.report.model import Distinctiveness, Elsewhere, Goods, ProtectedSign
from namescreen.report.questions import asked_about, questions
from namescreen.screening.surplus import rest_of_both
from tests.report.test_worksheets import close, entry


def test_questions_go_to_the_marks_in_their_order_and_each_has_a_row(report: Report) -> None:
    meaning_only = replace(close("OTHER WORDS", 0.7), appearance=0.2, sound=0.2, meaning=0.95, concern=0.9)
    held = replace(close("OSTERLIN DUSKFALL", 0.7), appearance=0.6, sound=0.65, meaning=0.6, concern=0.7)
    many = [replace(close(f"DUSK {at}", 0.66), concern=0.6) for at in range(12)]
    dead = close("DUSK GONE", 0.6, status="dead")
    one = entry(meaning_only, held, *many, dead, name="Duskfall", words=("dusk", "fall"))
    asked = asked_about(one, report)
    assert [found.mark.text for found in asked[:2]] == ["OSTERLIN DUSKFALL", "OTHER WORDS"]
    shown = marks_shown(one, asked)
    assert set(asked) <= set(shown)
    assert dead not in shown
    text = laid_out(close_marks(one, report, asked), as_tables=True)
    assert all(found.mark.text in text for found in (held, meaning_only, *many))  # in a row, or named below them


def test_what_the_register_raises_is_told_once(report: Report) -> None:
    found = close("DUSKFALL HARBOUR", 0.8)
    old = replace(found, mark=replace(found.mark, registered="2010-01-01"))
    one = entry(old, name="Duskfall", words=("dusk", "fall"))
    marks = close_marks(one, report, asked_about(one, report))
    text = laid_out((*questions(one, report), *marks), as_tables=False)
    assert text.count("use to be shown") == 1


def test_forms_of_one_word_are_not_called_other_words(report: Report) -> None:
    found = replace(close("DUSKFALLS", 0.75), appearance=0.5, sound=0.5, meaning=0.95)
    (question,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert "a form of the same word" in question


def test_a_surname_is_asked_about_as_one_s_own(report: Report) -> None:
    """15 USC 1052(c): the name of a living person needs that person's consent."""
    found = Distinctiveness("descriptive", 0.2, called="surname")
    assert "is it your own name" in questions(entry(distinctiveness=found), report)[-1]


def test_a_place_with_no_serious_mark_is_not_told_as_clean(report: Report) -> None:
    place, coined = Distinctiveness("descriptive", 0.3, called="geographic"), Distinctiveness("fanciful", 0.9)
    names = (entry(name="Torvale", distinctiveness=place), entry(name="Duskfall", distinctiveness=coined))
    short = to_markdown(replace(report, names=names)).split("## In short")[1].split("##")[0]
    assert "To look closer at: Torvale (geographic" in short
    assert "1 has nothing graver than minor in that list (Duskfall)" in short


def test_what_a_name_is_hides_no_mark_to_look_closer_at(report: Report) -> None:
    place, coined = Distinctiveness("descriptive", 0.3, called="geographic"), Distinctiveness("fanciful", 0.9)
    near = replace(close("TORVALLE", 0.55), concern=STEPS[1][0] + 0.01)
    names = (entry(near, name="Torvale", distinctiveness=place), entry(name="Duskfall", distinctiveness=coined))
    short = to_markdown(replace(report, names=names)).split("## In short")[1].split("##")[0]
    assert "To look closer at: Torvale (TORVALLE" in short
    text = to_markdown(replace(report, names=names), as_tables=True)
    row = next(line for line in text.splitlines() if line.startswith("| Torvale"))
    assert "TORVALLE" in row
    assert "look closer: geographic" in row


def test_what_a_mark_says_alike_is_asked_in_whole_clauses(report: Report) -> None:
    held = 'In translation "abendrotglanz" may be read as "sunset glow"; "glow" says little of the maker.'
    found = replace(close("ABENDROTGLANZ", 0.6), appearance=0.3, sound=0.3, meaning=0.9, reasons=(held,))
    found = replace(found, about=(About.TRANSLATION,))
    (question,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert '(In translation "abendrotglanz" may be read as "sunset glow"): would' in question


@pytest.mark.parametrize(
    ("found", "but"),
    [
        (NotChecked("distinctiveness", "a word is not known"), "was not checked"),
        (Distinctiveness("fanciful", 0.9, ('"torvale": coined',)), ""),
    ],
)  # fmt: skip
def test_a_name_that_stands_first_is_not_told_as_clean_where_it_is_not(
    report: Report, found: Distinctiveness | NotChecked, but: str
) -> None:
    names = (entry(name="Torvale Ember", words=("torvale", "ember"), distinctiveness=found),
             entry(close("DUSKFALLS", 0.9), name="Duskfall"))  # fmt: skip
    told = to_markdown(replace(report, names=names)).splitlines()
    (line,) = (one for one in told if "Torvale Ember stands first" in one)
    assert ("But " in line) is bool(but)
    assert but in line


def test_past_cases_are_told_only_where_more_is_shared_than_words_for_the_goods(report: Report) -> None:
    told = "Of decided pairs as close"
    goods = replace(report, goods="herb pots")
    shared = entry(close("SLOW POTS", 0.7), name="Duskfall Pots", words=("duskfall", "pots"))
    assert told not in laid_out(close_marks(shared, goods), as_tables=True)
    assert told in laid_out(close_marks(replace(shared, words=("duskfall", "slow")), goods), as_tables=True)
    generic = replace(shared, words=("slow",), distinctiveness=Distinctiveness("generic", 0.0))
    assert told not in laid_out(close_marks(generic, goods), as_tables=True)


def test_what_found_nothing_takes_a_line(report: Report) -> None:
    """No table where nothing came near, and the nearest still named, so that "nothing found" can be judged."""
    parts = list(close_marks(entry(close("FAR OFF", 0.35), name="Duskfall"), report))
    assert len(parts) == 1
    text = laid_out(parts, as_tables=True)
    assert "Nothing found. What came nearest: FAR OFF" in text
    assert "0.35" in text


def test_the_same_goods_come_before_the_same_name_and_what_lives_before_what_has_lapsed() -> None:
    afar = replace(close("DUSKFALL", 1.0, goods=0.2), concern=0.56)
    near = replace(close("DUSKFELL", 0.6), concern=0.55)
    lapsed = replace(close("DUSKFALLEN", 0.6), concern=0.6, lapsed=True)
    assert [found.mark.text for found in matters(entry(afar, lapsed, near))] == ["DUSKFELL", "DUSKFALL", "DUSKFALLEN"]


def test_further_marks_are_told_by_name_and_level() -> None:
    grave, mild = replace(close("A", 0.8), concern=0.8), replace(close("B", 0.6), concern=0.55)
    (found, *_) = findings(entry(grave, grave, mild, mild))
    assert found.evidence == "A (0.80); A (0.80); look closer: B (0.60); 1 more to look at"


def test_no_question_stands_on_a_mark_of_which_nothing_was_found(report: Report) -> None:
    heard = replace(close("DUSKVALE", 0.57, goods=0.1), sound=1.0, concern=0.33)
    assert not asked_about(entry(heard, name="Duskfall", words=("dusk", "fall")), report)


def test_marks_of_which_nothing_was_found_take_no_row_and_the_nearest_live_one_is_named(report: Report) -> None:
    grave, live = close("DUSKFALLS", 0.8), replace(close("DUSKWATER", 0.45), concern=0.36)
    dead = replace(close("DUSKFALL OLD", 0.6, status="dead"), concern=0.3)
    milder = replace(close("DUSKFALL LONG GONE", 0.45, status="dead"), concern=0.2)
    one = entry(grave, dead, milder, live)
    assert [found.mark.text for found in marks_shown(one)] == ["DUSKFALLS"]
    text = laid_out(close_marks(one, report), as_tables=True)
    assert "Further off, below minor: DUSKWATER (" in text
    assert "DUSKFALL OLD (0.60, dead, would ask for a closer look if it lived)" in text
    assert "DUSKFALL LONG GONE" not in text


def test_the_goods_of_a_mark_stand_beside_its_classes(report: Report) -> None:
    found = close("DUSKFALLS", 0.8)
    pots = replace(found, mark=replace(found.mark, goods="plant pots; " + "saucers of glazed clay; " * 9))
    text = laid_out(close_marks(entry(pots), report), as_tables=True)
    (row,) = (line for line in text.splitlines() if "saucers" in line)
    assert re.search(r"\| 1.00, plant pots; (saucers of glazed clay; )+saucers of glazed clay \|", row)


def test_use_after_a_dead_us_mark_is_asked_about(report: Report) -> None:
    """Use gives rights in the US without registration (15 USC 1125(a), from memory)."""
    dead = Mark("DUSKFALL", "76000001", "US", (21,), status="dead", owner="Vey Pots LLC", territories=("US",))
    same = replace(close("DUSKFALL", 1.0, goods=0.1), appearance=1.0, concern=0.56, others=(dead,))
    asked = questions(entry(same, name="Duskfall"), replace(report, markets=("US",), classes=(21,)))[0]
    assert "76000001" in asked
    assert "outlast a registration" in asked
    other = replace(same, others=(replace(dead, classes=(36,)),))
    assert "outlast" not in questions(entry(other, name="Duskfall"), replace(report, markets=("US",), classes=(21,)))[0]


def test_a_mark_that_can_be_renewed_is_asked_about(report: Report) -> None:
    found = replace(close("DUSKFALLS", 0.5, status="dead"), concern=0.45, renewable_until="2027-01-21")
    assert "can be renewed until 2027-01-21" in questions(entry(found, name="Duskfall"), report)[0]


def test_a_kept_sign_has_its_own_label_and_no_total(report: Report) -> None:
    sign = ProtectedSign("olympic", True, "a word kept for the Olympic movement", "the national Olympic committee")
    held = Distinctiveness("descriptive", 0.8, protected=(sign,), called="geographic")
    kept = entry(name="Olympic Pots", distinctiveness=held)
    other = entry(name="Duskfall", distinctiveness=replace(held, protected=()))
    text = to_markdown(replace(report, names=(kept, other)), full=True)
    assert findings(kept)[1].value == 0
    assert findings(kept)[1].title == LIKELY_REFUSED
    assert "**Distinctiveness for the goods.** Likely refused." in text
    assert 'Olympic Pots (likely refused: "olympic"' in text
    (row,) = (line for line in text.splitlines() if line.startswith("| Olympic Pots") and "0.00" in line)
    assert row.split("|")[3].strip() == LIKELY_REFUSED


def test_every_aspect_that_is_very_close_is_told(report: Report) -> None:
    found = replace(close("DUSKFELL", 0.9), appearance=0.84, sound=0.86, meaning=1.0)
    (question,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert "close in appearance (0.84), sound (0.86) and meaning (1.00)" in question


def test_of_a_mark_that_probably_lapsed_it_is_asked_whether_it_lives_and_not_whether_it_is_used(report: Report) -> None:
    """Paris Convention, article 5bis(1): a term can be renewed for six months; a mark that is gone needs no use."""
    found = close("DUSKFALL", 1.0)
    old = replace(found.mark, registered="2010-01-01", expires="2020-01-01")
    (question,) = questions(entry(replace(found, mark=old, lapsed=True), name="Duskfall", words=("dusk",)), report)
    assert question.startswith("Does DUSKFALL")
    assert "still live?" in question
    assert question.count("ran out on 2020-01-01") == 1
    assert "use" not in question.replace("because", "")


def test_marks_that_begin_alike_and_have_one_owner_may_be_a_family(report: Report) -> None:
    """TMEP 1207.01(d)(xi); Court of Justice, C-234/06, Bainbridge: a family has to be in use (from memory)."""
    three = [replace(close(text, 0.4), concern=0.3) for text in ("TORVOMA", "TORVOPET", "TORVOLINE")]
    owned = [replace(one, mark=replace(one.mark, owner="Torv Works")) for one in three]
    asked = " ".join(questions(entry(*owned, name="Duskfall Torvoma", words=("duskfall", "torvoma")), report))
    assert "Torv Works holds TORVOLINE, TORVOMA and TORVOPET, which begin with torvo" in asked
    parted = " ".join(questions(entry(*owned[:2], name="Duskfall Torvoma", words=("duskfall", "torvoma")), report))
    assert "family" not in parted


def test_a_family_is_asked_about_if_one_of_its_marks_is_for_like_goods(report: Report) -> None:
    texts = ("TORVOMA", "TORVOPET", "TORVOLINE")
    for goods, asked in (((0.5, 0.1, 0.1), True), ((0.1, 0.1, 0.1), False)):
        marks = [replace(close(text, 0.4, of), concern=0.3) for text, of in zip(texts, goods, strict=True)]
        owned = [replace(one, mark=replace(one.mark, owner="Torv Works")) for one in marks]
        told = " ".join(questions(entry(*owned, name="Duskfall Torvoma", words=("duskfall", "torvoma")), report))
        assert ("family" in told) is asked


def test_the_nearest_mark_for_like_goods_is_asked_about_beside_the_same_sign_for_others(report: Report) -> None:
    """Common practice, no source: an identical sign for wine is no reason to pass over a near one for our goods."""
    afar = replace(close("DUSKFALL", 1.0, goods=0.0), concern=0.51)
    near = replace(close("DUSKHALL", 0.6, goods=0.5), concern=0.45)
    further = replace(close("DUSTFALL", 0.55, goods=0.5), concern=0.42)
    one = entry(afar, near, further, name="Duskfall", words=("duskfall",))
    told = " ".join(questions(one, report))
    assert "DUSKHALL is minor, but the nearest" in told
    assert "DUSTFALL" not in told
    both = entry(afar, replace(near, concern=0.55), further, name="Duskfall", words=("duskfall",))
    assert "the nearest" not in " ".join(questions(both, report))


def test_what_an_eu_mark_would_meet_is_told_once(report: Report) -> None:
    """EU Regulation 2017/1001, article 8(2)(a)(ii), from memory: marks of every member state are earlier marks."""
    found = replace(close("DUSKFELL", 0.85), concern=0.4, bites=False)
    italian = replace(found, mark=replace(found.mark, number="302019", territories=("IT",)))
    for markets, told in ((("DE",), 1), (("US",), 0)):
        one = entry(italian, name="Duskfall", words=("duskfall",))
        text = laid_out(close_marks(one, replace(report, markets=markets)), as_tables=True)
        assert text.count("Filed as an EU mark") == told
        assert text.count("DUSKFELL (no. 302019, IT") == told


def test_a_part_of_a_coined_word_makes_no_weak_mark(report: Report) -> None:
    weak = 'Weak in this field or in common use, so it counts less: "kind".'
    for text, told in (("TORKINDER", False), ("KIND TORVEN", True)):
        found = replace(close(text, 0.8), reasons=(weak,), about=(About.WEAK,), weak=("kind",), concern=0.8)
        text = laid_out(close_marks(entry(found, name="Torkinder Forge"), report), as_tables=True)
        assert (weak.rstrip(".") in text) is told


def test_every_mark_to_look_closer_at_has_a_question(report: Report) -> None:
    many = [replace(close(f"DUSKFAL{letter}", 0.8), concern=0.8) for letter in "ABCDEF"]
    one = entry(*many, name="Duskfall", words=("duskfall",))
    told = " ".join(questions(one, report))
    assert all(found.mark.text in told for found in many)
    assert "The same is to be asked of" in told


def test_a_uk_mark_that_came_from_an_ended_eu_mark_is_asked_about(report: Report) -> None:
    """Trade Marks Act 1994, schedule 2A (from memory): it has a term of its own."""
    found = replace(close("DUSKFALLS", 0.5, status="dead"), concern=0.45, renewable_until="2027-01-21")
    mark = replace(found.mark, office="EM", territories=("EU",), registered="2016-12-05", expires="2026-07-21")
    british = replace(report, markets=("GB", "DE"))
    asked = questions(entry(replace(found, mark=mark), name="Duskfall"), british)[0]
    assert "a UK mark with a term of its own came from it" in asked
    late = replace(mark, registered="2022-01-01")
    assert "UK mark" not in questions(entry(replace(found, mark=late), name="Duskfall"), british)[0]


def test_where_a_mark_holds_is_told_at_a_glance_if_not_in_all_markets() -> None:
    found = replace(close("DUSKFALLS", 0.8), concern=0.8, held=("US",))
    assert "in US)" in findings(entry(found))[0].evidence
    assert "in " not in findings(entry(replace(found, held=())))[0].evidence


def test_words_of_equal_length_are_no_forms_of_one_another(report: Report) -> None:
    found = replace(close("DUSKFALO", 0.75), appearance=0.8, sound=0.8, meaning=0.2, concern=0.7)
    assert "a form of the same word" not in questions(entry(found, name="Duskfaly", words=("duskfaly",)), report)[0]


@pytest.mark.parametrize("score", [0.2, 0.45])
def test_goods_sold_with_ours_are_asked_about_as_such(report: Report, score: float) -> None:
    """Canon, C-39/97: whether complementary goods are similar turns on what buyers expect, not on fame."""
    found = replace(close("DUSKFALL", 1.0), goods=Goods(score, together=True), appearance=1.0, knockout=False)
    (question, *_) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert "do buyers expect its goods, which may be sold or used with ours, from one maker, so that" in question
    assert "known well enough" not in question


@pytest.mark.parametrize(("score", "first"), [(0.1, True), (0.4, False)])
def test_what_an_office_refuses_for_itself_is_asked_first_where_it_is_serious(
    report: Report, score: float, first: bool
) -> None:
    found = close("DUSKFALL HARBOUR", 0.8)
    asked = questions(entry(found, name="Duskfall", distinctiveness=Distinctiveness("descriptive", score)), report)
    assert [question.startswith("Duskfall reads as describing") for question in asked] == [first, not first]


@pytest.mark.parametrize(("owner", "joined"), [("Osterlin AB", True), ("Another Ltd", False)])
def test_marks_of_one_owner_with_the_same_words_raise_one_question(report: Report, owner: str, joined: bool) -> None:
    found = replace(close("DUSKFAL", 0.96, knockout=True, owner="Osterlin AB"), held=("GB",))
    found = replace(found, mark=replace(found.mark, territories=("GB",)))
    other = Mark("DUSKFAL", status="live", owner=owner, classes=(3, 21), territories=("EU",))
    found = replace(found, others=(other,), elsewhere=(Elsewhere(0, ("DE",), 1.0, knockout=True),))
    (asked,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), replace(report, markets=("GB", "DE")))
    assert ("The same is to be asked in DE, where its owner has the same words" in asked) is joined
    assert "classes 3 and 21" in asked
    assert asked.count("grounds to oppose") == (0 if joined else 1)


def test_past_cases_are_not_told_beside_a_minor_mark(report: Report) -> None:
    mild = replace(close("DUSKER", 0.5), concern=STEPS[-1][0])
    grave = replace(close("DUSKER", 0.7), concern=0.7)
    told = [laid_out(close_marks(entry(one, name="Duskfall"), report), as_tables=True) for one in (mild, grave)]
    assert ["past cases" in one for one in told] == [False, True]


def test_a_word_that_both_share_in_another_number_is_named(report: Report) -> None:
    found = replace(close("HERONS REST", 0.7), appearance=0.7, sound=0.7)
    (question,) = questions(entry(found, name="Heron Rest", words=("heron", "rest")), report)
    assert "shares herons and rest with Heron Rest" in question


def test_what_is_left_without_surplus_words_is_asked_about(report: Report) -> None:
    """TMEP 1207.01(b)(iii): what is added seldom keeps marks apart (from memory)."""
    told = 'Compared without "sons", which seldom keeps marks apart: "duskfall" and "duskfal".'
    found = replace(close("DUSKFAL & SONS", 0.6), element=told, concern=0.7)
    (question,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert 'is close, compared without "sons", which seldom keeps marks apart ("duskfall" and "duskfal"; ' in question
    assert "(the " not in question
    assert question.count("(") == question.count(")")


def test_a_long_list_of_surplus_words_leaves_the_sentence_whole(report: Report) -> None:
    words = "FINEST PREMIUM ORIGINAL BEST QUALITY SUPERIOR EXCELLENT GREAT DELUXE SUPREME GENUINE CLASSIC & SONS"
    found = replace(close(f"DUSKFAL {words}", 0.6), concern=0.7)
    rest = rest_of_both("Duskfall", found.mark, report.goods, None)
    assert rest is not None
    (question,) = questions(entry(replace(found, element=str(rest)), name="Duskfall", words=("dusk", "fall")), report)
    assert '("duskfall" and "duskfal"; ' in question
    assert question.count("(") == question.count(")")
