"""What may be typed in a steered session, what it means, and what is said of it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from namescreen.brief import Brief, Concept
from namescreen.generation import Session, Step
from namescreen.generation.brief_terms import goods_words, likely_guides, words_of
from namescreen.generation.senses import is_coarse, key_of, likeliest_sense
from namescreen.lexicon import Sense, association, lexicon
from namescreen.plain_text import some
from namescreen.text import fold

__all__ = [
    *("COMMANDS", "FEW_LEFT", "HELP", "HINT", "SHORT"),
    *("in_other_words", "last_words", "sense_lines", "taste_lines"),
    "undo_words",
]

_MOST_SENSES = 8
HINT = "A line: keep 3 7 | drop 2 | more 4 | less 4 | next | back | save | stop | help"
FEW_LEFT = (
    "Few names that score {floor:.2f} or more are left. Add a concept (add WORD), leave one (without WORD), or go on "
    "(next) with weaker names too."
)
"""What is said where a page is not full, though there are weaker names."""
HELP = (
    ("keep 3 5-7", "put names on the shortlist (or just: 3 5-7); names may be typed too, also of earlier pages or "
                   "left out: keep Fernwick, Sip Sill; names of your own are added to the file by hand"),
    ("unkeep NAME", "take a name off the shortlist again"),
    ("drop 2", "never show name 2 again, and less of what it is made of"),
    ("more 4", "more like name 4: on a new page, which follows at once, as after less, add and without"),
    ("less 4", "fewer like it"),
    ("add WORD", "another concept"),
    ("mean WORD=MEANING", "take a concept in a meaning (mean spring=season), which add WORD=MEANING does too; "
                          "mean WORD lists its meanings, as senses does"),
    ("without WORD", "go on without a concept or any other word, or without one meaning of it: "
                     "without spring=season"),
    ("senses WORD", "the chief meanings of a word; senses WORD all: every one"),
    ("next, back", "another page (or just Enter), the page before. Until a line says what you like, pages are those of "
                   "`--limit`, without weak names; then they follow `taste`"),
    ("why 5", "how name 5 was made, and from what; why NAME: what a name of your own would score, and for "
              "what a name is left out"),
    ("list", "what is on the shortlist"),
    ("taste", "what steers the next pages"),
    ("undo", "take back the last keep, unkeep, drop, more, less, add or without, and stand on the page where it was "
             "typed; it says what the next undo takes back"),
    ("save [FILE]", "write the shortlist, for `screen` and `report`"),
    ("stop", "save and end; the same command takes the session up again"),
    ("k d m n b u", "short for keep, drop, more, next, back and undo"),
)  # fmt: skip
"""What may be typed, and what it does."""

SHORT = {"k": "keep", "d": "drop", "m": "more", "n": "next", "b": "back", "u": "undo"}
"""Single letters that stand for what is typed most."""

COMMANDS = tuple(dict.fromkeys(word for line, _ in HELP for word in re.findall(r"\b[a-z]{3,}\b", line)))
"""The words that a line may begin with."""


def in_other_words(word: str, rest: str) -> tuple[str, str]:
    """A line in the words of a session, where people say it in others: drop concept X, meaning of X, X = Y."""
    about = rest.removeprefix("concept ").strip()
    if about != rest and word in ("drop", "remove", "less", "without"):
        return "without", about
    if about != rest and word == "add":
        return "add", about
    if word in ("mean", "means", "meaning", "meanings", "sense"):
        meant = rest.removeprefix("of ")
        return ("add" if "=" in meant else "senses"), meant
    return word, rest


def last_words(steps: Sequence[Step]) -> str:
    """What was typed for steps that stood on one line: keep Fernwick, Sip Sill."""
    names = (f"{step.text}={' '.join(step.senses)}" if step.senses else step.text for step in steps)
    return f"{steps[0].kind} {', '.join(names)}"


def undo_words(session: Session) -> str:
    """What the next undo takes back."""
    return f"undo takes back: {last_words(session.last)}" if session.last else "There is nothing for undo to take back."


def taste_lines(session: Session) -> list[str]:
    """The preferences that steer the next pages, in words: of what was kept, dropped, or asked for more or less of."""
    lines = []
    said = {step.construction for step in session.steps if step.kind in ("keep", "more", "drop", "less")}
    ways = {way: factor for way, factor in session.constructions.items() if way in said}
    for title, factors in (("words", session.words), ("ways of making", ways)):
        liked = [text for text, factor in sorted(factors.items(), key=lambda item: -item[1]) if factor > 1]
        disliked = [text for text, factor in sorted(factors.items(), key=lambda item: item[1]) if factor < 1]
        lines += [f"  more of these {title}: {', '.join(liked)}"] if liked else []
        lines += [f"  less of these {title}: {', '.join(disliked)}"] if disliked else []
    lines += [f"  names like: {', '.join(session.models)}"] if session.models else []
    added = [concept.word for concept in session.added if not concept.senses]
    lines += [f"  added: {', '.join(added)}"] if added else []
    how = {step.text: step.how for step in session.steps if step.kind == "add"}
    for one in session.added:
        lines += [f"  {one.word} {how[one.word] or f'as {some(one.senses)}'}"] if one.senses else []
    lines += [f"  without: {', '.join(session.without)}"] if session.without else []
    lines += [f"  {word} without the meaning {' '.join(meanings)}" for word, meanings in session.left.items()]
    return lines or ["  Nothing yet: keep, drop, more and less do."]


def sense_lines(text: str, brief: Brief) -> list[str]:
    """The chief meanings of a word, each as it is typed with `add`: of each kind of meaning the commonest, those that
    have most to do with the brief first, and before them the one that it is taken in. With "all" after the word, every
    meaning."""
    word, _, rest = text.rpartition(" ")
    every = rest == "all" and bool(word)
    word = word if every else text
    senses = lexicon().senses(fold(word))
    if not senses:
        return [f"No meaning of {word} is known here."]
    about = [one for one in words_of(brief) if fold(word) not in (one, *lexicon().bases(one))]
    nearness = {one: max((association(key, near) or 0.0 for key in _telling(one, word) for near in about), default=0.0)
                for one in senses if _key_words(one)}  # fmt: skip
    guides = likely_guides(fold(word), about)
    meant = likeliest_sense(Concept(word, guides)) if guides else None
    coarse = {one for one in senses if is_coarse(one, word)}
    thing = fold(word) in goods_words(brief)  # goods are named by nouns, and by adjectives before them
    order = sorted(
        nearness, key=lambda one: (one in coarse, one is not meant, thing and one.pos not in "na", -nearness[one])
    )
    chief: dict[tuple[str, str], Sense] = {}
    for sense in (*order[:1], *nearness):
        if sense not in coarse or sense is meant:
            chief.setdefault((sense.pos, sense.domain), sense)
    last = sorted(senses, key=lambda one: one in coarse)
    shown = last if every else [one for one in order if one in chief.values()][:_MOST_SENSES]
    lines = []
    told: set[str] = set()
    for sense in shown:
        if sense.id in told:
            continue
        key, picked = key_of(sense, word)
        told.update(one.id for one in picked)
        typed = f"{word}={key}" if key else "(no word picks it)"
        lines.append(f"{typed}  {' / '.join(dict.fromkeys(map(_told, picked)))}")
    if len(told) < len(senses):
        lines.append(f"The other {len(senses) - len(told)}: senses {word} all")
    return [*lines, f"To go on with one of them: add {word}=WORD"] if len(senses) > 1 else lines


def _telling(sense: Sense, word: str) -> list[str]:
    """The words that tell a sense: those that pick it, and its synonyms."""
    return list(dict.fromkeys((*_key_words(sense), *(one for one in sense.words if fold(one) != fold(word)))))


def _told(sense: Sense) -> str:
    """What a sense is, in words: its label without the word, and its synonyms."""
    label = sense.tag
    others = [one for one in sense.words if one not in label and fold(one) != fold(sense.label.partition(" (")[0])]
    return "; ".join(filter(None, (label, ", ".join(others[:2]))))


def _key_words(sense: Sense) -> list[str]:
    """The words that pick a sense: those of its label in brackets, without "to" before a verb."""
    label = sense.tag.removeprefix("to ")
    return [one for piece in label.split(", ") for one in piece.split() if len(one) > 2]
