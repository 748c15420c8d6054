"""What a naming brief holds: plain data, all of which may be missing."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path

__all__ = ["Brief", "Concept", "CostItem", "Costs"]


@dataclass(frozen=True, slots=True)
class Concept:
    """A word the name may be made from; `senses` are words of the meanings wanted (empty: all of them)."""

    word: str
    senses: tuple[str, ...] = ()

    @classmethod
    def read(cls, text: str) -> Concept:
        """A concept as it is typed: a word, or a word and what it means: spring=season. The word may be empty."""
        word, _, senses = text.partition("=")
        return cls(word.strip(), tuple(filter(None, re.split(r"[,;\s]+", senses))))


@dataclass(frozen=True, slots=True)
class CostItem:
    """One line of the costs worksheet: `figure` each, `times` over, as the maker found it."""

    what: str
    figure: Decimal
    times: Decimal = Decimal(1)
    currency: str = ""
    date: datetime.date | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Costs:
    """The maker's own figures; none is shipped. `budget` is in `currency`."""

    currency: str = ""
    budget: Decimal | None = None
    items: tuple[CostItem, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Brief:
    """A naming brief. Everything may be empty, which means: not stated.

    `classes` are Nice classes, ascending; `markets` ISO 3166-1 codes; `languages` BCP 47 tags; `endings`
    domain endings without a leading dot; lengths count letters. `columns` says which columns of the lists of marks
    hold which field. `marks` and `shortlist_file` are paths that can be opened; `source` is the file the brief was
    read from.
    """

    product: str = ""
    goods: str = ""
    classes: tuple[int, ...] = ()
    concepts: tuple[Concept, ...] = ()
    avoid: tuple[str, ...] = ()
    tone: tuple[str, ...] = ()
    least_letters: int = 3
    most_letters: int = 16
    most_syllables: int | None = None
    most_words: int | None = None
    markets: tuple[str, ...] = ()
    languages: tuple[str, ...] = ()
    endings: tuple[str, ...] = ()
    handle_lengths: tuple[int, ...] = ()
    handle_servers: tuple[str, ...] = ()
    handle_patterns: tuple[str, ...] = ()
    marks: tuple[Path, ...] = ()
    columns: Mapping[str, str] = field(default_factory=dict, hash=False)
    shortlist: tuple[str, ...] = ()
    shortlist_file: Path | None = None
    ranking_weights: Mapping[str, float] = field(default_factory=dict, hash=False)
    comparison_weights: Mapping[str, float] = field(default_factory=dict, hash=False)
    costs: Costs = field(default_factory=Costs)
    seed: int = 1
    date: datetime.date | None = None
    source: Path | None = None
