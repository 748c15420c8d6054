"""Goods of another language put into English words: each word in the sense that fits the others of its item best, in
the order of English.

A word is read as the name of a ware of shops, as labels have it, by the dictionaries, or by its parts, and of all that
it may mean so that is taken which names goods, is common, and makes with the words beside it a term of the trade or at
least words that belong together (raquette de badminton is no snowshoe)."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from itertools import pairwise, product
from typing import NamedTuple

from ..expressions import expression
from ..lexicon import lexicon, translations, zipf
from ..lexicon.foreign_derivation import compound_of, derived, what_does
from ..lexicon.foreign_forms import COMPOUNDING, LINKING, NOUN_FIRST
from ..tables import open_table
from ..text import fold
from ..text.segmentation import cuts
from .english_terms import OF_GOODS, fit, is_goods_term, is_stuff, worth
from .small_words import small_words
from .standing import standing
from .trade_table import LONGEST_TERM, label_senses
from .ware_names import LONGEST_NAME, names_ware, ware_names
from .words import base_form, is_noun, is_trade_word

__all__ = ["Chance", "Rendered", "joined", "likely_by_parts", "rendered", "units_of", "words_of"]

LEAST_SURE = 0.3
"""How reliable a translation must be to be considered."""
WARE, NAMED, LABEL, LABEL_ELSEWHERE = 1.3, 1.25, 1.1, 0.85
"""What the name of a ware is worth beside a fully reliable translation, by shops or as labels have it, and a word of
labels of the goods and of others. These and the following are set by hand, on lists in sight."""
FURTHER = 0.1
"""What each further ware of the same name loses."""
GUESS = 0.75
"""What a reading by its parts keeps of its value."""
BESIDE = 0.5
"""The share of that of a word that only says for what, or of what, goods are."""
OF_CLASS = 0.8
"""What being surely in the classes stated for the goods adds to a sense of what they are."""
LEAST_TOGETHER = 0.05
"""What the parts of a compound that no list has must have to do with each other to be taken for read."""
OUT_OF_PLACE = 0.3
"""What a head costs that is no noun."""
MOST_SENSES, MOST_WAYS = 6, 600
"""The likeliest senses of a word, and the ways of reading an item, that are looked at."""
SHORTEST_PART = 3
"""The fewest letters of a part of a compound."""
_ADJECTIVE = expression(r"(?:ow|n|sk|ck|dzk|cz)(?:y|a|e|ych|ego|ej|i|ie)$|an[ey]$")
"""How Polish adjectives end, folded; they stand before their noun or after it."""
_BY_FORM = {"pl": _ADJECTIVE}
_FORMS = {"pl": (("ek$", "ka"), ("ek$", "ko"), ("([yi])ch$", r"\1"), ("ego$", "y"), ("$", "a"), ("$", "o"))}
"""Forms that are not regular endings: the genitive plural (zabawek, of toys), and that of adjectives."""
_PURPOSE_BEFORE = {"fr": frozenset(("a",)), "it": frozenset(("da",))}
"""Small words after which stands what a thing is for, as a noun before another says it in English: moulin à café."""
_WORD = expression(r"[^\W_]+(?:-[^\W_]+)*")
_SEPARATOR = expression(r"([,;()/\n])")
_PREPOSITIONS = frozenset(("for", "with", "without", "in", "of", "from", "against"))
_DEALT_IN = frozenset("retail wholesale sale rental repair service services course lesson shop".split())


Chance = Callable[[str], float]
"""How likely goods of English words are in the classes stated for them."""


class Rendered(NamedTuple):
    """Goods in `english` words, and those that no table here knows, as they are written."""

    english: str
    unread: tuple[str, ...]


class _Sense(NamedTuple):
    english: str
    value: float
    guessed: bool = False
    """Whether it is read by parts that have little to do with each other."""


class _Unit(NamedTuple):
    """Words that are read together, with what they may mean."""

    said: str
    senses: tuple[_Sense, ...]
    by_form: bool = False
    """Whether it is an adjective by its form."""


def words_of(text: str) -> Iterator[tuple[str, str]]:
    """Each word as written and folded."""
    for found in _WORD.finditer(text):
        yield found[0], fold(found[0])


def rendered(text: str, language: str, chance: Chance | None = None) -> Rendered:
    """A list of goods of one language (BCP 47) in English words; of what they are that sense is preferred of which the
    `chance` is high (Geschirr is crockery in class 21, harness in class 18)."""
    words = tuple(words_of(text))
    wares = frozenset(area.names for written, _ in words for one in label_senses(written, language)
                      for area in one.areas if one.names_ware)  # fmt: skip
    told: list[str] = []
    unread: list[str] = []
    for part in _SEPARATOR.split(text):
        if _SEPARATOR.fullmatch(part):
            told.append(part)
            continue
        runs, small = _runs(tuple(words_of(part)), language, wares)
        chosen = _chosen(_in_classes(runs, language, chance) if chance else runs)
        units = zip((unit for run in runs for unit in run), (one for run in chosen for one in run), strict=True)
        unread += [unit.said for unit, (one, _) in units
                   if one.guessed or (not unit.senses and not _is_english(unit.said))]  # fmt: skip
        told.append(_in_words([[(sense.english, form) for sense, form in run] for run in chosen], small, language))
    return Rendered(joined(told), tuple(unread))


def joined(parts: list[str]) -> str:
    """Words and the separators between them as one text: no space before a comma, one after it."""
    return re.sub(r" ?([,;)/]) ?", r"\1 ", " ".join(filter(None, parts))).replace("( ", "(").strip()


def _is_english(said: str) -> bool:
    return all(standing(written, folded) != "foreign" for written, folded in words_of(said))


Runs = list[list[_Unit]]


def _runs(
    words: tuple[tuple[str, str], ...], language: str, wares: frozenset[tuple[str, ...]]
) -> tuple[Runs, list[str]]:
    """The units of an item between its small words, and the English of these."""
    runs: Runs = [[]]
    small: list[str] = []
    for said, folded in units_of(words, language):
        names = _senses(said, folded, language, wares)
        little = small_words(language).get(folded)
        if little is not None and (said.isascii() or not names_ware(said, language)):  # de is no dé, a die
            small.append("of" if folded in _PURPOSE_BEFORE.get(language, ()) else little)
            runs.append([])
        else:
            form = _BY_FORM.get(language)
            runs[-1].append(_Unit(said, names, bool(form and form.search(folded))))
    return runs, small


def units_of(words: tuple[tuple[str, str], ...], language: str) -> Iterator[tuple[str, str]]:
    """The words, those together that name one ware, or that labels have as one term (pain au levain)."""
    at = 0
    while at < len(words):
        sizes = range(min(max(LONGEST_TERM, LONGEST_NAME), len(words) - at), 1, -1)
        runs = ((" ".join(written for written, _ in words[at : at + size]), size) for size in sizes)
        known = (one for one in runs if ware_names(one[0], language) or label_senses(one[0], language))
        run, size = next(known, (words[at][0], 1))
        yield run, " ".join(folded for _, folded in words[at : at + size])
        at += size


def _senses(said: str, folded: str, language: str, wares: frozenset[tuple[str, ...]]) -> tuple[_Sense, ...]:
    """What words may mean, likeliest first, by themselves."""
    found: dict[str, float] = {}
    guessed: set[str] = set()

    def add(english: str, value: float) -> None:
        found[english] = max(value, found.get(english, 0.0))

    for at, english in enumerate(ware_names(said, language)):
        add(english, (LABEL if english == folded else WARE) - at * FURTHER)  # a Tee is of golf too, as in English
    for one in label_senses(said, language):
        of_these = one.names_ware or any(area.names in wares for area in one.areas)
        accented = of_these and one.sure == 1 and not said.isascii()  # bouché, corked, is no bouche
        value = WARE if accented else NAMED if one.names_ware else LABEL if of_these else LABEL_ELSEWHERE
        add(one.english, one.sure * value)
    if " " not in folded:
        forms = (folded, *(form for form in _further_forms(folded, language) if not found))
        known = next(filter(None, (_listed(form, language) for form in forms)), [])
        if not any(sure for _, _, sure in known):
            known = [*known, *_by_parts(folded, language)] if not found else known
        for english, value, sure in known:
            add(english, value)
            guessed |= set() if sure else {english}
    valued = [_Sense(english, value, english in guessed and _is_odd(english)) for english, value in found.items()]
    return tuple(sorted(valued, key=lambda one: (-one.value - worth(one.english), one.english))[:MOST_SENSES])


_Known = list[tuple[str, float, bool]]
"""English, value, and whether a list has it."""


def _listed(folded: str, language: str) -> _Known:
    in_use = zipf(folded) > 0  # a word of English texts is neither split nor taken for a misspelling
    return [(one.english, one.score * (GUESS if one.guessed else 1.0), not one.guessed)
            for one in translations(folded, language)
            if one.score >= LEAST_SURE and not (in_use and one.guessed)]  # fmt: skip


def _further_forms(folded: str, language: str) -> list[str]:
    return [re.sub(pattern, new, folded) for pattern, new in _FORMS.get(language, ()) if re.search(pattern, folded)]


@lru_cache(maxsize=1 << 12)
def likely_by_parts(folded: str, language: str) -> float:
    """How likely an unknown word is one of a language by its parts, 0 if it has none, or what they say is odd."""
    return max((value for english, value, _ in _by_parts(folded, language) if not _is_odd(english)), default=0.0)


def _by_parts(folded: str, language: str) -> _Known:
    """What an unknown word may mean by its parts: a compound, wherever it may be divided, or a verb and its noun
    (porta, savon)."""
    does = what_does(folded.replace("-", ""), language)
    ways = [_ways_to_say([(one.english, one.score) for one in part.senses] for part in does)]
    if language in COMPOUNDING:
        for cut in cuts(folded, SHORTEST_PART, SHORTEST_PART):
            ends = _of_part(folded[cut:], language)
            ways.append(_ways_to_say((_of_part(folded[:cut], language, LINKING[language]) if ends else [], ends)))
    if not any(ways) and (bases := derived(folded, language)):
        return [(one.english, GUESS * one.score, False) for one in bases[:MOST_SENSES]]
    if not any(ways) and (parts := compound_of(folded, language)):
        ways.append(_ways_to_say([(one.english, one.score) for one in part.senses] for part in parts))
    return [(english, GUESS * value, False) for way in ways for english, value in way]


def _of_part(part: str, language: str, links: tuple[str, ...] = ()) -> list[tuple[str, float]]:
    """What a part of a compound may mean, with a linking element at its end or without."""
    forms = (part, *(part.removesuffix(link) for link in links if part.endswith(link) and len(part) > len(link) + 2))
    found: dict[str, float] = {}
    for form in forms:
        for english in (*ware_names(form, language), *(one.english for one in label_senses(form, language))):
            found[english] = 1.0
        for english, score, sure in _listed(form, language):
            if sure:
                found[english] = max(score, found.get(english, 0.0))
    best = sorted(found.items(), key=lambda pair: (-pair[1] - worth(pair[0]), pair[0]))
    return best[:MOST_SENSES]


def _ways_to_say(parts: Iterable[Iterable[tuple[str, float]]]) -> list[tuple[str, float]]:
    """The phrases that the senses of parts make, each with how likely the parts are so meant together."""
    said = []
    for way in product(*parts):
        if len(way) == 2:
            (first, one), (last, other) = way
            said.append((f"{first} {last}", min(one, other) + fit(first, last) / 2))
    return said


def _is_odd(english: str) -> bool:
    """Whether the parts of a compound, so read, have little to do with each other: more than two of them (fresh, old,
    box), or two of which the last names no goods."""
    words = english.split()
    if len(words) == 2 and f"h:{base_form(words[-1])}" in open_table("class_weights.tsv"):
        return False
    return min((fit(one, other) for one, other in pairwise(words)), default=1.0) < LEAST_TOGETHER


def _in_classes(runs: Runs, language: str, chance: Chance) -> Runs:
    """The units with the senses of the noun that says what the goods are worth more by how likely they are in the
    classes stated."""
    first = runs[0]
    at = 0 if language in NOUN_FIRST else len(first) - 1
    if not first:
        return runs
    senses = tuple(one._replace(value=one.value + OF_CLASS * chance(one.english)) for one in first[at].senses)
    head = first[at]._replace(senses=tuple(sorted(senses, key=lambda one: (-one.value, one.english))))
    return [[*first[:at], head, *first[at + 1 :]], *runs[1:]]


def _chosen(runs: Runs) -> list[list[tuple[_Sense, bool]]]:
    """Each unit in the sense that makes most of the item, and whether it is an adjective by its form."""
    units = [unit for run in runs for unit in run]
    senses = [unit.senses or (_Sense(fold(unit.said), 0.0),) for unit in units]
    most = MOST_SENSES
    while most > 1 and _ways(senses, most) > MOST_WAYS:
        most -= 1
    lengths = [len(run) for run in runs]
    best = max(product(*(each[:most] for each in senses)), key=lambda way: _value(way, lengths))
    found = iter([(one, unit.by_form) for one, unit in zip(best, units, strict=True)])
    return [[next(found) for _ in run] for run in runs]


def _ways(senses: list[tuple[_Sense, ...]], most: int) -> int:
    count = 1
    for each in senses:
        count *= min(len(each), most)
    return count


def _value(way: tuple[_Sense, ...], lengths: list[int]) -> float:
    """How well the senses of an item fit each other."""
    named = lengths[0] or len(way)  # what stands after a small word says less of what goods are
    value = sum(one.value + worth(one.english) * (1.0 if at < named else BESIDE) for at, one in enumerate(way))
    at = 0
    heads: list[str] = []
    for length in lengths:
        run = [one.english for one in way[at : at + length]]
        at += length
        for one, other in pairwise(run):
            value += max(fit(one, other), fit(other, one))
        heads += run[:1]
    for one, other in pairwise(heads):
        value += fit(other, one) + (OF_GOODS if is_stuff(other) else 0.0)
    return value - (0.0 if any(map(_is_thing, (one.english for one in way[: lengths[0]]))) else OUT_OF_PLACE)


def _in_words(chosen: list[list[tuple[str, bool]]], small: list[str], language: str) -> str:
    """The words of an item in the order of English."""
    phrases = [_ordered(run, language) for run in chosen]
    told = [" ".join(phrases[0])]
    for little, phrase in zip(small, phrases[1:], strict=True):
        if not phrase:
            told += [little]
        elif len(told) == 1 and told[0] and _joins(told[0], phrase, language, little):
            told[0] = f"{' '.join(phrase)} {told[0]}"
        elif len(told) == 1 and told[0].split()[-1:] and told[0].split()[-1] in _DEALT_IN:
            told += ["of", " ".join(phrase)]
        else:
            told += [little, " ".join(phrase)]
    return " ".join(filter(None, told))


def _joins(head: str, phrase: list[str], language: str, little: str) -> bool:
    """Whether what stands after "of" stands before its noun in English: planche de surf, but socks of wool."""
    said = " ".join(phrase)
    if little not in ("of", "for") or head.split()[-1] in _DEALT_IN:
        return False
    if is_goods_term(f"{said} {head}"):
        return True
    last = said.split()[-1]
    if little != "of" or language not in NOUN_FIRST or len(said.split()) > 2 or not is_noun(last):
        return False
    return not is_stuff(last)


def _ordered(run: list[tuple[str, bool]], language: str) -> list[str]:
    """The words of a phrase with what is said of the noun before it: candles scented, scented candles."""
    said = [english for english, _ in run]
    nouns = [not by_form and _is_thing(english) for english, by_form in run]
    if any(map(_begins_with_small, said[1:])):  # per dolci, for cakes
        kept = [one for one in run if not _begins_with_small(one[0])]
        return [*_ordered(kept, language), *filter(_begins_with_small, said)]
    if len(said) < 2 or not any(nouns):
        return said
    if language in NOUN_FIRST:
        at = nouns.index(True)
        return [*said[:at], *reversed(said[at + 1 :]), said[at]]
    if nouns[-1]:
        return said
    return [one for one, noun in sorted(zip(said, nouns, strict=True), key=lambda pair: pair[1])]


def _begins_with_small(english: str) -> bool:
    return english.split()[0] in _PREPOSITIONS


@lru_cache(maxsize=1 << 13)
def _is_thing(english: str) -> bool:
    """Whether a phrase ends in a noun; it does not if it is one adjective (sweet-smelling)."""
    joined = english.replace(" ", "-")
    last = joined if lexicon().known(joined) else english.split()[-1]
    return is_noun(last) and (lexicon().known(last) or is_trade_word(last))
