"""A steered session page by page: the place is kept, few good names are told, and answers are short."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from namescreen.brief import Brief, Concept
from namescreen.cli.steer_names import name_key, named_in
from namescreen.cli.steer_words import sense_lines
from namescreen.generation import Step, brainstorm
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.steering import read_journal
from tests.conftest import Run
from tests.generation.test_desk import Sitting

Sit = Callable[..., Sitting]


@pytest.fixture
def sit(tmp_path: Path, studio: Brief) -> Sit:
    return lambda **more: Sitting(tmp_path, more.pop("brief", studio), **more)


def test_keeping_on_an_earlier_page_does_not_lose_the_place(sit: Sit) -> None:
    one = sit()
    pages = [one.names]
    for _ in range(2):
        one.say("next")
        pages.append(one.names)
    one.say("back")
    one.say("back")
    one.say("keep 2")
    one.say("next")
    assert one.names == pages[1]
    one.say("drop 3")
    one.say("next")
    assert one.names == pages[2]
    assert list(one.desk.session.kept) == [pages[0][1]]
    one.say("next")
    assert not {name for page in pages for name in page} & set(one.names)


def test_more_on_an_earlier_page_brings_a_new_one(sit: Sit) -> None:
    one = sit()
    first = one.names
    one.say("next")
    second = one.names
    one.say("back")
    one.say("more 1")
    assert not {*first, *second} & set(one.names)


def test_the_meanings_of_a_word_are_few_and_stand_as_they_are_typed(sit: Sit) -> None:
    one = sit()
    told = one.say("senses roll").splitlines()
    assert 3 < len(told) <= 11
    assert len(one.say("senses roll all").splitlines()) > 25
    asked = [line.split()[0] for line in told if line.startswith("  roll=")]
    assert len(asked) == len(set(asked))
    for each in asked[:3]:
        assert "No meaning" not in one.say(f"add {each}")


def test_what_meaning_was_left_is_told(sit: Sit) -> None:
    assert "(season)" in sit().say("without spring=season")


def test_a_meaning_that_does_not_fit_is_not_added(sit: Sit) -> None:
    one = sit()
    before = one.desk.session
    answer = one.say("add seal=dragon")
    assert "Added" not in answer
    assert "Nothing is changed" in " ".join(answer.split())
    assert one.desk.session == before


def test_saving_nothing_is_told_and_writes_nothing(sit: Sit, tmp_path: Path) -> None:
    one = sit()
    assert "Nothing is kept" in one.say(f"save {tmp_path / 'names.txt'}")
    assert not (tmp_path / "names.txt").exists()
    one.say("keep 1")
    (tmp_path / "letter.txt").write_text("A letter", "utf-8")
    assert "Write to another file.\nThe shortlist is not written." in one.say(f"save {tmp_path / 'letter.txt'}")


def test_lists_keep_to_a_narrow_terminal(sit: Sit, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    one = sit()
    one.say("keep 1-6")
    one.say("more 7")
    for line in ("list", "taste", "senses spring", "without spring=season"):
        assert max(map(len, one.say(line).splitlines())) <= 40


def test_all_that_is_said_keeps_to_a_narrow_terminal(run: Run) -> None:
    """The last lines too; only a path may take more, so that it can be copied."""
    lines = "keep 1-6\nundo\nlisst\nadd hob\nwhy 1\nback\nback\nsave other.txt\nhelp\nkeep 2\nstop\n"
    command = ("brainstorm", "--concept", "herb", "--concept", "well", "--steer", "--shortlist", "s.txt")
    for text in (lines, "stop\n", ""):
        done = run(*command, input=text, env={"COLUMNS": "40"})
        assert max(map(len, done.stdout.splitlines())) <= 40


def test_until_something_steers_pages_are_those_of_one_long_list(sit: Sit, studio: Brief) -> None:
    from namescreen.generation import brainstorm

    one = sit()
    shown = [*one.names]
    one.say("next")
    shown += one.names
    again = sit(started=read_journal(one.session))  # the same after a restart
    again.say("next")
    shown += again.names
    assert [name.text for name in brainstorm(studio, limit=len(shown))] == shown
    again.say("drop 1")
    again.say("next")
    assert [name.text for name in brainstorm(studio, limit=len(shown) + 12)][len(shown) :] != again.names


def test_where_good_names_are_few_the_page_is_short_and_says_so(sit: Sit) -> None:
    from namescreen.generation import Candidate

    one = sit()
    best = one.desk.pages[0][0].score
    made = [Candidate(f"Name {at}", "found", "", (f"word {at}",), score, {})
            for at, score in enumerate([best, 0.1, best - 0.05, *(0.1,) * 100])]  # fmt: skip
    one.desk.stream = iter(made)
    answer = one.say("next")
    assert one.names == ["Name 0", "Name 2"]
    assert "Few names that score 0." in answer
    one.desk.stream = iter(made[3:])
    before = one.names
    assert "Few names" in one.say("next")
    assert one.names == before


def test_a_related_name_may_be_somewhat_weaker_after_more_and_not_weak() -> None:
    from namescreen.generation import Candidate
    from namescreen.generation.paging import good_names, least_score

    related = Candidate("Otter", "found", "", ("otter",), 0.36, {"resemblance": 0.6})
    apart = Candidate("Ledger", "found", "", ("ledger",), 0.36, {"resemblance": 0.0})
    weak = Candidate("Unotter", "affix", "", ("otter",), 0.25, {"resemblance": 1.0})
    assert good_names(iter([related, apart, weak]), 0.4, 5) == ([related], [], True)
    assert least_score([0.6, 0.4, 0.5], 0) > least_score([0.6, 0.4, 0.5], 1) > least_score([0.6, 0.4, 0.5], 9) == 0
    assert least_score([], 0) == 0


def test_nothing_that_is_typed_reaches_the_terminal_as_it_is(sit: Sit) -> None:
    one = sit()
    red = "\x1b[31m"
    for line in (f"add her{red}b", f"without {red}clay", f"keep {red}", red, f"save {red}/x", f"why {red}"):
        assert "\x1b" not in one.say(line)
    assert "holds a NUL" in " ".join(one.say("save a\0b").split())


TOPS = Brief(
    goods="wooden spinning tops; toys of wood",
    concepts=tuple(map(Concept, ("spin", "hum", "pocket", "wobble"))),
    least_letters=4,
)
OF_HILLS = {"summit", "treetop", "tip top", "top dog", "top banana", "cornice", "crown", "finial", "pinnacle"}


def test_the_goods_choose_the_meaning_of_their_word_after_more_too(sit: Sit) -> None:
    # a name whose meaning ends with a word of the goods: "Scots spinning top"
    one = sit(brief=TOPS)
    one.desk._step(Step("shown", "Peerie", ("peerie",), "found", "Scots spinning top"))
    one.say("more Peerie")
    seen = {name.casefold() for name in one.names}
    for _ in range(3):
        one.say("next")
        seen |= {name.casefold() for name in one.names}
    assert not seen & OF_HILLS
    assert not any(name.startswith(("treetop", "uptreetop", "upsummit", "summit")) for name in seen)


def test_a_meaning_that_was_left_brings_no_names_and_makes_no_concept() -> None:
    for concepts, word, away, gone in (
        (("spin", "pocket"), "top", "summit", "summit"),
        (("spring", "herb"), "spring", "fountain", "fountain"),
    ):
        brief = Brief(goods="spinning tops", concepts=tuple(map(Concept, concepts)))
        before, after = (BriefTerms.of(brief, left=left) for left in ({}, {word: (away,)}))
        place = [term.word for term in before.terms].index(word)
        assert after.of_word(gone)[place] == 0
        assert [(term.word, term.weight) for term in after.terms] == [(term.word, term.weight) for term in before.terms]


@pytest.mark.parametrize(
    ("word", "goods", "meaning"),
    [
        ("top", "wooden spinning tops; toys", "plaything"),
        ("spring", "a fountain for herbs; drinking water", "geological formation"),
        ("nail", "nail polish", "horny structure"),
        ("bow", "archery bows and arrows", "weapon"),
    ],
)
def test_the_meaning_that_the_goods_have_stands_first(word: str, goods: str, meaning: str) -> None:
    assert meaning in sense_lines(word, Brief(goods=goods))[0]


def test_names_are_parted_by_commas_and_those_of_the_plain_list_are_known(sit: Sit) -> None:
    one = sit(brief=TOPS)
    listed = next(name.text for name in brainstorm(TOPS, limit=40)[25:] if name.construction == "found")
    assert listed not in one.names
    first, second, *_ = (name.text for name in one.desk.page if name.construction == "found")  # so none is liked less
    assert one.say(f"keep {first}, {listed}").startswith("Kept")
    assert listed in one.desk.session.kept
    assert "'Zorb Blax' is no name" in one.say(f"keep Zorb Blax, {second}")
    assert "'Zorblax' is no name" in one.say("why Zorblax")
    assert "would score 0." in one.say("why Fern & Kiln")
    assert "pair, fern + kiln" in one.say("why Fern & Kiln")
    told = one.say("taste")
    assert "less of" not in told
    before = one.names
    one.say("more")
    assert one.names != before


NAMES = ["Miller's Wharf", "Salt and Thread", "Nest & Fern", "Alder", "Birch", "Café Noir"]


def _known(text: str) -> str | None:
    if text.isdecimal():
        return NAMES[int(text) - 1] if 1 <= int(text) <= len(NAMES) else None
    return next((name for name in NAMES if name_key(name) == name_key(text)), None)


@pytest.mark.parametrize(
    ("line", "names", "unknown"),
    [
        ("millers wharf", ["Miller's Wharf"], []),
        ("Miller\u2019s Wharf, cafe noir", ["Miller's Wharf", "Café Noir"], []),
        ("salt and thread and alder", ["Salt and Thread", "Alder"], []),
        ("alder and birch", ["Alder", "Birch"], []),
        ("Alder, Birch, and Nest and Fern", ["Alder", "Birch", "Nest & Fern"], []),
        ("Alder, Zorblax, Birch", ["Alder", "Birch"], ["Zorblax"]),
        ("Zorblax Alder", [], ["Zorblax Alder"]),  # it may be a name of the maker's own
        ("Zorblax and Alder", ["Alder"], ["Zorblax"]),
        ("alder birch 3-4", ["Alder", "Birch", "Nest & Fern"], []),
        ("2 4-5", ["Salt and Thread", "Alder", "Birch"], []),
        ("4 - 5", ["Alder", "Birch"], []),
        ("4 to 5, 2", ["Alder", "Birch", "Salt and Thread"], []),
        ("#2 #4", ["Salt and Thread", "Alder"], []),
        ("Alder;Birch", ["Alder", "Birch"], []),
        ("2 40", ["Salt and Thread"], ["40"]),
        ("5-9", [], ["5-9"]),
        ("", [], []),
    ],
)
def test_names_are_known_as_people_type_them(line: str, names: list[str], unknown: list[str]) -> None:
    assert named_in(line, _known) == (names, unknown)


def test_what_is_known_is_kept_and_the_rest_is_told(sit: Sit) -> None:
    one = sit()
    first, second = one.names[:2]
    told = one.say(f"keep {first}, Zorblax, {second}")
    assert list(one.desk.session.kept) == [first, second]
    assert "'Zorblax' is no name shown so far; a name of your own goes into" in told
    told = one.say("keep 3 40")
    assert one.names[2] in one.desk.session.kept
    assert "This page has 1 to 12, and not 40." in told
    assert "and not 77" in one.say("drop 77")


def test_a_page_shown_again_says_what_was_kept_and_dropped(sit: Sit, capsys: pytest.CaptureFixture[str]) -> None:
    one = sit()
    names = one.names
    one.say("keep 2")
    one.say("drop 5")
    one.say("next")
    capsys.readouterr()
    one.say("back")
    rows = {
        row.split(None, 1)[0]: row for row in capsys.readouterr().out.splitlines() if row.split(None, 1)[0].isdecimal()
    }
    assert names[1] in rows["2"]
    assert "  kept  " in rows["2"]
    assert "  dropped  " in rows["5"]
    assert not any(" kept " in rows[number] or " dropped " in rows[number] for number in ("1", "3", "4"))


def test_a_page_that_comes_unasked_is_called_new(sit: Sit) -> None:
    one = sit()
    for line in ("more 7", "less 5", "add moss", "without clay"):
        assert f"Page {len(one.desk.pages) + 1}, new." in one.say(line)


def test_what_undo_takes_back_is_told_ahead(sit: Sit) -> None:
    one = sit()
    assert "nothing for undo" in one.say("taste")
    first = one.names[0]
    one.say("keep 1")
    one.say("without clay")
    assert "undo takes back: without clay" in one.say("taste")
    told = one.say("undo")
    assert "Taken back: without clay." in told
    assert f"undo takes back: keep {first}" in told
    assert "nothing for undo" in one.say("undo")


@pytest.mark.parametrize(("short", "kind"), [("k 2", "keep"), ("d 2", "drop"), ("m 2", "more")])
def test_single_letters_stand_for_what_is_typed_most(short: str, kind: str, sit: Sit) -> None:
    one = sit()
    one.say(short)
    assert [step.kind for step in one.desk.session.last] == [kind]
    one.say("u")
    assert not one.desk.session.last


@pytest.mark.parametrize("columns", [40, 60])
def test_a_page_is_stacked_where_the_terminal_is_narrow(
    columns: int, sit: Sit, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    one = sit(brief=TOPS)
    one.say("keep 1")
    one.say("next")
    capsys.readouterr()
    one.say("back")
    lines = capsys.readouterr().out.splitlines()
    assert max(map(len, lines)) <= columns
    assert len(lines) <= 4 * len(one.names)  # few lines a name: the reason takes the whole width
    for at, candidate in enumerate(one.desk.page, 1):
        row = next(line for line in lines if line.split()[:1] == [str(at)])
        assert candidate.text in row


@pytest.mark.parametrize(
    ("typed", "means"),
    [
        (("drop", "concept clay"), ("without", "clay")),
        (("add", "concept clay"), ("add", "clay")),
        (("mean", "spring=season"), ("add", "spring=season")),
        (("meanings", "of spring"), ("senses", "spring")),
        (("drop", "2"), ("drop", "2")),
        (("drop", "Concept Clay"), ("drop", "Concept Clay")),
    ],
)
def test_other_words_for_the_same_wish_are_understood(typed: tuple[str, str], means: tuple[str, str]) -> None:
    from namescreen.cli.steer_words import in_other_words

    assert in_other_words(*typed) == means


def test_a_concept_is_dropped_as_people_say_it(sit: Sit) -> None:
    one = sit()
    assert "Going on without clay" in one.say("drop concept clay")


def test_what_is_known_of_the_plain_list_goes_with_the_concepts_of_the_session(sit: Sit) -> None:
    one = sit()
    known, brief = one.desk.names, one.desk.brief
    before = dict(known._listed(brief))
    assert known._listed(brief) == before
    one.say("add harbour")
    known.because("anything", one.desk.session)
    assert known._listed_for == one.desk.session.brief(brief) != brief
    assert known._plain.keys() != before.keys()
