"""Turn wordlists/curated/shop_words.txt into wordlists/shop_words.tsv: folded word or words -> LANGUAGE=ENGLISH,
separated by "|".

python wordlists/build/shop_words.py [--to FOLDER]

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
    found: dict[str, list[str]] = defaultdict(list)
    for line in (HERE / "curated" / "shop_words.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            language, _, pairs = line.partition(":")
            for word, _, english in (pair.partition("=") for pair in pairs.split(",")):
                found[" ".join(parse(word.strip()).words)].append(f"{language}={english.strip()}")
    write_table(
        to, "shop_words.tsv", table_bytes("shop_words", ((word, "|".join(found[word])) for word in found)),
        source="wordlists/curated/shop_words.txt, words for goods of languages that have no dictionary here, and of "
        "English in some countries, written for namescreen from memory; no list was copied",
        version=f"{len(found)} words and phrases",
        licence="MIT, as namescreen", build="python wordlists/build/shop_words.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
