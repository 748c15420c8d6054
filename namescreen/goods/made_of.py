"""What goods as stated are, are made of or hold, apart from what they are for: egg cups hold no egg."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from .broader import leading_senses
from .classification import likely_classes
from .context import FOOD_CLASSES
from .wording import in_english
from .words import base_form, plain_words

__all__ = ["made_of"]

_FOR = frozenset("for to against under around onto into inside".split())
"""After these goods say what they are for, or where they are used."""
_OF = frozenset("of from with containing in".split())
_EATEN = frozenset(
    "milk butter cream cheese egg eggs meat fish chicken beef pork bacon ham turkey lamb sausage steak honey "
    "gelatine lard sugar syrup wine beer gin rum whisky vodka spirit cider salt fruit".split()
)
"""What a vessel or a tool is named by without holding it: milk jugs, fish hooks."""
_OF_BEASTS = frozenset("leather wool silk fur feather feathers suede horn bone hide down".split())
"""Stuffs of beasts, which what cleans, dyes or cuts them is named by: leather soap, wool combs."""
_TREATING = frozenset((1, 2, 3, 4, 5, 7, 8))
_CARE = frozenset((3, 5))
_CARE_GOODS = frozenset("soap soaps shampoo shampoos balm balms lotion lotions candle candles".split())
_PLANT_MILKS = frozenset("milk butter cream cheese yoghurt yogurt wool silk leather".split())
_OF_PLANTS = frozenset(
    "almond apple argan avocado bean cactus cashew cocoa coconut cork corn cotton cupuacu grape hazelnut hemp "
    "kokum lentil macadamia mango mushroom nut oat olive palm pea peanut pineapple pistachio potato rice rock "
    "sal sesame shea soy soya steel sunflower tiger vegan vegetable walnut wood glass mineral imitation faux "
    "artificial".split()
)
"""Before a word for what beasts give they say that it is none: coconut milk, shea butter, rock wool."""
_PREPARED = frozenset("cream butter milk".split())
"""What care goods are called by their form: hand cream, body butter."""
_BY_MACHINE = frozenset("made woven knitted sewn cut carved spun printed embroidered tufted stitched turned".split())
_ONLY_OF_FOOD = frozenset("industrial inorganic conventional pesticide".split())
"""What says how food was grown or made, and of other goods something else: industrial shelves, inorganic pigments."""


@lru_cache(maxsize=1 << 10)
def made_of(goods: str) -> str:
    """The words, folded, of what goods are, are made of or hold, item by item between bars, with a space at both ends;
    first as written, then in English."""
    first = frozenset(likely_classes(goods)[:1])
    kept = (
        " ".join(_of_item(plain_words(item), first))
        for text in dict.fromkeys((goods, in_english(goods).english))
        for item in text.replace(";", ",").split(",")
    )
    return f" {' | '.join(kept)} "


def _of_item(words: tuple[str, ...], classes: frozenset[int]) -> list[str]:
    end = next((at for at, word in enumerate(words) if at and word in _FOR), len(words))
    head = words[:end]
    of = next((at for at, word in enumerate(head) if word in _OF), len(head))
    return [word for at, word in enumerate(head) if not _is_use(word, at, of, head, classes)]


def _is_use(word: str, at: int, of: int, words: tuple[str, ...], classes: frozenset[int]) -> bool:
    """Whether a word of an item says what it is used for or how it works, or is no such stuff as it says elsewhere."""
    before, after = words[at - 1] if at else "", words[at + 1] if at + 1 < len(words) else ""
    food = bool(classes & FOOD_CLASSES)
    if word in ("machine", "machines"):
        return after not in _BY_MACHINE and before != "by"
    if word in _PLANT_MILKS and before in _OF_PLANTS:
        return True
    if word in _ONLY_OF_FOOD:
        return not food
    if at >= of:
        return False
    if word in _EATEN and (not food or _is_thing(words[of - 1])):
        cared = words[of - 1] in _CARE_GOODS or bool(classes & _CARE)
        return not cared or (word in _PREPARED and at == of - 1)
    return word in _OF_BEASTS and bool(classes & _TREATING) and at < of - 1


@lru_cache(maxsize=1 << 12)
def _is_thing(word: str) -> bool:
    """Whether a word is first of all something made that is no food: a grater."""
    leading = leading_senses(base_form(word), 1)
    return any(lexicon().domain(one) == "noun.artifact" for one, _ in leading)
