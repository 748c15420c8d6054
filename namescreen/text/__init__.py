"""What a name is: folded letters, words, and the ways it is read aloud.

Every part of the program takes names through `parse`, so that spacing, case, accents and punctuation mean
the same everywhere. Scripts other than Latin are kept as they are, not dropped.
"""

from __future__ import annotations

from .folding import fold
from .name import Name, parse
from .segmentation import best_split, split_closed_compound
from .spoken_forms import LETTER_NAMES, number_words, spoken_forms, ways_to_say
from .tokenization import MAX_LENGTH, tokenize

__all__ = [
    "LETTER_NAMES", "MAX_LENGTH", "Name", "best_split", "fold", "number_words", "parse", "split_closed_compound",
    "spoken_forms", "tokenize", "ways_to_say",
]  # fmt: skip
