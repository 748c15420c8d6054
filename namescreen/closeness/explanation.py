"""Why two names are as close as they are: what was compared with what, in words that a reader can check."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from rapidfuzz.distance import Levenshtein

from ..lexicon import broken_phrases, kinds
from ..lexicon.foreign_phrases import phrase_equivalents
from ..lexicon.translation import listed_translations
from ..plain_text import some
from ..pronunciation import Pronunciation, align, closest_similarity, pronounce_words, say
from ..text import Name
from .features import Features, Word
from .name_similarity import meant_as_heard, said_in_english, shared_meaning
from .parts import Scores
from .reason import About, Reason
from .said_abroad import name_abroad
from .sound import readings_of
from .vocabulary import ARTICLES, all_known
from .word_meaning import are_opposite, meaning
from .word_similarity import SAME_MEANING, word_similarity

__all__ = ["Explanation", "Pair", "explain", "reasons"]

CLOSE, PARTLY = 0.7, 0.4
"""The scores from which an aspect is called close, or alike in part. Common practice, no source: words for bands of a
score."""

CARRIES = 0.6
"""The share of meaning in common from which an English reading of a foreign name is told: it carries the finding."""

WEAK = 0.3
"""The strength below which a word that both names have is told as weak. Common practice, no source."""

UNREAD = "a name in this script cannot be read aloud here"
COINED = "a coined name has no meaning that could be compared"
SAME_LETTERS = Reason(
    "The same letters in the same order; only spacing, case, accents or punctuation may differ.", About.SAME
)
"""The reason of names that are the same."""
COINED_MEANING = Reason(f"Meaning: not checked, {COINED}.", About.MEANING)

Side = tuple[Word, ...]
Aligned = tuple[tuple[str | None, str | None], ...]


class Pair(NamedTuple):
    """A word of one name, how much it counts, and its best counterpart in the other (None if it has none)."""

    word: str
    weight: float
    counterpart: str | None
    closeness: float
    meaning: float | None


class Explanation(NamedTuple):
    """The evidence behind one comparison.

    `letters` and `sounds` are the two names aligned, place by place, None for a gap; `readings` how each name
    was read aloud, empty if it was not; `pairs` the words of each name with their counterparts; `sentences` one
    an aspect.
    """

    letters: Aligned
    sounds: Aligned
    readings: tuple[str, str]
    pairs: tuple[tuple[Pair, ...], tuple[Pair, ...]]
    sentences: tuple[str, ...]


def explain(one: Features, other: Features, scores: Scores) -> Explanation:
    """The evidence for the `scores` of two names; both must have words."""
    ours, theirs = closest_divisions(one, other)
    # A name in another script may have no reading here.
    heard = (
        [reading.phones for reading in _closest_readings(one, other)]
        if one.phoneme_codes and other.phoneme_codes
        else []
    )
    return Explanation(
        _align_letters(one.letters, other.letters),
        tuple((mine, yours) for mine, yours, _ in align(*heard)) if heard else (),
        (say(heard[0]), say(heard[1])) if heard else ("", ""),
        (_pairs(ours, theirs), _pairs(theirs, ours)),
        reasons(one, other, scores),
    )


def closest_divisions(one: Features, other: Features) -> tuple[Side, Side]:
    """The pair of segmentations in which the two names have most in common."""
    if len(one.segmentations) == 1 == len(other.segmentations):
        return one.segmentations[0], other.segmentations[0]

    return max(((ours, theirs) for ours in one.segmentations for theirs in other.segmentations), key=_shared)


def _shared(pair: tuple[Side, Side]) -> float:
    """What two names divided so have in common, of the name with less in common."""
    ours, theirs = pair
    alike = [[word_similarity(word, match).overall for match in theirs] for word in ours]
    return min(_share(ours, alike), _share(theirs, zip(*alike, strict=True)))


def _share(words: Side, alike: Iterable[Sequence[float]]) -> float:
    hits = sum(word.weight.strength * max(row) for word, row in zip(words, alike, strict=True))
    return hits / sum(word.weight.strength for word in words)


@lru_cache(maxsize=1 << 8)
def _all_readings(name: Name) -> tuple[Pronunciation, ...]:
    """The ways to read a name aloud that are told of."""
    if len(name.words) == 1:
        return readings_of(name.words[0])
    said = (reading for way in name.spoken for reading in pronounce_words(way))
    return (*said, *filter(None, [name_abroad(name.words)]))


def _closest_readings(one: Features, other: Features) -> tuple[Pronunciation, Pronunciation]:
    ours, theirs = _all_readings(one.name), _all_readings(other.name)
    codes = tuple([yours.code for yours in theirs])
    alike = [closest_similarity((mine.code,), codes) for mine in ours]
    most = max(alike)
    pairs = product((mine for mine, value in zip(ours, alike, strict=True) if value == most), theirs)
    closest = [(mine, yours) for mine, yours in pairs if closest_similarity((mine.code,), (yours.code,)) == most]
    return closest[0] if len(closest) == 1 else max(closest, key=lambda pair: _said_alike(*pair))


def _said_alike(one: Pronunciation, other: Pronunciation) -> bool:
    """Whether two readings are told alike, but for the stress."""
    return say(one.phones).casefold() == say(other.phones).casefold()


def _align_letters(one: str, other: str) -> Aligned:
    pairs: list[tuple[str | None, str | None]] = []
    for step in Levenshtein.opcodes(one, other):
        mine: list[str | None] = list(one[step.src_start : step.src_end])
        yours: list[str | None] = list(other[step.dest_start : step.dest_end])
        longest = max(len(mine), len(yours))
        mine += [None] * (longest - len(mine))
        yours += [None] * (longest - len(yours))
        pairs += zip(mine, yours, strict=True)
    return tuple(pairs)


def _pairs(ours: Side, theirs: Side) -> tuple[Pair, ...]:
    found = []
    for word in ours:
        best = max(theirs, key=lambda match: word_similarity(word, match).overall)
        value = word_similarity(word, best).overall
        found.append(
            Pair(
                word.letters,
                round(word.weight.strength, 2),
                best.letters if value > 0 else None,
                round(value, 3),
                meaning(word.letters, best.letters) if value > 0 else None,
            )
        )
    return tuple(found)


def reasons(one: Features, other: Features, scores: Scores) -> tuple[str, ...]:
    """One plain sentence an aspect, and one for what weighs most."""
    if not one.segmentations or not other.segmentations:
        return ("One of the names has no letters or digits to compare.",)
    if one.letters == other.letters:
        return (SAME_LETTERS,)
    ours, theirs = closest_divisions(one, other)
    return tuple(
        sentence
        for sentence in (
            _about_words(ours, theirs, one.name.words, other.name.words),
            _about_phrases(one, other),
            Reason(
                f"Appearance: {_band(scores.appearance)}{_beginning(one.letters, other.letters)}.", About.APPEARANCE
            ),
            _about_sound(one, other, scores),
            _about_meaning(ours, theirs, scores, _heard_as(one, other)),
            _about_languages(one, other) or _about_languages(other, one) if _may_be_translated(scores) else "",
            _about_strength(ours, theirs, {*one.name.words} & {*other.name.words}),
        )
        if sentence
    )


def _band(value: float) -> str:
    return "close" if value >= CLOSE else "alike in part" if value >= PARTLY else "little alike"


def _beginning(one: str, other: str) -> str:
    length = next(
        (place for place, (mine, yours) in enumerate(zip(one, other, strict=False)) if mine != yours),
        min(len(one), len(other)),
    )
    if one in other or other in one:
        inner, outer = sorted((one, other), key=len)
        return f'; "{inner}" stands whole inside "{outer}"'
    return f', both begin with "{one[:length]}"' if length >= 2 else ""


def _about_sound(one: Features, other: Features, scores: Scores) -> str:
    if scores.sound is None:
        return Reason(f"Sound: unknown, {UNREAD}.", About.SOUND)
    if scores.sound < PARTLY:
        return Reason(f"Sound: {_band(scores.sound)}.", About.SOUND)
    closest = _closest_readings(one, other)
    first, second = (say(reading.phones) for reading in closest)
    if scores.sound < 1:
        return Reason(f"Sound: {_band(scores.sound)} ({first} / {second}).", About.SOUND, (first, second))
    if _said_alike(*closest):
        return Reason(f"Sound: sounds the same ({first}).", About.SOUND, (first,))
    return Reason("Sound: sounds the same, as some will say both.", About.SOUND)


def _about_words(ours: Side, theirs: Side, words: Sequence[str], others: Sequence[str]) -> str:
    """The words that both have; one that stands whole in both is not told in the parts it may be divided in. What is
    only a part of a word in both may stand there by chance, and is told as that."""
    whole = [word for word in words if word in others]
    parts = [word.letters for word in ours if any(word.letters == match.letters for match in theirs)]
    same = [*whole, *(part for part in parts if not any(part in word for word in whole))]
    if len(ours) > 1 and sorted(word.letters for word in ours) == sorted(word.letters for word in theirs):
        return "The same words in another order."
    if same and len(ours) + len(theirs) > 2:
        inside = [f'"{part}"' for part in dict.fromkeys(same) if part not in words and part not in others]
        shared = [f'"{word}"' for word in dict.fromkeys(same) if word in words or word in others]
        told = [f"Shared: {', '.join(shared)}."] if shared else []
        parts_told = [f"Both hold {some(inside)} inside a word."] if inside else []
        return Reason(" ".join(told + parts_told), About.SHARED if shared else About.INSIDE)
    return ""


def _about_phrases(one: Features, other: Features) -> str:
    broken = broken_phrases(one.name.words, other.name.words)
    told = dict.fromkeys(f'"{" ".join(phrase)}"' for phrase in broken)
    return f"{some(told)} may be read as a phrase with a meaning of its own." if told else ""


def _heard_as(one: Features, other: Features) -> str:
    """Which name may mean what the other says, since it is heard as that; "" if none."""
    if not meant_as_heard(one, other):
        return ""
    known, coined = (each.name.text for each in sorted((one, other), key=lambda each: not all_known(each.name.words)))
    return f'"{coined}" may be heard as "{known}"'


def _about_meaning(ours: Side, theirs: Side, scores: Scores, heard_as: str) -> str:
    if scores.meaning is None:
        return COINED_MEANING
    similar = dict.fromkeys(
        f'"{word.letters}" and "{match.letters}"'
        for word in ours
        for match in theirs
        if word.letters != match.letters and (meaning(word.letters, match.letters) or 0) >= SAME_MEANING
    )
    opposite = dict.fromkeys(
        f'"{word.letters}" and "{match.letters}"'
        for word in ours
        for match in theirs
        if are_opposite(word.letters, match.letters)
    )
    told = [f"{some(similar)} say something alike"] if similar and not heard_as else []
    told += [f"{some(opposite)} are opposites, which share an idea and do not say the same"] if opposite else []
    told += [heard_as] if heard_as else []
    telling = About.WHAT_IS_SAID if (similar and not heard_as) or opposite else About.MEANING
    return Reason(f"Meaning: {_band(scores.meaning)}{': ' if told else ''}{'; '.join(told)}.", telling)


def _may_be_translated(scores: Scores) -> bool:
    """Whether an English reading of one name has so much in common with the other that it carries their closeness in
    meaning (`CARRIES`)."""
    return scores.meaning is not None and scores.translated >= CARRIES - 1e-9


def _about_languages(one: Features, other: Features) -> str:
    """What a foreign name says in English, where one language has all of it, and that carries the closeness in
    meaning; and which words that both then have say little of the maker."""
    words = one.name.words
    read = (way for way in said_in_english(words, other.name.words) if _in_one_language(words, way[0]))
    said, written = max(read, key=lambda way: shared_meaning(*way), default=((), ()))
    if not said or shared_meaning(said, written) < max(CARRIES, shared_meaning(words, other.name.words)):
        return ""
    weak = [
        f'"{word.letters}"'
        for word in other.segmentations[0]
        if word.weight.strength < WEAK and any((meaning(word.letters, match) or 0) >= SAME_MEANING for match in said)
    ]
    told = f"; {some(weak)} {'says' if len(weak) == 1 else 'say'} little of the maker" if weak else ""
    read_so = _in_our_order(_without_small_words(said), other.name.words)
    if len(read_so) > len(words) + 1:  # a compound has two parts; more than that is a name that was cut by chance
        return ""
    own, english = " ".join(words), " ".join(read_so)
    return Reason(f'In translation "{own}" may be read as "{english}"{told}.', About.TRANSLATION)


def _in_our_order(said: list[str], ours: Sequence[str]) -> list[str]:
    """The words of a translation in the order of a name that has the same: other languages order them otherwise."""
    return [*ours] if sorted(said) == sorted(ours) else said


def _in_one_language(words: Sequence[str], said: Sequence[str]) -> bool:
    """Whether one language has every content word of a name, and what it `said` in English is what they mean there."""
    if any(one.english.split() == list(said) for one in phrase_equivalents(tuple(words))):
        return True
    heard = set(said)
    spoken = [
        {one.language for one in listed_translations(word, compounds=True) if heard.issuperset(one.english.split())}
        for word in _without_small_words(words)
    ]
    return bool(spoken) and bool(set.intersection(*spoken))


def _without_small_words(words: Sequence[str]) -> list[str]:
    """Words without articles and the like, which one language has and another has not."""
    return [word for word in words if word not in ARTICLES and "function word" not in kinds(word)]


def _about_strength(ours: Side, theirs: Side, whole: set[str]) -> str:
    """Which words that both have are weak; of a word that both have `whole` no part is one."""
    weak = [
        word.letters
        for word in ours
        if word.weight.strength < WEAK
        and any(word.letters == match.letters for match in theirs)
        and not any(word.letters != one and word.letters in one for one in whole)
    ]
    if weak:
        told = ", ".join(f'"{word}"' for word in weak)
        return Reason(f"Weak in this field or in common use, so it counts less: {told}.", About.WEAK, tuple(weak))
    return ""
