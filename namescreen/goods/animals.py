"""Animals in names, for goods that are for other animals."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from .broader import ancestors, leading_senses, names_above, names_of
from .context import context
from .phrases import base_form

__all__ = ["is_animal", "is_other_animal"]

TAXA = frozenset(("chordate", "invertebrate"))
"""The words of WordNet's senses above every animal that is one by its kind, and not by what it is to people."""


@lru_cache(maxsize=1 << 13)
def is_other_animal(word: str, goods: str) -> bool:
    """Whether a word is an animal, and neither the one that the goods are for nor a kind or the young of it: a wolf on
    dog collars is a picture, however near a dictionary puts it to the dog."""
    mine = _animal(word)
    if not mine:
        return False
    around = context(goods)
    theirs = [sense_id for one in around.words if (sense_id := _animal(one.word))]
    if not theirs or around.food or any(one.word == base_form(word) for one in around.words):
        return False
    above = ancestors(mine)
    return "young" not in names_of(above) and not any(other in above or mine in ancestors(other) for other in theirs)


def is_sort_of_theirs(word: str, goods: str) -> bool:
    """Whether a word is a sort of the animal that goods are for: songbird, of seeds for birds."""
    mine = _animal(word)
    theirs = [sense_id for one in context(goods).words if (sense_id := _animal(one.word))]
    return bool(mine) and any(one in ancestors(mine) for one in theirs)


def is_animal(word: str) -> bool:
    """Whether a word is an animal first of all, whatever it says as a verb (to badger is to puzzle)."""
    return bool(_animal(word))


def _animal(word: str) -> str:
    """The leading sense of a word that is an animal, if one of its first two is; else "".
    A pet or a critter is no animal of its own."""
    leading = (sense_id for sense_id, _ in leading_senses(base_form(word), 2))
    animals = (sense_id for sense_id in leading if lexicon().domain(sense_id) == "noun.animal")
    return next((one for one in animals if TAXA & names_above(one)), "")
