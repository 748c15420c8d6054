"""A source word of a blend, seen and heard: its letters tied to its sounds.

The blend is written, but it is made by ear: the cut falls where a syllable divides, the part left out is
often the part that sounds alike. So each letter is tied to the sounds it stands for, once for each source,
and every blend's sounds follow from its cuts without reading the blend aloud anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from ..word_sounds import is_vowel, sounds_of, syllable_starts

__all__ = ["Source", "align", "source"]

_SPELLINGS = """
    AA o a ah oh ow au aa ho ea e; AE a ai au i; AH u o a e i ou oo io ea eo ia ai oe y eau ah ie; AO o
    a au aw ough ou oa augh oo; AW ou ow au ough; AY i y igh ie eye ai ei uy ye ay ig is; B b bb; CH ch
    t tch c cc ti; D d dd ed ld dh; DH th the; EH e ea a ai ie ei eo u ae ay; ER er ir ur or ar ear our
    yr eur re r ure oar ier urr err; EY a ai ay ei ey ea eigh e et ae aigh au; F f ff ph gh pph lf; G g
    gg gh gu gue x; HH h wh j; IH i e y ui a ee ie ea u o ai ei; IY e ee ea y i ie ey ei eo ae oe ay is;
    JH j g dg ge dge d gg di dj; K c k ck ch q cc kk qu que cch kh x; L l ll le el il; M m mm mb mn lm
    me; N n nn kn gn pn ne nd mn en on; NG n ng ngue; OW o oa ow oe ough ou ew au eau oh owe; OY oi oy
    eu uoy aw; P p pp ph; R r rr wr rh re rrh; S s c ss sc ps st ce se z sw x; SH sh ti ci s ch ssi si
    ss sci sch c ce sc x t xi; T t tt ed pt th bt ct cht te d z; TH th tth; UH oo u ou o oul; UW oo u ew
    ue ou o ui eu oe ough ieu w wo; V v f vv ve ph w; W w u wh o ou; Y y i u j e; Z z s zz ss x se ze;
    ZH s si z g ge zi j ti
"""
# How each sound of the CMU Pronouncing Dictionary's set is commonly spelled in English, likeliest first (from
# memory of ordinary spelling handbooks; it ties letters to sounds already known, and guesses none).
_TWO_SOUNDS = """
    K S x xe cs; G Z x; G ZH x; K SH x; Y UW u ew ue eu you; Y AH u; Y ER ure u; W AH o; AH L le l al el il;
    AH M m; AH N n; T S z zz; Y UH u; W AA oi; AY ER ire; W AY y
"""
_SILENT, _UNWRITTEN, _STRANGE = 1.0, 1.6, 1.2
# Prices set by hand: a silent letter is better than a sound without letters, or a spelling not listed.


def _costs() -> dict[str, dict[str, float]]:
    rows = (row.split() for row in _SPELLINGS.split(";"))
    return {sound: {text: 0.02 * rank for rank, text in enumerate(texts)} for sound, *texts in rows}


_COST = _costs()
_PAIRS = {(one, two): tuple(texts) for one, two, *texts in (row.split() for row in _TWO_SOUNDS.split(";"))}


def align(letters: str, sounds: Sequence[str]) -> tuple[int, ...]:
    """How many sounds stand before each letter position: `len(letters) + 1` numbers, rising from 0 to all.

    The cheapest way to spell `sounds` as `letters`; always an answer, however odd the spelling.
    """
    bare = [sound.rstrip("012") for sound in sounds]
    many, all_sounds = len(letters), len(bare)
    far = float("inf")
    best = [[far] * (all_sounds + 1) for _ in range(many + 1)]
    back: list[list[tuple[int, int]]] = [[(0, 0)] * (all_sounds + 1) for _ in range(many + 1)]
    best[0][0] = 0.0
    for i in range(many + 1):
        for j in range(all_sounds + 1):
            here = best[i][j]
            if here == far:
                continue
            steps: list[tuple[int, int, float]] = []
            if i < many:
                silent = 0.2 if letters[i] == "e" and i == many - 1 else _SILENT
                steps.append((1, 0, silent))
            if j < all_sounds:
                steps.append((0, 1, _UNWRITTEN))
                if i < many:
                    same_kind = (letters[i] in "aeiouy") == is_vowel(bare[j])
                    steps.append((1, 1, _STRANGE if same_kind else 2.2))
                    cost = _COST.get(bare[j], {})
                    for length in range(1, min(4, many - i) + 1):
                        price = cost.get(letters[i : i + length])
                        if price is not None:
                            steps.append((length, 1, price))
                    if j + 1 < all_sounds:
                        for spelling in _PAIRS.get((bare[j], bare[j + 1]), ()):
                            if letters.startswith(spelling, i):
                                steps.append((len(spelling), 2, 0.1))
            for di, dj, price in steps:
                if here + price < best[i + di][j + dj]:
                    best[i + di][j + dj] = here + price
                    back[i + di][j + dj] = (di, dj)
    before = [0] * (many + 1)
    i, j = many, all_sounds
    while i or j:
        before[i] = max(before[i], j)
        di, dj = back[i][j]
        for inside in range(1, di):  # a digraph's sound belongs to its first letter
            before[i - inside] = j
        i, j = i - di, j - dj
    return (0, *before[1:])


@dataclass(frozen=True)
class Source:
    """One word of a blend: `letters` (folded, no spaces), `sounds` (ARPAbet with stress), how they are tied.

    `before[k]` is the number of sounds spelled by the first k letters.
    """

    letters: str
    sounds: tuple[str, ...]
    before: tuple[int, ...]

    @cached_property
    def bare(self) -> tuple[str, ...]:
        """The sounds without stress."""
        return tuple(sound.rstrip("012") for sound in self.sounds)

    @cached_property
    def nuclei(self) -> tuple[int, ...]:
        """The places of the syllables' vowels among the sounds."""
        return tuple(place for place, sound in enumerate(self.sounds) if is_vowel(sound))

    @cached_property
    def stressed(self) -> int:
        """The place of the vowel under primary stress (the first if none is marked; -1 without vowels)."""
        for mark in "12":
            for place in self.nuclei:
                if self.sounds[place].endswith(mark):
                    return place
        return self.nuclei[0] if self.nuclei else -1

    @cached_property
    def joints(self) -> frozenset[int]:
        """Where one syllable ends and the next begins, as numbers of sounds before."""
        return frozenset(syllable_starts(self.bare)[1:])


@lru_cache(maxsize=4096)
def source(word: str) -> Source:
    """`word` read by its likeliest pronunciation and tied to its letters."""
    from ...text import fold

    letters = "".join(c for c in fold(word) if c.isalnum())
    sounds = sounds_of(letters)
    return Source(letters, sounds, align(letters, sounds))
