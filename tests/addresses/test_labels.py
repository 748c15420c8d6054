"""Domain labels and handles of any name: what must hold for all of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.addresses import (
    COMMON_LENGTHS,
    a_label,
    ascii_name,
    full_name_problem,
    handle_problem,
    handles_of,
    label_problem,
    labels_of,
)
from namescreen.addresses.handles import spare_handles
from namescreen.text import parse

names = st.text(max_size=40) | st.text("abcdeäöüßñéшкот日本語हिन्दी -_.'&2", min_size=1, max_size=80)


@given(names)
def test_every_label_obeys_the_rules(text: str) -> None:
    labels = labels_of(parse(text), "planter")
    for label in labels:
        assert label_problem(label.text) is None
        assert a_label(label.shown) == label.text
        assert full_name_problem(f"{label.text}.example") is None
    assert len({label.text for label in labels}) == len(labels)
    assert [label.spare for label in labels] == sorted(label.spare for label in labels)


@given(names, st.lists(st.integers(1, 40), min_size=1, max_size=4))
def test_every_handle_fits_and_says_what_it_loses(text: str, limits: list[int]) -> None:
    name = parse(text)
    handles = handles_of(name, tuple(limits))
    assert [one.limit for one in handles] == (sorted(set(limits)) if handles else [])
    for one in handles:
        assert handle_problem(one.text, one.limit) is None
        assert 0.0 <= one.fit <= 1.0
        assert (one.fit == 1.0) == (one.lost == "")
    assert [one.fit for one in handles] == sorted(one.fit for one in handles)  # more room never loses more
    if handles:
        everywhere = handles[0].text
        assert everywhere.isalnum()
        assert all(handle_problem(everywhere, one.limit) is None for one in handles)
    for spare in spare_handles(name, "planter", min(limits)):
        assert handle_problem(spare, min(limits)) is None


@given(st.text(max_size=70))
def test_a_label_is_stable_and_sound(text: str) -> None:
    once = a_label(text)
    if once is not None:
        assert label_problem(once) is None
        assert a_label(once) == once
        assert ascii_name(once) == once


@given(st.text("ab-.xn0", max_size=12))
def test_a_whole_name_is_sound_if_its_labels_are(text: str) -> None:
    problems = [label_problem(label) for label in text.removesuffix(".").split(".")]
    assert (full_name_problem(text) is None) == (not any(problems))


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Clay Sill", {"claysill": "claysill", "clay-sill": "clay-sill"}),
        ("Müller Töpfe", {"mullertopfe": "mullertopfe", "xn--mllertpfe-57a4d": "müllertöpfe",
                          "muellertoepfe": "muellertoepfe"}),
        ("Straße", {"strasse": "strasse", "xn--strae-oqa": "straße"}),
        ("кот", {"xn--j1aim": "кот"}),
        ("हिन्दी", {"xn--j2bd4cyah0f": "हिन्दी"}),
        ("R&D Pots", {"randdpots": "randdpots"}),
    ],
)  # fmt: skip
def test_labels_of_a_name(name: str, expected: dict[str, str]) -> None:
    found = {label.text: label.shown for label in labels_of(parse(name))}
    assert found.items() >= expected.items()


@pytest.mark.parametrize(
    ("name", "limit", "text", "lost"),
    [
        ("Clay Sill", 15, "claysill", ""),
        ("The Clay and Copper", 10, "claycopper", '"the", "and"'),
        ("Copper Kettle Garden", 15, "copperkettle", '"garden"'),
        ("Copper Kettle Garden", 8, "copper", '"kettle", "garden"'),
        ("Pot Marigoldfinch", 12, "potmrgldfnch", 'the vowels of "marigoldfinch"'),
        ("Marigoldfinchwater", 15, "mrgldfnchwtr", "vowels"),
        ("Strengthsrhythms", 8, "strength", 'the end, "srhythms"'),
    ],
)
def test_the_best_shortening(name: str, limit: int, text: str, lost: str) -> None:
    (one,) = handles_of(parse(name), (limit,))
    assert (one.text, one.lost) == (text, lost)


def test_no_word_is_added_that_makes_a_rude_one() -> None:
    with_goods = {label.text for label in labels_of(parse("Clay Pots"), "hitch")}
    assert "claypotshitch" not in with_goods
    assert "getclaypots" in with_goods


def test_no_word_is_added_that_the_name_has_there() -> None:
    spare = {label.text for label in labels_of(parse("Getworkshop"), "shop") if label.spare}
    assert spare == {"thegetworkshop", "getworkshopstudio"}


def test_a_name_without_latin_letters_has_no_handle() -> None:
    assert handles_of(parse("кот"), COMMON_LENGTHS) == ()


@pytest.mark.parametrize("text", ["", "_a", "a.", "a__b", "a._b", "a b", "ä", "a" * 16, "a-b"])
def test_what_a_handle_may_not_be(text: str) -> None:
    assert handle_problem(text, 15)
