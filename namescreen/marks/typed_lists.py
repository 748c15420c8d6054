"""Lists that people type, one mark or name a line: what stands before each, and goods that may stand after it.

Signs and numbers before every line belong to the list and are taken off. What follows a comma, a dash or a colon, or
stands in brackets, may be goods or part of the mark, so it is asked about; a first line says which.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..expressions import expression
from ..plain_text import plural, some
from .fields import field_of
from .problems import ProblemLog
from .xml_records import Values

__all__ = ["DELIMITERS", "cells_of", "delimiter_below", "signs_before", "typed_rows"]

DELIMITERS = (",", "\t", ";", "|")
"""What parts the cells of a table."""

_BULLETS = frozenset("-*+•‣·–—")
"""Signs that stand before the lines of a list."""
_NUMBER = expression(r"\s*\(?(\d{1,5})\s*(?:[.):]\s+|[-–—]\s+)(?=\S)")
"""A number before a line: 1. 1) (1) 1: 1 -."""
_PLAINLY_COUNTING = expression(r"\s*\(?(\d{1,5})\s*[.)]\s+(?=\S)")
"""A number written as lists write theirs, and seldom a name its own: 1. 1) (1)."""
_NOTHING = expression(r"(?!)")


@dataclass(frozen=True, slots=True)
class _Parting:
    """A way to set goods apart from a name: what it is `called`, and how a line is `written` with it, {} for each."""

    called: str
    written: str

    def split(self, line: str) -> tuple[str, str] | None:
        """The name and what is said of it; None if the line is not parted so."""
        _, between, after = self.written.split("{}")
        line = line.strip()
        sign = re.search(re.escape(between).replace(r"\-", "[-–—]").replace(r"\ ", r"\s"), line)
        if sign is None or not line.endswith(after):
            return None
        name, said = line[: sign.start()].strip(), line[sign.end() : len(line) - len(after)].strip()
        return (name, said) if any(map(str.isalnum, name)) and any(map(str.isalnum, said)) else None


_LOOSE = frozenset(("a dash", "a colon", "an equals sign", "something in brackets"))
"""Partings that people mix in one list."""
_FROM = 2
"""Lines parted so from which it is asked whether goods follow; one may be a name of its own."""

_PARTINGS = (
    _Parting("a comma", "{},{}"),
    _Parting("a tab", "{}\t{}"),
    _Parting("a semicolon", "{};{}"),
    _Parting("an upright stroke", "{}|{}"),
    _Parting("a dash", "{} - {}"),
    _Parting("a colon", "{}: {}"),
    _Parting("an equals sign", "{} = {}"),
    _Parting("something in brackets", "{} ({})"),
)


def cells_of(line: str, delimiter: str) -> list[str]:
    """The cells of a line of CSV, without the spaces around them; none where quotation marks break it."""
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=delimiter), [])]
    except csv.Error:
        return []


def delimiter_below(first_lines: Sequence[str], delimiter: str, log: ProblemLog) -> str:
    """What parts the cells below the first line: its `delimiter`, but where that leaves a line whole and another one
    parts them all, into at most as many cells as the first line has."""
    first, *lines = [line for line in first_lines if line.strip()] or [""]
    most = len(cells_of(first, delimiter))
    if most < 2 or not lines or all(len(cells_of(line, delimiter)) > 1 for line in lines):
        return delimiter
    for other in DELIMITERS:
        if all(1 < len(cells_of(line, other)) <= most for line in lines):
            log.note(
                f"the first line is parted by {_called(delimiter)} and those below it by {_called(other)}",
                "They were read so: if this is not meant, part them all by one sign",
            )
            return other
    return delimiter


def _called(delimiter: str) -> str:
    """A delimiter in words."""
    return next(parting.called for parting in _PARTINGS if parting.written == f"{{}}{delimiter}{{}}")


def typed_rows(
    first: Sequence[tuple[int, str]], rest: Iterable[tuple[int, str]], log: ProblemLog, word: str
) -> Iterator[tuple[int, Values]]:
    """The rows of a list of one `word` (mark, name) a line. `first` are its first lines, which `rest` holds too."""
    said = [(number, line) for number, line in first if _is_said(line)]
    parting, field = _first_line(said[0][1]) if said else (None, "")
    heading = said.pop(0)[0] if parting else None
    before = signs_before(said, log)
    if before is _NOTHING:
        _question_numbers(said, log, word)
    if parting is None:
        _question([(number, before.sub("", line, count=1)) for number, line in said], log, word)
    for number, whole in rest:
        if number == heading or not _is_said(whole):
            continue
        line = before.sub("", whole, count=1)
        two = _parted(line, parting) if parting else None
        yield number, {"text": two[0], field: two[1]} if two else {"text": line}


def _parted(line: str, parting: _Parting) -> tuple[str, str] | None:
    """A line as the first one says it is parted; by another loose sign where it lacks that one, if it is loose too."""
    also = (one for one in _PARTINGS if parting.called in _LOOSE and one.called in _LOOSE and one is not parting)
    return next(filter(None, (one.split(line) for one in (parting, *also))), None)


def _is_said(line: str) -> bool:
    """Whether a line is more than a remark, as lists typed by hand hold them."""
    return bool(line.strip()) and not line.startswith("# ")


def signs_before(said: Sequence[tuple[int, str]], log: ProblemLog) -> re.Pattern[str]:
    """What stands before every line of a list and is no part of it: a sign, or a number that counts the lines."""
    begins = {line.split()[0] for _, line in said}
    sign = next(iter(begins)) if len(begins) == 1 < len(said) else ""
    if sign in _BULLETS:
        log.note(f"every line begins with {sign!r}, which is read as a sign of the list and no part of it")
        return re.compile(rf"\s*{re.escape(sign)}\s+")
    counted = [int(found[1]) for _, line in said if (found := _NUMBER.match(line))]
    if len(counted) > 1 and counted == list(range(counted[0], counted[0] + len(said))):
        log.note("the lines are numbered, and the numbers are read as signs of the list and no part of it")
        return _NUMBER
    return _some_numbered(said, log)


def _some_numbered(said: Sequence[tuple[int, str]], log: ProblemLog) -> re.Pattern[str]:
    """What stands before some lines of a list of which others were added or taken out: numbers that rise, or one that
    is the place of its line."""
    counted = [
        (place, int(found[1])) for place, (_, line) in enumerate(said, 1) if (found := _PLAINLY_COUNTING.match(line))
    ]
    numbers = [number for _, number in counted]
    rising = all(one < other for one, other in pairwise(numbers))
    if len(said) > 1 and numbers and rising and (len(numbers) > 1 or counted[0][0] == numbers[0]):
        log.note(
            f"{plural(len(numbers), 'line')} of {len(said)} begin{'s' if len(numbers) == 1 else ''} with a number, "
            "which is read as a sign of the list and no part of it",
            "Where it belongs to the name, write it without the full stop or bracket",
        )
        return _PLAINLY_COUNTING
    return _NOTHING


def _question_numbers(said: Sequence[tuple[int, str]], log: ProblemLog, word: str) -> None:
    """Note that most lines begin with a number that does not count them: it may be part of the mark."""
    numbered = [number for number, line in said if _NUMBER.match(line)]
    if len(numbered) > len(said) / 2:
        log.note(
            f"most lines begin with a number, and each line was read whole, as one {word}",
            f"If the numbers are no part of the {word}s, take them out",
            line=numbered[0],
        )


def _first_line(line: str) -> tuple[_Parting | None, str]:
    """How a first line such as "name - goods" says that the lines below it are parted, and the field after the name."""
    for parting in _PARTINGS:
        two = parting.split(line)
        found = [field_of(part) for part in two] if two else []
        if len(found) == 2 and found[0] and found[1] and found[0][0] == "text" != found[1][0]:
            return parting, found[1][0]
    return None, ""


def _question(given: Sequence[tuple[int, str]], log: ProblemLog, word: str) -> None:
    """Note that lines of a list are parted in two, most of them by one sign, or some by several: each counts whole, and
    may be a name and its goods."""
    for parting in _PARTINGS:
        having = [number for number, line in given if parting.split(line)]
        if len(having) > len(given) / 2:
            head = parting.written.format(word, "goods").replace("\t", " TAB ")
            log.note(
                f"most lines hold {parting.called}, and each line was read whole, as one {word}",
                f"If what follows it are goods, say so in a first line: {head}",
                line=having[0],
            )
            return
    loose = [one for one in _PARTINGS if one.called in _LOOSE]
    mixed = {one.called: [number for number, line in given if one.split(line)] for one in loose}
    found = sorted({number for having in mixed.values() for number in having})
    if len(found) >= _FROM:
        signs = some([called for called, having in mixed.items() if having], "or")
        log.note(
            f"{plural(len(found), 'line')} hold {signs}, and each was read whole, as one {word}",
            f"If what follows it are goods, say so in a first line, which holds for all of these signs: {word} - goods",
            line=found[0],
        )
