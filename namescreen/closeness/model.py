"""The learned part of closeness: a few weights, none negative, and how well they did on cases held out.

`wordlists/build/closeness_model.py` fits them and writes wordlists/closeness_model.tsv. No weight is negative, so that
nothing that makes two names more similar can lower their closeness.
"""

from __future__ import annotations

from functools import cache
from operator import mul
from typing import NamedTuple, TypeVar

from ..tables import open_table

__all__ = ["PARTS", "Mean", "Model", "shipped_model"]

PARTS = {
    "look": (
        "edits",
        "common letters",
        "common bigrams",
        "beginning",
        "ending",
        "first letter",
        "consonants",
        "length",
        "spelling",
    ),
    "sound": ("articulation", "same sounds"),
    "appearance": (
        "run together",
        "less covered",
        "better covered",
        "spelling run together",
        "words in any order",
        "run together or less covered",
    ),
    "sound of names": (
        "run together, beyond chance",
        "less covered",
        "better covered, beyond chance",
        "letters run together",
        "run together or less covered",
    ),
    "meaning": (
        "less covered",
        "better covered",
        "less covered, in no other phrase",
        "telling words, less covered",
        "letters in any order",
    ),
    "overall": (
        "less covered",
        "shared strength",
        "sound of words",
        "same sound",
        "nothing strong added",
        "sound",
        "sound, beyond chance",
        "less covered or appearance",
        "less covered and appearance",
    ),
}
"""The parts of each weighted mean, in the order of its weights: look and sound of two words (`letters`, `sound`), the
rest of two names (`name_similarity`)."""

Values = TypeVar("Values")


class Mean(NamedTuple):
    """A weighted mean, raised to a power: parts of 0 give 0, parts of 1 give 1, more of a part never gives less."""

    weights: tuple[float, ...]
    """None negative; their sum is 1."""
    power: float = 1.0
    """Brings the mean to the scale of the readers, who disregard what any two names have in common."""

    def __call__(self, *parts: Values) -> Values:
        """The value for these parts, numbers or arrays of them in [0, 1]."""
        total: Values = sum(map(mul, self.weights, parts))
        return total if self.power == 1.0 else total**self.power  # type: ignore[operator]


class Model(NamedTuple):
    """All weights; see `PARTS`."""

    look: Mean
    sound: Mean
    appearance: Mean
    sound_of_names: Mean
    meaning: Mean
    overall: Mean


@cache
def shipped_model() -> Model:
    """The weights in use."""
    table = open_table("closeness_model.tsv")

    def mean(part: str) -> Mean:
        weights = [float(table.get(f"{part}: {name}") or "nan") for name in PARTS[part]]
        whole = sum(weights)  # 1, but for the rounding in the table
        return Mean(tuple([weight / whole for weight in weights]), float(table.get(f"{part}: power") or 1.0))

    return Model(*map(mean, PARTS))
