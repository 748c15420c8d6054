"""Claims of health in names: an illness or a part of the body and what is done for it, and words that promise a cure.
Of food only listed claims are allowed (Regulation (EC) No 1924/2006), of cosmetics none of a cure (Regulation (EU) No
655/2013), and an illness may be treated by medicines alone; from memory (wordlists/curated/health_claims.txt)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from ..lexicon import kinds, lexicon
from ..tables import open_table
from .classification import likely_classes
from .phrases import base_form, goods_words
from .signs import SIGNS, listed
from .words import runs

__all__ = ["CLAIMS", "claim", "closed_claims"]

CLAIMS = frozenset(("cure", "therapy", "illness", "ailment", "organ", "helps", "gone", "lift", "well", "remedy"))
"""What claims are made of, as the head of the list says."""
_PLAIN = frozenset(("cure", "helps", "well"))
_EFFECTS = _PLAIN | {"therapy", "gone", "lift"}
_TREATED = frozenset(("illness", "ailment", "organ"))
_FED = frozenset((5, 29, 30, 31, 32))
"""Classes of what is eaten and drunk."""
_REMEDIES = frozenset((3, 5, 10))
"""Those of what buyers may take for a remedy: cosmetics, medicines and supplements, medical devices."""
_APPLIED = _REMEDIES | {11, 14, 20, 24, 25}
"""With them what is worn, slept on or warms, and is sold as a remedy as well."""
_WORN_FOR_HEALTH = frozenset(
    "insole magnetic magnet orthopaedic orthopedic compression acupressure acupuncture massage massager bandage "
    "compress therapeutic infrared lumbar posture heat".split()
)
_WARMING = frozenset(("heating", "heated", "hot", "warm", "warming", "warmth", "wheat"))
_WARMERS = frozenset(("pad", "pillow", "cushion", "pack", "bag", "bottle", "belt", "wrap"))
"""What goods are called, in base form, that are put on the body for health whatever their class: heat pads."""
_LIMBS = frozenset(
    "foot feet knee knees hip hips shoulder shoulders wrist ankle elbow hand hands finger fingers toe toes ear ears "
    "neck leg legs arm arms heel heels lip lips knie fuss fusse fuesse schulter schultern hand hande ohr ohren bein "
    "beine pied pieds genou genoux epaule epaules main mains oreille oreilles jambe jambes pie pies rodilla rodillas "
    "hombro hombros mano manos oreja orejas pierna piernas piede piedi ginocchio ginocchia spalla spalle mani orecchie "
    "gamba gambe voet voeten schouder schouders oren been benen joelho joelhos ombro ombros mao maos orelha stopa "
    "stopy kolano kolana dlon dlonie fot fotter kna knan axel axlar hander oron".split()
)
"""Parts of the body, in nine languages, for which buyers look for nothing in food; from memory."""
SHORTEST, LEAST_AFTER, LINKS = 4, 3, ("", "s", "es", "n", "en")
"""The fewest letters of what is treated and of what is done for it, in one word; and what German puts between."""


def claim(signs: Mapping[str, str], words: tuple[str, ...], goods: str, classes: frozenset[int]) -> tuple[str, str]:
    """What a name claims of goods of some classes, and the words that claim it; ("", "") if nothing. `signs` are its
    words that claims are made of, each with its kind.

    The claim is "cure and illness" if it is likely to stand in the way: an illness beside an effect, of any goods; an
    illness or a cure beside words for the goods alone; a part of the body beside a plain effect, of what is eaten, put
    on or taken. A loose effect (happy belly) is "health", worth a question, of food, and a claim of medicines."""
    own = _in_other_phrases(signs, words)
    told = {sign: kind for sign, kind in signs.items() if own.isdisjoint(sign.split())}
    if classes & _FED and not classes & _REMEDIES:
        told = {sign: kind for sign, kind in told.items() if kind != "organ" or sign not in _LIMBS}
    met = frozenset(told.values())
    taken = {part for sign in told for part in sign.split()}
    bare = all(word in taken or _says_no_more(word, goods) for word in words)
    treated = bool(met & _TREATED)
    plain = bool(met & _PLAIN)
    loosely = bool(met & _EFFECTS and classes & _APPLIED) or bool("gone" in met and classes & _FED)
    wide = ("illness" in met and bool(met & _EFFECTS)) or ("ailment" in met and (plain or loosely))
    named = "illness" in met and bare and bool(classes & ((_APPLIED | _FED) if len(words) > 1 else _REMEDIES))
    cured = "cure" in met and bare and (bool(classes & (_FED | {3, 5})) or _are_for_health(goods))
    body = _FED | _REMEDIES | {20}
    near = bool(classes & body) or (bare and bool(classes & (_APPLIED - {14})))
    helped = "organ" in met and near and (plain or bool(met & _EFFECTS and 5 in classes))
    shown = " ".join(sorted((one for one, kind in told.items() if kind != "remedy"), key=" ".join(words).find))
    if wide or named or cured or helped:
        return "cure and illness", shown
    return ("health", shown) if treated and "organ" in met and met & _EFFECTS and classes & _FED else ("", "")


@lru_cache(maxsize=1 << 10)
def _are_for_health(goods: str) -> bool:
    """Whether goods are put on the body for health, or state an illness: only of these is a cure alone no figure of
    speech (Remedy, of earrings, cures nothing)."""
    said = {one.word for one in goods_words(goods)}
    rows = (str(open_table(SIGNS).get(word) or "") for word in said)
    ill = any(entry.kind in ("illness", "ailment") for row in rows if row for entry in listed(row))
    first = 10 in likely_classes(goods)[:1]
    return first or ill or bool(said & _WORN_FOR_HEALTH) or bool(said & _WARMING and said & _WARMERS)


def _says_no_more(word: str, goods: str) -> bool:
    """Whether a word beside a claim is one for the goods, or a small one."""
    return bool(kinds(word) & {"function word", "laudatory"}) or any(
        one.word == base_form(word) for one in goods_words(goods)
    )


def _in_other_phrases(signs: Mapping[str, str], words: tuple[str, ...]) -> set[str]:
    """The words that stand in a set phrase with words of no claim: the blood of blood orange."""
    claims = {part for sign in signs for part in sign.split()}
    known = (run for _, run in runs(words, 3, 2) if lexicon().known(" ".join(run)) and not claims.issuperset(run))
    return {word for run in known for word in run}


@lru_cache(maxsize=1 << 12)
def closed_claims(word: str) -> tuple[tuple[str, str], ...]:
    """The parts of a word, which no list and no dictionary has, that make a claim together, each with its row of the
    list: what is treated and what is done for it (Gelenkwohl), or what says that it goes before it (Antirheuma)."""
    table = open_table(SIGNS)
    if word in table or lexicon().known(word):
        return ()
    for first, link, last in _divided(word):
        before, after = (str(table.get(part) or "") for part in (first, last))
        one, two = ({entry.kind for entry in listed(row)} for row in (before, after))
        treated = one & _TREATED and two & (_EFFECTS | {"remedy"}) and len(first) >= SHORTEST
        before_it = one & (_PLAIN | {"gone", "therapy"}) and not link and two & _TREATED and len(last) >= SHORTEST
        if treated or before_it or (one & {"cure"} and two & {"remedy"}):
            return (first, before), (last, after)
    return ()


def _divided(word: str) -> Iterator[tuple[str, str, str]]:
    for at in range(2, len(word) - 1):
        for link in LINKS:
            first, last = word[:at].removesuffix(link), word[at:]
            if word[:at].endswith(link) and len(first) >= LEAST_AFTER - 1 and len(last) >= LEAST_AFTER:
                yield first, link, last
