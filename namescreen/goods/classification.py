"""Which Nice classes goods in plain words probably belong to: a multinomial logistic model over the words.

Fitted by wordlists/build/goods_classes.py on goods terms of real records and on the terms that the class headings
name; the weights are in wordlists/class_weights.tsv. The office decides in which class goods belong.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from itertools import islice
from typing import NamedTuple

from ..expressions import expression
from ..lexicon import lexicon
from .broader import layers_above, leading_senses, names_above, names_of
from .class_features import DENIED, STEPS, head_of, listed_as
from .class_model import KNOWN, Chances, Model, chances, shipped
from .nice import CLASSES
from .wording import in_english
from .words import base_form, known_as

__all__ = [
    "UNKNOWN", "ClassGuess", "chance_in", "chance_of_one_class", "class_chances", "classes", "guesses",
    "likely_classes", "worn_by_animals",
]  # fmt: skip

LEAST = 0.01
"""Classes less likely than this do not count, unless nothing is likelier."""
UNKNOWN = 1 / 3
"""Where no class is as likely as this, that of the goods is not known: two guesses in three would be wrong."""
OFFERED = 0.04
"""Classes less likely than this are not offered: they are there by chance."""
LIST = 3
"""From so many items on a statement is a list, in which each item is goods by itself; fewer may be one thing and what
is said of it."""
WHOLE = 0.5
"""The share of a list as a whole; the rest goes to its items, each by itself."""
DATA = 9
TAKES_ITS_PARTS = frozenset((9, 12, 15, 28))
"""Classes whose notes draw in what is adapted for their goods: cases for guitars, saddle bags for bicycles."""
MOVED = 0.75
"""The share that a principle takes from what the single words say; ours."""
_DOWNLOADED = expression(r"(?<!non-)(?<!not )\bdownloadable\b", re.IGNORECASE)
_SERVICE = expression(
    r"\b(?:services?|retail|wholesale|provi\w+|rental|repair|design|development|online)\b", re.IGNORECASE
)
SELLING = 35
_RETAIL = expression(r"\b(?:retail|wholesale)\b", re.IGNORECASE)
_ADAPTED = expression(
    r"(.*\b(?:bag|basket|cage|case|cover|holder|pannier|pouch|rack|strap|stand)(?:e?s)?)\b(?: [a-z]+)?"
    r" for (?:use with )?(.+)",
    re.IGNORECASE,
)
_SET = expression(
    r"(?:gift |craft |starter )?(?:set|kit|hamper|box|basket|bundle|pack|package)(?:e?s)?"
    r" (?P<how>of|with|containing|comprising|consisting of|including|made up of) (?P<held>.+)",
    re.IGNORECASE,
)
_FRAMED = expression(
    r"\b(?:namely|featuring|including|includes?|being|except|other than|in the field|related)\b", re.IGNORECASE
)
"""What comes after such words is part of what stands before."""
CLOTHING, FOR_ANIMALS = 25, 18
WHATEVER_CLOTH = frozenset((12, 15, 25, 28))
"""The classes whose goods stay in them of whatever cloth or leather, by the headings of the Nice Classification."""
_CLOTH = (
    "cotton|wool|linen|silk|leather|canvas|felt|denim|suede|hemp|jute|tweed|velvet|polyester|nylon|acrylic|cashmere|merino"
    "|mohair|alpaca|flannel|fleece|satin|twill|corduroy|oilcloth|oilskin|viscose|lambswool|sheepskin|cloth|fabric"
)
_MADE_IN = expression(
    r",? (?:made|manufactured|produced|distilled|brewed|crafted|grown|woven) in [\w ,'-]+$", re.IGNORECASE
)
_MADE_OF = expression(
    rf"([\w' -]+?) (?:made |woven |sewn |knitted )?(?:of|from|in) (?:[\w-]+ ){{0,2}}(?:{_CLOTH})(?: (?:for|with) .+)?",
    re.IGNORECASE,
)
_WORN_BY = expression(
    r"(?:.*\bfor (?:[\w-]+ ){0,2}?(?P<who>[\w-]+)|(?P<pet>dog|cat|pet|puppy) [\w-]+)\s*", re.IGNORECASE
)
PRESERVED = 29
_PREPARED = expression(
    r"\b(?:pickled|preserved|canned|tinned|bottled|jarred|frozen|(?:freeze-|sun-)?dried|dehydrated|desiccated|cooked|stewed"
    r"|steamed|fried|grilled|roasted|toasted|smoked|salted|fermented|marinated|candied|crystalli[sz]ed|mashed)\b",
    re.IGNORECASE,
)
_ROASTED = expression(r"\b(?:coffee|cocoa|cacao|chicory)\b", re.IGNORECASE)
"""What is roasted and stays in class 30."""
PRODUCE = frozenset(("produce", "edible nut", "mushroom"))
SEASONING_OR_GRAIN = frozenset(("flavorer", "grain"))
_SENSES = 4
"""The noun senses among which the one is looked for in which a plant is food."""
_QUALIFIES = expression(
    r"(?:not|for|of|made|with|without|in|on|by|being|adapted|other)\b|non\b|[\w-]*electric(?:al)?$", re.IGNORECASE
)
"""What is said of goods after a comma, and is no item of a list: junctions, not of metal, for pipes."""


class ClassGuess(NamedTuple):
    """A class that goods may belong to. `score` in [0, 1] is how likely the model takes it to be that some of the
    goods do; `reason` says what it rests on.

    Of 5,677 terms of the alphabetical list and 12,160 of records, each told by a fit that saw no term of the same
    words, guesses at 0.5 to 0.6 were right for 58 and 63 in 100, at 0.7 to 0.8 for 74 and 83, at 0.95 to 0.99 for 94
    and 97. The right class came first for 77 and 89 in 100 and among three for 93 and 97."""

    number: int
    score: float
    reason: str


def classes(goods: str, *, limit: int = 3) -> list[ClassGuess]:
    """The Nice classes to which `goods` (plain words, one kind of goods or several) probably belong, likeliest first.

    Empty if they are not known: if no word of the goods is, or no class is likely. A guess to start from: the office
    decides.
    """
    found = class_chances(goods)
    offered = [guess for guess in found if guess.score >= OFFERED]
    return offered[:limit] if found and found[0].score >= UNKNOWN else []


def likely_classes(goods: str) -> tuple[int, ...]:
    """The numbers of the classes that are at least a third as likely as the likeliest one; empty if none is known, as
    for `classes`."""
    found = class_chances(goods)
    known = bool(found) and found[0].score >= UNKNOWN
    return tuple(guess.number for guess in found if known and guess.score >= found[0].score / 3)


def chance_of_one_class(one: str, other: str) -> float:
    """The chance that goods of two wordings fall in one class, in [0, 1] for one kind of goods each; of lists, which
    fall in several, it may be more."""
    theirs = {guess.number: guess.score for guess in class_chances(other)}
    return sum(guess.score * theirs.get(guess.number, 0.0) for guess in class_chances(one))


def class_chances(goods: str) -> tuple[ClassGuess, ...]:
    """Every class that goods may be in, however unlikely, likeliest first; empty if no word of them is known."""
    return _cached(" ".join(goods.split()))


@lru_cache(maxsize=1 << 10)
def chance_in(numbers: tuple[int, ...]) -> Callable[[str], float] | None:
    """How likely goods in English words are in one of some classes, [0, 1]; None if there are none. By the words alone:
    the alphabetical list has bells in one class, and they may be meant in another."""
    by_words = shipped()._replace(listed=lambda _: ())

    @lru_cache(maxsize=1 << 12)
    def chance(english: str) -> float:
        found = guesses(english, by_words)
        return min(1.0, sum(guess.score for guess in found if guess.number in numbers))

    return chance if numbers else None


@lru_cache(maxsize=1 << 12)
def _cached(goods: str) -> tuple[ClassGuess, ...]:
    return guesses(in_english(goods).english, shipped())


def guesses(goods: str, model: Model) -> tuple[ClassGuess, ...]:
    """The likely classes by a `model`. Statements are separated by semicolons, and goods fall in a class if
    any statement does; within one, the items of a list count as a whole and each by itself."""
    chances: dict[int, float] = {}
    told: Chances = {}
    for statement in _statements(goods):
        for number, (chance, feature) in _of_statement(statement, model).items():
            chances[number] = 1 - (1 - chances.get(number, 0.0)) * (1 - chance)
            told[number] = max(told.get(number, (0.0, "")), (chance, feature))
    order = sorted(chances, key=lambda number: (-chances[number], number))
    kept = [number for at, number in enumerate(order) if at == 0 or chances[number] >= LEAST]
    return tuple(ClassGuess(number, round(chances[number], 4), _reason(told[number][1])) for number in kept)


def _statements(goods: str) -> Iterator[str]:
    """The statements of a list. A set or a box of several goods is each of them: it has their classes, not its own."""
    for statement in filter(None, map(str.strip, re.split(r"[;\n]", goods))):
        found = _SET.match(statement)
        parts = _parts(found["held"]) if found else []
        whole = found is None or not parts or (len(parts) == 1 and found["how"] != "of")  # a box with a lid is a box
        yield from (statement,) if whole else parts


def _parts(text: str) -> list[str]:
    """The items of a statement, each with what is said of it after a comma."""
    found: list[str] = []
    for part in filter(None, map(str.strip, re.split(r",|\band\b|\bor\b", text))):
        if found and _QUALIFIES.match(part):
            found[-1] = f"{found[-1]}, {part}"
        else:
            found.append(part)
    return found


def _of_statement(text: str, model: Model) -> Chances:
    parts = [] if _RETAIL.search(text) or model.listed(listed_as(text)) else _parts(text)
    judged = [found for one in (text, *(parts if len(parts) > 1 else ())) if (found := _of_item(one, model))]
    if not judged:
        return {}
    if len(parts) >= LIST and len(judged) > 1 and not _SERVICE.search(text) and not _FRAMED.search(text):
        each = judged[1:]
        return {
            number: (1 - math.prod(1 - found[number][0] for found in each), max(found[number] for found in each)[1])
            for number in CLASSES
        }
    shares = [WHOLE, *[(1 - WHOLE) / (len(judged) - 1)] * (len(judged) - 1)] if len(judged) > 1 else [1.0]
    return {
        number: (
            sum(share * found[number][0] for share, found in zip(shares, judged, strict=True)),
            max(found[number] for found in judged)[1],
        )
        for number in CLASSES
    }


def _of_item(text: str, model: Model) -> Chances:
    """The chance of each class, and what speaks for it most; empty if nothing is known.

    A whole term of the alphabetical list is in the class that it has there. Else five principles outweigh single words
    (Nice Classification, notes to classes 9, 12 and 35, general remarks, headings of classes 18 and 29): to sell the
    goods of others is in class 35, what is downloaded is in class 9, clothing for animals is in class 18, what is
    adapted for one thing goes with that thing, and fruits and vegetables that are preserved, frozen, dried or cooked
    are in class 29."""
    if model.listed(listed_as(text)):
        return chances(text, model)
    found = _as_known(text, model) or _as_made(text, model)
    if found and (sold := _RETAIL.search(text)):
        return _moved(found, {SELLING: 1.0}, f'"{sold[0]}"')
    if found and _DOWNLOADED.search(text) and not _SERVICE.search(text):
        return _moved(found, {DATA: 1.0}, '"downloadable"')
    if found and _is_worn_by_animals(text, model):
        clothing, animals = found[CLOTHING], found[FOR_ANIMALS]
        return found | {CLOTHING: (0.0, ""), FOR_ANIMALS: (clothing[0] + animals[0], '"for animals"')}
    prepared = _PREPARED.search(text)
    other = _ROASTED.search(text) or _SERVICE.search(text)
    if found and prepared and not other and _is_produce(head_of(text.lower())):
        return _moved(found, {PRESERVED: 1.0}, f'"{prepared[0]}"')
    adapted = _ADAPTED.match(text)
    if found and adapted and not _SERVICE.search(text):
        whole = {number: chance for number, (chance, _) in chances(adapted[2], model).items()}
        leading = max(whole, key=whole.__getitem__, default=0)
        if leading in TAKES_ITS_PARTS and whole[leading] >= 0.5:
            return _moved(found, whole, f'"for {adapted[2]}"')
    return found


def _as_known(text: str, model: Model) -> Chances:
    """The chances of a ware with a name that nothing here knows, by what it is taken to be (earbud: earpiece); empty if
    that is known, or not told."""
    head = head_of(text.lower())
    other = known_as(head)
    as_other = re.sub(rf"\b{re.escape(head)}(?:e?s)?\b", other, text.lower()) if other else text
    found = _as_made(as_other, model) if as_other != text else {}
    return {number: (chance, f'"{head}", taken as "{other}"') for number, (chance, _) in found.items()}


def _as_made(text: str, model: Model) -> Chances:
    """The chances by the model, of goods without where they are made, and without what of if that says nothing of their
    class: capes of waxed cotton are clothing, and boxes of wood no boxes of paper."""
    text = _MADE_IN.sub("", text)
    parts = _MADE_OF.fullmatch(text)
    if parts:
        plain = chances(parts[1], model)
        leading = max(plain, key=lambda number: plain[number][0], default=0)
        if leading in WHATEVER_CLOTH and plain[leading][0] >= 0.5:
            return plain
    return chances(text, model)


@lru_cache(maxsize=1 << 13)
def worn_by_animals(goods: str) -> bool:
    """Whether goods are said to be for animals, and would else be clothing: jumpers for whippets."""
    return _is_worn_by_animals(goods, shipped())


def _is_worn_by_animals(goods: str, model: Model) -> bool:
    found = _WORN_BY.fullmatch(goods)
    if not found:
        return False
    who = base_form((found["who"] or found["pet"]).lower())
    if not any("animal" in names_above(sense) for sense, _ in leading_senses(who, 1)):
        return False
    what = goods[: found.start("who")].rpartition(" for ")[0] if found["who"] else goods[found.end("pet") :]
    likely = chances(what, model)
    return bool(likely) and max(likely, key=lambda number: likely[number][0]) == CLOTHING


def _is_produce(word: str) -> bool:
    """Whether a word names fruit, vegetables, nuts or mushrooms that are neither grain nor only used for flavour."""
    senses = [sense.id for sense in lexicon().senses(word, "n", labelled=False)[:_SENSES]]
    broader = names_of(one for layer in islice(layers_above(senses), STEPS) for one in layer)
    return word in ("fruit", "nut") or (bool(broader & PRODUCE) and not broader & SEASONING_OR_GRAIN)


def _moved(found: Chances, to: Mapping[int, float], why: str) -> Chances:
    """Chances, most of them given to other classes for a reason."""
    return {
        number: (
            (1 - MOVED) * chance + MOVED * to.get(number, 0.0),
            why if MOVED * to.get(number, 0.0) > (1 - MOVED) * chance else feature,
        )
        for number, (chance, feature) in found.items()
    }


def _reason(feature: str) -> str:
    """The feature in words; what is in words already stays."""
    kind, mark, value = feature.partition(":")
    if not mark or kind not in KNOWN:
        return feature or "the words taken together"
    if kind in ("n", "m"):
        return f"a kind of {lexicon().entry(value).words[0].replace('_', ' ')}"
    if kind == "k":
        return f"like other goods of {value.rstrip('~').replace('|', ', ')}"
    plain = value.rstrip("~")
    return f'"not {plain[1:]}"' if plain.startswith(DENIED) else f'"{plain}"'
