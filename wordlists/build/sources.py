"""How every build script writes its table, with a record of its source, licence and build command."""

from __future__ import annotations

import argparse
import hashlib
import re
from collections.abc import Iterator
from pathlib import Path

from namescreen.files import write_whole

DRAWN = "2026-11-25"
_SECTION = re.compile(r"^## (.+)$", re.MULTILINE)


def folder_to_write(about: str, default: Path) -> Path:
    """The folder of the tables that a script without other options writes: `--to` on its command line, else `default`.
    `about` is its help."""
    parser = argparse.ArgumentParser(description=about, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--to", type=Path, default=default, help="the folder to write to")
    folder: Path = parser.parse_args().to
    return folder


def by_language(path: Path) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """The English of each line of one of our own lists, and what stands for it in each language; a line
    "# english | ..." names the languages from there on."""
    columns: list[str] = []
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("# english"):
            columns = [cell.strip() for cell in line.removeprefix("# ").partition(";")[0].split("|")]
        elif line and not line.startswith("#"):
            english, *cells = (cell.strip() for cell in line.split("|"))
            if len(cells) != len(columns) - 1:
                raise ValueError(f"{path.name}, {english}: {len(cells)} languages instead of {len(columns) - 1}")
            yield english, list(zip(columns[1:], cells, strict=True))


def write_table(
    to: Path, table: str, contents: bytes, *, source: str, version: str, licence: str, build: str, drawn: str = DRAWN
) -> None:
    """Write `contents` as the file `table` under `to` and record its source there; say how large it is."""
    write_whole(to / table, contents)
    record_source(to, table, contents, source=source, version=version, licence=licence, build=build, drawn=drawn)
    print(f"{table}: {len(contents):,} bytes")


def record_source(
    to: Path, table: str, contents: bytes, *, source: str, version: str, licence: str, build: str, drawn: str = DRAWN
) -> None:
    """Write the section of `table` in SOURCES.md under `to`, one line a fact, in its place among the others."""
    path = to / "SOURCES.md"
    opening, *parts = _SECTION.split(path.read_text(encoding="utf-8")) if path.exists() else ("",)
    sections = dict(zip(parts[::2], parts[1::2], strict=True))
    sections[table] = (
        f"\n\n- source: {source}\n- version: {version}\n- licence: {licence}\n- drawn: {drawn}\n"
        f"- sha256: {hashlib.sha256(contents).hexdigest()}\n- build: `{build}`\n\n"
    )
    text = opening + "".join(f"## {name}{sections[name]}" for name in sorted(sections))
    write_whole(path, (text.rstrip("\n") + "\n").encode())
