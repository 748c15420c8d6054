"""Questions for the adviser, written from what was found for one name, so that a paid hour starts at
judgement."""

from __future__ import annotations

from collections.abc import Sequence

from ..closeness.reason import About
from ..lexicon.language_codes import language_name
from ..marks.term import when_it_ended
from ..outcome import NotChecked
from ..plain_text import shorten, some
from ..policy import PLAINLY_OTHER, Level, flaw_of_its_own
from ..screening.translated import known_to_buyers, said_from
from ..territories import languages_of
from ..text import parse
from .coverage import unsearched_markets
from .findings import (
    conflict_of,
    findings,
    goes_with_ours,
    is_of_other_goods,
    mark_level,
    matters,
)
from .law import objection, on_citing_offices, on_translation
from .likeness import in_which_way, told_about
from .mark_choice import marks_shown, worth_a_word
from .model import CloseMark, NameEntry, Report
from .namesakes import USE_LASTS, asks_of_equivalents, on_dead_namesakes, on_equivalents, on_namesakes
from .nearest import nearest_unasked
from .open_markets import held_where, open_markets
from .own_findings import describes
from .own_questions import on_distinctiveness
from .owners import on_shared_words
from .reading_questions import on_readings
from .register_facts import (
    can_claim_priority,
    dead_words,
    held_in,
    in_force_notes,
    lapsed_words,
    uk_mark_of_its_own,
)
from .upkeep import is_international, use_is_due

__all__ = ["asked_about", "general_questions", "grave_questions", "questions"]

MOST = 6
"""Questions a name: what a paid hour can take up (common practice, no source)."""

MOST_GRAVE, MOST_LEFT = 4, 1
"""Questions on a name that falls, and of these at least on marks in the markets that are left."""

_DEAD_BUT_NEAR = 0.375
"""Concern (halved for a dead mark) from which one is asked about: a live one is serious at twice this."""
_SAME_NAME = 0.95  # overall closeness of names that a buyer would not tell apart
_MUCH_THE_SAME = 0.7  # overall closeness from which what two names share is most of both
_MARKS = 4  # marks of a name that are asked about


def questions(entry: NameEntry, report: Report) -> tuple[str, ...]:
    """At most `MOST` questions on one name, what weighs most first; plain text, not escaped. What an office may refuse
    the name for whatever marks there are stands first where it is serious."""
    own = on_distinctiveness(entry)
    first = own if own and flaw_of_its_own(findings(entry)) >= Level.SERIOUS else []
    asked = [
        *first,
        *_on_marks(entry, report),
        *_on_further_marks(entry, report),
        *_on_undesignated_marks(entry, report),
        *(own if not first else []),
        *on_readings(entry, report),
        *on_shared_words(entry, report),
        *_on_addresses(entry),
    ]
    return tuple(asked[:MOST])


def grave_questions(entry: NameEntry, report: Report) -> tuple[str, ...]:
    """The questions on a name that falls, on what it is for the goods, on each mark that is serious or more, and on
    those to look closer at in the markets that are left, at most `MOST_GRAVE`; the first one of all where there is none
    of these."""
    own = on_distinctiveness(entry) if flaw_of_its_own(findings(entry)) >= Level.SERIOUS else []
    asked = [(found, question) for found, question in _asked(entry, report) if question]
    marks = [question for found, question in asked if mark_level(found) >= Level.SERIOUS]
    left = {*open_markets(entry, report)} if marks or own else set()
    there = [question for found, question in asked if question not in marks and left & {*held_where(found)}]
    room = MOST_GRAVE - min(len(there), MOST_LEFT)  # of what stands in the markets that are left at least something
    return tuple([*[*own, *marks][:room], *there][:MOST_GRAVE]) or questions(entry, report)[:1]


def general_questions(report: Report) -> tuple[str, ...]:
    """Questions that do not turn on one name: what was not searched, the classes, the markets."""
    where = f" in {some(report.markets)}" if report.markets else ""
    goods = f" for {shorten(report.goods, 90)}" if report.goods else ""
    asked = []
    if report.classes:
        word = "Is class" if len(report.classes) == 1 else "Are classes"
        numbers = some(str(number) for number in report.classes)
        asked.append(f"{word} {numbers} right and enough{goods}, also for selling them in a shop of one's own?")
    else:
        asked.append(f"Which classes should be searched and filed in{goods}? The brief states none{_likely(report)}.")
    missing = unsearched_markets(report)
    if missing:
        verb, its = ("is a market", "its office") if len(missing) == 1 else ("are markets", "their offices")
        asked.append(
            f"{some(missing)} {verb} of the brief, and no row of the lists is of {its}: which search is "
            "worth its price there?"
        )
    asked.append(
        f"Which searches that this program cannot make are worth paying for{where}: unregistered use"
        f"{_passing_off(report)}, company names, figurative marks, pending filings not yet published?"
    )
    return tuple(asked)


def _passing_off(report: Report) -> str:
    """The action that unregistered use gives in the United Kingdom, where that is a market."""
    return " (passing off in GB: Trade Marks Act 1994, section 5(4)(a))" if "GB" in report.markets else ""


def _likely(report: Report) -> str:
    """The classes that the goods are likely in, as far as their words tell."""
    from ..goods import likely_classes

    likely = likely_classes(report.goods) if report.goods else ()
    return f"; likely {some(map(str, likely), 'or')}, from the goods, and the office decides" if likely else ""


def _cited(found: CloseMark) -> str:
    """A mark as questions cite it: its words, number, office and owner."""
    mark = found.mark
    office = "" if mark.office and mark.number.startswith(mark.office) else shorten(mark.office, 12)
    about = [f"no. {shorten(mark.number, 24)}" if mark.number else "", office, shorten(mark.owner, 60)]
    told = ", ".join(part for part in about if part)
    return shorten(mark.text, 60) + (f" ({told})" if told else "")


def asked_about(entry: NameEntry, report: Report) -> tuple[CloseMark, ...]:
    """The marks that raise a question, the gravest first, in the order in which they are shown."""
    return tuple(found for found, _ in _asked(entry, report))


def _on_marks(entry: NameEntry, report: Report) -> list[str]:
    return [question for _, question in _asked(entry, report) if question]


def _on_further_marks(entry: NameEntry, report: Report) -> list[str]:
    """The marks to look closer at that have no question of their own, in one."""
    asked = asked_about(entry, report)
    left = [found for found in matters(entry) if mark_level(found) >= Level.LOOK and found not in asked]
    more = [f"{len(left) - _MARKS} more"] if len(left) > _MARKS else []
    told = some([*map(_cited, left[:_MARKS]), *more])
    return [f"The same is to be asked of {told}: does any of these stand in the way?"] if left else []


def _on_undesignated_marks(entry: NameEntry, report: Report) -> list[str]:
    """Where international registrations hold whose list does not say it, and that have no question of their own."""
    if not report.markets:
        return []
    asked = asked_about(entry, report)
    named = [*marks_shown(entry, asked), *worth_a_word(entry, report.goods)]
    unknown = [one for one in named if is_international(one.mark) and not one.mark.territories]
    left = [one for one in unknown if one not in asked and not one.mark.is_dead]
    told = some(map(_cited, left[:_MARKS]))
    verb = "does" if len(left) == 1 else "do"
    return [f"Where {verb} {told} hold? The list does not say, but the register that WIPO keeps does."] if left else []


def _asked(entry: NameEntry, report: Report) -> list[tuple[CloseMark, str]]:
    """The marks that raise a question, each with it."""
    asked: list[tuple[CloseMark, str]] = []
    generic = entry.category == "generic"
    others = [found for found in matters(entry) if _is_the_same_for_other_goods(found)]
    for found in matters(entry):
        # An identical mark is asked about wherever it stands in the order.
        idle = mark_level(found) is Level.NOTHING and found.bites is not False  # its row says that nothing was found
        if not idle and (len(asked) < _MARKS or conflict_of(found).identical):
            name = shorten(entry.name, 60)
            question = _on_mark(found, name, report, generic=generic)
            if found in others and len(others) > 1:  # one question for all of them
                question = _on_other_goods(others) if found is others[0] else ""
            alike = found.bites is not False and not found.mark.is_dead and not is_of_other_goods(found)
            if question and alike:
                question += _on_its_reach(found, entry)
            further = on_namesakes(found, name, report) if question else on_dead_namesakes(found, report)
            if question or further or found in others:
                asked.append((found, f"{question} {further}".strip()))
    for found, markets in nearest_unasked(entry, report, [one for one, _ in asked]):
        asked.append((found, _on_the_nearest(found, markets, shorten(entry.name, 60), report, generic=generic)))
    return asked


def _is_the_same_for_other_goods(found: CloseMark) -> bool:
    """Whether a live mark is the very name, for goods that have little to do with ours."""
    live = not found.mark.is_dead and not found.lapsed and found.bites is not False
    return live and conflict_of(found).identical and is_of_other_goods(found)


def _on_other_goods(found: Sequence[CloseMark]) -> str:
    """The question on several marks that are the very name, for goods that have little to do with ours: first whether
    the goods are similar, then whether a mark reaches further."""
    more = [f"{len(found) - _MARKS} more"] if len(found) > _MARKS else []
    told = some([*map(_cited, found[:_MARKS]), *more])
    near = any(_may_be_similar(one) for one in found)
    return f"{told} are the same name, for other goods: {_asked_of_other_goods('is one of these marks', near=near)}"


def _may_be_similar(found: CloseMark) -> bool:
    """Whether goods that are called other ones have something in common all the same."""
    return isinstance(found.goods, NotChecked) or found.goods.score >= PLAINLY_OTHER


def _asked_of_other_goods(is_one: str, *, near: bool) -> str:
    """What is asked of the same name for other goods, mildly where these plainly have nothing in common with ours."""
    if near:
        similar = "would these be held similar to ours all the same? If not,"
        return f"{similar} {is_one} known well enough to be protected beyond them?"
    return f"these have nothing in common with ours, so only a mark of repute reaches them: {is_one} known so well?"


def _on_its_reach(found: CloseMark, entry: NameEntry) -> str:
    """What is asked of a live mark where all that both share is weak, by what it is to the buyers there, or of one that
    shares with a descriptive name what describes the goods; "" where it shares no more than a part of it."""
    pictured = ", and it has a picture too" if found.mark.mark_type in ("combined", "figurative") else ""
    if weak := told_about(found, About.WEAK_ALONE):
        return f" {weak.rstrip('.')}{pictured}: how far does such a mark reach?"
    if not describes(entry):
        return ""
    shares = {*parse(found.mark.text).words} & {*entry.words}
    if not (found.knockout or found.overall >= _MUCH_THE_SAME or (shares and shares == {*entry.words})):
        return ""
    return f" What both share may describe the goods{pictured}: how far does such a mark reach?"


def _on_the_nearest(found: CloseMark, markets: tuple[str, ...], name: str, report: Report, *, generic: bool) -> str:
    """The question on the nearest mark for goods like ours in markets where none such was asked about."""
    where = f" in {some(markets)}" if markets else ""
    question = (
        f"{_cited(found)} is minor, but the nearest{where} for goods that may be like ours: it "
        f"{in_which_way(found, name, report, generic=generic)}?"
    )
    return " ".join((question, *in_force_notes(found.mark, report)))


def _on_mark(found: CloseMark, name: str, report: Report, *, generic: bool) -> str:
    """The question that a mark raises, by case; empty where it raises none."""
    title, conflict = _cited(found), conflict_of(found)
    if found.lapsed:
        first = f"Does {title} still live? {lapsed_words(found.mark)} If it does: "
        title = shorten(found.mark.text, 60)
    else:
        first = ""
    same = "the same name" if conflict.identical else "all but the same name"
    near = conflict.identical or conflict.near_identical or found.overall >= _SAME_NAME
    if conflict.ended:
        return _on_ended_mark(found, name, report)
    if found.bites is False:
        if not near:
            return ""
        by = "by priority, " if can_claim_priority(found.mark, report.date) else ""
        return (
            f"{title} is {same}, but holds outside our markets: could it reach them, {by}by an international "
            "registration of later date, or because it is used or known there?"
        )
    notes = in_force_notes(found.mark, report)
    if generic and not conflict.identical and mark_level(found) >= Level.MINOR:
        question = f"{title} {in_which_way(found, name, report, generic=True)}?"
    elif near and found.knockout:
        question = (
            f"{title} is {same}{_same_goods(found)}: is there any room left for {name}, by "
            f"{_ways_out(found, report)}?{on_citing_offices(held_in(found.mark, report))}"
        )
    elif near and not is_of_other_goods(found):
        similar = (
            "do buyers expect its goods, which may be sold or used with ours, from one maker, so that they are similar"
            if goes_with_ours(found)
            else "would its goods be held similar to ours"
        )
        question = f"{title} is {same}: {similar}? If so, {objection(name, held_in(found.mark, report))}?"
    elif near:
        question = f"{title} is {same}, for other goods: {_asked_of_other_goods('is it', near=_may_be_similar(found))}"
    elif found.translation and mark_level(found) >= (Level.LOOK if is_of_other_goods(found) else Level.MINOR):
        question = (
            f"{title} is {name} in {language_name(found.translation)}: would buyers who know both take one for the "
            f"other, and {objection(name, held_in(found.mark, report))}{_goods_clause(found)}? "
            f"{_on_languages(found, name, report)}"
        ).rstrip()
    elif asks_of_equivalents(found, report):
        question = on_equivalents(_cited(found), found, name, report) + f"{_goods_clause(found)}?"
    elif mark_level(found) >= Level.LOOK:
        question = f"{title} {in_which_way(found, name, report, generic=generic)}{_goods_clause(found)}?"
    else:
        return ""
    return " ".join((first + question, *notes))


def _on_languages(found: CloseMark, name: str, report: Report) -> str:
    """What a mark counts for that says the name in another language, by market."""
    buyers = (*report.languages, *languages_of(report.markets))
    said = said_from(name, found.mark.text, found.translation, buyers)
    said = said or ("" if found.translation == "en" else "en")
    own = language_name(said) if said else "the language of the name"
    known = known_to_buyers(name, found.mark, found.translation, report.markets)
    guess = "" if known else "; the program supposes that few do, by how common the words are, and asked nobody"
    both = f"these words both in {language_name(found.translation)} and in {own}{guess}"
    return on_translation(held_in(found.mark, report), both, into_english="en" in (said, found.translation))


def _on_ended_mark(found: CloseMark, name: str, report: Report) -> str:
    """The question that a mark raises that its list calls dead; empty where it raises none."""
    title = _cited(found)
    if found.renewable_until:
        return (
            f"The term of {title} ran out on {when_it_ended(found.mark, report.date)}, and it can be renewed until "
            f"{found.renewable_until}: is that likely, and {objection(name, held_in(found.mark, report))} then?"
            f"{uk_mark_of_its_own(found.mark, report)}"
        )
    if found.concern < _DEAD_BUT_NEAR:
        return ""
    return (
        f"The list calls {title} {dead_words(found.mark)}: is it still in use, or would its owner file it again, so "
        f"that {name} would meet it after all?{USE_LASTS if 'US' in found.mark.territories else ''}"
        f"{uk_mark_of_its_own(found.mark, report)}"
    )


def _ways_out(found: CloseMark, report: Report) -> str:
    """What may leave room beside the same mark."""
    unused = ["want of its use"] if use_is_due(found.mark, report.markets, report.date) else []
    return some(["other goods", "an agreement with its owner", *unused], "or")


def _goods_clause(found: CloseMark) -> str:
    if isinstance(found.goods, NotChecked):
        return ", once its goods are known"
    if found.goods.score >= 0.7:
        return ", the goods being the same or close"
    if goes_with_ours(found):
        return ", if its goods, which may be sold or used with ours, are held similar"
    if found.goods.score >= 0.3:
        return ", if its goods are held similar to ours"
    return ", its goods lying far from ours"


def _same_goods(found: CloseMark) -> str:
    if isinstance(found.goods, NotChecked):
        return ", and its goods could not be compared"
    return ", for goods that overlap"


def _on_addresses(entry: NameEntry) -> list[str]:
    if isinstance(entry.addresses, NotChecked):
        return []
    taken = [item.text for item in entry.addresses.items if item.kind == "domain" and item.taken]
    if not taken:
        return []
    listed = some(shorten(text, 63) for text in taken[:2])
    verb = "is" if len(taken[:2]) == 1 else "are"
    return [f"{listed} {verb} registered: who uses it, and does that use give rights of its own?"]
