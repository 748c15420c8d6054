"""The search of `pronunciation.g2p` in C."""

from __future__ import annotations

import ctypes
from collections.abc import Collection, Iterable, Mapping

from . import kernel

__all__ = ["LetterSearch", "letter_search"]


class _Settings(ctypes.Structure):
    _fields_ = (
        ("cost", ctypes.c_double * 128),
        ("unstressed", ctypes.c_double),
        ("choices_within", ctypes.c_double),
        ("choices", ctypes.c_int32),
        ("start", ctypes.c_char * 2),
        ("schwa", ctypes.c_char),
        ("strut", ctypes.c_char),
        ("vowel", ctypes.c_bool * 128),
    )


class LetterSearch:
    """One model made ready in the compiled kernel; it holds the table's bytes for as long as it lives."""

    _model: int | None = None

    def __init__(self, library: ctypes.PyDLL, table: memoryview, units: bytes, settings: _Settings) -> None:
        self._close = library.g2p_close
        self._close.argtypes, self._close.restype = (ctypes.c_void_p,), None
        self._search = library.g2p_readings
        self._search.argtypes = (
            *(ctypes.c_void_p, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_size_t, ctypes.c_double),
            *(ctypes.POINTER(ctypes.c_char_p), ctypes.POINTER(ctypes.POINTER(ctypes.c_double))),
        )
        self._search.restype = ctypes.c_long
        begin = library.g2p_open
        begin.argtypes = (ctypes.c_void_p, ctypes.c_size_t, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_void_p)
        begin.restype = ctypes.c_void_p
        self._table = ctypes.c_char.from_buffer(table)  # ctypes takes the address of memory that may be written alone
        self._text, self._shares = ctypes.c_char_p(), ctypes.POINTER(ctypes.c_double)()
        self._found = ctypes.byref(self._text), ctypes.byref(self._shares)
        self._model = begin(ctypes.byref(self._table), len(table), units, len(units), ctypes.byref(settings))

    def __bool__(self) -> bool:
        return self._model is not None

    def __del__(self) -> None:
        if self:
            self._close(self._model)

    def readings(self, word: str, limit: int, beam: int, within: float) -> list[tuple[str, float]] | None:
        """As `JointModel.readings`; None where there was no memory for it. `beam` is at least 1."""
        letters = word.encode("ascii", "replace")
        count = self._search(self._model, letters, len(letters), beam, within, *self._found)
        if count < 0:
            return None
        readings = (self._text.value or b"").decode("ascii").split("\n")
        return list(zip(readings, self._shares[:count], strict=False))[:limit]


def letter_search(
    table: memoryview,
    units: Iterable[tuple[str, str, str]],
    costs: Mapping[str, float],
    *,
    unstressed: float,
    choices: int,
    choices_within: float,
    start: str,
    vowels: Collection[str],
    schwa: str,
    strut: str,
) -> LetterSearch | None:
    """The search over a table's lines and its units (name, letters, phones); None without the kernel."""
    library = kernel()
    if library is None:
        return None
    characters = list(map(chr, range(128)))
    settings = _Settings(
        cost=(ctypes.c_double * 128)(*[costs.get(character, -1.0) for character in characters]),
        unstressed=unstressed,
        choices=choices,
        choices_within=choices_within,
        start=start.encode(),
        schwa=schwa.encode(),
        strut=strut.encode(),
        vowel=(ctypes.c_bool * 128)(*[character in vowels for character in characters]),
    )
    lines = "".join([f"{name}{letters}\t{phones}\n" for name, letters, phones in units]).encode()
    # Called with Python's lock held: a model serves one call at a time.
    search = LetterSearch(ctypes.PyDLL(library._name, handle=library._handle), table, lines, settings)
    return search or None
