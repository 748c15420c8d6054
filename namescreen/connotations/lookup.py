"""How a name reads in other languages: all findings, worst first, and the sources that were searched."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from namescreen.lexicon import zipf
from namescreen.outcome import NotChecked
from namescreen.plain_text import some
from namescreen.tables import open_table
from namescreen.text import Name, fold, parse

from ..lexicon.language_codes import LANGUAGES, code, language_name, wanted
from .dictionaries import missing, opened
from .g2p_rules import has_rules
from .heard_matches import heard_in
from .meanings import Dictionary, judged
from .results import Coverage, Reading
from .scripts import lookalikes
from .spelled_matches import SHIPPED, ordinary_words, spans, spelled_in
from .unlucky import count

__all__ = ["coverage", "not_read", "readings"]

_PER_LANGUAGE = 6
"""The most readings kept for one language; the rest are weaker matches of the same letters."""


def readings(
    name: str,
    *,
    languages: Iterable[str] | None = None,
    dictionaries: Iterable[Dictionary | str | Path] | None = None,
) -> list[Reading]:
    """The readings of `name` in other languages, worst first; empty if nothing was found.

    `languages` are BCP 47 tags (all shipped ones if None; those not shipped are ignored here and reported
    by `coverage`). `dictionaries` are sources of meanings besides the shipped tables: None for those found in
    the usual folders, none for ``()``, else adapters or paths of dictd dictionaries. Raises `InputError` for
    a path that is no dictionary.
    """
    asked = [language for language in wanted(languages) if language in LANGUAGES]
    sources = opened(dictionaries)
    found: list[Reading] = []
    parsed = parse(name)
    passes_for = lookalikes(parsed.text)
    for version in (parsed, parse(passes_for.looks)) if passes_for else (parsed,):
        found += spelled_in(version, frozenset(asked))
        found += heard_in(version, frozenset(asked))
        found += _explained(version, asked, sources)
        found += ordinary_words(version, asked)
    return _distinct(found)


def coverage(
    languages: Iterable[str] | None = None, dictionaries: Iterable[Dictionary | str | Path] | None = None
) -> list[Coverage | NotChecked]:
    """The sources that `readings` searches for these languages, in their order; then those that could not be
    searched."""
    sources = opened(dictionaries)
    report: list[Coverage | NotChecked] = []
    for language in wanted(languages):
        if language not in LANGUAGES:
            report.append(NotChecked(f"readings in {language_name(language)}",
                                     f"no words of it are shipped (shipped: {' '.join(LANGUAGES)})"))  # fmt: skip
            continue
        if not count(language):
            report.append(NotChecked(f"readings in {language_name(language)}", "no unlucky words of it are shipped"))
            continue
        names = (SHIPPED, *(source.name for source in sources if language in source.languages))
        report.append(Coverage(language, len(open_table(f"frequency/{language}.tsv")), count(language),
                               has_rules(language), names))  # fmt: skip
    return [*report, *(missing() if dictionaries is None else ())]


def not_read(spoken: Iterable[str], languages: Iterable[str] | None = None) -> tuple[NotChecked, ...]:
    """That names are not read in the languages `spoken` in the markets of which no words are shipped; those of the
    `languages` asked for `coverage` tells by itself."""
    asked = {*wanted(languages)} if languages is not None else set()
    lacking = [one for one in dict.fromkeys(map(code, spoken)) if one not in (*LANGUAGES, *asked, "en")]
    if not lacking:
        return ()
    return (NotChecked(f"readings in {some(map(language_name, lacking))}", "no words of it are shipped"
                       if len(lacking) == 1 else "no words of them are shipped"),)  # fmt: skip


def _explained(name: Name, languages: Iterable[str], sources: Iterable[Dictionary]) -> Iterator[Reading]:
    """The name and its words as the installed dictionaries explain them."""
    for source in sources:
        for language in languages:
            if language not in source.languages:
                continue
            for part in spans(name):
                if len(part.letters) < 3 and part.letters.isascii():
                    continue
                for meaning in source.meanings(part.letters, language):
                    kind, severity = judged(meaning.text)
                    match = "exact" if meaning.word.lower() == part.written else "without accents"
                    yield Reading(language, meaning.word, meaning.text, kind, severity, match, part.where,
                                  zipf(fold(meaning.word), language) or None, source.name, severity)  # fmt: skip


def _distinct(found: Iterable[Reading]) -> list[Reading]:
    """Each meaning of a language once, by its strongest match. A word without a known meaning is dropped if another
    explains the same part of the name. The number for each language is limited."""
    ranked = sorted(found, key=lambda reading: reading.order)
    explained = {(reading.language, reading.where) for reading in ranked
                 if reading.meaning and reading.match in ("exact", "without accents", "inflected")}  # fmt: skip
    kept: dict[tuple[str, str], Reading] = {}
    met: dict[str, int] = {}
    for reading in ranked:
        key = (reading.language, reading.meaning or fold(reading.word))
        hidden = reading.meaning is None and (reading.language, reading.where) in explained
        if key not in kept and not hidden and met.get(reading.language, 0) < _PER_LANGUAGE:
            kept[key] = reading
            met[reading.language] = met.get(reading.language, 0) + 1
    return list(kept.values())
