"""Build the letter patterns of each language, wordlists/letters/LANGUAGE.tsv, from the wordfreq package.

    python wordlists/build/letters.py [--to FOLDER] [LANGUAGE ...]

Trained on the 30,000 most frequent words of three letters and more, with their accents, that are not English
words quoted in the language (more than twice as frequent in English). The alphabet is the main exemplar set
of the Unicode CLDR as ICU carries it (PyPI PyICU, or Debian python3-icu); that of English is a to z.
"""

from __future__ import annotations

import argparse
import unicodedata
from collections import Counter
from pathlib import Path
from string import ascii_lowercase

import wordfreq
from sources import write_table

from namescreen.lexicon.letter_patterns import train
from namescreen.tables import table_bytes

LANGUAGES = "en de fr es it pt nl sv da nb fi pl cs tr hu ro el ru uk ar he hi id".split()
WORDS = 30_000
QUOTED = 10**0.3
RARE = 0.006


def words(language: str) -> list[str]:
    """The language's own frequent words, most frequent first."""
    best = "large" if language in wordfreq.available_languages("large") else "small"
    english = wordfreq.get_frequency_dict("en", "large")
    latin = language not in ("el", "ru", "uk", "ar", "he", "hi")
    own = []
    for word, frequency in wordfreq.get_frequency_dict(language, best).items():
        word = unicodedata.normalize("NFC", word)
        if len(word) < 3 or not all(unicodedata.category(letter)[0] in "LM" for letter in word):
            continue
        if frequency * QUOTED < english.get(word, 0.0) or (word.isascii() and not latin):
            continue
        own.append((-frequency, word))
    return [word for _, word in sorted(own)[:WORDS]]


def alphabet(language: str, own: list[str]) -> str:
    """The letters at home in the language, with spaces between: its alphabet, without plain letters that it
    keeps for loans and names (k and w in Spanish, j k w x y in Italian), known by standing in fewer than
    `RARE` of its words."""
    if language == "en":
        return " ".join(ascii_lowercase)
    import icu  # type: ignore[import-not-found,import-untyped,unused-ignore]

    letters = {str(letter).lower() for letter in icu.LocaleData(language).getExemplarSet(0, 0)}
    held = Counter(letter for word in own for letter in set(word))
    at_home = (
        letter
        for letter in letters
        if len(letter) == 1 and letter.isalpha() and not (letter.isascii() and held[letter] < RARE * len(own))
    )
    return " ".join(sorted(at_home))


def draw(language: str) -> bytes:
    """The table of one language."""
    own = words(language)
    entries = train(own) | {"%letters": alphabet(language, own)}
    return table_bytes(f"letters-{language}", entries.items())


def main() -> None:
    """Draw, write, and say how much."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--to", type=Path, default=Path(__file__).resolve().parent.parent)
    parser.add_argument("languages", nargs="*", default=LANGUAGES)
    arguments = parser.parse_args()
    (arguments.to / "letters").mkdir(exist_ok=True)
    for language in arguments.languages:
        contents = draw(language)
        write_table(
            arguments.to,
            f"letters/{language}.tsv",
            contents,
            source="wordfreq (Robyn Speer), letter statistics of its word list; the alphabet from Unicode CLDR "
            "as ICU 72.1 holds it",
            version="wordfreq 3.1.1",
            licence="CC BY-SA 4.0; licences/wordfreq.txt, licences/unicode.txt",
            build=f"python wordlists/build/letters.py {language}",
        )


if __name__ == "__main__":
    main()
