"""What a name must not name: the goods, another ware of their trade, or a stuff that goods like them are made of and
these are not (alpaca on lambswool, marigold on a lavender cream).

Such a name misleads or describes (TMEP 1209.01, 1209.04); the stuffs are our lists, by sort.
"""

from __future__ import annotations

from functools import cache

from ..brief import Brief
from ..expressions import expression
from ..goods import Relatedness, likely_classes, relatedness
from ..goods.trade_words import is_term, term_for
from ..lexicon import lexicon
from ..tables import open_table
from ..text import fold
from .candidate import Proposal
from .vocabulary import word

__all__ = ["PLEASED_MUCH", "Wares", "head_of"]

_SAME_TRADE = {"noun.artifact": 0.25, "noun.food": 0.25, "noun.substance": 0.4, "noun.plant": 0.4, "noun.event": 0.35}
"""Relatedness to the goods from which a word names another ware of the same trade, by WordNet's domain of what it names
(set by reading)."""
_BY_MEANING = frozenset(("", "noun.artifact", "noun.food"))
"""Domains of words that are judged by the head of their meaning too: articles, and what WordNet does not know."""
_TAKEN = frozenset(("found", "figure"))
_PLEASED, PLEASED_MUCH = 0.58, 0.75  # a rating of 5 and of 6 for what names the goods
_OF_STUFFS = frozenset(("found", "figure", "foreign", "pair"))
_SORTS_OF_CLASS = {
    **dict.fromkeys((29, 30, 31, 32, 33), "food"), **dict.fromkeys((23, 24, 25, 27), "fibre"), 3: "care"
}  # fmt: skip
"""What the goods of a class are made of (Nice Classification)."""
_ENDS_HEAD = frozenset("of that with in on for from to who which and or at by as where under over before".split())


_MADE_OF = expression(r"(.+?),? (?:made |cut |carved |woven )?(?:of|from) (.+)")
_ITS_NAME, _SAYS_IT = 0.9, 0.5
"""How plainly a word of labels describes the goods, so that nobody could own it, and so that it is told."""


class Wares:
    """Tells for one brief which words name its goods, wares like them, or a stuff that they do not hold."""

    def __init__(self, brief: Brief) -> None:
        self._goods = _without_stuffs(brief.goods)
        texts = (brief.goods, brief.product, *(concept.word for concept in brief.concepts))
        self._said = frozenset(one for text in texts for one in _words(text))
        named = [sort for one in _words(brief.goods) for sort in _sorts_of(one)[:1]]
        self._sorts = frozenset((*named, *filter(None, map(_SORTS_OF_CLASS.get, likely_classes(self._goods)))))

    def named_by(self, proposal: Proposal, pleased: float = 0.0) -> str:
        """What of it a name tells, in words; nothing if it names neither a ware nor a stuff. `pleased` is how it
        pleased a blind reader for these goods, 0 to 1 (the ranking's part "chosen")."""
        if not self._goods:
            return ""
        return self._ware(proposal, pleased) or self._stuff(proposal) or self._creature(proposal)

    def on_labels(self, proposal: Proposal, pleased: float = 0.0) -> tuple[str, bool]:
        """What labels say with a word taken as it is of goods like these, and whether so plainly that nobody could own
        it (TMEP 1209.01); "" if nothing. One that `pleased` much for these goods is only told of."""
        if not self._goods or proposal.construction not in _TAKEN:
            return "", False
        text = " ".join(proposal.words)
        told = term_for(text, self._goods) if is_term(text) else None
        if told is None or told.weight < _SAYS_IT:
            return "", False
        return told.what, told.weight >= _ITS_NAME and pleased < PLEASED_MUCH

    def _ware(self, proposal: Proposal, pleased: float) -> str:
        """How a word taken as it is names the goods, or another ware of the same trade: by itself, and an article, or a
        word that WordNet does not know, by the head of its meaning too. A word that pleased for these goods names none
        by its meaning alone, and one that pleased much names none: a plain name of a ware pleases nobody."""
        if proposal.construction not in _TAKEN or pleased >= PLEASED_MUCH:
            return ""
        head = head_of(proposal.meaning)
        named = word(proposal.words[-1]).domain
        by_meaning = named in _BY_MEANING and pleased < _PLEASED
        kinds = [(" ".join(proposal.words), named), (head, word(head).domain if by_meaning else "")]
        for text, domain in kinds:
            least = _SAME_TRADE.get(domain)
            near = relatedness(text, self._goods) if least else None
            if least and isinstance(near, Relatedness) and near.score >= least:
                return f"a ware of the same trade as {self._goods}"
        return ""

    def _creature(self, proposal: Proposal) -> str:
        """Which creature a name sets among goods to eat that speak of none."""
        if proposal.construction != "found" or "food" not in self._sorts or not _is_animal(proposal.words[-1]):
            return ""
        return "" if any(map(_is_animal, self._said)) else f"an animal in {self._goods}"

    def _stuff(self, proposal: Proposal) -> str:
        """Which stuff a word of a name is that goods of this sort may be made of, where these are not said to be."""
        if proposal.construction not in _OF_STUFFS:
            return ""
        for source in proposal.sources:
            here = self._sorts.intersection(_sorts_of(source.casefold().replace(" ", "-")))
            if here and self._said.isdisjoint(_words(source)):
                return f"{source.casefold()} is no part of {self._goods}"
        return ""


def _without_stuffs(goods: str) -> str:
    """The goods without what they are made of, which may be food too: spoons of cherry and birch are spoons."""
    parts = _MADE_OF.fullmatch(goods.strip())
    if parts is None:
        return goods
    head, stuffs = parts.groups()
    return head if any("food" not in sorts[:1] for one in _words(stuffs) if (sorts := _sorts_of(one))) else goods


def _is_animal(text: str) -> bool:
    return word(text).domain == "noun.animal"


def _words(text: str) -> list[str]:
    """The words of a text and their base forms."""
    said = fold(text).replace("-", " ").replace(",", " ").split()
    return [form for one in said for form in (one, *lexicon().bases(one))]


def _sorts_of(stuff: str) -> tuple[str, ...]:
    """The sorts of goods that may be made of a stuff, the likeliest first."""
    return tuple((_stuffs().get(stuff) or "").split())


@cache
def _stuffs() -> dict[str, str]:
    return dict(open_table("naming_stuffs.tsv").items())


def head_of(meaning: str) -> str:
    """The word that says what a thing is: rug of "rug before the fire", "flat woven rug"."""
    before = ""
    for token in meaning.split():
        if token in _ENDS_HEAD:
            break
        before = token.rstrip(",;")
        if before != token:
            break
    return before.casefold()
