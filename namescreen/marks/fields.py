"""The fields of a mark as files give them: column names, classes, status and dates, read leniently.

Column names are plain English words and the trade's own terms, with the element names of WIPO ST.66 and
ST.96. Anything not understood is left as "not stated", never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache

from .mark import Mark

__all__ = ["FIELD_NAMES", "columns_of", "field_of", "mark_from", "nice_classes", "plain_date", "standing"]

FIELD_NAMES: Mapping[str, tuple[str, ...]] = {
    "text": (
        "mark", "trademark", "trade mark", "word mark", "wordmark", "mark text", "mark name",
        "trademark name",         "trade mark name",
        "mark verbal element text", "mark verbal element", "verbal element", "verbal elements",
        "mark literal elements", "literal element", "denomination", "name", "brand", "brand name", "text",
        "mark identification", "id char", "mark id char", "title", "word", "words",
    ),
    "number": (
        "number", "no", "registration number", "registration no", "reg no", "application number",
        "application no",
        "app no", "serial number", "serial no", "international registration number", "id", "mark number",
        "trade mark number", "trademark number",
    ),
    "office": ("office", "registration office code", "office code", "registry", "jurisdiction", "country",
               "country code", "territory"),
    "classes": ("classes", "class", "nice classes", "nice class", "class number", "class numbers", "class no",
                "international class", "international classes", "nice", "nice classification"),
    "goods": ("goods", "goods and services", "goods services", "services", "goods services description",
              "goods services description text", "specification", "list of goods",
              "list of goods and services",
              "description of goods", "products", "product"),
    "status": ("status", "mark current status code", "mark status", "current status", "legal status",
               "trademark status", "trade mark status", "live dead", "live or dead", "state"),
    "owner": ("owner", "holder", "applicant", "proprietor", "owner name", "applicant name", "holder name",
              "registrant", "company", "proprietor name"),
    "filed": ("filed", "application date", "filing date", "date filed", "filed on", "date of application"),
    "registered": ("registered", "registration date", "date registered", "registered on",
                   "date of registration"),
}  # fmt: skip
"""For each field of a `Mark`, the column names understood, folded; earlier ones win where several stand."""

_BY_NAME = {name: (field, rank) for field, names in FIELD_NAMES.items() for rank, name in enumerate(names)}

# Words of office statuses: ST.66 MarkCurrentStatusCode values and the everyday words of registers (common
# practice, no single source). A proceeding that is only pending or requested does not end a mark.
_UNDECIDED = re.compile(r"pending|request|proceeding|initiated|filed against|opposed|under ")
_DEAD = re.compile(
    r"\b(?:dead|expired?|lapsed?|cancel\w*|withdrawn?|refused|rejected|abandoned|removed|surrendered|revoked|"
    r"invalid\w*|ended|terminated|ceased|inactive|annulled|not renewed|struck off|void|deleted|nullified)\b"
)
_LIVE = re.compile(
    r"\b(?:live|alive|active|registered|registration|protected|in force|filed|application|pending|published|"
    r"accepted|examin\w*|allowed|allowance|opposed|opposition|renewed|granted|received)\b"
)
_MONTHS = ("", "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


def field_of(column: str) -> tuple[str, int] | None:
    """The field a column name means and its rank among that field's names, or None: "Reg. No." -> number."""
    plain = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", column.rpartition(":")[2])
    plain = " ".join(re.sub(r"[^a-z0-9]+", " ", plain.casefold()).split())
    return _BY_NAME.get(plain) or _BY_NAME.get(plain.replace("trade mark", "trademark"))


def columns_of(header: Sequence[str], column: str | None = None) -> dict[str, str]:
    """Which column feeds which field: {field: column}; `column`, where given, is the one of the mark's
    words."""
    chosen: dict[str, tuple[int, str]] = {}
    for name in header:
        found = field_of(name)
        if found and (found[0] not in chosen or found[1] < chosen[found[0]][0]):
            chosen[found[0]] = (found[1], name)
    result = {field: name for field, (_, name) in chosen.items()}
    if column is not None:
        wanted = column.strip().casefold()
        match = next((name for name in header if name.strip().casefold() == wanted), None)
        result = {field: name for field, name in result.items() if name != match and field != "text"}
        if match is not None:
            result["text"] = match
    return result


@lru_cache(maxsize=65536)
def nice_classes(text: str) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """The Nice classes in `text`, ascending, and the numbers in it that are none: "IC 009; 25, 88" -> (9,
    25), (88,)."""
    good: set[int] = set()
    bad: list[str] = []
    for digits in re.findall(r"\d+", text):
        if 1 <= int(digits[:9]) <= 45 and len(digits) <= 3:
            good.add(int(digits))
        elif len(digits) == 6 and all(1 <= int(digits[i : i + 3]) <= 45 for i in (0, 3)):
            good.update(int(digits[i : i + 3]) for i in (0, 3))
        elif digits not in bad:
            bad.append(digits)
    return tuple(sorted(good)), tuple(bad)


@lru_cache(maxsize=4096)
def standing(status: str) -> str:
    """An office's status in one word: "live", "dead", or "" where it is not stated or not understood."""
    plain = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", status).casefold().replace("_", " ").replace("-", " ")
    if _DEAD.search(plain) and not _UNDECIDED.search(plain):
        return "dead"
    return "live" if _LIVE.search(plain) or _UNDECIDED.search(plain) else ""


@lru_cache(maxsize=65536)
def plain_date(text: str) -> str:
    """`text` as YYYY-MM-DD, or "" if it is no date or an ambiguous one (03/04/2020 can be two days)."""
    text = text.strip()
    if match := re.match(r"(\d{4})[-/.]?(\d{2})[-/.]?(\d{2})(?!\d)", text):
        year, month, day = (int(part) for part in match.groups())
    elif match := re.fullmatch(r"(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})", text):
        first, second, year = int(match[1]), int(match[3]), int(match[4])
        if match[2] == "." or first > 12 or first == second:
            day, month = first, second
        elif second > 12:
            day, month = second, first
        else:
            return ""
    elif match := re.fullmatch(r"(\d{1,2})[- ]([A-Za-z]{3})[a-z]*[- ,]+(\d{4})", text):
        day, month, year = int(match[1]), _month(match[2]), int(match[3])
    elif match := re.fullmatch(r"([A-Za-z]{3})[a-z]* (\d{1,2}),? (\d{4})", text):
        month, day, year = _month(match[1]), int(match[2]), int(match[3])
    else:
        return ""
    return f"{year:04}-{month:02}-{day:02}" if 1 <= month <= 12 and 1 <= day <= 31 else ""


def _month(name: str) -> int:
    return _MONTHS.index(name.lower()) if name.lower() in _MONTHS else 0


def _date(given: str, field: str, note: Callable[[str, str, str], None]) -> str:
    date = plain_date(given) if given else ""
    if not date and given.strip():
        note(
            f"the date {given.strip()[:30]!r} is not understood, or may be two days",
            "Write dates as YYYY-MM-DD; the mark was kept without it",
            field,
        )
    return date


def mark_from(values: Mapping[str, str], source: str, line: int, note: Callable[[str, str, str], None]) -> Mark:
    """A `Mark` from the texts of its fields; what cannot be understood goes to `note(what, remedy,
    field)`."""
    get = values.get
    raw_classes = get("classes", "")
    classes: tuple[int, ...] = ()
    if raw_classes:
        classes, strange = nice_classes(raw_classes)
        if strange or (not classes and raw_classes.strip()):
            note(
                f"{raw_classes.strip()[:40]!r} holds what is not a Nice class",
                "Nice classes are 1 to 45; the mark was kept with the classes understood",
                "classes",
            )
    filed, registered = [_date(get(field, ""), field, note) for field in ("filed", "registered")]
    number, office, goods, status, owner = [
        " ".join(given.split()) if (given := get(field, "")) else "" for field in _ON_ONE_LINE
    ]
    return Mark(
        get("text", ""),
        number,
        office,
        classes,
        goods,
        standing(status) if status else "",
        status,
        owner,
        filed,
        registered,
        source,
        line,
    )


_ON_ONE_LINE = ("number", "office", "goods", "status", "owner")
"""Fields whose text is kept as it stands, but for its white space."""
