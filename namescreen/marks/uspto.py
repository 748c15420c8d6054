"""The United States Patent and Trademark Office: its bulk XML, its yearly case files data set, and its status codes.

Sources: the office's "Trademark Applications Documentation" of the bulk XML (V2.0, with Table 1 of the status codes),
and its paper on the Trademark Case Files Dataset (Graham, Hancock, Marco, Myers, 2013). Which codes mean live, pending
or dead is our reading of the codes' definitions.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import chain

from .xml_records import Node, Values, XmlLayout

__all__ = ["BULK", "EXPIRED", "current_owners", "dead_class", "drawing_type", "nice_only", "plain_goods", "standing"]

_DEAD = frozenset(
    "401 402 403 600 601 602 603 604 605 606 607 608 609 614 618 626 709 710 711 712 713 714 716 900".split()
)
EXPIRED = "900"
"""The registration's term ran out."""
_UNKNOWN = frozenset("000 620 625 973".split())
_NO_MARK = frozenset("622 969 970".split())
"""Numbers assigned by mistake, and records that exist only because another document was filed."""
_OPPOSED = frozenset("774 801".split())
_REGISTERED = frozenset("624 700 701 702 703 704 705 706 707 708 717 740 778 780 790 800".split())
"""The registration is in force, whatever proceedings are pending; every other code not listed is an application's."""


def standing(code: str) -> str:
    """The status for one of the office's three-digit codes, or "" for an unknown code."""
    if not re.fullmatch(r"\d{3}", code):
        return ""
    if code in _DEAD:
        return "dead"
    if code in _UNKNOWN or code in _NO_MARK:
        return "unknown"
    return "opposed" if code in _OPPOSED else "live" if code in _REGISTERED else "pending"


def dead_class(code: str) -> bool:
    """Whether a class's status code says that the mark no longer covers it; 6 is active, and a missing code says
    nothing."""
    return code.strip() not in ("", "6")


def nice_only(codes: Iterable[str]) -> str:
    """The codes that are Nice classes, and not A or B (certification) or 200 (collective membership)."""
    return ", ".join(code for code in codes if code.isdigit() and int(code) <= 45)


def plain_goods(text: str) -> str:
    """The goods a text of the office still claims.

    Single brackets hold goods that were deleted, and are left out; double parentheses and asterisks only mark goods
    not claimed as incontestable, or added, which count like the others.
    """
    text = re.sub(r"\[[^\[\]]*\]", " ", text).replace("((", "").replace("))", "").replace("*", "")
    return re.sub(r"\s+([,;.])", r"\1", " ".join(text.split())).strip(" ;,")


def current_owners(named: Iterable[tuple[str, str]]) -> str:
    """The names with the highest party type, each once: the office also keeps all earlier owners."""
    parties = [(int(kind) if kind.isdigit() else 0, name) for kind, name in named if name]
    newest = max((kind for kind, _ in parties), default=0)
    return "; ".join(dict.fromkeys(name for kind, name in parties if kind == newest))


def drawing_type(code: str) -> str:
    """The type of a mark by the first digit of its drawing code."""
    return {"1": "word", "4": "word", "5": "word", "3": "combined", "2": "figurative", "6": "sound"}.get(code[:1], "")


def long_words(node_texts: Iterable[tuple[str, str]], words: str) -> str:
    """The words of a mark, completed from statements of type MK if they did not fit into the field."""
    more = [text for kind, text in node_texts if kind.startswith("MK")]
    return " ".join([words, *more]) if words else ""


def no_mark(serial: str, status: str) -> bool:
    """Whether a record is no mark: a number assigned by mistake, or data that belong to no registration."""
    return status in _NO_MARK or (len(serial) == 8 and serial.startswith("89"))


def _bulk(nodes: Iterator[tuple[int, str, Node]]) -> Iterator[tuple[int, Values]]:
    for line, _, node in nodes:
        yield line, _case_file(node)


def _case_file(node: Node) -> Values:
    header = next(iter(node.parts.get("header", ())), Node())
    statements = [(part.first("kind"), part.first("statement")) for part in node.below("statement")]
    classes = [part for part in node.below("class") if not dead_class(part.first("status"))]
    goods = (plain_goods(text) for kind, text in statements if kind.startswith("GS"))
    serial, status = node.first("serial"), header.first("status")
    whole = bool(header.first("text") or classes or header.first("drawing"))
    return {
        "operation": "none" if no_mark(serial, status) else "" if whole else "part",
        "text": long_words(statements, header.first("text")),
        "mark_type": drawing_type(header.first("drawing")),
        "number": serial,
        "registration_number": node.first("registration"),
        "office": "US",
        "classes": nice_only(chain.from_iterable(part.all("class") for part in classes)),
        "goods": "; ".join(dict.fromkeys(filter(None, goods))),
        "goods_language": "en",
        "status": status,
        "owner": current_owners((part.first("party"), part.first("name")) for part in node.below("owner")),
        "filed": header.first("filed"),
        "registered": header.first("registered"),
    }


BULK = XmlLayout(
    name="USPTO bulk XML",
    records=frozenset({"case-file"}),
    fields={
        "serial-number": "serial",
        "registration-number": "registration",
        "mark-identification": "text",
        "mark-drawing-code": "drawing",
        "status-code": "status",
        "filing-date": "filed",
        "registration-date": "registered",
        "type-code": "kind",
        "text": "statement",
        "international-code": "class",
        "party-type": "party",
        "party-name": "name",
    },
    groups={
        "case-file-header": "header",
        "case-file-statement": "statement",
        "classification": "class",
        "case-file-owner": "owner",
    },
    skipped=frozenset({
        "case-file-event-statements", "prior-registration-applications", "foreign-applications", "correspondent",
        "international-registration", "madrid-international-filing-requests", "design-searches",
    }),
    assemble=_bulk,
)  # fmt: skip
"""Daily (apcYYMMDD) and annual files."""
