"""Marks that translate a name into a language of the buyers, and marks in English that translate a foreign name.

Offices and courts compare a name with foreign words of the same meaning where buyers would translate (doctrine of
foreign equivalents: TMEP 1207.01(b)(vi); EUIPO Guidelines, part C, section 2, chapter 4, on conceptual comparison). A
mark of several foreign words is found by its meaning. A compound written as one word is not, nor a phrase that says one
word (arc en ciel: rainbow), so compounds of the name's words and phrases for it are searched for as well, and
what a foreign name is in English.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import islice, product

from ..lexicon import kinds, lexicon, phrase_equivalents
from ..lexicon.language_codes import LANGUAGES
from ..marks.mark import Mark
from ..marks.territory import bites_where
from ..territories import languages_of, law_of, members_of, understood_in
from ..text import fold, parse
from .crowd import divided, says_little
from .foreign_words import ForeignWord

__all__ = [
    "EVERYDAY", "foreign_words_held", "known_to_buyers", "other_forms", "rest_of", "said_from", "translated_in",
]  # fmt: skip

EVERYDAY = 4.5
"""Zipf frequency of the English words that buyers of any market are taken to know: the three thousand commonest, about
what schools teach (common practice, no source)."""

COGNATE = 0.6
"""The share of letters in common from which a word of one language shows what one of another means. Ours, not
fitted."""
NAMED_EARLY, _LEADING = 3.7, 2
_PICTURED = frozenset(("noun.animal", "noun.plant", "noun.food", "noun.body", "noun.artifact"))
"""Zipf frequency from which one of the leading senses of an English word is known as what schools name and picture
early: animals, plants, food, the body, things about the house (common practice, no source)."""
THEIR_TEXTS = 3.0
"""Zipf frequency of an English word in texts of another language from which its readers know it. Ours."""

_MOST_WORDS = 3  # a longer name is a phrase, whose words do not add up to a compound
ENGLISH = "en"
_OF_A_WORD, _OF_A_NAME = 2, 3  # compounds searched for in one language
_PHRASES = 4  # searched for in one language
_MOST_FORMS = 12  # searched for: each costs a search of the register
_SURE, _SURE_OF_PARTS = 0.5, 0.4  # scores from which a translation, and one of all parts of a compound, is relied on


@lru_cache(maxsize=1 << 15)
def _words(name: str) -> tuple[str, ...]:
    """The content words of a name, closed compounds of known words divided."""
    return _content(divided(name))


def _content(words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(word for word in words if "function word" not in kinds(word))


def other_forms(name: str, languages: Sequence[str]) -> tuple[str, ...]:
    """`name` as it may stand in a register in other words: as one word in those of `languages` that write compounds so,
    as a phrase in those that say it with several words, and in English where every word of it is a word of one of them,
    or all are a phrase. Empty where a word is not known there."""
    from ..lexicon import equivalents_in
    from ..lexicon.language_codes import COMPOUNDING, code

    words = _words(name)
    if not 1 <= len(words) <= _MOST_WORDS:
        return ()
    found: dict[str, None] = {}
    for language in dict.fromkeys(map(code, languages)):
        found.update(dict.fromkeys(_phrases(name, language)[:_PHRASES]))
        if language in COMPOUNDING and len(words) > 1:
            choices = [equivalents_in(word, language)[:_OF_A_WORD] for word in words]
            found.update(dict.fromkeys("".join(one) for one in islice(product(*choices), _OF_A_NAME)))
        english = [_english(word, language)[:_OF_A_WORD] for word in words]
        found.update(dict.fromkeys(" ".join(one) for one in islice(product(*english), _OF_A_NAME)))
    return tuple(text for text in found if parse(text).words != parse(name).words)[:_MOST_FORMS]


def _phrases(name: str, language: str) -> tuple[str, ...]:
    """The phrases of a language that say the name, as one English word, and what it is in English as such a phrase."""
    from ..lexicon import phrase_equivalents, phrases_for

    words = parse(name).words
    bases = sorted(_bases("".join(words)))
    said = (phrase for base in bases for spoken, phrase in phrases_for(base) if spoken == language)
    return (*said, *(one.english for one in phrase_equivalents(words) if one.language == language))


@lru_cache(maxsize=1 << 15)
def _english(word: str, language: str) -> tuple[str, ...]:
    """What `word` of a language, or a phrase, means in English, where that can be relied on, best first. An English
    word that only could be spelled so there is no translation."""
    from ..lexicon import phrase_equivalents, translations

    if " " in word:
        return tuple(one.english for one in phrase_equivalents(tuple(word.split())) if one.language == language)
    sure = {"compound": _SURE_OF_PARTS, "spelling": 2.0}  # never by spelling alone
    return tuple(one.english for one in translations(word, language) if one.score >= sure.get(one.source, _SURE))


def translated_in(name: str, mark: str, languages: Sequence[str]) -> str:
    """The language (BCP 47) in which `mark` says `name`, word for word; "" if it does not.

    Every content word of both must be said by a listed equivalent, of the mark's word, of the name's (then the mark's
    language is English), or of both, and the whole name is read in one language; a word that no language has may stand
    in both. What a compound is must be what the name is: a stone wolf is no wolf stone. Else the order of words is
    that of each language. A name in other forms of the same English words is no translation. English is always among
    the languages of the buyers.
    """
    asked = _known(languages)
    pairs = [(ours, theirs) for ours in _divisions(name) for theirs in _divisions(mark)]
    if any(_same_in_english(ours, theirs) for ours, theirs in pairs):
        return ""
    plain = len(parse(name).words), len(parse(mark).words)
    if any(_says(theirs, ours, one, _ways(theirs, ()), plain[::-1]) for ours, theirs in pairs for one in asked):
        return ENGLISH
    ways = {ours: _ways(ours, asked) for ours, _ in pairs}
    told = (one for one in asked if any(_says(ours, theirs, one, ways[ours], plain) for ours, theirs in pairs))
    return next(told, "")


@lru_cache(maxsize=1 << 12)
def rest_of(name: str, goods: str) -> str:
    """The words of a name beside those that say where goods come from or name them, which keep no translation of the
    rest apart; "" where it has none of these, or nothing else."""
    from ..goods.places import place_of

    words = parse(name).words
    rest = [one for one in words if not (says_little(one, goods) or place_of(one))]
    return " ".join(rest) if len(rest) < len(_content(words)) else ""


def known_to_buyers(name: str, mark: Mark, language: str, markets: Sequence[str]) -> bool:
    """Whether buyers in one of `markets` where `mark` holds know both its `language`, in which it says `name`, and that
    of the name; English of everyday words, or of words spelled much like theirs, is known everywhere. An examiner in
    the United States translates common languages into English whoever buys, not one of them into another (doctrine of
    foreign equivalents, TMEP 1207.01(b)(vi)). Where no market is stated, yes."""
    held = bites_where(mark, markets)
    places = [place for one in held for place in (members_of(one) or (one,))]
    if not places:
        return True
    own = said_from(name, mark.text, language, languages_of(markets)) if language != ENGLISH else ""
    if own not in ("", ENGLISH):
        return any(understood_in(place, language) and understood_in(place, own) for place in places)
    if any(law_of(place) == "US" for place in places):
        return True
    in_english = mark.text if language == ENGLISH else name
    foreign = name if language == ENGLISH else mark.text
    spoken_there = dict.fromkeys(one for place in places for one in _own_languages(place))
    everyday = _all_known(in_english, foreign, (language,) if language != ENGLISH else tuple(spoken_there))
    spoken = (place for place in places if everyday or understood_in(place, ENGLISH))
    if language == ENGLISH:  # the name is foreign: is it so in a language of the place?
        return any(translated_in(mark.text, name, _own_languages(place)) for place in spoken)
    return any(understood_in(place, language) for place in spoken)


def _own_languages(place: str) -> tuple[str, ...]:
    return _known(languages_of((place,), main=True))


def said_from(name: str, mark: str, language: str, languages: Sequence[str]) -> str:
    """The language (BCP 47) in which `name` is read where `mark` says it in `language` (see `translated_in`): English
    where it may be, else the one of the others whose words it has; "" if it does not say it."""
    asked = _known((*languages, *LANGUAGES))
    if language == ENGLISH:
        return next((one for one in asked if translated_in(mark, name, (one,)) == one), "")
    pairs = [(ours, theirs) for ours in _divisions(name) for theirs in _divisions(mark)]
    plain = len(parse(name).words), len(parse(mark).words)
    for ours, theirs in pairs:
        for way in _ways(ours, asked):
            if _says(ours, theirs, language, (way,), plain):
                return way[0]
    return ""


def _known(languages: Sequence[str]) -> tuple[str, ...]:
    """The codes of those of `languages` of which more than a few words are known; English is none of them."""
    from ..lexicon.language_codes import code

    return tuple(dict.fromkeys(one for one in map(code, languages) if one in LANGUAGES))


@lru_cache(maxsize=1 << 12)
def _all_known(english: str, foreign: str, languages: tuple[str, ...]) -> bool:
    """Whether buyers know each word of an English name that says a `foreign` one in one of `languages`: it is an
    everyday word, in whatever form; a thing that schools name early, which texts name less often (a goose); one that
    their own texts use; or spelled much like their word for it (raven, Rabe)."""
    from ..lexicon import lexicon, zipf
    from ..lexicon.derivation import nouns_of

    theirs = tuple(fold(form) for word in _words(foreign) for form in _bases(word))
    together = "".join(theirs)

    def known(word: str) -> bool:
        forms = _bases(word).union(nouns_of(word))  # of wood, wooden
        common = max(map(zipf, forms))
        if common >= EVERYDAY or (common >= NAMED_EARLY and _is_thing_of_school_books(word)):
            return True
        if any(zipf(one, language) >= THEIR_TEXTS for one in forms for language in languages):
            return True
        said = (*theirs, *_meant_in(word, together, languages))
        alike = (_alike(fold(one), other) for one in forms for other in said)
        return max(alike, default=0.0) >= COGNATE

    def transparent(part: str) -> bool:
        return bool(_meant_in(part, together, languages))

    whole, parts = parse(english).words, _words(english)
    if len(whole) == 1 and len(parts) > 1 and lexicon().known(whole[0]) and not all(map(transparent, parts)):
        return known(whole[0])  # a lapwing is no wing
    return all(map(known, parts))


def _meant_in(word: str, compound: str, languages: tuple[str, ...]) -> list[str]:
    """The words for an English one that stand in a compound of one of `languages`."""
    from ..lexicon import equivalents_in

    return [said for one in languages for said in map(fold, equivalents_in(word, one)) if said in compound]


def _is_thing_of_school_books(word: str) -> bool:
    from ..lexicon import lexicon

    senses = lexicon().senses(word, "n", labelled=False)[:_LEADING]
    return any(lexicon().domain(one.id) in _PICTURED for one in senses)


def _alike(word: str, other: str) -> float:
    """The share of letters that two words have in common, in [0, 1]."""
    from rapidfuzz.distance import Levenshtein

    return float(Levenshtein.normalized_similarity(word, other))


def foreign_words_held(name: str, mark: str, languages: Sequence[str]) -> tuple[ForeignWord, ...]:
    """Which words of the name the mark says in a language of the buyers; () if it says none.

    Less than `translated_in`: the rest of the two may say different things. A word that is commoner in English than in
    the other language is read as English.
    """
    asked = _known(languages)
    ours, theirs = ({word for words in _divisions(text) for word in words} for text in (name, mark))
    told: list[ForeignWord] = []
    for word in sorted(ours - theirs):
        for other in sorted(theirs - ours):
            language = next((one for one in asked if _is_said_by(word, other, one)), "")
            if not language and any(_is_said_by(other, word, one) for one in asked):
                language = ENGLISH
            if language:
                told.append(ForeignWord(language, other, word))
    return tuple(told)


def _is_said_by(english: str, word: str, language: str) -> bool:
    """Whether `word` is a word of `language` that means the `english` one, in whatever form."""
    from ..lexicon import zipf

    if zipf(word) > zipf(word, language):
        return False
    return any(_bases(english) & _bases(said) for said in _english(word, language))


def _divisions(name: str) -> tuple[tuple[str, ...], ...]:
    """The content words of a name as written, with closed compounds divided, and all as one if they are a phrase that
    says one thing in a language, or together an English word (humming bird)."""
    written = parse(name).words
    phrase = (" ".join(written),) if phrase_equivalents(written) else ()
    joined = ("".join(written),) if len(written) > 1 and lexicon().known("".join(written)) else ()
    return tuple(dict.fromkeys(words for words in (phrase, _content(written), _words(name), joined) if words))


def _same_in_english(ours: tuple[str, ...], theirs: tuple[str, ...]) -> bool:
    """Whether each of `ours` stands among `theirs`, in whatever form of the same English word: otters is otter."""
    forms = [_bases(word) for word in theirs]
    return all(any(_bases(word) & other for other in forms) for word in ours)


@lru_cache(maxsize=1 << 15)
def _bases(word: str) -> frozenset[str]:
    return frozenset((word, *lexicon().bases(word)))


_Way = tuple[str, tuple[frozenset[str], ...]]
"""A language, and what each word of a name says in English as read in it."""


def _ways(words: tuple[str, ...], asked: Sequence[str]) -> list[_Way]:
    """What the words of a name say in English, read as English and in each of the languages `asked` that has all of
    them. A word that is commoner in English, or names a place, is no foreign word unless it says the same there; beside
    such a word only what a dictionary has is one, and no guessed compound."""
    from ..lexicon.derivation import nouns_of

    english = tuple(_bases(word).union(nouns_of(word)) for word in words)
    ways = [(ENGLISH, english)]
    for language in asked:
        read = tuple(_senses(word, language) for word in words)
        if not any(read):
            continue
        plain = [_is_english(word, language) for word in words]
        native = [
            bool(said) and not other and (not any(plain) or _is_listed(word, language))
            for word, said, other in zip(words, read, plain, strict=True)
        ]
        same = (not one.isdisjoint(said) for one, said in zip(english, read, strict=True))
        if any(native) and all(one or both for one, both in zip(native, same, strict=True)):
            ways.append((language, tuple(one | said for one, said in zip(english, read, strict=True))))
    return ways


def _is_english(word: str, language: str) -> bool:
    """Whether readers take a word as English rather than as one of `language`: it is commoner there, or a place."""
    from ..goods.places import place_of
    from ..lexicon import zipf

    return zipf(word) > zipf(word, language) or place_of(word) is not None


def _is_listed(word: str, language: str) -> bool:
    """Whether `word` is known to be one of `language`, not only taken for a compound or another spelling."""
    from ..lexicon import translations

    return " " in word or any(
        one.score >= _SURE and not one.guessed for one in translations(word, language)
    )


def _says(
    ours: tuple[str, ...], theirs: tuple[str, ...], language: str, ways: Sequence[_Way], written: tuple[int, int]
) -> bool:
    """Whether the words `theirs`, read in `language`, say all of `ours` and nothing else, in one of the `ways` to read
    these. Of how many words the two are `written` tells whether one has small words, which change the order."""
    from ..lexicon import lexicon
    from ..lexicon.language_codes import COMPOUNDING

    heard = [_senses(word, language) for word in theirs]
    if not any(heard):
        return False
    kept = {word for word in ours if word in theirs and not lexicon().known(word)}
    said = frozenset().union(*heard)
    modified = language in COMPOUNDING and len(ours) > 1 and written[0] <= len(ours) and written[1] <= len(theirs)
    for own, meant in ways:
        wanted = frozenset().union(*meant)
        if (
            own != language
            and any(one & wanted for one in heard)
            and all(word in kept or one & said for word, one in zip(ours, meant, strict=True))
            and all(own == ENGLISH or word in kept or word in said or _said_wholly(word, own, said) for word in ours)
            and all(word in kept or _said_wholly(word, language, wanted) for word in theirs)
            and (not modified or own not in (ENGLISH, *COMPOUNDING) or _is_head(theirs, language, ours[-1], meant[-1]))
        ):
            return True
    return False


def _is_head(theirs: tuple[str, ...], language: str, head: str, meant: frozenset[str]) -> bool:
    """Whether the last of the words `theirs` says the `head` of a name, its last word, `meant` in English: what a
    compound is stands last in English and in languages that write it as one word."""
    if len(theirs) > 1:
        return theirs[-1] == head or not meant.isdisjoint(_senses(theirs[-1], language))
    return any(not meant.isdisjoint((whole, whole.split()[-1])) for whole in _english(theirs[0], language))


def _said_wholly(word: str, language: str, wanted: frozenset[str]) -> bool:
    """Whether all that `word` of a language says is `wanted`: of a bell man not the bell alone."""
    from ..lexicon import kinds
    from ..lexicon.derivation import nouns_of

    def holds(part: str) -> bool:
        return part in wanted or not wanted.isdisjoint(nouns_of(part)) or "function word" in kinds(part)

    return any(whole in wanted or all(map(holds, whole.split())) for whole in _english(word, language))


@lru_cache(maxsize=1 << 15)
def _senses(word: str, language: str) -> frozenset[str]:
    """What `word` of a language says in English, whole and word by word, and the nouns of the adjectives among these:
    for moon garden another language has the lunar garden."""
    from ..lexicon.derivation import nouns_of

    whole = _english(word, language)
    parts = dict.fromkeys((*whole, *(part for english in whole for part in english.split())))
    return frozenset((*parts, *(noun for part in parts for noun in nouns_of(part))))
