"""Build wordlists/word_kinds.tsv: word -> the kinds of word it is, as KIND or KIND:RANK, comma-separated;
*KIND -> the words of a small closed kind; *firm WORD -> the Nice classes of the trade whose firms call themselves so.

    python wordlists/build/word_kinds.py [--to FOLDER]

Places come from the shipped WordNet tables (run wordnet.py first): instances in the lexicographer files
noun.location and noun.object, and adjectives that pertain to them. Surnames and given names with their
ranks are those of the US Census of 1990 (public domain), as the PyPI package `names` carries them: the most
frequent, and of the rarer ones those of our own list, wordlists/curated/surnames.txt, whether the census has them or
not. The small closed kinds are our own, in wordlists/curated/word_kinds.txt, and the words of firms in
firm_words.txt."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import names
from sources import folder_to_write, write_table

from namescreen.lexicon.wordnet import DOMAINS, lexicon
from namescreen.tables import open_table, table_bytes
from namescreen.text import fold

HERE = Path(__file__).resolve().parent.parent
SURNAMES = 30_000
UNLISTED = 90_000
"""The rank of a surname that the census does not list, after its 88,799."""
LEAST = 4
"""Letters of the shortest rare surname: shorter ones are too often something else."""


def curated() -> dict[str, set[str]]:
    """The small closed kinds, from our own list."""
    found: dict[str, set[str]] = defaultdict(set)
    for line in (HERE / "curated" / "word_kinds.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            kind, words = line.split(":")
            for word in words.split():
                found[word.replace("_", " ")].add(kind)
    return found


def firms() -> dict[str, set[int]]:
    """What firms of a trade call themselves, with the classes of its goods."""
    found: dict[str, set[int]] = defaultdict(set)
    for line in (HERE / "curated" / "firm_words.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            classes, words = line.split(":")
            for word in words.split():
                found[word].update(map(int, classes.split()))
    return found


def place_senses() -> set[str]:
    """The senses of WordNet that are single places: instances in noun.location and noun.object."""
    words = lexicon()
    return {
        sense_id
        for sense_id, _ in open_table("wordnet-senses.tsv").items()
        if sense_id[0] == "n"
        and DOMAINS[words.entry(sense_id).domain] in ("noun.location", "noun.object")
        and any(symbol == "@i" for symbol, *_ in words.pointers(sense_id))
    }


def places() -> set[str]:
    """Words for places: proper nouns that WordNet files as instances, and the adjectives formed from them."""
    words = lexicon()
    found: set[str] = set()
    for sense_id in sorted(place_senses()):
        found.update(word for word in words.entry(sense_id).words if word[0].isupper())
        for symbol, other, _, there in words.pointers(sense_id):
            if symbol in ("<\\", "+") and there:
                word = words.entry(other).words[there - 1]
                if word[0].isupper():
                    found.add(word)
    return {fold(word) for word in found}


def surnames() -> dict[str, int]:
    """Surnames and their ranks: the most frequent of the census, and the rarer ones of our list."""
    every = ranked("dist.all.last", -1)
    found = {name: rank for name, rank in every.items() if rank <= SURNAMES}
    for line in (HERE / "curated" / "surnames.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            listed = map(fold, line.partition(":")[2].split())
            found |= {name: every.get(name, UNLISTED) for name in listed if len(name) >= LEAST and name.isalpha()}
    return found


def ranked(file: str, rows: int) -> dict[str, int]:
    """Names and their ranks from one census file, the first `rows` or, with -1, all."""
    lines = (Path(names.__file__).parent / file).read_text(encoding="ascii").splitlines()[: rows if rows > 0 else None]
    return {name.lower(): int(rank) for name, _, _, rank in (line.split() for line in lines)}


def draw() -> bytes:
    """The table."""
    kinds: dict[str, set[str]] = curated()
    closed: dict[str, list[str]] = defaultdict(list)
    for word, of_word in kinds.items():
        for kind in of_word if " " not in word else ():
            closed[kind].append(word)
    for word in places():
        kinds[word].add("place")
    for word, rank in surnames().items():
        kinds[word].add(f"surname:{rank}")
    female, male = ranked("dist.female.first", 5000), ranked("dist.male.first", 5000)
    for word in female.keys() | male.keys():
        kinds[word].add(f"given name:{min(female.get(word, 9999), male.get(word, 9999))}")
    rows = [(word, ",".join(sorted(of_word))) for word, of_word in kinds.items()]
    rows += [(f"*{kind}", " ".join(sorted(words))) for kind, words in closed.items()]
    rows += [(f"*firm {word}", " ".join(map(str, sorted(classes)))) for word, classes in firms().items()]
    return table_bytes("word_kinds", rows)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents = draw()
    write_table(
        to,
        "word_kinds.tsv",
        contents,
        source="WordNet 3.0 (places); US Census Bureau names of 1990, as in the PyPI package "
        "names 0.3.0; rare surnames, small closed kinds and words of firms written by us, curated/surnames.txt, "
        "word_kinds.txt and firm_words.txt",
        version="WordNet 3.0; names 0.3.0; own list of 2026-11-25",
        licence="WordNet 3.0 licence; public domain; MIT",
        build="python wordlists/build/word_kinds.py (after wordnet.py)",
    )


if __name__ == "__main__":
    main()
