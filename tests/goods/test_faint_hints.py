"""Two hints at the goods are no description, and a list of goods as a whole bars no name that none of its items bars.

Descriptive is what tells a feature of the goods at once; a mark is judged as a whole (TMEP 1209.03(d), 1209.01(a)). The
names are our own; common practice, no source."""

from __future__ import annotations

import pytest

from namescreen import distinctiveness
from namescreen.goods import Distinctiveness, distinctiveness_by_item
from namescreen.goods.distinctiveness import Distinctiveness as Found

PICKLES = "mustard; hot sauce; relishes; pickled vegetables"
BARRED = ("generic", "descriptive")


def _found(name: str, goods: str) -> Found:
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Larder Rocket", PICKLES), ("Larder Comet", PICKLES), ("Pantry Rocket", "pickled vegetables")],
)
def test_two_faint_hints_do_not_add_up_to_a_description(name: str, goods: str) -> None:
    assert _found(name, goods).category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Smoky Rocket", PICKLES), ("Pepper Larder", "hot sauce"), ("Mustard Pantry", "mustard"),
     ("Oak Smoked", "hot sauce"), ("Memory Coil", "mattresses")],
)  # fmt: skip
def test_a_word_that_plainly_describes_still_does_so_beside_a_hint(name: str, goods: str) -> None:
    assert _found(name, goods).category in BARRED


@pytest.mark.parametrize("name", ["Tingleroot", "Thornroot", "Emberroot", "Larder Rocket", "Smoky Mustard", "Relish"])
def test_no_name_is_worse_for_a_list_than_for_the_worst_of_its_items(name: str) -> None:
    whole = distinctiveness_by_item(name, PICKLES)
    assert isinstance(whole, Distinctiveness)
    alone = [_found(name, item).category for item in PICKLES.split("; ")]
    assert (whole.category in BARRED) <= any(category in BARRED for category in alone)


@pytest.mark.parametrize("name", ["Scharf & Fein", "Fein & Mild"])
def test_two_words_of_one_language_bar_elsewhere_only_as_far_as_they_are_understood(name: str) -> None:
    """What the buyers concerned understand counts (Court of Justice, C-421/04, Matratzen Concord; from memory), and a
    word of another language is no misspelling of an English one."""
    found = distinctiveness(name, "mustard; hot sauce", markets=("GB", "DE", "ES"))
    assert isinstance(found, Distinctiveness)
    stands = {one.market: one.category in BARRED for one in found.markets}
    assert (stands["DE"], stands["GB"], stands["ES"]) == (True, False, False)
