"""What ties existing words to a brief, and what speaks against it."""

from __future__ import annotations

import numpy as np
import pytest

from namescreen.brief import Brief, Concept
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.ideas import ideas_of
from namescreen.generation.opposites import opposites
from namescreen.generation.ties import known_words, sources_of
from namescreen.tables import open_table


def terms_of(*concepts: str, goods: str = "") -> BriefTerms:
    return BriefTerms.of(Brief(goods=goods, concepts=tuple(map(Concept, concepts))))


def test_ties_and_associations_keep_their_range() -> None:
    sources = sources_of(terms_of("quiet", "bee", goods="felt door stops"))
    assert sources.whole.shape == sources.promise.shape == (len(known_words()),)
    assert 0 <= sources.whole.min() <= sources.whole.max() <= 1
    for matrix in (sources.ties, sources.associations, *sources[:-2]):
        assert matrix.shape == (len(known_words()), 5)
        assert matrix.min() >= 0
        assert matrix.max() <= 1


def test_no_source_of_a_tie_ever_makes_it_less_sure() -> None:
    for source, row in open_table("naming_ties.tsv").items():
        at, worth = zip(*(map(float, pair.split(":")) for pair in row.split()), strict=True)
        assert list(at) == sorted(at), source
        assert list(worth) == sorted(worth), source
        assert worth[0] >= 0, source


def test_a_phrase_is_tied_to_what_its_words_say() -> None:
    sources = sources_of(terms_of("mackerel", "sky"))
    place = next(at for at, one in enumerate(known_words()) if one.word == "mackerel sky")
    assert np.allclose(sources.ties[place], 1.0)


# Direct antonyms in WordNet 3.0.
@pytest.mark.parametrize(
    ("concept", "contrary"),
    [("quiet", "noisy"), ("soft", "hard"), ("dry", "wet"), ("slow", "fast"), ("smooth", "rough"), ("old", "new"),
     ("bright", "dull"), ("clean", "dirty"), ("heavy", "light"), ("brave", "timid"), ("sharp", "dull")],
)  # fmt: skip
def test_opposites_hold_those_of_wordnet(concept: str, contrary: str) -> None:
    assert contrary in opposites(concept)


def test_no_concept_is_its_own_opposite() -> None:
    for concept, contrary in open_table("naming_opposites.tsv").items():
        assert concept not in contrary.split()


def test_a_word_of_the_opposite_mood_speaks_against_a_concept() -> None:
    brief = Brief(goods="felt slippers", concepts=(Concept("quiet"), Concept("music")))
    contrary = {idea.word: idea.against for idea in ideas_of(brief, BriefTerms.of(brief))}
    assert contrary["hush"] == 0
    assert contrary["fortissimo"] > 0.3


def test_what_the_goods_deal_with_speaks_against_nothing() -> None:
    brief = Brief(goods="rain capes", concepts=(Concept("dry"),))
    contrary = {idea.word: idea.against for idea in ideas_of(brief, BriefTerms.of(brief))}
    assert contrary["mizzle"] < 0.5
