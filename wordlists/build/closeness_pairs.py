"""Draw pairs of names to be rated by readers who see only names and goods.

    python wordlists/build/closeness_pairs.py COUNT SEED > pairs.csv

Every pair is drawn by rule from the lexicon and the tables of words, so that no row was chosen by hand. The kinds of
pair cover what decides a comparison: what is shared (a distinctive word, a word for the goods, letters, a sound, an
idea), where it stands, and what stands beside it; some pairs share nothing. Readers do not see the kind.
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Callable
from random import Random

from closeness_pair_words import (
    ENDINGS,
    GOODS,
    LANGUAGES,
    Pair,
    beside,
    by_sound,
    coined,
    distinctive,
    edited,
    idea,
    medicines,
    one_letter_apart,
    phrases,
    related,
    respelled,
    surname,
    translated,
    word,
    words,
)

from namescreen import blends
from namescreen.lexicon import equivalents_in, words_of_kind

Draw = Callable[[Random, tuple[str, ...]], Pair | None]


def shared_distinctive(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A distinctive word shared, other words beside it."""
    one, first = distinctive(rng), rng.random() < 0.6
    others = [rng.choice((word(rng), rng.choice(goods), word(rng))) for _ in range(2)]
    if rng.random() < 0.25:
        others[1] = ""
    return tuple(f"{one} {other}".strip() if first else f"{other} {one}".strip() for other in others)  # type: ignore


def shared_weak(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A weak word shared, distinctive ones beside it."""
    weak = rng.choice((*goods, *goods, *words_of_kind("laudatory"), *words_of_kind("generic head")))
    first, joined = rng.random() < 0.4, "" if rng.random() < 0.3 else " "
    return tuple(
        weak + joined + other if first else other + joined + weak for other in (distinctive(rng), distinctive(rng))
    )  # type: ignore


def house_mark(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A name with that of a house added."""
    mark = distinctive(rng) if rng.random() < 0.5 else f"{word(rng)} {word(rng)}"
    house = rng.choice((surname, coined))(rng)
    return f"{house} {mark}" if rng.random() < 0.8 else f"{mark} by {house}", mark


def generic_added(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A name with a word for the goods or the business added."""
    mark = distinctive(rng) if rng.random() < 0.6 else f"{word(rng)} {word(rng)}"
    added = rng.choice((*goods, *goods, "the", "pro", "plus", "group", "company", "studio", "24", "my", "original"))
    joined = "" if rng.random() < 0.3 and " " not in mark else " "
    return (added + joined + mark if rng.random() < 0.3 or added in ("the", "my") else mark + joined + added), mark


def compound(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A closed compound, beside its parts or another."""
    one, two, three = word(rng), word(rng), word(rng)
    return rng.choice(
        (
            (one + two, f"{one} {two}"),
            (one + two, one),
            (one + two, two),
            (one + two, one + three),
            (one + two, three + two),
            (one + two, two + one),
            (one + two, f"{one} {three}"),
        )
    )


def translation(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """A word and its translation."""
    one = word(rng)
    other = translated(rng, one)
    return (one, other) if other else None


def phrase_translated(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """A colour and a thing, translated or nearly."""
    noun, language = word(rng), rng.choice(LANGUAGES)
    colour = rng.choice(("white", "black", "red", "green", "old", "new", "little", "golden", "three", "good"))
    said, shade = equivalents_in(noun, language)[:1], equivalents_in(colour, language)[:1]
    if not said or not shade or said[0] == noun:
        return None
    ours = f"{colour} {noun}" if rng.random() < 0.8 else f"{word(rng)} {noun}"
    return ours, f"{shade[0]} {said[0]}" if language == "de" else f"{said[0]} {shade[0]}"


def alone_or_beside(kind: str) -> Draw:
    """A word and one related to it, alone or with a word beside both."""

    def draw(rng: Random, goods: tuple[str, ...]) -> Pair | None:
        one = rng.choice(words(3.0, 5.2, things=False))
        other = idea(rng, one) if kind == "idea" else related(rng, one, kind)
        if not other or rng.random() < 0.6:
            return (one, other) if other else None
        return beside(rng, one, other)

    return draw


def both_words(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """The same idea in two words, both said otherwise."""
    one, two = word(rng), word(rng)
    pair = [
        related(rng, each, rng.choice(("synonym", "synonym", "sister", "narrower"))) or idea(rng, each)
        for each in (one, two)
    ]
    return (f"{one} {two}", f"{pair[0]} {pair[1]}") if all(pair) else None


def coined_edits(rng: Random, goods: tuple[str, ...]) -> Pair:
    """An invented word with letters changed."""
    one = coined(rng)
    return one, edited(rng, one, rng.choice((1, 1, 2, 2, 3, 4)))


def coined_parts(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Invented words that share a beginning or an ending."""
    one, other = coined(rng), coined(rng)
    half = len(one) // 2 + rng.choice((0, 1))
    return (
        (one, one[:half] + other[len(other) // 2 :])
        if rng.random() < 0.5
        else (one, other[: len(other) // 2] + one[half - 1 :])
    )


def medicine(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """Names of medicines that share a beginning or an ending."""
    if not medicines():
        return None
    one = rng.choice(medicines())
    same = [other for other in medicines() if other != one and (other[:3] == one[:3] or other[-4:] == one[-4:])]
    return (one, rng.choice(same)) if same else None


def coined_word(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A word and one that is nearly it."""
    one = word(rng)
    return one, (edited(rng, one, rng.choice((1, 1, 2))) if rng.random() < 0.6 else respelled(rng, one))


def clipped(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A word's beginning with an ending, beside the word or another made from it."""
    one = rng.choice((word(rng), rng.choice(goods)))
    stem = one[: max(3, len(one) - 2)]
    other = rng.choice((one, stem + rng.choice(ENDINGS), stem + word(rng)))
    return stem + rng.choice(ENDINGS), other


def blended(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """A blend, beside its sources or another blend."""
    one, two = word(rng), rng.choice((word(rng), rng.choice(goods)))
    made = blends(one, two, limit=3)
    third = word(rng)
    others = (one, two, *[blend.text for blend in blends(one, third, limit=1)], f"{one} {two}")
    return (made[0].text, rng.choice(others)) if made else None


def homophones(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Words that are said the same."""
    one, other = rng.sample(by_sound()[rng.choice(sorted(by_sound()))], 2)
    if rng.random() < 0.4:
        same = word(rng)
        return (f"{one} {same}", f"{other} {same}") if rng.random() < 0.5 else (f"{same} {one}", f"{same} {other}")
    return one, other


def near_words(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    """Two words that differ in one letter."""
    return one_letter_apart(rng)


def set_phrase(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A set phrase, beside a word of it or a phrase like it."""
    phrase = rng.choice(phrases())
    parts = phrase.split()
    at = rng.randrange(len(parts))
    kind = rng.random()
    if kind < 0.4:
        return phrase, parts[at] if len(parts[at]) > 3 else parts[-1]
    changed = [*parts[:at], word(rng), *parts[at + 1 :]]
    return phrase, " ".join(changed) if kind < 0.7 else f"{parts[-1]} {word(rng)}"


def initials(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Initials, beside others."""
    letters = "".join(rng.choice("ABCDEFGHIKLMNOPRSTVW") for _ in range(rng.choice((2, 3, 3, 4))))
    kind = rng.random()
    if kind < 0.6:
        other = edited(rng, letters.lower(), 1).upper()
        return letters, other if kind < 0.4 else f"{other} {word(rng)}"
    return letters, letters[::-1] if kind < 0.75 else f"{letters} {rng.choice((word(rng), rng.choice(goods)))}"


def reversed_words(rng: Random, goods: tuple[str, ...]) -> Pair:
    """The same words in another order."""
    one, two = word(rng), rng.choice((word(rng), rng.choice(goods)))
    return f"{one} {two}", f"{two} {one}" + (f" {word(rng)}" if rng.random() < 0.2 else "")


def number(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Names with numbers."""
    values = {
        "7": "seven",
        "3": "three",
        "9": "nine",
        "12": "twelve",
        "21": "twenty one",
        "5": "five",
        "100": "hundred",
    }
    one, two = rng.sample(sorted(values), 2)
    same = distinctive(rng)
    return rng.choice(
        (
            (f"{same} {one}", f"{same} {two}"),
            (f"{one} {same}", f"{values[one]} {same}"),
            (f"{one} {same}", f"{values[two]} {same}s"),
            (f"{one} {same}", f"{one} {word(rng)}"),
        )
    )


def small_change(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A plural, an article, a hyphen and the like."""
    one = distinctive(rng)
    two = f"{one} {word(rng)}"
    return rng.choice(
        (
            (one, one + "s"),
            (one, one + "'s"),
            (f"the {one}", one),
            (two, two.replace(" ", "-")),
            (one, one + "y"),
            (two, f"{one} & {two.split()[1]}"),
            (one, "i" + one),
            (one, one + "er"),
            (one, one + ".com"),
        )
    )


def names_of_people(rng: Random, goods: tuple[str, ...]) -> Pair:
    """First names and surnames."""
    one, two = surname(rng), surname(rng)
    first, second = rng.sample(("John", "Anna", "Peter", "Maria", "Jack", "Laura", "Emily", "Paul"), 2)
    return rng.choice(
        (
            (f"{first} {one}", one),
            (f"{first} {one}", f"{second} {one}"),
            (f"{first} {one}", f"{first} {two}"),
            (one, edited(rng, one, 1)),
            (one, two),
            (f"{one} & {two}", one),
        )
    )


def inside_phrase(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Longer names that share a word or two."""
    shared = [word(rng) for _ in range(rng.choice((1, 1, 2)))]
    one = [*shared, word(rng), *([rng.choice(goods)] if rng.random() < 0.5 else [])]
    other = [
        *shared,
        *([word(rng)] if rng.random() < 0.6 else []),
        *([rng.choice(goods)] if rng.random() < 0.5 else []),
    ]
    if rng.random() < 0.4:
        one.reverse()
        other.reverse()
    return " ".join(one), " ".join(other)


def unrelated(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Names that share nothing."""
    return rng.choice(
        (
            (word(rng), word(rng)),
            (coined(rng), coined(rng)),
            (word(rng), coined(rng)),
            (f"{word(rng)} {word(rng)}", f"{word(rng)} {word(rng)}"),
            (word(rng), f"{coined(rng)} {word(rng)}"),
        )
    )


KINDS: tuple[tuple[Draw, int], ...] = (
    (shared_distinctive, 8),
    (shared_weak, 8),
    (house_mark, 5),
    (generic_added, 6),
    (compound, 7),
    (translation, 5),
    (phrase_translated, 4),
    (alone_or_beside("synonym"), 6),
    (alone_or_beside("opposite"), 5),
    (alone_or_beside("idea"), 6),
    (alone_or_beside("sister"), 4),
    (alone_or_beside("narrower"), 4),
    (both_words, 6),
    (coined_edits, 9),
    (coined_parts, 6),
    (medicine, 6),
    (coined_word, 7),
    (clipped, 4),
    (blended, 5),
    (homophones, 4),
    (near_words, 6),
    (set_phrase, 5),
    (initials, 4),
    (reversed_words, 4),
    (number, 3),
    (small_change, 4),
    (names_of_people, 5),
    (inside_phrase, 7),
    (unrelated, 7),
)
SAME, CLOSE = 0.75, 0.9
"""Shares of pairs for the same goods, and for the same or close ones; the rest are for other goods."""


def drawn(count: int, seed: int) -> list[tuple[str, str, str, str]]:
    """Names with their goods: name, goods, mark, goods."""
    rng = Random(seed)
    deck = [draw for draw, times in KINDS for _ in range(times)]
    found: list[tuple[str, str, str, str]] = []
    while len(found) < count:
        for draw in rng.sample(deck, len(deck)):
            goods, close, said = rng.choice(GOODS)
            if draw is medicine:
                goods, close = "pharmaceuticals", "dietary supplements"
            pair = draw(rng, said)
            if pair is None or pair[0].lower() == pair[1].lower():
                continue
            chance = rng.random()
            other = goods if chance < SAME else close if chance < CLOSE else rng.choice(GOODS)[0]
            one, two = rng.sample((pair[0].upper(), pair[1].upper()), 2)
            found.append((one, goods, two, other))
    return found[:count]


def main() -> None:
    """Write pairs as CSV."""
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(("name", "name_goods", "mark", "mark_goods"))
    out.writerows(drawn(int(sys.argv[1]), int(sys.argv[2])))


if __name__ == "__main__":
    main()
