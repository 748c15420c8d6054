"""Lines of a steered session about a concept or any other word: what they do, and why one would change nothing."""

from __future__ import annotations

from collections.abc import Iterable

from namescreen.brief import Brief, Concept
from namescreen.generation import Step
from namescreen.generation.senses import chosen_senses, meaning_found, meaning_of_several, other_meanings
from namescreen.generation.wanted import usable_words
from namescreen.lexicon import lexicon
from namescreen.text import fold

__all__ = ["concept_step", "done_words", "why_not"]


def why_not(word: str, rest: str, brief: Brief, shown: Iterable[str]) -> str:
    """Why "add" or "without" with the rest of its line changes nothing of a brief of which these names were `shown`; ""
    if it does."""
    asked = Concept.read(rest)
    if not usable_words(asked.word):
        return f"{asked.word!r} has no letters a to z, and names are made of them"
    if instead := meaning_of_several(asked):
        return f"{rest!r} gives a meaning to several words. {instead}"
    if not meaning_found(asked) and lexicon().known(asked.word):
        return f"No meaning of {asked.word!r} fits {' '.join(asked.senses)!r}: `senses {asked.word}` lists them"
    there = {fold(one.word): one for one in brief.concepts}.get(fold(asked.word))
    if word == "add" and there is not None and asked.senses in ((), there.senses):
        return f"{asked.word} is a concept already{', as ' * bool(there.senses)}{' '.join(there.senses)}"
    met = there is not None or lexicon().known(asked.word) or any(fold(asked.word) in fold(name) for name in shown)
    return "" if word == "add" or met else f"No name here is made of {asked.word!r}"


def done_words(word: str, step: Step) -> str:
    """What is said after a concept was added or left, or one meaning of it."""
    if word == "without" and step.senses:
        away = chosen_senses(Concept(step.text, step.senses))
        left = dict.fromkeys(sense.tag for sense in away)
        return f"Going on with {step.text}, without the meaning {' '.join(step.senses)} ({'; '.join(left)})."
    as_what = f" as {', '.join(step.senses)}" if step.senses else ""
    return f"Added: {step.text}{as_what}." if word == "add" else f"Going on without {step.text}."


def concept_step(kind: str, text: str) -> Step:
    """The step of adding or leaving a concept, or one meaning of it; to leave the only one is to leave the word."""
    word, senses = (asked := Concept.read(text)).word, asked.senses
    if kind == "without" and senses and not other_meanings(fold(word), senses):
        senses = ()
    return Step(kind, word, senses=senses)
