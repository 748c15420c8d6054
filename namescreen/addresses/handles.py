"""Handles: the short name on a social page, within the lengths that a maker's places allow.

Letters, digits, underscore and dot; no two marks in a row, none at either end. Lengths of 15, 20, 24 and 30
characters are common tiers (from memory; no service is named, and each has rules of its own).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from ..lexicon import kinds
from ..text import Name
from .labels import plain_label

__all__ = ["COMMON_LENGTHS", "Handle", "handle_problem", "handles_of", "spare_handles"]

COMMON_LENGTHS = (15, 20, 24, 30)

SMALL_WORDS, LATER_VOWELS, VOWELS, THE_END = 0.1, 0.45, 0.55, 0.7
"""The loss of fit for each cut of a handle: words that say little, the vowels of the words after the first, all vowels
but the first letters, the end of a word. Common practice, no source."""
LATER_WORDS = (0.2, 0.6)
"""The loss of fit for leaving out whole words: this, plus this times their share of the letters. No source."""


@dataclass(frozen=True, slots=True)
class Handle:
    """A handle for a name: its `text`, the `limit` it keeps to, what is `lost` by cutting ("" = nothing), and its
    `fit` in [0, 1], 1 = the whole name."""

    text: str
    limit: int
    lost: str
    fit: float = 1.0


def handle_problem(text: str, limit: int = COMMON_LENGTHS[0]) -> str | None:
    """Why `text` cannot stand as a handle by the common rules (see the module), or None if it can."""
    if not text:
        return "it is empty"
    if len(text) > limit:
        return f"it has {len(text)} characters, {limit} are allowed"
    if not all(character in "_." or (character.isascii() and character.isalnum()) for character in text):
        return "only letters, digits, underscore and dot are allowed"
    if text[0] in "_." or text[-1] in "_.":
        return "an underscore or a dot may not begin or end it"
    if any(one in "_." and other in "_." for one, other in pairwise(text)):
        return "two marks may not stand side by side"
    return None


@lru_cache(maxsize=1 << 12)
def handles_of(name: Name, limits: tuple[int, ...] = COMMON_LENGTHS) -> tuple[Handle, ...]:
    """The best handle for each limit, shortest limit first; nothing for a name without Latin letters or digits.

    Each is of letters and digits alone, which every place takes, so the first of them fits everywhere.
    """
    shortenings = tuple(_shortenings(name))
    found = []
    for limit in sorted(set(limits)):
        fitting = [one for one in shortenings if len(one[0]) <= limit]
        if fitting:
            text, lost, cost = min(fitting, key=lambda one: (one[2], -len(one[0]), one[0]))
            found.append(Handle(text, limit, lost, 1.0 - cost))
        elif shortenings:
            whole = shortenings[0][0]
            found.append(Handle(whole[:limit], limit, f'the end, "{_shortened(whole[limit:])}"', 1.0 - THE_END))
    return tuple(found)


@lru_cache(maxsize=1 << 12)
def spare_handles(name: Name, goods_word: str, limit: int) -> tuple[str, ...]:
    """Handles for when the plain one is taken, within `limit`: words set apart, then a word added.

    Places differ in the marks they allow (from memory), so the underscore comes before the dot.
    """
    words = [plain for word in name.words if (plain := plain_label(word))]
    if not words:
        return ()
    joined = "".join(words)
    made = [mark.join(words) for mark in "_." if len(words) > 1]
    if goods_word and not joined.endswith(goods_word):
        made += [f"{joined}_{goods_word}", joined + goods_word]
    made += [f"the{joined}", f"{joined}_studio"]
    return tuple(dict.fromkeys(text for text in made if handle_problem(text, limit) is None))


def _shortenings(name: Name) -> Iterator[tuple[str, str, float]]:
    """Ways to write the name as one handle, with what each loses and what that takes off its fit."""
    words = [plain for word in name.words if (plain := plain_label(word))]
    if not words:
        return
    yield "".join(words), "", 0.0
    telling = [word for word in words if not kinds(word) & {"function word", "company form", "domain ending"}]
    if telling and telling != words:
        yield "".join(telling), _quoted([word for word in words if word not in telling]), SMALL_WORDS
    telling = telling or words
    letters = len("".join(telling))
    for kept in range(len(telling) - 1, 0, -1):
        text = "".join(telling[:kept])
        yield text, _quoted(telling[kept:]), LATER_WORDS[0] + LATER_WORDS[1] * (1 - len(text) / letters)
    later = [telling[0], *map(_without_vowels, telling[1:])]
    if later != telling:
        yield "".join(later), f"the vowels of {_quoted(telling[1:])}", LATER_VOWELS
    yield "".join(map(_without_vowels, telling)), "vowels", VOWELS


def _quoted(words: list[str]) -> str:
    return ", ".join(f'"{word}"' for word in words)


def _without_vowels(word: str) -> str:
    return word[:1] + "".join(letter for letter in word[1:] if letter not in "aeiou")


def _shortened(text: str, most: int = 20) -> str:
    return text if len(text) <= most else text[:most] + "..."
