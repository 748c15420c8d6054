"""What a name says as a whole that its words do not: a promotional message, or nothing but a sign of punctuation."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import replace

from ..lexicon import kinds
from .continuum import CATEGORIES
from .findings import Distinctiveness, LanguageFinding, MarketFinding, Whole
from .grounds import law_on, views_of
from .phrases import plain_words
from .placement import SAYING, SAYINGS
from .qualities import is_praise
from .slogans import message_in, slogan_in
from .stated_use import states_use

__all__ = ["BANAL", "WHOLE_REASONS", "as_a_sign", "message_of", "with_whole"]

WHOLE_SCORE = 0.35
"""The most that a promotional message scores, or what says as a whole what goods are for: buyers may learn one, and
some play on words. Ours, not fitted."""
SLOGAN, SLOGANS = "the whole is a promotional message, as any maker may say of such goods", "1202.04(b)"
USE, USES = "the whole says for whom, when or for what the goods are", "1209.03(i)"
HOW_MUCH = frozenset(
    """
    simply truly really absolutely purely totally utterly very just so always only ever forever quite genuinely
    honestly seriously definitely certainly completely entirely positively naturally incredibly amazingly
    unbelievably exceptionally extraordinarily outstandingly remarkably wonderfully most ever mighty
    """.split()
)
"""Words that say how much, and tell no maker. From memory of English grammar."""
BANAL = "a sign of punctuation or the like alone, which tells no maker (Joop!, T-191/08)"
SIGN_SCORE = 0.1
"""The score of a sign that buyers take for no name. Ours, not fitted."""
WHOLE_REASONS = {Whole.SAYING: (SAYING, SAYINGS), Whole.MESSAGE: (SLOGAN, SLOGANS), Whole.USE: (USE, USES)}
"""Why a name as a whole stands where it does, with the section of the American manual."""
_HINT = "Buyers take it for an ornament or an exclamation: put a word of your own before it."


def message_of(words: tuple[str, ...], goods: str, held: Iterable[str]) -> str:
    """The one of the languages `held`, or English, in which folded words are a promotional or customary message; "" if
    they are none."""
    found = (slogan_in(words), *message_in(words, goods), "en" if _only_praises(words) else "")
    read = {"en", *held}
    return next((one for one in found if one in read), "")


def _only_praises(words: tuple[str, ...]) -> bool:
    """Whether English words are praise, and besides it only say how much (simply the finest)."""
    said = [word for word in words if "function word" not in kinds(word)]
    much = [word for word in said if word in HOW_MUCH]
    rest = [word for word in said if word not in HOW_MUCH]
    return bool(much) and bool(rest) and all("laudatory" in kinds(word) or is_praise(word, "en") for word in rest)


def with_whole(findings: list[LanguageFinding], name: str, goods: str, held: Iterable[str]) -> list[LanguageFinding]:
    """The findings, that of the language in which a name is a promotional message, or says as a whole what the goods
    are for, as what it is."""
    words, read = plain_words(name), tuple(held)
    message = message_of(words, goods, read)
    language, whole = (message, Whole.MESSAGE) if message else (states_use(words, goods, read), Whole.USE)
    if not language:
        return findings
    told = next((one for one in findings if one.language == language), findings[0])
    if told.category in CATEGORIES[:2]:
        return findings
    said = replace(
        told, language=language, category="descriptive", score=min(told.score, WHOLE_SCORE), word="", meaning="",
        reason=SLOGAN if whole is Whole.MESSAGE else USE, whole=whole,
    )  # fmt: skip
    return [*(one for one in findings if one.language != language), said]


def as_a_sign(name: str, markets: Iterable[str] | None) -> Distinctiveness | None:
    """What is found of a name of nothing but punctuation or the like; None if it holds anything else."""
    shown = [one for one in name if not one.isspace()]
    if not shown or not all(unicodedata.category(one)[0] in "PS" and one.isascii() for one in shown):
        return None
    laws = views_of(None if markets is None else tuple(markets))
    found = tuple(MarketFinding(law, "descriptive", SIGN_SCORE, "sign", law_on("sign", law)) for law in laws)
    told = LanguageFinding("en", "descriptive", SIGN_SCORE, "", "", BANAL)
    return Distinctiveness("descriptive", SIGN_SCORE, (BANAL,), _HINT, languages=(told,), markets=found)
