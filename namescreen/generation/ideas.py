"""From the terms of a brief to ideas: words that names may be made of, with their meanings and the reason for each.

The knowledge is ours (wordlists/curated/): existing words that a product may be named after, words of other languages
and figures of lore, each with its meaning in a few words, and short vivid words by world. An idea is as good as its
association with the terms of the brief, by the word itself or by its meaning.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from ..brief import Brief
from ..lexicon import lexicon
from ..tables import open_table
from ..text import fold, tokenize
from .brief_terms import BriefTerms
from .opposites import against
from .purpose import NAMED
from .ties import defined, known_words, meaning_of, sources_of, world_relevance
from .vocabulary import Word, pictures
from .vocabulary import word as word_facts

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["Idea", "first_names", "ideas_of", "meaning_of"]

_EVIDENT = 0.6  # what counts in the reason that is shown: that the word or its meaning says it, or a short list does
_WORLD = 0.55  # what standing in a world of the brief counts by itself; the rest is the word's own company
_ALONE_VIVID = 0.75  # of a world of short words, which is less special
_PICTURE = 0.012  # how relevant a word whose picture pleases must be to stand in a name
_LEAST = 0.1  # less relevant ideas are left out
_SAID = 0.3  # what a word said in passing of the goods counts, beside its weight, for what an idea is apt for
_GOODS = 0.25  # words of the goods describe: they may serve, but weigh little
_ARRAYS = ("associations", "ties")  # of an idea: they follow from the rest and the brief


class Idea(NamedTuple):
    """A word to make names of.

    `kind` says where it comes from: "concept" and "goods" (the brief), "world" (a short vivid word), "find" (an
    existing word with its `meaning`), "foreign", "lore". `associations` are those with each term of the brief,
    `term` the one with the strongest, and `weight` in [0, 1] the relevance to the whole brief; `ties` say how sure it
    is that the word is about each term (of existing words; None for others).
    `standing` is 1 for a word that makes a good name by itself, 0 for a poor one (by our own judgement), else 0.5;
    `delight` how it pleased a blind reader for what it suits, from 0 to 1, 0.5 if not rated;
    `worn` if firms of every trade carry it; `defined` if its meaning says mostly what the brief itself says;
    `written` is the word with its apostrophe, "" if it has none;
    `chosen` in [0, 1] how it pleased that reader for what the brief speaks of, by our short lists; 0 if on none;
    `listed` how far it pleased more than middlingly for all words of the brief together, as `weight` is; `against` how
    much it speaks against a concept; `matched` how well it would do for all words of the brief by what pleased for
    other subjects, `whole` for the brief as one subject; `suited` how far lists of what suits a product hold it;
    `promise` how words of its kind fared in whole briefs beside what all else foretells, as a share of full marks;
    `apt` how surely it belongs to one term by what we know that it is apt for.
    """

    word: str
    kind: str
    meaning: str
    associations: Associations
    term: str
    weight: float
    standing: float = 0.5
    chosen: float = 0.0
    delight: float = 0.5
    worn: bool = False
    defined: bool = False
    written: str = ""
    ties: Associations | None = None
    listed: float = 0.0
    against: float = 0.0
    matched: float = 0.0
    whole: float = 0.0
    suited: float = 0.0
    promise: float = 0.0
    apt: float = 0.0

    def __eq__(self, other: object) -> bool:
        """Whether all but the arrays, which have no one answer, is the same."""
        return isinstance(other, Idea) and self._plain() == other._plain()

    def __ne__(self, other: object) -> bool:
        return not self == other  # a tuple has its own

    def __hash__(self) -> int:
        return hash((self.kind, self.word))

    def _plain(self) -> tuple[object, ...]:
        return tuple(value for value, name in zip(self, self._fields, strict=True) if name not in _ARRAYS)

    @property
    def facts(self) -> Word:
        """What is known of the word itself."""
        return word_facts(self.word)

    @property
    def pos(self) -> str:
        """Its part of speech: of a word of the language, its leading one."""
        return self.facts.pos if self.kind not in ("foreign", "lore") else "n"

    @property
    def why(self) -> str:
        """What it is, and which term of the brief it is here for."""
        if self.kind == "concept":
            return "a concept"
        told = _told_of(self.term, self.meaning)
        return f"{told} (for {self.term})" if told else f"for {self.term}"

    @property
    def named(self) -> str:
        """The word with the term it is here for: kelp (for sea)."""
        return self.word if self.word == self.term else f"{self.word} (for {self.term})"

    @property
    def reason(self) -> str:
        """Why it is here, in words: skep: beehive woven of straw (for bee)."""
        return f"{self.word}: {self.why}"


def _told_of(term: str, meaning: str) -> str:
    """Of the meanings of a word, parted by semicolons, those that name what it is here for (four in hand, for tie: a
    knot, and no coach); all of them where none does."""
    meant = meaning.split("; ")
    if len(meant) == 1:
        return meaning
    forms = {term, *lexicon().bases(term)}
    return "; ".join([one for one in meant if any(_is_form(word, forms) for word in tokenize(one))] or meant)


def _is_form(word: str, forms: set[str]) -> bool:
    return word in forms or not forms.isdisjoint(lexicon().bases(word))


@cache
def first_names() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Plain first names, and what may stand before one."""
    names = tuple(entry.word for entry in known_words() if entry.kind == "first")
    return names, tuple(entry.word for entry in known_words() if entry.kind == "title")


@cache
def _worlds() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    rows = (value.split("|") for _, value in open_table("naming_worlds.tsv").items())
    return tuple((tuple(about.split()), tuple(words.split())) for about, words in rows)


def ideas_of(brief: Brief, brief_terms: BriefTerms, *, without: Iterable[str] = ()) -> tuple[Idea, ...]:
    """Every idea of a brief, the most relevant first; none that holds a dropped word or one to avoid."""
    avoided = {fold(word) for word in (*brief.avoid, *without)}
    found: dict[tuple[str, str], Idea] = {}
    for idea in (*_words_of_the_brief(brief_terms), *_words_with_meaning(brief_terms), *_world_words(brief_terms)):
        key = ("foreign" if idea.kind == "foreign" else "", idea.word.casefold())
        if idea.word.casefold() in avoided:
            continue
        other = found.get(key)
        if other is None:
            found[key] = idea
            continue
        heavier = max(idea, other, key=lambda one: one.weight)
        # what is known of an existing word stays with it, whatever else it is here for
        told = idea if idea.meaning and (heavier is idea or not other.meaning) else other
        found[key] = told._replace(weight=heavier.weight, associations=heavier.associations, term=heavier.term)
    return tuple(sorted(found.values(), key=lambda idea: (-idea.weight, idea.kind, idea.word)))


def _words_of_the_brief(brief_terms: BriefTerms) -> Iterator[Idea]:
    import numpy as np

    for place, term in enumerate(brief_terms.terms):
        associations = np.zeros(len(brief_terms.terms), np.float32)
        associations[place] = 1.0
        weight = 0.5 if term.is_concept else _GOODS * term.weight
        yield Idea(term.word, "concept" if term.is_concept else "goods", "", associations, term.word, weight)


def _words_with_meaning(brief_terms: BriefTerms) -> Iterator[Idea]:
    """Words whose meaning is associated with the brief, or that are known to suit its subjects."""
    import numpy as np

    sources = sources_of(brief_terms)
    associations, ties, chosen = sources.associations, sources.ties, sources.chosen
    evident = _EVIDENT * np.maximum(sources.seen, chosen) + (1 - _EVIDENT) * ties
    weights = brief_terms.relevances(associations)
    # a name for what is only said in passing of the goods tells little of them
    chosen *= np.where(brief_terms.concepts, 1.0, np.minimum(1.0, brief_terms.weights / NAMED) ** 2)
    picked, listed = chosen.max(axis=1, initial=0.0), brief_terms.relevances(sources.liked)
    matched, suited = brief_terms.relevances(sources.matched), brief_terms.relevances(sources.suited)
    apt = (sources.apt * (_SAID + brief_terms.weights).clip(0.0, 1.0)).max(axis=1, initial=0.0)
    says_the_brief, contrary = defined(brief_terms), against(brief_terms, ties)
    terms = {term.word for term in brief_terms.terms}
    at = (weights >= _LEAST).nonzero()[0]
    leading = (evident[at] * brief_terms.weights).argmax(axis=1)
    measures = (leading, weights, picked, says_the_brief, listed, contrary, matched, sources.whole, suited,
                sources.promise, apt)  # fmt: skip
    columns = [(one if one is leading else one[at]).tolist() for one in measures]  # one by one they cost far more
    for place, best, weight, chosen_for, says_it, liked, speaks_against, matching, as_one, suits, promise, fits in zip(
        at.tolist(), *columns, strict=True
    ):
        known = known_words()[place]
        # it says so in its language
        plain = known.kind == "foreign" and known.meaning.partition(": ")[2].casefold() in terms
        if known.kind not in ("first", "title") and known.word.casefold() not in terms and not plain:
            yield Idea(
                known.word, known.kind, known.meaning, associations[place], brief_terms.terms[best].word, weight,
                known.standing, chosen_for, known.delight, known.worn, says_it, known.written, ties[place], liked,
                speaks_against, matching, as_one, suits, promise, fits,
            )  # fmt: skip


def _world_words(brief_terms: BriefTerms) -> Iterator[Idea]:
    """Short vivid words of the worlds that the brief belongs to."""
    import numpy as np

    best: dict[str, Associations] = {}
    for about, words in _worlds():
        standing = world_relevance(brief_terms, about, _ALONE_VIVID)
        if not standing.any():
            continue
        for word in words:
            own = brief_terms.of_word(word)
            associations = np.where(standing > 0, standing * (_WORLD + (1 - _WORLD) * own), 0.7 * own)
            best[word] = np.maximum(associations, best[word]) if word in best else associations
    for word in pictures():
        if word not in best:
            best[word] = brief_terms.of_word(word)
    terms = {term.word for term in brief_terms.terms}
    for word, associations in best.items():
        weight = brief_terms.relevance(associations)
        if weight >= (_PICTURE if word_facts(word).charm == 1 else _LEAST) and word not in terms:
            yield Idea(
                word, "world", "", associations, brief_terms.terms[brief_terms.best_term(associations)].word, weight
            )
