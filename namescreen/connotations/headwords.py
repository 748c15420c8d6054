"""The headwords of a dictd index by their folded letters, prepared once and kept in the user's cache.

A dictd index is sorted for look-ups as a word is spelled; a name has lost its accents and case. Folding half
a million headwords takes seconds, so the folded table is written beside the user's other caches, under a name
that holds the index's size and time of change, and read from there as long as those stay. Where the cache
cannot be written the table is kept in memory.
"""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Callable
from pathlib import Path

from namescreen.errors import DataError, InputError, Problem
from namescreen.files import user_cache, write_whole
from namescreen.tables import Table, table_bytes
from namescreen.text import fold

__all__ = ["Headword", "headwords"]

Headword = tuple[str, str, str]
"""A headword as the index spells it, with the offset and length of its text in base 64."""


def headwords(index: Path) -> Callable[[str], list[Headword]]:
    """A function from folded letters to headwords. Raises `InputError` for an index that cannot be used."""
    prepared = _prepared_path(index)
    if prepared is not None:
        try:
            if not prepared.is_file():
                _write(prepared, index)
            table = Table(prepared)
            return lambda letters: _split(table.get(letters))
        except (OSError, DataError):
            pass  # an unwritable or damaged cache costs time, not the answer
    held = _folded(index)
    return lambda letters: _split(held.get(letters))


def _split(value: str | None) -> list[Headword]:
    fields = value.split("\t") if value else []
    return [(fields[at], fields[at + 1], fields[at + 2]) for at in range(0, len(fields) - 2, 3)]


def _prepared_path(index: Path) -> Path | None:
    """Where the prepared table of this index, as it is now, belongs; None if there can be none."""
    try:
        state = index.stat()
        place = hashlib.sha256(os.fsencode(index.resolve())).hexdigest()[:12]
        folder = user_cache() / "dictionaries"
    except (OSError, RuntimeError):
        return None
    return folder / f"{index.stem}-{place}" / f"2-{state.st_size}-{state.st_mtime_ns}.tsv"


def _write(prepared: Path, index: Path) -> None:
    """Prepare the table, in place of those of the index's earlier states."""
    contents = table_bytes(index.stem.replace(" ", "_"), _folded(index).items())
    prepared.parent.mkdir(parents=True, exist_ok=True)
    for old in prepared.parent.glob("*.tsv"):
        old.unlink(missing_ok=True)
    write_whole(prepared, contents)


def _folded(index: Path) -> dict[str, str]:
    """Every headword with its place, by its folded letters; several are joined by tabs."""
    try:
        lines = index.read_text(encoding="utf-8").split("\n")
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(Problem(f"cannot be read ({error})", "Give a dictd index in UTF-8", str(index))) from error
    found: dict[str, str] = {}
    for at, line in enumerate(lines, 1):
        if not line:
            continue
        fields = line.rstrip("\r").split("\t")
        if len(fields) < 3 or not all(re.fullmatch("[A-Za-z0-9+/]{1,10}", place) for place in fields[1:3]):
            raise InputError(
                Problem(f"{line[:60]!r} is not headword, offset, length", "Give a dictd index", str(index), at)
            )
        head = fields[0]
        if head.startswith(("00database", "00-database")):
            continue
        key = (head.lower() if head.isascii() else fold(head)).replace(" ", "")
        entry = "\t".join(fields[:3])
        found[key] = f"{found[key]}\t{entry}" if key in found else entry
    return found
