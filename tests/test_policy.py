"""The policy: what holds for all marks and findings, and the cases that a maker must not be misled about."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.closeness.calibration import calibration
from namescreen.policy import (
    EVEN,
    MIDDLE_OF_LOOK,
    OTHER_GOODS,
    SAME_GOODS,
    STEPS,
    Conflict,
    Finding,
    Level,
    gate,
    level_of,
    worst,
)

SHARE = st.floats(0, 1)
aspects: dict[str, st.SearchStrategy[Any]] = {
    "appearance": SHARE, "sound": SHARE, "overall": SHARE, "goods": SHARE | st.none(), "ended": st.booleans(),
    "bites": st.booleans() | st.none(), "translated": SHARE,
}  # fmt: skip
conflicts = st.fixed_dictionaries(aspects).map(lambda given: Conflict(**given))
SAME = Conflict(1.0, 1.0, 1.0, 1.0)


@given(conflicts)
def test_concern_is_a_share_and_a_knockout_is_the_whole(one: Conflict) -> None:
    assert 0 <= one.concern <= 1
    if one.knockout:
        assert one.concern == 1
        assert level_of(one.concern) is Level.SERIOUS


@given(conflicts, SHARE)
def test_more_closeness_and_nearer_goods_never_lower_concern(one: Conflict, more: float) -> None:
    for aspect in ("appearance", "sound", "overall", "translated"):
        assert one._replace(**{aspect: max(more, getattr(one, aspect))}).concern >= one.concern
    if one.goods is not None:
        assert one._replace(goods=max(more, one.goods)).concern >= one.concern
        assert one._replace(goods=None).concern >= one.concern  # not compared counts as the same goods


@given(conflicts)
def test_an_ended_mark_and_one_of_other_markets_are_no_knockouts(one: Conflict) -> None:
    for less in (one._replace(ended=True), one._replace(bites=False)):
        assert not less.knockout
        assert less.concern <= one._replace(ended=False, bites=True).concern
    assert one._replace(bites=None).concern == one._replace(bites=True).concern  # not known counts as yes


@given(conflicts)
def test_an_identical_live_mark_is_looked_at_whatever_its_goods(one: Conflict) -> None:
    same = one._replace(appearance=1.0, ended=False, bites=True)
    assert level_of(same.concern) >= Level.LOOK


@given(conflicts)
def test_a_mark_held_too_alike_by_half_of_past_cases_is_looked_at(one: Conflict) -> None:
    """What past cases say of a mark and its level must agree (`closeness.calibration`)."""
    close = one._replace(overall=EVEN, goods=SAME_GOODS, ended=False, bites=True, crowded=False, free=False)
    assert level_of(close.concern) >= Level.LOOK
    assert calibration(EVEN).similar == pytest.approx(0.5, abs=0.03)


@pytest.mark.parametrize(
    ("one", "knockout", "level"),
    [
        (SAME, True, Level.SERIOUS),
        (SAME._replace(goods=None), True, Level.SERIOUS),
        (SAME._replace(goods=0.0), False, Level.LOOK),
        (SAME._replace(goods=0.29), False, Level.LOOK),  # other goods: a question of reputation, never serious
        (SAME._replace(ended=True), False, Level.MINOR),
        (SAME._replace(bites=False), False, Level.MINOR),
        (SAME._replace(bites=False, goods=0.0), False, Level.NOTHING),
        (SAME._replace(appearance=0.92, sound=0.0), True, Level.SERIOUS),
        (SAME._replace(appearance=0.91, sound=0.94, overall=0.9), False, Level.SERIOUS),
        (Conflict(0.1, 0.1, 0.1, 1.0, translated=1.0), False, Level.SERIOUS),
        (Conflict(0.1, 0.1, 0.1, 0.0, translated=1.0), False, Level.MINOR),
    ],
)
def test_cases(one: Conflict, knockout: bool, level: Level) -> None:
    assert (one.knockout, level_of(one.concern)) == (knockout, level)


def test_steps_fall_from_the_gravest() -> None:
    assert [level for _, level in STEPS] == sorted((level for _, level in STEPS), reverse=True)
    assert [least for least, _ in STEPS] == sorted((least for least, _ in STEPS), reverse=True)


found = st.tuples(
    st.sampled_from("abcd"), st.sampled_from(Level), st.just("evidence"), SHARE, st.booleans()
).map(lambda given: Finding(*given)).map(lambda one: one._replace(bars=one.bars and one.level is Level.SERIOUS))


@given(st.lists(found, min_size=1, max_size=4))
def test_a_name_is_in_the_group_of_its_worst_finding(each: list[Finding]) -> None:
    made = {one.check for one in each if one.level is not Level.NOT_CHECKED}
    group = gate(each, made)
    assert group >= max(worst(each).level, 0)
    assert (group == 4) == any(one.bars for one in each)
    assert gate(each[:1], made) <= group
    unmade = [one for one in each if one.level is Level.NOT_CHECKED and one.check in made]
    assert not unmade or group >= Level.LOOK


@given(conflicts, st.booleans(), st.booleans())
def test_what_is_no_knockout_is_never_serious_for_other_goods_lapsed_or_by_description_alone(
    one: Conflict, lapsed: bool, descriptive: bool
) -> None:
    held = one._replace(lapsed=lapsed, descriptive=descriptive)
    other = held.goods is not None and held.goods < OTHER_GOODS
    if not held.knockout and (lapsed or descriptive or other):
        assert held.concern <= MIDDLE_OF_LOOK
        assert level_of(MIDDLE_OF_LOOK) is Level.LOOK
