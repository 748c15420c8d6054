"""Turn wordlists/curated/praise.txt into wordlists/praise.tsv: word of praise -> the languages that have it.

python wordlists/build/praise.py [--to FOLDER]

Words are divided and folded as names are.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    found: dict[str, set[str]] = defaultdict(set)
    for line in (HERE / "curated" / "praise.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            language, _, words = line.partition(":")
            for word in words.split(","):
                found[" ".join(parse(word.strip()).words)].add(language)
    write_table(
        to, "praise.tsv", table_bytes("praise", ((word, " ".join(sorted(found[word]))) for word in found)),
        source="wordlists/curated/praise.txt, words of praise of 24 languages, written for namescreen from memory; no "
        "list was copied",
        version=f"{len(found)} words", licence="MIT, as namescreen", build="python wordlists/build/praise.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
