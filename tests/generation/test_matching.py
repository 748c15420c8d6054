"""Words for goods that no list names: by what pleased for other subjects."""

from __future__ import annotations

import re
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest

from namescreen.brief import Brief, Concept
from namescreen.generation import candidates
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.matching import matches, terms_of, together
from namescreen.generation.short_lists import english_lists, met_by_lists, unlisted
from namescreen.generation.ties import keys_of_meanings, known_words, sources_of, words_of_names

if TYPE_CHECKING:
    from namescreen.generation.brief_terms import Associations

ROOT = Path(__file__).parents[2]


def goods(text: str) -> BriefTerms:
    return BriefTerms.of(Brief(goods=text))


def matched(*texts: str) -> tuple[Associations, Associations]:
    weights = np.ones(len(texts), np.float32)
    return matches(texts, weights, words_of_names(), keys_of_meanings(), len(known_words()))[:2]


def test_matches_keep_their_range_and_nothing_is_known_of_a_word_without_a_vector() -> None:
    found, _ = matched("harbour", "qzxqzx")
    assert found.shape == (len(known_words()), 2)
    assert found.min() >= 0
    assert found.max() <= 1
    assert found[:, 0].any()
    assert not found[:, 1].any()


def test_what_matches_one_term_has_nothing_to_do_with_the_others() -> None:
    both, alone = (matched(*texts)[0][:, 0] for texts in (["harbour", "thread"], ["harbour"]))
    assert np.allclose(both, alone, atol=1e-3)


def test_a_brief_of_one_term_is_matched_as_that_and_of_none_that_is_known_not_at_all() -> None:
    each, whole = matched("harbour")
    assert np.allclose(each[:, 0], whole, atol=1e-3)
    assert not matched("qzxqzx")[1].any()


def test_a_brief_as_a_whole_lies_between_its_terms() -> None:
    vectors = terms_of(["harbour", "thread"])
    mostly = together(vectors, np.array([1.0, 0.2], np.float32))
    cosines = vectors[:, :-1] @ mostly[:-1]
    assert cosines[0] > cosines[1] > vectors[0, :-1] @ vectors[1, :-1]
    assert np.linalg.norm(mostly[:-1]) == pytest.approx(1, abs=1e-4)


@pytest.mark.parametrize("ware", ["tractors", "thermostats", "uniforms"])
def test_goods_without_a_list_bring_names_of_their_own(ware: str) -> None:
    terms = goods(ware)
    assert unlisted(met_by_lists(terms, english_lists())) == [0]
    assert (sources_of(terms).chosen > 0).sum() >= 20
    found = candidates(Brief(goods=ware, concepts=(Concept(ware.removesuffix("s")),)), constructions=["found"])
    assert len(list(islice(found, 12))) == 12


def test_goods_with_a_list_keep_to_it() -> None:
    assert not unlisted(met_by_lists(goods("candles"), english_lists()))


def test_the_record_says_how_well_it_does_on_subjects_it_was_not_fitted_on() -> None:
    record = (ROOT / "wordlists" / "SOURCES.md").read_text("utf-8").split("## naming_matches.npy\n", 1)[1]
    told = re.search(r"a fifth in turn left out: ROC-AUC .* ([\d.]+); of the best 20 .* ([\d.]+) are", record)
    assert told is not None
    assert float(told[1]) > 0.75
    assert float(told[2]) > 0.06  # with subjects that are qualities and scenes; of wares alone 0.08
