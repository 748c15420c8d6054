"""Everyday words that a strange one is a respelling of, letter by letter: kwality, eezee, kovers, tyte.

Traders spell what a word sounds like in ways that recur (k for c, y for igh, ee for ea); the office reads the word that
is meant (TMEP 1209.03(j)). From memory of shops' names."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon, zipf

__all__ = ["respellings"]

_WAYS = (
    ("kw", ("qu",)), ("kk", ("k", "ck", "cc")), ("k", ("c", "ck", "ch")), ("x", ("cks", "cs", "ks", "ex", "ct")),
    ("yte", ("ight", "ite")), ("ite", ("ight",)), ("yt", ("ight", "it")), ("yne", ("ine", "ign")), ("ynd", ("ind",)),
    ("yld", ("ield", "ild")), ("y", ("i", "ie", "igh")), ("i", ("y", "igh")), ("ee", ("ea", "y", "ie", "e", "i")),
    ("eez", ("eas", "ees")), ("ie", ("y",)), ("ey", ("y",)), ("z", ("s", "se")), ("f", ("ph", "gh")), ("ph", ("f",)),
    ("oo", ("o", "ou", "u", "ew")), ("u", ("ou", "oo", "ew", "o")), ("e", ("ea", "ee")), ("a", ("er", "ai")),
    ("ay", ("ai", "a")), ("ai", ("a", "ay")), ("o", ("ow", "oa")), ("s", ("c", "ss", "sc")), ("w", ("wh",)),
    ("sh", ("ch", "ti")), ("kr", ("cr",)), ("n", ("kn", "ne")), ("r", ("wr",)), ("j", ("g", "dg")), ("t", ("th", "tt", "te")),
    ("d", ("dd", "de")), ("l", ("ll", "le")), ("p", ("pp", "pe")), ("m", ("mm", "mb", "me")), ("g", ("gg", "gh")),
    ("pp", ("p",)), ("tt", ("t",)), ("ll", ("l",)), ("nn", ("n",)), ("ss", ("s",)), ("rr", ("r",)), ("dd", ("d",)),
    ("gg", ("g",)), ("zz", ("z", "s")), ("ff", ("f",)), ("mm", ("m",)), ("aa", ("a", "ai")), ("th", ("the",)),
)  # fmt: skip
"""What traders write, and what is written in full."""
STEPS, MOST = 3, 1200
"""The most letters that are changed, and the most spellings that are looked at."""
EVERYDAY = 3.0
"""Zipf value from which readers know the word that is meant."""
SHORTEST = 3


@lru_cache(maxsize=1 << 12)
def respellings(word: str) -> tuple[str, ...]:
    """The everyday words that an unknown folded `word` is a respelling of, those with the fewest changes first."""
    if not word.isascii() or not word.isalpha() or len(word) < SHORTEST or lexicon().known(word):
        return ()
    found: dict[str, None] = {}
    seen, layer = {word}, [word]
    for _ in range(STEPS):
        further = []
        for one in layer:
            for form in _changed(one):
                if form not in seen and len(seen) < MOST:
                    seen.add(form)
                    further.append(form)
                    if zipf(form) >= EVERYDAY and lexicon().known(form):
                        found[form] = None
        if found:
            break
        layer = further
    return tuple(found)


def _changed(word: str) -> list[str]:
    forms = []
    for written, full in _WAYS:
        at = word.find(written)
        while at >= 0:
            forms += [word[:at] + way + word[at + len(written) :] for way in full]
            at = word.find(written, at + 1)
    return forms
