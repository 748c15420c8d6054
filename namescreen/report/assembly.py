"""A brief, its screenings and the lists searched as a `Report`: the one reader of other rooms' records."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

from ..closeness.reason import About, Reason, about
from ..lexicon import kinds, lexicon, translations
from ..outcome import NotChecked, UnknownWord, Unread
from ..plain_text import plural, some
from ..screening.crowd import divided
from ..text import parse
from .fingerprints import fingerprints
from .model import (
    CHECKS,
    Address,
    Addresses,
    CloseMark,
    CostItem,
    Costs,
    Distinctiveness,
    Elsewhere,
    Goods,
    InMarket,
    ItemView,
    LanguageSearched,
    ListSearched,
    MarketView,
    NameEntry,
    OfficeRows,
    ProtectedSign,
    Reading,
    Report,
    SharedWord,
    Weights,
)
from .uk_marks import from_eu_marks

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from .. import brief, goods, marks, register, screening
    from ..addresses import Estimate, Handle
    from ..connotations import Reading as Found

__all__ = ["assemble", "entry_of", "weights_of"]

_LISTED = 0.75  # score of a translation that a list has for the very word
_KNOWN_AS = {"geographic": "one word, a place", "surname": "one word, a surname"}
_MOST_SLIPS = 3  # misspellings that are told: those of listeners come before slips of the keys
_MOST_REMARKS = 5  # bad rows of a list told one by one; the rest are counted


def assemble(
    naming: brief.Brief,
    screenings: Iterable[screening.Screening],
    searched: register.Register | None,
    *,
    date: str,
    date_from: str,
    version: str,
    command: Sequence[str],
    settings: Iterable[tuple[str, str]] = (),
    made: Mapping[str, str] | None = None,
    mild: bool = False,
) -> Report:
    """The report on `screenings` made for the brief `naming` against the marks `searched`.

    `date` is ISO 8601 and `date_from` where it came from; `command` repeats the report; `settings` are those
    that no part of the brief states, by name; `made` says of names, where it is known, how they were made; `mild`
    masks severe words of other languages.
    """
    found = tuple(screenings)
    spoken = dict.fromkeys(
        LanguageSearched(each.language, each.how, each.words, each.unlucky, each.meanings)
        for one in found for each in one.coverage
    )  # fmt: skip
    return Report(
        product=naming.product,
        goods=naming.goods,
        classes=naming.classes,
        markets=naming.markets,
        languages=naming.languages,
        names=tuple(entry_of(one, (made or {}).get(one.name, ""), mild) for one in found),
        lists=() if searched is None else _lists(searched, naming.source),
        date=date,
        date_from=date_from,
        version=version,
        command=tuple(command),
        concepts=tuple(concept.word for concept in naming.concepts),
        weights=weights_of(naming),
        costs=_costs(naming.costs),
        settings=tuple(settings),
        languages_searched=tuple(spoken),
        seed=naming.seed,
    )


def weights_of(naming: brief.Brief) -> Weights:
    """How much each check counts in the comparison; equal where the brief does not say."""
    return Weights(**{check: float(naming.comparison_weights.get(check, 1.0)) for check in CHECKS})


def entry_of(
    found: screening.Screening, made: str = "", mild: bool = False, *, with_reasons: bool = True
) -> NameEntry:
    """A screening in the report's own words: see `assemble` for `made` and `mild`. Without the reasons of its marks,
    most of which a short answer does not show, it takes half the time."""
    words = divided(found.name)
    construction, meaning = _made_of(found.name, _as_judged(found, words))
    if len(words) == 1 and not isinstance(found.distinctiveness, NotChecked):
        # What else is known of the word comes before what the lexicon has of it.
        construction = _KNOWN_AS.get(found.distinctiveness.called, construction)
    coined = not isinstance(found.distinctiveness, NotChecked) and found.distinctiveness.category == "fanciful"
    return NameEntry(
        name=found.name,
        words=words,
        marks=found.close_marks
        if isinstance(found.close_marks, NotChecked)
        else tuple(_mark(one, found.markets, with_reasons) for one in found.close_marks),
        distinctiveness=_distinctiveness(found.distinctiveness),
        readings=found.readings
        if isinstance(found.readings, NotChecked)
        else (
            *(_reading(one.mild() if mild else one) for one in found.readings),
            *_further_words(found),
        ),
        addresses=_addresses(found.addresses),
        construction=made or construction,
        meaning="" if coined else meaning,
        coverage=tuple(one.language for one in found.coverage),
        not_checked=tuple(NotChecked(one.check, one.because) for one in found.not_checked),
        shared_words=tuple(
            SharedWord(one.word, one.owners, one.marks, one.at_least, one.market) for one in found.shared_words
        ),
        unread=_unread(found.distinctiveness),
        explained=bool(made),
    )


def _as_judged(found: screening.Screening, words: tuple[str, ...]) -> tuple[str, ...]:
    """The words of a name, those whole that its distinctiveness takes as one: a misspelt word is not made of the
    words that its letters happen to hold."""
    if isinstance(found.distinctiveness, NotChecked):
        return words
    judged = {word for word, _ in found.distinctiveness.words}
    return tuple(
        part
        for word in parse(found.name).words
        for part in ((word,) if word in judged and judged.isdisjoint(divided(word)) else divided(word))
    )


def _score(value: float) -> float:
    """Four places: more would say more than is known, and differ between machines."""
    return round(min(1.0, max(0.0, float(value))), 4)


def _mark(found: screening.CloseMark, markets: Sequence[str], with_reasons: bool) -> CloseMark:
    near, related = found.closeness, found.goods_relatedness
    meaning = found.meaning
    return CloseMark(
        mark=found.mark,
        appearance=_score(near.appearance),
        sound=_score(near.sound),
        meaning=meaning if isinstance(meaning, NotChecked) else _score(meaning),
        overall=_score(near.overall),
        concern=_score(found.concern),
        goods=related
        if isinstance(related, NotChecked)
        else Goods(_score(related.score), tuple(related.reasons), related.together),
        knockout=found.knockout,
        reasons=near.reasons if with_reasons else (),
        others=tuple(other.mark for other in found.others),
        marks=found.marks,
        bites=found.bites,
        translation=found.translation,
        renewable_until=found.renewable_until,
        lapsed=found.lapsed,
        held=found.held,
        elsewhere=tuple(
            Elsewhere(one.place, one.markets, _score(one.concern), one.knockout) for one in found.elsewhere
        ),
        element=found.element,
        foreign=found.foreign,
        descriptive=found.descriptive,
        about=tuple(map(str, map(about, near.reasons))) if with_reasons else (),
        weak=_weak_words(near.reasons) if with_reasons else (),
        levels=_levels(found, markets),
    )


def _weak_words(reasons: Sequence[str]) -> tuple[str, ...]:
    return next((one.words for one in reasons if isinstance(one, Reason) and one.about is About.WEAK), ())


def _levels(found: screening.CloseMark, markets: Sequence[str]) -> tuple[InMarket, ...]:
    """The level in each of `markets`, in their order, where a mark or a further one of its words holds; () where there
    is no further one, and the mark has one level in all."""
    if not found.elsewhere and not found.in_markets:
        return ()
    told = {market: (concern, knockout) for market, concern, knockout in found.each_market}
    told |= {market: (one.concern, one.knockout) for one in found.elsewhere for market in one.markets}
    ordered = [market for market in markets if market in told] or [*told]
    return tuple(InMarket(market, _score(told[market][0]), told[market][1]) for market in ordered)


def _distinctiveness(found: goods.Distinctiveness | NotChecked) -> Distinctiveness | NotChecked:
    if isinstance(found, NotChecked):
        return NotChecked(found.check, found.because)
    signs = tuple(
        ProtectedSign(one.sign, one.serious, one.reason, one.ask, one.bars, one.misleads, one.told)
        for one in found.protected
    )
    called = found.called if found.called != found.category else ""
    reasons = tuple(found.reasons)
    markets = tuple(
        MarketView(one.market, one.called, _score(one.score), one.law, one.ground, one.language)
        for one in found.markets
    )
    return Distinctiveness(
        found.category, _score(found.score), reasons, found.hint, signs, called, found.laws, markets, found.places,
        found.laws_unknown_in, tuple(ItemView(one.goods, one.called) for one in found.by_item),
        found.strange_in,
    )


def _unread(found: goods.Distinctiveness | NotChecked) -> tuple[Unread, ...]:
    if isinstance(found, NotChecked):
        return (Unread(found.word, found.because),) if isinstance(found, UnknownWord) else ()
    return found.unread


def _reading(found: Found) -> Reading:
    match = f"{found.match}, {found.where}" if found.where else found.match
    meaning = found.meaning or _meaning_in(found.word, found.language)
    return Reading(found.language, found.word, meaning, found.kind, found.severity, match, found.abroad)


def _further_words(found: screening.Screening) -> Iterator[Reading]:
    """Words of the name that are ordinary words of the buyers' languages, with their meanings, and stand in no list of
    frequent words: the same dictionaries serve distinctiveness, so both say the same."""
    met = {} if isinstance(found.readings, NotChecked) else {(one.language, one.word): one for one in found.readings}
    name = parse(found.name)
    for language in (one.language for one in found.coverage):
        for word in dict.fromkeys(name.words):
            meaning = _meaning_in(word, language)
            if meaning and (language, word) not in met and not lexicon().known(word):
                where = "the whole name" if len(name.words) == 1 else f"the word {word}"
                yield Reading(language, word, meaning, "ordinary", 0, f"exact, {where}")


def _meaning_in(word: str, language: str) -> str:
    """What a word of a language means in English, as listed; "" where it is in no list."""
    listed = (one for one in translations(word, language) if one.score >= _LISTED and not one.guessed)
    return some([one.english for one in islice(listed, 2)], "or")


def _costs(entered: brief.Costs) -> Costs:
    items = tuple(
        CostItem(
            item.what,
            _decimal(item.figure),
            _decimal(item.times),
            item.currency,
            item.date.isoformat() if item.date else "",
            item.source,
        )
        for item in entered.items
    )
    return Costs(items, "" if entered.budget is None else _decimal(entered.budget), entered.currency)


def _decimal(amount: Decimal) -> str:
    """An amount in plain figures, without needless zeros."""
    return f"{amount.normalize():f}"


def _made_of(name: str, words: tuple[str, ...]) -> tuple[str, str]:
    """How a name is made, and what it means as a whole, as far as that is known in words that explain it."""
    unknown = [word for word in words if not lexicon().known(word) and "function word" not in kinds(word)]
    given = len(parse(name).words)
    if len(words) == 1:
        construction = "one word, in no English dictionary at hand" if unknown else "one English word"
    else:
        how = "joined" if given == 1 else "side by side"
        construction = f"{some(words)} {how}"
        if unknown:
            construction += f"; in no English dictionary at hand: {some(unknown)}"
    return construction, _known_phrase(name)


def _known_phrase(name: str) -> str:
    """What a name of several words, or of one that dictionaries lack, means as a whole, where the namer's vocabulary
    has it; "" if not."""
    from ..tables import open_table

    words = parse(name).words
    phrase = " ".join(words)
    told = len(words) > 1 or not lexicon().senses(phrase)  # of a known word the namer may have meant another sense
    if not told or not (listed := open_table("naming_ideas.tsv").get(f"find {phrase}")):
        return ""
    return f"{phrase} ({str(listed).partition('|')[0]})"


def _lists(searched: register.Register, home: Path | None) -> tuple[ListSearched, ...]:
    from ..marks.columns import Selection

    columns = searched.columns
    number = {name: at for at, name in enumerate(columns.sources)}
    lists = []
    for source in searched.sources:
        part = columns.arrays["source"] == number.get(source.name, -1)
        classes, offices, latest = _covered(searched, part)
        remarks = _remarks(searched, source)
        held = Selection(columns, part.nonzero()[0])
        lists.append(
            ListSearched(
                name=_shown(source.name, home),
                sha256=source.sha256,
                rows_read=source.rows,
                rows_left_out=source.left_out,
                without_words=source.figurative,
                dated=source.date,
                latest=latest,
                classes=classes,
                offices=tuple(one.office for one in offices),
                remarks=remarks,
                rows_of=offices,
                layout=source.format,
                marks=fingerprints(held),
                uk_from_eu=from_eu_marks(held),
            )
        )
    return tuple(lists)


def _covered(
    searched: register.Register, part: NDArray[np.bool_]
) -> tuple[tuple[int, ...], tuple[OfficeRows, ...], str]:
    """The classes, the offices and the latest date among a part of the marks, straight from the columns."""
    import numpy as np

    arrays = searched.columns.arrays
    mask = int(np.bitwise_or.reduce(arrays["classes"][part].astype(np.uint64), initial=0))
    counts: Counter[str] = Counter()
    for number, rows in zip(*np.unique(arrays["office"][part], return_counts=True), strict=True):
        counts[searched.columns.offices[int(number)].upper()] += int(rows)
    offices = [OfficeRows(name, counts[name]) for name in sorted(counts) if name]
    day = str(int(arrays["date"][part].max(initial=0)))
    latest = f"{day[:4]}-{day[4:6]}-{day[6:]}" if len(day) == 8 else ""
    return tuple(number for number in range(1, 46) if mask >> number & 1), tuple(offices), latest


def _remarks(searched: register.Register, source: marks.Source) -> tuple[str, ...]:
    """What was wrong with the rows of one list, the first few in words."""
    problems = [problem for problem in searched.problems if problem.source == source.name]
    told = [source.format] if source.format else []
    if source.files > 1:
        told.append(f"{source.files:,} files; the digest is that of theirs one after another")
    if source.replaced:
        told.append(f"{source.replaced:,} rows were replaced by later ones of the same marks")
    for problem in problems[:_MOST_REMARKS]:
        place = f"line {problem.line}: " if problem.line is not None else ""
        told.append(f"{place}{problem.what}")
    more = len(problems) - _MOST_REMARKS
    return (*told, *([f"and {plural(more, 'further remark')} like these"] if more > 0 else ()))


def _shown(name: str, home: Path | None) -> str:
    """A list's path as it stands from the brief's folder, where it lies inside it."""
    folder = f"{home.parent.as_posix()}/" if home is not None else "./"
    return name.removeprefix(folder)


def _addresses(found: Estimate | NotChecked) -> Addresses | NotChecked:
    if isinstance(found, NotChecked):
        return found
    domains = [
        Address("domain", one.shown, one.how if one.shown == one.text else f"{one.how}; registered as {one.text}")
        for one in found.domains
    ]
    handles: dict[str, list[Handle]] = {}
    for one in found.handles:
        handles.setdefault(one.text, []).append(one)
    limits = [
        Address("handle", text, _limits([one.limit for one in same], same[-1].lost)) for text, same in handles.items()
    ]
    return Addresses(_score(found.score), (*domains, *limits), tuple(found.reasons), found.slips[:_MOST_SLIPS])


def _limits(limits: list[int], lost: str) -> str:
    """What a handle is for: the limits on its length, and what of the name it leaves out."""
    return f"within {some(map(str, sorted(limits)), 'or')} characters" + (f"; loses {lost}" if lost else "")
