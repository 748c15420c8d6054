"""In which way a mark is close to a name, in words, and the question which that way raises."""

from __future__ import annotations

from ..closeness.reason import About
from ..lexicon.language_codes import language_name
from ..outcome import NotChecked
from ..plain_text import number, shorten, some
from ..screening.crowd import says_little
from ..screening.foreign_words import told_of
from ..screening.surplus import rest_of_both
from ..screening.taken_over import taken_over
from ..text import parse
from ..text.inflection import other_number
from .findings import ALIKE, has_weak_words
from .law import objection, on_added_words, on_weak_marks
from .model import CloseMark, Report
from .register_facts import held_in

__all__ = ["in_which_way", "told_about"]

_VERY_CLOSE = 0.8  # closeness in one aspect that is always told (common practice, no source)
_STEM = 5  # letters of a word that has forms
_ENDINGS = frozenset(("s", "es", "ies", "ed", "ied", "er", "ier", "ing", "e", "n", "en"))
"""Endings of forms of a word in the languages of most marks here; ours, not a whole grammar."""


def in_which_way(found: CloseMark, name: str, report: Report, *, generic: bool) -> str:
    """In which way a mark is close, and the question which that way raises."""
    asked = objection(name, held_in(found.mark, report))
    if generic:
        return f"is close, but {name} is the name of the goods: could what they share count at all, and {asked}"
    if whole := taken_over(name, found.mark, report.goods):
        keeps = "may be too little" if whole.further or whole.second else "seldom suffices"
        holds = f"{found.mark.text} holds {name}" if whole.by_mark else f"{name} holds it"
        source = on_added_words(held_in(found.mark, report), by_mark=whole.by_mark)
        return (
            f"is close: {shorten(holds, 130)} {whole.how_much} and adds {whole.added}, which {keeps} to keep marks "
            f"apart ({source}). {_though_weak(found, report)}So {asked}"
        )
    if found.element and (rest := rest_of_both(name, found.mark, report.goods, None)):
        source = on_added_words(held_in(found.mark, report), by_mark=True)
        without, both = shorten(rest.without, 90), shorten(rest.both, 60)
        return f"is close, compared {without} ({both}; {source}): {asked}"
    if found.element and not found.translation:  # the same words in other forms
        return f"is close ({shorten(found.element.rstrip('.'), 130)}): {asked}"
    strongest = _strongest(found)
    told = some(f"{aspect} ({number(value)})" for aspect, value in strongest.items())
    ours = set(parse(name).words)
    shared = [  # one of several words in whatever number: a form of the whole name is asked about as that
        word
        for word in parse(found.mark.text).words
        if word in ours or (len(ours) > 1 and not ours.isdisjoint(other_number(word)))
    ]
    telling = [word for word in shared if len(word) > 2 and not says_little(word, report.goods)]
    if telling:
        return f"shares {some(telling)} with {name} and is close {_close_in(told, found)}: {asked}"
    if found.translation:
        return f"says it in {language_name(found.translation)}: would the shared idea alone be held against {name}"
    said = told_of(found.foreign) or told_about(found, About.TRANSLATION)
    if said and max(found.appearance, found.sound) < ALIKE:
        read = shorten(said.partition("; ")[0].rstrip("."), 130)
        return f"says something alike ({read}): would the shared idea alone be held against {name}"
    forms = [word for word in parse(found.mark.text).words if any(_are_forms(word, our) for our in parse(name).words)]
    if forms:
        return f"has {some(forms)}, a form of the same word: {asked}"
    if set(strongest) == {"meaning"} and max(found.appearance, found.sound) < ALIKE:
        return f"says much the same in other words, by {told}: would the shared idea alone be held against {name}"
    if set(strongest) == {"sound"}:
        return f"is close in {told} though spelled otherwise: {asked} for the sound alone"
    if set(strongest) == {"appearance"}:
        return f"is close in {told} though it sounds otherwise: {asked} for the look alone"
    return f"is close {_close_in(told, found)}: {asked}"


def told_about(found: CloseMark, what: About) -> str:
    """The first reason that is about something; "" if none is."""
    told = zip(found.reasons, found.about, strict=False)
    return next((reason for reason, about in told if about == what), "")


def _close_in(aspects: str, found: CloseMark) -> str:
    return f"in {aspects}" if aspects else f"taken as a whole ({number(found.overall)})"


def _though_weak(found: CloseMark, report: Report) -> str:
    """That a mark whose words are weak counts for something while it is registered; "" for others."""
    source = on_weak_marks(held_in(found.mark, report))
    if not source or found.mark.status != "live" or not has_weak_words(found):
        return ""
    return f"Its words are weak for such goods, but a registered mark counts for something ({source}). "


def _are_forms(one: str, other: str) -> bool:
    """Whether two words are forms of one, such as a plural: the longer has an ending that words take."""
    shorter, longer = sorted((one, other), key=len)
    stem = shorter[:-1] if shorter[-1:] in "ey" else shorter
    return len(shorter) >= _STEM and one != other and longer.removeprefix(stem) in _ENDINGS


def _strongest(found: CloseMark) -> dict[str, float]:
    """The aspects in which the mark is closest, and any other in which it is very close."""
    values = {"appearance": found.appearance, "sound": found.sound}
    if not isinstance(found.meaning, NotChecked):
        values["meaning"] = found.meaning
    least = min(_VERY_CLOSE, max(0.5, max(values.values()) - 0.1))
    return {aspect: value for aspect, value in values.items() if value >= least}
