"""The search index of a register: its distinct names, their words, and the sounds and weights of the words.

Every distinct word is read aloud once, on all processors; everything else is arithmetic on arrays. The arrays
are those that `index.Index` describes.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from itertools import chain, islice
from typing import TYPE_CHECKING, NamedTuple, TypeVar

import numpy as np

from ..closeness import said_abroad
from ..closeness.features import digits_read, segmentations_of
from ..closeness.vocabulary import expect_many
from ..closeness.weights import OwnWeight, Weight, weight_for_goods
from ..lexicon import foreign_filter
from ..processes import in_workers, processors, running, without_collection
from ..pronunciation.g2p import joint_model
from ..tables import open_table
from ..team import shared_out
from ..text.spoken_forms import MOST_WORDS
from .bigram_index import pack_bigrams
from .mark_names import NAMES_A_TASK, add_bare, add_marks, keys_of
from .packing import boundaries, pack_inverse, pack_lists, pack_strings
from .phoneme_index import code_arrays
from .word_entries import FLAGS, WordEntry, codes_of_name, read_meanings, read_words

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..closeness.word_facts import WordFacts
    from ..marks.reader import Progress
    from .index import Index

    Arrays = dict[str, NDArray[np.generic]]

__all__ = ["build"]

Item = TypeVar("Item")
Result = TypeVar("Result")

WORDS_A_TASK = 1_000
WORTH_A_POOL = 2_000
"""The number of marks from which a second process pays for its start."""
ITEMS_A_TURN = 40
"""Words or names that a process takes at a time where there is no pool, but a team of two."""
TASKS_A_PROCESS = 40
"""The number of tasks after which a process is replaced, because the caches of pronunciation are not bounded."""
WORTH_PRELOADING = 2_000
"""The number of words from which it pays to preload the tables that they are looked up in (0.3 s)."""
WORTH_INDEXING = 20_000
"""The number of words from which it pays to work out beforehand what only few words can be (1 s)."""
TABLES = (
    "pronunciations.tsv", "wordnet-words.tsv", "wordnet-exceptions.tsv", "frequency/en.tsv", "word_kinds.tsv",
    "words_by_sound.tsv", "embedding_words.tsv", "associations.tsv", "given_names.tsv", "places.tsv", "rimes.tsv",
)  # fmt: skip


@without_collection()
def build(texts: Iterable[str], progress: Progress | None = None, base: Index | None = None) -> Arrays:
    """The index arrays over marks with these texts, in their order; what `base` holds is taken over."""
    everything = list(texts)
    workers = _Workers(len(everything))
    keys, name_of_mark, bare_of = keys_of(everything, workers.map)
    del everything
    with workers.beside(_name_arrays, keys) as name_arrays:
        old_words, old_names = _reused(base, set(keys)) if base else ({}, {})
        words = _words([key for key in keys if key not in old_names], workers, progress)
        order, arrays_of_names = name_arrays()
    keys = [keys[at] for at in order.tolist()]
    rank = np.empty(len(keys), np.int64)
    rank[order] = np.arange(len(keys))
    for text, word in old_words.items():
        words.setdefault(text, word)  # words read now have further fields, from which names are combined
    vocabulary = _Vocabulary(sorted(sorted(words), key=len), words, _only_said(words, workers))
    with workers.beside(_word_arrays, vocabulary) as word_arrays:
        names = _names(keys, vocabulary, old_names, workers)
        del keys, words, old_words, old_names
        arrays = {**word_arrays(), **arrays_of_names}
    size = len(vocabulary.texts)
    del vocabulary, arrays_of_names  # free the memory for what follows
    code_arrays(arrays, "name_code", names.codes)
    names.codes.clear()
    _add_rows(arrays, names, size)
    add_marks(arrays, rank[name_of_mark], len(rank))
    add_bare(arrays, rank, bare_of)
    return arrays


class _Named(NamedTuple):
    """What the index keeps of one name."""

    segmentations: tuple[tuple[str, ...], ...]
    codes: tuple[str, ...]


def _reused(base: Index, keys: set[str]) -> tuple[dict[str, WordEntry], dict[str, _Named]]:
    """The words and names of an index that are among `keys`."""
    texts = base.all_words()
    word_codes, name_codes = base.word_codes.lists(), base.name_codes.lists()
    facts = _facts_of(base, texts)
    names: dict[str, _Named] = {}
    used: set[str] = set()
    starts = base.row_words.start
    for name in range(len(base.names)):
        rows = range(int(base.name_rows[name]), int(base.name_rows[name + 1]))
        segmentations = tuple(
            tuple(texts[word] for word in base.row_words.values[int(starts[row]) : int(starts[row + 1])].tolist())
            for row in rows
        )
        key = " ".join(segmentations[0])
        if key in keys:
            names[key] = _Named(segmentations, name_codes[name])
            used.update(word for segmentation in segmentations for word in segmentation)
    words = {
        text: WordEntry(word_codes[at], OwnWeight(*(float(each[at]) for each in base.own_weight)), facts[at])
        for at, text in enumerate(texts[: len(base.words)])
        if text in used
    }
    return words, names


def _facts_of(base: Index, texts: list[str]) -> list[WordFacts]:
    """The facts on every word of an index."""
    from ..closeness.word_facts import WordFacts

    keys = base.bases()
    return [
        WordFacts(
            has_senses=bool(base.known[at]),
            vector_row=int(base.vector_row[at]),
            form_defined=base.lemma(int(base.form_defined[at])),
            keys=tuple(keys.get(at, ())),
            english=base.english(at),
            **{name: bool(base.flags[at] & bit) for name, bit in FLAGS.items()},
        )
        for at in range(len(texts))
    ]


class _Workers:
    """Runs work on all processors if there is enough of it, else in this process. Results come in order."""

    def __init__(self, size: int) -> None:
        self._processes = processors() if size >= WORTH_A_POOL else 1

    @contextmanager
    def beside(self, work: Callable[[Item], Result], item: Item) -> Iterator[Callable[[], Result]]:
        """Run `work` on one item in the background; gives a function that waits for the result."""
        if self._processes == 1:
            yield lambda: work(item)
        else:
            with running(work, item) as result:
                yield result

    def map(
        self, work: Callable[[list[Item]], Result], items: Sequence[Item], size: int
    ) -> Iterator[tuple[list[Item], Result]]:
        """Apply `work` to `items`, `size` at a time; gives each part with its result."""
        if self._processes == 1:
            parts = list(_parts(items, min(size, ITEMS_A_TURN)))
            yield from zip(parts, shared_out(work, parts), strict=True)
            return
        for batch in _parts(list(_parts(items, size)), TASKS_A_PROCESS * self._processes):
            yield from zip(batch, in_workers(work, batch), strict=True)


def _parts(items: Sequence[Item], size: int) -> Iterator[list[Item]]:
    for at in range(0, len(items), size):
        yield list(items[at : at + size])


def _words(keys: list[str], workers: _Workers, progress: Progress | None) -> dict[str, WordEntry]:
    """Every word of the names, and every part of a closed word."""
    words: dict[str, WordEntry] = {}
    written = {word for key in keys for word in key.split()}
    numerals = set(filter(str.isdecimal, written))
    with_digits = (texts for key in keys if not numerals.isdisjoint(texts := tuple(key.split())))
    wanted = sorted(written.union(chain.from_iterable(chain.from_iterable(map(digits_read, with_digits)))))
    done = 0
    if len(wanted) >= WORTH_PRELOADING:
        for table in TABLES:  # before the workers start, so that they share them
            open_table(table).preload()
        foreign_filter.expect_many()
    if len(wanted) >= WORTH_INDEXING:
        joint_model().preload()
        expect_many()
        said_abroad.expect_many()
    while wanted:
        total = len(words) + len(wanted)
        for part, found in workers.map(read_words, wanted, WORDS_A_TASK):
            words.update(zip(part, found, strict=True))
            done += len(part)
            if progress:
                progress(done, total)
        parts = {piece for word in wanted for segmentation in words[word].segmentations for piece in segmentation}
        wanted = sorted(parts - words.keys())
    return words


def _only_said(words: dict[str, WordEntry], workers: _Workers) -> dict[str, WordEntry]:
    """Words that stand in no name, only in the English meaning of foreign ones: they are compared by meaning alone."""
    wanted = {said for word in words.values() for choice in word.facts.english for said in choice}
    found: dict[str, WordEntry] = {}
    for part, read in workers.map(read_meanings, sorted(wanted - words.keys()), WORDS_A_TASK):
        found.update(zip(part, read, strict=True))
    return found


class _Names(NamedTuple):
    """All names in order: the codes of each, how many segmentations each has, how many words each segmentation has, and
    those words, one after another."""

    codes: list[tuple[str, ...]]
    segmentations: array[int]
    sizes: array[int]
    words: array[int]


def _names(keys: list[str], vocabulary: _Vocabulary, old: dict[str, _Named], workers: _Workers) -> _Names:
    """The segmentations and phoneme codes of every name; those in `old` are taken over.

    Where every word is said as it is written, the codes of the name are combined from those of the words, most probable
    first, as `pronunciation.pronounce_words` does. A name with numerals or single letters is read as a whole.
    """
    words = vocabulary.words
    # All in one look-up, as the millions of them are most of the work.
    known = {
        text: (at, word, len(word.segmentations) > 1 or text.isdecimal(), not word.said_as_written)
        for at, text in enumerate(vocabulary.texts)
        for word in (words[text],)
    }
    names = _Names([], array("I"), array("I"), array("I"))

    def of_word(text: str) -> tuple[tuple[str, ...], ...]:
        return words[text].segmentations

    special: list[int] = []
    for at, key in enumerate(keys):
        texts = key.split()
        places, parts, closed, varied = zip(*[known[text] for text in texts], strict=True) if texts else ((),) * 4
        segmentations = None
        if key in old:
            segmentations, codes = old[key]
        elif len(parts) == 1:
            codes = parts[0].codes
        elif any(varied) or len(parts) > MOST_WORDS:
            codes = ()
            special.append(at)
        else:
            codes = codes_of_name(parts)
        if segmentations is None and (any(closed) or not texts):
            segmentations = segmentations_of(tuple(texts), of_word)
        names.codes.append(codes)
        if segmentations is None:
            names.segmentations.append(1)
            names.sizes.append(len(places))
            names.words.extend(places)
        else:
            names.segmentations.append(len(segmentations))
            for segmentation in segmentations:
                names.sizes.append(len(segmentation))
                names.words.extend([known[text][0] for text in segmentation])
    for part, found in workers.map(_spoken_codes, [keys[at] for at in special], NAMES_A_TASK // 4):
        for at, said in zip(islice(special, len(part)), found, strict=True):
            names.codes[at] = said
        del special[: len(part)]
    return names


def _spoken_codes(keys: list[str]) -> list[tuple[str, ...]]:
    from ..closeness.sound import spoken_phoneme_codes
    from ..text import parse

    return [spoken_phoneme_codes(parse(key).spoken) for key in keys]


def _name_arrays(keys: list[str]) -> tuple[NDArray[np.int64], Arrays]:
    """The order of the names, and the arrays of their letters in that order."""
    arrays: Arrays = {}
    # Names sorted by the length of their unspaced letters, then by those letters, then by their spaces: a space sorts
    # before every letter.
    joined = [key.replace(" ", "") for key in keys]
    by = [f"{chr(len(letters))}{letters} {key}" for letters, key in zip(joined, keys, strict=True)]
    order = sorted(range(len(keys)), key=by.__getitem__)
    del by
    joined = [joined[at] for at in order]
    pack_strings(arrays, "name", joined)
    pack_bigrams(arrays, "name")
    return np.array(order, np.int64), arrays


class _Vocabulary(NamedTuple):
    """All words in order of length, then of their letters: a range of lengths is one piece of every array; and those
    that are `_only_said`, which come after them where all are numbered."""

    texts: list[str]
    words: dict[str, WordEntry]
    said: dict[str, WordEntry]


def _word_arrays(vocabulary: _Vocabulary) -> Arrays:
    """The arrays of the words."""
    arrays: Arrays = {}
    texts, words, said = vocabulary
    pack_strings(arrays, "word", texts)
    pack_bigrams(arrays, "word")
    code_arrays(arrays, "word_code", [words[text].codes for text in texts])
    pack_bigrams(arrays, "word_code")
    pack_strings(arrays, "said", list(said), lengths=False)
    every = [*texts, *said]
    kept = [*map(words.__getitem__, texts), *said.values()]
    facts = [word.facts for word in kept]
    arrays["said_length"] = np.array(list(map(len, said)), np.uint16)
    own = [word.weight for word in kept]
    for kind, weights in ((OwnWeight, own), (Weight, list(map(weight_for_goods, own)))):
        for name in kind._fields:
            arrays[f"word_{name}"] = np.array([getattr(one, name) for one in weights], np.float64)
    arrays["word_known"] = np.array([one.has_senses for one in facts], np.uint8)
    arrays["word_flags"] = np.array(
        [sum(bit for name, bit in FLAGS.items() if getattr(one, name)) for one in facts], np.uint8
    )
    arrays["word_vector_row"] = np.array([one.vector_row for one in facts], np.int32)
    keys: dict[str, list[int]] = {}
    for at, (text, one) in enumerate(zip(every, facts, strict=True)):
        for key in dict.fromkeys((text, one.form_defined, *one.keys)):
            keys.setdefault(key, []).append(at)
    lemmas = sorted(keys)
    pack_strings(arrays, "lemma", lemmas, lengths=False)
    pack_lists(arrays, "lemma_words", list(map(keys.__getitem__, lemmas)))
    lemma = dict(zip(lemmas, range(len(lemmas)), strict=True))
    arrays["word_form"] = np.array([lemma[one.form_defined] for one in facts], np.uint32)
    choices = {choice: at for at, choice in enumerate(dict.fromkeys(chain.from_iterable(f.english for f in facts)))}
    number = {text: at for at, text in enumerate(every)}
    pack_lists(arrays, "word_choices", [[choices[choice] for choice in one.english] for one in facts])
    pack_lists(arrays, "choice_words", [[number[word] for word in choice] for choice in choices])
    return arrays


def _add_rows(arrays: Arrays, names: _Names, vocabulary: int) -> None:
    """The words of every segmentation of every name, and the segmentations of every word."""
    counts = np.frombuffer(names.segmentations, np.uint32).astype(np.int64)
    arrays["row_words"] = np.array(names.words, np.uint32)
    arrays["row_words_start"] = boundaries(np.frombuffer(names.sizes, np.uint32))
    arrays["row_name"] = np.repeat(np.arange(len(counts), dtype=np.uint32), counts)
    arrays["name_rows"] = boundaries(counts)
    pack_inverse(arrays, "postings", arrays["row_words"], arrays["row_words_start"], vocabulary)
