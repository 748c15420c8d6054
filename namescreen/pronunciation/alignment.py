"""Similarity of two readings in sound: a weighted alignment of their phones.

Every phone of a code has a weight. Two aligned phones cost their articulatory difference times both weights, an
unaligned phone costs its own weight, and the cheapest alignment counts (dynamic programming, as in G. Kondrak,
NAACL 2000). All costs are whole numbers, so that one pair and a batch agree exactly.
`alignment_batch` does the same for many codes at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from itertools import accumulate

from ..native import choose
from ..native.phonemes import Closest, PhonemeCosts, compiled_closest
from ..tables import open_table
from .articulatory_features import percent_differences
from .phones import SCHWA, VOWEL_LETTERS, code_of

__all__ = [
    "CLASSES",
    "align",
    "base_weights",
    "closest_similarity",
    "phone_weights",
    "phoneme_costs",
    "sound_similarity",
]

CLASSES = {
    "vowel": VOWEL_LETTERS - {SCHWA}, "schwa": {SCHWA}, "plosive": set("pbtdkg"), "sibilant": set("szSZCj"),
    "fricative": set("fvTD"), "nasal": set("mnN"), "liquid": set("lr"), "glide": set("wy"), "h": set("h"),
}  # fmt: skip
"""Phones, by their letters in a code, that weigh the same."""
FIRST = 1
"""Added to the first phone: beginnings are heard and remembered best (TMEP 1207.01(b)(iii) on first parts). Words
misheard in noise do not show it: 0 serves them as well, 2 worse."""
CLUSTERED = 1
"""Taken from a consonant that follows a consonant with no vowel after it, which is often lost in speech (acts as
"ax"; Giegerich, English Phonology, 1992, on cluster simplification)."""
RHYTHM = 0.1
"""The share of similarity lost if one reading has no syllables and the other has; ours. From 0 to 0.1 misheard words
are found as well, with more they are not."""


@cache
def base_weights() -> dict[str, int]:
    """The weight of each phone in quarters of a full one, by its class, fitted with the differences of phones
    (`wordlists/build/sound_costs.py`): vowels and sibilants are heard best, the schwa, h and nasals least."""
    table = open_table("sound_costs.tsv")
    return {letter: int(table.get(f"weight: {name}") or 0) for name, letters in CLASSES.items() for letter in letters}


@lru_cache(maxsize=1 << 16)
def phone_weights(code: str) -> tuple[int, ...]:
    """The weight of each phone of a code, in quarters of a full one."""
    base = base_weights()
    weights = [base[letter] for letter in code]
    for at in range(1, len(code)):
        follows = code[at] not in VOWEL_LETTERS and code[at - 1] not in VOWEL_LETTERS
        if follows and (at + 1 == len(code) or code[at + 1] not in VOWEL_LETTERS):
            weights[at] -= CLUSTERED
    if weights:
        weights[0] += FIRST
    return tuple(weights)


def rhythm_factor(syllables_a: int, syllables_b: int) -> float:
    """The factor on similarity for different syllable counts; 1 if they are equal."""
    if syllables_a == syllables_b:
        return 1.0
    return 1.0 - RHYTHM * abs(syllables_a - syllables_b) / max(syllables_a, syllables_b)


def syllables_in(code: str) -> int:
    """The number of vowels in a code."""
    return sum(letter in VOWEL_LETTERS for letter in code)


@lru_cache(maxsize=1 << 16)
def _prepared(code: str) -> tuple[tuple[tuple[str, int, int], ...], list[int], int, int]:
    """Each phone with its weight and the cost of leaving it out, the running sum of those costs, their total,
    and the number of syllables."""
    weights = phone_weights(code)
    phones = tuple((letter, weight, 100 * weight) for letter, weight in zip(code, weights, strict=True))
    return (
        phones,
        list(accumulate((alone for _, _, alone in phones), initial=0)),
        100 * sum(weights),
        syllables_in(code),
    )


@lru_cache(maxsize=1 << 16)
def sound_similarity(code_a: str, code_b: str, least: float = 0.0) -> float:
    """The similarity of two codes in sound, in [0, 1]: 1 the same, 0 nothing in common. Symmetric.

    The value is the share of weight that the cheapest alignment matches, times a factor for unequal syllable counts.
    Two empty codes are the same. A value below `least` may be returned as 0: the alignment stops once it cannot
    reach it.
    """
    if code_a == code_b:
        return 1.0
    _, _, whole_a, syllables_a = _prepared(code_a)
    _, _, whole_b, syllables_b = _prepared(code_b)
    rhythm = rhythm_factor(syllables_a, syllables_b)
    whole = whole_a + whole_b
    rows = _rows(code_a, code_b, int(whole * max(0.0, 1.0 - least / rhythm)) + 1)
    return (1.0 - rows[-1][-1] / whole) * rhythm if rows else 0.0


def closest_similarity(codes: tuple[str, ...], others: tuple[str, ...], least: float = 0.0) -> float:
    """The sound similarity of the closest of some codes and of some others, in [0, 1]; 0 where it is below `least`, or
    where there are no codes."""
    return _closest()(codes, others, least)


@cache
def _closest() -> Closest:
    return choose(
        lambda library: compiled_closest(library, phoneme_costs(), _closest_in_python), lambda: _closest_in_python
    )


def _closest_in_python(codes: tuple[str, ...], others: tuple[str, ...], least: float) -> float:
    best = 0.0
    for code in codes:
        for other in others:
            best = max(best, sound_similarity(code, other, max(best, least)))
    return best if best >= least else 0.0


@cache
def phoneme_costs() -> PhonemeCosts:
    """The weights and costs above as tables for the compiled code."""
    return PhonemeCosts(
        percent_differences(), base_weights(), VOWEL_LETTERS, first=FIRST, clustered=CLUSTERED, rhythm=RHYTHM
    )


def _rows(code_a: str, code_b: str, most: int = 1 << 30) -> list[list[int]]:
    """The cost of the cheapest alignment of every beginning of one code with every beginning of the other.

    Empty if every alignment costs more than `most`.
    """
    differences = percent_differences()
    phones_a, phones_b = _prepared(code_a)[0], _prepared(code_b)[0]
    row = _prepared(code_b)[1]
    rows = [row]
    for letter_a, weight_a, alone_a in phones_a:
        costs = differences[letter_a]
        above, corner, left = row, row[0], row[0] + alone_a
        row = [left]
        for at, (letter_b, weight_b, alone_b) in enumerate(phones_b, 1):
            straight = above[at]
            both = corner + costs[letter_b] * (weight_a + weight_b)
            corner = straight
            straight += alone_a
            left += alone_b
            if both < left:
                left = both
            if straight < left:
                left = straight
            row.append(left)
        if min(row) > most:
            return []
        rows.append(row)
    return rows


def align(a: Sequence[str], b: Sequence[str]) -> tuple[tuple[str | None, str | None, float], ...]:
    """The cheapest alignment of two readings, sound by sound.

    Takes ARPAbet phones; each step is a phone or None from either, and the cost of setting them against each
    other, in [0, 1]: 0 the same sound, 1 an unaligned sound.
    """
    code_a, code_b = code_of(a), code_of(b)
    rows = _rows(code_a, code_b)
    phones_a, phones_b = _prepared(code_a)[0], _prepared(code_b)[0]
    differences = percent_differences()
    steps: list[tuple[str | None, str | None, float]] = []
    i, j = len(a), len(b)
    while i or j:
        if i and j:
            cost = differences[code_a[i - 1]][code_b[j - 1]]
            if cost < 100 and rows[i][j] == rows[i - 1][j - 1] + cost * (phones_a[i - 1][1] + phones_b[j - 1][1]):
                steps.append((a[i - 1], b[j - 1], cost / 100))
                i, j = i - 1, j - 1
                continue
        if i and rows[i][j] == rows[i - 1][j] + phones_a[i - 1][2]:
            steps.append((a[i - 1], None, 1.0))
            i -= 1
        else:
            steps.append((None, b[j - 1], 1.0))
            j -= 1
    return tuple(reversed(steps))
