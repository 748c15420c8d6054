"""Which marks are asked about and shown, and what is told once: the order is one for rows and questions."""

from __future__ import annotations

from dataclasses import replace

from namescreen.report import Report, to_markdown
from namescreen.report.mark_tables import close_marks, marks_shown
from namescreen.report.model import Distinctiveness
from namescreen.report.questions import asked_about, questions
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
    text = "\n".join(close_marks(one, report, asked))
    assert all(found.mark.text in text for found in (held, meaning_only, *many))  # in a row, or named below them


def test_what_the_register_raises_is_told_once(report: Report) -> None:
    found = close("DUSKFALL HARBOUR", 0.8)
    old = replace(found, mark=replace(found.mark, registered="2010-01-01"))
    one = entry(old, name="Duskfall", words=("dusk", "fall"))
    text = "\n".join((*questions(one, report), *close_marks(one, report, asked_about(one, report))))
    assert text.count("prove use") == 1


def test_forms_of_one_word_are_not_called_other_words(report: Report) -> None:
    found = replace(close("DUSKFALLS", 0.75), appearance=0.5, sound=0.5, meaning=0.95)
    (question,) = questions(entry(found, name="Duskfall", words=("dusk", "fall")), report)
    assert "a form of the same word" in question


def test_a_surname_is_asked_about_as_one_s_own(report: Report) -> None:
    """15 USC 1052(c): the name of a living person needs that person's consent."""
    found = Distinctiveness("descriptive", 0.2, called="surname")
    assert "is it your own name" in questions(entry(distinctiveness=found), report)[-1]


def test_a_place_with_no_serious_mark_is_not_told_as_clean(report: Report) -> None:
    place = Distinctiveness("descriptive", 0.3, called="geographic")
    names = (entry(name="Torvale", distinctiveness=place), entry(name="Duskfall"))
    short = to_markdown(replace(report, names=names)).split("## In short")[1].split("##")[0]
    assert "Torvale: no serious mark, but look closer at what the name is: geographic" in short
    assert "Nothing serious was found against Duskfall." in short


def test_past_cases_are_told_only_where_more_is_shared_than_words_for_the_goods(report: Report) -> None:
    told = "Of decided pairs as close"
    goods = replace(report, goods="herb pots")
    shared = entry(close("SLOW POTS", 0.7), name="Duskfall Pots", words=("duskfall", "pots"))
    assert told not in "\n".join(close_marks(shared, goods))
    assert told in "\n".join(close_marks(replace(shared, words=("duskfall", "slow")), goods))
    generic = replace(shared, words=("slow",), distinctiveness=Distinctiveness("generic", 0.0))
    assert told not in "\n".join(close_marks(generic, goods))


def test_what_found_nothing_takes_a_line(report: Report) -> None:
    """No table where nothing came near, and the nearest still named, so that "nothing found" can be judged."""
    text = list(close_marks(entry(close("FAR OFF", 0.35), name="Duskfall"), report))
    assert len(text) == 1
    assert "Nothing found. What came nearest: FAR OFF" in text[0]
    assert "0.35" in text[0]
