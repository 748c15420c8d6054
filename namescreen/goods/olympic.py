"""Where the Olympic words are kept from others: some countries have a law on the words themselves, others and the Union
have none. From memory, save the German act, whose first section was read."""

from __future__ import annotations

from ..territories import EU_MEMBERS, territory
from .grounds import Ground, grounds_for, laws_of, states_named

__all__ = ["kept_in", "laws_on"]

_OF_STATES = {
    "DE": "OlympSchG s. 1(3), which names Olympia too, and 3(2)",
    "FR": "Code du sport, article L141-5",
    "IT": "decree-law 16/2020, article 5-bis, on any form of the words in any language, in force to the end of 2026",
    "AT": "the act on the protection of Olympic emblems and designations (BGBl. 15/1992)",
    "ES": "the act on sport (Ley 39/2022), which keeps the words for the Spanish Olympic Committee",
    "PL": "the act on sport of 2010, which keeps the words for the Polish Olympic Committee",
    "PT": "Decreto-Lei 155/2012",
}
"""The laws of states of the Union on these words; what a law with an end was followed by is not known here."""
_NONE = "no law of its own on these words known here"
_KEEPING = ("AU", "CA", "GB", "JP", "US", *_OF_STATES)


def kept_in(markets: tuple[str, ...] | None, where: str) -> tuple[str, ...]:
    """In which of the `markets` a word is kept, and, where the Union is one, in which of its states; without markets
    where it is by the laws that are told then. `where` names the only states that keep it, or is "worldwide"."""
    asked = set(laws_of(None) if markets is None else map(territory, markets))
    keeping = states_named(where) or _KEEPING
    return tuple(law for law in keeping if law in asked or (law in _OF_STATES and "EU" in asked))


def laws_on(markets: tuple[str, ...] | None) -> tuple[Ground, ...]:
    """The law of each market; in the Union that of each state which is one, and of those that keep the words where it
    is one as a whole."""
    asked = set(laws_of(None) if markets is None else map(territory, markets))
    states = [one for one in sorted(EU_MEMBERS) if one in asked or (one in _OF_STATES and "EU" in asked)]
    own = (Ground(one, _OF_STATES.get(one, _NONE)) for one in states)
    return (*own, *grounds_for("olympic", markets))
