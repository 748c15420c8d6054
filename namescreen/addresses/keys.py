"""How a label is typed and mistyped: the keys to press, likely slips, and labels that look the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, islice

from ..pronunciation import pronounce
from ..pronunciation.predictability import spellings
from ..text import Name
from .joins import parts_of
from .labels import a_label, label_problem, plain_label

__all__ = ["SIMILAR", "effort", "lookalike_labels", "other_spellings", "slips"]

_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")

SIMILAR = (("rn", "m"), ("m", "rn"), ("l", "1"), ("1", "l"), ("o", "0"), ("0", "o"), ("i", "l"), ("l", "i"), ("i", "1"))
"""Letters and digits that pass for each other in some case of some common type: the confusables of Unicode Technical
Standard #39 among letters and digits (I, l and 1; O and 0; rn and m)."""

TWINS = dict(zip("acdehijopqswxy", "асԁеһіјорԛѕԝху", strict=True))
"""Latin letters and their Cyrillic look-alikes that a domain label may hold: UTS #39 again."""


def effort(label: str) -> int:
    """Keys to press for a label: one each, two for a digit or a hyphen, which lie off the letter rows."""
    return sum(1 if character.isalpha() else 2 for character in label)


def slips(name: Name, limit: int = 6) -> tuple[str, ...]:
    """Likely misspellings of the joined name, which a maker may want to register too, the likeliest kind first.

    Numerals as words, a doubled letter dropped, what listeners would write (the two likeliest), two letters swapped
    where words meet or midway, one key aside.
    """
    words = [plain for word in name.words if (plain := plain_label(word))]
    joined = "".join(words)
    found = chain(
        _said(name, joined),
        _dropped(joined),
        islice(other_spellings(words), 2),
        _swapped(words, joined),
        _one_key_aside(joined),
    )
    usable = (slip for slip in dict.fromkeys(found) if slip != joined and label_problem(slip) is None)
    return tuple(islice(usable, limit))


def other_spellings(words: Sequence[str]) -> Iterator[str]:
    """The joined words with one of them spelled as listeners may write it, the likeliest first."""
    parts = [part for word in words for part in (parts_of([word]) if word.isalpha() else [word])]
    wrong = []
    for place, part in enumerate(parts):
        for reading in pronounce(part, 1) if part.isalpha() else ():
            for written, share in spellings(reading.phones, 3):
                if written != part:
                    wrong.append((-share, "".join((*parts[:place], plain_label(written), *parts[place + 1 :]))))
    return (text for _, text in sorted(wrong))


def lookalike_labels(label: str, limit: int = 4) -> tuple[str, ...]:
    """Labels that pass for `label` at a glance: one place changed for what it is confused with; and, where every
    letter has a Cyrillic twin, the label of the twins in its registered form (xn--...)."""
    found: dict[str, None] = {}
    for text, like in SIMILAR:
        at = label.find(text)
        while at >= 0:
            changed = label[:at] + like + label[at + len(text) :]
            if label_problem(changed) is None:
                found.setdefault(changed)
            at = label.find(text, at + 1)
    twin = a_label("".join(TWINS.get(letter, letter) for letter in label)) if TWINS.keys() >= set(label) else None
    return (*islice(found, limit), *([twin] if twin and twin != label else []))


def _said(name: Name, joined: str) -> Iterator[str]:
    """The name with its numerals as words, as somebody who only heard it would type it."""
    if any(character.isdigit() for character in joined):
        yield from ("".join(map(plain_label, spoken)) for spoken in name.spoken[:2])


def _dropped(joined: str) -> Iterator[str]:
    for place in range(1, len(joined)):
        if joined[place] == joined[place - 1]:
            yield joined[:place] + joined[place + 1 :]


def _swapped(words: Sequence[str], joined: str) -> Iterator[str]:
    join = len(words[0]) if len(words) > 1 else len(joined) // 2
    if 1 <= join < len(joined):
        yield joined[: join - 1] + joined[join] + joined[join - 1] + joined[join + 1 :]


def _one_key_aside(joined: str) -> Iterator[str]:
    """`joined` with its last letter typed one key to the right (to the left at the end of a row)."""
    row = next((row for row in _ROWS if joined[-1:] and joined[-1] in row), "")
    if row:
        place = row.index(joined[-1])
        yield joined[:-1] + (row[place + 1] if place + 1 < len(row) else row[place - 1])
