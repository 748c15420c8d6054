"""Find the words of the lexicon that are derived from one another by an English suffix: wordlists/derived_words.tsv.

python wordlists/build/derived_words.py [--to FOLDER]

word -> the words that it is derived from (marked with "<"), that are derived from it, or that are derived from the same
word, separated by spaces. The rules are those of English spelling, from memory of grammars (Quirk and others 1985,
appendix I). A spelling alone misleads (corn, corner), so two words count as derived only if they also bring each other
to mind (`association`).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.lexicon import association, lexicon
from namescreen.tables import open_table, table_bytes

HERE = Path(__file__).resolve().parent.parent
_SUFFIXES = {
    "y": ("", "e"), "ly": ("", "le"), "al": ("", "e"), "ial": ("y", "e", ""), "ical": ("y", ""), "ic": ("", "e", "y"),
    "ful": ("",), "ish": ("", "e"), "some": ("",), "like": ("",), "en": ("", "e"), "ern": ("",),
    "ous": ("", "e"), "ious": ("y", ""), "ive": ("", "e", "ion"), "ary": ("", "e"), "ness": ("",), "ity": ("", "e"),
    "ty": ("",), "th": ("", "e"), "dom": ("",), "hood": ("",), "ship": ("",), "ment": ("",),
    "ion": ("", "e"), "ation": ("", "e"), "ance": ("", "e"), "ence": ("", "e"), "ant": ("", "e"), "ent": ("", "e"),
    "er": ("", "e"), "or": ("", "e"), "ery": ("", "e", "er"), "ry": ("",), "ist": ("", "e", "y"), "ism": ("", "e"),
    "ian": ("", "y", "ic"), "an": ("", "e"), "ize": ("", "y"), "ise": ("", "y"), "ify": ("", "e", "y"),
    "age": ("", "e"),
}  # fmt: skip
"""Each suffix, with what may stand in its place in the word that it is added to."""
SHORTEST = 3
"""The fewest letters of the word that a suffix is added to."""
ASSOCIATED = 0.35
"""Association from which words so spelled are derived from one another: dust and dusty have 0.69, corn and corner
0."""


def _without_suffix(word: str) -> Iterator[str]:
    """The spellings of the words that `word` may be derived from."""
    for suffix, endings in _SUFFIXES.items():
        if not word.endswith(suffix):
            continue
        stem = word[: -len(suffix)]
        for ending in endings:
            yield stem + ending
        if stem.endswith("i"):
            yield stem[:-1] + "y"  # beautiful
        if len(stem) > SHORTEST and stem[-1] == stem[-2]:
            yield stem[:-1]  # sunny


@cache
def _bases(word: str) -> tuple[str, ...]:
    found = (base for base in _without_suffix(word) if len(base) >= SHORTEST and lexicon().is_lemma(base))
    return tuple(dict.fromkeys(found))


def _with_suffix(word: str) -> Iterator[str]:
    """How words that may be derived from `word` would be spelled."""
    for suffix, endings in _SUFFIXES.items():
        stems = [word[: len(word) - len(ending)] for ending in endings if word.endswith(ending)]
        stems += [word + word[-1]]
        stems += [word[:-1] + "i"] if word.endswith("y") else []
        for stem in stems:
            yield stem + suffix


def _derived(word: str) -> str:
    """What the table says of one word; empty for most."""
    roots = (word, *_bases(word))
    derived = (other for root in roots for other in lexicon().lemmas(list(_with_suffix(root))) if root in _bases(other))
    found = sorted({*roots, *derived} - {word})
    kept = (other for other in found if (association(word, other) or 0.0) >= ASSOCIATED)
    return " ".join(f"<{other}" if other in roots else other for other in kept)


def build() -> tuple[bytes, int]:
    """The table, and how many words it holds."""
    lemmas = (word for word, _ in open_table("wordnet-words.tsv").items())
    words = (word for word in lemmas if len(word) >= SHORTEST and word.isascii() and word.isalpha())
    rows = [(word, found) for word in words if (found := _derived(word))]
    return table_bytes("derived_words", rows), len(rows)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, count = build()
    print(f"{count} words")
    write_table(
        to, "derived_words.tsv", contents,
        source="wordnet-words.tsv (WordNet 3.0) and associations.tsv, by the suffixes of English, written from memory "
        "of grammars", version="as these", licence="as these", build="python wordlists/build/derived_words.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
