"""The comparison: totals by hand, and how the order answers to the weights."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.outcome import NotChecked
from namescreen.report import to_markdown
from namescreen.report.model import Address, Addresses, Distinctiveness, NameEntry, Reading, Report, Weights
from namescreen.report.sensitivity import moves, places, standings, weighed

UNIT = st.floats(0, 1)
SKIPPED = NotChecked("a check", "of a reason")


def entry(name: str, distinctive: float | None = 1.0, severity: int | None = 0, fit: float | None = 1.0) -> NameEntry:
    """A name with no close mark, and these values (None: not checked)."""
    reading = Reading("de", "x", "y", "dirt", severity or 0, "exact")
    return NameEntry(
        name,
        (name,),
        (),
        SKIPPED if distinctive is None else Distinctiveness("arbitrary", distinctive),
        SKIPPED if severity is None else (reading,),
        SKIPPED if fit is None else Addresses(fit, (Address("domain", "a.example", "", "free", taken=False),)),
    )


def of(base: Report, *names: NameEntry, weights: Weights | None = None) -> Report:
    return replace(base, names=names, weights=weights or Weights())


def test_total_is_the_weighted_mean(report: Report) -> None:
    # marks 1, distinctiveness 0.5, readings 1 - 1/3, addresses 0.25, weights 4 3 2 1
    one = of(report, entry("a", 0.5, 1, 0.25), weights=Weights(4, 3, 2, 1))
    expected = (4 * 1 + 3 * 0.5 + 2 * (1 - 1 / 3) + 1 * 0.25) / 10
    assert standings(one)[0].low == pytest.approx(expected)
    assert standings(one)[0].high == pytest.approx(expected)


def test_a_check_not_made_makes_a_span(report: Report) -> None:
    both = of(report, entry("a"), entry("b", distinctive=None))
    found = {row.name: row for row in standings(both)}
    assert (found["b"].low, found["b"].high) == (0.75, 1.0)
    assert found["b"].values[1] is None
    assert found["a"].place == 1


def test_a_check_made_for_no_name_drops_out(report: Report) -> None:
    none = of(report, entry("a", fit=None), entry("b", 0.5, fit=None))
    assert weighed(none) == ("marks", "distinctiveness", "readings")
    assert standings(none)[0].low == 1.0


def test_a_knockout_stands_last_whatever_its_other_values(report: Report) -> None:
    worst = entry("b", 0.0, 3, 0.0)
    knocked = replace(report.names[0], distinctiveness=Distinctiveness("fanciful", 1.0))
    assert knocked.name == "Herbwell"
    assert [row.name for row in standings(of(report, knocked, worst))] == ["b", "Herbwell"]


def test_no_good_value_lifts_a_name_out_of_the_group_of_its_worst_finding(report: Report) -> None:
    plain = Weights(1, 1, 0, 1)
    generic = replace(entry("generic"), distinctiveness=Distinctiveness("generic", 0.9))
    serious = entry("serious", 1.0, 3)
    look = entry("look", 1.0, 2)
    minor = entry("minor", 0.1, 1, 0.1)
    minor = replace(minor, addresses=Addresses(0.5))
    rows = standings(of(report, generic, serious, look, minor, entry("clear", 0.1, 0, 0.6), weights=plain))
    assert [(row.name, row.group) for row in rows] == [
        ("clear", 0), ("minor", 1), ("look", 2), ("serious", 3), ("generic", 4),
    ]  # fmt: skip


def test_inside_a_group_what_may_be_refused_for_what_it_is_stands_last(report: Report) -> None:
    """No agreement and no other goods mend a name that only praises or describes its goods."""
    praise = replace(entry("praise", 0.1, 0), distinctiveness=Distinctiveness("descriptive", 0.1))
    grave = entry("grave", 0.9, 3, 0.1)
    generic = replace(entry("generic"), distinctiveness=Distinctiveness("generic", 0.0))
    knocked = replace(report.names[0], distinctiveness=Distinctiveness("fanciful", 1.0))
    assert standings(of(report, praise))[0].low > standings(of(report, grave))[0].low
    rows = standings(of(report, generic, praise, knocked, grave))
    assert [row.name for row in rows] == ["grave", "praise", knocked.name, "generic"]
    both = to_markdown(of(report, praise, replace(praise, name="praise as well")))
    assert "No name can be put first" in both


def test_what_was_not_looked_at_does_not_stand_before_what_was(report: Report) -> None:
    unseen = entry("unseen", distinctive=None)
    assert [row.name for row in standings(of(report, unseen, entry("minor", 1.0, 1)))] == ["minor", "unseen"]
    both = of(report, unseen, entry("other", distinctive=None, severity=1))  # made for no name: it says nothing
    assert [row.group for row in standings(both)] == [0, 1]


def test_equal_totals_share_a_place(report: Report) -> None:
    rows = standings(of(report, entry("b"), entry("a"), entry("c", 0.1)))
    assert [(row.name, row.place) for row in rows] == [("b", 1), ("a", 1), ("c", 3)]


def test_moves_tell_when_the_order_turns(report: Report) -> None:
    # a leads by distinctiveness, b by its address: at equal weights a by 0.1, with addresses doubled b.
    two = of(report, entry("a", 1.0, 0, 0.6), entry("b", 0.6, 0, 0.9))
    told = {move.change: move for move in moves(two)}
    assert told["weights as they stand"].first == ("a", "b")
    assert told["Domain and handle doubled"].first == ("b", "a")
    assert told["Domain and handle doubled"].pairs_changed == 1
    assert told["Existing marks doubled"].pairs_changed == 0
    assert places(two) == {"a": (1, 2), "b": (1, 2)}


@given(
    values=st.lists(st.tuples(UNIT, st.integers(0, 3), UNIT), min_size=1, max_size=6),
    factor=st.floats(0.01, 50),
)
def test_only_the_ratios_of_weights_matter(
    report: Report, values: list[tuple[float, int, float]], factor: float
) -> None:
    names = [entry(f"n{at}", *value) for at, value in enumerate(values)]
    one = standings(of(report, *names, weights=Weights(3, 2, 2, 1)))
    two = standings(of(report, *names, weights=Weights(3 * factor, 2 * factor, 2 * factor, factor)))
    for left, right in zip(one, two, strict=True):
        assert left.low == pytest.approx(right.low)


@given(values=st.lists(st.tuples(UNIT, st.integers(0, 3), UNIT), min_size=1, max_size=6))
def test_a_better_value_never_lowers_a_name(report: Report, values: list[tuple[float, int, float]]) -> None:
    names = [entry(f"n{at}", *value) for at, value in enumerate(values)]
    before = {row.name: row for row in standings(of(report, *names))}["n0"]
    better = [replace(names[0], readings=()), *names[1:]]
    after = {row.name: row for row in standings(of(report, *better))}["n0"]
    assert after.low >= before.low - 1e-12
    assert after.place <= before.place


def test_a_tie_is_no_change_of_order(report: Report) -> None:
    # by distinctiveness and address alike a leads, 1.4 to 1.2; with addresses doubled both reach 2.0
    two = of(report, entry("b", 0.4, 0, 0.8), entry("a", 0.8, 0, 0.6), weights=Weights(0, 1, 0, 1))
    told = {move.change: move.pairs_changed for move in moves(two)}
    assert standings(two)[0].name == "a"
    assert told["Domain and handle doubled"] == 0


def test_weights_of_zero_everywhere_do_not_divide_by_it(report: Report) -> None:
    none = of(report, entry("a"), entry("b"), weights=Weights(0, 0, 0, 0))
    assert weighed(none) == ()
    assert {row.low for row in standings(none)} == {0.0}
    assert len(moves(none)) == 1
