"""Turn wordlists/curated/combining_forms.txt into wordlists/combining_forms.tsv: combining form -> its meaning.

python wordlists/build/combining_forms.py [--to FOLDER]
"""

from __future__ import annotations

from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent


def build() -> dict[str, str]:
    """The meaning of every form."""
    lines = (HERE / "curated" / "combining_forms.txt").read_text(encoding="utf-8").splitlines()
    found: dict[str, str] = {}
    for line in lines:
        forms, _, meaning = line.partition("|")
        if meaning and not line.startswith("#"):
            found |= dict.fromkeys(forms.split(), meaning.strip().lower())
    return found


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    found = build()
    write_table(
        to, "combining_forms.tsv", table_bytes("combining_forms", sorted(found.items())),
        source="wordlists/curated/combining_forms.txt, Greek, Latin and clipped combining forms with their meanings, "
        "written for namescreen from memory of dictionaries; no list was copied",
        version=f"{len(found)} forms", licence="MIT, as namescreen", build="python wordlists/build/combining_forms.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
