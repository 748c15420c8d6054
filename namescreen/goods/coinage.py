"""Words that are in no dictionary: misspellings of descriptive words, closed compounds, or truly coined words.

A misspelling that sounds like a describing word is as descriptive as that word (TMEP 1209.03(j)); a
compound or blend of describing parts is, too, unless it makes something new of them (TMEP 1209.03(d))."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds, lexicon, words_of_kind, zipf
from ..tables import open_table
from ..text import best_split
from .context import context
from .description import KEPT_AWAY, NOTHING, Evidence, EvidenceKind, in_context
from .kept_off import GUARDS, keep_off
from .phrases import base_form
from .places import place_of
from .proper_names import is_trade_name
from .respelt import compounds, respellings
from .spelt_by_ear import without_vowels
from .trade_table import is_term
from .trade_words import term_for

__all__ = [
    "SOUNDS_LIKE",
    "as_heard",
    "as_respelt",
    "divided",
    "heard_as",
    "heard_word",
    "is_coined",
    "sounds_alike",
    "understood",
]  # fmt: skip

LEAST_PART = 4
PLAIN = 0.8
"""Weight in the context of the goods from which a part of three letters is seen in a word; chosen, not fitted."""
IN_COMPOUND, EVERYDAY = 2.5, 4.0
"""Zipf values from which a word of four letters or more, and one of three, are seen in a compound: ember, fox."""
KNOWN_TO_READERS = 3.0
"""Zipf value from which readers know a quality, and may hear it in a misspelling; as in `closeness.respelling`."""
LEAST_DESCRIBING = 0.4
"""Weight in the context of the goods from which a word describes them, so that an unknown word may be a variant."""
SOUNDS_LIKE = 0.88
LONG, LONG_SOUNDS_LIKE = 6, 0.84
"""Similarity in sound from which one word is heard as the other: eggstra and extra have 0.90, lite and lit 0.85; of
long words, which few others are like, less is enough: bysicle and bicycle have 0.85."""
RESPELT_SOUNDS_LIKE = 0.81
"""The same of a word that is respelt as traders do, letter by letter: shyld and shield have 0.82."""
KNOWN_SOUNDS_LIKE = 0.97
"""The same of a word that is known itself, and means something else: a petal is no pedal, a doe is heard as dough."""
RESPELT = 0.85
"""How plainly a part of a closed word must describe the goods as it is heard, beside another that does; chosen, not
fitted."""
PART_TELLS, SHORTEST_HEARD = 0.5, 3
"""How plainly each part of a closed word must describe the goods where they are only heard, and its fewest
letters; chosen, not fitted."""
ONSETS = frozenset("bcdfgklmnprstvz")
"""Consonants that are read as they are written before another sound."""
WHOLE_PHRASE = 20.0
"""More than any other way to divide a word scores: what is kept off, and what guards against it
(windstopper). Chosen, not fitted."""
MOSTLY = 0.7
"""The share of an unknown word from which the describing word in it says as much as alone; less only hints at it, as
Snugglo at snug: buyers must take it apart (TMEP 1209.01(a), suggestive)."""
_ENDINGS = frozenset(("kin", "let", "ling", "most", "some", "ward", "wise"))
"""Living endings (H. Marchand, Categories and Types of Present-Day English Word-Formation, 1969) that are also words:
nobody reads the word in them (booklet is no book that lets)."""
_SHORT_STARTS = frozenset(("no", "my", "go", "we", "up", "re", "on", "in"))


@lru_cache(maxsize=1 << 14)
def is_coined(word: str) -> bool:
    """Whether the folded `word` is in no word list as an ordinary word: not a lemma, place, name or common
    form, nor one of the rare words that brainstorming knows the meaning of."""
    if lexicon().known(word):
        return is_trade_name(word)
    return not (
        kinds(word) - {"surname"} or place_of(word) or is_term(word) or f"find {word}" in open_table("naming_ideas.tsv")
    )


@lru_cache(maxsize=1 << 13)
def understood(word: str, goods: str) -> Evidence:
    """What a reader may understand by the unknown `word`: a variant of a describing word, parts of some, or
    nothing."""
    if is_trade_name(word):
        return NOTHING
    return max(heard_as(word, goods), _blended(word, goods), key=lambda evidence: evidence.weight)


@lru_cache(maxsize=1 << 13)
def divided(word: str, goods: str) -> tuple[str, ...]:
    """An unknown word as the two words it is made of (herbpot: herb, pot), if a reader would recognise them.

    Both parts are words in their own right; either both are common, or one of them belongs to the goods.
    "No" and the like may stand before (nodrip: no, drip)."""
    if not is_coined(word) or is_trade_name(word) or not word.isascii():
        return (word,)

    def score(*parts: str) -> float | None:
        first, second = map(len, parts)
        if parts[1] in GUARDS and keep_off(parts[0], goods):
            return WHOLE_PHRASE
        if second < 3 or parts[1] in _ENDINGS or (first == 2 and parts[0] not in _SHORT_STARTS):
            return None
        if not (
            all(_is_part(part, goods) for part in parts)
            or _holds_goods_word(parts, goods)
            or _is_respelt(parts, goods)
            or _all_heard(parts, goods)
        ):
            return None
        common = min(zipf(part) for part in parts)
        tied = max(_tie(part, goods) for part in parts)
        seen = (len(part) >= LEAST_PART or zipf(part) >= EVERYDAY for part in parts)  # sapone is no sap
        whole = common >= IN_COMPOUND and all(seen)
        return common + 3 * tied + min(first, second) / 4 if whole or tied >= 0.6 else None

    return best_split(word, score) or (word,)


def _tie(part: str, goods: str) -> float:
    near = context(goods).near.get(part)
    return max(near.weight if near is not None else 0.0, heard_as(part, goods).weight)


def _holds_goods_word(parts: tuple[str, ...], goods: str) -> bool:
    """Whether the last part is the word for the goods, and the first any word of a dictionary: a loiterbag is a bag."""
    first, last = parts
    near = context(goods).near.get(last)
    return near is not None and near.weight == 1 and len(first) >= LEAST_PART and lexicon().is_lemma(first)


def _is_respelt(parts: tuple[str, ...], goods: str) -> bool:
    """Whether one of two parts is a word for the goods, and the other is heard as one (bath, sope); or any word beside
    one that is heard as what the goods name (sope, craft)."""
    near = context(goods).near

    def beside(own: str, heard: float) -> bool:
        for_goods = own in near and near[own].weight >= PLAIN
        return heard >= (RESPELT if for_goods else PLAIN) and (for_goods or _is_part(own, goods))

    return any(
        len(other) >= LEAST_PART and not lexicon().known(other) and beside(own, heard_as(other, goods).weight)
        for own, other in (parts, parts[::-1])
    )


def _all_heard(parts: tuple[str, ...], goods: str) -> bool:
    """Whether every part describes the goods, as it is written or as a word that it sounds just like: kwik dri, krisp
    krust."""
    def tells(part: str) -> bool:
        exactly = lexicon().known(part) or heard_word(part, goods) in _homophones(part)
        said = _tie(part, goods) >= PART_TELLS or bool(kinds(part) & {"quality", "laudatory"})
        return exactly and said and part[0] not in part[1:2]

    return min(map(len, parts)) >= SHORTEST_HEARD and all(map(tells, parts))


def _is_part(part: str, goods: str) -> bool:
    near = context(goods).near.get(part)
    if near is not None and (len(part) > 3 or near.weight >= PLAIN):
        return True
    if kinds(part) & {"quality", "laudatory", "company form", "function word"}:
        return True
    senses = lexicon().senses(part, labelled=False)
    if len(part) < 3 or zipf(part) < 2.5 or not senses or senses[0].words[0].isupper():
        return False
    common = lexicon().is_lemma(part) and any(sense.count for sense in senses)
    return len(part) > 3 or common  # bel and ora are words, but nobody sees them in others


@lru_cache(maxsize=256)
def _qualities(goods: str) -> dict[str, float]:
    """Words for qualities that goods of this kind may have, with their weight."""
    of_kind = ("laudatory", "quality", "taste") if context(goods).food else ("laudatory", "quality")
    known = (word for kind in of_kind for word in words_of_kind(kind) if zipf(word) >= KNOWN_TO_READERS)
    return dict.fromkeys((*known, *KEPT_AWAY), 0.7)


@lru_cache(maxsize=1 << 13)
def _describing(word: str, goods: str) -> float:
    """How plainly a word describes the goods: what an unknown word might be a variant of; 0 if it does not."""
    told = context(goods).near.get(word)
    weight = in_context(Evidence(told.weight), word, goods).weight if told is not None and _tells(word, goods) else 0.0
    return max(weight if weight >= LEAST_DESCRIBING else 0.0, _qualities(goods).get(word, 0.0))


def _tells(word: str, goods: str) -> bool:
    """Whether a word in the context of the goods may describe them: asked of all, as `in_context` costs much."""
    return context(goods).near[word].weight >= LEAST_DESCRIBING and " " not in word and len(word) >= 3


@lru_cache(maxsize=256)
def _vicinity(goods: str) -> tuple[str, ...]:
    """Words that may describe the goods; `_describing` tells whether they do."""
    told = (word for word in context(goods).near if _tells(word, goods))
    return tuple(dict.fromkeys((*_qualities(goods), *told)))


@lru_cache(maxsize=256)
def _by_sound(goods: str) -> dict[str, list[str]]:
    """The vicinity by the rough consonant code of jellyfish's metaphone, to look sounds up by."""
    from jellyfish import metaphone

    found: dict[str, list[str]] = {}
    for word in _vicinity(goods):
        found.setdefault(metaphone(word), []).append(word)
    return found


@lru_cache(maxsize=256)
def _own_words(goods: str) -> tuple[str, ...]:
    """The words that name the goods, with which every word is compared, whatever its code (Panyer, pannier)."""
    return tuple(one.word for one in context(goods).words if one.head and _describing(one.word, goods))


def heard_as(word: str, goods: str) -> Evidence:
    """The describing word that `word` sounds like, if there is one (TMEP 1209.03(j)); plurals of it as well."""
    return _heard(word, goods)[1]


def heard_word(word: str, goods: str) -> str:
    """The word of `heard_as`; "" if there is none."""
    return _heard(word, goods)[0]


@lru_cache(maxsize=1 << 13)
def _heard(word: str, goods: str) -> tuple[str, Evidence]:
    best, heard = NOTHING, ""
    own = context(goods).near.get(word)
    if (own is not None and own.weight >= PLAIN) or place_of(word) is not None:  # as in the goods, or a place
        return heard, best
    if bones := without_vowels(word, _vicinity(goods), _own_words(goods)):
        weight = 0.95 * _describing(bones, goods)
        why = f'is "{bones}" without its vowels'
        return bones, Evidence(weight, why, kind=EvidenceKind.HEARD, section="1209.03(j)")
    from jellyfish import metaphone

    known = lexicon().known(word) and not is_trade_name(word)
    for form in (word, word[:-1]) if word[-1] == "z" or (word[-1] == "s" and len(word) > LEAST_PART) else (word,):
        if known and form != word and not lexicon().known(form):
            continue  # matins are no more than one
        near = _by_sound(goods).get(metaphone(form), ())
        respelt = _respelt(form)
        meant = (*_homophones(form), *respelt, *(one for way in respelt for one in _homophones(way)))
        for other in dict.fromkeys((*near, *_own_words(goods), *meant)):
            weight = 0.95 * max(_describing(other, goods), _said(other, goods) if other in meant else 0.0)
            least = LONG_SOUNDS_LIKE if min(len(form), len(other)) >= LONG else SOUNDS_LIKE
            least = KNOWN_SOUNDS_LIKE if known else RESPELT_SOUNDS_LIKE if other in meant else least
            plural = other == form and word[-1] == "z"  # bagz; candles is spelt as it should be
            alike = max(sounds_alike(way, other) for way in (form, *respelt))
            if (other != form or plural) and weight > best.weight and alike >= least:
                why = f'sounds like "{other}"'
                best, heard = Evidence(weight, why, kind=EvidenceKind.HEARD, section="1209.03(j)"), other
    return heard, best


def _respelt(word: str) -> tuple[str, ...]:
    """How an unknown word may be written in full where its ending is written as it is said: stakka, stacker; stackin,
    stacking."""
    if len(word) <= LEAST_PART or lexicon().known(word):
        return ()
    ends = ((word[:-1] + "er", word[-1] == "a"), (word + "g", word.endswith("in")))
    return tuple(form for form, holds in ends if holds)


@lru_cache(maxsize=1 << 13)
def _said(word: str, goods: str) -> float:
    """How plainly a word of labels describes the goods, in whatever number; 0 if they do not have it."""
    if "people" in kinds(word):  # for whom a thing is is no name of it, and is not heard in other words
        return 0.0
    told = (term_for(form, goods) for form in (word, base_form(word)))
    return max((one.weight for one in told if one is not None and one.weight >= LEAST_DESCRIBING), default=0.0)


@lru_cache(maxsize=1 << 13)
def _homophones(word: str) -> tuple[str, ...]:
    """The words that the likely readings of an unknown word are those of, in the pronouncing dictionary."""
    from ..pronunciation import likely_codes, words_heard

    if not word.isascii() or lexicon().known(word):
        return ()
    heard = [heard for code in likely_codes(word) for heard in words_heard(code)]
    respelt = (one for one in respellings(word) if sounds_alike(word, one) >= RESPELT_SOUNDS_LIKE)
    return tuple(dict.fromkeys((*heard, *respelt)))


@lru_cache(maxsize=1 << 14)
def sounds_alike(word: str, other: str) -> float:
    """The similarity of two words in sound, in [0, 1], the first read in its three likeliest ways."""
    from ..pronunciation import likely_codes, pronounce, sound_similarity

    readings = pronounce(other, 2)  # a lead is said in two ways
    ways = [*likely_codes(word), *_by_analogy(word)]
    return max((sound_similarity(way, one.code) for way in ways for one in readings), default=0.0)


def _by_analogy(word: str) -> list[str]:
    """How an unknown word is read like a known one that it ends in, after a consonant or two: zloop like loop (analogy
    in reading aloud: Glushko 1979)."""
    from ..pronunciation import pronounce

    cuts = (cut for cut in (1, 2) if set(word[:cut]) <= ONSETS and len(word) - cut >= 3)
    known = (cut for cut in cuts if lexicon().known(word[cut:]) and not lexicon().known(word))
    return [word[:cut].replace("c", "k") + way.code for cut in known for way in pronounce(word[cut:], 1)]


@lru_cache(maxsize=1 << 12)
def as_heard(words: tuple[str, ...], goods: str) -> tuple[str, ...]:
    """The words of a name, each strange one as the everyday word that it sounds just like, where another is heard as a
    word for the goods: buyers read the rest of a misspelt phrase by ear too (kleer vew, of lenses)."""
    strange = [one for one in words if not lexicon().known(one)]
    misspelt = [one for one in strange if heard_as(one, goods).weight >= LEAST_DESCRIBING]
    if not misspelt or len(words) < 2:
        return words
    rest = {one: _everyday_homophone(one) for one in strange if one not in misspelt}
    return tuple(rest.get(one) or one for one in words)


@lru_cache(maxsize=1 << 12)
def as_respelt(words: tuple[str, ...], goods: str) -> tuple[str, ...]:
    """The words of a name, a closed one that is respelt in both parts as the words that are meant, if these are one
    word of a dictionary, say what goods keep off, or both describe them (wethertyte: weather, tight)."""
    told: list[str] = []
    for word in words:
        pairs = compounds(word) if is_coined(word) else ()
        telling = (one for one in pairs if _says_something(one, goods))
        meant = (one for one in telling if sounds_alike(word, "".join(one)) >= SOUNDS_LIKE)
        told += next(meant, (word,))
    return tuple(told)


def _says_something(pair: tuple[str, str], goods: str) -> bool:
    known = any(lexicon().known(by.join(pair)) for by in ("", "-", " "))
    tells = [_tie(one, goods) >= PART_TELLS or one in _qualities(goods) for one in pair]
    return all(tells) or (any(tells) and (known or pair[1] in KEPT_AWAY))


def _everyday_homophone(word: str) -> str:
    known = [one for one in _homophones(word) if lexicon().known(one) and zipf(one) >= EVERYDAY]
    return max(known, key=zipf, default="")


def _blended(word: str, goods: str) -> Evidence:
    """The share of the letters of `word` that a reader recognises as the start or end of describing words."""
    found = [NOTHING]
    for other in _vicinity(goods):
        start = _common_start(word, other)
        whole = start == len(other)
        if start >= LEAST_PART and (whole or (start > LEAST_PART and start >= 0.7 * len(other))):
            found.append(_of_part(word, start, _describing(other, goods), f'begins like "{other}"'))
        if len(other) >= LEAST_PART and word.endswith(other):
            found.append(_of_part(word, len(other), _describing(other, goods), f'ends in "{other}"'))
    return max(found, key=_weight)


def _of_part(word: str, letters: int, weight: float, why: str) -> Evidence:
    return Evidence(weight * letters / len(word), why, hint=letters < MOSTLY * len(word))


def _weight(evidence: Evidence) -> float:
    return evidence.weight


def _common_start(word: str, other: str) -> int:
    count = 0
    for one, two in zip(word, other, strict=False):
        if one != two:
            break
        count += 1
    return count
