"""Draw wordlists/rimes.tsv from the pronunciations: how written rimes of words of one syllable are read.

    python wordlists/build/rimes.py [--to FOLDER]

A row: the letters, the sounds as codes, and the commonest letters for these sounds. Kept are rimes of at least `LEAST`
words of which `SHARE` are read alike.
"""

from __future__ import annotations

from collections import Counter, defaultdict

from sources import folder_to_write, write_table

from namescreen.lexicon import zipf
from namescreen.pronunciation.phones import VOWEL_LETTERS
from namescreen.pronunciation.rimes import RIME
from namescreen.tables import open_table, table_bytes, wordlists_folder

LEAST, SHARE, COMMON = 2, 0.6, 1.0
"""`COMMON` is the least frequency of a word that counts, on the Zipf scale (`lexicon.zipf`)."""


def rimes() -> dict[str, tuple[str, int]]:
    """The sounds of each rime, and how many words are read so."""
    found: dict[str, Counter[str]] = defaultdict(Counter)
    for word, readings in open_table("pronunciations.tsv").items():
        match = RIME.search(word)
        code = readings.split(" ")[0].replace("1", "").replace("2", "")
        vowels = [at for at, letter in enumerate(code) if letter in VOWEL_LETTERS]
        if match and len(vowels) == 1 and zipf(word) >= COMMON:
            found[match[1]][code[vowels[0] :]] += 1
    likeliest = {rime: (*sounds.most_common(1)[0], sounds.total()) for rime, sounds in found.items()}
    return {
        rime: (sound, count)
        for rime, (sound, count, every) in likeliest.items()
        if every >= LEAST and count >= SHARE * every
    }


def main() -> None:
    """Write the table."""
    found = rimes()
    commonest: dict[str, str] = {}
    for rime, (sound, _) in sorted(found.items(), key=lambda item: (-item[1][1], item[0])):
        commonest.setdefault(sound, rime)
    rows = sorted((rime, f"{sound} {commonest[sound]}") for rime, (sound, _) in found.items())
    write_table(
        folder_to_write(__doc__ or "", wordlists_folder()),
        "rimes.tsv",
        table_bytes("rimes", rows),
        source="pronunciations.tsv and frequency/en.tsv",
        version="as these",
        licence="as these",
        build="python wordlists/build/rimes.py",
    )


if __name__ == "__main__":
    main()
