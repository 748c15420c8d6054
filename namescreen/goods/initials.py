"""Initials and abbreviations of trades with what they stand for: LED on lamps, EVA on mats (TMEP 1209.03(h)).

Written from memory and incomplete (wordlists/curated/initials.txt); others may still be a term."""

from __future__ import annotations

import re
from functools import lru_cache

from ..expressions import expression
from ..lexicon import kinds, lexicon
from ..tables import open_table
from .absence import WITHOUT_IN
from .description import NOTHING, Evidence, EvidenceKind
from .fields import fields_of
from .phrases import items, plain_words
from .trade_table import Area, area_of
from .trade_words import is_of_trade, is_told_of
from .wording import in_english
from .words import runs

__all__ = ["are_initials", "initials_of", "stands_for"]

NAMED, OF_THE_TRADE, ANYWHERE = 0.9, 0.75, 0.7
"""How plainly initials describe goods that are called so, others of the trade, and any goods. Ours, as the weights in
`description`."""
_ANY = "*"
SECTION = "1209.03(h)"
INITIALS, FEWEST, MOST = 0.7, 3, 6
"""How plainly the initials of the goods' own words describe them; ours, as the weights in `description`. And how many
letters they have."""
_LACKED = expression(rf"\b(?:{WITHOUT_IN['en']}) (?:any |added )?(?P<what>[^,;]+)")


def are_initials(word: str) -> bool:
    """Whether the folded `word` is listed as initials of some trade."""
    return f"^{word}" in open_table("trade_words.tsv")


@lru_cache(maxsize=1 << 13)
def stands_for(word: str, goods: str) -> Evidence:
    """What listed initials say of the goods; nothing where these are of another trade, or where an everyday word is
    written so and the goods are not called as the trade does."""
    row = open_table("trade_words.tsv").get(f"^{word}")
    best = NOTHING
    for number, _, meant in (entry.partition("=") for entry in row.split(";")) if row else ():
        area = area_of(number)
        if _ANY in area.names:
            weight = ANYWHERE
        elif is_told_of(area, goods):
            weight = NAMED
        else:
            strange = not lexicon().known(word)
            weight = OF_THE_TRADE if strange and (is_of_trade(area, goods) or _of_field(area, goods)) else 0.0
        if weight > best.weight:
            why = f'stands for "{meant}" (from memory)'
            best = Evidence(weight, why, kind=EvidenceKind.TERM, section=SECTION)
    return best


def _of_field(area: Area, goods: str) -> bool:
    """Whether goods are for the use of which those of an area are: gloves for mountain biking, of bicycle parts."""
    theirs = frozenset[str]().union(*(fields_of(item) for name in area.names for item in items(name)))
    return any(fields_of(item) & theirs for item in items(goods))


def initials_of(word: str, goods: str) -> Evidence:
    """Whether `word` is the initials of words that stand together in the goods, as they are written or in English, or
    of what these say that they lack (TMEP 1209.03(h))."""
    if FEWEST <= len(word) <= MOST:
        said = dict.fromkeys((plain_words(goods), plain_words(in_english(goods).english)))
        for spoken in said:
            for words in (spoken, tuple(one for one in spoken if "function word" not in kinds(one))):
                at = "".join(one[0] for one in words).find(word)
                if at >= 0:
                    run = " ".join(words[at : at + len(word)])
                    return Evidence(INITIALS, f'the initials of "{run}"', section=SECTION)
        lacking = next((run for run in _lacking(goods) if "".join(one[0] for one in run.split()) == word), "")
        if lacking:
            return Evidence(INITIALS, f'the initials of "{lacking}"', section=SECTION)
    return NOTHING


def _lacking(goods: str) -> list[str]:
    """What goods say that they are without, as labels put it: each by itself, and some in a row (gluten free dairy
    free)."""
    found = _LACKED.search(in_english(goods).english)
    what = re.split(r",|\b(?:and|or)\b", found["what"]) if found else ()
    said = [f"{' '.join(words)} free" for one in what if (words := plain_words(one))]
    return [" ".join(each) for _, each in runs(said, len(said))]
