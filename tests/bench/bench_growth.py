"""How the time of a name and the memory of a search grow with the register.

    python -m tests.bench.bench_growth [--sizes 10000 100000 1000000 5000000] [--names 60] [--folder FOLDER]

Registers are made as in bench_register.py, and kept in the folder for another run. Each is searched in a process of its
own; times are CPU seconds a name, without the first name, and the exponent is that of the power of the number of marks
that fits them best (least squares on logarithms): below 1 a name costs less than in proportion. One plain pass of
rapidfuzz over as many marks stands beside each. Memory is the most that the searching process held (VmHWM), mapped
parts of the register included, before the plain list is made.
"""

from __future__ import annotations

import argparse
import math
import multiprocessing
import statistics
import tempfile
import time
from functools import partial
from itertools import islice
from pathlib import Path

from rapidfuzz import fuzz, process

from namescreen.closeness import features
from namescreen.register import nearest as engine
from namescreen.register import open_prepared, prepare
from tests.bench.bench_register import TOP, cpu, queries, synthetic


def made(size: int, folder: Path) -> Path:
    path = folder / f"{size}.nsr"
    if not path.exists():
        source = folder / f"{size}.txt"
        source.write_text("\n".join(synthetic(size)))
        start = time.perf_counter()
        prepare(source, path)
        print(f"prepared {size:,} marks in {time.perf_counter() - start:.0f} s, "
              f"{path.stat().st_size / size:.0f} bytes a mark", flush=True)  # fmt: skip
    return path


def searched(path: Path, count: int) -> tuple[float, float, float, float]:
    """Median and mean CPU seconds a name, the most memory in GB, and the CPU seconds of a plain pass."""
    register = open_prepared(path)
    index = register.index()
    some = list(islice(register.columns.texts(), 0, None, max(1, len(register) // 1000)))
    names = [features(name) for name in queries(some, count + 1)]
    times = [cpu(partial(engine.nearest, index, name, TOP)) for name in names][1:]
    status = Path("/proc/self/status").read_text()
    memory = int(status.split("VmHWM:")[1].split()[0]) / 1e6
    marks = list(register.columns.texts())
    few = queries(some, 10)
    plain = [cpu(partial(process.extract, name, marks, scorer=fuzz.ratio, limit=TOP)) for name in few]
    return statistics.median(times), statistics.mean(times), memory, statistics.median(plain)


def exponent(sizes: list[int], times: list[float]) -> float:
    return statistics.linear_regression([math.log(size) for size in sizes], [math.log(one) for one in times]).slope


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--sizes", type=int, nargs="+", default=[10_000, 100_000, 1_000_000, 5_000_000])
    parser.add_argument("--names", type=int, default=60)
    parser.add_argument("--folder", type=Path, default=Path(tempfile.gettempdir()))
    given = parser.parse_args()
    paths = [made(size, given.folder) for size in given.sizes]
    found = []
    for size, path in zip(given.sizes, paths, strict=True):
        with multiprocessing.get_context("spawn").Pool(1) as pool:
            median, mean, memory, plain = pool.apply(searched, (path, given.names))
        found.append((median, mean))
        print(f"{size:>10,} marks: {1e3 * median:7.1f} ms median, {1e3 * mean:7.1f} ms mean a name "
              f"({median / plain:.2f}, {mean / plain:.2f} of a plain pass); at most {memory:.2f} GB")  # fmt: skip
    if len(found) > 1:
        medians, means = zip(*found, strict=True)
        print(f"exponent of growth: {exponent(given.sizes, list(medians)):.2f} median, "
              f"{exponent(given.sizes, list(means)):.2f} mean")  # fmt: skip


if __name__ == "__main__":
    main()
