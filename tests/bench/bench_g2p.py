"""How well and how fast unknown words are read.

    python tests/bench/bench_g2p.py

Learns the model from nine tenths of the dictionary with the shipped recipe, reads the tenth held out, and prints
phoneme and word error rates (stress ignored, the nearest listed reading counts) beside the published ones, then
words read a second beside the looking-up of known ones.
"""

from __future__ import annotations

import importlib.util
import sys
import tempfile
import time
from pathlib import Path
from types import ModuleType

from rapidfuzz.distance import Levenshtein

from namescreen.pronunciation import pronounce
from namescreen.pronunciation.dictionary import known_readings
from namescreen.pronunciation.g2p import JointModel
from namescreen.tables import Table, open_table

DRAW = Path(__file__).parent.parent.parent / "wordlists" / "build"


def recipe() -> ModuleType:
    """The script that draws the shipped model."""
    sys.path.insert(0, str(DRAW))
    spec = importlib.util.spec_from_file_location("g2p", DRAW / "g2p.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def bare(reading: str) -> str:
    """A marked code without stress, the schwa as AH."""
    return reading.replace("1", "").replace("2", "").replace("x", "V")


def main() -> None:
    draw = recipe()
    held_out = {
        word: [bare(reading) for reading in value.split(" ")]
        for word, value in open_table("pronunciations.tsv").items()
        if draw.held_out(word)
    }
    with tempfile.TemporaryDirectory() as folder:
        tables = []
        for name, contents in zip(
            (draw.MODEL, draw.UNITS),
            draw.learn(pair for pair in draw.dictionary() if not draw.held_out(pair[0])),
            strict=True,
        ):
            path = Path(folder) / name
            path.write_bytes(contents)
            tables.append(Table(path))
        model = JointModel(*tables)
        phones = phone_errors = word_errors = missed = 0
        started = time.process_time()
        read = {word: [bare(reading) for reading, _ in model.readings(word, 3)] for word in held_out}
        seconds = time.process_time() - started
    for word, listed in held_out.items():
        errors, length = min((Levenshtein.distance(read[word][0], right), len(right)) for right in listed)
        phones += length
        phone_errors += errors
        word_errors += errors > 0
        missed += not set(read[word]) & set(listed)
    started = time.process_time()
    for word in held_out:
        known_readings(word)
    known = time.process_time() - started
    words = len(held_out)
    print(f"held out: {words:,} of {len(open_table('pronunciations.tsv')):,} words")
    print(f"{'':34}phoneme error  word error")
    print(f"{'namescreen, first reading':34}{phone_errors / phones:13.1%} {word_errors / words:11.1%}")
    print(f"{'namescreen, best of three readings':34}{'':13} {missed / words:11.1%}")
    print(f"{'Bisani & Ney 2008 (from memory)':34}{0.059:13.1%} {0.245:11.1%}")
    print("(their split of an earlier edition of the dictionary is another, so the figures compare roughly)")
    print(f"unknown words: {1000 * seconds / words:.2f} ms each, {seconds / known:.0f} times a known word's look-up")
    assert pronounce("planter")[0].source == "dictionary"


if __name__ == "__main__":
    main()
