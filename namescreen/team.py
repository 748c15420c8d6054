"""A team: processes forked once, which take part in one piece of work after another, and keep what they met.

The pools of `processes` are forked for one piece of work. Where little is to be done, to fork costs as much as the
work: from then on every page of memory that a process touches is copied, and what its workers met is lost with them.
"""

from __future__ import annotations

import os
import pickle
import struct
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING, TypeVar

from . import processes
from .errors import NamescreenError

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess

__all__ = ["shared_out", "team", "while_waiting"]

Item = TypeVar("Item")
Result = TypeVar("Result")


class _Team:
    """Processes forked once, which take turns with this one at the items of one piece of work after another."""

    def __init__(self, members: int) -> None:
        context = processes.process_context()
        self._next, self._turns = os.pipe()
        self._members: dict[Connection, BaseProcess] = {}
        self.busy = False
        for _ in range(members):
            link, theirs = context.Pipe()
            process = context.Process(target=_take_part, args=(theirs, self._next), daemon=True)  # type: ignore[attr-defined]
            with processes.uninterrupted():
                process.start()
            theirs.close()
            self._members[link] = process

    def results(self, work: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result]:
        """The results in order, as they come."""
        from multiprocessing.connection import wait

        found: dict[int, Result] = {}
        given = 0
        mine, working = True, set(self._members)
        self.busy = True
        try:
            self._tell(work, items)
            os.write(self._turns, b"".join(map(_TURN.pack, [*range(len(items)), *[-1] * (len(working) + 1)])))
            while mine or working:
                at = _turn(self._next) if mine else -1
                mine = at >= 0
                if mine:
                    found[at] = work(items[at])
                elif _put_off:
                    _put_off.pop()()
                for link in wait(working, timeout=0 if mine or not working else None):
                    told = processes.received(link)  # type: ignore[arg-type]
                    if told is None:
                        working.remove(link)  # type: ignore[arg-type]
                    else:
                        found[told[0]] = told[1]
                while given in found:
                    yield found.pop(given)
                    given += 1
        finally:
            self.busy = False
            if mine or working:  # the work ended early, and nobody will take the turns that are left
                self.end()

    def _tell(self, work: Callable[[Item], Result], items: Sequence[Item]) -> None:
        """Give all members their next work."""
        message = pickle.dumps((work, items))
        for link in self._members:
            try:
                link.send_bytes(message)
            except ConnectionError:
                raise NamescreenError(processes.ENDED) from None

    def end(self) -> None:
        """End the members; what is to be done then is done in this process."""
        global _team
        if _team is self:
            _team = None
            for link, process in self._members.items():
                process.terminate()
                process.join()
                link.close()
            os.close(self._next)
            os.close(self._turns)


_team: _Team | None = None
_put_off: list[Callable[[], object]] = []
_TURN = struct.Struct("i")
MOST_TURNS = 1 << 10
"""The most items that a team takes turns at: their numbers have to fit into a pipe, in which Linux keeps 64 KB."""


def _leave() -> None:
    """A forked process shares out nothing to the team of its parent."""
    global _team
    _team = None


if hasattr(os, "register_at_fork"):  # not on Windows, which cannot fork
    os.register_at_fork(after_in_child=_leave)


def _turn(turns: int) -> int:
    """The number of the item whose turn is next, -1 if none is left for this process."""
    found: int = _TURN.unpack(os.read(turns, _TURN.size))[0]
    return found


def _take_part(link: Connection, turns: int) -> None:
    """Work as a member of a team."""
    processes.begin()
    while True:
        work, items = link.recv()
        while (at := _turn(turns)) >= 0:
            try:
                link.send((False, (at, work(items[at]))))
            except Exception as error:
                link.send((True, error))
        link.send((False, None))


@contextmanager
def team(most: int) -> Iterator[bool]:
    """Within the block further processes, `most` with this one, take part in what is `shared_out`. They are forked
    once, and keep what they met; a block within another one uses the same. Gives whether there are any: else all is
    done here."""
    global _team
    if _team is not None or most < 2 or not processes.can_fork():
        yield _team is not None
        return
    _team = mine = _Team(min(processes.processors(), most) - 1)
    try:
        yield True
    finally:
        mine.end()


def while_waiting(work: Callable[[], object]) -> None:
    """Have `work`, whose result nobody needs, done when this process first waits for the others of a team; never if it
    does not."""
    _put_off[:] = [work]


def shared_out(work: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result]:
    """Apply `work` to every item, in this process and those of the `team`, whichever has nothing to do; gives the
    results in order. Work and items are pickled. Work that is itself shared out shares out nothing."""
    if _team is None or _team.busy or not 1 < len(items) <= MOST_TURNS:
        return map(work, items)
    return _team.results(work, items)
