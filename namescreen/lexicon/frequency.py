"""How common a word is, on the Zipf scale."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache

from ..errors import DataError
from ..tables import open_table, wordlists_folder
from ..text.segmentation import LONGEST

__all__ = ["frequency_languages", "in_use", "zipf"]


@lru_cache(maxsize=1 << 17)
def zipf(word: str, language: str = "en") -> float:
    """The frequency of the folded `word` in `language`: log10 of occurrences in a thousand million words.

    About 7 for "the", 4 for "garden", 3 for once in a million words; 0.0 for a word that is not in the list.
    Source: wordfreq 3.1.1 (van Heuven and others 2014 for the scale). Raises `DataError` for a language
    without a list; `frequency_languages` says which there are.
    """
    if len(word) > LONGEST:
        return 0.0  # of a closed word of a hundred letters, a hundred parts are asked for
    value = open_table(f"frequency/{language}.tsv").get(word)
    return float(value) if value is not None else 0.0


def in_use(words: Sequence[str]) -> list[str]:
    """Those of some folded English words, without line breaks, that are in the list; for many, of which few are."""
    return open_table("frequency/en.tsv").present(words)


@cache
def frequency_languages() -> tuple[str, ...]:
    """The BCP 47 codes of the languages that `zipf` knows."""
    folder = wordlists_folder() / "frequency"
    found = tuple(sorted(path.stem for path in folder.glob("*.tsv")))
    if not found:
        raise DataError(folder, "holds no frequency lists", "Install namescreen again")
    return found
