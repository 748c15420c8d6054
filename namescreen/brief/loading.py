"""A brief from its file: read within bounds, checked as a whole, every problem reported at once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

from ..errors import InputError, Problem
from ..expressions import expression
from ..files import read_bounded
from .checker import Checker
from .keys import HOMES, TABLES, TOP
from .model import Brief, Costs
from .toml_lines import key_lines

__all__ = ["load_brief", "parse_brief", "starter"]

MOST_BYTES = 1 << 20
"""The most bytes of a brief; a longer file is not one."""
_CURLY = expression("[\u201c\u201d\u201e\u2018\u2019\u201a\u00ab\u00bb]")
_SETS = expression(r"^\s*(\[|[\w.\"'-]+\s*=)", re.MULTILINE)  # a table, or a key that is set: no list has one
_DEEP_KEY = expression(r"(?<![\w-])(?:[\w-]++[ \t]*+\.[ \t]*+){100}")
"""A key with this many parts is refused unread: the standard library takes quadratic time for it."""


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
        curly = _CURLY.findall("".join(text.split("\n")[line - 1 : line]))
        if curly:  # word processors and telephones set them for straight ones
            remedy = f"It holds curly quotation marks ({' '.join(dict.fromkeys(curly))}): type straight ones (\")"
        if not _SETS.search(text):
            remedy = 'A brief sets keys, as in goods = "herb planters"; `namescreen brief new` writes one to fill in'
            raise InputError(Problem("looks like a list, not like a brief", remedy, shown, line)) from None
        raise InputError(Problem(f"is not valid TOML: {what}", remedy, shown, line)) from None
    except (ArithmeticError, RecursionError, ValueError):  # endless numbers and brackets
        remedy = "Start again from `namescreen brief new`"
        raise InputError(Problem("holds a value that is nested too deeply or too long", remedy, shown)) from None
    checker = Checker(shown, lines, source.parent if source else Path(), HOMES)
    values = checker.table(data, TOP, ())
    brief = _assemble(values, source)
    _check_together(checker, brief, values)
    if checker.problems:
        raise InputError(sorted(checker.problems, key=lambda problem: problem.line or 0))
    return brief


def _check_together(checker: Checker, brief: Brief, values: Mapping[str, Any]) -> None:
    """Note problems that only show when values are compared."""
    if brief.least_letters > brief.most_letters:
        key = "most_letters" if "most_letters" in values.get("length", {}) else "least_letters"
        checker.wrong(
            ("length", key),
            f"leaves no length: at least {brief.least_letters} and at most {brief.most_letters} letters",
            "Raise most_letters or lower least_letters",
        )
    avoided = {word.casefold() for word in brief.avoid}
    for number, concept in enumerate(brief.concepts):
        if concept.word.casefold() in avoided:
            checker.wrong(
                ("concepts", number),
                f"{concept.word!r} is also a word to avoid",
                "Take it out of one of the lists",
            )


def _assemble(values: Mapping[str, Any], source: Path | None) -> Brief:
    given = {key: value for key, value in values.items() if key not in (*TABLES, "shortlist", "classes")}
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
