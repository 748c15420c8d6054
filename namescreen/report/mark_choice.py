"""Which marks near a name take a row of the report, and which are named below it: by how much they concern the maker,
not by closeness alone."""

from __future__ import annotations

from collections.abc import Sequence

from ..policy import STEPS, Level
from ..screening.crowd import says_little
from ..screening.foreign_words import told_of
from ..text import parse
from ..text.inflection import other_number
from .findings import conflict_of, is_of_other_goods, is_over, mark_level, matters
from .model import CloseMark, NameEntry
from .upkeep import is_international

__all__ = ["FEWEST", "marks_shown", "why_named", "worth_a_word"]

# Rows of a name's tables; the JSON form has everything (common practice, no source).
FEWEST = 2
"""Marks that are named where nothing was found."""
_MOST, _MOST_GRAVE = 5, 8
_CLOSE = 0.5  # overall closeness from which a mark is named whatever its goods
_NEARLY_MINOR = 0.9 * STEPS[-1][0]  # concern from which a live mark for such goods is named; ours, not fitted
_WOULD_BE = STEPS[1][0] / 2  # concern of a dead mark that would ask for a closer look if it lived
_ADDED = 2  # letters at the end that leave a word all but the same
_SHORTEST = 3  # letters of the shortest word that tells marks apart


def marks_shown(entry: NameEntry, asked: Sequence[CloseMark] = ()) -> tuple[CloseMark, ...]:
    """The marks worth an adviser's minute, in their order: those to look closer at, those `asked` about, and as far as
    there is room milder ones; where there is none, the first few. Marks that are over come last."""
    ordered = matters(entry)
    grave = [found for found in ordered if mark_level(found) >= Level.LOOK][:_MOST_GRAVE]
    kept = [*grave, *(found for found in asked if found not in grave)]
    mild = [found for found in ordered if mark_level(found) is Level.MINOR and found not in kept]
    kept += mild[: max(0, _MOST - len(kept))]
    shown = [found for found in ordered if found in kept] if kept else list(ordered)
    return tuple(sorted(shown, key=is_over)[: len(kept) or FEWEST])


def worth_a_word(entry: NameEntry, goods: str) -> tuple[CloseMark, ...]:
    """The marks below all levels that an adviser would miss, those of most concern first: such as come near, share what
    tells the name apart, say it in another language, or would be grave if they had not ended."""
    below = (found for found in matters(entry) if mark_level(found) is Level.NOTHING)
    return tuple(
        sorted(
            (found for found in below if _is_near(found) or why_named(found, entry, goods)),
            key=lambda found: (found.bites is False, -found.concern),
        )
    )


def _is_near(found: CloseMark) -> bool:
    """Whether a live mark below all levels comes near: by its name alone, or nearly minor for such goods."""
    if is_over(found):
        return False
    return found.overall >= _CLOSE or (conflict_of(found).comparable and found.concern >= _NEARLY_MINOR)


def why_named(found: CloseMark, entry: NameEntry, goods: str) -> str:
    """Why a mark below all levels is named though it is not near as a whole, in a few words; "" where it is not."""
    if is_over(found):
        return "would ask for a closer look if it lived" if found.concern >= _WOULD_BE else ""
    nowhere_told = is_international(found.mark) and not found.mark.territories
    if found.translation and found.bites is not False:
        return "other goods" if is_of_other_goods(found) else ""
    if found.bites is False or (is_of_other_goods(found) and not nowhere_told):
        return ""
    if found.foreign:
        told = told_of(found.foreign)
        return told[0].lower() + told[1:]
    ours = {word for word in parse(entry.name).words if len(word) >= _SHORTEST and not says_little(word, goods)}
    held = [word for word in parse(found.mark.text).words if word in ours or not ours.isdisjoint(other_number(word))]
    if not held and conflict_of(found).comparable:
        begun = [(word, one) for word in parse(found.mark.text).words for one in ours if _is_all_but(one, word)]
        return f'its "{begun[0][0]}" is all but "{begun[0][1]}"' if begun else ""
    if not held:
        return ""
    return f'has "{held[0]}"' + ("; where it holds is not stated" if nowhere_told else "")


def _is_all_but(ours: str, theirs: str) -> bool:
    """Whether a word of a mark is one of the name with a letter or two added: Roama, roam."""
    return len(ours) > _SHORTEST and theirs.startswith(ours) and len(theirs) - len(ours) <= _ADDED
