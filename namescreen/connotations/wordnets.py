"""Meanings from the Open Multilingual Wordnet, through NLTK, where the user has installed it."""

from __future__ import annotations

import os
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from namescreen.outcome import NotChecked

from ..lexicon.language_codes import LANGUAGES, code
from .meanings import Meaning

__all__ = ["Wordnets", "wordnets"]

_SENSES = 3


class Wordnets:
    """The wordnets that NLTK finds. NLTK is imported, and WordNet read (some seconds), on first use."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    @property
    def name(self) -> str:
        """The corpus by its name in NLTK."""
        return f"Open Multilingual Wordnet ({self._folder.name} in NLTK)"

    @cached_property
    def _tags(self) -> dict[str, str]:
        """Each shipped language that has a wordnet there, with the name of its folder, which NLTK calls it
        by."""
        folders = sorted(path.parent.name for path in self._folder.glob("*/wn-data-*.tab"))
        return {code(tag): tag for tag in reversed(folders) if code(tag) in LANGUAGES}

    @property
    def languages(self) -> frozenset[str]:
        """The languages whose wordnets are there, by their folders."""
        return frozenset(self._tags)

    def meanings(self, letters: str, language: str) -> tuple[Meaning, ...]:
        """The first lemma of each English synset that the word stands for, most usual sense first."""
        names: dict[str, None] = {}
        for synset in self.synsets(letters, language):
            names.setdefault(synset.lemma_names()[0].replace("_", " ").lower())
        return (Meaning(letters, ", ".join(list(names)[:_SENSES])),) if names else ()

    def synsets(self, word: str, language: str) -> list[Any]:
        """NLTK's synsets of a word, as it is spelled; empty for a language without a wordnet."""
        tag = self._tags.get(language)
        return list(self._reader.synsets(word, lang=tag)) if tag else []

    @cached_property
    def _reader(self) -> Any:
        from nltk.corpus import wordnet

        wordnet.ensure_loaded()
        return wordnet


@cache
def wordnets() -> Wordnets | NotChecked:
    """The wordnets if their corpus is in one of NLTK's data folders, else the reason why not; NLTK is not imported for
    this."""
    check = "the Open Multilingual Wordnet"
    for folder in _data_folders():
        for corpus in ("omw-2.0", "omw-1.4"):
            nets = folder / "corpora" / corpus
            if nets.is_dir() and (folder / "corpora" / "wordnet").is_dir():
                return Wordnets(nets)
            if nets.with_suffix(nets.suffix + ".zip").is_file():
                return NotChecked(check, f"{nets.name} in NLTK's data folder is still zipped; unzip it")
    return NotChecked(check, "NLTK has no corpora omw-2.0 and wordnet; nltk.download fetches them")


def _data_folders() -> list[Path]:
    """NLTK's own search path (nltk.data.path), without importing NLTK."""
    named = [Path(part) for part in os.environ.get("NLTK_DATA", "").split(os.pathsep) if part]
    home = Path(os.path.expanduser("~/nltk_data"))  # noqa: PTH111 (Path.home fails for a user without one)
    return [*named, home, *(Path(root) / "nltk_data" for root in (
        "/usr/share", "/usr/local/share", "/usr/lib", "/usr/local/lib"))]  # fmt: skip
