"""The numbers a candidate is ranked by: each in [0, 1], 1 the better end, each with a stated meaning.

Their weights were fitted on names that readers rated without knowing who had made them
(wordlists/build/name_ranker.py); none of those names is kept.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from itertools import pairwise

from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import association, kinds, lexicon, zipf
from ..pronunciation.phonotactics import pronounceability
from ..tables import open_table
from ..text import fold, split_closed_compound
from .blending.letter_statistics import surprise
from .candidate import Proposal
from .evocation import Evocation, Touches
from .ideas import Idea
from .vocabulary import word
from .word_sounds import is_vowel

__all__ = ["PARTS", "Judge", "default_weights", "resemblance", "syllables"]

PARTS = {
    "sense": "how much of the brief its sources touch together: 1 = two concepts as well as any word does",
    "true": "how strongly the weakest of its sources touches one term of the brief, and loosely a second one",
    "picture": "how concrete its sources are: 1 = seen at a glance",
    "pleasant": "how its sources feel: 0 = unpleasant, 0.5 = neutral, 1 = pleasant",
    "charm": "how its sources look and sound in a name, by our own judgement of single words",
    "company": "how much its two sources have to do with each other: 0 = nothing, 1 = as much as any two words",
    "own": "how far it is from describing the goods: 0 = it names them",
    "fresh": "how little worn its sources are: 0 = as common as any word, 1 = seldom met",
    "heard": "how nearly the familiar word or saying that was changed is heard; a middling 0.6 where none was",
    "sayable": "how usual its letters and sounds are in English: 1 = as the commonest words, 0 = as no word",
    "length": "letters and syllables: 1 at four to nine letters and one to three syllables",
    "rhythm": "strong and weak syllables taking turns, a strong one first",
    "echo": "sounds that come twice where it is noticed: at the beginning of words, under stress, at the end",
    "join": "how cleanly its parts meet, and how readily its sources are seen in it",
    "kind": "how names made in this way fared with readers, as a rule",
}
"""Every part and its meaning."""

_USUAL, _UNUSUAL = 2.6, 5.2
"""Mean bits a letter at which a name reads like a common word, and like none: the 10th and 99.5th hundredths of
the words of frequency Zipf 3 and more are 2.5 and 5.2 (measured on the shipped lists)."""
_NO_ORIGINAL = 0.6
_ALONE, _LOOSELY = 0.5, 0.35  # what is left of a touch that stands alone; a second touch that is enough
_WORST = 9.5  # bits of one letter beyond which the whole is held back
_WORN, _SELDOM = 5.2, 2.2  # Zipf frequencies of a word that says nothing new, and of one that is seldom met
_SHAPE = {"1": 0.85, "10": 1.0, "12": 0.95, "01": 0.75, "11": 0.85, "21": 0.75, "20": 0.9, "100": 0.9, "102": 0.95,
          "120": 0.9, "010": 0.9, "101": 0.9, "110": 0.75, "210": 0.85, "1010": 0.9, "2010": 0.95,
          "1020": 0.95}  # fmt: skip


@cache
def default_weights() -> dict[str, float]:
    """The fitted weight of each part."""
    table = open_table("name_ranker.tsv")
    return {name: float(table.get(name) or 0.0) for name in PARTS}


@cache
def _kind_means() -> dict[str, float]:
    """How names of each construction fared, in [0, 1]."""
    return {key[5:]: float(value) for key, value in open_table("name_ranker.tsv").starting("kind ")}


def weights_of(brief: Brief) -> dict[str, float]:
    """The brief's ranking weights over the fitted ones; raises `InputError` for a part that does not exist."""
    unknown = [name for name in brief.ranking_weights if name not in PARTS]
    if unknown:
        raise InputError(
            [
                Problem(f"{name!r} is not a part of the ranking", f"Known parts: {', '.join(PARTS)}",
                        str(brief.source or "brief"), None, f"weights.ranking.{name}")
                for name in unknown
            ]
        )  # fmt: skip
    return {**default_weights(), **{name: float(value) for name, value in brief.ranking_weights.items()}}


def syllables(proposal: Proposal) -> int:
    """How many syllables it has: of its sounds, else of its groups of vowel letters."""
    if proposal.sounds:
        return sum(map(is_vowel, proposal.sounds))
    return max(1, sum(_groups(word) for word in proposal.words))


def _groups(word: str) -> int:
    shape = "".join("v" if letter in "aeiouy" else " " for letter in word.removesuffix("e") or word)
    return len(shape.split())


class Judge:
    """Scores proposals for one brief. The parts follow from the proposal alone, so batches equal singles."""

    def __init__(self, weights: Mapping[str, float], evocation: Evocation, ideas: Sequence[Idea], goods: str) -> None:
        self.weights = weights
        self._evocation = evocation
        self._touches: dict[str, Touches] = {idea.word: idea.touches for idea in reversed(ideas)}
        self._described: dict[str, float] = {}
        self._goods = frozenset(fold(goods).replace("-", " ").replace(",", " ").split())

    def knowing(self, ideas: Sequence[Idea]) -> Judge:
        """This judge with the touches of these ideas put in place of what it knew of their words."""
        judge = Judge(self.weights, self._evocation, (), "")
        judge._touches = {**self._touches, **{idea.word: idea.touches for idea in ideas}}
        judge._goods = self._goods
        return judge

    def parts(self, proposal: Proposal) -> dict[str, float]:
        """Every part of `PARTS` for a proposal."""
        touches = [self._of(source) for source in proposal.sources]
        words = [source.casefold() for source in proposal.sources]
        together = tuple(map(max, *touches)) if len(touches) > 1 else touches[0]
        return {
            "sense": self._evocation.relevance(together),
            "true": min(map(_true, touches)),
            "picture": _mean(map(_picture, words)),
            "pleasant": _mean(map(_pleasant, words)),
            "charm": _mean(word(source.split()[-1]).charm for source in words),
            "company": _company(*words[:2]) if len(words) > 1 else 0.5,
            "own": 1 - self._told(proposal, words),
            "fresh": _mean(map(_fresh, words)),
            "heard": proposal.heard if proposal.original else _NO_ORIGINAL,
            "sayable": _sayable_as(proposal),
            "length": _length(len(proposal.letters), syllables(proposal), len(proposal.words)),
            "rhythm": _rhythm(proposal),
            "echo": _echo(proposal),
            "join": proposal.join * proposal.clear,
            "kind": _kind_means().get(proposal.construction, 0.5),
        }

    def score(self, parts: Mapping[str, float]) -> float:
        """The weighted mean of the parts, in [0, 1]."""
        total = sum(self.weights[name] for name in parts)
        return sum(self.weights[name] * value for name, value in parts.items()) / total if total else 0.0

    def _of(self, source: str) -> Touches:
        found = self._touches.get(source)
        if found is None:
            found = self._touches[source] = self._evocation.word(source.casefold())
        return found

    def _told(self, proposal: Proposal, words: Sequence[str]) -> float:
        """How plainly it tells of the goods, 0 to 1: the most distinctive word carries a name, the others take away a
        part (TMEP 1209.01; common practice)."""
        told = sorted(max(map(self._describes, source.split())) for source in words)
        weight = 0.6 * told[0] + 0.4 * told[-1]
        return weight if proposal.construction in ("found", "foreign", "pair") else 0.6 * weight

    def _describes(self, word: str) -> float:
        known = self._described.get(word)
        if known is None:
            known = self._described[word] = self._describes_anew(word)
        return known

    def _describes_anew(self, word: str) -> float:
        if {"laudatory", "quality", "generic head"} & kinds(word):
            return 0.7
        if self._goods & {word, *lexicon().bases(word)}:
            return 1.0
        if any(len(term.word) > 3 and term.word in word for term in self._evocation.terms):
            return 0.8
        return max(
            (_same_thing(word, term.word) * (1.0 if not term.is_concept else 0.8) for term in self._evocation.terms),
            default=0.0,
        )


def _same_thing(one: str, other: str) -> float:
    """How nearly a word names what another names: 1 the same word, less for a synonym or a kind of it."""
    if one == other:
        return 1.0
    first, second = word(one), word(other)
    if not first.sense or not second.sense:
        return 0.0
    return 0.9 if first.sense == second.sense else 0.6 * (second.sense in first.above)


def _true(touches: Touches) -> float:
    """How surely a word stands for something in the brief: a second term that it touches shows that the first is meant
    so (salt of the bath, salt of the table)."""
    first, second, *_ = (*sorted(touches, reverse=True), 0.0)
    return first if len(touches) == 1 else first * (_ALONE + (1 - _ALONE) * min(1.0, second / _LOOSELY))


def _mean(values: object) -> float:
    found = list(values)  # type: ignore[call-overload]
    return float(sum(found) / len(found))


def _picture(text: str) -> float:
    """How concrete: as its head is."""
    return word(text.split()[-1]).picture


@lru_cache(maxsize=1 << 15)
def _company(one: str, other: str) -> float:
    return association(one, other) or 0.0


def _pleasant(text: str) -> float:
    """How it feels: as the least pleasant of its words."""
    return min(word(part).pleasant for part in text.split())


def _fresh(text: str) -> float:
    common = min(word(part).zipf for part in text.split())
    return max(0.0, min(1.0, (_WORN - common) / (_WORN - _SELDOM)))


def _sayable_as(proposal: Proposal) -> float:
    """By its letters, and where they are known by its sounds, in equal parts."""
    letters = min(_sayable(word) for word in proposal.words)
    return 0.5 * letters + 0.5 * _said(proposal.sounds) if proposal.sounds else letters


@lru_cache(maxsize=1 << 14)
def _said(sounds: tuple[str, ...]) -> float:
    return pronounceability(sounds)


@lru_cache(maxsize=1 << 15)
def _sayable(word: str) -> float:
    bits = surprise(word)
    if not bits:
        return 0.5
    mean = sum(bits) / len(bits)
    value = 1 - (mean - _USUAL) / (_UNUSUAL - _USUAL)
    return max(0.0, min(1.0, value) - 0.15 * max(0.0, max(bits) - _WORST))


def _length(letters: int, sounded: int, words: int) -> float:
    gap = max(0, 4 - letters) * 0.15 + max(0, letters - (9 if words == 1 else 11)) * 0.1
    gap += max(0, sounded - 3) * 0.15 + (0.15 if words > 3 else 0.0)
    return max(0.0, 1 - gap)


def _rhythm(proposal: Proposal) -> float:
    if not proposal.sounds:
        return 0.75
    stresses = "".join(sound[-1] for sound in proposal.sounds if is_vowel(sound))
    known = _SHAPE.get(stresses)
    if known is not None:
        return known
    turns = sum((a == "0") != (b == "0") for a, b in pairwise(stresses))
    return 0.5 + 0.4 * turns / max(1, len(stresses) - 1)


def _echo(proposal: Proposal) -> float:
    parts = proposal.sources if len(proposal.words) == 1 else tuple(one for one in proposal.words if one != "and")
    if len(parts) < 2:
        return 0.0
    heard = [sounds for one in (parts[0], parts[-1]) if (sounds := word(one.casefold()).sounds)]
    if len(heard) < 2:
        return 0.0
    one, two = heard[0], heard[-1]
    stressed = [next((s[:-1] for s in sounds if s.endswith("1")), "") for sounds in (one, two)]
    return min(1.0, 0.5 * (one[0] == two[0]) + 0.3 * (stressed[0] == stressed[1]) + 0.4 * (one[-2:] == two[-2:]))


@lru_cache(maxsize=64)
def _words_in(model: tuple[str, ...]) -> tuple[str, ...]:
    """The words of a name, and those that a closed one is made of."""
    return tuple(dict.fromkeys(part for one in model for part in (one, *split_closed_compound(one, zipf))))


def resemblance(proposal: Proposal, model: Sequence[str]) -> float:
    """How much a proposal resembles a model name, in [0, 1]: by what it brings to mind, its rhythm, size and ending.

    A word that both share counts no more than a near one: who likes a name seeks others like it, not the same again.
    """
    parts = _words_in(tuple(model))
    near = max((_company(one.casefold(), part) for one in proposal.sources for part in parts), default=0.0)
    beats = sum(word(part).beats for part in model)
    size = 1 - min(1.0, abs(len(proposal.letters) - sum(map(len, model))) / 6)
    rhythm = 1 - min(1.0, abs(syllables(proposal) - beats) / 2)
    ending = proposal.letters[-2:] == model[-1][-2:]
    return 0.4 * near + 0.2 * size + 0.15 * rhythm + 0.1 * ending + 0.15 * (len(proposal.words) == len(model))
