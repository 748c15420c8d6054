"""What `namescreen --help` costs, as a multiple of `python -c "import typer"` in the same run.

    python tests/bench/bench_help.py

Goal: at most 1.5. Both are started in turn, so that a busy moment hits both; the medians are compared.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time

ROUNDS = 21
BASELINE = [sys.executable, "-c", "import typer"]
PROGRAMS = {
    "namescreen --help": [sys.executable, "-m", "namescreen", "--help"],
    "namescreen screen --help": [sys.executable, "-m", "namescreen", "screen", "--help"],
    "import namescreen": [sys.executable, "-c", "import namescreen"],
}


def seconds(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - start


def main() -> None:
    runs: dict[str, list[float]] = {name: [] for name in ("baseline", *PROGRAMS)}
    for command in (BASELINE, *PROGRAMS.values()):
        seconds(command)  # byte code is written and files are cached before the clock counts
    for _ in range(ROUNDS):
        for name, command in {"baseline": BASELINE, **PROGRAMS}.items():
            runs[name].append(seconds(command))
    baseline = statistics.median(runs["baseline"])
    print(f"python -c 'import typer': {baseline:.3f} s")
    for name in PROGRAMS:
        print(f"{name}: {statistics.median(runs[name]) / baseline:.2f} times that")


if __name__ == "__main__":
    main()
