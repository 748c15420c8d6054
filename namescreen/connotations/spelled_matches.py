"""Words of other languages that the letters of a name spell: whole, inflected, inside it, or one letter away."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from namescreen.lexicon import proper_name, zipf
from namescreen.tables import open_table
from namescreen.text import Name, fold, split_closed_compound

from ..lexicon.language_codes import COMPOUNDING, OTHER_SCRIPTS
from ..lexicon.letter_patterns import alphabet, has_model
from .inflection import prefixes, stem
from .orthography import syllable_boundaries
from .results import Reading
from .scripts import script
from .unlucky import Unlucky, nearly_spelled, spelled, stemmed

__all__ = ["SHIPPED", "Span", "found", "ordinary_words", "spans", "spelled_in"]

SHIPPED = "namescreen word tables"
"""The source of a meaning that is shipped."""

_LONGEST = 24  # the longest word searched inside a name; the tables have few longer ones
_STEM = 4  # letters of a stem that two words must share; shorter stems match by chance (bull, bult)
_LINKS = ("", "s", "e", "n", "en", "es")  # letters between the parts of a Germanic compound


class Span(NamedTuple):
    """A part of a name that is read on its own: its folded letters, its spelling in the name, and what it
    is."""

    letters: str
    written: str
    where: str


def spans(name: Name) -> tuple[Span, ...]:
    """The whole name without its spaces, then each of its words, but not what a sign is read as: the and of &."""
    written = "".join(c for c in unicodedata.normalize("NFC", name.text) if unicodedata.category(c)[0] in "LMN")
    whole = Span(name.letters, written.lower(), "the whole name")
    if len(name.words) < 2:
        return (whole,) if name.letters else ()
    pieces = {fold(piece): piece.lower() for piece in name.text.replace("-", " ").split()}
    seen = (word for word in dict.fromkeys(name.words) if word in fold(written))
    return (whole, *(Span(word, pieces.get(word, word), f"the word {word}") for word in seen))


def found(word: Unlucky, severity: int, match: str, where: str, source: str = SHIPPED) -> Reading:
    """The reading that a match with an unlucky word gives, its severity kept within the word's base
    severity."""
    frequency = zipf(fold(word.form), word.language) or None
    return Reading(word.language, word.shown, word.meaning, word.kind, max(0, min(severity, word.base_severity)), match,
                   where, frequency, source, word.base_severity)  # fmt: skip


def spelled_in(name: Name, languages: frozenset[str]) -> Iterator[Reading]:
    """Every unlucky word that the letters of the name spell, in no particular order; weaker matches may repeat a
    word."""
    parts = spans(name)
    for part in parts:
        yield from _whole(part, languages)
        yield from _prefixed(part, languages)
        yield from _begun(part, languages)
        yield from _one_letter_away(part, languages)
    if parts:
        yield from _inside(name, languages)


def ordinary_words(name: Name, languages: Iterable[str]) -> Iterator[Reading]:
    """The name, or a word of it, where it is a word of the language: its meaning is not known here."""
    for part in spans(name):
        for language in languages:
            frequency = zipf(part.letters, language)
            if frequency and _is_own(part.letters, language, frequency):
                yield Reading(language, part.letters, None, "ordinary", 0, "exact", part.where, frequency,
                              "word frequencies")  # fmt: skip


def _is_own(letters: str, language: str, frequency: float) -> bool:
    """Whether a listed word belongs to the language, and is not English quoted in its texts.

    Every list holds English words from titles, brands and quotations, rarer there than in English. So an English word
    belongs to the other language only if it is about as frequent there (within 0.3 Zipf, a factor of two).
    """
    if letters.isascii():
        if language in OTHER_SCRIPTS or len(letters) < 3:
            return False
        return frequency >= zipf(letters) - 0.3
    return True


def _whole(part: Span, languages: frozenset[str]) -> Iterator[Reading]:
    """The part is an unlucky word, or shares the stem of one."""
    met: set[str] = set()
    for word in spelled(part.letters):
        if word.language in languages and not _otherwise_marked(part.written, word):
            met.add(word.language)
            yield found(word, word.base_severity - _doubt(word, part), _how(word, part), part.where)
    if len(part.letters) < 4:
        return
    for language in languages - met:
        shared = stem(part.letters, language)
        for word in stemmed(shared, language) if len(shared) >= _STEM else ():
            if len(shared) == _STEM and _differ_by_ending(part.letters, fold(word.form), shared):
                continue
            if _otherwise_marked(part.written, word):
                continue
            # A shared stem may carry another meaning (pollo, polla): only exact words are severe.
            yield found(word, word.base_severity - 1, "inflected", part.where)


def _otherwise_marked(written: str, word: Unlucky) -> bool:
    """Whether a name has a marked letter of the word's language (stål) where the word has the plain one (stal), so that
    readers of it see another word. A name without such marks may have left them out."""
    if written.isascii() or not has_model(word.language):
        return False
    own = alphabet(word.language)
    form = unicodedata.normalize("NFC", word.form.lower())
    return any(
        not one.isascii() and one != other and one in own and fold(one) == fold(other)
        for one, other in zip(written, form, strict=False)
    )


def _differ_by_ending(letters: str, others: str, stem: str) -> bool:
    """Whether two words add different endings to their stem, so that neither is the base of the other: with a short
    stem they are seldom forms of one word (heron, heroin)."""
    endings = letters.removeprefix(stem), others.removeprefix(stem)
    return all(endings) and endings[0] != endings[1]


def _doubt(word: Unlucky, part: Span) -> int:
    """Steps taken off a word spelled in full. Two letters among other words are seldom read as a separate word, and a
    short transcription leaves open which word of the other script is meant."""
    short = len(part.letters) < 3 and part.where != "the whole name"
    return int(short) + (word.how == "t" and len(part.letters) < 4)


def _how(word: Unlucky, part: Span) -> str:
    if word.how.isdecimal():
        return "inflected"
    same = word.how == "t" or unicodedata.normalize("NFC", word.form.casefold()) == part.written
    return "exact" if same else "without accents"


def _prefixed(part: Span, languages: frozenset[str]) -> Iterator[Reading]:
    """The part is an unlucky verb, or its noun, after one of the language's prefixes."""
    for language in languages:
        for prefix in prefixes(language):
            rest = part.letters[len(prefix) :]
            if len(rest) >= 5 and part.letters.startswith(prefix):
                shared = stem(rest, language)
                for word in stemmed(shared, language) if len(shared) >= _STEM else ():
                    yield found(
                        word,
                        word.base_severity - 1,
                        "inflected",
                        f"{part.where}, after the prefix {prefix}-",
                    )


def _begun(part: Span, languages: frozenset[str]) -> Iterator[Reading]:
    """The part begins with the stem of one of the worst words and goes on otherwise: MERDOVA, merd-."""
    for length in range(4, min(8, len(part.letters) - 1)):
        beginning = part.letters[:length]
        if length * 2 < len(part.letters) or part.letters[length] not in "aeiouy":
            continue  # after a stem that ends in a consonant an ending begins with a vowel
        for language in languages:
            for word in stemmed(beginning, language):
                if word.base_severity == 3:
                    yield found(word, 2, "inside", f"letters 1 to {length}, its stem")


def _one_letter_away(part: Span, languages: frozenset[str]) -> Iterator[Reading]:
    """The part is one letter away from one of the worst words, and is not itself a common word of that language."""
    if len(part.letters) < 5:
        return
    from rapidfuzz.distance import OSA

    for word in nearly_spelled(part.letters):
        letters = fold(word.transcription or word.form).replace(" ", "")
        if (word.language in languages and letters[0] == part.letters[0] and zipf(part.letters, word.language) < 3.0
                and OSA.distance(letters, part.letters, score_cutoff=1) == 1):  # fmt: skip
            yield found(word, 2 if len(letters) >= 6 else 1, "one letter away", part.where)


def _inside(name: Name, languages: frozenset[str]) -> Iterator[Reading]:
    """Unlucky words among the letters, across the spaces too, at word or syllable boundaries."""
    letters = name.letters
    edges = {0}
    breaks: set[int] = {0}
    seen: set[tuple[int, int]] = set()  # halves of a coined compound, which a reader sees as words
    places: list[tuple[int, int]] = []  # known names, in which nobody reads another word: Connemara
    for part in name.words:
        start = max(edges)
        places += [(start, start + len(part))] if _is_place(part) else []
        breaks |= {start + at for at in syllable_boundaries(part)}
        edges.add(start + len(part))
        halves = split_closed_compound(part, zipf)
        if len(halves) == 2:
            middle = start + len(halves[0])
            breaks.add(middle)
            seen |= {(start, middle), (middle, start + len(part))}
    size = len(letters)
    written = spans(name)[0].written if spans(name) else ""
    written = written if len(written) == size else letters
    # A syllabic sign stands for several letters, a Chinese character for a word.
    least = 4 if letters.isascii() else 1 if any(script(letter) == "Han" for letter in letters) else 2
    for start in range(size - least + 1):
        for end in range(start + least, min(size, start + _LONGEST) + 1):
            if start in edges and end in edges and (end - start == size or not any(start < e < end for e in edges)):
                continue  # the whole name or one of its words: read already
            if any(first <= start and end <= last for first, last in places):
                continue
            ends = (start in breaks) + (end in breaks)
            if ends == 2 or (ends and end - start >= 6):
                for word in spelled(letters[start:end]):
                    if word.language in languages and not _otherwise_marked(written[start:end], word):
                        severity = _weight(word, letters, start, end, edges) - (ends < 2)
                        if (start, end) in seen:
                            severity = max(severity, word.base_severity - 1)
                        if severity > 0:
                            yield found(word, severity, "inside", _place(start, end, edges))


def _is_place(word: str) -> bool:
    return word in open_table("places.tsv") or "place" in proper_name(word)


def _weight(word: Unlucky, letters: str, start: int, end: int, edges: set[int]) -> int:
    """The severity of a word inside a name; 0 if it is not reported.

    A word keeps its severity if it fills most of the name from an edge, or if the rest of the name is a word of the
    same compounding language (so that the name is a compound with it). A long word, or one at an edge, loses one step.
    (The caller takes off another where one end is inside a syllable.) The lengths and shares are our choice, checked
    against ordinary English words (tests/bench/bench_readings.py).
    """
    size, length = len(letters), end - start
    share = length / size
    at_edge = (start in edges) + (end in edges)
    rest = letters[:start] + letters[end:]
    compound = word.language in COMPOUNDING and at_edge and (start == 0 or end == size) and _is_modifier(rest, word)
    if not letters.isascii():
        return word.base_severity if share >= 0.5 else word.base_severity - 1
    if compound and length >= 4:
        return word.base_severity if length >= 5 else word.base_severity - 1
    if length == 4:
        return 2 if at_edge and share >= 0.5 and word.base_severity == 3 else 0
    if at_edge and share >= 0.7:
        return word.base_severity
    if (at_edge and share >= 0.4) or share >= 0.6:
        return word.base_severity - 1
    return word.base_severity - 2


def _is_modifier(rest: str, word: Unlucky) -> bool:
    """Whether the rest of a compound is a word of the language, with or without a linking letter."""
    for link in _LINKS:
        modifier = rest.removesuffix(link)
        frequency = zipf(modifier, word.language) if len(modifier) >= 3 else 0.0
        if frequency and rest.endswith(link) and _is_own(modifier, word.language, frequency):
            return True
    return False


def _place(start: int, end: int, edges: set[int]) -> str:
    stretch = f"letters {start + 1} to {end}"
    if any(start < edge < end for edge in edges):
        return f"{stretch}, across the space"
    if start in edges:
        return f"{stretch}, at the beginning"
    return f"{stretch}, at the end" if end in edges else f"{stretch}, in the middle"
