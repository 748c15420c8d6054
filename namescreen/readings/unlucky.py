"""Looking things up in the index of unlucky words (drawn by ``wordlists/draw/unlucky.py``, which gives its
keys)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from namescreen.tables import Table, open_table

from .spelling import left_out

__all__ = ["Unlucky", "count", "nearly_spelled", "rated", "sounding", "spelled", "stemmed"]


@dataclass(frozen=True, slots=True)
class Unlucky:
    """One unlucky word of one language, as its table has it."""

    language: str
    row: int
    word: str
    transcription: str
    meaning: str
    kind: str
    gravity: int

    @property
    def shown(self) -> str:
        """The word, with its transcription where it has one."""
        return f"{self.word} ({self.transcription})" if self.transcription else self.word


def _index() -> Table:
    return open_table("unlucky.tsv")


@lru_cache(maxsize=65536)
def _at(language: str, row: str) -> Unlucky:
    fields = (_index().get(f"#{language}.{row}") or "").split("\t")
    return Unlucky(language, int(row), fields[0], fields[1], fields[2], fields[3], int(fields[4]))


def spelled(letters: str) -> list[tuple[Unlucky, str]]:
    """The words of all languages that these folded letters spell, each with how: w as its headword, f as a
    form of it, t as its transcription, s with its umlauts written out."""
    found = []
    for posting in (_index().get(f"={letters}") or "").split():
        language, row, how = posting.split(".")
        found.append((_at(language, row), how))
    return found


def stemmed(stem: str, language: str) -> list[Unlucky]:
    """The words of `language` that have this stem."""
    return [_at(language, row) for row in (_index().get(f"~{language}:{stem}") or "").split()]


def sounding(code: str, language: str) -> list[Unlucky]:
    """The words of `language`, severity 2 or 3, that sound so."""
    return [_at(language, row) for row in (_index().get(f"){language}:{code}") or "").split()]


def nearly_spelled(letters: str) -> list[Unlucky]:
    """The worst words (severity 3, five letters or more) of all languages at most two letter changes away;
    the caller tells the near from the nearly near."""
    found: dict[Unlucky, None] = {}
    for rest in left_out(letters):
        for posting in (_index().get(f"?{rest}") or "").split():
            language, row = posting.split(".")
            found[_at(language, row)] = None
    return list(found)


def rated(meaning: str) -> tuple[str, int] | None:
    """The kind and severity that the tables give to an English meaning, if several of them hold it."""
    value = _index().get(f"@{meaning.lower()}")
    if value is None:
        return None
    kind, severity = value.split()
    return kind, int(severity)


def count(language: str) -> int:
    """How many unlucky words are shipped for `language`."""
    return int(_index().get(f"!{language}") or 0)
