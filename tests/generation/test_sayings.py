"""Sayings as they are: a word says literally what the brief says, the sense something else that suits."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief, Concept
from namescreen.generation import brainstorm
from namescreen.generation.constructions.saying import propose
from namescreen.generation.material import gather
from namescreen.lexicon import lexicon
from namescreen.tables import open_table


def said(*concepts: str, most_words: int | None = None) -> list[str]:
    brief = Brief(concepts=tuple(map(Concept, concepts)), most_words=most_words)
    return [proposal.text for proposal in propose(gather(brief, seed=1))]


@pytest.mark.parametrize(
    ("concept", "saying"), [("clover", "In Clover"), ("salt", "Old Salt"), ("brass", "Brass Tacks")]
)
def test_a_saying_needs_a_word_of_the_brief(concept: str, saying: str) -> None:
    assert saying in said(concept)
    assert saying not in said("umbrella")


def test_sayings_keep_the_number_of_words() -> None:
    assert all(len(text.split()) <= 2 for text in said("salt", most_words=2))
    assert any(len(text.split()) == 3 for text in said("salt"))


def test_sayings_say_their_sense_and_do_not_fill_the_page() -> None:
    brief = Brief(goods="cotton bed sheets", concepts=tuple(map(Concept, ("sleep", "wink", "cloud"))))
    page = brainstorm(brief, limit=20)
    sayings = [one for one in page if one.construction == "saying"]
    assert 1 <= len(sayings) <= 7
    assert all(one.how.endswith(")") and "(for " in one.how for one in sayings)


def test_every_saying_is_made_of_known_words() -> None:
    # WordNet 3.0 knows the words of a phrase that say something, but for a few of the nursery
    sayings = [key.partition(" ")[2] for key, _ in open_table("naming_ideas.tsv").items() if key.startswith("saying ")]
    words = {word for saying in sayings for word in saying.replace("'s", "").split() if len(word) > 3}
    unknown = {word for word in words if not lexicon().known(word) and not lexicon().bases(word)}
    assert len(sayings) > 1_000
    assert len(unknown) < 0.08 * len(words), sorted(unknown)
