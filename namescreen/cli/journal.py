"""A long run that can be stopped and taken up again: finished results, kept beside the output as they come.

The journal is a text file, `OUTPUT.journal`: one line that says which run it belongs to, then one JSON line a
finished name. A run with other names, another register, other options or results of another form begins anew.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import Any

from ..errors import InputError, Problem

__all__ = ["Journal"]


class Journal:
    """The results of one run so far: `results` maps each finished name to its result.

    `run` is whatever makes this run what it is (names, options, digests of the sources, the form of its results), as
    JSON values. `other`: a journal of another run stood here and is begun anew. Raises `InputError` if the journal
    cannot be written.
    """

    def __init__(self, output: Path, run: Mapping[str, Any]) -> None:
        self.path = output.with_name(output.name + ".journal")
        described = json.dumps(run, sort_keys=True, default=str)
        self._first = f"namescreen journal 1 {hashlib.sha256(described.encode()).hexdigest()}\n"
        self.results: dict[str, Any] = {}
        whole = self._read()
        self.other = not whole and self.path.is_file() and self.path.stat().st_size > 0
        try:
            if whole:
                with self.path.open("r+b") as file:
                    file.truncate(whole)  # the last line may have been cut
            else:
                self.path.write_text(self._first, "utf-8")
            self._file = self.path.open("a", encoding="utf-8")
        except OSError as error:
            if not whole:
                with suppress(OSError):
                    self.path.unlink(missing_ok=True)  # begun, but not whole
            raise self._unwritten(error, "Choose another place for the output") from error

    def _read(self) -> int:
        """Take up what is whole, and say how many bytes that is; 0 for another run's journal or none."""
        try:
            raw = self.path.read_bytes()
        except OSError:
            return 0
        if not raw.startswith(self._first.encode()):
            return 0
        whole = len(self._first)
        for line in raw[whole:].splitlines(keepends=True):
            try:
                name, result = json.loads(line)
            except (TypeError, ValueError):
                break
            if not (line.endswith(b"\n") and isinstance(name, str)):
                break
            self.results[name] = result
            whole += len(line)
        return whole

    def add(self, name: str, result: Any) -> None:
        """Keep the finished result of one name. Raises `InputError` if it cannot be written: those before it stay."""
        self.results[name] = result
        # Escaped, as the name of a source need not be UTF-8.
        try:
            self._file.write(json.dumps([name, result]) + "\n")
            self._file.flush()
        except OSError as error:
            raise self._unwritten(error, "Make room; the same command then takes the run up again") from error

    def _unwritten(self, error: OSError, remedy: str) -> InputError:
        return InputError(
            Problem(f"the journal of the run cannot be written ({error.strerror or error})", remedy, str(self.path))
        )

    def finish(self) -> None:
        """The output stands: the journal is no longer needed."""
        self._file.close()
        self.path.unlink(missing_ok=True)

    def __enter__(self) -> Journal:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        with suppress(OSError):  # what could not be written was told, and stays unwritten
            self._file.close()
