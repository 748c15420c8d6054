from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.brief import load_brief
from namescreen.closeness import Closeness, compare
from namescreen.demo import demo_files
from namescreen.errors import DataError
from namescreen.goods import Relatedness
from namescreen.marks import Mark
from namescreen.marks.columns import MarkWriter
from namescreen.outcome import NotChecked
from namescreen.policy import Level
from namescreen.register import Register, read_register
from namescreen.screening import MOST_JUDGED, NOT_JUDGED, CloseMark, Screening, is_knockout, schema, screen
from tests.conftest import Run

GOODS = "self-watering planters of stoneware for kitchen herbs"
LIST = """\
mark,number,classes,goods,status,owner
SPRIGWICK,1,21,self-watering planters,registered,A
SPRIGWYCK,2,21,planters,expired,B
SPRIGWICK,3,36,insurance,registered,C
SPRIGWICK,4,,,,
TIMELO,5,21,plant pots,registered,D
"""


@pytest.fixture
def register(tmp_path: Path) -> Register:
    path = tmp_path / "marks.csv"
    path.write_text(LIST)
    return read_register([path])


def validate(screening: Screening) -> dict[str, Any]:
    """What the screening looks like to a program, after a trip through JSON."""
    row: dict[str, Any] = json.loads(json.dumps(screening.to_json(), allow_nan=False))
    jsonschema.validate(row, schema(), cls=jsonschema.Draft202012Validator)
    return row


def marks_of(one: Screening) -> tuple[CloseMark, ...]:
    assert not isinstance(one.close_marks, NotChecked)
    return one.close_marks


def test_the_published_schema_is_a_schema_and_refuses_what_it_should() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    (one,) = screen(["Loamlet"], None, languages=["nl"])
    row = validate(one)
    for spoilt in ({**row, "extra": 1}, {**row, "name": ""}, {**row, "not_checked": [{"check": "x"}]}):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(spoilt, schema())


def test_the_shape_is_the_one_promised(register: Register) -> None:
    (one,) = screen(["Sprigwick"], register, goods=GOODS, classes=[21], languages=["nl"])
    row = validate(one)
    assert list(row) == [
        "name", "close_marks", "distinctiveness", "readings", "coverage", "addresses", "not_checked",
    ]  # fmt: skip
    first = row["close_marks"][0]
    assert first["mark"] == "SPRIGWICK"
    assert (first["overall"], first["appearance"], first["sound"], first["meaning"]) == (1, 1, 1, 1)
    assert {mark["number"]: mark["knockout"] for mark in row["close_marks"]} == {
        "1": True,  # identical, for planters
        "2": False,  # near-identical, but expired
    }
    # The same words for insurance, and without goods: these count as the same.
    assert first["marks"] == 3
    assert first["others"] == [
        {"number": "4", "office": "", "classes": [], "status": "unknown", "owner": "", "in_markets": None},
        {"number": "3", "office": "", "classes": [36], "status": "live", "owner": "C", "in_markets": None},
    ]
    assert [close.knockout for close in marks_of(one)[0].others] == [True, False]
    assert (
        NotChecked("goods_relatedness", "the list of marks does not state the goods of some marks") in one.not_checked
    )
    assert (row["close_marks"][1]["marks"], row["close_marks"][1]["others"]) == (1, [])


def test_the_whole_demo_fits_the_schema_and_shows_every_kind_of_finding() -> None:
    brief_file, _ = demo_files()
    brief = load_brief(str(brief_file))
    register = read_register(brief.marks)
    assert len(register) == 302
    found = {
        one.name: one
        for one in screen(
            brief.shortlist,
            register,
            top=99,
            goods=brief.goods,
            classes=brief.classes,
            languages=brief.languages,
        )
    }
    rows = {name: validate(one) for name, one in found.items()}
    first = {name: row["close_marks"][0] for name, row in rows.items()}

    def mark(name: str, text: str) -> dict[str, Any]:
        found: dict[str, Any] = next(mark for mark in rows[name]["close_marks"] if mark["mark"] == text)
        return found

    # An identical mark for the same goods.
    assert (first["Sprigwick"]["mark"], first["Sprigwick"]["knockout"]) == ("SPRIGWICK", True)
    # An identical one in a distant class.
    assert (first["Quenchling"]["overall"], first["Quenchling"]["knockout"]) == (1, False)
    assert first["Quenchling"]["goods_relatedness"] < 0.2
    # One that sounds alike, one that looks alike.
    sounds = mark("Rainsip", "REIGNSIPP")
    assert sounds["sound"] > sounds["appearance"]
    looks = mark("Fernsill", "FEMSILL")
    assert looks["appearance"] > looks["sound"]
    # The same idea in other words, and in another language.
    assert mark("Quiet Forest", "SILENT WOOD")["meaning"] > 0.6
    assert mark("Quiet Forest", "FORÊT TRANQUILLE")["meaning"] > 0.7
    # A shared word that is weak for these goods counts for little.
    assert all(mark["mark"] != "TORVO PLANTER" for mark in rows["Wickby Planter"]["close_marks"])
    # A word that means something unlucky in a language of the markets.
    assert any(reading["severity"] > 0 for reading in rows["Mist Patch"]["readings"])


def test_close_marks_are_closest_first_and_no_more_than_asked(register: Register) -> None:
    for top in (1, 2, 5, 9):
        for goods in ("", GOODS):
            (one,) = screen(["Sprigwick"], register, goods=goods, top=top, languages=["nl"])
            values = [mark.closeness.overall for mark in marks_of(one)]
            assert values == sorted(values, reverse=True)
            assert len(values) == min(top, 2)  # three have the same words, and the last has nothing in common with it


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
    (shown,) = marks_of(one)
    together = (shown, *shown.others)
    assert shown.marks == len(rows)
    assert sorted(int(close.mark.number) for close in together) == list(range(1, len(rows) + 1))
    assert [close.concern for close in together] == sorted((close.concern for close in together), reverse=True)
    assert shown.knockout == any(close.knockout for close in together)
    for close in together:
        assert close.closeness == compare("Sprigwick", close.mark.text, name_goods=goods or None)
        assert close.knockout == is_knockout(close.mark, close.closeness, close.goods_relatedness)
    if not goods and not classes:  # nothing to tell them apart by but whether they live
        order = [(close.mark.status == "dead", int(close.mark.number)) for close in together]
        assert order == sorted(order)
    validate(one)


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
        first, second = marks_of(one)
        assert (first.mark.number, first.knockout, first.marks) == ("last", True, count)
        assert len(first.others) == MOST_JUDGED - 1
        assert {close.mark.classes for close in first.others} == {(9,), (36,)}
        assert all(close.mark.status == "live" for close in first.others)
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


def test_many_names_are_screened_as_each_alone_and_in_their_order(register: Register) -> None:
    names = ["Thymelow", "Sprigwick", "Loamlet"]
    together = [one.to_json() for one in screen(names, register, goods=GOODS, languages=["nl"])]
    alone = [next(screen([name], register, goods=GOODS, languages=["nl"])).to_json() for name in names]
    assert together == alone


def test_a_screening_agrees_with_compare(register: Register) -> None:
    (one,) = screen(["Thymelow"], register, goods=GOODS, languages=["nl"])
    for mark in marks_of(one):
        again = compare("Thymelow", mark.mark.text, name_goods=GOODS)
        assert mark.closeness == again


def test_results_come_one_by_one(register: Register) -> None:
    def endless() -> Iterator[str]:
        yield from ("Loamlet", "Thymelow")

    results = screen(endless(), register, languages=["nl"])
    assert next(results).name == "Loamlet"
    assert next(results).name == "Thymelow"


def test_progress_counts_the_names(register: Register) -> None:
    told: list[tuple[int, int | None]] = []
    for source in (register, None):
        list(screen(["a", "b"], source, languages=["nl"], progress=lambda done, total: told.append((done, total))))
        assert told.pop() == (2, 2)


# What could not be checked is said, never passed off as nothing found.


def test_without_a_list_marks_are_not_checked() -> None:
    (one,) = screen(["Loamlet"], None, languages=["nl"])
    assert one.close_marks == NotChecked("close_marks", "no list of existing marks was given")
    assert one.close_marks in one.not_checked
    assert (one.knockouts, one.concern, one.closest) == ((), 0.0, 0.0)


def test_without_goods_distinctiveness_and_relatedness_are_not_checked(register: Register) -> None:
    (one,) = screen(["Sprigwick"], register, languages=["nl"])
    assert isinstance(one.distinctiveness, NotChecked)
    assert all(isinstance(mark.goods_relatedness, NotChecked) for mark in marks_of(one))
    assert {reason.check for reason in one.not_checked} >= {"distinctiveness", "goods_relatedness"}


def test_a_language_without_words_is_not_checked() -> None:
    (one,) = screen(["Loamlet"], None, languages=["nl", "tlh"])
    assert [coverage.language for coverage in one.coverage] == ["nl"]
    assert any("tlh" in reason.check or "Klingon" in reason.check for reason in one.not_checked)


@pytest.mark.parametrize("languages", [["en"], ["tlh", "en"]])
def test_nothing_looked_through_is_not_nothing_found(languages: list[str]) -> None:
    (one,) = screen(["Mist Patch"], None, languages=languages)
    assert isinstance(one.readings, NotChecked)
    assert one.readings in one.not_checked
    assert all(language in one.readings.because for language in languages)


@pytest.mark.parametrize("error", [DataError("words.tsv", "is damaged", "Install again"), ImportError("no room")])
def test_a_damaged_table_or_missing_part_leaves_the_other_checks_standing(
    monkeypatch: pytest.MonkeyPatch, register: Register, error: Exception
) -> None:
    def fail(*arguments: object, **options: object) -> None:
        raise error

    monkeypatch.setattr(sys.modules["namescreen.connotations"], "readings", fail)
    (one,) = screen(["Sprigwick"], register, goods=GOODS, languages=["nl"])
    assert isinstance(one.readings, NotChecked)
    assert str(error) in one.readings.because
    assert one.readings in one.not_checked
    assert one.knockouts
    validate(one)


def test_a_mistake_in_a_check_is_not_hidden(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*arguments: object, **options: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(sys.modules["namescreen.connotations"], "readings", fail)
    with pytest.raises(ZeroDivisionError):
        list(screen(["Loamlet"], None, languages=["nl"]))


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
        (close(1, 1, 1, related=0.54), False),  # a shared class alone is 0.46
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


def test_meaning_that_could_not_be_judged_is_said() -> None:
    unknown = Closeness(0.0, 0.0, 0.0, 0.0, (), (NotChecked("meaning", "no word is known"),))
    mark = CloseMark(Mark("M"), unknown, Relatedness(1.0), False)
    assert mark.to_json()["meaning"] == {"not_checked": "no word is known"}


def test_what_a_name_is_in_the_buyers_languages_is_searched_too(tmp_path: Path) -> None:
    """Two words, and a compound written as one word, which shares no letter with the name."""
    path = tmp_path / "marks.csv"
    path.write_text("mark,class,goods\nTaschendrachen,28,kites\nStiller Wald,28,kites\nSilent Wood,28,kites\n")
    register = read_register([path])
    kite, forest = screen(
        ["Pocket Kite", "Quiet Forest"], register, goods="kites", classes=[28], languages=["nl", "de"]
    )
    found = {close.mark.text: close for close in marks_of(kite)}
    assert found["Taschendrachen"].translation == "de"
    assert found["Taschendrachen"].level is Level.SERIOUS
    found = {close.mark.text: close for close in marks_of(forest)}
    assert found["Stiller Wald"].translation == "de"
    assert found["Silent Wood"].translation == ""  # the same idea in the name's own language
    for one in (kite, forest):
        validate(one)
    (dutch,) = screen(["Pocket Kite"], register, goods="kites", classes=[28], languages=["nl"])
    assert all(close.translation == "" for close in marks_of(dutch))  # closeness in meaning may find it all the same


@pytest.mark.parametrize(
    ("name", "mark", "languages", "language"),
    [
        ("Quiet Forest", "FORÊT TRANQUILLE", ["fr"], "fr"),
        ("Forêt Tranquille", "QUIET FOREST", ["fr"], "en"),
        ("Green Dragon", "DRAGON VERDE", ["es"], "es"),  # a word that both share does not hide the translation
        ("Dragon Verde", "GREEN DRAGON", ["es"], "en"),
        ("Bosco Verde", "GRÜNER WALD", ["it", "de"], "de"),  # from one foreign language into another
        ("Waldstille", "QUIET FOREST", ["de"], "en"),
        ("La Luna", "MOON", ["it"], "en"),
        ("Bosco Verde", "GRÜNER WALD", ["de"], ""),  # nobody among the buyers reads Italian
        ("Quiet Forest", "SILENT WOOD", ["fr"], ""),  # the same idea in the same language
        ("Morning Dew", "MORNING STAR", ["fr", "de"], ""),
    ],
)
def test_a_translation_is_seen_in_either_direction(
    tmp_path: Path, name: str, mark: str, languages: list[str], language: str
) -> None:
    path = tmp_path / "marks.csv"
    path.write_text(f"mark,class,goods\n{mark},28,kites\n", "utf-8")
    (found,) = screen([name], read_register([path]), goods="kites", classes=[28], languages=languages)
    assert next((close.translation for close in marks_of(found)), "") == language


def test_the_verdict_does_not_turn_on_how_many_marks_are_shown(tmp_path: Path) -> None:
    """Dead marks and marks for other goods, closer in letters, do not hide the mark that matters."""
    near = "".join(f"Nettlegri{letter},dead,9,telephones\n" for letter in "abcdefghijkl")
    path = tmp_path / "marks.csv"
    path.write_text(f"mark,status,class,goods\n{near}Nettlegrunth,registered,30,sauces\n")
    register = read_register([path])
    worst = [
        max(mark.concern for mark in marks_of(one))
        for top in (1, 5, 20)
        for one in screen(["Nettlegrin"], register, goods="sauces", classes=[30], top=top)
    ]
    assert worst[0] == worst[1] == worst[2] > 0


def test_a_protected_sign_is_a_finding_and_a_question_of_its_own(tmp_path: Path) -> None:
    """Whatever the place on the continuum: the word of the Olympic movement for any goods."""
    (found,) = screen(["Olympic Ember"], None, goods="hot sauce", classes=[30])
    assert not isinstance(found.distinctiveness, NotChecked)
    assert [one.sign for one in found.distinctiveness.protected] == ["olympic"]
    assert found.distinctiveness.protected[0].ask
