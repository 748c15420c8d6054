"""Base forms of English words, by WordNet's rules of detachment.

The rules and their order are those of morphy(7WN), WordNet 3.0: first the exception lists, then suffixes
taken off and replaced until a known word is found."""

from __future__ import annotations

from collections.abc import Callable

__all__ = ["DETACHED", "DETACHMENTS", "base_forms", "detached"]

DETACHMENTS: dict[str, tuple[tuple[str, str], ...]] = {
    "n": (("s", ""), ("ses", "s"), ("ves", "f"), ("xes", "x"), ("zes", "z"), ("ches", "ch"), ("shes", "sh"),
          ("men", "man"), ("ies", "y")),
    "v": (("s", ""), ("ies", "y"), ("es", "e"), ("es", ""), ("ed", "e"), ("ed", ""), ("ing", "e"),
          ("ing", "")),
    "a": (("er", ""), ("est", ""), ("er", "e"), ("est", "e")),
    "r": (),
}  # fmt: skip
"""Suffix and replacement by part of speech: noun, verb, adjective, adverb; morphy(7WN)."""
_SUFFIXES = {pos: tuple(old for old, _ in rules) for pos, rules in DETACHMENTS.items()}
DETACHED = tuple({old: None for suffixes in _SUFFIXES.values() for old in suffixes})
"""Every suffix of `DETACHMENTS`: a regular word without one has no base form but itself."""
_REPLACED = {
    old: tuple({new: None for rules in DETACHMENTS.values() for suffix, new in rules if suffix == old})
    for old in DETACHED
}


def detached(word: str) -> list[str]:
    """What `word` may be a regular form of, in any part of speech."""
    ends = [old for old in DETACHED if word.endswith(old)]
    return [word[: -len(old)] + new for old in ends for new in _REPLACED[old]]


def base_forms(
    word: str, has: Callable[[str, str], bool], exceptions: Callable[[str, str], tuple[str, ...]]
) -> dict[str, tuple[str, ...]]:
    """The base forms of `word` by part of speech (n, v, a, r), the word itself first where it is one.

    `has(word, pos)` says whether a word stands in the lexicon; `exceptions(word, pos)` gives irregular forms.
    """
    found: dict[str, tuple[str, ...]] = {}
    for pos, rules in DETACHMENTS.items():
        tried = [word, *exceptions(word, pos)]
        if len(tried) == 1 and word.endswith(_SUFFIXES[pos]):  # an irregular form is not also split by rule
            tried += [word[: -len(old)] + new for old, new in rules if word.endswith(old) and len(word) > len(old)]
        forms = tuple(dict.fromkeys([form for form in tried if form and has(form, pos)]))
        if forms:
            found[pos] = forms
    return found
