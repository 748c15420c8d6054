"""The question for the adviser on what a name itself is for the goods: kept for others, descriptive, a surname, a
place."""

from __future__ import annotations

from ..outcome import NotChecked
from ..plain_text import clauses, in_one_sentence, shorten, some
from .model import Distinctiveness, NameEntry
from .own_findings import NEAR_DESCRIPTIVE, for_the_union_alone

__all__ = ["by_item", "on_distinctiveness"]


def on_distinctiveness(entry: NameEntry) -> list[str]:
    """The question that the name raises for what it is, the gravest; [] for none."""
    found = entry.distinctiveness
    name, goods = shorten(entry.name, 60), "these goods"
    if not isinstance(found, NotChecked) and for_the_union_alone(found):
        what = f'what it holds ("{found.protected[0].sign}")' if found.protected else f"being {found.shown}"
        return [
            f"{name} may be refused as an EU mark for {what} in a language of the Union that no market of ours has: is "
            "a national mark in each market the better way?"
        ]
    if isinstance(found, NotChecked):
        return [_on_what_was_not_judged(name, goods, one.told) for one in entry.unread[:1]]
    if found.protected:
        first = found.protected[0]
        told, asked = clauses(first.reason, 120), f"may it be used for {goods} at all?"
        if not first.serious:  # the law is part of the question
            told, asked = clauses(first.reason, 420), f"may it be used for {goods}, and would it mislead?"
        elif first.misleads:
            told, laws = clauses(first.why, 200), clauses("; ".join(found.laws), 300)
            asked = (
                f"is that so, or would it be refused, or struck later, as deceptive ({laws})? No use cures it; goods "
                "that are what it says would."
            )
        return [f'{name} holds "{first.sign}" ({told}): {asked} Ask also {clauses(first.ask, 120)}.']
    goods = _barred_goods(found) or goods
    reasons = in_one_sentence(found.reasons)
    because = f" ({clauses(reasons, 160)})" if reasons else ""
    if found.category == "generic":
        what = f"the name of {goods}" if found.by_item else "the name of the goods themselves"
        return [
            f"{name} reads as {what}{because}: could any form of it be protected at all?{_rest_of_the_goods(found)}"
        ]
    if found.called == "surname":
        where = some(one.market for one in found.markets if one.called == "surname") or "a market of ours"
        return [
            f"{name} reads as a surname: would it be refused in {where} until buyers know it as a mark? And is it your "
            "own name, or that of a living person who would have to agree?"
        ]
    if found.called == "geographic":
        laws = _laws_on_places(found)
        return [
            f"{name} reads as where {goods} come from{because}: do they? If so, would it be refused until buyers know "
            f"it as a mark; if not, would it mislead{f' ({laws})' if laws else ''}?"
        ]
    if found.category == "descriptive":
        apart = [one.market for one in found.markets if one.called == "descriptive" and one.market != "EU"]
        where = f" in {some(apart)}" if found.differs and apart else ""
        american = not found.markets or "US" in (apart or ["US"])
        disclaimer = ", or in US with a disclaimer of the words" if american else ""
        return [
            f"{name} reads as describing {goods}{because}: would it be refused{where} until buyers know it as a mark, "
            f"or taken in another form{disclaimer}?{_rest_of_the_goods(found)}"
        ]
    if entry.unread:
        return [_on_what_was_not_judged(name, goods, entry.unread[0].told)]
    if found.places:
        return [_on_a_place(name, goods, found)]
    if found.category == "suggestive" and found.score < NEAR_DESCRIPTIVE:
        return [
            f"{name} lies near the line between suggesting and describing{because}: on which side would the "
            "office put it?"
        ]
    return []


def _rest_of_the_goods(found: Distinctiveness) -> str:
    barred = all(one.called in BARRING for one in found.by_item)
    return "" if barred else " A refusal covers these goods alone: can it be filed for the rest?"


def _barred_goods(found: Distinctiveness) -> str:
    """The goods for which a name is as barred as it is at worst, where it is not so for all; "" else."""
    return some(f'"{shorten(one.goods, 50)}"' for one in found.by_item if one.called == found.shown)


def by_item(found: Distinctiveness) -> str:
    """What a name is for which of the goods, as a clause; "" where it is the same for all."""
    called: dict[str, list[str]] = {}
    for one in found.by_item:
        called.setdefault(one.called, []).append(f'"{shorten(one.goods, 50)}"')
    return "; ".join(f"{what} for {some(goods)}" for what, goods in called.items())


BARRING = ("generic", "descriptive")
"""What a name is called that an office refuses for goods."""
_PLACES = {
    "US": "US: disclaimed if it describes, refused if buyers choose the goods for a place that they do not come from: "
    "15 USC 1052(e)(2), (3), 1056",
    "GB": "GB: TMA 1994, section 3(1)(c), 3(3)(b)",
    "DE": "DE: MarkenG, section 8(2) nos. 2 and 4",
    "FR": "FR: CPI, article L711-2 nos. 3 and 8",
    "EU": "EU: EUTMR, article 7(1)(c), (g), (j)",
}
"""The law on a place in a name, by market, from memory."""


def _laws_on_places(found: Distinctiveness) -> str:
    known = (one for one in found.markets if one.market not in found.strange_in)
    laws = (_PLACES.get(one.market) or (f"{one.market}: {one.law}" if one.law else "") for one in known)
    return "; ".join(filter(None, laws))


def _on_a_place(name: str, goods: str, found: Distinctiveness) -> str:
    """The question on a word of a name that says where goods come from."""
    places = some(f'"{place}"' for place in found.places)
    laws = _laws_on_places(found)
    return (
        f"{name} holds {places}, a place: do {goods} come from there? If they do not, would it mislead buyers, and if "
        "they do, is only the rest protected? Is a product of that place protected by name, which it may evoke"
        f"{f' ({laws})' if laws else ''}?"
    )


def _on_what_was_not_judged(name: str, goods: str, because: str) -> str:
    why = clauses(in_one_sentence([because]), 160)
    return (
        f"What {name} says of {goods} could not be judged ({why}): does it name or describe them, or say where they "
        "come from, in a language of the markets, and would it then be refused?"
    )
