"""What a name itself is for the goods, market by market: the finding of the check for distinctiveness."""

from __future__ import annotations

from collections.abc import Iterable

from ..goods.verdicts import FREE, in_most_markets, of_the_markets, only_for_the_union
from ..lexicon import lexicon
from ..outcome import NotChecked
from ..plain_text import clauses, number, some
from ..policy import EVERYWHERE, LIKELY_REFUSED, OWN_CHECK, PLAINLY_DESCRIPTIVE, Finding, Level
from ..text import parse
from .model import Distinctiveness, MarketView, NameEntry

__all__ = [
    "BORDERLINE", "DISTINCTIVE", "NEAR_DESCRIPTIVE", "as_told", "by_market", "depends_on_buyers", "describes",
    "for_the_union_alone", "own_finding", "serious_in",
]  # fmt: skip

DISTINCTIVE = "distinctive"
"""What is said of a name that is inherently distinctive."""
BORDERLINE = "borderline"
"""What is said of a suggestive name near the line to a descriptive one."""
NEAR_DESCRIPTIVE = 0.55
"""Distinctiveness below which a suggestive name is called near the line (chosen, not fitted)."""


def own_finding(entry: NameEntry, part: Distinctiveness) -> Finding:
    """A name of the goods is barred, one that plainly describes them in most markets, and one with a sign kept from
    others: offices refuse these as a rule. Suggestive, arbitrary and fanciful names are inherently distinctive (TMEP
    1209.01): nothing to look into, unless they hold a place. What stands only in the way of an EU mark, not of a
    national one, is minor."""
    shown = as_told(part.called or part.category, entry)
    scored = f"{shown} ({number(part.score)})"
    perhaps = f"; {_may_deceive(part)}" if part.deception else ""
    if for_the_union_alone(part):
        told = f"{shown} as an EU mark only ({number(part.score)})"
        return Finding(OWN_CHECK, Level.MINOR, told, part.score)
    level, reach = Level.NOTHING, 0
    plainly = part.category == "descriptive" and part.score < PLAINLY_DESCRIPTIVE
    if part.category == "descriptive":
        level = Level.SERIOUS if plainly else Level.LOOK
        reach = _reach(part, level)
    bars = part.category == "generic" or (plainly and in_most_markets(part.markets))
    if level is Level.NOTHING and not bars and entry.unread:
        told = f'{scored} if "{entry.unread[0].word}" says nothing of the goods'
        return Finding(OWN_CHECK, Level.MINOR, told, part.score)
    if part.protected and (part.protected[0].serious or not bars):
        first = part.protected[0]
        told = f'"{first.sign}": {clauses(first.why, 150)}'
        if first.serious:  # however distinctive it is, others may not register it
            where, reach = _kept_where(part), len(part.barred_in) or EVERYWHERE
            return Finding(OWN_CHECK, Level.SERIOUS, told, 0.0, True, part.shown, reach, where)
        told = _may_deceive(part) if first.misleads else told + perhaps
        told += f"; {scored}{by_market(entry, part)}" if level > Level.NOTHING else ""
        return Finding(OWN_CHECK, max(level, Level.LOOK), told, part.score, reach=EVERYWHERE)
    if level is Level.NOTHING and not bars and part.places:
        return _on_a_place(part, scored)
    if bars:
        told = scored + by_market(entry, part) + perhaps
        return Finding(OWN_CHECK, Level.SERIOUS, told, part.score, True, LIKELY_REFUSED, _reach(part, Level.SERIOUS))
    label = _unbarred(part) if level is Level.NOTHING else ""
    return Finding(OWN_CHECK, level, scored + by_market(entry, part), part.score, False, label, reach)


def _may_deceive(part: Distinctiveness) -> str:
    """What a name may say of the goods that is not so, in a clause; "" for nothing."""
    told = part.deception
    return f'may deceive: "{told.sign}" {clauses(told.why, 150)}' if told is not None else ""


def _on_a_place(part: Distinctiveness, scored: str) -> Finding:
    """A place in a name asks for a closer look where buyers know it; of one that none of them knows nothing is to be
    feared."""
    places, asked = _quoted(part.places), [one.market for one in of_the_markets(part.markets)]
    known = [one for one in asked if one not in part.strange_in]
    if asked and not known:
        told = f"{scored}; {places} names a place that few buyers of the markets know"
        return Finding(OWN_CHECK, Level.NOTHING, told, part.score, label=DISTINCTIVE)
    where = f" in {some(known)}" if len(known) < len(asked) else ""
    known_so = f"{places} names a place that buyers know{where}"
    told = f"{scored}, but {known_so}: others from there may use it, and it may mislead"
    return Finding(OWN_CHECK, Level.LOOK, told, part.score, reach=len(known) if where else EVERYWHERE)


def _quoted(words: Iterable[str]) -> str:
    return some(f'"{word}"' for word in words)


def as_told(called: str, entry: NameEntry) -> str:
    """What a name is called, as readers are told it: a closed name that no dictionary has is coined, though it is made
    of known words that have nothing to do with the goods."""
    return "a new compound" if called == "arbitrary" and _is_joined(entry) else called


def _is_joined(entry: NameEntry) -> bool:
    written = parse(entry.name).words
    return len(written) == 1 and len(entry.words) > 1 and not lexicon().known(written[0])


def describes(entry: NameEntry) -> bool:
    """Whether a name describes the goods, and is not told apart as a place or a surname."""
    found = entry.distinctiveness
    return not isinstance(found, NotChecked) and found.category == "descriptive" and found.called in ("", "descriptive")


def for_the_union_alone(part: Distinctiveness) -> bool:
    """Whether a name meets a bar as an EU mark, which is judged in every language of the Union, and none in any of the
    markets, where a state of the Union is one of them."""
    barred = part.barred_in if any(one.serious for one in part.protected) else None
    told = bool(part.protected) and barred is None  # a sign that is asked about stands in every market
    return not told and only_for_the_union(part.category, part.markets, barred)


def serious_in(entry: NameEntry, markets: Iterable[str]) -> set[str]:
    """The markets, of those given, in which an office is likely to refuse a name for what it is."""
    part, asked = entry.distinctiveness, set(markets)
    if isinstance(part, NotChecked):
        return set()
    serious = any(one.serious for one in part.protected)
    kept = (set(part.barred_in) or asked) if serious else set()
    plain = (one.market for one in part.markets if one.called not in FREE and _is_plain(one))
    return asked & (kept | set(plain))


def _is_plain(view: MarketView) -> bool:
    return view.called == "generic" or view.score < PLAINLY_DESCRIPTIVE


def _reach(part: Distinctiveness, level: Level) -> int:
    """In how many markets a name is refused at this `level`, or a graver one; `EVERYWHERE` if in all of them."""
    own = of_the_markets(part.markets)
    refused = [one for one in own if one.called not in FREE]
    if level >= Level.SERIOUS:
        refused = [one for one in refused if _is_plain(one)]
    return len(refused) if 0 < len(refused) < len(own) else EVERYWHERE


def by_market(entry: NameEntry, part: Distinctiveness) -> str:
    """In which markets a name is what, where they see it differently, to stand after what it is; "" elsewhere. Where
    it is free only as far as buyers do not understand a word, or know a place, that is said."""
    if not part.differs:
        return ""
    if not any(one.called not in FREE or one.ground in _UNLESS for one in part.markets):
        return ""  # each calls it otherwise, and none bars it
    called: dict[str, list[str]] = {}
    for one in sorted(of_the_markets(part.markets), key=lambda one: one.score):
        called.setdefault(_seen_as(one, entry), []).append(one.market)
    first = called.pop(as_told(part.called or part.category, entry), None)
    free = {what: called.pop(what) for what in (*_UNLESS.values(), _free(entry)) if what in called}
    told = [f" in {some(first)}" if first else ""]
    told += [f"{what} in {some(markets)}" for what, markets in (called | free).items()]
    return "; ".join(told)


_UNLESS = {
    "foreign word": "free only as far as buyers do not understand it",
    "little-known place": "little known as a place",
}
_UNLESS["foreign name"] = _UNLESS["foreign word"]
"""What is said of a market where nothing bars a name unless its buyers know what it says, by the ground there."""


def _seen_as(view: MarketView, entry: NameEntry) -> str:
    return as_told(view.called, entry) if view.called not in FREE else _UNLESS.get(view.ground) or _free(entry)


def _free(entry: NameEntry) -> str:
    """What is said where nothing was found to bar a name: no more than was looked at."""
    if entry.unread:
        return f'no bar found but what "{entry.unread[0].word}" may say'
    partial = any(one.check.startswith(OWN_CHECK) for one in entry.not_checked)
    return "no bar found for what could be read of the goods" if partial else "no bar found"


def depends_on_buyers(part: Distinctiveness, markets: Iterable[str]) -> bool:
    """Whether a name is free in some of the `markets` only as far as buyers there do not understand it, or know it as a
    place."""
    asked = set(markets)
    return any(one.market in asked and one.called in FREE and one.ground in _UNLESS for one in part.markets)


def _kept_where(part: Distinctiveness) -> str:
    """Where the law bars a name, if not in every market; where the law is not known here that is not checked."""
    ask = f", not checked in {some(part.unknown_in)}" if part.unknown_in else ""
    return f"in {some(part.barred_in)}{ask}" if part.barred_in else ""


def _unbarred(part: Distinctiveness) -> str:
    """What is said of a name that is inherently distinctive."""
    near = part.category == "suggestive" and part.score < NEAR_DESCRIPTIVE
    return BORDERLINE if near else DISTINCTIVE
