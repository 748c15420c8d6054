"""Questions on further marks with the same words as one that is asked about: where they bite, and whose they are."""

from __future__ import annotations

from ..marks.mark import Mark
from ..plain_text import shorten, some
from ..policy import MIDDLE_OF_LOOK, Level, level_of
from ..screening.foreign_words import told_of
from ..territories import law_of
from .findings import conflict_of, is_of_other_goods, mark_level
from .law import objection, on_citing_offices
from .model import CloseMark, Elsewhere, Report
from .register_facts import held_in, in_force_notes

__all__ = ["USE_LASTS", "asks_of_equivalents", "on_dead_namesakes", "on_equivalents", "on_namesakes"]

USE_LASTS = " In US use alone gives rights, which outlast a registration (15 USC 1125(a))."
"""What is said of a dead mark of the United States."""
_EQUIVALENTS = "doctrine of foreign equivalents: TMEP 1207.01(b)(vi); Palm Bay, 396 F.3d 1369"
_MARKS = 4  # named in one question
_ALL_BUT_THE_SAME = 0.85  # overall closeness from which a dead mark's words are those of the name; ours, not fitted


def on_namesakes(found: CloseMark, name: str, report: Report) -> str:
    """What is asked of further marks with the words of one that is asked about, as sentences; "" where nothing is."""
    elsewhere = (_on_elsewhere(found, one, name, report) for one in found.elsewhere)
    return " ".join(filter(None, (*elsewhere, _on_live_namesakes(found, report), on_dead_namesakes(found, report))))


def _on_elsewhere(found: CloseMark, one: Elsewhere, name: str, report: Report) -> str:
    """A further mark of the same words, which bites in markets where the one asked about does not hold."""
    mark = found.others[one.place]
    stand = {"live": "are registered", "pending": "are applied for", "opposed": "are applied for, and opposed"}
    words, day = stand.get(mark.status, "stand in the list"), mark.priority or mark.filed
    ranks = f", and rank from {day}" if mark.status in ("pending", "opposed") and day else ""
    if _is_the_same_matter(found, one, report):
        alike = f"The same is to be asked in {some(one.markets)}, where its owner has the same words"
        only = {"pending": ", applied for", "opposed": ", applied for and opposed"}.get(mark.status, "")
        cites = on_citing_offices(one.markets) if found.knockout else ""
        return " ".join((f"{alike} as {_cited(mark)}{only}{ranks}.{cites}", *in_force_notes(mark, report)))
    far = conflict_of(found).identical and one.concern <= MIDDLE_OF_LOOK
    translates = bool(found.translation) and any(law_of(market) == "US" for market in one.markets)
    source = f" ({_EQUIVALENTS})" if translates else ""
    known = "would its goods be held similar all the same, or is it known beyond them there"
    question = known if far else objection(name, one.markets)
    asked = f"In {some(one.markets)} the same words {words}{ranks}, as {_cited(mark)}: {question}{source}?"
    return " ".join((asked, *in_force_notes(mark, report)))


def _is_the_same_matter(found: CloseMark, one: Elsewhere, report: Report) -> bool:
    """Whether a further mark of the same owner raises the question of the first one again: as grave, and of a knockout
    whether there is any room, or whether the same would object."""
    mark = found.others[one.place]
    if not mark.is_of_the_owner_of(found.mark) or found.mark.is_dead or found.lapsed:
        return False
    if found.knockout:
        return one.knockout
    same_who = objection("", one.markets).split(" (")[0] == objection("", held_in(found.mark, report)).split(" (")[0]
    return level_of(one.concern) is mark_level(found) and same_who


def _on_live_namesakes(found: CloseMark, report: Report) -> str:
    """Further live marks of other owners with the same words, in a class of ours, or in any where the one asked about
    has ended; without those that bite elsewhere, which are asked about by themselves."""
    told_of = {one.place for one in found.elsewhere}
    told = []
    for mark in (mark for place, mark in enumerate(found.others) if place not in told_of):
        held = held_in(mark, report)
        ours = not report.classes or not mark.classes or not {*mark.classes}.isdisjoint(report.classes)
        if held and not mark.is_dead and mark.owner != found.mark.owner and (ours or found.mark.is_dead):
            told.append(f"{_cited(mark)}, in {some(held)}")
    return f"The same words are live for others: {'; '.join(told[:_MARKS])}. What of these?" if told else ""


def on_dead_namesakes(found: CloseMark, report: Report) -> str:
    """Whether the owners of dead marks with all but the same name, in a class of ours, still use it; "" if there are
    none in the markets."""
    if not (conflict_of(found).identical or found.overall >= _ALL_BUT_THE_SAME):
        return ""
    dead = [mark for mark in found.others if mark.is_dead and mark.territories and held_in(mark, report)]
    ours = [mark for mark in dead if not {*mark.classes}.isdisjoint(report.classes)][:_MARKS]
    if not ours:
        return ""
    what = "the same name" if conflict_of(found).identical else shorten(found.mark.text, 40)
    told = "; ".join(map(_cited, ours))
    lasts = USE_LASTS if any("US" in mark.territories for mark in ours) else ""
    return f"Dead, in a class of ours, is {what}: {told}. Is it still in use, or would its owner file it again?{lasts}"


def asks_of_equivalents(found: CloseMark, report: Report) -> bool:
    """Whether a mark that says words of the name in another language bites where an examiner translates, for goods
    like ours: it is asked about from the level "minor" on."""
    held = any(law_of(market) == "US" for market in held_in(found.mark, report))
    worth = mark_level(found) >= Level.MINOR and not is_of_other_goods(found)
    return held and worth and bool(found.foreign) and bool(found.mark.territories)


def on_equivalents(title: str, found: CloseMark, name: str, report: Report) -> str:
    """The question on a mark that says words of the name in another language, where an examiner translates."""
    return (
        f"{title} says in another language what is in {name} ({shorten(told_of(found.foreign), 80)}), and in US an "
        f"examiner translates common modern languages before comparing ({_EQUIVALENTS}). "
        f"So {objection(name, held_in(found.mark, report))}"
    )


def _cited(mark: Mark) -> str:
    """A further mark of the same words, as briefly as it can be found by."""
    word = "class" if len(mark.classes) == 1 else "classes"
    classes = f"{word} {some(map(str, mark.classes))}" if mark.classes else ""
    about = ", ".join(filter(None, (mark.office, shorten(mark.owner, 40), classes)))
    return shorten(mark.number or mark.text, 24) + (f" ({about})" if about else "")
