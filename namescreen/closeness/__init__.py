"""How close two names are: in appearance, in sound, in meaning, and overall.

A screening aid, not legal clearance: likelihood of confusion is a legal question that no score answers.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Any

from ..outcome import NotChecked
from .calibration import Calibration, calibration
from .explanation import COINED, COINED_MEANING, UNREAD, Explanation, Pair, reasons
from .explanation import explain as _explain
from .features import Features, Word, features, goods_words
from .name_similarity import score
from .parts import Scores
from .reason import About, about
from .telling import ADDED, NOT_IDENTICAL, left_out, registered_part, telling_part
from .word_similarity import word_similarity

__all__ = ["Calibration", "Closeness", "Explanation", "Features", "Pair", "Scores", "Word", "closeness",
           "closeness_from", "compare", "explain", "features", "goods_words", "score",
           "told_first", "with_reasons", "without_meaning", "word_similarity"]  # fmt: skip


class _Reasons:
    """Sentences that are worked out when they are first asked for. Another process is sent what was found, or how to
    find it: `work` and all that is `given` to it can be pickled."""

    __slots__ = ("_found", "_given", "_work")

    def __init__(self, work: Callable[..., tuple[str, ...]], *given: Any) -> None:
        self._work, self._given = work, given
        self._found: tuple[str, ...] | None = None

    def __call__(self) -> tuple[str, ...]:
        if self._found is None:
            self._found = self._work(*self._given)
        return self._found

    def __reduce__(self) -> tuple[Callable[..., object], tuple[object, ...]]:
        return (_Reasons, (self._work, *self._given)) if self._found is None else (_Reasons, (tuple, self._found))


@dataclass(frozen=True, slots=True)
class Closeness:
    """How close a name is to a mark. Every number is in [0, 1]; 1 = identical.

    `meaning` is the share of meaning known to be in common: where meaning could not be judged it is 0.0 and
    `not_checked` says so; `overall` then rests on the other aspects alone. So it is with `sound`, where a name is in
    a script that cannot be read aloud here. `overall` does not include the goods,
    except that words which describe them count less, and those that name them next to nothing; how related the goods
    are is a number of its own.
    `reasons` says in words what the numbers rest on.
    """

    appearance: float
    sound: float
    meaning: float
    overall: float
    explained: tuple[str, ...] | Callable[[], tuple[str, ...]] = field(repr=False, compare=False)
    """The reasons, or what works them out when they are asked for."""
    not_checked: tuple[NotChecked, ...] = ()
    telling: tuple[float, float] = (0.0, 0.0)
    """Closeness in appearance and in sound without the words that name the goods; 0 where none were left out."""
    compared: tuple[str, str] | None = None
    """The two names without legal forms, where all numbers are of these; None where they are of the
    names as they stand."""
    as_written: tuple[float, float] | None = None
    """Closeness in appearance and in sound of the names as they stand, where others were `compared`."""

    @property
    def reasons(self) -> tuple[str, ...]:
        """One sentence an aspect; worked out when asked for, as they cost more than the numbers."""
        return self.explained() if callable(self.explained) else self.explained

    @property
    def calibration(self) -> Calibration:
        """What so overall close has meant in decided cases, with its spread."""
        return calibration(self.overall)

    def to_json(self) -> dict[str, object]:
        """The numbers, rounded to three places, and the reasons."""
        numbers = {name: round(getattr(self, name), 3) for name in ("overall", "appearance", "sound", "meaning")}
        return {**numbers, "reasons": list(self.reasons)}


def compare(name: str, mark: str, *, name_goods: str | None = None, mark_goods: str | None = None) -> Closeness:
    """How close `name` is to the existing `mark`; symmetric. The goods of each, in plain words, are optional."""
    goods = goods_words(name_goods, mark_goods)
    found = closeness(features(name, goods), features(mark, goods))
    return _beside_goods_words(name, mark, found, (name_goods, mark_goods))


def closeness_from(name: str, mark: str, scores: Scores, *, name_goods: str | None = None) -> Closeness:
    """As `compare`, where the scores are known; both names must have words."""
    found = _closeness(scores, _Reasons(_reasons_for, name, mark, name_goods, scores), scores.sound is None)
    return _beside_goods_words(name, mark, found, (name_goods, None))


def _beside_goods_words(
    name: str, mark: str, found: Closeness, goods: tuple[str | None, str | None]
) -> Closeness:
    """`found` as it stands, or how close the names are without legal forms; and as close overall as they
    are without all that says nothing of the maker, where it is seen and heard. Each costs next to nothing overall, and
    leaves no names identical."""
    if found.appearance >= 1:
        return found
    names, weighed = (name, mark), goods_words(*goods)
    own = registered_part(name), registered_part(mark)
    if own != names:
        bare = closeness(*(features(one, weighed) for one in own))
        if ADDED * bare.overall > found.overall:
            seen, heard = _not_identical(bare)
            told = told_first(left_out(names, own), bare)
            written = found.appearance, found.sound
            found = replace(
                told, appearance=seen, sound=heard, overall=ADDED * bare.overall, compared=own, as_written=written
            )
            names = own
    named = "; ".join(filter(None, goods))
    forms = telling_part(name, named), telling_part(mark, named)
    if forms in ((name, mark), names):
        return found
    bare = closeness(*(features(form, weighed) for form in forms))
    if ADDED * bare.overall <= found.overall:
        return found
    told = told_first(left_out(names, forms, _not_identical(bare)), found)
    return replace(told, overall=ADDED * bare.overall, telling=_not_identical(bare))


def _not_identical(found: Closeness) -> tuple[float, float]:
    return min(found.appearance, NOT_IDENTICAL), min(found.sound, NOT_IDENTICAL)


def closeness(one: Features, other: Features) -> Closeness:
    """The closeness of two names whose features are at hand."""
    scores = score(one, other)
    unheard = scores.sound is None and bool(one.name.words and other.name.words)
    return _closeness(scores, _Reasons(reasons, one, other, scores), unheard)


def with_reasons(closeness: Closeness, told: Callable[..., tuple[str, ...]], *given: Any) -> Closeness:
    """`closeness` with other reasons: what `told` makes of its own, after what is `given`, once they are asked for.
    Both can be pickled."""
    return replace(closeness, explained=_Reasons(_told_otherwise, closeness, told, *given))


def told_first(sentence: str, closeness: Closeness) -> Closeness:
    """`closeness` with a sentence as its first reason."""
    return with_reasons(closeness, _first, sentence)


def _first(sentence: str, reasons: tuple[str, ...]) -> tuple[str, ...]:
    return (sentence, *reasons)


def _told_otherwise(closeness: Closeness, told: Callable[..., tuple[str, ...]], *given: Any) -> tuple[str, ...]:
    return told(*given, closeness.reasons)


def _reasons_for(name: str, mark: str, name_goods: str | None, scores: Scores) -> tuple[str, ...]:
    goods = goods_words(name_goods, None)
    return reasons(features(name, goods), features(mark, goods), scores)


def _closeness(scores: Scores, explained: Callable[[], tuple[str, ...]], unheard: bool) -> Closeness:
    unknown = [NotChecked("meaning", COINED)] if scores.meaning is None else []
    if unheard:
        unknown.append(NotChecked("sound", UNREAD))
    numbers = scores.appearance, scores.sound or 0.0, scores.meaning or 0.0, scores.overall
    return Closeness(*numbers, explained, tuple(unknown))


def without_meaning(closeness: Closeness) -> Closeness:
    """`closeness` of a coined name, whose meaning is not checked, be the other the same; the reasons say so."""
    if any(one.check == "meaning" for one in closeness.not_checked):
        return closeness
    unknown = (NotChecked("meaning", COINED), *closeness.not_checked)
    told = with_reasons(closeness, _with_no_meaning)
    return replace(told, meaning=0.0, not_checked=unknown)


def _with_no_meaning(reasons: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(COINED_MEANING if about(one) in (About.MEANING, About.WHAT_IS_SAID) else one for one in reasons)


def explain(name: str, mark: str, *, name_goods: str | None = None, mark_goods: str | None = None) -> Explanation:
    """The evidence behind `compare` of the same arguments; both must have letters or digits."""
    goods = goods_words(name_goods, mark_goods)
    one, other = features(name, goods), features(mark, goods)
    return _explain(one, other, score(one, other))
