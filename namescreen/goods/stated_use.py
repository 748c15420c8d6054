"""Names that say as a whole for whom or for what goods are: for left handers, before the run, para celíacos, voor de
hond. Such a name states the purpose (TMEP 1209.03(i), of users; EUTMR Article 7(1)(c); from memory), whatever its words
say apart."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from ..lexicon import kinds, lexicon, translations
from ..lexicon.phrases import is_saying
from .classification import likely_classes
from .evidence import judge_phrase
from .phrases import base_form
from .places import place_of
from .proper_names import is_surname
from .purposes import is_use
from .tells import EvidenceKind
from .uses import USED_BY, used_abroad

__all__ = ["states_use"]

_FOR = {
    "en": "for", "de": "fur furs zum zur beim", "fr": "pour aux au", "es": "para", "it": "per", "nl": "voor",
    "pt": "para pra",
    "pl": "dla do na", "sv": "for till", "da": "til", "nb": "til",
}  # fmt: skip
"""What stands before those who goods are for, and what they are for, folded."""
_AT = {
    "de": "zeit moment ecke", "fr": "heure temps moment coin pause jeux sac kit",
    "es": "hora tiempo momento rincon kit",
    "it": "ora tempo momento angolo kit", "nl": "tijd moment hoekje uurtje", "pt": "hora tempo momento canto kit",
    "pl": "czas pora kacik", "sv": "tid dags stund horna",
}  # fmt: skip
"""What is a time, place or set for the act that follows: hora del baño."""
_WHEN = {
    "en": "before after during pre post", "de": "vor nach beim bei wahrend", "fr": "avant apres pendant",
    "es": "antes despues durante tras", "it": "prima dopo durante", "nl": "voor na tijdens",
    "pt": "antes depois durante apos", "pl": "przed po podczas", "sv": "fore efter under innan", "da": "for efter",
    "nb": "for etter",
}  # fmt: skip
"""What stands before the act or meal at which goods are used."""
_BETWEEN = frozenset(
    "of the a an my your our der die das den dem des ein eine le la les l un une de du d des el los las lo del il gli "
    "i di da van della dell dei delle o os as do da dos das het een je jouw mon ma mes tes ton ta deine dein ihr tu "
    "tus su mi al na do for fur para per pour alla det en ett din ditt dina all every".split()
)
"""What may stand between."""
_PEOPLE = frozenset(
    "kid child boy girl man woman lady gentleman teen teenager adult senior pensioner toddler infant baby family "
    "couple beginner novice student pupil mother father mum mom mummy mommy dad daddy parent grandmother grandfather "
    "grandma grandpa granny grandad grandparent sister brother son daughter husband wife newborn expat".split()
)
"""People by age, sex, family and skill: goods of any kind may be made for them, or given to them."""
_HEAD_FIRST = frozenset(("fr", "es", "it", "pt", "pl"))
"""The languages in which what a noun is further said to be mostly follows it."""
_FEW_SENSES, LEAST_SURE, TIED = 4, 0.3, 0.5
"""How many senses of a foreign word are looked at, how sure each must be, and how plainly one must be said of the
goods. Ours; common practice, no source."""
_GOODS = 34
"""The last of the Nice classes of goods."""


def states_use(words: tuple[str, ...], goods: str, held: Iterable[str]) -> str:
    """The one of the languages `held`, or English, in which folded words say as a whole for whom, when or for what the
    goods are; "" if they do in none, or are a saying."""
    if len(words) < 2 or is_saying(" ".join(words)) or lexicon().known(" ".join(words)):
        return ""
    if max(likely_classes(goods)[:1], default=1) > _GOODS:
        return ""
    languages = (one for one in dict.fromkeys(("en", *held)) if words[0] in _FOR.get(one, "").split()
                 or words[0] in _WHEN.get(one, "").split() or words[0] in _AT.get(one, "").split())  # fmt: skip
    return next((one for one in languages if _states_use(words, goods, one)), "")


@lru_cache(maxsize=1 << 12)
def _states_use(words: tuple[str, ...], goods: str, language: str) -> bool:
    when = words[0] not in _FOR[language].split()
    rest = words[1:]
    while len(rest) > 1 and rest[0] in _BETWEEN:
        rest = rest[1:]
    whole = " ".join(rest)
    if len(rest) > 3 or not whole:
        return False
    meant = _meant(whole, language)
    if meant:
        return any(_is_use(one, goods, when=when) for one in meant)
    each = [_meant(word, language) for word in rest]
    return all(each) and any(_is_use(one, goods, when=when) for one in each[0 if language in _HEAD_FIRST else -1])


def _meant(run: str, language: str) -> tuple[str, ...]:
    """The English words that a word or run of words may mean."""
    if language == "en":
        known = lexicon().known(run) or lexicon().known(run.replace(" ", "-")) or run in USED_BY
        return (run,) if known or base_form(run) != run or " " not in run else ()
    told = used_abroad(run, language)
    senses = (one.english for one in translations(run, language)[:_FEW_SENSES] if one.score >= LEAST_SURE)
    return tuple(dict.fromkeys((*((told,) if told else ()), *senses)))


def _is_use(english: str, goods: str, *, when: bool) -> bool:
    """Whether an English word or phrase says who uses such goods, or for what; with `when`, at which act or time. Any
    act, time or person will not do: it must be one of these goods."""
    base = base_form(english)
    own_name = place_of(english) is not None or (is_surname(english) and english not in USED_BY)
    if own_name or kinds(english) & {"laudatory"}:
        return False
    if is_use(english, goods) or (not when and base in _PEOPLE):
        return True
    found = judge_phrase(english, goods)
    if found is None or found.evidence.kind is EvidenceKind.SORT:  # a sort of the goods is no user
        return False
    return found.evidence.weight >= TIED and found.evidence.is_told
