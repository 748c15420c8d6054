"""Marks from the XML of trade mark offices: WIPO Standards ST.66 and ST.96.

Elements are known by their local names, whatever the prefix, because offices bind their own schema extensions
to the standards' names. The file streams through an expat parser: one record is held at a time. Any document
type declaration is refused: neither standard uses one, and it is the way in for entity expansion and for
external entities.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import IO
from xml.parsers import expat

from ..errors import InputError, Problem
from .problems import ProblemLog
from .tabular import Row

__all__ = ["looks_like_xml", "read_wipo"]

CHUNK = 1 << 16
DEEPEST = 100
"""Elements inside one another; both standards stay below twenty."""
LONGEST_TEXT = 1 << 20
"""Characters of one record's goods; more is cut."""

_RECORDS = {"TradeMark", "Trademark"}
_SINGLE = {
    "ApplicationNumber": "application", "ApplicationNumberText": "application",
    "RegistrationNumber": "registration", "InternationalRegistrationNumber": "registration",
    "RegistrationOfficeCode": "office", "MarkCurrentStatusCode": "status",
    "ApplicationDate": "filed", "RegistrationDate": "registered",
}  # fmt: skip
_OWNER = (
    "OrganizationName",
    "OrganizationStandardName",
    "FreeFormatNameLine",
    "PersonFullName",
    "EntityName",
    "FirstName",
    "LastName",
)
# Parts of a record that speak of other marks and other people; their numbers, dates and names are not the
# mark's.
_ELSEWHERE = (
    "Priority", "Seniority", "Exhibition", "Opposition", "Appeal", "Related", "Transformation", "Conversion",
    "Publication", "MarkEvent", "Event", "Record", "Licen", "Correspondence", "Representative", "Legal",
    "Cancellation", "Proceeding", "Division", "Limitation", "Base", "Document", "Payment",
)  # fmt: skip


def looks_like_xml(head: bytes) -> bool:
    """Whether the first bytes of a file are those of XML, in UTF-8 or UTF-16."""
    plain = head.replace(b"\0", b"").lstrip(b"\xef\xbb\xbf\xff\xfe \t\r\n")
    return plain.startswith(b"<")


class _RefusedError(Exception):
    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy


class _Collector:
    """Follows the parser's events and gathers the fields of one record after another."""

    def __init__(self) -> None:
        self.path: list[str] = []
        self.text: list[str] | None = None
        self.length = 0
        self.record_depth = 0
        self.record: dict[str, list[str]] = {}
        self.line = 0
        self.root = ""
        self.done: list[Row] = []
        self.owner_depth = 0
        self.skip_depth = 0
        self.language: str | None = None

    def start(self, name: str, attributes: dict[str, str], line: int) -> None:
        name = name.rpartition(":")[2]
        self.path.append(name)
        self.root = self.root or name
        depth = len(self.path)
        if depth > DEEPEST:
            raise _RefusedError(f"has elements more than {DEEPEST} deep", "This is no ST.66 or ST.96 file")
        if not self.record_depth:
            if name in _RECORDS:
                self.record_depth, self.record, self.line, self.language = depth, {}, line, None
            return
        if self.skip_depth:
            return
        if name.startswith(_ELSEWHERE):
            self.skip_depth = depth
            return
        if name in ("Applicant", "Holder") and not self.owner_depth:
            self.owner_depth = depth
            self.record.setdefault("owner", []).append("")
        if name == "MarkVerbalElementText":
            # The same words may follow in other languages: those of the first language given are the mark.
            language = next((v for k, v in attributes.items() if k.endswith("languageCode")), "")
            if self.language not in (None, language):
                return
            self.language = language
        elif not (
            name in _SINGLE
            or name in ("ClassNumber", "GoodsServicesDescription", "GoodsServicesDescriptionText")
            or (self.owner_depth and name in _OWNER)
        ):
            self.text = None
            return
        self.text, self.length = [], 0

    def characters(self, text: str) -> None:
        if self.text is not None and self.length < LONGEST_TEXT:
            self.text.append(text)
            self.length += len(text)

    def end(self) -> None:
        name, depth = self.path.pop(), len(self.path) + 1
        if depth == self.skip_depth:
            self.skip_depth = 0
        if depth == self.record_depth:
            self.record_depth = self.owner_depth = 0
            self.done.append((self.line, self._fields()))
            return
        if depth == self.owner_depth:
            self.owner_depth = 0
        if self.text is None:
            return
        value, self.text = " ".join("".join(self.text).split()), None
        if not value:
            return
        if name == "MarkVerbalElementText":
            self.record.setdefault("text", []).append(value)
        elif name in _SINGLE:
            self.record.setdefault(_SINGLE[name], [value])
        elif name == "ClassNumber":
            self.record.setdefault("classes", []).append(value)
        elif name in _OWNER:
            self.record["owner"][-1] = f"{self.record['owner'][-1]} {value}".strip()
        else:
            self.record.setdefault("goods", []).append(value)

    def _fields(self) -> dict[str, str]:
        record = self.record

        def joined(field: str, by: str) -> str:
            return by.join(dict.fromkeys(filter(None, record.get(field, []))))

        return {
            "text": joined("text", " "),
            "number": joined("registration", "") or joined("application", ""),
            "office": joined("office", ""),
            "classes": joined("classes", ", "),
            "goods": joined("goods", "; "),
            "status": joined("status", ""),
            "owner": joined("owner", "; "),
            "filed": joined("filed", ""),
            "registered": joined("registered", ""),
        }


def read_wipo(stream: IO[bytes], log: ProblemLog) -> Iterator[Row]:
    """The records of an ST.66 or ST.96 file, each with the line it begins on.

    A record without words has an empty `text`. A file that is cut or malformed gives the records before the
    fault, and a note of its line. Raises `InputError` for XML of another kind.
    """
    collector = _Collector()
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.buffer_size = CHUNK

    def refuse(*_: object) -> None:
        raise _RefusedError(
            "declares a document type, which ST.66 and ST.96 never do",
            "It was not read further: such declarations can make a small file grow without bound",
        )

    parser.StartDoctypeDeclHandler = refuse
    parser.EntityDeclHandler = refuse
    parser.StartElementHandler = lambda name, attributes: collector.start(name, attributes, parser.CurrentLineNumber)
    parser.EndElementHandler = lambda _name: collector.end()
    parser.CharacterDataHandler = collector.characters
    found = 0
    while True:
        chunk = stream.read(CHUNK)
        try:
            parser.Parse(chunk, not chunk)
        except expat.ExpatError as error:
            what, remedy = _explain(error)
            log.note(what, remedy, line=error.lineno)
            chunk = b""
        except _RefusedError as error:
            log.note(error.what, error.remedy, line=parser.CurrentLineNumber)
            chunk = b""
        except (LookupError, ValueError) as error:
            log.note(f"its encoding cannot be read ({error})", "Save it as UTF-8, and declare that", line=1)
            chunk = b""
        found += len(collector.done)
        yield from collector.done
        collector.done.clear()
        if not chunk:
            break
    if not found and not log:
        raise InputError(
            Problem(
                f"is XML of another kind: it begins with <{collector.root}> and holds no TradeMark "
                f"(WIPO ST.66) "
                "or Trademark (WIPO ST.96)",
                "Look for the office's data in one of these standards, or as CSV",
                log.source,
            )
        )


def _explain(error: expat.ExpatError) -> tuple[str, str]:
    kept = "The marks before this line were kept"
    reason = expat.ErrorString(error.code)
    if reason in ("no element found", "unclosed token", "partial character", "unclosed CDATA section"):
        return "the XML ends in the middle", f"{kept}: download it again"
    if reason in ("unknown encoding", "encoding specified in XML declaration is incorrect"):
        return "the XML declares an encoding that it does not have", f"{kept}: save it as UTF-8"
    if reason == "not well-formed (invalid token)":
        return "the XML is malformed, or not in the encoding it declares", f"{kept}: save it as UTF-8"
    return f"the XML is malformed ({reason})", kept
