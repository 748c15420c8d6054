"""Where one reading of a name stands on the continuum: by the words that carry it, within what its reasons allow."""

from __future__ import annotations

from ..lexicon import kinds, lexicon
from ..lexicon.phrases import is_saying
from .broader import is_part_of, names_above
from .composition import (
    SAID_OF_ANYTHING,
    composition,
    has_coined_word,
    holds_praised_image,
    is_name_on_labels,
    is_own_compound,
    is_own_name,
    is_ware_with_label_words,
    is_without_tie,
    may_name_goods,
    names_goods,
    only_colours,
    only_describes,
)
from .context import context
from .continuum import CATEGORIES, chances, inherent, score
from .description import EvidenceKind, describe
from .evidence import values
from .findings import LanguageFinding, Whole
from .firms import is_firm_word
from .judged import Judged
from .phrases import base_form, items, plain_words
from .places import place_of
from .signs import ORIGIN, ProtectedSign
from .trade_words import term_for

__all__ = [
    "BARRED_SCORE", "NO_CONTENT_WORD", "SAYING", "SAYINGS", "bounded", "category_of", "chances_of", "finding_of",
    "is_geographic",
]  # fmt: skip

NOTHING_OWN = 0.1
"""The score of a name without a word that could identify anyone."""
TRANSLATED_LINE = 0.25
"""The chance of being inherently distinctive below which a translated name counts as descriptive or generic, lower than
in English: a word has many meanings, and the one that fits the goods is chosen. Not where the meaning is `PLAIN`."""
PLAIN, ON_LABELS = 0.8, 0.75
"""How plainly a meaning describes the goods where no other is weighed against it; of what labels of such goods say,
which is no choice among the senses of a dictionary, less is enough."""
FAINT = 0.6
"""How plainly a word tells of the goods below which it only hints at them, beside others that do no more: of what
labels of a ware of another sort say at most. Ours, not fitted."""
BROUGHT = 0.4
"""How much a word that brings the goods to mind tells of them from which it is more than a hint. Ours, not fitted."""
CLEAR = frozenset((EvidenceKind.MATERIAL, EvidenceKind.PLACE, EvidenceKind.SURNAME, EvidenceKind.PURPOSE))
"""Kinds of evidence that describe however little they weigh."""
NO_FOOD = frozenset(f"noun.{one}" for one in ("artifact", "object", "phenomenon"))
"""WordNet's fields of things that nobody eats."""
GENERIC_SCORE = 0.05
"""The most that the name of the goods themselves scores."""
SAID_OF_GOODS = 0.5
"""Evidence from which a saying as a whole, or a word by its reason, is about the goods."""
OWN_SCORE = 0.6
"""The least that a name scores whose words leave it a place among the registrable ones."""
BARRED_SCORE = 0.3
"""The most that a name scores where being a surname or a place bars it: buyers may learn such a name more easily than a
description."""
THINGS = frozenset(f"noun.{one}" for one in ("artifact", "animal", "plant", "object", "phenomenon", "food"))
SAID = frozenset(("noun.communication", "noun.cognition", "noun.feeling"))
SAID_IF_OWN = frozenset(("noun.act", "noun.possession", "verb.communication", "verb.social", "verb.cognition"))
"""WordNet's fields of things, of what is said, thought or felt, and of what is so only where the labels of the goods
are known and lack the word."""
SETTINGS = frozenset(("structure", "room", "area", "facility", "vehicle", "covering", "fabric", "material"))
"""Kinds of thing in or on which goods are used, or of which they are made."""
HOLDING = frozenset(
    """
    bag box case pouch holder stand rack hook strap cover sleeve shelf basket hanger mat cloth brush cleaner oil polish
    wrap tray jar bottle tin pot sack bin tool kit set machine tag label string stick pin clip food feed treat seed
    sauce juice
""".split()
)
"""Goods that are for other things, or of them, which the word before says. Both ours; common practice, no source."""
_SAID_OF = frozenset((EvidenceKind.TERM, EvidenceKind.MATERIAL, EvidenceKind.PURPOSE))
RANGES = {"generic": (0.0, 0.1), "descriptive": (0.0, 0.45), "suggestive": (0.4, 0.65), "arbitrary": (0.65, 1.0),
          "fanciful": (0.65, 1.0)}  # fmt: skip
"""Between which scores a name of each category lies, so that one does not contradict the other: the likeliest category
is not always where the mean of all is."""
SAYING, SAYINGS = "the whole is a set saying, with a sense of its own beside what its words say", "1213.05(c)"
NO_CONTENT_WORD = "it holds nothing but small words, company forms or domain endings"


def chances_of(name: str, judged: tuple[Judged, ...]) -> tuple[float, ...]:
    """How likely each category is, by the words that carry the name; a word that is not coined is not fanciful."""
    if not judged:
        return (0.0, 1 - NOTHING_OWN, NOTHING_OWN, 0.0, 0.0)
    parts = composition(judged)
    found = chances(values(parts.carrying, " ".join(one.word for one in parts.carrying) if parts.shared else name))
    if any(one.coined for one in parts.carrying):
        return found
    return (*(chance / (1 - found[4]) for chance in found[:4]), 0.0)


def category_of(chances: tuple[float, ...], line: float = 0.5) -> str:
    """The likeliest category on its side of the line between registrable and not."""
    side = range(2, 5) if inherent(chances) > line else range(2)
    return CATEGORIES[max(side, key=chances.__getitem__)]


def is_geographic(judged: tuple[Judged, ...], signs: tuple[ProtectedSign, ...]) -> bool:
    """Whether a name says where goods come from, or holds a name of origin, and nothing else that could identify a
    maker; a word that is kept for someone (Olympic) says something else."""
    serious = [(_tells_origin(one), set(one.sign.split())) for one in signs if one.serious]
    parts = composition(judged)
    words = {part for one in parts.carrying for part in one.word.split()}
    if any(origin and words <= sign for origin, sign in serious):
        return True
    if parts.shared or not parts.places or any(not origin and words & sign for origin, sign in serious):
        return False
    rest = " ".join(one.word for one in parts.rest)
    return parts.says_place_and_goods or inherent(chances(values(parts.rest, rest))) <= 0.5


def _tells_origin(one: ProtectedSign) -> bool:
    """Whether a sign is a name of origin, or a place that evokes one: a word made like such a name is no place."""
    return one.kind in ORIGIN or (one.kind == "evocation" and place_of(one.sign) is not None)


def bounded(judged: tuple[Judged, ...], category: str, points: float) -> tuple[str, float]:
    """The category and the score within what the reasons told allow: a name with a coined word of its own is not
    descriptive as a whole, nor is one whose every word has no tie to the goods."""
    if not judged or category in CATEGORIES[3:]:
        return category, points
    if category == "suggestive" and all(is_without_tie(one) or is_own_name(one) for one in judged):
        return "arbitrary", max(points, RANGES["arbitrary"][0])  # it suggests nothing
    if category == "suggestive" and _is_coloured_image(judged):
        return "arbitrary", max(points, RANGES["arbitrary"][0])
    free = [one for one in judged if is_without_tie(one) or is_own_name(one)]
    counted = [one for one in judged if one not in free and kinds(one.word) & {"number"}]
    without = bool(free) and len(free) + len(counted) == len(judged)  # three sheets to the wind
    if has_coined_word(judged) or holds_praised_image(judged) or without or _has_own_word_for_goods(judged):
        return "suggestive" if category in CATEGORIES[:2] else category, max(points, OWN_SCORE)
    return category, points


def _is_coloured_image(judged: tuple[Judged, ...]) -> bool:
    """Whether a name is a colour before a word without any tie to the goods: the colour is that of the image."""
    *before, last = judged
    seen = all("colour" in kinds(one.word) and one.evidence.kind is EvidenceKind.OTHER for one in before)
    return bool(before) and seen and is_without_tie(last) and not last.coined and last.meaning is None


def _has_own_word_for_goods(judged: tuple[Judged, ...]) -> bool:
    """Whether a name is words for the goods beside a noun or verb that nothing ties to them, and that does not say what
    they hold, where they are used or by whom: an anvil, on knives, and no anvil bags, library lamps or lawyer mugs."""
    own = [one for one in judged if one.meaning is None and not one.coined and is_without_tie(one)]
    rest = [one for one in judged if one not in own]
    if not own or not rest or not all(one.evidence.names_goods for one in rest):
        return False
    holds = any(base_form(one.word) in HOLDING for one in rest)
    return all(_is_free_of_goods(one, holds=holds) for one in own)


def _is_free_of_goods(one: Judged, *, holds: bool) -> bool:
    """Whether the leading sense of a word without a tie to goods is of a thing that they are neither for nor used in,
    or of what is said, thought or felt."""
    senses = lexicon().senses(one.word, labelled=False)[:1]
    if not senses or kinds(one.word):
        return False
    domain = senses[0].domain
    thing = domain in THINGS and not holds and SETTINGS.isdisjoint(names_above(senses[0].id))
    return thing or domain in SAID or (one.own and domain in SAID_IF_OWN)


def _has_two_senses(name: str, goods: str, judged: tuple[Judged, ...]) -> bool:
    """Whether a name is a saying whose own sense is not about the goods: with what its words say of them it has two
    (a double entendre, TMEP 1213.05(c)): forty winks, on pillows; so has an entry of a dictionary of which no word has
    more to do with the goods than praise, a quality or a place has with any: royal flush, French leave."""
    saying = " ".join(plain_words(name))
    own = any(map(is_without_tie, judged)) and all(is_without_tie(one) or _says_it_of_anything(one) for one in judged)
    entry = own and len(judged) > 1 and lexicon().known(saying)
    whole = is_saying(saying) or entry
    return whole and describe(saying, goods).weight < SAID_OF_GOODS and not names_goods(judged, goods)


def _says_it_of_anything(one: Judged) -> bool:
    return bool(kinds(one.word) & SAID_OF_ANYTHING) or place_of(one.word) is not None


def _is_loosely_tied(judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether all that ties a name to the goods is a loose relation, and to none as a part of them, or, beside a word
    without a tie, what the others bring to mind: that takes a thought more than a description (TMEP 1209.01(a))."""
    told = [one.evidence for one in judged if one.evidence.is_told]
    loose = (EvidenceKind.LOOSE, EvidenceKind.ASSOCIATED) if len(told) < len(judged) else (EvidenceKind.LOOSE,)
    if not told or any(one.kind not in loose for one in told):
        return False
    heads = {item.head for item in items(goods)}
    return len(told) < len(judged) or not any(is_part_of(one.word, heads) for one in judged)


def _is_faintly_tied(judged: tuple[Judged, ...], goods: str) -> bool:
    """Whether a name is several words none of which says more of the goods than labels of another ware do, or words for
    a business: two hints are no description, as the phrase says nothing of the goods (a larder rocket)."""
    things = [one for one in judged if _is_thing_first(one, goods)]
    others = [one for one in judged if one not in things and not (things and is_firm_word(one.word, goods))]
    return len(judged) > 1 and all(map(_is_faint, others))


def _is_faint(one: Judged) -> bool:
    told = one.evidence
    if told.names_goods or told.kind in CLEAR or one.word.isdecimal():
        return False
    close = told.kind is EvidenceKind.ASSOCIATED and told.weight >= BROUGHT
    return told.weight < FAINT and not close


def _is_thing_first(one: Judged, goods: str) -> bool:
    """Whether a word that may be a food of the kind of the goods is first of all another thing (a rocket)."""
    term = term_for(one.word, goods) if one.evidence.kind is EvidenceKind.TERM and one.meaning is None else None
    senses = lexicon().senses(one.word, labelled=False)[:1]
    thing = context(goods).food and any(each.domain in NO_FOOD for each in senses)
    return thing and term is not None and not term.of_labels and not term.names_goods


def _is_plain(one: Judged) -> bool:
    """Whether the evidence of a word is so plain that no other meaning counts beside it."""
    return one.evidence.weight >= (ON_LABELS if one.evidence.kind is EvidenceKind.TERM else PLAIN)


def _is_said_of_goods(one: Judged) -> bool:
    """Whether the reason told of a word is that it names the goods, what they are made of or for, or a term said of
    them."""
    told = one.evidence
    return told.weight >= SAID_OF_GOODS and (told.names_goods or told.kind in _SAID_OF)


def finding_of(
    language: str,
    name: str,
    goods: str,
    judged: tuple[Judged, ...],
    plain: tuple[Judged, ...],
    signs: tuple[ProtectedSign, ...],
    *,
    american: bool,
) -> LanguageFinding:
    """How readers of one language take the name: as translated as far as that is sure, and else as it stands."""
    found = chances_of(name, judged)
    translated = [one for one in judged if one.meaning is not None]
    sure = min((one.meaning.sure for one in translated if one.meaning), default=1.0)
    if translated:
        as_it_stands = chances_of(name, plain)
        found = tuple(sure * a + (1 - sure) * b for a, b in zip(found, as_it_stands, strict=True))
    strongest = max(translated or judged, key=lambda one: one.evidence.weight, default=None)
    plainly = all(_is_plain(one) for one in judged)
    category, points = category_of(found, 0.5 if plainly or not translated else TRANSLATED_LINE), score(found)
    derived = any(one.meaning and one.meaning.about for one in judged)
    if not derived and (names_goods(judged, goods) or is_name_on_labels(judged)):
        category, points = "generic", GENERIC_SCORE if any(one.heard for one in judged) else min(points, GENERIC_SCORE)
    elif category == "generic" and (derived or not may_name_goods(judged)):
        category = "descriptive"  # only a name of the goods is generic, and no kind of them by its quality
    elif category not in CATEGORIES[:2] and (is_geographic(judged, signs) or only_colours(judged, goods)
                                             or ((translated or len(judged) == 1) and only_describes(judged, goods))
                                             or is_ware_with_label_words(judged)):  # fmt: skip
        category, points = "descriptive", min(points, BARRED_SCORE)
    category, points = bounded(judged, category, points)
    if category == "arbitrary" and judged and all(map(_is_said_of_goods, judged)):
        category, points = "suggestive", RANGES["suggestive"][1]  # an arbitrary word has nothing to do with the goods
    why, whole = strongest.reason(american=american) if strongest else NO_CONTENT_WORD, Whole.NOTHING
    own = category in CATEGORIES[:2] and is_own_compound(plain_words(name), judged, goods)
    loose = _is_faintly_tied(judged, goods) or (not translated and _is_loosely_tied(judged, goods))
    if own or (category in CATEGORIES[:2] and loose):
        category, points = "suggestive", OWN_SCORE
    tied = category in CATEGORIES[:2] or any(one.evidence.is_told for one in judged)
    if tied and not translated and _has_two_senses(name, goods, judged):
        why, whole = SAYING, Whole.SAYING
        category, points = ("suggestive", OWN_SCORE) if category in CATEGORIES[:2] else (category, points)
    least, most = RANGES[category]
    points = min(max(points, least), most)
    return LanguageFinding(
        language,
        category,
        round(points, 4),
        strongest.word if strongest else "",
        strongest.meaning.english if strongest and strongest.meaning else "",
        why,
        round(sure, 4),
        whole,
    )
