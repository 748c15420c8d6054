"""In which markets buyers know a place, so that it may tell them where goods come from (TMEP 1210.04(c) on obscure
places; Court of Justice, C-108/97, Windsurfing Chiemsee: what the relevant class of persons knows)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from ..lexicon import frequency_languages, zipf
from ..lexicon.translation import equivalents_in
from ..tables import open_table
from ..territories import languages_of, law_of, members_of, territory, understood_in
from ..text import fold
from .known_places import known_places
from .places import place_of

__all__ = ["known_in", "where_strange"]

EVERYWHERE = 3.6
"""Zipf value in English texts from which a place is known abroad too (Cornwall, Vermont). Ours."""
NAMED, NAMED_AT_HOME = 3.0, 3.4
"""Zipf value in texts of a language of the market from which its buyers know a place that lies abroad; higher in
English for places of a state where it is spoken, as the texts are its own too. Ours; all three set by looking at some
forty towns and regions."""
_IN_ENGLISH = frozenset(("US", "GB", "IE", "AU", "NZ", "CA", "ZA"))


@lru_cache(maxsize=1 << 12)
def known_in(place: str, law: str, goods: str) -> bool:
    """Whether buyers under a law of `views_of` know the folded `place`: it lies there, their texts name it, the whole
    world does, or it is known for such `goods`; so too where it is not known here where it lies, and no text tells."""
    found = place_of(place)
    names = tuple(dict.fromkeys((place, *((_folded(found.name),) if found is not None else ()))))
    states = {territory(one) for name in names for one in _states(name)}
    if not states.isdisjoint({law, *members_of(law)}) or (law == "EU" and any(law_of(one) == "EU" for one in states)):
        return True
    if _is_named(names, law, not states.isdisjoint(_IN_ENGLISH)) or any(known_places(one, goods) for one in names):
        return True
    return not states and not any(_is_named(names, one) for one in frequency_languages())


@lru_cache(maxsize=1 << 12)
def _is_named(names: tuple[str, ...], law: str, in_english: bool = False) -> bool:
    """Whether texts in a language of the market (or of a language by itself), or English ones of the whole world, name
    a place by one of its `names` or what the language calls it."""
    if any(_written_of(name, "en") >= EVERYWHERE for name in names):
        return True
    spoken = (law,) if law in frequency_languages() else languages_of((law,), main=True)
    for language in (one for one in spoken if one != "en" or understood_in(law, "en")):
        forms = {*names, *(form for name in names for form in equivalents_in(name, language))}
        least = NAMED_AT_HOME if language == "en" and in_english else NAMED
        if any(_written_of(form, language) >= least for form in forms):
            return True
    return False


def where_strange(places: Iterable[str], laws: Iterable[str], goods: str) -> tuple[str, ...]:
    """The laws of those given under which buyers hardly know any of the `places`; none where there is no place."""
    held = tuple(places)
    return tuple(law for law in laws if held and not any(known_in(place, law, goods) for place in held))


def _folded(name: str) -> str:
    return fold(name.removeprefix("the ")).replace("-", " ")


def _states(name: str) -> list[str]:
    return str(open_table("place_states.tsv").get(name) or "").split()


@lru_cache(maxsize=1 << 12)
def _written_of(name: str, language: str) -> float:
    """How often texts of a language name a place of one word or several; 0 where its texts are not known here."""
    return min(zipf(word, language) for word in name.split()) if language in frequency_languages() else 0.0
