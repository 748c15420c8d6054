"""The line of each key and list item in a TOML text.

The standard library's parser gives values without places; a message that names the line needs both. The
scanner below only follows the grammar far enough to know where keys are (TOML 1.0.0, toml.io), and is meant
for text that `tomllib` has already accepted.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from ..expressions import expression

__all__ = ["Place", "key_lines"]

Place = tuple[str | int, ...]
"""The way to a value: table names and keys, and the numbers of list items from 0."""

_BARE = expression(r"[A-Za-z0-9_-]+")
_ESCAPE = expression(r"\\(u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)", re.DOTALL)
_ESCAPED = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", '"': '"', "\\": "\\"}
_SPACE = expression(r"[ \t]*")
_BLANK = expression(r"(?:[ \t\r\n]|#[^\n]*)*")
_SCALAR = expression(r"[^,\]}#\n]*")
_STRINGS = tuple(
    re.compile(pattern, re.DOTALL)
    for pattern in (
        r'"""(?:[^"\\]|\\.|"{1,2}(?!"))*"{3,5}',
        r"'''.*?'{3,5}",
        r'"(?:[^"\\\n]|\\.)*"',
        r"'[^'\n]*'",
    )
)


def key_lines(text: str) -> dict[Place, int]:
    """The line (from 1) of every table, key and list item in a valid TOML `text`."""
    return _Scanner(text.replace("\r\n", "\n")).scan()


class _Scanner:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.lines: dict[Place, int] = {}
        self.items: dict[Place, int] = {}  # the number of [[tables]] under a place so far
        self.counted_to = 0
        self.line = 1

    def scan(self) -> dict[Place, int]:
        table: Place = ()
        self._skip(_BLANK)
        while self.at < len(self.text):
            if self._next("["):
                table = self._header()
            else:
                self._pair(table)
            self._skip(_BLANK)
        return self.lines

    def _header(self) -> Place:
        several = self.text.startswith("[[", self.at)
        self.at += 1 + several
        line = self._here()
        keys = self._keys()
        self.at += 1 + several
        *parents, last = keys
        place = (*self._within((), parents), last)
        if several:
            self.lines.setdefault(place, line)
            number = self.items[place] = self.items.get(place, -1) + 1
            place = (*place, number)
        self.lines.setdefault(place, line)
        return place

    def _within(self, table: Place, keys: list[str]) -> Place:
        """`keys` below `table`; a list of tables means its last one."""
        for key in keys:
            table = (*table, key)
            if table in self.items:
                table = (*table, self.items[table])
        return table

    def _pair(self, table: Place) -> None:
        self._skip(_BLANK)
        line = self._here()
        place = table
        for key in self._keys():
            place = (*place, key)
            self.lines.setdefault(place, line)
        self.at += 1  # the equals sign
        self._skip(_SPACE)
        self._value(place)

    def _keys(self) -> list[str]:
        keys: list[str] = []
        while True:
            self._skip(_SPACE)
            if self.text[self.at] in "\"'":
                keys.append(self._string())
            else:
                keys.append(self._skip(_BARE))
            self._skip(_SPACE)
            if not self._next("."):
                return keys
            self.at += 1

    def _value(self, place: Place) -> None:
        if self._next("["):
            number = -1

            def item() -> None:
                nonlocal number
                number += 1
                self.lines[(*place, number)] = self._here()
                self._value((*place, number))

            self._between("]", item)
        elif self._next("{"):
            self._between("}", lambda: self._pair(place))
        elif self._next('"') or self._next("'"):
            self._string()
        else:
            self._skip(_SCALAR)

    def _between(self, end: str, one: Callable[[], None]) -> None:
        self.at += 1
        self._skip(_BLANK)
        while not self._next(end):
            one()
            self._skip(_BLANK)
            if self._next(","):
                self.at += 1
                self._skip(_BLANK)
        self.at += 1

    def _string(self) -> str:
        for pattern in _STRINGS:
            if found := pattern.match(self.text, self.at):
                self.at = found.end()
                body = found[0][1:-1]
                return _ESCAPE.sub(_unescape, body) if found[0][0] == '"' else body
        raise ValueError("text is not valid TOML")

    def _skip(self, pattern: re.Pattern[str]) -> str:
        found = pattern.match(self.text, self.at)
        if found is None:
            raise ValueError("text is not valid TOML")
        self.at = found.end()
        return found[0]

    def _next(self, character: str) -> bool:
        return self.text.startswith(character, self.at)

    def _here(self) -> int:
        self.line += self.text.count("\n", self.counted_to, self.at)
        self.counted_to = self.at
        return self.line


def _unescape(found: re.Match[str]) -> str:
    code = found[1]
    return chr(int(code[1:], 16)) if code[0] in "uU" and len(code) > 1 else _ESCAPED.get(code, code)
