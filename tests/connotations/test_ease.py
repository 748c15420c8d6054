"""How readily speakers of a language say and spell a name."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.connotations import LANGUAGES, Ease, ease
from namescreen.lexicon.letter_patterns import (
    consonant_groups,
    has_model,
    letter_cost,
    percentile,
    share_above,
    train,
)
from namescreen.outcome import NotChecked


def eased(name: str, language: str) -> Ease:
    found = ease(name, language)
    assert isinstance(found, Ease), found
    return found


@pytest.mark.parametrize(
    ("name", "language", "letters"),
    [("Kwex", "it", ("k", "w", "x")), ("Velora", "it", ()), ("Wako", "es", ("w", "k")), ("Quiso", "es", ()),
     ("Vexa", "pl", ("v", "x")), ("Ñandu", "de", ("ñ",)), ("Xerwa", "tr", ("x", "w"))],
)  # fmt: skip
def test_letters_not_at_home(name: str, language: str, letters: tuple[str, ...]) -> None:
    assert eased(name, language).foreign_letters == letters


@pytest.mark.parametrize(
    ("name", "language", "cluster"),
    [("Thryva", "fi", "thr-"), ("Quench", "es", "-nch"), ("Strand", "it", "-nd"), ("Psaltic", "de", None)],
)
def test_consonants_not_usual_in_their_place(name: str, language: str, cluster: str | None) -> None:
    found = eased(name, language).hard_clusters
    assert (cluster in found) if cluster else not found


@pytest.mark.parametrize(
    ("name", "language", "pair"),
    [("Jora", "de", ("j", "like y in yes")), ("Jora", "es", ("j", "like ch in loch")),
     ("Wendo", "de", ("w", "like v in vine")), ("Zena", "de", ("z", "like ts in cats")),
     ("Cilla", "it", ("c", "like ch in chip")), ("Volt", "de", ("v", "like f in fine")),
     ("Hera", "fr", ("h", "silent")), ("Sora", "hu", ("s", "like sh in ship"))],
)  # fmt: skip
def test_letters_read_otherwise(name: str, language: str, pair: tuple[str, str]) -> None:
    assert pair in eased(name, language).otherwise


def test_the_likely_reading_is_written_out() -> None:
    assert eased("Jora Velt", "de").likely_reading == "joʁa vɛlt".replace("ɛ", "e").replace("v", "f")


@pytest.mark.parametrize("language", [tag for tag in LANGUAGES if has_model(tag)])
def test_the_percentile_is_within_its_range_and_orders(language: str) -> None:
    assert 0 <= percentile("qxzvwk", language) <= 5
    assert 0 <= percentile("", language) <= 100


@settings(max_examples=100, deadline=None)
@given(st.text(alphabet="abcdefghijklmnopqrstuvwxyzäéñ ", max_size=20), st.sampled_from(["de", "it", "pl"]))
def test_any_name_is_judged_or_refused(name: str, language: str) -> None:
    found = ease(name, language)
    if isinstance(found, Ease):
        assert 0 <= found.percentile <= 100
        assert found == ease(name.upper(), language) or not name.isascii()
    else:
        assert isinstance(found, NotChecked)


def test_what_cannot_be_judged_says_why() -> None:
    for name, language, why in (
        ("Kona", "ru", "script"),
        ("Kona", "sw", "no letter patterns"),
        ("🌱", "de", "no letters"),
    ):
        found = ease(name, language)
        assert isinstance(found, NotChecked)
        assert why in found.because


def test_other_scripts_are_judged_in_their_own() -> None:
    assert eased("Церва", "ru").likely_reading == "tserva"


def test_a_model_is_least_surprised_by_its_own_words() -> None:
    entries = train(["lana", "lena", "lina", "mana", "mena", "mina", "nala", "nela"] * 3)
    assert letter_cost("lana", entries.get) < letter_cost("xqwz", entries.get)
    assert letter_cost("mela", entries.get) < letter_cost("aeln", entries.get)


def test_shares_and_groups() -> None:
    quantiles = [float(value) for value in range(101)]
    assert share_above(-1.0, quantiles) == 100
    assert share_above(1000.0, quantiles) == 0
    assert share_above(50.0, quantiles) == 50
    assert consonant_groups("strand") == ["<str", ">nd"]
    assert consonant_groups("altra") == ["=ltr"]
    assert consonant_groups("brr") == []


def test_look_alike_letters_are_judged_as_what_they_pass_for() -> None:
    assert eased("Bаsil", "fr") == eased("Basil", "fr")  # the first name has a Cyrillic а
    assert isinstance(ease("Bаsil", "el"), NotChecked)
