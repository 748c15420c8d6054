"""Read marks from plain text, CSV, TSV and JSON Lines; a bad row never loses a good one."""

from __future__ import annotations

import csv
import re
import shlex
from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import chain, islice

from ..errors import InputError, Problem
from ..expressions import expression
from ..plain_text import some
from .dates import order_of, plain_date
from .fields import DATES, FIELD_NAMES, OPTION_NAMES, Columns, class_flags, columns_of, countries_in
from .json_lines import json_rows
from .problems import ProblemLog
from .side_tables import SideTables
from .tables import NUMBERED, SideTable, TableLayout, by_number, folded, side_of, table_of
from .typed_lists import DELIMITERS, cells_of, delimiter_below, signs_before, typed_rows
from .xml_records import Values

__all__ = ["Row", "header_of", "put_aside", "read_lines", "shape_of"]

Row = tuple[int, Values]
"""A line number, and the text of each field found there."""

LONGEST_RECORD = 2000
"""The most lines of a CSV record; a longer one has a quotation mark that was never closed."""
LOOKED_AT = 5000
"""The rows that decide whether dates begin with the day or the month, and whether a column can hold marks."""
TOLD_OF = ("goods", "classes", "territories", "status", "number")
"""Fields that a remark on unused columns names, those that change a screening most first."""
_NUMBER = expression(r"[A-Za-z]{0,3}[\d\W_]*\d[\d\W_]*")


def shape_of(first_lines: Sequence[str], suffix: str, columns: Columns | None = None) -> tuple[str, str]:
    """What kind of text this is, ("text" | "table" | "json", delimiter), from its first lines and its ending.

    A `.csv` or `.tsv` ending means a table. Without it, a table needs a first line in which a delimiter sets
    apart at least two columns, one of them of marks: a plain list may hold commas.
    """
    head = next((line for line in first_lines if line.strip()), "")
    if suffix in (".jsonl", ".ndjson", ".json") or re.match(r'\s*[\[{]\s*(?:["{]|$)', head):
        return "json", ""
    best = ("", 0, 0)
    for delimiter in DELIMITERS:
        names = cells_of(head, delimiter)
        fields = columns_of(names, columns)
        known = table_of(names) or side_of(names)
        score = (delimiter, 99 if known else len(fields) if "text" in fields else 0, len(names))
        if score[1:] > best[1:]:
            best = score
    delimiter, known_fields, width = best
    if suffix in (".csv", ".tsv", ".tab"):
        preset = "\t" if suffix != ".csv" else ","
        return "table", delimiter if width > 1 and delimiter else preset
    if width > 1 and (known_fields >= 1 if delimiter == "\t" or columns else known_fields >= 2):
        return "table", delimiter
    return "text", ""


def header_of(line: str, suffix: str, columns: Columns | None = None) -> list[str]:
    """The names of a table's columns; [] if its first line is not that of a table."""
    shape, delimiter = shape_of([line], suffix, columns)
    return cells_of(line, delimiter) if shape == "table" else []


def read_lines(
    numbered: Iterator[tuple[int, str]],
    suffix: str,
    log: ProblemLog,
    columns: Columns | None = None,
    sides: SideTables | None = None,
    *,
    names: bool = False,
) -> Iterator[Row]:
    """The rows of a text in whatever of the three shapes it has; `sides` are facts from other tables.

    With `names` they are names, not marks: any column may stand beside them, and they may be numbers.

    Raises `InputError` if a table has no column of marks, or one that cannot be: says which columns it has and what to
    do.
    """
    first = list(islice(numbered, 20))
    shape, delimiter = shape_of([line for _, line in first], suffix, columns)
    rest = chain(first, numbered)
    if shape == "json":
        rows = json_rows(rest, log, columns or {})
        yield from rows if names else _settled(rows, log, "the field of the marks")
    elif shape == "table":
        below = delimiter_below([line for _, line in first], delimiter, log)
        before = signs_before([pair for pair in first if pair[1].strip()][1:], log)
        bare = ((at, before.sub("", line, count=1)) for at, line in rest)
        yield from _table_rows(bare, delimiter, below, log, columns or {}, sides or SideTables(), names=names)
    else:
        yield from typed_rows(first, rest, log, "name" if names else "mark")


def put_aside(
    numbered: Iterator[tuple[int, str]],
    suffix: str,
    log: ProblemLog,
    side: SideTable,
    sides: SideTables,
    count: Callable[[], None],
) -> None:
    """Keep the facts of a side table; `count` is called for each row."""
    if side.facts is None:
        return
    first = list(islice(numbered, 1))
    _, delimiter = shape_of([line for _, line in first], suffix)
    header = [folded(name) for name in cells_of(first[0][1], delimiter)]
    for _, row in _rows_of(numbered, header, delimiter, log, quoted=True, spills=""):
        cells = dict(zip(header, row, strict=False))
        if side.columns <= cells.keys():
            sides.put(cells[side.key].strip(), side.facts(cells))
        count()


def _table_rows(
    numbered: Iterator[tuple[int, str]],
    delimiter: str,
    below: str,
    log: ProblemLog,
    columns: Columns,
    sides: SideTables,
    *,
    names: bool,
) -> Iterator[Row]:
    header: list[str] = []
    for _, line in numbered:
        if line.strip():
            header = cells_of(line, delimiter)
            break
    if not header:
        return
    layout = table_of(header)
    if layout is not None and "text" not in columns:
        rows = _known_table(numbered, header, below, log, layout, sides)
        yield from _settled(rows, log, f"the column {next(iter(layout.columns))!r}")
    else:
        yield from _unknown_table(numbered, header, below, log, columns, sides, names=names)


def _known_table(
    numbered: Iterator[tuple[int, str]],
    header: list[str],
    delimiter: str,
    log: ProblemLog,
    layout: TableLayout,
    sides: SideTables,
) -> Iterator[Row]:
    names = [folded(name) for name in header]
    flags = class_flags(header)
    missing = rows = 0
    for number, row in _rows_of(numbered, names, delimiter, log, quoted=layout.quoted, spills=layout.spills):
        cells = dict(zip(names, (cell.strip() for cell in row), strict=False))
        if not layout.columns <= cells.keys():
            log.leave_out("the row is cut short", "download the file again", number)
            continue
        if flags:
            cells["classes"] = _flagged(row, flags)
        facts = sides.get(cells[layout.key]) if layout.key else {}
        rows += 1
        missing += not facts
        yield number, layout.assemble(cells, facts)
    if sides.filled and missing * 5 > rows:
        log.note(
            f"{missing:,} of {rows:,} marks are not in the tables that go with this one",
            "They were kept without what stands there: are all the files of one edition?",
        )


def _unknown_table(
    numbered: Iterator[tuple[int, str]],
    header: list[str],
    delimiter: str,
    log: ProblemLog,
    columns: Columns,
    sides: SideTables,
    *,
    names: bool,
) -> Iterator[Row]:
    fields = columns_of(header, columns)
    flags = class_flags(header, columns)
    absent = [name for field, name in columns.items() if field not in fields and not (field == "classes" and flags)]
    if "text" not in fields or absent:
        missing = f"no column {absent[0]!r}" if absent else "no column of marks"
        raise InputError(
            Problem(
                f"has {missing}; its columns are {', '.join(name or '(one without a name)' for name in header)[:300]}",
                "Call one of them mark, or say which it is with --column; a plain list of one mark a line "
                "should end in .txt",
                log.source,
            )
        )
    # Of two columns with one name the first counts.
    places = {field: header.index(name) for field, name in fields.items()}
    country = next((at for at, name in enumerate(header) if folded(name) == "country"), -1)
    if "territories" not in fields and country >= 0 and country not in places.values():
        places["country"] = country
    known = next((known for name, known in NUMBERED.items() if name in map(folded, header)), None)

    def rows() -> Iterator[Row]:
        for number, row in _rows_of(numbered, header, delimiter, log, quoted=True, spills=""):
            width = len(row)
            values = {field: row[at] for field, at in places.items() if at < width}
            if flags:
                values["classes"] = _flagged(row, flags)
            if known:
                values = {**known, **by_number(values, sides.get(values.get("number", "").strip()))}
            yield number, values

    if names:
        yield from rows()
        return
    designating, found = _designating(rows())
    idle = [name for at, name in enumerate(header) if at not in (*places.values(), *flags) and name]
    if designating:
        log.note(f"the column {header[country]!r} was read as where marks hold, because it names several countries")
    idle += [header[country]] if "country" in places and not designating else []
    if idle and not (columns and "goods" in fields):  # who named them all has seen the others
        _note_idle(idle, [option for option in TOLD_OF if OPTION_NAMES[option] not in fields][:3], log)
    yield from _merge_classes(_settled(found, log, f"the column {fields['text']!r}"))


def _note_idle(idle: Sequence[str], lacking: Sequence[str], log: ProblemLog) -> None:
    """Name the columns that are not used, and how to say that one of them holds a field that is `lacking`."""
    name = shlex.quote(idle[0]) if len(idle) == 1 else "NAME"
    say_so = f"say so: --column {lacking[0]}={name}, or in the [columns] of a brief" if lacking else ""
    log.note(
        f"columns not used: {', '.join(idle)[:200]}",
        f"If one of them holds {some(lacking, 'or')}, {say_so}" if lacking else "",
    )


def _designating(rows: Iterator[Row]) -> tuple[bool, Iterator[Row]]:
    """Whether the column "country" says where marks hold, and the rows, read so: an owner has one country a cell."""
    first = list(islice(rows, LOOKED_AT))
    several = any(len(countries_in(values.get("country", ""))) > 1 for _, values in first)

    def read() -> Iterator[Row]:
        for number, values in chain(first, rows):
            values["territories" if several else "owner's country"] = values.pop("country", "")
            yield number, values

    return several, read()


def _flagged(row: Sequence[str], flags: Mapping[int, int]) -> str:
    return ", ".join(
        str(number)
        for at, number in flags.items()
        if at < len(row) and row[at].strip().casefold() in ("1", "1.0", "y", "yes", "true", "t", "x")
    )


def _rows_of(
    numbered: Iterator[tuple[int, str]],
    header: list[str],
    delimiter: str,
    log: ProblemLog,
    *,
    quoted: bool,
    spills: str,
) -> Iterator[tuple[int, list[str]]]:
    """The rows of a table that are not empty, with as many cells as it has columns, at most."""
    spill = header.index(spills) if spills else -1
    width = len(header)
    records = _records(numbered, delimiter, log) if quoted else ((n, line.split(delimiter)) for n, line in numbered)
    for number, row in records:
        if not any(map(str.strip, row)):
            continue
        if width == 1:  # with one column, a delimiter can only be part of the mark: HERB, LTD
            row = [delimiter.join(row)]
        more = len(row) - width
        if more > 0 and spills:
            row = [*row[:spill], delimiter.join(row[spill : spill + more + 1]), *row[spill + more + 1 :]]
        elif more > 0 and any(cell.strip() for cell in row[width:]):
            log.leave_out(
                f"has {len(row)} columns where the first line has {width}",
                "put the text that holds the delimiter in quotation marks",
                number,
                "columns too many",
            )
            continue
        yield number, row


def _records(numbered: Iterator[tuple[int, str]], delimiter: str, log: ProblemLog) -> Iterator[tuple[int, list[str]]]:
    """CSV records with the line each begins on; after a broken one, reading goes on at its second line."""
    back: deque[tuple[int, str]] = deque()
    patience = LONGEST_RECORD  # lines within which a quotation mark must close; fewer after many that did not

    def take() -> tuple[int, str] | None:
        return back.popleft() if back else next(numbered, None)

    for number, line in iter(take, None):
        if '"' not in line:
            yield number, line.split(delimiter)
            continue
        odd = line.count('"') % 2 == 1  # only then can a quoted text go on in the next line
        taken = [(number, line)]

        def feed(taken: list[tuple[int, str]] = taken, most: int = patience) -> Iterator[str]:
            yield taken[0][1] + "\n"
            for pair in iter(take, None):
                taken.append(pair)
                if len(taken) > most:
                    return
                yield pair[1] + "\n"

        try:
            row = next(csv.reader(feed() if odd else (line,), delimiter=delimiter, strict=True), [])
        except csv.Error:
            # Quotation marks that are part of the text, as in a TSV without quoting: take the line as it
            # stands.
            row = [cell.strip().strip('"') for cell in line.split(delimiter)]
            if odd:
                log.note(
                    "a quotation mark opens and does not close",
                    "The line was read as it stands: close it, or double it inside quoted text",
                    line=number,
                )
            back.extendleft(reversed(taken[1:]))
            patience = max(2, patience // 2) if len(taken) > 1 else patience
        else:
            patience = min(LONGEST_RECORD, patience * 2)
        yield number, row


def _settled(rows: Iterator[Row], log: ProblemLog, what: str) -> Iterator[Row]:
    """Rows, their dates read in the order that their columns show; raises `InputError` if the marks are numbers."""
    first = list(islice(rows, LOOKED_AT))
    words = [text for _, values in first if (text := values.get("text", "").strip())]
    if len(words) > 2 and all(map(_NUMBER.fullmatch, words)):
        raise InputError(
            Problem(
                f"{what} cannot be that of the marks: it holds numbers alone, such as {words[0]!r}",
                "Say which column holds the words: --column mark=NAME",
                log.source,
            )
        )
    shown = {field: [values.get(field, "") for _, values in first] for field in DATES}
    all_columns = order_of(chain.from_iterable(shown.values()))
    orders = {field: order for field, dates in shown.items() if (order := order_of(dates) or all_columns)}
    if not orders:
        yield from first
        yield from rows
        return
    for number, values in chain(first, rows):
        for field, order in orders.items():
            if given := values.get(field):
                values[field] = plain_date(given, order) or given
        yield number, values


def _merge_classes(rows: Iterator[Row]) -> Iterator[Row]:
    """The rows, where neighbouring rows that differ only in class and goods become one mark."""
    held: Row | None = None
    for row in rows:
        if held is not None and _one_mark(held[1], row[1]):
            for field, sign in (("classes", ", "), ("goods", "; ")):
                parts = [values.get(field, "") for values in (held[1], row[1])]
                held[1][field] = sign.join(dict.fromkeys(filter(None, parts)))
            held[1]["rows"] = str(int(held[1].get("rows", "1")) + 1)
            continue
        if held is not None:
            yield held
        held = row
    if held is not None:
        yield held


def _one_mark(one: Values, other: Values) -> bool:
    number = one.get("number", "")
    return (
        number == other.get("number", "")
        and bool(number.strip(" 0"))
        and all(
            one.get(field, "") == other.get(field, "") for field in FIELD_NAMES if field not in ("classes", "goods")
        )
    )
