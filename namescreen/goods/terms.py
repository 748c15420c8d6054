"""The telling words of a goods text: "retail store services featuring herbs" is about herbs, sold in a store."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import kinds, lexicon
from ..names import parse

__all__ = ["GoodsWord", "goods_words"]

# Words that frame a list of goods and say nothing about them (wording of goods lists at trade mark offices).
_FRAME = frozenset(
    "featuring namely including include includes providing provide provides related relating particularly especially "
    "such etc other others kind nature use used using via field fields form goods products product services service "
    "based made making various containing consisting comprising all any each also same seller selling sold sale sales "
    "things items item articles article type types purposes purpose general custom".split()
)
_ENDS_HEAD = frozenset("of for with in on to from using featuring namely including via about by at that which".split())


@dataclass(frozen=True, slots=True)
class GoodsWord:
    """A base form from a goods text; `head` if it names the goods themselves (hose in "hydraulic hose")."""

    word: str
    head: bool


@lru_cache(maxsize=4096)
def goods_words(text: str) -> tuple[GoodsWord, ...]:
    """The telling words of a goods text, in order, each once; heads are the last word before a comma or "for"."""
    found: dict[str, bool] = {}
    for part in text.replace(";", ",").replace(" and ", ",").replace(" or ", ",").split(","):
        phrase: list[str] = []
        head_open = True
        for word in (*parse(part).words, ""):
            if (not word or word in _ENDS_HEAD) and head_open and phrase:
                found[phrase[-1]] = True
                head_open = False
            if word and word not in _FRAME and "function word" not in kinds(word) and not word.isdecimal():
                base = _base(word)
                phrase.append(base)
                found.setdefault(base, False)
    return tuple(GoodsWord(word, head) for word, head in found.items())


def _base(word: str) -> str:
    bases = lexicon().bases_by_pos(word)
    return (bases.get("n") or bases.get("v") or bases.get("a") or (word,))[0]
