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
from functools import cache, partial
from pathlib import Path
from random import Random

from namescreen import blends
from namescreen.lexicon import concreteness, equivalents_in, kinds, lexicon, neighbours, words_of_kind, zipf
from namescreen.pronunciation import pronounce
from namescreen.tables import open_table

# Goods, goods close to them, and words that say what they are or what they are for: common knowledge, no source.
GOODS = tuple(
    (one, close, tuple(said.split()))
    for one, close, said in (
        ("coffee", "tea", "roast brew bean"), ("beer", "cider", "ale brew hop"),
        ("wine", "spirits", "vineyard cellar estate"), ("chocolate", "biscuits", "cocoa sweet treats"),
        ("bread", "cakes", "bakery oven loaf"), ("hot sauce", "condiments", "pepper spice sauce"),
        ("pet food", "pet toys", "paw pet bites"), ("skin cream", "soap", "skin glow beauty"),
        ("perfume", "cosmetics", "scent fragrance beauty"), ("shampoo", "hair dye", "hair locks salon"),
        ("clothing", "footwear", "wear apparel style"), ("running shoes", "sports clothing", "run sport step"),
        ("bags", "wallets", "bag leather carry"), ("jewellery", "watches", "gem gold jewel"),
        ("furniture", "lamps", "home interior wood"), ("mattresses", "pillows", "sleep bed comfort"),
        ("kitchen knives", "cookware", "blade cook kitchen"), ("bicycles", "bicycle helmets", "bike ride cycle"),
        ("tents", "backpacks", "camp trail outdoor"), ("toys", "board games", "play kids game"),
        ("garden tools", "plant pots", "garden plant grow"), ("computer software", "computer consulting", "soft data tech"),
        ("headphones", "loudspeakers", "audio sound music"), ("hotel services", "restaurant services", "hotel inn suites"),
        ("restaurant services", "catering", "grill kitchen cafe"), ("insurance", "banking", "trust capital mutual"),
        ("dietary supplements", "vitamins", "vita health care"), ("protein bars", "energy drinks", "energy fit power"),
        ("laundry detergent", "cleaning preparations", "clean bright wash"), ("paint", "varnish", "colour coat paint"),
        ("magazines", "books", "press weekly news"), ("candles", "room fragrances", "candle light wax"),
        ("water bottles", "lunch boxes", "water flask bottle"), ("fitness training", "sports equipment", "fit gym training"),
        ("fruit juice", "soft drinks", "juice fruit fresh"),
    )
)  # fmt: skip
FIRST = "bl br c cr d dr f fl g gl h j k l m n p pl qu r s sk st t tr v w z".split()
INNER = "b d f g l m n nd nt p r rt s st t v x z".split()
VOWELS = "a e i o u a e i o ai ea io oo".split()
ENDINGS = "a ex ia ix o on ora um ella ino ity ly ana is en er".split()
RESPELLED = (("c", "k"), ("ck", "k"), ("s", "z"), ("i", "y"), ("y", "i"), ("ph", "f"), ("f", "ph"), ("ee", "i"),
             ("oo", "u"), ("ight", "ite"), ("x", "ks"), ("qu", "kw"), ("e", "")) # fmt: skip
LANGUAGES = ("es", "fr", "it", "de")

Pair = tuple[str, str]
Draw = Callable[[Random, tuple[str, ...]], Pair | None]


@cache
def words(least: float = 3.0, most: float = 5.0, things: bool = True) -> tuple[str, ...]:
    """Words of this frequency; if `things`, only those for what can be seen or touched."""
    unfit = {key for key, _ in open_table("unfit_words.tsv").items()}
    return tuple(
        word
        for word, _ in open_table("naming_vocabulary.tsv").items()
        if word.isascii() and word.isalpha() and 3 <= len(word) <= 10 and word not in unfit and lexicon().is_lemma(word)
        if least <= zipf(word) <= most and not {"function word", "place", "given name"} & kinds(word)
        if not things or (concreteness(word) or 0) > 0.7
    )


@cache
def phrases() -> tuple[str, ...]:
    """Set phrases of two to four words."""
    found = [key for key, _ in open_table("wordnet-words.tsv").items() if 1 <= key.count(" ") <= 3 and key.replace(" ", "").isalpha()]
    return tuple(key for key in found if all(zipf(word) >= 3.5 for word in key.split()) and zipf(key.split()[-1]) < 5.5)


@cache
def medicines() -> tuple[str, ...]:
    """Names of medicines (Drugs@FDA, public domain), if the list is at hand."""
    path = Path(sys.argv[3]) if len(sys.argv) > 3 else None
    return tuple(path.read_text(encoding="utf-8").split()) if path else ()


def word(rng: Random) -> str:
    return rng.choice(words())


def coined(rng: Random) -> str:
    parts = [rng.choice(FIRST) + rng.choice(VOWELS) for _ in range(rng.choice((1, 1, 2)))]
    return "".join(parts) + rng.choice(INNER) + rng.choice(ENDINGS)


def surname(rng: Random) -> str:
    return rng.choice([key for key in _surnames()])


@cache
def _surnames() -> tuple[str, ...]:
    return tuple(key for key, value in open_table("word_kinds.tsv").items() if "surname" in value and 2.5 < zipf(key) < 4.2)


def distinctive(rng: Random) -> str:
    return rng.choice((word, word, coined, surname))(rng)


def related(rng: Random, one: str, kind: str) -> str | None:
    """A word that stands in this relation to one in the lexicon."""
    found: list[str] = []
    for sense in lexicon().senses(one)[:2]:
        if kind == "synonym":
            found += [form for form in sense.words if form.lower() != one]
        for relation in lexicon().relations(sense):
            if relation.kind == kind:
                found += lexicon().sense(relation.sense_id).words if not relation.other else (relation.other,)
            if kind == "sister" and relation.kind == "broader":
                for below in lexicon().relations(relation.sense_id):
                    if below.kind == "narrower" and below.sense_id != sense.id:
                        found += lexicon().sense(below.sense_id).words[:1]
    found = [form.lower() for form in found if form.isalpha() and form.isascii() and zipf(form.lower()) >= 2.5]
    return rng.choice(found) if found else None


def translated(rng: Random, one: str) -> str | None:
    found = [form for form in equivalents_in(one, rng.choice(LANGUAGES)) if form != one]
    return found[0] if found else None


def edited(rng: Random, one: str, times: int) -> str:
    """With letters changed, left out or put in; a vowel for a vowel."""
    for _ in range(times):
        at = rng.randrange(len(one))
        change = "aeiou" if one[at] in "aeiou" else "bdfgklmnprstvz"
        kind = rng.random()
        letter = rng.choice(change)
        one = one[:at] + (letter + one[at + 1 :] if kind < 0.65 else one[at + 1 :] if kind < 0.85 else letter + one[at:])
    return one


def respelled(rng: Random, one: str) -> str:
    fitting = [pair for pair in RESPELLED if pair[0] in one]
    for old, new in rng.sample(fitting, min(len(fitting), rng.choice((1, 1, 2)))):
        one = one.replace(old, new, 1)
    return one


@cache
def by_length() -> dict[int, tuple[str, ...]]:
    found: dict[int, list[str]] = {}
    for one in words(2.8, 5.5, things=False):
        found.setdefault(len(one), []).append(one)
    return {length: tuple(those) for length, those in found.items()}


@cache
def by_sound() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for one in words(2.5, 6.0, things=False):
        found.setdefault(pronounce(one, 1)[0].code, []).append(one)
    return {code: tuple(those) for code, those in found.items() if len(those) > 1}


def one_letter_apart(rng: Random) -> Pair | None:
    one = rng.choice(words(2.8, 5.5, things=False))
    near = [other for other in by_length()[len(one)] if sum(map(str.__ne__, one, other)) == 1]
    return (one, rng.choice(near)) if near else None


def idea(rng: Random, one: str) -> str | None:
    near = [other for other, _ in neighbours(one, limit=12) if one not in other and other not in one and other.isalpha()]
    return rng.choice(near) if near else None


def beside(rng: Random, one: str, change: str | None, *, place: int | None = None) -> Pair | None:
    """A word and what takes its place, the same word beside both."""
    if change is None:
        return None
    first = rng.random() < 0.5 if place is None else not place
    same = distinctive(rng) if rng.random() < 0.5 else word(rng)
    return (f"{one} {same}", f"{change} {same}") if first else (f"{same} {one}", f"{same} {change}")


def shared_distinctive(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, first = distinctive(rng), rng.random() < 0.6
    others = [rng.choice((word(rng), rng.choice(goods), word(rng))) for _ in range(2)]
    if rng.random() < 0.25:
        others[1] = ""
    return tuple(f"{one} {other}".strip() if first else f"{other} {one}".strip() for other in others)  # type: ignore


def shared_weak(rng: Random, goods: tuple[str, ...]) -> Pair:
    weak = rng.choice((*goods, *goods, *words_of_kind("laudatory"), *words_of_kind("generic head")))
    first, joined = rng.random() < 0.4, "" if rng.random() < 0.3 else " "
    return tuple(weak + joined + other if first else other + joined + weak for other in (distinctive(rng), distinctive(rng)))  # type: ignore


def house_mark(rng: Random, goods: tuple[str, ...]) -> Pair:
    mark = distinctive(rng) if rng.random() < 0.5 else f"{word(rng)} {word(rng)}"
    house = rng.choice((surname, coined))(rng)
    return f"{house} {mark}" if rng.random() < 0.8 else f"{mark} by {house}", mark


def generic_added(rng: Random, goods: tuple[str, ...]) -> Pair:
    mark = distinctive(rng) if rng.random() < 0.6 else f"{word(rng)} {word(rng)}"
    added = rng.choice((*goods, *goods, "the", "pro", "plus", "group", "company", "studio", "24", "my", "original"))
    joined = "" if rng.random() < 0.3 and " " not in mark else " "
    return (added + joined + mark if rng.random() < 0.3 or added in ("the", "my") else mark + joined + added), mark


def compound(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, two, three = word(rng), word(rng), word(rng)
    return rng.choice(((one + two, f"{one} {two}"), (one + two, one), (one + two, two), (one + two, one + three),
                       (one + two, three + two), (one + two, two + one), (one + two, f"{one} {three}")))  # fmt: skip


def translation(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    one = word(rng)
    other = translated(rng, one)
    return (one, other) if other else None


def phrase_translated(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    noun, language = word(rng), rng.choice(LANGUAGES)
    colour = rng.choice(("white", "black", "red", "green", "old", "new", "little", "golden", "three", "good"))
    said, shade = equivalents_in(noun, language)[:1], equivalents_in(colour, language)[:1]
    if not said or not shade or said[0] == noun:
        return None
    ours = f"{colour} {noun}" if rng.random() < 0.8 else f"{word(rng)} {noun}"
    return ours, f"{shade[0]} {said[0]}" if language == "de" else f"{said[0]} {shade[0]}"


def alone_or_beside(kind: str) -> Draw:
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
    pair = [related(rng, each, rng.choice(("synonym", "synonym", "sister", "narrower"))) or idea(rng, each) for each in (one, two)]
    return (f"{one} {two}", f"{pair[0]} {pair[1]}") if all(pair) else None


def coined_edits(rng: Random, goods: tuple[str, ...]) -> Pair:
    one = coined(rng)
    return one, edited(rng, one, rng.choice((1, 1, 2, 2, 3, 4)))


def coined_parts(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, other = coined(rng), coined(rng)
    half = len(one) // 2 + rng.choice((0, 1))
    return (one, one[:half] + other[len(other) // 2 :]) if rng.random() < 0.5 else (one, other[: len(other) // 2] + one[half - 1 :])


def medicine(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    if not medicines():
        return None
    one = rng.choice(medicines())
    same = [other for other in medicines() if other != one and (other[:3] == one[:3] or other[-4:] == one[-4:])]
    return (one, rng.choice(same)) if same else None


def coined_word(rng: Random, goods: tuple[str, ...]) -> Pair:
    one = word(rng)
    return one, (edited(rng, one, rng.choice((1, 1, 2))) if rng.random() < 0.6 else respelled(rng, one))


def clipped(rng: Random, goods: tuple[str, ...]) -> Pair:
    """A word's beginning with an ending, beside the word or another made from it."""
    one = rng.choice((word(rng), rng.choice(goods)))
    stem = one[: max(3, len(one) - 2)]
    other = rng.choice((one, stem + rng.choice(ENDINGS), stem + word(rng)))
    return stem + rng.choice(ENDINGS), other


def blended(rng: Random, goods: tuple[str, ...]) -> Pair | None:
    one, two = word(rng), rng.choice((word(rng), rng.choice(goods)))
    made = blends(one, two, limit=3)
    third = word(rng)
    others = (one, two, *[blend.text for blend in blends(one, third, limit=1)], f"{one} {two}")
    return (made[0].text, rng.choice(others)) if made else None


def homophones(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, other = rng.sample(by_sound()[rng.choice(sorted(by_sound()))], 2)
    if rng.random() < 0.4:
        same = word(rng)
        return (f"{one} {same}", f"{other} {same}") if rng.random() < 0.5 else (f"{same} {one}", f"{same} {other}")
    return one, other


def set_phrase(rng: Random, goods: tuple[str, ...]) -> Pair:
    phrase = rng.choice(phrases())
    parts = phrase.split()
    at = rng.randrange(len(parts))
    kind = rng.random()
    if kind < 0.4:
        return phrase, parts[at] if len(parts[at]) > 3 else parts[-1]
    changed = [*parts[:at], word(rng), *parts[at + 1 :]]
    return phrase, " ".join(changed) if kind < 0.7 else f"{parts[-1]} {word(rng)}"


def initials(rng: Random, goods: tuple[str, ...]) -> Pair:
    letters = "".join(rng.choice("ABCDEFGHIKLMNOPRSTVW") for _ in range(rng.choice((2, 3, 3, 4))))
    kind = rng.random()
    if kind < 0.6:
        other = edited(rng, letters.lower(), 1).upper()
        return letters, other if kind < 0.4 else f"{other} {word(rng)}"
    return letters, letters[::-1] if kind < 0.75 else f"{letters} {rng.choice((word(rng), rng.choice(goods)))}"


def reversed_words(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, two = word(rng), rng.choice((word(rng), rng.choice(goods)))
    return f"{one} {two}", f"{two} {one}" + (f" {word(rng)}" if rng.random() < 0.2 else "")


def number(rng: Random, goods: tuple[str, ...]) -> Pair:
    values = {"7": "seven", "3": "three", "9": "nine", "12": "twelve", "21": "twenty one", "5": "five", "100": "hundred"}
    one, two = rng.sample(sorted(values), 2)
    same = distinctive(rng)
    return rng.choice(((f"{same} {one}", f"{same} {two}"), (f"{one} {same}", f"{values[one]} {same}"),
                       (f"{one} {same}", f"{values[two]} {same}s"), (f"{one} {same}", f"{one} {word(rng)}")))  # fmt: skip


def small_change(rng: Random, goods: tuple[str, ...]) -> Pair:
    one = distinctive(rng)
    two = f"{one} {word(rng)}"
    return rng.choice(((one, one + "s"), (one, one + "'s"), (f"the {one}", one), (two, two.replace(" ", "-")), (one, one + "y"),
                       (two, f"{one} & {two.split()[1]}"), (one, "i" + one), (one, one + "er"), (one, one + ".com")))  # fmt: skip


def names_of_people(rng: Random, goods: tuple[str, ...]) -> Pair:
    one, two = surname(rng), surname(rng)
    first, second = rng.sample(("John", "Anna", "Peter", "Maria", "Jack", "Laura", "Emily", "Paul"), 2)
    return rng.choice(((f"{first} {one}", one), (f"{first} {one}", f"{second} {one}"), (f"{first} {one}", f"{first} {two}"),
                       (one, edited(rng, one, 1)), (one, two), (f"{one} & {two}", one)))  # fmt: skip


def inside_phrase(rng: Random, goods: tuple[str, ...]) -> Pair:
    """Longer names that share a word or two."""
    shared = [word(rng) for _ in range(rng.choice((1, 1, 2)))]
    one = [*shared, word(rng), *([rng.choice(goods)] if rng.random() < 0.5 else [])]
    other = [*shared, *([word(rng)] if rng.random() < 0.6 else []), *([rng.choice(goods)] if rng.random() < 0.5 else [])]
    if rng.random() < 0.4:
        one.reverse()
        other.reverse()
    return " ".join(one), " ".join(other)


def unrelated(rng: Random, goods: tuple[str, ...]) -> Pair:
    return rng.choice(((word(rng), word(rng)), (coined(rng), coined(rng)), (word(rng), coined(rng)),
                       (f"{word(rng)} {word(rng)}", f"{word(rng)} {word(rng)}"), (word(rng), f"{coined(rng)} {word(rng)}")))  # fmt: skip


KINDS: tuple[tuple[Draw, int], ...] = (
    (shared_distinctive, 8), (shared_weak, 8), (house_mark, 5), (generic_added, 6), (compound, 7), (translation, 5),
    (phrase_translated, 4), (alone_or_beside("synonym"), 6), (alone_or_beside("opposite"), 5), (alone_or_beside("idea"), 6),
    (alone_or_beside("sister"), 4), (alone_or_beside("narrower"), 4), (both_words, 6), (coined_edits, 9), (coined_parts, 6),
    (medicine, 6), (coined_word, 7), (clipped, 4), (blended, 5), (homophones, 4),
    (lambda rng, goods: one_letter_apart(rng), 6), (set_phrase, 5), (initials, 4), (reversed_words, 4), (number, 3),
    (small_change, 4), (names_of_people, 5), (inside_phrase, 7), (unrelated, 7),
)  # fmt: skip
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
