"""What the words of a register count for some goods: worked out once for each word that is asked for, from what the
register keeps of it whatever the goods are."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness.vocabulary import meant
from ..closeness.weights import OwnWeight, weight_for_goods
from ..lexicon.association import Vectors
from .word_entries import IS_MEANT

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["GoodsWeights"]


class GoodsWeights:
    """The `closeness.weights.word_weight` of the words of an index for goods described by some words."""

    def __init__(self, index: Index, goods_words: tuple[str, ...]) -> None:
        self._index, self._goods = index, " ".join(goods_words)
        self._known = np.zeros(len(index.strength), bool)
        self._weights = np.zeros((2, len(index.strength)))

    def of(self, words: Places) -> Values:
        """The strengths of some words, and their dominances."""
        new = words[~self._known[words]]
        if len(new):
            self._weights[:, new] = self._found(new)
            self._known[new] = True
        return self._weights[:, words]

    def _found(self, words: Places) -> Values:
        from ..goods.description import describe_in_conflict, most_associated, named_goods

        index, goods = self._index, self._goods
        own = map(OwnWeight, *(each[words].tolist() for each in index.own_weight))
        as_it_stands = ((index.flags[words] & IS_MEANT) > 0).tolist()
        weights = []
        each = zip(map(index.word, words.tolist()), own, as_it_stands, self._associated(words).tolist(), strict=True)
        for word, its_own, is_meant, associated in each:
            said = word if is_meant else meant(word)
            to_mind = associated if is_meant else most_associated(said, named_goods(goods))
            weights.append(weight_for_goods(its_own, describe_in_conflict(said, goods).weight, to_mind))
        return np.array(weights).T

    def _associated(self, words: Places) -> Values:
        """`goods.description.most_associated` of each word and the goods."""
        from ..goods.description import named_goods

        index = self._index
        vectors, forms = Vectors(index.vector_row[words]), index.form_defined[words]
        found = [vectors.associations(one, forms, index.keys) for one in named_goods(self._goods)]
        return np.asarray(np.nan_to_num(np.max([np.zeros(len(words)), *found], axis=0)), np.float64)
