"""What a name of several words rests on: an own word beside words that anyone may use.

A separable word for the goods, a place or a company form takes nothing from a name that has a word of its own; an
office has it disclaimed (TMEP 1213.03, 1213.05; for the EU and the UK such a part is simply not protected)."""

from __future__ import annotations

from typing import NamedTuple

from ..lexicon import kinds, lexicon, name_rank
from .animals import is_animal
from .context import context
from .description import PROVIDER, EvidenceKind, says_what_is_kept_away
from .initials import are_initials
from .judged import Judged, is_acronym
from .materials import is_stuff
from .phrases import base_form, items
from .places import place_meant, place_of
from .proper_names import has_form_of_surname, is_surname
from .qualities import is_quality
from .trade_words import is_code

__all__ = [
    "NO_TIE",
    "Composition",
    "composition",
    "has_coined_word",
    "has_other_own_word",
    "holds_praised_image",
    "is_coined_own",
    "is_name_on_labels",
    "is_own_compound",
    "is_own_name",
    "is_picture",
    "is_surname_alone",
    "is_ware_with_label_words",
    "is_without_tie",
    "may_name_goods",
    "names_goods",
    "only_colours",
    "only_describes",
]

LAST_OF_GOODS = 34
"""The last of the Nice classes of goods; those of services follow."""
NO_TIE = 0.35
"""Evidence below this is no tie to the goods; ours, as the weights in `description`."""
TIED = 0.5
"""Evidence from which a word beside a coined one, a surname or a place is taken to describe."""
STRANGE = 0.6
"""Evidence from which a term that no dictionary has says nothing but that."""
SAID_NEARBY = 0.4
"""Evidence from which a term of several words, which mean little else, is said of the goods."""
IN_THE_GOODS = 0.9
"""Evidence that a word of the list of goods has."""
ANYONES = frozenset(("generic head", "laudatory", "people", "company form"))
KIN = frozenset(
    """
    son sons daughter daughters brother brothers bros sister sisters cousins nephews family grandson grandsons
    granddaughters fils filles freres sohn sohne tochter gebruder bruder familie hijo hijos hijas hermanos hermanas
    figlio figli figlie fratelli sorelle famiglia zoon zonen dochters gebroeders filho filhos irmaos soner brodrene
    sonner synowie bracia rodzina
    """.split()
)
"""Who else is in a business, beside the surname of a house."""
SAID_OF_ANYTHING = frozenset(("quality", "laudatory"))
FREQUENT = 15000
"""Rank among US surnames up to which a surname is taken to be read as one (rarer ones: TMEP 1211.01(a)(v))."""
IMAGES = frozenset(("noun.animal", "noun.plant", "noun.object", "noun.phenomenon", "noun.person"))
"""WordNet's fields of words that are imagery where they have no tie to the goods (otter gloves); words of other fields
often describe in a way that no dictionary tells (travel kettle)."""
SCENES = frozenset(("noun.event", "noun.time", "noun.feeling", "noun.communication", "noun.location", "verb.motion",
                    "verb.weather", "verb.perception", "verb.body", "verb.emotion"))  # fmt: skip
"""Fields of words for what happens, is heard, felt or told, which give a picture too (an ebb, a lullaby): held to be so
only of goods whose labels are known not to have them."""


PICTURES = frozenset(("noun.phenomenon", "noun.plant", "noun.animal", "noun.event", "noun.feeling", "noun.object"))
"""Fields of words that give a picture as the last part of a compound, whatever labels say with them."""
_OF_GOODS = frozenset("care ware wares wear craft gear kit set pack box mix line".split())
"""Last parts that make a word for goods of what stands before them."""


class Composition(NamedTuple):
    """The words that carry a name, and those beside them that anyone in the trade may use: words for the goods, places,
    forms of business. A name without a word of its own is carried by all of its words. `places` are its words for
    places where goods may come from, `rest` all others."""

    carrying: tuple[Judged, ...]
    shared: tuple[Judged, ...]
    places: tuple[Judged, ...]
    rest: tuple[Judged, ...]

    @property
    def says_place_and_goods(self) -> bool:
        """Whether the name holds a place, and besides it only what any seller of such goods may say."""
        return bool(self.places) and all(_is_anyones(one) or _weighs(one) >= TIED for one in self.rest)


def composition(judged: tuple[Judged, ...]) -> Composition:
    """Divide the content words of a name by what they do for it."""
    places = tuple(one for one in judged if is_place(one))
    rest = tuple(one for one in judged if one not in places)
    if any(map(is_coined_own, rest)):
        shared = tuple(one for one in rest if not is_coined_own(one) and (_is_anyones(one) or _weighs(one) >= TIED))
    elif any(_is_image(one) or is_own_name(one) for one in rest):
        pictured = any(map(_is_being, rest)) or (is_without_tie(rest[-1]) and rest[-1].own and _is_image(rest[-1]))
        least = TIED if pictured else IN_THE_GOODS
        shared = tuple(one for one in rest if one.evidence.names_goods or _weighs(one) >= least)
    else:
        return Composition(judged, (), places, rest)
    return Composition(tuple(one for one in rest if one not in shared), (*places, *shared), places, rest)


def is_place(one: Judged) -> bool:
    """Whether a word names a place that goods may come from, or is made from its name, and nothing ties it to the goods
    otherwise."""
    place = place_of(one.word) or (place_meant(one.word, one.meaning.english) if one.meaning else None)
    home = (place is not None and place.home) or one.evidence.kind is EvidenceKind.PLACE
    return home and not one.evidence.names_goods


def is_surname_alone(judged: tuple[Judged, ...], *, frequent: bool = True) -> bool:
    """Whether a name is nothing but a surname that buyers take for one, and words for the goods (TMEP
    1211.01(b)(vi)); a name that few bear is not so taken, unless it is built like one (1211.01(a)), and counts only
    where it need not be `frequent`."""
    names = [one.word for one in judged if is_own_name(one)]
    rest = [one for one in judged if one.word not in names]
    known = all(has_form_of_surname(word) or (name_rank(word) or FREQUENT + 1) <= FREQUENT for word in names)
    return bool(names) and (known or not frequent) and all(_is_anyones(one) or _weighs(one) >= TIED for one in rest)


def names_goods(judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether the words are those by which the goods are called, as heard or as translated (TMEP 1209.01(c)): hot
    sauce, or sauce, for hot sauce."""
    if not judged or not all(one.evidence.names_goods or _weighs(one) >= IN_THE_GOODS for one in judged):
        return False
    said = tuple(base_form(word) for one in judged for word in one.stands_for.split())
    called = (item for item in items(goods) if not item.dealing)
    return any((*item.modifiers, item.head)[-len(said) :] == said for item in called)


def is_name_on_labels(judged: tuple[Judged, ...]) -> bool:
    """Whether a name is just what labels of another language call such goods, or a sort of them (saure Gurken): the
    name of a species is generic as well (TMEP 1209.01(c)(i))."""
    return len(judged) == 1 and judged[0].meaning is not None and judged[0].meaning.said.names_goods


def is_ware_with_label_words(judged: tuple[Judged, ...]) -> bool:
    """Whether a name is a word for the goods and words that labels of such goods say: it describes as a whole (soy
    candle), in whatever language."""
    named = [one.evidence.names_goods for one in judged]
    said = (one.evidence.kind is EvidenceKind.TERM and _weighs(one) >= TIED for one in judged)
    return len(judged) > 1 and any(named) and all(name or label for name, label in zip(named, said, strict=True))


def may_name_goods(judged: tuple[Judged, ...]) -> bool:
    """Whether a name that `names_goods` does not find in the list may still be one of them: not what is put together
    of a word for the goods and another, which says of what kind they are (TMEP 1209.03(d))."""
    made = any(one.meaning and one.meaning.guessed and " " in one.stands_for for one in judged)
    named = (one.evidence.names_goods or _weighs(one) >= IN_THE_GOODS for one in judged)
    return bool(judged) and not made and all(named) and any(one.evidence.names_goods for one in judged)


def only_describes(judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether a name is a quality and what has it, as heard or as translated (soft hands), or a material of the goods:
    it does no more than describe (TMEP 1209.03(d))."""
    if len(judged) == 1 and judged[0].meaning is None and (_is_kind_by_name(judged[0]) or _is_long_term(judged[0])):
        return True
    kept_away = len(judged) == 1 and says_what_is_kept_away(judged[0].stands_for, goods)
    if kept_away or (len(judged) == 1 and " " in judged[0].stands_for and is_quality(judged[0].stands_for)):
        return True  # hand woven, in one word of another language
    if len(judged) == 1:
        return _is_material_or_grade(judged[0]) and (" " not in judged[0].stands_for or is_code(judged[0].word))
    qualities = [is_quality(one.stands_for) for one in judged]
    if any(quality and _names_image(one.stands_for) for quality, one in zip(qualities, judged, strict=True)):
        return False  # a gentle giant is someone, however large
    tied = all(quality or _weighs(one) >= TIED for quality, one in zip(qualities, judged, strict=True))
    return tied and any(qualities)


def _is_kind_by_name(one: Judged) -> bool:
    """Whether a word before the name of the goods is a kind of them, by a dictionary or lists of goods, or says what
    they are for."""
    return one.evidence.kind in (EvidenceKind.SORT, EvidenceKind.PURPOSE) and _weighs(one) >= TIED


def _is_long_term(one: Judged) -> bool:
    """Whether several words are one term that labels of such goods or near ones say (freshly ground), no picture."""
    said = one.evidence.kind is EvidenceKind.TERM and _weighs(one) >= SAID_NEARBY
    return said and " " in one.stands_for and not is_picture(one.stands_for)


def _is_material_or_grade(one: Judged) -> bool:
    """Whether a word is a material of the goods, or one that labels of the like say; also a letter, figure or code that
    is a size or grade of them."""
    code = len(one.word) == 1 or not one.word.isalpha() or is_acronym(one.word) or are_initials(one.word)
    said = one.evidence.kind is EvidenceKind.TERM and _weighs(one) >= TIED
    known = lexicon().known(one.word) or bool(kinds(one.word))
    strange = one.meaning is None and not known and _weighs(one) >= STRANGE
    stuff = is_stuff(base_form(one.stands_for))
    return (said and (code or strange or stuff)) or one.evidence.kind is EvidenceKind.MATERIAL


def only_colours(judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether a name is nothing but colours, by the leading sense of each (brown, not ruby), which buyers read as the
    colour of a thing; services have none."""
    colours = ("colour" in kinds(one.stands_for) and _is_colour_first(one.stands_for) for one in judged)
    return bool(judged) and all(colours) and max(context(goods).classes[:1], default=1) <= LAST_OF_GOODS


def _is_colour_first(word: str) -> bool:
    first = lexicon().senses(word, labelled=False)[:1]
    return bool(first) and first[0].domain in ("noun.attribute", "adj.all")


def holds_praised_image(judged: tuple[Judged, ...]) -> bool:
    """Whether a name is a quality or praise, and a noun that it is said of, which tells nothing of the goods: a gentle
    giant, a grand anvil. A word that is both is the noun where it ends an English name: extra large is no extra."""
    said = [one for one in judged if kinds(one.stands_for) & SAID_OF_ANYTHING]
    may_be = (one for one in judged if one not in said or one is judged[-1] or one.meaning)
    nouns = [one for one in may_be if _is_noun_without_tie(one)]
    return len(judged) > 1 and bool(nouns) and all(one in said or one in nouns for one in judged)


def _is_noun_without_tie(one: Judged) -> bool:
    domains = {sense.domain for sense in lexicon().senses(one.stands_for, labelled=False)[:2]}
    if one.coined or not (kinds(one.stands_for) & SAID_OF_ANYTHING or is_without_tie(one)):
        return False
    return bool(domains & (IMAGES if kinds(one.stands_for) & SAID_OF_ANYTHING else IMAGES | {"noun.artifact"}))


def is_own_compound(name_words: tuple[str, ...], judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether a name is a closed compound that no dictionary has, and whose last part is another thing than the goods,
    their parts or their making: a rope whistle is no lead, and willow, light and song are no goods of a maker.

    A compound is a kind of what its last part names (Marchand 1969); who does it, and care and wear for goods, are such
    parts too."""
    if len(name_words) != 1 or len(judged) < 2 or any(one.meaning or one.heard for one in judged):
        return False
    last = judged[-1]
    senses = lexicon().senses(last.word, labelled=False)
    told = last.evidence
    if not senses or told.names_goods or last.word in _OF_GOODS:
        return False
    if senses[0].pos == "a":
        return not told.is_told
    loose = told.kind in (EvidenceKind.LOOSE, EvidenceKind.ASSOCIATED)
    if not told.is_told or told.weight < TIED or loose:
        return not _is_who_does(base_form(last.word)) and not kinds(last.word) & (ANYONES | SAID_OF_ANYTHING)
    fields = PICTURES if not context(goods).food else PICTURES - {"noun.plant", "noun.animal"}
    return told.weight < IN_THE_GOODS and senses[0].domain in fields


def _is_who_does(word: str) -> bool:
    """Whether a word names who or what does what its verb says: a watcher, a blocker, no whisper."""
    stems = (word[:-2], word[:-1], word[:-3]) if word.endswith(("er", "or")) else ()
    return any(lexicon().senses(stem, "v") for stem in stems)


def has_coined_word(judged: tuple[Judged, ...]) -> bool:
    """Whether a word of the name is coined, and says nothing of the goods, or no more than a part of it hints at."""
    return any(map(is_coined_own, judged))


def has_other_own_word(judged: tuple[Judged, ...], words: tuple[str, ...]) -> bool:
    """Whether a word that carries the name, besides these `words`, is one that tells nothing of the goods."""
    others = [one for one in composition(judged).carrying if one.word not in words]
    return any(is_coined_own(one) or is_own_name(one) or (is_without_tie(one) and not is_place(one)) for one in others)


def is_without_tie(one: Judged) -> bool:
    """Whether nothing was found that a word tells of the goods, nor any kind that the law treats apart."""
    return not one.evidence.is_told and not is_surname(one.word) and len(one.word) > 1


def is_own_name(one: Judged) -> bool:
    """A surname, where it is judged as registrable."""
    return is_surname(one.word) and _weighs(one) < NO_TIE


def _weighs(one: Judged) -> float:
    return one.evidence.weight


def _is_anyones(one: Judged) -> bool:
    return one.evidence.names_goods or bool(kinds(one.word) & ANYONES) or one.word in KIN


def is_coined_own(one: Judged) -> bool:
    """Whether a word is in no dictionary, and says nothing of the goods, or no more than a part of it hints at."""
    own = _weighs(one) < NO_TIE or one.evidence.hint
    return one.coined and own and len(one.word) > 1


def is_picture(phrase: str) -> bool:
    """Whether a phrase of the lexicon is first of all someone, a natural thing, or what happens or is felt."""
    senses = lexicon().senses(phrase, labelled=False)[:1]
    return any(one.domain in IMAGES | SCENES for one in senses)


def _names_image(word: str) -> bool:
    """Whether a word is a noun before all, for a being or a natural thing."""
    senses = lexicon().senses(word, labelled=False)
    return bool(senses) and senses[0].domain in IMAGES


def _is_being(one: Judged) -> bool:
    """Whether a word that tells nothing of the goods is an animal first of all: what is said of it is said of the
    animal (a sleeping otter on bags)."""
    return is_animal(one.stands_for) and is_without_tie(one)


def _is_image(one: Judged) -> bool:
    """A word that only gives a picture: an animal, a plant, a natural thing, a place where nobody makes anything."""
    meant = one.meaning.english if one.meaning else one.word
    if _weighs(one) >= PROVIDER and not one.own:
        return False
    if kinds(meant) & {"quality", "colour", "number", "taste", "people", "laudatory"}:
        return False
    place = place_of(meant)
    senses = lexicon().senses(meant, labelled=False)
    pictures = any(sense.domain in IMAGES for sense in senses[:2])
    scene = one.own and any(sense.domain in SCENES for sense in senses[:1])
    return (place is not None and not place.home) or pictures or scene
