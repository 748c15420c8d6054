"""What a word says goods are for: what they keep off, and who uses them, when and where."""

from __future__ import annotations

from .kept_off import LACKING, keep_off, kept_off_by, may_lack, said_of
from .phrases import base_form
from .tells import DESCRIBES, NOTHING, Evidence, EvidenceKind
from .uses import USED_BY

__all__ = ["is_lack_of_others", "is_use", "keeps_off", "used_by"]

KEEPS_OFF, USE = 0.75, 0.8
"""How plainly a word describes that says what the goods keep off (their function), below a term of the trade, and one
for a user or use, which is no choice among the senses of a dictionary. Chosen, not fitted."""


def keeps_off(word: str, goods: str) -> Evidence:
    """The word is what the goods keep off, or much like it: a breeze, of draught excluders."""
    lacking = _lacked_by(word)
    if lacking != word and keep_off(lacking, goods):  # squeakless
        return Evidence(KEEPS_OFF, f'without "{lacking}"', kind=EvidenceKind.PURPOSE, section=DESCRIBES)
    what = kept_off_by(goods).get(word, "")
    why = "what the goods keep off" if word == what else f'much like "{what}", which the goods keep off'
    return Evidence(KEEPS_OFF, why, kind=EvidenceKind.PURPOSE, section=DESCRIBES) if what else NOTHING


def is_lack_of_others(word: str, goods: str) -> bool:
    """Whether a word says that there is none of what only other goods keep off or may have: rustless, of curtains."""
    what = _lacked_by(word)
    return what != word and not may_lack(what, goods)


def is_use(word: str, goods: str) -> bool:
    """Whether a folded word or phrase names who uses such goods, or when, where or for what."""
    theirs = USED_BY.get(word) or USED_BY.get(base_form(word)) or frozenset()
    return bool(theirs) and not theirs.isdisjoint(said_of(goods)[0])


def used_by(word: str, goods: str) -> Evidence:
    """The word says who uses such goods, or when, where or for what: a beekeeper, of hives."""
    why = "who such goods are for, or when, where or for what"
    return Evidence(USE, why, kind=EvidenceKind.PURPOSE, section=DESCRIBES) if is_use(word, goods) else NOTHING


def _lacked_by(word: str) -> str:
    """What a word says there is none of: rust, of rustless; the word itself, if it says nothing of the kind."""
    return next((word.removesuffix(end) for end in LACKING if word.endswith(end)), word)
