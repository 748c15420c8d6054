"""Names that buyers of a market hear as the same, because their language reads both so: Brandstetter and Brandstätter.

The sounds of a mark count as the buyers of the territory say it (EUIPO Guidelines, part C, section 2, chapter 4, on
phonetic comparison).
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterable
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ..closeness import Closeness

__all__ = ["SOME_SOUND", "as_heard", "heard_alike"]

SOME_SOUND = 0.6
"""Closeness in sound, read in English, from which names are read in other languages: to read every mark would cost more
than all else. Ours, not fitted."""
FEWEST_SOUNDS = 4
"""Sounds of the shortest name that is compared so: shorter ones match by chance."""


def heard_alike(name: str, mark: str, languages: Iterable[str]) -> str:
    """The first of `languages` (BCP 47) whose readers say `name` and `mark` alike; "" if none does, or there are no
    rules to read it by. Broad sounds are compared: see `connotations.g2p_rules.sound_classes`."""
    from ..connotations.g2p_rules import has_rules

    for language in languages:
        if has_rules(language):
            said = _said(name, language)
            if len(said) >= FEWEST_SOUNDS and said == _said(mark, language):
                return language
    return ""


@lru_cache(maxsize=1 << 14)
def _said(text: str, language: str) -> str:
    from ..connotations.g2p_rules import sound_code

    return "".join(sound_code(word, language) for word in re.findall(r"[^\W\d_]+", text.casefold()))


def as_heard(closeness: Closeness, name: str, mark: str, languages: Iterable[str]) -> Closeness:
    """`closeness` with the sound that readers of `languages` hear, where these hear both as the same. Overall closeness
    stays: what decisions tell of it rests on English readings."""
    from ..lexicon.language_codes import language_name

    if closeness.sound >= 1 or closeness.sound < SOME_SOUND:
        return closeness
    language = heard_alike(name, mark, languages)
    if not language:
        return closeness
    told = f"Sound: sounds the same, read in {language_name(language)}."

    def reasons() -> tuple[str, ...]:
        return tuple(told if reason.startswith("Sound:") else reason for reason in closeness.reasons)

    return dataclasses.replace(closeness, sound=1.0, explained=reasons)
