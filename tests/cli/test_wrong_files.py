"""A file where a name belongs, a list where a brief belongs, and the like: said as what it is, with the next step."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.brief import load_brief, parse_brief
from namescreen.cli.inputs import chosen_names, existing_marks, usable_names
from namescreen.cli.output import Format, print_disclaimer
from namescreen.errors import InputError
from namescreen.files import names_a_file
from namescreen.outcome import DISCLAIMER
from tests.conftest import Run

SESSION = b'{"namescreen session": 2}\n{"do": "keep", "text": "Pinglade"}\n'


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_file_is_known_by_its_ending_or_by_being_there(here: Path) -> None:
    (here / "names.old").write_text("Pinglade\n", "utf-8")
    assert names_a_file("names.old")
    assert names_a_file("Shortlist.TXT")
    assert names_a_file("rows.csv", here / "elsewhere")
    assert not any(map(names_a_file, ("Pinglade", "Pine.Glade", "St. Pine", "pinglade.com", "\0.x", "x." * 999)))


def test_a_file_among_names_is_questioned(here: Path) -> None:
    (here / "shortlist.txt").write_text("Pinglade\n", "utf-8")
    with pytest.raises(InputError, match=r"is a file here, and no name. Did you mean the names in it"):
        usable_names(["Pinglade", "shortlist.txt"])
    with pytest.raises(InputError, match="ends as the names of files do"):
        usable_names(["other.csv"])
    assert usable_names(["Pinglade"])[0] == ("Pinglade",)


@pytest.mark.parametrize("arguments", [("compare", "Pinglade", "marks.csv"), ("readings", "marks.csv")])
def test_commands_that_take_names_question_files(arguments: tuple[str, ...], run: Run) -> None:
    done = run(*arguments)
    assert done.returncode == 2
    assert "no name" in done.stderr
    assert done.stdout == ""


def test_a_file_in_the_list_of_a_brief_is_questioned_with_its_line() -> None:
    with pytest.raises(InputError, match=r'line 2, shortlist, item 2: .*without brackets: shortlist = "mine.txt"'):
        parse_brief('goods = "kites"\nshortlist = ["Pinglade", "mine.txt"]\n')


@pytest.mark.parametrize("text", ["mark,classes\nPINGLADE,28\n", "Pinglade\nWindle & Co\n"])
def test_a_list_given_as_a_brief_is_called_a_list(text: str, here: Path) -> None:
    (here / "rivals.csv").write_text(text, "utf-8")
    with pytest.raises(InputError, match="looks like a list, not like a brief"):
        load_brief(here / "rivals.csv")
    with pytest.raises(InputError, match="not valid TOML"):
        parse_brief('goods = "kites\n')


def test_a_missing_file_of_a_brief_is_told_with_its_line_and_what_is_like_it(here: Path) -> None:
    (here / "rivals.csv").write_text("mark\nPINGLADE\n", "utf-8")
    brief = here / "brief.toml"
    brief.write_text('goods = "kites"\n# rivels.csv\nmarks = ["rivels.csv"]\nshortlist = "list.txt"\n', "utf-8")
    with pytest.raises(InputError, match=r"brief.toml, line 3, marks: .*Did you mean 'rivals.csv'"):
        existing_marks(load_brief(brief))
    with pytest.raises(InputError, match=r"brief.toml, line 4, shortlist: there is no file"):
        chosen_names(None, None, load_brief(brief))


def test_a_session_is_no_list(here: Path) -> None:
    (here / "kites.session").write_bytes(SESSION)
    (here / "brief.toml").write_text('marks = ["kites.session"]\n', "utf-8")
    brief = load_brief(here / "brief.toml")
    with pytest.raises(InputError, match="session of a steered brainstorm"):
        existing_marks(brief)
    with pytest.raises(InputError, match="session of a steered brainstorm"):
        chosen_names("kites.session", None, brief)


@pytest.mark.parametrize(("columns", "lines"), [("40", 3), ("80", 1), ("", 1)])
def test_the_notice_is_folded_where_the_output_is_narrow(
    columns: str, lines: int, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    print_disclaimer(Format.table)
    shown = capsys.readouterr().out.strip().splitlines()
    assert len(shown) == lines
    assert " ".join(shown) == DISCLAIMER


def test_a_brainstorm_goes_on_where_the_list_that_its_brief_names_is_not_there_yet(tmp_path: Path, run: Run) -> None:
    brief = tmp_path / "brief.toml"
    brief.write_text('goods = "wooden spoons"\nconcepts = ["spoon", "stir"]\nmarks = ["competitors.csv"]\n', "utf-8")
    for way in ([str(brief)], ["--brief", str(brief)]):
        done = run("brainstorm", *way, "--limit", "3")
        assert done.returncode == 0, done.stderr
        assert "competitors.csv of the brief is not there yet" in " ".join(done.stderr.split())
        assert len(done.stdout.strip().splitlines()) > 3
    asked = run("brainstorm", str(brief), "--register", str(tmp_path / "other.csv"), "--limit", "3")
    assert asked.returncode == 2
    assert "there is no" in asked.stderr


def test_a_brief_is_taken_as_an_argument_or_an_option_and_not_as_both(tmp_path: Path, run: Run) -> None:
    brief = tmp_path / "brief.toml"
    brief.write_text('goods = "wooden spoons"\nshortlist = ["Quillet"]\n', "utf-8")
    told = [run("report", *way, "--date", "2026-01-01").stdout for way in ([str(brief)], ["--brief", str(brief)])]
    assert "Quillet" in told[0]
    assert told[0] == told[1]
    assert run("report", str(brief), "-b", str(brief)).returncode == 2
