"""The names that readers rated, each with the parts that the ranking sees: what `name_ranker.py` fits weights on."""

from __future__ import annotations

import csv
import json
from dataclasses import dataclass, field
from functools import cache, cached_property, lru_cache
from pathlib import Path

import numpy as np
from naming_matches import facts
from numpy.typing import NDArray

from namescreen.brief import Brief, Concept
from namescreen.generation.appraisal import given_form, proposal_of
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.candidate import form_of
from namescreen.generation.ideas import Idea, ideas_of
from namescreen.generation.parsing import parse
from namescreen.generation.ranking import PARTS, WHOLE, Judge
from namescreen.generation.ties import known_words

KINDS = {
    "affixed": "affix", "coined": "blend", "compound": "pair", "word pair": "pair", "alliteration": "phrase",
    "echo": "phrase", "adjective + noun": "phrase", "verb + noun": "phrase", "noun of noun": "phrase",
}  # fmt: skip
"""The construction that makes names of a kind, where it has another name; a kind without one keeps its own."""
UNRELATED = "random word"
"""What is left out."""

FREE = [part for part in PARTS if part not in ("kind", "read", "promise")]
"""The parts that weights are fitted of; the others tell what these leave."""

Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Rated:
    """A name with the parts that the ranking sees, its mean rating as a share of 7, its word if it is taken as it is,
    and the file of the names that it was read among."""

    brief: str
    form: str
    parts: dict[str, float]
    rating: float
    word: str
    among: str = ""
    vector: Numbers | None = field(default=None, compare=False, repr=False)
    """The mean of its words' vectors, and that of its meaning's, if it is an existing word taken as it is."""

    @cached_property
    def row(self) -> Numbers:
        """The parts that weights are fitted of, in their order."""
        return np.array([self.parts[part] for part in FREE])


def read(data: Path, briefs: Path, *, given: bool = False) -> list[Rated]:
    """Every rated name; `given`: they were made elsewhere."""
    told, found = json.loads(briefs.read_text("utf-8")), []
    with data.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    for row in rows:
        if row.get("drawn") == UNRELATED or row["kind"] == "open pair":  # no construction leaves pairs open
            continue
        judge, brief_terms, ideas_known = _judge(json.dumps(told[row["brief"]]))
        kind, words = KINDS.get(row["kind"], row["kind"]), row["words"]
        if not kind or not words:
            kind, words = parse(row["name"], {term.word for term in brief_terms.terms})
        known = ideas_known[kind == "foreign"]
        proposal, ideas = proposal_of(row["name"], kind, words, brief_terms, known)
        rating = (float(row["maker"]) + float(row["consultant"])) / 14
        parts = (judge if judge.knows(ideas) else judge.knowing(ideas)).parts(proposal)
        word = proposal.sources[0].casefold() if proposal.construction in WHOLE and not given else ""
        form = given_form(proposal) if given else form_of(proposal)
        vector = _vector(kind == "foreign", word) if word else None
        found.append(Rated(row["brief"], form, parts, rating, word, data.stem, vector))
    return found


@lru_cache(maxsize=8)
def _judge(told: str) -> tuple[Judge, BriefTerms, dict[bool, dict[str, Idea]]]:
    """The judge of a brief, its terms, and what it brings to mind by its word, words of other languages apart."""
    brief = json.loads(told)
    goods, concepts = brief["goods"], tuple(map(Concept, brief["concepts"]))
    whole = Brief(goods=goods, concepts=concepts, product=str(brief.get("product", "")))
    brief_terms = BriefTerms.of(whole)
    ideas = ideas_of(whole, brief_terms)
    known = {foreign: {one.word.casefold(): one for one in reversed(ideas) if (one.kind == "foreign") == foreign}
             for foreign in (True, False)}  # fmt: skip
    return Judge({}, brief_terms, ideas, goods), brief_terms, known


@cache
def _places() -> dict[tuple[bool, str], int]:
    """The place of each existing word, words of other languages apart."""
    words = reversed(tuple(enumerate(known_words())))
    return {(one.kind == "foreign", one.word.casefold()): at for at, one in words if one.kind not in ("first", "title")}


@cache
def _vectors() -> Numbers:
    """The vectors of each existing word and of its meaning, in one row."""
    return facts().astype(float)


def _vector(foreign: bool, word: str) -> Numbers | None:
    """The vectors of an existing word and of its meaning."""
    place = _places().get((foreign, word))
    return None if place is None else _vectors()[place]
