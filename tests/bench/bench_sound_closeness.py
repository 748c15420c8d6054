"""How fast sounds are compared, beside rapidfuzz's edit distance over the same codes.

python tests/bench/bench_sound_closeness.py
"""

from __future__ import annotations

import time
from collections.abc import Callable

from rapidfuzz import process
from rapidfuzz.distance import Indel

from namescreen.pronunciation import sound_similarity
from namescreen.pronunciation.alignment_batch import prepare_codes, sound_similarities
from namescreen.pronunciation.phones import code_of, from_marked
from namescreen.tables import open_table

NAMES = ("klOraks", "zilo", "plantR", "terAvo")


def seconds(work: Callable[[], object]) -> float:
    """The best of three runs."""
    best = float("inf")
    for _ in range(3):
        started = time.process_time()
        work()
        best = min(best, time.process_time() - started)
    return best


def main() -> None:
    phoneme_codes = sorted({code_of(from_marked(v.split(" ")[0])) for _, v in open_table("pronunciations.tsv").items()})
    prepared = prepare_codes(phoneme_codes)
    pairs = len(phoneme_codes) * len(NAMES)
    baseline = seconds(lambda: process.cdist(NAMES, phoneme_codes, scorer=Indel.normalized_similarity, workers=1))
    print(f"{len(phoneme_codes):,} codes, {len(NAMES)} names; times beside rapidfuzz cdist(Indel), one core")
    print(f"{'rapidfuzz Indel':28}{pairs / baseline:14,.0f} pairs/s  1.0")
    spent = seconds(lambda: [sound_similarities(name, prepared) for name in NAMES])
    print(f"{'sound_similarities':28}{pairs / spent:14,.0f} pairs/s  {spent / baseline:.1f}")
    few = phoneme_codes[::60]

    def one_by_one() -> None:
        sound_similarity.cache_clear()
        for code in few:
            sound_similarity(NAMES[0], code)

    spent = seconds(one_by_one)
    print(f"{'sound_closeness':28}{len(few) / spent:14,.0f} pairs/s  {spent / len(few) / (baseline / pairs):.1f}")


if __name__ == "__main__":
    main()
