"""Turn wordlists/curated/given_names.txt into wordlists/given_names.tsv: given name -> the lines that hold it.

python wordlists/build/given_names.py [--to FOLDER]

name -> numbers of names, separated by spaces: names with a number in common are one name in several languages.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent


def build() -> tuple[bytes, int]:
    """The table, and how many names it holds."""
    lines = (HERE / "curated" / "given_names.txt").read_text(encoding="utf-8").splitlines()
    names: dict[str, list[str]] = defaultdict(list)
    for number, line in enumerate((line for line in lines if line and not line.startswith("#")), 1):
        for name in dict.fromkeys(line.split()):
            names[name].append(str(number))
    return table_bytes("given_names", sorted((name, " ".join(numbers)) for name, numbers in names.items())), len(names)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, count = build()
    print(f"{count} names")
    write_table(
        to, "given_names.tsv", contents,
        source="wordlists/curated/given_names.txt, given names that are one name in several languages, written for "
        "namescreen from memory; no list was copied",
        version=f"{count} names", licence="MIT, as namescreen", build="python wordlists/build/given_names.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
