"""Goods worded in another language, read in English: every reader of goods goes through this module.

A list stays as it is where its words are mostly English. Else its language is the one that has most of its words, and
each word is replaced by what labels of the wares of the list say with it, or by its most reliable translation. Each
item of a mostly English list is treated likewise, and of one in many languages: some offices give a list in all theirs.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from ..expressions import expression
from ..lexicon import Translation, association, languages, lexicon, translations, zipf
from ..text import fold
from .left_out import as_stated
from .rendering import Chance, joined, likely_by_parts, rendered, units_of, words_of
from .small_words import ANY_SMALL, small_words
from .standing import RARE, SURE, standing, wares_abroad
from .trade_table import LABEL_LANGUAGES, RESPELT, is_said_in_english, label_senses
from .ware_names import names_ware, ware_names
from .words import base_form, known_as, without_possessives

__all__ = ["Wording", "in_english", "not_read", "remark"]

LEAST_SURE = 0.45
"""How reliable a translation must be in the language of the list."""
COMPOUND, LIKELY_COMPOUND = 0.7, 0.5
"""How reliable a compound must be: both of its parts are known then, in one language; and where no language has any
word more surely."""
EVERYDAY = 3.5
"""Zipf value from which an English word is an everyday one."""
GUESS = 0.6
"""The weight of a guess towards the language: parts and spellings match by chance in other languages."""
NEAR, ONE_LANGUAGE = 0.6, 0.75
"""How much of an item a language must have, beside the one that has most of it, and of how many items, for a list to be
in that language; set by hand, on real lists."""
SEVERAL, LONGEST_SHOWN = "mul", 60
"""The code of ISO 639-2 for many languages, and the most letters of goods that a remark shows."""

_ITEMS = expression(r"([,;\n])(?![^(]*\))")


class Wording(NamedTuple):
    """Goods as read: in `english` words, from `language` (BCP 47, `SEVERAL` for a list in many). `unread` are the words
    that no table here knows, as they are written; `understood` whether any word is known."""

    english: str
    language: str = "en"
    unread: tuple[str, ...] = ()
    understood: bool = True


@lru_cache(maxsize=1 << 13)
def in_english(goods: str, languages: tuple[str, ...] = (), chance: Chance | None = None) -> Wording:
    """`goods` in English words; unchanged if they are English or no word of them can be read.

    `languages` (BCP 47) are those in which the goods may be worded, likeliest first, where that is known: in one of
    them are goods that are names of wares there and nothing else, whatever the words mean in English (Tee). `chance`
    is how likely English goods are in the classes stated, by which a foreign word of several senses is read."""
    parts = _ITEMS.split(goods)
    listed = [tuple(_words(part)) for part in parts]
    spoken = (code for code in languages if all(_says_wares(words, code) for words in listed if words))
    if any(listed) and (code := next(spoken, "")):
        return _translated(goods, code, chance)
    language = _own_language(goods)
    own = _languages_of(parts, language)
    if set(own) == {language}:
        return Wording(goods) if language == "en" else _translated(goods, language, chance)
    each = zip(parts, own, strict=True)
    read = [Wording(part.strip()) if code == "en" else _translated(part, code, chance) for part, code in each]
    found = next((one.language for one in read if one.language != "en" or one.unread), "en")
    unread = tuple(word for one in read for word in one.unread)
    return Wording(joined([one.english for one in read]), found if language == "en" else SEVERAL, unread)


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
    if len(words) == 1 and _is_everyday(*words[0]):
        return "en"
    if _is_foreign(text):
        return _language_of(words)
    if is_said_in_english(own := fold(text.strip())) or lexicon().known(own):  # eau de Cologne
        return "en"
    strange = any(standing(*pair) in ("small", "foreign") for pair in words)  # pots de fleurs
    said = " ".join(written for written, _ in words)
    spoken = LABEL_LANGUAGES if strange else wares_abroad(said) if words[1:] else ()
    return next((code for code in spoken if _says_wares(words, code)), "en")


def _is_everyday(written: str, folded: str) -> bool:
    """Whether a single word is a form of an everyday English one, however seldom it is itself: couches, of couch."""
    return written.isascii() and lexicon().known(folded) and zipf(base_form(folded)) >= EVERYDAY


def _says_wares(words: tuple[tuple[str, str], ...], language: str) -> bool:
    """Whether words are the names of wares in a language, with its small words between them."""
    names_one = False
    for said, _ in units_of(words, language):  # most lists are told by their first words
        if names_ware(said, language):
            names_one = True
        elif fold(said) not in small_words(language):
            return False
    return names_one


def not_read(goods: str) -> str:
    """The remark on goods with no known word; "" if a word is known, or if there are no words."""
    if in_english(goods).understood or any(known_as(word) for _, word in _words(goods)):
        return ""
    return f'not read: "{_shown(goods)}" holds no word that is known here'


def remark(goods: str, languages: tuple[str, ...] = (), chance: Chance | None = None) -> str:
    """How goods of another language were read, in words; "" for English goods, and for goods that cannot be read."""
    read = in_english(goods, languages, chance)
    if read.language == "en":
        return ""
    unread = f", not read: {', '.join(dict.fromkeys(read.unread))}" if read.unread else ""
    language = "several languages" if read.language == SEVERAL else read.language
    return f'{language}: "{_shown(goods)}" read as "{_shown(read.english)}"{unread}'


def _shown(text: str) -> str:
    return text if len(text := " ".join(text.split())) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN].rstrip()} ..."


def _words(text: str) -> Iterator[tuple[str, str]]:
    """Each word as written and folded."""
    yield from words_of(without_possessives(text))


def _is_foreign(text: str) -> bool:
    """Whether more words are foreign, function words included, than plainly English; a rare English word (fraise,
    bijou) counts for neither."""
    if is_said_in_english(fold(text.strip())):  # eau de parfum
        return False
    words = tuple(_words(text))
    stand = [standing(*word) for word in words]
    foreign = (written for (written, _), how in zip(words, stand, strict=True) if how == "foreign")
    spoken = {code for written in foreign for code in wares_abroad(written)}
    count = Counter(
        "nothing" if how == "english" and any(label_senses(written, code) for code in spoken) else how
        for (written, _), how in zip(words, stand, strict=True)
    )  # natural is Spanish too beside sidra
    accented = any(not written.isascii() for written, _ in words)
    if not (count["foreign"] or ((count["rare"] or accented) and count["small"])):
        return False
    lead = count["foreign"] + count["small"] - count["english"]
    return lead > 0 or (lead == 0 and (count["small"] > 0 or not all(written.isascii() for written, _ in words)))


def _translated(text: str, language: str, chance: Chance | None) -> Wording:
    words = tuple(_words(text))
    if not language:
        strange = tuple(pair for pair in words if standing(*pair) == "foreign")
        known = any(standing(*pair) in ("english", "rare") or _in_vectors(pair[1]) for pair in words)
        return Wording(text, unread=tuple(written for written, _ in strange), understood=known)
    read = rendered(without_possessives(as_stated(text, language)), language, chance)
    if not read.unread and _bases(read.english) == _bases(text):  # blousons is German too, and means no more
        return Wording(text)
    return Wording(read.english, language, read.unread)


def _bases(text: str) -> list[str]:
    return [base_form(folded) for _, folded in _words(text)]


def _in_vectors(word: str) -> bool:
    """Whether the word has a vector: its associations are known, if not its meaning."""
    return association(word, word) is not None


def _language_of(words: tuple[tuple[str, str], ...]) -> str:
    """The language that has most of the words, most reliably; "" if none has any word that is not small."""
    values = _values(words) or _values(words, LIKELY_COMPOUND) or _values_by_parts(words)
    return max(values, key=lambda code: values[code], default="")


def _values_by_parts(words: tuple[tuple[str, str], ...]) -> dict[str, float]:
    """The same for words that no language has, by the parts that they may have: porte-savon."""
    strange = [folded for written, folded in words if standing(written, folded) == "foreign"]
    found = {code: sum(likely_by_parts(word, code) for word in strange) for code in LABEL_LANGUAGES}
    return {code: value for code, value in found.items() if value}


def _values(words: tuple[tuple[str, str], ...], compound: float = COMPOUND) -> dict[str, float]:
    """How much each language has of the words, in words, by how reliable what they mean is; those that have none but
    small words are left out."""
    values = {}
    evident = [pair for pair in words if standing(*pair) in ("foreign", "rare", "small")]
    if all(folded in ANY_SMALL for _, folded in evident):
        evident = [*words]
    else:  # de is no German word beside lampe
        evident = [pair for pair in evident if pair[1] not in ANY_SMALL or not pair[0].isascii()]
    for code in languages():
        if code == "la":  # no market speaks it
            continue
        small = small_words(code)
        read = (_read(*pair, code) for pair in evident if pair[1] not in small or not pair[0].isascii())
        found = [one for one in read if one and (one.score >= SURE or not one.guessed or _is_compound(one, compound))]
        value = sum(one.score * (GUESS if one.guessed else 1.0) for one in found)
        phrases = (said for said, folded in units_of(words, code) if " " in folded and ware_names(said, code))
        value += sum(said.count(" ") + 1 for said in phrases)
        if value:
            values[code] = value + sum(folded in small for _, folded in words)
    return values


def _read(written: str, folded: str, language: str) -> Translation | None:
    """The translation of a word, by shops and labels first where it is the name of a ware."""
    if names := ware_names(written, language):
        return Translation(language, names[0], 1.0, "labels")
    senses = label_senses(written, language)
    label = next((one for one in senses if one.names_ware and one.sure > RESPELT), None)
    if label is None and (found := _best(folded, language)):
        return found if not (found.guessed and senses) else Translation(language, senses[0].english, SURE, "labels")
    told = label or next(iter(senses), None)
    return Translation(language, told.english, told.sure if label else SURE, "labels") if told else None


def _is_compound(found: Translation, least: float) -> bool:
    return found.source == "compound" and found.score >= least


@lru_cache(maxsize=1 << 14)
def _best(folded: str, language: str) -> Translation | None:
    """The most reliable translation."""
    in_use = zipf(folded) > 0  # a word of English texts is neither split nor taken for a misspelling
    found = (
        one
        for one in translations(folded, language)
        if one.score >= LEAST_SURE and not (in_use and one.guessed)
    )
    return max(found, key=lambda one: one.score, default=None)
