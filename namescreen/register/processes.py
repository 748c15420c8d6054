"""Work on all processors: worker processes that end with this one, and an error where one of them is ended."""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import sys
import threading
from collections import deque
from collections.abc import Callable, Generator, Iterable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from itertools import islice
from multiprocessing.connection import Connection, wait
from multiprocessing.context import BaseContext
from typing import Any, TypeVar

from ..errors import NamescreenError

__all__ = ["in_workers", "process_context", "processors", "running", "without_collection"]

Item = TypeVar("Item")
Result = TypeVar("Result")

ENDED = (
    "a worker process was ended before its work was done, as systems do that run out of memory. Try again with less "
    "running beside it, or with fewer marks or names at a time"
)


TASKS_AHEAD = 4
"""Tasks for each processor that wait or run while a result is taken."""


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def process_context() -> BaseContext:
    """Fork where that is safe, because it is quick and shares loaded data; beside other threads start fresh
    processes."""
    safe = sys.platform == "linux" and threading.active_count() == 1
    return multiprocessing.get_context("fork" if safe else "spawn")


def in_workers(
    work: Callable[[Item], Result],
    items: Iterable[Item],
    *,
    at_once: int = 1,
    context: BaseContext | None = None,
    start: Callable[..., None] | None = None,
    given: tuple[object, ...] = (),
) -> Generator[Result, None, None]:
    """Apply `work` to every item, `at_once` at a time on each processor; gives the results in the order of the items,
    which are taken as they are needed.

    Every worker calls `start` on what is `given` first. Raises `NamescreenError` if a worker is ended from outside.
    """
    executor = ProcessPoolExecutor(processors(), context or process_context(), _begin, (start, given))
    tasks: deque[Future[list[Result]]] = deque()
    rest = iter(items)
    try:
        while part := list(islice(rest, at_once)):
            tasks.append(executor.submit(_each, work, part))
            if len(tasks) > TASKS_AHEAD * processors():
                yield from tasks.popleft().result()
        while tasks:
            yield from tasks.popleft().result()
    except BrokenProcessPool:
        raise NamescreenError(ENDED) from None
    finally:
        executor.shutdown(cancel_futures=True)


def _each(work: Callable[[Item], Result], items: list[Item]) -> list[Result]:
    return list(map(work, items))


def _begin(start: Callable[..., None] | None = None, given: tuple[object, ...] = ()) -> None:
    """Set up a worker: it leaves Ctrl-C to its parent, ends with it, and keeps existing objects out of garbage
    collection."""
    gc.freeze()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    if start is not None:
        start(*given)


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)


@contextmanager
def running(work: Callable[[Item], Result], item: Item) -> Iterator[Callable[[], Result]]:
    """Run `work` on `item` in a separate process; gives a function that waits for the result. The process ends with the
    block.

    Unlike an executor it starts no thread here, so that further processes can still be forked. Waiting raises what
    `work` raised, or `NamescreenError` if the process was ended from outside.
    """
    context = process_context()
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
    _begin()
    try:
        result: object = work(item)
    except Exception as error:
        result = error
    sender.send((isinstance(result, Exception), result))


def _received(receiver: Connection) -> Any:
    try:
        failed, result = receiver.recv()
    except EOFError:
        raise NamescreenError(ENDED) from None
    if failed:
        raise result
    return result


@contextmanager
def without_collection() -> Iterator[None]:
    """Switch garbage collection off, here and in workers forked from here: work that makes millions of small tuples,
    and no cycles, spends a third of its time on it."""
    enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if enabled:
            gc.enable()
