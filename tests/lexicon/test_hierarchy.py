"""The hierarchy by number against the relations that every row of the senses table states."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from namescreen.errors import DataError
from namescreen.lexicon import hierarchy, lexicon
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
    with pytest.raises(DataError):
        hierarchy.Hierarchy(open_table("wordnet-senses.tsv"))
