"""`g2p.c` called from Python: the search for readings of `pronunciation.g2p`."""

from __future__ import annotations

import ctypes
from collections.abc import Collection, Iterable, Mapping

from .library import check

__all__ = ["CompiledReadings"]


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


class CompiledReadings:
    """A model prepared for the compiled code, from a table's lines and its units as (name, letters, phones).

    It holds the table's bytes for as long as it lives.
    """

    _model: int | None = None

    def __init__(
        self,
        library: ctypes.CDLL,
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
    ) -> None:
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
        functions = ctypes.PyDLL(library._name, handle=library._handle)
        self._close = functions.g2p_close
        self._close.argtypes, self._close.restype = (ctypes.c_void_p,), None
        self._search = functions.g2p_readings
        self._search.argtypes = (
            *(ctypes.c_void_p, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_size_t, ctypes.c_double),
            *(ctypes.POINTER(ctypes.c_char_p), ctypes.POINTER(ctypes.POINTER(ctypes.c_double))),
        )
        self._search.restype = ctypes.c_long
        self._read = functions.g2p_preload
        self._read.argtypes, self._read.restype = (ctypes.c_void_p,), ctypes.c_bool
        begin = functions.g2p_open
        begin.argtypes = (ctypes.c_void_p, ctypes.c_size_t, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_void_p)
        begin.restype = ctypes.c_void_p
        self._table = ctypes.c_char.from_buffer(table)  # ctypes takes the address of writable memory only
        self._text, self._shares = ctypes.c_char_p(), ctypes.POINTER(ctypes.c_double)()
        self._found = ctypes.byref(self._text), ctypes.byref(self._shares)
        self._model = begin(ctypes.byref(self._table), len(table), lines, len(lines), ctypes.byref(settings))
        if self._model is None:
            raise MemoryError("no memory for the model, or it is of another kind")

    def __del__(self) -> None:
        if self._model is not None:
            self._close(self._model)

    def preload(self) -> None:
        """Read the whole table, so that processes forked later share it; it takes some 40 megabytes."""
        if not self._read(self._model):
            raise MemoryError("no memory for the model")

    def readings(self, word: str, beam: int, within: float) -> list[tuple[str, float]]:
        """As `pronunciation.g2p.JointModel.readings`, all that were found. `beam` is at least 1."""
        letters = word.encode("ascii", "replace")
        count = check(self._search(self._model, letters, len(letters), beam, within, *self._found))
        readings = (self._text.value or b"").decode("ascii").split("\n")
        return list(zip(readings, self._shares[:count], strict=False))
