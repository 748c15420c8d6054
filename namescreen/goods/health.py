"""Claims of health in names: an illness or a part of the body and what is done for it, and words that promise a cure.
Of food only listed claims are allowed (Regulation (EC) No 1924/2006), of cosmetics none of a cure (Regulation (EU) No
655/2013), and an illness may be treated by medicines alone; from memory (wordlists/curated/health_claims.txt)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from ..lexicon import kinds, lexicon, zipf
from ..tables import open_table
from .body_words import LIMBS, OF_SKIN, have_own_sense, with_figures
from .classification import likely_classes
from .phrases import base_form, goods_words
from .qualities import is_quality, languages_of_praise
from .remedies import are_for_health, are_remedies
from .signs import SIGNS, Listed, listed
from .small_words import ANY_SMALL
from .words import runs

__all__ = ["CLAIMS", "claim", "closed_claims", "counts"]

_PLAIN = frozenset(("cure", "helps", "well"))
_EFFECTS = _PLAIN | {"therapy", "gone", "lift"}
_BODY = frozenset(("organ", "function", "figure"))
_COMPLAINTS = frozenset(("illness", "ailment", "symptom"))
_TREATED = _COMPLAINTS | _BODY
_SAID_FIRST = frozenset(("hint", "figure"))
"""Everyday words first, which only more than a loose effect makes a complaint or a part of the body."""
CLAIMS = _EFFECTS | _COMPLAINTS | {"organ", "function"} | {"remedy", "relief", "rest", "within"}
"""What claims are made of, as the head of the list says."""
_FED = frozenset((5, 29, 30, 31, 32))
"""Classes of what is eaten and drunk."""
_REMEDIES = frozenset((3, 5, 10))
"""Those of what buyers may take for a remedy: cosmetics, medicines and supplements, medical devices."""
_APPLIED = _REMEDIES | {11, 14, 20, 24, 25}
"""With them what is worn, slept on or warms, and is sold as a remedy as well."""
_SCENTED = 4
"""The class of candles, which are sold to soothe."""
SHORTEST, LEAST_AFTER, LINKS = 4, 3, ("", "s", "es", "n", "en", "ens", "i", "e")
"""The fewest letters of what is treated and of what is done for it, in one word; and what stands between."""
_ANYWHERE = "worldwide"
IN_ENGLISH = 2.8
"""Zipf value from which English readers take a word for one of theirs (mage). Ours, not fitted."""


def counts(entry: Listed, sign: str, languages: frozenset[str]) -> bool:
    """Whether a word of claims is read as one: a word of another language that is an English one too, only where its
    language is spoken (`languages`)."""
    if entry.territory == _ANYWHERE or "en" in entry.territory.split():
        return True
    return bool(languages & {*entry.territory.split()}) or not (lexicon().known(sign) or zipf(sign) >= IN_ENGLISH)


def claim(
    signs: Mapping[str, frozenset[str]], words: tuple[str, ...], goods: str, classes: frozenset[int]
) -> tuple[str, str]:
    """What a name claims of goods of some classes, and the words that claim it; ("", "") if nothing. `signs` are its
    words that claims are made of, each with its kinds.

    The claim is "cure and illness" if it is likely to stand in the way: an illness beside an effect, of any goods; an
    illness or a cure beside words for the goods alone; a part of the body beside a plain effect, of what is eaten, put
    on or taken; of cosmetics a complaint of the skin; of what is sold as a remedy any complaint, and any effect on the
    body, unless its words are everyday ones first and the effect a loose one. A loose effect (happy belly) is
    "health", worth a question, of other food."""
    own = _in_other_phrases(signs, words)
    told = {sign: kinds_of for sign, kinds_of in signs.items() if own.isdisjoint(sign.split())}
    remedies = bool(told) and (5 in likely_classes(goods)[:1] or are_remedies(goods))
    if remedies:
        promised = any(of & {"cure", "relief", "rest"} for of in told.values())
        told = with_figures(told) if promised or not have_own_sense(words) else {}
    else:
        cosmetics = 3 in likely_classes(goods)[:1]
        kept = {sign: {"rest"} if cosmetics and sign in OF_SKIN else {"symptom", "rest"} for sign in told}
        told = {sign: kinds_of - kept[sign] for sign, kinds_of in told.items()}
        if classes & _FED and not classes & _REMEDIES:
            told = {sign: kinds_of for sign, kinds_of in told.items() if sign not in LIMBS}
    met = frozenset[str]().union(*told.values())
    if not met & (_TREATED | _SAID_FIRST | {"cure", "relief", "rest", "helps", "well"}):
        return "", ""
    taken = {part for sign in told for part in sign.split()}
    bare = all(word in taken or _says_no_more(word, goods) for word in words)
    pairs = _said_of_each_other(told)
    shown = " ".join(sorted((one for one, of in told.items() if of - {"remedy"}), key=" ".join(words).find))
    outright = any(" " in sign and "cure" in of for sign, of in told.items())  # flat belly, whatever is beside it
    barred = (
        (outright and classes & (_FED | _REMEDIES))
        or _of_any_goods(met, pairs, classes, bare=bare, several=len(words) > 1, goods=goods)
        or (remedies and _of_remedies(met, pairs, bare=bare))
    )
    if barred:
        return "cure and illness", shown
    loose = _BODY & met and _effect_on(pairs, _BODY, _EFFECTS) and classes & _FED
    return ("health", shown) if loose else ("", "")


def _said_of_each_other(told: Mapping[str, frozenset[str]]) -> list[tuple[frozenset[str], frozenset[str]]]:
    """The kinds of each two words of a claim: a word that is both what is treated and an effect says one of them."""
    return [(one, two) for sign, one in told.items() for other, two in told.items() if sign != other]


def _effect_on(
    pairs: list[tuple[frozenset[str], frozenset[str]]], treated: frozenset[str], effects: frozenset[str]
) -> bool:
    return any(one & treated and two & effects for one, two in pairs)


def _of_any_goods(
    met: frozenset[str],
    pairs: list[tuple[frozenset[str], frozenset[str]]],
    classes: frozenset[int],
    *,
    bare: bool,
    several: bool,
    goods: str,
) -> bool:
    """Whether goods that are no remedies are claimed to cure, or to do good to the body."""
    illness, ailment = frozenset(("illness",)), frozenset(("ailment",))
    applied = bool(classes & (_APPLIED | {_SCENTED}))
    if _effect_on(pairs, illness, _EFFECTS) or _effect_on(pairs, ailment, _PLAIN):
        return True
    if _effect_on(pairs, ailment, _EFFECTS if applied else frozenset(("gone",))) and (applied or classes & _FED):
        return True
    if "illness" in met and bare and classes & ((_APPLIED | _FED) if several else _REMEDIES):
        return True
    if "relief" in met and bare and (applied or classes & _FED):
        return True
    told = bool(classes & (_FED | {3, 5})) or (several and 14 in classes) or are_for_health(goods)
    if "cure" in met and bare and told:
        return True
    near = bool(classes & (_FED | _REMEDIES | {20})) or (bare and bool(classes & (_APPLIED - {14})))
    plain = _PLAIN | ({"therapy"} if classes & _REMEDIES else set())
    full = plain | (_EFFECTS if 5 in classes else set())
    if near and (_effect_on(pairs, _BODY - _SAID_FIRST, full) or _effect_on(pairs, _BODY, plain)):
        return True
    if "symptom" in met and _effect_on(pairs, frozenset(("symptom",)), _EFFECTS - {"lift"}):
        return True  # of cosmetics
    functions = frozenset(("function",))
    return bool(classes & (_FED | _REMEDIES)) and _effect_on(pairs, functions, _EFFECTS)


def _of_remedies(
    met: frozenset[str], pairs: list[tuple[frozenset[str], frozenset[str]]], *, bare: bool
) -> bool:
    """Whether goods that are sold as remedies are claimed to be some: they have no word for the body in play, but for
    everyday ones beside a loose effect (Quiet Heart)."""
    return (
        bool(met & {"illness", "relief", "rest"})
        or _effect_on(pairs, _TREATED - _SAID_FIRST, _EFFECTS)
        or _effect_on(pairs, _SAID_FIRST, _EFFECTS - {"lift"})
        or (bare and bool(met & (_COMPLAINTS | {"function", "cure"})))
        or (bare and bool(met & _PLAIN))
        or (bare and _effect_on(pairs, _BODY, frozenset(("remedy",))))
    )


def _says_no_more(word: str, goods: str) -> bool:
    """Whether a word beside a claim is one for the goods, a quality, praise or a small one."""
    return (
        bool(kinds(word) & {"function word", "laudatory", "quality", "number"})
        or word in ANY_SMALL
        or bool(languages_of_praise(word))
        or is_quality(word)
        or any(one.word == base_form(word) for one in goods_words(goods))
    )


def _in_other_phrases(signs: Mapping[str, frozenset[str]], words: tuple[str, ...]) -> set[str]:
    """The words that stand in a set phrase with words of no claim: the blood of blood orange."""
    claims = {part for sign in signs for part in sign.split()}
    known = (run for _, run in runs(words, 3, 2) if lexicon().known(" ".join(run)) and not claims.issuperset(run))
    return {word for run in known for word in run}


@lru_cache(maxsize=1 << 12)
def closed_claims(word: str) -> tuple[tuple[str, str], ...]:
    """The parts of a word, which no list and no dictionary has, that make a claim together, each with its row of the
    list: what is treated and what is done for it (Gelenkwohl), what says that it goes before it (Antirheuma), or a part
    that runs into the name of a remedy (Digestea)."""
    table = open_table(SIGNS)
    if word in table or lexicon().known(word):
        return ()
    best: tuple[tuple[str, str], ...] = ()
    for first, link, last in _divided(word):
        before, after = (str(table.get(part) or "") for part in (first, last))
        one, two = ({entry.kind for entry in listed(row)} for row in (before, after))
        treated = one & _TREATED and two & (_EFFECTS | {"remedy", "within"}) and len(first) >= SHORTEST
        before_it = one & (_PLAIN | {"gone", "therapy"}) and not link and two & _TREATED and len(last) >= SHORTEST
        if treated or before_it or (one & _PLAIN and two & {"remedy"} and len(first) >= SHORTEST):
            best = best if best and not one & _COMPLAINTS else ((first, before), (last, after))
    return best


def _divided(word: str) -> Iterator[tuple[str, str, str]]:
    for at in range(2, len(word) - 1):
        for link in LINKS:
            first, last = word[:at].removesuffix(link), word[at:]
            if word[:at].endswith(link) and len(first) >= LEAST_AFTER - 1 and len(last) >= LEAST_AFTER:
                yield first, link, last
    for at in range(SHORTEST, len(word) - LEAST_AFTER + 1):
        last = word[at:]
        yield from ((word[:at] + last[:shared], "", last) for shared in (1, 2))
        if last.startswith("te"):
            yield f"{word[:at]}ty", "", last  # fertilitea
