"""Work done ahead: the same results in whatever order they are asked for, and also where no process helps."""

from __future__ import annotations

import itertools
import multiprocessing
import os
import sys
import time
from collections.abc import Iterator

import pytest

from namescreen import processes
from namescreen.ahead import Ahead
from namescreen.errors import NamescreenError

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="needs processes that can be forked")


def where(number: int) -> tuple[int, int]:
    """Its double, and the process that worked it out."""
    if number == 7:
        raise NamescreenError("not 7")
    return 2 * number, os.getpid()


def end_of(parent: int) -> int:
    """What ends a process that is not the parent."""
    if os.getpid() != parent:
        os._exit(1)
    return parent


def nothing() -> None:
    return None


@pytest.fixture(params=[1, 2])
def helpers(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> int:
    monkeypatch.setattr(processes, "processors", lambda: request.param)
    return int(request.param) - 1


def test_results_are_the_same_whether_expected_asked_twice_or_neither(helpers: int) -> None:
    work = Ahead(where, nothing)
    work.expect([3, 1, 2, 3])
    work.expect([1, 4])
    asked = (2, 9, 1, 4, 3, 3, 1)
    found = [work(number) for number in asked]
    assert [doubled for doubled, _ in found] == [2 * number for number in asked]
    assert ({process for _, process in found} == {os.getpid()}) is (helpers == 0)


def test_more_than_can_wait_is_worked_on_all_the_same(helpers: int) -> None:
    work = Ahead(where, nothing)
    for start in range(10, 5_000, 500):
        work.expect(range(start, start + 500))
    assert [work(number)[0] for number in range(4_999, 10, -7)] == [2 * number for number in range(4_999, 10, -7)]


def test_what_the_work_raises_is_raised_when_it_is_asked_for(helpers: int) -> None:
    work = Ahead(where, nothing)
    work.expect([7, 8])
    assert work(8)[0] == 16
    with pytest.raises(NamescreenError, match="not 7"):
        work(7)


def slowly(number: int) -> int:
    time.sleep(0.05)
    return number


def test_while_a_result_is_waited_for_other_work_is_done(helpers: int) -> None:
    work, steps = Ahead(slowly, nothing), itertools.count()
    assert work(3, steps) == 3
    assert (next(steps) > 0) is bool(helpers)
    assert work(4, iter(())) == 4


def refuse() -> None:
    raise NamescreenError("not ready")


def halved(number: int) -> int:
    if number % 2:
        raise ValueError(number)
    return number // 2


def test_what_fails_beside_is_told_once_by_the_process_that_asks(
    helpers: int, capfd: pytest.CaptureFixture[str]
) -> None:
    work = Ahead(halved, refuse)
    work.expect([4, 3, 6])
    assert (work(4), work(6)) == (2, 3)
    with pytest.raises(ValueError, match="3"):
        work(3)
    assert capfd.readouterr().err == ""


def test_work_goes_on_here_where_the_process_was_ended(helpers: int) -> None:
    work = Ahead(end_of, nothing)
    work.expect([os.getpid()])
    assert work(os.getpid()) == os.getpid()
    assert work(os.getpid()) == os.getpid()


def test_work_goes_on_here_where_the_process_is_ended_while_it_is_waited_for(helpers: int) -> None:
    before = set(multiprocessing.active_children())
    work = Ahead(slowly, nothing)

    def steps() -> Iterator[None]:
        yield
        for process in set(multiprocessing.active_children()) - before:
            process.kill()
            process.join()
        work.expect([5, 6])
        yield from itertools.repeat(None, 50)

    assert work(3, steps()) == 3
    assert work(5) == 5
