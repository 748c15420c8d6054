"""Brainstorming: proposals from every construction, judged, sifted, and given out diverse, best first.

Constructions are drawn from in waves, so that a rich brief does not explode: a wave takes so many proposals of
each, all of them are scored, and the best of what is in hand are given out page by page. What is kept in
hand is bounded, and so is the memory of what was already seen; asking for more draws further waves.
"""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations, islice
from typing import TYPE_CHECKING
from zlib import crc32

from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import zipf
from ..pronunciation import pronounce
from ..text import fold, tokenize
from .candidate import Candidate, Proposal
from .constructions import CONSTRUCTIONS
from .expansion import unfit, usable_words
from .flags import Flags
from .material import Material, gather
from .scoring import Judge, similarity, syllables

if TYPE_CHECKING:
    from ..register import Register

__all__ = ["Taste", "brainstorm", "candidates"]

_QUOTA = {
    "compound": 220, "blend": 160, "affix": 180, "clipping": 70, "adjective + noun": 120, "verb + noun": 80,
    "noun of noun": 40, "word pair": 30, "alliteration": 60, "echo": 60, "respelling": 60, "combining forms": 90,
    "initials": 40, "invented": 80,
}  # fmt: skip
"""Proposals of each construction in a wave: about 1,300, of which some two thirds live through the sieve."""

_PATIENCE = 20  # waves without a single name that fits, after which an endless construction is given up
_IN_HAND = 6_000  # candidates kept for later pages; the weakest fall out
_EAGER = 4  # so many pages are each the best of a whole wave, then two of each, and so on
_PAGE = 40  # variety is looked after within a page of this many
_SAME_STEM, _SAME_SOURCE, _SAME_KIND = 0.05, 0.016, 0.06
"""What earlier names of the page cost: each with the same stem and construction, each with a source in common,
and a whole share of the construction (scores lie within about 0.3 of each other; set so that no word rules)."""
_SHARE = {
    "compound": 9, "blend": 9, "affix": 5, "clipping": 0.8, "adjective + noun": 5, "verb + noun": 2,
    "noun of noun": 1.5, "word pair": 1, "alliteration": 3, "echo": 2, "respelling": 1, "combining forms": 2,
    "initials": 0.3, "invented": 0.8,
}  # fmt: skip
"""How many of each construction a page of forty holds if all come off equally well (set by reading)."""
_FORGIVEN = 0.5
"""How much of the gap between the best of a construction and the best of all is forgiven, so that coined words
are not crowded out by plain pairs of words, whose sources are always seen whole."""
_BEST = 8  # the best of a construction: the mean of so many
_MOST_SAME = 2  # names of one stem and construction in a page
_MOST_COMPANY = 2  # names with one companion word in a page: they stand for no concept


@dataclass(frozen=True)
class Taste:
    """What a maker likes, as learned from what was kept and dropped: factors around 1 on words and
    constructions, names to resemble, words not to use, and names not to show again."""

    words: Mapping[str, float] = field(default_factory=dict)
    constructions: Mapping[str, float] = field(default_factory=dict)
    models: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    seen: Collection[str] = ()


def brainstorm(
    brief: Brief,
    *,
    limit: int = 60,
    constructions: Collection[str] | None = None,
    like: str | Sequence[str] | None = None,
    drop: Iterable[str] = (),
    starts: str = "",
    seed: int | None = None,
    register: Register | None = None,
    taste: Taste | None = None,
) -> list[Candidate]:
    """The `limit` best candidate names for a brief: the best and most varied first.

    `constructions` are names from `CONSTRUCTIONS` (all if None); `like` a name, or several, to resemble; `drop`
    names not to show, or single words not to use; `starts` the letters to begin with; `seed` the brief's own
    if None: the same brief and seed give the same names, and a larger limit only adds to them. With a
    `register` (a `namescreen.register.Register`) names identical or nearly so to one of its marks are left
    out. Raises `InputError` if there is no concept to start from or a construction or ranking weight does not
    exist.
    """
    found = candidates(
        brief, constructions=constructions, like=like, drop=drop, starts=starts, seed=seed, register=register,
        taste=taste,
    )  # fmt: skip
    return list(islice(found, max(0, limit)))


def candidates(
    brief: Brief,
    *,
    constructions: Collection[str] | None = None,
    like: str | Sequence[str] | None = None,
    drop: Iterable[str] = (),
    starts: str = "",
    seed: int | None = None,
    register: Register | None = None,
    taste: Taste | None = None,
) -> Iterator[Candidate]:
    """As `brainstorm`, without a limit: it ends when the constructions have nothing more that fits."""
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
    asked = {name: _construction(name) for name in constructions or ()}
    unknown = [name for name, known in asked.items() if known is None]
    if unknown:
        raise InputError(
            [
                Problem(f"{name!r} is no construction", f"Known: {', '.join(CONSTRUCTIONS)}", "--construction")
                for name in unknown
            ]
        )
    taste = taste or Taste()
    models = (like,) if isinstance(like, str) else tuple(like or ())
    dropped = tuple(drop)
    words = tuple(text for text in dropped if len(tokenize(text)) == 1)
    taste = replace(
        taste, models=(*models, *taste.models), without=(*taste.without, *words), seen=(*taste.seen, *dropped)
    )
    chosen = None if constructions is None else {known for known in asked.values() if known}
    return _Search(brief, chosen, taste, fold(starts), brief.seed if seed is None else seed, register).pages()


def _construction(name: str) -> str | None:
    """The construction a user means: adjective-noun is adjective + noun."""
    letters = {"".join(filter(str.isalpha, known)): known for known in CONSTRUCTIONS}
    return letters.get("".join(filter(str.isalpha, fold(name))))


class _BloomFilter:
    """A bounded memory of what was met: a bit field that forgets nothing and now and then knows too much.

    Two places of 2**24 for each entry: after a million entries about one new name in eighty is taken for old.
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


class _Search:
    def __init__(
        self, brief: Brief, constructions: Collection[str] | None, taste: Taste, starts: str, seed: int,
        register: Register | None,
    ) -> None:  # fmt: skip
        self.brief, self.taste, self.starts = brief, taste, starts
        without = tuple(word for text in taste.without for word in tokenize(text))
        self.material: Material = gather(brief, seed=seed, without=without, weights=dict(taste.words))
        self.ideas = {idea.word: idea for idea in self.material.ideas}
        self.judge = Judge.of(brief, self.material)
        self.flags = Flags(brief, register)
        self.streams = {
            name: propose(self.material)
            for name, propose in CONSTRUCTIONS.items()
            if constructions is None or name in constructions
        }
        self.avoid = tuple(filter(None, ("".join(tokenize(word)) for word in brief.avoid)))
        self.dropped = {"".join(tokenize(text)) for text in (*taste.seen, *brief.shortlist)}
        self.models = tuple(tokenize(model) for model in taste.models)
        self.seen = _BloomFilter()

    def pages(self) -> Iterator[Candidate]:
        """Candidates, page by page; the first wave is judged before the first is given out."""
        in_hand: list[tuple[Candidate, Proposal]] = []
        fruitless = given = 0
        while self.streams or in_hand:
            fresh = self._wave() if self.streams else []
            fruitless = 0 if fresh else fruitless + 1
            if fruitless == _PATIENCE:
                self.streams.clear()
            in_hand += fresh
            in_hand.sort(key=lambda entry: (-entry[0].score, entry[0].text))
            del in_hand[_IN_HAND:]
            # early pages are the best of all that is at hand; whoever reads on for long wants names sooner
            for _ in range(1 + given // _EAGER):
                page, in_hand = self._page(in_hand)
                given += 1
                yield from page
                if not page:
                    break

    def _wave(self) -> list[tuple[Candidate, Proposal]]:
        found = []
        narrow = 1 if len(self.streams) > 3 else 4
        for name in list(self.streams):
            drawn = 0
            for proposal in islice(self.streams[name], _QUOTA[name] * narrow):
                drawn += 1
                if self._passes(proposal):
                    found.append((self._judged(proposal), proposal))
            if drawn < _QUOTA[name] * narrow:
                del self.streams[name]
        return found

    def _judged(self, proposal: Proposal) -> Candidate:
        parts = self.judge.parts(proposal)
        score = self.judge.score(parts)
        if self.models:
            parts["similarity"] = max(similarity(proposal, model) for model in self.models)
            score = 0.65 * score + 0.35 * parts["similarity"]
        score *= self.taste.constructions.get(proposal.construction, 1.0)
        origins = tuple(
            idea.origin for idea in map(self.ideas.get, proposal.sources) if idea is not None and idea.distance
        )
        return Candidate(
            proposal.text, proposal.construction, proposal.how, proposal.sources, min(1.0, score), parts, (),
            proposal.stem, origins,
        )  # fmt: skip

    def _passes(self, proposal: Proposal) -> bool:
        """Whether a proposal keeps the brief's limits; what costs more to know is asked in `_page`."""
        letters, brief = proposal.letters, self.brief
        if not brief.least_letters <= len(letters) <= brief.most_letters:
            return False
        if (
            not letters.startswith(self.starts)
            or letters in self.dropped
            or any(word in letters for word in self.avoid)
        ):
            return False
        if brief.most_words is not None and len(proposal.words) > brief.most_words:
            return False
        if brief.most_syllables is not None and syllables(proposal) > brief.most_syllables:
            return False
        if len(proposal.words) == 1 and zipf(letters) >= 1.5:
            return False  # an ordinary word already
        if any(_kin(a, b) for a, b in combinations(proposal.sources, 2)):
            return False
        return self.seen.add(proposal.text.casefold())

    def _page(
        self, in_hand: list[tuple[Candidate, Proposal]]
    ) -> tuple[list[Candidate], list[tuple[Candidate, Proposal]]]:
        """The best page of those in hand, and the rest: each choice makes its like cost more."""
        used: Counter[str] = Counter()
        page: list[Candidate] = []
        gone: set[int] = set()
        lift = _lifts([candidate for candidate, _ in in_hand])
        heap = [(-c.score - lift[c.construction], place) for place, (c, _) in enumerate(in_hand)]
        heapq.heapify(heap)
        while heap and len(page) < _PAGE:
            value, place = heapq.heappop(heap)
            candidate, proposal = in_hand[place]
            now = -candidate.score - lift[candidate.construction] + self._cost(candidate, used)
            if now > value + 1e-9:  # something like it has been taken since
                heapq.heappush(heap, (now, place))
                continue
            together = f"together {' '.join(sorted(candidate.sources))}"
            if used[f"{candidate.construction} {candidate.stem}"] >= _MOST_SAME or used[together]:
                continue
            if any(used[f"word {word}"] >= _MOST_COMPANY for word in candidate.sources if word not in self.ideas):
                continue
            gone.add(place)
            if not self._sound(proposal):
                continue
            flags = self.flags.of(proposal)
            if flags is None:
                continue
            page.append(replace(candidate, flags=flags))
            used.update((candidate.construction, f"{candidate.construction} {candidate.stem}"))
            used[together] += len(candidate.sources) > 1
            used.update(f"word {word}" for word in candidate.sources)
        return page, [entry for place, entry in enumerate(in_hand) if place not in gone]

    @staticmethod
    def _cost(candidate: Candidate, used: Counter[str]) -> float:
        return (
            _SAME_STEM * used[f"{candidate.construction} {candidate.stem}"]
            + _SAME_SOURCE * sum(used[f"word {word}"] for word in candidate.sources)
            + _SAME_KIND * used[candidate.construction] / _SHARE[candidate.construction]
        )

    @staticmethod
    def _sound(proposal: Proposal) -> bool:
        """Whether a respelling is still read as its source, and no word of the name is unfit."""
        if any(unfit(word) for word in (*proposal.words, *proposal.sources)):
            return False
        if proposal.construction != "respelling":
            return True
        wanted = tuple(sound.rstrip("012") for sound in proposal.sounds)
        readings = pronounce(proposal.letters, limit=2)
        return any(tuple(sound.rstrip("012") for sound in reading.phones) == wanted for reading in readings)


def _kin(one: str, other: str) -> bool:
    """Whether two words are forms of one (ring, ringer): together they say nothing more."""
    return one[:4] == other[:4] and (len(one) > 3 or len(other) > 3)


def _lifts(candidates: Sequence[Candidate]) -> dict[str, float]:
    """What is added to each construction's scores when names are chosen (`_FORGIVEN`); `candidates` best first."""
    best: dict[str, list[float]] = {}
    for candidate in candidates:
        scores = best.setdefault(candidate.construction, [])
        if len(scores) < _BEST:
            scores.append(candidate.score)
    means = {name: sum(scores) / len(scores) for name, scores in best.items()}
    return {name: _FORGIVEN * (max(means.values()) - mean) for name, mean in means.items()}
