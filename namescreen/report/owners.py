"""Questions on who holds the marks near a name: words that many owners share, and families of one owner's marks."""

from __future__ import annotations

from collections import defaultdict
from itertools import starmap

from ..outcome import NotChecked
from ..plain_text import plural, shorten, some
from ..screening.crowd import says_little
from ..text import parse
from .findings import is_of_other_goods
from .model import NameEntry, Report

__all__ = ["crowds", "on_shared_words"]

_BEGINNING = 4  # letters that marks of a family have in common at least
_FAMILY = 3  # close marks of one owner that are called a family (common practice, no source)


def crowds(entry: NameEntry) -> dict[str, str]:
    """Of each word that many owners share: how many owners' marks the lists have with it, and in which markets, as a
    sentence without its end."""
    owners: dict[str, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
    for one in entry.shared_words:
        count = f"of {'at least ' if one.at_least else ''}{plural(one.owners, 'owner')}"
        owners[one.word][count] += [one.market] if one.market else []
    return {
        word: f"The lists have marks with {word} for related goods {some(starmap(_where, told.items()))}"
        for word, told in owners.items()
    }


def _where(count: str, markets: list[str]) -> str:
    return f"{count} in {'each of ' if len(markets) > 1 else ''}{some(markets)}" if markets else count


def on_shared_words(entry: NameEntry, report: Report) -> list[str]:
    """A word that many owners share is weak; one owner's many marks may be a family (TMEP 1207.01(d)). Not asked about
    a word that is the whole name, names the goods or is very common: there it would tell nothing new.
    """
    if isinstance(entry.marks, NotChecked):
        return []
    decides = "the rest of the name decides" if len(entry.words) > 1 else "small differences tell marks apart"
    told = {word for word in entry.words if not says_little(word, report.goods)}
    held: dict[tuple[str, str], int] = defaultdict(int)
    for found in entry.marks:
        alive = [mark for mark in (found.mark, *found.others) if not mark.is_dead and mark.owner]
        for word in set(parse(found.mark.text).words) & told:
            for owner in {shorten(mark.owner, 60) for mark in alive}:
                held[word, owner] += 1  # once: the same words registered again make no family
    crowded = [f"{told}: is the word weak there, so that {decides}?" for told in crowds(entry).values()]
    families = [
        f"{owner} holds {plural(count, 'close mark')} with the word {word}: could it claim a family of marks?"
        for (word, owner), count in sorted(held.items())
        if count >= _FAMILY and len(entry.words) > 1
    ]
    return crowded + (families or _families(entry))


def _families(entry: NameEntry) -> list[str]:
    """Live marks of one owner that begin alike, as a word of the name does, one of them at least for related goods:
    a family is asked about however mild each of them is by itself."""
    held: dict[tuple[str, str], set[str]] = defaultdict(set)
    related: set[str] = set()
    marks = () if isinstance(entry.marks, NotChecked) else entry.marks
    for found in marks:
        if found.mark.owner and not found.mark.is_dead and found.bites is not False:
            if not is_of_other_goods(found):
                related.add(shorten(found.mark.owner, 60))
            for word in (one for one in parse(entry.name).words if len(one) > _BEGINNING):
                for length in range(_BEGINNING, len(word) + 1):
                    if any(other.startswith(word[:length]) for other in parse(found.mark.text).words):
                        held[shorten(found.mark.owner, 60), word[:length]].add(shorten(found.mark.text, 40))
    longest: dict[str, str] = {}
    for (owner, beginning), texts in held.items():
        within = [text for text in texts if beginning not in parse(text).words]  # else asked about as a shared word
        if owner in related and len(texts) >= _FAMILY and within and len(beginning) > len(longest.get(owner, "")):
            longest[owner] = beginning
    return [
        f"{owner} holds {some(sorted(held[owner, beginning]))}, which begin with {beginning}: could it claim a family "
        "of marks, if it uses them?"
        for owner, beginning in sorted(longest.items())
    ]
