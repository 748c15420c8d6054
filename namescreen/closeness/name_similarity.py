"""From words to names: how close two names are in each aspect, and overall.

Every name brings its divisions into words. For each pair of divisions the words are matched both ways, each word with
its best counterpart, and the matched share of either name's weight is taken: `less covered` is that of the name that
has less in common, `better covered` that of the other. Beside it the names run together are compared, for what only
the joint hides (thyme pot, thymepot). Weighted means, fitted (`model`), make the aspects and the whole of these.

Each part counts at its best over the pairs of divisions, so that one more way to read a name never makes it less close.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import product
from operator import mul
from typing import NamedTuple

from .appearance import Numbers, positive_part
from .features import Features, Word
from .letters import look
from .model import Model, shipped_model
from .sound import sound
from .vocabulary import TRANSLATED, english_readings, has_senses, meaning, spellings
from .weights import word_weight
from .word_similarity import SAID_OTHERWISE, word_similarity

__all__ = ["Parts", "Scores", "at_least_covered", "parts", "plain_words", "says_something", "score", "score_of_parts",
           "weights_of"]  # fmt: skip

LATER = 0.85
"""What each further word counts, as a share of the one before it: the first part of a mark weighs most (TMEP
1207.01(b); EUIPO Guidelines, part C, section 2, chapter 4). Size: common practice, no source; 0.7 and 1 do worse."""
SEEN, MEANT = 0.3, 0.7
"""What a word without weight still counts in look and sound, where it is seen and heard, and by its length in meaning,
where plain words say most. Of the tried values, those that fit the ratings best."""

ENOUGH = 0.7
"""What names that say the same word for word count at least, as a share of being the same, however different they look
and sound: similarity in one aspect can be enough (TMEP 1207.01(b)). Of 0.5 to 0.8 the one that serves decisions and
ratings together best."""
EVOKES = 0.3
"""The share of a name's meaning that a coined name must bring to mind or share for meaning to be judged at all; of two
coined names it is not judged."""

Side = tuple[Word, ...]
Grid = Sequence[Sequence[float]]


class Scores(NamedTuple):
    """Closeness of two names: each aspect and overall, in [0, 1], 1 = the same; symmetric.

    `meaning` is None where one name is coined and brings nothing of the other to mind, or both are coined; `sound`
    where one cannot be read aloud.
    """

    appearance: float
    sound: float | None
    meaning: float | None
    overall: float


class Parts(NamedTuple):
    """What the means are taken of, each in [0, 1]; pairs are (less covered, better covered).

    `sound` is that of the letters where one of the names cannot be read aloud (`heard` is then False).
    """

    look: float
    sound: float
    looks: tuple[float, float]
    sounds: tuple[float, float]
    meanings: tuple[float, float]
    elements: tuple[float, float]
    strongest: float
    heard: bool
    meant: bool


def score(one: Features, other: Features) -> Scores:
    """How close two names are. Symmetric; identical letters score 1 in every aspect; names without words 0."""
    if not one.segmentations or not other.segmentations:
        return Scores(0.0, 0.0, None, 0.0)
    if one.letters == other.letters:
        return Scores(1.0, 1.0, 1.0, 1.0)
    if other.letters < one.letters:  # sums run in one order, so that the result is symmetric to the last bit
        one, other = other, one
    return score_of_parts(parts(one, other), shipped_model())


def score_of_parts(found: Parts, model: Model) -> Scores:
    """The closeness that a model gives to two names with these parts."""
    # A sum of shares may end a last digit above 1.
    appearance = min(1.0, model.appearance(found.look, *found.looks))
    heard = min(1.0, model.sound_of_names(found.sound, *found.sounds, found.look))
    if found.heard and found.sound >= 1.0:
        heard = 1.0  # read alike from end to end, however the letters divide into words (4ever, forever)
    said = min(1.0, model.meaning(*found.meanings))
    overall = at_least_covered(model.overall(*found.elements, found.strongest, appearance, heard), found.elements[0])
    return Scores(appearance, heard if found.heard else None, said if found.meant else None, min(1.0, overall))


def at_least_covered(overall: Numbers, less_covered: Numbers) -> Numbers:
    """`overall`, at least `ENOUGH` times what both names have in common word for word."""
    return overall + positive_part(ENOUGH * less_covered - overall)


def parts(one: Features, other: Features) -> Parts:
    """The parts of the closeness of two names with words."""
    seen = look(one.letters, other.letters)
    heard = sound(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes)
    pairs = [_of_words(ours, theirs) for ours in one.segmentations for theirs in other.segmentations]
    best = pairs[0] if len(pairs) == 1 else tuple(map(max, *pairs))
    best = _as_translated(best, one.name.words, other.name.words)
    said = says_something(one.segmentations) + says_something(other.segmentations)
    return Parts(
        seen,
        seen if heard is None else heard,
        (best[0], best[1]),
        (best[2], best[3]),
        (best[4], best[5]),
        (best[6], best[7]),
        best[8],
        heard is not None,
        said == 2 or (said == 1 and best[5] >= EVOKES),
    )


def _of_words(ours: Side, theirs: Side) -> tuple[float, ...]:
    """The parts that rest on words, in one pair of divisions, one after another."""
    grid = [[word_similarity(word, match) for match in theirs] for word in ours]
    one, other = weights_of(ours), weights_of(theirs)
    together = [[pair.together for pair in row] for row in grid]
    return (
        *_covered([[pair.look for pair in row] for row in grid], one.seen, other.seen),
        *_covered([[pair.sound for pair in row] for row in grid], one.seen, other.seen),
        *_covered([[pair.meaning for pair in row] for row in grid], one.said, other.said),
        *_covered(together, one.counts, other.counts),
        max(
            value * min(weight, other_weight)
            for row, weight in zip(together, one.weight, strict=True)
            for value, other_weight in zip(row, other.weight, strict=True)
        ),
    )


def _as_translated(best: tuple[float, ...], words: tuple[str, ...], others: tuple[str, ...]) -> tuple[float, ...]:
    """The parts, with what one name as said in English has in common with the other, where words of it are foreign."""
    meanings, elements = best[4:6], best[6:8]
    for mine, written in ((words, others), (others, words)):
        readings = (spelled for said in english_readings(mine) for spelled in spellings(said))
        for said, yours in product(dict.fromkeys(readings), spellings(written)):
            table = [[TRANSLATED * (meaning(word, match) or 0.0) for match in yours] for word in said]
            one, other = weights_of(plain_words(said)), weights_of(plain_words(yours))
            meanings = _greater(meanings, _covered(table, one.said, other.said))
            counted = _covered(table, one.counts, other.counts)
            elements = _greater(elements, (SAID_OTHERWISE * counted[0], SAID_OTHERWISE * counted[1]))
    return (*best[:4], *meanings, *elements, *best[8:])


def _greater(one: tuple[float, ...], other: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(map(max, one, other))


@lru_cache(maxsize=1 << 14)
def plain_words(words: tuple[str, ...]) -> Side:
    """Words of which only the weight matters."""
    return tuple(Word(word, (), word_weight(word, ())) for word in words)


class _Weights(NamedTuple):
    """What each word of a name counts: by how distinctive it is (`weight`), and as shares of the name that sum to 1, in
    all (`counts`), in look and sound (`seen`) and in meaning (`said`)."""

    weight: tuple[float, ...]
    counts: tuple[float, ...]
    seen: tuple[float, ...]
    said: tuple[float, ...]


@lru_cache(maxsize=1 << 15)
def weights_of(words: Side) -> _Weights:
    """What each of some words counts."""
    weight = tuple([word.weight * LATER**place for place, word in enumerate(words)])
    seen = [(SEEN + (1 - SEEN) * word.weight) * LATER**place for place, word in enumerate(words)]
    said = [len(word.letters) * (MEANT + (1 - MEANT) * word.weight) * LATER**place for place, word in enumerate(words)]
    return _Weights(weight, *(tuple([one / sum(each) for one in each]) for each in (weight, seen, said)))


def _covered(table: Grid, shares: Sequence[float], other_shares: Sequence[float]) -> tuple[float, float]:
    """The matched shares of both names, the smaller first."""
    share = sum(map(mul, shares, map(max, table)))
    other_share = sum(map(mul, other_shares, map(max, zip(*table, strict=True))))
    return (share, other_share) if share <= other_share else (other_share, share)


@lru_cache(maxsize=1 << 15)
def says_something(segmentations: tuple[Side, ...]) -> bool:
    """Whether a name has a meaning: a word of it as written has one, or all parts of a closed word have; articles and
    initials have none."""
    telling = [[len(word.letters) > 2 and has_senses(word.letters) for word in words] for words in segmentations]
    return any(telling[0]) or any(map(all, telling))
