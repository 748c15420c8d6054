"""A steered session line by line: what each line does, and that no line spoils the session or a file."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from namescreen.brief import Brief, Concept
from namescreen.cli.desk import PAGE, Desk
from namescreen.generation.steering import Session, Step, read_journal

Sit = Callable[..., "Sitting"]


class Sitting:
    """A desk in a folder of its own, with what it wrote."""

    def __init__(self, folder: Path, brief: Brief, started: Session | None = None) -> None:
        self.said: list[str] = []
        self.session, self.shortlist = folder / "a.session", folder / "shortlist.txt"
        self.desk = Desk(brief, self.session, self.shortlist, None, input, self.said.append, started or Session())
        self.desk.open()

    def say(self, line: str) -> str:
        """Obey a line; what was written in answer."""
        before = len(self.said)
        word, _, rest = line.partition(" ")
        self.desk.obey(word, rest)
        return "\n".join(self.said[before:])

    @property
    def names(self) -> list[str]:
        """The names of the page."""
        return [one.text for one in self.desk.page]


@pytest.fixture
def sit(tmp_path: Path, studio: Brief) -> Sit:
    return lambda **more: Sitting(tmp_path, more.pop("brief", studio), **more)


def test_names_are_kept_by_number_range_and_text_also_from_earlier_pages(sit: Sit) -> None:
    one = sit()
    first = one.names
    one.say("keep 1 3-5")
    assert list(one.desk.session.kept) == [first[0], *first[2:5]]
    one.say("next")
    assert first[6] not in one.names
    answer = one.say(f"keep {first[6].lower()}, {first[7]}")
    assert {first[6], first[7]} <= set(one.desk.session.kept)
    assert "On the shortlist: 6." in answer
    one.say(f"drop {first[8]}")
    assert first[8] in one.desk.session.dropped
    one.say(f"unkeep {first[0]}")
    assert first[0] not in one.desk.session.kept
    assert first[0] not in one.desk.session.dropped


@pytest.mark.parametrize("line", ["keep", "keep 99", "keep 5-3", "keep 0", "drop Zorblax", "more 98 99", "3-99999999"])
def test_a_line_about_no_name_changes_nothing_and_says_so(line: str, sit: Sit) -> None:
    one = sit()
    before = one.desk.session
    assert "1 to 12" in one.say(line)
    assert one.desk.session == before


def test_back_shows_the_page_before_and_next_the_one_after(sit: Sit) -> None:
    one = sit()
    first = one.names
    assert "no page before" in one.say("back")
    one.say("next")
    second = one.names
    one.say("back")
    assert one.names == first
    one.say("next")
    assert one.names == second


def test_undo_names_what_it_takes_back_and_takes_back_a_whole_line(sit: Sit) -> None:
    one = sit()
    names = one.names
    one.say("keep 1 2")
    one.say("drop 3")
    assert names[2] in one.say("undo")
    answer = one.say("undo")
    assert names[0] in answer
    assert names[1] in answer
    assert not one.desk.session.kept
    assert "nothing to take back" in one.say("undo")


@pytest.mark.parametrize("line", ["add 7", "add !", "add =x", "add 東京", "without =x", "add ="])
def test_a_concept_that_no_name_can_be_made_from_is_refused_and_not_kept(line: str, sit: Sit) -> None:
    one = sit()
    before = one.desk.session
    assert "letters a to z" in one.say(line)
    assert one.desk.session == before
    assert read_journal(one.session) == before


def test_a_line_that_leaves_only_what_is_not_wanted_ends_no_session(sit: Sit, studio: Brief) -> None:
    from dataclasses import replace

    one = sit(brief=replace(studio, product="", goods="", concepts=(Concept("herb"), Concept("no fuss"))))
    for line in ("without herb", "next"):
        assert "'no fuss' says what is not wanted" in one.say(line)
    one.say("undo")
    one.say("next")
    assert one.desk.at == 1


def test_an_unknown_word_is_questioned(sit: Sit) -> None:
    one = sit()
    assert "undo" in one.say("add zorblax")
    assert "undo" not in one.say("add moss")


def test_what_steers_is_shown(sit: Sit) -> None:
    one = sit()
    assert "Nothing yet" in one.say("taste")
    one.say("more 1")
    one.say("without clay")
    told = one.say("taste")
    assert "names like" in told
    assert "without: clay" in told


def test_a_name_deleted_in_the_shortlist_file_stays_deleted(sit: Sit) -> None:
    one = sit()
    first, second = one.names[:2]
    one.say("keep 1 2")
    one.say("save")
    lines = one.shortlist.read_text("utf-8").splitlines()
    at = lines.index(first)
    one.shortlist.write_text("\n".join(lines[: at - 1] + lines[at + 1 :]) + "\n", "utf-8")
    assert first in one.say("save")
    assert first not in one.shortlist.read_text("utf-8").splitlines()
    assert list(one.desk.session.kept) == [second]
    again = sit(started=read_journal(one.session))
    again.say("save")
    assert first not in one.shortlist.read_text("utf-8").splitlines()


def test_another_file_gets_the_names_typed_into_the_shortlist_too(sit: Sit) -> None:
    one = sit()
    first = one.names[0]
    one.say("keep 1")
    one.shortlist.write_text("Oldname\n", "utf-8")
    other = one.shortlist.with_name("other.txt")
    assert "2 names kept" in one.say(f"save {other}")
    held = [line for line in other.read_text("utf-8").splitlines() if not line.startswith("#")]
    assert held == [first, "Oldname"]


def test_a_name_taken_off_after_it_was_saved_leaves_the_shortlist_file(sit: Sit) -> None:
    one = sit()
    first, second = one.names[:2]
    one.say("keep 1 2")
    one.say("save")
    one.shortlist.write_text(one.shortlist.read_text("utf-8") + "Oldname\n", "utf-8")
    one.say("unkeep 1")
    assert "1 name kept" in one.say("save")
    held = [line for line in one.shortlist.read_text("utf-8").splitlines() if not line.startswith("#")]
    assert held == [second, "Oldname"]
    one.say("keep 1")
    one.say("save")
    assert first in one.shortlist.read_text("utf-8").splitlines()
    assert first in one.desk.session.kept


def test_the_shortlist_goes_to_no_other_work(sit: Sit, tmp_path: Path, studio: Brief) -> None:
    from dataclasses import replace

    brief, marks, letter = tmp_path / "brief.toml", tmp_path / "marks.txt", tmp_path / "letter.txt"
    for file in (brief, marks, letter):
        file.write_text(f"{file.name} as it was\n", "utf-8")
    one = sit(brief=replace(studio, source=brief, marks=(marks,)))
    one.say("keep 1")
    (tmp_path / "loop").symlink_to("loop")
    unwritable = (tmp_path / "none" / "here.txt", tmp_path / ("x" * 300), tmp_path / "loop")
    for file in (brief, marks, letter, one.session, tmp_path, *unwritable):
        before = file.read_bytes() if file in (brief, marks, letter, one.session) else b""
        assert "not written" in one.say(f"save {file}")
        assert (file.read_bytes() if before else b"") == before
    assert "1 name kept" in one.say(f"save {tmp_path / 'other.txt'}")


def test_a_list_that_the_brief_names_is_added_to(sit: Sit, tmp_path: Path, studio: Brief) -> None:
    from dataclasses import replace

    mine = tmp_path / "shortlist.txt"
    mine.write_text("Mistpatch\n", "utf-8")
    one = sit(brief=replace(studio, shortlist=("Mistpatch",), shortlist_file=mine))
    name = one.names[0]
    assert "On the shortlist: 2." in one.say("keep 1")
    one.say("save")
    assert mine.read_text("utf-8").startswith("Mistpatch\n")
    assert name in mine.read_text("utf-8").splitlines()


def test_a_line_that_is_no_text_is_asked_for_again(sit: Sit) -> None:
    one = sit()
    lines: Iterator[str] = iter(["add caf\udce9", "keep 1", "stop"])
    one.desk.read = lambda prompt: next(lines)
    one.desk.run()
    assert any("no text" in said for said in one.said)
    assert len(read_journal(one.session).kept) == 1


LINES = st.one_of(
    st.text(max_size=12),
    st.sampled_from(
        ["keep 1", "drop 2", "more 3", "undo", "back", "next", "add tea", "without tea", "keep 2-4", "unkeep 1"]
    ),
)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(lines=st.lists(LINES, max_size=4))
def test_whatever_is_typed_the_session_can_be_taken_up_again(lines: list[str], tmp_path: Path) -> None:
    brief = Brief(concepts=(Concept("clay"), Concept("herb")))
    one = Sitting(tmp_path, brief)
    for line in lines:
        if not line.startswith(("save", "stop")):
            one.say(line)
    again = Sitting(tmp_path, brief, read_journal(one.session))
    assert len(again.names) in (0, PAGE)


def test_undoing_an_added_concept_shows_the_page_before_it_again(sit: Sit) -> None:
    one = sit()
    before = one.names
    one.say("add tea")
    assert one.names != before
    one.say("undo")
    assert one.names == before
    one.say("next")
    assert not set(one.names) & set(before)


def test_names_that_stood_in_the_shortlist_are_counted_and_listed_apart(sit: Sit) -> None:
    one = sit()
    one.shortlist.write_text("# Shortlist: one name a line; lines with # are remarks.\nOldname\n", "utf-8")
    assert "On the shortlist: 2." in one.say("keep 1")
    assert "Oldname" in one.say("list")
    assert "1 name kept" in one.say("save")
    assert "On the shortlist: 1." in one.say("unkeep 1")


def test_a_meaning_that_no_sense_has_is_told(sit: Sit) -> None:
    one = sit()
    answer = one.say("add seal=dragon")
    assert "dragon" in answer
    assert "senses seal" in answer


def test_a_session_taken_up_again_stands_on_the_page_where_it_was_left(sit: Sit) -> None:
    one = sit()
    first = one.names
    one.say("next")
    second = one.names
    shown = [(two.how, f"{two.score:.2f}", two.flags) for two in one.desk.page]
    again = sit(started=read_journal(one.session))
    assert again.names == second
    assert [(two.how, f"{two.score:.2f}", two.flags) for two in again.desk.page] == shown
    again.say("keep 1")
    assert list(again.desk.session.kept) == second[:1]
    again.say("back")
    assert again.names == first
    third = sit(started=read_journal(one.session))
    assert third.names == first
    third.say("next")
    assert third.names == second
    third.say("next")
    assert not {*first, *second} & set(third.names)


def test_a_session_of_before_pages_were_noted_is_taken_up(sit: Sit) -> None:
    one = sit()
    lines = one.session.read_text("utf-8").replace(', "joined": true', "").replace('session": 2', 'session": 1')
    one.session.write_text(lines, "utf-8")
    assert sit(started=read_journal(one.session)).names == one.names


def test_undo_shows_the_page_on_which_the_step_was_made(sit: Sit) -> None:
    one = sit()
    first = one.names
    one.say("next")
    second = one.names
    one.say("next")
    one.say("back")
    assert one.names == second
    one.say("less 12")
    one.say("undo")
    assert one.names == second
    one.say("back")
    one.say("more 2")
    one.say("back")
    again = sit(started=read_journal(one.session))
    again.say("undo")
    assert again.names == first


@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("add moss", "Added: moss."),
        ("add spring=season", "Added: spring as season."),
        ("without clay", "Going on without clay."),
        ("without clay=earth", "Going on with clay, without the meaning earth (soil"),
        ("kepe 1", "Did you mean `keep 1`?"),
        ("mroe 2", "Did you mean `more 2`?"),
        ("add", "add takes a word"),
        ("senses", "senses takes a word: senses WORD"),
        ("mean", "mean takes a word: mean WORD"),
    ],
)
def test_what_a_line_did_or_may_have_meant_is_said(line: str, answer: str, sit: Sit) -> None:
    assert answer in sit().say(line)


def test_why_names_only_the_parts_that_the_help_explains(sit: Sit, capsys: pytest.CaptureFixture[str]) -> None:
    sit().say("why 1")
    told = capsys.readouterr().out.rstrip().splitlines()[-1]
    assert re.fullmatch(r"\s*score 0\.\d\d; evokes \d\.\d\d, says \d\.\d\d, indirect \d\.\d\d", told)


def test_a_name_alone_is_asked_about_and_not_kept(sit: Sit) -> None:
    one = sit()
    name = one.names[2]
    assert f"keep {name}" in one.say(name)
    assert not one.desk.session.kept


def test_a_meaning_that_was_left_is_not_called_added(sit: Sit) -> None:
    one = sit()
    one.say("without clay=earth")
    told = one.say("taste")
    assert "added" not in told
    assert "clay without the meaning earth" in told
    one.say("add spring=season")
    assert "spring as season" in one.say("taste")


def test_a_meaning_that_a_concept_does_not_have_cannot_be_left(sit: Sit) -> None:
    one = sit()
    before = one.desk.session
    assert "No meaning of 'clay' fits 'zyxq'" in one.say("without clay=zyxq")
    assert one.desk.session == before


def test_what_is_so_already_changes_nothing_and_is_told(sit: Sit) -> None:
    one = sit()
    first, second, third = one.names[:3]
    one.say("keep 1")
    before = one.desk.session
    assert one.say("keep 1") == f"Kept already: {first}."
    assert one.say(f"unkeep {second}") == f"Not on the shortlist: {second}."
    assert "clay is a concept already. Nothing is changed." in one.say("add clay")
    assert "No name here is made of 'zorblax'" in one.say("without zorblax")
    assert one.desk.session == before
    assert f"Dropped: {third}." in one.say("drop 3")
    assert one.say("drop 3") == f"Dropped already: {third}."
    one.say("mean spring=season")
    assert "spring is a concept already, as season" in one.say("mean spring=season")
    assert "Added: spring as water." in one.say("mean spring=water")


def test_to_want_fewer_says_nothing_against_a_concept_or_what_was_kept(studio: Brief) -> None:
    pair = Step("shown", "Clay & Moss", ("clay", "moss"), "pair", "clay and moss")
    start = Session().after(pair, *Session().about("keep", [replace(pair, text="Fern & Ash", sources=("fern", "ash"))]))
    (less,) = start.about("less", [pair], ["clay", "bowl"])
    assert less.sources == ("moss",)
    (drop,) = start.about("drop", [replace(pair, sources=("clay", "fern"))], ["clay"])
    assert drop.sources == ()
    after = start.after(less)
    assert after.words["moss"] < 1 < after.words["fern"]
    assert after.constructions["pair"] <= 1.0


def test_a_name_that_is_left_out_is_told_and_may_be_kept(sit: Sit, capsys: pytest.CaptureFixture[str]) -> None:
    one = sit()
    assert "is no name shown so far" in one.say("keep Zorblax")
    one.desk.names.finder([], [], Session())("anything")  # makes the plain list
    name, because = next((found.text, why) for found, why in one.desk.names._left_out.values())
    capsys.readouterr()
    one.say(f"why {name}")
    assert f"left out of the pages: {because}" in " ".join(capsys.readouterr().out.split())
    told = one.say(f"keep {name}")
    assert f"{name} was left out of the pages: {because}." in " ".join(told.split())
    assert name in one.desk.session.kept
    assert "Here it would be left out:" in " ".join(one.say("why Smart Herb").split())


def test_names_of_the_makers_own_list_may_be_asked_about(sit: Sit) -> None:
    one = sit()
    one.shortlist.write_text("Glazenook\n", "utf-8")
    assert "More like: Glazenook." in one.say("more glazenook")
    assert one.desk.session.models == ("Glazenook",)
