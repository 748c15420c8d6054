"""What the model of Nice classes sees of one goods term: its words, what it is a kind of, what it is said not to be.

A compound is taken as the dictionary has it: a shoehorn is no horn, a table knife is a knife."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import islice, pairwise

from ..expressions import expression
from ..lexicon import lexicon, zipf
from ..tables import open_table
from ..text import parse
from ..text.segmentation import split_closed_compound
from .broader import layers_above, names_above
from .words import MADE_SO, base_form

__all__ = ["DENIED", "STEPS", "features", "head_of", "listed_as"]

DENIED = "-"
"""Marks a word that goods are said not to be or to be of: "not of metal" is not "of metal"."""
STEPS = 6
"""How many steps up the broader terms of WordNet are looked at."""
_DECAY = 0.8
"""The factor for each step up to a broader term."""
_WIDE = 4000
"""A broader term with more senses than this below it (object, act) tells nothing."""
_SENSES = 2
_SMALL = (
    frozenset(
        "a all an and are as at be being by etc for from in including is its kinds namely not of on or other such than "
        "that the their to use used via which with".split()
    )
    | MADE_SO
)
_ENDS_HEAD = frozenset(
    "adapted and as being by for from in including namely not of on or other relating that to via which with".split()
)
_DENIAL = expression(
    r"\bnon[- ](\w+)"
    r"|\b(?:not|other than|except(?:ing)?|excluding|without)\b(?: (?:of|for|in|being|made of|made from|adapted for))?"
    r"\s+([^,;()\[\]]+)"
)
COMMON = 4.0
"""The Zipf value from which a word is taken for part of a compound."""
_LONGEST = 3
"""The most words of a ware that the lists of broader goods and of groups are asked for."""


def features(text: str) -> dict[str, float]:
    """The features of one goods term, with the weight of each: words in base form (w:), the head noun (h:), pairs of
    neighbours (b:), beginnings of longer words (p:), the broader terms of the head (n:) and of the other words (m:),
    broader goods (g:) and groups (k:) of the ware in our lists, and the words whose vectors count: the head (e:) and
    the rest (d:)."""
    found: dict[str, float] = {"always": 1.0}
    text = text.lower()
    found.update((f"w:{DENIED}{word}", 1.0) for word in _denied(text))
    words, head = _words_and_head(_DENIAL.sub(" , ", text).strip(" ,"))
    for word in words:
        found[f"w:{word}"] = 1.0
        if len(word) >= 6:
            found[f"p:{word[:5]}"] = 0.7
        for sense_id, weight in _broader(word):
            found[f"m:{sense_id}"] = max(found.get(f"m:{sense_id}", 0.0), weight / 2)
    found.update((f"b:{one} {other}", 1.0) for one, other in pairwise(words))
    if not head:
        return found
    at = words.index(head) if head in words else -1
    compound = _compound(words[at - 1], head) if at > 0 else ""
    if compound:
        found["h:" + re.sub("[ -]", "", compound)] = 1.0
    if not compound or _is_kind_of(compound, head):
        found[f"h:{head}"] = 1.0
    found.update((f"n:{sense_id}", weight) for sense_id, weight in _broader(compound or head))
    for feature, weight in _by_lists(tuple(words[: at + 1] if at >= 0 else [head])):
        found[feature] = max(found.get(feature, 0.0), weight)
    rest = [word for word in words if word != head]
    found[f"e:{head}"] = 1.0
    found.update((f"d:{word}", 1 / len(rest)) for word in rest)
    return found


def listed_as(text: str) -> str:
    """The key of a whole term, by which it is found in the alphabetical list: its words in order, and those denied."""
    text = text.lower()
    words, _ = _words_and_head(_DENIAL.sub(" , ", text).strip(" ,"))
    return " ".join((*words, *(DENIED + word for word in _denied(text))))


def head_of(text: str) -> str:
    """The last word before the first preposition, comma or bracket: additive in "additives (chemical) for cement", and
    no participle: cover in "covers coated with wax"."""
    opening = re.split(r"[,;(\[]", text)[0]
    words = parse(opening).words
    end = next((at for at, word in enumerate(words) if at and word in _ENDS_HEAD), len(words))
    while end > 1 and words[end - 1] in MADE_SO:
        end -= 1
    return base_form(words[end - 1]) if words else ""


def _denied(text: str) -> Iterator[str]:
    for found in _DENIAL.finditer(text):
        yield from _words_of(found[1] or found[2])


def _words_of(text: str) -> list[str]:
    return [base_form(word) for word in parse(text).words if word not in _SMALL and len(word) > 1]


def _words_and_head(text: str) -> tuple[list[str], str]:
    words = [part for word in _words_of(text) for part in _apart(word)]
    head = head_of(text)
    return words, _apart(head)[-1] if head else words[-1] if words else ""


@lru_cache(maxsize=1 << 14)
def _apart(word: str) -> Sequence[str]:
    """The two words of a closed compound that no dictionary has: bush, hammer. Both are common (frisee is no fri)."""
    parts = split_closed_compound(word, zipf)
    known = lexicon().known
    apart = len(parts) == 2 and not known(word) and all(known(part) and zipf(part) >= COMMON for part in parts)
    return tuple(map(base_form, parts)) if apart else (word,)


@lru_cache(maxsize=1 << 14)
def _compound(first: str, head: str) -> str:
    """The noun of the dictionary that two words make, however it is written there: boot jack, bootjack; or ""."""
    forms = (f"{first} {head}", f"{first}{head}", f"{first}-{head}")
    return next((form for form in forms if lexicon().senses(form, "n", labelled=False)), "")


@lru_cache(maxsize=1 << 14)
def _is_kind_of(compound: str, head: str) -> bool:
    """Whether a compound is what its head says (table knife), or only called so (shoehorn)."""
    senses = lexicon().senses(compound, "n", labelled=False)[:_SENSES]
    return any(head == re.split("[ _-]", name)[-1] for one in senses for name in names_above(one.id) - {compound})


@lru_cache(maxsize=1 << 14)
def _by_lists(words: tuple[str, ...]) -> tuple[tuple[str, float], ...]:
    """What our lists say of a ware: its broader goods, one step and two, and its groups. What they say of the head
    alone is marked, since the ware may be another."""
    broader, groups = open_table("broader_goods.tsv"), open_table("goods_groups.tsv")
    for size in range(min(_LONGEST, len(words)), 0, -1):
        ware = " ".join(words[-size:])
        above, grouped = _split(broader.get(ware), ","), _split(groups.get(ware), ";")
        if above or grouped:
            mark = "~" if size == 1 < len(words) else ""
            found = [(f"{kind}{name}{mark}", 1.0) for kind, names in (("g:", above), ("k:", grouped)) for name in names]
            for name in above:
                found.append((f"h:{name.split()[-1]}", 0.5))
                found += [(f"g:{one}", 0.5) for one in _split(broader.get(name), ",")]
            return tuple(found)
    return ()


def _split(text: str | None, mark: str) -> list[str]:
    return [part for part in (text or "").split(mark) if part]


@lru_cache(maxsize=1 << 14)
def _broader(word: str) -> tuple[tuple[str, float], ...]:
    """The broader terms of the two leading noun senses of `word`, each with its weight, less with every step."""
    found: dict[str, float] = {}
    senses: Iterable[str] = (sense.id for sense in lexicon().senses(word, "n", labelled=False)[:_SENSES])
    for place, sense_id in enumerate(senses):
        for step, layer in enumerate(islice(layers_above([sense_id]), STEPS)):
            for one in layer:
                if lexicon().entry(one).below < _WIDE:
                    found.setdefault(one, _DECAY**step / (place + 1))
    return tuple(found.items())
