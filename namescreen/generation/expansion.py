"""From a handful of concepts to the words they bring to mind, each with how far it stands from its concept.

Relations come from WordNet by the chosen senses; associations from which words go together in definitions. A
word is then weighed as material for a name: a maker wants short, known, picturable words, neither rare ones
nor plain ones.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from itertools import pairwise

from ..brief import Brief, Concept
from ..lexicon import Sense, kinds, lexicon, zipf
from ..lexicon.association import associated, association
from ..lexicon.wordnet import DOMAINS
from ..tables import open_table
from ..text import fold, tokenize

__all__ = ["Idea", "chosen_senses", "fitness", "meaning_found", "unfit", "usable_words", "widen"]

_NEARNESS = {
    "synonym": 1.0, "derived": 0.6, "similar": 0.8, "narrower": 0.8, "part": 0.85, "substance": 0.75, "member": 0.6,
    "part of": 0.7, "broader": 0.45, "attribute": 0.5, "pertains to": 0.4, "entails": 0.6, "causes": 0.6,
    "also": 0.6, "in topic": 0.5, "topic": 0.3, "opposite": 0.3, "association": 0.8,
}  # fmt: skip
"""How near a word stays after one step along a relation: set by reading what each brings (no source)."""

_PICTURE = {
    "noun.plant": 1.0, "noun.animal": 0.9, "noun.food": 0.95, "noun.object": 1.0, "noun.phenomenon": 1.0,
    "noun.artifact": 0.9, "noun.substance": 0.85, "noun.shape": 0.85, "noun.time": 0.8, "noun.body": 0.65,
    "noun.feeling": 0.8, "noun.event": 0.75, "noun.location": 0.65, "noun.person": 0.5, "noun.act": 0.6,
    "noun.communication": 0.55, "noun.group": 0.5, "noun.state": 0.45, "noun.attribute": 0.5, "noun.process": 0.5,
    "noun.cognition": 0.45, "noun.quantity": 0.4, "noun.possession": 0.4, "noun.motive": 0.3, "noun.relation": 0.3,
    "verb.motion": 0.9, "verb.weather": 0.95, "verb.consumption": 0.9, "verb.contact": 0.75, "verb.perception": 0.75,
    "verb.creation": 0.75, "verb.emotion": 0.65, "verb.change": 0.6, "verb.body": 0.5, "verb.communication": 0.5,
    "verb.competition": 0.5, "adj.all": 0.75,
}  # fmt: skip
"""How readily a word of a WordNet domain is pictured, 1 = at a glance (set by hand; picturable words are the
better remembered: A. Paivio, Imagery and Verbal Processes, 1971)."""

_DULL = tuple(
    "ness tion sion ity ment ism ance ence ship hood ology ical aceous ative ively ably ous able ible ally ing ed ly "
    "ist ic".split()
)
_HOPS = 0.45  # what a further step keeps of nearness
_LEAST = 0.05  # less fitting words are left out
_COMPANY_OF = {"n": 0.8, "v": 0.6, "a": 0.45, "r": 0.0}
# A noun that goes with a concept mostly stands beside it; an adjective often only stands in its definition.
_LEARNED = frozenset(("narrower", "broader", "member", "part", "part of", "substance"))
_FEW = 25  # with fewer ideas than this, neighbours are asked as well
_FIRM = 16  # ideas from which a second step is taken
_SENSES = 4  # senses of a concept that are followed
_WAY = {"derived": "derived from", "similar": "like", "attribute": "attribute of", "pertains to": "pertains to",
        "entails": "comes with", "causes": "caused by", "also": "see also", "in topic": "in the field of",
        "topic": "field of"}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Idea:
    """A word to make names from.

    `concept` is the brief's word that led to it and `via` the way ("synonym of herb"); `distance` the steps
    from it (0 = the concept itself); `weight` in (0, 1] how near and how fit for a name it is; `pos` n, v or
    a; `role` "concept" for the brief's own words, "idea" for widened ones, "goods", or "companion".
    """

    word: str
    concept: str
    via: str
    distance: int
    weight: float
    pos: str
    role: str = "idea"

    @property
    def origin(self) -> str:
        """How the word was reached: sesame: narrower of herb (1 step)."""
        steps = "the brief" if not self.distance else f"{self.distance} step{'s' * (self.distance > 1)}"
        return f"{self.word}: {self.via} ({steps})"


def chosen_senses(concept: Concept) -> tuple[Sense, ...]:
    """The senses of a concept that its wanted meanings point at; all of them if none is wanted, or none fits."""
    senses = lexicon().senses(fold(concept.word))
    scores = [_fit(sense, concept) for sense in senses]
    best = max(scores, default=0.0)
    return tuple(s for s, score in zip(senses, scores, strict=True) if score >= max(0.3, best - 0.1)) or senses


def meaning_found(concept: Concept) -> bool:
    """Whether some sense of the concept fits the meanings wanted; True if none is wanted."""
    return not concept.senses or any(_fit(sense, concept) >= 0.3 for sense in lexicon().senses(fold(concept.word)))


def _fit(sense: Sense, concept: Concept) -> float:
    wanted = {word for meaning in concept.senses for word in fold(meaning).replace(",", " ").split()}
    return max((_points_at(sense, word) for word in wanted), default=0.0)


def _points_at(sense: Sense, wanted: str) -> float:
    if any(wanted in fold(word).split() for word in (*sense.words[0:], sense.label.partition("(")[2].rstrip(")"))):
        return 1.0
    book, above, height = lexicon(), [sense.id], 0
    while above and height < 5:
        height += 1
        above = [other for one in above for other in book.related_ids(one, "@", "@i", "~", "%p", "+")][:40]
        if any(fold(word) == wanted for one in above for word in book.entry(one).words):
            return 1.0 - 0.15 * height
    return 0.0


@lru_cache(maxsize=1 << 16)
def unfit(word: str) -> str | None:
    """Why a word should not stand in a name (death, illness, filth ...), or None. Inflected forms count too."""
    table = _unfit_words()
    for form in (word, *lexicon().bases(word)):
        kind = table.get(form)
        if kind is not None:
            return kind
    return None


@cache
def _unfit_words() -> dict[str, str]:
    return dict(open_table("unfit_words.tsv").items())


@lru_cache(maxsize=1 << 15)
def fitness(word: str) -> float:
    """How well a word serves as material for a name, in [0, 1]: known but not worn, short, picturable, fair."""
    if not word.isascii() or not word.isalpha() or len(word) < 2:
        return 0.0
    common = _between(zipf(word), ((1.2, 0.0), (2.2, 0.3), (2.9, 0.8), (3.4, 1.0), (4.7, 1.0), (5.3, 0.7), (6.0, 0.3)))
    short = _between(len(word), ((2, 0.3), (3, 0.95), (4, 1.0), (6, 1.0), (8, 0.6), (11, 0.25), (14, 0.05)))
    if common * short < _LEAST or unfit(word) or {"function word", "laudatory"} & kinds(word):
        return 0.0
    book = lexicon()
    strengths = book.sense_strengths(word)
    if any(base != word and word.endswith("s") for base in book.bases(word)) or (not strengths and book.known(word)):
        return 0.25 * common * short  # an inflected form: its base serves better
    if not strengths:
        return 0.5 * common * short
    # most of its senses must be those of a common noun, verb or adjective, not of a name or a genus
    plain = [(i, s) for i, s in strengths if any(w == word for w in book.entry(i).words)]
    if not plain:
        return 0.0
    total = sum(strength for _, strength in strengths)
    picture = sum(_PICTURE.get(DOMAINS[book.entry(i).domain], 0.5) * s for i, s in plain) / total
    dull = 0.45 if word.endswith(_DULL) and len(word) > 5 else 1.0
    person = 0.5 if {"given name", "place"} & kinds(word) and zipf(word) < 4.5 else 1.0
    dear = 1.25 if word in _companion_words() else 1.0
    return min(1.0, common * short * dull * person * dear * (0.35 + 0.65 * picture))


@cache
def _companion_words() -> frozenset[str]:
    """Words that are known to go well in names (companions.tsv)."""
    return frozenset(word for _, row in open_table("companions.tsv").items() for word in row.split())


def _between(value: float, points: Sequence[tuple[float, float]]) -> float:
    """The height at `value` of a line through `points`, flat beyond both ends."""
    if value <= points[0][0]:
        return points[0][1]
    for (x0, y0), (x1, y1) in pairwise(points):
        if value <= x1:
            return y0 + (y1 - y0) * (value - x0) / (x1 - x0)
    return points[-1][1]


def widen(brief: Brief, *, without: Iterable[str] = (), most: int = 80) -> tuple[Idea, ...]:
    """The ideas of a brief, weightiest first: at most `most` for each concept, none twice.

    `without` are words the maker has dropped. Concepts that the lexicon does not hold still serve as they are.
    """
    avoided = {fold(word) for word in (*brief.avoid, *without)}
    found: dict[str, Idea] = {}
    every = [fold(concept.word) for concept in brief.concepts]
    goods = _words(brief.goods)
    for concept in brief.concepts:
        company = tuple(word for word in (*every, *goods) if word != fold(concept.word))
        for idea in _of_concept(concept, company, most):
            if idea.word not in avoided and (idea.word not in found or found[idea.word].weight < idea.weight):
                found[idea.word] = idea
    for idea in _of_goods(brief.goods, most // 4):
        if idea.word not in avoided:
            found.setdefault(idea.word, idea)
    return tuple(sorted(found.values(), key=lambda idea: (-idea.weight, idea.word)))


def usable_words(text: str) -> tuple[str, ...]:
    """The words of a concept that names can be made from: those in letters a to z once folded."""
    return tuple(word for word in tokenize(text) if word.isascii() and word.isalpha())


def _of_concept(concept: Concept, company: tuple[str, ...], most: int) -> list[Idea]:
    """The concept itself, then what it brings to mind; `company` are the brief's other words."""
    words = usable_words(concept.word)
    if not words:
        return []
    senses = chosen_senses(concept)
    own = [Idea(word, concept.word, "a concept", 0, 1.0, _pos(word), "concept") for word in words]
    reached: dict[str, Idea] = {}

    def offer(word: str, via: str, distance: int, nearness: float, pos: str) -> None:
        weight = nearness * fitness(word)
        if pos != "r" and weight >= _LEAST and word not in words and weight > _weight(reached.get(word)):
            reached[word] = Idea(word, concept.word, via, distance, weight, pos)

    for sense, share in _shares(senses, company):
        for word, kind, sense_id in _one_step(sense):
            if fitness(word):
                nearness = share * _NEARNESS[kind] * _leading(word, sense_id)
                if kind in _LEARNED:  # a zoologist's duck, a botanist's herb: is it so in people's minds too?
                    nearness *= 0.6 + 0.4 * (association(word, words[-1]) or 0.0)
                offer(word, f"{_WAY.get(kind, kind + ' of')} {words[-1]}", 1, nearness, sense_id[0])
    guides = [fold(word) for word in concept.senses]
    if guides:  # the meaning's own words, and its broader one, know their company too
        guides += [fold(word) for sense in senses for word in (*sense.words, *_above(sense)) if fold(word) not in words]

    def belongs(word: str) -> bool:
        return not guides or any(word in associated(guide) or guide in associated(word) for guide in guides)

    for word, strength in associated(words[-1]).items():
        if belongs(word):
            pos = _pos(word)
            offer(word, f"goes with {words[-1]}", 1, _COMPANY_OF[pos] * strength**0.5, pos)
    if len(reached) < _FEW:  # a narrow meaning: its neighbours under the same broader term help out
        for sense in senses[:_SENSES]:
            for word, broader, sense_id in _neighbours(sense):
                nearness = _HOPS * _NEARNESS["narrower"] * _leading(word, sense_id)
                offer(word, f"kind of {broader}, as {words[-1]}", 2, nearness, sense_id[0])
    firm = sorted(reached.values(), key=lambda idea: (-idea.weight, idea.word))[:_FIRM]
    for idea in firm:  # one step further in company, so that the concept shows in more than its own kind
        for word, strength in list(associated(idea.word).items())[:8]:
            if (association(word, words[-1]) or 0.0) > 0.3 and belongs(word):
                pos = _pos(word)
                offer(word, f"goes with {idea.word}", 2, _COMPANY_OF[pos] * _HOPS * strength**0.5, pos)
    best = sorted(reached.values(), key=lambda idea: (-idea.weight, idea.word))[: 2 * most]
    best = [replace(idea, weight=round(idea.weight * _company(idea.word, company), 4)) for idea in best]
    return own + sorted(best, key=lambda idea: (-idea.weight, idea.word))[:most]


def _weight(idea: Idea | None) -> float:
    return idea.weight if idea else 0.0


def _company(word: str, company: tuple[str, ...]) -> float:
    """How well a word keeps company with the brief's other words: 0.6 with none of them, up to 1."""
    return 0.6 + 0.4 * max((association(word, other) or 0.0 for other in company), default=1.0)


def _shares(senses: Sequence[Sense], company: tuple[str, ...]) -> list[tuple[Sense, float]]:
    """The senses worth following, each with its share in (0, 1]: the usual ones, and those that fit the brief."""
    most = max((sense.count for sense in senses), default=0)
    found = []
    for sense in senses:
        if sense.pos == "r" or sense.words[0][:1].isupper():
            continue
        usual = ((sense.count + 1) / (most + 1)) ** 0.5
        words = [word.lower() for word in (*sense.words, *_above(sense)) if word.isalpha()][:4]
        fits = max(
            (association(word, other) or 0.0 for word in words for other in company if word != other), default=0.0
        )
        found.append((sense, max(0.2, min(1.0, 0.8 * usual + fits))))
    return sorted(found, key=lambda entry: -entry[1])[:_SENSES]


def _above(sense: Sense) -> tuple[str, ...]:
    book = lexicon()
    return tuple(book.entry(other).words[0] for other in book.related_ids(sense.id, "@")[:2])


def _one_step(sense: Sense) -> Iterator[tuple[str, str, str]]:
    """Every word one relation away from `sense`, with the relation and the sense that holds it."""
    book = lexicon()
    steps = [("synonym", sense.id, "")]
    steps += [(r.kind, r.sense_id, r.other) for r in book.relations(sense) if r.kind in _NEARNESS]
    for kind, sense_id, only in steps:
        for word in (only,) if only else book.entry(sense_id).words:
            yield word.lower(), kind, sense_id


def _neighbours(sense: Sense) -> Iterator[tuple[str, str, str]]:
    """Words of the same broader term, that term, and the sense that holds them."""
    book = lexicon()
    for above in book.related_ids(sense.id, "@"):
        for beside in book.related_ids(above, "~"):
            for word in book.entry(beside).words:
                yield word.lower(), book.entry(above).words[0], beside


def _leading(word: str, sense_id: str) -> float:
    """How much of a word this sense is: 1 if it is its leading one, 0.1 if it hardly ever means this."""
    strengths = lexicon().sense_strengths(word)
    own = next((strength for other, strength in strengths if other == sense_id), 0)
    return 0.1 + 0.9 * own / max((strength for _, strength in strengths), default=1)


def _of_goods(goods: str, most: int) -> list[Idea]:
    """The goods' own words, as weak ideas: they describe, and a name should do more than that."""
    ideas = []
    for word in _words(goods):
        weight = round(0.3 * fitness(word), 4)
        if weight >= _LEAST:
            ideas.append(Idea(word, word, "the goods", 1, weight, _pos(word), "goods"))
    return ideas[:most]


def _pos(word: str) -> str:
    """The part of speech of a word: of its leading sense; a noun if it is not in the lexicon."""
    book = lexicon()
    strengths = book.sense_strengths(word) or [
        entry for base in book.bases(word) for entry in book.sense_strengths(base)
    ]
    return strengths[0][0][0] if strengths else "n"


def _words(text: str) -> tuple[str, ...]:
    """The words of a text that say something, each once."""
    words = dict.fromkeys(fold(text).replace(",", " ").replace("-", " ").split())
    return tuple(word for word in words if "function word" not in kinds(word))
