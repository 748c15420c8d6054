"""Closeness of sound: properties, and one pair against many."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.pronunciation import align, pronounce, sound_similarity
from namescreen.pronunciation.alignment import phone_weights
from namescreen.pronunciation.alignment_batch import sound_similarities
from namescreen.pronunciation.articulatory_features import difference, percent_differences
from namescreen.pronunciation.phones import VOWEL_LETTERS, code_of

CODES = st.text(alphabet=sorted(percent_differences()), max_size=14)


@given(CODES, CODES)
def test_symmetric_and_within_range(a: str, b: str) -> None:
    assert sound_similarity(a, b) == sound_similarity(b, a)
    assert 0.0 <= sound_similarity(a, b) <= 1.0


@given(CODES, CODES)
def test_one_is_for_the_same_sound_alone(a: str, b: str) -> None:
    assert sound_similarity(a, a) == 1.0
    if a != b:
        assert sound_similarity(a, b) < 1.0


@given(CODES, st.lists(CODES, min_size=1, max_size=40))
def test_many_at_once_equal_one_by_one(code: str, codes: list[str]) -> None:
    many = sound_similarities(code, codes)
    assert many.shape == (len(codes),)
    assert many.tolist() == pytest.approx([sound_similarity(code, other) for other in codes], abs=1e-9)


def test_no_codes_give_no_values() -> None:
    assert sound_similarities("klOraks", []).shape == (0,)


def test_batches_longer_than_one_piece_keep_their_order() -> None:
    codes = ["klOraks"[: at % 8] + "nim" * (at % 3) for at in range(9000)]
    many = sound_similarities("klOraks", codes)
    for at in (0, 1, 4095, 4096, 4097, 8999):
        assert many[at] == sound_similarity("klOraks", codes[at])


@given(CODES, CODES)
@settings(max_examples=50)
def test_the_cost_is_the_cheapest_of_all_alignments(a: str, b: str) -> None:
    """Against a plain recursive statement of the same definition, in fractions instead of whole numbers."""
    a, b = a[:5], b[:5]
    weights_a, weights_b = phone_weights(a), phone_weights(b)
    table = percent_differences()

    def cheapest(i: int, j: int) -> float:
        ways = []
        if i:
            ways.append(cheapest(i - 1, j) + weights_a[i - 1])
        if j:
            ways.append(cheapest(i, j - 1) + weights_b[j - 1])
        if i and j:
            cost = table[a[i - 1]][b[j - 1]] / 100
            ways.append(cheapest(i - 1, j - 1) + cost * (weights_a[i - 1] + weights_b[j - 1]))
        return min(ways, default=0.0)

    whole = sum(weights_a) + sum(weights_b)
    plain = 1 - cheapest(len(a), len(b)) / whole if whole else 1.0
    syllables = [sum(letter in VOWEL_LETTERS for letter in code) for code in (a, b)]
    rhythm = 1 - 0.1 * abs(syllables[0] - syllables[1]) / max(1, *syllables)
    assert sound_similarity(a, b) == pytest.approx(plain * rhythm)


def _said(word: str) -> str:
    return pronounce(word, 1)[0].code


@pytest.mark.parametrize(
    ("name", "closer", "farther"),
    [
        ("planter", "plantar", "painter"),
        ("quick", "kwik", "quack"),
        ("fonix", "phonics", "sonics"),
        ("bat", "pat", "cat"),  # one feature (voice) against two (voice and place)
        ("table", "cable", "maple"),
        ("lite", "light", "late"),
        ("carat", "karat", "cart"),
    ],
)
def test_ears_agree(name: str, closer: str, farther: str) -> None:
    """Everyday judgements; common practice, no source."""
    assert sound_similarity(_said(name), _said(closer)) > sound_similarity(_said(name), _said(farther))


def test_a_first_sound_weighs_more_than_a_later_one() -> None:
    assert sound_similarity("nimb", "kimb") < sound_similarity("bmin", "bmik")


@given(
    st.sampled_from(["planter", "kettle", "willow", "zest", "quill"]), st.sampled_from(["plaster", "kennel", "pillow"])
)
def test_an_alignment_uses_every_sound_once_and_in_order(one: str, other: str) -> None:
    a, b = pronounce(one)[0].phones, pronounce(other)[0].phones
    steps = align(a, b)
    assert tuple(x for x, _, _ in steps if x) == a
    assert tuple(y for _, y, _ in steps if y) == b
    for x, y, cost in steps:
        assert cost == (round(difference(x, y), 2) if x and y else 1.0)


def test_an_alignment_explains_the_closeness() -> None:
    a, b = pronounce("planter")[0].phones, pronounce("plants")[0].phones
    weights = {("a", at): weight for at, weight in enumerate(phone_weights(code_of(a)))}
    weights |= {("b", at): weight for at, weight in enumerate(phone_weights(code_of(b)))}
    spent, i, j = 0.0, 0, 0
    for x, y, cost in align(a, b):
        spent += cost * ((weights["a", i] if x else 0) + (weights["b", j] if y else 0))
        i, j = i + bool(x), j + bool(y)
    assert sound_similarity(code_of(a), code_of(b)) == pytest.approx(
        (1 - spent / sum(weights.values())) * (1 - 0.1 / 2)
    )
