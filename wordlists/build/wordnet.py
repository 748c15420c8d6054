r"""Build the tables of WordNet 3.0, read through NLTK, wordlists/wordnet-{words,senses,exceptions}.tsv; no glosses.
And wordnet-hierarchy.npy, the broader senses of wordnet-senses.tsv as numbers (namescreen/lexicon/hierarchy.py).

    NLTK_DATA=FOLDER python wordlists/build/wordnet.py [--to FOLDER]

wordnet-words.tsv       word -> senses, most frequent first, as ID:COUNT (tag count, cntlist(5WN)), then
                        other lexicon words of which it is an inflected form, or which are inflected forms
                        of it, as =WORD
wordnet-senses.tsv      ID -> lexicographer file number | narrower senses below it, all levels | words |
                        relations. ID is the part of speech (n v a r) and the offset in WordNet's data file.
                        Each word ends in a digit from 1 to 9: how far this is the word's leading sense (9 =
                        it is the leading one). A relation is a pointer symbol of wndb(5WN) and an ID; one
                        between two words, not two senses, ends in .N.M, their places in the two lists of
                        words. Added to wndb(5WN): the inverses of entailment, cause and pertainym, <* <>
                        <\.
wordnet-exceptions.tsv  irregular form -> base forms, as POS:WORD
"""

from __future__ import annotations

import io
from collections import defaultdict
from pathlib import Path
from typing import Any

import numpy as np
from nltk.corpus import wordnet as wn
from sources import folder_to_write, write_table

from namescreen.lexicon.morphology import base_forms
from namescreen.tables import table_bytes

SENSE_POINTERS = {
    "@": "hypernyms", "@i": "instance_hypernyms", "~": "hyponyms", "~i": "instance_hyponyms",
    "#m": "member_holonyms", "#s": "substance_holonyms", "#p": "part_holonyms",
    "%m": "member_meronyms", "%s": "substance_meronyms", "%p": "part_meronyms",
    "=": "attributes", "*": "entailments", ">": "causes", "^": "also_sees",
    "$": "verb_groups", "&": "similar_tos",
    ";c": "topic_domains", ";r": "region_domains", ";u": "usage_domains",
}  # fmt: skip
WORD_POINTERS = {"!": "antonyms", "+": "derivationally_related_forms", "\\": "pertainyms"}
# Every relation is stored at both ends, so that closeness can be symmetric; WordNet itself gives some at
# one end.
INVERSE = {"@": "~", "@i": "~i", "#m": "%m", "#s": "%s", "#p": "%p", ";c": "-c", ";r": "-r", ";u": "-u",
           "*": "<*", ">": "<>", "\\": "<\\"}  # fmt: skip
INVERSE |= {there: here for here, there in INVERSE.items()} | {symbol: symbol for symbol in "=^$&!+"}
POS_ORDER = "nvar"


def pos_of(synset: Any) -> str:
    """n, v, a or r: a satellite adjective is an adjective."""
    return str(synset.pos()).replace("s", "a")


def id_of(synset: Any) -> str:
    """Part of speech and offset in the data file."""
    return f"{pos_of(synset)}{synset.offset()}"


def plain(word: str) -> str:
    """With spaces, as people write it."""
    return word.replace("_", " ")


def leading(weights: dict[str, float]) -> dict[str, int]:
    """How far each sense is the leading one, 1 to 9: the fourth root of its weight against the heaviest.

    The root keeps a rarer sense visible: a reader who sees SPRING on a mattress thinks of coils, whatever the
    word's commonest sense.
    """
    heaviest = max(weights.values())
    return {sense: max(1, round(9 * (weight / heaviest) ** 0.25)) for sense, weight in weights.items()}


def draw() -> dict[str, bytes]:
    """The tables by file name."""
    synsets = sorted(wn.all_synsets(), key=lambda s: (POS_ORDER.index(pos_of(s)), s.offset()))
    counts: dict[str, dict[str, int]] = defaultdict(dict)
    for synset in synsets:
        for lemma in synset.lemmas():
            counts[plain(lemma.name()).lower()][id_of(synset)] = int(lemma.count())
    ordered = {word: ordered_senses(word, found) for word, found in counts.items()}
    exceptions = read_exceptions()
    inflected = inflections(ordered, exceptions)
    words = {
        word: " ".join(f"{sense}:{counts[word][sense]}" for sense in order)
        + "".join(f"={other}" for other in sorted(inflected.get(word, ())))
        for word, order in ordered.items()
    }
    senses = sense_rows(synsets, ordered)
    return {
        "wordnet-words.tsv": table_bytes("wordnet-words", words.items()),
        "wordnet-senses.tsv": table_bytes("wordnet-senses", senses.items()),
        "wordnet-hierarchy.npy": hierarchy(senses),
        "wordnet-exceptions.tsv": table_bytes(
            "wordnet-exceptions",
            ((form, ",".join(sorted(bases))) for form, bases in exceptions.items()),
        ),
    }


def ordered_senses(word: str, counts: dict[str, int]) -> dict[str, float]:
    """The senses of a word by their counts in texts, then by their rank in WordNet, each with its weight."""
    rank: dict[str, int] = {}
    for pos in POS_ORDER:
        ids = [id_of(s) for s in wn.synsets(word.replace(" ", "_"), "s" if pos == "s" else pos)]
        rank |= {sense: place for place, sense in enumerate((i for i in ids if i in counts), start=1)}
    rank |= {sense: 99 for sense in counts if sense not in rank}
    order = sorted(counts, key=lambda i: (-counts[i], rank[i], POS_ORDER.index(i[0]), int(i[1:])))
    return {sense: counts[sense] + 1 / rank[sense] for sense in order}


def read_exceptions() -> dict[str, set[str]]:
    """Irregular forms, each with its bases by part of speech."""
    exceptions: dict[str, set[str]] = defaultdict(set)
    for pos, name in (("n", "noun"), ("v", "verb"), ("a", "adj"), ("r", "adv")):
        with wn.open(f"{name}.exc") as file:
            for line in file:
                form, *bases = line.split()
                exceptions[plain(form)].update(f"{pos}:{plain(base)}" for base in bases)
    return exceptions


def inflections(ordered: dict[str, dict[str, float]], exceptions: dict[str, set[str]]) -> dict[str, set[str]]:
    """For each word the other words that are its base forms, or whose base form it is."""
    parts = {word: {sense[0] for sense in order} for word, order in ordered.items()}
    inflected: dict[str, set[str]] = defaultdict(set)
    for word in ordered:
        forms = base_forms(
            word,
            lambda form, pos: pos in parts.get(form, ()),
            lambda form, pos: tuple(sorted(e[2:] for e in exceptions.get(form, ()) if e[0] == pos)),
        )
        for base in {base for bases in forms.values() for base in bases} - {word}:
            inflected[word].add(base)
            inflected[base].add(word)
    return inflected


def sense_rows(synsets: list[Any], ordered: dict[str, dict[str, float]]) -> dict[str, str]:
    """The row of every sense: lexicographer file, number of senses below it, words with their strength, relations."""
    lexnames = lexicographer_files()
    strength = {(word, sense): s for word, order in ordered.items() for sense, s in leading(order).items()}
    related = relations(synsets)
    children = {id_of(s): [id_of(c) for c in (*s.hyponyms(), *s.instance_hyponyms())] for s in synsets}
    rows = {}
    for synset in synsets:
        sense = id_of(synset)
        shown = [f"{plain(one.name())}{strength[plain(one.name()).lower(), sense]}" for one in synset.lemmas()]
        assert not any({",", "|"} & set(word) for word in shown)
        rows[sense] = "|".join(
            (
                str(lexnames[synset.lexname()]),
                str(below(sense, children)),
                ",".join(shown),
                " ".join(sorted(related[sense])),
            )
        )
    return rows


def hierarchy(senses: dict[str, str]) -> bytes:
    """The senses below each row, the number of its broader senses, and these, by the numbers of their rows."""
    ids = sorted(senses)
    number = {sense: place for place, sense in enumerate(ids)}
    rows = [senses[sense].split("|") for sense in ids]
    above = [[one for one in row[3].split() if one.startswith("@")] for row in rows]
    broader = [[2 * number[one.lstrip("@i")] + (not one.startswith("@i")) for one in ones] for ones in above]
    numbers = [*(int(row[1]) for row in rows), *map(len, broader), *(one for ones in broader for one in ones)]
    file = io.BytesIO()
    np.save(file, np.array(numbers, "<u4"))
    return file.getvalue()


def relations(synsets: list[Any]) -> dict[str, set[str]]:
    """The relations of every sense, those of its words with their places in both senses; each in both directions."""
    related: dict[str, set[str]] = defaultdict(set)
    for synset in synsets:
        here = id_of(synset)
        for symbol, method in SENSE_POINTERS.items():
            for other in getattr(synset, method)():
                related[here].add(f"{symbol}{id_of(other)}")
                related[id_of(other)].add(f"{INVERSE[symbol]}{here}")
        for place, lemma in enumerate(synset.lemmas(), start=1):
            for symbol, method in WORD_POINTERS.items():
                for other in getattr(lemma, method)():
                    there, names = id_of(other.synset()), [one.name() for one in other.synset().lemmas()]
                    other_place = names.index(other.name()) + 1
                    related[here].add(f"{symbol}{there}.{place}.{other_place}")
                    related[there].add(f"{INVERSE[symbol]}{here}.{other_place}.{place}")
    return related


def below(sense: str, children: dict[str, list[str]]) -> int:
    """The number of senses below a sense."""
    seen: set[str] = set()  # WordNet 3.0 has one loop among its verbs
    waiting = [sense]
    while waiting:
        new = set(children[waiting.pop()]) - seen
        seen |= new
        waiting += new
    return len(seen - {sense})


def lexicographer_files() -> dict[str, int]:
    """Names of the lexicographer files and their numbers, lexnames(5WN)."""
    with wn.open("lexnames") as file:
        return {name: int(number) for number, name, _ in (line.split("\t") for line in file)}


def main() -> None:
    """Write the tables and their source records."""
    here = Path(__file__).resolve().parent.parent
    to = folder_to_write(__doc__, here)
    for name, contents in draw().items():
        write_table(
            to, name, contents,
            source="WordNet 3.0, Princeton University (read through NLTK's wordnet corpus)",
            version="3.0", licence="WordNet 3.0 licence, licences/wordnet.txt",
            build="NLTK_DATA=FOLDER python wordlists/build/wordnet.py",
        )  # fmt: skip


if __name__ == "__main__":
    main()
