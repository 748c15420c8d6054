"""The cost of the offline estimate of domains and handles, measured and printed.

    python tests/bench/bench_addresses.py

1,000 names x 5 endings, processor time of this process (not wall time: other programs do not count), for two kinds of
names: what a brainstorm makes of eight concept words, and random pairs of common English words, half of them cut short
so that nobody knows them. Goal: at most 2 s on a quiet core. The baseline of the same run is the IDNA encoding of the
same 1,000 x 5 domains by the idna package alone.
"""

from __future__ import annotations

import random
import time
from collections.abc import Callable, Sequence

import idna

from namescreen import brainstorm
from namescreen.addresses import estimate
from namescreen.brief import Brief, Concept
from namescreen.tables import open_table
from namescreen.text import parse

ENDINGS = ("com", "nl", "de", "co.uk", "example")


def made(number: int = 1000) -> list[str]:
    """Names as the brainstorm makes them."""
    words = ("herb", "well", "clay", "garden", "drip", "leaf", "kitchen", "root")
    brief = Brief(concepts=tuple(Concept(word) for word in words))
    return [candidate.text for candidate in brainstorm(brief, limit=number)]


def drawn(number: int = 1000, seed: int = 3) -> list[str]:
    """Random pairs of words of four letters and more, Zipf 3.5 and more; the second cut at five letters."""
    rows = open_table("frequency/en.tsv").items()
    words = [word for word, zipf in rows if len(word) >= 4 and word.isascii() and word.isalpha() and float(zipf) > 3.5]
    chance = random.Random(seed)
    return [f"{chance.choice(words).title()}{' ' * (place % 2)}{chance.choice(words)[:5]}" for place in range(number)]


def spent(work: Callable[[], object]) -> float:
    """The processor time of `work`, in seconds."""
    started = time.process_time()
    work()
    return time.process_time() - started


def measure(label: str, names: Sequence[str]) -> None:
    joined = ["".join(parse(name).words) for name in names]
    baseline = spent(lambda: [idna.encode(f"{name}.{ending}") for name in joined for ending in ENDINGS])
    cost = spent(lambda: [estimate(name, endings=ENDINGS, goods="self-watering herb planter") for name in names])
    print(f"{label}: {len(names)} names x {len(ENDINGS)} endings in {cost:.2f} s of processor time, "
          f"{cost / baseline:.1f} x the idna package's encoding of the plain domains ({baseline:.2f} s)")  # fmt: skip


if __name__ == "__main__":
    estimate("Loamlet")  # the tables are opened once
    fresh = drawn()
    measure("random pairs", fresh)
    measure("the same again, from memory", fresh)
    measure("brainstormed", made())
