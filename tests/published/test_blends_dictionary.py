"""Blends that dictionaries record, and attested blends of two papers, are among the first offered.

dictionary_blends.csv: blends with the two words their dictionary derives them from (Merriam-Webster, the Oxford
English Dictionary; both written down from memory, the derivations as those dictionaries commonly give them).
Some of them are also rows of the papers' data, on which the weights were fitted.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable
from pathlib import Path

import pytest

from namescreen import blends

TOPS = (1, 5, 10, 20)
HERE = Path(__file__).parent


def read(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def found_at(rows: Iterable[dict[str, str]]) -> list[int | None]:
    """The place of each attested blend among the first twenty, 0 = first."""
    places: list[int | None] = []
    for row in rows:
        offered = [blend.text for blend in blends(row["first"], row["second"], limit=20)]
        blend = row["blend"].lower()
        places.append(offered.index(blend) if blend in offered else None)
    return places


def shares(places: list[int | None]) -> dict[int, float]:
    return {top: sum(place is not None and place < top for place in places) / len(places) for top in TOPS}


DICTIONARY = read(HERE / "dictionary_blends.csv")


def test_the_dictionary_rows_are_well_formed() -> None:
    assert len(DICTIONARY) >= 100
    assert len({row["blend"] for row in DICTIONARY}) == len(DICTIONARY)
    assert all(row["source"] in ("Merriam-Webster", "Oxford English Dictionary") for row in DICTIONARY)


@pytest.mark.parametrize(("blend", "first", "second"), [("brunch", "breakfast", "lunch"), ("motel", "motor", "hotel"),
                                                        ("guesstimate", "guess", "estimate"),
                                                        ("mocktail", "mock", "cocktail")])  # fmt: skip
def test_the_textbook_blends_come_first(blend: str, first: str, second: str) -> None:
    assert blends(first, second)[0].text == blend


def test_most_dictionary_blends_are_among_the_first_offered() -> None:
    # Measured: 0.44 / 0.74 / 0.84 / 0.88; on the 50 that are no rows of the papers' data 0.38 / 0.64 / 0.76 / 0.82.
    reached = shares(found_at(DICTIONARY))
    assert reached[1] >= 0.36, reached
    assert reached[20] >= 0.82, reached


@pytest.mark.shared
@pytest.mark.parametrize(
    ("group", "goals"),
    [
        # Goals above the best published on D_Blind: 0.323 / 0.586 / 0.688 / 0.760 (Gangal and others 2017).
        ("D_Blind", {1: 0.36, 5: 0.64, 10: 0.76, 20: 0.85}),
        # D_Wiki has no such published figures for this split; it is the easier set.
        ("D_Wiki", {1: 0.45, 5: 0.75, 10: 0.85, 20: 0.9}),
    ],
)
def test_attested_blends_of_the_papers(shared_folder: Path, group: str, goals: dict[int, float]) -> None:
    rows = [row for row in read(shared_folder / "checks" / "blends.csv") if row["set"] == group]
    reached = shares(found_at(rows))
    assert all(reached[top] >= goal for top, goal in goals.items()), reached


@pytest.mark.shared
def test_nearly_every_attested_blend_is_a_candidate(shared_folder: Path) -> None:
    rows = read(shared_folder / "checks" / "blends.csv")
    held = sum(
        row["blend"].lower() in {blend.text for blend in blends(row["first"], row["second"], limit=100_000)}
        for row in rows
    )
    assert held / len(rows) > 0.95
