"""What is found of the distinctiveness of a name: by language, by the law of each market, and as a whole."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from ..lexicon.language_codes import language_name
from ..outcome import NotChecked, Unread
from .protected import ProtectedSign

__all__ = ["Distinctiveness", "LanguageFinding", "MarketFinding", "Whole"]


class Whole(Enum):
    """What a name says as a whole that its words do not say apart."""

    NOTHING = "nothing"
    SAYING = "a set saying"
    MESSAGE = "a promotional message"
    USE = "what the goods are for"


@dataclass(frozen=True, slots=True)
class LanguageFinding:
    """How a name stands for readers of one language: the word that says most, and what it means in English (empty where
    it is English or unknown); `sure`, 0 to 1, is how reliable the translation is; `whole` is what decides it, where no
    word does."""

    language: str
    category: str
    score: float
    word: str
    meaning: str
    reason: str
    sure: float = 1.0
    whole: Whole = Whole.NOTHING

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary; `reason` says what `whole` does."""
        return {name: getattr(self, name) for name in self.__slots__ if name != "whole"}


@dataclass(frozen=True, slots=True)
class MarketFinding:
    """How a name stands under one law (US, EU, GB or another country's code), and the ground that matters there; the
    law from memory, empty where nothing stands in the way. `language` is the one in which a word of another one than
    English bars it there; empty for none."""

    market: str
    category: str
    score: float
    ground: str
    law: str
    language: str = ""

    @property
    def called(self) -> str:
        """What the law calls it: the category, or "surname" or "geographic" where being one is the bar."""
        kinds = {"surname": "surname", "place": "geographic"}
        return kinds.get(self.ground, self.category) if self.category == "descriptive" else self.category

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary."""
        return {name: getattr(self, name) for name in self.__slots__} | {"called": self.called}


@dataclass(frozen=True, slots=True)
class ItemFinding:
    """What a name is `called` (see `Distinctiveness.called`) for one item of the goods, as it is worded in English."""

    goods: str
    called: str


@dataclass(frozen=True, slots=True)
class Distinctiveness:
    """A place on the continuum. `score` in [0, 1] is the place to be expected: 0 generic, 0.1 descriptive, 0.7
    suggestive, 0.9 arbitrary, 1 fanciful, and between where it may be either; a screening aid, not a legal finding.

    `category` is the worst of the languages and markets asked for; `called` is the same, but "surname" or "geographic"
    where that is the bar, which the law treats apart from description. `deceptive` tells apart from it whether the name
    says of the goods what is not so, which no use cures. `kinds` are kinds that the law treats apart
    (surname, place, acronym, laudatory, misspelling, coarse); `languages` the findings by language, the worst first;
    `not_assessed` the languages for which there is no table, and goods that could not be read; `markets` the findings
    by law; `protected` signs that may not be registered, or would mislead; `by_item` what a
    barred name is for each item of the goods, where that is not the same for all; `unread` its words that look like
    words of a language of the buyers and are in no list. What these say stands among the reasons too."""

    category: str
    score: float
    reasons: tuple[str, ...]
    hint: str
    words: tuple[tuple[str, float], ...] = field(default=())
    """Each content word of the name and how plainly it describes the goods, 0 to 1."""
    kinds: tuple[str, ...] = ()
    languages: tuple[LanguageFinding, ...] = ()
    not_assessed: tuple[NotChecked, ...] = ()
    markets: tuple[MarketFinding, ...] = ()
    protected: tuple[ProtectedSign, ...] = ()
    by_item: tuple[ItemFinding, ...] = ()
    unread: tuple[Unread, ...] = ()
    strange_in: tuple[str, ...] = ()
    """The markets whose buyers hardly know any of its `places`."""

    @property
    def called(self) -> str:
        """The category, or "surname" or "geographic" where being one is what bars it in a market."""
        return next((one.called for one in self.markets if one.category == self.category), self.category)

    @property
    def deceptive(self) -> str:
        """ "likely" if the name says of the goods what they are stated not to be, "perhaps" if it may; else ""."""
        signs = [one.serious for one in self.protected if one.misleads]
        return ("likely" if any(signs) else "perhaps") if signs else ""

    @property
    def places(self) -> tuple[str, ...]:
        """The words that say where goods come from."""
        from .places import place_of

        return tuple(word for word, _ in self.words if place_of(word)) if "place" in self.kinds else ()

    @property
    def laws_unknown_in(self) -> tuple[str, ...]:
        """The markets whose law on a serious protected sign is not known here."""
        signs = (one for one in self.protected if one.serious)
        return tuple(dict.fromkeys(ground.market for one in signs for ground in one.grounds if not ground.known))

    @property
    def laws(self) -> tuple[str, ...]:
        """The law by market, from memory, of the gravest ground: a serious protected sign, else how the name stands."""
        sign = next((one for one in self.protected if one.serious), None)
        if sign:
            return tuple(f"{ground.market}: {ground.law}" for ground in sign.grounds)
        alike = len({one.called for one in self.markets}) == 1
        told = ((one, "" if alike else f"{one.called}{_language_of(one)}; ") for one in self.markets)
        return tuple(f"{one.market}: {how}{one.law}" for one, how in told if one.law)

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary, the same for the same input."""
        return {
            "category": self.category,
            "called": self.called,
            "score": self.score,
            "reasons": list(self.reasons),
            "deceptive": self.deceptive,
            "hint": self.hint,
            "words": [{"word": word, "describes": weight} for word, weight in self.words],
            "kinds": list(self.kinds),
            "languages": [one.to_json() for one in self.languages],
            "not_assessed": [{"check": one.check, "because": one.because} for one in self.not_assessed],
            "markets": [one.to_json() for one in self.markets],
            "protected": [one.to_json() for one in self.protected],
            "by_item": [{"goods": one.goods, "called": one.called} for one in self.by_item],
        }


def _language_of(market: MarketFinding) -> str:
    """In which language a word is so taken in a market, where it is none of English."""
    if market.language:
        return f" in {language_name(market.language)}"
    return " as it stands" if market.ground in ("foreign word", "foreign name") else ""
