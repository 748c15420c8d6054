"""The steered brainstorm in a plain terminal: line by line, within 80 columns, written down after each step."""

from __future__ import annotations

import shlex
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError, Interrupted
from namescreen.files import write_whole
from namescreen.generation import Candidate, Session, Step, candidates
from namescreen.generation.senses import chosen_senses
from namescreen.generation.steering import journal, read_journal, shortlist_text
from namescreen.lexicon import lexicon
from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import plural

from .output import Column, on_screen, say_below, show_table

if TYPE_CHECKING:
    from namescreen.register import Register

__all__ = ["PAGE", "Desk", "steer_session"]

PAGE = 12
"""Names on a page: with a line of hints and a few answers they fit a screen of 24 lines."""

HINT = "One step a line: keep 3 7 | drop 2 | more 4 | less 4 | next | save | stop | help"
HELP = """\
  keep 3 7     put names 3 and 7 on the shortlist (or just: 3 7)
  drop 2       never show name 2 again, and less of what it is made of
  more 4       more like name 4          less 4      fewer like it
  add WORD     another concept; add spring=season picks a meaning
  without WORD go on without a concept or any other word, or without one meaning
               of it: without spring=season
  senses WORD  the meanings of a word
  next         another page (or just Enter)
  why 5        how name 5 was made, and from what
  list         what is on the shortlist
  undo         take the last step back
  save [FILE]  write the shortlist, for `screen` and `report`
  stop         save and end; the same command takes the session up again"""

_COLUMNS = (
    Column("number", "", right=True),
    Column("name", "name", shrink=False),
    Column("score", "score", right=True),
    Column("how", "how it was made"),
    Column("flags", "remarks"),
)


@dataclass
class Desk:
    """What a session works on: the brief, its files, and how it reads and writes lines."""

    brief: Brief
    session_file: Path
    shortlist_file: Path
    register: Register | None
    read: Callable[[str], str]
    write: Callable[[str], None]
    session: Session
    page: list[Candidate]
    stream: Iterator[Candidate] | None = None

    def run(self) -> None:
        """Show pages and obey until the maker stops, or the input ends."""
        self.next_page()
        self.write(HINT)
        while True:
            try:
                line = self.read("> ")
            except EOFError:
                break
            word, _, rest = line.strip().partition(" ")
            if word in ("stop", "quit", "exit"):
                break
            self.obey(word.casefold(), rest.strip())
        self.save(self.shortlist_file)
        self.write(self._onward())

    def _onward(self) -> str:
        """What to do once the session has ended."""
        source, kept_in = self.brief.source, self.shortlist_file
        if not self.session.kept:
            return f"Nothing is kept yet. The session is in {self.session_file}; the same command takes it up again."
        with_brief = ["--brief", str(source)] if source else []
        if source and self.brief.shortlist_file == kept_in:
            return f"Next: {shlex.join(['namescreen', 'screen', *with_brief])}"
        lines = [f"Next: {shlex.join(['namescreen', 'screen', str(kept_in), *with_brief])}"]
        if source and kept_in.parent == source.parent:
            lines.append(f'For the report, write into {source}: shortlist = "{kept_in.name}"')
        return "\n".join(lines)

    def obey(self, word: str, rest: str) -> None:
        """Carry out one line."""
        if word.isdecimal():
            word, rest = "keep", f"{word} {rest}"
        if word in ("", "next"):
            self.next_page()
        elif word in ("keep", "drop", "more", "less"):
            self._about(word, rest)
        elif word in ("add", "without") and rest:
            self._step(concept_step(word, rest))
            self.stream = None
            self.next_page()
        elif word == "senses" and rest:
            labels = [sense.label for sense in lexicon().senses(rest)]
            self.write("\n".join(f"  {label}" for label in labels) or f"  No meaning of {rest} is known here.")
            if len(labels) > 1:
                self.write(f"To go on with one of them: add {rest}=a word in its brackets")
        elif word == "why":
            self._explain(rest)
        elif word == "undo":
            last = next((step for step in reversed(self.session.steps) if step.kind != "shown"), None)
            self._step(Step("undo"))
            self.stream = None
            self.write(f"Taken back: {last.kind} {last.text}." if last else "There is nothing to take back.")
            if last and last.kind not in ("keep", "drop"):
                self.next_page()
        elif word == "list":
            kept = "\n".join(f"  {name}  {how}" for name, how in self.session.kept.items())
            self.write(kept or "  Nothing yet. `keep 3` puts name 3 on it.")
        elif word == "save":
            self.save(Path(rest) if rest else self.shortlist_file)
        elif word in ("help", "?"):
            self.write(HELP)
        else:
            self.write(f"{word!r} is not understood here. `help` lists what is.")

    def _about(self, kind: str, rest: str) -> None:
        chosen = [self._named(token) for token in rest.replace(",", " ").split()]
        found = [candidate for candidate in chosen if candidate is not None]
        if not found or len(found) < len(chosen):
            self.write(f"{kind} takes numbers of this page, 1 to {len(self.page)}, and one step stands on a line.")
            return
        self._step(*(Step.about(kind, candidate) for candidate in found))
        names = ", ".join(candidate.text for candidate in found)
        done = {"keep": "Kept", "drop": "Dropped", "more": "More like", "less": "Fewer like"}[kind]
        self.write(f"{done}: {names}. On the shortlist: {len(self.session.kept)}.")
        self.stream = None
        if kind in ("more", "less"):
            self.next_page()

    def _explain(self, rest: str) -> None:
        one = self._named(rest)
        if one is None:
            self.write(f"Say which of this page, by number: why 3 (1 to {len(self.page)}).")
            return
        parts = ", ".join(f"{name} {value:.2f}" for name, value in one.parts.items())
        for line in (f"{one.text}: {one.construction}, {one.how}", *one.origins, f"score {one.score:.2f}: {parts}"):
            say_below(line)

    def _named(self, token: str) -> Candidate | None:
        if token.isdecimal():
            return self.page[int(token) - 1] if 1 <= int(token) <= len(self.page) else None
        return next((one for one in self.page if one.text.casefold() == token.casefold()), None)

    def next_page(self) -> None:
        """Show the next page; what was learned since the last one counts from here on."""
        settled = self.session.brief(self.brief)
        if not settled.concepts:
            self.write("No concept is left. Add one: add WORD")
            return
        if self.stream is None:
            self.stream = candidates(settled, taste=self.session.taste, register=self.register)
        self.page = list(islice(self.stream, PAGE))
        if not self.page:
            self.write("No more names within these limits. Add a concept, or undo a step.")
            return
        self._step(*(Step("shown", candidate.text) for candidate in self.page))
        rows = [
            {"number": number, "name": one.text, "score": f"{one.score:.2f}", "how": one.how, "flags": one.flags}
            for number, one in enumerate(self.page, 1)
        ]
        show_table(rows, _COLUMNS if any(one.flags for one in self.page) else _COLUMNS[:-1])

    def _step(self, *steps: Step) -> None:
        self.session = self.session.after(*steps)
        write_whole(self.session_file, journal(self.session))

    def save(self, path: Path) -> None:
        """Write the shortlist; names that stand in the file already stay as they are."""
        if not self.session.kept:
            return
        before, known = "", []
        if path.is_file():
            before = path.read_text("utf-8")
            known = [line.strip() for line in before.splitlines() if not line.startswith("#")]
        try:
            write_whole(path, shortlist_text(self.session.kept, before, known).encode())
        except OSError as error:
            self.write(f"{path} cannot be written ({error.strerror}). Name another file: save FILE")
            return
        self.write(f"{plural(len(self.session.kept), 'name')} kept, in {path}.")


def concept_step(kind: str, text: str) -> Step:
    """The step of adding or leaving a concept, or one meaning of it: to leave a meaning is to add the others."""
    word, _, wanted = (part.strip() for part in text.partition("="))
    senses = tuple(wanted.replace(",", " ").split())
    if kind == "without" and senses:
        left = chosen_senses(Concept(word, senses))
        others = [sense.label.partition("(")[2].rstrip(")") for sense in lexicon().senses(word) if sense not in left]
        if others:
            return Step("add", word, senses=tuple(others))
    return Step(kind, word, senses=senses if kind == "add" else ())


def steer_session(brief: Brief, session: Path | None, shortlist: Path | None, register: Register | None) -> None:
    """Run a steered session on the terminal, taking up the one in its file if there is one."""
    beside = brief.source or Path("brainstorm")
    session_file = session or beside.with_suffix(".session")
    shortlist_file = shortlist or brief.shortlist_file or beside.with_name("shortlist.txt")
    started = read_journal(session_file) if session_file.exists() else Session()
    if not session_file.parent.is_dir():
        raise InputError(f"{session_file}: its folder does not exist. Give another --session file")
    desk = Desk(brief, session_file, shortlist_file, register, input, _write, started, [])
    if started.steps:
        _write(f"Taking up the session in {session_file}: {plural(len(started.kept), 'name')} kept so far.")
    _write(on_screen(DISCLAIMER))
    try:
        desk.run()
    except KeyboardInterrupt:
        raise Interrupted(
            f"Stopped. The session is kept in {session_file}; the same command takes it up again."
        ) from None


def _write(text: str) -> None:
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
