"""How plainly a name is related to another that the maker wants more like: in idea, in kind, or in sound."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from ..lexicon import association, lexicon, zipf
from ..text import fold, split_closed_compound, tokenize
from .brief_terms import likely_guides
from .candidate import Proposal
from .ideas import meaning_of
from .matching import means
from .ties import keys_of_meanings, known_words
from .vocabulary import places, vectors, word
from .wares import head_of

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["Model"]

_OF_A_KIND = 1.4  # what closeness of senses counts beside association: two birds are 0.3 to 0.6 close
_BY_MEANING = 0.7  # what being related to the head of the model's meaning counts
_RHYME, _ONSET = 0.7, 0.5  # for the same sounds from the stressed vowel on, and for the same beginning up to it
_BESIDE = 0.35  # what a related source counts that stands beside another
_PHRASE = 0.3  # what it counts that both are phrases of three words or more
_SMALL = 5.9  # Zipf frequency from which a word is one of the small ones (to, the, on)
_SAME_IDEA, _OTHER_IDEA = 0.85, 0.45
"""Cosines of two meanings from which they are one idea (to roam for pleasure), and below which they are not alike."""
_CREATURES = 0.5  # what it counts that both are beasts, or plants: who likes a mudskipper may like an otter
_NOTHING = 0.3  # related less than this, two words are not seen as related; all set by trying sessions


class Model:
    """A name to make others like; its `company`, the words of the brief, chooses the meaning of its everyday words."""

    def __init__(self, text: str, company: Iterable[str] = ()) -> None:
        whole = tokenize(text)
        parts = (part for one in whole for part in (one, *split_closed_compound(one, zipf)))
        carrying = tuple(part for part in dict.fromkeys(parts) if len(part) > 2 and zipf(part) < _SMALL)
        self.words = whole
        self._parts = carrying or whole
        meaning = meaning_of(fold(text))
        meant = head_of(meaning)
        self._meant = meant if meant and meant not in self._parts else ""
        around = (*company, *tokenize(meaning))
        self._guides = {part: likely_guides(part, around) for part in (*self._parts, self._meant)}
        self._living = {_living(part) for part in whole} - {""}
        self._ideas = _alike_in_meaning(fold(text)) if meaning else {}
        self._related = lru_cache(maxsize=1 << 14)(self._relate)

    def holds(self, proposal: Proposal) -> bool:
        """Whether a name has a word of the model itself: the same again, not one like it."""
        texts = (*proposal.words, *proposal.sources)
        return any(_are_one(one, part) for text in texts for one in text.casefold().split() for part in self._parts)

    def kinship(self, proposal: Proposal) -> float:
        """How plainly a name is related to the model, 0 to 1: 0 = not, 1 = as plainly as any two words. The closest of
        its sources counts, beside another one less; a phrase is related to a phrase by being one."""
        related = max(map(self.of_word, proposal.sources)) * (1.0 if len(proposal.sources) == 1 else _BESIDE)
        return min(1.0, related + _PHRASE * (len(self.words) > 2 and len(proposal.words) > 2))

    def of_word(self, text: str) -> float:
        """How plainly a word is related to the model, 0 to 1; 0 for its own words."""
        return self._related(text.casefold())

    def _relate(self, text: str) -> float:
        if any(_are_one(text, part) for part in self._parts):
            return 0.0
        found = max(max(self._in_sense(text, part), _in_sound(text, part)) for part in self._parts)
        if self._meant:
            found = max(found, _BY_MEANING * self._in_sense(text, self._meant))
        found = max(found, self._ideas.get(text, 0.0), _CREATURES * (_living(text) in self._living))
        return max(0.0, (min(1.0, found) - _NOTHING) / (1 - _NOTHING))

    def _in_sense(self, text: str, part: str) -> float:
        """How close a word is to a part in meaning; where guides tell which meaning, no closer than to one of these."""
        found, guides = _in_meaning(text, part), self._guides[part]
        return min(found, max(_in_meaning(text, one) for one in guides)) if guides and found > _NOTHING else found


@cache
def _meanings() -> Associations:
    """The meaning of each existing word as a vector of length 1, less what all meanings share; zeros for none."""
    import numpy as np

    known, at = vectors()
    values = np.zeros((len(places()), known.shape[1]), np.float32)
    values[at] = known
    found = means(values, keys_of_meanings(), len(known_words()))
    told = found.any(axis=1)
    found[told] -= found[told].mean(axis=0)
    lengths = np.linalg.norm(found, axis=1, keepdims=True)
    return np.asarray(found / np.where(lengths > 0, lengths, 1), np.float32)


@lru_cache(maxsize=16)
def _alike_in_meaning(text: str) -> Mapping[str, float]:
    """The existing words whose meaning is like that of one of them, each with how much, 0 to 1: 1 = one idea."""
    at = next(place for place, one in enumerate(known_words()) if one.word.casefold() == text)
    cosines = _meanings() @ _meanings()[at]
    return {
        known_words()[place].word.casefold(): min(1.0, float(cosines[place] - _OTHER_IDEA) / (_SAME_IDEA - _OTHER_IDEA))
        for place in (cosines > _OTHER_IDEA).nonzero()[0].tolist()
    }


@lru_cache(maxsize=1 << 14)
def _living(text: str) -> str:
    """The domain of a word for a beast or a plant; "" of any other."""
    domain = word(text.split()[-1]).domain if text else ""
    return domain if domain in ("noun.animal", "noun.plant") else ""


def _in_meaning(one: str, other: str) -> float:
    return max(association(one, other) or 0.0, _OF_A_KIND * (lexicon().closeness(one, other) or 0.0))


def _in_sound(one: str, other: str) -> float:
    if zipf(one) <= 0 or not (a := word(one).sounds) or not (b := word(other).sounds):
        return 0.0
    (start, rest), (other_start, other_rest) = _stressed(a), _stressed(b)
    if rest == other_rest and len(rest) > 1:
        return _RHYME
    return _ONSET if start and start == other_start and rest[0] == other_rest[0] else 0.0


def _stressed(sounds: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The sounds before the stressed vowel, and those from it on."""
    at = next((place for place, sound in enumerate(sounds) if sound.endswith("1")), 0)
    return sounds[:at], sounds[at:]


def _are_one(one: str, other: str) -> bool:
    """Whether two words are one word, or forms of it."""
    return one == other or (len(other) > 3 and (one.startswith(other) or other in lexicon().bases(one)))
