"""The closest names of a register to one name: what scoring every one of them would find, at a fraction of it.

Overall closeness rests on the closeness of words (`closeness.overall`), so the search goes by words. In a
register of few words (`FEW_WORDS`), each is compared and the result is exact. In a larger one the search has two
stages. First, the words of the register that look like a word of the name, sound like it or mean the same are
found, and the names that hold such words are ranked by those words alone. Then the best of that ranking are scored
in full, and more of them as long as others come near the last place. Names run together (hydra pore, hydrapore)
are found apart, by their letters and sounds as wholes. Scores are always those of `closeness.score`; only which
names get one is a choice.

What is sure: no word, and no name run together, that looks alike above its level is missed, because the filter is
an upper bound; nor a word that means the same. What is not: words that sound somewhat alike are aligned only if
they share letters or the bound on their sound is high, and at most `MOST_ALIGNED` of them; and a name near the
last place may owe its rank to several faint likenesses, each below the levels. How often either costs a place is
measured in tests/bench/bench_register.py.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Features, Parameters, Word, shipped_parameters
from ..closeness.alike import SAME_MEANING
from ..closeness.appearance import FLOOR as LOOK_FLOOR
from ..closeness.overall import JOINED, JOINED_FLOOR, JOINED_SOUND_FLOOR
from ..closeness.sound import FLOOR as SOUND_FLOOR
from ..closeness.vocabulary import words_alike_in_meaning
from ..lexicon import equivalents, lexicon

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["nearest"]

FEW_WORDS = 20_000
"""Registers with so many distinct words at most are searched word by word: the result is exact."""
LOOKS, SOUNDS, FAINT_SOUNDS, SHARED = 0.2, 0.5, 0.25, 0.45
"""In larger ones: likeness above the floors of `closeness` from which a word is found by its look, by its sound, and
by a fainter sound if it has that share of its letters, order forgotten, in common. Chosen by recall
(tests/bench/bench_register.py): at 0.24, 0.65, 0.32, 0.5 a search takes a fifth less and finds 0.98 of the 50
closest among a million."""
SHARED_JOINED, SHARED_LONG = 0.52, 0.75
"""Share of letters in common of names that sound alike run together: the first and 0.01 for each letter, up to the
second."""
MOST_ALIGNED, MOST_JOINED = 25_000, 2_000
"""How many words, and names run together, are aligned by sound at most, by the bound and the letters in common."""
OTHER_READINGS = 0.15
"""So much less alike the likeliest reading may be for the other readings of the name to be aligned as well."""
SCORED, MOST_SCORED = 6, 60
"""So many times the names asked for are scored in full at once, and at most."""
NEAR = 0.06
"""Names whose rank by their found words alone comes so near the last place are scored in full too."""


class _Seen:
    """One word of the name against every word of the register.

    `value` is the closeness (`closeness.overall.word_closeness`) where it has been worked out, else NaN; `found` are
    the words found to be alike.
    """

    def __init__(self, word: Word, index: Index, parameters: Parameters) -> None:
        self.word, self._index, self._parameters = word, index, parameters
        self.value = np.full(len(index.words), np.nan)
        self._meaning: dict[int, float] = {}
        self._known = has_meaning(word.letters)
        if self._known:
            for other, value in words_alike_in_meaning(word.letters, SAME_MEANING).items():
                for place in index.words_of_lemma(other).tolist():
                    self._meaning[place] = max(value, self._meaning.get(place, 0.0))
        same = index.words.find(word.letters)
        self._same = -1 if same is None else same
        self.found = self._alike()

    def _alike(self) -> Places:
        index, word = self._index, self.word
        if len(index.words) <= FEW_WORDS:
            places = np.arange(len(index.words))
            self.work_out(places)
            return places[self.value > 0]
        look, _ = index.words.near(word.letters, LOOK_FLOOR + LOOKS * (1 - LOOK_FLOOR))
        least = SOUND_FLOOR + FAINT_SOUNDS * (1 - SOUND_FLOOR)
        codes, most = index.word_codes.within(word.codes, least)
        heard, ends = ragged(index.word_codes.owners, index.word_codes.owners_start, codes)
        codes, most = np.repeat(codes, np.diff(ends)), np.repeat(most, np.diff(ends))
        share = index.words.in_common(word.letters, heard)
        likely = ((most >= SOUND_FLOOR + SOUNDS * (1 - SOUND_FLOOR)) | (share >= SHARED)).nonzero()[0]
        likely = likely[_greatest((most + share)[likely], MOST_ALIGNED)]
        codes, heard = codes[likely], heard[likely]
        first = index.word_codes.alike(word.codes[:1], codes)
        likely = (first >= least - OTHER_READINGS).nonzero()[0]
        heard, codes, first = heard[likely], codes[likely], first[likely]
        heard = heard[np.maximum(first, index.word_codes.alike(word.codes[1:], codes)) >= least]
        meant = np.fromiter(self._meaning, np.int64, len(self._meaning))
        same = np.array([self._same] if self._same >= 0 else [], np.int64)
        places = np.unique(np.concatenate([look, heard, meant, same]))
        self.work_out(places)
        return places[self.value[places] > 0]

    def work_out(self, places: Places) -> None:
        """Fill in `value` for these words."""
        places = places[np.isnan(self.value[places])]
        if not len(places):
            return
        index, parameters, share = self._index, self._parameters, self._parameters.stronger_aspect
        look = np.maximum(0, (index.words.alike(self.word.letters, places) - LOOK_FLOOR) / (1 - LOOK_FLOOR))
        raw = np.zeros(len(places))
        codes, ends = ragged(index.word_codes.ids, index.word_codes.ids_start, places)
        if len(codes) and self.word.codes:
            distinct, back = np.unique(codes, return_inverse=True)
            best = index.word_codes.alike(self.word.codes, distinct)
            has = ends[1:] > ends[:-1]
            raw[has] = np.maximum.reduceat(best[back], ends[:-1][has])
        heard = np.maximum(0, (raw - SOUND_FLOOR) / (1 - SOUND_FLOOR))
        value = np.maximum(look, heard) * share + (1 - share) / 2 * (look + heard)
        if self._known:
            meaning = np.array([self._meaning.get(place, 0.0) for place in places.tolist()])
            alike = meaning >= SAME_MEANING
            value[(index.known[places] > 0) & ~alike] *= parameters.different_meaning
            value[alike] = np.maximum(value[alike], parameters.meaning_share * meaning[alike])
        value[places == self._same] = 1.0
        self.value[places] = value


def has_meaning(word: str) -> bool:
    """Whether a meaning can be compared: the word or an equivalent stands in the lexicon."""
    return bool(lexicon().bases(word) if word.isascii() else ()) or bool(equivalents(word))


def ragged(values: NDArray[np.uint32], start: NDArray[np.uint32], places: Places) -> tuple[Places, Places]:
    """The lists of some places, run together, and where each begins (one more boundary than places)."""
    starts = start[places].astype(np.int64)
    sizes = start[places + 1].astype(np.int64) - starts
    ends = np.zeros(len(places) + 1, np.int64)
    np.cumsum(sizes, out=ends[1:])
    return values[np.arange(int(ends[-1])) + np.repeat(starts - ends[:-1], sizes)].astype(np.int64), ends


class _Search:
    """One name against one index."""

    def __init__(
        self, index: Index, name: Features, parameters: Parameters, left_out: NDArray[np.bool_] | None
    ) -> None:
        self.index, self.name, self.parameters = index, name, parameters
        self._seen: dict[str, _Seen] = {}
        for division in name.divisions:
            for word in division:
                if word.letters not in self._seen:
                    self._seen[word.letters] = _Seen(word, index, parameters)
        self.done = np.zeros(len(index.names), bool)
        self._left_out = left_out
        self.found: list[tuple[Places, Values]] = []

    def score(self, names: Places) -> None:
        """Score some names in full, those not yet scored."""
        names = np.unique(names)
        names = names[~self.done[names]]
        if not len(names):
            return
        self.done[names] = True
        rows = self.index.rows_of_names(names)
        words, _ = self.index.row_words.of(rows)
        distinct = np.unique(words).astype(np.int64)
        for seen in self._seen.values():
            seen.work_out(distinct)
        values = self.overall(rows, {letters: seen.value for letters, seen in self._seen.items()})
        of = self.index.row_name[rows]
        first = np.searchsorted(of, names)
        self.found.append((names, np.maximum.reduceat(values, first)))

    def overall(self, rows: Places, tables: dict[str, Values]) -> Values:
        """`closeness.overall` of some rows by their words alone, given each of our words against all words."""
        parameters = self.parameters
        words, ends = self.index.row_words.of(rows)
        starts = ends[:-1]
        weight = self.index.weight[words]
        whole = np.add.reduceat(weight, starts)
        counts = np.diff(ends)
        best = np.zeros(len(rows))
        for division in self.name.divisions:
            theirs = np.zeros(len(words))
            share = np.zeros(len(rows))
            ours = np.zeros(len(rows))
            for word in division:
                against = tables[word.letters][words]
                np.maximum(theirs, against, out=theirs)
                nearest_here = np.maximum.reduceat(against, starts)
                share += word.weight * nearest_here
                ours += nearest_here
            own = sum(word.weight for word in division)
            hits = np.add.reduceat(weight * theirs, starts)
            one, other = share / own, hits / whole
            value = parameters.fuller_side * np.maximum(one, other)
            value += (1 - parameters.fuller_side) * np.minimum(one, other)
            if parameters.first_word:
                firsts = self._firsts(division, tables, words, weight, starts, counts)
                value += parameters.first_word * firsts * (1 - value)
            matched = ours + np.add.reduceat(theirs, starts)
            strength = np.divide(share + hits, matched, out=np.zeros(len(rows)), where=matched > 0)
            np.maximum(best, less_if_weak(value, strength, parameters), out=best)
        return best

    def _firsts(
        self,
        division: tuple[Word, ...],
        tables: dict[str, Values],
        words: NDArray[np.uint32],
        weight: Values,
        starts: Places,
        counts: Places,
    ) -> Values:
        first = next((word for word in division if word.weight >= 0.1), division[0])
        place = np.where(weight >= 0.1, np.arange(len(words)), len(words))
        theirs = np.minimum.reduceat(place, starts)
        theirs = np.where(theirs < starts + counts, theirs, starts)
        return tables[first.letters][words[theirs]] * np.minimum(weight[theirs], first.weight)

    def last_place(self, top: int) -> float:
        """What the last of the `top` names found so far scores; 0 while there are fewer."""
        values = np.concatenate([values for _, values in self.found]) if self.found else np.zeros(0)
        return float(np.partition(values, -top)[-top]) if len(values) >= top else 0.0

    def by_words(self, top: int) -> None:
        """Rank names by the words found to be alike, and score the best of them in full."""
        index = self.index
        touched = np.zeros(len(index.names), bool)
        for seen in self._seen.values():
            holding, _ = index.word_rows.of(seen.found)
            touched[index.row_name[holding]] = True
        if self._left_out is not None:
            touched &= ~self._left_out
        names = touched.nonzero()[0]
        if not len(names):
            return
        rows = index.rows_of_names(names)
        tables = {letters: np.nan_to_num(seen.value) for letters, seen in self._seen.items()}
        guess = np.maximum.reduceat(self.overall(rows, tables), np.searchsorted(index.row_name[rows], names))
        if len(index.words) <= FEW_WORDS:
            self.done[names] = True
            self.found.append((names, guess))
            return
        order = np.argsort(-guess, kind="stable")
        names, guess = names[order], guess[order]
        done = SCORED * top
        self.score(names[:done])
        near = int(np.searchsorted(-guess, -(self.last_place(top) - NEAR), side="right"))
        if near > done:
            self.score(names[done : min(near, MOST_SCORED * top)])

    def run_together(self, top: int) -> None:
        """Names that are close only with their words run together."""
        index = self.index
        last = max(self.last_place(top), 1e-9)
        looks = min(1.0, JOINED_FLOOR + last / JOINED * (1 - JOINED_FLOOR))
        names, raw = index.names.near(self.name.letters, looks)
        value = np.where(raw == 1.0, 1.0, JOINED * np.maximum(0, (raw - JOINED_FLOOR) / (1 - JOINED_FLOOR)))
        self._raise(names[value > 0], value[value > 0])
        sounds = min(1.0, JOINED_SOUND_FLOOR + last / JOINED * (1 - JOINED_SOUND_FLOOR))
        # The longer the names, the less the bound on sound says: most sounds are there somewhere. But names that
        # sound alike from end to end share letters, the more of them the longer they are.
        shared = min(SHARED_LONG, SHARED_JOINED + 0.01 * len(self.name.letters))
        names = index.names.sharing(self.name.letters, shared)
        codes, ends = ragged(index.name_codes.ids, index.name_codes.ids_start, names)
        codes, most = index.name_codes.likely(self.name.codes, codes, sounds)
        codes = codes[_greatest(most, MOST_JOINED)]
        names = np.unique(ragged(index.name_codes.owners, index.name_codes.owners_start, codes)[0])
        codes, ends = ragged(index.name_codes.ids, index.name_codes.ids_start, names)
        if len(codes):
            raw = np.maximum.reduceat(index.name_codes.alike(self.name.codes, codes), ends[:-1])
            heard = JOINED * (raw - JOINED_SOUND_FLOOR) / (1 - JOINED_SOUND_FLOOR)
            self._raise(names[raw >= sounds], heard[raw >= sounds])

    def _raise(self, names: Places, joined: Values) -> None:
        """Score some names, at least as close as they are run together."""
        if self._left_out is not None:
            joined, names = joined[~self._left_out[names]], names[~self._left_out[names]]
        if not len(names):
            return
        self.score(names)
        order = np.argsort(names, kind="stable")
        names, joined = names[order], joined[order]
        rows = self.index.rows_of_names(names)
        words, ends = self.index.row_words.of(rows)
        heaviest = np.maximum.reduceat(self.index.weight[words], ends[:-1])
        sizes = (self.index.name_rows[names + 1] - self.index.name_rows[names]).astype(np.int64)
        first = np.cumsum(sizes) - sizes
        own = max(word.weight for division in self.name.divisions for word in division)
        strongest = np.maximum(np.maximum.reduceat(heaviest, first), own)
        value = np.where(joined >= 1.0, 1.0, less_if_weak(joined, strongest, self.parameters))
        self.found.append((names, value))

    def best(self, top: int) -> tuple[Places, Values]:
        """The names found, closest first, equal ones by their place."""
        if not self.found:
            return np.zeros(0, np.int64), np.zeros(0)
        names = np.concatenate([names for names, _ in self.found])
        values = np.concatenate([values for _, values in self.found])
        order = np.lexsort((-values, names))
        names, values = names[order], values[order]
        keep = np.r_[True, names[1:] != names[:-1]]
        keep &= values > 0
        names, values = names[keep], values[keep]
        order = np.argsort(-values, kind="stable")[:top]
        return names[order], values[order]


def _greatest(values: Values, count: int) -> Places:
    """Where the `count` greatest of some values stand, in no order."""
    if len(values) <= count:
        return np.arange(len(values))
    return np.argpartition(values, -count)[-count:]


def less_if_weak(value: Values, strength: Values, parameters: Parameters) -> Values:
    """`closeness.overall._less_if_weak` over arrays."""
    missing = np.maximum(0.0, 1 - strength / parameters.enough_strength)
    result: Values = np.where(value > 0, np.maximum(value, 1e-300) ** (1 + parameters.weak_element * missing), 0.0)
    return result


def nearest(index: Index, name: Features, top: int, left_out: NDArray[np.bool_] | None = None) -> tuple[Places, Values]:
    """The `top` names of `index` closest to `name` overall, closest first, and how close they are.

    Names that have nothing in common with `name` (closeness 0) are not among them, nor those `left_out`.
    """
    if not name.divisions or not len(index.names):
        return np.zeros(0, np.int64), np.zeros(0)
    search = _Search(index, name, shipped_parameters(), left_out)
    search.by_words(top)
    search.run_together(top)
    return search.best(top)
