"""Where a name stands for its goods: generic, descriptive, suggestive, arbitrary or fanciful (TMEP 1209.01), in each
language of its buyers and under the law of each market.

A name is as weak as in the language where it says most. Names of origin, emblems and claims to cure in it are reported
beside its place on the continuum."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import lru_cache

from ..outcome import NotChecked, UnknownWord, Unread
from ..plain_text import some
from .composition import composition, has_other_own_word
from .continuum import CATEGORIES
from .description import SURNAMES, EvidenceKind
from .evidence import read
from .findings import Distinctiveness, LanguageFinding, MarketFinding, Whole
from .foreign import COMMON, known_languages, read_by_law, reading_in
from .grounds import (
    languages_of,
    of_the_trade,
    under_law,
    views_of,
)
from .judged import Judged
from .market_law import UNSURE_SCORE, by_each_law
from .materials import is_material
from .name_kinds import kinds_of_name
from .native import unknown_meaning, unknown_words
from .nice import CLASSES
from .phrases import goods_words, items, plain_words
from .placement import (
    NO_CONTENT_WORD,
    finding_of,
)
from .places import place_of
from .protected import ProtectedSign, protected_signs
from .renown import where_strange
from .run_together import APART, written_apart
from .shop_words import read_in_shops
from .understood import is_understood
from .whole_names import WHOLE_REASONS, as_a_sign, with_whole
from .wording import in_english, not_read, remark

__all__ = ["GOODS_AS_WORDED", "Distinctiveness", "LanguageFinding", "MarketFinding", "distinctiveness"]

GOODS_AS_WORDED = "distinctiveness for the goods as worded"
"""The check that is not made where goods cannot be read."""
LISTED = 0.9
"""How sure the meaning of a word must be for a name to be told by it that says as little in English. Ours."""
CLAIM_SCORE = 0.3
"""The highest score of a name that claims to cure: it states the purpose, or deceives about it (EUTMR Article 7(1)(c),
(g))."""
_HINTS = {
    "generic": "No one can own the name of the goods themselves: put a word of your own before it, or start elsewhere.",
    "descriptive": "It tells buyers what the goods are or do: keep it for the description, and let the name "
    "hint rather than say, or join it to a word that has nothing to do with the goods.",
    "suggestive": "It hints without saying: a fair place to be. A less expected second word makes it stronger.",
    "arbitrary": "An ordinary word that says nothing about these goods is often strong: check how many others in "
    "your trade use it.",
    "fanciful": "A coined word is usually the strongest kind. Make sure that it is no term of your trade and no name "
    "that the word lists here lack, and that people can say and spell it.",
    "surname": "A surname: weak in the United States and Canada until buyers know it as a mark, and shared with others "
    "who bear it.",
    "geographic": "It says where goods come from: others from there may use it, and if yours come from elsewhere it "
    "may mislead. Join it to a word of your own.",
}


def distinctiveness(
    name: str,
    goods: str,
    *,
    languages: Iterable[str] | None = None,
    markets: Iterable[str] | None = None,
    classes: Iterable[int] = (),
    product: str = "",
) -> Distinctiveness | NotChecked:
    """How distinctive `name` is for `goods` (plain words): its category, a score in [0, 1] and the reasons.

    It is read in English, in `languages` (BCP 47) and in those of the `markets` (ISO 3166-1); without either in the
    common ones, where only words that are no English words are translated. A foreign word is as descriptive as its
    translation (doctrine of foreign equivalents, TMEP 1209.03(g); EUTMR Article 7(2)), under the laws of the US and the
    EU whatever languages are named. Without
    markets the laws of the US, the EU and GB are told. `classes` are the stated Nice classes, for protected signs;
    of the `product` in the seller's words the materials are read that the goods do not state.
    Goods in another language are read in English; for goods that cannot be read the classes are used, and
    `not_assessed` says so. `NotChecked` if the goods are not stated, or neither read nor classed, the name holds no
    letter or digit, it is in a script whose words are not known here, or hangs on a word that looks native to a
    language of the buyers and that no table has: such a word is no coinage, and may say anything.
    """
    if not goods_words(goods):
        return NotChecked("distinctiveness", "the goods are not stated in words")
    if not plain_words(name):
        return as_a_sign(name, markets) or NotChecked("distinctiveness", "the name holds no letter or digit")
    codes = tuple(dict.fromkeys(markets or ()))
    stated = tuple(languages) if languages is not None else None
    asked = None if stated is None and not codes else (*(stated or ()), *languages_of(codes, main=stated is not None))
    found = _distinctiveness(name, _with_materials(goods, product), asked, codes or None, tuple(classes))
    unread = not_read(goods)
    if not unread or isinstance(found, NotChecked) or found.category in CATEGORIES[:2]:  # a tie is one all the same
        return found if isinstance(found, NotChecked) else _with_wording(found, goods)
    numbers = tuple(sorted(set(classes)))
    if not numbers:
        return NotChecked("distinctiveness", f"no classes are stated, and the goods are {unread}")
    held = "; ".join(CLASSES[number] for number in numbers)
    found = _distinctiveness(name, held, asked, codes or None, numbers)
    used = f"{unread}; what is in class {', '.join(map(str, numbers))} was used instead"
    missing = (NotChecked(GOODS_AS_WORDED, used),)
    return found if isinstance(found, NotChecked) else replace(found, not_assessed=(*missing, *found.not_assessed))


def _with_wording(found: Distinctiveness, goods: str) -> Distinctiveness:
    """The finding with how goods of another language were read, and with the words of the goods that were not."""
    said = remark(goods)
    unread = dict.fromkeys(f'"{word}"' for word in in_english(goods).unread)
    because = f"of the goods {some(unread)} could not be read; the rest was used"
    missing = (NotChecked(GOODS_AS_WORDED, because),) if unread else ()
    reasons = (*found.reasons, f"the goods, {said}") if said else found.reasons
    return replace(found, reasons=reasons, not_assessed=(*missing, *found.not_assessed))


@lru_cache(maxsize=256)
def _with_materials(goods: str, product: str) -> str:
    """The goods, with the materials that the sentence on the product names besides: a beeswax balm for dry hands."""
    plain = " ".join(goods.split())
    if not product or in_english(plain).language != "en":
        return plain
    stated = {one.word for one in goods_words(plain)}
    told = [one.word for item in items(product) for one in goods_words(item.text)]
    held = dict.fromkeys(word for word in told if word not in stated and " " not in word and is_material(word))
    return f"{plain.rstrip('.;, ')} containing {' '.join(held)}" if held else plain


@lru_cache(maxsize=1 << 12)
def _distinctiveness(
    name: str, goods: str, asked: tuple[str, ...] | None, markets: tuple[str, ...] | None, classes: tuple[int, ...]
) -> Distinctiveness | NotChecked:
    plain = read(name, goods, {}, surnames=False)
    signs = protected_signs(name, goods, classes=classes, markets=markets)
    held, missing = (COMMON, ()) if asked is None else known_languages(asked)
    american = "US" in views_of(markets)
    readings = {"en": plain}
    for language in held:
        if language != "en":
            found = reading_in(name, goods, language, asked=asked is not None, surnames=False)
            readings |= {language: found} if found else {}
    apart = _read_apart(name, goods, held, plain, signs, american=american)
    readings |= apart
    english = finding_of("en", name, goods, plain, plain, signs, american=american)
    everywhere = all(is_understood(plain, law) for law in views_of(markets))
    settled = english.category in CATEGORIES[:2] and everywhere
    by_law_alone = () if settled or markets is None else read_by_law(views_of(markets), held)
    for language in by_law_alone:  # a minority's language counts as if it had been asked for
        found = reading_in(name, goods, language, asked=language in languages_of(markets or ()), surnames=False)
        readings |= {language: found} if found else {}
    for language, found in read_in_shops(name, goods, () if settled else views_of(markets)).items():
        told = finding_of(language, name, goods, found, plain, signs, american=american)
        readings |= {language: found} if told.category in CATEGORIES[:2] else {}
    if plain and len(readings) == 1 and all(one.coined and not one.word.isascii() for one in plain):
        return NotChecked("distinctiveness", "the words of this script are not known here")
    minorities = {*languages_of(markets or ())} - {*languages_of(markets or (), main=True)}
    spoken = tuple(one for one in held if one not in minorities | {"en"}) if asked is not None else ()
    strange = unknown_words(plain, readings, spoken, goods)
    unknown = {word: one for word, one in strange.items() if one.language not in apart}
    if len(plain) > 1 and all(one.coined for one in plain):  # hardly two strange words of one language
        unknown = {word: one for word, one in unknown.items() if one.is_sure}
    others = (
        finding_of(code, name, goods, read_so, plain, signs, american=american)
        for code, read_so in readings.items()
        if code != "en"
    )
    findings = _worst_first(
        with_whole([english, *others], name, goods, held),
        misspelt=any(one.evidence.kind is EvidenceKind.HEARD for one in plain),
        strange=all(one.coined for one in plain),
    )
    if any(one.kind == "cure and illness" for one in signs):
        findings = [_as_claim(one) for one in findings]
    worst = findings[0]
    judged = readings.get(worst.language, plain)
    native = tuple(word for word, one in unknown.items() if one.is_sure)
    if native and worst.category not in CATEGORIES[:2]:
        beside = readings.get(unknown[native[0]].language, judged)  # as those read it who may know the word
        if not any(one.serious for one in signs) and not has_other_own_word(beside, native):
            rest = (one.reason(american=american) for one in beside if one.word not in native)
            because = "; ".join((unknown_meaning(native[0], unknown[native[0]]), *rest))
            return UnknownWord("distinctiveness", because, native[0])
        findings = [replace(one, category="arbitrary") if one.category == "fanciful" else one for one in findings]
        worst = findings[0]
    elif unknown and worst.category == "fanciful":
        findings = [replace(one, category="arbitrary", score=min(one.score, UNSURE_SCORE)) for one in findings]
        worst = findings[0]
    kinds_found = kinds_of_name(plain, judged, slogan=worst.whole is Whole.MESSAGE)
    by_law = by_each_law(name, goods, readings, findings, signs, markets, by_law_alone)
    weakest = min(by_law, key=lambda one: (CATEGORIES.index(one.category), one.score))
    surname = under_law(f'"{name}": a surname', SURNAMES, american=american) if weakest.called == "surname" else ""
    said = ((one.word, one.meaning) for one in judged)
    meant = {(part, by.language) for words, by in said if by is not None and not by.about for part in words.split()}
    unknown = {word: one for word, one in unknown.items() if (word, one.language) not in meant}  # by its parts it is
    unread = tuple(Unread(word, unknown_meaning(word, one)) for word, one in unknown.items())
    said_in = [one.language for one in findings if (one.meaning, one.category) == (worst.meaning, worst.category)]
    said_in = [one for one in said_in if one in (asked or ())] or said_in  # the buyers' own languages
    why = _reasons(name, judged, worst, signs, said_in=said_in, surname=surname, american=american)
    reasons = (*why, *(one.told for one in unread))
    return Distinctiveness(
        weakest.category,
        weakest.score,
        reasons,
        _HINTS["surname" if "surname" in kinds_found else weakest.called],
        tuple((one.word, round(one.evidence.weight, 4)) for one in judged),
        kinds_found,
        tuple(findings),
        (
            *(NotChecked(f"distinctiveness in {code}", "no words of that language are shipped") for code in missing),
            *(NotChecked(f'distinctiveness of "{one.word}"', one.told) for one in unread),
        ),
        tuple(by_law),
        signs,
        unread=tuple(one for one in unread if unknown[one.word].is_sure),  # else it is a coinage as far as is known
        strange_in=where_strange(filter(place_of, (one.word for one in judged)), views_of(markets), goods),
    )


def _read_apart(
    name: str,
    goods: str,
    held: Iterable[str],
    plain: tuple[Judged, ...],
    signs: tuple[ProtectedSign, ...],
    *,
    american: bool,
) -> dict[str, tuple[Judged, ...]]:
    """The readings of a name as two words of a language that writes them apart, where these describe the goods."""
    told: dict[str, tuple[Judged, ...]] = {}
    for language, words in ((one, two) for one in held if one in APART for two in written_apart(name, one)):
        found = reading_in(words, goods, language, surnames=False)
        if found:
            finding = finding_of(language, words, goods, found, plain, signs, american=american)
            told |= {language: found} if finding.category in CATEGORIES[:2] else {}
    return told


def _as_claim(one: LanguageFinding) -> LanguageFinding:
    barred = one.category in CATEGORIES[:2]
    return one if barred else replace(one, category="descriptive", score=min(one.score, CLAIM_SCORE))


def _worst_first(findings: list[LanguageFinding], *, misspelt: bool, strange: bool) -> list[LanguageFinding]:
    """The findings in order, by category before score, so that a further language never makes a name look better. A
    `misspelt` English word is told as the word of another language that it is, and is as plain so; a name that is
    `strange` to English is told in a language that knows it."""
    heard = min((one.score for one in findings if misspelt and one.language == "en"), default=1.0)
    barred = [one.category for one in findings if one.language == "en" and one.category in CATEGORIES[:2]]
    told = [
        replace(one, score=min(one.score, heard)) if one.meaning and one.category in barred else one
        for one in findings
    ]
    def order(one: LanguageFinding) -> tuple[int, float, bool, bool, str]:
        rank = CATEGORIES.index(one.category)
        later = (misspelt and not one.meaning) or (strange and not (one.meaning and one.sure >= LISTED))
        return rank, one.score, later, one.language != "en", one.language

    return sorted(told, key=order)


def _reasons(
    name: str,
    judged: tuple[Judged, ...],
    worst: LanguageFinding,
    signs: tuple[ProtectedSign, ...],
    *,
    said_in: Sequence[str],
    surname: str,
    american: bool,
) -> tuple[str, ...]:
    """The reasons in words, the worst with the languages that have it (`said_in`): serious signs first, beside which no
    other word is told as merely to be disclaimed, and what each other word says; that the name is a `surname`, if no
    word has said so."""
    serious = [one for one in signs if one.serious]
    taken = {word for one in serious if one.kind != "evocation" for word in one.sign.split()}
    parts = composition(judged)
    registrable = worst.category not in CATEGORIES[:2]
    free = (*parts.shared, *(parts.places if registrable else ())) if not serious else ()
    written = {*plain_words(name)}  # a closed word is one mark, of which no part is disclaimed (TMEP 1213.05(a))
    shared = [one for one in free if written.issuperset(plain_words(one.word))]
    said = of_the_trade(american=american)
    own = ((one, one.reason(american=american)) for one in judged if one.word not in taken)
    told = [f"{reason}; {said}" if one in shared else reason for one, reason in own]
    if worst.language != "en":
        told = [f"{', '.join(said_in)}: {reason}" if reason == worst.reason else reason for reason in told]
    told = told if judged else [NO_CONTENT_WORD]
    if worst.whole in WHOLE_REASONS:
        why, section = WHOLE_REASONS[worst.whole]
        told = [under_law(why, section, american=american), *(told if worst.whole is not Whole.SAYING else ())]
    if surname and not any(one.tells_surname for one in judged):
        told.insert(0, surname)
    return tuple(dict.fromkeys((*(f'"{one.sign}": {one.told or one.reason}' for one in serious), *told)))
