"""What the tests share."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

import pytest
from hypothesis import settings

from tests.program import CAN_FORK, MOST_SECONDS, Program

# A deadline would test the machine, not the program.
settings.register_profile("steady", deadline=None)
settings.load_profile("steady")

# As the program does (`cli.main`): to go through the many objects of tables and caches for garbage took a seventh of
# the tests.
BY_ITSELF = gc.get_threshold()
gc.set_threshold(1_000_000, *BY_ITSELF[1:])

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="session")
def shared_folder() -> Path:
    """The published data beside the checkout; a test that asks for it is skipped where it is missing."""
    folder = ROOT.parent / "shared"
    if not folder.is_dir():
        pytest.skip("needs the published data in ../shared beside the checkout")
    return folder


@pytest.fixture(scope="session", autouse=True)
def own_cache_folder(tmp_path_factory: pytest.TempPathFactory) -> None:
    """No test reads from the user's cache, or leaves anything in it."""
    os.environ["XDG_CACHE_HOME"] = str(tmp_path_factory.mktemp("cache"))


@pytest.fixture
def garbage_collected() -> Iterator[None]:
    """Garbage is collected as often as Python does by itself: for tests of how much memory something takes."""
    seldom = gc.get_threshold()
    gc.set_threshold(*BY_ITSELF)
    yield
    gc.set_threshold(*seldom)


Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture(scope="session")
def program(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Program]:
    """The program, imported once."""
    found = Program({**clean_environment(tmp_path_factory.mktemp("home")), "OPENBLAS_NUM_THREADS": "1"})
    yield found
    found.end()


@pytest.fixture
def run(tmp_path: Path, request: pytest.FixtureRequest) -> Run:
    """Run the real program in an empty folder, away from the user's own cache and settings. With an environment that
    an interpreter reads as it starts, in a new interpreter, else in a fork."""

    def start(
        *arguments: str | Path,
        input: str | bytes | None = None,
        env: Mapping[str, str] | None = None,
        cwd: Path | None = None,
    ) -> subprocess.CompletedProcess[str]:
        given = input.encode() if isinstance(input, str) else input or b""
        environment, folder = {**clean_environment(tmp_path), **(env or {})}, cwd or tmp_path
        if CAN_FORK and {*(env or ())} <= {"COLUMNS"}:
            program: Program = request.getfixturevalue("program")
            done = program.run(list(map(str, arguments)), given, folder, environment)
        else:
            done = subprocess.run(
                [sys.executable, "-m", "namescreen", *map(str, arguments)],
                input=given, capture_output=True, cwd=folder, env=environment, timeout=MOST_SECONDS, check=False,
            )  # fmt: skip
        return subprocess.CompletedProcess(
            done.args, done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
        )

    return start


def clean_environment(home: Path) -> dict[str, str]:
    """An environment without the user's colours, widths and folders; the program itself stays importable."""
    kept = {key: value for key, value in os.environ.items() if key in ("PATH", "LANG", "TMPDIR", "SYSTEMROOT")}
    path = os.pathsep.join(filter(None, (str(ROOT), os.environ.get("PYTHONPATH"))))
    return {**kept, "HOME": str(home), "XDG_CACHE_HOME": str(home / ".cache"), "PYTHONPATH": path}
