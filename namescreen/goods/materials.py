"""Words for what things are made of or hold, and whether goods are stated to be of such stuff."""

from __future__ import annotations

from ..lexicon import lexicon
from ..tables import open_table
from .broader import leading_senses, names_above
from .phrases import base_form, goods_words

__all__ = ["is_material", "is_sort_of_stuff", "is_stuff"]

AT_LARGE = {"wood": "wood", "wooden": "wood", "timber": "wood", "metal": "metal", "cloth": "fabric",
            "fabric": "fabric", "textile": "fabric"}  # fmt: skip
"""How goods state their stuff at large, and the broader term for its sorts."""


def is_sort_of_stuff(word: str, goods: str) -> bool:
    """Whether a word is first of all a sort of the stuff that goods state at large: applewood, oak, of wooden toys."""
    stated = {AT_LARGE[one.word] for one in goods_words(goods) if one.word in AT_LARGE}
    above = {name for sense_id, _ in leading_senses(word, 1) for name in names_above(sense_id)} if stated else set()
    made = (word.removesuffix(one) for one in stated if word.endswith(one))  # pearwood
    return bool(above & stated) or any({*_fields(first)} & {"noun.plant", "noun.food"} for first in made)


def is_stuff(word: str) -> bool:
    """Whether a word in base form is first of all a fibre, a wood, a stone or another sort of stuff."""
    return word in open_table("naming_stuffs.tsv")


def _fields(word: str) -> tuple[str, ...]:
    """WordNet's fields of the leading noun senses of a word."""
    return tuple(lexicon().domain(sense_id) for sense_id, _ in leading_senses(word, 2))


def is_material(word: str, fields: tuple[str, ...] = ("noun.substance", "noun.food")) -> bool:
    """Whether a leading sense of `word` is something that things are made of or hold, in these of WordNet's fields;
    not in a rare sense beside others (puddle, of clay)."""
    base = base_form(word)
    leading = [sense_id for sense_id, _ in leading_senses(base, 2)]
    plain = is_stuff(base) or all(lexicon().domain(one) in fields for one in leading)
    attested = {one.id for one in lexicon().senses(base, "n", labelled=False) if one.count}
    return any(lexicon().domain(one) in fields and (plain or one in attested) for one in leading)
