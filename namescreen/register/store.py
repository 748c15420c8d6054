"""The prepared register file: named arrays in one file, mapped when opened, checked when new.

Layout, all numbers little-endian:

    b"namescreen register\\n"   what the file is
    version, header length     two unsigned 32-bit numbers
    sha256 of the header       32 bytes
    header                     JSON: the arrays' places, types and digests, and what the writer adds
    arrays                     each at a multiple of 64 bytes

Opening reads only the header and the file's length, so it costs the same for every size; a file that is cut
is noticed there. The digests of the arrays are compared the first time a file is opened, and again whenever its
size, place or times have changed. The time of the last change to the file counts too (ctime), which no program sets
back: a file that is written to is compared again. Files found good are remembered in the user's cache folder.
"""

from __future__ import annotations

import hashlib
import json
import mmap
import os
import shlex
import struct
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..errors import DataError, InputError, Problem
from ..files import replacing, user_cache

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]

__all__ = ["MAGIC", "VERSION", "is_prepared", "open_store", "remember_checked", "user_cache", "verify", "write_store"]

MAGIC = b"namescreen register\n"
SUFFIX = ".nsr"
VERSION = 26
"""Raised whenever the arrays change their form, or what is worked out beforehand (words, sounds, weights) changes its
meaning: a prepared register of another version is refused, with the remedy."""
_HEAD = struct.Struct("<20sII32s")
_ALIGN = 64
_REMEDY = "Make it again with: namescreen register prepare SOURCE... --output {path}"


def is_prepared(path: Path) -> bool:
    """Whether a file begins as a prepared register does, of whatever version, or is named so and damaged there."""
    if not path.is_file():  # a pipe would be waited for
        return False
    try:
        with path.open("rb") as file:
            start = file.read(len(MAGIC))
            return start == MAGIC or path.suffix == SUFFIX
    except OSError:
        return False


def write_store(path: Path, arrays: Arrays, about: Mapping[str, Any]) -> None:
    """Write `arrays` and `about` beside `path`, then rename: a reader sees the old file or the new, never a
    part.

    Raises `InputError` if the folder cannot be written or the disk is full; the old file then stays.
    """
    import numpy as np

    contiguous = {name: np.ascontiguousarray(array) for name, array in arrays.items()}
    places: dict[str, dict[str, Any]] = {}
    at = 0
    for name, array in contiguous.items():
        digest = hashlib.sha256(_bytes(array)).hexdigest()
        places[name] = {
            "dtype": array.dtype.str,
            "length": len(array),
            "at": at,
            "bytes": array.nbytes,
            "sha256": digest,
        }
        at += -(-array.nbytes // _ALIGN) * _ALIGN
    # Escaped, as the name of a source need not be UTF-8.
    header = json.dumps({"about": dict(about), "arrays": places, "bytes": at}).encode()
    try:
        with replacing(path) as file:
            file.write(_HEAD.pack(MAGIC, VERSION, len(header), hashlib.sha256(header).digest()))
            file.write(header)
            file.write(b"\0" * (-file.tell() % _ALIGN))
            for array in contiguous.values():
                file.write(_bytes(array))
                file.write(b"\0" * (-array.nbytes % _ALIGN))
    except OSError as error:
        raise InputError(
            Problem(
                f"the prepared register cannot be written ({error.strerror or error})",
                "Choose a folder that you may write to, on a disk with room; what stood there is untouched",
                str(path),
            )
        ) from error
    remember_checked(path)


def _bytes(array: NDArray[np.generic]) -> memoryview:
    return array.view("u1").data


def open_store(path: Path, check: Callable[[Arrays, Mapping[str, Any]], None]) -> tuple[Arrays, dict[str, Any]]:
    """The arrays of a prepared file, mapped read-only, and what the writer said of itself.

    The first time, every byte is compared with its digest, and `check` looks whether the arrays fit together. Raises
    `DataError`, with the remedy, if the file is missing, cut, damaged or of another version.
    """
    import numpy as np

    remedy = _REMEDY.format(path=path)
    try:
        with path.open("rb") as file:
            mapped = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
    except (OSError, ValueError) as error:
        raise DataError(path, f"cannot be opened ({getattr(error, 'strerror', None) or error})", remedy) from error
    header, start = _header(path, mapped)
    known = _known_good(path)
    with damage_reported(path):
        if not known:
            _compare(path, mapped, header, start)
        arrays: dict[str, NDArray[np.generic]] = {
            name: np.frombuffer(mapped, np.dtype(place["dtype"]), place["length"], start + place["at"])
            for name, place in header["arrays"].items()
        }
        if not known:
            check(arrays, header["about"])
    if not known:
        remember_checked(path)
    return arrays, header["about"]


@contextmanager
def damage_reported(path: Path | None) -> Iterator[None]:
    """Turn errors from the contents of the prepared register at `path` into `DataError`: it is damaged. Without a path
    they are errors of the program, and stay."""
    try:
        yield
    except (LookupError, ValueError, TypeError, AttributeError, OverflowError, RecursionError) as error:
        if path is None:
            raise
        what = f"is damaged: {error or type(error).__name__}"
        raise DataError(path, what, _REMEDY.format(path=path)) from error


def verify(path: Path) -> None:
    """Compare every byte of a prepared file with its digests; raises `DataError` if they differ."""
    with path.open("rb") as file:
        mapped = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
    _compare(path, mapped, *_header(path, mapped))


def _header(path: Path, mapped: mmap.mmap) -> tuple[dict[str, Any], int]:
    remedy = _REMEDY.format(path=path)
    if mapped[: len(MAGIC)] != MAGIC:
        if path.suffix != SUFFIX:
            made = shlex.join([str(path), "--output", str(path.with_suffix(SUFFIX))])
            remedy = f"If it is a list of marks, make one of it with: namescreen register prepare {made}"
        raise DataError(path, "is not a prepared register", remedy)
    if len(mapped) < _HEAD.size:
        raise DataError(path, "is cut: even its header is not whole", remedy)
    _, version, length, digest = _HEAD.unpack(mapped[: _HEAD.size])
    if version != VERSION:
        raise DataError(
            path,
            f"is a prepared register of version {version}, and this program reads version {VERSION}",
            remedy,
        )
    raw = mapped[_HEAD.size : _HEAD.size + length]
    start = -(-(_HEAD.size + length) // _ALIGN) * _ALIGN
    if len(raw) < length or hashlib.sha256(raw).digest() != digest:
        raise DataError(path, "is damaged: its header does not match its checksum", remedy)
    with damage_reported(path):
        header: dict[str, Any] = json.loads(raw)
        if len(mapped) < start + header["bytes"]:
            raise DataError(path, f"is cut: it has {len(mapped):,} of {start + header['bytes']:,} bytes", remedy)
    return header, start


def _compare(path: Path, mapped: mmap.mmap, header: Mapping[str, Any], start: int) -> None:
    view = memoryview(mapped)
    for name, place in header["arrays"].items():
        part = view[start + place["at"] : start + place["at"] + place["bytes"]]
        same = hashlib.sha256(part).hexdigest() == place["sha256"]
        part.release()
        if not same:
            raise DataError(
                path, f"is damaged: its part {name!r} does not match its checksum", _REMEDY.format(path=path)
            )


def _stamp(path: Path) -> tuple[Path, str]:
    place = path.resolve()
    state = place.stat()
    name = hashlib.sha256(os.fsencode(place)).hexdigest()[:32]
    return user_cache() / "checked" / name, " ".join(
        map(str, (VERSION, state.st_size, state.st_mtime_ns, state.st_ctime_ns, state.st_ino))
    )


def _known_good(path: Path) -> bool:
    try:
        file, state = _stamp(path)
        return file.read_bytes() == state.encode()
    except OSError:
        return False


def remember_checked(path: Path) -> None:
    """Note that a file was found whole, so that it need not be read through each time; never fails."""
    with suppress(OSError):
        file, state = _stamp(path)
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(state)
