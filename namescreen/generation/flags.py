"""Remarks on a candidate, and why it must not be shown: unlucky readings, marks that it nearly equals, wares that it
names, and what an office may refuse it for."""

from __future__ import annotations

from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ..brief import Brief
from ..connotations import english_readings, readings
from ..outcome import NotChecked
from ..plain_text import some
from ..policy import NEAR_IN_SOUND, PLAINLY_DESCRIPTIVE
from ..pronunciation import pronounce_words, sound_similarity
from ..pronunciation.predictability import spellings
from ..text import fold, tokenize
from .candidate import Proposal
from .material import title
from .wares import Wares

if TYPE_CHECKING:
    from ..register import Register

__all__ = ["Flags", "Refusal"]

_MILD, _AWKWARD = 1, 2
"""Severities (0 to 3) from which a reading in a language of the brief keeps a name out: where it stands as a word, and
where it only stands inside one or is a letter away; there a mild one is a remark. English words with a coarse second
sense alone (lemon, fairy) pass."""
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


class Refusal(NamedTuple):
    """Why a name must not be shown: a `kind` ("mark", "goods", "refused", "avoid", or "reading" in a `language`), and
    why."""

    kind: str
    because: str
    language: str = ""


class Flags:
    """Checks names for one brief."""

    def __init__(self, brief: Brief, register: Register | None) -> None:
        self._languages = tuple(dict.fromkeys(("en", *brief.languages)))
        self._brief, self._register = brief, register

    def get_ready(self) -> None:
        """Meet what every name needs, with a name that says what the brief says."""
        concept = title(self._brief.concepts[0].word)
        self.of(Proposal(concept, (concept.casefold(),), "found", "", (), ""))

    def of(self, proposal: Proposal, pleased: float = 0.0, screened: bool = True) -> tuple[str, ...] | Refusal:
        """Remarks on a name; or why it must not be shown: it reads badly in one of the brief's languages, or
        is all but the same as an existing mark, or names the goods, another ware like them (see `Wares.named_by` for
        `pleased`) or a stuff that they are not made of; or, where it is `screened`, a screening would call it
        seriously flawed for what it is."""
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
        text = proposal.text
        coarse = [one for one in english_readings(text, self._brief.markets) if one.severity >= _AWKWARD]
        for reading in (*readings(text, languages=self._languages, dictionaries=()), *coarse):
            because = f"{reading.language}: {reading.word} ({reading.meaning})"
            if reading.severity >= (_MILD if reading.stands else _AWKWARD):
                return Refusal("reading", because, reading.language)
            if reading.severity >= _MILD:
                remarks.append(because)
        refused = self._refused(proposal.text) if screened else ""
        if isinstance(refused, Refusal):
            return refused
        remarks += [refused] if refused else []
        taken_for = _taken_for(proposal)
        if taken_for:
            remarks.append(f"heard as {taken_for}")
        return tuple(dict.fromkeys(remarks))

    def _refused(self, text: str) -> str | Refusal:
        """For what an office in a market of the brief may refuse a name, as `namescreen.goods` finds it for a
        screening: generic, descriptive, a surname, a place, or a sign that may not be registered. A remark where a
        screening would only ask for a closer look; "" if for nothing, or for an EU mark alone."""
        from ..goods import CATEGORIES, distinctiveness
        from ..goods.verdicts import only_for_the_union

        brief = self._brief
        if not brief.goods:
            return ""
        found = distinctiveness(
            text, brief.goods, languages=brief.languages or None, markets=brief.markets, classes=brief.classes,
            product=brief.product,
        )  # fmt: skip
        if isinstance(found, NotChecked):
            return ""
        barred = [sign for sign in found.protected if sign.serious]
        serious = next((f'"{sign.sign}": {sign.reason}' for sign in barred), "")
        if not found.protected and only_for_the_union(found.category, found.markets, None):
            return ""
        if not serious and found.category not in CATEGORIES[:2]:
            return f"names a place: {some(found.places)}" if found.places else ""
        if not serious and found.score >= PLAINLY_DESCRIPTIVE:
            return f"an office may refuse it: {found.called}"
        return Refusal("refused", serious or f"{found.called}: {found.reasons[0]}")

    @cached_property
    def _wares(self) -> Wares:
        return Wares(self._brief)

    @cached_property
    def _marks(self) -> dict[str, str]:
        """The marks by their letters."""
        return {_letters(mark.text): mark.text for mark in self._register.marks} if self._register is not None else {}

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
