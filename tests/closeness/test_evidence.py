"""The order of closeness, and what is told of it."""

from __future__ import annotations

import re

import pytest

from namescreen.closeness import (
    Closeness,
    closeness,
    compare,
    explain,
    features,
    score,
)
from namescreen.closeness.calibration import calibration
from namescreen.closeness.spaced import as_readers_divide
from namescreen.closeness.word_meaning import meanings


@pytest.mark.parametrize(
    ("closer", "further"),
    [
        # read aloud alike against merely spelled alike
        (("Xseed Pots", "Exceed Pots"), ("Xseed Pots", "Oxford Pots")),
        # a rare shared word against a weak one
        (("Thistledown Pots", "Thistledown Planters"), ("Super Pots", "Super Planters")),
        # the same idea in other words
        (("Little Garden", "Small Garden"), ("Little Garden", "Purple Garden")),
        # the beginning weighs more than the end
        (("Marlavo", "Marlaqe"), ("Marlavo", "Quslavo")),
        # transposed words
        (("Herb Master", "Masterherb"), ("Herb Master", "Herd Mister")),
        # taken over whole
        (("Velloria Ceramics", "Velloria"), ("Velloria Ceramics", "Velvet Ceramics")),
        # easily confused shapes
        (("Modern", "Modem"), ("Modern", "Morel")),
    ],
)
def test_order_follows_the_reasons(closer: tuple[str, str], further: tuple[str, str]) -> None:
    goods = "plant pots"
    above = compare(*closer, name_goods=goods, mark_goods=goods).overall
    below = compare(*further, name_goods=goods, mark_goods=goods).overall
    assert above > below


def test_a_word_that_describes_the_goods_counts_less() -> None:
    without = compare("Planter Moss", "Planter Dune").overall
    with_goods = compare("Planter Moss", "Planter Dune", name_goods="planters", mark_goods="planters").overall
    assert with_goods < without


def test_explanation_accounts_for_both_names() -> None:
    why = explain("Ishine", "Ice Shine")
    assert "".join(mine or "" for mine, _ in why.letters) == "ishine"
    assert "".join(yours or "" for _, yours in why.letters) == "iceshine"
    assert any("SH" in (mine or "") for mine, _ in why.sounds)
    assert why.readings[0] != "" != why.readings[1]
    assert [pair.word for pair in why.pairs[1]] == ["ice", "shine"]
    assert all(0.0 < pair.weight <= 1.0 and 0.0 <= pair.closeness <= 1.0 for side in why.pairs for pair in side)
    assert any(sentence.startswith("Sound") for sentence in why.sentences)


def test_json_form() -> None:
    found: Closeness = compare("Terra Pot", "Tera Pots")
    shape = found.to_json()
    assert set(shape) == {"overall", "appearance", "sound", "meaning", "reasons"}
    assert shape["overall"] == round(found.overall, 3)


def test_score_is_what_closeness_shows() -> None:
    one, other = features("Fern Well"), features("Fernwell")
    assert score(one, other).overall == closeness(one, other).overall == 1.0


def test_words_in_another_order_and_meanings_are_told_once() -> None:
    assert "The same words in another order." in compare("Ringlane", "Lane Ring").reasons
    assert "The same words in another order." not in compare("Ringlane", "Ring Road").reasons
    (told,) = [reason for reason in compare("Ring Bell", "Dong Dong").reasons if reason.startswith("Meaning")]
    pairs = re.findall(r'"\w+" and "\w+"', told)
    assert pairs
    assert len(pairs) == len(set(pairs))


@pytest.mark.parametrize("other", ["泰山植木", "Loamlet", "москва"])
def test_a_script_that_is_not_read_aloud_has_no_sound_rather_than_an_unlike_one(other: str) -> None:
    found = compare("泰山植物", other)
    assert "sound" in {one.check for one in found.not_checked}
    assert any(reason.startswith("Sound: unknown") for reason in found.reasons)
    for pair in (("泰山", "泰山"), ("7", "x")):
        assert "sound" not in {one.check for one in compare(*pair).not_checked}


def test_the_calibration_rises_with_closeness_and_says_whose_cases_it_speaks_of() -> None:
    found = [calibration(step / 40) for step in range(41)]
    assert all(0.0 < one.low <= one.similar <= one.high < 1.0 for one in found)
    assert [one.similar for one in found] == sorted(one.similar for one in found)
    told = compare("Herb Well", "Herbwell").calibration
    assert told == found[-1]
    assert f"about {round(100 * told.similar)} in 100" in told.statement
    assert "not about yours" in told.statement


def test_names_that_differ_in_shapes_easily_confused_look_almost_the_same() -> None:
    """The sequence rn stands for m in the confusables of Unicode Technical Standard 39."""
    assert compare("Fernsill", "Femsill").appearance >= 0.97
    assert compare("Modern Moss", "Modem Moss").appearance >= 0.97


def test_words_in_another_order_look_closer_than_other_words() -> None:
    swapped, other = (compare("Zarvo Mellin", other).appearance for other in ("Mellin Zarvo", "Mellot Zirva"))
    assert swapped > other


@pytest.mark.parametrize(("one", "other"), [("gravel", "rocky"), ("icy", "frost"), ("sugary", "syrup")])
def test_what_is_derived_from_a_word_shares_what_it_is_close_to(one: str, other: str) -> None:
    """Ordinary English, from memory of dictionaries."""
    found, turned = meanings(one, other), meanings(other, one)
    assert found is not None
    assert found.idea > 0.5
    assert found == turned


@pytest.mark.parametrize(("closed", "spaced"), [("Thicketlamp", "Thicket Lamp & Sons"), ("Yanfell", "Yan Fell Farm")])
def test_a_closed_name_is_divided_on_either_side(closed: str, spaced: str) -> None:
    for one, other in ((closed, spaced), (spaced, closed)):
        found = as_readers_divide(one, other, compare(one, other), name_goods=None)
        assert closed not in found[:2]
        assert found.closeness.overall == compare(found.name, found.mark).overall
    here, there = (as_readers_divide(*names, compare(*names), name_goods=None).closeness for names in (
        (closed, spaced), (spaced, closed)))  # fmt: skip
    assert here.overall == pytest.approx(there.overall)
