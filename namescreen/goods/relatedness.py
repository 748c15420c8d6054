"""How related two lists of goods are: by their wording, by their likely Nice classes, and by the classes that offices
search together; never by class numbers alone."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import NamedTuple

from ..lexicon import association, lexicon
from ..outcome import NotChecked
from ..tables import open_table
from .broader import leading_senses
from .classification import chance_in, chance_of_one_class, class_chances
from .covering import INSTEAD, covers, made_otherwise, one_ware
from .fields import fields_of
from .groups import ONE_NAME, groups_of, ties
from .labels import said_alike
from .mentions import without_likeness
from .one_use import MUCH_ALIKE, same_use
from .phrases import Item, items
from .serving import is_for, serve_apart, serve_one_thing, serves
from .wording import in_english, not_read, remark

__all__ = [
    "FROM_ELSEWHERE", "GRADES", "Relatedness", "all_evidence", "relatedness", "score_of", "untied",
]  # fmt: skip

GRADES = ("none", "low", "average", "high", "identical")
"""The grades of offices' decisions; a score of 0, 0.25, 0.5, 0.75 or 1 stands in the middle of each."""
SYNONYM = 0.85
"""Closeness in meaning from which two words are one and the same to buyers (carpet, rug)."""
SAME_HEAD = 0.7
"""Closeness of two kinds of one thing (dog food, cat food), where nothing more is known."""
SAME_NAME = 0.3
"""The same for other things of one name: collars of shirts and of dogs. Ours, not fitted."""
COVERS = 0.5
"""How surely one side must cover the other for the reasons to say so, and for stated classes not to tell them apart."""
SENSES = 4
"""The leading senses of a head that what stands before it may choose."""
UNTIED = "untied "
FROM_ELSEWHERE = "serves, from another trade"
MOST_PAIRS = 48
"""Of long lists only so many pairs of items, those whose words are most associated, are judged in full; up to that many
an added item never lowers the score."""
NOTHING = 0.15
"""A score below this is none at all: goods put together by chance reach half of the lowest grade too often."""
COVERED, MOST = 0.95, 0.85
"""The score of goods that a broader term covers, and the most that other evidence comes to: still "high"."""
BY_CLASS_ALONE = 0.45
"""The most that a shared class alone says, short of 0.5: goods are not similar because they are in one class
(EUTMR Article 33(7)). Ours, not fitted."""
TOGETHER = frozenset(("one range", "one market", "used together"))
"""The ties of goods that are sold or used with one another, and do not take each other's place."""
SERVES, LITTLE, ONE_THING = 0.35, 0.2, 0.3
"""The least scores of goods of which one serves the other (Canon, C-39/97: complementary), or only a part or the stuff
of it, or what is eaten or drunk; and of goods that serve one thing. Near the mean grade of such pairs in sight."""
LEAST_TOGETHER = 0.3
"""The score from which such a tie is told: what is known to come from one hand only now and then is not."""
TIES = {
    "one group": "they serve one purpose",
    "one range": "often one firm's range",
    "one market": "sold side by side",
    "used together": "used together",
    "side by side": "from markets that share shops or makers",
}
"""What the groups of goods say, in words."""
CARE, SALE = "repair maintenance installation cleaning", "sale"
WORK = frozenset("rental delivery consultancy information reservation".split())
"""Services on goods that other trades offer, the first list one of them; selling them is the trade of their makers."""
HIRE = {"hire": "rental"}
DEALT_IN = 0.5
"""The least score of goods and the sale of them (Oakley, T-116/06, from memory)."""
MUCH = 0.5
"""How alike labels speak of goods for the reasons to say so: a cosine of a quarter."""
BY_CHANNEL = "service"
"""The same thing by another channel: software as a service."""
NOT_QUITE = 0.9
"""What covering counts where the goods are not quite the same: by another channel, or in another class."""
ONE_CLASS = 0.2
"""The chance of one class from which a broader term is taken to cover the goods."""


@dataclass(frozen=True, slots=True)
class Relatedness:
    """`score` in [0, 1], 1 = the same goods, 0 = nothing found in common; `reasons` say what was found, the wording of
    both sides first; `together` says that by the lists or by their names the goods are sold or used together, and
    neither is a sort of the other (honey, honey dippers).

    The weights are fitted on the pairs of tests/published/related_goods.csv, graded as offices grade; Spearman's rho
    with these grades, each pair left out in turn, is in wordlists/relatedness_weights.tsv. A screening aid: an office
    looks at nature, purpose, makers, shops and buyers of the goods (Canon, C-39/97).
    """

    score: float
    reasons: tuple[str, ...] = ()
    together: bool = False

    @property
    def grade(self) -> str:
        """The score as the nearest of `GRADES`."""
        return GRADES[min(int(self.score * 4 + 0.5), 4)]


def relatedness(
    goods_a: str,
    goods_b: str,
    classes_a: Iterable[int] = (),
    classes_b: Iterable[int] = (),
    *,
    languages_b: tuple[str, ...] = (),
) -> Relatedness | NotChecked:
    """How related two lists of goods or services are; symmetric. The closest two items decide.

    Stated classes narrow down what the words may mean, in translation too. Goods in another language are read in
    English, and where no word is known the classes alone are compared, and the reasons say so. `languages_b` are those
    in which `goods_b` may be worded (`in_english`). `NotChecked` if one side states neither classes nor goods that can
    be read."""
    numbers = [tuple(sorted({*stated})) for stated in (classes_a, classes_b)]
    sides = ((goods_a, (), chance_in(numbers[0])), (goods_b, languages_b, chance_in(numbers[1])))
    told = [remark(*side) if in_english(*side) != in_english(side[0]) else "" for side in sides]
    one, other = (in_english(*side).english if why else side[0] for side, why in zip(sides, told, strict=True))
    found = _relatedness(*_sides(one, other, *numbers))
    if not any(told) or not isinstance(found, Relatedness):
        return found
    return replace(found, reasons=(*found.reasons, *filter(None, told)))


def _sides(
    goods_a: str, goods_b: str, classes_a: Iterable[int], classes_b: Iterable[int]
) -> tuple[tuple[str, tuple[int, ...]], ...]:
    one = (" ".join(goods_a.split()), tuple(sorted(set(classes_a))))
    other = (" ".join(goods_b.split()), tuple(sorted(set(classes_b))))
    return tuple(sorted((one, other)))


@lru_cache(maxsize=1 << 15)
def _relatedness(one: tuple[str, tuple[int, ...]], other: tuple[str, tuple[int, ...]]) -> Relatedness | NotChecked:
    if any(not stated and not items(goods) for goods, stated in (one, other)):
        return NotChecked("goods_relatedness", "no goods or classes are stated for one of the two")
    if one == other and items(one[0]):
        return Relatedness(1.0, ("the same goods",))
    pairs = [(a, b) for a in items(one[0]) for b in items(other[0])]
    alike = any(a.head == b.head for a, b in pairs)  # an unknown word on both sides is still the same word
    unread = [] if alike else [(told, stated) for goods, stated in (one, other) if (told := not_read(goods))]
    for told, stated in unread:
        if not stated:
            return NotChecked("goods_relatedness", f"no classes are stated, and some goods are {told}")
    if not pairs or unread:  # a list of classes without words
        found = _by_class(_chances(one), _chances(other))
        score = min(score_of(untied(found.evidence), _weights()), BY_CLASS_ALONE)
        reasons = ("by class alone, which says little", found.why) if score else ()
        return Relatedness(score, (*reasons, *(f"{told}; the classes were compared instead" for told, _ in unread)))
    if len(pairs) > MOST_PAIRS:
        pairs.sort(key=lambda pair: -_similarity(*pair))
    judged = [_judge(a, b, one[1], other[1]) for a, b in pairs[:MOST_PAIRS]]
    best = max(judged, key=lambda found: (found.score, sorted(found.reasons)))
    return replace(best, reasons=(*best.reasons, *filter(None, map(remark, (one[0], other[0])))))


def _similarity(one: Item, other: Item) -> float:
    """A cheap estimate of the similarity of two items."""
    return (one.head == other.head) + max(association(one.head, other.head) or 0.0, _associated(one, other))


@lru_cache(maxsize=1 << 14)
def _judge(one: Item, other: Item, stated_one: tuple[int, ...], stated_other: tuple[int, ...]) -> Relatedness:
    plain, other_plain = without_likeness(one.text), without_likeness(other.text)
    found = _by_class(_chances((plain, stated_one)), _chances((other_plain, stated_other)))
    told = _by_words(one, other)
    score = score_of(_told(one, other, found), _weights())
    if not (stated_one and stated_other):  # what one side claims beside it tells nothing of goods without classes
        score = max(score, score_of(all_evidence(one, other), _weights()))
    if both := tuple(sorted({*stated_one} & {*stated_other})):  # a further class of one side takes nothing away
        in_both = _by_class(_chances((plain, both)), _chances((other_plain, both)))
        score = max(score, score_of(_told(one, other, in_both), _weights()))
    one_thing = one.head == other.head and not set(one.modifiers).isdisjoint(other.modifiers)
    same = one_thing or told["covers"] >= COVERS or (both and told["made otherwise"])
    if same and stated_one and stated_other:  # 15 USC 1112
        score = max(score, score_of(all_evidence(one, other), _weights()))
    used = same_use(one, other) if told["covers"] < COVERS else 0.0
    score = max(score, used, DEALT_IN if told["covers in dealing"] >= COVERS and not told["worked on"] else 0.0)
    served = told["covers"] < COVERS and is_for(one, other)
    if told["covers"] < COVERS:
        score = max(score, _by_serving(told))
    if not score:
        return Relatedness(0.0)
    in_one_class = not stated_one or not stated_other or bool(set(stated_one) & set(stated_other))
    if in_one_class and one._replace(text="") == other._replace(text=""):
        score = 1.0
    low, high = sorted((one.text, other.text))
    reasons = [f'"{low}" and "{high}"' if low != high else f'both name "{low}"']
    if told["covers"] >= COVERS:
        reasons.append("one is the same as the other, or covers it")
    elif told["made otherwise"]:
        reasons.append("they differ in what they are made of")
    elif told["covers in dealing"] >= 0.5:
        reasons.append("goods, and a service that deals in them")
    elif told["words"] >= 0.4:
        reasons.append(f"the words belong together ({told['words']:.2f} of 1)")
    elif told["said alike"] >= MUCH:
        reasons.append("labels and shops say much the same of both")
    tie = next((name for name, value in (ties(one, other) or {}).items() if value and name in TIES), "")
    if served:
        reasons.append("one is for the other, by its name or by what is said of it")
    elif used >= MUCH_ALIKE:
        reasons.append("they do much the same for the same thing")
    elif told["serve one thing"]:
        reasons.append("both are for one thing")
    if tie:
        reasons.append(TIES[tie])
    together = served or (tie in TOGETHER and score >= LEAST_TOGETHER)
    return Relatedness(score, (*reasons, *([found.why] if found.why else ())), together and told["covers"] < COVERS)


def _by_serving(told: Mapping[str, float]) -> float:
    """The least score of two items by what they serve."""
    least = SERVES if told["serves"] == 1.0 else LITTLE if told["serves"] else 0.0
    return max(least, ONE_THING if told["serve one thing"] else 0.0)


def all_evidence(one: Item, other: Item) -> dict[str, float]:
    """The evidence from the words and classes of two items, each kind in [0, 1]: what the weights are fitted on."""
    texts = [without_likeness(item.text) for item in (one, other)]
    if one.dealing == other.dealing and covers(one, other) == covers(other, one) == 1.0:  # one thing, two wordings
        texts = [min(texts)] * 2
    mine, theirs = (_chances((text, ())) for text in texts)
    return _told(one, other, _by_class(mine, theirs))


def _told(one: Item, other: Item, by_class: _ByClass) -> dict[str, float]:
    """All evidence; under names of its own where no list says that the goods are made or sold together, for then words
    and classes weigh more."""
    found = {**_by_words(one, other), **by_class.evidence}
    if found.pop("made otherwise") and by_class.same >= 0.5:
        found["covers"] = max(found["covers"], NOT_QUITE)
    if by_class.same < ONE_CLASS and not (one_ware(one, other) or one_ware(other, one)):
        found["covers"] = min(found["covers"], NOT_QUITE)
    tied = ties(one, other)
    if tied is not None and tied["one group"] and serve_apart(one, other):
        tied = {**tied, "one group": 0.0, "of one kind": 0.0, "one market": 1.0}
    if tied is None:
        if groups_of(one) and groups_of(other):  # known to the lists, and not as related: a class adds little to words
            found["class"] = min(found["class"], found["words"])
        return untied(found)
    return {**found, **tied, FROM_ELSEWHERE: found["serves"] * tied["side by side"]}  # sauce of tomatoes


def untied(found: Mapping[str, float]) -> dict[str, float]:
    """The evidence as it counts where no list ties the goods."""
    return {f"{UNTIED}{name}": value for name, value in found.items()} | {UNTIED: 1.0}


@lru_cache(maxsize=1 << 14)
def _by_words(one: Item, other: Item) -> Mapping[str, float]:
    """What the words of two items say, each in [0, 1]: whether one covers the other, whether it would but for a service
    that deals in it, how much the words belong together, and whether labels say the same of both."""
    near = lexicon().closeness(one.head, other.head) or 0.0 if one.head != other.head else _of_one_head(one, other)
    chosen = bool(one.modifiers) and _one_sense(one, other)
    same = set(one.modifiers) == set(other.modifiers) and (near >= SYNONYM or chosen)
    covered = max(covers(one, other), covers(other, one), float(same))
    trades = {_trade(one), _trade(other)}
    dealt, by_channel = len(trades) > 1, trades == {"", BY_CHANNEL}
    return {
        "covers": covered if not dealt else NOT_QUITE * covered if by_channel else 0.0,
        "covers in dealing": covered if dealt and not by_channel else 0.0,
        "worked on": covered if dealt and trades - {"", SALE, BY_CHANNEL} else 0.0,
        "words": max(near, _associated(one, other)),
        "said alike": said_alike(one, other),
        "made otherwise": float(made_otherwise(one, other)),
        "one field": float(_serve_one_field(one, other)),
        "serves": serves(one, other),
        "serve one thing": float(serve_one_thing(one, other)),
    }


def _serve_one_field(one: Item, other: Item) -> bool:
    """Whether both are for one field of use: bells and mounts for bicycles. What only takes a thing's place is not."""
    alike = INSTEAD.isdisjoint({*one.modifiers} ^ {*other.modifiers})
    return alike and not fields_of(one).isdisjoint(fields_of(other))


def _of_one_head(one: Item, other: Item) -> float:
    """How close two kinds of one thing are; less where their classes say that they only share its name."""
    return SAME_NAME if serve_apart(one, other) or chance_of_one_class(one.text, other.text) < ONE_NAME else SAME_HEAD


def _one_sense(one: Item, other: Item) -> bool:
    """Whether two heads share a sense: what stands before both leaves that one alone (pepper grinder, pepper mill)."""
    mine, theirs = (dict(leading_senses(item.head, SENSES)) for item in (one, other))
    return not mine.keys().isdisjoint(theirs)


def _trade(item: Item) -> str:
    """The trade by which goods are dealt in; "" for the goods themselves."""
    dealing = CARE if item.dealing in CARE.split() else HIRE.get(item.dealing, item.dealing)
    return dealing if dealing in ("", BY_CHANNEL, CARE) or dealing in WORK else SALE


def _associated(one: Item, other: Item) -> float:
    """How much two items bring each other to mind, by the words in which they differ."""
    mine, theirs = _beyond(one, other), _beyond(other, one)
    return association(*sorted((mine, theirs))) or 0.0 if mine and theirs else 0.0


def _beyond(item: Item, other: Item) -> str:
    return " ".join(word for word in (*item.modifiers, item.head) if word not in other.words)


class _ByClass(NamedTuple):
    """The chance that both sides fall in one class, that chance by how much the class says, the chance that they fall
    in classes that offices search together, and why."""

    same: float
    tied: float
    together: float
    why: str

    @property
    def evidence(self) -> dict[str, float]:
        """What counts towards the score: likely classes weigh more than unlikely ones, but not in proportion."""
        return {
            "class": math.sqrt(self.tied),
            "claimed together": min(self.together, 1.0),
        }


@lru_cache(maxsize=1 << 13)
def _chances(goods: tuple[str, tuple[int, ...]]) -> Mapping[int, float]:
    """The likely classes of goods, among those stated if any are; words that point elsewhere outweigh a number."""
    text, stated = goods
    guessed = {guess.number: guess.score for guess in class_chances(text)}
    if not stated or (guessed and not guessed.keys() & set(stated)):
        return guessed
    kept = {number: guessed.get(number, 0.0) for number in stated}
    whole = sum(kept.values())
    return {number: chance / whole if whole else 1 / len(stated) for number, chance in kept.items()}


def _by_class(one: Mapping[int, float], other: Mapping[int, float]) -> _ByClass:
    same = max(((a * other.get(number, 0.0), number) for number, a in one.items()), default=(0.0, 0))
    tied = sum(a * other.get(number, 0.0) * _searched_together(number, number) for number, a in one.items())
    apart = [(a * b * _searched_together(x, y), x, y) for x, a in one.items() for y, b in other.items() if x != y]
    together = sum(chance for chance, _, _ in apart)
    if same[0] >= 0.5:
        why = f"both probably in class {same[1]}"
    elif together >= 0.15:
        low, high = sorted(max(apart)[1:])
        why = f"classes {low} and {high} are ones that offices search together"
    else:
        why = ""
    return _ByClass(same[0], tied, together, why)


@cache
def _searched_together(one: int, other: int) -> float:
    """How closely two classes go together in the search practice of offices, in [0, 1]."""
    low, high = sorted((one, other))
    return float(open_table("class_pairs.tsv").get(f"{low} {high}") or 0.0)


@cache
def _weights() -> dict[str, float]:
    return {name: float(value) for name, value in open_table("relatedness_weights.tsv").items()}


def score_of(found: Mapping[str, float], weights: Mapping[str, float]) -> float:
    """The grade that follows from the evidence, in [0, 1]; 0 for less than half of the lowest grade.

    Goods that a broader term covers are identical (Meric, T-133/05, from memory), unless classes tell them apart."""
    grade = weights["always"] + sum(weights[name] * value for name, value in found.items())
    prefix = UNTIED if UNTIED in found else ""
    covered = found.get(f"{prefix}covers", 0.0) == 1.0
    score = max(min(grade / 4, MOST), COVERED if covered else 0.0)
    return round(score, 4) if score >= NOTHING else 0.0
