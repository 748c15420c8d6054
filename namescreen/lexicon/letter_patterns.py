"""Letter patterns of a language: how surprising a word's letters are, and the consonant groups it allows.

The model is an interpolated n-gram of letters (four at most; Witten and Bell 1991, method C) over the
frequent words of the language, each counted once. ``wordlists/build/letters.py`` draws it into
``wordlists/letters/``:

    GRAM        cost left    cost of its last letter after the others, and of leaving it to a shorter gram
    <GROUP      count        consonant groups that begin words, ...
    >GROUP      count        ... that end them, ...
    =GROUP      count        ... that stand between vowels
    %letters    the letters of the language's alphabet
    %quantiles  cost a letter of its own words at every hundredth, least first

Costs are in tenths of a bit: -10 log2 of a probability.
"""

from __future__ import annotations

import math
import re
from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from functools import cache, lru_cache, partial
from typing import TYPE_CHECKING

from namescreen.tables import Table, open_table, wordlists_folder

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "all_bits_less",
    "allowed",
    "alphabet",
    "bits_less",
    "consonant_groups",
    "has_model",
    "letter_cost",
    "percentile",
    "share_above",
    "train",
]

_ORDER = 4
_LEAST_COUNT = {3: 2, 4: 3}
"""Rarer grams of these lengths are dropped: a third of the size for a loss of 0.01 to 0.02 in AUC."""
_UNSEEN = 60.0
"""The cost of a letter that the language's words never hold: one in 64."""
_VOWELS = "aeiouyàáâãäåæèéêëìíîïòóôõöøœùúûüýąęăıůűőěαεηιοωυάέήίόώύаеёиоуыэюяіїє"
_LETTERS, _BEFORE_A = 28, ord("a") - 1
"""Of the windows of a to z: how many different letters they have, with what stands before and after a word."""
_OFTEN = 0.0005
"""A consonant group is usual from this share of a language's words, one in 2,000: rarer ones come with names
and loans that its lists hold (set by looking at the rarest groups kept for Italian, Spanish and Finnish)."""


def consonant_groups(word: str) -> list[str]:
    """The groups of consonant letters in a word, each after its place: < begins it, > ends it, = between
    vowels."""
    groups = []
    for found in re.finditer(f"[^{_VOWELS}]+", word):
        if found.end() - found.start() < len(word):
            place = "<" if found.start() == 0 else ">" if found.end() == len(word) else "="
            groups.append(place + found[0])
    return groups


def train(words: Iterable[str]) -> dict[str, str]:
    """The model of these words (lower case, accents kept), as entries of a table.

    The quantiles are those of every tenth word under a model of the others: a model finds its own training words
    too likely, and would call every new name strange.
    """
    chosen = sorted(set(words))
    others = _model([word for at, word in enumerate(chosen) if at % 10]).get
    costs = sorted(letter_cost(word, others) for word in chosen[::10])
    quantiles = [costs[min(len(costs) - 1, len(costs) * part // 100)] for part in range(101)]
    return _model(chosen) | {"%quantiles": " ".join(f"{cost:.1f}" for cost in quantiles)}


def _model(chosen: Sequence[str]) -> dict[str, str]:
    counts: Counter[str] = Counter()
    groups: Counter[str] = Counter()
    for word in chosen:
        padded = _padded(word)
        for end in range(_ORDER, len(padded) + 1):
            counts.update(padded[end - length : end] for length in range(1, _ORDER + 1))
        groups.update(consonant_groups(word))
    followed: Counter[str] = Counter()
    kinds: Counter[str] = Counter()
    for gram, count in counts.items():
        followed[gram[:-1]] += count
        kinds[gram[:-1]] += 1
    likely = {"": 2 ** (-_UNSEEN / 10)}
    entries: dict[str, str] = {}
    for gram in sorted(counts, key=lambda gram: (len(gram), gram)):
        before = gram[:-1]
        likely[gram] = (counts[gram] + kinds[before] * likely[gram[1:]]) / (followed[before] + kinds[before])
        if counts[gram] >= _LEAST_COUNT.get(len(gram), 1):
            entries[gram] = f"{_cost(likely[gram])} {_cost(_left(gram, followed, kinds))}"
    for length in range(1, _ORDER):
        entries["^" * length] = f"0 {_cost(_left('^' * length, followed, kinds))}"
    entries |= {group: str(count) for group, count in groups.items() if count >= _OFTEN * len(chosen)}
    return entries


def letter_cost(word: str, model: Callable[[str], str | None]) -> float:
    """Surprise at the letters of `word` under a model's entries, in tenths of a bit a letter, at least 0."""
    return sum(_surprise(window, model) for window in _windows(word)) / (len(word) + 1)


def _windows(word: str) -> list[str]:
    """Each letter of a word, and its end, after the ones before it."""
    padded = _padded(word)
    return [padded[at : at + _ORDER] for at in range(len(padded) - _ORDER + 1)]


def _surprise(window: str, model: Callable[[str], str | None]) -> float:
    """Surprise at the last letter of some after the ones before it, in tenths of a bit: a whole number."""
    total = 0.0
    for start in range(_ORDER):
        value = model(window[start:])
        if value is not None:
            return total + float(value.partition(" ")[0])
        before = model(window[start:-1]) if _ORDER - start > 1 else None
        total += float(before.partition(" ")[2]) if before is not None else 0.0
    return total + _UNSEEN


@lru_cache(maxsize=1 << 17)
def _surprise_in(language: str, window: str) -> float:
    return _surprise(window, lambda gram: pattern(gram, language))


@lru_cache(maxsize=1 << 12)
def _cost_in(language: str, word: str) -> float:
    """`letter_cost` of a word in a language."""
    return sum(map(partial(_surprise_in, language), _windows(word))) / (len(word) + 1)


def bits_less(word: str, language: str) -> float:
    """How many bits the letters of `word` surprise a reader of `language` less than one of English; below 0 if more."""
    return (_cost_in("en", word) - _cost_in(language, word)) * (len(word) + 1) / 10


def all_bits_less(words: Sequence[str], languages: Sequence[str]) -> NDArray[np.float64]:
    """`bits_less` of words of the letters a to z, at least one, a row a language: for very many, as it takes 0.05 s a
    language to make ready."""
    import numpy as np

    sizes = np.fromiter(map(len, words), np.int64, len(words)) + 1
    starts = np.cumsum(sizes) - sizes
    letters = np.frombuffer("{".join([*words, ""]).encode(), np.uint8).astype(np.int64) - _BEFORE_A
    padded = np.zeros((len(letters), _ORDER), np.int64)
    at = np.arange(len(letters)) - np.repeat(starts, sizes)
    for back in range(_ORDER):
        padded[back:, -1 - back] = np.where(at[back:] >= back, letters[: len(letters) - back], 0)
    windows = padded @ _LETTERS ** np.arange(_ORDER - 1, -1, -1)
    english, *costs = (
        np.add.reduceat(_every_surprise(language)[windows], starts, dtype=np.float64) / sizes
        for language in ("en", *languages)
    )
    return np.array([(english - cost) * sizes / 10 for cost in costs])


@cache
def _every_surprise(language: str) -> NDArray[np.uint16]:
    """`_surprise` at the end of all windows of a to z, by their letters as digits."""
    import numpy as np

    letters = dict(zip("^abcdefghijklmnopqrstuvwxyz$", range(_LETTERS), strict=True))
    costs = [np.full((_LETTERS,) * length, -1, np.int16) for length in range(_ORDER + 1)]
    left = [np.zeros((_LETTERS,) * length, np.int16) for length in range(_ORDER + 1)]
    for gram, value in _table(language).items():
        if letters.keys() >= set(gram):
            place = tuple(map(letters.__getitem__, gram))
            costs[len(gram)][place], left[len(gram)][place] = map(int, value.split())
    found = np.array(_UNSEEN, np.int16)
    for length in range(1, _ORDER + 1):
        shorter = found + left[length - 1][..., None] if length > 1 else found
        found = np.where(costs[length] >= 0, costs[length], shorter)
    return found.astype(np.uint16).ravel()


def share_above(cost: float, quantiles: Sequence[float]) -> int:
    """How many of a hundred words with these quantiles of cost are as surprising as `cost` or more."""
    return max(0, 100 - bisect_left(quantiles, cost))


@cache
def has_model(language: str) -> bool:
    """Whether letter patterns of this language are shipped."""
    return (wordlists_folder() / "letters" / f"{language}.tsv").is_file()


def percentile(word: str, language: str) -> int:
    """The share of the language's own frequent words whose letters are as surprising as this word's, or more,
    in percent: 100 if it is more usual than any of them, 0 if more surprising than all. Raises `DataError` without a
    model; see `has_model`."""
    quantiles = [float(cost) for cost in (_table(language).get("%quantiles") or "").split()]
    return share_above(_cost_in(language, word), quantiles)


def alphabet(language: str) -> frozenset[str]:
    """The letters of the language's alphabet, in lower case."""
    return frozenset((_table(language).get("%letters") or "").split())


def allowed(group: str, language: str) -> bool:
    """Whether words of the language hold this consonant group (as `consonant_groups` gives it) at that
    place."""
    return pattern(group, language) is not None


def _padded(word: str) -> str:
    return "^" * (_ORDER - 1) + word + "$"


def _left(gram: str, followed: Counter[str], kinds: Counter[str]) -> float:
    """The weight that a context gives to shorter ones."""
    return kinds[gram] / (followed[gram] + kinds[gram]) if followed[gram] else 1.0


def _cost(probability: float) -> str:
    return f"{-10 * math.log2(probability):.0f}"


def _table(language: str) -> Table:
    return open_table(f"letters/{language}.tsv")


@lru_cache(maxsize=1 << 14)
def pattern(gram: str, language: str) -> str | None:
    return _table(language).get(gram)
