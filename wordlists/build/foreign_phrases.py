"""Build the table of phrases of other languages that say one thing with several words (French arc en ciel:
rainbow).

    NLTK_DATA=FOLDER python wordlists/build/foreign_phrases.py --omw FOLDER [--to FOLDER]

foreign_phrases.tsv   folded phrase of two or three words -> LANGUAGE:ENGLISH:ENGLISH,...

Source: the nouns of the wordnets that foreign_words.py reads too, joined with WordNet 3.0 by synset. English is a known
word; what has no word in English either is mostly read word for word. A phrase that
English has too, or that is all common English words, is left out: there the name is read as English. Run after
wordnet.py and frequencies.py."""

from __future__ import annotations

import argparse
from collections import defaultdict
from pathlib import Path

from foreign_words import LISTS, wordnet_files
from sources import write_table

from namescreen.lexicon import lexicon, zipf
from namescreen.tables import table_bytes
from namescreen.text import tokenize

MOST_WORDS = 3
KNOWN = 2.0
"""Zipf value from which an English noun is known to buyers: once in ten million words."""
LEADING = 5
"""How leading the sense must be for the English word, of 9: else the phrase says a side meaning of it."""
BEST_KNOWN = 3
"""So many of a sense's English words are kept."""
KINDS = frozenset(
    f"noun.{kind}" for kind in ("animal", "artifact", "food", "object", "phenomenon", "plant", "substance")
)
"""What marks are named after: things that can be seen (lexicographer files of WordNet)."""
LANGUAGES = ("de", "fr", "es", "it", "nl", "pt", "sv", "da", "nb", "fi", "pl", "cs", "hu", "ro", "tr")
"""Those with a table that are written in Latin letters, as most marks are, and have most speakers: for its size."""
COMMON = 3.0
"""Zipf value of a common English word."""
LEAST_LETTERS = 6
"""Letters of a phrase without spaces; shorter ones are abbreviations and particles."""


def english_of(sense_id: str) -> list[str]:
    """The known English nouns of one word that have this as a leading sense, the best known first; none unless it is of
    one of the `KINDS`."""
    try:
        entry = lexicon().entry(sense_id)
    except KeyError:
        return []
    if lexicon().domain(sense_id) not in KINDS:
        return []
    words = {
        word
        for word, strength in zip(entry.words, entry.strengths, strict=True)
        if strength >= LEADING and word.isalpha() and word.islower() and zipf(word) >= KNOWN
    }
    return sorted(words, key=lambda word: (-zipf(word), word))[:BEST_KNOWN]


def is_english(words: tuple[str, ...]) -> bool:
    """Whether English readers take the phrase for English."""
    return lexicon().known(" ".join(words)) or all(zipf(word) >= COMMON for word in words)


def phrases(omw: Path) -> dict[str, dict[str, list[str]]]:
    """The English equivalents of every phrase, by language."""
    found: dict[str, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
    for language in LANGUAGES:
        for path, _ in wordnet_files(omw, language):
            for line in path.read_text(encoding="utf-8").splitlines():
                cells = line.split("\t")
                if len(cells) < 3 or not cells[1].endswith("lemma") or not cells[0].endswith("-n"):
                    continue
                words = tuple(tokenize(cells[2].replace("_", " ")))
                if not 2 <= len(words) <= MOST_WORDS or len("".join(words)) < LEAST_LETTERS or is_english(words):
                    continue
                said = found[" ".join(words)][language]
                said += [one for one in english_of("n" + str(int(cells[0][:-2]))) if one not in said]
    return found


def main() -> None:
    """Write the table and the record of its source."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--omw", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=LISTS)
    given = parser.parse_args()
    rows = (
        (phrase, ",".join(":".join((code, *english)) for code, english in of.items() if english))
        for phrase, of in phrases(given.omw).items()
    )
    write_table(
        given.to,
        "foreign_phrases.tsv",
        table_bytes("foreign_phrases", (row for row in rows if row[1])),
        source="Open Multilingual Wordnet (wordnets and Wiktionary extension, see foreign_words.tsv)",
        version="OMW 1.2 and 2.0; Wiktionary extension 2013",
        licence="of each wordnet as for foreign_words.tsv; Wiktionary CC BY-SA 3.0",
        build="NLTK_DATA=FOLDER python wordlists/build/foreign_phrases.py --omw FOLDER",
        drawn="2026-11-29",
    )


if __name__ == "__main__":
    main()
