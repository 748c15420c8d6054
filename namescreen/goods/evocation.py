"""Names that call a protected name of origin to mind though they do not hold it: by a place, by a word that courts have
found to do so, or by their own form (Gorgonzola and Cambozola, C-87/97; Calvados and Verlados, C-75/15)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache, lru_cache

from rapidfuzz.distance import LCSseq

from ..lexicon import languages, lexicon, translations, zipf
from ..tables import open_table
from .coinage import sounds_alike
from .grounds import grounds_for, protecting_first
from .known_places import LONGEST_PLACE, known_places
from .phrases import goods_words
from .places import IN_A_DICTIONARY, place_of
from .signs import EVOKING, SIGNS, ProtectedSign, listed, names_of_origin, sorts_of, with_law
from .words import base_form, runs

__all__ = ["evoked"]

SHORTEST, LEAST_BEGINNING = 4, 0.65
"""The fewest letters of a name of origin that is recognised in another word, and the share of it with which that must
begin."""
FAMILIES = (frozenset((29, 30)), frozenset((32, 33)))
"""Classes of food and of drink whose goods hold one another: crackers of class 30 with the cheese of class 29."""
EVERYDAY = 4.0
"""Zipf value from which a short name of origin is an everyday word first (port)."""
SOUNDS_LIKE, LETTERS_ALIKE, MOST_LETTERS = 0.82, 0.5, 0.8
"""Similarity in sound from which a word is heard as the name; and the share of common letters, in order, from which one
that ends alike is asked about, and one that begins alike is made like it. Ours: courts ask for the whole impression."""
OWN_LETTERS, MUCH_OF_IT = 2, 0.6
"""The letters that what ends alike must share before a common ending, and the share of letters in common from which it
need not begin alike. Ours."""
_VOICED = tuple(map(set, ("cg", "kg", "pb", "td", "fv", "sz", "ck")))
"""First letters of one consonant, but for the voice or the spelling."""
_ENDINGS = frozenset(
    """
    a e i o y s aki akia ella elle elli ello ette etta etti etto ina ine ini ino ita ito illa ille illo ola ole oli olo
    issimo issima chen lein le li erl el er ish esque ie ix ex ium ane ano ana al ale ona one oni essa esse inha inho
    ska ski ka ko land ita itos itas ous
""".split()
)
"""What makes a word of a short name of origin: diminutives and other endings of the Union's languages."""
_ADJECTIVES = (
    ("ler", "el"), ("er", ""), ("er", "en"), ("er", "e"), ("ner", "en"), ("isch", ""), ("ese", "a"), ("ano", "a"),
)  # fmt: skip
"""How words for what comes from a place end, and what its name ends in instead."""
MOST_SIGNS = 4
"""The most names of origin that have a word in common which tells one of them from others. Ours."""
_ASK = "the office, and the group that looks after the names, before anything is printed"


def evoked(
    words: tuple[str, ...], goods: str, classes: tuple[int, ...], markets: tuple[str, ...] | None
) -> list[ProtectedSign]:
    """What a name evokes: serious under a law that bars it, where the name of origin holds the place, courts have found
    the word to evoke it, or the word is made like it; else worth a question. One finding for each word."""
    found: dict[str, ProtectedSign] = {}
    for run in (" ".join(each) for _, each in runs(words, LONGEST_PLACE)):
        for one in () if _in_phrase(run, words, goods) else known_places(run, goods):
            if one.names:
                sign = _by_place(run, one.names, one.territory, one.kind, markets, barred=one.evokes)
                found.setdefault(run, sign)
    sorts = sorts_of(goods)
    for word in (one for one in words if one not in found):
        if whole := _part_of_one(word, classes, sorts):
            found[word] = _by_part(word, *whole, markets)
        elif like := _alike(word, classes, sorts):
            name, territory, plainly = like
            found[word] = _by_form(word, name, territory, markets, barred=plainly)
    return sorted(found.values(), key=lambda one: not one.serious)


def _in_phrase(run: str, words: tuple[str, ...], goods: str) -> bool:
    """Whether words stand in a longer phrase that is no name of the goods: a Persian cat, on carpets."""
    longer = (" ".join(each) for _, each in runs(words, LONGEST_PLACE, 2))
    heads = {one.word for one in goods_words(goods) if one.head}
    return any(
        run != one and f" {run} " in f" {one} " and lexicon().known(one) and base_form(one.split()[-1]) not in heads
        for one in longer
    )


def _by_place(
    sign: str, names: str, territory: str, kind: str, markets: tuple[str, ...] | None, *, barred: bool
) -> ProtectedSign:
    grounds = grounds_for(kind, markets)
    serious = barred and kind == "evocation" and any(one.market in EVOKING for one in grounds)
    protected, reminded = "evokes names of origin that are protected for", "may bring names of origin to mind of"
    what = f"{protected if serious else reminded} such goods: {names} ({territory})"
    return _told(sign, what, territory, kind, markets, serious=serious)


def _by_form(
    sign: str, name: str, territory: str, markets: tuple[str, ...] | None, *, barred: bool
) -> ProtectedSign:
    serious = barred and any(one.market in EVOKING for one in grounds_for("evocation", markets))
    verb = "is made or sounds like" if barred else "ends like"
    what = f'{verb} "{name}", a protected name of origin of such goods ({territory}), and may evoke it'
    return _told(sign, what, territory, "evocation", markets, serious=serious)


def _by_part(sign: str, name: str, kind: str, territory: str, markets: tuple[str, ...] | None) -> ProtectedSign:
    serious = any(one.market in EVOKING for one in grounds_for(kind, markets))
    what = f'is what tells "{name}", a protected name of origin of such goods ({territory}), from others, and evokes it'
    return _told(sign, what, territory, "evocation", markets, serious=serious)


def _told(
    sign: str, what: str, territory: str, kind: str, markets: tuple[str, ...] | None, *, serious: bool
) -> ProtectedSign:
    """The sign with its reason; of a serious one the grounds are those of the laws that bar what evokes."""
    found = protecting_first(kind, markets, territory)
    grounds = tuple(one for one in found if not serious or one.market in EVOKING)
    return ProtectedSign(sign, "evocation", territory, serious, with_law(what, grounds), _ASK, grounds)


@lru_cache(maxsize=1 << 12)
def _part_of_one(
    word: str, classes: tuple[int, ...], sorts: frozenset[str]
) -> tuple[str, str, str] | None:
    """The name of origin of several words, known for such goods, of which a word is the one that no language has for
    anything else (the Joux of Vallée de Joux), its kind and territory; None if there is none."""
    if len(word) < SHORTEST or lexicon().known(word):
        return None
    forms = (word, *(word[: -len(end)] + instead for end, instead in _ADJECTIVES if word.endswith(end)))
    signs = next((found for form in forms if (found := _longer_names().get(form))), ())
    told = [(sign, one) for sign in signs for one in listed(str(open_table(SIGNS).get(sign)))]
    known = [(sign, one) for sign, one in told if one.known_for(classes, sorts)]
    if not known or len(signs) > MOST_SIGNS or any(_means_something(word, code) for code in languages()):
        return None
    sign, one = known[0]
    return sign, one.kind, one.territory


def _means_something(word: str, language: str) -> bool:
    senses = translations(word, language)[:1]
    return any(one.score >= IN_A_DICTIONARY and place_of(one.english) is None for one in senses)


@cache
def _longer_names() -> dict[str, tuple[str, ...]]:
    """Each word of names of origin of several words, with these names."""
    found: dict[str, list[str]] = {}
    for sign in dict.fromkeys(sign for sign, _ in names_of_origin() if " " in sign):
        for word in sign.split():
            found.setdefault(word, []).append(sign)
    return {word: tuple(signs) for word, signs in found.items()}


@lru_cache(maxsize=1 << 12)
def _alike(word: str, classes: tuple[int, ...], sorts: frozenset[str]) -> tuple[str, str, bool] | None:
    """The name of origin known for goods of these classes that a word in no dictionary is made like, its territory, and
    whether plainly; None if there is none."""
    if lexicon().known(word) or word in open_table("shop_words.tsv") or len(word) <= SHORTEST:
        return None
    own = _names(classes)
    near = (one for one in _names(_family(classes)) if word.startswith(one[0]))
    found = [(_likeness(word, name), name, territory) for name, territory in dict.fromkeys((*own, *near))]
    if not any(how_much for how_much, *_ in found):  # of those that few know only what begins with them whole
        begun = (one for one in _small_names(classes, sorts) if word.startswith(one[0]) and len(one[0]) > SHORTEST)
        found = [(1.0 + len(one), one, at) for one, at, alone in begun if alone or place_of(one)]
    how_much, name, territory = max(found, default=(0.0, "", ""))
    return (name, territory, how_much >= 1) if how_much else None


def _likeness(word: str, name: str) -> float:
    """How plainly a word is made like a name: 1 and more if it begins or sounds so, less if it only ends so, else 0."""
    same = next((at for at, (one, two) in enumerate(zip(word, name, strict=False)) if one != two), None)
    start = min(len(word), len(name)) if same is None else same
    rest = word[start:]
    if word == name:
        return 0.0
    if start == len(name):
        endings = {rest, word[start - 1 :]} if name[-1] in "aeiou" else {rest}  # feta, fetaki
        own = bool(endings & _ENDINGS) or (len(rest) > 2 and lexicon().known(rest))
        made = start > SHORTEST or (zipf(name) < EVERYDAY and own)
        return 1.0 + start if made else 0.0
    alike = LCSseq.normalized_similarity(word, name)
    if start > SHORTEST and (start >= LEAST_BEGINNING * len(name) or alike >= MOST_LETTERS):
        return 1.0 + start
    if len(name) > SHORTEST and word[0] == name[0] and sounds_alike(word, name) >= SOUNDS_LIKE:
        return 1.0
    return _ends_alike(word, name) if alike >= LETTERS_ALIKE else 0.0


def _ends_alike(word: str, name: str) -> float:
    """How much of a name a word ends in, in hundredths of letters. 0 where that is short, or where the word neither
    begins as the name (Cambozola, Gorgonzola: but for the voice) nor has much of it, more than a common ending with a
    letter before it (-ano)."""
    end = next((at for at in range(min(len(word), len(name))) if word[-1 - at] != name[-1 - at]), len(name))
    common = max((len(one) for one in _ENDINGS if len(one) <= end and name.endswith(one)), default=0)
    begins = word[0] == name[0] or {word[0], name[0]} in _VOICED
    much = end - common >= OWN_LETTERS and LCSseq.normalized_similarity(word, name) >= MUCH_OF_IT
    return end / 100 if end >= SHORTEST and (begins or much) else 0.0


def _family(classes: tuple[int, ...]) -> tuple[int, ...]:
    """The classes, and those whose goods hold theirs or are held by them."""
    return tuple(sorted({*classes}.union(*(family for family in FAMILIES if family & {*classes}))))


@cache
def _names(classes: tuple[int, ...]) -> tuple[tuple[str, str], ...]:
    """The words of names of origin known for goods of some classes, each with its territory: names of one word, and the
    places in longer ones."""
    found = _all_names(frozenset(classes), frozenset(), little_known=False)
    kept = ((word, at) for word, at, alone in found if alone or (len(word) > SHORTEST and place_of(word)))
    return tuple(dict.fromkeys(kept))


@lru_cache(maxsize=256)
def _small_names(classes: tuple[int, ...], sorts: frozenset[str]) -> tuple[tuple[str, str, bool], ...]:
    """The words of names whose fame is small, of one sort of goods, with whether the word is the whole name: of
    hundreds few begin a word, and only these are looked up among the places."""
    return tuple(dict.fromkeys(_all_names(frozenset(classes), sorts, little_known=True))) if sorts else ()


def _all_names(
    classes: frozenset[int], sorts: frozenset[str], *, little_known: bool
) -> Iterator[tuple[str, str, bool]]:
    """The words of names of origin, each with the territory, and whether it is the whole name."""
    asked = {one for _, one in names_of_origin() if one.little_known == little_known}
    known = {one for one in asked if one.known_for(classes, sorts)}  # some hundreds, that thousands of names share
    for sign, one in names_of_origin():
        if one in known:
            words = sign.split()
            yield from ((word, one.territory, len(words) == 1) for word in words if len(word) >= SHORTEST)
