"""Brainstorming: proposals from every construction, scored, filtered, and given out best first, with variety.

Constructions are drawn from in waves, so that a rich brief does not explode: a wave takes so many proposals of
each, all of them are scored, and the best of what is in hand are given out page by page. What is kept in
hand is bounded, and so is the memory of what was already seen; asking for more draws further waves.
"""

from __future__ import annotations

import heapq
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations, islice
from typing import TYPE_CHECKING, NamedTuple, TypedDict, Unpack
from zlib import crc32

from ..ahead import Ahead
from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import zipf
from ..text import fold, tokenize
from .brief_terms import goods_words, words_of
from .buyers import local_language, understood
from .candidate import Candidate, Proposal, form_of
from .constructions import CONSTRUCTIONS, ON_REQUEST
from .flags import Flags, Refusal
from .local_names import languages_held
from .material import Material, gather
from .name_sounds import syllables
from .purpose import FORM
from .ranking import AS_IT_IS, LOCAL, WHOLE, Judge, weights_of
from .senses import unfit_in
from .taste import Liking, Taste
from .variety import Judged, choose, composition, judged
from .wanted import usable_words, words_of_concept
from .wares import PLEASED_MUCH

if TYPE_CHECKING:
    from ..register import Register

__all__ = ["Candidates", "Choices", "LeftOut", "Taste", "brainstorm", "candidates", "require_concepts"]

_QUOTA = {
    "found": 240, "saying": 100, "pair": 200, "changed": 80, "figure": 60, "affix": 60, "foreign": 60, "local": 200,
    "blend": 150,
}  # fmt: skip
"""Proposals of each construction in a wave."""

_PATIENCE = 20  # waves without a name that fits, after which an endless construction is given up
_IN_HAND = 6_000  # candidates kept for later pages; the weakest fall out
_EAGER = 4  # this many pages are each the best of a whole wave, then two of each, and so on
_STIR = 0.04  # by how much chance (the seed) moves a score, so that names of similar worth change places
_SCREENED = 20
"""Pages without names that a screening calls seriously flawed for what they are: to ask it of every name that a brief
has to give would take minutes."""
_LAST_OF_MOST = "saying"  # the last of the constructions that most names of a page come from
_LOOKED_AT = 40  # names that a page is likely chosen from
_NAMES_THE_GOODS = 0.15  # the part "indirect" at which a word names the goods
_HARD_TO_OWN = {**dict.fromkeys(AS_IT_IS, 0.7), "saying": 0.85}
"""The factor then, but for one that pleased much for these goods: nobody could own it (TMEP 1209.01); a saying has a
second meaning, which leaves it some way to be owned (TMEP 1213.05(c); set by judgement)."""
_CARRIED_BY_MANY = 0.88  # the factor for a word that firms of every trade carry (set by readings)
_MISLEADS = 0.88
"""The factor for a word about a single concept and nothing of the goods, where these are told by what they are for (a
ring for freeing fishing lures): readers gave such 2.6, those about the goods 3.5, and those about more 4.1."""
_NOT_UNDERSTOOD = 0.6  # what a name loses for buyers who do not understand it (set by judgement)
_ABOUT, _WIDELY = 0.3, 0.2  # the parts "ware" and "widely" from which a name is about the goods, and about more
_PLAINLY = 0.5  # a tie from which a name is plainly about a term
_ORDINARY = 1.5  # Zipf frequency from which a made name is an ordinary word already


class LeftOut(NamedTuple):
    """A name that was good enough to be shown but was not, and why: for a "mark", for the "goods", for what it may be
    "refused" for by an office, for what the brief would "avoid", or for a "reading" in a `language`."""

    candidate: Candidate
    because: str
    kind: str
    language: str = ""


_Asked = tuple[Proposal, float, bool]
"""A name, how it pleased for these goods, and whether it is screened: see `Flags.of`."""


class Choices(TypedDict, total=False):
    """How names are to be made for a brief; what is not given is left to the brief."""

    constructions: Collection[str] | None
    """Names from `CONSTRUCTIONS`; without them all but those of `ON_REQUEST`."""
    like: str | Sequence[str] | None
    """A name, or several, to resemble."""
    drop: Iterable[str]
    """Names not to show, or single words not to use."""
    starts: str
    """The letters to begin with."""
    seed: int | None
    """Instead of the brief's: the same brief and seed give the same names."""
    register: Register | None
    """A `namescreen.register.Register`: names identical or nearly so to one of its marks are left out."""
    taste: Taste | None
    """What the maker has liked so far."""


def brainstorm(brief: Brief, *, limit: int = 60, **choices: Unpack[Choices]) -> list[Candidate]:
    """The `limit` best candidate names for a brief, the best and most varied first; see `Choices`.

    A larger limit only adds names. Raises `InputError` if there is no concept to start from or a construction or
    ranking weight does not exist.
    """
    return list(islice(candidates(brief, **choices), max(0, limit)))


def require_concepts(brief: Brief) -> None:
    """Raises `InputError` for a brief that brings no word to mind, or a concept that no name can be made from."""
    if not brief.concepts:
        raise InputError(Problem("there is no concept to start from", "Give the brief `concepts`, or --concept"))
    foreign = [concept.word for concept in brief.concepts if not usable_words(concept.word)]
    if foreign:
        raise InputError(
            [
                Problem(f"concept {word!r} has no letters a to z", "Names are made in Latin letters: write it in them")
                for word in foreign
            ]
        )
    if not goods_words(brief) and not any(words_of_concept(concept.word) for concept in brief.concepts):
        said = f"concept {brief.concepts[0].word!r} says what is not wanted"
        raise InputError(Problem(said, "Say what there is instead, or give the goods"))


def candidates(brief: Brief, **choices: Unpack[Choices]) -> Candidates:
    """As `brainstorm`, without a limit: it ends when the constructions have nothing more that fits."""
    require_concepts(brief)
    constructions, like, seed = choices.get("constructions"), choices.get("like"), choices.get("seed")
    asked = {name: _construction(name) for name in constructions or ()}
    unknown = [name for name, known in asked.items() if known is None]
    if unknown:
        raise InputError(
            [
                Problem(f"{name!r} is no construction", f"Known: {', '.join(CONSTRUCTIONS)}", "--construction")
                for name in unknown
            ]
        )
    taste = choices.get("taste") or Taste()
    models = (like,) if isinstance(like, str) else tuple(like or ())
    dropped = tuple(choices.get("drop", ()))
    words = tuple(text for text in dropped if len(tokenize(text)) == 1)
    taste = replace(
        taste, models=(*models, *taste.models), without=(*taste.without, *words), seen=(*taste.seen, *dropped)
    )
    chosen = None if constructions is None else {known for known in asked.values() if known}
    starts = fold(choices.get("starts", ""))
    return Candidates(brief, chosen, taste, starts, brief.seed if seed is None else seed, choices.get("register"))


def _construction(name: str) -> str | None:
    """The construction a user means: adjective-noun is adjective + noun."""
    letters = {"".join(filter(str.isalpha, known)): known for known in CONSTRUCTIONS}
    return letters.get("".join(filter(str.isalpha, fold(name))))


class _BloomFilter:
    """A bounded set of texts: it forgets nothing, but sometimes takes a new text for one that it holds.

    Two places of 2**24 for each entry: after a million entries about one new name in eighty is taken for a known one.
    """

    def __init__(self) -> None:
        self._bits = bytearray(1 << 21)

    def add(self, text: str) -> bool:
        """Note `text`; whether it is new."""
        raw = text.encode()
        places = (crc32(raw) & 0xFFFFFF, crc32(raw, 0x5EED) & 0xFFFFFF)
        new = any(not self._bits[place >> 3] & 1 << (place & 7) for place in places)
        for place in places:
            self._bits[place >> 3] |= 1 << (place & 7)
        return new


class Candidates(Iterator[Candidate]):
    """The candidates of a brief one by one, page by page, and what was left out on the way.

    `left_out` are names good enough to be shown that were not, each with the reason.
    """

    def __init__(
        self, brief: Brief, constructions: Collection[str] | None, taste: Taste, starts: str, seed: int,
        register: Register | None,
    ) -> None:  # fmt: skip
        self.left_out: list[LeftOut] = []
        self._brief, self._taste, self._starts, self._seed = brief, taste, starts, seed
        self._constructions = [
            name for name in CONSTRUCTIONS
            if (name not in ON_REQUEST if constructions is None else name in constructions)
        ]  # fmt: skip
        self._weights = weights_of(brief)
        flags = Flags(brief, register)
        self._flags = Ahead[_Asked, "tuple[str, ...] | Refusal"](lambda asked: flags.of(*asked), flags.get_ready)
        self._by_purpose = FORM in goods_words(brief).values()
        self._avoid = tuple(filter(None, ("".join(tokenize(word)) for word in brief.avoid)))
        self._dropped = {"".join(tokenize(text)) for text in (*taste.seen, *brief.shortlist)}
        self._local = local_language(brief)
        self._composition = composition(local=bool(self._local), further=bool(taste.worn))
        self._seen = _BloomFilter()
        self._given = 0  # pages
        self._pages = self._turn()
        self._drawn: list[Judged] = []
        self._drawing = self._draw()

    def _gather(self) -> None:
        """What the names are made of: the costliest step, left until the first one is asked for."""
        brief, taste = self._brief, self._taste
        without = tuple(word for text in taste.without for word in tokenize(text))
        liking = Liking(taste, words_of(brief) if taste.models or taste.unlike else ())
        self._material: Material = gather(brief, seed=self._seed, without=without, weigh=liking.weight, left=taste.left)
        self._ideas = {idea.word: idea for idea in reversed(self._material.ideas)}
        self._judge = Judge(self._weights, self._material.brief_terms, self._material.ideas, brief.goods)
        self._streams = {name: CONSTRUCTIONS[name](self._material) for name in self._constructions}
        self._liking = liking.among(self._ideas)

    def __next__(self) -> Candidate:
        return next(self._pages)

    def _turn(self) -> Iterator[Candidate]:
        """Candidates, page by page; the first wave is scored before the first candidate is given out."""
        self._gather()
        in_hand: list[Judged] = []
        fruitless = 0
        while self._streams or self._drawn or in_hand:
            fresh = self._wave() if self._streams or self._drawn else []
            fruitless = 0 if fresh else fruitless + 1
            if fruitless == _PATIENCE:
                self._streams.clear()
            in_hand += fresh
            in_hand.sort(key=lambda entry: (-entry.rank, entry.candidate.text))
            del in_hand[_IN_HAND:]
            self._flags.expect(map(self._asked, in_hand[:_LOOKED_AT]))
            # early pages are the best of all candidates; later ones come from fewer, so that they come sooner
            for _ in range(1 + self._given // _EAGER):
                page, in_hand = choose(in_hand, self._checked, self._composition)
                self._given += 1
                yield from page
                if not page:
                    break

    def _wave(self) -> list[Judged]:
        """The next wave; it may have been begun while names of the last one were looked at."""
        for _ in self._drawing:
            pass
        found = self._drawn
        self._drawn, self._drawing = [], self._draw()
        return found

    def _draw(self) -> Iterator[None]:
        """Draw a wave, a proposal at a time."""
        found = self._drawn
        narrow = 1 if len(self._streams) > 3 else 4
        for name in list(self._streams):
            drawn = 0
            for proposal in islice(self._streams[name], _QUOTA[name] * narrow):
                drawn += 1
                if self._passes(proposal):
                    found.append(self._judged(proposal))
                yield
            if drawn < _QUOTA[name] * narrow:
                del self._streams[name]
            if name == _LAST_OF_MOST:
                likely = heapq.nlargest(_LOOKED_AT, found, key=lambda entry: entry.worth)
                self._flags.expect(map(self._asked, likely))

    def _asked(self, entry: Judged) -> _Asked:
        """What is asked of the flags."""
        return entry.proposal, entry.candidate.parts["chosen"], self._given < _SCREENED

    def _judged(self, proposal: Proposal) -> Judged:
        parts = self._judge.parts(proposal)
        score = self._judge.score(parts, form_of(proposal))
        kinship = self._liking.kinship(proposal)
        if kinship is not None:
            parts["resemblance"] = kinship
        if parts["indirect"] <= _NAMES_THE_GOODS and parts["chosen"] < PLEASED_MUCH:
            score *= _HARD_TO_OWN.get(proposal.construction, 1.0)
        if proposal.construction in AS_IT_IS and not parts["unworn"]:
            score *= _CARRIED_BY_MANY
        if self._by_purpose and proposal.construction in WHOLE and _beside_the_goods(parts):
            score *= _MISLEADS
        if self._local and proposal.construction != LOCAL:
            score *= 1 - _NOT_UNDERSTOOD * (1 - understood(proposal.words, self._local))
        stir = _STIR * (crc32(f"{self._seed} {proposal.text}".encode()) & 0xFFFF) / 0xFFFF
        origins = tuple(idea.reason for idea in map(self._ideas.get, proposal.sources) if idea is not None)
        candidate = Candidate(
            proposal.text, proposal.construction, proposal.how, proposal.sources, max(0.0, min(1.0, score - stir)),
            parts, (), proposal.stem, origins,
        )  # fmt: skip
        about = self.about(candidate)
        pull, drawn = self._liking.pull(proposal, score, kinship, about)
        rank = self._liking.rank(proposal, score) + pull - stir
        return judged(candidate, proposal, rank, about, self._liking.wear(candidate), max(0.0, pull), drawn)

    def about(self, candidate: Candidate) -> frozenset[str]:
        """The terms of the brief that a candidate is plainly about, by any of its sources."""
        told = (self._ideas[source] for source in candidate.sources if source in self._ideas)
        terms = self._material.brief_terms.terms
        return frozenset(
            term.word
            for idea in told
            for term, tie in zip(terms, (idea.associations if idea.ties is None else idea.ties).tolist(), strict=True)
            if tie >= _PLAINLY or term.word == idea.term
        )

    def missed(self, names: Iterable[Candidate]) -> list[str]:
        """The concepts of the brief that none of these names is plainly about, as the brief writes them."""
        met = {term for one in names for term in self.about(one)}
        known = (self._ideas.get(source) for one in names if one.construction in WHOLE for source in one.sources)
        said = (*(one.text for one in names), *(idea.meaning for idea in known if idea))
        met |= {word for text in said for word in tokenize(text)}
        written = ((concept.word, usable_words(concept.word)) for concept in self._brief.concepts)
        return [word for word, parts in written if met.isdisjoint(parts)]

    def not_held(self) -> str:
        """The language of buyers who do not read English, if no names in it are known; else ""."""
        return self._local if self._local and self._local not in languages_held() else ""

    def _passes(self, proposal: Proposal) -> bool:
        """Whether a proposal is new and keeps the brief's limits; the costlier checks are in `_checked`."""
        letters = proposal.letters
        if not letters.startswith(self._starts) or letters in self._dropped:
            return False
        if not self._within(proposal):
            return False
        if proposal.construction not in AS_IT_IS and len(proposal.words) == 1 and zipf(letters) >= _ORDINARY:
            return False
        if any(_are_forms_of_one(a, b) for a, b in combinations(proposal.sources, 2)):
            return False
        return self._seen.add(proposal.text.casefold())

    def _within(self, proposal: Proposal) -> bool:
        """Whether a proposal keeps the brief's limits."""
        letters, brief = proposal.letters, self._brief
        return (
            brief.least_letters <= len(letters) <= brief.most_letters
            and (not self._avoids(proposal) or proposal.construction in WHOLE)  # of made names there are enough
            and (brief.most_words is None or len(proposal.words) <= brief.most_words)
            and (brief.most_syllables is None or syllables(proposal) <= brief.most_syllables)
        )

    def _avoids(self, proposal: Proposal) -> str:
        """What the name holds of what the brief avoids; "" if nothing."""
        return next((word for word in self._avoid if word in proposal.letters), "")

    def _checked(self, entry: Judged) -> Candidate | None:
        """The candidate with its remarks; None, and noted, if it must not be shown."""
        candidate, proposal = entry.candidate, entry.proposal
        whole = (" ".join(proposal.words),) if proposal.construction in WHOLE else (*proposal.words, *proposal.sources)
        if any(map(unfit_in, whole)):
            return None
        avoided = self._avoids(proposal)
        verdict = (
            Refusal("avoid", f"holds {avoided}, which is to be avoided")
            if avoided
            else self._flags(self._asked(entry), self._drawing)
        )
        if isinstance(verdict, Refusal):
            self.left_out.append(LeftOut(candidate, verdict.because, verdict.kind, verdict.language))
            return None
        return replace(candidate, flags=verdict)


def _beside_the_goods(parts: Mapping[str, float]) -> bool:
    """Whether a name is about a single concept, and neither about another one nor about the goods."""
    return parts["ware"] < _ABOUT and parts["widely"] <= _WIDELY


def _are_forms_of_one(one: str, other: str) -> bool:
    """Whether two words are forms of one (ring, ringer), which together say nothing more."""
    return one[:4] == other[:4] and (len(one) > 3 or len(other) > 3)
