"""What generation yields: a proposal as a construction makes it, and a candidate once it has been judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

__all__ = ["Candidate", "Proposal", "form_of"]


class Proposal(NamedTuple):
    """A name as a construction makes it, before it is judged.

    `text` is as it would be written; `words` its folded words; `sources` the words it was made from, as they
    stand among the ideas; `stem` what it shares with its near-duplicates; `sounds` how it is meant to be said
    (ARPAbet with stress; empty if only its spelling is known). `join` in [0, 1] says how cleanly its parts meet,
    `clear` in [0, 1] how easily readers recognise its sources. `original` is the familiar word or saying behind it, if
    any, `heard` in [0, 1] how nearly that is still heard, `behind` in [0, 1] how much it has to do with the brief
    itself, and `unmixed` in [0, 1] whether what is left of it shows no thing of another trade. `meaning` is that of a
    word taken as it is.
    """

    text: str
    words: tuple[str, ...]
    construction: str
    how: str
    sources: tuple[str, ...]
    stem: str
    sounds: tuple[str, ...] = ()
    join: float = 1.0
    clear: float = 1.0
    original: str = ""
    heard: float = 0.0
    behind: float = 0.0
    unmixed: float = 1.0
    meaning: str = ""

    @property
    def letters(self) -> str:
        """The folded letters without spaces."""
        return "".join(self.words)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A candidate name.

    `how` says in words how it was made, and `sources` from what; `parts` are the scores behind `score`, each
    in [0, 1] with 1 the better end (`namescreen.generation.ranking.PARTS` says what each means); `score` is
    their weighted mean. `flags` are remarks to weigh, none of them a legal finding. `origins` say, for each
    source, why it is here.
    """

    text: str
    construction: str
    how: str
    sources: tuple[str, ...]
    score: float
    parts: Mapping[str, float] = field(hash=False)
    flags: tuple[str, ...] = ()
    stem: str = ""
    origins: tuple[str, ...] = ()

    def __str__(self) -> str:
        return self.text

    def to_json(self) -> dict[str, object]:
        """A plain dictionary, the same for the same input."""
        return {
            "name": self.text,
            "construction": self.construction,
            "how": self.how,
            "sources": list(self.sources),
            "origins": list(self.origins),
            "score": round(self.score, 4),
            "parts": {name: round(value, 4) for name, value in self.parts.items()},
            "flags": list(self.flags),
        }


def form_of(name: Candidate | Proposal) -> str:
    """Its construction; joined pairs and first names before a noun are forms of their own, as readers take them
    otherwise than closed pairs and figures of lore."""
    if " & " in name.text and name.construction == "pair":
        return f"{name.construction} joined"
    named = name.construction == "figure" and name.text.casefold() not in map(str.casefold, name.sources)
    return "figure named" if named else name.construction
