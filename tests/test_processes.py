"""Work on several processes: in order, ended with its parent, and an error where a worker is ended from outside."""

from __future__ import annotations

import multiprocessing
import os
import signal
import subprocess
import sys
import time
from functools import partial
from operator import mul
from pathlib import Path

import pytest

from namescreen import processes
from namescreen.errors import DataError, InputError, NamescreenError, Problem
from namescreen.processes import beside, in_workers, on_all_processors, running

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="looks at processes in /proc")


def double(number: int) -> int:
    return 2 * number


def end_at_three(number: int) -> int:
    if number == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def refuse(number: int) -> int:
    raise ValueError(f"not {number}")


@pytest.fixture(autouse=True)
def two_processors(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(processes, "processors", lambda: 2)


def test_results_come_in_order() -> None:
    assert list(in_workers(double, range(100), at_once=3)) == list(range(0, 200, 2))
    with running(double, 21) as result:
        assert result() == 42


def test_no_fork_is_interrupted_by_ctrl_c() -> None:
    code = """
import os, signal
from namescreen import processes
put_off = lambda: signal.SIGINT in signal.pthread_sigmask(signal.SIG_BLOCK, [])
found = []
os.register_at_fork(before=lambda: found.append(put_off()))
processes.processors = lambda: 2
list(processes.in_workers(abs, range(4)))
with processes.running(abs, 3) as result:
    result()
print(set(found), put_off())
"""
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert (told.stdout, told.stderr) == ("{True} False\n", "")


def test_work_beside_is_done_here_where_no_process_can_be_forked(monkeypatch: pytest.MonkeyPatch) -> None:
    with beside(worker, 0) as result:
        assert result() != (os.getpid(), 2)
    monkeypatch.setattr(processes, "process_context", lambda: multiprocessing.get_context("spawn"))
    with beside(worker, 0) as result:
        assert result() == (os.getpid(), 2)


def test_a_worker_starts_no_further_ones(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()  # the real count of processors
    with running(nested, 3) as result:
        assert len(set(result())) == 1


def worker(number: int) -> tuple[int, int]:
    return os.getpid(), processes.processors()


def process_id(number: int) -> int:
    return os.getpid()


def nested(number: int) -> list[int]:
    return list(on_all_processors(process_id, range(number)))


def test_items_are_taken_as_they_are_needed() -> None:
    numbers = iter(range(1_000))
    results = in_workers(double, numbers)
    assert next(results) == 0
    assert next(numbers) <= 2 * processes.TASKS_AHEAD + 1
    results.close()


def test_what_the_work_raises_is_raised_here() -> None:
    with pytest.raises(ValueError, match="not 1"):
        list(in_workers(refuse, [1, 2]))
    with running(refuse, 1) as result, pytest.raises(ValueError, match="not 1"):
        result()


def test_a_worker_that_is_killed_is_noticed() -> None:
    with pytest.raises(NamescreenError, match="worker process was ended"):
        list(in_workers(end_at_three, range(50)))
    with running(end_at_three, 3) as result, pytest.raises(NamescreenError, match="worker process was ended"):
        result()


def test_results_that_nobody_waits_for_leave_no_process() -> None:
    before = set(children(os.getpid()))  # the standard library keeps a helper where processes were once started afresh
    results = in_workers(double, range(1_000))
    assert next(results) == 0
    results.close()
    assert before.issuperset(children(os.getpid()))


def children(parent: int) -> list[int]:
    found = []
    for status in Path("/proc").glob("[0-9]*/stat"):
        try:
            pid, rest = status.read_text().split(" (", 1)
        except OSError:  # it has ended meanwhile
            continue
        state, its_parent = rest.rpartition(")")[2].split()[:2]
        if int(its_parent) == parent and state != "Z":
            found.append(int(pid))
    return found


def gone(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True


SCRIPT = """
import sys, time
from namescreen import processes
processes.processors = lambda: 3
def work(seconds):
    time.sleep(seconds)
with processes.running(work, 60):
    print("started", flush=True)
    list(processes.in_workers(work, [60] * 9))
"""


def test_workers_end_with_a_parent_that_is_killed() -> None:
    with subprocess.Popen([sys.executable, "-c", SCRIPT], stdout=subprocess.PIPE) as parent:
        assert parent.stdout is not None
        parent.stdout.readline()
        deadline = time.monotonic() + 30
        while len(workers := children(parent.pid)) < 4 and time.monotonic() < deadline:
            time.sleep(0.05)
        assert len(workers) == 4
        parent.kill()
    while not all(map(gone, workers)) and time.monotonic() < deadline:
        time.sleep(0.05)
    assert all(map(gone, workers))


def test_work_that_holds_much_is_shared_or_made_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    times = [7]

    def multiplied(number: int) -> int:
        return times[0] * number

    assert list(on_all_processors(multiplied, range(5), most=2)) == [0, 7, 14, 21, 28]
    monkeypatch.setattr(processes, "process_context", lambda: multiprocessing.get_context("spawn"))
    assert list(on_all_processors(multiplied, range(3))) == [0, 7, 14]  # it cannot be sent: done here
    assert list(on_all_processors(multiplied, range(3), anew=(partial, (mul, 7)))) == [0, 7, 14]


@pytest.mark.parametrize("error", [DataError("a.tsv", "is cut", "Install again"), InputError(Problem("no", "do", "f"))])
def test_our_errors_come_whole_from_a_worker(error: NamescreenError) -> None:
    with pytest.raises(type(error)) as met:
        list(on_all_processors(partial(raised, error), range(3)))
    assert str(met.value) == str(error)
    assert vars(met.value) == vars(error)


def raised(error: NamescreenError, number: int) -> int:
    raise error
