"""What goods keep off: the words for it, for what guards against it, and of what goods say so themselves (draught
excluders, moth traps)."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from .phrases import items

__all__ = ["GONE_AFTER", "GONE_BEFORE", "GUARDS", "KEPT_OFF", "LACKING", "kept_off_by"]

GUARDS = frozenset(
    "guard guards shield protector protection stopper blocker buster barrier defence defense stop off catcher trap "
    "excluder repellent deterrent killer".split()
)
KEPT_OFF = frozenset(
    """
    frost rain wind sun dust dirt mud splash spill snow sand noise bug insect moth mosquito tick flea rust stain odour
    odor moisture draught draft heat cold chill glare static slug snail mouse rat deer mould mold limescale germ scratch
    shock storm weather water fire uv smell weed crumb hair ice fog damp leak drip breeze fly wasp ant spider mite gnat
    midge hornet louse lice nit aphid greenfly vole mole rabbit pigeon squirrel marten badger rodent vermin pest termite
    woodworm cockroach squeak creak rattle wobble scuff wrinkle crease tangle knot frizz lint fluff pill sweat stink
    mildew fungus algae grime grease soot spark tarnish clog slip skid chafe itch bite sting theft germ virus bacteria
    pollen moisture hail sleet slush splatter spatter fade shrink snore plaque
    """.split()
)
"""What goods keep off, before a word for what guards: frost guard."""
GONE_BEFORE = frozenset(
    "no stop zero bye goodbye never without less beat banish kill fight block sans sin senza ohne zonder sem bez utan "
    "uden contre contra contro gegen tegen stopp adieu adios ciao adeus tschuess weg".split()
)
GONE_AFTER = frozenset("begone away off out gone bye less stop free ade adieu adios weg ex".split())
"""Words before, and after, what is kept off or taken away, that say that it goes; from memory of several languages."""
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
