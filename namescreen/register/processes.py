"""All processors at once: how worker processes are started."""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from multiprocessing.context import BaseContext

__all__ = ["fork_or_spawn", "ignore_interrupt", "processors", "without_collection"]


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def fork_or_spawn() -> BaseContext:
    """A fork where it is safe, which is quick and shares what is loaded; beside other threads a fresh process."""
    safe = sys.platform == "linux" and threading.active_count() == 1
    return multiprocessing.get_context("fork" if safe else "spawn")


def ignore_interrupt() -> None:
    """Leave Ctrl-C to the parent, which ends its workers."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


@contextmanager
def without_collection() -> Iterator[None]:
    """No search for cycles of garbage meanwhile, here and in workers forked from here: work that makes millions of
    small tuples, and no cycles, spends a third of its time on it."""
    enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if enabled:
            gc.enable()
