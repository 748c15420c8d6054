"""The steered brainstorm in a plain terminal, or by the lines of a pipe: line by line, written down after each step."""

from __future__ import annotations

import sys
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from namescreen.brief import Brief
from namescreen.errors import InputError, Interrupted, Problem
from namescreen.generation import Session
from namescreen.generation.brainstorming import require_concepts
from namescreen.generation.steering import read_journal
from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import plural

from .desk import MOST_REFUSED, Desk
from .output import on_screen
from .steer_input import PipedLines

if TYPE_CHECKING:
    from namescreen.register import Register

__all__ = ["steer_session"]


def steer_session(brief: Brief, session: Path | None, shortlist: Path | None, register: Register | None) -> None:
    """Run a steered session, taking up the one in its file if there is one: on the terminal, or by the lines of a pipe,
    each shown before what is said of it."""
    require_concepts(brief)
    beside = brief.source or Path("brainstorm")
    session_file = session or beside.with_suffix(".session")
    shortlist_file = shortlist or brief.shortlist_file or beside.with_name("shortlist.txt")
    started = read_journal(session_file) if session_file.exists() else Session()
    if not session_file.parent.is_dir():
        raise InputError(f"{session_file}: its folder does not exist. Give another --session file")
    if sys.stdin is not None and sys.stdin.isatty():
        with suppress(ImportError):  # line editing and history, where the system has them
            import readline  # noqa: F401
    typed = sys.stdin is not None and sys.stdin.isatty()
    read = input if typed else PipedLines(sys.stdin.buffer if sys.stdin else None, _write)
    desk = Desk(brief, session_file, shortlist_file, register, read, _write, started)
    problem = desk.unfit(shortlist_file)
    if problem is not None:
        raise InputError(problem)
    if started.steps:
        desk.say(f"Taking up the session in {session_file}: {plural(len(started.kept), 'name')} kept so far.")
    _write(on_screen(DISCLAIMER))
    try:
        desk.run()
    except KeyboardInterrupt:
        raise Interrupted(
            f"Stopped. The session is kept in {session_file}; the same command takes it up again."
        ) from None
    if desk.refused and not typed:
        lines = plural(desk.refused, "line")
        remedy = "Each is named above with its number; what the others asked for is done"
        if desk.refused >= MOST_REFUSED:
            remedy = "Nothing was read further. One command a line is read, such as `keep 3`; `help` lists them"
        raise InputError(Problem(f"{lines} asked for nothing that could be done", remedy, "standard input"))


def _write(text: str) -> None:
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
