"""The hierarchy by number against the relations that every row of the senses table states."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from namescreen.errors import DataError
from namescreen.lexicon import hierarchy, lexicon
from namescreen.lexicon.sense_similarity import FLOOR, MEASURES, SenseSimilarity
from namescreen.native import choose
from namescreen.tables import open_table


def test_every_200th_sense_has_what_its_row_states() -> None:
    tree = lexicon().hierarchy
    ids = [key for key, _ in open_table("wordnet-senses.tsv").items()]
    for number in range(0, len(ids), 200):
        sense = ids[number]
        assert tree.number(sense) == number
        assert lexicon().entry_at(number) == lexicon().entry(sense)
        assert tree.below[number] == lexicon().entry(sense).below
        assert [ids[one] for one in tree.narrower(number)] == lexicon().related_ids(sense, "~", "~i")
        broader = lexicon().related_ids(sense, "@", "@i")
        above = {ids[one]: steps for one, steps in tree.above(number, 2).items()}
        assert above == {sense: 0} | dict.fromkeys(broader, 1)


def test_a_sense_that_is_not_there() -> None:
    for missing in ("n1", "x", ""):
        with pytest.raises(KeyError):
            lexicon().hierarchy.number(missing)


@pytest.mark.parametrize("facts", [np.zeros(3, "<u4"), np.full(300_000, 7, "<u4"), np.zeros((2, 2)), None])
def test_a_file_of_other_senses_is_an_error(
    facts: np.ndarray | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    if facts is not None:
        np.save(tmp_path / "wordnet-hierarchy.npy", facts)
    monkeypatch.setattr(hierarchy, "wordlists_folder", lambda: tmp_path)
    senses = open_table("wordnet-senses.tsv")
    with pytest.raises(DataError):
        hierarchy.Hierarchy(senses)
    with pytest.raises(DataError):
        choose(lambda library: hierarchy.related_words(library, senses, MEASURES), lambda: hierarchy.Hierarchy(senses))


def test_compiled_code_finds_the_same_words_in_the_same_order() -> None:
    lemmas = [key for key, _ in open_table("wordnet-words.tsv").items()]
    compared = SenseSimilarity(lexicon())
    chosen, in_python = compared.related_words, compared._words_of
    for lemma in [*lemmas[::300], "dog", "set", "plant", "glasses", "hot", "Paris"]:
        around = compared._around(lemma)
        kept = {word for word, score in chosen(lemma, around) if score >= FLOOR}
        found = [one for one in in_python(lemma, around) if one[0] in kept or one[1] >= FLOOR]
        assert [one for one in chosen(lemma, around) if one[1] >= FLOOR] == found


def test_senses_that_are_not_there_are_an_error_and_harm_nothing() -> None:
    related = choose(lambda library: lexicon().related_words(library, MEASURES), lambda: None)
    if related is None:
        pytest.skip("installed without a C compiler")
    asked = [("n2084071", 9)], [("n2084071", 0.9, 9)], ("dog",)  # dog, domestic dog
    before = related.neighbours(*asked)
    assert before
    for own, reached in (([("n1", 9)], []), ([], [("", 0.9, 9)]), ([("n2084071", 9)], [("n1", 0.9, 9)])):
        with pytest.raises(IndexError):
            related.neighbours(own, reached, ())
    assert related.neighbours(*asked) == before
