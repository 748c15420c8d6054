"""What an item of a list is for where it names several: animals, people, rooms, things of one kind."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import association, lexicon
from .broader import leading_senses, names_above
from .words import base_form, plain_words

__all__ = ["for_both"]

_USERS = {
    "animal": "animal", "person": "person", "people": "person", "body part": "body part",
    **dict.fromkeys(("room", "housing", "residence", "household", "plot of land", "place of business"), "place"),
}  # fmt: skip
"""What WordNet calls those whom, and where, goods are for, by sort: rooms, dwellings, gardens are places."""
ALIKE, ASSOCIATED = 0.3, 0.3
"""How close in meaning two things are, or how much they bring each other to mind, that one item may be for. Ours."""


def for_both(parts: list[str], listed: str) -> list[str]:
    """Items with all that they are for: animals, people, rooms or parts of the body after "for", and a further one of
    the same sort, are no list of goods (food for dogs and cats, containers for the household and kitchen); neither are
    things of one kind with "and" between them (sleeves for laptops and tablets)."""
    listed = " ".join(listed.split())
    found: list[str] = []
    for part in parts:
        words = [word for word in plain_words(part) if word not in ("the", "use")]
        before = plain_words(found[-1]) if found else ()
        both = len(words) == 1 and "for" in before and (
            not _sort_of_user(words[0]).isdisjoint(_sort_of_user(before[-1]))
            or (f"{found[-1]} and {part}" in listed and _is_alike(before[-1], words[0]))
        )
        if both:
            found[-1] += f" and {part}"
        else:
            found.append(part)
    return found


@lru_cache(maxsize=1 << 12)
def _sort_of_user(word: str) -> frozenset[str]:
    """Of which sorts of users and places of goods a word is in its leading sense."""
    named = (names_above(sense) for sense, _ in leading_senses(base_form(word), 1))
    return frozenset(_USERS[one] for names in named for one in names & _USERS.keys())


def _is_alike(one: str, other: str) -> bool:
    """Whether two words name things of one kind: laptops, tablets."""
    if bool(_sort_of_user(one)) != bool(_sort_of_user(other)):
        return False
    one, other = base_form(one), base_form(other)
    near = association(*sorted((one, other))) or 0.0
    return near >= ASSOCIATED or (lexicon().closeness(one, other) or 0.0) >= ALIKE
