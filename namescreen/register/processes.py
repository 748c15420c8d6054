"""All processors at once: how worker processes are started."""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from multiprocessing.context import BaseContext
from typing import Any, TypeVar

__all__ = ["begin_worker", "beside", "fork_or_spawn", "processors", "without_collection"]

Item = TypeVar("Item")
Result = TypeVar("Result")


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def fork_or_spawn() -> BaseContext:
    """A fork where it is safe, which is quick and shares what is loaded; beside other threads a fresh process."""
    safe = sys.platform == "linux" and threading.active_count() == 1
    return multiprocessing.get_context("fork" if safe else "spawn")


def begin_worker() -> None:
    """Leave Ctrl-C to the parent, which ends its workers, and what was there before out of searches for garbage."""
    gc.freeze()
    signal.signal(signal.SIGINT, signal.SIG_IGN)


@contextmanager
def beside(work: Callable[[Item], Result], item: Item) -> Iterator[Callable[[], Result]]:
    """`work` on `item` in a process of its own, and the way to wait for its result. The process ends with the block.

    It is started without a thread, unlike a pool's: more processes can still be forked beside it.
    """
    context = fork_or_spawn()
    receiver, sender = context.Pipe(duplex=False)
    process = context.Process(target=_send, args=(sender, work, item), daemon=True)  # type: ignore[attr-defined]
    process.start()
    sender.close()
    try:
        yield lambda: _received(receiver)
    finally:
        process.terminate()
        process.join()
        receiver.close()


def _send(sender: Connection, work: Callable[[Item], Result], item: Item) -> None:
    begin_worker()
    try:
        result: object = work(item)
    except Exception as error:
        result = error
    sender.send((isinstance(result, Exception), result))


def _received(receiver: Connection) -> Any:
    failed, result = receiver.recv()
    if failed:
        raise result
    return result


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
