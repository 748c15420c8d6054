"""What every draw script writes beside its table: where it comes from, under which licence, and how it is
built."""

from __future__ import annotations

import hashlib
from pathlib import Path

from namescreen.tables import write_whole

DRAWN = "2026-11-25"


def record_source(
    to: Path, table: str, contents: bytes, *, source: str, version: str, licence: str, build: str
) -> None:
    """Write sources/TABLE.md under `to`: one line a fact, joined into SOURCES.md."""
    folder = to / "sources"
    folder.mkdir(exist_ok=True)
    digest = hashlib.sha256(contents).hexdigest()
    text = (
        f"## {table}\n\n- source: {source}\n- version: {version}\n- licence: {licence}\n- drawn: {DRAWN}\n"
        f"- sha256: {digest}\n- build: `{build}`\n"
    )
    write_whole(folder / f"{table.replace('/', '-')}.md", text.encode())
