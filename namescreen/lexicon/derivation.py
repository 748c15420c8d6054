"""Words derived from one another by an English suffix: sun and sunny, bake and bakery, nature and natural.

WordNet joins some of them and not others. The rules are those of English spelling, from memory of grammars (Quirk and
others 1985, appendix I). A spelling alone misleads (corn, corner), so two words count as derived only if they also
bring each other to mind (`association`)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import product

from .association import association
from .wordnet import lexicon

__all__ = ["derived_words", "is_derived", "nouns_of"]

_SUFFIXES = {
    "y": ("", "e"), "ly": ("", "le"), "al": ("", "e"), "ial": ("y", "e", ""), "ical": ("y", ""), "ic": ("", "e", "y"),
    "ful": ("",), "ish": ("", "e"), "some": ("",), "like": ("",), "en": ("", "e"), "ern": ("",),
    "ous": ("", "e"), "ious": ("y", ""), "ive": ("", "e", "ion"), "ary": ("", "e"), "ness": ("",), "ity": ("", "e"),
    "ty": ("",), "th": ("", "e"), "dom": ("",), "hood": ("",), "ship": ("",), "ment": ("",),
    "ion": ("", "e"), "ation": ("", "e"), "ance": ("", "e"), "ence": ("", "e"), "ant": ("", "e"), "ent": ("", "e"),
    "er": ("", "e"), "or": ("", "e"), "ery": ("", "e", "er"), "ry": ("",), "ist": ("", "e", "y"), "ism": ("", "e"),
    "ian": ("", "y", "ic"), "an": ("", "e"), "ize": ("", "y"), "ise": ("", "y"), "ify": ("", "e", "y"),
    "age": ("", "e"),
}  # fmt: skip
"""Each suffix, with what may stand in its place in the word that it is added to."""
SHORTEST = 3
"""The fewest letters of the word that a suffix is added to."""
ASSOCIATED = 0.35
"""Association from which words so spelled are derived from one another: dust and dusty have 0.69, corn and corner
0."""


def _without_suffix(word: str) -> Iterator[str]:
    """The spellings of the words that `word` may be derived from."""
    for suffix, endings in _SUFFIXES.items():
        if not word.endswith(suffix):
            continue
        stem = word[: -len(suffix)]
        for ending in endings:
            yield stem + ending
        if stem.endswith("i"):
            yield stem[:-1] + "y"  # beautiful
        if len(stem) > SHORTEST and stem[-1] == stem[-2]:
            yield stem[:-1]  # sunny


@lru_cache(maxsize=1 << 14)
def _bases(word: str) -> tuple[str, ...]:
    found = (base for base in _without_suffix(word) if len(base) >= SHORTEST and lexicon().is_lemma(base))
    return tuple(dict.fromkeys(found))


def _with_suffix(word: str) -> Iterator[str]:
    """How words that may be derived from `word` would be spelled."""
    for suffix, endings in _SUFFIXES.items():
        stems = [word[: len(word) - len(ending)] for ending in endings if word.endswith(ending)]
        stems += [word + word[-1]]
        stems += [word[:-1] + "i"] if word.endswith("y") else []
        for stem in stems:
            yield stem + suffix


@lru_cache(maxsize=1 << 13)
def derived_words(word: str) -> frozenset[str]:
    """The words of the lexicon that `word`, a base form, is derived from, that are derived from it, or that are derived
    from the same word; symmetric."""
    if len(word) < SHORTEST or not (word.isascii() and word.isalpha() and lexicon().is_lemma(word)):
        return frozenset()
    roots = (word, *_bases(word))
    derived = (other for root in roots for other in lexicon().lemmas(list(_with_suffix(root))) if root in _bases(other))
    found = {*roots, *derived} - {word}
    return frozenset(other for other in found if (association(word, other) or 0.0) >= ASSOCIATED)


def is_derived(one: str, other: str) -> bool:
    """Whether two words, or base forms of them where they are not in the lexicon, are `derived_words` of each other."""
    if one[:2] != other[:2]:
        return False
    return any(_are_derived(*pair) for pair in product(_forms(one), _forms(other)))


def _forms(word: str) -> tuple[str, ...]:
    return (word,) if lexicon().is_lemma(word) else lexicon().bases(word)


@lru_cache(maxsize=1 << 15)
def _are_derived(one: str, other: str) -> bool:
    ours, theirs = (one, *_bases(one)), (other, *_bases(other))
    spelled = one != other and not set(ours).isdisjoint(theirs)
    return spelled and (association(one, other) or 0.0) >= ASSOCIATED


@lru_cache(maxsize=1 << 12)
def nouns_of(adjective: str) -> tuple[str, ...]:
    """The nouns that an English adjective is made from or pertains to (nocturnal: night; wooden: wood), where another
    language may well have the noun; empty for other words."""
    words = lexicon()
    if adjective not in words.bases_by_pos(adjective).get("a", ()):
        return ()
    relations = (one for sense in words.senses(adjective, "a", labelled=False) for one in words.relations(sense))
    pertains = [one.other.lower() for one in relations if one.kind == "pertains to" and one.word == adjective]
    made_from = (base for base in _bases(adjective) if "n" in words.bases_by_pos(base))
    return tuple(dict.fromkeys([*pertains, *(base for base in made_from if _are_derived(adjective, base))]))
