"""`namescreen columns`: what each column of the CSV forms means."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

import typer

from namescreen.errors import InputError, Problem
from namescreen.plain_text import some

from .options import FormatOption, make_app
from .output import Column, Format, show

__all__ = ["explained"]

app = make_app("Explain the columns of CSV output.")

COLUMNS = (Column("column", "column", shrink=False), Column("meaning", "meaning"))

_NAME = {"name": "the name"}
_CLOSENESS = {
    "overall": "closeness of name and mark in all, 0 to 1: 1 = identical, or the same words in another order",
    "appearance": "how alike they look, 0 to 1: 1 = the same letters",
    "sound": "how alike they sound, 0 to 1: 1 = they sound the same",
    "meaning": "how alike their meanings are, 0 to 1: 1 = they say the same; no number where one is coined",
    "goods_relatedness": "how related the goods are, 0 to 1: 0 unrelated, 0.25 low, 0.5 average, 0.75 high, 1 the same",
}
_MARK = {
    "number": "its number, as the list states it; so are the columns that follow, empty where it states nothing",
    "office": "the office of the mark: two letters (WIPO ST.3)",
}
_OWNER, _OF_CLASSES = {"owner": "whose it is"}, {"classes": "its Nice classes"}
_WHERE = {"source": "the list that has it", "line": "the line of that list"}
_SCREEN = {
    **_NAME,
    "mark": "an existing mark near it, the closest first; empty for a name that has none",
    **_CLOSENESS,
    "knockout": "yes: a live mark, identical or all but identical, for the same or close goods",
    **_MARK,
    **_OF_CLASSES,
    "goods": "what it is for",
    "status": "live, dead, or unknown where the list does not say",
    **_OWNER,
    **_WHERE,
    "marks": "how many marks have these words, this one among them",
    "reasons": "what the closeness rests on",
    "distinctiveness": "what the name is for the goods, in the market where it says most: generic, descriptive, "
    "suggestive, arbitrary, fanciful, or a kind treated apart, such as surname",
    "distinctiveness_score": "the same as a number, 0 to 1: 0 = names the goods, 1 = coined",
    "worst_reading": "the language and word of the worst reading in the buyers' languages; empty if none is unlucky",
    "not_checked": "the checks that were not made for the name, and why",
    "deceptive": "whether it says of the goods what is not so: perhaps, likely, or empty",
}
_REPORT = {
    **_NAME,
    "place": "its place in the order of the report, 1 = least against it",
    "worst_finding": "the gravest of the four findings that follow",
    "marks": "what existing marks say against it: the level, with the evidence",
    "distinctiveness": "what its meaning for the goods says against it: the level, with the evidence",
    "readings": "what its readings in other languages say against it: the level, with the evidence",
    "addresses": "how it does as a domain and handle: the level, with the evidence",
    "mark": "an existing mark near it, that of most concern first; empty for a name that has none",
    "mark_level": "how much of a concern this mark is: nothing found, minor, look closer, serious",
    "knockout": _SCREEN["knockout"],
    **_CLOSENESS,
    **_MARK,
    **_OWNER,
    **_OF_CLASSES,
    "status": "its status, as the list states it",
    "filed": "the day it was filed; all days as year-month-day",
    "registered": "the day it was registered",
    "priority": "the day of its priority",
    "expires": "the day on which it ends unless renewed",
    "territories": "where it holds: codes of countries and unions",
    "in_markets": "whether it holds in a market of the brief: yes, no, not known",
    **_WHERE,
    "marks_of_these_words": _SCREEN["marks"],
    "reasons": _SCREEN["reasons"],
}
_ADDRESSES = {
    **_NAME,
    "kind": "domain or handle",
    "address": "the domain or handle, in the letters that are asked for",
    "shown": "the domain as a reader sees it, where it has other letters than a to z",
    "how": "how the domain was made from the name",
    "limit": "the longest handle that the place allows, in characters",
    "lost": "letters of the name that the handle had to give up",
    "where": "the server or page that was asked; empty if nobody was",
    "finding": "what was found, in words",
    "taken": "yes: registered, or a page was found; no: neither, which is no promise that it is free; empty: not known",
    "since": "since when it is registered, year-month-day",
    "until": "until when",
    "registrar": "through whom",
    "date": "the day of the answer",
}
_READINGS = {
    **_NAME,
    "language": "the code of a language (BCP 47, such as de, pt-BR)",
    "word": "a word of it that is met in the name",
    "meaning": "what it means; empty if that is not known here",
    "kind": "which kind of unlucky word it is, or that it is an ordinary one",
    "severity": "how much it harms the name: 0 not at all, 1 mild, 2 awkward, 3 severe",
    "match": "how it is met: as it stands, without accents, inflected, inside a word, by ear",
    "where": "in which part of the name",
    "frequency": "how common it is there: log10 of how often it comes in thousand million words (Zipf's scale)",
    "source": "the table that has it",
    "gravity": "how bad the word is by itself, 0 to 3; the name suffers less where it hardly shows",
}
_CLASSES = {
    "number": "a class of the Nice Classification, the likeliest first",
    "score": "how likely the goods are in it, 0 to 1",
    "subject": "what the class holds, in short",
    "reason": "the words that point to it",
    "explained": "what the class holds, in plain words",
}
_COMPARE = {
    "aspect": "appearance, sound, meaning or overall",
    "closeness": "how alike the two names are in it, 0 to 1: 1 = the same; in words where it was not checked",
}


def _brainstorm() -> Mapping[str, str]:
    from namescreen.generation import PARTS

    return {
        **_NAME,
        "score": "how good it may be for the brief, 0 to 1: a weighted mean of the parts, a matter of taste",
        "construction": "how it was made: found, pair, blend, changed, ...",
        "how": "the same in words: what it was made from, and why that suits the brief",
        "sources": "the words it was made from",
        **{name: f"part of the score, 0 to 1: {meaning}" for name, meaning in PARTS.items()},
        "flags": "remarks, such as a mark of the list that is near it",
    }


_EXPLAINED: Mapping[str, Mapping[str, str]] = {
    "classes": _CLASSES, "screen": _SCREEN, "compare": _COMPARE, "readings": _READINGS, "addresses": _ADDRESSES,
    "report": _REPORT,
}  # fmt: skip
_COMMANDS = ("brainstorm", *_EXPLAINED)


def explained(command: str) -> Mapping[str, str]:
    """The columns of a command's CSV form, in their order, each with its meaning."""
    return _brainstorm() if command == "brainstorm" else _EXPLAINED[command]


@app.command(epilog="Example: namescreen columns brainstorm")
def columns(
    command: Annotated[str, typer.Argument(help=f"A command that writes CSV: {some(_COMMANDS, 'or')}.")],
    form: FormatOption = Format.table,
) -> None:
    """Explain what each column means that a command writes with --format csv."""
    if command not in _COMMANDS:
        raise InputError(Problem(f"{command!r} is no command that writes CSV", f"Name {some(_COMMANDS, 'or')}"))
    show([{"column": name, "meaning": meaning} for name, meaning in explained(command).items()], COLUMNS, form)
