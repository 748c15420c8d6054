"""Turn wordlists/curated/ware_names*.txt into wordlists/foreign_wares.tsv: LANGUAGE:name -> English names, separated
by ";", the usual one first.

python wordlists/build/ware_names.py [--to FOLDER]

Names are folded.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from sources import by_language, folder_to_write, write_table

from namescreen.tables import open_table, table_bytes
from namescreen.text import fold, tokenize

LISTED = ("goods_groups.tsv", "broader_goods.tsv")
CURATED = Path(__file__).resolve().parent.parent / "curated"


def ware_names() -> Iterator[tuple[str, str, str]]:
    """Language, folded name and English of every entry: of several English names of one ware the first that lists of
    goods have."""
    for english, names in entries():
        known = (one for one in english if any(one in open_table(name) for name in LISTED))
        best = next(known, english[0])
        yield from ((language, name, best) for language, name in names)


def entries() -> Iterator[tuple[list[str], list[tuple[str, str]]]]:
    """The English names of each ware, and its folded names with their languages."""
    for path in sorted(CURATED.glob("ware_names*.txt")):
        for english, cells in by_language(path):
            said = ((language, tokenize(name)) for language, names in cells for name in names.split(";"))
            yield [*map(fold, english.split("/"))], [(language, " ".join(words)) for language, words in said if words]


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, CURATED.parent)
    found: dict[str, dict[str, None]] = {}
    for language, name, english in ware_names():
        found.setdefault(f"{language}:{name}", {})[english] = None
    languages = sorted({key.partition(":")[0] for key in found})
    write_table(
        to, "foreign_wares.tsv", table_bytes("foreign_wares", ((name, ";".join(of)) for name, of in found.items())),
        source="wordlists/curated/ware_names*.txt, names of wares as small makers and shops state them, written for "
        "namescreen from memory; no list was copied",
        version=f"{len(found)} names in {', '.join(languages)}",
        licence="MIT, as namescreen", build="python wordlists/build/ware_names.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
