"""Inflected forms of a word, by the endings of its language, ``wordlists/inflection.tsv``.

A light rule set of our own replaces NLTK's Snowball stemmers. Those take 0.2 to 1 second to import and lack Polish,
Czech, Turkish, Greek, Ukrainian, Hebrew and Hindi. They also stem for retrieval, where a lost distinction is cheap;
here it is a false alarm.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from namescreen.errors import DataError
from namescreen.tables import wordlists_folder

__all__ = ["prefixes", "stem"]

_LEAST = 4
"""The fewest letters of a stem; shorter stems are shared by unrelated words (3 for a word of four letters)."""


@cache
def _parts() -> dict[tuple[str, str], tuple[str, ...]]:
    """The endings and prefixes of each language, longest first."""
    path = wordlists_folder() / "inflection.tsv"
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except OSError as error:
        raise DataError(path, f"cannot be opened ({error})", "Install namescreen again") from error
    rows = [line.split("\t") for line in lines if not line.startswith("#")][1:]
    return {(row[0], row[1]): tuple(sorted(row[2].split(" "), key=lambda part: (-len(part), part))) for row in rows}


def prefixes(language: str) -> tuple[str, ...]:
    """The folded verb prefixes of the language, longest first: a verb after one stays close to the verb
    alone."""
    return _parts().get((language, "prefixes"), ())


@cache
def _endings(language: str) -> tuple[frozenset[str], int]:
    """The endings of the language, and the letters of the longest."""
    endings = _parts().get((language, "endings"), ())
    return frozenset(endings), max(map(len, endings), default=0)


@lru_cache(maxsize=1 << 13)
def stem(word: str, language: str) -> str:
    """The folded `word` without its longest ending in `language`; unchanged where no rule applies.

    At least four letters stay, or three of a word of four. A doubled last consonant counts once, since
    German, Dutch, Scandinavian and Hungarian spelling doubles it before an ending; so do the letters that
    Dutch spelling and Finnish gradation change there (luis, luizen; kukka, kukan).
    """
    endings, longest = _endings(language)
    for kept in range(max(len(word) - longest, min(_LEAST, max(3, len(word) - 1))), len(word)):
        if word[kept:] in endings:
            word = word[:kept]
            break
    if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "aeiou":
        word = word[:-1]
    for change in _parts().get((language, "changes"), ()):
        written, _, plain = change.partition(">")
        word = re.sub(f"{written[:-1]}$" if written.endswith("$") else f"{written}(?=[^aeiou]*$)", plain, word)
    return word
