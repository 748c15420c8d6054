"""Turn wordlists/curated/naming_local_LANGUAGE.txt into wordlists/naming_local.tsv.

python wordlists/build/naming_local.py [--to FOLDER]

LANGUAGE NUMBER -> SUBJECT|NAME=RATING=MEANING; NAME=RATING=MEANING; ..., the best first.
"""

from __future__ import annotations

from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
BEFORE = "naming_local_"


def _rows(path: Path) -> list[tuple[str, str]]:
    """The entries of one language, each from a line SUBJECT | NAME RATING = MEANING; ..."""
    language = path.stem.removeprefix(BEFORE)
    lines = (line for line in path.read_text(encoding="utf-8").splitlines() if line and not line.startswith("#"))
    found = []
    for number, line in enumerate(lines):
        about, _, names = line.partition("|")
        told = [(*name.strip().rpartition(" ")[::2], meaning.strip()) for name, _, meaning in (
            one.partition("=") for one in names.split(";"))]  # fmt: skip
        told.sort(key=lambda one: -float(one[1]))
        found.append((f"{language} {number:04}", f"{' '.join(about.split())}|{'; '.join(map('='.join, told))}"))
    return found


def build() -> tuple[bytes, int]:
    """The table, and how many languages it holds."""
    paths = sorted((HERE / "curated").glob(f"{BEFORE}*.txt"))
    return table_bytes("naming_local", [row for path in paths for row in _rows(path)]), len(paths)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, languages = build()
    print(f"{languages} languages")
    write_table(
        to, "naming_local.tsv", contents,
        source="wordlists/curated/naming_local_*.txt, names for subjects in the languages of buyers, written for "
        "namescreen from memory; rated by runs of a language model",
        version=f"{languages} languages", licence="MIT, as namescreen", build="python wordlists/build/naming_local.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
