"""Where a name stands for its goods: generic, descriptive, suggestive, arbitrary or fanciful (TMEP 1209.01).

Each word of the name is asked how plainly it describes the goods. The most distinctive word carries a name,
the others take a part of it away; an unknown word is coined unless it sounds like, or is made of,
describing words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from ..lexicon import equivalents, kinds, lexicon, zipf
from ..outcome import NotChecked
from ..text import LETTER_NAMES, parse
from .coinage import divided, heard_as, initials_of, is_coined, understood
from .context import MODIFIER
from .description import SURNAME, Evidence, describe
from .phrases import goods_words, plain_words

__all__ = ["CATEGORIES", "Distinctiveness", "distinctiveness"]

CATEGORIES = ("generic", "descriptive", "suggestive", "arbitrary", "fanciful")
"""The continuum from the least to the most distinctive (Abercrombie & Fitch v. Hunting World, 2d Cir.
1976)."""

# Set on the 133 published rows beside the checkout and 88 more written down before any was set; anything from 0.35
# to 0.45, 0.2 to 0.3 and 0.3 to 0.6 does as well within three rows in a hundred (tests/published/).
DESCRIPTIVE = 0.4
"""The describing weight of the whole name from which it is descriptive, or generic."""
SUGGESTIVE = 0.25
NAMED_BY_SOUND = 0.9
_PERSONAL = re.compile(r"\b[A-Z]\.\s*(?=[A-Z][\w'’-]{2})|\b(?:sons|bros|brothers|daughters)\b", re.IGNORECASE)
_LETTERS = frozenset(part for spoken in LETTER_NAMES.values() for part in spoken.split()) - {"you", "see", "are"}
IN_USE = 2.5  # Zipf: a few times in ten million words
NO_TIE = "no tie to the goods was found"
NOTHING_OWN = 0.1  # the score of a name without a word that could identify anyone
CARRIED = 0.4
"""How much of a name its most distinctive word decides; the rest is the average of its words."""

_HINTS = {
    "generic": "No one can own the name of the goods themselves: put a word of your own before it, or start elsewhere.",
    "descriptive": "It tells buyers what the goods are or do: keep it for the description, and let the name "
    "hint rather than say, or join it to a word that has nothing to do with the goods.",
    "suggestive": "It hints without saying: a fair place to be. A less expected second word makes it stronger.",
    "arbitrary": "An ordinary word that says nothing about these goods is often strong: check how many others in "
    "your trade use it.",
    "fanciful": "A coined word is usually the strongest kind: check that people can say and spell it.",
}


Translate = Callable[[str], Iterable[str]]


@dataclass(frozen=True, slots=True)
class Distinctiveness:
    """A place on the continuum. `score` in [0, 1], 1 = most distinctive; a screening aid, not a legal
    finding."""

    category: str
    score: float
    reasons: tuple[str, ...]
    hint: str
    words: tuple[tuple[str, float], ...] = field(default=())
    """Each telling word of the name and how plainly it describes the goods, 0 to 1."""

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary, the same for the same input."""
        return {
            "category": self.category,
            "score": self.score,
            "reasons": list(self.reasons),
            "hint": self.hint,
            "words": [{"word": word, "describes": weight} for word, weight in self.words],
        }


def distinctiveness(name: str, goods: str, *, translate: Translate | None = None) -> Distinctiveness | NotChecked:
    """How distinctive `name` is for `goods` (plain words): its category, a score in [0, 1] and the reasons.

    A foreign word is as descriptive as its translation (doctrine of foreign equivalents, TMEP 1209.03(g)): the
    shipped list of everyday words is asked, and `translate` for more, if given. Others count as coined.
    `NotChecked` if the goods are not stated, the name holds no letter or digit, or it is in a script
    whose words are not known here.
    """
    if not goods_words(goods):
        return NotChecked("distinctiveness", "the goods are not stated in words")
    plain = plain_words(name)
    if not plain:
        return NotChecked("distinctiveness", "the name holds no letter or digit")
    personal = bool(_PERSONAL.search(name))
    judged: tuple[_Judged, ...] = ()
    said = [way for way in parse(name).spoken if sum(word in _LETTERS for word in way) < 2]  # not spelled out
    for words in (plain, *(_entries(way, goods) for way in (plain, *said))):
        # C-THRU says "see through", BED & BREAKFAST is one entry: the reading that describes most plainly counts
        read = tuple(_judge(word, goods, personal, translate) for word in _telling_words(words, goods))
        if not judged or (read and _whole(read) > _whole(judged) + 0.05):
            judged = read
    if not judged:
        reason = "it holds nothing but small words, company forms or domain endings"
        return Distinctiveness("descriptive", NOTHING_OWN, (reason,), _HINTS["descriptive"])
    if all(one.coined and not one.word.isascii() for one in judged):
        return NotChecked("distinctiveness", "the words of this script are not known here")
    whole = _whole(judged)
    category = _category(judged, whole, "domain ending" in kinds(plain[-1]))
    return Distinctiveness(
        category,
        round(min(max(1 - whole, 0.0), 1.0), 4),
        tuple(dict.fromkeys(one.reason for one in judged)),
        _HINTS[category],
        tuple((one.word, round(one.evidence.weight, 4)) for one in judged),
    )


@dataclass(frozen=True, slots=True)
class _Judged:
    word: str
    evidence: Evidence
    coined: bool

    @property
    def reason(self) -> str:
        if self.evidence.why:
            return f'"{self.word}": {self.evidence.why}'
        if self.coined and zipf(self.word) >= IN_USE:
            return (
                f'"{self.word}" is in use but in no dictionary here: a brand, a name or a newer word, taken as coined'
            )
        if self.coined:
            return f'"{self.word}" is in no word list: it looks coined'
        return f'"{self.word}": {NO_TIE}'


def _judge(word: str, goods: str, personal: bool, translate: Translate | None) -> _Judged:
    """The strongest evidence that one word of a name describes the goods: as it stands, as heard, as translated."""
    coined = is_coined(word)
    found = [describe(word, goods)]
    heard = heard_as(word, goods)
    if heard.weight >= NAMED_BY_SOUND:  # a known word that sounds like a word for the goods: doh for dough
        found.append(heard)
    if coined:
        found += [understood(word, goods), initials_of(word, goods)]
    if personal and (coined or len(word) == 1):
        found.append(Evidence(SURNAME, "written as a surname, or an initial before it (TMEP 1211)"))
    meanings = [(one.english, f" ({one.language})") for one in equivalents(word)]
    meanings += [(meaning, "") for meaning in (translate(word) if coined and translate is not None else ())]
    for meaning, language in meanings:
        meant = describe(meaning, goods)
        why = f'means "{meaning}"{language}: {meant.why or NO_TIE} (TMEP 1209.03(g))'
        found.append(Evidence(meant.weight, why, meant.names_goods))
    return _Judged(word, max(found, key=lambda one: (one.weight, one.why)), coined and not meanings)


def _telling_words(words: tuple[str, ...], goods: str) -> tuple[str, ...]:
    """The words that carry a name: compounds divided; small words, company forms and domain endings left out."""
    units = [part for word in words for part in divided(word, goods)]
    telling = tuple(u for u in units if not kinds(u) & {"function word", "company form", "domain ending"})
    return telling or tuple(unit for unit in units if "generic head" in kinds(unit))


def _entries(words: tuple[str, ...], goods: str) -> tuple[str, ...]:
    """`words` with runs that the lexicon holds as one entry (bed and breakfast, see-through) taken together."""
    units: list[str] = []
    at = 0
    while at < len(words):
        for size in range(min(4, len(words) - at), 1, -1):
            run = " ".join(words[at : at + size])
            entries = [one for one in (run, run.replace(" ", "-")) if lexicon().known(one)]
            if entries and not kinds(words[at + size - 1]) & {"company form", "domain ending"}:
                units.append(max(entries, key=lambda entry: describe(entry, goods).weight))
                at += size
                break
        else:
            units.append(words[at])
            at += 1
    return tuple(units)


def _whole(judged: tuple[_Judged, ...]) -> float:
    """How plainly the name as a whole describes: its most distinctive word against all of them."""
    weights = [one.evidence.weight for one in judged]
    return CARRIED * min(weights) + (1 - CARRIED) * sum(weights) / len(weights) if weights else 0.0


def _category(judged: tuple[_Judged, ...], whole: float, is_domain: bool) -> str:
    if whole >= DESCRIPTIVE:
        all_name = all(one.evidence.names_goods or "generic head" in kinds(one.word) for one in judged)
        if is_domain and all(one.evidence.weight >= MODIFIER for one in judged):
            return "generic"  # a word for the goods and ".com" is no more than the word (TMEP 1209.03(m), 1215.05)
        return "generic" if all_name and any(one.evidence.names_goods for one in judged) else "descriptive"
    if whole >= SUGGESTIVE:
        return "suggestive"
    if any(one.coined and one.evidence.weight < SUGGESTIVE for one in judged):
        return "fanciful"
    return "arbitrary"
