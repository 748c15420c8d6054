"""What words of a name say together that none of them says alone: a number and its unit, what goods lack or keep off,
and in what form they have a stuff."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..lexicon import kinds, lexicon
from .classification import likely_classes
from .context import context
from .description import DESCRIBES, Evidence, EvidenceKind, of_kind, says_what_is_kept_away
from .doing import MIXED, OCCASIONS, does
from .judged import WORD, Judged, as_told_nothing
from .kept_off import GONE_AFTER, GONE_BEFORE, GUARDS, KEPT_OFF, LACKING, keep_off, may_lack
from .phrases import base_form
from .quantities import measure, quantity
from .trade_words import is_code, term_for

__all__ = ["DOING", "HOLDS", "as_told", "holds_goods", "say_what_goods_do", "says_what_holds_goods", "told_together"]

AGAINST = frozenset(("anti", "non"))
"""What makes a quality of a word for what happens, before it: anti slip, non stick."""
FORMS = frozenset(
    """
    petal petals leaf leaves root roots seed seeds bark flower flowers blossom blossoms bud buds peel zest oil oils
    extract extracts water butter milk powder dust chip chips shaving shavings wax pulp juice syrup essence infusion
    """.split()
)
"""In what form goods may hold a stuff: rose petal, shea butter."""
AT_LARGE = frozenset(
    "fibre fiber fibres wood leather cloth fabric yarn steel glass stone wool silk cotton wax clay".split()
)
"""Words for a stuff at large, after one that says which: bamboo fibre."""
HAVING = frozenset(
    """
    powered bound lined filled coated covered handled scented flavoured flavored infused based shaped sized edged tipped
    soled topped backed framed trimmed tested rated cut fed style grade made woven dyed printed painted ripened roasted
    dried smoked aged cured baked fired fermented washed pressed brushed poured grown raised finished changing saving
    burning lasting drying cleaning warming cooling
    """.split()
)
"""What makes a quality of the word before it: solar powered, leather bound."""
LANDSCAPE = frozenset(
    """
    dales dale valley valleys hills hill moor moors coast island islands isle bay lake lakes river mountain mountains
    forest peninsula wolds downs fens highlands lowlands islands county region country city
    """.split()
)
"""What a place's name may end in, and stays one."""
SIZES = frozenset(
    "size grosse taille talla taglia maat storlek storrelse rozmiar koko velikost din iso en ansi bs".split()
)
"""What a number or code of a size or standard comes after."""
STATES = frozenset(("noun.state", "noun.phenomenon", "noun.process", "noun.event"))
"""What dictionaries call what may befall goods, after "anti"."""
_OF_ANY = frozenset(("number", "laudatory", "generic head", "quality", "colour"))
TIED = 0.5
"""How plainly a stuff must be said of the goods for its form to be said of them as well; chosen, not fitted."""
DOING = Evidence(0.8, "says together what the goods do", kind=EvidenceKind.PURPOSE, section=DESCRIBES)
"""What a thing and who or what does something with it say; as a use does. Chosen, not fitted."""
HOLDERS = frozenset(
    """
    bag barrel basket bin block bottle bowl box bucket cabinet caddy can canister carton cartridge case cask casket
    chest container crate crock dish dispenser drawer flask folder holder jar jug keg kit pack package packet pail
    pen pot pouch rack roll roller sachet sack set shaker shelf spool stand stick tin tray tub tube urn wallet
    """.split()
)
"""What goods are kept, sold or used in, and how many of them together: after the word for them it says no more of its
own. Ours; common practice, no source."""
HOLDS = Evidence(0.9, "what such goods are kept, sold or used in, or a set of them", kind=EvidenceKind.PURPOSE,
                 section=DESCRIBES)  # fmt: skip
"""What a holder says after the word for the goods. Chosen, not fitted."""
NAMED = 0.9
"""How plainly a word must name the goods for its holder to be theirs."""


def told_together(judged: tuple[Judged, ...], goods: str, words: tuple[str, ...] = ()) -> tuple[Judged, ...]:
    """The words as judged, each by what it says with its neighbours, if that says more; `words` are all of the name,
    small ones among them."""
    told = [*judged]
    for at in _lone_images(judged, goods):
        told[at] = as_told_nothing(told[at])
    for at, found in (*_measures(judged, goods), *_of_pairs(judged, goods), *_gone(judged, goods, words)):
        told[at] = as_told(told[at], found)
    return tuple(told)


def _lone_images(judged: tuple[Judged, ...], goods: str) -> list[int]:
    """The everyday words that stand for a sort of the goods, beside words that neither name these nor are a sort: a
    moon bag is a bag, and a moon stitch none."""
    terms = [term_for(one.word, goods) if one.evidence.kind is EvidenceKind.TERM else None for one in judged]
    images = [at for at, term in enumerate(terms) if term is not None and term.by_image]
    beside = len(judged) > len(images) and not any(one.evidence.names_goods for one in judged)
    return images if beside else []


def _gone(judged: tuple[Judged, ...], goods: str, words: tuple[str, ...]) -> Iterator[tuple[int, Evidence]]:
    """The words for what goods keep off that are said to go: no more moths, moths begone."""
    said = [word for word in words if word != "more"]
    off = {one.word for one in judged if keep_off(one.stands_for, goods)}
    for first, second in pairwise(said):
        if second in off and not {first, base_form(first)}.isdisjoint(GONE_BEFORE):
            yield from ((at, of_kind("quality")) for at, one in enumerate(judged) if one.word in (first, second))
        if first in off and second in GONE_AFTER:
            yield from ((at, of_kind("quality")) for at, one in enumerate(judged) if one.word in (first, second))


def _measures(judged: tuple[Judged, ...], goods: str) -> Iterator[tuple[int, Evidence]]:
    for at, one in enumerate(judged):
        if found := measure(one.word, goods):
            yield at, found


def _of_pairs(judged: tuple[Judged, ...], goods: str) -> Iterator[tuple[int, Evidence]]:
    for at, (first, second) in enumerate(pairwise(judged)):
        amount = quantity(first.word, second.word, goods)
        if amount is not None:
            yield from ((at, amount), (at + 1, amount))
        if say_what_goods_do(first, second, goods):
            yield from ((at, DOING), (at + 1, DOING))
        if holds_goods(first, second):
            yield at + 1, HOLDS
        elif first.meaning and holds_goods(second, first):  # scatola di colori
            yield at, HOLDS
        if _say_a_quality(first, second, goods):
            yield from ((at, of_kind("quality")), (at + 1, of_kind("quality")))
        if first.evidence.kind is EvidenceKind.PLACE and second.word in LANDSCAPE:
            yield at + 1, first.evidence
        if second.word in AT_LARGE and first.evidence.kind in (EvidenceKind.TERM, EvidenceKind.MATERIAL):
            yield at + 1, first.evidence._replace(names_goods=False)
        held = first.evidence.weight >= TIED and first.evidence.kind is not EvidenceKind.PLACE
        if second.word in FORMS and held and set(likely_classes(goods)[:1]) & MIXED:
            yield at + 1, first.evidence._replace(names_goods=False)


def say_what_goods_do(first: Judged, second: Judged, goods: str) -> bool:
    """Whether a thing and who or what does something with it say what goods do (lint lifter)."""
    return any(
        does(one.stands_for, other.stands_for, goods, tie=_tie(one), names_goods=one.evidence.names_goods)
        for one, other in ((first, second), (second, first))
        if not one.coined and (other is second or (other.meaning and other.stands_for in OCCASIONS))  # hora del te
    )


def holds_goods(first: Judged, last: Judged) -> bool:
    """Whether two words are one for the goods, and one for what they are kept, sold or used in (paint box)."""
    named = first.evidence.names_goods and first.evidence.weight >= NAMED
    return named and base_form(last.stands_for) in HOLDERS


def says_what_holds_goods(word: str, goods: str) -> bool:
    """Whether a closed word of dictionaries is the word for the goods and one for what they are kept, sold or used in
    (paintbox): a reader sees both."""
    whole = base_form(word)
    starts = (whole.removesuffix(one) for one in HOLDERS if whole.endswith(one) and lexicon().known(whole))
    found = (context(goods).near.get(one) for one in starts)
    return any(one is not None and one.names_goods and one.weight >= NAMED for one in found)


def _tie(one: Judged) -> EvidenceKind | None:
    """How a word says something of the goods; None if it says nothing, or what may be said of any."""
    other = one.evidence.kind in (EvidenceKind.PLACE, EvidenceKind.SURNAME) or bool(kinds(one.stands_for) & _OF_ANY)
    return one.evidence.kind if one.evidence.weight >= TIED and not other else None


def _say_a_quality(first: Judged, second: Judged, goods: str) -> bool:
    """Whether two words say together what goods lack or keep off, have, or of what size they are."""
    said = f"{first.heard or first.word} {second.heard or second.word}"
    return (
        (not first.coined and says_what_is_kept_away(said, goods))
        or (first.word in AGAINST and "v" in lexicon().bases_by_pos(second.word) and may_lack(second.word, goods))
        or (first.word == "anti" and not second.coined and _is_unwelcome(second, goods))
        or (second.word in HAVING and not first.coined and not _is_image(first.word))
        or (second.word in GUARDS | LACKING and keep_off(first.word, goods))
        or (first.word in SIZES and (second.word.isdecimal() or is_code(second.word)))
    )


def _is_unwelcome(one: Judged, goods: str) -> bool:
    """Whether a word means what goods keep off, or a state or process that they may be against."""
    base = base_form(one.stands_for)
    leading = lexicon().senses(base, "n", labelled=False)[:1]
    state = base not in KEPT_OFF and any(each.domain in STATES for each in leading)
    return state or keep_off(base, goods)


def _is_image(word: str) -> bool:
    """Whether a word is first of all a being or a natural thing, of which that is said in play (fox baked)."""
    senses = lexicon().senses(word, labelled=False)[:1]
    return any(one.domain in ("noun.animal", "noun.person", "noun.object") for one in senses)


def as_told(one: Judged, found: Evidence) -> Judged:
    """A word with the evidence of a quality, if that says more."""
    if found.weight <= one.evidence.weight:
        return one
    asked = [*one.asked]
    asked[WORD.index("tie")], asked[WORD.index("quality")] = found.weight, 1.0
    if asked[WORD.index("coined")]:
        asked[WORD.index("coined")] = asked[WORD.index("in use")] = 0.0
    return one._replace(evidence=found, asked=tuple(asked), own=False, coined=False)
