"""What goods keep off: the words for it, for what guards against it, and of what goods say so themselves (draught
excluders, moth traps)."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from .phrases import items

__all__ = ["GUARDS", "KEPT_OFF", "LACKING", "kept_off_by"]

GUARDS = frozenset(
    "guard shield protector protection stopper blocker buster barrier defence defense stop off catcher trap excluder "
    "repellent deterrent killer".split()
)
KEPT_OFF = frozenset(
    """
    frost rain wind sun dust dirt mud splash spill snow sand noise bug insect moth mosquito tick flea rust stain odour
    odor moisture draught draft heat cold chill glare static slug snail mouse rat deer mould mold limescale germ scratch
    shock storm weather water fire uv smell weed crumb hair ice fog damp leak drip breeze fly wasp ant spider mite
    """.split()
)
"""What goods keep off, before a word for what guards: frost guard."""
LACKING = frozenset(("less", "free"))
"""What says after it that there is none of it."""
_PREVENTING = GUARDS | frozenset(
    "screen net seal insulation absorber eliminator remover control insulator strip tape preventer proofing".split()
)
"""What goods are called that keep off or take away what the word before says."""
_NUISANCES = frozenset(("noun.phenomenon", "noun.animal", "noun.state", "noun.substance", "noun.event"))
CLOSE = 0.45
"""How close a dictionary must put a word to what goods keep off for it to be much the same."""


@lru_cache(maxsize=256)
def kept_off_by(goods: str) -> dict[str, str]:
    """What goods say that they keep off, and words much like it for something of the kind (a breeze, of draught
    excluders), each with the word of the goods; empty for most goods."""
    found: dict[str, str] = {}
    for item in items(goods):
        head = item.head.removesuffix("s")  # excluders: no dictionary has the word
        for word in item.modifiers if head in _PREVENTING else ():
            domains = {sense.domain for sense in lexicon().senses(word, "n", labelled=False)} & _NUISANCES
            found |= {word: word} if domains else {}
            for other, closeness in lexicon().neighbours(word).items() if domains else ():
                leading = lexicon().senses(other, labelled=False)[:1]
                if closeness >= CLOSE and any(one.domain in domains for one in leading):
                    found.setdefault(other, word)
    return found
