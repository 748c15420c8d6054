"""Where a name stands for its goods: generic, descriptive, suggestive, arbitrary or fanciful (TMEP 1209.01).

Each word of the name is asked how plainly it describes the goods. The most distinctive word carries a name, the
others take a part of it away; an unknown word is coined unless it sounds like, or is made of, describing words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from ..lexicon import kinds
from .coinage import divided, is_coined, understood
from .description import Evidence, describe
from .terms import plain_words

__all__ = ["CATEGORIES", "Distinctiveness", "distinctiveness"]

CATEGORIES = ("generic", "descriptive", "suggestive", "arbitrary", "fanciful")
"""The continuum from the least to the most distinctive (Abercrombie & Fitch v. Hunting World, 2d Cir. 1976)."""

DESCRIPTIVE = 0.55  # describing weight of the whole name from which it is descriptive
SUGGESTIVE = 0.3
CARRIED = 0.6  # how much of a name its most distinctive word decides

_HINTS = {
    "generic": "No one can own the name of the goods themselves: put a word of your own before it, or start elsewhere.",
    "descriptive": "It tells buyers what the goods are or do: keep it for the description, and let the name hint "
                   "rather than say, or join it to a word that has nothing to do with the goods.",
    "suggestive": "It hints without saying: a fair place to be. A less expected second word, or a fused spelling, "
                  "makes it stronger.",
    "arbitrary": "An ordinary word that says nothing about these goods is strong: check how many others in your "
                 "trade use it.",
    "fanciful": "A coined word is the strongest kind: check that people can say and spell it.",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Distinctiveness:
    """A place on the continuum. `score` in [0, 1], 1 = most distinctive; a screening aid, not a legal finding."""

    category: str
    score: float
    reasons: tuple[str, ...]
    hint: str
    words: tuple[tuple[str, float], ...] = field(default=())
    """Each telling word of the name and how plainly it describes the goods, 0 to 1."""

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary, the same for the same input."""
        return {
            "category": self.category,
            "score": self.score,
            "reasons": list(self.reasons),
            "hint": self.hint,
            "words": [{"word": word, "describes": weight} for word, weight in self.words],
        }


def distinctiveness(
    name: str, goods: str, *, translate: Callable[[str], Iterable[str]] | None = None
) -> Distinctiveness:
    """How distinctive `name` is for `goods` (plain words): its category, a score in [0, 1] and the reasons.

    `translate` gives English meanings of a foreign word: under the doctrine of foreign equivalents (TMEP
    1209.03(g)) the word is as descriptive as its translation. Without it foreign words count as coined.
    """
    words = _telling_words(name)
    if not words:
        reason = "it holds nothing but small words, company forms or domain endings"
        return Distinctiveness("descriptive", 0.1, (reason,), _HINTS["descriptive"])
    judged: list[tuple[str, Evidence, bool]] = []
    for word in words:
        coined = is_coined(word)
        evidence = describe(word, goods)
        translations = tuple(translate(word)) if translate is not None and coined else ()
        for meaning in translations:
            meant = describe(meaning, goods)
            if meant.weight > evidence.weight:
                evidence = Evidence(meant.weight, f'means "{meaning}": {meant.why}', meant.names_goods)
        if coined and evidence.weight < 0.4:
            parts = understood(word, goods)
            weight = CARRIED * min(p.weight for p in parts) + (1 - CARRIED) * sum(p.weight for p in parts) / len(parts)
            why = "; ".join(dict.fromkeys(p.why for p in parts if p.why))
            if weight > evidence.weight:
                evidence = Evidence(weight, why)
        judged.append((word, evidence, coined))
    weights = [evidence.weight for _, evidence, _ in judged]
    whole = CARRIED * min(weights) + (1 - CARRIED) * sum(weights) / len(weights)
    category = _category(judged, whole)
    score = round(min(max(1 - whole, 0.0), 1.0), 4)
    reasons = tuple(f'"{word}": {evidence.why}' for word, evidence, _ in judged if evidence.why) or (
        (f'"{judged[0][0]}" is in no word list: it looks coined',) if judged[0][2] else ("no tie to the goods was found",)
    )
    return Distinctiveness(
        category, score, reasons, _HINTS[category], tuple((word, round(e.weight, 4)) for word, e, _ in judged)
    )


def _telling_words(name: str) -> list[str]:
    """The words of `name` that carry it: compounds divided, small words, company forms and domain endings left out."""
    found = [part for word in plain_words(name) for part in divided(word)]
    telling = [w for w in found if not kinds(w) & {"function word", "company form", "domain ending"}]
    return telling or [w for w in found if "generic head" in kinds(w)]


def _category(judged: list[tuple[str, Evidence, bool]], whole: float) -> str:
    if whole >= DESCRIPTIVE:
        all_name = all(e.names_goods or "generic head" in kinds(w) for w, e, _ in judged)
        return "generic" if all_name and any(e.names_goods for _, e, _ in judged) else "descriptive"
    if whole >= SUGGESTIVE:
        return "suggestive"
    if any(coined and evidence.weight < SUGGESTIVE for _, evidence, coined in judged):
        return "fanciful"
    return "arbitrary"
