"""The names that a line of a steered session may mean, and what is told of one: those of the page and of earlier pages,
those of the plain list, what is left out of it with the reason, and the maker's own in the shortlist file."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

from namescreen.brief import Brief
from namescreen.generation import Candidate, Session, Step, candidates
from namescreen.generation.appraisal import appraise, objection
from namescreen.text import fold

from .output import PARTS_SHOWN, say_below
from .steer_input import names_in
from .steer_names import name_key

if TYPE_CHECKING:
    from namescreen.register import Register

__all__ = ["KnownNames", "explain"]

Find = Callable[[str], "Candidate | Step | None"]

_DIGITS = 5  # no page has numbers so long
_LISTED = 120
"""Names of the plain list that are known here: three times what it shows unless told otherwise."""
_LONGEST = 40  # letters of a name of the maker's own
_OF_NO_NAME = ("add", "without", "saved", "unsaved", "page", "undo")


class KnownNames:
    """The names of a brief that a session knows besides those it has shown; the plain list is made when first asked,
    and again when the session has other concepts."""

    def __init__(self, brief: Brief, register: Register | None, shortlist_file: Path) -> None:
        self._brief, self._register, self._shortlist_file = brief, register, shortlist_file
        self._listed_for: Brief | None = None
        self._plain: dict[str, Candidate] = {}
        self._left_out: dict[str, tuple[Candidate, str]] = {}

    def finder(
        self, page: Sequence[Candidate | Step], pages: Sequence[Sequence[Candidate | Step]], session: Session, *,
        listed: bool = True,
    ) -> Find:  # fmt: skip
        """Tells the name that a text means: a number of the page, or a name as it may be typed, of those shown and, if
        `listed`, of all others that are known here."""
        shown: dict[str, Candidate | Step] = {
            name_key(step.text): step for step in session.steps if step.kind not in _OF_NO_NAME
        }
        for names in (*pages, page):
            shown.update((name_key(one.text), one) for one in names)

        def known(text: str) -> Candidate | Step | None:
            if text.isdecimal():
                return page[int(text) - 1] if len(text) < _DIGITS and 1 <= int(text) <= len(page) else None
            return shown.get(name_key(text)) or (self._elsewhere(text, session.brief(self._brief)) if listed else None)

        return known

    def because(self, text: str, session: Session) -> str:
        """Why a name is left out of the pages; "" of one that was not met while the plain list was made."""
        self._listed(session.brief(self._brief))
        return self._left_out[name_key(text)][1] if name_key(text) in self._left_out else ""

    def own(self, name: str, brief: Brief) -> str:
        """What is said of a name of the maker's own; "" of what is no name, or where there is no concept to judge it
        by."""
        if len(name) > _LONGEST or not any(map(str.isalpha, fold(name).split())) or not brief.concepts:
            return ""
        own = appraise(name, brief)
        told = f"As one of your own it would score {own.score:.2f}: {own.construction}, {own.how}"
        why = objection(name, brief, self._register)
        return f"{told}. Here it would be left out: {why}" if why else told

    def _elsewhere(self, text: str, brief: Brief) -> Candidate | None:
        """A name that is not shown here: of the plain list, left out of it, or in the shortlist file."""
        if not any(map(str.isalpha, text)):
            return None
        key = name_key(text)
        if key in (listed := self._listed(brief)):
            return listed[key]
        if key in self._left_out:
            return self._left_out[key][0]
        typed = next((name for name in names_in(self._shortlist_file)[1] if name_key(name) == key), "")
        return appraise(typed, brief) if typed and brief.concepts else None

    def _listed(self, brief: Brief) -> dict[str, Candidate]:
        if self._listed_for != brief:
            self._listed_for, self._plain, self._left_out = brief, {}, {}
            if brief.concepts:
                found = candidates(brief, register=self._register)
                self._plain = {name_key(one.text): one for one in islice(found, _LISTED)}
                self._left_out = {name_key(one.candidate.text): (one.candidate, one.because) for one in found.left_out}
        return self._plain


def explain(one: Candidate | Step, because: str) -> None:
    """Write how a name was made, and `because` of what it is left out, if it is."""
    if isinstance(one, Step):  # of an earlier session: only how it was made is known
        say_below(f"{one.text}: {one.construction}, {one.how}")
        return
    parts = ", ".join(f"{title} {one.parts[name]:.2f}" for name, title in PARTS_SHOWN.items() if name in one.parts)
    said = {f"{source}: {one.how}" for source in one.sources}  # of a word taken as it is, by the line before
    origins = [told for told in one.origins if told not in said]
    left = [f"left out of the pages: {because}"] if because else []
    for line in (f"{one.text}: {one.construction}, {one.how}", *origins, *left, f"score {one.score:.2f}; {parts}"):
        say_below(line)
