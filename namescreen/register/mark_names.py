"""The distinct names of the marks of a register: which marks carry each, and which of them are another one but for what
says nothing of the maker (Tug Boat Ltd, tug boat), so that a search finds them where it finds that one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = dict[str, NDArray[np.generic]]
    Told = tuple[list[str], dict[str, str]]
    Spread = Callable[[Callable[[list[str]], Told], list[str], int], Iterator[tuple[list[str], Told]]]

__all__ = ["NAMES_A_TASK", "add_bare", "add_marks", "keys_of"]

NAMES_A_TASK = 20_000


def keys_of(texts: list[str], spread: Spread) -> tuple[list[str], NDArray[np.int64], dict[int, int]]:
    """The distinct names, as their words with a space between, and the number of the name of each mark. After the names
    of marks come those that only tell what such names are without what says nothing of the maker: of each of these the
    number of the bare name. `spread` applies work to many texts, so many at a time."""
    distinct: dict[str, int] = {}
    text_of_mark = np.fromiter((distinct.setdefault(text, len(distinct)) for text in texts), np.int64, len(texts))
    number: dict[str, int] = {}
    name_of_text = np.empty(len(distinct), np.int64)
    at = 0
    bare: dict[str, str] = {}
    for _, (keys, less) in spread(_tokenized, list(distinct), NAMES_A_TASK):
        for key in keys:
            name_of_text[at] = number.setdefault(key, len(number))
            at += 1
        bare = less | bare  # of marks with the same words the first decides
    bare_of = {number[key]: number.setdefault(rest, len(number)) for key, rest in bare.items()}
    return list(number), name_of_text[text_of_mark], bare_of


def _tokenized(texts: list[str]) -> tuple[list[str], dict[str, str]]:
    """The words of some marks, and of those that have more the telling ones."""
    from ..closeness.telling import may_tell_less, telling_part
    from ..text import tokenize

    keys, less = [], dict[str, str]()
    for text in texts:
        words = tokenize(text)
        keys.append(key := " ".join(words))
        if words and key not in less and may_tell_less(text, words):
            rest = " ".join(tokenize(telling_part(text, "")))
            if rest not in ("", key):
                less[key] = rest
    return keys, less


def add_marks(arrays: Arrays, name_of_mark: NDArray[np.int64], names: int) -> None:
    """The marks of every name."""
    marks = np.argsort(name_of_mark, kind="stable")
    arrays["name_marks"] = marks.astype(np.uint32)
    arrays["name_marks_start"] = np.searchsorted(name_of_mark[marks], np.arange(names + 1)).astype(np.uint32)


def add_bare(arrays: Arrays, rank: NDArray[np.int64], bare_of: dict[int, int]) -> None:
    """Of each name that says more than what it is called by, the name without (itself, of any other), and the other way
    round."""
    bare = np.arange(len(rank))
    fuller = rank[np.fromiter(bare_of, np.int64, len(bare_of))]
    bare[fuller] = rank[np.fromiter(bare_of.values(), np.int64, len(bare_of))]
    arrays["name_bare"] = bare.astype(np.uint32)
    fuller = np.sort(fuller)
    order = np.argsort(bare[fuller], kind="stable")
    arrays["fuller"] = fuller[order].astype(np.uint32)
    arrays["fuller_start"] = np.searchsorted(bare[fuller][order], np.arange(len(rank) + 1)).astype(np.uint32)
