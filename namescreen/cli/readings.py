"""`namescreen readings`: how names read, sound and sit in other languages."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen.lexicon.language_codes import code
from namescreen.outcome import NotChecked
from namescreen.plain_text import cell, some, visible

from .guard import NOT_CHECKED
from .inputs import names_or_shortlist
from .options import BriefOption, FormatOption, LanguagesOption, StrictOption, brief_with, language_list, make_app
from .output import Column, Format, Row, print_disclaimer, say_point, show
from .talk import counted, say

if TYPE_CHECKING:
    from namescreen.connotations import Coverage, Dictionary, Ease, LookAlikes, Reading

app = make_app("See how a name reads in other languages.")

ENGLISH = "en"
CONTENT_WARNING = "Some of these words are coarse or hurtful; --mild masks the severe ones."


def _alarm(row: Row) -> str:
    return {3: "bold red", 2: "yellow"}.get(int(str(row["severity"])), "")


READINGS = (
    Column("language", "language", shrink=False),
    Column("word", "word", style=_alarm),
    Column("meaning", "meaning"),
    Column("weight", "how bad", shrink=False, style=_alarm),
    Column("met", "how it is met"),
)
SAYING = (
    Column("language", "language", shrink=False),
    Column("plainer", "how usual"),
    Column("likely_reading", "likely read"),
    Column("remarks", "remarks"),
)
CSV = tuple(
    Column(key, key)
    for key in (
        "name", "language", "word", "meaning", "kind", "severity", "match", "where", "frequency", "source", "gravity",
    )
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Found:
    """One name with everything said about it."""

    name: str
    readings: list[Reading]
    ease: list[Ease | NotChecked]
    lookalikes: LookAlikes | None


@app.command(
    epilog="Examples:\n\nnamescreen readings Mistpatch --languages de,fr\n\n"
    "namescreen readings Loamlet Sprigwick --format csv --mild"
)
def readings(
    names: Annotated[list[str] | None, typer.Argument(help="One name or several; the brief's shortlist if left out.")]
    = None,
    languages: LanguagesOption = None,
    brief: BriefOption = None,
    dictionary: Annotated[
        list[Path] | None,
        typer.Option(
            "--dictionary",
            help="A dictionary file that ends in .index (the format of the DICT protocol), or a folder of them; repeat "
            "the option for several. Without it those installed in the usual folders are asked.",
        ),
    ] = None,
    shipped_only: Annotated[
        bool, typer.Option("--shipped-only", help="Ask no dictionary but the shipped word tables.")
    ] = False,
    mild: Annotated[bool, typer.Option("--mild", help="Mask severe words.")] = False,
    form: FormatOption = Format.table,
    strict: StrictOption = False,
) -> None:
    """See what a name says to readers of other languages, the worst first, and how readily they say it.

    Severity is from 0 to 3: ordinary, mild, awkward, severe; it is lower than the word's own where the name
    only holds or recalls the word. English is always looked through; without --languages or a brief every
    shipped language is too.
    """
    from namescreen.connotations import coverage, ease, english_coverage, english_readings, lookalikes
    from namescreen.connotations import readings as readings_of
    from namescreen.connotations.dictionaries import opened
    from namescreen.screening.placed import with_places

    settled = brief_with(brief, languages=language_list(languages))
    asked = tuple(tag for tag in settled.languages if code(tag) != ENGLISH) if settled.languages else None
    wanted = names_or_shortlist(names, settled)
    named = dictionary or (() if shipped_only else None)
    covered = [english_coverage(), *coverage(asked, named)]
    sources = _opened(opened(named), asked)

    def each() -> Iterator[_Found]:
        for name in counted(wanted, len(wanted), "Reading names"):
            others = with_places(readings_of(name, languages=asked, dictionaries=sources))
            met = sorted((*english_readings(name, settled.markets), *others), key=lambda one: one.order)
            yield _Found(
                name,
                [reading.mild() for reading in met] if mild else met,
                [ease(name, language) for language in asked or ()],
                lookalikes(name),
            )

    if form is Format.jsonl:
        show((_whole(found, covered) for found in each()), (), form)
    elif form is Format.csv:
        show((row for found in each() for row in _csv_rows(found)), CSV, form)
        say(*_coverage_lines(covered, asked))
    else:
        everything = list(each())
        if not mild and any(reading.base_severity == 3 for found in everything for reading in found.readings):
            say(CONTENT_WARNING)
        for found in everything:
            _show_one(found, form, _scope(covered, asked))
        _show_coverage(covered, asked, form)
    print_disclaimer(form)
    if strict and any(isinstance(part, NotChecked) for part in covered):
        raise typer.Exit(NOT_CHECKED)


def _opened(sources: Sequence[Dictionary], asked: Sequence[str] | None) -> tuple[Dictionary, ...]:
    """The sources that hold one of the languages asked for, each asked once: the first time may take seconds."""
    from namescreen.lexicon.language_codes import wanted

    useful = [source for source in sources if source.languages & set(wanted(asked))]
    for source in counted(useful, len(useful), "Opening dictionaries"):
        source.meanings("a", min(source.languages & set(wanted(asked))))
    return tuple(useful)


@dataclass(frozen=True, slots=True)
class _Scope:
    """The languages that names were looked up in, and those asked for that they could not be, in words."""

    looked: str
    missed: str


def _scope(covered: Sequence[Coverage | NotChecked], asked: Sequence[str] | None) -> _Scope:
    from namescreen.connotations import language_name

    looked = [part.language for part in covered if not isinstance(part, NotChecked)]
    missed = [language_name(tag) for tag in asked or () if code(tag) not in looked]
    named = [language_name(tag) for tag in looked]
    every = ["English", f"{len(looked) - 1} other languages"]
    return _Scope(some(every if asked is None else named), some(missed))


def _show_one(found: _Found, form: Format, scope: _Scope) -> None:
    _head(found.name, form)
    if found.lookalikes:
        say_point(f"look-alike letters: {found.lookalikes}", form, apart=True)
    if scope.missed:
        say_point(f"Not looked at: {scope.missed}; see below.", form, apart=True)
    unlucky = [reading for reading in found.readings if reading.severity > 0]
    if unlucky:
        show([_row(reading) for reading in unlucky], READINGS, form)
    else:
        say_point(f"No unlucky word found in {scope.looked}.", form, apart=True)
    ordinary = [reading for reading in found.readings if reading.severity == 0]
    if ordinary:
        say_point(f"Also met: {'; '.join(_ordinary(ordinary))}", form, apart=True)
    _show_saying([one for one in found.ease if not isinstance(one, NotChecked)], form)
    for one in found.ease:
        if isinstance(one, NotChecked):
            say_point(str(one), form, apart=True)


def _row(reading: Reading) -> Row:
    from namescreen.connotations import SEVERITIES, language_name

    return {
        "language": language_name(reading.language),
        "word": reading.word,
        "meaning": reading.meaning,
        "weight": SEVERITIES[reading.severity],
        "met": f"{reading.match}: {reading.where}",
        "severity": reading.severity,
    }


def _ordinary(readings: Sequence[Reading]) -> Iterator[str]:
    """Ordinary words, each once with its meaning where known, and the languages that have it."""
    languages: dict[tuple[str, str], list[str]] = {}
    for reading in readings:
        meaning = reading.meaning or "meaning not known here"
        languages.setdefault((reading.word, meaning), []).append(reading.language)
    for (word, meaning), tags in languages.items():
        yield f"{word} in {some(sorted(tags))} ({meaning})"


def _usual(percentile: float) -> str:
    """How usual the order of a name's letters is in a language, in a word and a number."""
    word = "unusual" if percentile < 10 else "fairly unusual" if percentile < 33 else "usual"
    return f"{word} ({percentile} of 100)"


def _show_saying(found: Sequence[Ease], form: Format) -> None:
    if not found:
        return
    from namescreen.connotations import language_name

    sys.stdout.write("\n")
    rows: list[Row] = [
        {
            "language": language_name(one.language),
            "plainer": _usual(one.percentile),
            "likely_reading": f"[{one.likely_reading}]" if one.likely_reading else "",
            "remarks": "; ".join(one.hindrances),
        }
        for one in found
    ]
    show(rows, SAYING, form)
    say_point(
        "how usual: of 100 words of that language, how many have a less usual order of letters; likely read: in the "
        "letters of the International Phonetic Alphabet",
        form,
        apart=True,
    )


def _show_coverage(covered: Sequence[Coverage | NotChecked], asked: Sequence[str] | None, form: Format) -> None:
    """What was searched: a line a language where they were asked for, else the totals."""
    _head("Looked through", form)
    for line in _coverage_lines(covered, asked):
        say_point(line, form, apart=True)


def _coverage_lines(covered: Sequence[Coverage | NotChecked], asked: Sequence[str] | None) -> Iterator[str]:
    held = [part for part in covered if not isinstance(part, NotChecked)]
    if asked is None:
        words, unlucky = sum(part.words for part in held), sum(part.unlucky for part in held)
        meanings = dict.fromkeys(source for part in held for source in part.meanings)
        yield (
            f"{len(held)} languages ({' '.join(part.language for part in held)}): {words:,} words, {unlucky:,} "
            f"unlucky words; meanings from {', '.join(meanings)}"
        )
    else:
        yield from map(str, held)
    yield from (str(part) for part in covered if isinstance(part, NotChecked))


def _whole(found: _Found, covered: Sequence[Coverage | NotChecked]) -> dict[str, object]:
    """Everything about one name, for a program."""
    missed = [part for part in (*found.ease, *covered) if isinstance(part, NotChecked)]
    alike = found.lookalikes
    return {
        "name": found.name,
        "readings": [reading.to_json() for reading in found.readings],
        "ease": [one.to_json() for one in found.ease if not isinstance(one, NotChecked)],
        "lookalikes": {"looks": alike.looks, "scripts": alike.scripts, "letters": alike.letters} if alike else None,
        "coverage": [part.to_json() for part in covered if not isinstance(part, NotChecked)],
        "not_checked": [{"check": part.check, "because": part.because} for part in missed],
    }


def _csv_rows(found: _Found) -> Iterator[Row]:
    for reading in found.readings:
        yield {"name": found.name, **reading.to_json()}


def _head(text: str, form: Format) -> None:
    sys.stdout.write(f"\n## {cell(text)}\n\n" if form is Format.markdown else f"\n{visible(text)}\n")
