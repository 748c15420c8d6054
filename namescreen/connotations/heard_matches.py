"""Unlucky words that a name sounds like, read by another language's spelling rules or said in English."""

from __future__ import annotations

from collections.abc import Iterator

from namescreen.text import Name

from ..lexicon.language_codes import OTHER_SCRIPTS
from .g2p_rules import TRANSCRIPTION, english_heard_in, has_rules, read_aloud, sound_code
from .results import Reading
from .spelled_matches import Span, found, spans
from .unlucky import Unlucky, sounding

__all__ = ["english_phones", "heard_in"]

OTHERWISE = 2
"""Steps that a word loses which is heard by its consonants and rough vowels alone; ours."""
_LONGEST = 30
"""The longest part that is read aloud; no word of the tables is longer."""


def heard_in(name: Name, languages: frozenset[str]) -> Iterator[Reading]:
    """Every unlucky word of severity 2 or 3 that the name, or a word of it, sounds like."""
    for part in spans(name):
        if len(part.letters) > _LONGEST:
            continue
        latin = part.letters.isascii()
        ways = english_phones(part, name) if latin else []
        for language in sorted(languages):
            ear = language if has_rules(language) else TRANSCRIPTION
            # A name in Latin letters is met in transcription where another script is written; one in another
            # script is read by the languages that write it.
            script = TRANSCRIPTION if latin and language in OTHER_SCRIPTS else ear
            read = sound_code(part.written, script)
            for word in sounding(read, language):
                severity = _weight(word, read, part) - (OTHERWISE if _is_read_otherwise(word, part, script) else 0)
                if severity > 0:
                    yield found(word, severity, "heard as", f"{part.where}, read in the language")
            for code in dict.fromkeys(code for phones in ways for code in english_heard_in(phones, ear)):
                for word in sounding(code, language) if code != read else ():
                    severity = _weight(word, code, part) - 1
                    if severity > 0 and word.base_severity == 3:
                        yield found(word, severity, "said in English", part.where)


def _is_read_otherwise(word: Unlucky, part: Span, language: str) -> bool:
    """Whether the rules of the language give a word and a part of a name different vowels, short and long among them
    (Dutch kloot and cloth): a sound code knows no such difference."""
    if not has_rules(language) or word.transcription:
        return False
    return read_aloud(part.written, language) != read_aloud(word.form, language)


def english_phones(part: Span, name: Name) -> list[tuple[str, ...]]:
    """The likeliest ways an English speaker says this part of the name, as ARPABET phones."""
    from namescreen.pronunciation import pronounce_words

    words = name.words if part.letters == name.letters else (part.letters,)
    return [reading.phones for reading in pronounce_words(words, limit=2)]


def _weight(word: Unlucky, code: str, part: Span) -> int:
    """The severity of a word that is only heard; 0 if it is not reported.

    Short sequences of sounds match by chance: two sounds lose two steps, three lose one (or two in a name of several
    words), and then only the worst words count.
    """
    lost = max(0, 4 - len(code))
    if lost and word.base_severity < 3:
        return 0
    return word.base_severity - lost - (part.where != "the whole name" and lost > 0)
