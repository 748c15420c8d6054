"""Shipped tables: sorted text files that open at once and answer by binary search.

A table is UTF-8 text, one `key<TAB>value` line an entry, sorted by the bytes of the key, keys unique,
after one header line

    #namescreen-table 1 NAME rows=N sha256=HEX bytes=M

where HEX is the digest of everything after the header, and M its length (older tables do not state it). The file
is mapped, not read, so opening costs the same for ten rows as for a million, and a look-up touches about log2(size)
places.
"""

from __future__ import annotations

import hashlib
import mmap
import re
from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from itertools import compress, pairwise
from pathlib import Path

from .errors import DataError
from .native import choose
from .native.table import compiled_among, compiled_find, compiled_seek, compiled_value

__all__ = ["REMEDY", "Table", "open_table", "table_bytes", "wordlists_folder"]

_FORMAT = b"#namescreen-table 1 "
_FACTS = rb"\S+ rows=(\d{1,12}) sha256=([0-9a-f]{64})(?: bytes=(\d{1,15}))?"
MOST_PROBES = 1 << 14
"""Places of a table whose keys are cached: every search begins at the same ones, so some 14 of its 20 steps do not read
the file."""
SMALL, OFTEN = 1 << 17, 200
"""Bytes of a table that is loaded once it has been asked so often: that takes 2 ms at most, a search 3 us."""
REMEDY = "Install namescreen again; to rebuild the tables from their sources, see wordlists/SOURCES.md"
"""What to do about a table that is missing or damaged."""


def wordlists_folder() -> Path:
    """The folder of the shipped tables: inside the installed package, or beside it in a checkout."""
    inside = Path(__file__).parent / "wordlists"
    return inside if inside.is_dir() else Path(__file__).parent.parent / "wordlists"


class Table:
    """A read-only mapping from text to text over one sorted file.

    Raises `DataError` if the file is missing, or is not a table of this format.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        try:
            with path.open("rb") as file:
                self._map = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_COPY)  # see `lines`
        except (OSError, ValueError) as error:
            raise DataError(path, f"cannot be opened ({error})", REMEDY) from error
        end = self._map.find(b"\n")
        head = re.fullmatch(_FORMAT + _FACTS, self._map[: max(end, 0)])
        if head is None:
            raise DataError(path, "is not a table this version reads", REMEDY)
        self._start = end + 1
        self._rows = int(head[1])
        self._sha256 = head[2].decode()
        size = len(self._map) - self._start
        if self._map[-1:] != b"\n" or int(head[3] or size) > size:  # a search needs complete lines
            raise self._damaged("it is cut")
        if int(head[3] or size) < size:
            raise self._damaged("something was added to it")
        self._seek = choose(lambda library: compiled_seek(library, self._map, self._start), lambda: self._search)
        """The offset of the first line whose key is not below the one asked for."""
        self._find = choose(lambda library: compiled_find(library, self._map, self._start), lambda: self._found)
        """The offset of the line with the key asked for, -1 where there is none."""
        self._value = choose(
            lambda library: compiled_value(library, self._map, self._start, self._value_of), lambda: self._value_of
        )
        """The value of the key asked for, None where there is none."""
        self._among = choose(
            lambda library: compiled_among(library, self._map, self._start),
            lambda: self._which,
        )
        """Which of some keys are stored."""
        self._looked_up = 0 if len(self._map) <= SMALL else -(1 << 62)
        self._probes: dict[int, tuple[int, int, bytes]] = {}
        self._kept: dict[str, str] | None = None

    def __len__(self) -> int:
        return self._rows

    def __contains__(self, key: str) -> bool:
        kept = self._kept
        if kept is None:
            self._looked_up += 1
            if self._looked_up <= OFTEN:
                return self._find(key.encode("utf-8", "surrogatepass")) >= 0
            kept = self._loaded()
        return key in kept

    def get(self, key: str) -> str | None:
        """The value stored under `key`, or None if there is none."""
        kept = self._kept
        if kept is None:
            self._looked_up += 1
            if self._looked_up <= OFTEN:
                value = self._value(key.encode("utf-8", "surrogatepass"))
                return None if value is None else self._text(value)
            kept = self._loaded()
        return kept.get(key)

    def present(self, keys: Sequence[str]) -> list[str]:
        """Those of `keys`, without line breaks, that are stored, in order; for many keys, of which few are expected
        to be."""
        kept = self._kept
        if kept is not None:
            return [key for key in keys if key in kept]
        return list(compress(keys, self._among(keys)))

    def offset(self, key: str) -> int | None:
        """Where the line of `key` begins among the `lines`; None if there is none."""
        at = self._find(key.encode(errors="surrogatepass"))
        return at - self._start if at >= 0 else None

    def preload(self) -> None:
        """Load the whole table into memory, for work with many look-ups. It takes some ten times the table's size, and
        a look-up then a thirtieth of the time."""
        self._loaded()

    def _loaded(self) -> dict[str, str]:
        if self._kept is None:
            self._kept = dict(self.items())
        return self._kept

    def lines(self) -> memoryview:
        """All entries, a line each, as they stand in the file; the memory is shared, so do not change it."""
        return memoryview(self._map)[self._start :]

    def starting(self, prefix: str) -> Iterator[tuple[str, str]]:
        """Every (key, value) whose key starts with `prefix`, in order."""
        wanted = prefix.encode(errors="surrogatepass")
        at = self._seek(wanted)
        while at < len(self._map):
            line = self._line(at)
            if not line.startswith(wanted):
                return
            key, _, value = line.partition(b"\t")
            yield self._text(key), self._text(value)
            at += len(line) + 1

    def keys_of_lines_with(self, text: str) -> Iterator[str]:
        """The keys of all lines that hold `text`, which is no part of a key."""
        wanted, at = text.encode(), self._start
        while (at := self._map.find(wanted, at)) >= 0:
            line = self._map.rfind(b"\n", 0, at) + 1
            yield self._text(self._map[line : self._map.find(b"\t", line)])
            end = self._map.find(b"\n", at)
            if end < 0:
                return
            at = end

    def items(self) -> Iterator[tuple[str, str]]:
        """Every (key, value), in order; the whole table is read at once."""
        lines = self._text(self._map[self._start :]).split("\n")[:-1]
        if len(lines) != self._rows:
            raise self._damaged(f"it holds {len(lines):,} of {self._rows:,} rows")
        for line in lines:
            key, _, value = line.partition("\t")
            yield key, value

    def verify(self) -> None:
        """Compare the digest in the header with the contents; raises `DataError` if they differ."""
        if hashlib.sha256(self._map[self._start :]).hexdigest() != self._sha256:
            raise self._damaged("its contents do not match its checksum")

    def _damaged(self, how: str) -> DataError:
        return DataError(self.path, f"is damaged: {how}", REMEDY)

    def _text(self, raw: bytes) -> str:
        try:
            return raw.decode()
        except UnicodeDecodeError:
            raise self._damaged("it is not UTF-8 text") from None

    def _line(self, at: int) -> bytes:
        end = self._map.find(b"\n", at)
        return self._map[at : end if end >= 0 else len(self._map)]

    def _which(self, keys: Sequence[str]) -> bytes:
        """`_among` in Python."""
        return bytes(self._found(key.encode(errors="surrogatepass")) >= 0 for key in keys)

    def _found(self, wanted: bytes) -> int:
        """`_find` in Python."""
        at = self._search(wanted)
        return at if self._map[at : at + len(wanted) + 1] == wanted + b"\t" else -1

    def _value_of(self, wanted: bytes) -> bytes | None:
        """`_value` in Python."""
        at = self._find(wanted)
        if at < 0:
            return None
        end = self._map.find(b"\n", at)
        return self._map[at + len(wanted) + 1 : end if end >= 0 else len(self._map)]

    def _search(self, wanted: bytes) -> int:
        """`_seek` in Python."""
        low, high, probes, data = self._start, len(self._map), self._probes, self._map
        while low < high:
            middle = (low + high) // 2
            probe = probes.get(middle)
            if probe is None:
                at = data.rfind(b"\n", self._start - 1, middle) + 1
                tab, end = data.find(b"\t", at), data.find(b"\n", at)
                probe = at, end + 1, data[at:tab]
                if len(probes) < MOST_PROBES:
                    probes[middle] = probe
            if probe[2] < wanted:
                low = probe[1]
            else:
                high = probe[0]
        return low


_opened: list[Table] = []


def damage() -> DataError | None:
    """What is wrong with the tables that were opened, if their contents do not match their checksums: this takes time,
    and is asked where something went wrong that nobody foresaw."""
    for table in _opened:
        try:
            table.verify()
        except DataError as error:
            return error
    return None


@cache
def open_table(name: str) -> Table:
    """The shipped table `name`, for instance ``open_table("pronunciations.tsv")``; opened once a process."""
    _opened.append(Table(wordlists_folder() / name))
    return _opened[-1]


def table_bytes(name: str, entries: Iterable[tuple[str, str]]) -> bytes:
    """The file contents of a table with these entries; equal entries give equal bytes.

    Raises ValueError if a key stands twice or a tab or line break would break the format.
    """
    rows = sorted((key.encode(), value.encode()) for key, value in entries)
    for one, next_one in pairwise(rows):
        if one[0] == next_one[0]:
            raise ValueError(f"key {one[0].decode()!r} stands twice in table {name}")
    for key, value in rows:
        if b"\t" in key or b"\n" in key or b"\n" in value or b"\r" in key + value:
            raise ValueError(f"entry {key.decode()!r} of table {name} holds a tab or line break")
    body = b"".join(key + b"\t" + value + b"\n" for key, value in rows)
    digest = hashlib.sha256(body).hexdigest()
    return _FORMAT + f"{name} rows={len(rows)} sha256={digest} bytes={len(body)}\n".encode() + body
