"""What words bring to mind: association, neighbours, feeling, concreteness, proper names."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.errors import DataError
from namescreen.lexicon import (
    associated,
    association,
    concreteness,
    embedding,
    feeling,
    lexicon,
    neighbours,
    proper_name,
)
from namescreen.lexicon.embedding import embedded_words, rows_at, vector

WORDS = st.sampled_from(embedded_words()[::97])


class TestAssociation:
    @given(WORDS, WORDS)
    def test_is_symmetric_and_in_range(self, one: str, other: str) -> None:
        value = association(one, other)
        assert value is not None
        assert 0.0 <= value <= 1.0
        assert value == association(other, one)

    @given(WORDS)
    def test_a_word_is_most_associated_with_itself(self, word: str) -> None:
        assert association(word, word) == 1.0

    def test_an_unknown_word_is_unknown_not_unrelated(self) -> None:
        assert association("zzyzxq", "garden") is None
        assert association("honey", "engine") == 0.0

    @pytest.mark.parametrize(
        ("word", "near", "far"),
        [("denim", "jeans", "soup"), ("clay", "kiln", "radio"), ("honey", "bee", "engine"), ("lamp", "light", "milk"),
         ("sting", "pain", "carpet"), ("candle", "wax", "bicycle"), ("kettle", "boil", "necktie")],
    )  # fmt: skip
    def test_what_belongs_together(self, word: str, near: str, far: str) -> None:
        close, distant = association(word, near), association(word, far)
        assert close is not None
        assert distant is not None
        assert close > 2 * distant
        assert close > 0.3

    def test_an_inflected_form_counts_as_its_base(self) -> None:
        assert vector("kilns", lexicon().bases) is not None
        assert association("kilns", "clay") == pytest.approx(association("kiln", "clay"), abs=0.2)

    @given(st.integers(0, len(embedded_words()) - 1), st.integers(0, len(embedded_words()) - 1))
    def test_one_row_is_read_as_many_are_whatever_code_does_it(self, place: int, other: int) -> None:
        one, two = embedding.scaled_row(place), embedding.scaled_row(other)
        assert np.array([one, two]).astype(np.float32).tolist() == rows_at([place, other]).tolist()
        assert one == embedding._scaled_in_python(embedding._mapped().row(place))
        assert embedding.product(one, two) == embedding._product_in_python(one, two)
        assert embedding.product(one, two) == pytest.approx(float(np.array(one) @ np.array(two)), abs=1e-14)

    def test_what_definitions_mention_comes_strongest_first(self) -> None:
        strengths = list(associated("pottery").values())
        assert strengths == sorted(strengths, reverse=True)
        assert associated("zzyzxq") == {}


class TestNeighbours:
    @pytest.mark.parametrize("words", ["candle", ("candle", "scent", "home", "calm"), ("zzyzxq", "tea")])
    def test_are_the_mean_association_best_first(self, words: str | tuple[str, ...]) -> None:
        found = neighbours(words, 50)
        assert len(found) == 50
        values = [value for _, value in found]
        assert values == sorted(values, reverse=True)
        given = [words] if isinstance(words, str) else [word for word in words if word != "zzyzxq"]
        assert not {word for word, _ in found} & set(given)
        for word, value in found[::7]:
            each = [association(one, word) or 0.0 for one in given]
            assert value == pytest.approx(sum(each) / len(each), abs=0.02)

    def test_nothing_known_gives_nothing(self) -> None:
        assert neighbours("zzyzxq") == neighbours([]) == neighbours("tea", 0) == []

    def test_the_caller_may_change_the_list(self) -> None:
        neighbours("tea", 5).clear()
        assert len(neighbours("tea", 5)) == 5


class TestTables:
    def test_a_missing_table_is_named_with_the_remedy(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(embedding, "wordlists_folder", lambda: tmp_path)
        embedding._mapped.cache_clear()
        with pytest.raises(DataError, match=r"embedding\.npy.*Install namescreen again"):
            embedding._mapped()
        (tmp_path / "embedding.npy").write_bytes(b"no table")
        with pytest.raises(DataError, match=r"embedding\.npy"):
            embedding._mapped()
        np.save(tmp_path / "embedding.npy", np.zeros((3, 144), dtype=np.int8))
        with pytest.raises(DataError, match="row for each"):
            embedding._mapped()
        embedding._mapped.cache_clear()


class TestFeeling:
    @pytest.mark.parametrize("word", ["sting", "crook", "dull", "rotten", "crooks", "sludge"])
    def test_unpleasant(self, word: str) -> None:
        assert (feeling(word) or 0.0) < -0.1

    @pytest.mark.parametrize("word", ["joy", "bloom", "delight", "glow"])
    def test_pleasant(self, word: str) -> None:
        assert (feeling(word) or 0.0) > 0.1

    def test_neutral_is_not_unknown(self) -> None:
        assert feeling("kettle") == 0.0
        assert feeling("zzyzxq") is None

    @given(WORDS)
    def test_range(self, word: str) -> None:
        assert -1.0 <= (feeling(word) or 0.0) <= 1.0


class TestConcreteness:
    def test_things_and_ideas(self) -> None:
        things = [concreteness(word) for word in ("kettle", "velvet", "meadow", "spoons")]
        ideas = [concreteness(word) for word in ("freedom", "sincerity", "theory")]
        assert min(value or 0.0 for value in things) > 0.6
        assert all(value is not None and value < 0.2 for value in ideas)
        assert concreteness("zzyzxq") is concreteness("quickly") is None


class TestProperNames:
    def test_examples(self) -> None:
        assert proper_name("Smith") == {"surname"}
        assert proper_name("mary") >= {"first name"}
        assert proper_name("Tuscany") == {"place"}
        assert proper_name("planter") == frozenset()
