"""How a name stands under the law of each market: in which languages it is read there, who understands it, and what
the law treats apart (surnames, places)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from ..lexicon import lexicon
from ..lexicon.translation import listed_translations
from .composition import is_surname_alone
from .continuum import CATEGORIES, score
from .description import COMMON_SURNAME, EvidenceKind
from .evidence import read
from .findings import LanguageFinding, MarketFinding, Whole
from .foreign import COMMON, SURE
from .grounds import (
    ANY_LANGUAGE,
    SURNAME_BARS,
    TRANSLATING,
    is_foreign,
    languages_of,
    languages_under,
    law_on,
    views_of,
)
from .judged import Judged, Meaning
from .name_kinds import is_praise, kinds_of_name
from .phrases import base_form, plain_words
from .placement import BARRED_SCORE, bounded, category_of, chances_of, is_geographic
from .places import place_of
from .proper_names import is_surname, listed_surname
from .protected import ProtectedSign
from .renown import known_in
from .shop_words import OF_SHOPS, read_under
from .understood import is_like_own, is_understood

__all__ = ["UNSURE_SCORE", "by_each_law"]

WHOLE_NAMES = (Whole.MESSAGE, Whole.USE)
"""What a name may say as a whole in a language of which it need not have a word that is translated."""
UNSURE_SCORE = 0.75
"""The most that a name scores that looks like a word of a language of the buyers, which is not called fanciful. Ours;
common practice, no source."""
FOREIGN_SCORE = 0.65
"""The most that a word scores that bars a name in a language which few buyers of the market read: some may, and it can
be used by all others of the trade who do. Ours; common practice, no source."""
PLAIN = 0.5
"""How plainly a word describes the goods from which a name of praise is told to describe them too. Ours."""
HALF_TOLD_SCORE = 0.5
"""The least that a name scores of which buyers understand one word that tells of the goods, and not the other. Ours."""
RARE_SURNAME_SCORE = 0.4
"""The least that a surname scores that few bear: rarity speaks for it (TMEP 1211.01(a)(i)). Ours, not fitted."""


def by_each_law(
    name: str,
    goods: str,
    readings: Mapping[str, tuple[Judged, ...]],
    findings: Sequence[LanguageFinding],
    signs: tuple[ProtectedSign, ...],
    markets: tuple[str, ...] | None,
    by_law_alone: tuple[str, ...],
) -> list[MarketFinding]:
    """How the name stands under each law, by the worst of the `findings` in a language that counts there."""
    worst, found = findings[0], []
    for law in views_of(markets):
        whole = [one for one in readings if one not in OF_SHOPS]
        others = [one for one in whole if one not in by_law_alone]
        heard = languages_under(law, whole if law in TRANSLATING else others, markets) | read_under(law) & {*readings}
        barring = [one for one in findings if one.language in readings and one.category in CATEGORIES[:2]]
        heard |= {one.language for one in barring if is_like_own(readings[one.language], law)}
        heard |= languages_under(law, [one.language for one in findings if one.whole in WHOLE_NAMES], markets)
        if law in ANY_LANGUAGE:
            heard |= {one.language for one in barring if one.category == "generic"}
        first = _as_read_there([one for one in findings if one.language in heard], law, markets)
        barred_so = first.language == "en" and first.category in CATEGORIES[:2]
        if barred_so and (not is_understood(readings["en"], law) or _heard_by_chance(readings, worst)):
            strange = _partly_strange(first, readings["en"], law)
            known = (one for one in findings if one.language in heard and one.language != "en")
            first = min((strange, *known), key=lambda one: (CATEGORIES.index(one.category), one.score))
        if worst.meaning and first.language == "en" and all(map(_is_told_by_letters, readings["en"])):
            # What the letters of a word of another language hint at in English is chance (Halsband, a band).
            chance = replace(first, category="arbitrary", score=max(first.score, FOREIGN_SCORE))
            meant = (one for one in findings if one.language in heard and one.language != "en")
            first = min((chance, *meant), key=lambda one: (CATEGORIES.index(one.category), one.score))
        read_so = readings.get(first.language, readings["en"])
        unheard = first.category not in CATEGORIES[:2] and worst.category in CATEGORIES[:2]
        if first.category == "fanciful" and any(one.meaning for one in findings):
            first = replace(first, category="arbitrary")  # no coinage, but a word that these buyers do not know
        geographic = is_geographic(read_so, signs)
        obscure = geographic and first.category == "descriptive" and not _knows_the_place(read_so, signs, law, goods)
        if obscure:
            first = replace(first, category="arbitrary", score=max(first.score, UNSURE_SCORE))
        told = kinds_of_name(readings["en"], read_so, slogan=first.whole is Whole.MESSAGE)
        described = any(one.evidence.weight >= PLAIN and not is_praise(one) for one in read_so)
        if first.whole is not Whole.MESSAGE and described:
            told = tuple(kind for kind in told if kind != "laudatory")  # it describes besides: the wider ground is told
        seen = (surname := _as_surname(readings)) and not (geographic and not obscure)
        one = _by_law(law, name, goods, first, told, geographic, surname if seen else "", unheard=unheard)
        if obscure and not one.ground:
            one = replace(one, ground="little-known place", law=f"{law_on('place', law)}, if buyers know it")
        found.append(one)
    return found


def _heard_by_chance(readings: Mapping[str, tuple[Judged, ...]], worst: LanguageFinding) -> bool:
    """Whether a name of several words is barred in a language whose own words they all are, one of which English
    readers only hear as a word of theirs (fein, fine): to them it is a foreign name."""
    if not worst.meaning or worst.category not in CATEGORIES[:2]:
        return False
    own = {one.word for one in readings[worst.language] if one.meaning and one.meaning.sure >= SURE}
    plain = readings["en"]
    heard = [one for one in plain if one.heard or one.evidence.kind is EvidenceKind.HEARD]
    return len(plain) > 1 and bool(heard) and all(one.word in own for one in heard)


def _is_told_by_letters(one: Judged) -> bool:
    """Whether all that a word says in English is what a part of it is like."""
    return one.coined and one.evidence.is_told and one.evidence.kind is not EvidenceKind.HEARD and not one.heard


def _as_read_there(found: Sequence[LanguageFinding], law: str, markets: Iterable[str] | None) -> LanguageFinding:
    """The worst of the findings `found` that count under a law; of those alike the one in the language that buyers
    there read first, then that of another market."""
    first = found[0]
    own = languages_of((law,), main=True) if law != "EU" else ()
    if is_foreign("en", law):  # they read their own language first
        own = (*(one for one in own if one != "en"), "en")
    common = (*languages_of(markets or ()), *COMMON)
    order = {language: at for at, language in reversed([*enumerate((*own, *common))])}
    alike = (one for one in found if (one.category, one.score) == (first.category, first.score))
    return min(alike, key=lambda one: order.get(one.language, len(order)))


def _knows_the_place(judged: Sequence[Judged], signs: Sequence[ProtectedSign], law: str, goods: str) -> bool:
    """Whether buyers know one of the places of a name, so that it tells them where goods come from; who protects a name
    of origin does."""
    places = [word for one in judged for word in (one.word, one.meaning.english if one.meaning else "") if word]
    named = [word for word in places if place_of(word) is not None]
    return not named or any(one.serious for one in signs) or any(known_in(word, law, goods) for word in named)


def _partly_strange(found: LanguageFinding, judged: tuple[Judged, ...], law: str) -> LanguageFinding:
    """What is found of a name of which buyers do not understand every word: arbitrary, or if a word that they do
    understand tells of the goods, or of where they come from, suggestive at most (Marseille Lather, in France)."""
    told = any(one.evidence.weight >= PLAIN and is_understood((one,), law) and not is_praise(one) for one in judged)
    if told and len(judged) > 1:
        return replace(found, category="suggestive", score=max(found.score, HALF_TOLD_SCORE))
    return replace(found, category="arbitrary", score=max(found.score, UNSURE_SCORE))


def _as_surname(readings: Mapping[str, tuple[Judged, ...]]) -> str:
    """Whether a name is nothing but a surname: "frequent", "rare", or "" if it is none, or if the surname is a rare one
    and a word of a language of the buyers too: then it is not primarily merely a surname (TMEP 1211)."""
    plain = readings["en"]
    if not is_surname_alone(plain, frequent=False):
        return ""
    means = [one for judged in readings.values() for one in judged if one.meaning and not one.meaning.guessed]
    meant = {one.word for one in means if one.meaning and one.meaning.sure >= SURE and not _is_person(one.meaning)}
    names = [(one.word, listed_surname(one.word)[1]) for one in plain if is_surname(one.word)]
    if all(word in meant and (rank or 0) > COMMON_SURNAME for word, rank in names):
        return ""
    return "frequent" if is_surname_alone(plain) else "rare"


def _is_person(meaning: Meaning) -> bool:
    """Whether a word means who does something (carpenter): so named are those who bear it, and it stays their name."""
    senses = lexicon().senses(meaning.english, labelled=False)[:1]
    return any(one.domain == "noun.person" for one in senses)


def _are_own(name: str, law: str) -> bool:
    """Whether each word of an English name is one of a language of the state too, and means the same there: pure
    perfection, in France."""
    own = [one for one in languages_of((law,)) if one != "en"]

    def is_own(word: str) -> bool:
        meant = (one.english for language in own for one in listed_translations(word, language))
        return any(base_form(word) == base_form(one) for one in meant)

    return all(map(is_own, plain_words(name)))


def _by_law(
    law: str,
    name: str,
    goods: str,
    worst: LanguageFinding,
    found: tuple[str, ...],
    geographic: bool,
    surname: str,
    *,
    unheard: bool,
) -> MarketFinding:
    """The finding under one law: a `surname` alone is a bar in the United States and Canada, and not elsewhere; a word
    of a language that few buyers there read (`unheard`) only where they understand it."""
    category, points = worst.category, worst.score
    ground = category if category in CATEGORIES[:2] else ""
    if ground == "descriptive" and geographic:
        ground = "place"
    elif worst.meaning and ground and is_foreign(worst.language, law):
        ground = "foreign word"
    elif ground == "descriptive":
        ground = next((kind for kind in ("misspelling", "acronym", "laudatory", "place") if kind in found), ground)
    elif ground == "generic" and "misspelling" in found:
        ground = "misspelling"
    if ground in CATEGORIES[:2] and worst.language == "en" and is_foreign("en", law) and not _are_own(name, law):
        ground = "foreign word"
    bars = law in SURNAME_BARS and ground != "generic" and not (ground and worst.meaning)  # what it means weighs more
    as_read = read(name, goods, {}) if bars else ()
    written = any(one.evidence.kind is EvidenceKind.SURNAME and not is_surname(one.word) for one in as_read)
    if bars and (surname or written):
        as_surname = chances_of(name, as_read)
        personal, told = bounded(as_read, category_of(as_surname), score(as_surname))
        if surname == "frequent":
            category, points, ground = "descriptive", BARRED_SCORE, "surname"
        elif told < points and personal == "descriptive" and not ground:
            told = max(told, RARE_SURNAME_SCORE) if surname else told
            category, points, ground = "descriptive", round(told, 4), "surname"
    elif surname and not ground:
        ground = "surname"
    if bars and surname and not ground:
        ground = "rare surname"
    if unheard and not ground:
        ground = "foreign word"
    if "coarse" in found and not ground:
        ground = "vulgar"
    if ground == "foreign word" and category == "generic":
        ground = "foreign name"
    if unheard and ground == "foreign word":
        points = min(points, FOREIGN_SCORE)
    language = worst.language if category in CATEGORIES[:2] and worst.meaning else ""
    said = law_on(ground.removeprefix("rare "), law) if ground else ""
    said += ", though few bear it" if ground == "rare surname" else ""
    return MarketFinding(law, category, min(points, worst.score), ground, said, language)
