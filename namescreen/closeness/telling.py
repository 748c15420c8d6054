"""A name without the words that name its goods: anyone may add these, so they keep no marks apart (TMEP
1207.01(b)(iii) and (viii); Court of Justice, C-120/04, Thomson Life; from memory)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from ..lexicon import kinds, lexicon
from ..plain_text import some
from ..text import parse
from ..text.inflection import other_number

__all__ = ["ADDED", "left_out", "telling_part", "words_for_goods"]

ADDED = 0.97
"""What the closeness of two names counts where one of them has such words besides: next to nothing is lost. Ours, not
fitted; with it US clear decisions are told apart at 0.793 (0.785 without), ratings no worse."""
LONGEST_PHRASE = 4
SHORTEST = 3
"""Letters of the shortest rest of a name that is compared by itself; ours."""


@lru_cache(maxsize=1 << 15)
def telling_part(name: str, goods: str) -> str:
    """A name without the words that name `goods`, or `name` itself where it has none, nothing else is left, or they are
    part of a set phrase (soap opera)."""
    if not goods or len(words := parse(name).words) < 2:
        return name
    named = words_for_goods(goods)
    cut = [not named.isdisjoint({word, *other_number(word)}) and not _in_a_phrase(words, at)
           for at, word in enumerate(words)]  # fmt: skip
    kept = [word for word, out in zip(words, cut, strict=True) if not out]
    while cut[-1] and kept and "function word" in kinds(kept[-1]):
        kept.pop()
    while cut[0] and kept and "function word" in kinds(kept[0]):
        del kept[0]
    left = " ".join(kept)
    return left if any(cut) and len(left) >= SHORTEST else name


@lru_cache(maxsize=256)
def words_for_goods(goods: str) -> frozenset[str]:
    """The words of some goods, in base forms."""
    if not goods:
        return frozenset()
    from ..goods import goods_words

    return frozenset(one.word for one in goods_words(goods))


def _in_a_phrase(words: tuple[str, ...], at: int) -> bool:
    """Whether a word and those beside it are an entry of the lexicon, which may mean something else."""
    spans = ((first, first + size) for size in range(2, LONGEST_PHRASE + 1) for first in range(at - size + 1, at + 1))
    return any(
        first >= 0 and last <= len(words) and lexicon().is_lemma(" ".join(words[first:last])) for first, last in spans
    )


def left_out(names: Iterable[str], forms: Iterable[str]) -> str:
    """Which words of two names their `forms` are without, as a sentence."""
    words = [
        word for name, form in zip(names, forms, strict=True) for word in parse(name).words
        if word not in parse(form).words
    ]  # fmt: skip
    quoted = some(f'"{word}"' for word in dict.fromkeys(words))
    return f"Compared without {quoted}, as anyone may add a word for the goods."
