"""Search a large register: time, recall and size, as ratios against one plain pass over the same list.

    python tests/bench/bench_register.py [--marks 100000] [--names 200] [--many 100] [--register FILE]

Marks are made from words of the lexicon and invented ones, with a fixed seed; names are such marks with one
letter changed, invented words, and pairs of words. The baseline, timed in the same run, is
rapidfuzz.process.extract(name, marks, scorer=fuzz.ratio, limit=50) over the list in memory. Times are CPU seconds
of this thread unless they say wall, so that other work on the machine weighs less. SQLite's FTS5 with trigrams
and rescoring stands beside it. Recall is against scoring every name with the same arithmetic, which the tests
show to be that of `closeness.score`.
"""

from __future__ import annotations

import argparse
import random
import resource
import sqlite3
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from rapidfuzz import fuzz, process

from namescreen.closeness import features
from namescreen.lexicon import lexicon
from namescreen.register import Wanted, open_prepared, prepare
from namescreen.register.index import Index
from namescreen.register.rescoring import best_of, fetched
from namescreen.tables import open_table

TOP = 50


def invented(rng: random.Random) -> str:
    onsets, vowels = (
        "b br c ch cl d dr f g gl h j k l m n p r s sh st t tr v w z".split(),
        "a e i o u ai ea ee oo".split(),
    )
    parts = (rng.choice(onsets) + rng.choice(vowels) + rng.choice(["", "", "n", "r", "l", "x"]) for _ in range(99))
    return "".join(next(parts) for _ in range(rng.choice((2, 2, 3))))


def synthetic(count: int, seed: int = 11) -> list[str]:
    """Marks of one to three words, a fifth of them with an invented word."""
    rng = random.Random(seed)
    words = sorted(
        word
        for word, _ in open_table("wordnet-words.tsv").items()
        if word.isascii() and word.isalpha() and 3 <= len(word) <= 11
    )
    assert lexicon().known(words[0])
    marks = []
    for _ in range(count):
        chosen = [rng.choice(words) for _ in range(rng.choices((1, 2, 3), (3, 5, 2))[0])]
        if rng.random() < 0.2:
            chosen[rng.randrange(len(chosen))] = invented(rng)
        marks.append(" ".join(chosen).upper())
    return marks


def queries(marks: list[str], count: int, seed: int = 5) -> list[str]:
    rng = random.Random(seed)
    names = []
    for number in range(count):
        mark = rng.choice(marks)
        if number % 3 == 0:
            at = rng.randrange(1, len(mark))
            names.append(mark[:at] + rng.choice("AEIOURSTLN") + mark[at + rng.choice((0, 1)) :])
        elif number % 3 == 1:
            names.append(invented(rng).upper())
        else:
            names.append(f"{rng.choice(marks).split()[0]} {rng.choice(marks).split()[-1]}")
    return names


def cpu(work: Callable[[], object]) -> float:
    start = time.thread_time()
    work()
    return time.thread_time() - start


def wall(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def found(index: Index, name: str) -> NDArray[np.float64]:
    """The scores of the closest names as the search finds them."""
    own = features(name)
    return np.array([one.overall for one in best_of(index, own, fetched(index, own, TOP), Wanted(name, TOP))])


def exhaustive(index: Index, name: str) -> NDArray[np.float64]:
    """The scores of the closest names, every name of the index scored."""
    return np.array(
        [one.overall for one in best_of(index, features(name), np.arange(len(index.names)), Wanted(name, TOP))]
    )


def share_found(found: NDArray[np.float64], best: NDArray[np.float64]) -> float:
    """The share of the exhaustive list that was found; equal scores at its end stand for one another."""
    if not len(best):
        return 1.0
    last = best[-1]
    above = sum(np.isclose(found, value, atol=1e-9).any() for value in best[best > last + 1e-9])
    tied = min((np.abs(best - last) <= 1e-9).sum(), (np.abs(found - last) <= 1e-9).sum())
    return float((above + tied) / len(best))


def trigrams(marks: list[str], names: list[str]) -> float:
    """CPU seconds a name of SQLite FTS5 with trigrams: the best 500 by its own rank, rescored."""
    base = sqlite3.connect(":memory:")
    base.execute("create virtual table marks using fts5(mark, tokenize='trigram')")
    base.executemany("insert into marks values (?)", ((mark,) for mark in marks))

    def ask(name: str) -> object:
        pieces = sorted({name[at : at + 3] for at in range(len(name) - 2)})
        wanted = " OR ".join('"' + piece.replace('"', '""') + '"' for piece in pieces)
        rows = base.execute("select mark from marks where marks match ? order by rank limit 500", (wanted,))
        return process.extract(name, [row[0] for row in rows], scorer=fuzz.ratio, limit=TOP)

    return statistics.median(cpu(lambda name=name: ask(name)) for name in names)  # type: ignore[misc]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--marks", type=int, default=100_000)
    parser.add_argument("--names", type=int, default=200, help="names whose recall is measured")
    parser.add_argument("--many", type=int, default=100, help="names in one batch on all processors")
    parser.add_argument("--register", type=Path, help="a prepared register to use instead of synthetic marks")
    given = parser.parse_args()
    folder = Path(tempfile.mkdtemp())
    path, spent = given.register, 0.0
    if path is None:
        (folder / "marks.txt").write_text("\n".join(synthetic(given.marks)))
        path = folder / "marks.nsr"
        taken = wall(lambda: prepare(folder / "marks.txt", path))
        own, others = (resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
        spent = own.ru_utime + others.ru_utime
        print(f"prepare: {taken:.0f} s wall, {spent:.0f} s CPU in all processes; at most "
              f"{own.ru_maxrss / 1e6:.1f} GB, and {others.ru_maxrss / 1e6:.1f} GB a worker")  # fmt: skip
    register = open_prepared(path)
    size = len(register)
    print(f"{size:,} marks, {path.stat().st_size / size:.0f} bytes a mark; "
          f"open again: {1e3 * wall(lambda: open_prepared(path)):.1f} ms")  # fmt: skip
    marks = list(register.columns.texts())
    names = queries(marks, given.names)
    index = register.index()
    found(index, "warm up")
    few = names[:30]
    plain = statistics.median(
        cpu(lambda name=name: process.extract(name, marks, scorer=fuzz.ratio, limit=TOP))  # type: ignore[misc]
        for name in few
    )
    print(f"one plain pass: {1e3 * plain:.1f} ms CPU (= 1.00)")
    if spent:
        print(f"prepare: {spent / plain:.0f} (CPU in all processes)")
    print(f"FTS5 trigrams, 500 rescored: {trigrams(marks, few) / plain:.2f}")
    every = [cpu(lambda name=name: exhaustive(index, name)) for name in few[:3]]  # type: ignore[misc]
    print(f"every mark scored, in arrays: {statistics.median(every) / plain:.1f}")
    times, shares, first = [], [], 0
    for name in names:
        start = time.thread_time()
        values = found(index, name)
        times.append(time.thread_time() - start)
        best = exhaustive(index, name)
        shares.append(share_found(values, best))
        first += not len(best) or (len(values) > 0 and values[0] >= best[0] - 1e-9)
    print(f"one name: {statistics.median(times) / plain:.2f} median, {statistics.mean(times) / plain:.2f} mean, "
          f"{np.percentile(times, 95) / plain:.2f} 95th percentile; recall of the {TOP} closest "
          f"{statistics.mean(shares):.3f}, the closest found {first} of {len(names)}")  # fmt: skip
    many = queries(marks, given.many, seed=6)
    taken = wall(lambda: list(register.search(many, TOP)))
    passes = wall(lambda: [process.extract(name, marks, scorer=fuzz.ratio, limit=TOP) for name in many[:10]])
    print(f"{len(many)} names on all processors: {taken / len(many) / (passes / 10):.2f} wall of as many plain passes")
    print(f"memory at most {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6:.1f} GB, the lists included")


if __name__ == "__main__":
    main()
