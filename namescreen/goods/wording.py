"""Goods worded in another language, read in English: every reader of goods goes through this module.

A list stays as it is where its words are mostly English. Else its language is the one that has most of its words, and
each word is replaced by what labels of the wares of the list say with it, or by its most reliable translation. Each
item of a mostly English list is treated likewise, and of one in many languages: some offices give a list in all theirs.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import Translation, association, kinds, languages, lexicon, translations, zipf
from ..tables import open_table
from ..text import fold, split_closed_compound
from .trade_table import LABEL_LANGUAGES, LONGEST_TERM, RESPELT, LabelSense, is_said_in_english, label_senses
from .words import base_form, is_noun, is_trade_word, known_as, without_possessives

__all__ = ["Wording", "in_english", "not_read", "remark", "small_words"]

LEAST_SURE, SURE = 0.45, 0.75
"""How reliable a translation must be in the language of the list, and to take a word for a foreign one: as for a word
of a name in a language that is asked for, and in one that is not."""
COMPOUND = 0.7
"""How reliable a compound must be: both of its parts are known then, in one language."""
GUESS = 0.6
"""The weight of a guess towards the language: parts and spellings match by chance in other languages."""
IN_USE = 3.8
"""Zipf value from which a word that is in no dictionary still counts as English (slang), if it is no name."""
RARE = 3.0
"""Zipf value below which an English word that is in no list of goods may be a foreign one."""
NEAR, ONE_LANGUAGE = 0.6, 0.75
"""How much of an item a language must have, beside the one that has most of it, and of how many items, for a list to be
in that language; set by hand, on real lists."""
SEVERAL, LONGEST_SHOWN = "mul", 60
"""The code of ISO 639-2 for many languages, and the most letters of goods that a remark shows."""

_SMALL_WORDS = {
    "de": "und:and oder:or von:of vom:of aus:of für:for zum:for zur:for mit:with ohne:without in:in der: die: das: "
    "den:",
    "fr": "et:and ou:or de:of des:of du:of d:of pour:for à:for au:for aux:for avec:with sans:without en:of le: la: "
    "les: l:",
    "es": "y:and e:and o:or de:of del:of para:for con:with sin:without en:in el: la: los: las:",
    "it": "e:and ed:and o:or di:of del:of della:of dei:of delle:of d:of per:for da:for con:with senza:without in:of "
    "il: la: lo: i: gli: le: l:",
    "nl": "en:and of:or van:of uit:of voor:for met:with zonder:without de: het:",
    "pt": "e:and ou:or de:of do:of da:of dos:of das:of para:for com:with sem:without em:of o: a: os: as:",
    "sv": "och:and eller:or av:of för:for till:for med:with utan:without",
    "da": "og:and eller:or af:of til:for med:with uden:without",
    "nb": "og:and eller:or av:of til:for med:with uten:without",
    "fi": "ja:and sekä:and tai:or varten:",
    "pl": "i:and oraz:and lub:or z:of ze:of dla:for do:for na:for bez:without",
    "cs": "a:and nebo:or z:of ze:of pro:for na:for s:with se:with bez:without",
    "sk": "a:and alebo:or z:of zo:of pre:for na:for s:with so:with bez:without",
    "hu": "és:and vagy:or a: az: való:",
    "ro": "și:and sau:or de:of din:of pentru:for cu:with fără:without",
    "hr": "i:and ili:or od:of iz:of za:for s:with bez:without",
    "sl": "in:and ali:or od:of iz:of za:for z:with s:with brez:without",
    "et": "ja:and või:or",
    "lt": "ir:and arba:or iš:of su:with be:without",
    "lv": "un:and vai:or no:of ar:with bez:without",
    "el": "και:and ή:or από:of για:for με:with χωρίς:without το: τα: του: της: των:",
    "tr": "ve:and veya:or için: ile:with",
    "bg": "и:and или:or от:of за:for със:with с:with без:without на:of",
    "ru": "и:and или:or из:of для:for с:with без:without на:for",
    "uk": "і:and та:and або:or з:of із:of для:for без:without на:for",
}
"""Function words of each language, with the English one of the same function in a list of goods, or nothing; from
memory of each language's grammar."""
_SMALL = {
    code: {fold(word): english for word, _, english in (pair.partition(":") for pair in text.split())}
    for code, text in _SMALL_WORDS.items()
}
_NOUN_FIRST = frozenset(("fr", "es", "it", "pt", "ro"))
"""Languages in which what is said of a thing mostly follows its noun."""
_ANY_SMALL = frozenset(word for words in _SMALL.values() for word in words)
_PLAINLY_ENGLISH = frozenset(("and", "by", "for", "from", "of", "the", "with"))
_ENGLISH_TOO = frozenset("a as be do i in is no o s so".split())
_NAMES = frozenset(("given name", "surname", "place"))
_ACCENTED_IN_ENGLISH = frozenset(
    "appliqué café crème crêpe décor découpage entrée glacé pâté purée rosé sauté soufflé".split()
)
"""Words of goods that English often writes with their accents; from memory."""
_WORD = re.compile(r"[^\W_]+(?:-[^\W_]+)*")
_SEPARATOR = re.compile(r"([,;()/\n])")
_ITEMS = re.compile(r"([,;\n])(?![^(]*\))")


def small_words(language: str) -> Mapping[str, str]:
    """The folded function words of goods lists in a language, with the English one of the same function, or ""."""
    return _SMALL.get(language, {})


def _joined(parts: list[str]) -> str:
    """Words and the separators between them as one text: no space before a comma, one after it."""
    return re.sub(r" ?([,;)/]) ?", r"\1 ", " ".join(filter(None, parts))).replace("( ", "(").strip()


@dataclass(frozen=True, slots=True)
class Wording:
    """Goods as read: in `english` words, from `language` (BCP 47, `SEVERAL` for a list in many). `unread` are the words
    that no table here knows, as they are written; `understood` whether any word is known."""

    english: str
    language: str = "en"
    unread: tuple[str, ...] = ()
    understood: bool = True


@lru_cache(maxsize=1 << 13)
def in_english(goods: str, languages: tuple[str, ...] = ()) -> Wording:
    """`goods` in English words; unchanged if they are English or no word of them can be read.

    `languages` (BCP 47) are those in which the goods may be worded, likeliest first, where that is known: in one of
    them are goods that are names of wares there and nothing else, whatever the words mean in English (Tee)."""
    parts = _ITEMS.split(goods)
    listed = [tuple(_words(part)) for part in parts]
    spoken = (code for code in languages if all(_says_wares(words, code) for words in listed if words))
    if any(listed) and (code := next(spoken, "")):
        return _translated(goods, code)
    language = _own_language(goods)
    own = _languages_of(parts, language)
    if set(own) == {language}:
        return Wording(goods) if language == "en" else _translated(goods, language)
    each = zip(parts, own, strict=True)
    read = [Wording(part.strip()) if code == "en" else _translated(part, code) for part, code in each]
    found = next((one.language for one in read if one.language != "en" or one.unread), "en")
    unread = tuple(word for one in read for word in one.unread)
    return Wording(_joined([one.english for one in read]), found if language == "en" else SEVERAL, unread)


def _languages_of(parts: list[str], language: str) -> list[str]:
    """The language of each item of a list and of each separator between them: that of the list, unless it has too few
    of the items for one language."""
    if language != "en":
        listed = [(fold(part.strip()), words) for part in dict.fromkeys(parts) if (words := tuple(_words(part)))]
        english = (zipf(said) >= RARE and is_said_in_english(said) and not _says_wares(words, language)
                   for said, words in listed)  # fmt: skip
        values = [{"en": 1.0} if own else _values(words) for own, (_, words) in zip(english, listed, strict=True)]
        fits = [NEAR * max(of.values(), default=0) <= of.get(language, 0) for of in values]
        if sum(fits) >= ONE_LANGUAGE * len(fits):
            return [language for _ in parts]
    return [_own_language(part) for part in parts]


def _own_language(text: str) -> str:
    """The language of goods or one item of them by itself; "" if it is foreign and none has its words."""
    words = tuple(_words(text))
    if _is_foreign(text):
        return _language_of(words)
    if is_said_in_english(own := fold(text.strip())) or lexicon().known(own):  # eau de Cologne
        return "en"
    strange = any(_standing(*pair) in ("small", "foreign") for pair in words)  # pots de fleurs
    spoken = LABEL_LANGUAGES if strange else _wares(" ".join(written for written, _ in words)) if words[1:] else ()
    return next((code for code in spoken if _says_wares(words, code)), "en")


def _says_wares(words: tuple[tuple[str, str], ...], language: str) -> bool:
    """Whether words are the names of wares in a language, with its small words between them."""
    units = [(said, label_senses(said, language)[:1]) for said, _ in _units(words, language)]
    wares = [any(one.names_ware and one.sure > RESPELT for one in senses) for _, senses in units]
    between = (ware or fold(said) in small_words(language) for ware, (said, _) in zip(wares, units, strict=True))
    return any(wares) and all(between)


def not_read(goods: str) -> str:
    """The remark on goods with no known word; "" if a word is known, or if there are no words."""
    if in_english(goods).understood or any(known_as(word) for _, word in _words(goods)):
        return ""
    return f'not read: "{_shown(goods)}" holds no word that is known here'


def remark(goods: str, languages: tuple[str, ...] = ()) -> str:
    """How goods of another language were read, in words; "" for English goods, and for goods that cannot be read."""
    read = in_english(goods, languages)
    if read.language == "en":
        return ""
    unread = f", not read: {', '.join(dict.fromkeys(read.unread))}" if read.unread else ""
    language = "several languages" if read.language == SEVERAL else read.language
    return f'{language}: "{_shown(goods)}" read as "{_shown(read.english)}"{unread}'


def _shown(text: str) -> str:
    return text if len(text := " ".join(text.split())) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN].rstrip()} ..."


def _words(text: str) -> Iterator[tuple[str, str]]:
    """Each word as written and folded."""
    for found in _WORD.finditer(without_possessives(text)):
        yield found[0], fold(found[0])


def _is_foreign(text: str) -> bool:
    """Whether more words are foreign, function words included, than plainly English; a rare English word (fraise,
    bijou) counts for neither."""
    if is_said_in_english(fold(text.strip())):  # eau de parfum
        return False
    words = tuple(_words(text))
    standing = [_standing(*word) for word in words]
    foreign = (written for (written, _), how in zip(words, standing, strict=True) if how == "foreign")
    spoken = {code for written in foreign for code in _wares(written)}
    count = Counter(
        "nothing" if how == "english" and any(label_senses(written, code) for code in spoken) else how
        for (written, _), how in zip(words, standing, strict=True)
    )  # natural is Spanish too beside sidra
    accented = any(not written.isascii() for written, _ in words)
    if not (count["foreign"] or ((count["rare"] or accented) and count["small"])):
        return False
    lead = count["foreign"] + count["small"] - count["english"]
    return lead > 0 or (lead == 0 and (count["small"] > 0 or not all(written.isascii() for written, _ in words)))


@lru_cache(maxsize=1 << 14)
def _standing(written: str, folded: str) -> str:
    """What a word is to a reader of English: english, rare, foreign, a small foreign word, or one without evidence."""
    plain = written.isascii()  # the, but not thé
    if plain and (folded in _PLAINLY_ENGLISH or is_said_in_english(folded)):
        return "english"
    if folded in _ANY_SMALL and not (plain and (folded in _ENGLISH_TOO or (folded != "pour" and _names_goods(folded)))):
        return "small"
    if (plain and "function word" in kinds(folded)) or len(folded) == 1 or any(map(str.isdigit, folded)):
        return "nothing"
    known = lexicon().known(folded)
    rare = zipf(folded) < RARE if plain else written.lower() not in _ACCENTED_IN_ENGLISH
    if rare and _wares(written):  # bière is no bier
        return "foreign"
    translated = any(one.score >= SURE and not one.guessed for one in translations(folded))
    abroad = translated and not known and not zipf(folded)  # savon: lists of goods have it, English has not
    if (is_trade_word(folded) and not abroad) or (known and zipf(folded) >= RARE):
        return "english"
    if known or zipf(folded) >= IN_USE:
        return "rare" if known or kinds(folded) & _NAMES else "english"
    if translated:
        return "foreign"
    parts = folded.split("-") if "-" in folded else split_closed_compound(folded, zipf)
    return "english" if len(parts) > 1 and all(map(_may_be_english, parts)) else "foreign"


@lru_cache(maxsize=1 << 13)
def _wares(written: str) -> tuple[str, ...]:
    """The languages in which a word, as it is written, is the name of a ware, and not the English one (kimono)."""
    found = ((code, label_senses(written, code)[:1]) for code in LABEL_LANGUAGES)
    senses = ((code, one) for code, senses in found for one in senses if one.names_ware and one.sure > RESPELT)
    own = base_form(fold(written))
    return tuple(code for code, one in senses if base_form(one.english) != own)


def _names_goods(folded: str) -> bool:
    """Whether lists of goods have the word for a thing (die), and not only in the words around one (pour over)."""
    return f"h:{base_form(folded)}" in open_table("class_weights.tsv")


def _may_be_english(word: str) -> bool:
    return lexicon().known(word) or is_trade_word(word) or "function word" in kinds(word)


def _translated(text: str, language: str) -> Wording:
    words = tuple(_words(text))
    if not language:
        strange = tuple(pair for pair in words if _standing(*pair) == "foreign")
        known = any(_standing(*pair) in ("english", "rare") or _in_vectors(pair[1]) for pair in words)
        return Wording(text, unread=tuple(written for written, _ in strange), understood=known)
    unread: list[str] = []
    told = []
    wares = {area.names for written, _ in words for one in label_senses(written, language) for area in one.areas
             if one.names_ware}  # fmt: skip
    for part in _SEPARATOR.split(text):
        runs: list[list[str]] = [[]]
        small: list[str] = []
        for said, folded in _units(tuple(_words(part)), language):
            label = _label(said, folded, language, frozenset(wares))
            if not label and folded in small_words(language):
                small.append(small_words(language)[folded])
                runs.append([])
                continue
            found = _best(folded, language)
            if not label and not found and _standing(said, folded) == "foreign":
                unread.append(said)
            runs[-1].append(label or (found.english if found else folded))
        named = frozenset(name for names in wares for name in names)
        ordered = [" ".join(_head_last(run, named if language in _NOUN_FIRST else frozenset())) for run in runs]
        told.append(" ".join(filter(None, (one for pair in zip(ordered, (*small, ""), strict=True) for one in pair))))
        if _SEPARATOR.fullmatch(part):
            told[-1] = part
    english = _joined(told)
    if not unread and _bases(english) == _bases(text):  # blousons is German too, and means no more
        return Wording(text)
    return Wording(english, language, tuple(unread))


def _bases(text: str) -> list[str]:
    return [base_form(folded) for _, folded in _words(text)]


def _units(words: tuple[tuple[str, str], ...], language: str) -> Iterator[tuple[str, str]]:
    """The words, those together that labels have as one term (pain au levain)."""
    at = 0
    while at < len(words):
        sizes = range(min(LONGEST_TERM, len(words) - at), 1, -1)
        runs = ((" ".join(written for written, _ in words[at : at + size]), size) for size in sizes)
        run, size = next((one for one in runs if label_senses(one[0], language)), (words[at][0], 1))
        yield run, " ".join(folded for _, folded in words[at : at + size])
        at += size


def _label(said: str, folded: str, language: str, wares: frozenset[tuple[str, ...]]) -> str:
    """What labels mean with words: the name of a ware, what is said of the `wares` of the list, or what only they say,
    or only with these accents; "" if nothing."""
    senses = label_senses(said, language)
    def fits(one: LabelSense) -> bool:
        return one.names_ware or any(area.names in wares for area in one.areas)

    fit = [one for one in senses if one.sure == senses[0].sure and fits(one)] or list(filter(fits, senses))
    meant = max(fit, key=lambda one: (one.sure, one.names_ware, _worth(one.english)), default=None)
    if senses and (meant or " " in folded or not said.isascii() or not _best(folded, language)):
        return (meant or senses[0]).english
    return ""


def _in_vectors(word: str) -> bool:
    """Whether the word has a vector: its associations are known, if not its meaning."""
    return association(word, word) is not None


def _language_of(words: tuple[tuple[str, str], ...]) -> str:
    """The language that has most of the words, most reliably; "" if none has any word that is not small."""
    values = _values(words)
    return max(values, key=lambda code: values[code], default="")


def _values(words: tuple[tuple[str, str], ...]) -> dict[str, float]:
    """How much each language has of the words, in words, by how reliable what they mean is; those that have none but
    small words are left out."""
    values = {}
    evident = [pair for pair in words if _standing(*pair) in ("foreign", "rare", "small")]
    if all(folded in _ANY_SMALL for _, folded in evident):
        evident = [*words]
    else:  # de is no German word beside lampe
        evident = [pair for pair in evident if pair[1] not in _ANY_SMALL or not pair[0].isascii()]
    for code in languages():
        if code == "la":  # no market speaks it
            continue
        small = _SMALL.get(code, {})
        read = (_read(*pair, code) for pair in evident if pair[1] not in small or not pair[0].isascii())
        found = [one for one in read if one and (one.score >= SURE or not one.guessed or _is_compound(one))]
        if not found:
            continue
        value = sum(one.score * (GUESS if one.guessed else 1.0) for one in found)
        values[code] = value + sum(folded in small for _, folded in words)
    return values


def _read(written: str, folded: str, language: str) -> Translation | None:
    """The translation of a word, by labels first where it is the name of a ware."""
    label = next((one for one in label_senses(written, language) if one.names_ware and one.sure > RESPELT), None)
    return Translation(language, label.english, label.sure, "labels") if label else _best(folded, language)


def _is_compound(found: Translation) -> bool:
    return found.source == "compound" and found.score >= COMPOUND


@lru_cache(maxsize=1 << 14)
def _best(folded: str, language: str) -> Translation | None:
    """The most reliable translation; of equal ones a word for goods first, then a common word before a rare one."""
    in_use = zipf(folded) > 0  # a word of English texts is neither split nor taken for a misspelling
    found = [
        one
        for one in translations(folded, language)
        if one.score >= LEAST_SURE and not (in_use and one.guessed)
    ]
    return max(found, key=lambda one: (one.score, *_worth(one.english)), default=None)


def _worth(english: str) -> tuple[bool, float]:
    *_, last = words = english.split()
    of_goods = is_noun(last) and f"h:{base_form(last)}" in open_table("class_weights.tsv")
    return of_goods, min(map(zipf, words))


def _head_last(run: list[str], wares: frozenset[str]) -> list[str]:
    """The words of a phrase with adjectives before the noun, as in English: candles scented, scented candles; of
    `wares` the first is the noun."""
    at = next((at for at, said in enumerate(run) if said in wares), len(run))
    if at < len(run):
        return [*run[:at], *run[at + 1 :], run[at]]
    nouns = [lexicon().known(last) and is_noun(last) for last in map(_last, run)]
    if not run or nouns[-1] or not any(nouns):
        return run
    return [one for one, noun in sorted(zip(run, nouns, strict=True), key=lambda pair: pair[1])]


def _last(english: str) -> str:
    """The last word of a phrase; the whole phrase if it is one adjective (sweet-smelling)."""
    joined = english.replace(" ", "-")
    return joined if lexicon().known(joined) else english.split()[-1]
