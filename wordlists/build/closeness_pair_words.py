"""Words to draw pairs of names from: real and coined ones, and what stands beside a word in the lexicon or on a page.

Part of `closeness_pairs`.
"""

from __future__ import annotations

import sys
from functools import cache
from pathlib import Path
from random import Random

from namescreen.lexicon import concreteness, equivalents_in, kinds, lexicon, neighbours, zipf
from namescreen.pronunciation import pronounce
from namescreen.tables import open_table

# Goods, goods close to them, and words that say what they are or what they are for: common knowledge, no source.
_GOODS = """
    coffee / tea: roast brew bean
    beer / cider: ale brew hop
    wine / spirits: vineyard cellar estate
    chocolate / biscuits: cocoa sweet treats
    bread / cakes: bakery oven loaf
    hot sauce / condiments: pepper spice sauce
    pet food / pet toys: paw pet bites
    skin cream / soap: skin glow beauty
    perfume / cosmetics: scent fragrance beauty
    shampoo / hair dye: hair locks salon
    clothing / footwear: wear apparel style
    running shoes / sports clothing: run sport step
    bags / wallets: bag leather carry
    jewellery / watches: gem gold jewel
    furniture / lamps: home interior wood
    mattresses / pillows: sleep bed comfort
    kitchen knives / cookware: blade cook kitchen
    bicycles / bicycle helmets: bike ride cycle
    tents / backpacks: camp trail outdoor
    toys / board games: play kids game
    garden tools / plant pots: garden plant grow
    computer software / computer consulting: soft data tech
    headphones / loudspeakers: audio sound music
    hotel services / restaurant services: hotel inn suites
    restaurant services / catering: grill kitchen cafe
    insurance / banking: trust capital mutual
    dietary supplements / vitamins: vita health care
    protein bars / energy drinks: energy fit power
    laundry detergent / cleaning preparations: clean bright wash
    paint / varnish: colour coat paint
    magazines / books: press weekly news
    candles / room fragrances: candle light wax
    water bottles / lunch boxes: water flask bottle
    fitness training / sports equipment: fit gym training
    fruit juice / soft drinks: juice fruit fresh
"""


def _parsed(line: str) -> tuple[str, str, tuple[str, ...]]:
    goods, _, said = line.strip().partition(": ")
    one, _, close = goods.partition(" / ")
    return one, close, tuple(said.split())


GOODS = tuple(map(_parsed, _GOODS.strip().splitlines()))


FIRST = "bl br c cr d dr f fl g gl h j k l m n p pl qu r s sk st t tr v w z".split()
INNER = "b d f g l m n nd nt p r rt s st t v x z".split()
VOWELS = "a e i o u a e i o ai ea io oo".split()
ENDINGS = "a ex ia ix o on ora um ella ino ity ly ana is en er".split()
RESPELLED = (
    ("c", "k"),
    ("ck", "k"),
    ("s", "z"),
    ("i", "y"),
    ("y", "i"),
    ("ph", "f"),
    ("f", "ph"),
    ("ee", "i"),
    ("oo", "u"),
    ("ight", "ite"),
    ("x", "ks"),
    ("qu", "kw"),
    ("e", ""),
)
LANGUAGES = ("es", "fr", "it", "de")

Pair = tuple[str, str]


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
    found = [
        key
        for key, _ in open_table("wordnet-words.tsv").items()
        if 1 <= key.count(" ") <= 3 and key.replace(" ", "").isalpha()
    ]
    return tuple(key for key in found if all(zipf(word) >= 3.5 for word in key.split()) and zipf(key.split()[-1]) < 5.5)


@cache
def medicines() -> tuple[str, ...]:
    """Names of medicines (Drugs@FDA, public domain), if the list is at hand."""
    path = Path(sys.argv[3]) if len(sys.argv) > 3 else None
    return tuple(path.read_text(encoding="utf-8").split()) if path else ()


def word(rng: Random) -> str:
    """A word for a thing."""
    return rng.choice(words())


def coined(rng: Random) -> str:
    """An invented word."""
    parts = [rng.choice(FIRST) + rng.choice(VOWELS) for _ in range(rng.choice((1, 1, 2)))]
    return "".join(parts) + rng.choice(INNER) + rng.choice(ENDINGS)


def surname(rng: Random) -> str:
    """A surname."""
    return rng.choice(_surnames())


@cache
def _surnames() -> tuple[str, ...]:
    """Surnames that are not too common."""
    return tuple(
        key for key, value in open_table("word_kinds.tsv").items() if "surname" in value and 2.5 < zipf(key) < 4.2
    )


def distinctive(rng: Random) -> str:
    """A word that says nothing of the goods by itself."""
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
    """A word of another language for it."""
    found = [form for form in equivalents_in(one, rng.choice(LANGUAGES)) if form != one]
    return found[0] if found else None


def edited(rng: Random, one: str, times: int) -> str:
    """With letters changed, left out or put in; a vowel for a vowel."""
    for _ in range(times):
        at = rng.randrange(len(one))
        change = "aeiou" if one[at] in "aeiou" else "bdfgklmnprstvz"
        kind = rng.random()
        letter = rng.choice(change)
        one = one[:at] + (
            letter + one[at + 1 :] if kind < 0.65 else one[at + 1 :] if kind < 0.85 else letter + one[at:]
        )
    return one


def respelled(rng: Random, one: str) -> str:
    """Said the same, spelled otherwise."""
    fitting = [pair for pair in RESPELLED if pair[0] in one]
    for old, new in rng.sample(fitting, min(len(fitting), rng.choice((1, 1, 2)))):
        one = one.replace(old, new, 1)
    return one


@cache
def by_length() -> dict[int, tuple[str, ...]]:
    """Words by their length."""
    found: dict[int, list[str]] = {}
    for one in words(2.8, 5.5, things=False):
        found.setdefault(len(one), []).append(one)
    return {length: tuple(those) for length, those in found.items()}


@cache
def by_sound() -> dict[str, tuple[str, ...]]:
    """Words that are said the same."""
    found: dict[str, list[str]] = {}
    for one in words(2.5, 6.0, things=False):
        found.setdefault(pronounce(one, 1)[0].code, []).append(one)
    return {code: tuple(those) for code, those in found.items() if len(those) > 1}


def one_letter_apart(rng: Random) -> Pair | None:
    """Two words that differ in one letter."""
    one = rng.choice(words(2.8, 5.5, things=False))
    near = [other for other in by_length()[len(one)] if sum(map(str.__ne__, one, other)) == 1]
    return (one, rng.choice(near)) if near else None


def idea(rng: Random, one: str) -> str | None:
    """A word that it brings to mind."""
    near = [
        other for other, _ in neighbours(one, limit=12) if one not in other and other not in one and other.isalpha()
    ]
    return rng.choice(near) if near else None


def beside(rng: Random, one: str, change: str | None, *, place: int | None = None) -> Pair | None:
    """A word and what takes its place, the same word beside both."""
    if change is None:
        return None
    first = rng.random() < 0.5 if place is None else not place
    same = distinctive(rng) if rng.random() < 0.5 else word(rng)
    return (f"{one} {same}", f"{change} {same}") if first else (f"{same} {one}", f"{same} {change}")
