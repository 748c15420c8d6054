"""Remarks on a candidate: unlucky readings, and marks that it nearly equals."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ..brief import Brief
from ..connotations import readings
from ..pronunciation.predictability import spellings
from ..text import fold
from .candidate import Proposal
from .wares import Wares

if TYPE_CHECKING:
    from ..register import Register

__all__ = ["Flags", "Refusal"]

_MILD, _AWKWARD = 1, 2
"""Severities (0 to 3) from which a reading in a language of the brief keeps a name out: where it stands as a word, and
where it only stands inside one or is a letter away; there a mild one is a remark."""
_SAME, _NEAR = 0.9, 0.8
"""Similarity of letters to a mark (1 - edit distance / longer length) from which a name is left out as nearly the same,
and from which it gets a remark: one letter in ten, one in five. Sound, meaning and goods are looked at when the
shortlist is screened."""


_SURE = 0.9  # probability from which a hearer is assumed to write a word
_AS_THEY_ARE = frozenset(("found", "saying", "foreign", "figure", "changed"))  # other words heard in them are intended


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why a name must not be shown: a `kind` ("mark", "goods", "avoid", or "reading" in a `language`), and why."""

    kind: str
    because: str
    language: str = ""


class Flags:
    """Checks names for one brief."""

    def __init__(self, brief: Brief, register: Register | None) -> None:
        self._languages = tuple(dict.fromkeys(("en", *brief.languages)))
        self._wares = Wares(brief)
        self._marks = {_letters(mark.text): mark.text for mark in register.marks} if register is not None else {}

    def of(self, proposal: Proposal, pleased: float = 0.0) -> tuple[str, ...] | Refusal:
        """Remarks on a name; or why it must not be shown: it reads badly in one of the brief's languages, or
        is all but the same as an existing mark, or names the goods, another ware like them (see `Wares.named_by` for
        `pleased`) or a stuff that they are not made of."""
        ware = self._wares.named_by(proposal, pleased)
        if ware:
            return Refusal("goods", ware)
        near = self._beside_marks(proposal.letters)
        if isinstance(near, Refusal):
            return near
        said, plainly = self._wares.on_labels(proposal, pleased)
        if plainly:
            return Refusal("goods", said)
        remarks = [*near, "labels say it"] if said else list(near)
        for reading in readings(proposal.text, languages=self._languages, dictionaries=()):
            because = f"{reading.language}: {reading.word} ({reading.meaning})"
            if reading.severity >= (_MILD if reading.stands else _AWKWARD):
                return Refusal("reading", because, reading.language)
            if reading.severity >= _MILD:
                remarks.append(because)
        taken_for = _taken_for(proposal)
        if taken_for:
            remarks.append(f"heard as {taken_for}")
        return tuple(dict.fromkeys(remarks))

    def _beside_marks(self, letters: str) -> tuple[str, ...] | Refusal:
        """A remark on the mark whose letters are nearest; a refusal if the name is all but the same."""
        if not self._marks:
            return ()
        from rapidfuzz import process
        from rapidfuzz.distance import Levenshtein

        found = process.extractOne(
            letters, self._marks.keys(), scorer=Levenshtein.normalized_similarity, score_cutoff=_NEAR
        )
        if found is None:
            return ()
        mark = self._marks[found[0]]
        if found[1] >= _SAME:
            return Refusal("mark", f"all but the same as the mark {mark}")
        return (f"near the mark {mark}",)


def _taken_for(proposal: Proposal) -> str | None:
    """The other word that nearly everybody who hears a coined name would write; None if there is none."""
    if len(proposal.words) > 1 or not proposal.sounds or proposal.construction in _AS_THEY_ARE:
        return None
    best = spellings(proposal.sounds, limit=1)
    return best[0][0] if best and best[0][1] >= _SURE and best[0][0] != proposal.letters else None


def _letters(text: str) -> str:
    return "".join(character for character in fold(text) if character.isalnum())
