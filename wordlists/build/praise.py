"""Turn praise.txt and messages.txt of wordlists/curated into wordlists/praise.tsv: word of praise -> the languages that
have it; !MESSAGE -> the same, with * for a word or two that differ.

python wordlists/build/praise.py [--to FOLDER]

Words are divided and folded as names are.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.goods.words import plain_words
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    found: dict[str, set[str]] = defaultdict(set)
    for file, mark in (("praise.txt", ""), ("messages.txt", "!")):
        for line in (HERE / "curated" / file).read_text(encoding="utf-8").splitlines():
            if line and not line.startswith("#"):
                language, _, phrases = line.partition(":")
                for phrase in phrases.split(","):
                    found[mark + _folded(phrase)].add(language)
    write_table(
        to, "praise.tsv", table_bytes("praise", ((word, " ".join(sorted(found[word]))) for word in found)),
        source="wordlists/curated/praise.txt, words of praise of 24 languages, and messages.txt, what all makers "
        "put on goods to wear and to give, written for namescreen from memory; no list was copied",
        version=f"{len(found)} words and phrases",
        licence="MIT, as namescreen", build="python wordlists/build/praise.py",
    )  # fmt: skip


def _folded(phrase: str) -> str:
    before, differs, after = phrase.partition("*")
    return " ".join((*plain_words(before), *differs, *plain_words(after)))


if __name__ == "__main__":
    main()
