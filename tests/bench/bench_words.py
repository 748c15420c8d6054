"""What is worked out once for each distinct word of a register, by step, and the share of each.

    python -m tests.bench.bench_words [--words 8000]

Words are those of the marks of bench_register.py, a thousand of the alphabet at a time, as a register is prepared.
The baseline, timed in the same run, is one plain pass of rapidfuzz.process.extract over 100,000 marks: a register of a
million such marks has some 260,000 words. Times are CPU seconds of this thread.
"""

from __future__ import annotations

import argparse
import random
import statistics
from collections.abc import Callable

from rapidfuzz import fuzz, process

from namescreen.closeness import said_abroad
from namescreen.closeness.sound import phoneme_codes_of
from namescreen.closeness.vocabulary import expect_many, is_known, segmentations
from namescreen.closeness.weights import own_weight
from namescreen.closeness.word_facts import word_facts
from namescreen.lexicon import equivalents, foreign_filter, possible_meanings
from namescreen.processes import without_collection
from namescreen.pronunciation import pronounce
from namescreen.pronunciation.g2p import joint_model
from namescreen.register.build import TABLES
from namescreen.tables import open_table
from namescreen.text import tokenize
from tests.bench.bench_register import TOP, cpu, queries, synthetic

STEPS: dict[str, Callable[[str], object]] = {
    "readings": pronounce, "known": is_known, "equivalents in other languages": equivalents,
    "possible meanings": possible_meanings, "other facts": word_facts, "segmentations": segmentations,
    "codes": phoneme_codes_of, "weights": own_weight,
}  # fmt: skip
LETTERS = "language of the letters"
AT_A_TIME = 1_000


@without_collection()
def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--words", type=int, default=8_000)
    given = parser.parse_args()
    marks = synthetic(100_000)
    words = sorted({word for mark in marks for word in tokenize(mark)})
    parts = [words[at : at + AT_A_TIME] for at in range(0, len(words), AT_A_TIME)]
    parts = random.Random(3).sample(parts, min(len(parts), -(-given.words // AT_A_TIME)))
    for table in TABLES:
        open_table(table).preload()
    foreign_filter.expect_many()
    joint_model().preload()
    expect_many()
    said_abroad.expect_many()
    spent = dict.fromkeys((LETTERS, *STEPS), 0.0)
    for part in parts:
        spent[LETTERS] += cpu(lambda part=part: said_abroad.expect(part))  # type: ignore[misc]
        for name, step in STEPS.items():
            spent[name] += cpu(lambda step=step, part=part: list(map(step, part)))  # type: ignore[misc]
    plain = statistics.median(
        cpu(lambda name=name: process.extract(name, marks, scorer=fuzz.ratio, limit=TOP))  # type: ignore[misc]
        for name in queries(marks, 20)
    )
    whole, count = sum(spent.values()), sum(map(len, parts))
    print(f"one plain pass: {1e3 * plain:.1f} ms CPU (= 1.00); a thousand words: {1000 * whole / count / plain:.1f}")
    for name, seconds in spent.items():
        print(f"  {name}: {seconds / whole:.2f} of that")


if __name__ == "__main__":
    main()
