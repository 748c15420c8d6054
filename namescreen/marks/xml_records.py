"""Read records from XML of any size: keep what a layout names and skip the rest.

Elements are known by their local names, whatever the prefix, because offices bind their own schemas to the names of
WIPO's standards. The file streams through expat: one record is held at a time, and what one record may hold is
bounded. A document type may be declared, as long as it declares no entity and refers to nothing outside the file:
entities allow expansion attacks and access to other files.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import chain
from xml.parsers import expat

from ..errors import InputError, Problem
from .problems import ProblemLog
from .text_lines import Bytes

__all__ = ["Node", "RefusedError", "Value", "Values", "XmlLayout", "looks_like_xml", "read_records"]

CHUNK = 1 << 16
DEEPEST = 100
"""The deepest nesting of elements that is read; the layouts stay below twenty."""
LARGEST_RECORD = 1 << 22
"""The most characters kept of one record; the longest lists of goods have some hundred thousand."""
LONGEST_TOKEN = 1 << 23
"""The most bytes of one tag, comment or attribute. Expat rereads a token from its start with every chunk, so a long
token would take time quadratic in its length."""
MOST_NAMES = 10_000
"""The most element names kept in memory; a layout has a few hundred."""

Value = tuple[str, str]
"""A text and the language it states ("" if none)."""


class Node:
    """A record, or a part of one: the texts found in it by field, and its parts by name, each in order."""

    __slots__ = ("parts", "values")

    def __init__(self) -> None:
        self.values: dict[str, list[Value]] = {}
        self.parts: dict[str, list[Node]] = {}

    def first(self, *fields: str) -> str:
        """The first text of the first of `fields` that has one; "" if none has."""
        for name in fields:
            if name in self.values:
                return self.values[name][0][0]
        return ""

    def all(self, name: str) -> list[str]:
        """Every text of a field."""
        return [text for text, _ in self.values.get(name, ())]

    def below(self, name: str) -> Iterator[Node]:
        """Every part of this name, however deep."""
        yield from self.parts.get(name, ())
        for parts in self.parts.values():
            for part in parts:
                yield from part.below(name)

    def add(self, name: str, text: str, language: str = "") -> None:
        """One more text of a field."""
        self.values.setdefault(name, []).append((text, language))


Values = dict[str, str]
"""The texts of one mark's fields, as `fields.mark_from` takes them."""


@dataclass(frozen=True)
class XmlLayout:
    """Where one kind of file keeps what; all names are local names of elements.

    `records` begin a record, in files whose first element is one of `roots` (none: whatever it is); `markers` end
    something around records, and are given as empty nodes of their own. Within a record the text of an element in
    `fields` is kept under the field's name, an element in `groups` begins a part of that name, `attributes` says which
    attributes of an element are kept as which fields, and elements whose names are in `skipped` or begin with one of
    `skipped_beginnings` are ignored with their contents. Of fields in `translated`, which may stand in twenty
    languages, only the first text of a part is kept, the English one, and the one in the language that the record's
    field `language` names. `assemble` makes the marks of the nodes: it takes (line, name, node) one after another."""

    name: str
    records: frozenset[str]
    fields: Mapping[str, str]
    assemble: Callable[[Iterator[tuple[int, str, Node]]], Iterator[tuple[int, Values]]]
    groups: Mapping[str, str] = field(default_factory=dict)
    attributes: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    skipped: frozenset[str] = frozenset()
    skipped_beginnings: tuple[str, ...] = ()
    markers: frozenset[str] = frozenset()
    roots: frozenset[str] = frozenset()
    translated: frozenset[str] = frozenset()
    actions: dict[str, _Action | None] = field(default_factory=dict, compare=False, repr=False)

    def action(self, raw: str) -> _Action | None:
        """The action at an element; None for no action."""
        name = raw.rpartition(":")[2]
        attributes = tuple(self.attributes.get(name, {}).items())
        found: _Action | None
        if name in self.groups:
            found = _Action("group", self.groups[name], attributes)
        elif name in self.records or name in self.skipped or name.startswith(self.skipped_beginnings or ("\0",)):
            found = _Action("skip", "")
        elif name in self.fields:
            found = _Action("field", self.fields[name], attributes, self.fields[name] in self.translated)
        else:
            found = _Action("attributes", "", attributes) if attributes else None
        if len(self.actions) < MOST_NAMES:
            self.actions[raw] = found
        return found


@dataclass(frozen=True, slots=True)
class _Action:
    kind: str
    name: str
    attributes: tuple[tuple[str, str], ...] = ()
    translated: bool = False


class RefusedError(Exception):
    """Reading of the file stops here."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy


def looks_like_xml(head: bytes) -> bool:
    """Whether the first bytes of a file are those of XML, in UTF-8 or UTF-16."""
    plain = head.replace(b"\0", b"").lstrip(b"\xef\xbb\xbf\xff\xfe \t\r\n")
    return plain.startswith(b"<")


class _Follower:
    """Follows the parser's events; finished records wait in `done`, with the layout that they are of."""

    def __init__(self, layouts: Iterable[XmlLayout]) -> None:
        self.by_record = {name: layout for layout in layouts for name in (*layout.records, *layout.markers)}
        self.layout: XmlLayout | None = None
        self.done: list[tuple[int, str, Node]] = []
        self.root = ""
        self.namespace = ""
        self.parser = parser = expat.ParserCreate()
        parser.buffer_text = True
        parser.buffer_size = CHUNK
        parser.StartDoctypeDeclHandler = _doctype
        parser.EntityDeclHandler = _entity
        self._follow(parser)

    def _follow(self, parser: expat.XMLParserType) -> None:
        # Closures over plain variables: these run some hundred thousand times a second.
        depth = size = line = skipped_at = record_at = 0
        texts: list[str] = []
        capturing = False
        language = ""
        node = Node()
        above: list[Node] = []
        actions: dict[str, _Action | None] = {}
        make: Callable[[str], _Action | None] = lambda _: None  # noqa: E731
        record_name = ""

        def deeper() -> None:
            raise RefusedError(f"has elements more than {DEEPEST} deep", "No register is like that")

        def outside(raw: str, attributes: dict[str, str]) -> None:
            nonlocal depth, size, line, record_at, node, actions, make, record_name
            depth += 1
            if depth > DEEPEST:
                deeper()
            name = raw.rpartition(":")[2]
            if depth == 1:
                self.root, self.namespace = name, attributes.get("xmlns", "")
            layout = self.by_record.get(name)
            if layout is None or name in layout.markers or (layout.roots and self.root not in layout.roots):
                return
            if self.layout is not layout:
                if self.layout is not None:
                    return
                self.layout = layout
            line, record_at, size, record_name = parser.CurrentLineNumber, depth, 0, name
            node, actions, make = Node(), layout.actions, layout.action
            for key, to in layout.attributes.get(name, {}).items():
                keep_attribute(attributes, key, to)
            parser.StartElementHandler, parser.EndElementHandler = inside, leave

        def outside_end(raw: str) -> None:
            nonlocal depth
            depth -= 1
            name = raw.rpartition(":")[2]
            if self.layout is not None and name in self.layout.markers:
                self.done.append((parser.CurrentLineNumber, name, Node()))

        def keep_attribute(attributes: dict[str, str], key: str, to: str) -> None:
            for raw, text in attributes.items():
                if text and (raw == key or raw.rpartition(":")[2] == key):
                    node.add(to, text)

        def inside(raw: str, attributes: dict[str, str]) -> None:
            nonlocal depth, node, size, skipped_at, capturing, language
            depth += 1
            if depth > DEEPEST:
                deeper()
            action = actions[raw] if raw in actions else make(raw)
            if action is None:
                return
            if action.kind == "field":
                language = ""
                for key, text in attributes.items():
                    if key.endswith("anguageCode"):
                        language = text.lower()
                if language and action.translated and action.name in node.values and not wanted(language):
                    capturing = False
                    parser.CharacterDataHandler = None
                    return
                capturing = True
                texts.clear()
                parser.CharacterDataHandler = characters
            elif action.kind == "group":
                part = Node()
                size += 64
                if size < LARGEST_RECORD:
                    node.parts.setdefault(action.name, []).append(part)
                above.append(node)
                node = part
            elif action.kind == "skip":
                skipped_at = depth
                parser.CharacterDataHandler = None
                parser.StartElementHandler, parser.EndElementHandler = passed, passed_end
                return
            for key, to in action.attributes:
                keep_attribute(attributes, key, to)

        def wanted(language: str) -> bool:
            own = above[0] if above else node
            return language.startswith("en") or language == own.first("language").lower()

        def characters(text: str) -> None:
            nonlocal size
            size += len(text)
            if size < LARGEST_RECORD:
                texts.append(text)

        def leave(raw: str) -> None:
            nonlocal depth, node, capturing, size
            if depth == record_at:
                depth -= 1
                above.clear()
                if self.namespace:
                    node.add("namespace", self.namespace)
                self.done.append((line, record_name, node))
                parser.StartElementHandler, parser.EndElementHandler = outside, outside_end
                return
            depth -= 1
            action = actions[raw] if raw in actions else make(raw)
            if action is None:
                return
            if action.kind == "field":
                if capturing:
                    capturing = False
                    parser.CharacterDataHandler = None
                    text = " ".join("".join(texts).split())
                    size += 64  # the bookkeeping of an empty or short value
                    if text and size < LARGEST_RECORD:
                        node.add(action.name, text, language)
            elif action.kind == "group":
                node = above.pop()

        def passed(raw: str, attributes: dict[str, str]) -> None:
            nonlocal depth
            depth += 1
            if depth > DEEPEST:
                deeper()

        def passed_end(raw: str) -> None:
            nonlocal depth, capturing
            depth -= 1
            if depth < skipped_at:
                parser.StartElementHandler, parser.EndElementHandler = inside, leave
                if capturing:
                    parser.CharacterDataHandler = characters

        parser.StartElementHandler, parser.EndElementHandler = outside, outside_end


def _doctype(name: str, system: str | None, public: str | None, internal: bool) -> None:
    if system or public:
        raise RefusedError(
            "points to a document type outside the file",
            "It was not read further: take that line out, or get the file as the office publishes it",
        )


def _entity(*_: object) -> None:
    raise RefusedError(
        "declares an entity", "It was not read further: such declarations can make a small file grow without bound"
    )


def read_records(
    stream: Bytes,
    log: ProblemLog,
    layouts: Iterable[XmlLayout],
    refused: Mapping[str, str] | None = None,
    tell: Callable[[str], None] = lambda _: None,
) -> Iterator[tuple[int, Values]]:
    """The marks of an XML file in one of `layouts`, each with the line its record begins on.

    A file that is cut or malformed gives the records before the fault, and a note of its line. `tell` is told the
    layout's name. Raises `InputError` for XML of another kind; `refused` says of some first elements what they are.
    """
    follower = _Follower(layouts)
    noted = log.count
    records = _records(follower, stream, log)
    first = next(records, None)
    if first is not None and follower.layout is not None:
        tell(follower.layout.name)
        yield from follower.layout.assemble(chain([first], records))
    elif follower.root in (refused or {}):
        raise InputError(Problem((refused or {})[follower.root], "Leave it out", log.source))
    elif follower.layout is None and log.count == noted:
        raise InputError(
            Problem(
                f"is XML of a kind that is not known: it begins with <{follower.root}>",
                "Look for the office's data in WIPO ST.66 or ST.96, or as CSV",
                log.source,
            )
        )


def _records(follower: _Follower, stream: Bytes, log: ProblemLog) -> Iterator[tuple[int, str, Node]]:
    parser, done = follower.parser, follower.done
    fed = 0
    while True:
        chunk = stream.read(CHUNK)
        try:
            parser.Parse(chunk, not chunk)
            fed += len(chunk)
            if fed - parser.CurrentByteIndex > LONGEST_TOKEN:
                raise RefusedError(
                    f"has a tag, comment or attribute of more than {LONGEST_TOKEN >> 20} MB", "No register is like that"
                )
        except expat.ExpatError as error:
            what, remedy = _explain(error)
            log.note(what, remedy, line=error.lineno)
            chunk = b""
        except RefusedError as error:
            log.note(error.what, error.remedy, line=parser.CurrentLineNumber)
            chunk = b""
        except (LookupError, ValueError) as error:
            log.note(f"its encoding cannot be read ({error})", "Save it as UTF-8, and declare that", line=1)
            chunk = b""
        yield from done
        done.clear()
        if not chunk:
            return


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
