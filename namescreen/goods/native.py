"""Words of a buyer's language that no table has: judged by the parts they are made of, and else not judged at all.

A compound or derivation of known words is about what these are about (slijperij: to grind). What such a word says as a
whole no table tells: where its parts do not describe the goods, its meaning is unknown, and so is its distinctiveness.
It is no coinage."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from ..lexicon import Translation, kinds, zipf
from ..lexicon.foreign_derivation import Part, compound_of, derived, what_does
from ..lexicon.foreign_forms import COMPOUNDING
from ..lexicon.language_codes import language_name
from ..lexicon.native_words import NativeWord, native_word
from ..lexicon.translation import equivalents_in, listed_translations
from ..outcome import ASK_A_SPEAKER
from .animals import is_animal
from .composition import NO_TIE, is_coined_own
from .description import NOTHING, EvidenceKind, of_kind, says_what_is_kept_away
from .doing import DOERS, OCCASIONS
from .evidence import judge_phrase
from .judged import Judged, Meaning
from .lacking import said_to_lack
from .phrases import goods_words
from .qualities import is_quality
from .together import DOING
from .trade_words import called

__all__ = ["DESCRIBES", "LEAST_SURE", "TOLD", "by_doing", "by_its_parts", "is_native", "told", "unknown_meaning",
           "unknown_words"]  # fmt: skip

LEAST_SURE = 0.45
"""How sure a translation must be to be gone by in a language of the buyers; less is a minor sense of a word."""
DESCRIBES = 0.5
"""How plainly the parts of a word must describe the goods to be told of it."""
TOLD = 0.8
"""How plainly a minor sense of a word must describe the goods for buyers to understand it so; also the translation of
an English word, for those who read English too. A quality is understood where the leading sense says less."""
SIDE_SENSE = 0.65
"""The most that a sense of one part alone may tell where the parts together have no tie to the goods (north alone is a
place)."""
SURE_PART, PLAIN_PART = 0.85, 4
"""How sure the senses of parts must be that say nothing of the goods, and how many letters they must have."""
LACKING_SURE = 0.9
"""How sure the meaning is of a word that says what goods lack: it says so in one way."""
DOING_SURE, LEAST_DOING = 0.9, 0.25
"""How sure the meaning is of a thing and what is done with it that say what goods do, and how sure each part must be,
as each makes the other surer."""
SHORTEST_HEAD = 3
"""The fewest letters of what a language calls the goods, and of what stands before it, in a compound."""
FORMS_OF_GOODS = frozenset(
    """
    work device apparatus appliance equipment gear machine tool means agent article piece material stuff substance thing
    matter ware wares goods utensil instrument element implement
""".split()
)
"""What the last part of a compound says of goods of any kind (-werk, -zeug, -middel, -vara): the parts before it tell
which. Ours; common practice, no source."""


_OF_ANIMALS = frozenset(
    """
    leather hide skin fur wool hair fleece horn bone antler tooth feather down quill shell silk milk cheese meat fat egg
    tallow grease gelatin bristle gut broth stock sausage ham roast steak fillet food feed bed house toy lead collar
""".split()
)
"""What comes from animals, or is for them: before such a word an animal says what goods are."""
TIMES = frozenset(("time", "hour", "break"))
"""What the last part of a compound says that tells the occasion on which goods are used."""


def told(english: str, goods: str) -> float:
    """How plainly a meaning describes the goods; a little more if it names them."""
    found = judge_phrase(english, goods)
    return 0.0 if found is None else found.evidence.weight + 0.1 * found.evidence.names_goods


@lru_cache(maxsize=1 << 13)
def is_native(word: str, language: str) -> bool:
    """Whether an unknown word is surely one of the language by its form, and of parts that it has."""
    found = native_word(word, (language,))
    return found is not None and found.is_sure and bool(found.parts)


@lru_cache(maxsize=1 << 13)
def by_its_parts(word: str, goods: str, language: str) -> Meaning | None:
    """What an unknown word that looks native means by its parts: if these describe the goods, or if no sense of any has
    to do with them (north wind, for chocolate); None if they do in part, or are not known."""
    if lacking := said_to_lack(word, language):
        said = of_kind("quality") if says_what_is_kept_away(lacking, goods) else NOTHING
        return Meaning(lacking, language, LACKING_SURE, guessed=True, said=said)
    if with_english := _with_english_goods(word, goods, language):
        return with_english
    parts = what_does(word, language)
    if not parts and native_word(word, (language,)) is None:
        return None
    parts = parts or compound_of(word, language)
    if len(parts) == 2 and (doing := by_doing(parts, goods, language)):
        return doing
    if parts:
        *modifiers, head = (_fitting(part.senses, goods) for part in parts)
        pictures = _pictures(parts, goods)
        if not pictures and (_is_form_of_goods(parts[-1].senses) or _is_time(parts[-1].senses)):
            return _meaning(modifiers, goods, language)
        if pictures or _say_nothing(parts, goods):
            english = " ".join(part.senses[0].english for part in parts)
            return Meaning(english, language, min(part.senses[0].score for part in parts), guessed=True)
        return _meaning((head,) if _names_goods(head, goods) else (*modifiers, head), goods, language)
    bases = derived(word, language)
    found = _meaning((_fitting(bases, goods),), goods, language) if bases else None
    return found._replace(about=True) if found else None


def by_doing(parts: tuple[Part, ...], goods: str, language: str) -> Meaning | None:
    """What a thing and who or what does something with it say as the parts of a word, if goods do so (quitamanchas, of
    soap for clothing: stain remover; Leseecke)."""
    what, doer = parts
    doers = [one.english for one in doer.senses if one.score >= LEAST_DOING and one.english in DOERS | OCCASIONS]
    things = [one.english for one in what.senses if one.score >= LEAST_DOING]
    ways = (f"{one} {other}" for other in doers for one in things)
    said = next((way for way in ways if (found := judge_phrase(way, goods)) and found.evidence == DOING), "")
    return Meaning(said, language, DOING_SURE, guessed=True) if said else None


def _with_english_goods(word: str, goods: str, language: str) -> Meaning | None:
    """What a word of the language says before the English word for the goods, if it describes them: velobag."""
    heads = (one.word for one in goods_words(goods) if one.head and word.endswith(one.word))
    for head in heads:
        first = word.removesuffix(head)
        senses = listed_translations(first, language, compounds=False) if len(first) >= PLAIN_PART else ()
        found = _meaning(tuple(one for one in senses if one.score >= SURE_PART)[:1], goods, language)
        if found:
            return found._replace(english=f"{found.english} {head}")
    return None


def _meaning(telling: Iterable[Translation], goods: str, language: str) -> Meaning | None:
    """What the parts of a word that tell something say, if it describes the goods."""
    sure = [one for one in telling if one.score >= LEAST_SURE]
    if min((told(one.english, goods) for one in sure), default=0.0) < DESCRIBES:
        return None
    english = " ".join(one.english for one in sure)
    return Meaning(english, language, min(one.score for one in sure), guessed=True)


def _say_nothing(parts: tuple[Part, ...], goods: str) -> bool:
    senses = [one for part in parts for one in part.senses if one.score >= LEAST_SURE]
    plain = all(part.senses[0].score >= SURE_PART and len(part.written) >= PLAIN_PART for part in parts)
    leading = " ".join(part.senses[0].english for part in parts)
    side = (told(one.english, goods) < SIDE_SENSE and not is_quality(one.english) for one in senses)
    return plain and told(leading, goods) < NO_TIE and all(side)


def _pictures(parts: tuple[Part, ...], goods: str) -> bool:
    """Whether a compound of two surely known parts ends in an animal that nothing ties to the goods (a moon goat), or
    begins with one, and what it says of that comes from no animal: steel of a wolf is an image, leather of a calf is
    not."""
    first, last = parts[0].senses[0], parts[-1].senses[0]
    sure = min(first.score, last.score) >= SURE_PART
    if sure and is_animal(last.english) and told(last.english, goods) < NO_TIE:
        return True
    return sure and is_animal(first.english) and told(first.english, goods) < NO_TIE and last.english not in _OF_ANIMALS


def _fitting(senses: tuple[Translation, ...], goods: str) -> Translation:
    """Of the senses of a part, the one that is meant on such goods: the leading one, a quality, or one that plainly
    describes them."""
    fit = [
        one
        for one in senses
        if one.score == senses[0].score
        or (one.score >= LEAST_SURE and (is_quality(one.english) or told(one.english, goods) >= TOLD))
    ]
    return max(fit, key=lambda one: (one.score * told(one.english, goods), one.score, zipf(one.english)))


def _names_goods(sense: Translation, goods: str) -> bool:
    found = judge_phrase(sense.english, goods)
    return found is not None and found.evidence.names_goods


def _is_form_of_goods(senses: tuple[Translation, ...]) -> bool:
    """Whether a leading sense is one that goods of any kind have, or a form of business."""
    leading = {one.english for one in senses if one.score >= TOLD}
    return any(word in FORMS_OF_GOODS or "generic head" in kinds(word) for one in leading for word in one.split()[:1])


def _is_time(senses: tuple[Translation, ...]) -> bool:
    """Whether the last part is a time, for what the first says: bath time, an hour for reading."""
    return any(one.english in TIMES and one.score >= LEAST_SURE for one in senses)


@lru_cache(maxsize=1 << 12)
def _ends_in_goods(word: str, goods: str, languages: tuple[str, ...]) -> NativeWord | None:
    """A word that ends in what one of the `languages` that form compounds calls the goods (bromtol, of tops), as a
    compound of it; None if it does not."""
    ends = (
        (language, name)
        for language in languages
        if language in COMPOUNDING
        for english in sorted(called(goods))
        for name in equivalents_in(english, language)
        if len(name) >= SHORTEST_HEAD and word.endswith(name) and len(word) - len(name) >= SHORTEST_HEAD
    )
    return next((NativeWord(one, (word.removesuffix(name), name)) for one, name in ends), None)


def unknown_words(
    plain: tuple[Judged, ...], readings: Mapping[str, tuple[Judged, ...]], languages: tuple[str, ...], goods: str
) -> dict[str, NativeWord]:
    """The words that look native to one of the `languages` and that no table has; also one whose parts say something of
    the goods, and not plainly what."""
    meant = [one for judged in readings.values() for one in judged if one.meaning]
    vague = {
        one.word: NativeWord(one.meaning.language)
        for one in meant
        if one.meaning and one.meaning.guessed and one.meaning.sure < 1 and one.evidence.weight >= NO_TIE
        and not _is_of_labels(one)
    }
    known = {part for one in meant for part in one.word.split()} - vague.keys()
    own = [one.word for one in plain if is_coined_own(one) and one.word not in known]
    found = (
        (word, vague.get(word) or _ends_in_goods(word, goods, languages) or native_word(word, languages))
        for word in dict.fromkeys((*own, *vague))
    )
    return {word: native for word, native in found if native}


def _is_of_labels(one: Judged) -> bool:
    """Whether labels of the goods say together what the parts of a word mean (oven fresh, of bread), or sellers of any
    (hand woven)."""
    said = one.evidence.kind is EvidenceKind.TERM and " " in one.stands_for and one.evidence.weight >= TOLD
    return said or is_quality(one.stands_for)


def unknown_meaning(word: str, found: NativeWord) -> str:
    """Why a name with this word is not judged, or not surely."""
    language = language_name(found.language)
    if not found.is_sure:
        return f'"{word}" is not among the words of {language} here, but looks like one: {ASK_A_SPEAKER}'
    parts = f" ({' + '.join(found.parts)})" if found.parts else ""
    return f'"{word}" looks like a word of {language}{parts} whose meaning is not known here: {ASK_A_SPEAKER}'
