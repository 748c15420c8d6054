"""Respelled words: unknown ones that are said as everyday words (kwik, nite; supakup: super cup).

A misspelling that is heard as a word has its meaning (TMEP 1207.01(b)(iv), 1209.03(j)). Found by sound: the likely
readings of the letters are looked up among the words of the pronouncing dictionary. A word of consonants alone (frsh)
is read as an everyday one that has them: words are told apart by consonants more than by vowels (M. Nespor, M. Peña and
J. Mehler, 2003; from memory).
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from functools import cache, lru_cache

from ..lexicon import lexicon, zipf
from ..pronunciation import likely_codes, words_heard
from ..tables import open_table
from .letters import look

__all__ = ["heard_parts", "heard_word", "with_vowels"]

LATER = 1.0
"""What each less likely reading of the letters costs, in Zipf values."""
EVERYDAY, PART = 3.0, 3.5
"""Zipf values from which readers hear a word in a respelling, and two words in a closed one."""
LEAST_PHONES = 3
"""The fewest phones of a part of a closed word: shorter ones are heard in any word."""
LEAST_LETTERS = 4
"""The fewest letters of a part that is heard as a word beside one written as it is."""
ALIKE = 0.5
"""The least similarity in look to the word that such a part is heard as: words of two syllables sound like many."""
_CLUES = re.compile(r"[kqxz]|y[^aeiou]|ph|ee|oo|([bdfglmnprst])\1")
"""Letters that traders write for others (k, x, y, doubled ones); common practice, no source."""
LEAST_CONSONANTS = 4
"""The fewest consonants that stand for a word; three fit too many, and are read as initials."""
_DOUBLED = re.compile(rb"([a-z])\1+")
_CONSONANTS = re.compile(f"[b-df-hj-np-tv-xz]{{{LEAST_CONSONANTS},12}}")
LIKE = 6.0
"""What it counts, in Zipf values, that the letters are the same: of words that sound alike, the one written most like
it is meant. This and the values above are ours; no source."""


@lru_cache(maxsize=1 << 16)
def heard_word(word: str) -> str:
    """The everyday word that the folded `word`, unknown or rare, is heard as; "" if there is none."""
    if not (2 < len(word) <= 16 and word.isascii() and word.isalpha()):
        return ""
    found = (
        (frequency + LIKE * look(word, said) - LATER * place, said)
        for place, code in enumerate(likely_codes(word))
        for said, frequency in _everyday(code, EVERYDAY)
        if said != word
    )
    return max(found, default=(0.0, ""))[1] or with_vowels(word)


@lru_cache(maxsize=1 << 14)
def with_vowels(word: str) -> str:
    """The commonest everyday word that a folded word of consonants stands for (frsh: fresh, xprss: express); "" if
    there is none, or if the word is common as it is or has less than `LEAST_CONSONANTS`."""
    if not _CONSONANTS.fullmatch(word) or zipf(word) >= EVERYDAY:
        return ""
    lines = (line.decode().partition("\t") for line in _everyday_by_consonants().get(_consonants(word.encode()), ()))
    words = sorted(((float(frequency), other) for other, _, frequency in lines), reverse=True)
    return next((other for _, other in words if lexicon().bases(other)), "")


@cache
def _everyday_by_consonants() -> dict[bytes, list[bytes]]:
    """The lines of everyday words in the table of frequencies, which has two decimal places, by their consonants: found
    for all lines at once, as to go through each would take as long as most lists of marks."""
    least = f"\t{EVERYDAY:.2f}".encode()
    lines = bytes(open_table("frequency/en.tsv").lines()).split(b"\n")
    everyday = [line for line in lines if line[-len(least) :] >= least]
    found: dict[bytes, list[bytes]] = defaultdict(list)
    for bare, line in zip(_consonants(b"\n".join(everyday)).split(b"\n"), everyday, strict=True):
        found[bare[: -len(least)]].append(line)
    return found


def _consonants(text: bytes) -> bytes:
    """Words without their vowels, a doubled consonant once."""
    return _DOUBLED.sub(rb"\1", text.translate(None, b"aeiouy"))


@lru_cache(maxsize=1 << 16)
def heard_parts(word: str) -> tuple[str, ...]:
    """The two parts, as they are written, of an unknown closed word that is heard as two everyday words (supakup: supa,
    kup); empty if it is not."""
    if not (5 < len(word) <= 20 and word.isascii() and word.isalpha()):
        return ()
    found = (
        (min(first[1], second[1]) + LIKE * look(word, first[0] + second[0]) - LATER * place, first[0], second[0])
        for place, code in enumerate(likely_codes(word))
        for cut in range(LEAST_PHONES, len(code) - LEAST_PHONES + 1)
        for first in _everyday(code[:cut], PART)
        for second in _everyday(code[cut:], PART)
    )
    _, first, second = max(found, default=(0.0, "", ""))
    cuts = ((word[:cut], word[cut:]) for cut in range(2, len(word) - 1) if first)
    heard = [parts for parts in cuts if _is(parts[0], first) and _is(parts[1], second)]
    best = max(heard, key=lambda parts: look(parts[0], first) + look(parts[1], second), default=())
    return best or _beside_a_word(word)


def _beside_a_word(word: str) -> tuple[str, ...]:
    """The parts of an unknown closed word of which one is an everyday word and the other heard as one (pikklejar:
    pikkle, jar); the sounds of the whole weaken a vowel of the second."""
    best = 0.0
    found: tuple[str, ...] = ()
    for cut in range(3, len(word) - 2):
        parts = word[:cut], word[cut:]
        for known, rest in (parts, parts[::-1]):
            common = zipf(known)
            if common < PART or len(rest) < LEAST_LETTERS or not _CLUES.search(rest) or not lexicon().bases(known):
                continue
            said = heard_word(rest)
            if said and (alike := look(rest, said)) >= ALIKE:
                value = min(common, zipf(said)) + LIKE * alike
                if value > best:
                    best, found = value, parts
    return found


def _is(part: str, said: str) -> bool:
    return part == said or heard_word(part) == said


_OTHER_TH = str.maketrans("TD", "DT")
"""Letters th are read either way (lether, leather)."""
_heard: frozenset[str] | None = None
"""The sounds of all everyday words, and others, where very many words are asked about."""


def expect_many() -> None:
    """Make ready for a register's words: processes forked later share it."""
    global _heard
    least = min(EVERYDAY, PART)
    codes = (code for code, _ in open_table("words_by_sound.tsv").items())
    _heard = frozenset(code for code in codes if max(words_heard(code).values()) >= least)


def _everyday(code: str, least: float) -> tuple[tuple[str, float], ...]:
    """The known words with this sound, and with an r that the spelling leaves out (supa: super), and how common they
    are on the Zipf scale."""
    said = (code, code[:-1] + "R") if code[-1:] in ("x", "A") else (code,)
    if "T" in code or "D" in code:
        said = (*said, *(one.translate(_OTHER_TH) for one in said))
    if _heard is not None and _heard.isdisjoint(said):
        return ()
    return _said_so(said, least)


@lru_cache(maxsize=1 << 14)
def _said_so(codes: tuple[str, ...], least: float) -> tuple[tuple[str, float], ...]:
    return tuple(one for code in codes for one in _known(code, least))


def _known(code: str, least: float) -> Iterator[tuple[str, float]]:
    for word, frequency in words_heard(code).items():
        if frequency >= least and len(word) > 2 and lexicon().bases(word):
            yield word, frequency
