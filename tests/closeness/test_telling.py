"""Words for the goods in a name cost next to nothing: anyone may add them (TMEP 1207.01(b)(iii) and (viii))."""

from __future__ import annotations

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from namescreen.closeness import compare
from namescreen.closeness.telling import ADDED, NOT_IDENTICAL, may_tell_less, telling_part
from namescreen.closeness.territory_words import _LANDS
from namescreen.lexicon import kinds, lexicon
from namescreen.text import parse

LAMPS = "brass desk lamps; lamp shades"


@pytest.mark.parametrize(
    ("name", "goods", "part"),
    [
        ("Orrelin Lamp", LAMPS, "orrelin"), ("The Orrelin Desk Lamps", LAMPS, "orrelin"),
        ("Lamps of Orrelin", LAMPS, "orrelin"), ("The Orrelin Lamp Company", LAMPS, "orrelin"),
        ("Brass Lamp", LAMPS, "Brass Lamp"), ("Orrelin", LAMPS, "Orrelin"),
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
    assert longer.telling == (min(alone.appearance, NOT_IDENTICAL), min(alone.sound, NOT_IDENTICAL))
    assert longer.appearance < longer.telling[0]  # a reader sees and hears the word
    assert compare(f"{name} {added}", mark, name_goods="insurance").overall < longer.overall


FORMS = (
    "Ltd", "Ltd.", "Limited", "LLC", "Inc.", "Company", "& Co", "& Co. KG", "GmbH", "GmbH & Co. KG", "UG", "AG", "S.A.",
    "SAS", "SARL", "S.à r.l.", "S.p.A.", "SpA", "Srl", "B.V.", "NV", "AB", "ApS", "A/S", "Oy", "Sp. z o.o.", "Lda",
    "Pty Ltd", "Brand", "Brands", "(TM)", "®",
)  # fmt: skip
"""Legal forms of some states and the signs of trade marks (from memory)."""


@pytest.mark.parametrize(
    "said_more", [*(f"{{}} {form}" for form in FORMS), "The {}", "{}, The", "The {} Company", "La {}"]
)
@pytest.mark.parametrize("written", ["Tugboat", "Tug Boat", "Tug-Boat"])
def test_what_says_nothing_of_the_maker_changes_next_to_nothing(said_more: str, written: str) -> None:
    for name, mark in (("Tugboat", said_more.format(written)), (said_more.format(written), "Tug Boat")):
        found = compare(name, mark)
        assert found.overall >= ADDED
        assert max(found.sound, found.telling[1]) in (NOT_IDENTICAL, 1.0)


@pytest.mark.parametrize("domain", ["tugboat.com", "tugboat.co.uk", "www.tugboat.de", "https://tug-boat.eu/"])
def test_the_ending_of_a_domain_changes_next_to_nothing(domain: str) -> None:
    assert compare("Tugboat", domain).overall >= ADDED


TERRITORIES = (
    "UK", "(UK) Ltd", "U.K.", "Ltd (Europe)", "Europe", "International", "Int'l Inc.", "Worldwide", "Global", "US",
    "USA", "North America Inc.", "Deutschland GmbH", "France SAS", "Nederland B.V.", "España", "S.p.A. Italia",
    "Australia Pty Ltd", "United States of America", "Great Britain", "EMEA", "North Korea", "South Korea Ltd",
    "Northern Ireland", "West Germany", "North Macedonia", "South East Asia", "Central Europe", "South Africa", "DACH",
)  # fmt: skip
"""Where a business trades, as names of companies have it: Companies House leaves UK, GB, Great Britain and the like out
of account at the end of a name where it asks whether two are the same (SI 2015/17, schedule 3; from memory)."""


@pytest.mark.parametrize("territory", TERRITORIES)
@pytest.mark.parametrize("written", ["Tugboat", "Tug Boat", "Orrelin"])
def test_a_territory_of_business_changes_next_to_nothing(written: str, territory: str) -> None:
    assert compare(written, f"{written} {territory}").overall >= ADDED
    assert compare(f"The {written} Company {territory}", written).overall >= ADDED


@pytest.mark.parametrize(
    "name",
    ["Tugboat Paris", "Tugboat Bavaria", "Tugboat House", "Little Italy", "New England", "Bank of England",
     "Orrelin of Scotland", "Captain America", "Kathy Ireland", "Air France", "Green Europe", "Orrelin R Us",
     "ORRELIN US", "Going Global", "Europe", "Latin America", "International", "Best International",
     "Orrelin Bank UK"],
)  # fmt: skip
def test_a_place_that_is_no_territory_stays_and_so_does_one_in_a_phrase(name: str) -> None:
    assert telling_part(name, "") == name


@pytest.mark.parametrize(
    "name", ["Treasure Island", "Kestrel Island", "Rhode Island", "Kestrel Rhode Island", "North Korea", "West Germany",
             "North Macedonia", "Northern Europe", "Blaues Dach", "Tugboat Dach", "TUGBOAT DACH", "Tugboat New England"]
)  # fmt: skip
def test_a_word_besides_is_no_territory_and_a_land_is_never_cut_in_part(name: str) -> None:
    assert telling_part(name, "") == name


@pytest.mark.parametrize("land", sorted(_LANDS - {"americas", "european", "nordic", "nordics"}))
def test_a_land_is_no_word_for_anything_else_first(land: str) -> None:
    senses = lexicon().senses(land, labelled=False)
    assert not senses or senses[0].domain == "noun.location" or "place" in kinds(land)


def test_a_place_keeps_names_close_and_apart() -> None:
    assert 0.6 < compare("Tugboat", "Tugboat Paris").overall < ADDED


@pytest.mark.parametrize(
    "name", [*(f"Tugboat {form}" for form in (*FORMS, *TERRITORIES)), "The Tugboat", "Tugboat, The"]
)
def test_what_may_tell_less_is_seen_beforehand(name: str) -> None:
    assert telling_part(name, "") in ("tugboat", "Tugboat ®")  # a sign is no word
    assert may_tell_less(name, parse(name).words) or name.endswith("®")


@pytest.mark.parametrize(
    "name", ["The Limited", "The Company", "Blue Spa", "Ltd", "Limited Edition", "This Is", "La Paz", "A B", "Is"]
)
def test_a_name_of_such_words_alone_keeps_them_and_so_do_words_that_are_none(name: str) -> None:
    assert telling_part(name, "") == name


SAY_NOTHING = (*FORMS, *TERRITORIES, "The", "Les", "&", "of")


@given(st.lists(st.sampled_from(SAY_NOTHING), min_size=1, max_size=4).map(" ".join))
@example("Brands UK")
@example("Brand International")
@example("GmbH UK")
def test_a_name_of_any_such_words_is_compared_and_keeps_what_can_be_read(name: str) -> None:
    part = telling_part(name, "")
    assert part
    assert part == name or may_tell_less(name, parse(name).words)
    assert telling_part(part, "") or not parse(name).words
    assert 0 <= compare(name, "Tugboat").overall < ADDED


@pytest.mark.parametrize("name", ["Brand UK", "Brands International", "Brands", "GmbH UK", "Ltd Europe", "LLC USA"])
def test_a_form_and_a_territory_alone_stay(name: str) -> None:
    assert telling_part(name, "") == name


@given(st.text("abeilmnorstu", min_size=4, max_size=8), st.text("abeilmnorstu", min_size=4, max_size=8))
def test_it_is_symmetric_and_never_makes_names_less_close(one: str, other: str) -> None:
    assume(telling_part(f"{one} lamp", "lamps") == one)  # not a table lamp
    forth, back = (compare(a, b, name_goods="lamps") for a, b in ((f"{one} lamp", other), (other, f"{one} lamp")))
    assert forth.overall == pytest.approx(back.overall)
    assert forth.overall >= ADDED * compare(one, other, name_goods="lamps").overall - 1e-9


@pytest.mark.parametrize("form", ["Ltd", "Limited", "LLC", "Inc.", "GmbH", "S.p.A.", "Pty Ltd", "® Ltd"])
def test_without_a_legal_form_all_numbers_are_of_the_rest(form: str) -> None:
    found, alone = compare("Tugboat", f"Tug Beat {form}"), compare("Tugboat", "Tug Beat")
    assert (found.appearance, found.sound, found.meaning) == (alone.appearance, alone.sound, alone.meaning)
    assert found.overall == pytest.approx(ADDED * alone.overall)
    assert found.compared == ("Tugboat", "tug beat")
    assert found.as_written is not None
    assert found.as_written[0] < found.appearance
    assert found.telling == (0.0, 0.0)  # nothing is told twice
    assert found.reasons[0].startswith("Compared without")
    assert found.reasons[1:] == alone.reasons


def test_names_that_differ_in_their_legal_form_alone_are_all_but_identical_and_never_identical() -> None:
    found = compare("Tugboat", "Tug Boat Ltd")
    assert found.appearance == found.sound == NOT_IDENTICAL
    same = compare("Tugboat Ltd", "Tug Boat Ltd")
    assert (same.appearance, same.sound, same.overall, same.compared) == (1.0, 1.0, 1.0, None)


def test_words_that_are_seen_and_heard_are_told_with_the_figures_of_the_rest() -> None:
    found = compare("Orrelin Lamp", "Orellin Ltd", name_goods=LAMPS)
    seen, heard = found.telling
    assert f"the rest is {seen:.2f} alike in appearance and {heard:.2f} in sound" in found.reasons[0]
