"""Meanings from what the user has installed: one interface, and where its adapters are found."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Protocol

from namescreen.outcome import NotChecked

__all__ = ["DICTD_FOLDERS", "Dictionary", "Meaning", "installed", "judged", "missing", "opened"]

DICTD_FOLDERS = ("/usr/share/dictd", "/usr/local/share/dictd", "/var/lib/dictd", "/opt/homebrew/share/dictd")
"""Where packages put dictionaries for dictd servers (Debian's dictd manual page; the others by custom)."""


@dataclass(frozen=True, slots=True)
class Meaning:
    """One headword as the dictionary spells it, and what it means in a few English words."""

    word: str
    text: str


class Dictionary(Protocol):
    """A source of meanings: `name` says which, `languages` which headwords it holds (two-letter codes)."""

    @property
    def name(self) -> str:
        """What the source calls itself."""
        ...

    @property
    def languages(self) -> frozenset[str]:
        """The languages of its headwords."""
        ...

    def meanings(self, letters: str, language: str) -> tuple[Meaning, ...]:
        """The meanings of the words of `language` that fold to `letters`."""
        ...


@cache
def installed() -> tuple[Dictionary, ...]:
    """Every dictionary found in the usual folders, dictd's first, then the wordnets of NLTK; none is opened
    yet."""
    from .dictd import dictd_dictionaries
    from .wordnets import wordnets

    found: list[Dictionary] = []
    for folder in DICTD_FOLDERS:
        found += dictd_dictionaries(Path(folder))
    nets = wordnets()
    return tuple(found) if isinstance(nets, NotChecked) else (*found, nets)


def opened(dictionaries: Iterable[Dictionary | str | Path] | None) -> tuple[Dictionary, ...]:
    """The dictionaries to ask: those installed for None; a path is a dictd index, its .dict, or a folder of
    them.

    Raises `InputError` for a path that holds no dictionary.
    """
    from .dictd import open_dictd

    if dictionaries is None:
        return installed()
    found: list[Dictionary] = []
    for one in dictionaries:
        if isinstance(one, str | Path):
            found += open_dictd(Path(one))
        else:
            found.append(one)
    return tuple(found)


def missing() -> tuple[NotChecked, ...]:
    """Which kinds of installed dictionary there are none of, and the remedy."""
    from .wordnets import wordnets

    said: list[NotChecked] = []
    if not any(Path(folder).is_dir() for folder in DICTD_FOLDERS):
        said.append(NotChecked("dictionaries in dictd format", "none is installed in the usual folders; "
                               "Debian's dict-freedict-* packages are some, or give a path"))  # fmt: skip
    nets = wordnets()
    if isinstance(nets, NotChecked):
        said.append(nets)
    return tuple(said)


def judged(text: str) -> tuple[str, int]:
    """The kind and severity of a meaning from a dictionary, as the shipped tables rate the same English
    words; ``("ordinary", 0)`` when none of its parts is known as unlucky.

    The first of its parts counts in full, later ones one step less: a word's second sense is met less often.
    """
    from .unlucky import rated

    best = ("ordinary", 0)
    parts = [part.strip() for part in re.split(r"[,;]", re.sub(r"\s*[(\[<][^)\]>]*[)\]>]\s*", " ", text))]
    for place, part in enumerate(part for part in parts if part):
        rating = rated(part.lower().removeprefix("to "))
        if rating is not None:
            kind, severity = rating[0], rating[1] - (place > 0)
            if severity > best[1]:
                best = (kind, severity)
    return best
