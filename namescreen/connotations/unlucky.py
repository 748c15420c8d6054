"""Look-ups in the index of unlucky words (built by ``wordlists/build/unlucky.py``, which gives its
keys)."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from namescreen.tables import Table, open_table

from .orthography import single_deletions

__all__ = ["Unlucky", "count", "nearly_spelled", "rated", "sounding", "spelled", "stemmed"]


class Unlucky(NamedTuple):
    """One unlucky word of one language, as its table has it; `form` is the form of it that was met."""

    language: str
    row: int
    form: str
    transcription: str
    meaning: str
    kind: str
    base_severity: int
    how: str = "w"

    @property
    def shown(self) -> str:
        """The form, with its transcription where it has one."""
        return f"{self.form} ({self.transcription})" if self.transcription else self.form


def _index() -> Table:
    return open_table("unlucky.tsv")


@lru_cache(maxsize=65536)
def _at(language: str, row: str, how: str = "w") -> Unlucky:
    word, transcription, meaning, kind, base_severity, forms = (_index().get(f"#{language}.{row}") or "").split("\t")
    form = forms.split(" ")[int(how)] if how.isdecimal() else word
    return Unlucky(language, int(row), form, transcription, meaning, kind, int(base_severity), how)


def spelled(letters: str) -> list[Unlucky]:
    """The words of all languages that these folded letters spell; `how` says how: w as its headword, a number
    as that form of it, t as its transcription, s with its umlauts written out."""
    return [_at(*posting.split(".")) for posting in (_index().get(f"={letters}") or "").split()]


def stemmed(stem: str, language: str) -> list[Unlucky]:
    """The words of `language` that have this stem."""
    return [_at(language, row) for row in (_index().get(f"~{language}:{stem}") or "").split()]


def sounding(code: str, language: str) -> list[Unlucky]:
    """The words of `language` with this sound, severity 2 or 3."""
    return [_at(language, *posting.split(".")) for posting in (_index().get(f"){language}:{code}") or "").split()]


def nearly_spelled(letters: str) -> list[Unlucky]:
    """The worst words (severity 3, five letters or more) of all languages at most two letter changes away;
    the caller checks the exact distance."""
    found: dict[Unlucky, None] = {}
    for rest in single_deletions(letters):
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
