"""Words of goods texts: their base forms, and what is known of them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from ..expressions import expression
from ..lexicon import lexicon, zipf
from ..lexicon.morphology import DETACHMENTS
from ..tables import open_table
from ..text import parse
from ..text.inflection import other_number
from ..text.segmentation import split_closed_compound

__all__ = ["MADE_SO", "as_one_word", "base_form", "is_noun", "is_trade_word", "known_as", "plain_words", "runs",
           "without_possessives"]  # fmt: skip

MADE_SO = frozenset(
    "fitted coated lined padded trimmed capped belted boxed cased plated panelled banded tipped topped backed "
    "edged".split()
)
"""Participles that say how goods are made, and name none: a coated cover is no coat, a lined box no line."""
_NOUNS_IN_S = tuple(f"{suffix}s" for suffix in "er or ist let ette ment ling".split())
"""How the plurals of nouns end that are made by a suffix, so that a strange one is known for a plural: excluders."""
_WARES = expression(r"\b(?P<sort>[a-z]+)[ -](?P<ware>wares?|wear|gear)\b", re.IGNORECASE)
_POSSESSIVE = expression(r"['’`´]s\b|(?<=s)['’`´](?=\s|$)", re.IGNORECASE)


def plain_words(text: str) -> tuple[str, ...]:
    """The folded words of `text` without possessive endings: women's magazine -> women, magazine."""
    return parse(without_possessives(text)).words


def as_one_word(text: str) -> str:
    """`text` with the words for wares that are mostly written closed so written: table wares, tableware."""

    def joined(found: re.Match[str]) -> str:
        closed = f"{found['sort']}{found['ware']}"
        return closed if lexicon().is_lemma(closed.lower().removesuffix("s")) else found[0]

    return _WARES.sub(joined, text)


def without_possessives(text: str) -> str:
    """`text` without possessive endings: women's, girls' -> women, girls."""
    return _POSSESSIVE.sub("", text)


def runs(words: Sequence[str], most: int, least: int = 1) -> Iterator[tuple[int, Sequence[str]]]:
    """The runs of `most` to `least` words in a row, each with the place of its first word: the longest first, of one
    length from left to right."""
    for size in range(most, least - 1, -1):
        for at in range(len(words) - size + 1):
            yield at, words[at : at + size]


@lru_cache(maxsize=1 << 14)
def base_form(word: str) -> str:
    """The base form under which the lexicon holds `word`, a noun first; the word itself if it is unknown."""
    bases = lexicon().bases_by_pos(word)
    nouns = bases.get("n", ())
    if len(nouns) > 1 and not (nouns[0] == word and _has_own_meaning(word)):
        return max((form for form in nouns if form != word), key=zipf)
    return (nouns or bases.get("v") or bases.get("a") or (_regular_singular(word),))[0]


def _regular_singular(word: str) -> str:
    """The singular of a word that is not in the lexicon, if that is in use (apps: app); else the word."""
    if word.endswith(_NOUNS_IN_S) and not zipf(word):
        return word[:-1]
    forms = (word[: -len(old)] + new for old, new in DETACHMENTS["n"] if word.endswith(old))
    return max((word, *forms), key=lambda form: zipf(form) if len(form) > 2 else 0.0) if len(word) > 3 else word


def _has_own_meaning(plural: str) -> bool:
    """Whether a plural has a meaning of its own (glasses, arms), and is in use with it."""
    own = (sense for sense in lexicon().senses(plural, "n", labelled=False) if plural in sense.words)
    return any(sense.domain == "noun.artifact" and sense.count > 2 for sense in own)


def is_noun(word: str) -> bool:
    """Whether `word` is more often a noun than an adjective or a participle (scented), or is in no dictionary."""
    senses = lexicon().senses(word, labelled=False)
    own = [sense for sense in senses if word in sense.words or not word.endswith("ed")]  # scented is no scent
    uses = {pos: sum(sense.count + 1 for sense in own if sense.pos == pos) for pos in "na"}
    return uses["n"] >= uses["a"] and bool(own or not senses)


def is_trade_word(word: str) -> bool:
    """Whether lists of goods use the word (matcha), in English."""
    return f"w:{base_form(word)}" in open_table("class_weights.tsv")


@lru_cache(maxsize=1 << 12)
def known_as(word: str) -> str:
    """What a ware is taken to be of whose own name no dictionary knows: another or a broader name of it in the lists
    (earbud: earpiece), or the two words that it is written of (woodburner: wood burner); "" if neither is known."""
    base = base_form(word)
    if lexicon().known(base) or is_trade_word(base):
        return ""
    rows = (open_table("broader_goods.tsv").get(one) or "" for one in (base, *sorted(other_number(base))))
    names = (name for row in rows for name in row.split(",") if name)
    other = next((name for name in names if all(map(lexicon().known, name.split()))), "")
    parts = split_closed_compound(base, zipf)
    return other or (" ".join(parts) if len(parts) == 2 and all(map(lexicon().known, parts)) else "")
