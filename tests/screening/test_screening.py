"""The form of a screening, its order, and that it agrees with the checks."""

from __future__ import annotations

import gc
import json
import pickle
import re
from collections.abc import Iterator
from typing import Any

import jsonschema
import pytest

from namescreen.brief import load_brief
from namescreen.closeness import compare
from namescreen.demo import demo_files
from namescreen.outcome import NotChecked
from namescreen.policy import Level
from namescreen.register import Register, read_register
from namescreen.screening import fits, schema, screen, screen_rows
from tests.screening.conftest import GOODS, marks_of, validate


def test_the_published_schema_is_a_schema_and_refuses_what_it_should() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    (one,) = screen(["Loamlet"], None, languages=["nl"])
    row = validate(one)
    for spoilt in ({**row, "extra": 1}, {**row, "name": ""}, {**row, "not_checked": [{"check": "x"}]}):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(spoilt, schema())


ODD: tuple[Any, ...] = (None, "", "x", -1, 2, 0.5, True, [], ["x"], [1], {}, {"check": "x"}, {"not_checked": "x"})


def test_what_is_read_back_is_judged_as_the_schema_judges_it(register: Register) -> None:
    (one,) = screen(["Sprigwick"], register, goods=GOODS, classes=[21], languages=["nl"])
    row = validate(one)
    judge = jsonschema.Draft202012Validator(schema())
    keywords = set(re.findall(r'"(\w+|\$ref)":', json.dumps(schema()))) & set(judge.VALIDATORS)
    assert keywords == {
        "$ref", "additionalProperties", "anyOf", "enum", "items", "maxItems", "maximum", "minLength", "minimum",
        "properties", "required", "type",
    }  # fmt: skip
    places = list(_places(row))
    assert fits(row)
    assert len(places) > 100
    refused = 0
    for place in places[:: -(-len(places) // 120)]:
        changed = json.loads(json.dumps(row))
        inside = changed
        for key in place[:-1]:
            inside = inside[key]
        for odd in ODD:
            inside[place[-1]] = odd
            wanted = judge.is_valid(changed)
            refused += not wanted
            assert fits(changed) == wanted, (place, odd)
    assert refused > 500


def _places(value: Any, above: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The way to every value inside."""
    for key, inside in value.items() if isinstance(value, dict) else enumerate(value):
        yield (*above, key)
        if isinstance(inside, dict | list):
            yield from _places(inside, (*above, key))


def test_the_shape_is_the_one_promised(register: Register) -> None:
    (one,) = screen(["Sprigwick"], register, goods=GOODS, classes=[21], languages=["nl"])
    row = validate(one)
    assert list(row) == [
        "name", "close_marks", "distinctiveness", "readings", "coverage", "addresses", "not_checked",
        "shared_words",
    ]  # fmt: skip
    first = row["close_marks"][0]
    assert first["mark"] == "SPRIGWICK"
    assert (first["overall"], first["appearance"], first["sound"]) == (1, 1, 1)
    assert "not_checked" in first["meaning"]  # of a coined name, though the other is the same
    assert {mark["number"]: mark["knockout"] for mark in row["close_marks"]} == {
        "1": True,  # identical, for planters
        "2": False,  # near-identical, but expired
        "3": False,  # another owner's, for insurance
        "4": True,  # whose it is and its goods are not stated: these count as the same
    }
    assert (first["marks"], first["others"]) == (1, [])
    assert (
        NotChecked("goods_relatedness", "the list of marks does not state the goods of some marks") in one.not_checked
    )


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
    shared = (close for close in marks_of(found["Wickby Planter"]) if close.mark.text == "TORVO PLANTER")
    assert all(close.level is Level.NOTHING for close in shared)
    # A word that means something unlucky in a language of the markets.
    assert any(reading["severity"] > 0 for reading in rows["Mist Patch"]["readings"])


def test_close_marks_are_closest_first_and_no_more_than_asked(register: Register) -> None:
    for top in (1, 2, 5, 9):
        for goods in ("", GOODS):
            (one,) = screen(["Sprigwick"], register, goods=goods, top=top, languages=["nl"])
            values = [mark.closeness.overall for mark in marks_of(one)]
            assert values == sorted(values, reverse=True)
            words = {mark.mark.text for mark in marks_of(one)}
            assert len(words) == min(top, 2)  # three have the same words, and the last has nothing in common with it


def test_many_names_are_screened_as_each_alone_and_in_their_order(register: Register) -> None:
    names = ["Thymelow", "Sprigwick", "Loamlet"]
    together = [one.to_json() for one in screen(names, register, goods=GOODS, languages=["nl"])]
    alone = [next(screen([name], register, goods=GOODS, languages=["nl"])).to_json() for name in names]
    assert together == alone


def test_a_screening_agrees_with_compare(register: Register) -> None:
    (one,) = screen(["Thymelow"], register, goods=GOODS, languages=["nl"])
    for mark in marks_of(one):
        again = compare("Thymelow", mark.mark.text, name_goods=GOODS)
        for aspect in ("appearance", "sound", "meaning", "overall"):  # sums in arrays may differ in their last digits
            assert getattr(mark.closeness, aspect) == pytest.approx(getattr(again, aspect), abs=1e-12)
        assert mark.closeness.not_checked == again.not_checked


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


def test_reasons_that_wait_are_those_that_come_with_the_rest(
    register: Register, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = ["Sprigwick", "Rainsip", "Fernsill", "Wickby Planter", "Loamlet"]
    monkeypatch.setattr("namescreen.processes.processors", lambda: 2)
    waiting, ready = (
        list(screen(names, register, goods=GOODS, classes=[21], languages=["nl"], with_reasons=with_reasons))
        for with_reasons in (False, True)
    )
    assert [one.to_json() for one in pickle.loads(pickle.dumps(waiting))] == [one.to_json() for one in ready]
    assert [one.to_json() for one in waiting] == [one.to_json() for one in ready]


def test_many_processes_find_what_one_finds(register: Register, monkeypatch: pytest.MonkeyPatch) -> None:
    names = ["Sprigwick", "Rainsip", "Fernsill", "Wickby Planter", "Loamlet"]
    monkeypatch.setattr("namescreen.processes.processors", lambda: 2)
    for marks in (register, None):
        several = [one.to_json() for one in screen(names, marks, goods=GOODS, classes=[21], languages=["nl"])]
        alone = [one.to_json() for name in names for one in screen([name], marks, goods=GOODS, classes=[21],
                                                                   languages=["nl"])]  # fmt: skip
        assert several == alone
        assert several == list(screen_rows(names, marks, goods=GOODS, classes=[21], languages=["nl"]))


def test_a_screening_leaves_nothing_to_the_garbage_collection_which_workers_do_without(register: Register) -> None:
    def screened(names: list[str]) -> None:
        for one in screen(names, register, goods=GOODS, languages=["de", "nl"], markets=["US", "EU"]):
            one.to_json()

    screened(["Sprigwick", "Timelo Sprig"])
    gc.collect()
    gc.disable()
    left = []
    try:
        for names in (["Sprigwyck", "Herbtimelo", "Time Low"], ["Sprigwack", "Herbtimela", "Time Law"]):
            screened(names)
            left.append(gc.collect())
        assert min(left) < 10  # a register of another test may go in between
    finally:
        gc.enable()
