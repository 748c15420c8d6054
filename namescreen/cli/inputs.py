"""The inputs of a command: names, existing marks, and the settings of a brief."""

from __future__ import annotations

import datetime
import shlex
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from namescreen.errors import InputError, Problem
from namescreen.plain_text import plural, some, visible

from .talk import progress, say

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.register import Register

__all__ = ["chosen_names", "day_of", "existing_marks", "looked_through", "settings_of", "usable_names"]


def chosen_names(source: str | None, given: Sequence[str] | None, brief: Brief) -> tuple[str, ...]:
    """The names to work on: from a file, --name, or the brief's shortlist, in that order."""
    from namescreen.marks import read_names

    remarks: tuple[Problem, ...] = ()
    if source is not None and given:
        raise InputError(Problem("names are given twice", "Give either a file of names or --name"))
    if given:
        wanted, remarks = usable_names(given)
    elif source is not None:
        if source != "-" and not Path(source).exists():
            remedy = f"To screen the name itself: --name {shlex.quote(source)}. Else check the path"
            raise InputError(Problem("there is no such file", remedy, source))
        wanted, remarks = read_names(source)
    elif brief.shortlist_file is not None:
        wanted, remarks = read_names(brief.shortlist_file)
    elif brief.shortlist:
        wanted, remarks = usable_names(brief.shortlist)
    else:
        raise InputError(Problem("no names are given", "Give a file of names, --name, or a brief with a shortlist"))
    say(*map(str, remarks))
    return wanted


def usable_names(given: Iterable[str]) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """`given` names that can be screened, each once, and what was wrong with the others."""
    from namescreen.text import MAX_LENGTH, parse

    wanted: dict[str, None] = {}
    problems: list[Problem] = []
    for text in given:
        name = parse(text)
        short = f"{name.text[:40]!r}"
        if not name.words:
            problems.append(Problem(f"{text[:40]!r} has no letters or digits", "It was left out"))
        elif len(text) > MAX_LENGTH:
            problems.append(Problem(f"a name has {len(text):,} characters", f"It was left out: at most {MAX_LENGTH}"))
        elif name.text in wanted:
            problems.append(Problem(f"{short} is given twice", "It is screened once"))
        else:
            wanted[name.text] = None
    if not wanted:
        raise InputError(problems or [Problem("no names are given", "Give --name a name")])
    return tuple(wanted), tuple(problems)


def existing_marks(
    brief: Brief, *, live: bool = False, column: Sequence[str] | None = None, encoding: str | None = None
) -> Register | None:
    """The brief's lists of marks as one register, with remarks on what was left out; None without a list."""
    if not brief.marks:
        say("No list of existing marks is given (--register): closeness to marks is not checked.")
        return None
    from namescreen.register import read_register

    columns = column or [f"{field}={name}" for field, name in brief.columns.items()]
    with progress("Reading marks") as advance:
        found = read_register(brief.marks, live_only=live, column=columns, encoding=encoding, progress=advance)
    say(*map(str, found.problems))
    if found.left_out:
        say(f"{found.left_out:,} rows of the lists of marks could not be read and were left out.")
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
