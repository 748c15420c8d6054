"""Which Nice classes goods in plain words probably belong to: a multinomial logistic model over the words.

Fitted by wordlists/build/goods_classes.py on goods terms of real records and on the terms that the class headings
name; the weights are in wordlists/class_weights.tsv. The office decides in which class goods belong.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from itertools import islice, pairwise

from ..lexicon import lexicon
from ..records import dataclass
from ..tables import open_table
from ..text import parse
from .broader import layers_above, leading_senses, names_above, names_of
from .nice import CLASSES
from .wording import in_english
from .words import MADE_SO, base_form, known_as

__all__ = [
    "STEP", "ZERO", "ClassGuess", "chance_in", "chance_of_one_class", "classes", "features", "guesses",
    "likely_classes", "worn_by_animals",
]  # fmt: skip

Weights = Callable[[str], str | None]
"""Feature -> a row of 45 characters, one a class; None for a feature that is not known."""

ZERO = 80
"""The character code that stands for weight 0 in the table; one more is STEP more."""
STEP = 0.125
_SAID, _KNOWN = "whb", "whbnm"
"""Features that are words of the goods, and those by which they count as understood: not a beginning alone."""
LEAST = 0.01
"""Classes less likely than this are not offered, unless nothing is likelier."""
LIST = 3
"""From so many items on a statement is a list, in which each item is goods by itself; fewer may be one thing and what
is said of it."""
WHOLE = 0.5
"""The share of a list as a whole; the rest goes to its items, each by itself."""
_DECAY = 0.8
"""The factor for each step up to a broader term."""
_STEPS = 6
_WIDE = 4000
"""A broader term with more senses than this below it (object, act) tells nothing."""
DATA = 9
TAKES_ITS_PARTS = frozenset((9, 12, 15, 28))
"""Classes whose notes draw in what is adapted for their goods: cases for guitars, saddle bags for bicycles."""
MOVED = 0.75
"""The share that a principle takes from what the single words say; ours."""
_DOWNLOADED = re.compile(r"(?<!non-)(?<!not )\bdownloadable\b", re.IGNORECASE)
_SERVICE = re.compile(
    r"\b(?:services?|retail|wholesale|provi\w+|rental|repair|design|development|online)\b", re.IGNORECASE
)
SELLING = 35
_RETAIL = re.compile(r"\b(?:retail|wholesale)\b", re.IGNORECASE)
_ADAPTED = re.compile(
    r"(.*\b(?:bag|basket|cage|case|cover|holder|pannier|pouch|rack|strap|stand)(?:e?s)?)\b(?: [a-z]+)?"
    r" for (?:use with )?(.+)",
    re.IGNORECASE,
)
_SET = re.compile(
    r"(?:gift |craft |starter )?(?:set|kit|hamper|box|basket|bundle|pack|package)(?:e?s)?"
    r" (?P<how>of|with|containing|comprising|consisting of|including|made up of) (?P<held>.+)",
    re.IGNORECASE,
)
_FRAMED = re.compile(
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
_MADE_IN = re.compile(
    r",? (?:made|manufactured|produced|distilled|brewed|crafted|grown|woven) in [\w ,'-]+$", re.IGNORECASE
)
_MADE_OF = re.compile(
    rf"([\w' -]+?) (?:made |woven |sewn |knitted )?(?:of|from|in) (?:[\w-]+ ){{0,2}}(?:{_CLOTH})(?: (?:for|with) .+)?",
    re.IGNORECASE,
)
_WORN_BY = re.compile(
    r"(?:.*\bfor (?:[\w-]+ ){0,2}?(?P<who>[\w-]+)|(?P<pet>dog|cat|pet|puppy) [\w-]+)\s*", re.IGNORECASE
)
PRESERVED = 29
_PREPARED = re.compile(
    r"\b(?:pickled|preserved|canned|tinned|bottled|jarred|frozen|(?:freeze-|sun-)?dried|dehydrated|desiccated|cooked|stewed"
    r"|steamed|fried|grilled|roasted|toasted|smoked|salted|fermented|marinated|candied|crystalli[sz]ed|mashed)\b",
    re.IGNORECASE,
)
_ROASTED = re.compile(r"\b(?:coffee|cocoa|cacao|chicory)\b", re.IGNORECASE)
"""What is roasted and stays in class 30."""
PRODUCE = frozenset(("produce", "edible nut", "mushroom"))
SEASONING_OR_GRAIN = frozenset(("flavorer", "grain"))
_SENSES = 4
"""The noun senses among which the one is looked for in which a plant is food."""
_SMALL = frozenset(
    "a all an and are as at be being by etc for from in including is its kinds namely not of on or other such than "
    "that the their to use used via which with".split()
) | MADE_SO
_QUALIFIES = re.compile(
    r"(?:not|for|of|made|with|without|in|on|by|being|adapted|other)\b|non\b|[\w-]*electric(?:al)?$", re.IGNORECASE
)
"""What is said of goods after a comma, and is no item of a list: junctions, not of metal, for pipes."""
_ENDS_HEAD = frozenset(
    "adapted and as being by for from in including namely not of on or other relating that to via which with".split()
)


@dataclass(frozen=True, slots=True)
class ClassGuess:
    """A class that goods may belong to. `score` in [0, 1] is how likely the model takes it to be that some of the
    goods do; `reason` says what it rests on.

    In cross-validation over 10,829 terms of real records the score was well calibrated: of guesses at 0.5 to 0.6, 56 in
    100 were right, at 0.7 to 0.8 77, from 0.9 97. The right class came first for 85 in 100 and among three for 95, with
    no two terms of the same words on both sides (76 and 90 with no two of one head noun)."""

    number: int
    score: float
    reason: str


def classes(goods: str, *, limit: int = 3) -> list[ClassGuess]:
    """The Nice classes to which `goods` (plain words, one kind of goods or several) probably belong, likeliest first.

    Empty if no word of the goods is known. A guess to start from: the office decides.
    """
    return list(_cached(" ".join(goods.split()))[:limit])


def likely_classes(goods: str) -> tuple[int, ...]:
    """The numbers of the classes that are at least a third as likely as the likeliest one; empty if none is known."""
    found = _cached(" ".join(goods.split()))
    return tuple(guess.number for guess in found if guess.score >= found[0].score / 3)


def chance_of_one_class(one: str, other: str) -> float:
    """The chance that goods of two wordings fall in one class, in [0, 1] for one kind of goods each; of lists, which
    fall in several, it may be more."""
    theirs = {guess.number: guess.score for guess in classes(other, limit=45)}
    return sum(guess.score * theirs.get(guess.number, 0.0) for guess in classes(one, limit=45))


@lru_cache(maxsize=1 << 10)
def chance_in(numbers: tuple[int, ...]) -> Callable[[str], float] | None:
    """How likely goods in English words are in one of some classes, [0, 1]; None if there are none."""

    @lru_cache(maxsize=1 << 12)
    def chance(english: str) -> float:
        found = guesses(english, open_table("class_weights.tsv").get)
        return min(1.0, sum(guess.score for guess in found if guess.number in numbers))

    return chance if numbers else None


@lru_cache(maxsize=1 << 12)
def _cached(goods: str) -> tuple[ClassGuess, ...]:
    return guesses(in_english(goods).english, open_table("class_weights.tsv").get)


def guesses(goods: str, weights: Weights) -> tuple[ClassGuess, ...]:
    """The likely classes by the rows of `weights`. Statements are separated by semicolons, and goods fall in a class if
    any statement does; within one, the items of a list count as a whole and each by itself."""
    chances: dict[int, float] = {}
    told: dict[int, tuple[float, str]] = {}
    for statement in _statements(goods):
        for number, (chance, feature) in _of_statement(statement, weights).items():
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


def _of_statement(text: str, weights: Weights) -> dict[int, tuple[float, str]]:
    parts = [] if _RETAIL.search(text) else _parts(text)
    judged = [found for one in (text, *(parts if len(parts) > 1 else ())) if (found := _of_item(one, weights))]
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


def _of_item(text: str, weights: Weights) -> dict[int, tuple[float, str]]:
    """The chance of each class, and what speaks for it most; empty if nothing is known.

    Five principles outweigh single words (Nice Classification, notes to classes 9, 12 and 35, general remarks, headings
    of classes 18 and 29): to sell the goods of others is in class 35, what is downloaded is in class 9, clothing for
    animals is in class 18, what is adapted for one thing goes with that thing, and fruits and vegetables that are
    preserved, frozen, dried or cooked are in class 29."""
    found = _as_known(text, weights) or _as_made(text, weights)
    if found and (sold := _RETAIL.search(text)):
        return _moved(found, {SELLING: 1.0}, f'"{sold[0]}"')
    if found and _DOWNLOADED.search(text) and not _SERVICE.search(text):
        return _moved(found, {DATA: 1.0}, '"downloadable"')
    if found and _is_worn_by_animals(text, weights):
        clothing, animals = found[CLOTHING], found[FOR_ANIMALS]
        return found | {CLOTHING: (0.0, ""), FOR_ANIMALS: (clothing[0] + animals[0], '"for animals"')}
    prepared = _PREPARED.search(text)
    other = _ROASTED.search(text) or _SERVICE.search(text)
    if found and prepared and not other and _is_produce(_head(text.lower())):
        return _moved(found, {PRESERVED: 1.0}, f'"{prepared[0]}"')
    adapted = _ADAPTED.match(text)
    if found and adapted and not _SERVICE.search(text):
        whole = {number: chance for number, (chance, _) in _by_features(adapted[2], weights).items()}
        leading = max(whole, key=whole.__getitem__, default=0)
        if leading in TAKES_ITS_PARTS and whole[leading] >= 0.5:
            return _moved(found, whole, f'"for {adapted[2]}"')
    return found


def _as_known(text: str, weights: Weights) -> dict[int, tuple[float, str]]:
    """The chances of a ware with a name that nothing here knows, by what it is taken to be (earbud: earpiece); empty if
    that is known, or not told."""
    head = _head(text.lower())
    other = known_as(head)
    as_other = re.sub(rf"\b{re.escape(head)}(?:e?s)?\b", other, text.lower()) if other else text
    found = _as_made(as_other, weights) if as_other != text else {}
    return {number: (chance, f'"{head}", taken as "{other}"') for number, (chance, _) in found.items()}


def _as_made(text: str, weights: Weights) -> dict[int, tuple[float, str]]:
    """The chances by the model, of goods without where they are made, and without what of if that says nothing of their
    class: capes of waxed cotton are clothing, and boxes of wood no boxes of paper."""
    text = _MADE_IN.sub("", text)
    parts = _MADE_OF.fullmatch(text)
    if parts:
        plain = _by_features(parts[1], weights)
        leading = max(plain, key=lambda number: plain[number][0], default=0)
        if leading in WHATEVER_CLOTH and plain[leading][0] >= 0.5:
            return plain
    return _by_features(text, weights)


@lru_cache(maxsize=1 << 13)
def worn_by_animals(goods: str) -> bool:
    """Whether goods are said to be for animals, and would else be clothing: jumpers for whippets."""
    return _is_worn_by_animals(goods, open_table("class_weights.tsv").get)


def _is_worn_by_animals(goods: str, weights: Weights) -> bool:
    found = _WORN_BY.fullmatch(goods)
    if not found:
        return False
    who = base_form((found["who"] or found["pet"]).lower())
    if not any("animal" in names_above(sense) for sense, _ in leading_senses(who, 1)):
        return False
    what = goods[: found.start("who")].rpartition(" for ")[0] if found["who"] else goods[found.end("pet") :]
    chances = _by_features(what, weights)
    return bool(chances) and max(chances, key=lambda number: chances[number][0]) == CLOTHING


def _is_produce(word: str) -> bool:
    """Whether a word names fruit, vegetables, nuts or mushrooms that are neither grain nor only used for flavour."""
    senses = [sense.id for sense in lexicon().senses(word, "n", labelled=False)[:_SENSES]]
    broader = names_of(one for layer in islice(layers_above(senses), _STEPS) for one in layer)
    return word in ("fruit", "nut") or (bool(broader & PRODUCE) and not broader & SEASONING_OR_GRAIN)


def _moved(found: dict[int, tuple[float, str]], to: Mapping[int, float], why: str) -> dict[int, tuple[float, str]]:
    """Chances, most of them given to other classes for a reason."""
    return {
        number: (
            (1 - MOVED) * chance + MOVED * to.get(number, 0.0),
            why if MOVED * to.get(number, 0.0) > (1 - MOVED) * chance else feature,
        )
        for number, (chance, feature) in found.items()
    }


def _by_features(text: str, weights: Weights) -> dict[int, tuple[float, str]]:
    """The chance of each class by the model, and the feature that speaks for it most; empty if nothing is known."""
    rows = [(feature, value, row) for feature, value in features(text).items() if (row := weights(feature))]
    if not any(feature[0] in _KNOWN for feature, _, _ in rows):
        return {}
    length = math.sqrt(sum(value * value for _, value, _ in rows))
    sums = [0.0] * len(CLASSES)
    told = [(0.0, "")] * len(CLASSES)
    for feature, value, row in rows:
        unit = STEP * value / length
        for at, symbol in enumerate(row):
            weight = unit * (ord(symbol) - ZERO)
            sums[at] += weight
            plain = weight if feature[0] in _SAID else weight / 2  # a word of the goods explains more
            if plain > told[at][0] and feature[0] in _KNOWN:
                told[at] = (plain, feature)
    most = max(sums)
    odds = [math.exp(total - most) for total in sums]
    if not any(_of_head(feature, text) for feature, _, _ in rows):
        odds = [math.sqrt(one) for one in odds]  # only what stands before or after the head speaks, and says less
    whole = sum(odds)
    return {number: (odds[number - 1] / whole, told[number - 1][1]) for number in CLASSES}


def _of_head(feature: str, text: str) -> bool:
    """Whether a feature is of the word that says what the goods are."""
    kind, _, value = feature.partition(":")
    return kind in ("h", "n") or (kind in ("w", "b") and value.split()[-1] == _head(text.lower()))


def _reason(feature: str) -> str:
    """The feature in words; what is in words already stays."""
    if feature.startswith('"'):
        return feature
    kind, _, value = feature.partition(":")
    if kind in ("n", "m"):
        return f"a kind of {lexicon().entry(value).words[0].replace('_', ' ')}"
    return f'"{value}"' if value else "the words taken together"


def features(text: str) -> dict[str, float]:
    """What the model sees of one goods term, with the weight of each: words in base form (w:), the head noun (h:),
    pairs of neighbours (b:), beginnings of longer words (p:), and the broader terms of the head (n:) and of the
    other words (m:), through which it classes a word that was in no term of the sample."""
    found: dict[str, float] = {"always": 1.0}
    text = text.lower()
    words = [base_form(word) for word in parse(text).words if word not in _SMALL and len(word) > 1]
    head = _head(text) or (words[-1] if words else "")
    for word in words:
        found[f"w:{word}"] = 1.0
        if len(word) >= 6:
            found[f"p:{word[:5]}"] = 0.7
        for sense_id, weight in _broader(word):
            found[f"m:{sense_id}"] = max(found.get(f"m:{sense_id}", 0.0), weight / 2)
    for one, other in pairwise(words):
        found[f"b:{one} {other}"] = 1.0
    if head:
        found[f"h:{head}"] = 1.0
        found.update((f"n:{sense_id}", weight) for sense_id, weight in _broader(head))
    return found


def _head(text: str) -> str:
    """The last word before the first preposition, comma or bracket: additive in "additives (chemical) for cement"."""
    opening = re.split(r"[,;(\[]", text)[0]
    words = parse(opening).words
    end = next((at for at, word in enumerate(words) if at and word in _ENDS_HEAD), len(words))
    return base_form(words[end - 1]) if words else ""


@lru_cache(maxsize=1 << 14)
def _broader(word: str) -> tuple[tuple[str, float], ...]:
    """The broader terms of the two leading noun senses of `word`, each with its weight, less with every step."""
    found: dict[str, float] = {}
    for place, sense in enumerate(lexicon().senses(word, "n", labelled=False)[:2]):
        for step, layer in enumerate(islice(layers_above([sense.id]), _STEPS)):
            for one in layer:
                if lexicon().entry(one).below < _WIDE:
                    found.setdefault(one, _DECAY**step / (place + 1))
    return tuple(found.items())
