"""What the tests share."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from hypothesis import settings

# A deadline would test the machine, not the program.
settings.register_profile("steady", deadline=None)
settings.load_profile("steady")

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


Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture
def run(tmp_path: Path) -> Run:
    """Run the real program in an empty folder, away from the user's own cache and settings."""

    def start(
        *arguments: str | Path,
        input: str | bytes | None = None,
        env: Mapping[str, str] | None = None,
        cwd: Path | None = None,
    ) -> subprocess.CompletedProcess[str]:
        done = subprocess.run(
            [sys.executable, "-m", "namescreen", *map(str, arguments)],
            input=input.encode() if isinstance(input, str) else input or b"",
            capture_output=True,
            cwd=cwd or tmp_path,
            env={**clean_environment(tmp_path), **(env or {})},
            timeout=120,
            check=False,
        )
        return subprocess.CompletedProcess(
            done.args, done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
        )

    return start


def clean_environment(home: Path) -> dict[str, str]:
    """An environment without the user's colours, widths and folders; the program itself stays importable."""
    kept = {key: value for key, value in os.environ.items() if key in ("PATH", "LANG", "TMPDIR", "SYSTEMROOT")}
    path = os.pathsep.join(filter(None, (str(ROOT), os.environ.get("PYTHONPATH"))))
    return {**kept, "HOME": str(home), "XDG_CACHE_HOME": str(home / ".cache"), "PYTHONPATH": path}
