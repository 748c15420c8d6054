"""WordNet 3.0 without glosses: words, senses and the relations between them.

Drawn by wordlists/build/wordnet.py, which describes the three tables. Words are given and returned in lower
case with spaces, except in `Sense.words`, which keeps capitals (Paris); any case is accepted."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, cached_property, lru_cache
from itertools import chain
from typing import TYPE_CHECKING, NamedTuple

from ..tables import open_table
from .morphology import DETACHED, DETACHMENTS, base_forms, detached
from .sense_similarity import SenseSimilarity

if TYPE_CHECKING:
    from ctypes import CDLL

    from ..native.senses import RelatedWords
    from .hierarchy import Hierarchy

__all__ = ["DOMAINS", "RELATION_KINDS", "Lexicon", "Relation", "Sense", "lexicon"]

# Lexicographer file names in the order of their numbers: lexnames(5WN).
_DOMAINS = """
    adj.all adj.pert adv.all noun.Tops noun.act noun.animal noun.artifact noun.attribute noun.body
    noun.cognition noun.communication noun.event noun.feeling noun.food noun.group noun.location noun.motive
    noun.object noun.person noun.phenomenon noun.plant noun.possession noun.process noun.quantity
    noun.relation  noun.shape noun.state noun.substance noun.time verb.body verb.change verb.cognition
    verb.communication  verb.competition verb.consumption verb.contact verb.creation verb.emotion
    verb.motion verb.perception  verb.possession verb.social verb.stative verb.weather adj.ppl
"""
DOMAINS = tuple(_DOMAINS.split())
RELATION_KINDS = {
    "@": "broader", "@i": "instance of", "~": "narrower", "~i": "instance",
    "#m": "member of", "#s": "substance of", "#p": "part of", "%m": "member", "%s": "substance", "%p": "part",
    "!": "opposite", "&": "similar", "+": "derived", "\\": "pertains to", "<\\": "pertained to by",
    "*": "entails", "<*": "entailed by", ">": "causes", "<>": "caused by",
    "=": "attribute", "^": "also", "$": "group", ";c": "topic", "-c": "in topic", ";r": "region",
    "-r": "in region", ";u": "usage", "-u": "in usage",
}  # fmt: skip
"""Pointer symbols of wndb(5WN) and what they are called here; read as: the sense has the related one as its
..."""


@cache
def _pointers(symbols: tuple[str, ...]) -> re.Pattern[str]:
    """What finds the pointers with these symbols, or all, in the relations of a row: most are to narrower senses, and
    to look at each in Python would cost more than all else."""
    symbol = "|".join(map(re.escape, symbols)) or r"[^\d ]+?"
    return re.compile(rf"(?<!\S)({symbol})([nvar]\d+)(?:\.(\d+)\.(\d+))?(?!\S)")


@dataclass(frozen=True, slots=True)
class Sense:
    """One meaning. `pos` is n, v, a or r; `count` its occurrences in WordNet's tagged texts (for the word
    asked)."""

    id: str
    words: tuple[str, ...]
    pos: str
    domain: str
    count: int
    label: str

    @property
    def tag(self) -> str:
        """What tells the sense apart in its label (season); empty if it is the word's only one, or not labelled."""
        return self.label.partition("(")[2].rstrip(")")


class Relation(NamedTuple):
    """A relation of one sense to another; between two single words if `word` and `other` are not empty."""

    kind: str
    sense_id: str
    word: str = ""
    other: str = ""


class Entry(NamedTuple):
    """A row of the senses table, parsed: strengths go with words (9 = the word's leading sense). Its relations
    are kept as text, since most rows are read for their words alone; `Lexicon.pointers` parses them."""

    domain: int
    below: int
    words: tuple[str, ...]
    strengths: tuple[int, ...]
    relations: str


class Lexicon:
    """The shipped WordNet. Make one through `lexicon()`, which opens the tables once."""

    def __init__(self) -> None:
        self._words = open_table("wordnet-words.tsv")
        self._senses = open_table("wordnet-senses.tsv")
        self._exceptions = open_table("wordnet-exceptions.tsv")
        self._row = lru_cache(maxsize=1 << 16)(self._read_row)
        self._parts_of_speech = lru_cache(maxsize=1 << 16)(self._read_parts_of_speech)
        self.entry = lru_cache(maxsize=1 << 16)(self._read_entry)
        self.entry_at = lru_cache(maxsize=1 << 15)(self._read_entry_at)
        """The entry of a sense by its number in the `hierarchy`."""
        self.pointers = lru_cache(maxsize=1 << 15)(self._read_pointers)
        """The relations of a sense, all or those with some symbols: the symbol, the other sense, and the numbers of the
        two words joined, 0 for none."""
        self.sense_strengths = lru_cache(maxsize=1 << 14)(self._find_strengths)
        self.bases = lru_cache(maxsize=1 << 16)(self._find_bases)
        self._unlabelled = lru_cache(maxsize=1 << 14)(self._read_senses)
        self._labelled = lru_cache(maxsize=1 << 14)(self._label_senses)
        self._similarity = SenseSimilarity(self)
        self.neighbours = self._similarity.neighbours
        self.closeness = self._similarity.closeness
        self.are_opposite = self._similarity.are_opposite
        self.expect_opposites = self._similarity.expect_opposites

    @cached_property
    def hierarchy(self) -> Hierarchy:
        """The senses by number, read when first wanted."""
        from .hierarchy import Hierarchy

        return Hierarchy(self._senses)

    def related_words(self, library: CDLL, measures: Mapping[str, float]) -> RelatedWords:
        """What finds the words related to one in compiled code, by the same hierarchy."""
        from .hierarchy import related_words

        return related_words(library, self._senses, measures)

    def known(self, word: str) -> bool:
        """Whether `word`, or a base form of it, stands in the lexicon."""
        return bool(self.bases(word))

    def is_lemma(self, word: str) -> bool:
        """Whether `word` itself, not only a base form, is in the lexicon."""
        return bool(self._row(word.lower())[0])

    def lemmas(self, words: Sequence[str]) -> list[str]:
        """Those of some words, in lower case, for which `is_lemma` holds."""
        return self._words.present(words)

    def _find_bases(self, word: str) -> tuple[str, ...]:
        """The base forms of `word` (geese -> goose, glasses -> glasses, glass); empty for an unknown word."""
        if not self._may_have_bases(word.lower()):
            return ()
        by_pos = self.bases_by_pos(word)
        return tuple(dict.fromkeys(base for bases in by_pos.values() for base in bases))

    def _may_have_bases(self, word: str) -> bool:
        """Whether a word is in the tables, irregular or so with an ending replaced: most words of a register are not,
        and fill no cache."""
        if word in self._words or word in self._exceptions:
            return True
        return word.endswith(DETACHED) and any(form in self._words for form in detached(word))

    def perhaps_known(self, words: Sequence[str]) -> list[str]:
        """Those of some words in lower case, without line breaks, that may be `known`: for many, of which few are, this
        costs a small part of asking for each."""
        forms = [(word, *detached(word)) if word.endswith(DETACHED) else (word,) for word in words]
        found = {*self._exceptions.present(words), *self._words.present(list(chain.from_iterable(forms)))}
        return [each[0] for each in forms if not found.isdisjoint(each)]

    def bases_by_pos(self, word: str) -> dict[str, tuple[str, ...]]:
        """The base forms of `word` by part of speech (n, v, a, r)."""
        word = word.lower()
        value = self._exceptions.get(word)
        irregular = value.split(",") if value else []
        if not irregular and not word.endswith(DETACHED):
            parts = self._parts_of_speech(word)
            return {pos: (word,) for pos in DETACHMENTS if pos in parts}
        return base_forms(
            word,
            lambda form, pos: pos in self._parts_of_speech(form),
            lambda form, pos: tuple(e[2:] for e in irregular if e[:1] == pos) if form == word else (),
        )

    def senses(self, word: str, pos: str | None = None, *, labelled: bool = True) -> tuple[Sense, ...]:
        """The senses of `word`, or of its base forms, most frequent first; of one part of speech if given.

        Labels cost more than all the rest; without them the label is the word alone.
        """
        read = self._labelled if labelled else self._unlabelled
        found = tuple(sense for base in self.bases(word) for sense in read(base))
        return tuple(sense for sense in dict.fromkeys(found) if pos is None or sense.pos == pos)

    def sense(self, sense_id: str) -> Sense:
        """The sense with this id; raises KeyError if there is none."""
        return self._labelled_sense(self.entry(sense_id).words[0].lower(), sense_id)

    def relations(self, sense: Sense | str) -> tuple[Relation, ...]:
        """The relations of a sense, in a fixed order."""
        entry_id = sense if isinstance(sense, str) else sense.id
        entry = self.entry(entry_id)
        return tuple(
            Relation(
                RELATION_KINDS[symbol],
                other,
                entry.words[here - 1] if here else "",
                self.entry(other).words[there - 1] if there else "",
            )
            for symbol, other, here, there in self.pointers(entry_id)
        )

    def domain(self, sense_id: str) -> str:
        """The lexicographer file of a sense, for instance noun.plant."""
        return DOMAINS[self.entry(sense_id).domain]

    def related_ids(self, sense_id: str, *symbols: str) -> list[str]:
        """The ids at the other end of the pointers with these symbols."""
        return [other for _, other, _, _ in self.pointers(sense_id, *symbols)]

    def sense_ids(self, lemma: str) -> list[str]:
        """The ids of the senses of a word as it stands, in lower case."""
        return [sense_id for sense_id, _ in self._row(lemma)[0]]

    def _find_strengths(self, lemma: str) -> tuple[tuple[str, int], ...]:
        """(sense id, strength 1 to 9) of a word as it stands, in lower case."""
        found = []
        for sense_id, _ in self._row(lemma)[0]:
            entry = self.entry(sense_id)
            strengths = zip(entry.words, entry.strengths, strict=True)
            found += [(sense_id, strength) for word, strength in strengths if word.lower() == lemma][:1]
        return tuple(found)

    def inflections(self, lemma: str) -> tuple[str, ...]:
        """Other words of the lexicon that are inflected forms of `lemma`, or of which it is one (glass,
        glasses)."""
        return self._row(lemma)[1]

    def _labelled_sense(self, lemma: str, sense_id: str) -> Sense:
        return next(sense for sense in self._labelled(lemma) if sense.id == sense_id)

    # Reading the tables

    def _read_row(self, lemma: str) -> tuple[tuple[tuple[str, int], ...], tuple[str, ...]]:
        value = self._words.get(lemma) if lemma else None
        if value is None:
            return (), ()
        senses, *inflected = value.split("=")
        return tuple((i, int(count)) for i, _, count in (s.partition(":") for s in senses.split())), tuple(inflected)

    def _read_parts_of_speech(self, lemma: str) -> frozenset[str]:
        return frozenset([sense_id[0] for sense_id, _ in self._row(lemma)[0]])

    def _read_entry(self, sense_id: str) -> Entry:
        value = self._senses.get(sense_id)
        if value is None:
            raise KeyError(sense_id)
        return self._parsed(value)

    def _read_entry_at(self, number: int) -> Entry:
        return self._parsed(self.hierarchy.row(number))

    @staticmethod
    def _parsed(value: str) -> Entry:
        domain, below, words, relations = value.split("|")
        shown = words.split(",")
        strengths = tuple([int(word[-1]) for word in shown])
        return Entry(int(domain), int(below), tuple([word[:-1] for word in shown]), strengths, relations)

    def _read_pointers(self, sense_id: str, *symbols: str) -> tuple[tuple[str, str, int, int], ...]:
        found = _pointers(symbols).findall(self.entry(sense_id).relations)
        return tuple([(symbol, other, int(here or 0), int(there or 0)) for symbol, other, here, there in found])

    def _read_senses(self, lemma: str) -> tuple[Sense, ...]:
        plain = []
        for sense_id, count in self._row(lemma)[0]:
            entry = self.entry(sense_id)
            domain = DOMAINS[entry.domain]
            plain.append(Sense(sense_id, entry.words, sense_id[0], domain, count, lemma))
        return tuple(plain)

    def _label_senses(self, lemma: str) -> tuple[Sense, ...]:
        plain = self._unlabelled(lemma)
        tags = _tell_apart([self._tags(lemma, sense) for sense in plain])
        return tuple(
            replace(sense, label=f"{lemma} ({tag})" if tag else lemma) for sense, tag in zip(plain, tags, strict=True)
        )

    def _tags(self, lemma: str, sense: Sense) -> list[str]:
        """Labels that distinguish this sense of a word from the others, the plainest first."""
        broader = [self.entry(i).words[0] for i in self.related_ids(sense.id, "@", "@i")]
        others = [word for word in sense.words if word.lower() != lemma]
        nearby = [self.entry(i).words[0] for i in self.related_ids(sense.id, "&", "\\", "=", "~", "~i", "%p", "+")]
        nearby = [word for word in nearby if word.lower() != lemma]
        own = (
            broader[:1] if sense.pos == "n" else ["to " + ", ".join(others[:2])] if others and sense.pos == "v" else []
        )
        tags = own or others[:1] or broader[:1] or nearby[:1]
        tags += [", ".join(pair) for pair in (others[:2], (broader + others)[:3], (broader + nearby)[:3]) if pair]
        return [*tags, _OF_NO_FIELD.get(sense.domain) or sense.domain.partition(".")[2]]


_OF_NO_FIELD = {"adv.all": "adverb", "adj.all": "adjective", "adj.pert": "adjective", "adj.ppl": "participle"}
"""Domains that say what part of speech a sense is and not what it is about."""


def _tell_apart(choices: list[list[str]]) -> list[str]:
    """For each sense the first tag that no other sense would take; if there is none, the first with its number."""
    if len(choices) == 1:
        return [choices[0][0]]
    taken: set[str] = set()
    tags = []
    for place, tries in enumerate(choices):
        rivals = {other[0] for at, other in enumerate(choices) if at > place} | taken
        tag = next((one for one in tries if one not in rivals), f"{tries[0]}, {place + 1}")
        taken.add(tag)
        tags.append(tag)
    return tags


@cache
def lexicon() -> Lexicon:
    """The shipped lexicon, opened once a process; raises `DataError` if its tables are missing."""
    return Lexicon()
