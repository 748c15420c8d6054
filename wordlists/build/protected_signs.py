"""Turn wordlists/curated/protected_signs.txt into wordlists/protected_signs.tsv: sign -> kind, territory, classes.

python wordlists/build/protected_signs.py [--to FOLDER]

Signs are divided and folded as names are; a stem keeps the hyphen that says at which end it stands. A sign listed
several times has its entries joined by semicolons.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent


def build() -> tuple[bytes, int]:
    """The table, and how many signs it holds."""
    table: dict[str, list[str]] = defaultdict(list)
    for line in (HERE / "curated" / "protected_signs.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            kind, territory, classes, signs = (part.strip() for part in line.split("|"))
            for sign in signs.split(","):
                key = sign.strip() if kind == "stem" else " ".join(parse(sign.strip()).words)
                numbers = " ".join(classes.replace(",", " ").split())
                table[key].append(f"{kind}|{territory}|{numbers}")
    return table_bytes("protected_signs", ((sign, ";".join(entries)) for sign, entries in table.items())), len(table)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, count = build()
    write_table(
        to, "protected_signs.tsv", contents,
        source="wordlists/curated/protected_signs.txt, written for namescreen from memory of registers of geographical "
        "indications, the Paris Convention (Article 6ter), laws on Olympic and royal emblems and the WHO's stems; "
        "incomplete, to be checked with the office",
        version=f"{count} signs", licence="facts; MIT, as namescreen",
        build="python wordlists/build/protected_signs.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
