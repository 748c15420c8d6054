"""The fields of a mark as files state them: column names, classes and other values, read leniently.

Column names are plain English words and the trade's own terms, with the element names of WIPO ST.66 and
ST.96. Anything not understood is left as "not stated", never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache

from ..errors import InputError, Problem
from .dates import believed, plain_date
from .identity import real_number
from .mark import Mark
from .status import LIVE, OPPOSED, UNKNOWN, standing
from .territory import INTERNATIONAL, office_code, territories_of

__all__ = [
    "DATES", "FIELD_NAMES", "OPTION_NAMES", "Columns", "chosen_columns", "class_flags", "columns_of", "countries_in",
    "field_of", "mark_from", "nice_classes", "one_line", "option_of",
]  # fmt: skip

FIELD_NAMES: Mapping[str, tuple[str, ...]] = {
    "text": (
        "mark", "mark text", "word mark", "wordmark", "words", "mark verbal element text", "mark verbal element",
        "verbal element", "verbal elements", "mark literal elements", "literal element", "mark identification",
        "mark id char", "id char", "trademark", "trade mark", "mark name", "trademark name", "trade mark name",
        "denomination", "name", "brand", "brand name", "text", "title", "word",
    ),
    "number": (
        "application number", "application no", "app no", "serial number", "serial no", "trademark number",
        "trade mark number", "mark number", "tm number", "number", "no", "id",
    ),
    "registration_number": ("registration number", "registration no", "reg no", "international registration number"),
    "office": ("office", "registration office code", "office code", "registry", "jurisdiction", "territory"),
    "classes": ("classes", "class", "nice classes", "nice class", "class number", "class numbers", "class no",
                "international class", "international classes", "nice", "nice classification"),
    "goods": ("goods", "goods and services", "goods services", "services", "goods services description",
              "goods services description text", "specification", "list of goods",
              "list of goods and services",
              "description of goods", "products", "product"),
    "goods_language": ("goods language", "language"),
    "status": ("status", "mark current status code", "mark status", "current status", "legal status",
               "trademark status", "trade mark status", "live dead", "live or dead", "state", "status code desc"),
    "owner": ("owner", "holder", "applicant", "proprietor", "owner name", "applicant name", "holder name",
              "registrant", "company", "proprietor name"),
    "filed": ("filed", "application date", "filing date", "date filed", "filed on", "date of application",
              "lodgement date"),
    "priority": ("priority", "priority date", "convention date"),
    "registered": ("registered", "registration date", "date registered", "registered on",
                   "date of registration"),
    "expires": ("expires", "expiry", "expiry date", "expiration date", "renewal due date", "date of expiry",
                "valid until"),
    "mark_type": ("type", "mark type", "mark feature", "mark feature category", "type of mark", "kind of mark"),
    "territories": ("territories", "designated countries", "designations", "designated", "designation",
                    "designated states", "designated territories", "designated contracting parties", "countries",
                    "protected in", "countries of protection"),
}  # fmt: skip
"""For each field of a `Mark`, the column names understood, folded; earlier ones win where several stand.

A "country" column is not among them: in the lists of offices it is the owner's, not where the mark holds (but see
`tabular`). A "territory" is where marks hold, if another column is the office.
"""

OPTION_NAMES: Mapping[str, str] = {
    "mark": "text", "number": "number", "registration": "registration_number", "office": "office", "classes": "classes",
    "goods": "goods", "status": "status", "owner": "owner", "filed": "filed", "priority": "priority",
    "registered": "registered", "expires": "expires", "type": "mark_type", "territories": "territories",
}  # fmt: skip
"""The user's names for the fields in `--column`."""
DATES = ("filed", "priority", "registered", "expires")

_SECOND = "territory"
"""A column that is the office where none is, and else where marks hold."""
_BY_NAME = {name: (field, rank) for field, names in FIELD_NAMES.items() for rank, name in enumerate(names)}


def field_of(column: str) -> tuple[str, int] | None:
    """The field a column name means and its rank among that field's names, or None: "Reg. No." -> number."""
    plain = _folded(column)
    return _BY_NAME.get(plain) or _BY_NAME.get(plain.replace("trade mark", "trademark"))


def _folded(column: str) -> str:
    plain = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", column.rpartition(":")[2])
    return " ".join(re.sub(r"[^a-z0-9]+", " ", plain.casefold()).split())


Columns = Mapping[str, str]
"""The columns that the user names: the field of each, as in `FIELD_NAMES`, and the column's name."""


def chosen_columns(given: Sequence[str] | str | None) -> Columns:
    """What `--column` says: the name of the mark's column alone, or FIELD=NAME; raises `InputError` for an unknown
    field
    or one named twice."""
    columns: dict[str, str] = {}
    for text in (given,) if isinstance(given, str) else given or ():
        word, sign, name = text.partition("=")
        field = OPTION_NAMES.get(word.strip().casefold()) if sign else None
        if sign and field is None and re.fullmatch(r"\s*[a-z_]+\s*", word):
            raise InputError(
                Problem(
                    f"{word.strip()!r} is not a field of a mark",
                    f"The fields are {', '.join(OPTION_NAMES)}",
                    "--column",
                )
            )
        field, name = (field, name) if field else ("text", text)
        if field in columns:
            raise InputError(Problem(f"two columns are named for {word.strip()!r}", "Name one", "--column"))
        columns[field] = name.strip()
    return columns


def option_of(field: str) -> str:
    """What `--column` calls a field."""
    return next(option for option, known in OPTION_NAMES.items() if known == field)


def columns_of(header: Sequence[str], given: Columns | None = None) -> dict[str, str]:
    """Which column feeds which field: {field: column}; `given` decides for some fields. If it names the column of the
    mark's words, no other column counts as one."""
    chosen: dict[str, tuple[int, str]] = {}
    named = {name.strip().casefold() for name in (given or {}).values()}
    for name in header:
        found = field_of(name) if name.strip().casefold() not in named else None
        if found and (found[0] not in chosen or found[1] < chosen[found[0]][0]):
            chosen[found[0]] = (found[1], name)
    result = {field: name for field, (_, name) in chosen.items()}
    second = next((name for name in header if _folded(name) == _SECOND and name not in result.values()), None)
    if second is not None and second.strip().casefold() not in named:
        result.setdefault("territories", second)
    for field, wanted in (given or {}).items():
        result.pop(field, None)
        match = next((name for name in header if name.strip().casefold() == wanted.casefold()), None)
        if match is not None:
            result[field] = match
    if "registration_number" in result and result.get("number", "").strip().casefold() in ("id", "no", "number"):
        del result["number"]  # a running number beside the office's own
    return result


def class_flags(header: Sequence[str], given: Columns | None = None) -> dict[int, int]:
    """The places of columns that say with 0 or 1 whether a mark is in one Nice class each: {place: class}.

    They are named Class1 to Class45, or as the user's CLASSES=First1..First45 says.
    """
    wanted = (given or {}).get("classes", "")
    match = re.fullmatch(r"(.*?)0*1\s*\.\.\s*.*?\d+", wanted)
    if wanted and not match:
        return {}
    before = re.escape(match[1].strip()) if match else r"(?:nice|int(?:ernational)?)?[ _]?class(?:es)?"
    found = {}
    for place, name in enumerate(header):
        number = re.fullmatch(rf"{before}[ _]?0*(\d{{1,2}})", name.strip(), re.IGNORECASE)
        if number and 1 <= int(number[1]) <= 45:
            found[place] = int(number[1])
    return found if match or len(found) > 20 else {}


@lru_cache(maxsize=65536)
def nice_classes(text: str) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """The Nice classes in `text`, ascending, and the numbers in it that are none: "IC 009; 25, 88" -> (9,
    25), (88,).

    The edition of the classification, "NCL(11)", is no class, nor are the classes of the United States' older
    classification that stand behind "US".
    """
    plain = re.sub(r"\bNCL\s*\(?\s*\d+(?:[-.]\d+)?\s*\)|\bNCL\d+(?:-\d+)?(?=\s)", " ", text, flags=re.IGNORECASE)
    plain = re.sub(r"\bU\.?S\.?\s+(?:Cls?\.?\s*)?\d[\d\s,]*", " ", plain)
    good: set[int] = set()
    bad: list[str] = []
    for digits in re.findall(r"\d+", plain):
        if 1 <= int(digits[:9]) <= 45 and len(digits) <= 3:
            good.add(int(digits))
        elif len(digits) == 6 and all(1 <= int(digits[i : i + 3]) <= 45 for i in (0, 3)):
            good.update(int(digits[i : i + 3]) for i in (0, 3))
        elif digits not in bad:
            bad.append(digits)
    return tuple(sorted(good)), tuple(bad)


def _date(given: str, field: str, note: Callable[[str, str, str], None]) -> str:
    date = plain_date(given)
    if not date and given.strip("0-/. "):  # zeros stand for no class
        note(
            f"{given.strip()[:30]!r} is no date that can be, or may be two days",
            "Write dates as YYYY-MM-DD; the mark was kept without it",
            field,
        )
    return date


def mark_from(
    values: Mapping[str, str], source: str, line: int, note: Callable[[str, str, str], None], latest: str = "9999"
) -> Mark:
    """A `Mark` from the texts of its fields; what cannot be understood, or cannot be by the day `latest` (YYYY-MM-DD),
    goes to `note(what, remedy, field)`."""
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
    office, goods, status, owner, number, registration = [
        one_line(given) if (given := get(field)) else "" for field in _ON_ONE_LINE
    ]
    number, registration = real_number(number), real_number(registration)
    if registration == number:
        registration = ""
    countries = get("territories", "")
    held = countries_in(countries) if countries else ()
    if not held and countries.strip():
        note(
            f"{one_line(countries)[:40]!r} holds what is not a country",
            "Write codes or usual names, such as DE; FR: the mark was kept as if it were not said where it holds",
            "territories",
        )
    words, kind = get("text", ""), get("mark_type", "")
    if kind:
        from .st66 import mark_type  # the layouts of XML are not loaded for the columns of a table

        kind = mark_type(kind)
    given_dates = dates = {field: _date(given, field, note) if (given := get(field)) else "" for field in DATES}
    if any(given_dates.values()):
        dates = believed(given_dates, latest, note, extended=office_code(office) in INTERNATIONAL)
    return Mark(
        words,
        number or registration,
        office,
        classes,
        goods,
        _standing(status, office_code(office), given_dates["registered"]) if status else UNKNOWN,
        status,
        owner,
        dates["filed"],
        dates["registered"],
        source,
        line,
        registration,
        get("goods_language", "")[:2].lower() if goods else "",
        dates["priority"],
        dates["expires"],
        "combined" if words and kind == "figurative" else kind,
        territories_of(office, held),
    )


def _standing(status: str, office: str, registered: str) -> str:
    """The status; a mark that its own office registered and that is opposed is in force: opposition came after."""
    found = standing(status, office)
    return LIVE if found == OPPOSED and registered and office and territories_of(office) else found


_ON_ONE_LINE = ("office", "goods", "status", "owner", "number", "registration_number")


@lru_cache(maxsize=4096)
def countries_in(text: str) -> tuple[str, ...]:
    """The codes of the countries and offices that `text` lists, by code or by usual name: "DE; France" -> DE, FR. None
    where a part is not understood: half a list would say that a mark does not hold where it does."""
    found: list[str] = []
    for part in filter(str.strip, re.split(r"[;,/|&+\n]| and ", text)):
        code = office_code(part)
        codes = [code] if code else [one for one in re.findall(r"\b[A-Z]{2}\b", part) if office_code(one)]
        if not codes:
            return ()
        found += codes
    return tuple(dict.fromkeys(found))


def one_line(text: str) -> str:
    """`text` on one line, without control and format characters or halves of characters."""
    if not text.isprintable():
        text = "".join(c if c.isprintable() else " " if c.isspace() else "" for c in text)
    return " ".join(text.split())
