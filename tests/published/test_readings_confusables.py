"""Look-alikes against Unicode Technical Standard #39, "Unicode Security Mechanisms", version 15, and against ICU."""

from __future__ import annotations

import unicodedata

import pytest

from namescreen.connotations import lookalikes
from namescreen.connotations.scripts import confusable, resolved_scripts, skeleton
from namescreen.tables import open_table


@pytest.mark.parametrize(
    ("first", "second"),
    [
        # UTS #39 section 4 (from memory): single-script, mixed-script and whole-script confusables.
        ("ǉeto", "ljeto"),
        ("paypal", "раypal"),
        ("paypal", "раура" + "l"),
        ("scope", "ѕсоре"),
        # confusables.txt, rows as commonly quoted (from memory): rn and m, l and 1 and I, 0 and O.
        ("rn", "m"),
        ("l", "1"),
        ("l", "I"),
        ("O", "0"),
        ("desparate", "desрarate"),
    ],
)  # fmt: skip
def test_published_examples_are_confusable(first: str, second: str) -> None:
    assert confusable(first, second)


@pytest.mark.parametrize(("first", "second"), [("market", "makret"), ("scope", "scape"), ("b", "d"), ("u", "n")])
def test_other_words_are_not(first: str, second: str) -> None:
    assert not confusable(first, second)


def test_the_skeleton_is_decomposed_before_and_after() -> None:
    # UTS #39 section 4: skeleton(X) begins and ends with NFD, so composed and decomposed text have one skeleton.
    assert skeleton("é") == skeleton("e\u0301")
    assert skeleton("é") == unicodedata.normalize("NFD", skeleton("é"))


@pytest.mark.parametrize(
    ("text", "scripts"),
    [
        # UTS #39 section 5.1, table 1a of resolved script sets (from memory).
        ("Circle", {"Latin"}),
        ("СігсӀе", {"Cyrillic"}),
        ("Сirсlе", set()),
        ("Circ1e", {"Latin"}),
        ("C𝗂𝗋𝖼𝗅𝖾", {"Latin"}),  # there because mathematical letters are Common, here because they decompose
        ("〆切", {"Japanese"} | {"Han", "Korean", "Bopomofo"}),
    ],
)
def test_resolved_scripts_of_the_standards_examples(text: str, scripts: set[str]) -> None:
    assert set(resolved_scripts(text) or ()) == scripts


def test_whole_script_look_alikes_are_flagged_too() -> None:
    found = lookalikes("ѕсоре")
    assert found is not None
    assert not found.mixed
    assert found.looks == "scope"


def test_rows_agree_with_icu() -> None:
    icu = pytest.importorskip("icu", reason="needs PyICU (Debian python3-icu)")
    checker = icu.SpoofChecker()
    for character, prototype in open_table("confusables.tsv").items():
        assert unicodedata.normalize("NFD", checker.getSkeleton(0, character)) == prototype
