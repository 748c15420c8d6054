"""Set phrases in names, in which a word for a stuff says something else: Silver Birch, Bone Idle, Rose Gold."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from ..lexicon import kinds, lexicon
from ..lexicon.phrases import is_saying
from .broader import leading_senses
from .materials import is_stuff
from .words import base_form, runs

__all__ = ["LONGEST_NAME", "in_known_phrases", "in_other_sense", "kinds_of_stuff"]

LONGEST_NAME = 3
"""The most words of a set phrase, and of the name of a place, that are looked for."""
_STUFFS = ("noun.substance", "noun.food", "noun.artifact")
_SHADES = frozenset("gold silver copper bronze brass pearl amber ivory coral jade".split())
"""Stuffs that are colours as well, after another word for a colour: rose gold."""
_COLOURS = frozenset(
    "rose old dusky dusty pale soft deep dark light bright burnt antique faded midnight blush red green blue pink "
    "white black yellow grey gray".split()
)
_FLOWERS = frozenset("lily rose iris violet jasmine lavender peony orchid daisy poppy tulip nettle moss".split())
"""Plants that care goods hold, and that name a plant after another word."""


def in_known_phrases(words: tuple[str, ...]) -> set[str]:
    """The words of a name that stand in a phrase which a dictionary has (Swiss roll), hyphened as well (bone-idle),
    and in a familiar saying (Apple Cart)."""
    return {word for run in _phrases(words) for word in run}


def in_other_sense(words: tuple[str, ...], *, shades: bool = False) -> set[str]:
    """The words of a name that say no stuff for the words they stand with: in a phrase that names a plant, a beast, a
    place or an idea (silver birch, copper beech, silver lining), before a plant (cherry blossom), and with `shades`
    after a colour (rose gold), which of jewellery may be a metal."""
    found = {word for run in _phrases(words) if not _names_stuff(run) for word in run}
    for one, after in pairwise(words):
        if _is_plant(after):
            found.add(one)
        if shades and after in _SHADES and (one in _COLOURS or "colour" in kinds(one)):
            found.add(after)
    return found


def kinds_of_stuff(words: tuple[str, ...]) -> set[str]:
    """The last words of set phrases for a plant that name its stuff too: the oak of red oak, the birch of silver birch,
    of which a name may be an image or say what the goods are of."""
    return {run[-1] for run in _phrases(words) if is_stuff(base_form(run[-1])) and not _names_stuff(run)}


@lru_cache(maxsize=1 << 10)
def _phrases(words: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    known = lexicon().known
    found = (tuple(run) for _, run in runs(words, LONGEST_NAME, 2))
    return tuple([run for run in found if known(" ".join(run)) or known("-".join(run)) or is_saying(" ".join(run))])


def _names_stuff(run: tuple[str, ...]) -> bool:
    """Whether a set phrase names a stuff, a food or a thing (cast iron, goat cheese, silk stocking)."""
    named = " ".join(run) if lexicon().known(" ".join(run)) else "-".join(run)
    return any(lexicon().domain(one) in _STUFFS for one, _ in leading_senses(named, 1))


@lru_cache(maxsize=1 << 12)
def _is_plant(word: str) -> bool:
    """Whether a word is first of all a plant or a part of one, and no stuff itself."""
    base = base_form(word)
    if is_stuff(base) and base not in _FLOWERS:
        return False
    return base in ("plant", "bush", "vine") or any(
        lexicon().domain(one) == "noun.plant" for one, _ in leading_senses(base, 1)
    )

