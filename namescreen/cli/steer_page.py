"""A page of a steered session: its names with their numbers, and what was said of each before."""

from __future__ import annotations

from collections.abc import Sequence

from namescreen.generation import Candidate, Session, Step

from .output import BELOW, Column, Row, show_table, width

__all__ = ["show_page"]

ROOM_FOR_WHY = 72
"""Columns from which the reason stands beside a name; in a narrower terminal it stands below it."""

_COLUMNS = (
    Column("number", "", right=True),
    Column("name", "name", shrink=False),
    Column("score", "score", right=True),
    Column("said", "", shrink=False),
    Column("how", "how it was made"),
)


def show_page(page: Sequence[Candidate | Step], session: Session) -> None:
    """Write the names of a page; those kept or dropped say so. Remarks stand below a name."""
    narrow = width() < ROOM_FOR_WHY
    rows: list[Row] = [
        {
            "number": number, "name": one.text, "score": f"{one.score:.2f}", "said": _said(one.text, session),
            "how": one.how, BELOW: "; ".join((one.how, *one.flags)[not narrow :]),
        }
        for number, one in enumerate(page, 1)
    ]  # fmt: skip
    empty = {"said"} if not any(row["said"] for row in rows) else set()
    left = {*empty, *(["how"] if narrow else [])}
    show_table(rows, [column for column in _COLUMNS if column.key not in left])


def _said(name: str, session: Session) -> str:
    return "kept" if name in session.kept else "dropped" if name in session.dropped else ""
