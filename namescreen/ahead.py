"""Work that will soon be asked for, done in a process beside this one while this one gets there."""

from __future__ import annotations

import weakref
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from . import processes

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess

__all__ = ["Ahead"]

Item = TypeVar("Item")
Result = TypeVar("Result")

MOST_WAITING = 100
"""Items whose results are not taken yet: both have to fit into a pipe."""
_DONE, _STEPS = object(), 8
"""So many steps are taken before it is asked whether a result is there, which takes as long as one."""
_NOTHING: Iterator[object] = iter(())


class Ahead(Generic[Item, Result]):
    """A function whose results are worked out before they are asked for, as far as that can be: `expect` items, then
    call it with each. All is done in this process where there is one processor, or no process can be forked; the
    results are the same.

    The process starts with `get_ready`, whose result nobody needs, does what was called for before what is expected,
    and ends with this object.
    """

    def __init__(self, work: Callable[[Item], Result], get_ready: Callable[[], object]) -> None:
        self._work = work
        self._waiting: set[Item] = set()
        self._done: dict[Item, Result] = {}
        self._link: Connection | None = None
        if processes.can_fork():
            context = processes.process_context()
            self._link, theirs = context.Pipe()
            process = context.Process(target=_serve, args=(theirs, work, get_ready), daemon=True)  # type: ignore[attr-defined]
            with processes.uninterrupted():
                process.start()
            theirs.close()
            weakref.finalize(self, _end, process, self._link)

    def expect(self, items: Iterable[Item]) -> None:
        """Say which items will likely be called for, the soonest first; more than can wait are passed over."""
        new = [item for item in dict.fromkeys(items) if item not in self._done and item not in self._waiting]
        self._tell(new[: MOST_WAITING - len(self._waiting)], soon=False)

    def __call__(self, item: Item, meanwhile: Iterator[object] = _NOTHING) -> Result:
        """The result for `item`; raises what the work raises. Takes steps of `meanwhile` while it has to wait."""
        if item not in self._done:
            self._tell([item], soon=True)
        while (link := self._link) is not None and item in self._waiting:  # which a step may find broken
            try:
                while not link.poll() and all(next(meanwhile, _DONE) is not _DONE for _ in range(_STEPS)):
                    pass
                done, failed, result = link.recv()
            except (EOFError, ConnectionError):  # the process was ended: what is left is done here
                self._link = None
            else:
                self._waiting.discard(done)
                if not failed:
                    self._done[done] = result
        return self._done.pop(item) if item in self._done else self._work(item)

    def _tell(self, items: list[Item], *, soon: bool) -> None:
        if self._link is None or not items:
            return
        try:
            self._link.send((soon, items))
        except ConnectionError:
            self._link = None
        else:
            self._waiting.update(items)


def _serve(link: Connection, work: Callable[[Item], object], get_ready: Callable[[], object]) -> None:
    """Work on the items of a link, those that are called for soon first."""
    processes.begin()
    with suppress(Exception):  # a damaged table: it is met, and told, where the work is asked for
        get_ready()
    waiting: dict[Any, None] = {}
    while True:
        while not waiting or link.poll():
            soon, items = link.recv()
            new = dict.fromkeys(items)
            waiting = new | waiting if soon else waiting | new
        item = next(iter(waiting))
        del waiting[item]
        try:
            link.send((item, False, work(item)))
        except Exception:  # it is raised in the process that asks
            link.send((item, True, None))


def _end(process: BaseProcess, link: Connection) -> None:
    process.terminate()
    process.join()
    link.close()
