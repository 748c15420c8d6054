"""A check that could not be made is a value of its own, never 0 and never None."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["ASK_A_SPEAKER", "DISCLAIMER", "NotChecked", "UnknownWord", "Unread"]

DISCLAIMER = "Screening aid, not legal clearance: ask your trade mark office and a qualified adviser."
"""Said wherever a score shows."""
ASK_A_SPEAKER = "ask someone who speaks it"
"""How every reason ends that says of a word that what it means is not known."""


@dataclass(frozen=True, slots=True)
class NotChecked:
    """A check that was not made: which one, and why, in words that follow 'not checked, because'."""

    check: str
    because: str

    def __str__(self) -> str:
        return f"{self.check}: not checked, because {self.because}"


@dataclass(frozen=True, slots=True)
class Unread:
    """A `word` of a name that looks like one of a language of the buyers and is in no list, and what is `told` of it:
    it may say anything of the goods, so that somebody who speaks the language should be asked."""

    word: str
    told: str


@dataclass(frozen=True, slots=True)
class UnknownWord(NotChecked):
    """A check that was not made because what a `word` means is not known."""

    word: str = ""
