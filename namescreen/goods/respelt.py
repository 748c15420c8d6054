"""Everyday words that a strange one is a respelling of, letter by letter: kwality, eezee, kovers, tyte.

Traders spell what a word sounds like in ways that recur (k for c, y for igh, ee for ea); the office reads the word that
is meant (TMEP 1209.03(j)). From memory of shops' names."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from functools import cache, lru_cache

from ..expressions import expression
from ..lexicon import lexicon, zipf
from ..lexicon.frequency import in_use
from ..native import choose
from ..native.respelling import Layers, compiled_layer

__all__ = ["compounds", "further_forms", "respellings"]

_WAYS = (
    ("kw", ("qu",)), ("kk", ("k", "ck", "cc")), ("k", ("c", "ck", "ch")), ("x", ("cks", "cs", "ks", "ex", "ct")),
    ("yte", ("ight", "ite")), ("ite", ("ight",)), ("yt", ("ight", "it")), ("yne", ("ine", "ign")), ("ynd", ("ind",)),
    ("yld", ("ield", "ild")), ("y", ("i", "ie", "igh")), ("i", ("y", "igh")), ("ee", ("ea", "y", "ie", "e", "i")),
    ("eez", ("eas", "ees")), ("ie", ("y",)), ("ey", ("y",)), ("z", ("s", "se")), ("f", ("ph", "gh")), ("ph", ("f",)),
    ("oo", ("o", "ou", "u", "ew", "ui")), ("u", ("ou", "oo", "ew", "o")), ("e", ("ea", "ee")), ("a", ("er", "ai")),
    ("ay", ("ai", "a")), ("ai", ("a", "ay")), ("o", ("ow", "oa")), ("s", ("c", "ss", "sc")), ("w", ("wh",)),
    ("sh", ("ch", "ti")), ("kr", ("cr",)), ("n", ("kn", "ne")), ("r", ("wr",)), ("j", ("g", "dg")),
    ("t", ("th", "tt", "te")), ("d", ("dd", "de")), ("l", ("ll", "le")),
    ("p", ("pp", "pe")), ("m", ("mm", "mb", "me")), ("g", ("gg", "gh")),
    ("pp", ("p",)), ("tt", ("t",)), ("ll", ("l",)), ("nn", ("n",)), ("ss", ("s",)), ("rr", ("r",)), ("dd", ("d",)),
    ("gg", ("g",)), ("zz", ("z", "s")), ("ff", ("f",)), ("mm", ("m",)), ("aa", ("a", "ai")), ("ul", ("le", "el")),
    ("th", ("the",)),
)  # fmt: skip
"""What traders write, and what is written in full."""
STEPS, MOST, MOST_OF_PART = 3, 1200, 120
"""The most letters that are changed, and the most spellings that are looked at, of a part of a closed word fewer."""
EVERYDAY = 3.0
"""Zipf value from which readers know the word that is meant."""
SHORTEST, LEAST_PART = 3, 3
_CLUES = expression(r"[kqxz]|y[lnt]|ite|ph|ee|oo|the|([bdfglmnprst])\1")
"""What a closed word must hold for a respelling to be looked for: it takes time."""


@lru_cache(maxsize=1 << 12)
def respellings(word: str) -> tuple[str, ...]:
    """The everyday words that an unknown folded `word` is a respelling of, those with the fewest changes first."""
    strange = word.isascii() and word.isalpha() and not lexicon().known(word)
    return _respelt(word, MOST) if strange and len(word) >= SHORTEST else ()


@lru_cache(maxsize=1 << 12)
def compounds(word: str) -> tuple[tuple[str, str], ...]:
    """The two everyday words that an unknown closed `word` may be a respelling of, one of which at least is not written
    as it should be (wethertyte: weather, tight)."""
    if not _CLUES.search(word) or lexicon().known(word) or not word.isascii() or not word.isalpha():
        return ()
    found = []
    for at in range(LEAST_PART, len(word) - LEAST_PART + 1):
        last = _meant(word[at:])
        first = _meant(word[:at]) if last else ()
        found += [(one, other) for one in first for other in last if one + other != word]
    return tuple(found)


@lru_cache(maxsize=1 << 12)
def _meant(part: str) -> tuple[str, ...]:
    """What a part may be: itself, if it is an everyday word, and what it may be a respelling of."""
    own = (part,) if lexicon().known(part) and zipf(part) >= EVERYDAY else ()
    return own or _respelt(part, MOST_OF_PART)


def _respelt(word: str, most: int) -> tuple[str, ...]:
    found: dict[str, None] = {}
    seen, layer = {word}, [word]
    for _ in range(STEPS):
        further = _further()(layer, seen, most)
        seen.update(further)
        for form in in_use(further):
            if zipf(form) >= EVERYDAY and lexicon().known(form):
                found[form] = None
        if found:
            break
        layer = further
    return tuple(found)


@cache
def _further() -> Layers:
    return choose(lambda library: compiled_layer(library, _WAYS), lambda: further_forms)


def further_forms(layer: Sequence[str], seen: Collection[str], most: int) -> list[str]:
    """The forms, one change from those of `layer`, that are not among those `seen`, until `most` are."""
    met, further = set(seen), list[str]()
    for one in layer:
        if len(met) >= most:
            break
        new = [form for form in dict.fromkeys(_changed(one)) if form not in met][: most - len(met)]
        met.update(new)
        further += new
    return further


def _changed(word: str) -> list[str]:
    forms = []
    for written, full in _WAYS:
        at = word.find(written)
        while at >= 0:
            forms += [word[:at] + way + word[at + len(written) :] for way in full]
            at = word.find(written, at + 1)
    return forms
