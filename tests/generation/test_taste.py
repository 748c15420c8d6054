"""What a maker likes moves names up and down a page; scores stay what they are, and pages stay varied."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief
from namescreen.generation import Candidate, Session, Step, Taste, brainstorm
from namescreen.generation.candidate import Proposal
from namescreen.generation.likeness import Model
from namescreen.generation.taste import preferences

PAGE = 12


@pytest.fixture(scope="module")
def steered(studio: Brief) -> list[list[Candidate]]:
    """Eight pages, of each of which every third name was kept."""
    session, pages = Session(), []
    for _ in range(8):
        page = brainstorm(session.brief(studio), limit=PAGE, taste=session.taste)
        pages.append(page)
        session = session.after(*Session.page_of(page), *(Step.about("keep", one) for one in page[::3]))
    return pages


def test_a_score_is_the_same_whatever_is_liked(steered: list[list[Candidate]], hundred: list[Candidate]) -> None:
    plain = {one.text: one.score for one in hundred}
    both = [one for page in steered[1:] for one in page if one.text in plain]
    assert len(both) > PAGE
    assert all(one.score == pytest.approx(plain[one.text], abs=0.02) for one in both)


def test_after_many_keeps_names_still_differ_in_score_and_do_not_stand_by_the_alphabet(
    steered: list[list[Candidate]],
) -> None:
    for page in steered[-3:]:
        assert len({round(one.score, 4) for one in page}) > PAGE / 2
        assert max(one.score for one in page) < 1
        names = [one.text for one in page]
        assert names != sorted(names)


def test_steered_pages_keep_several_kinds_of_name(steered: list[list[Candidate]]) -> None:
    assert all(len({one.construction for one in page}) >= 2 for page in steered[1:])
    assert len({one.construction for page in steered[1:] for one in page}) >= 4


def test_a_kind_kept_as_often_as_it_is_shown_is_not_preferred() -> None:
    shown = {"found": 30, "pair": 6, "saying": 6}
    even = preferences(shown, {"found": 10, "pair": 2, "saying": 2}, {})
    assert all(factor == pytest.approx(1) for factor in even.values())
    fond = preferences(shown, {"pair": 4}, {"saying": 4})
    assert fond["pair"] > fond["found"] > fond["saying"]
    assert all(factor == 1 for factor in preferences(shown, {}, {}).values())


def test_what_is_related_is_so_in_idea_in_kind_or_in_sound() -> None:
    otter = Model("Otter")
    assert min(otter.of_word("beaver"), otter.of_word("badger")) > 0 == otter.of_word("ledger")
    assert Model("Otter").of_word("otters") == 0
    assert Model("Hollow").of_word("follow") > 0
    assert Model("Ferry Lantern").of_word("lamp") > 0


def test_a_name_with_the_very_word_of_the_model_is_the_same_again() -> None:
    def made(text: str, *sources: str) -> Proposal:
        return Proposal(text, tuple(text.casefold().split()), "pair", "", sources, "")

    assert Model("Otter").holds(made("Nell Otter", "Nell", "otter"))
    assert not Model("Otter").holds(made("Beaver Loft", "beaver", "loft"))


def test_more_like_a_name_brings_its_relations_first_and_not_its_word(studio: Brief) -> None:
    page = brainstorm(studio, limit=PAGE, taste=Taste(models=("Heron",), seen=("Heron",)))
    assert sum(one.parts["resemblance"] > 0 for one in page[:5]) >= 4
    assert not any("heron" in one.text.casefold() for one in page)
    plain = brainstorm(studio, limit=PAGE)
    assert len({one.text for one in page[:6]} & {one.text for one in plain}) <= 3  # of a page half is asked for


def test_fewer_like_a_name_leaves_the_scores_of_the_page(studio: Brief) -> None:
    plain, less = (brainstorm(studio, limit=PAGE, taste=Taste(unlike=unlike)) for unlike in ((), ("Brookwell",)))
    assert max(one.score for one in less) > max(one.score for one in plain) - 0.1
