"""Does a word tell buyers something about the goods? Evidence, word by word.

A word is merely descriptive if it tells of an ingredient, quality, characteristic, function, feature, purpose, use,
user, provider or place of the goods (TMEP 1209.01(b)). Each kind of evidence below stands for one of these, with a
weight in [0, 1]: how plainly it makes the word descriptive. The weights are an ordering made plain, not fitted.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import association, kinds, lexicon, name_rank, zipf
from .nice import classes_for
from .terms import GoodsWord, goods_words

__all__ = ["Evidence", "describe", "is_place_name"]

NAMES_GOODS = 1.0
SYNONYM = 0.95
NEAR = 0.85  # derived, broader, narrower
PART = 0.7
KINDS = {
    "domain ending": (1.0, "a domain ending, which identifies no one (TMEP 1209.03(m))"),
    "company form": (1.0, "a company form, which identifies no one (TMEP 1209.03(d))"),
    "laudatory": (0.85, "praise that any seller may use (TMEP 1209.03(k))"),
    "quality": (0.7, "a quality that many goods may have (TMEP 1209.01(b))"),
    "generic head": (0.6, "names a kind of business or offer (TMEP 1209.03(d), (q))"),
    "place": (0.6, "a place that the goods may come from (TMEP 1210)"),
    "number": (0.5, "a number (TMEP 1209.03(u))"),
    "colour": (0.5, "a colour that goods may have"),
}
PRIMARILY_SURNAME = 0.6
USER = 0.55


@dataclass(frozen=True, slots=True)
class Evidence:
    """How plainly a word describes the goods, 0 (not at all) to 1 (it names them), and why, in words."""

    weight: float
    why: str = ""
    same_thing: bool = False
    """Whether it is the very name of the goods, or a synonym, not just a quality of them."""


NOTHING = Evidence(0.0)


@lru_cache(maxsize=1 << 14)
def describe(word: str, goods: str) -> Evidence:
    """The strongest evidence that the folded `word` describes `goods`; weight 0 if there is none."""
    words = goods_words(goods)
    found = [_towards(word, one) for one in words]
    found += [_discounted(_towards(word, GoodsWord(subject, False)), 0.7) for subject in _subjects(goods)]
    found += [Evidence(*KINDS[kind]) for kind in KINDS if kind in _kinds_of(word)]
    found += [_as_user(word), _as_surname(word)]
    return max(found, key=lambda evidence: (evidence.weight, evidence.why), default=NOTHING)


def _discounted(evidence: Evidence, by: float) -> Evidence:
    return Evidence(evidence.weight * by, evidence.why)


def _kinds_of(word: str) -> frozenset[str]:
    of_word = kinds(word)
    if "place" in of_word and not is_place_name(word):
        of_word -= {"place"}
    return of_word


@lru_cache(maxsize=1 << 14)
def _towards(word: str, goods_word: GoodsWord) -> Evidence:
    """What ties `word` to one word of the goods."""
    other = goods_word.word
    words = lexicon()
    if word == other or other in words.bases(word):
        return Evidence(NAMES_GOODS, f'"{other}" is a word for the goods', goods_word.head)
    closeness = words.closeness(word, other) or 0.0
    if closeness >= 0.85:
        return Evidence(SYNONYM, f'another word for "{other}"', goods_word.head)
    if closeness >= 0.6:
        return Evidence(NEAR, f'close in meaning to "{other}"', False)
    if closeness >= 0.4:
        return Evidence(PART, f'related to "{other}"', False)
    tie = association(word, other)
    weight = max(0.5 * closeness, min(0.75 * tie, 0.75))
    return Evidence(weight, f'brings "{other}" to mind') if weight >= 0.1 else NOTHING


@lru_cache(maxsize=4096)
def _subjects(goods: str) -> tuple[str, ...]:
    """What goods of this kind are, in broader words: for jeans trousers, garment, clothing."""
    words = lexicon()
    own = [one.word for one in goods_words(goods) if one.head]
    found: dict[str, None] = {}
    for word in own:
        for sense in words.senses(word, "n")[:2]:
            layer = [sense.id]
            for _ in range(3):
                layer = [up for one in layer for up in words.related_ids(one, "@", "@i") if words.entry(up).below < 800]
                found.update(dict.fromkeys(name.lower() for one in layer for name in words.entry(one).words))
    return tuple(name for name in found if " " not in name and name not in own)[:12]


def is_place_name(word: str) -> bool:
    """Whether `word` is mostly a place where people live and trade, not a mountain, sea or desert (TMEP 1210.04(d))."""
    senses = lexicon().senses(word)
    if not senses:
        return "place" in kinds(word)
    leading = senses[0]
    if leading.domain == "noun.object":
        return False
    return leading.words[0][:1].isupper() or leading.domain == "adj.pert"


def _as_user(word: str) -> Evidence:
    """Common words for groups of people tell for whom the goods are (TMEP 1209.03(i))."""
    senses = lexicon().senses(word, "n")
    if senses and senses[0].domain == "noun.person" and zipf(word) >= 4.3 and not senses[0].words[0][0].isupper():
        return Evidence(USER, "may name the users or the provider (TMEP 1209.03(i), (q))")
    return NOTHING


def _as_surname(word: str) -> Evidence:
    """A name that is primarily merely a surname (TMEP 1211): listed, and no ordinary word."""
    rank = name_rank(word)
    if rank is not None and not lexicon().known(word) and not kinds(word) & {"place", "given name"}:
        return Evidence(PRIMARILY_SURNAME * (1.0 if rank <= 5000 else 0.6), "a surname (TMEP 1211)")
    return NOTHING


def class_subjects(goods: str) -> tuple[int, ...]:
    """The classes the goods probably fall in."""
    return tuple(guess.number for guess in classes_for(goods))
