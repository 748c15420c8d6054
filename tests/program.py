"""The program in a process of its own, forked from one that has imported it: the start of an interpreter and imports
are most of a short command. Arguments, folder, environment, streams and exit code are those of any process; what every
command shares is the order in which modules were imported, and the seed of hashes.
"""

from __future__ import annotations

import atexit
import gc
import os
import signal
import socket
import subprocess
import sys
import traceback
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from importlib import import_module
from multiprocessing.connection import Connection
from pathlib import Path

__all__ = ["CAN_FORK", "MOST_SECONDS", "Program", "serve"]

CAN_FORK = sys.platform == "linux"
MOST_SECONDS = 120
START = "import sys; from tests.program import serve; serve(int(sys.argv[1]))"


class Program:
    """Runs commands one after another."""

    def __init__(self, environment: Mapping[str, str]) -> None:
        ours, theirs = socket.socketpair()
        with theirs:
            self._server = subprocess.Popen(
                [sys.executable, "-c", START, str(theirs.fileno())],
                stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=environment, pass_fds=[theirs.fileno()],
            )  # fmt: skip
        self._socket, self._link = ours, Connection(os.dup(ours.fileno()))

    def run(
        self, arguments: Sequence[str], given: bytes, folder: Path, environment: Mapping[str, str]
    ) -> subprocess.CompletedProcess[bytes]:
        """One command, with `given` as its standard input."""
        (stdin, given_to), (from_out, stdout), (from_error, stderr) = os.pipe(), os.pipe(), os.pipe()
        os.umask(mask := os.umask(0))
        self._link.send((list(arguments), str(folder), dict(environment), mask))
        socket.send_fds(self._socket, [b"streams"], [stdin, stdout, stderr])
        for stream in (stdin, stdout, stderr):
            os.close(stream)
        with ThreadPoolExecutor(3) as pool:
            pool.submit(_write, given_to, given)
            written = [pool.submit(_read, stream) for stream in (from_out, from_error)]
        code = os.waitstatus_to_exitcode(self._link.recv())
        return subprocess.CompletedProcess(list(arguments), code, *(one.result() for one in written))

    def end(self) -> None:
        """End the process that the others are forked from."""
        self._link.close()
        self._socket.close()
        self._server.terminate()  # what tests have forked beside may hold its socket open
        self._server.communicate()


def _write(stream: int, given: bytes) -> None:
    with open(stream, "wb", buffering=0) as file:
        file.write(given)


def _read(stream: int) -> bytes:
    with open(stream, "rb") as file:
        return file.read()


def serve(place: int) -> None:
    """Import the program, then start one command after another, as `Program.run` asks for them."""
    import namescreen
    from namescreen.__main__ import main

    home = Path(namescreen.__file__).parent
    for path in sorted(home.rglob("*.py")):
        import_module(".".join(path.relative_to(home.parent).with_suffix("").parts).removesuffix(".__init__"))
    gc.freeze()
    link = Connection(os.dup(place))
    with socket.socket(fileno=place) as streams:
        while True:
            try:
                arguments, folder, environment, mask = link.recv()
            except EOFError:
                return
            _, given, _, _ = socket.recv_fds(streams, 16, 3)
            process = os.fork()
            if process == 0:
                break
            for stream in given:
                os.close(stream)
            link.send(os.waitpid(process, 0)[1])
    link.close()
    signal.alarm(MOST_SECONDS)
    for at, stream in enumerate(given):
        os.dup2(stream, at)
        os.close(stream)
    sys.stderr = open(2, "w", buffering=1, encoding="utf-8", errors="backslashreplace")  # noqa: SIM115
    os.chdir(folder)
    os.umask(mask)
    os.environ.clear()
    os.environ.update(environment)
    sys.argv = ["namescreen", *arguments]
    os._exit(_ended(main))


def _ended(main: Callable[[], None]) -> int:
    """The exit code of `main`, after all that is done as an interpreter ends, but for taking what was imported apart:
    in a fork that costs more than most commands."""
    code: str | int | None = 0
    try:
        main()
    except SystemExit as ended:
        code = ended.code
    except BaseException:
        code = traceback.format_exc()
    if isinstance(code, str):
        sys.stderr.write(code)
        code = 1
    atexit._run_exitfuncs()
    for stream in (sys.stdout, sys.stderr):
        stream.flush()
    return code or 0
