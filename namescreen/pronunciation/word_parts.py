"""Unknown words that are made of known ones: inflections (zilches, looped) and closed compounds (thymepot).

Inflection follows the regular rules any grammar of English gives (R. Huddleston and G. Pullum, The Cambridge
Grammar of the English Language, 2002, chapter 18): -s is /z/ after voiced sounds, /s/ after voiceless ones and
/ɪz/ after sibilants; -ed is /d/, /t/, and /ɪd/ after /t/ and /d/. A compound is stressed on its first part,
and the second keeps secondary stress (N. Chomsky and M. Halle, The Sound Pattern of English, 1968).
"""

from __future__ import annotations

import re
from functools import cache
from typing import Protocol

from ..text import split_closed_compound
from .dictionary import known_readings

__all__ = ["readings_from_parts"]

_SIBILANTS = frozenset("szSZCj")
_VOICELESS = frozenset("ptkfTsSCh")


class _Zipf(Protocol):
    def __call__(self, word: str) -> float: ...


def _plural(base: str) -> str:
    last = base.rstrip("12")[-1]
    if last in _SIBILANTS:
        return base + "xz"
    return base + ("s" if last in _VOICELESS else "z")


def _past(base: str) -> str:
    last = base.rstrip("12")[-1]
    if last in "td":
        return base + "xd"
    return base + ("t" if last in _VOICELESS else "d")


_ENDINGS: tuple[tuple[str, tuple[str, ...], str], ...] = (
    ("ies", ("y",), "plural"), ("es", ("", "e"), "plural"), ("s", ("",), "plural"),
    ("ied", ("y",), "past"), ("ed", ("", "e"), "past"),
    ("ing", ("", "e"), "iN"), ("ings", ("", "e"), "iNz"),
    ("ier", ("y",), "R"), ("er", ("", "e"), "R"), ("ers", ("", "e"), "Rz"),
    ("iest", ("y",), "xst"), ("est", ("", "e"), "xst"),
    ("ily", ("y",), "xlY"), ("ly", ("",), "lY"), ("less", ("",), "lxs"), ("ness", ("",), "nxs"),
    ("iness", ("y",), "Ynxs"), ("ful", ("",), "fxl"),
)  # fmt: skip
"""A written ending, what stands in its place in the base, and how it sounds."""


def readings_from_parts(word: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The known words that make up an unknown word, and its readings; both empty if there are none."""
    parts, readings = _inflected(word)
    return (parts, readings) if readings else _compound(word)


_Parts = tuple[tuple[str, ...], tuple[str, ...]]


def _inflected(word: str) -> _Parts:
    for ending, replacements, sound in _ENDINGS:
        if not word.endswith(ending) or len(word) - len(ending) < 3:
            continue
        stem = word[: -len(ending)]
        if ending == "s" and stem[-1] in "su":
            continue
        bases = [stem + replacement for replacement in replacements]
        if ending[0] in "ei" and re.search(r"[aeiou]([bdgklmnprtvz])\1$", stem):
            bases.append(stem[:-1])  # a doubled consonant: whipped
        for base in bases:
            readings = known_readings(base)
            if readings:
                return (base,), tuple(dict.fromkeys(_with_ending(reading, sound) for reading in readings))
    return (), ()


def _with_ending(base: str, sound: str) -> str:
    if sound == "plural":
        return _plural(base)
    if sound == "past":
        return _past(base)
    if sound == "xlY":
        return (base[:-1] if base.endswith("Y") else base) + sound
    return base + sound


def _compound(word: str) -> _Parts:
    parts = split_closed_compound(word, _zipf())
    if len(parts) != 2:
        return (), ()
    first, second = (known_readings(part) or _inflected(part)[1] for part in parts)
    return parts, tuple(dict.fromkeys(one + two.replace("1", "2") for one in first[:2] for two in second[:2]))


@cache
def _zipf() -> _Zipf:
    from ..lexicon import zipf

    return zipf
