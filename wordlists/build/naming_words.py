"""Draw the tables of name-making from the lists in wordlists/curated/, which we wrote ourselves.

python wordlists/build/naming_words.py [--to FOLDER]

affixes.tsv           affix and kind -> AFTER|TONES|MEANING|SOUNDS
combining_forms.tsv   an English word -> its Latin and Greek forms, FORM:PLACE:ORIGIN, separated by spaces
companions.tsv        place and tone ("after warm") -> words
respellings.tsv       number -> PATTERN|REPLACEMENT|WHAT
unfit_words.tsv       word -> kind
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

from sources import record_source

from namescreen.tables import table_bytes, write_whole

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


def combining_forms() -> Entries:
    """English word -> forms."""
    forms: dict[str, list[str]] = {}
    for form, place, origin, words in map(cells, lines("combining_forms.txt")):
        for word in words.split():
            forms.setdefault(word, []).append(f"{form}:{place}:{origin}")
    return {word: " ".join(found) for word, found in forms.items()}


def companions() -> Entries:
    """Place and tone -> words."""
    found: dict[str, list[str]] = {}
    for line in lines("companions.txt"):
        head, _, words = line.partition(":")
        place, *tones = head.split()
        for tone in tones:
            found.setdefault(f"{place} {tone}", []).extend(words.split())
    return {key: " ".join(dict.fromkeys(words)) for key, words in found.items()}


def respellings() -> Entries:
    """Number -> pattern, replacement, what."""
    return {f"{number:03}": "|".join(cells(line)) for number, line in enumerate(lines("respellings.txt"))}


def unfit_words() -> Entries:
    """Word -> the first kind it is listed under."""
    found: Entries = {}
    for line in lines("unfit_words.txt"):
        kind, _, words = line.partition(":")
        for word in words.split():
            found.setdefault(word, kind)
    return found


def main() -> None:
    """Write the tables, each with the record of its source."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--to", type=Path, default=FOLDER)
    folder = parser.parse_args().to
    for draw in (affixes, combining_forms, companions, respellings, unfit_words):
        name = draw.__name__
        contents = table_bytes(name, draw().items())
        write_whole(folder / f"{name}.tsv", contents)
        record_source(
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
