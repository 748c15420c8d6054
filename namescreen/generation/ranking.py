"""The numbers a candidate is ranked by: each in [0, 1], 1 the better end, each with a stated meaning.

Their weights were fitted on names that readers rated without knowing who had made them
(wordlists/build/name_ranker.py); none of those names is kept.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache, reduce
from typing import TYPE_CHECKING

from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import kinds, lexicon, zipf
from ..tables import open_table
from ..text import fold, split_closed_compound
from . import word_parts
from .appeal import appeal
from .brief_terms import BriefTerms, goods_words
from .candidate import Proposal, form_of
from .constructions.changed import kept, spared
from .ideas import Idea
from .name_sounds import echo, rhythm, sayable, size, syllables
from .purpose import MODIFIES, NAMED
from .vocabulary import are_rivals, word
from .wares import head_of

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["AS_IT_IS", "PARTS", "WHOLE", "Judge", "default_weights", "resemblance"]

PARTS = {
    "sense": "how much of the brief its sources bring to mind: 1 = two concepts as well as any word does",
    "widely": "how far beyond a single concept its sources reach in the brief: 0 = not, 1 = as widely as any word",
    "many": "to how many words of the brief, the goods' too, its sources are tied: 0 = none, 1 = to four",
    "true": "how strongly the weakest of its sources belongs to one term of the brief, and loosely to a second",
    "ware": "how surely it is about what the goods themselves are, or are for: 0 = about concepts alone, 1 = surely",
    "foremost": "how much what it is about is what the brief names first: 1 = its first concept, 0.4 = goods alone",
    "apart": "how far its two sources belong to different terms: 1 = each another one; 0.5 where there is one source",
    "direct": "how far its sources are words of the brief, the goods' too: 0 = none, 1 = all, or one word of a saying",
    "single": "whether just one of its two words is the brief's own: two of them describe, none may be far",
    "standing": "how well a word stands by itself as a name, by our own judgement; 0.5 if not judged, or made of parts",
    "chosen": "how its sources pleased a blind reader for a subject of the brief: 1 = much, 0 = little, or not rated",
    "listed": "how far it pleased more than middlingly for the words of the brief together: 1 = as can be for two",
    "matched": "how well it would do for the words of the brief by what pleased that reader for other subjects",
    "whole": "how well it would do by that for the brief as one subject: 1 = as well as the best dozen of a subject",
    "suited": "how far lists of what suits a product hold it for the words of the brief",
    "apt": "how surely it belongs to one term of the brief by what we know that it is apt for",
    "aside": "how surely it belongs to what is only said in passing of the goods, or of a problem that they solve",
    "special": "for how few subjects short lists hold it: 1 = for none or one, 0 = for thirty and more",
    "agrees": "whether it keeps the mood: 0 = it speaks against a concept, as a bugle call against quiet",
    "delight": "how its sources pleased that reader for all that they suit: 1 = a delight, 0 = flat; 0.5 if not rated",
    "pleasing": "how it pleased that reader for all that it suits, as far as it belongs to the brief: true x delight",
    "appeal": "how words of their kind pleased as names: by their vectors, how common and how long they are",
    "unworn": "how far its sources are words that firms of every trade do not carry already: 0 = all do, 1 = none does",
    "known": "how nearly as well known its words are as good names are: 1 = known, not worn, 0 = as common as any word",
    "untraded": "whether its first meaning is no article of trade: 0 = a food, or made of parts; 0.5 = an artefact",
    "picture": "how concrete its sources are: 1 = seen at a glance",
    "living": "whether a creature or plant is among its sources: 1 = yes",
    "pleasant": "how its sources feel: 0 = unpleasant, 0.5 = neutral, 1 = pleasant",
    "charm": "how its sources look and sound in a name, by our own judgement of single words",
    "company": "how much its two sources have to do with each other: 0 = nothing, 1 = as much as any two words",
    "indirect": "how indirectly it speaks of the goods: 0 = it names them, 1 = nothing in it does",
    "telling": "the other way round: 1 = it names the goods, or shows a word of the brief",
    "fresh": "how little worn its sources are: 0 = as common as any word, 1 = seldom met",
    "familiar": "how well known the least known of its words is: 1 = as everyday words are",
    "punned": "whether a word that belongs is put in place of what sounds alike in an original that does: the product",
    "heard": "how nearly the familiar word or saying that was changed is heard; a middling 0.6 where none was",
    "behind": "how much the word or saying that was changed has to do with the brief itself; 0.3 where none was",
    "dear": "how words and sayings like the one that was changed pleased as names; 0.5 where none was",
    "kept": "how much of the word or saying that was changed is left as it was; 0.5 where none was",
    "even": "how nearly a changed word is as long as the one behind it: 1 = as long; 0.5 where no single word was",
    "spared": "how few of its letters are new: 1 = none, 0 = six; 0.5 where no single word was",
    "remains": "whether what is left of that word is a word by itself; 0.5 where no single word was",
    "brisk": "how few syllables it has: 1 = one, 0 = five",
    "unmixed": "whether nothing is left of that saying that shows a thing of another trade; 0.5 where none was",
    "plain": "how strongly its sources are associated with a word of the brief without their meaning being told",
    "saying": "how much of a whole was changed: 1 = a saying of four words or more, 0.2 = of two, 0 = nothing",
    "sayable": "how usual its letters and sounds are in English: 1 = as the commonest words, 0 = as no word",
    "length": "letters and syllables: 1 at four to nine letters and one to three syllables",
    "rhythm": "strong and weak syllables taking turns, a strong one first",
    "echo": "sounds that come twice where it is noticed: at the beginning of words, under stress, at the end",
    "join": "how cleanly its parts meet, and how readily its sources are seen in it",
    "ending": "whether its second word is one syllable, as those are that carry a compound well",
    "open": "whether its parts stand side by side as words: 1 = they do, 0 = they are written as one",
    "closed": "the other way round: 1 = its parts are written as one",
    "promise": "how words of its kind fared with those readers, by its vector and its meaning's: 0.5 = as foretold",
    "read": "how the word fared with readers of whole briefs, beside what all other parts foretell: 0.5 = as foretold",
    "kind": "how names made in this way fared with readers, where all other parts are left aside",
}
"""Every part and its meaning."""

_NARROW = 0.7  # relevance that a word with one concept and a little more has
_NO_ORIGINAL, _NOTHING_BEHIND = 0.6, 0.3
_NEIGHBOUR = 0.9  # how plainly another ware of the same kind tells of the goods
_WHOLE = (0.0, 0.7, 0.2, 0.6, 1.0)  # by the words of an original: two are seldom a whole of their own
_NAMED_SO = 0.9  # how plainly a word tells of goods that are what it means
AS_IT_IS = frozenset(("found", "foreign", "local", "figure"))  # constructions that take words as they are
WHOLE = AS_IT_IS | {"saying"}
LOCAL = "local"  # found in the buyers' language: weighed as what is found in English
_NOT_ENGLISH = {
    "known": 1.0, "untraded": 1.0, "picture": 0.6, "pleasant": 0.6, "charm": 0.5, "fresh": 0.7, "sayable": 0.8,
    "read": 0.5, "promise": 0.5,
}  # fmt: skip
"""What the parts that only English words have are for words of the buyers' language: as for a good name, roughly."""
PROMISED = 0.25  # from one end of the part "promise" to the other, as a share of full marks
_UNRATED = 0.5  # how a word pleases that nobody rated
_SAID = 0.3  # what a word said in passing of the goods counts, beside its weight, as what a source stands for
_OF_THE_GOODS = 0.75  # the weight of a term that names the goods, or what they are for
_TIED, _MANY = 0.5, 4  # an association that ties a word to a term in full; so many terms are many
_THINGS = frozenset(f"noun.{name}" for name in ("artifact", "act", "food", "substance"))
_WORD_READ, _SCALE = "word ", "all "
Weights = Mapping[str, Mapping[str, float]]
"""The weight of each part, by form of name."""


@cache
def default_weights() -> Weights:
    """The fitted weights of each form of name; those of one add up to 1."""
    found: dict[str, dict[str, float]] = {}
    for key, value in open_table("name_ranker.tsv").items():
        form, _, part = key.rpartition(" ")
        if part == "level" or key.startswith((_WORD_READ, _SCALE)):
            continue
        found.setdefault(form, dict.fromkeys(PARTS, 0.0))[part] = float(value)
    found[LOCAL] = found["found"]
    return {kind: {part: weights[part] for part in PARTS} for kind, weights in found.items()}


@cache
def levels() -> Mapping[str, float]:
    """What the part "kind" is for each form of name."""
    table = ((key, value) for key, value in open_table("name_ranker.tsv").items() if not key.startswith(_WORD_READ))
    rows = ((*key.rpartition(" "), value) for key, value in table)
    found = {form: float(value) for form, _, part, value in rows if part == "level"}
    return found | {LOCAL: found["found"]}


@cache
def _scale() -> tuple[float, float]:
    """The weighted mean of the parts for a reading of nothing, and how much it grows to full marks."""
    foot, span = (float(open_table("name_ranker.tsv").get(f"{_SCALE}{end}") or 0) for end in ("foot", "span"))
    return foot, span


@cache
def _read() -> Mapping[str, float]:
    """The part "read" of each word that readers of whole briefs saw."""
    rows = open_table("name_ranker.tsv").items()
    return {key.removeprefix(_WORD_READ): float(value) for key, value in rows if key.startswith(_WORD_READ)}


def weights_of(brief: Brief) -> Weights:
    """The brief's ranking weights over the fitted ones; raises `InputError` for a part that does not exist."""
    unknown = [name for name in brief.ranking_weights if name not in PARTS]
    if unknown:
        raise InputError(
            [
                Problem(f"{name!r} is not a part of the ranking", f"Known parts: {', '.join(PARTS)}",
                        str(brief.source or "brief"), None, f"weights.ranking.{name}")
                for name in unknown
            ]
        )  # fmt: skip
    stated = {name: float(value) for name, value in brief.ranking_weights.items()}
    return {kind: {**weights, **stated} for kind, weights in default_weights().items()}


class Judge:
    """Scores proposals for one brief. The parts follow from the proposal alone, so batches equal singles."""

    def __init__(self, weights: Weights, brief_terms: BriefTerms, ideas: Sequence[Idea], goods: str) -> None:
        self.weights = weights
        self._brief_terms = brief_terms
        self._shares = (_SAID + brief_terms.weights).clip(0.0, 1.0)
        self._foremost = word_parts.foremost(brief_terms)
        self._wares = (brief_terms.weights >= _OF_THE_GOODS) & ~brief_terms.concepts
        self._passing = (brief_terms.weights < _OF_THE_GOODS) & ~brief_terms.concepts
        self._ideas: dict[str, Idea] = {idea.word: idea for idea in reversed(ideas)}
        self._associations: dict[str, Associations] = {word: idea.associations for word, idea in self._ideas.items()}
        self._described: dict[str, float] = {}
        self._plain: dict[str, float] = {}
        self._terms = {term.word for term in brief_terms.terms}
        said = fold(goods).replace("-", " ").replace(",", " ").split()
        self._goods = frozenset(form for word in said for form in (word, *lexicon().bases(word)))
        self._own = {term.word for term in brief_terms.terms if term.is_concept or term.weight >= NAMED}
        named, self._naming = (
            frozenset(form for word, weight in said_of if weight >= least for form in (word, *lexicon().bases(word)))
            for said_of, least in ((goods_words(Brief(goods=goods)).items(), least) for least in (NAMED, MODIFIES))
        )
        self._named = named

    def knows(self, ideas: Sequence[Idea]) -> bool:
        """Whether these ideas are what it knows of their words."""
        return all(self._ideas.get(idea.word) is idea for idea in ideas)

    def knowing(self, ideas: Sequence[Idea]) -> Judge:
        """This judge with these ideas put in place of what it knew of their words."""
        judge = Judge(self.weights, self._brief_terms, (), "")
        judge._ideas = {**self._ideas, **{idea.word: idea for idea in ideas}}
        judge._associations = {**self._associations, **{idea.word: idea.associations for idea in ideas}}
        judge._goods, judge._named, judge._naming = self._goods, self._named, self._naming
        return judge

    def parts(self, proposal: Proposal) -> dict[str, float]:
        """Every part of `PARTS` for a proposal."""
        import numpy as np

        associations = [self._of(source) for source in proposal.sources]
        words = [source.casefold() for source in proposal.sources]
        ideas = [self._ideas.get(source) for source in proposal.sources]
        known = ideas[0]
        many, changed = len(words) > 1, proposal.construction == "changed"
        one_word = changed and len(proposal.words) == 1
        even, few_new, remains = spared(proposal.text, proposal.original) if one_word else (0.5, 0.5, 0.5)
        together = reduce(np.maximum, associations)
        ties = self._ties_of(known, associations[0]) if proposal.construction in WHOLE else together
        sense = self._brief_terms.relevance(together)
        found = {
            "sense": sense,
            "widely": max(0.0, (sense - _NARROW) / (1 - _NARROW)),
            "many": min(1.0, float((ties / _TIED).clip(0.0, 1.0) @ self._brief_terms.shares) / _MANY),
            "true": (true := min(word_parts.true(one * self._shares) for one in associations)),
            "ware": float((ties * self._wares).max(initial=0.0)),
            "foremost": float(self._foremost[(ties * self._shares).argmax()]) if len(ties) else 0.0,
            "apart": word_parts.apart(associations[0], associations[1]) if many else 0.5,
            "direct": self._direct(proposal, words),
            "single": float(many and sum(one in self._terms for one in words) == 1),
            "standing": known.standing if known and proposal.construction in WHOLE else 0.5,
            "chosen": word_parts.mean(idea.chosen if idea else 0.0 for idea in ideas),
            "listed": word_parts.mean(idea.listed if idea else 0.0 for idea in ideas),
            "matched": word_parts.mean(idea.matched if idea else 0.0 for idea in ideas),
            "whole": word_parts.mean(idea.whole if idea else 0.0 for idea in ideas),
            "suited": word_parts.mean(idea.suited if idea else 0.0 for idea in ideas),
            "apt": max(idea.apt if idea else 0.0 for idea in ideas),
            "aside": float((ties * self._passing).max(initial=0.0)),
            "special": word_parts.mean(map(word_parts.special, words)),
            "agrees": 1 - max(idea.against if idea else 0.0 for idea in ideas),
            "delight": (delight := word_parts.mean(idea.delight if idea else _UNRATED for idea in ideas)),
            "pleasing": true * delight,
            "appeal": word_parts.mean(map(appeal, words)),
            "unworn": 1 - word_parts.mean(float(idea is not None and idea.worn) for idea in ideas),
            "known": word_parts.known(words[0]),
            "untraded": word_parts.untraded(words[0]) if proposal.construction in AS_IT_IS else 0.0,
            "picture": word_parts.mean(map(word_parts.picture, words)),
            "living": float(any(map(word_parts.living, words))),
            "pleasant": word_parts.mean(map(word_parts.pleasant, words)),
            "charm": word_parts.mean(word(source.split()[-1]).charm for source in words),
            "company": word_parts.company(*words[:2]) if many else 0.5,
            "indirect": 1 - (told := self._told(proposal, words)),
            "telling": told,
            "fresh": word_parts.mean(map(word_parts.fresh, words)),
            "familiar": min(map(word_parts.familiar, words)),
            "punned": proposal.heard * proposal.behind * self._brief_terms.strongest(together),
            "heard": proposal.heard if proposal.original else _NO_ORIGINAL,
            "behind": proposal.behind if proposal.original else _NOTHING_BEHIND,
            "dear": appeal(proposal.original) if changed and proposal.original else 0.5,
            "kept": kept(proposal.text, proposal.original) if changed else 0.5,
            "even": even,
            "spared": few_new,
            "remains": remains,
            "brisk": 1 - min(1.0, (syllables(proposal) - 1) / 4),
            "unmixed": proposal.unmixed if changed else 0.5,
            "plain": word_parts.mean(map(self._plainly, words)) if many else 0.5,
            "saying": _WHOLE[min(4, len(proposal.original.replace("-", " ").split()))],
            "sayable": sayable(proposal),
            "length": size(len(proposal.letters), syllables(proposal), len(proposal.words)),
            "rhythm": rhythm(proposal),
            "echo": echo(proposal),
            "join": proposal.join * proposal.clear,
            "ending": float(many and word(words[-1].split()[-1]).beats == 1),
            "open": float(len(proposal.words) > 1),
            "closed": float(len(proposal.words) == 1),
            "promise": self._promise(known) if proposal.construction in WHOLE else 0.5,
            "read": _read().get(words[0], 0.5) if proposal.construction in WHOLE else 0.5,
            "kind": levels().get(form_of(proposal), 0.5),
        }
        return found | _NOT_ENGLISH if proposal.construction == LOCAL else found

    def score(self, parts: Mapping[str, float], form: str) -> float:
        """The weighted mean of the parts, brought to the scale of readings, in [0, 1]: about the share of full marks
        that readers would give."""
        weights = self.weights[form]
        total = sum(weights[name] for name in parts)
        mean = sum(weights[name] * value for name, value in parts.items()) / total if total else 0.0
        foot, span = _scale()
        return max(0.0, min(1.0, (mean - foot) / span))

    def _promise(self, idea: Idea | None) -> float:
        """How words of its kind fared, from one end of what can be to the other."""
        return max(0.0, min(1.0, 0.5 + idea.promise / PROMISED)) if idea is not None else 0.5

    def _ties_of(self, idea: Idea | None, associations: Associations) -> Associations:
        """How sure it is that a name taken as it is is about each term."""
        return associations if idea is None or idea.ties is None else idea.ties

    def _of(self, source: str) -> Associations:
        found = self._associations.get(source)
        if found is None:
            found = self._associations[source] = self._brief_terms.of_word(source.casefold())
        return found

    def _plainly(self, word: str) -> float:
        found = self._plain.get(word)
        if found is None:
            found = self._plain[word] = self._brief_terms.strongest(self._brief_terms.of_word(word))
        return found

    def _told(self, proposal: Proposal, words: Sequence[str]) -> float:
        """How plainly it tells of the goods, 0 to 1: the most distinctive word carries a name, the others take away a
        part (TMEP 1209.01; common practice)."""
        told = sorted(max(map(self._describes, source.split())) for source in words)
        weight = 0.6 * told[0] + 0.4 * told[-1]
        if proposal.construction in AS_IT_IS:
            idea = self._ideas.get(proposal.sources[0])
            named = idea is not None and (head_of(idea.meaning) in self._named or (idea.defined and _is_thing(idea)))
            return max(weight, _NAMED_SO * named)
        if proposal.construction == "saying" and self._naming.intersection(
            form for one in proposal.words for form in (one, *lexicon().bases(one))
        ):
            return 1.0  # with the goods' own word: bread and butter for butter dishes
        return weight if proposal.construction == "pair" else 0.6 * weight

    def _direct(self, proposal: Proposal, words: Sequence[str]) -> float:
        if proposal.construction == "saying":
            return float(any(form in self._own for one in proposal.words for form in (one, *lexicon().bases(one))))
        return word_parts.mean(float(word in self._terms) for word in words)

    def _describes(self, word: str) -> float:
        known = self._described.get(word)
        if known is None:
            known = self._described[word] = self._describes_anew(word)
        return known

    def _describes_anew(self, word: str) -> float:
        if {"laudatory", "quality", "generic head"} & kinds(word):
            return 0.7
        if self._goods & {word, *lexicon().bases(word)}:
            return 1.0
        if any(are_rivals(word, name) for name in self._named):
            return _NEIGHBOUR  # a kettle for teapots: a ware of the same trade
        parts = split_closed_compound(word, zipf)
        if parts and all(part in self._own or part in self._goods for part in parts):
            return 1.0  # it says no more than they do: a nightlight
        held = [term for term in self._brief_terms.terms if len(term.word) > 3 and term.word in word]
        if held:
            return 1.0 if any(_same_thing(word, term.word) for term in held) else 0.8  # a campfire is a fire
        return max(
            (_same_thing(word, term.word) * (1.0 if not term.is_concept else 0.8) for term in self._brief_terms.terms),
            default=0.0,
        )


def _is_thing(idea: Idea) -> bool:
    """Whether a word names an article, a stuff or an act, which describe; a creature or person of the same words is a
    picture."""
    domain = word(idea.word.casefold().split()[-1]).domain or word(head_of(idea.meaning)).domain
    return idea.pos == "v" or domain in _THINGS


def _same_thing(one: str, other: str) -> float:
    """How nearly a word names what another names: 1 the same word, less for a synonym or a kind of it."""
    if one == other:
        return 1.0
    first, second = word(one), word(other)
    if not first.sense or not second.sense:
        return 0.0
    return 0.9 if first.sense == second.sense else 0.6 * (second.sense in first.above)


@lru_cache(maxsize=64)
def _words_in(model: tuple[str, ...]) -> tuple[str, ...]:
    """The words of a name, and those that a closed one is made of."""
    return tuple(dict.fromkeys(part for one in model for part in (one, *split_closed_compound(one, zipf))))


def resemblance(proposal: Proposal, model: Sequence[str]) -> float:
    """How much a proposal resembles a model name, in [0, 1]: by what it brings to mind, its rhythm, size and ending.

    A word that both share counts no more than a near one: who likes a name seeks others like it, not the same again.
    """
    parts = _words_in(tuple(model))
    near = max((word_parts.company(one.casefold(), part) for one in proposal.sources for part in parts), default=0.0)
    beats = sum(word(part).beats for part in model)
    size = 1 - min(1.0, abs(len(proposal.letters) - sum(map(len, model))) / 6)
    rhythm = 1 - min(1.0, abs(syllables(proposal) - beats) / 2)
    ending = proposal.letters[-2:] == model[-1][-2:]
    return 0.4 * near + 0.2 * size + 0.15 * rhythm + 0.1 * ending + 0.15 * (len(proposal.words) == len(model))
