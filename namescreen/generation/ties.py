"""What ties the existing words to the terms of a brief, source by source, and how sure that makes the tie.

A word is tied to a term by its meaning, by itself, by what it is apt for, by the lists of what suits a product, and by
the short lists. These are not equally sure: of words that a namer would put on a short list most are there, so the
lists tell how much each source is worth (wordlists/build/naming_ties.py).
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ..tables import open_table
from .brief_terms import BriefTerms
from .matching import matches
from .purpose import NAMED
from .short_lists import NAMED_AS, english_lists, met_by_lists, on_short_lists, unlisted
from .vocabulary import frequencies, places
from .wanted import informative

if TYPE_CHECKING:
    from .brief_terms import Associations, Places

__all__ = [
    "Known", "Lists", "Sources", "defined", "facets_of_words", "keys_of_meanings", "known_words", "meaning_of",
    "sources_of", "world_relevance",
]  # fmt: skip

_OWN = 0.85  # what a word's own company counts beside its meaning, which is surer
_MEANT = 0.8  # what its meaning counts beside what it is known to be apt for
_FACET_SHARPER = 1.5  # what a word is apt for is told in plain words, so a loose tie to one says little
_FIRM = 0.45  # how strongly a term must bring the subject of a world to mind for its words to count
_SURE = 0.6  # as much for a word of the goods, which may only say what they are made of
_LEAST_TIED = min(_FIRM, _SURE, NAMED_AS) - 1e-6  # for numbers of half the length
_ALONE, _ALONE_LOOSE = 0.55, 0.3  # what is left of a world of which one term alone speaks, or only loosely
_LATER = 0.012  # what each place in a list of apt words costs
_STAND_INS = 24  # words that stand in for a short list
_LIKELY, _PLEASING = 0.6, 0.4  # how surely one that matches in full is tied to its term, and how it would please
_MOSTLY = 0.5  # the share of the words of a meaning that the brief says itself, from which it describes


class Known(NamedTuple):
    """An existing word: where it comes from ("find", "foreign", "lore", "saying", or a "first" name or "title"), and
    what is known of it; see `Idea`."""

    kind: str
    word: str
    meaning: str
    standing: float
    delight: float
    worn: bool
    written: str


@cache
def known_words() -> tuple[Known, ...]:
    """Every existing word, in the order of the tables."""
    found = []
    for key, value in open_table("naming_ideas.tsv").items():
        kind, _, word = key.partition(" ")
        meaning, _, worth = value.partition("|")
        standing, delight, worn, written = _worth(worth)
        found.append(Known(kind, word, meaning, standing, delight, worn, written or word))
    return tuple(found)


@lru_cache(maxsize=1 << 10)  # most words are worth what many others are
def _worth(told: str) -> tuple[float, float, bool, str]:
    standing, delight, worn, written = told.split("/") if told else ("", "", "", "")
    return float(standing or 0.5), float(delight or 0.5), worn == "1", written


@cache
def _meanings() -> dict[str, str]:
    return {one.word.casefold(): one.meaning for one in reversed(known_words())}


def meaning_of(word: str) -> str:
    """The meaning of one of our existing words, in a few words; "" for others."""
    return _meanings().get(word, "")


class Lists(NamedTuple):
    """Lists of words one after the other: the owner of each list, its words' places and weights, where it starts."""

    owners: Places
    places: Places
    weights: Associations
    starts: Places


def _numbers(row: str) -> Places:
    import numpy as np

    return np.fromstring(open_table("naming_keys.tsv").get(row) or "", np.int64, sep=" ")


def _lists(counts: Places, places: Places, weights: Associations) -> Lists:
    """The lists that are not empty, of as many words each as `counts` says."""
    owners = counts.nonzero()[0]
    return Lists(owners, places, weights, (counts.cumsum() - counts)[owners])


@cache
def keys_of_meanings() -> Lists:
    """The words of each meaning, weighted by how much they say."""
    import numpy as np

    at = _numbers("key places")
    known = frequencies()
    told = {frequency: informative(frequency) for frequency in set(known)}  # some hundreds of steps
    says = np.array([told[frequency] for frequency in known], np.float32)
    return _lists(_numbers("key counts"), at, says[at])


@cache
def facets_of_words() -> Lists:
    """What each word is apt for, the first a little surer than the last."""
    import numpy as np

    counts, places = _numbers("facet counts"), _numbers("facet places")
    before = np.arange(len(places)) - np.repeat(counts.cumsum() - counts, counts)
    return _lists(counts, places, (1 - _LATER * before).astype(np.float32))


@cache
def _words_of_phrases() -> Lists:
    """The words of each phrase that say something."""
    import numpy as np

    places = _numbers("phrase places")
    return _lists(_numbers("phrase counts"), places, np.ones(len(places), np.float32))


@cache
def words_of_names() -> Lists:
    """The words that say something of each existing word or phrase: itself, or those of the phrase."""
    import numpy as np

    phrases, (single, at) = _words_of_phrases(), _single_finds()
    counts = np.zeros(len(known_words()), np.int64)
    counts[phrases.owners] = np.diff(np.append(phrases.starts, len(phrases.places)))
    owners = np.concatenate([np.repeat(np.arange(len(counts)), counts), np.array(single, np.int64)])
    counts[single] = 1
    order = np.argsort(owners, kind="stable")
    here = np.concatenate([phrases.places, np.array(at, np.int64)])[order]
    return _lists(counts, here, np.ones(len(here), np.float32))


@cache
def _suits() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    rows = (value.split("|") for _, value in open_table("naming_suits.tsv").items())
    return tuple((tuple(about.split()), tuple(words.split(", "))) for about, words in rows)


class Sources(NamedTuple):
    """How strongly each existing word is tied to each term of a brief, in [0, 1], by its `meaning`, by `itself`, as a
    phrase by what a word of it has `said`, by what it is `apt` for, by the lists of what is `suited` to a product, and
    as `listed` on short lists; `chosen` is the last times how it pleased there, `liked` the same where only what
    pleased well counts, and `matched` how well it would do by what pleased for other subjects (`matching`). A row for
    each word; `whole` is how well each word would do for the brief as one subject, `promise` how words of its kind
    fared in whole briefs."""

    meaning: Associations
    itself: Associations
    said: Associations
    apt: Associations
    suited: Associations
    listed: Associations
    chosen: Associations
    liked: Associations
    matched: Associations
    whole: Associations
    promise: Associations

    @property
    def seen(self) -> Associations:
        """The association that a reader sees in a word or its meaning."""
        import numpy as np

        said = np.float32(_OWN) * np.maximum(self.itself, self.said)
        return np.asarray(np.maximum(np.float32(_MEANT) * self.meaning, said))

    @property
    def associations(self) -> Associations:
        """The association by the strongest of all sources."""
        import numpy as np

        return np.asarray(np.maximum.reduce((self.seen, self.apt, self.suited, self.listed)))

    @property
    def ties(self) -> Associations:
        """How sure the tie of each word to each term is by all sources together, in [0, 1]: the weight of the evidence
        that a short list for the term would hold the word, as a share of the most. It is sure on a short list, and
        where a word of a phrase says it."""
        import numpy as np

        found = np.zeros(self.meaning.shape, np.float32)
        for source, (at, worth) in _worth_of_sources().items():
            strength = getattr(self, source)
            met = strength > at[0]
            found[met] += np.interp(strength[met], at, worth).astype(np.float32)
        return np.asarray(np.maximum.reduce((found.clip(0.0, 1.0), self.said, self.listed)))


@cache
def _worth_of_sources() -> dict[str, tuple[list[float], list[float]]]:
    """For each source strengths, and what each adds to how sure a tie is."""
    found = {}
    for source, row in open_table("naming_ties.tsv").items():
        pairs = [pair.split(":") for pair in row.split()]
        found[source] = [float(at) for at, _ in pairs], [float(worth) for _, worth in pairs]
    return found


def sources_of(brief_terms: BriefTerms) -> Sources:
    """What ties each existing word to each term."""
    import numpy as np

    nothing = np.zeros((len(known_words()), len(brief_terms.terms)), np.float32)
    meaning, itself, said, apt, suits, listed, chosen, liked = (nothing.copy() for _ in range(8))
    keys, facets, phrases = keys_of_meanings(), facets_of_words(), _words_of_phrases()
    meaning[keys.owners] = brief_terms.of_meanings(keys.places, keys.weights, keys.starts)
    known, at = _single_finds()
    itself[known] = brief_terms.associations[:, at].T
    for place, term in enumerate(brief_terms.terms):
        said[phrases.owners, place] = np.maximum.reduceat(term.associations[phrases.places], phrases.starts)
        if len(facets.owners):
            told = (term.associations**_FACET_SHARPER)[facets.places] * facets.weights
            apt[facets.owners, place] = np.maximum.reduceat(told, facets.starts)
    lists = english_lists()
    met = met_by_lists(brief_terms, lists)
    suited, picked = _suited(brief_terms), on_short_lists(brief_terms, met, lists, meaning_of)
    met_words = suited.keys() | picked.keys()
    for place, one in enumerate(known_words()):
        word = one.word.casefold()
        if word not in met_words:
            continue
        if one.kind in ("find", "lore") and word in suited:
            suits[place] = suited[word]
        if one.kind not in ("first", "title") and word in picked:
            listed[place], chosen[place], liked[place] = picked[word]
    texts = [term.word for term in brief_terms.terms]
    matched, whole, promise = matches(texts, brief_terms.weights, words_of_names(), keys, len(known_words()))
    for place in unlisted(met):
        if brief_terms.terms[place].weight >= NAMED:
            _stand_in(matched[:, place], listed[:, place], chosen[:, place])
    return Sources(meaning, itself, said, apt, suits, listed, chosen, liked, matched, whole, promise)


def _stand_in(matched: Associations, listed: Associations, chosen: Associations) -> None:
    """Put the words that match a term best in place of the short list that it lacks."""
    import numpy as np

    of_names = np.where([one.kind == "find" for one in known_words()], matched, 0.0)
    best = np.argsort(-of_names, kind="stable")[:_STAND_INS]
    share = of_names[best].clip(0.0, 1.0)
    listed[best], chosen[best] = np.maximum(listed[best], _LIKELY * share), np.maximum(chosen[best], _PLEASING * share)


def defined(brief_terms: BriefTerms) -> Associations:
    """Of each word that has a meaning, whether that says mostly what the brief itself says, in two words or more."""
    import numpy as np

    keys = keys_of_meanings()
    same = (brief_terms.associations[:, keys.places] >= NAMED_AS).any(axis=0)
    said, of = np.add.reduceat(same, keys.starts, dtype=np.int64), np.diff(np.append(keys.starts, len(keys.places)))
    found = np.zeros(len(known_words()), bool)
    found[keys.owners] = (said > 1) & (said >= _MOSTLY * of)
    return found


@cache
def _single_finds() -> tuple[list[int], list[int]]:
    """The existing words that are one word, among all that is known, and their places."""
    finds = ((at, one.word) for at, one in enumerate(known_words()) if one.kind == "find")
    rows = [(at, places()[word]) for at, word in finds if word in places()]
    return [at for at, _ in rows], [place for _, place in rows]


def _suited(brief_terms: BriefTerms) -> dict[str, Associations]:
    """The words that suit the subjects of the brief, each with its association with each term."""
    import numpy as np

    found: dict[str, Associations] = {}
    for about, words in _suits():
        standing = world_relevance(brief_terms, about)
        if standing.any():
            for place, one in enumerate(words):
                associations = standing * np.float32(max(0.3, 1 - _LATER * place))
                found[one] = np.maximum(associations, found[one]) if one in found else associations
    return found


def world_relevance(brief_terms: BriefTerms, about: tuple[str, ...], alone: float = _ALONE) -> Associations:
    """How surely each term belongs to a world: less if no other term does, because a single word may mean something
    else there (bath salt, table salt)."""
    import numpy as np

    at = [places()[word] for word in about if word in places()]
    if not any(brief_terms.present[place] >= _LEAST_TIED for place in at):  # as of most worlds
        return np.zeros(len(brief_terms.terms), np.float32)
    met = brief_terms.associations[:, at]
    top = met.max(axis=1)
    first = (met * (1 - _LATER * np.arange(met.shape[1]))).max(axis=1)
    order = np.argsort(-top)
    others = np.full(len(top), top[order[0]])
    others[order[0]] = top[order[1]] if len(top) > 1 else 1.0
    agreed = np.minimum(1.0, others / NAMED_AS)
    named = first * (alone + (1 - alone) * agreed)
    loose = np.where(top >= np.where(brief_terms.concepts, _FIRM, _SURE), first, 0.0) * (_ALONE_LOOSE + agreed**2 / 2)
    return np.asarray(np.where(top >= NAMED_AS, named, loose), np.float32)
