"""Turn wordlists/curated/nice_words.txt into the table wordlists/nice_words.tsv: goods term -> Nice classes.

python wordlists/build/nice_words.py [--to FOLDER]
"""

from __future__ import annotations

import argparse
from collections import defaultdict
from pathlib import Path

from sources import record_source

from namescreen.text import parse
from namescreen.tables import table_bytes, write_whole

HERE = Path(__file__).resolve().parent.parent


def draw() -> bytes:
    """The table; terms are divided and folded as names are."""
    classes: dict[str, set[int]] = defaultdict(set)
    for line in (HERE / "curated" / "nice_words.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            number, terms = line.split(":")
            for term in terms.split(","):
                classes[" ".join(parse(term).words)].add(int(number))
    return table_bytes("nice_words", ((term, " ".join(map(str, sorted(c)))) for term, c in classes.items()))


def main() -> None:
    """Write the table and its source record."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--to", type=Path, default=HERE)
    to = parser.parse_args().to
    contents = draw()
    write_whole(to / "nice_words.tsv", contents)
    print(f"nice_words.tsv: {len(contents):,} bytes")
    record_source(
        to,
        "nice_words.tsv",
        contents,
        source="written by us from memory of the Nice Classification (WIPO), to be checked against it",
        version="own list of 2026-11-25, after the 12th edition",
        licence="MIT, as the rest of this project",
        build="python wordlists/build/nice_words.py",
    )


if __name__ == "__main__":
    main()
