"""Turn wordlists/curated/kinds_of_goods.txt into wordlists/kinds_of_goods.tsv: the name of goods, in base form -> the
words that stand before it in the trade, comma-separated, and =NAME for the words of another name.

python wordlists/build/kinds_of_goods.py [--to FOLDER]
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.goods.words import base_form
from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent


def build() -> dict[str, dict[str, None]]:
    """The words by the name of the goods."""
    kinds: dict[str, dict[str, None]] = defaultdict(dict)
    for line in (HERE / "curated" / "kinds_of_goods.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            names, words = line.split(":")
            said = [" ".join(parse(word.replace("_", " ")).words) for word in words.split()]
            first, *others = (" ".join(map(base_form, name.split())) for name in names.split(","))
            kinds[first].update(dict.fromkeys(said))
            for name in others:
                kinds[name][f"={first}"] = None
    return kinds


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    kinds = build()
    write_table(
        to, "kinds_of_goods.tsv",
        table_bytes("kinds_of_goods", ((name, ",".join(sorted(words))) for name, words in kinds.items())),
        source="wordlists/curated/kinds_of_goods.txt, written for namescreen ware by ware from memory",
        version=f"{len(kinds)} names of goods", licence="MIT, as namescreen",
        build="python wordlists/build/kinds_of_goods.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
