"""The search index over mapped arrays: words, names, rows, and who has which.

A *name* is a distinct mark, by its folded words, or what a mark is without words that say nothing of the maker; a *row*
one way to divide a name into words (the written one, and where a closed compound may be divided, that too);
`build.build` makes the arrays.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property, lru_cache, partial
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..closeness.kept import KeptName, KeptWord, forgotten, keep
from ..closeness.vocabulary import related_words
from ..closeness.weights import OwnWeight, Weight
from ..lexicon.association import Vectors
from .bigram_index import bigrams
from .candidates import Candidates
from .goods_weights import GoodsWeights
from .in_english import FurtherReadings
from .packing import RaggedArray, distinct, stretches
from .phoneme_index import Codes
from .string_index import OrderedTexts, Strings, Texts
from .word_entries import IS_ABROAD, IS_EVERYDAY, IS_KNOWN, IS_MEANT, IS_SAID, IS_SURNAME
from .word_scores import WordScores
from .word_search import word_search

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]

__all__ = ["Index"]

MOST_HELD = 1 << 14
"""Keys of words that are held as text: some 2 MB."""
MOST_SCORES, MOST_ESTIMATES = 1 << 8, 1 << 24
"""Words whose comparison with those of the index is held, each 0.1 MB, and estimates in all of these: at most 32 MB."""


class Index:
    """What a search needs of a register."""

    def __init__(self, arrays: Arrays) -> None:
        self.arrays = arrays
        self.words, self.word_codes = Strings(arrays, "word"), Codes(arrays, "word_code")
        self.word_bigrams, self.code_bigrams = bigrams(arrays, "word"), bigrams(arrays, "word_code")
        self.word_search = word_search(arrays)
        self.said = Texts(arrays, "said")
        self.strength, self.dominance = (arrays[f"word_{name}"].view(np.float64) for name in Weight._fields)
        self.own_weight = [arrays[f"word_{name}"].view(np.float64) for name in OwnWeight._fields]
        self.known = arrays["word_known"].view(np.uint8)
        self.length = np.concatenate([arrays["word_length"], arrays["said_length"]]).view(np.uint16)
        self.flags = arrays["word_flags"].view(np.uint8)
        self.vector_row = arrays["word_vector_row"].view(np.int32)
        self.form_defined = arrays["word_form"].view(np.uint32)
        self.choices = RaggedArray(arrays, "word_choices")
        self.choice_words = RaggedArray(arrays, "choice_words")
        self.names, self.name_bigrams = Strings(arrays, "name"), bigrams(arrays, "name")
        self.name_codes = Codes(arrays, "name_code")
        self.row_words = RaggedArray(arrays, "row_words")
        self.row_name = arrays["row_name"].view(np.uint32)
        self.name_rows = arrays["name_rows"].view(np.uint32)
        self.postings = RaggedArray(arrays, "postings")
        self.name_marks = RaggedArray(arrays, "name_marks")
        self.bare, self.fuller = arrays["name_bare"].view(np.uint32), RaggedArray(arrays, "fuller")
        """Of each name the one that is left without what says nothing of the maker, mostly itself; and of each name
        those that are it with such words. Some names are only there for these, and no mark carries them."""
        self._lemmas = OrderedTexts(arrays, "lemma")
        self._lemma_words = RaggedArray(arrays, "lemma_words")
        self.english = lru_cache(maxsize=1 << 14)(self._english)
        self.weights_for = lru_cache(maxsize=4)(partial(GoodsWeights, self))
        """What its words count for some goods, described by these words."""
        self.further_readings = FurtherReadings(self)
        self._kept: set[int] = set()
        self._kept_since = forgotten()
        self.related = lru_cache(maxsize=1 << 9)(self._related)
        """The words that are related to a word in meaning, with how much; a word may come several times."""
        kept = min(MOST_SCORES, MOST_ESTIMATES // (len(self.words) + 1))
        self.word_scores = lru_cache(maxsize=max(kept, 8))(partial(WordScores, index=self))
        """How a word of a name compares with those of the index that are likeliest to be like it."""

    @cached_property
    def vectors(self) -> Vectors:
        """The vectors of the words of a small register: a kilobyte each."""
        return Vectors(self.vector_row[: len(self.words)])

    @cached_property
    def of_each_word(self) -> NDArray[np.float64]:
        """Two rows of noughts for the words of the names, to be left so: to make them anew for every search costs more
        than the few words that it sets."""
        return np.zeros((2, len(self.words)))

    @cached_property
    def everything(self) -> Candidates:
        """All names, as they are compared in a small register."""
        return Candidates(self, np.arange(len(self.names)))

    def all_words(self) -> list[str]:
        """The words of the names, then those that are only said (what foreign words mean in English): numbered so in
        all that is kept of words but their letters and sounds."""
        return [*self.words.texts(np.arange(len(self.words))), *self.said.texts(np.arange(len(self.said)))]

    def word(self, place: int) -> str:
        """One of `all_words`."""
        return self.words.text(place) if place < len(self.words) else self.said.text(place - len(self.words))

    def texts(self, places: Places) -> list[str]:
        """Some of `all_words`, ascending."""
        written = int(np.searchsorted(places, len(self.words)))
        return [*self.words.texts(places[:written]), *self.said.texts(places[written:] - len(self.words))]

    def lemma(self, place: int) -> str:
        """One of the keys of words."""
        return self._lemmas.text(place)

    @cached_property
    def keys(self) -> Callable[[Sequence[str]], list[int | None]]:
        """The numbers of some keys of words, None for what is none. It is asked for the hundreds of words that are
        related to one, and the keys of a small register are held."""
        count = len(self._lemmas)
        if count > MOST_HELD:
            return self._lemmas.find
        held = dict(zip(self._lemmas.texts(np.arange(count)), range(count), strict=True))
        return lambda keys: list(map(held.get, keys))

    def words_of_lemma(self, lemma: str) -> NDArray[np.uint32]:
        """The words with this key (`closeness.vocabulary.meaning_keys`), or that are it."""
        (at,) = self.keys((lemma,))
        return self._lemma_words.one(at) if at is not None else np.zeros(0, np.uint32)

    def _related(self, word: str) -> tuple[Places, NDArray[np.float64]]:
        related = related_words(word)
        each = zip(self.keys(list(related)), related.values(), strict=True)
        found = [(at, value) for at, value in each if at is not None]
        words, ends = self._lemma_words.gather(np.array([at for at, _ in found], np.int64))
        return words.astype(np.int64), np.repeat(np.array([value for _, value in found], np.float64), np.diff(ends))

    def _english(self, word: int) -> tuple[tuple[str, ...], ...]:
        """What a word may be in English, each as its words (`closeness.vocabulary.english_choices`)."""
        ways = map(self.choice_words.one, self.choices.one(word).tolist())
        return tuple([tuple(map(self.word, way.tolist())) for way in ways])

    def english_of(self, words: Places) -> list[tuple[tuple[str, ...], ...]]:
        """`english` of some words."""
        ways, ends = self.choices.gather(words)
        said, said_ends = self.choice_words.gather(ways)
        once = distinct(said.astype(np.int64))
        text = dict(zip(once.tolist(), self.texts(once), strict=True))
        each = list(map(text.__getitem__, said.tolist()))
        every = [tuple(each[start:end]) for start, end in pairwise(said_ends.tolist())]
        return [tuple(every[start:end]) for start, end in pairwise(ends.tolist())]

    def words_meaning(self, words: Places) -> tuple[Places, Places, NDArray[np.float64]]:
        """The foreign words that may be in English what holds one of some words: their places, which of the words it is
        for each, and the share that it has of what is said."""
        english, foreign, share = self._meanings
        start = np.searchsorted(english, words)
        sizes = np.searchsorted(english, words, side="right") - start
        at, _ = stretches(start, sizes)
        return foreign[at], np.repeat(np.arange(len(words)), sizes), share[at]

    @cached_property
    def _meanings(self) -> tuple[Places, Places, NDArray[np.float64]]:
        """Every word of what a foreign word may be in English, ascending, with that word and one by how many they
        are."""
        words, ends = self.choice_words.gather(self.choices.values)
        sizes = ends[1:] - ends[:-1]
        starts = self.choices.start.astype(np.int64)
        foreign = np.repeat(np.arange(len(starts) - 1), starts[1:] - starts[:-1])
        order = np.argsort(words, kind="stable")
        return words[order].astype(np.int64), np.repeat(foreign, sizes)[order], np.repeat(1 / sizes, sizes)[order]

    def keep(self, names: Places) -> None:
        """Have closeness know what is kept of some names and their words (`closeness.kept`)."""
        if self._kept_since != forgotten():
            self._kept, self._kept_since = set(), forgotten()
        new = [name for name in names.tolist() if name not in self._kept]
        if not new:
            return
        self._kept.update(new)
        names = np.array(new, np.int64)
        rows = self.rows_of_names(names)
        held, ends = self.row_words.gather(rows)
        words = distinct(held.astype(np.int64))
        texts = self.words.texts(words)
        weights = map(OwnWeight, *(each[words].tolist() for each in self.own_weight))
        flags, known = self.flags[words].tolist(), self.known[words].tolist()
        kept = {}
        each = zip(texts, self.english_of(words), self.word_codes.of(words), weights, known, flags, strict=True)
        for text, english, codes, weight, has_senses, bits in each:
            facts = [bool(bits & bit) for bit in (IS_KNOWN, IS_SURNAME, IS_MEANT, IS_SAID, IS_ABROAD, IS_EVERYDAY)]
            kept[text] = KeptWord(codes, weight, english, bool(has_senses), *facts)
        number = dict(zip(words.tolist(), texts, strict=True))
        written = [number[word] for word in held.tolist()]
        ways = [tuple(written[start:end]) for start, end in pairwise(ends.tolist())]
        sizes = self.name_rows[names + 1].astype(np.int64) - self.name_rows[names]
        first = np.append(0, np.cumsum(sizes)).tolist()
        divisions = [tuple(ways[start:end]) for start, end in pairwise(first)]
        said = zip(divisions, self.name_codes.of(names), strict=True)
        keep(kept, {one[0]: KeptName(one, codes) for one, codes in said})

    def names_with_part(self, part: str) -> Places:
        """The names with a word that is `part`, or begins or ends with it, ascending; as written, not divided."""
        words = self.words.with_part(part, self.word_bigrams.with_rarest(part))
        rows, _ = self.postings.gather(words)
        names = self.row_name[rows]
        return distinct(names[self.name_rows[names] == rows].astype(np.int64))

    def bases(self) -> dict[int, list[str]]:
        """The lemmas that each word is a form of, itself included."""
        found: dict[int, list[str]] = {}
        for at in range(len(self._lemmas)):
            lemma = self._lemmas.text(at)
            for word in self._lemma_words.one(at).tolist():
                found.setdefault(word, []).append(lemma)
        return found

    def rows_of_names(self, names: Places) -> Places:
        """Every row of some names, ascending where the names are."""
        starts = self.name_rows[names].astype(np.int64)
        sizes = self.name_rows[names + 1].astype(np.int64) - starts
        ends = np.cumsum(sizes)
        rows: Places = np.arange(int(ends[-1]) if len(ends) else 0) + np.repeat(starts - ends + sizes, sizes)
        return rows
