"""The inputs of a command: names, existing marks, and the settings of a brief."""

from __future__ import annotations

import datetime
import shlex
from collections.abc import Iterable, Sequence
from contextlib import suppress
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Any

from namescreen.errors import InputError, Problem
from namescreen.plain_text import plural, some, visible

from .talk import progress, say

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.register import Register

__all__ = [
    "chosen_names",
    "day_of",
    "existing_marks",
    "file_not_name",
    "looked_through",
    "names_or_shortlist",
    "settings_of",
    "those_there",
    "usable_names",
]

SESSION_HEAD = b'{"namescreen session"'
"""What the file of a steered session begins with."""


def chosen_names(source: str | None, given: Sequence[str] | None, brief: Brief) -> tuple[str, ...]:
    """The names to work on: from a file, --name, or the brief's shortlist, in that order."""
    remarks: tuple[Problem, ...] = ()
    if source is not None and given:
        raise InputError(Problem("names are given twice", "Give either a file of names or --name"))
    if given:
        wanted, remarks = usable_names(given)
    elif source is not None:
        if source != "-" and not Path(source).exists():
            remedy = f"To screen the name itself: --name {shlex.quote(source)}. Else check the path"
            raise InputError(Problem("there is no such file", remedy, source))
        if source != "-":
            _refuse_sessions([Path(source)], "the names in its shortlist file")
        wanted, remarks = _names_in(source)
    elif brief.shortlist_file is not None:
        _refuse_missing([brief.shortlist_file], brief, "shortlist")
        wanted, remarks = _names_in(brief.shortlist_file)
    elif brief.shortlist:
        wanted, remarks = usable_names(brief.shortlist)
    else:
        raise InputError(Problem("no names are given", "Give a file of names, --name, or a brief with a shortlist"))
    say(*map(str, remarks))
    return wanted


def names_or_shortlist(given: Sequence[str] | None, brief: Brief) -> tuple[str, ...]:
    """The names after a command, or without any the brief's shortlist."""
    if not given and brief.shortlist_file is None and not brief.shortlist:
        raise InputError(Problem("no names are given", "Write them after the command, or in a brief's shortlist"))
    return chosen_names(None, given, brief)


def _names_in(source: str | Path) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    from namescreen.marks import read_names  # with all that reads files of offices

    return read_names(source)


def usable_names(given: Iterable[str]) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """`given` names that can be screened, each once, and what was wrong with the others."""
    from namescreen.files import names_a_file
    from namescreen.text import MAX_LENGTH, parse

    given = tuple(given)
    files = [text for text in given if names_a_file(text)]
    if files:
        raise InputError([file_not_name(text) for text in files])
    wanted: dict[str, str] = {}
    problems: list[Problem] = []
    for text in given:
        name = parse(text)
        short = f"{name.text[:40]!r}"
        if not name.words:
            problems.append(Problem(f"{text[:40]!r} has no letters or digits", "It was left out"))
        elif len(text) > MAX_LENGTH:
            problems.append(Problem(f"a name has {len(text):,} characters", f"It was left out: at most {MAX_LENGTH}"))
        elif name.text.casefold() in wanted:
            problems.append(Problem(f"{short} is given twice", "It is screened once, whatever its capitals"))
        else:
            wanted[name.text.casefold()] = name.text
    if not wanted:
        raise InputError(problems or [Problem("no names are given", "Give --name a name")])
    return tuple(wanted.values()), tuple(problems)


def file_not_name(text: str) -> Problem:
    """What is said where a file stands for a name."""
    here = "is a file here" if Path(text).is_file() else "ends as the names of files do"
    remedy = f"Did you mean the names in it? namescreen screen {shlex.quote(text)}"
    return Problem(f"{text[:60]!r} {here}, and no name", remedy)


def _refuse_missing(paths: Iterable[Path], brief: Brief, key: str) -> None:
    """Raises `InputError` for files that a brief names and that are not there, with its line and what is like them."""
    problems = []
    for path in paths:
        if path.exists():
            continue
        folder = path.parent
        near = get_close_matches(path.name, [one.name for one in folder.iterdir()] if folder.is_dir() else [], 1)
        remedy = f"Did you mean {near[0]!r}, which is there?" if near else "Check its name and folder"
        line = _line_naming(path.name, brief.source)
        problems.append(
            Problem("there is no such file", remedy, str(path))
            if line is None
            else Problem(f"there is no file {path}", remedy, str(brief.source), line, key)
        )
    if problems:
        raise InputError(problems)


def those_there(paths: Iterable[Path], without: str) -> tuple[Path, ...]:
    """Those of the files that exist; of each of the others is said that it is not there yet, and what that leaves
    out."""
    found = tuple(paths)
    for path in found:
        if not path.exists():
            say(f"The list {visible(str(path))} of the brief is not there yet: {without}.")
    return tuple(path for path in found if path.exists())


def _line_naming(name: str, source: Path | None) -> int | None:
    """The line of a brief that names a file; None if none does."""
    if source is None or not source.is_file():
        return None
    lines = source.read_text("utf-8-sig").splitlines()
    return next((at for at, line in enumerate(lines, 1) if name in line and not line.lstrip().startswith("#")), None)


def _refuse_sessions(paths: Iterable[Path], instead: str) -> None:
    """Raises `InputError` for the file of a steered session, which is no list."""
    for path in paths:
        with suppress(OSError):
            if path.is_file():
                with path.open("rb") as file:
                    if file.read(22).startswith(SESSION_HEAD):
                        what = "is the session of a steered brainstorm, and no list"
                        raise InputError(Problem(what, f"Give {instead}", str(path)))


def existing_marks(
    brief: Brief, *, live: bool = False, column: Sequence[str] | None = None, encoding: str | None = None
) -> Register | None:
    """The brief's lists of marks as one register, with remarks on what was left out; None without a list."""
    if not brief.marks:
        say("No list of existing marks is given (--register): closeness to marks is not checked.")
        return None
    from namescreen.register import read_register

    _refuse_missing(brief.marks, brief, "marks")
    _refuse_sessions(brief.marks, "a list of marks")
    columns = column or [f"{field}={name}" for field, name in brief.columns.items()]
    with progress("Reading marks") as advance:
        found = read_register(brief.marks, live_only=live, column=columns, encoding=encoding, progress=advance)
    say(*map(str, found.problems))
    if found.left_out:
        rows = plural(found.left_out, "row")
        say(f"{rows} of the lists of marks could not be read, and {'was' if found.left_out == 1 else 'were'} left out.")
    return found


def looked_through(register: Register) -> str:
    """How many marks were compared with, of what: "nothing found" says little without it."""
    shown = some([visible(Path(source.name).name) for source in register.sources][:3])
    lists = len(register.sources)
    of = f"{plural(lists, 'list')} ({shown}{' and others' if lists > 3 else ''})" if lists else "no list"
    return f"Looked through {plural(len(register), 'mark')} of {of}."


def day_of(brief: Brief, asked: datetime.date | None = None) -> tuple[str, str]:
    """The day of a run (YYYY-MM-DD), and where it comes from."""
    if asked is not None:
        return asked.isoformat(), "--date"
    if brief.date is not None:
        return brief.date.isoformat(), "the brief"
    return datetime.datetime.now().astimezone().date().isoformat(), "the clock"


def settings_of(brief: Brief, asked: datetime.date | None = None) -> dict[str, Any]:
    """What `screen` takes from a brief, on the day `asked` or its own."""
    return {
        "goods": brief.goods,
        "product": brief.product,
        "classes": brief.classes,
        "languages": brief.languages or None,
        "markets": brief.markets,
        "endings": brief.endings,
        "handle_lengths": brief.handle_lengths,
        "today": day_of(brief, asked)[0],
    }
