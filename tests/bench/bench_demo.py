"""What `namescreen demo` costs, in seconds and as a multiple of `python -c "import typer"` in the same run.

    python tests/bench/bench_demo.py

Goal: 1.5 s on two cores that nothing else keeps busy; it takes 1.4 s there. Processor time is told beside elapsed time,
so that a busy machine shows. Dictionaries in dictd format that happen to be installed are read too, and add to it.
"""

from __future__ import annotations

import resource
import statistics
import subprocess
import sys
import tempfile
import time

ROUNDS = 5
BASELINE = [sys.executable, "-c", "import typer"]
DEMO = [sys.executable, "-m", "namescreen", "demo"]


def cost(command: list[str]) -> tuple[float, float]:
    """Elapsed and processor seconds."""
    with tempfile.TemporaryDirectory() as folder:
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        start = time.perf_counter()
        subprocess.run(command, cwd=folder, capture_output=True, check=True)
        elapsed = time.perf_counter() - start
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return elapsed, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    runs = {name: [cost(command) for _ in range(ROUNDS)] for name, command in (("typer", BASELINE), ("demo", DEMO))}
    elapsed, used = ({name: statistics.median(run[part] for run in found) for name, found in runs.items()}
                     for part in (0, 1))  # fmt: skip
    print(f"namescreen demo: {elapsed['demo']:.1f} s elapsed, {used['demo']:.1f} s of processor time")
    print(f"python -c 'import typer': {elapsed['typer']:.2f} s elapsed, {used['typer']:.2f} s of processor time")
    print(f"demo / import typer, processor time: {used['demo'] / used['typer']:.0f}")


if __name__ == "__main__":
    main()
