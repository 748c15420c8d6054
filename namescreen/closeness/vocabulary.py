"""What closeness needs from the lexicon: whether a word is known, its segmentations, and its relations."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from functools import lru_cache
from itertools import chain, pairwise

from ..lexicon import equivalents, kinds, lexicon, one_name, possible_meanings, words_of_kind, zipf
from ..lexicon.combining_forms import combining_form, combining_parts
from ..lexicon.derivation import derived_words
from ..lexicon.foreign import COMMON_KNOWLEDGE
from ..lexicon.foreign_phrases import phrase_equivalents
from ..lexicon.translation import INFLECTED, Translation, is_in_use, listed_translations
from ..tables import open_table
from ..text import best_split, tokenize
from ..text.segmentation import LONGEST
from . import respelling
from .kept import kept_name, kept_word
from .likeliest import likeliest
from .respelling import heard_parts, heard_word

__all__ = [
    "RELATED",
    "TRANSLATED",
    "base_forms",
    "divided_into_known",
    "english_choices",
    "english_readings",
    "everyday_in_others",
    "expect_many",
    "has_senses",
    "is_known",
    "is_surname",
    "known_among",
    "meaning_keys",
    "meaning_similarity_of_words",
    "meant",
    "related_words",
    "segmentations",
    "spellings",
]

COMMON, COMMON_AND_SHORT = 3.0, 3.5
"""Zipf values (once in a million words) from which readers recognise a word inside a longer one, and one of three
letters."""


@lru_cache(maxsize=1 << 16)
def is_known(word: str) -> bool:
    """Whether people know `word`: it, or a base form of it, is in the lexicon."""
    if (kept := kept_word(word)) is not None:
        return kept.is_known
    return bool(base_forms(word)) or "function word" in kinds(word)


def known_among(words: Sequence[str]) -> set[str]:
    """Those of many words, of which few are, that are `is_known`."""
    written = [word for word in words if word.isascii()]
    perhaps = {*lexicon().perhaps_known(written), *words_of_kind("function word")}
    return {word for word in words if word in perhaps and is_known(word)}


def all_known(words: tuple[str, ...]) -> bool:
    """Whether people know every word of a name."""
    return all(map(is_known, words))


@lru_cache(maxsize=1 << 15)
def content_words(words: tuple[str, ...]) -> frozenset[str]:
    """The words of a name but for function words."""
    return frozenset([word for word in words if "function word" not in kinds(word)])


@lru_cache(maxsize=1 << 16)
def is_familiar(word: str) -> bool:
    """Whether ordinary readers know `word`: it, or a base form of it, is in the list of word frequencies."""
    return any(zipf(form) > 0 for form in (word, *base_forms(word)))


@lru_cache(maxsize=1 << 16)
def meant(word: str) -> str:
    """An English word as it stands, and of any other what it means as a combining form (hydro: water) or the everyday
    word that it is heard as (kwik: quick), if any."""
    if (kept := kept_word(word)) is not None and kept.is_meant:
        return word
    return word if is_known(word) else combining_form(word) or heard_word(word) or word


@lru_cache(maxsize=1 << 16)
def has_senses(word: str) -> bool:
    """Whether the meaning of `word` can be compared: it, an equivalent or the word it is heard as has senses in the
    lexicon, which function words have not, or it is a given name that other languages have too."""
    if (kept := kept_word(word)) is not None:
        return kept.has_senses
    return bool(base_forms(word)) or bool(equivalents(word)) or meant(word) != word or bool(one_name(word))


def base_forms(word: str) -> tuple[str, ...]:
    """The words of the lexicon that `word` is a form of."""
    return lexicon().bases(word) if word.isascii() else ()


@lru_cache(maxsize=1 << 16)
def segmentations(word: str) -> tuple[tuple[str, ...], ...]:
    """The segmentations of one closed word: whole, and at the best boundary between two parts.

    A known word stays whole. Else it is split into the best two known words (herbwell: herb well), or, failing that,
    into one known word at either end and a rest (zarvoplanter: zarvo planter), or after a first letter such as e or i
    before a known word (ekettle: e kettle). A combining form is known (hydrosill: hydro sill). Two parts may be
    respelled (supakup: supa kup).
    """
    if len(word) < 5 or not (word.isascii() and word.isalpha()) or is_known(word):
        return ((word,),)
    if kept := kept_name((word,)):
        return kept.divisions
    parts: tuple[str, ...] | None
    parts = (word[0], word[1:]) if word[0] in "ie" and _seen(word[1:]) else best_split(word, _joint_score)
    if not parts or not all(map(_seen, parts)):
        parts = () if heard_word(word) else heard_parts(word) or parts
    return ((word,), parts) if parts else ((word,),)


def _joint_score(left: str, right: str) -> tuple[int, float] | None:
    """How easily readers recognise the parts at a boundary: how many of them, then how well."""
    first, second = _seen(left), _seen(right)
    if first and second:
        return 2, min(first, second) + min(len(left), len(right)) / 2
    if first and len(left) >= 4:
        return 1, first + len(left)
    if second and len(right) >= 4:
        return 1, second + len(right)
    return None


_parts_seen: dict[str, float] | None = None
"""Every part that is `_seen`, where very many words are asked about."""


def expect_many() -> None:
    """Make ready for a register's words: it takes some tenths of a second, and processes forked later share it."""
    global _parts_seen
    respelling.expect_many()
    frequent = (word for word, value in open_table("frequency/en.tsv").items() if float(value) >= COMMON)
    _parts_seen = {part: seen for part in chain(frequent, combining_parts()) if (seen := _how_seen(part))}


def _seen(part: str) -> float:
    """How easily readers recognise `part` inside a word: its Zipf value, 0 if they do not; of a combining form the
    least of a word of three letters."""
    return _how_seen(part) if _parts_seen is None else _parts_seen.get(part, 0.0)


def _how_seen(part: str) -> float:
    if not 3 <= len(part) <= LONGEST:
        return 0.0
    common = zipf(part)  # asked first: it costs far less
    if common >= (COMMON if len(part) > 3 else COMMON_AND_SHORT) and is_known(part):
        return common
    return COMMON_AND_SHORT if combining_form(part) else 0.0


TRANSLATED = 0.95
"""The factor on closeness in meaning for a translated word: a translation is closer than most synonyms."""
MOST_EQUIVALENTS = 1
"""How many such meanings a word by itself has; whole names are read in all of them (`english_readings`). With six,
rarer ones joined words that no buyer would (brunet in one language: well; better), and pairs of real names were told
less well (meaning 0.817, so 0.821)."""


EVERYDAY = frozenset(("de", "es", "fr", "it", "la", "pt"))
"""Languages whose everyday words many buyers know even where English has borrowed them (luna, aqua)."""
BORROWED = 4.0
"""Zipf value in English from which such a word is read as English alone."""


@lru_cache(maxsize=1 << 16)
def said_in_english(word: str) -> tuple[str, ...]:
    """What a word of another language means in English, the most usual first, or the everyday word that an unknown or
    rare word is heard as; at most `MOST_EQUIVALENTS`."""
    if (kept := kept_word(word)) is not None and not kept.is_said:
        return ()
    found = [one.english for one in equivalents(word)] or _everyday_abroad(word)
    if zipf(word) < COMMON and (heard := heard_word(word)):
        found.insert(0, heard)
    if not is_known(word) and (form := combining_form(word)):
        found.insert(0, form)
    return tuple(dict.fromkeys(found[:MOST_EQUIVALENTS]))


def _everyday_abroad(word: str) -> list[str]:
    """What a word that English has borrowed means as an everyday word of a language that many buyers know."""
    if len(word) < 3 or not word.isascii() or zipf(word) >= BORROWED or "function word" in kinds(word):
        return []
    return [
        one.english
        for one in listed_translations(word, compounds=False)
        if one.source == "own list"
        and one.language in EVERYDAY
        and one.english != word
        and one.score >= (INFLECTED if is_in_use(word, one.language) else 1)
    ]


@lru_cache(maxsize=1 << 18)
def meaning_similarity_of_words(one: str, other: str, least: float = 0.0) -> float | None:
    """The similarity of two words in meaning: in [0, 1], 1 = the same word; None if either is not in the lexicon.

    A word of another language means what its English equivalent means (TMEP 1207.01(b)(vi)), and so does a given name
    (Maria, Mary). What is below `least` may come out as 0.
    """
    if one == other:
        return 1.0
    if not set(one_name(one)).isdisjoint(one_name(other)):
        return TRANSLATED
    ours, theirs = said_in_english(one), said_in_english(other)
    pairs = [(one, yours) for yours in theirs] + [(mine, other) for mine in ours]
    pairs += [(mine, yours) for mine in ours for yours in theirs]
    known = [_in_english(one, other, least), *(_translated(*pair, least) for pair in pairs)]
    return max((value for value in known if value is not None), default=None)


def _in_english(one: str, other: str, least: float) -> float | None:
    value = lexicon().closeness(one, other, least)
    if value is None or value >= DERIVED:
        return value
    through = [(word, other) for word in _derived(one)] + [(one, word) for word in _derived(other)]
    near = (1.0 if our == their else lexicon().closeness(our, their, least / DERIVED) or 0.0 for our, their in through)
    return max([value, *(DERIVED * one for one in near)])


@lru_cache(maxsize=1 << 14)
def _derived(word: str) -> tuple[str, ...]:
    """The words that a word, or a base form of it, is derived from, or that are from it."""
    return tuple(sorted({other for lemma in _lemmas(word) for other in derived_words(lemma)}))


def _translated(one: str, other: str, least: float) -> float | None:
    value = 1.0 if one == other else _in_english(one, other, least)
    return None if value is None else TRANSLATED * value


@lru_cache(maxsize=1 << 14)
def english_choices(word: str) -> tuple[tuple[str, ...], ...]:
    """The English readings of a foreign word, the likeliest first, each as its words, in all their `spellings`; empty
    for an English or unknown one."""
    if (kept := kept_word(word)) is not None:
        return kept.english
    return _in_words(possible_meanings(word))


def _in_words(english: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    return tuple(dict.fromkeys(way for parts in map(tokenize, english) if parts for way in spellings(parts)))


ARTICLES = {
    "el": "es", "los": "es", "las": "es", "la": "es fr it", "le": "fr it", "les": "fr", "il": "it", "lo": "it",
    "gli": "it", "der": "de", "das": "de", "het": "nl", "de": "nl", "os": "pt", "une": "fr", "ein": "de", "eine": "de",
    "una": "es it", "uma": "pt",
}  # fmt: skip
"""Articles that are no English words, and their languages: after one, a name is read in its language."""


@lru_cache(maxsize=1 << 14)
def english_readings(words: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    """The English readings of a name with foreign words, some two dozen at most; one foreign word may become several
    (Gummistempel, rubber stamp), and a phrase one (arc en ciel, rainbow). A word that English has too is read as
    foreign beside an article or a foreign word of its language (le chat). Empty for a name of English words or unknown
    ones."""
    said = beside_foreign_words(words, [english_choices(word) for word in words])
    whole = ((one.english,) for one in phrase_equivalents(words))
    ways = chain(whole, likeliest([[*ways, (word,)] for word, ways in zip(words, said, strict=True)]))
    return tuple(dict.fromkeys(way for way in ways if way != words))


Ways = Sequence[tuple[str, ...]]
"""Readings of one word, each as its words."""


def beside_foreign_words(words: tuple[str, ...], said: Sequence[Ways]) -> list[Ways]:
    """What each word of a name is in English, from what each is alone: a word that English has too is read as foreign
    beside an article or a foreign word of its language."""
    spoken = set(ARTICLES.get(words[0], "").split()) if len(words) > 1 else set()
    english = [word for word, ways in zip(words, said, strict=True) if not ways]
    if len(english) < len(words) and any(map(everyday_in_others, english)):  # asked first: most say nothing elsewhere
        spoken.update(one.language for word, ways in zip(words, said, strict=True) if ways for one in equivalents(word))
    if not spoken:
        return list(said)
    return [ways or _said_abroad(word, spoken) for word, ways in zip(words, said, strict=True)]


def _said_abroad(word: str, languages: Set[str]) -> tuple[tuple[str, ...], ...]:
    """What an English word says where it is read as an everyday word of one of these languages, each as its words."""
    return _in_words(one.english for one in everyday_in_others(word) if one.language in languages)


@lru_cache(maxsize=1 << 14)
def everyday_in_others(word: str) -> tuple[Translation, ...]:
    """What an English word says as an everyday word of other languages."""
    if (kept := kept_word(word)) is not None and not kept.is_everyday_abroad:
        return ()
    listed = listed_translations(word, compounds=False)
    everyday = (one for one in listed if one.source in COMMON_KNOWLEDGE and one.score >= INFLECTED)
    return tuple([one for one in everyday if one.english != word])


@lru_cache(maxsize=1 << 14)
def spellings(words: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    """English words as written, and with what is also written as one word (hair pin, hairpin) or as two."""
    pairs = ((at, first + second) for at, (first, second) in enumerate(pairwise(words)))
    joined = ((*words[:at], one, *words[at + 2 :]) for at, one in pairs if is_known(one))
    return tuple(dict.fromkeys((words, *joined, divided_into_known(words))))


def divided_into_known(words: tuple[str, ...]) -> tuple[str, ...]:
    """English words, those that are not known divided, if all parts are known then; else as they are."""
    if all(map(is_known, words)):  # known words are not divided
        return words
    apart = tuple(part for word in words for part in segmentations(word)[-1])
    return apart if all(map(is_known, apart)) else words


@lru_cache(maxsize=1 << 13)
def related_words(word: str) -> dict[str, float]:
    """By its `meaning_keys`, what a word's `meaning_similarity_of_words` with `word`, at least `RELATED`,
    is: the most that any of its keys has here. Values below that are those of the lexicon's neighbours; 0 for a word
    not found.
    """
    found: dict[str, float] = {}
    for start in dict.fromkeys((word, *said_in_english(word))):
        share = 1.0 if start == word else TRANSLATED
        lemmas = _lemmas(start)
        near = [*dict.fromkeys(lemmas, 1.0).items(), *lexicon().neighbours(start).items()]
        for other, value in near + list(_through_derived(start, near)):
            for key, counted in ((other, share * value), (TRANSLATION + other, TRANSLATED * value)):
                if counted > found.get(key, 0.0):
                    found[key] = counted
    return found | dict.fromkeys((GIVEN_NAME + name for name in one_name(word)), TRANSLATED)


def _through_derived(word: str, near: Sequence[tuple[str, float]]) -> Iterator[tuple[str, float]]:
    """The words that are close to one derived from `word`, and those derived from one that it is close to (`near`): a
    word and one derived from it share `DERIVED` of what they are close to."""
    for derived in _derived(word):
        for other, value in lexicon().neighbours(derived).items():
            yield other, DERIVED * value
    for other, value in near:
        if DERIVED * value >= RELATED:
            for derived in derived_words(other):
                yield derived, DERIVED * value


def meaning_keys(word: str) -> tuple[str, ...]:
    """The keys by which a word is found for its meaning: itself or its base forms in the lexicon, and, marked, its
    English equivalents and the given name it is a form of."""
    marked = (TRANSLATION + lemma for english in said_in_english(word) for lemma in _lemmas(english))
    names = (GIVEN_NAME + name for name in one_name(word))
    return tuple(dict.fromkeys((*(_lemmas(word) if word.isascii() else (word,)), *marked, *names)))


TRANSLATION, GIVEN_NAME = "=", "~"
"""The marks of a key that is an English equivalent, and of one that is a given name."""


def _lemmas(english: str) -> tuple[str, ...]:
    """The base forms in the lexicon of an English word or phrase, or itself."""
    words = lexicon()
    return (english,) if words.is_lemma(english) else words.bases(english) or (english,)


DERIVED = 0.75
"""The least similarity of a word and one derived from it (sun, sunny), as that which WordNet joins mostly has; and the
share that either has of what the other is close to (pebble, stony: through stone). On pairs of which one word is so
tied to another readers' ratings correlate 0.82 with it, without it 0.78; 0.6 to 0.8 do alike (rated_words.csv)."""
RELATED = 0.4
"""The similarity from which relations of senses count: below it, two words are no neighbours in the lexicon, and there
is only a distant common ancestor, which says little. Words that go together follow people's judgement better with it
than with 0.5 or 0.6 (SimLex-999: 0.72)."""


@lru_cache(maxsize=1 << 14)
def is_surname(word: str) -> bool:
    """Whether `word` is a surname and, if an ordinary word too, not one that is written small."""
    if (kept := kept_word(word)) is not None:
        return kept.is_surname
    if "surname" not in kinds(word):
        return False
    forms = [form for sense in lexicon().senses(word, labelled=False) for form in sense.words if form.lower() == word]
    return all(form[:1].isupper() for form in forms)
