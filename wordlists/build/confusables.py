"""Build wordlists/confusables.tsv: characters and their prototypes, Unicode Technical Standard #39.

    python wordlists/build/confusables.py [--to FOLDER]

Needs PyICU (PyPI PyICU, or Debian python3-icu): ICU carries Unicode's confusables.txt and answers by its
SpoofChecker, so the rows are ICU's skeletons of single characters. Kept are characters of the Latin, Greek,
Cyrillic, Armenian and Common scripts, and letters of other scripts whose skeleton is one or more ASCII
letters.
"""

from __future__ import annotations

import sys
import unicodedata
from pathlib import Path

import icu  # type: ignore[import-not-found,import-untyped,unused-ignore]
from sources import folder_to_write, write_table

from namescreen.connotations.scripts import script
from namescreen.tables import table_bytes

SCRIPTS = ("Latin", "Greek", "Cyrillic", "Armenian")


def rows() -> dict[str, str]:
    """Every kept character whose prototype is not itself."""
    checker = icu.SpoofChecker()
    found = {}
    for number in range(0x21, sys.maxunicode + 1):
        character = chr(number)
        kind = unicodedata.category(character)
        if kind[0] not in "LNPSM" or unicodedata.normalize("NFD", character) != character:
            continue
        prototype = unicodedata.normalize("NFD", checker.getSkeleton(0, character))
        if prototype == character:
            continue
        latin = prototype.isascii() and prototype.isalpha()
        if script(character) in SCRIPTS or latin or (number < 0x250 and kind[0] in "NPS"):
            found[character] = prototype
    return found


def main() -> None:
    """Draw, write, and say how much."""
    to = folder_to_write(__doc__, Path(__file__).resolve().parent.parent)
    contents = table_bytes("confusables", rows().items())
    write_table(
        to, "confusables.tsv", contents,
        source=f"Unicode, Inc.: confusables.txt of UTS #39, Unicode {icu.UNICODE_VERSION}, "
        f"as ICU {icu.ICU_VERSION} holds it",
        version=str(icu.UNICODE_VERSION), licence="Unicode License; licences/unicode.txt",
        build="python wordlists/build/confusables.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
