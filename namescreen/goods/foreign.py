"""Words of a name in the languages of its buyers: what they mean for the goods (doctrine of foreign equivalents)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from ..expressions import expression
from ..lexicon import Translation, frequency_languages, kinds, languages, lexicon, translations, zipf
from ..lexicon.foreign_derivation import what_does
from ..lexicon.letter_patterns import alphabet, has_model
from ..lexicon.phrases import is_saying
from ..tables import open_table
from ..territories import languages_of
from ..text import fold
from .coinage import SOUNDS_LIKE, heard_word, is_coined, sounds_alike
from .composition import IMAGES, NO_TIE, is_picture
from .description import NOTHING, describe_plainly, of_term
from .evidence import is_trade_word, read
from .foreign_respelt import respelt_in
from .grounds import ANY_LANGUAGE
from .judged import Judged, Meaning
from .native import DESCRIBES, LEAST_SURE, TOLD, by_doing, by_its_parts, is_native, told
from .phrases import plain_words
from .places import place_of
from .proper_names import is_surname, is_trade_name
from .qualities import is_praise, is_quality
from .small_words import small_words
from .spelt_by_ear import nearly_spelt_for, spelt_for
from .trade_words import LONGEST_TERM, TradeTerm, label_term
from .uses import used_abroad
from .ware_names import ware_names
from .words import runs

__all__ = ["COMMON", "known_languages", "meanings", "read_by_law", "reading_in"]

COMMON = ("es", "fr", "it", "de", "pt", "nl")
"""The languages used if none is named: those that most buyers are assumed to know or ask about."""
SURE = 0.75
"""How sure a translation must be in a language that is not asked for; less is a minor sense of a word, or a guess."""
SISTERS = {"es": ("pt", "it"), "pt": ("es",), "it": ("es",), "nl": ("de",), "sv": ("nb", "da"), "da": ("nb", "sv"),
           "nb": ("da", "sv"), "cs": ("sk",), "sk": ("cs",), "hr": ("sl",), "uk": ("ru",)}  # fmt: skip
SISTER = 0.9
"""How sure a translation is that holds in a language of the same branch: ours, not fitted."""
ENGLISH = 2.5
"""Zipf value from which an English word is read as English (TMEP 1207.01(b)(vi)(A)): 3 in ten million words."""
SYNONYM = 0.85
"""Closeness in meaning from which a gloss of an English word only says it in another way (winter, wintertime)."""
FREQUENT, AS_FREQUENT = 4.2, 0.3
"""Unless in the other language it is a frequent word (Zipf value), or nearly as frequent as in English."""
AS_ENGLISH = 1.0
"""By how much less (Zipf values) a language must use a word than English does to take it for English."""
LONG_VOWELS = frozenset(("de", "et", "fi", "la", "nl"))
"""Languages that write two equal vowels in a row."""
MANY_FORMS = frozenset(("et", "fi", "hu", "tr"))
"""Languages whose nouns have so many forms that some look like English words; those in use are in their texts."""
_LENT = frozenset("éèàêâçşţ")
"""Letters that come with words from French into other languages, and Romanian ones as old machines write them."""
_DOUBLED = expression(r"([aeiou])\1")
INTERNATIONAL = 8
"""The fewest letters of an English word that is taken for an international one in another spelling."""
ACCENTED = frozenset(("fr", "es", "it", "pt"))
"""Languages that write accents by rule, as English does not."""
WARE = 0.95
"""How sure the name of a ware of shops is beside other meanings of a word."""
QUALITY = 0.7
"""How plainly a quality describes any goods, as `description` weighs it."""
SHORTEST = 3
_SHORT_WORDS = frozenset(
    "a i ad ah am an as at ax be by do eh go ha he hi ho if in is it ma me my no of oh ok on or ox pa so to tv up us we"
    .split()
)
"""The fewest letters of an English word that a translation gives, but for the words of everyday English: shorter ones
are symbols and abbreviations."""
SURE_BY_EAR = 0.9
"""How sure it is that a strange word is one for the goods in another spelling. Ours; common practice, no source."""
HARDLY_KNOWN = 1.5
"""Zipf value below which an English word is no meaning that a surname brings to mind: a plant called after someone."""
BOTH = 0.65
"""How plainly each part of a compound must describe the goods for the whole to be sure to do so. Ours."""
PLAIN_PART, NATIVE_PART = 5, 4
"""A guess is told of a name if it describes the goods, or if its parts have so many letters: shorter ones are found in
coined words by chance (Tessivane: te, si, vane). In a word that looks native a letter less is enough."""


@lru_cache(maxsize=1 << 13)
def meanings(name: str, goods: str, language: str, asked: bool) -> Mapping[str, Meaning]:
    """Each word of `name` that `language` has, with the meaning that describes `goods` most plainly and surely.

    Unless the language was `asked` for, English words are left alone: the ordinary buyer does not stop and translate
    them (TMEP 1207.01(b)(vi)(A))."""
    words = plain_words(name)
    written = {fold(one): one for one in name.lower().split() if not one.isascii()}
    found = _phrases(words, goods, language)
    in_language = bool(found)
    if asked and not in_language and len(words) > 1:
        in_language = any(_only_there(word, language) or _is_small_there(word, language) for word in words)
    runs = (" ".join(words[start:end]) for start in range(len(words)) for end in range(start + 2, len(words) + 1))
    taken = {part for run in (*found, *filter(_has_own_sense, runs)) for part in run.split()}  # a red herring is no red
    for word in words:
        accented = asked and word in written and language in ACCENTED  # forgé is no English forge
        in_english = not accented and (lexicon().known(word) or is_trade_word(word) or is_quality(word))
        english = in_english and (not asked or (not in_language and _is_english_beside(word, words, language)))
        if word in taken or english or _is_spelt_elsewhere(written.get(word, ""), language):
            continue
        said = label_term(written.get(word, word), goods, language)
        if kinds(word) & {"function word", "company form"} and (said is None or word not in written):
            continue
        if in_english and describe_plainly(word, goods).names_goods and not (said and said.names_goods):
            continue
        meaning = _listed(word, goods, language, asked, said, in_english=in_english,
                          in_language=in_language, accented=accented)  # fmt: skip
        if asked and not in_english and told("excellent", goods) > (told(meaning.english, goods) if meaning else 0.0):
            meaning = Meaning("excellent", language) if is_praise(word, language) else meaning
        if meaning is None and asked and is_coined(word):
            parts = None if is_surname(word) else by_its_parts(word, goods, language)
            meaning = parts or _as_respelt(word, goods, language)
        if meaning is not None:
            found[word] = meaning
    if found:  # beside them its small words say nothing
        found |= {word: Meaning("", language) for word in words if word not in found and word in small_words(language)}
    return found


def _as_respelt(word: str, goods: str, language: str) -> Meaning | None:
    """What an unknown word means that is an everyday one in another spelling, if that plainly describes the goods, and
    English readers do not hear a word for them as well (Ruksak)."""
    if heard_word(word, goods):
        return None
    own, english = spelt_for(word, goods, language)
    if not own:
        own, english = nearly_spelt_for(word, goods, language)
    if own and told(english, goods) >= TOLD:
        return Meaning(english, language, SURE_BY_EAR, written_for=own)
    found = [(told(one.english, goods), one, form) for form, one in respelt_in(word, language)]
    plainest = max(found, key=lambda each: (each[0], each[1].score, -each[1].english.count(" ")), default=None)
    plainly, best, form = plainest or (0.0, None, "")
    if best is None or plainly < (QUALITY if is_quality(best.english) else TOLD):
        return None
    return Meaning(best.english, language, best.score, written_for=form)


@lru_cache(maxsize=1 << 12)
def _is_spelt_elsewhere(written: str, language: str) -> bool:
    """Whether a word is written with a letter that the language has not: a Swedish räv is no Danish rav; a word that
    it has from French only in the form that it has (a French tressée is no form of a German Tresse)."""
    if not written or not has_model(language):
        return False
    foreign = {one for one in written if one.isalpha() and not one.isascii()} - {*alphabet(language)}
    lent = bool(foreign) and language not in (*ACCENTED, "ro")  # which write them in words of their own
    return bool(foreign - _LENT) or (lent and not _is_entry(fold(written), language))


@lru_cache(maxsize=1 << 12)
def _is_entry(word: str, language: str) -> bool:
    """Whether the folded `word` is itself an entry of a language, and no form of another one."""
    rows = (one.split("|", 2) for one in (open_table("foreign_words.tsv").get(word) or "").split(";"))
    return any(code == language and listed in ("", word) for code, listed, _ in (row for row in rows if len(row) == 3))


def _phrases(words: tuple[str, ...], goods: str, language: str) -> dict[str, Meaning]:
    """The runs of words that labels say as one of such goods, or that are praise, the longest first."""
    found: dict[str, Meaning] = {}
    taken: set[int] = set()
    for at, each in runs(words, LONGEST_TERM, 2):
        run, places = " ".join(each), range(at, at + len(each))
        term = label_term(run, goods, language)
        said = Meaning(term.english, language, said=of_term(term)) if term is not None and term.weight else None
        ware = next((one for one in ware_names(run, language) if told(one, goods) >= TOLD), used_abroad(run, language))
        said = said or (Meaning(ware, language) if ware else None) or _as_doing(each, goods, language)
        meaning = said or (Meaning("excellent", language) if is_praise(run, language) else None)
        if meaning is not None and taken.isdisjoint(places):
            taken.update(places)
            found[run] = meaning
    return found


def _as_doing(words: Sequence[str], goods: str, language: str) -> Meaning | None:
    """What a verb and its noun say in two words of a Romance language, if goods do so (corta todo)."""
    parts = what_does("".join(words), language) if len(words) == 2 else ()
    return by_doing(parts, goods, language) if parts and parts[1].written == words[0] else None


def _listed(
    word: str,
    goods: str,
    language: str,
    asked: bool,
    said: TradeTerm | None,
    *,
    in_english: bool,
    in_language: bool,
    accented: bool,
) -> Meaning | None:
    """What a table says that a word means, or labels of such goods (`said`); None if neither says anything, if buyers
    read the word as English or as a place, or if the meaning is no more than a guess."""
    found = _sure(word, language, asked)
    sure = [one for one in found if is_gloss(word, one, accented=accented)]  # else the word is read as English
    plain = {one: told(one.english, goods) for one in sure}
    if said is not None and said.weight and said.english != word:
        plain[Translation(language, said.english, 1.0, "labels")] = max(said.weight, told(said.english, goods))
    for english in ware_names(word, language):
        plain.setdefault(Translation(language, english, WARE, "labels"), told(english, goods))
    if use := used_abroad(word, language):
        plain.setdefault(Translation(language, use, WARE, "labels"), told(use, goods))
    if not plain:
        return None
    leading = max(one.score for one in plain)
    fit = [one for one in plain if one.score == leading or is_quality(one.english) or plain[one] >= TOLD]

    def order(one: Translation) -> tuple[float, float, bool, int]:  # iron before flat iron
        return one.score * plain[one], one.score, one.source == "labels", -one.english.count(" ")

    best = max(fit, key=order)
    plainly = plain[best]
    plainer = plainly > max(NO_TIE, describe_plainly(word, goods).weight)  # else its English meaning says as much
    beside = in_language and best.score >= SURE  # verse koffie is not the verse of a poem
    stays = in_english and not (plainer and (beside or _as_foreign(word, language) or plainly >= TOLD))
    place = place_of(word) is not None and place_of(best.english) is not None  # a place is read as it stands
    guess = best.guessed and plainly < DESCRIBES
    shortest = min(map(len, best.parts), default=0)
    native = best.source == "compound" and shortest >= NATIVE_PART and is_native(word, language)
    chance = guess and shortest < PLAIN_PART and not native
    told_by = [told(word, goods) for word in best.english.split()] if best.guessed else []
    partly = guess and max(told_by) >= DESCRIBES and not _is_picture(best)
    wholly = len(told_by) > 1 and min(told_by) >= BOTH  # smooth shaving, of soap to shave with
    if stays or place or chance or (partly and not wholly):
        return None
    evidence = of_term(said) if said is not None and best.source == "labels" else NOTHING
    return Meaning(best.english, language, 1.0 if wholly else best.score, guessed=best.guessed, said=evidence)


def _is_picture(compound: Translation) -> bool:
    """Whether the last part of a compound is a picture, or the whole a quality (hand woven); where one part describes
    the goods and another does not, no table tells what else they say together (a coffee fox is an own name, a coffee
    grinding work is not)."""
    senses = lexicon().senses(compound.english.split()[-1], labelled=False)[:1]
    return is_quality(compound.english) or (bool(senses) and senses[0].domain in IMAGES)


def _has_own_sense(run: str) -> bool:
    return is_picture(run) or is_saying(run)


def _is_english_beside(word: str, words: tuple[str, ...], language: str) -> bool:
    """Whether buyers of a language read an English word as one because the words beside it are plainly English (a red
    barn is no child, Danish barn), or it is only spelt much like one of theirs, and occurs in none of their texts: a
    lampoon is no lamp."""
    if language not in frequency_languages():
        return False
    others = (one for one in words if one != word and lexicon().known(one) and not kinds(one) & {"function word"})
    spelt = language not in LONG_VOWELS and bool(_DOUBLED.search(word)) and zipf(word, language) < zipf(word)
    unlike = spelt or (language in MANY_FORMS and not zipf(word, language))
    return unlike or any(not _is_of(one, language) or zipf(one, language) < zipf(one) - AS_ENGLISH for one in others)


@lru_cache(maxsize=1 << 13)
def _is_of(word: str, language: str) -> bool:
    """Whether a word is surely one of the language, be it English too."""
    return any(one.score >= SURE and not one.guessed for one in translations(word, language))


@lru_cache(maxsize=1 << 13)
def _only_there(word: str, language: str) -> bool:
    """Whether a word is surely one of the language, and none of English: the words beside it are read in it as well."""
    known = lexicon().known(word) or is_trade_word(word) or place_of(word) is not None
    return not known and _is_of(word, language)


def _is_small_there(word: str, language: str) -> bool:
    """Whether a word is a small one of the language, and none of English: della, voor."""
    return len(word) >= SHORTEST and word in small_words(language) and not (lexicon().known(word) or kinds(word))


def is_gloss(word: str, translation: Translation, *, accented: bool = False) -> bool:
    """Whether a translation tells what a word means: it is another word, not a form or spelling of the same one, and no
    name of a person or product; the name of a place is (Bayern). A word that is written with an accent of its language
    (`accented`) is no English one."""
    english = translation.english
    if english == word or _is_name(english):
        return False
    if translation.source == "spelling" and (
        lexicon().known(word)
        or any(place_of(one) is not None for one in (word, english))
        or _is_misspelling(word, english)
    ):
        return False
    if len(english) < SHORTEST and english not in _SHORT_WORDS:
        return False  # a symbol, as that of cobalt
    if is_surname(word) and " " not in english and zipf(english) < HARDLY_KNOWN:
        return False  # a plant that is called after someone
    if accented or not lexicon().known(word):
        return True
    same = max(lexicon().neighbours(form).get(english, 0.0) for form in _forms(word)) >= SYNONYM
    return not same and not _forms(word) & _forms(english)


@lru_cache(maxsize=1 << 12)
def _is_misspelling(word: str, english: str) -> bool:
    """Whether a spelling of an English word is rather a misspelling of it than a word of another language: these are
    the long words of science and trade (chronometer), not bicycle or stoner."""
    return len(english) < INTERNATIONAL or sounds_alike(word, english) >= SOUNDS_LIKE


@lru_cache(maxsize=1 << 12)
def _is_name(english: str) -> bool:
    """Whether every sense of an English word is the name of one thing, or a maker's."""
    senses = lexicon().senses(english, labelled=False)
    if not senses or place_of(english) is not None:
        return False
    return is_trade_name(english) or all(lexicon().related_ids(one.id, "@i") for one in senses)


def _forms(word: str) -> frozenset[str]:
    """A word, and the base forms of it, adverbs by their adjectives: hands and hand, simply and simple."""
    adjectives = [word[:-1] + "e", word[:-2]] if word.endswith("ly") else []
    return frozenset((word, *lexicon().bases(word), *adjectives))


def _as_foreign(word: str, language: str) -> bool:
    """Whether buyers who read English as well take an English word for another one of their language: it is frequent
    there, or hardly known in English."""
    if any(_forms(word) & _forms(one.english) for one in translations(word, language)):
        return False  # the same word in both: rose, hotel
    there, here = zipf(word, language) if language in frequency_languages() else 0.0, zipf(word)
    return here < ENGLISH or there >= FREQUENT or there >= here - AS_FREQUENT


def _sure(word: str, language: str, asked: bool) -> list[Translation]:
    """The translations to go by. Of a language asked for also guesses; and where it has none, those of a language so
    near that most such words are the same there, unless the word is better known in English."""
    if not asked:
        return [one for one in translations(word, language) if one.score >= SURE and not one.guessed]
    found = [one for one in translations(word, language) if one.score >= LEAST_SURE]
    if found and any(not one.guessed for one in found):
        return found
    if lexicon().known(word) or place_of(word) is not None:
        return found
    if language in frequency_languages() and zipf(word) > zipf(word, language):
        return found  # rather a name
    near = (one for sister in SISTERS.get(language, ()) for one in _sure(word, sister, asked=False))
    return [one._replace(score=one.score * SISTER) for one in near] or found


def reading_in(
    name: str, goods: str, language: str, *, asked: bool = True, surnames: bool = True
) -> tuple[Judged, ...] | None:
    """The content words of `name` as buyers of `language` read it; None if it has no word of that language."""
    found = meanings(name, goods, language, asked)
    return read(name, goods, found, surnames=surnames) if found else None


def read_by_law(laws: Iterable[str], held: Iterable[str]) -> tuple[str, ...]:
    """The languages beyond those `held` in which a name is read under `laws`, whatever languages its maker states: in
    the European Union all of its own, in the United States and Canada all that are known here, elsewhere the common
    ones, which some buyers there may understand."""
    read = {"EU": languages_of(("EU",)), **dict.fromkeys(("US", *ANY_LANGUAGE), languages())}
    codes = dict.fromkeys(code for law in laws for code in read.get(law, COMMON))
    return tuple(code for code in codes if code in languages() and code not in held and code != "en")


def known_languages(tags: Iterable[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Of BCP 47 tags the languages with a table here, and those without one; English is no foreign language."""
    held = ("en", *languages())
    codes = tuple(dict.fromkeys(tag.split("-")[0].lower() for tag in tags))
    return tuple(code for code in codes if code in held), tuple(code for code in codes if code not in held)
