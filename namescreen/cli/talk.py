"""Remarks and progress while the program works, all on stderr."""

from __future__ import annotations

import io
import os
import shutil
import signal
import sys
import threading
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, redirect_stdout
from types import FrameType
from typing import TextIO, TypeVar

from namescreen.errors import Interrupted
from namescreen.plain_text import bounded, visible, wrapped

__all__ = ["Progress", "at_once", "counted", "kept", "on_terminal", "progress", "say"]

Item = TypeVar("Item")

Progress = Callable[[int, int | None], None]
"""Called with the amount done and the total (None: not known)."""

PATIENCE = 1.0
"""Seconds of work before a bar appears."""
MOST_REMARKS = 20
USUAL = 80
"""Columns of a line where nobody says how many there are."""


def say(*remarks: str) -> None:
    """Write remarks to stderr, a line each; past twenty, only their number."""
    for remark in remarks[:MOST_REMARKS]:
        sys.stderr.write(on_terminal(bounded(visible(remark))) + "\n")
    if len(remarks) > MOST_REMARKS:
        sys.stderr.write(f"... and {len(remarks) - MOST_REMARKS} more remarks like these.\n")
    sys.stderr.flush()


def on_terminal(text: str) -> str:
    """`text` folded between words where a terminal shows it, or COLUMNS asks for fewer than the usual; a path stays
    whole, so that it can be copied."""
    asked = os.environ.get("COLUMNS", "")
    if not sys.stderr.isatty() and not (asked.isdecimal() and int(asked) < USUAL):
        return text
    columns = shutil.get_terminal_size().columns
    return "\n".join(wrapped(text, max(20, columns), break_long_words=False, break_on_hyphens=False))


@contextmanager
def progress(label: str) -> Iterator[Progress]:
    """A bar with rate and time left, shown on a terminal once the work has taken a second, whether or not anything is
    done by then: the first item takes longest, as its words are met for the first time."""
    if not sys.stderr.isatty():
        yield lambda done, total: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, TextColumn, TimeRemainingColumn
    from rich.progress import Progress as Bar

    bar = Bar(
        TextColumn("{task.description}"),
        BarColumn(),
        MofNCompleteColumn(),
        TextColumn("{task.fields[rate]}"),
        TimeRemainingColumn(),
        console=Console(stderr=True),
        transient=True,
        redirect_stdout=sys.stdout.isatty(),  # data for a pipe or a file must not be taken above the bar
    )
    started = time.monotonic()
    task = bar.add_task(label, total=None, rate="")
    waiting = threading.Timer(PATIENCE, bar.start)
    waiting.daemon = True

    def advance(done: int, total: int | None) -> None:
        rate = f"{done / max(PATIENCE, time.monotonic() - started):,.0f}/s"
        bar.update(task, completed=done, total=total, rate=rate)

    waiting.start()
    try:
        yield advance
    finally:
        waiting.cancel()
        waiting.join()
        if bar.live.is_started:  # else it would leave an empty line where no bar can move (TERM=dumb)
            bar.stop()


class _Held(io.StringIO):
    """What is written while it is held back; it says of itself what the real output does."""

    def __init__(self, real: TextIO) -> None:
        super().__init__()
        self._real = real

    def isatty(self) -> bool:
        return self._real.isatty()


@contextmanager
def at_once() -> Iterator[None]:
    """What is written to stdout inside goes out in one piece at the end, also where that is an error: a bar that stands
    below it is drawn again for each piece."""
    real = sys.stdout
    if not real.isatty():
        yield
        return
    held = _Held(real)
    try:
        with redirect_stdout(held):
            yield
    finally:
        real.write(held.getvalue())
        real.flush()


def counted(items: Iterable[Item], total: int | None, label: str) -> Iterator[Item]:
    """`items`, with a progress bar that counts them."""
    with progress(label) as advance:
        for done, item in enumerate(items, 1):
            yield item
            advance(done, total)


def kept(items: Iterable[Item], total: int, told: str) -> Iterator[Item]:
    """`items`, one by one, for a loop that writes each: Ctrl-C waits until the one in hand is written whole.

    Raises `Interrupted`, which says how many of `total` were finished, and `told`, what became of them.
    """
    writing = stopped = False
    done = 0

    def stop(number: int, frame: FrameType | None) -> None:
        nonlocal stopped
        stopped = True
        if not writing:
            raise KeyboardInterrupt

    before = signal.signal(signal.SIGINT, stop)
    try:
        for item in items:
            writing = True
            yield item
            writing = False
            done += 1
            if stopped:
                raise KeyboardInterrupt
    except KeyboardInterrupt:
        raise Interrupted(f"Stopped after {done:,} of {total:,} {told}") from None
    finally:
        signal.signal(signal.SIGINT, before)
