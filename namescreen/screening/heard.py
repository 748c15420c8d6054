"""How alike buyers of a market hear two names, by how their language reads both: Brandstetter is Brandstätter to
Germans, and Knoll no noll.

The sounds of a mark count as the buyers of the territory say it (EUIPO Guidelines, part C, section 2, chapter 4, on
phonetic comparison).
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from ..lexicon.language_codes import language_name
from ..plain_text import number, some
from ..policy import NEAR_IN_APPEARANCE, NEAR_IN_SOUND
from ..text import parse

if TYPE_CHECKING:
    from ..closeness import Closeness

__all__ = ["SOME_SOUND", "as_heard", "heard_alike"]

SOME_SOUND = 0.6
"""Closeness in sound, read in English, from which names are read in other languages: to read every mark would cost more
than all else. Ours, not fitted."""
FEWEST_SOUNDS = 4
"""Sounds of the shortest name that is compared so: shorter ones match by chance."""


def heard_alike(name: str, mark: str, languages: Iterable[str]) -> str:
    """The first of `languages` (BCP 47) whose readers say `name` and `mark` alike; "" if none does, or there are no
    rules to read it by. Broad sounds are compared: see `connotations.g2p_rules.sound_classes`."""
    from ..connotations.g2p_rules import has_rules

    for language in languages:
        if has_rules(language):
            said = _said(name, language)
            if len(said) >= FEWEST_SOUNDS and said == _said(mark, language):
                return language
    return ""


@lru_cache(maxsize=1 << 14)
def _said(text: str, language: str) -> str:
    from ..connotations.g2p_rules import sound_code

    return "".join(sound_code(word, language) for word in re.findall(r"[^\W\d_]+", text.casefold()))


def as_heard(
    closeness: Closeness, name: str, mark: str, languages: Iterable[str], *, english: bool = True
) -> Closeness:
    """`closeness` with the sound that readers of `languages` hear: where these hear both as the same, where coined
    names are one letter by letter, where both are near-identical only as English is read, which few buyers do if not
    `english`, and where they are so only as another language is read, which few do if `english`. Overall closeness
    stays: what decisions tell of it rests on all readings."""
    asked = tuple(languages)
    if closeness.sound >= SOME_SOUND and closeness.sound < 1 and (language := heard_alike(name, mark, asked)):
        return _sounding(closeness, 1.0, f"sounds the same, read in {language_name(language)}")
    apart = _has_other_letters(name, mark, asked)
    if SOME_SOUND <= closeness.sound < NEAR_IN_SOUND and not apart and _coined_and_said_alike(name, mark):
        return _sounding(closeness, 1.0, "sounds the same, letter by letter")
    if closeness.sound < NEAR_IN_SOUND or closeness.appearance >= NEAR_IN_APPEARANCE:
        return closeness
    if english:
        return _in_english(closeness, name, mark, asked)
    own = [one for one in asked if one != "en"]
    letters = 0.0 if apart else _by_letters(name, mark)
    heard = max(letters, *(_as_read(name, mark, language) for language in own), 0.0)
    readers = some(map(language_name, own)) or "no English"
    if heard >= NEAR_IN_SOUND:
        told = "sounds the same" if closeness.sound >= 1 else "close"
        return _sounding(closeness, closeness.sound, f"{told}{{}}, also to readers of {readers}")
    return _sounding(closeness, heard, f"the same only in English{{}}; to readers of {readers} {number(heard)}")


def _has_other_letters(name: str, mark: str, languages: Iterable[str]) -> bool:
    """Whether just one of two names has doubled letters that are another sound in one of the languages (Spanish ll, no
    l), so that the letters' international values do not tell how it is said there."""
    from ..connotations.g2p_rules import doubled_otherwise

    texts = name.casefold(), mark.casefold()
    doubled = (letters for language in languages for letters in doubled_otherwise(language))
    return any((letters in texts[0]) != (letters in texts[1]) for letters in doubled)


def _coined_and_said_alike(name: str, mark: str) -> bool:
    """Whether two coined names are one where each letter is said with its international value, which no language's
    habits speak for or against: Filora, Fyllora. There is no correct pronunciation of a mark (TMEP 1207.01(b)(iv))."""
    from ..closeness.vocabulary import is_known

    words = [parse(text).words for text in (name, mark)]
    if any(len(each) != 1 or len(each[0]) < FEWEST_SOUNDS or is_known(each[0]) for each in words):
        return False
    return _by_letters(name, mark) >= 1.0


def _in_english(closeness: Closeness, name: str, mark: str, languages: Sequence[str]) -> Closeness:
    """`closeness` of near-identical sounds where English is read: none but a reader of a language that is not among
    `languages` may hear them so."""
    from ..closeness.said_abroad import language_read_in
    from ..closeness.sound import sound_in_english

    words = [parse(text).words for text in (name, mark)]
    read = [language for each in words for word in each if (language := language_read_in(word))]
    if not read or not all(words) or not {*languages}.isdisjoint(read):
        return closeness
    heard = sound_in_english(*words)
    if heard >= NEAR_IN_SOUND:
        return closeness
    alike = "the same" if closeness.sound >= 1 else "close"
    told = f"{alike} only if read in {language_name(read[0])}{{}}; to English readers {number(heard)}"
    return _sounding(closeness, heard, told)


def _sounding(closeness: Closeness, sound: float, told: str) -> Closeness:
    from ..closeness import with_reasons

    return dataclasses.replace(with_reasons(closeness, _with_readings, told), sound=sound)


def _with_readings(told: str, reasons: tuple[str, ...]) -> tuple[str, ...]:
    from ..closeness.reason import About, about

    return tuple(_of_sound(told, one) if about(one) is About.SOUND else one for one in reasons)


def _of_sound(told: str, reason: str) -> str:
    from ..closeness.reason import About, Reason

    read = reason.words if isinstance(reason, Reason) else ()
    heard = f" ({' / '.join(read)})" if read else ""
    return Reason(f"Sound: {told.format(heard)}.", About.SOUND, read)


def _by_letters(name: str, mark: str) -> float:
    """How alike two names sound, in [0, 1], every letter with its international value, as an invented word is read."""
    from ..pronunciation import sound_similarity

    codes = _code_by_letters(name), _code_by_letters(mark)
    return sound_similarity(*codes) if all(codes) else 0.0


@lru_cache(maxsize=1 << 10)
def _code_by_letters(text: str) -> str:
    from ..pronunciation import language_neutral_reading

    return "".join(one.code for word in parse(text).words if (one := language_neutral_reading(word)))


def _as_read(name: str, mark: str, language: str) -> float:
    """How alike two names sound, in [0, 1], by the broad sounds that readers of a language give them; 0 where there are
    no rules to read it by."""
    from rapidfuzz.distance import Levenshtein

    from ..connotations.g2p_rules import has_rules

    if not has_rules(language):
        return 0.0
    return float(Levenshtein.normalized_similarity(_said(name, language), _said(mark, language)))
