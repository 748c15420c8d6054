"""The desk of a steered brainstorm: what each line does, what is said of it, and that it is written down."""

from __future__ import annotations

import os
import shlex
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError, Problem
from namescreen.files import write_whole
from namescreen.generation import Candidate, Session, Step, candidates
from namescreen.generation.brief_terms import words_of
from namescreen.generation.paging import good_names, least_score
from namescreen.generation.senses import doubt
from namescreen.generation.steering import SHORTLIST_HEAD, journal, shortlist_text
from namescreen.plain_text import bounded, plural, shorten, some, visible
from namescreen.text import fold

from .output import definitions, folded
from .outputs import unfit_output
from .steer_concepts import concept_step, done_words, why_not
from .steer_input import PipedLines, names_in
from .steer_known import KnownNames, explain
from .steer_names import named_in
from .steer_page import show_page
from .steer_words import (
    COMMANDS,
    FEW_LEFT,
    HELP,
    HINT,
    SHORT,
    in_other_words,
    last_words,
    sense_lines,
    taste_lines,
    undo_words,
)
from .talk import progress

if TYPE_CHECKING:
    from namescreen.register import Register

__all__ = ["MOST_REFUSED", "PAGE", "Desk"]

PAGE = 12
"""Names on a page: with a line of hints and a few answers they fit a screen of 24 lines."""

_DONE = {"keep": "Kept", "unkeep": "No longer kept", "drop": "Dropped", "more": "More like", "less": "Fewer like"}
"""What is said after a step about names."""
_SO_ALREADY = {"keep": "Kept already", "unkeep": "Not on the shortlist", "drop": "Dropped already"}
"""What is said where that is so before it."""
MOST_REFUSED = 100
"""Lines of a pipe that ask for nothing known, after which it is taken for something else than a session."""


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
    pages: list[Sequence[Candidate | Step]] = field(default_factory=list)
    at: int = -1
    stream: Iterator[Candidate] | None = None
    anew: bool = False
    """Whether the next page is a new one though older ones follow: what is asked for has changed."""
    lowered: int = 0
    """How many times the maker has gone on past the last good names."""
    refused: int = 0
    """How many lines asked for nothing that could be done."""

    def __post_init__(self) -> None:
        self.pages += self.session.pages
        self.at = self.session.at
        self.names = KnownNames(self.brief, self.register, self.shortlist_file)

    @property
    def page(self) -> Sequence[Candidate | Step]:
        """The names on the page that is shown."""
        return self.pages[self.at] if self.pages else []

    def run(self) -> None:
        """Show pages and obey until the maker stops, or the input ends."""
        self.open()
        self.say(HINT)
        piped = isinstance(self.read, PipedLines)
        while True:
            try:
                line = self.read("> ")
                line.encode()
            except EOFError:
                break
            except UnicodeError:
                self._refuse("That line holds what is no text. Type it again.")
                continue
            word, _, rest = line.strip().partition(" ")
            if word in ("stop", "quit", "exit"):
                break
            self.obey(word.casefold(), rest.strip())
            if piped and self.refused >= MOST_REFUSED:
                break
        if self.session.kept:
            self.save(self.shortlist_file)
        self.say(self._onward())

    def open(self) -> None:
        """Show the page on which the session stood, or its first."""
        if self.pages:
            self._show_again(self.at)
        else:
            self.next_page()

    def _onward(self) -> str:
        """The next steps after a session."""
        source, kept_in = self.brief.source, self.shortlist_file
        if not self.session.kept:
            return f"Nothing is kept yet. The session is in {self.session_file}; the same command goes on."
        with_brief = ["--brief", str(source)] if source else []
        if source and self.brief.shortlist_file == kept_in:
            return f"Next: {shlex.join(['namescreen', 'screen', *with_brief])}"
        lines = [f"Next: {shlex.join(['namescreen', 'screen', str(kept_in), *with_brief])}"]
        if source and kept_in.parent == source.parent:
            lines.append(f'For the report, write into {source}: shortlist = "{kept_in.name}"')
        return "\n".join(lines)

    def obey(self, word: str, rest: str) -> None:
        """Carry out one line."""
        word = SHORT.get(word, word)
        if word[:1].isdecimal():
            word, rest = "keep", f"{word} {rest}"
        typed = word
        word, rest = in_other_words(word, rest)
        if word in ("", "next") or (word == "more" and not rest):
            self.next_page()
        elif word == "back":
            self._back()
        elif word in _DONE:
            self._about(word, rest.removeprefix("like ") if word in ("more", "less") else rest)
        elif word in ("add", "without") and rest:
            self._concept(word, rest)
        elif word == "senses" and rest:
            self._write_lines(sense_lines(rest, self.brief))
        elif word == "why":
            self._explain(rest)
        elif word == "undo":
            self._undo()
        elif word == "list":
            kept = [f"  {name}  {how}" for name, how in self.session.kept.items()]
            kept += [f"  {name}  in {self.shortlist_file} already" for name in self._others()]
            self._write_lines(kept or ["  Nothing yet. `keep 3` puts name 3 on it."])
        elif word == "taste":
            self._write_lines([*taste_lines(self.session), undo_words(self.session)])
        elif word == "save":
            self.save(Path(rest) if rest else self.shortlist_file)
        elif word in ("help", "?"):
            self.write(definitions(HELP))
        else:
            self._refuse(self._not_understood(word, rest, typed))

    def say(self, text: str) -> None:
        """Write what is no table within the terminal's width; a path stays whole, so that it can be copied."""
        lines = (bounded(visible(line)) for line in text.split("\n"))
        self.write("\n".join(folded(line, break_long_words=False, break_on_hyphens=False) for line in lines))

    def _refuse(self, what: str) -> None:
        """Say why a line cannot be obeyed, and where it stands if it was not typed just now."""
        self.refused += 1
        said = f"{self.read.place}{what}" if isinstance(self.read, PipedLines) else what
        self.say(said)

    def _write_lines(self, lines: Iterable[str]) -> None:
        self.write("\n".join(folded(line.strip(), "  ") for line in lines))

    def _not_understood(self, word: str, rest: str, typed: str) -> str:
        """What is said of a line that asks for nothing known: a name alone, a slip of the keys, or a command, as it was
        `typed`, that lacks its word."""
        named = self._known(listed=False)(f"{word} {rest}".strip())  # a slip of the keys needs no list made
        if named is not None:
            return f"What about {named.text}? To keep it: keep {named.text}. Or: drop, more, less, why {named.text}"
        if word in ("add", "without", "senses"):
            asked = typed if word == "senses" else word
            return f"{asked} takes a word: {asked} WORD"
        near = get_close_matches(word, COMMANDS, 1)
        meant = f" Did you mean `{f'{near[0]} {rest}'.strip()}`?" if near else ""
        return f"{shorten(word, 40)!r} is not understood here.{meant} `help` lists what is."

    def _about(self, kind: str, rest: str) -> None:
        chosen: list[Candidate | Step]
        chosen, unknown = named_in(rest, self._known())
        if not chosen:
            takes = f"{kind} takes numbers of this page, 1 to {len(self.page)}, or names: {kind} 3 5-7"
            self._refuse(" ".join(filter(None, (self._no_names(unknown, kind), takes))))
            return
        done = [one for one in chosen if self.session.is_so(kind, one.text)]
        if done:
            self.say(f"{_SO_ALREADY[kind]}: {', '.join(one.text for one in done)}.")
        chosen = [one for one in chosen if one not in done]
        if chosen:
            left_out = [one for one in chosen if one.text not in self.session.shown]
            self._step(*self.session.about(kind, chosen, words_of(self.session.brief(self.brief))))
            total = len(self.session.kept) + len(self._others())
            self.say(f"{_DONE[kind]}: {', '.join(one.text for one in chosen)}. On the shortlist: {total}.")
            for one in left_out if kind == "keep" else ():
                if because := self.names.because(one.text, self.session):
                    self.say(f"{one.text} was left out of the pages: {because}.")
            self.stream = None
        if unknown:
            self._refuse(self._no_names(unknown, kind))
        if chosen and kind in ("more", "less"):
            self.anew = True
            self.next_page()

    def _no_names(self, unknown: Sequence[str], kind: str) -> str:
        """What is said of pieces of a line that are no names known here."""
        numbers = [one for one in unknown if one[0].isdecimal()]
        others = [repr(one) for one in unknown if one not in numbers]
        beyond = f"this page has 1 to {len(self.page)}, and not {some(numbers)}" if numbers else ""
        strange = f"{some(others)} {'is' if len(others) == 1 else 'are'} no name shown so far" if others else ""
        own = f"; a name of your own goes into {self.shortlist_file}" if others and kind == "keep" else ""
        told = "; ".join(filter(None, (beyond, strange + own)))
        return f"{told[:1].upper()}{told[1:]}." if told else ""

    def _others(self) -> list[str]:
        """The names in the shortlist file that are no doing of this session's."""
        own = {fold(name) for name in (*self.session.kept, *self.session.saved)}
        return [name for name in dict.fromkeys(names_in(self.shortlist_file)[1]) if fold(name) not in own]

    def _concept(self, word: str, rest: str) -> None:
        problem = why_not(word, rest, self.session.brief(self.brief), [one.text for page in self.pages for one in page])
        if problem:
            self._refuse(f"{problem}. Nothing is changed.")
            return
        step = concept_step(word, rest)
        self._step(step)
        self.say(done_words(word, step))
        doubted = doubt(Concept(step.text, step.senses)) if word == "add" else ""
        if doubted:
            self.say(f"{doubted.replace('--ideas', f'`senses {step.text}`')} `undo` takes it back.")
        self.stream, self.anew, self.lowered = None, True, 0
        self.next_page()

    def _undo(self) -> None:
        last, stood = self.session.last, self.session.stood
        if not last:
            self.say("There is nothing to take back.")
            return
        self._step(Step("undo"))
        self.stream = None
        self.say(f"Taken back: {last_words(last)}.\n{undo_words(self.session)}")
        if last[0].kind not in ("keep", "unkeep", "drop"):
            self._show_again(stood)
            self.anew = True

    def _back(self) -> None:
        if self.at < 1:
            self._refuse("There is no page before this one.")
            return
        self._show_again(self.at - 1)

    def _show_again(self, place: int) -> None:
        """Show a page that was shown before, and note that the session stands there: its numbers count again."""
        self.at, self.anew = max(0, place), False
        if self.session.at != self.at:
            self._step(Step("page", str(self.at)))
        self.say(f"Page {self.at + 1} of {len(self.pages)}.")
        self._show_page()

    def _explain(self, rest: str) -> None:
        one = self._known()(rest)
        if one is not None:
            explain(one, self.names.because(one.text, self.session) if one.text not in self.session.shown else "")
            return
        what = f"{rest!r} is no name shown so far. " * bool(rest)
        which, own = f"Say which: why 3 (1 to {len(self.page)}).", self.names.own(rest, self.session.brief(self.brief))
        self.say(what + own) if own else self._refuse(what + which)

    def _known(self, *, listed: bool = True) -> Callable[[str], Candidate | Step | None]:
        """Tells the name that a text means; see `KnownNames.finder`."""
        return self.names.finder(self.page, self.pages, self.session, listed=listed)

    def next_page(self) -> None:
        """Show the next page; what was learned since the last one counts from here on."""
        if self.at + 1 < len(self.pages) and not self.anew:
            self._show_again(self.at + 1)
            return
        settled = self.session.brief(self.brief)
        if not settled.concepts:
            self.say("No concept is left. Add one: add WORD")
            return
        if self.stream is None:
            try:
                found = candidates(settled, taste=self.session.taste, register=self.register)
            except InputError as error:  # of all concepts only one that says what is not wanted is left
                self._refuse(f"No names can be made: {error.problems[0]}. Or add WORD; `undo` goes back.")
                return
            self.stream = (one for one in found if one.text not in self.session.shown)
        floor = least_score([one.score for one in self.pages[0]] if self.pages else [], self.lowered)
        with progress("Brainstorming"):
            page, waiting, weaker = good_names(self.stream, floor, PAGE)
            self.stream = chain(waiting, self.stream)
        if not page and not weaker:
            self.say("No more names within these limits. Add a concept, or undo a step.")
            return
        if page:
            self.pages.append(page)
            self.at, self.anew = len(self.pages) - 1, False
            self._step(*Session.page_of(page))
            if self.at:
                self.say(f"Page {self.at + 1}, new.")
            self._show_page()
        if weaker and len(page) < PAGE:
            self.stream, self.lowered = None, self.lowered + 1
            self.say(FEW_LEFT.format(floor=floor))

    def _show_page(self) -> None:
        show_page(self.page, self.session)

    def _step(self, *steps: Step) -> None:
        self.session = self.session.after(*steps)
        write_whole(self.session_file, journal(self.session))

    def save(self, path: Path) -> None:
        """Write the shortlist; names that stand in the file stay, and what was deleted in it stays deleted. A file
        other than the session's gets the names that were typed into that too."""
        problem = self.unfit(path)
        if problem is not None:
            self._refuse(f"{problem}.\nThe shortlist is not written.")
            return
        before, known = names_in(path)
        there = {fold(name) for name in known}
        own = os.path.realpath(path) == os.path.realpath(self.shortlist_file)
        gone = [name for name in self.session.kept if own and name in self.session.saved and fold(name) not in there]
        if gone:
            self._step(*(replace(Step("unkeep", name), joined=place > 0) for place, name in enumerate(gone)))
            self.say(f"Deleted in {path}, so no longer kept: {', '.join(gone)}.")
        # the file of the session holds what was typed into it; another one holds nothing of that yet
        kept = {**self.session.kept, **dict.fromkeys(() if own else self._others(), "")}
        off = [name for name in sorted(self.session.saved) if own and name not in kept and fold(name) in there]
        if not kept and not off:
            self.say(f"Nothing is kept yet, so {path} is not written. `keep 3` keeps name 3 of the page.")
            return
        try:
            write_whole(path, shortlist_text(kept, before, known, off).encode())
        except OSError as error:
            self._refuse(f"{path} cannot be written ({error.strerror}). Name another file: save FILE")
            return
        if own:
            taken = tuple(Step("unsaved", name) for name in off)
            self._step(*(Step("saved", name) for name in kept if name not in self.session.saved), *taken)
        others = len(self._others()) if own else 0
        beside = f", beside {plural(others, 'name')} that stood there" if others else ""
        self.say(f"{plural(len(kept), 'name')} kept, in {path}{beside}.")

    def unfit(self, path: Path) -> Problem | None:
        """Why the shortlist may not be written to `path`; a list that the brief names as its own may be added to."""
        inputs = [self.session_file, *self.brief.marks, *([self.brief.source] if self.brief.source else [])]
        beginnings: tuple[bytes, ...] = (SHORTLIST_HEAD.encode(),)
        named = self.brief.shortlist_file
        if named is not None and os.path.realpath(path) == os.path.realpath(named) and path.suffix.lower() != ".csv":
            beginnings = (b"",)
        return unfit_output(path, "shortlist", beginnings, inputs)
