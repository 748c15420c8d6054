"""Checking a parsed brief key by key: every problem with its line, its place and a remedy."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ..errors import Problem
from .toml_lines import Place

__all__ = ["Checker", "Read", "WrongError", "place_in_words", "shown"]


class WrongError(Exception):
    """A problem with one value, and the remedy."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy


Read = Callable[["Checker", Any, Place], Any]
"""How the value of a key is read: takes the checker, the TOML value and its place; raises `WrongError`."""


class Checker:
    """Walks the parsed TOML along the table of known keys, and collects what is wrong.

    `lines` says on which line a place stands, `folder` where relative paths start, and `homes` to which table a key
    belongs ("" for the top of the brief).
    """

    def __init__(self, source: str, lines: Mapping[Place, int], folder: Path, homes: Mapping[str, str]) -> None:
        self.source, self.folder, self.problems = source, folder, list[Problem]()
        self._lines, self._homes = lines, homes

    def wrong(self, place: Place, what: str, remedy: str) -> None:
        """Note what is wrong at `place`, with its line, or that of the closest place around it."""
        line = next((self._lines[place[:n]] for n in range(len(place), 0, -1) if place[:n] in self._lines), None)
        self.problems.append(Problem(what, remedy, self.source, line, place_in_words(place)))

    def table(self, data: Mapping[str, Any], known: Mapping[str, Read], place: Place) -> dict[str, Any]:
        """The values of the `known` keys of a table; what is wrong with the others is noted."""
        values: dict[str, Any] = {}
        for key, value in data.items():
            if key in known:
                with_place = (*place, key)
                try:
                    values[key] = known[key](self, value, with_place)
                except WrongError as wrong:
                    self.wrong(with_place, wrong.what, wrong.remedy)
            else:
                self.wrong((*place, key), "is not a key of the brief", self._instead(key, known, place))
        return values

    def _instead(self, key: str, known: Mapping[str, Read], place: Place) -> str:
        home = self._homes.get(key)
        if place and home == "":
            return f"`{key}` stands at the top of the brief, before the first [table]"
        if home and home != place_in_words(place):
            return f"`{key}` belongs in the table [{home}]"
        near = get_close_matches(key, known, 1, cutoff=0.6)
        if near:
            return f"Did you mean `{near[0]}`?"
        return f"Known {'here' if place else 'at the top'}: {', '.join(known)}"


def place_in_words(place: Place) -> str:
    """`place` in words: costs.items, item 2, figure."""
    text = ""
    for part in place:
        if isinstance(part, int):
            text += f", item {part + 1}"
        else:
            text += f"{', ' if 'item' in text else '.'}{part}"
    return text.lstrip(".")


def shown(value: object) -> str:
    """A value of the brief as a message quotes it, at most 40 characters."""
    try:
        text = str(value).lower() if isinstance(value, bool | Decimal) else repr(value)
    except ValueError:
        return "a number of thousands of digits"
    return text if len(text) <= 40 else text[:37] + "..."
