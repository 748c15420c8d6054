"""Turn wordlists/curated/trade_words.txt into wordlists/trade_words.tsv: term of a trade -> where it is told of.

python wordlists/build/trade_words.py [--to FOLDER]

term -> numbers of areas, separated by spaces; *NUMBER -> CLASSES|GOODS|WHAT of that area, goods in base form. Terms are
divided and folded as names are.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.goods.words import base_form
from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent


def build() -> tuple[bytes, int]:
    """The table, and how many terms it holds."""
    areas: dict[str, str] = {}
    terms: dict[str, list[str]] = defaultdict(list)
    for line in (HERE / "curated" / "trade_words.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            classes, goods, what, words = (part.strip() for part in line.split("|"))
            number = str(len(areas) + 1)
            named = dict.fromkeys(" ".join(map(base_form, one.split())) for one in goods.split(","))
            areas[f"*{number}"] = f"{classes}|{','.join(named)}|{what}"
            for word in dict.fromkeys(" ".join(parse(one.strip()).words) for one in words.split(",")):
                terms[word].append(number)
    rows = [(term, " ".join(numbers)) for term, numbers in terms.items()]
    return table_bytes("trade_words", (*rows, *areas.items())), len(terms)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, count = build()
    print(f"{count} terms")
    write_table(
        to, "trade_words.tsv", contents,
        source="wordlists/curated/trade_words.txt, terms of art of some eighty trades, written for namescreen from "
        "memory; no list was copied",
        version=f"{count} terms", licence="MIT, as namescreen", build="python wordlists/build/trade_words.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
