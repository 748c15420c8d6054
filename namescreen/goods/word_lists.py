"""How lists of words are written in this package: glossaries, and words with the goods they are said of."""

from __future__ import annotations

import re

__all__ = ["glossary", "said_of_goods"]


def glossary(text: str) -> dict[str, str]:
    """The words of a text of pairs `word=meaning`, each with its meaning; a meaning may be empty."""
    return {word: meaning for word, _, meaning in (pair.partition("=") for pair in text.split())}


def said_of_goods(text: str) -> dict[str, frozenset[str]]:
    """The words of rows `words : goods, goods` (a row goes on where a line is indented or begins with the colon; _ is a
    space in a word), each with all goods of its rows."""
    found: dict[str, set[str]] = {}
    for row in re.split(r"\n(?![ :])", text.strip()):
        words, _, goods = " ".join(row.split()).partition(" : ")
        for word in words.split():
            found.setdefault(word.replace("_", " "), set()).update(goods.split(", "))
    return {word: frozenset(goods) for word, goods in found.items()}
