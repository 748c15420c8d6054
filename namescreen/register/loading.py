"""Loading registers: read any list of marks, prepare a large one once, open it, describe it."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Collection, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import asdict, fields
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from ..errors import DataError, InputError, Problem
from ..files import sha256_of
from ..marks.columns import MarkWriter
from ..marks.fields import chosen_columns
from ..marks.sources import files_of
from ..marks.status import STATUSES
from ..marks.tally import Source
from ..tables import wordlists_folder
from . import store
from .register import Register
from .scope import open_arrays
from .store import VERSION, damage_reported, is_prepared, verify, write_store

if TYPE_CHECKING:
    from ..marks.reader import Progress

__all__ = ["About", "info", "open_prepared", "prepare", "read_register"]

Made = TypeVar("Made")

WORTH_CACHING = 20
"""Marks from which a plain list, once prepared, is kept in the user's cache folder, which nobody else may read."""
LARGE = 1 << 20
"""Bytes of a large list: these are kept apart, so that no number of small ones takes their places."""
MOST_CACHED = {"prepared": 8, "lists": 32}
"""Prepared lists kept there, large and small ones; the oldest goes first."""


def read_register(
    sources: Path | str | Sequence[Path | str],
    *,
    column: Sequence[str] | str | None = None,
    encoding: str | None = None,
    classes: Iterable[int] | None = None,
    live_only: bool = False,
    office: str | Collection[str] | None = None,
    since: str | None = None,
    until: str | None = None,
    progress: Progress | None = None,
) -> Register:
    """The marks of `sources`: files and folders of text, CSV, TSV, JSON Lines or the files that offices publish (see
    `marks.formats`), as they are or as gzip or zip, and prepared registers. Of several records of one mark (office and
    number) the last counts.

    `column` names the column of the marks where it is not recognised, or as "FIELD=NAME" that of any field, `encoding`
    that of text files where UTF-8 is wrong. The filters leave out only marks that state otherwise: those with no Nice
    class among `classes`, dead ones (`live_only`), those of another `office`, and those whose filing date (registration
    date where no filing date is stated) is before `since` or after `until` (YYYY-MM-DD).

    Raises `InputError` if a source cannot be read or holds no mark; single bad rows are among
    `Register.problems`. Raises `DataError` for a prepared register that is damaged or of another version.
    """
    paths = [Path(sources)] if isinstance(sources, (str, Path)) else [Path(source) for source in sources]
    if len(paths) == 1 and is_prepared(paths[0]):
        register = open_prepared(paths[0])
    else:
        register = _read(paths, column, encoding, progress)
    if classes is None and not live_only and office is None and since is None and until is None:
        return register
    return register.only(classes=classes, live_only=live_only, office=office, since=since, until=until)


def _read(
    paths: Sequence[Path], column: Sequence[str] | str | None, encoding: str | None, progress: Progress | None
) -> Register:
    prepared = [open_prepared(path) for path in paths if is_prepared(path)]
    plain = [path for path in paths if not is_prepared(path)]
    if len(prepared) == 1 and not plain:
        return prepared[0]
    if prepared:
        return _joined(prepared, plain, column, encoding, progress)
    digests = {path: sha256_of(path) for path in files_of(plain)}
    kept = _cached(digests, column, encoding)
    try:
        return open_prepared(kept)
    except DataError:  # missing or damaged: it is made again
        return _read_plain(plain, kept, digests, column, encoding, progress)


def _read_plain(
    paths: Sequence[Path],
    kept: Path,
    digests: dict[Path, str],
    column: Sequence[str] | str | None,
    encoding: str | None,
    progress: Progress | None,
) -> Register:
    def save(register: Register) -> Path | None:
        with suppress(InputError, OSError):  # a cache that cannot be written costs time, not the result
            kept.parent.mkdir(parents=True, exist_ok=True)
            kept.parent.chmod(0o700)
            newest = sorted(kept.parent.glob("*.nsr"), key=lambda file: -file.stat().st_mtime)
            for old in newest[MOST_CACHED[kept.parent.name] - 1 :]:
                old.unlink()
            _write(register, kept)
            return kept
        return None

    from ..marks import read_marks

    columns, sources, problems = read_marks(paths, column=column, encoding=encoding, digests=digests, progress=progress)
    worth = len(columns) >= WORTH_CACHING
    return Register(columns, sources, problems, save=save if worth else None)


def _joined(
    prepared: Sequence[Register],
    plain: Sequence[Path],
    column: Sequence[str] | str | None,
    encoding: str | None,
    progress: Progress | None,
) -> Register:
    """Prepared registers and plain lists as one; a later record of a mark takes the place of an earlier one."""
    from ..marks import read_marks

    writer = MarkWriter()
    for register in prepared:
        writer.take(register.columns)
    sources = [source for register in prepared for source in register.sources]
    problems = [problem for register in prepared for problem in register.problems]
    if plain:
        columns, more, wrong = read_marks(plain, column=column, encoding=encoding, progress=progress, onto=writer)
        sources.extend(more)
        problems.extend(wrong)
    else:
        columns = writer.columns()
    return Register(columns, sources, problems, base=prepared[0].index())


def _cached(digests: Mapping[Path, str], column: Sequence[str] | str | None, encoding: str | None) -> Path:
    """Where a list of these contents is kept once it is prepared."""
    from .. import __version__

    what = json.dumps(
        [
            [(str(path), digest) for path, digest in digests.items()],
            chosen_columns(column),
            encoding,
            __version__,
            VERSION,
            _installed(),
        ]
    )
    folder = "lists" if sum(path.stat().st_size for path in digests) < LARGE else "prepared"
    return store.user_cache() / folder / f"{hashlib.sha256(what.encode()).hexdigest()[:32]}.nsr"


def _installed() -> str:
    """What tells this program and its tables from others of the same version, as those of a developer are: the size
    and the time of every file."""
    found = hashlib.sha256()
    for folder in (Path(__file__).parents[1], wordlists_folder()):
        for place, _, names in sorted(os.walk(folder)):
            for name in sorted(names):
                if name.endswith((".py", ".tsv", ".npy", ".so")):
                    state = Path(place, name).stat()
                    found.update(f"{name} {state.st_size} {state.st_mtime_ns} ".encode())
    return found.hexdigest()


def prepare(
    sources: Path | str | Sequence[Path | str],
    output: Path | str,
    *,
    column: Sequence[str] | str | None = None,
    encoding: str | None = None,
    progress: Progress | None = None,
) -> About:
    """Read `sources` and write them as one prepared register at `output`, which opens at once whatever its
    size.

    A prepared register among the sources is taken over as it is, and newer marks with the same number and
    office replace its own: so a newer file updates it without doing everything again. The file is written
    beside `output` and renamed. Raises `InputError` as `read_register` does, and if `output` cannot be
    written.
    """
    target = Path(output)
    if target.is_dir() or not target.parent.is_dir():
        raise InputError(
            Problem(
                "is a folder" if target.is_dir() else "lies in a folder that does not exist",
                "Name a file to write, such as marks.nsr",
                str(target),
            )
        )
    register = read_register(sources, column=column, encoding=encoding, progress=progress)
    _write(register, target, progress)
    return info(target)


def _write(register: Register, target: Path, progress: Progress | None = None) -> None:
    write_store(target, {**register.columns.arrays, **register.index(progress).arrays}, _about(register))


def _about(register: Register) -> Mapping[str, Any]:
    return {
        "marks": len(register.columns),
        "sources": [asdict(source) for source in register.sources],
        "problems": [asdict(problem) for problem in register.problems],
        "source_names": register.columns.sources,
        "offices": register.columns.offices,
    }


def open_prepared(path: Path | str) -> Register:
    """The register prepared at `path`, mapped, not read: see `prepare`.

    Raises `DataError`, with the remedy, if it is missing, cut, damaged or of another version.
    """
    path = Path(path)
    columns, arrays, about = open_arrays(path)
    with damage_reported(path):
        sources = [_made(Source, source) for source in about["sources"]]
        problems = [_made(Problem, problem) for problem in about["problems"]]
        return Register(columns, sources, problems, arrays=arrays, path=path)


def _made(kind: type[Made], values: Mapping[str, Any]) -> Made:
    """A record from the values that a prepared register states; raises TypeError if one is of another type."""
    for field in fields(kind):  # type: ignore[arg-type]
        value = values[field.name]
        if not isinstance(value, int if "int" in str(field.type) else str) and (
            value is not None or "None" not in str(field.type)
        ):
            raise TypeError(f"its {kind.__name__.lower()} has a wrong {field.name}")
    return kind(**values)


class About(NamedTuple):
    """What a prepared register holds."""

    path: Path
    version: int
    marks: int
    bytes: int
    sources: tuple[Source, ...]
    problems: tuple[Problem, ...]
    classes: Mapping[int, int]
    statuses: Mapping[str, int]
    offices: Mapping[str, int]


def info(path: Path | str) -> About:
    """What the prepared register at `path` holds, every byte of it checked; raises `DataError` if it is not
    whole."""
    import numpy as np

    path = Path(path)
    if not path.exists():
        raise DataError(path, "does not exist", f"Make it with: namescreen register prepare SOURCE... --output {path}")
    register = open_prepared(path)
    verify(path)
    arrays = register.columns.arrays
    masks = arrays["classes"].astype(np.uint64)
    counts = {n: int(((masks >> np.uint64(n)) & np.uint64(1)).sum()) for n in range(1, 46)}
    offices = np.bincount(arrays["office"], minlength=len(register.columns.offices))
    return About(
        path=path,
        version=VERSION,
        marks=len(register.columns),
        bytes=path.stat().st_size,
        sources=register.sources,
        problems=register.problems,
        classes={n: count for n, count in counts.items() if count},
        statuses=dict(zip(STATUSES, np.bincount(arrays["status"], minlength=len(STATUSES)).tolist(), strict=True)),
        offices={office: int(n) for office, n in zip(register.columns.offices, offices, strict=True) if office and n},
    )
