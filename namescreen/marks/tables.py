"""Layouts of tables that offices publish, known by the names of their columns.

Sources: gov.uk on the trade mark data release; the Trademark Case Files Dataset's documentation and schema; the Japan
Patent Office's standardised data (names of columns); the dictionaries of IP Australia's IPGOD.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from . import uspto
from .fields import FIELD_NAMES
from .side_tables import Facts
from .xml_records import Values

__all__ = ["NUMBERED", "SideTable", "TableLayout", "by_number", "folded", "side_of", "table_of"]

Row = Mapping[str, str]
"""The cells of one row by their folded column names."""


@dataclass(frozen=True)
class TableLayout:
    """One table of marks: `columns` tell it, and `assemble` makes the fields of a mark from a row and what other tables
    know about its `key`.

    Without `quoted` a quotation mark is like any other sign, and cells too many belong to the column `spills`.
    """

    name: str
    columns: frozenset[str]
    assemble: Callable[[Row, Facts], Values]
    key: str = ""
    quoted: bool = True
    spills: str = ""


@dataclass(frozen=True)
class SideTable:
    """One table of facts about marks, (field, rank, text) a row, by the `key` of the mark; without `facts` one that is
    not needed."""

    name: str
    columns: frozenset[str]
    key: str
    facts: Callable[[Row], Iterable[tuple[str, str, str]]] | None
    without: frozenset[str] = field(default_factory=frozenset)


def folded(name: str) -> str:
    """A column's name in lower case, with one space or none between its words."""
    return " ".join(name.replace("_", " ").casefold().split())


def table_of(header: Sequence[str]) -> TableLayout | None:
    """The layout whose columns are all among these."""
    names = set(map(folded, header))
    return next((layout for layout in TABLES if layout.columns <= names), None)


def side_of(header: Sequence[str]) -> SideTable | None:
    """The side table whose columns are all among these."""
    names = set(map(folded, header))
    return next((side for side in SIDES if side.columns <= names and not side.without & names), None)


def _names(text: str) -> frozenset[str]:
    return frozenset(map(str.strip, text.split(",")))


def _united_kingdom(row: Row, _: Facts) -> Values:
    return {
        "text": row.get("mark text", ""),
        "number": row.get("trade mark", ""),
        "office": "GB",
        "classes": row.get("classes", ""),
        "status": row.get("status", ""),
        "owner": row.get("name", ""),
        "mark_type": row.get("mark type", ""),
        "filed": row.get("filed", "") or row.get("date filed", ""),
        "registered": row.get("registered", "") or row.get("date registered", ""),
        "expires": row.get("renewal due date", "") or row.get("expired", ""),
    }


def _case_file(row: Row, facts: Facts) -> Values:
    dead = {number for number, code in facts.get("class_status", ()) if uspto.dead_class(code)}
    goods = (uspto.plain_goods(text) for kind, text in facts.get("statement", ()) if kind.startswith("GS"))
    serial, status = row["serial no"], row["cfh status cd"]
    return {
        "operation": "none" if uspto.no_mark(serial, status) else "",
        "text": uspto.long_words(facts.get("statement", ()), row["mark id char"]),
        "mark_type": uspto.drawing_type(row.get("mark draw cd", "")),
        "number": serial,
        "registration_number": row.get("registration no", ""),
        "office": "US",
        "classes": uspto.nice_only(code for number, code in facts.get("class", ()) if number not in dead),
        "goods": "; ".join(dict.fromkeys(filter(None, goods))),
        "goods_language": "en",
        "status": status,
        "owner": uspto.current_owners(facts.get("owner", ())),
        "filed": row.get("filing dt", ""),
        "registered": row.get("registration dt", ""),
    }


def _japan(row: Row, facts: Facts) -> Values:
    words = sorted(facts.get("words", ()))
    return {
        "operation": "none" if row.get("yonpo code", "4") != "4" else "" if words else "part",
        "text": words[0][1] if words else "",
        "number": row["shutugan no"],
        "registration_number": row.get("toroku no", ""),
        "office": "JP",
        "classes": ", ".join(text for _, text in facts.get("class", ())),
        "filed": row.get("shutugan bi", ""),
    }


def by_number(values: Values, facts: Facts) -> Values:
    """A mark of a table of unknown layout, with what other tables say about its number."""
    stated = {name: "; ".join(dict.fromkeys(text for _, text in found if text)) for name, found in facts.items()}
    return {**stated, **{name: text for name, text in values.items() if text}}


NUMBERED = {"tm number": {"office": "AU", "format": "Australia's IPGOD"}}
"""Columns by which tables of unknown layout are joined with others, and what such a column says of its table."""

TABLES = (
    TableLayout(
        "UK text release",
        _names("trade mark, mark text, class1, class45"),
        _united_kingdom,
        quoted=False,
        spills="mark text",
    ),
    TableLayout(
        "USPTO case files data set", _names("serial no, mark id char, cfh status cd"), _case_file, key="serial no"
    ),
    TableLayout(
        "Japan's standardised data", _names("yonpo code, shutugan no"), _japan, key="shutugan no", quoted=False
    ),
)
"""The first layout whose columns are all present counts."""

SIDES = (
    SideTable(
        "USPTO case files data set",
        _names("serial no, class id, class status cd"),
        "serial no",
        lambda row: [("class_status", row["class id"], row["class status cd"])],
    ),
    SideTable(
        "USPTO case files data set",
        _names("serial no, class id, intl class cd"),
        "serial no",
        lambda row: [("class", row["class id"], row["intl class cd"])],
    ),
    SideTable(
        "USPTO case files data set",
        _names("serial no, statement type cd, statement text"),
        "serial no",
        lambda row: (
            [("statement", row["statement type cd"], row["statement text"])]
            if row["statement type cd"].startswith(("GS", "MK"))
            else []
        ),
    ),
    SideTable(
        "USPTO case files data set",
        _names("serial no, own name, own type cd"),
        "serial no",
        lambda row: [("owner", row["own type cd"], row["own name"])],
    ),
    SideTable(  # the others of the set are not needed
        "USPTO case files data set",
        _names("serial no"),
        "serial no",
        None,
        without=frozenset(FIELD_NAMES["text"]),
    ),
    SideTable(
        "Japan's standardised data",
        _names("app num, standard char t"),
        "app num",
        lambda row: [("words", "1", row["standard char t"])],
    ),
    SideTable(
        "Japan's standardised data",
        _names("app num, indct use t"),
        "app num",
        lambda row: [("words", "2", row["indct use t"])],
    ),
    SideTable(
        "Japan's standardised data",
        _names("app num, search use t"),
        "app num",
        lambda row: [("words", "3", row["search use t"])],
    ),
    SideTable(
        "Japan's standardised data",
        _names("shutugan no, rui"),
        "shutugan no",
        lambda row: [("class", "", row["rui"])],
        without=frozenset({"yonpo code"}),
    ),
    SideTable(
        "Australia's IPGOD",
        _names("tm number, name, cleanname"),
        "tm number",
        lambda row: [("owner", "", row["name"])],
    ),
    SideTable(
        "Australia's IPGOD",
        _names("tm number, status code desc"),
        "tm number",
        lambda row: [("status", "", row["status code desc"])],
        without=frozenset(FIELD_NAMES["text"]),
    ),
)
