"""Words for the goods in a name cost next to nothing: anyone may add them (TMEP 1207.01(b)(iii) and (viii))."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from namescreen.closeness import compare
from namescreen.closeness.telling import ADDED, telling_part

LAMPS = "brass desk lamps; lamp shades"


@pytest.mark.parametrize(
    ("name", "goods", "part"),
    [
        ("Orrelin Lamp", LAMPS, "orrelin"), ("The Orrelin Desk Lamps", LAMPS, "the orrelin"),
        ("Lamps of Orrelin", LAMPS, "orrelin"), ("Brass Lamp", LAMPS, "Brass Lamp"), ("Orrelin", LAMPS, "Orrelin"),
        ("Soap Opera", "soaps", "Soap Opera"), ("Kettle of Fish", "kettles", "Kettle of Fish"),
        ("Orrelin Lamp", "tea", "Orrelin Lamp"), ("Orrelin Lamp", "", "Orrelin Lamp"),
    ],
)  # fmt: skip
def test_the_words_for_the_goods_are_left_out(name: str, goods: str, part: str) -> None:
    assert telling_part(name, goods) == part


@pytest.mark.parametrize(
    ("name", "mark", "added"),
    [("Orrelin", "ORELLIN", "Lamp"), ("Quastrel", "KWASTREL", "Desk Lamps"), ("Brindow", "BRINDAU", "Brass Lamp")],
)
def test_a_word_for_the_goods_costs_next_to_nothing(name: str, mark: str, added: str) -> None:
    alone = compare(name, mark, name_goods=LAMPS)
    longer = compare(f"{name} {added}", mark, name_goods=LAMPS)
    assert longer.overall == pytest.approx(ADDED * alone.overall)
    assert "Compared without" in longer.reasons[0]
    assert longer.telling == (alone.appearance, alone.sound)
    assert compare(f"{name} {added}", mark, name_goods="insurance").overall < longer.overall


@given(st.text("abeilmnorstu", min_size=4, max_size=8), st.text("abeilmnorstu", min_size=4, max_size=8))
def test_it_is_symmetric_and_never_makes_names_less_close(one: str, other: str) -> None:
    assume(telling_part(f"{one} lamp", "lamps") == one)  # not a table lamp
    forth, back = (compare(a, b, name_goods="lamps") for a, b in ((f"{one} lamp", other), (other, f"{one} lamp")))
    assert forth.overall == pytest.approx(back.overall)
    assert forth.overall >= ADDED * compare(one, other, name_goods="lamps").overall - 1e-9
