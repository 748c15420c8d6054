"""The dictionaries that the user has installed, and the folders searched for them."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from namescreen.outcome import NotChecked

from .dictd import dictd_dictionaries, open_dictd
from .meanings import Dictionary
from .wordnets import wordnets

__all__ = ["DICTD_FOLDERS", "installed", "missing", "opened"]

DICTD_FOLDERS = ("/usr/share/dictd", "/usr/local/share/dictd", "/var/lib/dictd", "/opt/homebrew/share/dictd")
"""Where packages put dictionaries for dictd servers (Debian's dictd manual page; the others by custom)."""


@cache
def installed() -> tuple[Dictionary, ...]:
    """Every dictionary found in the usual folders, dictd's first, then the wordnets of NLTK; none is opened
    yet."""
    found: list[Dictionary] = []
    for folder in DICTD_FOLDERS:
        found += dictd_dictionaries(Path(folder))
    nets = wordnets()
    return tuple(found) if isinstance(nets, NotChecked) else (*found, nets)


def opened(dictionaries: Iterable[Dictionary | str | Path] | None) -> tuple[Dictionary, ...]:
    """The dictionaries to search: the installed ones for None; a path is a dictd index, its .dict, or a folder of them.

    Raises `InputError` for a path that holds no dictionary.
    """
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
    """The kinds of dictionary that are not installed, and the remedy."""
    said: list[NotChecked] = []
    if not any(Path(folder).is_dir() for folder in DICTD_FOLDERS):
        said.append(NotChecked("dictionaries in dictd format", "none is installed in the usual folders; "
                               "Debian's dict-freedict-* packages are some, or give a path"))  # fmt: skip
    nets = wordnets()
    if isinstance(nets, NotChecked):
        said.append(nets)
    return tuple(said)
