"""The naming brief: what is to be named, for whom, and within which limits.

A brief is a TOML file; every part of it may be missing. Whatever is wrong with one is reported at once, each
problem with its line, key and remedy.
"""

from __future__ import annotations

import datetime
import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from .errors import InputError, Problem
from .files import read_bounded
from .toml_lines import Place, key_lines

__all__ = ["Brief", "Concept", "CostItem", "Costs", "load_brief", "parse_brief", "starter"]

COMPARISON_WEIGHTS = ("marks", "distinctiveness", "readings", "addresses")
"""What a side-by-side comparison of a shortlist weighs: one weight a check."""

LONGEST_NAME = 60
"""The most letters a length limit may ask for (common practice, no source)."""


MOST_WEIGHT = 1000
MOST_AMOUNT = 10**9
"""The most that a cost, or a number of times, may be: beyond any budget, and summed without rounding."""
MOST_BYTES = 1 << 20
"""A longer file is no brief: nobody writes a thousand pages of settings."""
_DEEP_KEY = re.compile(r"(?<![\w-])(?:[\w-]++[ \t]*+\.[ \t]*+){100}")
"""A key of so many parts is refused unread: the standard library takes time with the square of their number."""


@dataclass(frozen=True, slots=True)
class Concept:
    """A word the name may be made from; `senses` are words of the meanings wanted (empty: all of them)."""

    word: str
    senses: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CostItem:
    """One line of the costs worksheet: `figure` each, `times` over, as the maker found it."""

    what: str
    figure: Decimal
    times: Decimal = Decimal(1)
    currency: str = ""
    date: datetime.date | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Costs:
    """The maker's own figures; none is shipped. `budget` is in `currency`."""

    currency: str = ""
    budget: Decimal | None = None
    items: tuple[CostItem, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Brief:
    """A naming brief. Everything may be empty, which means: not stated.

    `classes` are Nice classes, ascending; `markets` ISO 3166-1 codes; `languages` BCP 47 tags; `endings`
    domain endings without a leading dot; lengths count letters. `columns` says which columns of the lists of marks hold
    which field. `marks` and `shortlist_file` are paths as
    they can be opened; `source` is the file the brief was read from.
    """

    product: str = ""
    goods: str = ""
    classes: tuple[int, ...] = ()
    concepts: tuple[Concept, ...] = ()
    avoid: tuple[str, ...] = ()
    tone: tuple[str, ...] = ()
    least_letters: int = 3
    most_letters: int = 16
    most_syllables: int | None = None
    most_words: int | None = None
    markets: tuple[str, ...] = ()
    languages: tuple[str, ...] = ()
    endings: tuple[str, ...] = ()
    handle_lengths: tuple[int, ...] = ()
    handle_servers: tuple[str, ...] = ()
    handle_patterns: tuple[str, ...] = ()
    marks: tuple[Path, ...] = ()
    columns: Mapping[str, str] = field(default_factory=dict, hash=False)
    shortlist: tuple[str, ...] = ()
    shortlist_file: Path | None = None
    ranking_weights: Mapping[str, float] = field(default_factory=dict, hash=False)
    comparison_weights: Mapping[str, float] = field(default_factory=dict, hash=False)
    costs: Costs = field(default_factory=Costs)
    seed: int = 1
    date: datetime.date | None = None
    source: Path | None = None


def load_brief(path: Path | str) -> Brief:
    """The brief in the TOML file at `path`; raises `InputError` with every problem found in it."""
    path = Path(path)
    raw = read_bounded(path, MOST_BYTES, f"Name the brief's file; `namescreen brief new {path}` writes one to fill in")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise InputError(Problem("is not UTF-8 text", "Save it as UTF-8 in a text editor", str(path), line)) from None
    return parse_brief(text, source=path)


def parse_brief(text: str, *, source: Path | None = None) -> Brief:
    """The brief in a TOML `text`; relative paths in it start at the folder of `source`."""
    shown = str(source) if source else "brief"
    try:
        if _DEEP_KEY.search(text):
            raise RecursionError
        data = tomllib.loads(text, parse_float=Decimal)  # money keeps its digits
        lines = key_lines(text)
    except tomllib.TOMLDecodeError as error:
        found = re.fullmatch(r"(.*?)(?: \(at (?:line (\d+), column \d+|end of document)\))?", str(error), re.DOTALL)
        what = found[1] if found else str(error)
        line = int(found[2]) if found and found[2] else text.count("\n") + 1
        remedy = "Texts stand in quotes, lists in [ ], and each key once"
        raise InputError(Problem(f"is not valid TOML: {what}", remedy, shown, line)) from None
    except (ArithmeticError, RecursionError, ValueError):  # numbers and brackets without end
        remedy = "Start again from `namescreen brief new`"
        raise InputError(Problem("holds a value that is nested too deeply or too long", remedy, shown)) from None
    checker = _Checker(shown, lines, source.parent if source else Path())
    values = checker.table(data, _TOP, ())
    brief = _assemble(values, source)
    checker.together(brief, values)
    if checker.problems:
        raise InputError(sorted(checker.problems, key=lambda problem: problem.line or 0))
    return brief


class _WrongError(Exception):
    """What is wrong with one value, and the remedy."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy


_Read = Callable[["_Checker", Any, Place], Any]
"""How the value of a key is read: takes the checker, the TOML value and its place; raises `_WrongError`."""


class _Checker:
    """Walks the parsed TOML along the table of known keys, and collects what is wrong."""

    def __init__(self, source: str, lines: dict[Place, int], folder: Path) -> None:
        self.source, self.lines, self.folder = source, lines, folder
        self.problems: list[Problem] = []

    def wrong(self, place: Place, what: str, remedy: str) -> None:
        line = next((self.lines[place[:n]] for n in range(len(place), 0, -1) if place[:n] in self.lines), None)
        self.problems.append(Problem(what, remedy, self.source, line, _key(place)))

    def table(self, data: Mapping[str, Any], known: Mapping[str, _Read], place: Place) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for key, value in data.items():
            if key in known:
                with_place = (*place, key)
                try:
                    values[key] = known[key](self, value, with_place)
                except _WrongError as wrong:
                    self.wrong(with_place, wrong.what, wrong.remedy)
            else:
                self.wrong((*place, key), "is not a key of the brief", _instead(key, known, place))
        return values

    def together(self, brief: Brief, values: Mapping[str, Any]) -> None:
        """What no single value shows."""
        if brief.least_letters > brief.most_letters:
            key = "most_letters" if "most_letters" in values.get("length", {}) else "least_letters"
            self.wrong(
                ("length", key),
                f"leaves no length: at least {brief.least_letters} and at most {brief.most_letters} letters",
                "Raise most_letters or lower least_letters",
            )
        avoided = {word.casefold() for word in brief.avoid}
        for number, concept in enumerate(brief.concepts):
            if concept.word.casefold() in avoided:
                self.wrong(
                    ("concepts", number),
                    f"{concept.word!r} is also a word to avoid",
                    "Take it out of one of the lists",
                )


def _instead(key: str, known: Mapping[str, _Read], place: Place) -> str:
    homes = [name for name, table in _TABLES.items() if key in table]
    if place and key in _TOP:
        return f"`{key}` stands at the top of the brief, before the first [table]"
    if homes and homes[0] != _key(place):
        return f"`{key}` belongs in the table [{homes[0]}]"
    near = get_close_matches(key, known, 1, cutoff=0.6)
    if near:
        return f"Did you mean `{near[0]}`?"
    return f"Known {'here' if place else 'at the top'}: {', '.join(known)}"


def _key(place: Place) -> str:
    """`place` as a reader of the file would say it: costs.items, item 2, figure."""
    text = ""
    for part in place:
        if isinstance(part, int):
            text += f", item {part + 1}"
        else:
            text += f"{', ' if 'item' in text else '.'}{part}"
    return text.lstrip(".")


def _shown(value: object) -> str:
    try:
        text = str(value).lower() if isinstance(value, bool | Decimal) else repr(value)
    except ValueError:
        return "a number of thousands of digits"
    return text if len(text) <= 40 else text[:37] + "..."


# How values are read. Each reader refuses what the key cannot mean, with the remedy.


def _text(_: _Checker, value: Any, place: Place) -> str:
    if not isinstance(value, str):
        raise _WrongError(f"must be a text, not {_shown(value)}", f'Write it in quotes: {place[-1]} = "..."')
    return " ".join(value.split())


def _word(checker: _Checker, value: Any, place: Place) -> str:
    if not isinstance(value, str):
        raise _WrongError(f"must be a text, not {_shown(value)}", "Write it in quotes")
    text = " ".join(value.split())
    if not text:
        raise _WrongError("is empty", "Write a word, or take the item out")
    return text


def _whole(least: int, most: int) -> _Read:
    def read(_: _Checker, value: Any, place: Place) -> int:
        if not isinstance(value, int) or isinstance(value, bool):
            raise _WrongError(f"must be a whole number, not {_shown(value)}", "Write it without quotes")
        if not least <= value <= most:
            raise _WrongError(f"must be from {least} to {most}, not {_shown(value)}", "Correct the number")
        return value

    return read


def _nice_class(checker: _Checker, value: Any, place: Place) -> int:
    try:
        number: int = _whole(1, 45)(checker, value, place)
    except _WrongError as wrong:
        from .goods import list_of_classes

        raise _WrongError(wrong.what, list_of_classes() if isinstance(value, int) else wrong.remedy) from None
    return number


def _amount(_: _Checker, value: Any, place: Place) -> Decimal:
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise _WrongError(
            f"must be a number, not {_shown(value)}", "Write it without quotes and without a currency sign"
        )
    if not (Decimal(value).is_finite() and value >= 0):
        raise _WrongError(f"must be 0 or more, not {_shown(value)}", "Correct the number")
    if value > MOST_AMOUNT:
        raise _WrongError(f"must be at most {MOST_AMOUNT:,}, not {_shown(value)}", "Correct the number")
    return Decimal(value)


def _weight(checker: _Checker, value: Any, place: Place) -> float:
    weight = _amount(checker, value, place)
    if weight > MOST_WEIGHT:
        raise _WrongError(f"must be at most {MOST_WEIGHT}, not {value}", "Only the ratios of weights matter")
    return float(weight)


def _day(_: _Checker, value: Any, place: Place) -> datetime.date:
    if isinstance(value, datetime.datetime):
        return value.date()
    if isinstance(value, datetime.date):
        return value
    try:
        return datetime.date.fromisoformat(value)
    except (TypeError, ValueError):
        raise _WrongError(f"must be a date, not {_shown(value)}", "Write it as year-month-day: 2026-05-31") from None


def _list_of(one: _Read) -> _Read:
    def read(checker: _Checker, value: Any, place: Place) -> tuple[Any, ...]:
        if not isinstance(value, list):
            raise _WrongError(f"must be a list, not {_shown(value)}", f"Write it in brackets: {place[-1]} = [...]")
        values = []
        for number, item in enumerate(value):
            try:
                values.append(one(checker, item, (*place, number)))
            except _WrongError as wrong:
                checker.wrong((*place, number), wrong.what, wrong.remedy)
        return tuple(dict.fromkeys(values))

    return read


def _matching(pattern: str, what: str, remedy: str, change: Callable[[str], str] = str) -> _Read:
    compiled = re.compile(pattern)

    def read(checker: _Checker, value: Any, place: Place) -> str:
        text = change(_word(checker, value, place))
        if not compiled.fullmatch(text):
            raise _WrongError(f"{_shown(value)} is not {what}", remedy)
        return text

    return read


def _table_of(known: Mapping[str, _Read], name: str) -> _Read:
    def read(checker: _Checker, value: Any, place: Place) -> dict[str, Any]:
        if not isinstance(value, dict):
            raise _WrongError(f"must be a table, not {_shown(value)}", f"Write its keys below a line [{name}]")
        return checker.table(value, known, place)

    return read


def _weights(*names: str) -> _Read:
    return _table_of(dict.fromkeys(names, _weight), "weights")


def _any_weights(checker: _Checker, value: Any, place: Place) -> dict[str, float]:
    """Weights whose names another room defines; that room says which it knows."""
    if not isinstance(value, dict):
        raise _WrongError(f"must be a table, not {_shown(value)}", "Write its keys below a line [weights.ranking]")
    return checker.table(value, dict.fromkeys(value, _weight), place)


def _columns(checker: _Checker, value: Any, place: Place) -> dict[str, str]:
    from .marks.fields import OPTION_NAMES

    known: dict[str, str] = _table_of(dict.fromkeys(OPTION_NAMES, _word), "columns")(checker, value, place)
    return known


def _concept(checker: _Checker, value: Any, place: Place) -> Concept:
    if isinstance(value, dict):
        found = checker.table(value, {"word": _word, "senses": _list_of(_word)}, place)
        if "word" not in found:
            raise _WrongError("has no `word`", 'Write { word = "spring", senses = ["season"] }')
        return Concept(found["word"], found.get("senses", ()))
    if not isinstance(value, str):
        raise _WrongError(
            f"must be a word, not {_shown(value)}",
            'Write "herb", or { word = "spring", senses = ["season"] }',
        )
    return Concept(_word(checker, value, place))


def _country(checker: _Checker, value: Any, place: Place) -> str:
    code: str = _matching("[A-Z]{2}", "a country code", "Write two letters as in ISO 3166-1: NL, DE, GB", str.upper)(
        checker, value, place
    )
    if code == "UK":
        raise _WrongError("'UK' is not a country code", "The code of the United Kingdom is GB")
    return code


def _path(checker: _Checker, value: Any, place: Place) -> Path:
    text = _word(checker, value, place)
    try:
        if "\0" in text:
            raise ValueError
        return checker.folder / Path(text).expanduser()
    except (RuntimeError, ValueError):  # ~nobody/marks.csv
        raise _WrongError(f"{_shown(text)} is no path of a file", "Write the path in full") from None


def _shortlist(checker: _Checker, value: Any, place: Place) -> Path | tuple[str, ...]:
    if isinstance(value, str):
        return _path(checker, value, place)
    if not isinstance(value, list):
        raise _WrongError(f"must be a list of names or a file, not {_shown(value)}", 'Write ["Loamlet"] or "names.txt"')
    names: tuple[str, ...] = _list_of(_word)(checker, value, place)
    return names


def _cost_items(checker: _Checker, value: Any, place: Place) -> tuple[CostItem, ...]:
    if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
        raise _WrongError("must be a list of tables", "Write each below a line [[costs.items]]")
    items = []
    for number, item in enumerate(value):
        there = (*place, number)
        found = checker.table(item, _COST_ITEM, there)
        missing = [key for key in ("what", "figure") if key not in item]
        if missing:
            checker.wrong(there, f"has no {' and no '.join(f'`{key}`' for key in missing)}", "Add it")
        elif {"what", "figure"} <= found.keys():
            items.append(CostItem(**found))
    return tuple(items)


_ENDING = r"(?!-)[^\W_](?:[\w-]*[^\W_])?(?:\.[^\W_](?:[\w-]*[^\W_])?)*"
_CURRENCY = _matching("[A-Z]{3}", "a currency code", "Write three letters as in ISO 4217: EUR, GBP, USD", str.upper)
_COST_ITEM: dict[str, _Read] = {
    "what": _word, "figure": _amount, "times": _amount, "currency": _CURRENCY, "date": _day, "source": _text,
}  # fmt: skip
_TABLES: dict[str, dict[str, _Read]] = {
    "length": {
        "least_letters": _whole(1, LONGEST_NAME),
        "most_letters": _whole(1, LONGEST_NAME),
        "most_syllables": _whole(1, 20),
        "most_words": _whole(1, 6),
    },
    "addresses": {
        "endings": _list_of(_matching(_ENDING, "a domain ending", "Write it like com or co.uk",
                                      lambda text: text.lower().removeprefix("."))),
        "handle_lengths": _list_of(_whole(1, 100)),
        "handle_servers": _list_of(_matching(r"[^\s/:@]+(\.[^\s/:@]+)*(:\d+)?", "a server's name",
                                             "Write it without https:// and without a path", str.lower)),
        "handle_patterns": _list_of(_matching(r"https?://\S*\{handle\}\S*", "an address pattern",
                                              "Write a whole address with {handle} where the handle goes")),
    },
    "weights": {
        "ranking": _any_weights,
        "comparison": _weights(*COMPARISON_WEIGHTS),
    },
    "costs": {"currency": _CURRENCY, "budget": _amount, "items": _cost_items},
}  # fmt: skip
_TOP: dict[str, _Read] = {
    "product": _text,
    "goods": _text,
    "classes": _list_of(_nice_class),
    "concepts": _list_of(_concept),
    "avoid": _list_of(_word),
    "tone": _list_of(_word),
    "markets": _list_of(_country),
    "languages": _list_of(_matching(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", "a language tag",
                                    "Write it as in BCP 47: nl, de, pt-BR")),
    "marks": _list_of(_path),
    "columns": _columns,
    "shortlist": _shortlist,
    "seed": _whole(0, 2**31 - 1),
    "date": _day,
    **{name: _table_of(known, name) for name, known in _TABLES.items()},
}  # fmt: skip


def _assemble(values: Mapping[str, Any], source: Path | None) -> Brief:
    given = {key: value for key, value in values.items() if key not in (*_TABLES, "shortlist", "classes")}
    for name in ("length", "addresses"):
        given |= values.get(name, {})
    shortlist = values.get("shortlist", ())
    given["shortlist_file" if isinstance(shortlist, Path) else "shortlist"] = shortlist
    given["classes"] = tuple(sorted(values.get("classes", ())))
    for name, weights in values.get("weights", {}).items():
        given[f"{name}_weights"] = weights
    given["costs"] = Costs(**values.get("costs", {}))
    return Brief(**given, source=source)


def starter() -> str:
    """A commented brief to fill in; it is a valid brief as it stands."""
    return Path(__file__).with_name("starter.toml").read_text("utf-8")
