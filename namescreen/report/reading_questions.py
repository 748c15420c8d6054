"""Questions for the adviser and for native speakers on what a name reads as in other languages."""

from __future__ import annotations

from ..connotations.results import stands_as_word
from ..lexicon.language_codes import language_name
from ..plain_text import shorten
from ..territories import languages_of
from .findings import words_read
from .model import NameEntry, Report

__all__ = ["on_readings"]

_READINGS = 2  # readings of a name that are asked about
_OFFENSIVE = {"vulgar", "excrement", "sex", "insult"}


def on_readings(entry: NameEntry, report: Report) -> list[str]:
    """Of public morality is asked only where buyers of the markets meet a word as a word."""
    grave = [reading for reading in words_read(entry) if reading.severity >= 2]
    spoken = {*report.languages, *languages_of(report.markets)}
    asked = []
    for reading in grave[:_READINGS]:
        meaning = f", {shorten(reading.meaning.partition('; ')[0], 40)}" if reading.meaning else ""
        match, _, where = reading.match.partition(", ")
        stands, local = stands_as_word(match, where), reading.language in spoken or not spoken
        doubt = (
            "and could an office object on grounds of public morality"
            if stands and local and _OFFENSIVE & set(reading.kind.split(", "))
            else "and would it put them off these goods"
        )
        reads = "reads as" if stands else "holds" if match == "inside" else "recalls"
        asked.append(
            f"In {language_name(reading.language)}, {shorten(entry.name, 60)} {reads} "
            f"{shorten(reading.word, 30)}{meaning}: do native speakers notice it, {doubt}?"
        )
    return asked
