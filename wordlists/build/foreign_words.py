"""Draw the tables of foreign equivalents from the hand-written list wordlists/curated/foreign_words.txt.

python wordlists/build/foreign_words.py
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import record_source

from namescreen.text import fold
from namescreen.tables import table_bytes, write_whole

LISTS = Path(__file__).parents[1]
LANGUAGES = ("fr", "es", "it", "de", "pt", "nl", "sv", "la")
SHORTEST = 3
"""Shorter words are left out: too many of them mean something in some language."""


def main() -> None:
    """Write foreign_words.tsv (foreign word to language:English) and foreign_of.tsv (English to foreign words)."""
    to_english: dict[str, set[str]] = defaultdict(set)
    to_foreign: dict[str, set[str]] = defaultdict(set)
    for line in (LISTS / "curated/foreign_words.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("#"):
            continue
        english, *columns = (part.strip() for part in line.split("|"))
        if len(columns) != len(LANGUAGES):
            raise ValueError(f"{english}: {len(columns)} languages instead of {len(LANGUAGES)}")
        for language, forms in zip(LANGUAGES, columns, strict=True):
            for form in map(fold, forms.split()):
                if len(form) >= SHORTEST and form != english:
                    to_english[form].add(f"{language}:{english}")
                    to_foreign[english].add(form)
    for name, rows, separator in (("foreign_words", to_english, ","), ("foreign_of", to_foreign, " ")):
        contents = table_bytes(name, ((key, separator.join(sorted(values))) for key, values in rows.items()))
        write_whole(LISTS / f"{name}.tsv", contents)
        record_source(
            LISTS,
            f"{name}.tsv",
            contents,
            source="wordlists/curated/foreign_words.txt, written by us from memory",
            version="2026-11-25",
            licence="the project's own (MIT)",
            build="python wordlists/build/foreign_words.py",
        )


if __name__ == "__main__":
    main()
