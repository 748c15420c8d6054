"""What changed since an earlier report, so that a maker can look again in a month.

What counts as a change:

- marks of the same words are told together, by the one of most concern; they are the same if their folded words are;
- one mark among those is the same if its office and number are, or, without a number, its owner;
- a score has changed if it differs by `LEAST` or more; smaller differences are left out, changes of level never;
- marks and readings that are below "minor" before and now are left out;
- a list is the same list if its name is; it has changed if its sha256 has.

What changed about the program, the brief and the lists comes first: it may be the cause of the rest. Then come the
names, the one with the largest change first. A mark that is new among the closest need not be new in the list, and one
that is gone need not have left it: both are said where the lists are short enough to be remembered.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import PurePath

from ..marks.mark import Mark
from ..outcome import NotChecked
from ..plain_text import number, plural, score_words, shorten, some
from ..policy import Level
from ..text import fold, parse
from .findings import findings, mark_level
from .fingerprints import came_and_went, was_held
from .model import CHECKS, CloseMark, ListSearched, NameEntry, Reading, Report

__all__ = ["LEAST", "Change", "Changes", "changes"]

LEAST = 0.02
"""The least change of a score that is told: below it two decimals may differ by rounding alone."""


@dataclass(frozen=True, slots=True)
class Change:
    """One change: what it concerns (a name, a list, or the report), its kind, and the words for it.

    `size` in [0, 1] is how much it matters, 1 = most: the concern of a mark that came or went, or by how much a score
    or a level moved. It is 0 for what concerns no name.
    """

    about: str
    kind: str
    words: str
    size: float = 0.0


@dataclass(frozen=True, slots=True)
class Changes:
    """Every change since the report of `since` made by `version`, in reading order."""

    since: str
    version: str
    found: tuple[Change, ...]


def changes(old: Report, new: Report) -> Changes:
    """The changes from `old` to `new`."""
    before = {entry.name: entry for entry in old.names}
    after = {entry.name: entry for entry in new.names}
    of_names = [
        [Change(name, "name added", "was not in the earlier report", 1.0)] for name in after if name not in before
    ]
    of_names += [[Change(name, "name gone", "was in the earlier report", 1.0)] for name in before if name not in after]
    both = (name for name in after if name in before)
    of_names += [_largest_first(_entry(before[name], after[name], old.lists, new.lists)) for name in both]
    # Stable: names whose largest changes are equal stay in the order of the report.
    of_names = sorted(filter(None, of_names), key=lambda told: -told[0].size)
    return Changes(
        old.date, old.version, (*_grounds(old, new), *_lists(old, new), *(one for told in of_names for one in told))
    )


def _largest_first(told: list[Change]) -> list[Change]:
    return sorted(told, key=lambda one: -round(one.size, 6))


def _grounds(old: Report, new: Report) -> list[Change]:
    """What makes scores differ although no mark changed: the program, the brief, the settings."""
    pairs = [
        ("program version", old.version, new.version),
        ("goods", old.goods, new.goods),
        ("classes", some(map(str, old.classes)), some(map(str, new.classes))),
        ("markets", some(old.markets), some(new.markets)),
        ("languages", some(old.languages), some(new.languages)),
        ("weights", str(old.weights), str(new.weights)),
    ]
    earlier, later = dict(old.settings), dict(new.settings)
    pairs += [(f"setting {key}", earlier.get(key, ""), later.get(key, "")) for key in sorted({*earlier, *later})]
    return [
        Change("the report", "basis changed", _grounds_words(what, shorten(one, 60), shorten(two, 60)))
        for what, one, two in pairs
        if one != two
    ]


def _grounds_words(what: str, one: str, two: str) -> str:
    if what == "weights":
        return "the weights of the comparison changed"
    return f"{what}: {one or 'none'} before, {two or 'none'} now"


def _lists(old: Report, new: Report) -> list[Change]:
    before = {_list_key(item): item for item in old.lists}
    after = {_list_key(item): item for item in new.lists}
    found = []
    for key, item in after.items():
        if key not in before:
            found.append(Change(shorten(item.name, 60), "list added", f"{plural(item.rows_read, 'row')} read"))
        elif before[key].sha256 != item.sha256:
            found.append(_list_changed(before[key], item))
    found += [
        Change(
            shorten(item.name, 60),
            "list not searched",
            f"{plural(item.rows_read, 'row')} in the earlier report",
        )
        for key, item in before.items()
        if key not in after
    ]
    return found


def _list_changed(old: ListSearched, new: ListSearched) -> Change:
    """What came into a list and what went. The number of rows alone does not tell: two may have come and one gone."""
    told = came_and_went(old, new)
    kind = "list changed"
    words = [f"{plural(old.rows_read, 'row')} before, {new.rows_read:,} now"]
    if told is not None:
        came, went = told
        kind = "list grew" if came and not went else "list shrank" if went and not came else kind
        parts = [f"{plural(came, 'mark')} came"] if came else []
        parts += [f"{plural(went, 'mark')} went"] if went else []
        words.insert(0, some(parts) or "the same marks, told otherwise")
    if new.dated != old.dated:
        words.append(f"dated {old.dated} before, {new.dated} now")
    return Change(shorten(new.name, 60), kind, "; ".join(words))


def _list_key(item: ListSearched) -> str:
    return PurePath(item.name).name


def _entry(
    old: NameEntry, new: NameEntry, old_lists: tuple[ListSearched, ...], new_lists: tuple[ListSearched, ...]
) -> list[Change]:
    found = _marks(old, new, old_lists, new_lists)
    if not isinstance(old.readings, NotChecked) and not isinstance(new.readings, NotChecked):
        found += _readings(old.readings, new.readings, new.name)
    for one, two in zip(findings(old), findings(new), strict=True):
        if one.level != two.level:
            words = f"{CHECKS[two.check]}: {one.title} before, {two.title} now ({two.evidence})"
            # Above any change inside a level: a step of level is what the reader acts on.
            size = 0.5 + abs(max(one.level, 0) - max(two.level, 0)) / 6
            found.append(Change(new.name, "level changed", words, size))
        elif two.check != "marks" and one.value is not None and two.value is not None:
            told = one.evidence != two.evidence if two.check == "addresses" else _moved(one.value, two.value)
            if told:
                words = f"{CHECKS[two.check]}: {one.evidence} before, {two.evidence} now"
                found.append(Change(new.name, "finding changed", words, abs(one.value - two.value)))
    return found


def _marks(
    old: NameEntry, new: NameEntry, old_lists: tuple[ListSearched, ...], new_lists: tuple[ListSearched, ...]
) -> list[Change]:
    if isinstance(old.marks, NotChecked) or isinstance(new.marks, NotChecked):
        return []
    apart = not _mixes_owners(old.marks) and not _mixes_owners(new.marks)
    before, after = _keyed(old.marks, by_owner=apart), _keyed(new.marks, by_owner=apart)
    same = {_key(one.mark): key for key, one in before.items() if one.mark.number}
    renamed = {same[_key(two.mark)]: key for key, two in after.items() if key not in before and _key(two.mark) in same}
    before = {renamed.get(key, key): one for key, one in before.items()}  # it is another's now
    found = []
    for key, two in after.items():
        one = before.get(key)
        if one is not None:
            found += _mark_changed(one, two, new.name)
        elif mark_level(two) >= Level.MINOR:
            known = {True: ", in the list before too", False: ", new in the list", None: ""}
            words = f"{_title(two.mark)}: closeness {number(two.overall)}, {mark_level(two).words}"
            words += known[was_held(two.mark, old_lists)]
            found.append(Change(new.name, "new close mark", words, two.concern))
    for key, one in before.items():
        if key not in after and mark_level(one) >= Level.MINOR:
            known = {
                True: "is still in the list, but no longer among the closest",
                False: "is no longer in the list",
                None: "is no longer among the closest",
            }
            words = f"{_title(one.mark)} {known[was_held(one.mark, new_lists)]}"
            found.append(Change(new.name, "mark gone", words, one.concern))
    return found


def _mark_changed(one: CloseMark, two: CloseMark, name: str) -> list[Change]:
    """What changed about the marks of the same words."""
    if max(mark_level(one), mark_level(two)) < Level.MINOR:
        return []
    found = []
    size = abs(one.concern - two.concern)
    earlier, now = _listed(one), _listed(two)
    parts = _score_parts(one, two)
    same = earlier.get(_key(two.mark))
    parts += _register_parts(same, two.mark) if same else []
    if one.knockout != two.knockout:
        parts.append("now a knockout" if two.knockout else "no longer a knockout")
    if one.marks != two.marks:
        parts.append(f"marks of these words {one.marks:,} to {two.marks:,}")
    if parts:
        found.append(Change(name, "changed mark", f"{_title(two.mark)}: {some(parts)}", size))
    for which, mark in now.items():
        if which in earlier:
            told = _register_parts(earlier[which], mark) if mark is not two.mark else []
            if told:
                found.append(Change(name, "changed mark", f"{_title(mark)}: {some(told)}", size))
        elif len(earlier) == one.marks:  # else it may have been there, unlisted
            words = f"{_title(mark)}, {mark.stated_status or 'status not stated'}, owner {_owner(mark)}"
            found.append(Change(name, "new mark of the same words", words, size))
    if len(now) == two.marks:
        lost = (mark for which, mark in earlier.items() if which not in now)
        found += [Change(name, "mark of the same words gone", _title(mark), size) for mark in lost]
    return found


def _score_parts(one: CloseMark, two: CloseMark) -> list[str]:
    """The scores of a mark that moved."""
    parts = [
        f"{aspect} {score_words(getattr(one, aspect))} to {score_words(getattr(two, aspect))}"
        for aspect in ("overall", "appearance", "sound", "meaning")
        if _moved(getattr(one, aspect), getattr(two, aspect))
    ]
    if not isinstance(one.goods, NotChecked) and not isinstance(two.goods, NotChecked):
        if _moved(one.goods.score, two.goods.score):
            parts.append(f"goods {number(one.goods.score)} to {number(two.goods.score)}")
    elif isinstance(one.goods, NotChecked) != isinstance(two.goods, NotChecked):
        parts.append("goods compared now" if isinstance(one.goods, NotChecked) else "goods no longer compared")
    return parts


def _readings(old: tuple[Reading, ...], new: tuple[Reading, ...], name: str) -> list[Change]:
    def keys(readings: tuple[Reading, ...]) -> dict[tuple[str, str], Reading]:
        return {(reading.language, reading.word): reading for reading in readings if reading.severity}

    before, after = keys(old), keys(new)
    told = [("new reading", after[key]) for key in after if key not in before]
    told += [("reading gone", before[key]) for key in before if key not in after]
    return [
        Change(
            name,
            kind,
            f"{one.language}: {shorten(one.word, 30)}, {shorten(one.meaning or one.kind, 40)}",
            one.severity / 3,
        )
        for kind, one in told
    ]


def _register_parts(one: Mark, two: Mark) -> list[str]:
    """What the register says otherwise of one mark."""
    parts = []
    if one.stated_status != two.stated_status:
        parts.append(f"status {one.stated_status or 'not stated'} to {two.stated_status or 'not stated'}")
    if one.owner != two.owner:
        parts.append(f"owner now {_owner(two)}")
    return parts


def _owner(mark: Mark) -> str:
    return shorten(mark.owner, 40) or "not stated"


def _mixes_owners(marks: tuple[CloseMark, ...]) -> bool:
    """Whether marks of several owners stand together, as in reports of earlier versions."""
    return any(other.owner_folded != one.mark.owner_folded for one in marks for other in one.others)


def _keyed(marks: tuple[CloseMark, ...], *, by_owner: bool) -> dict[tuple[str, ...], CloseMark]:
    """Close marks by their words, and by their owner if reports keep owners apart. Reports of early versions have one
    for each mark: those are put together."""
    found: dict[tuple[str, ...], CloseMark] = {}
    for one in marks:
        words = (one.mark.owner_folded if by_owner else "", *parse(one.mark.text).words)
        first = found.get(words)
        if first is None:
            found[words] = one
            continue
        if one.concern > first.concern:
            one, first = first, one
        others = (*first.others, one.mark, *one.others)
        found[words] = replace(first, others=others, marks=first.marks + one.marks)
    return found


def _listed(found: CloseMark) -> dict[tuple[str, ...], Mark]:
    """The marks of the same words that a report lists, by what makes each the same mark."""
    return {_key(mark): mark for mark in (found.mark, *found.others)}


def _key(mark: Mark) -> tuple[str, ...]:
    return (mark.office, mark.number) if mark.number else ("", "", fold(mark.owner))


def _title(mark: Mark) -> str:
    told = f" (no. {shorten(mark.number, 24)})" if mark.number else ""
    return shorten(mark.text, 60) + told


def _moved(one: float | NotChecked, two: float | NotChecked) -> bool:
    if isinstance(one, NotChecked) or isinstance(two, NotChecked):
        return isinstance(one, NotChecked) != isinstance(two, NotChecked)
    return abs(one - two) >= LEAST - 1e-9
