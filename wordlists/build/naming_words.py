"""Build the tables of name-making from the lists in wordlists/curated/, which we wrote ourselves.

python wordlists/build/naming_words.py [--to FOLDER]

affixes.tsv           affix and kind -> AFTER|TONES|MEANING|SOUNDS
unfit_words.tsv       word -> kind
english_ill_words.tsv word -> KIND|SEVERITY|MARKETS|MEANING, for readings in English
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.tables import table_bytes

FOLDER = Path(__file__).parent.parent
CURATED = FOLDER / "curated"
Entries = dict[str, str]


def lines(name: str) -> Iterator[str]:
    """The lines of a curated list that hold something."""
    for line in (CURATED / name).read_text("utf-8").splitlines():
        if line.strip() and not line.startswith("#"):
            yield line.strip()


def cells(line: str) -> list[str]:
    """The parts of a line between bars."""
    return [cell.strip() for cell in line.split("|")]


def affixes() -> Entries:
    """Affix and kind -> the rest of its line."""
    return {f"{form} {kind}": "|".join(rest) for form, kind, *rest in map(cells, lines("affixes.txt"))}


def unfit_words() -> Entries:
    """Word -> the first kind it is listed under."""
    found: Entries = {}
    for line in lines("unfit_words.txt"):
        kind, _, words = line.partition(":")
        for word in words.split():
            found.setdefault(word, kind)
    return found


def english_ill_words() -> Entries:
    """Word -> the gravest line it is listed in, by severity, then the first."""
    found: dict[str, tuple[int, str]] = {}
    for line in lines("english_ill_words.txt"):
        about, meaning, words = cells(line)
        kind, severity, *markets = about.split()
        for word in words.split():
            if word not in found or int(severity) > found[word][0]:
                found[word] = int(severity), "|".join((kind, severity, " ".join(markets), meaning))
    return {word: told for word, (_, told) in found.items()}


def main() -> None:
    """Write the tables, each with the record of its source."""
    folder = folder_to_write(__doc__, FOLDER)
    for draw in (affixes, unfit_words, english_ill_words):
        name = draw.__name__
        contents = table_bytes(name, draw().items())
        write_table(
            folder,
            f"{name}.tsv",
            contents,
            source=f"wordlists/curated/{name}.txt, written for namescreen; no list was copied",
            version="1",
            licence="MIT, as namescreen",
            build="python wordlists/build/naming_words.py",
        )


if __name__ == "__main__":
    main()
