"""What buyers of a market hear as the same, read by the rules of their language."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.closeness import compare
from namescreen.connotations.g2p_rules import doubled_otherwise
from namescreen.register import read_register
from namescreen.screening import screen
from namescreen.screening.heard import as_heard, heard_alike


@pytest.mark.parametrize(
    ("name", "mark", "languages", "language"),
    [
        ("Brandstetter", "BRANDSTÄTTER", ["fr", "de"], "de"),  # a short ä is said as e (Duden, from memory)
        ("Maier", "MEYER", ["de"], "de"),
        ("Vallera", "BALLERA", ["es"], "es"),  # b and v are one sound (Real Academia, from memory)
        ("Bottino", "BOTINO", ["es"], "es"),
        ("Bottino", "BOTTINA", ["es", "de", "fr"], ""),
        ("Beau", "BO", ["fr"], ""),  # too short to tell
        ("Brandstetter", "BRANDSTÄTTER", [], ""),
        ("Brandstetter", "BRANDSTÄTTER", ["xx"], ""),
    ],
)
def test_names_said_alike(name: str, mark: str, languages: list[str], language: str) -> None:
    assert heard_alike(name, mark, languages) == language
    assert heard_alike(mark, name, languages) == language


def test_doubled_letters_that_are_another_sound_somewhere() -> None:
    """Spanish ll is no l (Real Academia, from memory); German ll and Italian ss are what the single letters can be."""
    assert {one: sorted(doubled_otherwise(one)) for one in ("es", "nl", "de", "it", "xx")} == {
        "es": ["ll"], "nl": [], "de": [], "it": [], "xx": [],
    }  # fmt: skip
    read = compare("Filora", "FYLLORA")
    assert as_heard(read, "Filora", "FYLLORA", ["it"]).sound == 1.0
    assert as_heard(read, "Filora", "FYLLORA", ["es"]).sound < 1.0


def test_only_the_sound_and_its_reason_change() -> None:
    read = compare("Brandstetter", "BRANDSTÄTTER")
    heard = as_heard(read, "Brandstetter", "BRANDSTÄTTER", ["de"])
    assert heard.sound == 1.0
    assert heard.overall == read.overall
    assert "Sound: sounds the same, read in German." in heard.reasons
    assert as_heard(read, "Brandstetter", "BRANDSTÄTTER", ["it"]) is read


def test_a_mark_is_read_where_it_holds(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,office,goods\nBRANDSTÄTTER,DE,bicycle bags\nBRANDSTAETTER,US,bicycle bags\n", "utf-8")
    (found,) = screen(["Brandstetter"], read_register([path]), goods="bicycle bags", classes=[12], markets=["US", "EU"])
    close = {mark.mark.text: mark for mark in found.close_marks}  # type: ignore[union-attr]
    assert close["BRANDSTÄTTER"].knockout
    assert close["BRANDSTAETTER"].closeness.sound < 1  # no buyer there reads German


def test_the_language_of_a_minority_is_not_that_of_a_market(tmp_path: Path) -> None:
    """Buyers in the US read a mark in English, whatever some there speak besides; b and v are one sound in Spanish."""
    for office, heard in (("US", False), ("ES", True)):
        path = tmp_path / f"{office}.csv"
        path.write_text(f"mark,office,goods\nVALORA,{office},bicycle bags\n", "utf-8")
        (found,) = screen(["Balora"], read_register([path]), goods="bicycle bags", classes=[12], markets=["US", "ES"])
        (close,) = found.close_marks  # type: ignore[misc]
        assert ("read in Spanish" in " ".join(close.closeness.reasons)) is heard


def test_what_sounds_the_same_only_in_english_is_no_knockout_where_few_speak_it(tmp_path: Path) -> None:
    """EUIPO Guidelines, part C, section 2, chapter 4, on phonetic comparison: as buyers of the territory say it. In
    German w is a consonant before r, and in English it is silent."""
    for office, knockout in (("GB", True), ("DE", False), ("IE", True)):
        path = tmp_path / f"{office}.csv"
        path.write_text(f"mark,office,goods\nRENSKO,{office},cooking spoons\n", "utf-8")
        (found,) = screen(["Wrensko"], read_register([path]), goods="spoons", classes=[21], markets=["GB", "IE", "DE"])
        (close,) = found.close_marks  # type: ignore[misc]
        assert close.knockout is knockout
        assert ("the same only in English" in " ".join(close.closeness.reasons)) is not knockout


def test_what_every_language_hears_as_the_same_stays_a_knockout(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,office,goods\nTANVRIK,FR,cooking spoons\n", "utf-8")
    (found,) = screen(["Tanvric"], read_register([path]), goods="spoons", classes=[21], markets=["FR"])
    (close,) = found.close_marks  # type: ignore[misc]
    assert close.knockout
