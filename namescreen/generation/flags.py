"""Remarks on a candidate: unlucky readings, and marks that it nearly equals."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

from ..brief import Brief
from ..connotations import readings
from ..policy import NEAR_IN_SOUND
from ..pronunciation import pronounce_words, sound_similarity
from ..pronunciation.predictability import spellings
from ..text import fold, tokenize
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
and from which it gets a remark: one letter in ten, one in five. Meaning and goods are looked at when the shortlist is
screened."""
_PERHAPS, _MOST_COMPARED = 0.5, 5
"""The same from which a mark is compared with a name in sound, as a screening does, and how many are."""
_READINGS = 2  # the likeliest readings of a name, and of a mark
_FEW = 2_000  # marks that are all read, so that one spelled otherwise from end to end is met too (night, knyte)

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
        near = self._beside_marks(proposal.text, proposal.letters)
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

    @cached_property
    def _by_sound(self) -> dict[str, str]:
        """The marks of a short list by what is heard."""
        few = self._marks.values() if len(self._marks) <= _FEW else ()
        return {heard: mark for mark in few for heard in _heard(mark) if heard}

    def _beside_marks(self, text: str, letters: str) -> tuple[str, ...] | Refusal:
        """A remark on the mark whose letters are nearest; a refusal if the name is all but the same as one of the
        nearest, in letters or in sound, which a screening calls a knockout for such goods."""
        if not self._marks:
            return ()
        from rapidfuzz import process
        from rapidfuzz.distance import Levenshtein

        found = process.extract(
            letters, self._marks.keys(), scorer=Levenshtein.normalized_similarity, score_cutoff=_PERHAPS,
            limit=_MOST_COMPARED,
        )  # fmt: skip
        heard = _heard(text)
        same = next((self._by_sound[one] for one in heard if one in self._by_sound), None)
        if same is not None:
            return Refusal("mark", f"heard as the mark {same}")
        for near, similarity, _ in found:
            mark = self._marks[near]
            alike = max((sound_similarity(a, b) for a in heard for b in _heard(mark)), default=0.0)
            if similarity >= _SAME or alike >= NEAR_IN_SOUND:
                return Refusal("mark", f"all but the same as the mark {mark}")
        return tuple(f"near the mark {self._marks[near]}" for near, similarity, _ in found[:1] if similarity >= _NEAR)


@lru_cache(maxsize=1 << 13)
def _heard(text: str) -> tuple[str, ...]:
    """The phoneme codes of the likeliest readings of a name."""
    return tuple(dict.fromkeys(one.code for one in pronounce_words(tokenize(text), _READINGS)))


def _taken_for(proposal: Proposal) -> str | None:
    """The other word that nearly everybody who hears a coined name would write; None if there is none."""
    if len(proposal.words) > 1 or not proposal.sounds or proposal.construction in _AS_THEY_ARE:
        return None
    best = spellings(proposal.sounds, limit=1)
    return best[0][0] if best and best[0][1] >= _SURE and best[0][0] != proposal.letters else None


def _letters(text: str) -> str:
    return "".join(character for character in fold(text) if character.isalnum())
