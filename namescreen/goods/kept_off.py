"""Whether goods keep off, hold back or treat what a word says: by their own words (draught excluders, moth traps), by
what such goods are for (`nuisances`), or by what their trade says of them."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from .absence import LACKING, WITHOUT
from .animals import is_animal
from .broader import leading_senses, names_above
from .classification import likely_classes
from .context import FOOD_CLASSES, context
from .nuisances import GOODS_AGAINST, KEPT_OFF
from .phrases import base_form, goods_words, items, plain_words
from .trade_words import term_for
from .wording import in_english

__all__ = ["GONE_AFTER", "GONE_BEFORE", "GUARDS", "KEPT_OFF", "LACKING", "LEAST_TERM", "keep_off", "kept_off_by",
           "may_lack", "said_of"]  # fmt: skip

GUARDS = frozenset(
    "guard guards shield protector protection stopper blocker buster barrier defence defense stop off catcher trap "
    "excluder repellent deterrent killer fighter remover eraser eliminator banisher zapper repeller beater".split()
)
"""Words for what guards, after what is kept off: frost guard. Goods of these names may keep off anything."""
GONE_BEFORE = (WITHOUT - {"not", "non"}) | frozenset(
    "stop bye goodbye never less beat banish kill fight block contre contra contro gegen tegen stopp adieu adios ciao "
    "adeus tschuess weg".split()
)
GONE_AFTER = frozenset("begone away off out gone bye less stop free ade adieu adios weg ex".split())
"""Words before, and after, what is kept off or taken away, that say that it goes; from memory of several languages."""
_PREVENTING = GUARDS | frozenset(
    "screen net seal insulation absorber control insulator strip tape preventer proofing".split()
)
"""What goods are called that keep off or take away what the word before says."""
_NUISANCES = frozenset(("noun.phenomenon", "noun.animal", "noun.state", "noun.substance", "noun.event"))
LEAST_TERM = 0.5
"""How plainly a term of the trade must be said of the goods for them to have to do with what it says; chosen, not
fitted."""
CLOSE = 0.45
"""How close a dictionary must put a word to what goods keep off for it to be much the same; chosen, not
fitted."""


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


@lru_cache(maxsize=1 << 13)
def keep_off(word: str, goods: str) -> bool:
    """Whether goods keep off, hold back or treat what a folded `word` says: a badger, of fences and of no chocolate.

    They say so, are of a kind that does, or their trade says it of them; a beast in the trade is a motif (rabbit, of
    toys), and foods keep off nothing."""
    base = base_form(word)
    if {word, base} & kept_off_by(goods).keys():
        return True
    if base not in KEPT_OFF:
        return False
    said, heads = said_of(goods)
    if heads & GUARDS:
        return True
    against = said & GOODS_AGAINST[base]
    if context(goods).food and set(likely_classes(goods)) <= FOOD_CLASSES:
        return any(map(_is_tool, against))
    term = None if is_animal(base) else term_for(base, goods)
    return bool(against) or (term is not None and term.weight >= LEAST_TERM)


@lru_cache(maxsize=1 << 10)
def _is_tool(word: str) -> bool:
    """Whether a word names a made thing or a stuff for use, and no food in any of its leading senses."""
    leading = [lexicon().domain(sense) for sense, _ in leading_senses(word, 3)]
    return bool(leading) and not {"noun.food", "noun.plant"} & {*leading}


def may_lack(word: str, goods: str) -> bool:
    """Whether it says something of goods that they are without what a folded `word` says: sugar, of any; badgers, of
    such as keep them off."""
    return base_form(word) not in KEPT_OFF or keep_off(word, goods)


@lru_cache(maxsize=256)
def said_of(goods: str) -> tuple[frozenset[str], frozenset[str]]:
    """The words of goods and what dictionaries call their heads, and the heads alone; in base forms."""
    listed = (*items(goods), *items(in_english(goods).english))
    heads = frozenset(item.head.removesuffix("s") for item in listed) | {item.head for item in listed}
    words = {word for item in listed for word in item.words} | {one.word for one in goods_words(goods)}
    words |= {f"{item.modifiers[-1]} {item.head}" for item in listed if item.modifiers}
    words |= {base_form(word) for word in plain_words(in_english(goods).english)}
    senses = {sense for item in listed for sense, _ in leading_senses(item.head, 2)}
    above = (names_above(sense) for sense in senses if lexicon().domain(sense) == "noun.artifact")
    return heads | words | frozenset(name for names in above for name in names), heads
