"""A steered session follows from its steps: it can be written down, taken up, and undone."""

from __future__ import annotations

import os
from dataclasses import replace
from itertools import islice
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError
from namescreen.generation import Candidate, Session, Step, Taste, brainstorm, candidates, steering
from namescreen.generation.steering import KINDS, journal, read_journal, shortlist_text
from namescreen.marks import read_names

NAMES = st.sampled_from(["Fernwick", "Claynest", "Sip Sill", "Öland & Fern", "Mossy # 1"])
STEPS = st.lists(
    st.builds(
        Step,
        st.sampled_from([kind for kind in KINDS if kind != "page"]),
        NAMES,
        st.lists(st.sampled_from(["fern", "clay", "sip"]), max_size=2).map(tuple),
        st.sampled_from(["blend", "compound", ""]),
        st.sampled_from(["fern + wick", ""]),
        st.sampled_from([(), ("season",)]),
    ),
    max_size=12,
)


@given(STEPS)
def test_a_session_read_back_is_the_session(steps: list[Step]) -> None:
    import tempfile

    session = Session().after(*steps)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.session"
        path.write_bytes(journal(session))
        assert read_journal(path) == session


WISHES = [kind for kind in KINDS if kind not in ("undo", "shown", "saved", "unsaved", "page")]


@given(STEPS, st.sampled_from(WISHES), NAMES)
def test_undo_takes_the_last_step_back(steps: list[Step], kind: str, name: str) -> None:
    before = Session().after(*steps)
    assert before.after(Step(kind, name, ("fern",), "blend"), Step("undo")) == before


@given(STEPS)
def test_steps_one_by_one_or_together_are_the_same(steps: list[Step]) -> None:
    session = Session()
    for step in steps:
        session = session.after(step)
    assert session == Session().after(*steps)


@given(STEPS)
def test_a_name_is_kept_or_dropped_not_both_and_factors_are_bounded(steps: list[Step]) -> None:
    session = Session().after(*steps)
    assert not set(session.kept) & set(session.dropped)
    assert all(0.2 <= factor <= 2.5 for factor in (*session.words.values(), *session.constructions.values()))
    assert len(session.models) <= 3


def test_undo_of_nothing_is_nothing() -> None:
    assert Session().after(Step("undo")) == Session()


def test_keeping_raises_what_a_name_is_made_of_and_dropping_lowers_it() -> None:
    session = Session().after(
        Step("keep", "Fernwick", ("fern", "wick"), "compound"), Step("drop", "Claymud", ("clay", "mud"), "blend")
    )
    assert session.words["fern"] > 1 > session.words["clay"]
    assert session.constructions["compound"] > 1 > session.constructions["blend"]
    assert set(session.taste.seen) >= {"Fernwick", "Claymud"}


def test_concepts_come_and_go() -> None:
    brief = Brief(concepts=(Concept("herb"), Concept("clay")))
    session = Session().after(Step("without", "clay"), Step("add", "spring", senses=("season",)))
    assert session.brief(brief).concepts == (Concept("herb"), Concept("spring", ("season",)))
    assert session.after(Step("add", "clay")).brief(brief).concepts[-1] == Concept("clay")
    assert "clay" not in session.after(Step("add", "clay")).without


def test_a_steered_brainstorm_shows_new_names_after_its_taste(studio: Brief) -> None:
    first = brainstorm(studio, limit=12)
    session = Session().after(
        *(Step("shown", one.text) for one in first), Step.about("more", first[0]), Step("without", "clay")
    )
    second = brainstorm(session.brief(studio), limit=12, taste=session.taste)
    assert not {one.text for one in first} & {one.text for one in second}
    assert not any("clay" in one.sources for one in second)


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("", 1),
        ("not a session\n", 1),
        ("[" * 100_000, 1),
        ('{"namescreen session": 1}\n{"do": "dance"}\n', 2),
        ('{"namescreen session": 1}\n{"do": "keep", "text": "A"}\n[1]\n', 3),
        ('{"namescreen session": 1}\n{"do": "keep", "text": 7}\n', 2),
        ('{"namescreen session": 1}\n{"do": "keep", "sources": "fern"}\n', 2),
        ('{"namescreen session": 2}\n{"do": "shown", "text": "A", "score": 1' + 400 * "0" + "}\n", 2),
        ('{"namescreen session": 2}\n{"do": "shown", "text": "A", "score": NaN}\n', 2),
        ('{"namescreen session": 2}\n{"do": "page", "text": "-1"}\n', 2),
        ('{"namescreen session": 2}\n{"do": "shown", "text": "Fern\\ud800"}\n', 2),  # half a character
        ('{"namescreen session": 2}\n{"do": "keep", "text": "A", "sources": ["\\udcff"]}\n', 2),
    ],
)
def test_what_is_no_session_is_refused_with_its_line(text: str, line: int, tmp_path: Path) -> None:
    path = tmp_path / "broken.session"
    path.write_text(text, "utf-8")
    with pytest.raises(InputError) as caught:
        read_journal(path)
    assert caught.value.problems[0].line == line


@pytest.mark.parametrize("kind", ["pipe", "device", "long"])
def test_a_session_is_read_within_bounds(kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.session"
    if kind == "pipe":
        os.mkfifo(path)
    elif kind == "device":
        path.symlink_to("/dev/zero")
    else:
        monkeypatch.setattr(steering, "MOST_BYTES", 100)
        path.write_bytes(journal(Session().after(*(Step("shown", "Fernwick") for _ in range(9)))))
    with pytest.raises(InputError, match=r"a\.session: .*another --session"):
        read_journal(path)


@pytest.mark.parametrize("separator", ["\u2028", "\u2029", "\x85", "\x1e", "\x0b"])
def test_a_line_separator_in_a_word_ends_no_line_of_the_session(separator: str, tmp_path: Path) -> None:
    step = Step("keep", f"moss{separator}fern", sources=(f"moss{separator}",), how=f"moss{separator}and fern")
    session = Session().after(Step("add", f"moss{separator}fern"), step)
    (tmp_path / "a.session").write_bytes(journal(session))
    assert read_journal(tmp_path / "a.session") == session
    assert "# moss and fern\n" in shortlist_text({"Fernwick": step.how})


def test_the_shortlist_is_what_the_other_commands_read(tmp_path: Path) -> None:
    path = tmp_path / "shortlist.txt"
    path.write_text(shortlist_text({"Fernwick": "compound: fern + wick", "Sip Sill": ""}), "utf-8")
    names, _ = read_names(str(path))
    assert tuple(names) == ("Fernwick", "Sip Sill")


def test_names_already_in_the_file_stay_as_they_are() -> None:
    before = "# mine\nMistpatch\n"
    text = shortlist_text({"Mistpatch": "blend", "Fernwick": "compound: fern + wick"}, before, ["Mistpatch"])
    assert text == "# mine\nMistpatch\n# compound: fern + wick\nFernwick\n"


def test_a_step_about_a_candidate_holds_what_learning_needs() -> None:
    one = Candidate("Fernwick", "compound", "fern + wick", ("fern", "wick"), 0.9, {})
    assert Step.about("keep", one) == Step("keep", "Fernwick", ("fern", "wick"), "compound", "fern + wick")


def test_one_meaning_can_be_left_and_the_others_kept() -> None:
    from namescreen.cli.steer_concepts import concept_step

    step = concept_step("without", "spring=season")
    assert (step.kind, step.text, step.senses) == ("without", "spring", ("season",))
    session = Session().after(step)
    assert session.left == {"spring": ("season",)}
    assert not session.without
    assert not session.added
    assert not session.after(Step("add", "spring")).left
    assert concept_step("without", "lathe=shaper") == Step("without", "lathe")  # its only meaning
    assert concept_step("without", "spring").senses == ()
    assert concept_step("add", "spring=season").senses == ("season",)


def test_a_word_that_was_just_added_pulls_until_the_next_page() -> None:
    shown = Step("shown", "Fernsill", ("fern", "sill"))
    session = Session().after(shown, Step("add", "moss", ("plant",)))
    assert session.taste.added == ("moss",)
    assert session.after(Step("shown", "Mosswell", ("moss", "well"))).taste.added == ()


def test_the_page_after_a_new_meaning_is_about_it(studio: Brief) -> None:
    def about_sea(added: tuple[str, ...]) -> int:
        brief = replace(studio, concepts=(*studio.concepts, Concept("sea")))
        stream = candidates(brief, taste=Taste(seen=("Dewpond",), worn={"dewpond": 1}, added=added))
        return sum("sea" in stream.about(one) for one in islice(stream, 12))

    assert about_sea(("sea",)) >= max(4, about_sea(()) + 2)
