"""From words to names: how close two names are in each aspect, and overall.

Every name has up to three segmentations. For each pair of them the words are matched both ways, each word with its best
counterpart, and the matched share of each name's weight is taken: `less covered` is that of the name with less in
common, `better covered` that of the other. The unspaced names are compared too, because spaces may hide a similarity
(thyme pot, thymepot). Fitted weighted means of these parts (`model`) give the aspects and the overall closeness. Each
part counts at its best over the pairs of segmentations, so that a further segmentation never makes a name less close.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import product
from math import prod
from operator import mul
from typing import NamedTuple

from ..lexicon import broken_phrases, kinds
from .appearance import Numbers, above_floor, positive_part
from .features import Features, Word
from .letters import in_any_order, look, spelled_alike
from .model import shipped_model
from .parts import Parts, Scores, score_of_parts
from .sound import FLOOR, LETTERS, LETTERS_OF_NAME, sound
from .vocabulary import TRANSLATED, all_known, content_words, english_readings, has_senses, spellings
from .weights import LEAST, word_weight
from .word_meaning import meaning
from .word_similarity import SAID_OTHERWISE, word_similarity

__all__ = ["is_one_coined_word", "is_one_known_word", "meant_as_heard", "meant_by_sound", "parts", "plain_words",
           "said_in_english", "says_something", "score", "shared_meaning", "weights_of"]  # fmt: skip

LATER, LATER_IN_SENSE = 0.85, 0.93
"""The weight of each further word, as a share of the one before it: the first part of a mark weighs most (TMEP
1207.01(b); EUIPO Guidelines, part C, section 2, chapter 4). Size: common practice, no source; 0.7 and 1 do worse.
In dominance and meaning: what fits best how a reader divides names, and the ratings of meaning."""
LEAST_IN_FORM, LEAST_IN_MEANING = 0.3, 0.85
"""The weight of a word without distinctiveness in look and sound, where it is still seen and heard, and (times its
length) in meaning, where plain words say most. Of the values tried, those that fit the ratings best."""

SAYS_NOTHING = 0.7
"""What the length of a word that says nothing counts in meaning. Of 0.1 to 1 the value that fits the ratings best."""
UNTRANSLATED = 1e-6
"""The same of an article, a preposition or another function word where one name is said in another language, which has
them in other places, or none."""

MEANT_FROM = 0.95
"""The similarity in sound from which a name that is not all of known words has the meaning of known words that it is
heard as: a misspelling that is heard as a word has its meaning (TMEP 1209.03(j)). With it the meaning of invented pairs
is told better (rank correlation held out 0.71; 0.69 without), of others as well; from 0.9 on worse."""
JUDGED_FROM = 0.3
"""The share of the meaning of a name that two names must have in common for meaning to be judged at all if one of them
or both are coined: by a word that both have, whatever it means, or one that is recalled."""

MOST_PAIRS = 1 << 13
"""Pairs of names of which is kept what does not rest on the goods: a pair is scored without goods, for them, and again
where its reasons are told."""

Side = tuple[Word, ...]
Grid = Sequence[Sequence[float]]


def score(one: Features, other: Features) -> Scores:
    """How close two names are. Symmetric; identical letters score 1 in every aspect; names without words 0."""
    if not one.segmentations or not other.segmentations:
        return Scores(0.0, 0.0, None, 0.0)
    if one.letters == other.letters:
        return Scores(1.0, 1.0, 1.0, 1.0)
    if other.letters < one.letters:  # sums run in one order, so that the result is symmetric to the last bit
        one, other = other, one
    return score_of_parts(parts(one, other), shipped_model())


def parts(one: Features, other: Features) -> Parts:
    """The parts of the closeness of two names with words."""
    looks, spelled = _written(one.letters, other.letters)
    heard = heard_as_wholes(one, other)
    pairs = [_of_words(ours, theirs) for ours in one.segmentations for theirs in other.segmentations]
    best = pairs[0] if len(pairs) == 1 else tuple(map(max, *pairs))
    translated = _translated(one.name.words, other.name.words)
    best = (*best[:4], *map(max, best[4:8], translated), *best[8:])
    said = says_something(one.segmentations) + says_something(other.segmentations)
    as_heard = meant_as_heard(one, other)
    meanings = (max(best[4], as_heard), max(best[5], as_heard))
    return Parts(
        looks,
        looks if heard is None else heard,
        spelled,
        in_any_order(one.name.words, other.name.words),
        (best[0], best[1]),
        (best[2], best[3]),
        meanings,
        (best[6], best[7]),
        best[8],
        best[9],
        heard is not None,
        said == 2 or meanings[1] >= JUDGED_FROM,
        bool(broken_phrases(one.name.words, other.name.words)),
        len(one.name.words) != len(other.name.words),
        not content_words(one.name.words).isdisjoint(content_words(other.name.words)),
        translated[0],
        is_one_coined_word(one.name.words) and is_one_coined_word(other.name.words),
    )


@lru_cache(maxsize=MOST_PAIRS)
def _written(letters: str, others: str) -> tuple[float, float]:
    return look(letters, others), spelled_alike(letters, others)


_heard = lru_cache(maxsize=MOST_PAIRS)(sound)


def heard_as_wholes(one: Features, other: Features) -> float | None:
    """The similarity in sound of two names run together; None if one cannot be read aloud."""
    share = LETTERS if is_one_known_word(one.name.words) and is_one_known_word(other.name.words) else LETTERS_OF_NAME
    return _heard(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes, share)


def meant_as_heard(one: Features, other: Features) -> float:
    """`meant_by_sound` of two names."""
    if all_known(one.name.words) == all_known(other.name.words):
        return 0.0
    return float(meant_by_sound(heard_as_wholes(one, other) or 0.0, 1.0))


def is_one_known_word(words: tuple[str, ...]) -> bool:
    """Whether a name is a single word of the lexicon."""
    return len(words) == 1 and all_known(words)


def is_one_coined_word(words: tuple[str, ...]) -> bool:
    """Whether a name is a single word that is not of the lexicon."""
    return len(words) == 1 and not all_known(words)


def meant_by_sound(sound: Numbers, one_is_known: Numbers) -> Numbers:
    """The share of meaning that two names have in common because one of them is heard as the other, in [0, 1]: by their
    similarity in sound, where just one of them has known words alone."""
    return positive_part((sound - MEANT_FROM) / (1 - MEANT_FROM)) * one_is_known


def _of_words(ours: Side, theirs: Side) -> tuple[float, ...]:
    """The parts that rest on words, for one pair of segmentations, one after another."""
    grid = [[word_similarity(word, match) for match in theirs] for word in ours]
    one, other = weights_of(ours), weights_of(theirs)
    together = [[pair.overall for pair in row] for row in grid]
    covered = _covered(together, one.counts, other.counts)
    heard = [[pair.sound for pair in row] for row in grid]
    recognised = [[above_floor(sound, FLOOR) for sound in row] for row in heard]
    return (
        *_covered([[pair.look for pair in row] for row in grid], one.in_form, other.in_form),
        _covered(heard, one.in_form, other.in_form)[0],
        _covered(recognised, one.in_form, other.in_form)[1],
        *_covered([[pair.meaning for pair in row] for row in grid], one.in_meaning, other.in_meaning),
        *covered,
        _shared(together, one.weight, other.weight),
        covered[1] * (1 - min(_left_over(together, one.weight), _left_over(zip(*together, strict=True), other.weight))),
    )


def _shared(table: Grid, weights: Sequence[float], others: Sequence[float]) -> float:
    """The strength of what two names share (`Parts.shared`)."""
    strengths = [
        [value * min(weight, other) for value, other in zip(row, others, strict=True)]
        for row, weight in zip(table, weights, strict=True)
    ]
    apart = [prod(1 - max(each) for each in lines) for lines in (strengths, zip(*strengths, strict=True))]
    return 1 - max(apart)


def _left_over(table: Iterable[Sequence[float]], weights: Sequence[float]) -> float:
    """The weight of the strongest word without a counterpart, in [0, 1]."""
    return max(weight * (1 - max(row)) for row, weight in zip(table, weights, strict=True))


@lru_cache(maxsize=MOST_PAIRS)
def _translated(words: tuple[str, ...], others: tuple[str, ...]) -> tuple[float, ...]:
    """What the English reading of one name, if words of it are foreign, has in common with the other: in meaning, and
    word for word, each less covered and better covered; zeros where there is none."""
    meanings: tuple[float, ...] = (0.0, 0.0)
    elements: tuple[float, ...] = (0.0, 0.0)
    ways = [*said_in_english(words, others), *said_in_english(others, words)]
    pairs = dict.fromkeys(pair for said, yours in ways for pair in product(said, yours))
    alike = {pair: TRANSLATED * value for pair in pairs if (value := meaning(*pair))}
    for said, yours in ways:
        table = [[alike.get((word, match), 0.0) for match in yours] for word in said] if alike else []
        if not any(map(any, table)):  # most: to weigh their words would cost more than all the rest
            continue
        one, other = plain_weights(said), plain_weights(yours)
        meanings = _greater(meanings, _covered(table, one.in_translation, other.in_translation))
        counted = _covered(table, one.counts, other.counts)
        elements = _greater(elements, (SAID_OTHERWISE * counted[0], SAID_OTHERWISE * counted[1]))
    return *meanings, *elements


def said_in_english(words: tuple[str, ...], others: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], ...]]:
    """The English readings of a name, if words of it are foreign, each beside the other name as it may be spelled."""
    readings = (spelled for said in english_readings(words) for spelled in spellings(said))
    return product(dict.fromkeys(readings), spellings(others))


def shared_meaning(said: tuple[str, ...], others: tuple[str, ...]) -> float:
    """What an English reading of one name has in common with another name in meaning, less covered, in [0, 1]."""
    one, other = plain_weights(said), plain_weights(others)
    return _covered(_meanings(said, others), one.in_translation, other.in_translation)[0]


def _meanings(said: tuple[str, ...], others: tuple[str, ...]) -> Grid:
    return [[TRANSLATED * (meaning(word, match) or 0.0) for match in others] for word in said]


def _greater(one: tuple[float, ...], other: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(map(max, one, other))


@lru_cache(maxsize=1 << 14)
def plain_words(words: tuple[str, ...]) -> Side:
    """Words without phoneme codes, where only the weights matter."""
    return tuple(Word(word, (), word_weight(word, ())) for word in words)


class _Weights(NamedTuple):
    """The weights of the words of a name: the strength of each, at most its dominance as a share of the greatest
    (`weight`), and shares that sum to 1: by dominance (`counts`), in look and sound (`in_form`), in meaning
    (`in_meaning`) and as said in another language."""

    weight: tuple[float, ...]
    counts: tuple[float, ...]
    in_form: tuple[float, ...]
    in_meaning: tuple[float, ...]
    in_translation: tuple[float, ...]


@lru_cache(maxsize=1 << 15)
def said_length(word: str, translated: bool = False) -> float:
    """The length of `word` as it counts in meaning: that of a word that says nothing (the, and, inc) is cut, and where
    names are compared as `translated`, that of a function word to next to nothing."""
    if word_weight(word).strength > LEAST:
        return len(word)
    return len(word) * (UNTRANSLATED if translated and "function word" in kinds(word) else SAYS_NOTHING)


@lru_cache(maxsize=1 << 15)
def weights_of(words: Side) -> _Weights:
    """The weights of some words."""
    later = [LATER**place for place in range(len(words))]
    in_sense = [LATER_IN_SENSE**place for place in range(len(words))]
    counts = [word.weight.dominance * share for word, share in zip(words, in_sense, strict=True)]
    most = max(word.weight.dominance for word in words)
    own = [min(word.weight.strength, word.weight.dominance / most) for word in words]
    weight = tuple(map(mul, own, later))
    in_form = [
        (LEAST_IN_FORM + (1 - LEAST_IN_FORM) * word.weight.strength) * share
        for word, share in zip(words, later, strict=True)
    ]
    in_meaning, in_translation = (
        [
            said_length(word.letters, translated)
            * (LEAST_IN_MEANING + (1 - LEAST_IN_MEANING) * word.weight.strength)
            * share
            for word, share in zip(words, in_sense, strict=True)
        ]
        for translated in (False, True)
    )
    shares = counts, in_form, in_meaning, in_translation
    return _Weights(weight, *(tuple([one / sum(each) for one in each]) for each in shares))


@lru_cache(maxsize=1 << 14)
def plain_weights(words: tuple[str, ...]) -> _Weights:
    """`weights_of` the `plain_words`."""
    return weights_of(plain_words(words))


def _covered(table: Grid, shares: Sequence[float], other_shares: Sequence[float]) -> tuple[float, float]:
    """The matched shares of both names, the smaller first."""
    share = sum(map(mul, shares, map(max, table)))
    other_share = sum(map(mul, other_shares, map(max, zip(*table, strict=True))))
    return (share, other_share) if share <= other_share else (other_share, share)


@lru_cache(maxsize=1 << 15)
def says_something(segmentations: tuple[Side, ...]) -> bool:
    """Whether a name has a meaning: a word of it as written has one, or all parts of a closed word have; articles and
    initials have none."""
    meaningful = [[len(word.letters) > 2 and has_senses(word.letters) for word in words] for words in segmentations]
    return any(meaningful[0]) or any(map(all, meaningful))
