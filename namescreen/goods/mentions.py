"""What goods are said to be for, apart from what is only mentioned beside them: where, when and by whom they are used,
what they look like, what they come from (a tray under umbrellas in the hall, reading lamps for books in bed)."""

from __future__ import annotations

import re
from functools import lru_cache

from ..expressions import expression
from ..lexicon import kinds, lexicon
from ..tables import open_table
from .broader import names_above, senses_of_goods
from .phrases import Item
from .words import base_form, is_noun, plain_words

__all__ = ["FITTED", "GONE_TO", "before_head", "is_aside", "is_fixture", "is_thing", "said_for", "without_likeness"]

_SERVING = frozenset("for to onto into under underneath beneath over around across that which who".split())
"""After these stands what goods are for, or what they do to it."""
_ASIDE = frozenset(
    "in on at during by when while between among from about inside near beside behind before without like as than "
    "until along through with resembling depicting showing after if because".split()
)
"""After these stands where, when, of what look or with what: in the hall, made from barrels, shaped like a fish."""
_LOOKS = frozenset(
    "shape size colour color pattern print picture motif design image drawing painting portrait scene form style look "
    "smell scent taste flavour flavor aroma theme weight height length width outline silhouette".split()
)
"""Before "of" these say what goods look or smell like, unless they are the goods."""
_LIKENED = frozenset(
    "shaped scented flavoured flavored patterned printed themed coloured colored inspired style styled effect look "
    "sized size shape print pattern motif design scent flavour flavor theme".split()
)
"""What stands before these is what goods look, smell or taste like: fish-shaped, lemon scent."""
_LIKENESS = expression(
    rf"(?:\s+[a-z]+ed)?\s+(?:like|resembling|depicting|showing)\s.*"
    rf"|(?:\s+(?:in|of|with))?\s+(?:an? |the )?(?:{'|'.join(sorted(_LOOKS))})s? of\s.*"
    rf"|\s+(?:printed|decorated|painted|embroidered|patterned|scented|flavoured|flavored) with\s.*"
    rf"|\b[a-z]+(?:-(?:{'|'.join(sorted(_LIKENED))})| (?:scented|flavou?red|themed))\b(?=[- ][a-z])",
    re.IGNORECASE | re.DOTALL,
)
_DONE_THERE = frozenset(
    "watch drink eat go travel walk sleep sit run read play listen relax work live ride drive fly sail dance wait rest "
    "stay visit commute use".split()
)
"""What buyers do while they have goods: its object is not what these serve (spectacles for watching television)."""
_THINGS = frozenset(("artifact", "food", "beverage", "substance", "plant part"))
_PLACES = frozenset(
    ("room", "housing", "residence", "household", "building", "plot of land", "place of business", "way",
     "location", "land", "geological formation", "body of water", "person", "animal")
)  # fmt: skip
"""What WordNet calls what goods may serve, and what is where they are used or who uses them; from memory."""
_FIXTURES = frozenset(("furniture", "plumbing fixture"))
_FIXED = frozenset("bath bathtub sink shower toilet".split())
_HOLDING = frozenset(("container", "covering", "support", "case"))
FITTED = frozenset(
    "cover lid cushion pad leg foot castor caster knob handle protector polish cleaner top slipcover drawer hinge part "
    "glider runner feet base frame mattress".split()
)
"""What belongs to furniture by name; other things are only put there (bath toys, desk lamps)."""
_RELATIVE = frozenset(("that", "which", "who"))
_ABOUT_HOUSE = frozenset("floor wall ceiling door doorstep porch roof stair step corner desk".split())
"""Where in a house goods are: things too, but not what they serve."""
GONE_TO = frozenset("bed school work church home".split())
"""What one goes to: said alone it is a time or a place (for bed)."""
_LITTLE = frozenset(
    "the a an your their its his her this these any each all some no off up down out away together back".split()
)


@lru_cache(maxsize=1 << 13)
def without_likeness(text: str) -> str:
    """The text of goods without what it says they look, smell or taste like."""
    return " ".join(_LIKENESS.sub("", text).split()) or text


def is_aside(word: str, item: Item) -> bool:
    """Whether an item only mentions a word: as a place, a time, a look, a source."""
    return word in item.rest and word not in item.modifiers and word not in _named(item)


@lru_cache(maxsize=1 << 13)
def _named(item: Item) -> frozenset[str]:
    """The words of all that an item says it is for, whoever or whatever that is."""
    return frozenset(word for phrase in said_for(item) for word in phrase)


@lru_cache(maxsize=1 << 13)
def said_for(item: Item) -> tuple[tuple[str, ...], ...]:
    """What an item is said to be for, to do something to or to stand under, each as base forms; what is mentioned aside
    is left out."""
    words = plain_words(item.text)
    bases = [base_form(word) for word in words]
    found: list[list[str]] = []
    told = acts = feature = False
    for at in range(_place_of_head(item, bases) + 1, len(words)):
        word, base, before = words[at], bases[at], bases[at - 1]
        if word in _SERVING and not (word in ("to", "into") and found and found[-1]):
            told, acts = not (feature and word == "for"), word in _RELATIVE
            found.append([])
        elif word == "the" and told and not found[-1] and item.head not in FITTED and _is_where(bases[at + 1 : at + 3]):
            told = False
        elif word == "after" and told and words[at - 1] in ("look", "looks", "looking"):
            found[-1] = []
        elif word == "of" and told and before not in _LOOKS:
            found[-1] = []  # a ball of wool
        elif word in ("and", "or") and told and found[-1]:
            found.append([])
        elif word in _ASIDE or word in _SERVING or word == "of":
            told, feature = False, word == "with" and not _holds(item.head)
        elif told and found[-1] and word.endswith("ing") and _is_verb(word) and at + 1 < len(words):
            told = False  # a ball of wool rolling off
        elif told and word.endswith("ing") and _is_compound(word, bases[at + 1 : at + 2]):
            found[-1].append(base)
        elif told and (acts or (word.endswith("ing") and not found[-1])) and _is_verb(word):
            acts = False
            told = _verb(word) not in _DONE_THERE
        elif told and word not in _LITTLE and _may_name(word):
            found[-1].append(base)
    return tuple(tuple(phrase) for phrase in found if phrase)


def _is_where(words: list[str]) -> bool:
    """Whether these words, after "the", name a piece of furniture or a fixture: the wardrobe, the front door."""
    nouns = words if len(words) > 1 and not is_noun(words[0]) else words[:1]
    return any(is_fixture(word) or word in _ABOUT_HOUSE for word in nouns)


@lru_cache(maxsize=1 << 12)
def is_fixture(word: str) -> bool:
    """Whether a word names first of all furniture or what is fixed in a house, which is a place for other goods."""
    leading = senses_of_goods(word, 1)
    return word in _FIXED or (bool(leading) and not _FIXTURES.isdisjoint(names_above(leading[0][0])))


@lru_cache(maxsize=1 << 12)
def _holds(word: str) -> bool:
    """Whether a word names what holds or covers other goods."""
    return any(not _HOLDING.isdisjoint(names_above(sense)) for sense, _ in senses_of_goods(word, 3))


def _place_of_head(item: Item, bases: list[str]) -> int:
    """Where the head stands; after all words if it is none of them."""
    return bases.index(item.head) if item.head in bases else len(bases)


@lru_cache(maxsize=1 << 13)
def _may_name(word: str) -> bool:
    """Whether a word may be of the name of a thing: a noun, or in no dictionary (worn posts are posts)."""
    bases = lexicon().bases_by_pos(word)
    return "function word" not in kinds(word) and (not bases or "n" in bases)


def _is_verb(word: str) -> bool:
    return any(sense.pos == "v" for sense in lexicon().senses(word, labelled=False))


def _verb(word: str) -> str:
    return next(iter(lexicon().bases_by_pos(word).get("v", ())), word)


def _is_compound(first: str, after: list[str]) -> bool:
    """Whether a participle and the noun after it, if any, are one name of things: chopping board."""
    names = (f"{first} {head}" for head in after)
    return any(lexicon().is_lemma(name) or name in open_table("goods_groups.tsv") for name in names)


def before_head(item: Item) -> tuple[str, ...]:
    """The nouns right before the head, without those that say what it looks or smells like."""
    words = plain_words(item.text)
    bases = [base_form(word) for word in words]
    end = _place_of_head(item, bases)
    if end == len(words) or (end and words[end - 1] in _LIKENED):
        return ()
    start = end
    while start and is_noun(words[start - 1]) and not words[start - 1].endswith(("ed", "ing")):
        start -= 1
    return tuple(bases[start:end])


@lru_cache(maxsize=1 << 13)
def is_thing(word: str) -> bool:
    """Whether a word names things that goods may serve, by its leading sense or the next; and no place, user or stuff
    by the leading one."""
    named = [names_above(sense) for sense, _ in senses_of_goods(word, 2)]
    if not named or word in _ABOUT_HOUSE or not _PLACES.isdisjoint(named[0]):
        return False
    return any(not _THINGS.isdisjoint(names) for names in named)
