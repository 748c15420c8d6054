"""Signs that not everyone may register, or that would mislead: names of origin, emblems, Olympic and royal words, stems
of medicines' names, claims to cure, and places that may evoke a name of origin. The lists are written from memory and
incomplete (wordlists/curated/protected_signs.txt, evocations.txt): no finding here does not mean that there is none."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import cache, lru_cache

from ..lexicon import Sense, frequency_languages, kinds, lexicon, translations, zipf
from ..lexicon.foreign_phrases import phrase_equivalents
from ..lexicon.phrases import is_saying
from ..plain_text import some
from ..tables import open_table
from ..text import fold, parse
from .absence import WITHOUT
from .classification import likely_classes
from .context import FOOD_CLASSES
from .deception import misleading
from .evocation import evoked
from .foreign import SURE, known_languages, meanings
from .grounds import languages_of, protecting_first
from .health import CLAIMS, claim, closed_claims, counts
from .judged import Meaning
from .morality import offending
from .olympic import kept_in, laws_on
from .phrases import goods_words, items
from .places import place_of
from .signs import ORIGIN, SIGNS, Listed, ProtectedSign, all_signs, listed, sorts_of
from .words import runs

__all__ = ["ProtectedSign", "protected_signs"]

SERIOUS = frozenset((*ORIGIN, "emblem", "red cross", "royal arms", "olympic", "stem", "cure and illness"))
"""Kinds of sign that are likely to stand in the way."""
LONGEST_SIGN = 6
WITHIN = frozenset(("olympic", "red cross", "royal arms", "emblem"))
"""Kinds with laws of their own, which are noticed inside closed names too."""
SHORTEST_WITHIN, CUT = 6, 2
"""Letters of such a sign that must be left in a blend, and how many it may lose."""
AS_SMALL_WORDS = 5.5
"""Zipf value from which a word is as common as the small words of a language (1 in 300 words or so), whatever else it
names. Ours; common practice, no source."""
LONGEST_STEM = 9
SHORTEST_BEFORE_STEM = 2
TREATED = frozenset("pain ache sore complaint medicine pharmaceutical medicament remedy wound injury".split())
TOLD_ALONE = frozenset(("cure", "therapy", "illness"))
"""Words of claims that are told by themselves too."""
HEALTH = frozenset((3, 5, 10, 29, 30, 31, 32, 44))
"""Classes whose goods and services buyers may take for a remedy."""

_WHAT = {
    "origin": "a protected name of origin ({territory}), known for such goods",
    "craft": "a name of origin of craft or industrial goods ({territory}), known for such goods",
    "emblem": "words of an emblem that states or organisations keep for themselves ({territory})",
    "red cross": "words of an emblem that the Geneva Conventions protect ({territory})",
    "royal arms": "words that suggest royal patronage or a royal warrant ({territory})",
    "royal": "a word that may suggest royal patronage ({territory})",
    "controlled": "a word whose use in business needs a permission ({territory})",
    "olympic": "a word kept for the Olympic movement",
    "stem": "holds a stem that the World Health Organization keeps for names of medicines",
    "cure": "claims to cure or prevent",
    "therapy": "may be read as a claim to cure",
    "illness": "names an illness or complaint",
    "cure and illness": "claims to cure or prevent an illness, or to do good to the body",
    "health": "may be read as a claim of health, which needs an authorisation (Regulation (EC) 1924/2006)",
}
_ASK = {
    "origin": "the office, and the group that looks after the name, before anything is printed",
    "craft": "the office, and the makers' body that looks after the name, before anything is printed",
    "emblem": "the office, and the state or organisation itself; leave it out unless you are part of it",
    "red cross": "the national Red Cross or Red Crescent society; leave it out",
    "royal arms": "the Lord Chamberlain's Office; leave it out unless you hold the warrant",
    "royal": "the office and, in the United Kingdom, the Lord Chamberlain's Office",
    "controlled": "the company register and the authority for that trade",
    "olympic": "the national Olympic committee",
    "stem": "the authority for medicines, which reviews such names, and the WHO's list of stems",
    "cure": "the authority for medicines or food: what may be said of health is listed",
    "therapy": "the authority for medicines or food: what may be said of health is listed",
    "illness": "the authority for medicines or food: what may be said of health is listed",
    "cure and illness": "the authority for medicines or food, and an adviser, before anything is printed",
    "health": "the authority for food: what may be said of health is listed",
}


def protected_signs(
    name: str, goods: str = "", *, classes: Iterable[int] = (), markets: Iterable[str] | None = None
) -> tuple[ProtectedSign, ...]:
    """The protected or misleading signs that `name` holds, the serious ones first.

    Classes that are not stated are guessed from `goods`; of a name of origin only goods it is known for are serious."""
    asked = None if markets is None else tuple(markets)
    words = parse(name).words
    plain = misleading(words, goods, asked)
    abroad = [] if any(one.serious for one in plain) else _misleading_abroad(name, words, goods, asked)
    misled = (*plain, *abroad, *offending(name, words, goods, asked))
    numbers = (*(tuple(classes) or likely_classes(goods)), *_held_classes(goods))
    found = _found(words, goods, numbers, asked)
    signs = tuple(one for one in found if not _is_small_word(one, name))
    if any(one.kind in ORIGIN and one.serious for one in signs):
        return tuple(sorted((*signs, *misled), key=lambda one: not one.serious))
    called = (one for one in evoked(words, goods, numbers, asked) if one.sign not in {sign.sign for sign in signs})
    return tuple(sorted((*signs, *called, *misled), key=lambda one: not one.serious))


def _is_small_word(sign: ProtectedSign, name: str) -> bool:
    """Whether an emblem in letters is but a small word of the name: who, and not WHO."""
    return sign.kind == "emblem" and "function word" in kinds(sign.sign) and sign.sign.upper() not in name.split()


@lru_cache(maxsize=256)
def _held_classes(goods: str) -> tuple[int, ...]:
    """Further classes that goods come near by what they hold or are for: cheese, of crackers with cheese; medicines, of
    what is against pain."""
    found: list[int] = []
    for item in items(goods):
        ills = (str(open_table(SIGNS).get(word) or "") for word in item.words)
        kinds = {one.kind for row in ills for one in listed(row)}
        if kinds & {"illness", "cure"} or not TREATED.isdisjoint(item.words):
            found.append(5)
    if set(likely_classes(goods)) & FOOD_CLASSES:
        named = {one.word for one in goods_words(goods) if not one.head}
        foods = (word for word in sorted(named) if any(one.domain == "noun.food" for one in _leading(word)))
        found += [number for word in foods for number in likely_classes(word)[:1] if number in FOOD_CLASSES]
    return tuple(dict.fromkeys(found))


def _leading(word: str) -> tuple[Sense, ...]:
    return tuple(lexicon().senses(word, labelled=False)[:1])


def _misleading_abroad(
    name: str, words: tuple[str, ...], goods: str, markets: tuple[str, ...] | None
) -> list[ProtectedSign]:
    """What misleads by what words of a name mean in a language of the markets (cuero, on belts of plastic): serious if
    that is what its buyers first read in the word, else worth a question."""
    spoken = known_languages(languages_of(markets or (), main=True))[0] if goods else ()
    asked: list[ProtectedSign] = []
    for language in (one for one in spoken if one != "en"):
        found_there = meanings(name, goods, language, True)
        said = {word: one for word, one in found_there.items() if " " not in word}
        lacking = {one: _lacked(one, meaning.english) for one, meaning in found_there.items() if " " in one}
        meant = {part: word for word, meaning in said.items() for part in meaning.english.split()}
        meant |= {english: run for run, english in lacking.items() if english}
        text = f" {' '.join(words)} "
        for run, english_run in lacking.items():
            text = text.replace(f" {run} ", f" {english_run or run} ")
        english = tuple(
            part for one in text.split() for part in (said[one].english.split() if said.get(one) else (one,))
        )
        serious = {one.sign for one in misleading(english, goods, markets) if one.serious} if meant else set()
        if serious.isdisjoint(meant):
            continue
        doubtful = {word for word, one in said.items() if not _is_read_first(word, one, words)}
        unsure = frozenset(part for part, word in meant.items() if word in doubtful)
        found = misleading(english, goods, markets, unsure)
        told = [replace(one, sign=meant[one.sign], reason=f'means "{one.sign}", {one.reason}',
                        told=f'means "{one.sign}", {one.told}')
                for one in found if one.sign in serious and one.sign in meant]  # fmt: skip
        if any(one.serious for one in told):
            return told
        asked = asked or told
    return asked


def _is_read_first(word: str, meaning: Meaning, words: tuple[str, ...]) -> bool:
    """Whether readers of a language first take a word of a name for its `meaning`: it is the leading sense of a word
    that is no guess and no respelling, that is not as common as the small words of a language (antes: before, and
    suede), and that no phrase of the name holds."""
    senses = [one for one in translations(word, meaning.language) if not one.guessed]
    leading = any(one.english == meaning.english and one.score == max(each.score for each in senses) for one in senses)
    own = not meaning.guessed and not meaning.written_for and meaning.sure >= SURE
    small = meaning.language in frequency_languages() and zipf(word, meaning.language) >= AS_SMALL_WORDS
    held = any(word in run and _is_phrase(run) for _, run in runs(words, len(words), 2))
    return own and (leading or not senses) and not small and not held


def _is_phrase(run: Sequence[str]) -> bool:
    """Whether words are a set phrase of another language or of English, or a saying."""
    whole = " ".join(run)
    return bool(phrase_equivalents(tuple(run))) or is_saying(whole) or lexicon().known(whole)


def _lacked(run: str, english: str) -> str:
    """What a run of foreign words says that goods lack, as English words say it (sin azúcar: no sugar); "" if it says
    no such thing."""
    return english if run.split()[0] in WITHOUT and english.split()[0] in WITHOUT else ""


@lru_cache(maxsize=1 << 12)
def _found(
    words: tuple[str, ...], goods: str, classes: tuple[int, ...], markets: tuple[str, ...] | None
) -> tuple[ProtectedSign, ...]:
    found: dict[tuple[str, str], tuple[str, bool]] = {}
    claims: dict[str, frozenset[str]] = {}
    spoken = frozenset(languages_of(markets or (), main=True))
    parts = {word: closed_claims(word) for word in words}
    closed = [row for rows in parts.values() for row in rows]
    apart = tuple(part for word in words for part in ([sign for sign, _ in parts[word]] or [word]))
    for sign, row in (*_listed(words), *closed, *_stems(words), *_within(words)):
        for one in listed(row):
            known_for = one.known_for(classes, sorts_of(goods) if one.sort else frozenset())
            if one.kind in CLAIMS:  # in one word with what is treated nothing is said in play
                firm = one.kind in ("lift", "within") and (sign, row) in closed
                if firm or (one.kind != "within" and counts(one, sign, spoken)):
                    claims[sign] = claims.get(sign, frozenset()) | {"helps" if firm else one.kind}
            elif known_for or (one.kind in ORIGIN and not one.little_known):
                found[one.kind, sign] = (one.territory, known_for)
    kind, said = claim(claims, apart, goods, frozenset(classes))
    if kind:
        found[kind, said] = ("worldwide", True)
    elif set(classes) & HEALTH:
        found |= {(one, sign): ("worldwide", True) for sign, of in claims.items() for one in sorted(of & TOLD_ALONE)}
    found = {key: value for key, value in found.items() if not _kept_elsewhere_only(key[0], value[0], markets)}
    signs = [_sign(sign, kind, *value, markets) for (kind, sign), value in found.items()]
    return tuple(sorted(signs, key=lambda one: (not one.serious, one.sign, one.kind)))


def _kept_elsewhere_only(kind: str, territory: str, markets: tuple[str, ...] | None) -> bool:
    """Whether a word is kept by the law of some states alone, of which none is a market."""
    return kind == "olympic" and territory != "worldwide" and not kept_in(markets, territory)


def _sign(sign: str, kind: str, territory: str, known_for: bool, markets: tuple[str, ...] | None) -> ProtectedSign:
    """A sign as it is told; a word that only some laws keep is serious where one of the markets has such a law."""
    serious, reason = known_for and kind in SERIOUS, _reason(kind, territory, known_for)
    if kind != "olympic":
        return ProtectedSign(sign, kind, territory, serious, reason, _ASK[kind],
                             protecting_first(kind, markets, territory))  # fmt: skip
    bars = kept_in(markets, territory)
    where = f" in {some(bars)}" if bars else ", though by no law of your markets known here"
    reason = reason.replace("; from memory", f"{where}; from memory")
    return ProtectedSign(sign, kind, territory, serious and bool(bars), reason, _ASK[kind], laws_on(markets), bars)


def _reason(kind: str, territory: str, known_for: bool) -> str:
    what = _WHAT[kind].format(territory=territory)
    if kind in ORIGIN and not known_for:
        other = "other craft or industrial goods" if kind == "craft" else "other goods"
        may_be = "may be" if kind == "craft" else "is"
        what = f"a name of origin ({territory}) of {other}, whose reputation {may_be} protected as well"
    return f"{what}; from memory"


def _listed(words: tuple[str, ...]) -> list[tuple[str, str]]:
    """The signs that stand in a name as whole words, the longest at each place."""
    table = open_table(SIGNS)
    found = []
    at = 0
    while at < len(words):
        for size in range(min(LONGEST_SIGN, len(words) - at), 0, -1):
            sign = " ".join(words[at : at + size])
            if entry := table.get(sign) or _of_its_place(sign):
                found.append((sign, entry))
                at += size - 1
                break
        at += 1
    return found


def _of_its_place(sign: str) -> str:
    """The entry of the place that a word is the adjective of, if that is a name of origin by itself (solinger); else
    ""."""
    place = place_of(sign)
    entry = str(open_table(SIGNS).get(fold(place.name)) or "") if place is not None else ""
    return entry if any(one.kind in ORIGIN for one in listed(entry)) else ""


def _within(words: tuple[str, ...]) -> list[tuple[str, str]]:
    """The signs with laws of their own that a closed name holds; of Olympic words also all but a letter or two, as the
    law keeps words like them from others as well."""
    found = []
    for word in words:
        if len(word) > SHORTEST_WITHIN and not lexicon().known(word):
            most, sign = max((_held(word, sign, one), sign) for sign, one in _kept_by_law())
            found += [(sign, str(open_table(SIGNS).get(sign)))] if most else []
    return found


def _held(word: str, sign: str, entry: Listed) -> int:
    """How many letters of a sign a word holds besides others: all of it, or of Olympic words all but the first or last
    few; else 0."""
    closed = sign.replace(" ", "")
    cut = range(min(CUT if entry.kind == "olympic" else 0, len(closed) - SHORTEST_WITHIN) + 1)
    parts = (part for off in cut for part in (closed[off:], closed[: len(closed) - off]))
    return max((len(part) for part in parts if part in word and len(part) + 1 < len(word)), default=0)


@cache
def _kept_by_law() -> tuple[tuple[str, Listed], ...]:
    """The signs of these kinds that are long enough to be seen in a word."""
    kept = ((sign, one) for sign, one in all_signs() if one.kind in WITHIN and "-" not in sign)
    long = ((sign, one) for sign, one in kept if len(sign.replace(" ", "")) >= SHORTEST_WITHIN)
    return tuple((sign, one) for sign, one in long if (one.kind, one.territory) != ("olympic", "Germany"))


def _stems(words: tuple[str, ...]) -> list[tuple[str, str]]:
    """The stems with which words of a name begin or end; only of words that are longer than the stem and in no
    dictionary."""
    table = open_table(SIGNS)
    found = []
    for word in words:
        longest = min(LONGEST_STEM, len(word) - SHORTEST_BEFORE_STEM)
        sizes = range(longest, 2, -1)
        ends = (*(f"-{word[-size:]}" for size in sizes), *(f"{word[:size]}-" for size in sizes))
        stem = next((one for one in ends if one in table), None)
        if stem is not None and not lexicon().known(word):
            found.append((stem, str(table.get(stem))))
    return found
