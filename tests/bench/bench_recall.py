"""Whether a search finds what scoring every name in full would find: recall of the exhaustive 50, and what it costs.

    python -m tests.bench.bench_recall [--marks 20000] [--names 36] [--list names.txt] [--fetched 300]

The register holds synthetic marks (`bench_register`) and, with --list, the names of a file, one a line, such as names
of medicines. Names to search for are changed marks, invented words and pairs of words, and where there is a list a
third of them from it. Recall is told of all 50, and of those close enough to be listed or to have a level (`policy`).
"""

from __future__ import annotations

import argparse
import random
import statistics
import tempfile
import time
from pathlib import Path

import numpy as np

from namescreen.closeness import features
from namescreen.policy import LEAST_CLOSE, STEPS
from namescreen.register import open_prepared, prepare, rescoring
from namescreen.register.hit import Wanted
from tests.bench.bench_register import queries, synthetic

TOP = 50
LEVELS = (0.0, LEAST_CLOSE, STEPS[-1][0], STEPS[-2][0])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--marks", type=int, default=20_000)
    parser.add_argument("--names", type=int, default=36)
    parser.add_argument("--list", type=Path)
    parser.add_argument("--fetched", type=int, nargs="*", default=[rescoring.LEAST_FETCHED])
    given = parser.parse_args()
    listed = given.list.read_text(encoding="utf-8").split() if given.list else []
    marks = [*map(str.upper, listed), *synthetic(given.marks - len(listed))]
    folder = Path(tempfile.mkdtemp())
    (folder / "marks.txt").write_text("\n".join(marks))
    prepare(folder / "marks.txt", folder / "marks.nsr")
    index = open_prepared(folder / "marks.nsr").index()
    from_list = random.Random(4).sample(listed, given.names // 3) if listed else []
    names = [*from_list, *queries(marks[len(listed) :], given.names - len(from_list))]
    every, cost = np.arange(len(index.names)), []
    shares: dict[tuple[int, float], list[float]] = {}
    times: dict[int, list[float]] = {count: [] for count in given.fetched}
    for name in names:
        own = features(name)
        begun = time.thread_time()
        best = rescoring.best_of(index, own, every, Wanted(name, TOP))
        cost.append(time.thread_time() - begun)
        for count in given.fetched:
            rescoring.LEAST_FETCHED = count
            begun = time.thread_time()
            places = rescoring.fetched(index, own, TOP)
            found = {one.place for one in rescoring.best_of(index, own, places, Wanted(name, TOP))}
            times[count].append(time.thread_time() - begun)
            last = best[-1].overall if len(best) == TOP else 0.0
            for level in LEVELS:  # equal values at the end stand for one another
                wanted = [one.place for one in best if one.overall >= level and one.overall > last]
                if wanted:
                    shares.setdefault((count, level), []).append(len(found.intersection(wanted)) / len(wanted))
    print(f"{len(index.names):,} names, {len(names)} searched for; every name scored: {statistics.median(cost):.3f} s")
    for count in given.fetched:
        told = ", ".join(f"{statistics.mean(shares[count, one]):.3f} of those from {one:g}" for one in LEVELS)
        print(f"{count} fetched, {statistics.median(times[count]):.3f} s a name: recall of the {TOP} closest {told}")


if __name__ == "__main__":
    main()
