"""Build word frequencies from the wordfreq package into wordlists/frequency/LANGUAGE.tsv.

    python wordlists/build/frequencies.py [--to FOLDER] [LANGUAGE ...]

Each row is a folded word (letters only) and its frequency on the Zipf scale: log10 of occurrences in a
thousand million words, with two decimals in English, and one in other languages, where it is only held
against thresholds. wordfreq's lists end at 1.0 (large) or 3.0 (small). Tokens that fold to one word are added
together. The lists are read as they are, so no tokenizer is needed for Japanese, Chinese or Korean."""

from __future__ import annotations

import argparse
import math
import unicodedata
from collections import defaultdict
from pathlib import Path

import wordfreq
from sources import write_table

from namescreen.tables import table_bytes
from namescreen.text import fold

ROWS = {"en": 120_000}
OTHERS = 30_000
_ALL = "en de fr es it pt nl sv da nb fi pl cs tr hu ro el ru uk ar he hi id ja zh ko"
LANGUAGES = _ALL.split()


def draw(language: str, rows: int) -> bytes:
    """The `rows` most frequent letters-only words of `language`."""
    total: dict[str, float] = defaultdict(float)
    best = "large" if language in wordfreq.available_languages("large") else "small"
    for word, frequency in wordfreq.get_frequency_dict(language, best).items():
        folded = fold(word)
        if folded and all(unicodedata.category(letter)[0] in "LM" for letter in folded):
            total[folded] += frequency
    chosen = sorted(total, key=lambda word: (-total[word], word))[:rows]
    decimals = 2 if language == "en" else 1
    rows_of = ((word, f"{math.log10(total[word] * 1e9):.{decimals}f}") for word in chosen)
    return table_bytes(f"frequency-{language}", rows_of)


def main() -> None:
    """Write a table and its source record for each language asked for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--to", type=Path, default=Path(__file__).resolve().parent.parent)
    parser.add_argument("languages", nargs="*", default=LANGUAGES)
    arguments = parser.parse_args()
    (arguments.to / "frequency").mkdir(exist_ok=True)
    for language in arguments.languages:
        if language not in wordfreq.available_languages():
            print(f"{language}: wordfreq has no list")
            continue
        contents = draw(language, ROWS.get(language, OTHERS))
        write_table(
            arguments.to, f"frequency/{language}.tsv", contents,
            source="wordfreq (Robyn Speer), which draws on Wikipedia, OPUS subtitles, newspapers, Google "
                   "Books Ngrams 2012, OSCAR, Twitter and Reddit as its documentation says; PyPI package wordfreq",
            version="3.1.1", licence="CC BY-SA 4.0 (data), Apache 2.0 (code); licences/wordfreq.txt",
            build=f"python wordlists/build/frequencies.py {language}",
        )  # fmt: skip


if __name__ == "__main__":
    main()
