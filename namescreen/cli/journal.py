"""A journal of finished results beside the output, so that a long run can be stopped and resumed.

The journal is a text file, `OUTPUT.journal`. Its first line holds the digest of the run: names, marks, options and the
form of the results. Each further line is one finished name: a checksum, then its result as JSON. A run with another
digest starts from the beginning, and a name whose line does not match its checksum is screened again.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import Any

from namescreen.errors import InputError, Problem

from .outputs import set_aside

__all__ = ["Journal"]

_MAGIC = "namescreen journal "


class Journal:
    """The results of one run so far: `results` maps each finished name to its result.

    `run` is everything that the results depend on, as JSON values; a result is only taken up where it `fits`. `damaged`
    counts the lines for which it does not, or that do not match their checksum. `other` is the new place of another
    run's journal, if there was one here. Raises `InputError` if something else stands here, or if the journal cannot be
    written.
    """

    def __init__(self, output: Path, run: Mapping[str, Any], fits: Callable[[Any], bool] = lambda _: True) -> None:
        self.path = output.with_name(output.name + ".journal")
        described = json.dumps(run, sort_keys=True, default=str)
        self._fits = fits
        self._key = hashlib.sha256(described.encode()).hexdigest()
        self.results: dict[str, Any] = {}
        self.damaged = 0
        self.other: Path | None = None
        try:
            begun = self._resume()
            self._file = self.path.open("a", encoding="utf-8")
            if not begun:
                self._write(f"{_MAGIC}2 {self._key}\n")
        except OSError as error:
            raise self._unwritten(error, "Choose another place for the output") from error

    def _resume(self) -> bool:
        """Read the results in this run's journal; False if there is none. Another run's journal is set aside."""
        if not self.path.exists():
            return False
        if not self.path.is_file():  # reading a pipe would block
            raise self._foreign()
        with self.path.open("rb") as file:
            first = file.readline(200)
            if not first:
                return False
            if not first.startswith(_MAGIC.encode()):
                raise self._foreign()
            if first != f"{_MAGIC}2 {self._key}\n".encode():
                self.other = set_aside(self.path)
                self.path.unlink()
                return False
            whole = file.tell()
            for line in file:
                if not line.endswith(b"\n"):  # cut off while being written
                    break
                whole += len(line)
                self._keep(line)
        with self.path.open("r+b") as file:
            file.truncate(whole)
        return True

    def _keep(self, line: bytes) -> None:
        check, _, text = line[:-1].partition(b" ")
        try:
            if check.decode() != self._checksum(text):
                raise ValueError
            name, result = json.loads(text, parse_constant=_no_number)
            if not isinstance(name, str) or not self._fits(result):
                raise ValueError
            self.results[name] = result
        except (RecursionError, TypeError, ValueError):
            self.damaged += 1

    def _checksum(self, text: bytes) -> str:
        return hashlib.sha256(self._key.encode() + text).hexdigest()[:16]

    def add(self, name: str, result: Any) -> None:
        """Keep the finished result of one name. Raises `InputError` if it cannot be written: those before it stay."""
        self.results[name] = result
        text = json.dumps([name, result])  # escaped, as the name of a source need not be UTF-8
        try:
            self._write(f"{self._checksum(text.encode())} {text}\n")
        except OSError as error:
            raise self._unwritten(error, "Make room; the same command then resumes the run") from error

    def _write(self, text: str) -> None:
        self._file.write(text)
        self._file.flush()

    def _foreign(self) -> InputError:
        what = "is not a journal of this program, and the run needs this place for one"
        return InputError(Problem(what, "Move it away, or choose another place for the output", str(self.path)))

    def _unwritten(self, error: OSError, remedy: str) -> InputError:
        return InputError(
            Problem(f"the journal of the run cannot be written ({error.strerror or error})", remedy, str(self.path))
        )

    def finish(self) -> None:
        """The output is complete: the journal is no longer needed."""
        self._file.close()
        self.path.unlink(missing_ok=True)

    def __enter__(self) -> Journal:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        with suppress(OSError):  # the failed write was reported; it stays unwritten
            self._file.close()


def _no_number(text: str) -> float:
    """NaN and infinity, which Python reads, are not JSON: no result holds them."""
    raise ValueError(text)
