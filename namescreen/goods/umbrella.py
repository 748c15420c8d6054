"""Terms at large for the goods of one market, as lists of offices word them (toilet preparations, household utensils),
and which goods they hold: all that are likely in their class, but for what they plainly do not mean.

A broad term holds the goods under it, and these are identical then (Meric, T-133/05, from memory). The terms, and what
keeps goods out, are written from memory of the wording of lists; how likely the class must be is ours."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from ..expressions import expression
from .classification import classes
from .phrases import Item, plain_words
from .words import base_form

__all__ = ["holds_at_large"]

LIKELY = 0.5
"""How likely goods must be in a class of a term for it to hold them."""
_SAME = {
    word: meant
    for meant, words in (
        ("preparation", "product substance agent remedy preparation"),
        ("utensil", "article good item ware requisite implement utensil"),
    )
    for word in words.split()
}
"""Last words that make no difference among those of one meaning: what is used up, and what it is done with."""
_UNSAID = frozenset(("non", "use", "purpose", "general", "all"))
_NOT_MEDICATED = expression(r"\bnon[ -]?medicated\b", re.IGNORECASE)
"""What makes no difference to a term; a medicated one is another, of class 5."""
_TERMS = """
3 | cosmetic, cosmetic preparation, toilet preparation, toiletry, toiletry preparation, body care, body care
  preparation, beauty care, beauty care preparation, body and beauty care preparation, beauty preparation, personal
  care preparation, personal hygiene preparation, grooming preparation, cosmetic and toiletry preparation, body
  cosmetic | laundry dish dishwashing floor car furniture shoe leather glass window pet dog cat horse household
  cleaning cleaner polish bleach abrasive incense joss diffuser home room air potpourri starch detergent sandpaper
  scouring stain drain oven fabric softener tile toilet
3 | beard care, beard care preparation, beard preparation, beard grooming preparation, moustache care | | beard
  moustache
3 | shaving preparation, preparation for shaving, preparation for before shaving, after shave preparation | | shave
  shaving beard aftershave razor
3 | hair care, hair care preparation, hair preparation, hair cosmetic, preparation for the hair | | hair shampoo
  conditioner pomade beard
3 | skin care, skin care preparation, skincare, skincare preparation, skin cosmetic, preparation for care of the skin |
  nail hair tooth laundry leather | skin face facial hand body lip cream lotion balm serum soap moisturiser foot
3 | perfumery, perfumery preparation, fragrance preparation | laundry | perfume cologne fragrance scent eau attar
3 | bath preparation, bathing preparation | pet dog | bath shower
3 | nail care, nail care preparation, nail preparation | | nail
3 | cleaning preparation, cleanser, preparation for cleaning | skin face body hair hand shampoo tooth | clean cleaner
  wash washing detergent dish laundry polish soap scour bleach descaler
21 | household utensil, kitchen utensil, household container, kitchen container, houseware, homeware, kitchenware,
  household or kitchen utensil, utensil for household purpose, household and kitchen utensil, domestic utensil | brush
  toilet cosmetic comb pet dog cat bird garden plant flower shaving toothbrush aquarium
21 | toilet utensil, cosmetic utensil, body care utensil, beauty care utensil, cosmetic and toilet utensil, body and
  beauty care utensil, utensil for body, utensil for beauty care, utensil for personal hygiene | | shaving brush comb
  hairbrush sponge puff cosmetic soap toothbrush nail bath tissue loofah makeup dental floss
25 | clothing, clothes, garment, apparel, wearing apparel, article of clothing, item of clothing, clothing article,
  apparel item | shoe boot sandal slipper footwear sole heel insole
25 | clothing accessory | shoe boot sandal slipper | scarf glove belt hat cap tie sock shawl mitten bandana cravat
  brace
27 | floor covering, flooring | wall wallpaper
24 | household textile, home textile, textile, textile goods, household linen | yarn
32 | non alcoholic drink, non alcoholic beverage, alcohol free drink, alcohol free beverage, soft drink | beer ale
  lager stout powder
33 | alcoholic drink, alcoholic beverage | essence extract
26 | haberdashery, sewing article, sewing notion, notion | | button zip zipper needle thread pin ribbon lace hook snap
  patch thimble bobbin
14 | jewellery, jewelry, bijouterie | watch clock strap
14 | horological instrument, timepiece | | watch clock timer
28 | toy, plaything, game and toy | sport golf tennis fishing gym ski fitness
5 | dietary supplement, food supplement, nutritional supplement | | supplement vitamin mineral capsule
"""
"""Classes | terms | words that keep goods out | words of which one must be said, if any are given."""


def holds_at_large(broad: Item, narrow: Item) -> bool:
    """Whether `broad` is a term at large, and `narrow` goods that it holds."""
    if broad.dealing or narrow.dealing or broad.head in narrow.modifiers:  # a jewellery box is no jewellery
        return False
    rows = _terms().get(_plain(broad.text), ())
    said = {*narrow.words, *map(base_form, plain_words(narrow.text))} if rows else set()
    return any(
        said.isdisjoint(out) and (not needed or not said.isdisjoint(needed)) and number in _likely(narrow.text)
        for number, out, needed in rows
    )


@lru_cache(maxsize=1 << 12)
def _likely(text: str) -> frozenset[int]:
    return frozenset(guess.number for guess in classes(text, limit=3) if guess.score >= LIKELY)


@lru_cache(maxsize=1 << 12)
def _plain(text: str) -> str:
    """A term without what makes no difference to it."""
    words = [one for one in map(base_form, plain_words(_NOT_MEDICATED.sub(" ", text))) if one not in _UNSAID]
    return " ".join((*words[:-1], _SAME.get(words[-1], words[-1]))) if words else ""


@cache
def _terms() -> dict[str, list[tuple[int, frozenset[str], frozenset[str]]]]:
    found: dict[str, list[tuple[int, frozenset[str], frozenset[str]]]] = {}
    for row in _TERMS.strip().replace("\n  ", " ").split("\n"):
        number, terms, *words = (part.strip() for part in row.split("|"))
        out, needed = (frozenset(part.split()) for part in (*words, "")[:2])
        for term in terms.split(","):
            found.setdefault(_plain(term), []).append((int(number), out, needed))
    return found
