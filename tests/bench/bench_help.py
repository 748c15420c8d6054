"""What starting namescreen costs, as multiples of `python -c "import typer"` in the same run.

    python tests/bench/bench_help.py

Goals: help at most 1.3, `compare` 2.5, `screen` of one name against the example's 300 marks 5 (1.0, 2.3 and 4.3 to 4.5
by processor time at load 4 to 11, for a list that was met before). All are started in turn, so that a busy moment hits
each; the medians are compared.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

ROUNDS = 21
MARKS = Path(__file__).parents[2] / "namescreen" / "demo" / "marks.csv"
BASELINE = [sys.executable, "-c", "import typer"]
PROGRAMS = {
    "namescreen --help": [sys.executable, "-m", "namescreen", "--help"],
    "namescreen screen --help": [sys.executable, "-m", "namescreen", "screen", "--help"],
    "namescreen compare": [sys.executable, "-m", "namescreen", "compare", "Herbwell", "Heartwell"],
    "namescreen screen": [sys.executable, "-m", "namescreen", "screen", "-n", "Hillift", "-r", str(MARKS)],
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
