"""The terms of a brief, and how strongly a word, or a meaning, is associated with each of them.

A brief is a handful of terms: its concepts, and the content words of its goods. A word is associated with a term by
`lexicon.association`. A word with a meaning is also associated by the best word of that meaning, the more strongly the
more of the meaning belongs to the brief. A name is worth showing if its words are associated with more than one term.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from ..brief import Brief, Concept
from ..lexicon import association, kinds, lexicon, zipf
from ..tables import open_table
from ..text import fold
from ..text.inflection import other_number
from .purpose import MODIFIES, NAMED, names_again, purpose_weights
from .senses import guide_words, newer_word, other_meanings
from .vocabulary import are_rivals, associations, is_known, places, rivals, synonyms
from .wanted import informative, unwanted, usable_words, words_of_concept

if TYPE_CHECKING:
    import numpy as np

    Places = np.ndarray[Any, np.dtype[np.int64]]
    Associations = np.ndarray[Any, np.dtype[np.float32]]
    """How strongly a word is associated with each term of a brief, in [0, 1], in the order of the terms."""

__all__ = ["BriefTerms", "Term", "goods_words", "informativeness", "likely_guides", "words_of"]

_WEAKEST = 0.15  # weaker associations are chance
_SHARPER = 1.6  # a power: close associations say more than many loose ones
_OTHER, _SYNONYM = 0.65, 0.9  # association of another word at most, and of a word with the same leading sense
_RIVAL = 0.3  # factor for another thing of the same kind, as hound is to cat
_GOODS = 12  # content words of the goods that become terms, the first ones
_GOODS_WEIGHT = 0.45  # of a word said of the goods, beside 1 for a concept
_ABOUT_OTHERS = 0.5
"""Factor for the words of a sentence that does not begin with the goods, but with whom they are for or what is amiss:
32 names for such words on first pages had 2.7 of readers, those for concepts 4.2."""
_AS_MUCH = 0.95  # what the words that say a newer word count in its place
_OFF_SENSE = 0.35  # factor for a word that belongs to a concept but not to its chosen meaning
_SPREAD_LEAST, _SPREAD_FULL = 0.4, 0.45
"""The factor if only one word of a meaning is associated; the mean association that counts in full."""
_STEPS = (0.5, 0.3, 0.16, 0.09, 0.05)
"""What the strongest association adds to relevance, then the next ones: two strong ones make a word apt."""
_SAYS_SOMETHING = 0.15  # the weight of a term that counts where terms are counted
_HOLDS = frozenset("tin box jar pot bottle bag bar packet sachet tube set kit pack pair bundle sheet roll".split())
"""What goods come in: "tins of tea" are tea (ours)."""
_CONCEPT = 0.4  # the weight from which a word of a concept of several is one itself
_AGAINST = 0.3  # factor for what goods are against: it tells which they are, but a name about it would mislead
_BATCH = 2048  # rows looked at together, so that a brief of a thousand concepts does not fill the memory
_VAGUE = frozenset(
    "people person user use made set kit piece home small large new old pack range product hobby amateur "
    "beginner".split()
)
"""Words of goods lists that distinguish no kind of goods (ours)."""
_MADE_OF, _MADE_FOR = frozenset(("of", "in", "from", "with")), frozenset(("for", "to", "that", "on", "by"))
_JOINS = frozenset(("and", "or"))
_DONE = frozenset("cut cast split knit ground bound wound".split())
"""Participles that are nouns too, where a noun and one of `_AFTER` stand around them (a bell cast in bronze)."""
_AFTER = _MADE_OF | _MADE_FOR


@dataclass(frozen=True)
class Term:
    """A word of the brief: `weight` 1 for a concept, less for a word of one of several (`words_of_concept`) and for a
    word of the goods; `associations` are those with each word of our ideas, by `vocabulary.places`."""

    word: str
    weight: float
    is_concept: bool
    associations: Associations = field(compare=False, repr=False)


@dataclass(frozen=True)
class BriefTerms:
    """The terms of a brief, concepts first; `phrases` are the places of those that stand in one concept of several
    words."""

    terms: tuple[Term, ...]
    phrases: tuple[tuple[int, ...], ...] = ()

    @classmethod
    def of(
        cls, brief: Brief, *, without: Iterable[str] = (), left: Mapping[str, Sequence[str]] | None = None
    ) -> BriefTerms:
        """The terms of `brief`, but for the words in `without`; of the words in `left` not in these meanings."""
        dropped = {fold(word) for word in without}
        concepts: dict[str, Concept] = {}
        weights: dict[str, float] = {}
        for concept in brief.concepts:
            for word, weight in words_of_concept(concept.word).items():
                if word not in dropped:
                    concepts[word], weights[word] = concept, max(weight, weights.get(word, 0.0))
        goods: dict[str, float] = {}
        for word, weight in goods_words(brief).items():
            forms = (word, *(lexicon().bases(word) or _known_number(word)))
            if not any(form in concepts or form in goods or form in dropped for form in forms) and len(goods) < _GOODS:
                goods[_likeliest(word, forms[1:])] = weight
        rows = _associations_of((*concepts, *goods))
        company, weights = (*concepts, *goods), weights | goods
        terms = []
        for word, row in zip(company, rows, strict=True):
            meanings = tuple((left or {}).get(word, ()))
            away = guide_words(Concept(word, meanings))
            guides = guide_words(concepts.get(word, Concept(word))) or likely_guides(word, company)
            if away and (not guides or guides[0] in away):
                guides = guide_words(Concept(word, other_meanings(word, meanings)))
            elif guides and not away and (chosen := concepts.get(word, Concept(word)).senses):
                away = guide_words(Concept(word, other_meanings(word, chosen)))  # springtime, where the source is meant
            in_sense = _in_sense(word, guides, row, away)
            terms.append(Term(word, weights[word], weights[word] >= _CONCEPT and word in concepts, in_sense))
        at = {word: place for place, word in enumerate(company)}
        said = (tuple(at[word] for word in words_of_concept(one.word) if word in concepts) for one in brief.concepts)
        return cls(tuple(terms), tuple(phrase for phrase in said if len(phrase) > 1))

    @cached_property
    def weights(self) -> Associations:
        """The weight of each term."""
        import numpy as np

        return np.array([term.weight for term in self.terms], np.float32)

    @cached_property
    def weight_of(self) -> Mapping[str, float]:
        """The weight of each term by its word."""
        return {term.word: term.weight for term in self.terms}

    @cached_property
    def shares(self) -> Associations:
        """What each term counts where terms are counted: less where another one names the same (walk, walker), nothing
        if it says next to nothing of the goods (away, again)."""
        import numpy as np

        at = [places().get(term.word, -1) for term in self.terms]
        named = np.array([[place >= 0 and term.associations[place] >= _SYNONYM for place in at] for term in self.terms])
        same = named | named.T
        np.fill_diagonal(same, True)
        return np.asarray((self.weights >= _SAYS_SOMETHING) / same.sum(axis=1), np.float32)

    @cached_property
    def concepts(self) -> np.ndarray[Any, np.dtype[np.bool_]]:
        """Whether each term is a concept."""
        import numpy as np

        return np.array([term.is_concept for term in self.terms], bool)

    @cached_property
    def associations(self) -> Associations:
        """The association of each term with each word of our ideas: a row for each term."""
        import numpy as np

        rows = [term.associations for term in self.terms]
        whole = rows[0].base if rows else None
        if whole is not None and whole.shape[:1] == (len(rows),) and all(row.base is whole for row in rows):
            return whole  # they are its rows already
        return np.array(rows, np.float32).reshape(len(rows), -1)

    @cached_property
    def present(self) -> list[float]:
        """How strongly any of the terms is associated with each word of our ideas."""
        return list(self.associations.max(axis=0, initial=0.0).tolist())

    def of_word(self, word: str) -> Associations:
        """How strongly a word is associated with each term."""
        import numpy as np

        if is_known(word):
            return np.asarray(self.associations[:, places()[word]])
        found = [1.0 if word == term.word else _association_with(term.word, word) for term in self.terms]
        return np.array(found, np.float32)

    def of_meanings(self, keys: Places, weights: Associations, starts: Places) -> Associations:
        """How strongly meanings are associated with each term, a row for each meaning: by the best word of the meaning,
        less if the rest of the meaning has nothing to do with the brief. `keys` are the places of the words of one
        meaning after the other, `weights` their weights in [0, 1], `starts` where each meaning starts; none is
        empty."""
        import numpy as np

        rows, best = [], np.zeros(len(keys), np.float32)
        for term in self.terms:  # one by one: a brief of a thousand concepts would fill the memory
            strength = term.associations[keys]
            np.maximum(best, strength * np.float32(term.weight), out=best)
            rows.append(np.maximum.reduceat(strength * weights, starts))
        spread = np.add.reduceat(best * weights, starts) / np.add.reduceat(weights, starts)
        share = _SPREAD_LEAST + (1 - _SPREAD_LEAST) * np.minimum(1.0, spread / _SPREAD_FULL)
        return np.asarray((np.array(rows) * share).T, np.float32)

    def of_meaning(self, keys: Iterable[tuple[str, float]]) -> Associations:
        """How strongly one meaning is associated with each term; `keys` are its words with their weights in [0, 1]."""
        import numpy as np

        known = [(places()[key], weight) for key, weight in keys if key in places()]
        if not known:
            return np.zeros(len(self.terms), np.float32)
        at, weights = zip(*known, strict=True)
        return np.asarray(self.of_meanings(np.array(at), np.array(weights, np.float32), np.array([0]))[0])

    def relevance(self, associations: Associations) -> float:
        """Relevance to the whole brief, in [0, 1]: full association with one concept gives half, with two 0.8."""
        return float(self.relevances(associations[None, :])[0])

    def relevances(self, associations: Associations) -> Associations:
        """`relevance` of each row."""
        import numpy as np

        most = min(len(_STEPS), len(self.terms))
        steps = np.array(_STEPS[:most], np.float32) / sum(_STEPS[:4])
        found = np.zeros(len(associations), np.float32)
        for start in range(0, len(associations) if most else 0, _BATCH):
            weighted = associations[start : start + _BATCH] * -self.weights
            if len(weighted) > 1:  # to sort one row costs less than to part it
                weighted = np.partition(weighted, most - 1, axis=1)[:, :most]
            weighted.sort(axis=1)
            with np.errstate(invalid="ignore"):  # some kernels of BLAS report lanes that hold no number
                found[start : start + _BATCH] = -weighted[:, :most] @ steps
        return np.asarray(np.minimum(np.maximum(found, 0.0), 1.0))

    def best_term(self, associations: Associations) -> int:
        """The place of the term with the strongest weighted association."""
        return int((associations * self.weights).argmax())

    def strongest(self, associations: Associations) -> float:
        """The strongest weighted association."""
        return float((associations * self.weights).max(initial=0.0))


def _likeliest(word: str, bases: Sequence[str]) -> str:
    """The base form that goods mean: the longest that the word begins with; of a plural that is a word of its own too
    (hooks, boards), the singular if that is commoner."""
    best = max(bases, key=lambda form: (word.startswith(form), len(form)), default=word)
    singular = next((form for form in bases if form in other_number(word)), best)
    return singular if best == word and zipf(singular) > zipf(word) else best


def _known_number(word: str) -> list[str]:
    """The other number of a word that WordNet does not know, if that is known here: tealight, of tealights."""
    return [] if lexicon().known(word) else sorted(other_number(word) & places().keys())


def informativeness(word: str) -> float:
    """How informative a word of a text is, in [0, 1]: common words say little."""
    return informative(zipf(word))


def goods_words(brief: Brief) -> dict[str, float]:
    """The content words of the goods, each with its weight: more for the nouns that name the goods, before the first
    word that says of what, for what or how they are, and of these the most for the last of a compound (coat hooks are
    hooks); less for what is no noun, or part of a word with a hyphen (hand-thrown), which says how they are."""
    found: dict[str, float] = {}
    for text in (brief.goods, brief.product):
        tokens = [(part, "-" in token) for token in fold(text).split() for part in token.split("-")]
        words = [token.strip(".,:;()'") for token, _ in tokens]
        away = unwanted(words)
        begin = _naming_from([token for token, _ in tokens], words)
        further = bool(found)  # the goods have named it, and this is a sentence about it
        names, met, naming, known = not further or names_again(words, found), False, [""], set(found)
        share = 1.0 if names else _ABOUT_OTHERS
        for place, (token, hyphened) in enumerate(tokens):
            word, last = words[place], words[place - 1] if place > begin else ""
            if word in _JOINS:
                naming.append("")
            if met:
                if word in _MADE_OF or word in _MADE_FOR:
                    names = names and word == "of" and not _HOLDS.isdisjoint((last, *lexicon().bases(last)))
                elif word in _DONE and naming[-1] and words[place + 1 : place + 2] and words[place + 1] in _AFTER:
                    names = False
            here = names and place >= begin
            plain = len(word) > 2 and word.isalpha() and word.isascii() and word not in _VAGUE
            if plain and "function word" not in kinds(word):
                bases = lexicon().bases_by_pos(word)
                noun = "n" in bases or not bases
                if here and not hyphened and noun:
                    naming.append(word)
                weight = NAMED if here and not hyphened else share * _GOODS_WEIGHT * informativeness(word)
                found.setdefault(word, weight * (1.0 if noun else 0.5) * (_AGAINST if word in away else 1.0))
                met = met or place >= begin
            elif further and met and word not in _JOINS and word not in _MADE_OF:
                names = False  # a concentrate you keep in the fridge
            names = names and not (place >= begin and token.endswith((",", ":", ";")))
        if not further:
            found.update(purpose_weights(words, [token for token, _ in tokens], found, away))
        before = [word for word in _modifiers(naming) if word not in away | known]
        least = 0.0 if further else MODIFIES
        found.update((one, max(least, _GOODS_WEIGHT * informativeness(one))) for one in before if found[one] >= NAMED)
    return found


def _naming_from(tokens: Sequence[str], words: Sequence[str]) -> int:
    """Where goods begin to be named: of "we cut old sails into bags", after into; of "I bind notepads", after the verb;
    of "for people who cycle: a cape", after the first mark."""
    if words[:1] in (["i"], ["we"]):
        return words.index("into") + 1 if "into" in words else 2
    if words[:1] == ["for"]:
        return next((place for place, token in enumerate(tokens, 1) if token.endswith((":", ","))), 0)
    return 0


def _modifiers(naming: Sequence[str]) -> Iterator[str]:
    """Of the nouns that name goods, with "" between those that are joined, those that another one follows; a word for
    what the goods come in does not count (a tea tin holds tea)."""
    for word, following in pairwise(naming):
        if word and following and _HOLDS.isdisjoint((following, *lexicon().bases(following))):
            yield word


def _in_sense(word: str, guides: tuple[str, ...], own: Associations, away: tuple[str, ...] = ()) -> Associations:
    """The associations of a term, of its word's `own`: where `guides` tell its meaning, words that belong to that
    meaning too count in full, the others little; nothing those that rather belong to the meaning that `away` tells."""
    import numpy as np

    if not guides:
        return own
    meant = np.max(_associations_of(guides), axis=0)
    here = places().get(word)
    if here is not None:  # the word itself, among the guides, does not tell its sense
        meant[here] = 0.0
    if not own.any():  # a word that the lexicon lacks is what these say
        return np.asarray(meant * _AS_MUCH, np.float32)
    found = own * np.where(meant > 0, 1.0, _OFF_SENSE)
    found = np.maximum(found, meant * np.where(own > 0, 0.9, 0.7))
    if away:
        found = np.where(np.max(_associations_of(away), axis=0) > meant, 0.0, found)
    return np.asarray(found, np.float32)


def words_of(brief: Brief) -> tuple[str, ...]:
    """The words of a brief, by which the meaning of one of them is chosen: those of its concepts and of its goods."""
    return (*(word for concept in brief.concepts for word in usable_words(concept.word)), *goods_words(brief))


def likely_guides(word: str, company: Iterable[str]) -> tuple[str, ...]:
    """The words that guide to the meaning of an everyday word that the other terms of a brief speak of, and to that of
    a word that the lexicon lacks (`newer_word`); empty if they leave it open, or it has no meanings that we know to be
    told apart."""
    if said := newer_word(word):
        return said
    senses = [sense.split(";") for sense in (open_table("naming_senses.tsv").get(word) or "").split("/") if sense]
    others = {form for one in company if one != word for form in (one, *lexicon().bases(one))}
    met = [len(others.intersection(" ".join(sense).split())) for sense in senses]
    best = max(met, default=0)
    if not best or met.count(best) > 1:
        return ()
    return tuple(senses[met.index(best)][0].split())


@lru_cache(maxsize=1 << 14)
def _association_with(term: str, word: str) -> float:
    """The association of a term with a word that is not among our ideas."""
    value = association(term, word) or 0.0
    return (_OTHER * value**_SHARPER if value >= _WEAKEST else 0.0) * (_RIVAL if are_rivals(term, word) else 1.0)


def _inflected(word: str) -> Iterator[str]:
    """The regular inflections of a word, and the agent (fold: folds, folded, folding, folder)."""
    stem = word.removesuffix("e")
    doubled = word + word[-1] if len(word) > 2 and word[-1] not in "aeiouwxy" and word[-2] in "aeiou" else word
    short = doubled != word and sum(letter in "aeiou" for letter in word) == 1
    stems = dict.fromkeys((doubled,) if short else (stem, doubled))  # striped is not of strip
    yield from (f"{word}s", f"{word}es")
    yield from (f"{one}{ending}" for one in stems for ending in ("ed", "ing"))
    yield from (f"{one}er" for one in stems if _does(f"{one}er", word))


@lru_cache(maxsize=1 << 12)
def _does(agent: str, verb: str) -> bool:
    """Whether a word in -er means who or what does something, in a sense as common as half its commonest one (WordNet's
    derived forms): a feeder feeds, a flower does not flow."""
    book = lexicon()
    strengths = book.sense_strengths(agent)
    doing = [
        strength for sense, strength in strengths
        if any(verb in book.entry(one).words for one in book.related_ids(sense, "+") if one.startswith("v"))
    ]  # fmt: skip
    return max(doing, default=0.0) * 2 >= max((strength for _, strength in strengths), default=1.0)


@lru_cache(maxsize=4)
def _associations_of(terms: tuple[str, ...]) -> Associations:
    """The association of each word with each word of our ideas; 1 for itself and its base forms. Do not change the
    result."""
    import numpy as np

    found = associations(terms)
    found[found < _WEAKEST] = 0.0
    np.power(found, _SHARPER, out=found)
    found *= _OTHER
    for row, term in zip(found, terms, strict=True):
        row[rivals(term)] *= _RIVAL
        row[synonyms(term)] = _SYNONYM
        forms = (term,) if lexicon().known(term) else (term, *lexicon().bases(term))  # evening is not even
        if forms[-1].endswith("er") and _does(forms[-1], forms[-1].removesuffix("er")):
            forms = (*forms, forms[-1].removesuffix("er"))  # a starter starts
        row[[places()[form] for form in (*forms, *_inflected(forms[-1])) if form in places()]] = 1.0
    return found
