"""How well words of other languages are known that no goods list gave: hide a part of the rows, draw the tables, ask.

    NLTK_DATA=FOLDER python wordlists/build/foreign_words_heldout.py --omw FOLDER --goods foreign_goods.csv
        [--parts 2] [--runs 1] [--most 150] [--languages de,fr] [--misses FILE]

One of --parts random parts of the rows is left out of the tables, which are drawn in a temporary folder; the package is
then run on them, and asked in the ordinary way, by `compare`, whether a hidden word means what the English term says.
Repeated for --runs parts, --most rows a language together. Prints the share found, and of wrong pairs, by language."""

from __future__ import annotations

import argparse
import csv
import json
import os
import random
import subprocess
import sys
import tempfile
from collections import defaultdict
from pathlib import Path

from foreign_words import LISTS, Row, draw, from_goods, goods_rows

MEASURED = "de fr es it nl pt sv da fi pl cs hu ro"
FOUND = 0.7
"""Closeness in meaning from which a word is held to mean the same."""
SEED = 14
ASK = """
import csv, json, sys, namescreen
for row in csv.DictReader(sys.stdin):
    value, other = (namescreen.compare(row["word"], row[name]).meaning for name in ("english", "wrong"))
    print(json.dumps([value or 0.0, other or 0.0]))
"""


def ask(tables: dict[str, bytes], rows: list[Row]) -> list[tuple[float, float]]:
    """The closeness in meaning of each row's word with its English term and with the `wrong` one, by these tables."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "namescreen").symlink_to(LISTS.parent / "namescreen")
        (folder / "wordlists").mkdir()
        for path in LISTS.iterdir():
            (folder / "wordlists" / path.name).symlink_to(path)
        for table, contents in tables.items():
            (folder / "wordlists" / f"{table}.tsv").unlink(missing_ok=True)
            (folder / "wordlists" / f"{table}.tsv").write_bytes(contents)
        asked = folder / "rows.csv"
        with asked.open("w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, [*rows[0]])
            writer.writeheader()
            writer.writerows(rows)
        with asked.open(encoding="utf-8") as file:
            done = subprocess.run(
                [sys.executable, "-c", ASK],
                stdin=file, stdout=subprocess.PIPE, text=True, check=True, cwd=folder,
                env={**os.environ, "PYTHONPATH": name},
            )  # fmt: skip
    return [tuple(json.loads(line)) for line in done.stdout.splitlines()]


def chosen(rows: list[Row], most: int, rng: random.Random) -> list[Row]:
    """At most so many rows a language, each with the English term of another row as the `wrong` one."""
    by_language: dict[str, list[Row]] = defaultdict(list)
    for row in rows:
        by_language[row["language"]].append(row)
    kept = [row for of in by_language.values() for row in rng.sample(of, min(most, len(of)))]
    others = rng.sample(kept, len(kept))
    return [{**row, "wrong": other["english"]} for row, other in zip(kept, others, strict=True)]


def main() -> None:
    """Print the shares and write the misses."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--omw", type=Path, required=True)
    parser.add_argument("--goods", type=Path, required=True)
    parser.add_argument("--parts", type=int, default=2, help="into how many parts the rows are divided")
    parser.add_argument("--runs", type=int, default=1, help="how many of the parts are hidden, one after the other")
    parser.add_argument("--most", type=int, default=150, help="rows asked of a language, over all runs")
    parser.add_argument("--languages", default=MEASURED.replace(" ", ","), help="BCP 47 codes")
    parser.add_argument("--misses", type=Path, help="file for the rows that were not found")
    given = parser.parse_args()
    languages = given.languages.split(",")
    rng = random.Random(SEED)
    rows = goods_rows(given.goods)
    rng.shuffle(rows)
    results: list[tuple[Row, float, float]] = []
    for run in range(given.runs):
        hidden = [row for at, row in enumerate(rows) if at % given.parts == run]
        shown = [row for at, row in enumerate(rows) if at % given.parts != run]
        asked = chosen([row for row in hidden if row["language"] in languages], -(-given.most // given.runs), rng)
        answers = ask(draw(given.omw, from_goods(shown)), asked)
        results += [(row, *answer) for row, answer in zip(asked, answers, strict=True)]
    for code in (*languages, None):
        of = [result for result in results if code in (None, result[0]["language"])]
        found = sum(value >= FOUND for _, value, _ in of)
        pairs = [other for row, _, other in of if row["english"] != row["wrong"]]
        wrong = sum(other >= FOUND for other in pairs)
        print(f"{code or 'all'}\t{len(of)}\t{found / len(of):.3f}\t{wrong / len(pairs):.3f}")
    means = [
        sum(value >= FOUND for row, value, _ in results if row["language"] == code)
        / max(sum(row["language"] == code for row, _, _ in results), 1)
        for code in languages
    ]
    print(f"mean of languages\t\t{sum(means) / len(means):.3f}")
    if given.misses:
        lines = ("\t".join((*row.values(), f"{value:.2f}")) for row, value, _ in results if value < FOUND)
        given.misses.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
