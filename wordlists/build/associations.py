"""Build wordlists/associations.tsv: which words are met together in the definitions of WordNet 3.0.

    NLTK_DATA=FOLDER python wordlists/build/associations.py [--to FOLDER]

No definition is kept. A word and a word that its definition or example mentions are associated, both ways:
denim with jeans, foot with heel. Each mention counts by how leading the sense is for the word; the
association is the positive pointwise mutual information of the two (Church and Hanks 1990), damped for rare
events as in Pantel and Lin 2002, and of a word's associations the strongest stay. A row: word ->
WORD:STRENGTH ..., strongest first, strengths 1 to 99. Run after wordnet.py, frequencies.py and
word_kinds.py."""

from __future__ import annotations

import math
import re
from collections import defaultdict
from pathlib import Path

from nltk.corpus import wordnet as wn
from sources import folder_to_write, write_table

from namescreen.lexicon import kinds, lexicon, zipf
from namescreen.tables import table_bytes

KEPT = 40
FULL = 9.0  # the information, in nats, that counts as 99
TOO_COMMON = 6.0  # Zipf: words such as "make" or "people" say nothing


def content_words(text: str) -> set[str]:
    """The base forms of the content words of `text`."""
    words = lexicon()
    found = set()
    for token in re.findall(r"[a-z]{3,}", text.lower()):
        if "function word" in kinds(token) or zipf(token) >= TOO_COMMON:
            continue
        bases = words.bases(token)
        if bases:
            found.add(bases[0] if token in bases else min(bases, key=lambda base: (-zipf(base), base)))
    return found


def draw() -> bytes:
    """The table, from all definitions and examples."""
    words = lexicon()
    met: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for synset in wn.all_synsets():
        entry = words.entry(f"{synset.pos().replace('s', 'a')}{synset.offset()}")
        mentioned = content_words("; ".join((synset.definition(), *synset.examples())))
        for word, strength in zip(entry.words, entry.strengths, strict=True):
            one = word.lower()
            if zipf(one) == 0.0 or zipf(one) >= TOO_COMMON or "function word" in kinds(one):
                continue
            for other in mentioned - {one}:
                met[one][other] += strength / 9
                met[other][one] += strength / 9
    total = {word: sum(others.values()) for word, others in met.items()}
    everything = sum(total.values())
    rows: dict[str, list[tuple[int, str]]] = {}
    for word in sorted(met):
        scored = []
        for other, together in met[word].items():
            information = math.log(together * everything / (total[word] * total[other]))
            least = min(total[word], total[other])
            information *= together / (together + 1) * least / (least + 1)
            strength = round(min(information / FULL, 1.0) * 99)
            if strength >= 1:
                scored.append((strength, other))
        best = sorted(scored, key=_order)[:KEPT]
        if best:
            rows[word] = best
    return table_bytes("associations", both_ways(rows))


def both_ways(rows: dict[str, list[tuple[int, str]]]) -> list[tuple[str, str]]:
    """The entries of the table: the strongest associations of each word, and of which others it is one."""
    one_of: dict[str, list[tuple[int, str]]] = defaultdict(list)
    own = {word: {other for _, other in best} for word, best in rows.items()}
    for word, best in rows.items():
        for strength, other in best:
            if word not in own.get(other, ()):
                one_of[other].append((strength, word))
    return [
        (word, _written(rows.get(word, [])) + (f" | {_written(sorted(more, key=_order))}" if more else ""))
        for word in sorted({*rows, *one_of})
        if (more := one_of.get(word, [])) or word in rows
    ]


def _order(pair: tuple[int, str]) -> tuple[int, str]:
    return -pair[0], pair[1]


def _written(pairs: list[tuple[int, str]]) -> str:
    return " ".join(f"{other}:{strength}" for strength, other in pairs)


def main() -> None:
    """Write the table and its source record."""
    here = Path(__file__).resolve().parent.parent
    to = folder_to_write(__doc__, here)
    contents = draw()
    write_table(
        to,
        "associations.tsv",
        contents,
        source="WordNet 3.0, Princeton University (read through NLTK): words that definitions and "
        "examples mention, counted; no text of either is kept",
        version="3.0",
        licence="WordNet 3.0 licence, licences/wordnet.txt",
        build="NLTK_DATA=FOLDER python wordlists/build/associations.py",
    )


if __name__ == "__main__":
    main()
