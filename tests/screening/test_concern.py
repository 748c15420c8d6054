"""Knockouts, concern, and which mark of several is shown."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.closeness import Closeness, compare, without_meaning
from namescreen.closeness.reason import About, about
from namescreen.goods import Relatedness
from namescreen.marks import Mark
from namescreen.marks.columns import MarkWriter
from namescreen.outcome import NotChecked
from namescreen.policy import Conflict, Level, level_of
from namescreen.register import Register, read_register
from namescreen.screening import MOST_JUDGED, NOT_JUDGED, CloseMark, is_knockout, screen
from namescreen.screening.owners import MOST_OWNERS
from namescreen.screening.taken_over import is_credited, taken_over
from tests.conftest import Run
from tests.screening.conftest import GOODS, marks_of, validate

rows_of_one_name = st.lists(
    st.tuples(
        st.sampled_from(["SPRIGWICK", "Sprigwick"]),
        st.sets(st.sampled_from([9, 21, 36]), max_size=2),
        st.sampled_from(["", "planters", "insurance"]),
        st.sampled_from(["unknown", "live", "dead", "pending", "opposed"]),
        st.sampled_from(["Alpha", "Beta"]),
    ),
    min_size=1,
    max_size=12,
)


@settings(max_examples=40)
@given(rows_of_one_name, st.sampled_from(["", GOODS]), st.sampled_from([[], [21]]))
def test_of_marks_with_the_same_words_the_one_of_most_concern_is_shown(
    rows: list[tuple[str, set[int], str, str, str]], goods: str, classes: list[int]
) -> None:
    writer = MarkWriter()
    for number, (text, stated, words, status, owner) in enumerate(rows, 1):
        writer.add(Mark(text, str(number), "", tuple(sorted(stated)), words, status, "", owner))
    (one,) = screen(["Sprigwick"], Register(writer.columns(), []), goods=goods, classes=classes, languages=["nl"])
    owners = marks_of(one)
    assert sorted(shown.mark.owner for shown in owners) == sorted({owner for *_, owner in rows})
    assert sum(shown.marks for shown in owners) == len(rows)
    every = [close for shown in owners for close in (shown, *shown.others)]
    assert sorted(int(close.mark.number) for close in every) == list(range(1, len(rows) + 1))
    for close in every:
        alike = compare("Sprigwick", close.mark.text, name_goods=goods or None)
        assert close.closeness in (alike, without_meaning(alike))  # a coined name, where the goods tell that it is one
        assert close.knockout == is_knockout(close.mark, close.closeness, close.goods_relatedness)
    for shown in owners:
        together = (shown, *shown.others)
        assert {close.mark.owner for close in together} == {shown.mark.owner}
        assert [close.concern for close in together] == sorted((close.concern for close in together), reverse=True)
        assert shown.knockout == any(close.knockout for close in together)
        if not goods and not classes:  # nothing to tell them apart by but how they stand
            firm = {"live": 0, "pending": 1, "opposed": 1, "unknown": 2, "dead": 3}
            order = [(firm[close.mark.status], int(close.mark.number)) for close in together]
            assert order == sorted(order)
    validate(one)


def test_of_many_owners_of_the_same_words_the_gravest_stand_by_themselves(tmp_path: Path) -> None:
    """Each owner's mark is a matter of its own, up to a number that can be taken up; none is lost."""
    path = tmp_path / "marks.csv"
    rows = "".join(f"SPRIGWICK,{n},{21 if n == 19 else 36},,live,Owner {n}\n" for n in range(20))
    path.write_text(f"mark,number,class,goods,status,owner\n{rows}Sprig Wick,20,21,planters,live,owner-19\n")
    (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], languages=["nl"], top=2)
    joined = [close for close in marks_of(one) if close.mark.text == "SPRIGWICK"]
    assert len(joined) == MOST_OWNERS
    assert joined[0].mark.owner == "Owner 19"
    assert sum(close.marks for close in joined) == 20


def test_of_equal_knockouts_the_firmest_and_oldest_right_stands_first(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text(
        "mark,number,class,goods,status,filed,priority,registered\n"
        "SPRIGWICK,said nothing,21,planters,,2001-01-01,,\n"
        "SPRIGWICK,applied for,21,planters,pending,2020-01-01,,\n"
        "Sprig Wick,younger,21,planters,registered,2019-06-01,,2020-01-01\n"
        "Sprigwick,by priority,21,planters,registered,2019-07-01,2019-02-01,2020-01-01\n"
        "Sprig-Wick,undated,21,planters,registered,,,\n"
    )
    (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], languages=["nl"])
    found = [(mark.mark.number, *(other.mark.number for other in mark.others)) for mark in one.knockouts]
    assert found == [("by priority", "applied for", "said nothing"), ("younger", "undated")]


@pytest.mark.parametrize("classes", [[21], []])
def test_a_knockout_behind_ten_thousand_marks_of_its_words_is_found(tmp_path: Path, classes: list[int]) -> None:
    path = tmp_path / "marks.csv"
    others = "".join(
        f"SPRIGWICK,{n},{36 if n % 2 else 9},insurance,{'dead' if n % 3 else 'live'},A\n" for n in range(10_000)
    )
    path.write_text(
        f"mark,number,class,goods,status,owner\n{others}Sprigwick,last,21,planters,live,B\nSPRIGWYCK,x,9,,,C\n"
    )
    for register, count in ((read_register([path]), 10_001), (read_register([path], live_only=True), 3_335)):
        (one,) = screen(["Sprigwick"], register, goods=GOODS, classes=classes, top=2, languages=["nl"])
        first, further, second = sorted(marks_of(one), key=lambda close: "last x".find(close.mark.number) % 9)
        assert (first.mark.number, first.knockout, first.marks + further.marks) == ("last", True, count)
        assert len(further.others) == MOST_JUDGED - 2
        assert {close.mark.classes for close in (further, *further.others)} == {(9,), (36,)}
        assert all(close.mark.status == "live" for close in further.others)
        assert second.mark.number == "x"  # not hidden behind them
        validate(one)


def test_a_knockout_that_the_bound_may_hide_is_said(tmp_path: Path) -> None:
    """The same class on every mark: fifty are compared, and the one with related goods comes last."""
    path = tmp_path / "marks.csv"
    for count, said in ((MOST_JUDGED - 1, False), (MOST_JUDGED, True)):
        rows = "SPRIGWICK,36,insurance\n" * count + "SPRIGWICK,36,self-watering planters\n"
        path.write_text(f"mark,class,goods\n{rows}")
        (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], languages=["nl"])
        assert bool(one.knockouts) is not said
        assert (NOT_JUDGED in one.not_checked) is said
        (one,) = screen(["Sprigwort"], read_register([path]), goods=GOODS, classes=[21], languages=["nl"])
        assert NOT_JUDGED not in one.not_checked  # not near enough for a knockout
    path.write_text("mark,class,goods,status\n" + "SPRIGWICK,36,insurance,live\n" + "SPRIGWICK,36,planters,dead\n" * 99)
    (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], languages=["nl"])
    assert NOT_JUDGED not in one.not_checked  # all live ones were compared


def test_a_knockout_in_a_market_is_not_hidden_behind_marks_of_its_words_elsewhere(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    elsewhere = "".join(f"SPRIGWYCK,{n},JP,21,planters,live,A\n" for n in range(2 * MOST_JUDGED))
    path.write_text(
        f"mark,number,office,class,goods,status,owner\n{elsewhere}SPRIGWYCK,here,DE,21,planters,live,B\n"
    )
    (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], languages=["de"], markets=["DE"])
    shown, afar = marks_of(one)
    assert (shown.mark.number, shown.knockout) == ("here", True)
    assert len(afar.others) == MOST_JUDGED - 2


def test_a_knockout_is_shown_however_few_marks_are_asked_for(run: Run, tmp_path: Path) -> None:
    """The closest mark may be for other goods; the one to look at first is never cut off, and it is explained."""
    path = tmp_path / "marks.csv"
    path.write_text("mark,classes,goods\nSPRIGWICK,36,insurance\nSPRIGWYCK,21,self-watering planters\n")
    (one,) = screen(["Sprigwick"], read_register([path]), goods=GOODS, classes=[21], top=1)
    assert [(close.mark.text, close.knockout) for close in marks_of(one)] == [("SPRIGWYCK", True), ("SPRIGWICK", False)]
    shown = run(
        "screen", "--name", "Sprigwick", "--register", path, "--goods", GOODS, "--classes", "21", "--top", "1"
    ).stdout
    assert "SPRIGWYCK: Sound: sounds the same" in shown
    assert "SPRIGWICK: " not in shown


# Knockouts and concern.


def close(
    appearance: float = 0.0,
    sound: float = 0.0,
    overall: float = 0.0,
    related: float | None = 1.0,
    status: str = "unknown",
) -> CloseMark:
    mark = Mark("M", status=status)
    found = Closeness(appearance, sound, 0.0, overall, ())
    goods = NotChecked("goods_relatedness", "not stated") if related is None else Relatedness(related)
    return CloseMark(mark, found, goods, is_knockout(mark, found, goods))


@pytest.mark.parametrize(
    ("mark", "knockout"),
    [
        (close(1, 1, 1), True),
        (close(0.92, 0, 0.9), True),
        (close(0.91, 0.94, 0.9), False),
        (close(0.3, 0.95, 0.9), True),
        (close(1, 1, 1, related=0.55), True),
        (close(1, 1, 1, related=0.54), False),  # a shared class alone is less
        (close(1, 1, 1, related=None), True),
        (close(1, 1, 1, status="dead"), False),
        (close(1, 1, 1, status="live"), True),
    ],
)
def test_a_knockout_is_near_identical_for_the_same_goods_and_alive(mark: CloseMark, knockout: bool) -> None:
    assert mark.knockout is knockout


scores = st.floats(0, 1)


@given(scores, scores, scores, scores | st.none(), st.sampled_from(["unknown", "live", "dead", "pending", "opposed"]))
def test_concern_is_a_share_and_grows_with_closeness_and_relatedness(
    appearance: float, sound: float, overall: float, related: float | None, status: str
) -> None:
    mark = close(appearance, sound, overall, related, status)
    assert 0 <= mark.concern <= 1
    assert close(appearance, sound, 1.0, related, status).concern >= mark.concern
    assert close(appearance, sound, overall, 1.0, status).concern >= mark.concern
    assert close(appearance, sound, overall, related, "").concern >= mark.concern
    assert close(appearance, sound, overall, None, status).concern == close(
        appearance, sound, overall, 1.0, status
    ).concern  # fmt: skip


def test_a_registered_mark_taken_over_whole_for_identical_goods_is_never_minor() -> None:
    """Court of Justice, C-196/11 P, F1-Live; nothing is credited for other goods, to what has ended, or elsewhere."""
    weak = Conflict(0.3, 0.3, 0.3, 1.0, credited=True)
    assert level_of(weak.concern) is Level.LOOK
    assert level_of(weak._replace(crowded=True).concern) is Level.LOOK
    for milder in (
        weak._replace(credited=False), weak._replace(goods=0.6), weak._replace(ended=True), weak._replace(bites=False),
        weak._replace(goods=None),
    ):  # fmt: skip
        assert level_of(milder.concern) < Level.LOOK


@pytest.mark.parametrize(
    ("mark", "goods", "status", "credited"),
    [
        ("KOZEE", "kites", "live", True),
        ("KOZEE", "kites", "pending", False),
        ("KOZEE", "kites", "dead", False),
        ("TOYS", "toys", "live", False),  # the name of its own goods
        ("KOZEE TAIL SHOP", "kites", "live", False),  # not all of it is in the name
    ],
)
def test_which_marks_are_credited(mark: str, goods: str, status: str, credited: bool) -> None:
    stated = Mark(mark, "1", "GB", (28,), goods, status)
    whole = taken_over("Kozee Toys Harbour", stated, "string")
    assert (whole is not None and is_credited(whole, stated)) is credited


LAMPS = "mark,number,classes,goods,status,owner\n"


def _only(tmp_path: Path, name: str, mark: str, goods: str) -> CloseMark:
    path = tmp_path / "lamps.csv"
    path.write_text(f"{LAMPS}{mark},1,11,{goods},registered,A\n")
    (one,) = screen([name], read_register([path]), goods=goods, classes=[11], languages=["nl"])
    (found,) = marks_of(one)
    return found


def test_the_name_of_the_goods_beside_it_saves_no_near_identical_name(tmp_path: Path) -> None:
    """TMEP 1207.01(b)(iii): adding a generic word seldom avoids confusion."""
    for name in ("Orrelin", "Orrelin Lamp", "Orrelin Desk Lamps"):
        assert _only(tmp_path, name, "ORRELLIN", "desk lamps").knockout


@pytest.mark.parametrize(
    ("name", "mark", "goods"),
    [
        ("Honey Otter", "HONEYWICK", "honey candles"),
        ("Brass Lamp", "BRASSLY", "brass lamps"),
        ("Lavender Loft", "LAVENDER LEDGE", "lavender candles"),
        ("Brass Otter", "BRASSY", "brass lamps"),
    ],
)
def test_a_mark_that_shares_only_a_word_for_the_goods_is_minor_at_most(
    tmp_path: Path, name: str, mark: str, goods: str
) -> None:
    """TMEP 1207.01(b)(viii): words that describe the goods say little of the maker."""
    found = _only(tmp_path, name, mark, goods)
    assert found.level <= Level.MINOR
    assert (About.WEAK_ALONE in map(about, found.closeness.reasons)) is found.descriptive


def test_a_shared_word_that_says_nothing_of_the_goods_is_looked_at(tmp_path: Path) -> None:
    assert _only(tmp_path, "Otter Loft", "OTTER LEDGE", "brass lamps").level >= Level.LOOK


@pytest.mark.parametrize(("place", "grade"), [("DE", "identical"), ("GB", "none"), ("EU", "none"), ("", "none")])
def test_goods_of_a_mark_are_read_in_the_languages_of_its_territory(tmp_path: Path, place: str, grade: str) -> None:
    """From memory of German: a Hut is a hat."""
    marks = tmp_path / "marks.csv"
    marks.write_text(f"mark,goods,territories\nVelpora,Hut,{place}\n", encoding="utf-8")
    (found,) = screen(["Velpora"], read_register([marks]), goods="hats")
    (mark,) = marks_of(found)
    assert isinstance(mark.goods_relatedness, Relatedness)
    assert mark.goods_relatedness.grade == grade


def test_the_same_name_that_has_ended_is_minor_for_goods_like_ours_though_it_describes() -> None:
    dead = Conflict(1.0, 1.0, 1.0, 0.95, ended=True, descriptive=True)
    assert level_of(dead.concern) is Level.MINOR
    assert level_of(dead._replace(goods=0.0).concern) is Level.NOTHING
    assert level_of(dead._replace(appearance=0.8).concern) is Level.NOTHING


def test_words_that_describe_and_are_hardly_told_apart_ask_for_a_closer_look() -> None:
    weak = Conflict(0.8, 0.75, 0.7, 0.68, descriptive=True)
    assert level_of(weak.concern) is Level.LOOK
    assert level_of(weak._replace(sound=0.6).concern) is Level.MINOR
    assert level_of(weak._replace(goods=0.4).concern) is Level.LOOK
    assert level_of(weak._replace(goods=0.2).concern) is Level.MINOR
