"""Work on all processors: worker processes that end with this one, and an error where one of them is ended.

What costs to import (the standard library's pools: 20 ms) is imported where a process is started.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
import threading
from collections import deque
from collections.abc import Callable, Generator, Iterable, Iterator
from contextlib import contextmanager
from itertools import islice
from typing import TYPE_CHECKING, Any, TypeVar

from .errors import NamescreenError

if TYPE_CHECKING:
    from concurrent.futures import Future
    from multiprocessing.connection import Connection
    from multiprocessing.context import BaseContext

__all__ = [
    "begin", "beside", "can_fork", "in_workers", "on_all_processors", "process_context", "processors", "received",
    "running", "uninterrupted", "without_collection",
]  # fmt: skip

Item = TypeVar("Item")
Result = TypeVar("Result")

ENDED = (
    "a worker process was ended before its work was done, as systems do that run out of memory. Try again with less "
    "running beside it, or with fewer marks or names at a time"
)


_is_worker = False
TASKS_AHEAD = 4
"""Tasks for each processor that wait or run while a result is taken."""


def processors() -> int:
    """How many processors this process may use; a worker process has one."""
    if _is_worker:
        return 1
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def process_context() -> BaseContext:
    """Fork where that is safe, because it is quick and shares loaded data; beside other threads start fresh
    processes."""
    import multiprocessing

    safe = sys.platform == "linux" and threading.active_count() == 1
    return multiprocessing.get_context("fork" if safe else "spawn")


def in_workers(
    work: Callable[[Item], Result],
    items: Iterable[Item],
    *,
    at_once: int = 1,
    most: int | None = None,
    context: BaseContext | None = None,
    start: Callable[..., None] | None = None,
    given: tuple[object, ...] = (),
) -> Generator[Result, None, None]:
    """Apply `work` to every item, `at_once` at a time on each processor, or on `most` processors; gives the results in
    the order of the items, which are taken as they are needed.

    Every worker calls `start` on what is `given` first. Raises `NamescreenError` if a worker is ended from outside.
    """
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool

    workers = min(processors(), most or processors())
    executor = ProcessPoolExecutor(workers, context or process_context(), begin, (start, given))
    tasks: deque[Future[list[Result]]] = deque()
    rest = iter(items)
    try:
        while part := list(islice(rest, at_once)):
            with uninterrupted():
                tasks.append(executor.submit(_each, work, part))
            if len(tasks) > TASKS_AHEAD * processors():
                yield from tasks.popleft().result()
        while tasks:
            yield from tasks.popleft().result()
    except BrokenProcessPool:
        raise NamescreenError(ENDED) from None
    finally:
        executor.shutdown(cancel_futures=True)


@contextmanager
def uninterrupted() -> Iterator[None]:
    """Put off Ctrl-C while processes are started: Python reports one amid a fork as an error that it ignored."""
    if not hasattr(signal, "pthread_sigmask"):  # Windows, which cannot fork
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


_work: Callable[[Any], Any] | None = None
"""What a worker does to every item, where it has it from its parent."""


def on_all_processors(
    work: Callable[[Item], Result],
    items: Iterable[Item],
    *,
    at_once: int = 1,
    most: int | None = None,
    anew: tuple[Callable[..., Callable[[Item], Result]], tuple[object, ...]] | None = None,
) -> Iterator[Result]:
    """As `in_workers`, for work that holds much: forked workers share it, other ones make it `anew`, by a function and
    what it is given. In this process where there is one processor, or neither can be done."""
    context = process_context() if processors() > 1 else None
    if context is None or (context.get_start_method() != "fork" and anew is None):
        yield from map(work, items)
        return
    global _work
    _work = work
    start, given = (None, ()) if context.get_start_method() == "fork" else (_make_work, anew or ())
    yield from in_workers(_do_work, items, at_once=at_once, most=most, context=context, start=start, given=given)


def _make_work(make: Callable[..., Callable[[Any], Any]], given: tuple[object, ...]) -> None:
    global _work
    _work = make(*given)


def _do_work(item: Any) -> Any:
    assert _work is not None
    return _work(item)


def _each(work: Callable[[Item], Result], items: list[Item]) -> list[Result]:
    return list(map(work, items))


def begin(start: Callable[..., None] | None = None, given: tuple[object, ...] = ()) -> None:
    """Set up a worker: it leaves Ctrl-C to its parent, ends with it, and collects no garbage: what it makes is mostly
    kept for what comes later, to go through it takes a twenty-fifth of a screening, and next to nothing is found."""
    global _is_worker
    _is_worker = True
    gc.freeze()
    gc.disable()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    if start is not None:
        start(*given)


def _end_with_parent() -> None:
    from multiprocessing import parent_process
    from multiprocessing.connection import wait

    parent = parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)


def can_fork() -> bool:
    """Whether there is a second processor, and a process can be forked to use it."""
    return processors() > 1 and process_context().get_start_method() == "fork"


@contextmanager
def beside(work: Callable[[Item], Result], item: Item) -> Iterator[Callable[[], Result]]:
    """As `running`, but in this process, when the result is asked for, where there is one processor or no process can
    be forked."""
    if can_fork():
        with running(work, item) as result:
            yield result
    else:
        yield lambda: work(item)


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
    with uninterrupted():
        process.start()
    sender.close()
    try:
        yield lambda: received(receiver)
    finally:
        process.terminate()
        process.join()
        receiver.close()


def _send(sender: Connection, work: Callable[[Item], Result], item: Item) -> None:
    begin()
    try:
        result: object = work(item)
    except Exception as error:
        result = error
    sender.send((isinstance(result, Exception), result))


def received(receiver: Connection) -> Any:
    """What a process sent: whether it failed, and the result or the error, which is raised here."""
    try:
        failed, result = receiver.recv()
    except (EOFError, ConnectionError):
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
