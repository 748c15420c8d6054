"""A team: work that is shared out comes back whole and in order, and what goes wrong in a member is told here."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
import time

import pytest

from namescreen import processes, team
from namescreen.errors import NamescreenError
from namescreen.team import shared_out

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="needs processes that can be forked")


@pytest.fixture(autouse=True)
def three_processors(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(processes, "processors", lambda: 3)


_met: list[int] = []


def noted(number: int) -> tuple[int, int, int]:
    """Its double, the process, and how many numbers that one has met."""
    time.sleep(0.01)
    _met.append(number)
    return 2 * number, os.getpid(), len(_met)


def refuse_seven(number: int) -> int:
    if number == 7:
        raise ValueError("not 7")
    return number


def ended_elsewhere(parent: int) -> None:
    if os.getpid() == parent:
        time.sleep(0.05)
    else:
        os.kill(os.getpid(), signal.SIGKILL)


def shared_within(number: int) -> int:
    return sum(shared_out(refuse_seven, range(number)))


def test_results_come_in_order_from_processes_that_keep_what_they_met() -> None:
    with team.team(3) as members:
        assert members
        for _ in range(3):
            found = list(shared_out(noted, range(30)))
            assert [doubled for doubled, _, _ in found] == list(range(0, 60, 2))
    assert {len({process for _, process, _ in found})} == {3}
    assert sum({process: met for _, process, met in found}.values()) == 90


def test_members_may_be_done_before_this_process_is() -> None:
    with team.team(2):
        for _ in range(50):  # in most of which the member comes too late for any item
            assert list(shared_out(time.sleep, [0, 0.01])) == [None, None]


def test_more_items_than_a_pipe_holds_are_done_here() -> None:
    many = range(20_000)
    with team.team(3):
        assert list(shared_out(abs, many)) == list(many)


def test_without_a_team_all_is_done_here(monkeypatch: pytest.MonkeyPatch) -> None:
    assert list(shared_out(lambda number: number, range(3))) == [0, 1, 2]  # what cannot be pickled, too
    monkeypatch.setattr(processes, "process_context", lambda: multiprocessing.get_context("spawn"))
    with team.team(3) as members:
        assert not members
        assert {process for _, process, _ in shared_out(noted, range(9))} == {os.getpid()}


def test_work_that_is_shared_out_shares_out_nothing() -> None:
    with team.team(3), team.team(2) as members:
        assert members
        assert list(shared_out(shared_within, [3, 4, 5])) == [3, 6, 10]


def test_an_error_ends_the_team_and_work_goes_on_here() -> None:
    with team.team(3):
        with pytest.raises(ValueError, match="not 7"):
            list(shared_out(refuse_seven, range(30)))
        assert {process for _, process, _ in shared_out(noted, range(9))} == {os.getpid()}
    assert not multiprocessing.active_children()


def test_results_that_nobody_waits_for_leave_no_process() -> None:
    with team.team(3):
        results = shared_out(noted, range(30))
        assert next(results)[0] == 0
    results.close()  # type: ignore[attr-defined]
    assert not multiprocessing.active_children()


def test_a_member_that_is_killed_is_noticed() -> None:
    with team.team(3), pytest.raises(NamescreenError, match="worker process was ended"):
        list(shared_out(ended_elsewhere, [os.getpid()] * 9))


def test_a_member_that_is_killed_between_two_pieces_of_work_is_noticed() -> None:
    with team.team(3):
        for process in multiprocessing.active_children():
            process.kill()
            process.join()
        with pytest.raises(NamescreenError, match="worker process was ended"):
            list(shared_out(noted, range(9)))


def test_what_was_put_off_is_done_once_while_others_work() -> None:
    done: list[int] = []
    team.while_waiting(lambda: done.append(os.getpid()))
    with team.team(3):
        for _ in range(3):
            assert len(list(shared_out(noted, range(7)))) == 7
    assert done == [os.getpid()]
