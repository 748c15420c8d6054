from __future__ import annotations

import pytest

from namescreen.cli.options import nice_classes
from namescreen.errors import InputError
from tests.conftest import Run


@pytest.mark.parametrize(
    ("text", "classes"), [("21", (21,)), ("31,21", (21, 31)), (" 21 ; 31 21", (21, 31)), ("09,45", (9, 45))]
)
def test_nice_classes_are_read(text: str, classes: tuple[int, ...]) -> None:
    assert nice_classes(text) == classes


@pytest.mark.parametrize("text", ["", "0", "46", "-5", "21.5", "21abc", "²", "٣", "21,,x", "9" * 5000])
def test_what_is_no_nice_class_is_refused_not_guessed_at(text: str) -> None:
    with pytest.raises(InputError, match="no list of Nice classes"):
        nice_classes(text)


def test_what_can_stand_in_a_brief_is_listed(run: Run) -> None:
    """Codes of ISO 3166-1 and ISO 639-1; 45 classes (Nice Classification)."""
    done = run("brief", "help")
    assert done.returncode == 0, done.stderr
    told = " ".join(done.stdout.split())
    assert all(text in told for text in ("Germany DE", "United States US", "German de", "45 ", "playful", "markets: "))
    assert max(map(len, done.stdout.splitlines())) <= 80


def test_a_name_in_place_of_a_file_is_met_with_the_option_that_was_meant(run: Run) -> None:
    done = run("screen", "Hillift")
    assert done.returncode == 2
    assert "Hillift: there is no such file. To screen the name itself: --name Hillift" in done.stderr
