"""What a word may say of goods, as evidence: how plainly, why, and of which kind; and what a kind of word says of any
goods."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

from .grounds import under_law
from .trade_words import TradeTerm

__all__ = ["DESCRIBES", "KINDS", "NOTHING", "SURNAMES", "Evidence", "EvidenceKind", "of_kind", "of_term"]

DESCRIBES, SURNAMES = "1209.01(b)", "1211"
"""Sections of the American examining manual: on what describes goods, and on surnames."""
KINDS = {
    "domain ending": (1.0, "a domain ending, which identifies no one", "1209.03(m)"),
    "company form": (1.0, "a company form, which identifies no one", "1213.03(d)"),
    "laudatory": (0.85, "praise that any seller may use", "1209.03(k)"),
    "quality": (0.7, "a quality that many goods may have", DESCRIBES),
    "people": (0.65, "says for whom the goods are", "1209.03(i)"),
    "generic head": (0.6, "names a kind of business or offer", "1209.03(q), (r)"),
    "number": (0.5, "a number, read as a size, date or model", ""),
    "colour": (0.35, "a colour that goods may have", ""),
}
"""Kind of word -> how plainly it describes any goods, why, and the section of the American manual on it."""


class EvidenceKind(Enum):
    """What kind of evidence it is, where that matters further on."""

    OTHER = "other"
    HEARD = "heard as a describing word"
    SURNAME = "a surname"
    MATERIAL = "a material"
    LOOSE = "a loose relation in a dictionary"
    ASSOCIATED = "brings the goods to mind"
    TERM = "a term of the trade"
    DOMAIN_ENDING = "a domain ending"
    PLACE = "a place that the goods may come from"
    SORT = "a kind of the goods"
    PURPOSE = "what the goods are for or against"


class Evidence(NamedTuple):
    """How plainly a word describes the goods, 0 (not at all) to 1 (it names them), and why, in words."""

    weight: float
    why: str = ""
    names_goods: bool = False
    """Whether it names the goods themselves, not just something about them."""
    hint: bool = False
    """Whether only a part of an unknown word says it."""
    kind: EvidenceKind = EvidenceKind.OTHER
    section: str = ""
    """The section of the American examining manual on such words, if any."""

    def told(self, *, american: bool) -> str:
        """Why, in words; with the section where American law counts."""
        return under_law(self.why, self.section, american=american)

    @property
    def is_told(self) -> bool:
        """Whether there is a reason to tell; without one the weight is a mere tendency."""
        return bool(self.why)


NOTHING = Evidence(0.0)


def of_kind(kind: str) -> Evidence:
    """What a kind of `KINDS` says."""
    weight, why, section = KINDS[kind]
    ends = kind == "domain ending"
    return Evidence(weight, why, kind=EvidenceKind.DOMAIN_ENDING if ends else EvidenceKind.OTHER, section=section)


def of_term(term: TradeTerm) -> Evidence:
    """What a term of the trade says."""
    return Evidence(term.weight, f"{term.what} (from memory)", term.names_goods, kind=EvidenceKind.TERM)
