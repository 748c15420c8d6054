"""Words against public policy or accepted principles of morality: coarse words, slurs, drugs, extremism, crimes and
disasters, and what is holy (EUTMR Article 7(1)(f); TMA 1994 s. 3(3)(a)).

In the United States they are no bar any more (Matal v. Tam, 2017, for slurs; Iancu v. Brunetti, 2019, for what shocks).
The list is written from memory and incomplete (wordlists/curated/morality.txt)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from ..expressions import expression
from ..lexicon import lexicon, translations
from ..lexicon.language_codes import language_name
from ..plain_text import some
from ..tables import open_table
from ..territories import languages_of
from ..text import parse
from .classification import likely_classes
from .grounds import Ground, law_on, views_of
from .places import place_of
from .proper_names import is_surname
from .signs import ProtectedSign, with_law
from .uses import used_abroad
from .ware_names import ware_names
from .words import runs

__all__ = ["MORALITY", "offending"]

MORALITY = "morality"
"""The kind of such a sign."""
LONGEST = 5
"""The most words of an entry that are looked for."""
SHORTEST, SHORTEST_WITHIN, SHORTEST_BESIDE = 4, 4, 3
"""The fewest letters of a word of another language that is likely to be refused, of one that is seen in a closed word,
and of what stands beside it there: shorter ones are found by chance."""
FREE = frozenset(("US",))
"""Laws under which such words are no bar; from memory."""
UNHOLY = frozenset((33, 34))
"""The Nice classes of drink and smoke, for which what is holy is likely to be refused; ours, after practice."""
_WHAT = {
    "coarse": "a coarse word",
    "slur": "a slur for a group of people",
    "drug": "an illegal drug",
    "extremism": "words of extremists, or of a terror",
    "crime": "organised crime, or a criminal",
    "tragedy": "a disaster with many victims",
    "faith": "what is holy to many",
}
_ASK = "the office, and an adviser, with how people of the market take it"
_HYPHENED = expression(r"\w+(?:-\w+)+")
_SEEN = ("coarse", "slur")
"""Kinds that are seen in closed words too (shitbox)."""


class _Entry(NamedTuple):
    kind: str
    firm: bool
    languages: tuple[str, ...]
    written: str


def offending(
    name: str, words: tuple[str, ...], goods: str, markets: tuple[str, ...] | None
) -> tuple[ProtectedSign, ...]:
    """The words of a name that offend, the longest first: serious where the law of a market is likely to refuse them;
    else asked about."""
    found: dict[str, ProtectedSign] = {}
    taken: set[str] = set()
    for run, entries in _listed(words):
        parts = set(run.split())
        meant = [one for one in entries if not _is_part_of_term(run, one, name, words)]
        signs = [sign for one in meant if (sign := _sign(run, one, name, goods, markets))]
        if signs and not parts & taken:
            taken |= parts
            found[run] = max(signs, key=lambda one: one.serious)
    return tuple(sorted(found.values(), key=lambda one: not one.serious))


def _listed(words: tuple[str, ...]) -> Iterator[tuple[str, tuple[_Entry, ...]]]:
    for _, each in runs(words, LONGEST):
        run = " ".join(each)
        if entries := _entries(run):
            yield run, entries
    for word in words:
        if not _entries(word) and not lexicon().known(word) and not is_surname(word) and place_of(word) is None:
            yield from _within(word)


def _is_part_of_term(run: str, entry: _Entry, name: str, words: tuple[str, ...]) -> bool:
    """Whether words stand in a longer term that dictionaries or lists of wares have (cul-de-sac, pique-nique), and are
    read as a part of it; what everyone understands is seen there too."""
    if entry.firm and "*" in entry.languages:
        return False
    hyphened = {parse(one).words for one in _HYPHENED.findall(name)}
    phrases = (tuple(each) for _, each in runs(words, LONGEST, 2))
    around = (one for one in (*hyphened, *phrases) if f" {run} " in f" {' '.join(one)} " and " ".join(one) != run)
    return any(_is_term(one, entry.languages, hyphened=one in hyphened) for one in around)


def _is_term(words: tuple[str, ...], languages: tuple[str, ...], *, hyphened: bool) -> bool:
    whole = " ".join(words)
    if lexicon().known(whole) or lexicon().known("-".join(words)):
        return True
    own = (language for language in languages if language not in ("*", "en")) if hyphened else ()
    return any(used_abroad(whole, one) or ware_names(whole, one) or _is_listed(words, one) for one in own)


def _is_listed(words: tuple[str, ...], language: str) -> bool:
    return any(not one.guessed for mark in "- " for one in translations(mark.join(words), language))


def _within(word: str) -> Iterator[tuple[str, tuple[_Entry, ...]]]:
    """A word that everyone understands, at one end of a closed word whose rest is a word as well."""
    for at in range(SHORTEST_BESIDE, len(word) - SHORTEST_BESIDE + 1):
        for part, rest in ((word[:at], word[at:]), (word[at:], word[:at])):
            known = len(part) >= SHORTEST_WITHIN and len(rest) >= SHORTEST_BESIDE and lexicon().known(rest)
            held = tuple(one for one in _entries(part) if one.firm and one.kind in _SEEN and "*" in one.languages)
            if known and held:
                yield word, held
                return


@lru_cache(maxsize=1 << 13)
def _entries(run: str) -> tuple[_Entry, ...]:
    row = open_table("protected_signs.tsv").get(f"%{run}")
    parts = (entry.split("|") for entry in row.split(";")) if row else ()
    return tuple(
        _Entry(kind.rstrip("?"), not kind.endswith("?"), tuple(languages.split()), written)
        for kind, languages, written in parts
    )


def _sign(
    run: str, entry: _Entry, name: str, goods: str, markets: tuple[str, ...] | None
) -> ProtectedSign | None:
    """The sign as it is told; None where buyers of the markets think of something else, or know the word not."""
    if not _is_meant(run, entry, name):
        return None
    laws = views_of(markets)
    understood = [law for law in laws if "*" in entry.languages or set(languages_of((law,))) & {*entry.languages}]
    if not understood:
        return None
    bars = tuple(law for law in understood if law not in FREE)
    sort = entry.kind == "faith" and set(likely_classes(goods)[:1]) & UNHOLY
    serious = bool(bars) and (entry.firm if entry.kind != "faith" else bool(sort))
    grounds = tuple(Ground(law, law_on("vulgar", law)) for law in understood)
    known = "" if {"*", "en"} & {*entry.languages} else f" ({some([language_name(one) for one in entry.languages])})"
    doubt = "against public policy or accepted principles of morality"
    what = f"{_WHAT[entry.kind]}{known}: {doubt if serious else f'is it {doubt}?'}"
    return ProtectedSign(run, MORALITY, some(entry.languages), serious, with_law(what, grounds), _ASK, grounds, bars)


def _is_meant(run: str, entry: _Entry, name: str) -> bool:
    """Whether the words are those of the entry: a single word of another language is not where it is an English word, a
    place or a surname, or short, nor one that is another word without its accents (cono, a cone)."""
    if not {"*", "en"} & {*entry.languages} and " " not in run:
        other = lexicon().known(run) or place_of(run) is not None or is_surname(run)
        if other or len(run) < SHORTEST:
            return False
    if not entry.written or entry.written in name.lower():
        return True
    return not any(translations(run, language) for language in entry.languages if language != "*")
