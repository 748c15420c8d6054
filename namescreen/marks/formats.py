"""The formats that can be read, and how a document's format is recognised: by its content, not its name."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from .fields import Columns
from .gazettes import BRAZIL, FRANCE, KOREA, KOREA_GOODS
from .problems import ProblemLog
from .side_tables import SideTables
from .sources import Stream
from .st66 import LAYOUT as ST66
from .st96 import LAYOUT as ST96
from .tables import SideTable, side_of, table_of
from .tabular import Row, header_of, put_aside, read_lines
from .text_lines import encoding_of, lines
from .uspto import BULK
from .xml_records import looks_like_xml, read_records

__all__ = ["UNNAMED", "Format", "read_document", "read_side_table", "sniff"]

XML_LAYOUTS = (BULK, ST66, ST96, BRAZIL, KOREA, KOREA_GOODS, FRANCE)
_XML = "XML"
UNNAMED = ("", _XML)
"""The name of a document's format until its records show which office it is from."""
NO_REGISTERS = {
    "ttab-proceedings": "holds proceedings before the USPTO's trial and appeal board, not marks",
}
"""Office files that users mistake for registers, by their first element."""


@dataclass(frozen=True, slots=True)
class Format:
    """What a document is in: its `name`, whether documents of it go `together` as one source, whether it is `xml`, and,
    for one that holds facts about marks that stand elsewhere, the side table that it is (`owners`: XML with owners
    alone)."""

    name: str
    xml: bool = False
    together: bool = False
    side: SideTable | None = None
    owners: bool = False


def sniff(stream: Stream, suffix: str, columns: Columns, encoding: str | None = None) -> Format:
    """The format of a document, judged by its first bytes."""
    head = stream.head
    if suffix == ".xml" or looks_like_xml(head):
        text = head.replace(b"\0", b"")
        owners = b"<Transaction" in text and b"Applicant" in text and not re.search(rb"[<:]Trade[Mm]ark[\s>]", text)
        return Format(_XML, xml=True, together=True, owners=owners)
    first = head.decode(encoding or encoding_of(head) or "utf-8", "replace").lstrip("\ufeff").splitlines()
    names = header_of(first[0], suffix, columns) if first else []
    known = table_of(names) if names and "text" not in columns else None
    if known is not None:
        return Format(known.name)
    side = side_of(names) if names and columns.get("text", "\0") not in names else None
    return Format(side.name, together=True, side=side) if side else Format("")


def read_side_table(
    stream: Stream,
    suffix: str,
    log: ProblemLog,
    side: SideTable,
    sides: SideTables,
    encoding: str | None,
    count: Callable[[], None],
) -> None:
    """Keep the facts of a side table; `count` is called for each row."""
    put_aside(lines(stream, log, encoding), suffix, log, side, sides, count)


def read_document(
    stream: Stream,
    suffix: str,
    log: ProblemLog,
    columns: Columns,
    sides: SideTables,
    encoding: str | None = None,
    tell: Callable[[str], None] = lambda _: None,
) -> Iterator[Row]:
    """The records of a document, in whatever format it is; `tell` is told the name of an office's format.

    Raises `InputError` if it is in none that is known.
    """
    if suffix == ".xml" or looks_like_xml(stream.head):
        yield from read_records(stream, log, XML_LAYOUTS, NO_REGISTERS, tell)
    else:
        yield from read_lines(lines(stream, log, encoding), suffix, log, columns, sides)
