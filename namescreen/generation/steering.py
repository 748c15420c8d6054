"""Steering a brainstorm by hand: a pure state machine over what the maker keeps, drops and asks for.

A session is what follows from its steps, so it can be written down after each, taken up again, and undone:
`Session.after(step)` gives the next session, `journal` and `read_journal` write and read the steps.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from itertools import takewhile
from pathlib import Path

from ..brief import Brief, Concept
from ..errors import InputError, Problem
from ..files import read_bounded, refuse_devices
from ..plain_text import unseen_escaped
from ..text import fold
from .candidate import Candidate
from .taste import Taste, preferences
from .wanted import usable_words

__all__ = ["KINDS", "SHORTLIST_HEAD", "Session", "Step", "journal", "read_journal", "shortlist_text"]

KINDS = ("shown", "keep", "unkeep", "drop", "more", "less", "add", "without", "saved", "unsaved", "page", "undo")
"""What a step may do: note what was shown, and the place of a page that is shown again; keep a name, take it off the
shortlist again, or drop it; ask for more or less like one; add a concept, or go on without a word; note what was
written to the shortlist file; take back the last step, and those that stood on one line with it."""

SHORTLIST_HEAD = "# Shortlist: one name a line; lines with # are remarks."
"""The first line of every shortlist file written here."""
_NOTES = ("shown", "saved", "unsaved", "page")  # steps that are no wish of the maker's, and are not taken back

_HEADER = {"namescreen session": 2}
_UNPAGED = {"namescreen session": 1}
"""The header of a journal in which the names of a page were not joined."""
MOST_BYTES = 1 << 26
"""The most bytes of a session that are read: some ten thousand pages."""
_REMEDY = "Give another --session file"
_LEARN = {"keep": 1.25, "unkeep": 0.8, "more": 1.6, "drop": 0.85, "less": 0.5}
"""By how much a step raises or lowers the sources of a name (set by trying sessions)."""
_AGAINST = ("unkeep", "drop", "less")
_BOUNDS = (0.2, 2.5)


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its kind, the name or word it is about, and how that name was made; `joined` if it stood on one line
    or one page with the step before. `score` and `flags` are those of a name that was shown."""

    kind: str
    text: str = ""
    sources: tuple[str, ...] = ()
    construction: str = ""
    how: str = ""
    senses: tuple[str, ...] = ()
    joined: bool = False
    score: float = 0.0
    flags: tuple[str, ...] = ()

    @classmethod
    def about(cls, kind: str, candidate: Candidate | Step) -> Step:
        """A step about a candidate, or about the one that another step is about."""
        return cls(kind, candidate.text, candidate.sources, candidate.construction, candidate.how)


@dataclass(frozen=True)
class Session:
    """Where a session stands. `kept` maps each kept name to how it was made; `shown` are all names seen; `saved` those
    written to the shortlist file; `left` the meanings in which a word is not wanted."""

    steps: tuple[Step, ...] = ()
    kept: Mapping[str, str] = field(default_factory=dict)
    dropped: tuple[str, ...] = ()
    shown: frozenset[str] = frozenset()
    saved: frozenset[str] = frozenset()
    added: tuple[Concept, ...] = ()
    without: tuple[str, ...] = ()
    words: Mapping[str, float] = field(default_factory=dict)
    models: tuple[str, ...] = ()
    unlike: tuple[str, ...] = ()
    left: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def after(self, *steps: Step) -> Session:
        """The session after these steps. "undo" takes back what `last` says."""
        session = self
        for step in steps:
            session = session._undone() if step.kind == "undo" else session._next(step)
        return session

    def is_so(self, kind: str, name: str) -> bool:
        """Whether a step would change nothing: the name is kept or dropped already, or not kept."""
        if kind == "unkeep":
            return name not in self.kept
        return (kind == "keep" and name in self.kept) or (kind == "drop" and name in self.dropped)

    def about(self, kind: str, names: Iterable[Candidate | Step], own: Collection[str] = ()) -> tuple[Step, ...]:
        """The steps of one line about names. What a name owes to the maker's `own` words, the concepts, and to names
        that were kept is no fault of it: to want fewer of a kind says nothing against these words."""
        liked = {word for step in self.steps if step.kind in ("keep", "more") for word in step.sources}
        spared = {*map(fold, own), *liked} if kind in _AGAINST else set()
        steps = [Step.about(kind, one) for one in names]
        return tuple(
            replace(step, sources=tuple(one for one in step.sources if fold(one) not in spared), joined=place > 0)
            for place, step in enumerate(steps)
        )

    @classmethod
    def page_of(cls, candidates: Iterable[Candidate]) -> tuple[Step, ...]:
        """The steps that note a page of candidates as it is shown."""
        return tuple(
            replace(Step.about("shown", one), joined=place > 0, score=round(one.score, 2), flags=one.flags)
            for place, one in enumerate(candidates)
        )

    @property
    def pages(self) -> list[list[Step]]:
        """The pages shown so far, in order."""
        found: list[list[Step]] = []
        for step in self.steps:
            if step.kind == "shown":
                found += [[]] if not found or not step.joined else []
                found[-1].append(step)
        return found

    @property
    def at(self) -> int:
        """The place of the page that was shown last, from 0; -1 before the first."""
        return _place(self.steps)

    @property
    def stood(self) -> int:
        """The place of the page on which the step was made that "undo" takes back."""
        wishes = [place for place, step in enumerate(self.steps) if step.kind not in _NOTES]
        return _place(self.steps[: wishes[-len(self.last)]] if self.last else self.steps)

    def _next(self, step: Step) -> Session:
        now = replace(self, steps=(*self.steps, step))
        if step.kind == "page":
            return now
        if step.kind == "shown":
            return replace(now, shown=self.shown | {step.text})
        if step.kind == "saved":
            return replace(now, saved=self.saved | {step.text})
        if step.kind == "unsaved":
            return replace(now, saved=self.saved - {step.text})
        if step.kind == "add":
            concept = Concept(step.text, step.senses)
            others = tuple(one for one in self.added if fold(one.word) != fold(step.text))
            freed = tuple(word for word in self.without if word != fold(step.text))
            left = {word: meanings for word, meanings in self.left.items() if word != fold(step.text)}
            return replace(now, added=(*others, concept), without=freed, left=left)
        if step.kind == "without" and step.senses:
            word = fold(step.text)
            both = dict.fromkeys((*self.left.get(word, ()), *step.senses))
            return replace(now, left={**self.left, word: tuple(both)})
        if step.kind == "without":
            added = tuple(one for one in self.added if fold(one.word) != fold(step.text))
            return replace(now, added=added, without=tuple(dict.fromkeys((*self.without, fold(step.text)))))
        kept = {name: how for name, how in self.kept.items() if name != step.text}
        dropped = tuple(name for name in self.dropped if name != step.text)
        if step.kind == "keep":
            kept[step.text] = f"{step.construction}: {step.how}" if step.how else ""
        elif step.kind == "drop":
            dropped = (*dropped, step.text)
        elif step.kind != "unkeep":
            kept, dropped = dict(self.kept), self.dropped
        models = (*self.models, step.text) if step.kind == "more" else self.models
        unlike = (*self.unlike, step.text) if step.kind == "less" else self.unlike
        words = dict(self.words)
        for word in step.sources:
            words[word] = _bounded(words.get(word, 1.0) * _LEARN[step.kind])
        return replace(
            now, kept=kept, dropped=dropped, models=models[-3:], unlike=unlike[-3:], words=words,
            shown=self.shown | {step.text},
        )  # fmt: skip

    @property
    def last(self) -> tuple[Step, ...]:
        """The steps that "undo" takes back: the last wish of the maker's, with those of its line."""
        found: list[Step] = []
        for step in reversed(self.steps):
            if step.kind not in _NOTES:
                found.append(step)
                if not step.joined:
                    break
        return tuple(reversed(found))

    def _undone(self) -> Session:
        back = len(self.last)
        wishes = [place for place, step in enumerate(self.steps) if step.kind not in _NOTES]
        gone = set(wishes[len(wishes) - back :])
        return Session().after(*(step for place, step in enumerate(self.steps) if place not in gone)) if back else self

    @property
    def constructions(self) -> dict[str, float]:
        """A factor around 1 for each construction met: above 1 if more of its names were liked than of others."""
        made = {step.text: step.construction for step in self.steps if step.construction}
        opinions = {step.text: step.kind for step in self.steps if step.kind in _LEARN}
        liked = Counter(made[text] for text, kind in opinions.items() if text in made and kind in ("keep", "more"))
        disliked = Counter(made[text] for text, kind in opinions.items() if text in made and kind in ("drop", "less"))
        return {kind: _bounded(factor) for kind, factor in preferences(Counter(made.values()), liked, disliked).items()}

    @property
    def taste(self) -> Taste:
        """What has been learned, for `brainstorm`; nothing before the first wish, so that pages go on as one long list
        does. What was shown may come again then."""
        if all(step.kind in _NOTES for step in self.steps):
            return Taste()
        seen = self.shown | set(self.dropped)
        worn = Counter(word for page in self.pages for step in page for word in {*step.sources})
        since = takewhile(lambda step: step.kind != "shown", reversed(self.steps))
        added = tuple(step.text for step in since if step.kind == "add")
        return Taste(
            self.words, self.constructions, self.models, self.unlike, self.without, seen, worn, self.left, added
        )

    def brief(self, brief: Brief) -> Brief:
        """`brief` with the concepts that were added, and without those that were put aside."""
        added = {fold(concept.word): concept for concept in self.added}
        own = [concept for concept in brief.concepts if fold(concept.word) not in (*self.without, *added)]
        return replace(brief, concepts=(*own, *added.values()))


def _place(steps: Iterable[Step]) -> int:
    """The place of the page that these steps end on."""
    at = last = -1
    for step in steps:
        if step.kind == "shown" and not (step.joined and last >= 0):
            at = last = last + 1
        elif step.kind == "page":
            at = min(int(step.text), last)
    return at


def _bounded(factor: float) -> float:
    return max(_BOUNDS[0], min(_BOUNDS[1], factor))


def journal(session: Session) -> bytes:
    """The session as a file: a header line, then a line of JSON for each step."""
    lines = [json.dumps(_HEADER)]
    for step in session.steps:
        facts = {"do": step.kind, "text": step.text, "sources": step.sources, "construction": step.construction,
                 "how": step.how, "senses": step.senses, "joined": step.joined, "score": step.score,
                 "flags": step.flags}  # fmt: skip
        told = json.dumps({key: value for key, value in facts.items() if value}, ensure_ascii=False)
        lines.append(unseen_escaped(told))  # else a line separator in a word would end the line
    return ("\n".join(lines) + "\n").encode()


def read_journal(path: Path) -> Session:
    """The session written at `path`; raises `InputError` naming every line that is not a step."""
    try:
        refuse_devices(path)  # a pipe would be waited for
        lines = read_bounded(path, MOST_BYTES, _REMEDY).decode().splitlines()
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or error
        raise InputError(Problem(f"cannot be read ({why})", _REMEDY, str(path))) from None
    if not lines or _parsed(lines[0]) not in (_HEADER, _UNPAGED):
        raise InputError(Problem("is not a session of this program", _REMEDY, str(path), 1))
    steps, problems = [], []
    for number, line in enumerate(lines[1:], 2):
        step = _step(_parsed(line))
        if step is None:
            problems.append(Problem("is not a step of a session", "Take the line out", str(path), number))
        else:
            steps.append(step)
    if problems:
        raise InputError(problems)
    return Session().after(*(_paged(steps) if _parsed(lines[0]) == _UNPAGED else steps))


def _paged(steps: list[Step]) -> list[Step]:
    """The steps of a journal written before pages were noted: names shown in a row are taken as one page."""
    before = ["", *(step.kind for step in steps)]
    return [replace(step, joined=True) if step.kind == kind == "shown" else step
            for step, kind in zip(steps, before, strict=False)]  # fmt: skip


def _parsed(line: str) -> object:
    try:
        parsed = json.loads(line)
        json.dumps(parsed, ensure_ascii=False).encode()  # half a character, as only escapes can hold, is no text
    except (ValueError, RecursionError):
        return None
    return parsed


def _step(facts: object) -> Step | None:
    if not isinstance(facts, dict) or facts.get("do") not in KINDS:
        return None
    texts = [facts.get(key, "") for key in ("text", "construction", "how")]
    lists = [facts.get(key, []) for key in ("sources", "senses", "flags")]
    if not all(isinstance(text, str) for text in texts):
        return None
    if not all(isinstance(items, list) and all(isinstance(item, str) for item in items) for items in lists):
        return None
    score = facts.get("score", 0.0)
    if not isinstance(score, int | float) or not 0 <= score <= 1:
        return None
    if facts["do"] == "page" and not re.fullmatch(r"[0-9]{1,6}", texts[0]):
        return None
    if not isinstance(facts.get("joined", False), bool) or (facts["do"] == "add" and not usable_words(texts[0])):
        return None  # a concept that no name can be made from would end every later run
    return Step(
        str(facts["do"]), texts[0], tuple(lists[0]), texts[1], texts[2], tuple(lists[1]), facts.get("joined", False),
        float(score), tuple(lists[2]),
    )  # fmt: skip


def shortlist_text(
    kept: Mapping[str, str], before: str = "", known: Iterable[str] = (), taken_off: Iterable[str] = ()
) -> str:
    """A shortlist file: one name a line, above it a remark how it was made.

    `before` is what the file holds already and stays as it is, but for the names `taken_off` and the remarks above
    them; names in `known` stand there and are not repeated.
    """
    there, off = {fold(name) for name in known}, {fold(name) for name in taken_off}
    held: list[str] = []
    for line in before.rstrip("\n").split("\n"):
        if line.strip() and fold(line.strip()) in off:
            if held and held[-1].startswith("# ") and held[-1] != SHORTLIST_HEAD:
                held.pop()
        else:
            held.append(line)
    lines = held if before.strip() else [SHORTLIST_HEAD]
    for name, how in kept.items():
        if fold(name) not in there:
            lines += [f"# {' '.join(how.split())}", name] if how else [name]
    return "\n".join(lines) + "\n"
