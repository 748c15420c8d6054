"""Words of a mark that say words of the name in another language."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ..plain_text import some

__all__ = ["ForeignWord", "told_of"]


@dataclass(frozen=True, slots=True)
class ForeignWord:
    """A `word` of a mark that `says` a word of the name in a `language` (BCP 47)."""

    language: str
    word: str
    says: str


def told_of(found: Iterable[ForeignWord]) -> str:
    """Some such words as a clause, by language; "" for none."""
    from ..lexicon.language_codes import language_name

    told: dict[str, list[str]] = {}
    for one in found:
        told.setdefault(one.language, []).append(f'"{one.word}" says "{one.says}"')
    return "; ".join(f"In {language_name(language)} {some(words)}" for language, words in told.items())
