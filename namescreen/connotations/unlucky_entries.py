"""The hand-written tables of unlucky words: ``wordlists/unlucky/<language>.tsv``.

A header line ``#namescreen-unlucky 1 <language>``, a line of column names, then one word a line:

    word  transcription  meaning  kind  severity  forms

`transcription` is in Latin letters, for languages written otherwise; `meaning` is a few English words;
`severity` 1 mild, 2 awkward, 3 severe; `forms` are further forms of the word (feminine, plural, inflected),
with spaces between. Lines that begin with # and empty lines are remarks.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from namescreen.errors import InputError, Problem

from .results import KINDS

__all__ = ["COLUMNS", "Entry", "read_entries"]

COLUMNS = ("word", "transcription", "meaning", "kind", "severity", "forms")


@dataclass(frozen=True, slots=True)
class Entry:
    """One unlucky word of one language."""

    language: str
    word: str
    transcription: str
    meaning: str
    kind: str
    severity: int
    forms: tuple[str, ...] = ()


def read_entries(path: Path) -> list[Entry]:
    """The entries of one table, in file order; raises `InputError` with every line that is not as
    described."""
    lines = path.read_text(encoding="utf-8").splitlines()
    language = path.stem
    problems: list[Problem] = []
    header = f"#namescreen-unlucky 1 {language}"
    if not lines or lines[0] != header:
        problems.append(Problem("the header is missing", f"Begin with {header!r}", path.name, 1))
    entries: list[Entry] = []
    seen: dict[str, int] = {}
    names: list[str] = []
    for number, line in enumerate(lines[1:], 2):
        if not line.strip() or line.startswith("#"):
            continue
        fields = line.split("\t")
        if not names:
            names = fields
            if tuple(names) != COLUMNS:
                problems.append(Problem(f"the columns are {names}", f"Name them {COLUMNS}", path.name, number))
                break
            continue
        if len(fields) != len(COLUMNS):
            problems.append(Problem(f"{len(fields)} columns instead of {len(COLUMNS)}", "", path.name, number))
            continue
        word, transcription, meaning, kind, severity, forms = (field.strip() for field in fields)
        wrong = _wrong_field(word, meaning, kind, severity)
        if wrong or word in seen:
            said = "bad value" if wrong else f"{word!r} stands on line {seen[word]} already"
            problems.append(Problem(f"{said} in {line!r}", "", path.name, number, wrong or "word"))
        else:
            seen[word] = number
            entries.append(Entry(language, word, transcription, meaning, kind, int(severity), tuple(forms.split())))
    if problems:
        raise InputError(problems)
    return entries


def _wrong_field(word: str, meaning: str, kind: str, severity: str) -> str:
    """The first field with a value that cannot stand there; "" if there is none."""
    if not word:
        return "word"
    if not meaning:
        return "meaning"
    if kind not in KINDS:
        return "kind"
    return "" if severity in ("1", "2", "3") else "severity"
