"""Names that promise what the goods as stated are not: another material, the opposite of what they state, another place
of making (TMEP 1203.02; EUTMR Article 7(1)(g); TMA 1994 s. 3(3)(b))."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache

from ..expressions import expression
from ..lexicon import kinds, lexicon
from ..plain_text import some
from ..tables import open_table
from .absence import FALSE, said_to_lack, states
from .broader import layers_above, leading_senses, names_above, names_of
from .classification import likely_classes
from .context import FOOD_CLASSES
from .description import describe_in_conflict, of_a_kind
from .grounds import grounds_in
from .made_of import made_of
from .materials import is_material
from .phrases import base_form, goods_words, plain_words
from .places import Place, place_of
from .proper_names import is_surname, listed_surname
from .qualities import is_quality
from .set_phrases import LONGEST_NAME, in_known_phrases, in_other_sense, kinds_of_stuff
from .signs import ProtectedSign, with_law
from .wording import in_english
from .words import runs

__all__ = ["misleading"]

MATERIALS_AT_LARGE = frozenset("wood wooden timber cloth fabric textile fibre metal stone paper".split())
"""Words for materials of a sort at large, which no other of the sort contradicts."""
_ONLY_OUTSIDE = "plated coated effect look free substitute style".split()
"""What goods state before or after a word if they do not have what it says, or only look so."""
_PURE = frozenset("solid pure real genuine true fine all massive".split())
_MADE_IN = expression(r"\b(?:in|from) (.+)")
_CONTAINING = expression(r"\bcontaining\b", re.IGNORECASE)
_MIXED = frozenset(("care", "food"))
"""Sorts of stuff of which goods have several in them at once, so that one excludes no other; foods do only where
they are told by something else."""
_NO_THINGS = frozenset(
    f"noun.{one}"
    for one in (
        "act attribute cognition event feeling time state quantity relation possession process motive shape"
    ).split()
)
"""WordNet's fields of what is neither a thing nor a being."""
_OF_FLEECES = frozenset("wool woollen woolen yarn fleece fibre lambswool thread cloth tweed knit felt".split())
"""Stuffs that may be of the hair of any beast."""
_SOLE = frozenset(("fibre", "leather"))
"""Sorts of stuff of which goods are of the one or the other: a bag of cotton is none of leather."""
_CLOTH = frozenset((18, 20, 22, 23, 24, 25, 26, 27))
_HELD_BY = {
    "care": frozenset((3, 5)), "food": frozenset((3, 29, 30, 31, 32, 33)), "fibre": _CLOTH, "leather": _CLOTH,
    "wood": frozenset((15, 16, 19, 20, 21)), "metal": frozenset((6, 8, 14, 21)), "stone": frozenset((14, 19, 21)),
    "clay": frozenset((19, 21)), "wax": frozenset((4,)), "glass": frozenset((11, 14, 21)),
}  # fmt: skip
"""The Nice classes of goods that may be made of a sort of stuff, or hold it, so that buyers care; from memory."""
_COUNTRIES = frozenset(("country", "national capital"))
_SAYING_LITTLE = frozenset(
    ("function word", "laudatory", "quality", "taste", "people", "colour", "company form", "generic head")
)
LONGEST_CLAIM, LEAST_AFTER = 3, 3
"""The most words of a promise that are looked for, and the fewest letters after one with which a word begins."""
_MADE_INSTEAD = frozenset(
    "synthetic nylon plastic polyester acrylic polyamide viscose microfibre polypropylene rayon resin imitation faux "
    "artificial vinyl polyurethane pvc foam hollowfibre melamine paraffin celluloid zirconia".split()
)
"""Stuffs that are made in the place of others."""
_MADE_OF = frozenset(("en", "n", "len", "y", "ly", "ern", "ed", "s", "es"))
"""Endings with which goods say of what stuff they are: oaken, woollen, silken, leathern, beaded."""
OF_ONE_SORT = 120
"""The most senses below one that foods of one sort have in common: berries, not foods."""
_ASK = {
    "material": "the office, and an adviser, with what the goods are made of",
    "misleading": "the office, and an adviser, with what the goods are and where they are made",
}


def misleading(
    words: tuple[str, ...], goods: str, markets: tuple[str, ...] | None, unsure: frozenset[str] = frozenset()
) -> list[ProtectedSign]:
    """What a name says that the goods contradict: serious if the name says nothing else of its own, so that buyers take
    it at its word, or says another country than they come from; else worth a question, as is what any of the words that
    it is `unsure` to say would promise. What it only says and they do not state is asked about: goods as stated are no
    full recipe."""
    opposed = _opposed(words, goods)
    found = {one: ("misleading", what) for one, what, _ in opposed}
    abroad = _elsewhere(words, goods)
    found |= {one: ("misleading", what) for one, what, _ in abroad}
    for word, others in (*_other_materials(words, goods), *_other_foods(words, goods)):
        found.setdefault(word, ("material", f"says that the goods are of {word}, and they state {some(others)}"))
    taken = {part for sign in found for part in sign.split()}
    own = {*words} if "and" in words else in_known_phrases(words)  # silk and tide are a pair, not what is of silk
    sort_of = kinds_of_stuff(words)
    plainly = all(word in taken or _says_little(word, goods) or _is_no_thing(word, own) for word in words)
    lifeless = all(word in taken or _is_lifeless(word, own) for word in words)  # a cashmere cloud is soft as cashmere
    firm = {one for one, _, surely in (*abroad, *opposed) if surely}
    told = []
    for sign, (kind, what) in found.items():
        serious = (plainly and sign not in sort_of) or sign in firm or (
            lifeless and is_material(base_form(sign)) and not _is_stone(sign)
        )
        serious = serious and unsure.isdisjoint(sign.split())
        asked = f"{what}: it would mislead" if serious else f"{what}: would it mislead?"
        told.append(_told(sign, kind, asked, markets, serious=serious))
    if not told and (stuffs := _unstated(words, goods)):
        listed = " and ".join(f'"{one}"' for one in stuffs)
        asked = f"says that there is {listed} in the goods, which do not state it: if there is none, it would mislead"
        told.append(_told(" ".join(stuffs), "material", asked, markets, serious=False))
    if not abroad and (place := _country(words, goods)):
        asked = f"says that the goods come from {place[1].name}: if they do not, it may mislead"
        told.append(_told(place[0], "misleading", asked, markets, serious=False))
    return told


def _told(sign: str, kind: str, asked: str, markets: tuple[str, ...] | None, *, serious: bool) -> ProtectedSign:
    grounds = grounds_in("material", markets)
    return ProtectedSign(sign, kind, "worldwide", serious, with_law(asked, grounds), _ASK[kind], grounds, (), asked)


def _says_little(word: str, goods: str) -> bool:
    """Whether a word beside a promise leaves it as it is: praise, a quality or another adjective, or a word for the
    goods."""
    base, classes = base_form(word), set(likely_classes(goods)[:1])
    return (
        [one.pos for one in lexicon().senses(word, labelled=False)[:1]] == ["a"]
        or bool(kinds(word) & _SAYING_LITTLE)
        or is_quality(word)
        or word in _PURE
        or any(one.word == base for one in goods_words(goods))
        or describe_in_conflict(word, goods).names_goods
        or any(classes & _HELD_BY[one] for one in _stuff_sorts(base) if one in _HELD_BY)
    )


def _stuff_sorts(base: str) -> set[str]:
    return {*(open_table("naming_stuffs.tsv").get(base) or "").split()}


def _is_no_thing(word: str, phrases: set[str]) -> bool:
    """Whether a word beside a promise names no thing or being that this could be said of in play, but an act, a
    measure, a feeling or an idea: cashmere touch promises cashmere, a velvet otter no velvet."""
    senses = lexicon().senses(word, "n", labelled=False)[:1]
    return word not in phrases and bool(senses) and senses[0].domain in _NO_THINGS and place_of(word) is None


def _is_lifeless(word: str, phrases: set[str]) -> bool:
    """Whether a word names weather or a natural thing, of which a stuff is said only in play."""
    senses = lexicon().senses(word, "n", labelled=False)[:1]
    return word not in phrases and any(one.domain in ("noun.object", "noun.phenomenon") for one in senses)


def _other_materials(words: tuple[str, ...], goods: str) -> list[tuple[str, list[str]]]:
    """The materials in a name where the goods state others of the same sort, and not these: oak, for toys of ash."""
    table = open_table("naming_stuffs.tsv")
    said = {one.word: one.head for one in goods_words(goods)}
    food = bool(set(likely_classes(goods)[:1]) & FOOD_CLASSES)
    made = {one.word for one in goods_words(_CONTAINING.split(goods)[0])}  # what else is in them excludes nothing
    stated = {one: table.get(one) for one, head in said.items() if not head and one in made - MATERIALS_AT_LARGE}
    found = []
    other = in_other_sense(words) - kinds_of_stuff(words)
    for word in (base_form(one) for one in words if one not in other):
        sort = table.get(word) if word not in MATERIALS_AT_LARGE and word not in said else None
        sorts = {*(sort or "").split()} - ({"care"} if food else _MIXED)
        sorts |= _SOLE if sorts & _SOLE else set()
        others = [  # woollen goods are of wool
            one for one, of_sort in stated.items() if {*(of_sort or "").split()} & sorts and not one.startswith(word)
        ]
        if _is_fleece(word):
            others = [one for one in others if one not in _OF_FLEECES]
        elif not is_material(word, ("noun.substance", "noun.plant")):
            continue
        found += [(word, others)] if others else []
    return found


@lru_cache(maxsize=1 << 12)
def _is_fleece(word: str) -> bool:
    """Whether a word is an animal or plant and no more, so that of a stuff it says whose it is: merino."""
    domains = {one.domain for one in lexicon().senses(word, labelled=False)}
    return bool(domains) and domains <= {"noun.animal", "noun.plant"}


def _unstated(words: tuple[str, ...], goods: str) -> list[str]:
    """The stuffs that a name holds, of which goods of the class may be or have some in them, and that these do not
    state: argan, of soap."""
    of_class = set(likely_classes(goods)[:1])
    said = {*plain_words(goods), *(one.word for one in goods_words(goods))}
    phrases = in_known_phrases(words) | in_other_sense(words, shades=14 not in of_class)
    lacking = said_to_lack(words)
    found = []
    for word in (one for one in words if one not in phrases):
        base = base_form(word)
        sorts = (open_table("naming_stuffs.tsv").get(base) or "").split()
        held = any(of_class & _HELD_BY[one] for one in sorts if one in _HELD_BY)
        whole = any(lexicon().known(f"{one} {base}") for one in said)  # a coffee bean
        formed = any(one.removeprefix(base) in _MADE_OF for one in said if one != base)  # woollen, of wool
        known = {word, base} & said or whole or formed or base in MATERIALS_AT_LARGE or word in lacking
        if held and not known and not _is_name_first(base):
            found.append(word)
    return found


@lru_cache(maxsize=1 << 12)
def _is_name_first(base: str) -> bool:
    """Whether a word for a stuff is to most a place, a surname or another thing (Holland, Harris, duck)."""
    leading = [sense_id for sense_id, _ in leading_senses(base, 2)]
    stuffs = ("noun.substance", "noun.plant", "noun.food", "noun.artifact")
    if any(lexicon().domain(one) in stuffs for one in leading[:1]) or _is_fleece(base):
        return listed_surname(base)[1] is not None and place_of(base) is not None
    return bool(leading) or place_of(base) is not None or is_surname(base)


def _other_foods(words: tuple[str, ...], goods: str) -> list[tuple[str, list[str]]]:
    """The foods in a name where the goods are stated to be of another of the same sort, and not of these: cherry, for
    jam of plums."""
    if not set(likely_classes(goods)[:1]) & FOOD_CLASSES:
        return []
    said = {one.word: one.head for one in goods_words(goods)}
    found = []
    other = in_other_sense(words)
    for word in (base_form(one) for one in words if base_form(one) not in said and one not in other):
        sorts = _sorts(word)
        others = [one for one, head in said.items() if not head and sorts & _sorts(one)]
        if others:
            found.append((word, others))
    return found


@lru_cache(maxsize=1 << 12)
def _sorts(word: str) -> frozenset[str]:
    """What the leading sense of a food is a kind of, one step up, if that is no sort at large."""
    foods = [sense_id for sense_id, _ in leading_senses(word, 2) if lexicon().domain(sense_id) == "noun.food"][:1]
    above = (up for one in foods for up in lexicon().related_ids(one, "@"))
    return frozenset(up for up in above if lexicon().entry(up).below < OF_ONE_SORT)


@cache
def _claims() -> tuple[tuple[str, frozenset[str], tuple[str, ...]], ...]:
    """The promises: of which goods (food, any, or their word), the words of a name, the words of goods that rule them
    out."""
    rows = (row.split("|") for _, row in open_table("protected_signs.tsv").starting("?"))
    return tuple((of, frozenset(said.split(",")), tuple(ruled.split(","))) for of, said, ruled in rows)


def _opposed(words: tuple[str, ...], goods: str) -> list[tuple[str, str, bool]]:
    """The promises of a name that the goods rule out in so many words, and whether it misleads whatever else the name
    says: the law keeps the promise, or it is a stuff beside one made in its place, said of no being."""
    stated = " | ".join(" ".join(plain_words(one)) for one in dict.fromkeys((goods, in_english(goods).english)))
    text, made = f" {stated} ", made_of(goods)
    food = bool(set(likely_classes(goods)[:1]) & FOOD_CLASSES)
    found: dict[str, tuple[str, bool]] = {}

    def own_words(written: str) -> list[str]:
        return [word for word in words if word not in written.split()]

    for run, written in _promises(words):
        for of, said, ruled in _claims():
            about = of.rstrip("!")
            asked = about == "any" or (food if about == "food" else about in text)
            kept_so = said if said_to_lack((*run.split(), "")) else {run}
            if run in said and asked and not any(f" {one} " in text for one in kept_so):
                other = next((one for one in ruled if states(one, made) and one not in own_words(written)), "")
                if other:
                    played = run == "nature" or any(_is_being(word, gem=_is_stone(run)) for word in own_words(written))
                    kept = of.endswith("!") or " " in run or (other in _MADE_INSTEAD and not played)
                    what = f'promises "{run}", and the goods are stated to be or hold "{other}"'
                    found.setdefault(written, (what, kept))
    taken = {part for run in found for part in run.split()} | said_to_lack(words)
    for word in (base_form(one) for one in words if one not in taken):
        false = next((f"{one} {of}" for of in _stuffs_above(word) for one in FALSE if f" {one} {of} " in text), "")
        outside = next((f"{word} {one}" for one in _ONLY_OUTSIDE if f" {word} {one} " in text), "")
        if false or (outside and set(words) & _PURE and outside not in " ".join(words)):
            found.setdefault(word, (f'promises "{word}", and the goods are "{false or outside}"', False))
    return [(sign, what, kept) for sign, (what, kept) in found.items()]


@lru_cache(maxsize=1 << 12)
def _stuffs_above(word: str) -> tuple[str, ...]:
    """A word and, where it is a stuff before all, what it is a sort of: calfskin, leather."""
    senses = [one for one, _ in leading_senses(word, 1) if lexicon().domain(one) == "noun.substance"]
    return word, *sorted({name for one in senses for name in names_above(one)} - {word})


def _promises(words: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """What the words of a name may promise, with the words that say it: runs of them, but of no set phrase with other
    words (honey badger), and the claims with which a word that no dictionary has begins (Biohof)."""
    taken = in_known_phrases(words)
    for _, each in runs(words, LONGEST_CLAIM):
        if taken.isdisjoint(each) or len(each) > 1:
            yield " ".join(each), " ".join(each)
    kept = [one for of, said, _ in _claims() if of.endswith("!") for one in said if " " not in one]
    for word in words:
        if not lexicon().known(word):
            begun = (one for one in kept if word.startswith(one) and len(word) >= len(one) + LEAST_AFTER)
            yield from ((one, word) for one in begun)


@lru_cache(maxsize=1 << 12)
def _is_being(word: str, *, gem: bool = False) -> bool:
    """Whether a word names first of all a beast, a person or a place, of which a stuff is said in play (a velvet
    otter), and beside a gem a thing of nature (a sapphire moon)."""
    senses = lexicon().senses(word, "n", labelled=False)[:1]
    natural = ("noun.object", "noun.phenomenon") if gem else ()
    return any(one.domain in ("noun.animal", "noun.person", "noun.location", *natural) for one in senses)


def _is_stone(word: str) -> bool:
    return "stone" in _stuff_sorts(base_form(word))


def _places(words: tuple[str, ...]) -> dict[str, Place]:
    """The places of a name, by the words that say them."""
    phrases = in_known_phrases(words)
    free = (" ".join(run) for _, run in runs(words, LONGEST_NAME) if phrases.isdisjoint(run))  # in no Swiss roll
    return {run: place for run in free if (place := place_of(run)) is not None and place.home}


def _country(words: tuple[str, ...], goods: str) -> tuple[str, Place] | None:
    """The country that a name says beside a word of its own, with the word that says it: Swiss meadow; None if it says
    none, or the goods state that they come from there."""
    if all(_says_little(word, goods) for word in words if place_of(word) is None):
        return None  # the place is all it says
    stated = _stated_places(goods)
    told = ((run, place) for run, place in _places(words).items() if _is_country(place) and place not in stated)
    return next(told, None)


@lru_cache(maxsize=1 << 10)
def _is_country(place: Place) -> bool:
    """Whether a place is a state or its capital: what comes from there is known to buyers as such."""
    own = [one for one, _ in leading_senses(place.name.lower().removeprefix("the "), 1)]
    return bool(_COUNTRIES & {name for one in own for name in names_above(one)})


def _elsewhere(words: tuple[str, ...], goods: str) -> list[tuple[str, str, bool]]:
    """The places of a name where the goods are stated to come from another, that is neither in it nor around it; and
    whether each is a country."""
    named = _places(words)
    stated = _stated_places(goods) if named else []
    told = some([one.name for one in stated])
    return [
        (
            run,
            f"says that the goods come from {place.name}, and they are stated to come from {told}",
            _is_country(place),
        )
        for run, place in named.items()
        if stated and not any(_may_be_one(place, one) for one in stated)
    ]


def _stated_places(goods: str) -> list[Place]:
    """The places that goods state they come from: made in Portugal, German cheese; not a kind of goods that is called
    after a place (a Dutch oven, a Panama hat)."""
    said = plain_words(goods)
    after = [_first_place(part) for part in _MADE_IN.findall(" ".join(said))]
    told = [
        place_of(word)
        for at, word in enumerate(said)
        if not any(lexicon().known(f"{word} {base_form(other)}") for other in said[at + 1 : at + 3])
        and not of_a_kind(word, goods)
    ]
    return [one for one in dict.fromkeys((*after, *told)) if one is not None and one.home]


def _first_place(text: str) -> Place | None:
    words = text.split()
    first = (" ".join(words[:size]) for size in range(LONGEST_NAME, 0, -1))
    return next((place for run in first if (place := place_of(run)) is not None), None)


def _may_be_one(one: Place, other: Place) -> bool:
    """Whether one place is, or may be, part of the other: a dictionary must hold both to tell."""
    if one.name == other.name:
        return True
    around, beyond = _around(one.name), _around(other.name)
    return not around or not beyond or bool(around & {other.name.lower()}) or bool(beyond & {one.name.lower()})


@lru_cache(maxsize=1 << 10)
def _around(name: str) -> frozenset[str]:
    """The names of a place and of all that it is part of, in the lexicon; empty if it is not there."""
    own = (sense_id for sense_id, _ in leading_senses(name.lower().removeprefix("the "), 1))
    return frozenset(names_of(one for layer in layers_above(own, "#p", "#m") for one in layer))
