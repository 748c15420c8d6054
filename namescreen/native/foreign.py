"""`foreign.c` called from Python: in which languages a word may be something, for `lexicon.foreign_filter`."""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Sequence
from ctypes import c_char, c_int8, c_int32, c_int64, c_uint8, c_uint32, c_void_p

__all__ = ["LONGEST_CHANGE", "LONGEST_MADE", "Change", "Ending", "compiled_may_be"]

LONGEST_CHANGE, LONGEST_MADE, LONGEST_LANGUAGES = 8, 16, 26


class Change(ctypes.Structure):
    """What the end of an inflected form may have come from, in which languages: the letters of its end, each as the
    bits of those that may stand there, and what stood there before, where -1 is the first of these letters."""

    _fields_ = (
        *(("languages", c_uint32), ("letters", c_uint32 * LONGEST_CHANGE), ("made", c_int8 * LONGEST_MADE)),
        *(("length", c_uint8), ("size", c_uint8)),
    )


class Ending(ctypes.Structure):
    """An ending and the languages that have it."""

    _fields_ = (("languages", c_uint32), ("size", c_uint8), ("letters", c_char * 11))


class _Settings(ctypes.Structure):
    _fields_ = (
        ("codes", c_char * (2 * LONGEST_LANGUAGES)),
        *((name, c_uint32) for name in ("dutch", "compounding", "ending_count", "small_count")),
        ("changes_from", c_uint32 * 27),
        *((f"shortest{what}", c_int32) for what in ("", "_part", "_compound", "_cognate")),
        ("longest_compound", c_int32),
        ("vowels", c_char * 16),
    )


def compiled_may_be(
    library: ctypes.CDLL,
    tables: Sequence[memoryview],
    codes: Sequence[str],
    endings: Sequence[Ending],
    small: Sequence[Ending],
    changes: Sequence[tuple[str, Change]],
    *,
    dutch: int,
    compounding: int,
    shortest: int,
    shortest_part: int,
    shortest_compound: int,
    longest_compound: int,
    shortest_cognate: int,
    vowels: str,
) -> Callable[[str], int]:
    """Gives for a word what `foreign_may_be` in foreign.c says of it; from the lines of three tables, the codes of all
    languages in the order of their bits, and `changes` by the last letter of the form, in order. Raises MemoryError."""
    lasts = [ord(last) - ord("a") for last, _ in changes]
    settings = _Settings(
        "".join(codes).encode(),
        *(dutch, compounding, len(endings), len(small)),
        (c_uint32 * 27)(*[sum(last < letter for last in lasts) for letter in range(27)]),
        *(shortest, shortest_part, shortest_compound, shortest_cognate, longest_compound),
        vowels.encode(),
    )
    begin, ask = library.foreign_open, library["foreign_may_be"]
    begin.argtypes, begin.restype = (c_void_p,) * 6, c_void_p
    ask.restype = c_int64
    held = [c_char.from_buffer(table) for table in tables]  # ctypes takes the address of writable memory only
    index = begin(
        ctypes.byref(settings),
        (c_void_p * len(held))(*map(ctypes.addressof, held)),
        (c_int64 * len(held))(*map(len, tables)),
        (Ending * len(endings))(*endings),
        (Ending * len(small))(*small),
        (Change * len(changes))(*[change for _, change in changes]),
    )
    if index is None:
        raise MemoryError("no memory for the index of foreign words, or its settings are of another kind")

    opened = c_void_p(index)

    def may_be(word: str) -> int:
        letters = word.encode("utf-8", "surrogatepass")
        found: int = ask(opened, letters, c_int64(len(letters)))
        return found

    return may_be
