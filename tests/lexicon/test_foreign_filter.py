"""What a word may be in other languages is never answered with a language too few."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from namescreen.lexicon import foreign_filter
from namescreen.lexicon.foreign_filter import compound_in, expect_many, guessed_in, listed_in
from namescreen.lexicon.foreign_forms import BITS, COMPOUNDING, bits_of, made_small
from namescreen.lexicon.translation import _asked, _entries, _respelled, compound_parts
from namescreen.native import is_compiled
from namescreen.tables import open_table

ENDINGS = "en er n s ar ces ion itaten idades eien chen tion cken ves rorna oare ons ette euses ita zinho".split()
"""Some that languages have, and such as only look like them."""


@pytest.fixture(autouse=True)
def many_words() -> Iterator[None]:
    before = foreign_filter._ask
    expect_many()
    yield
    foreign_filter._ask = before
    foreign_filter._may_be.cache_clear()


def words() -> list[str]:
    rng = random.Random(7)
    listed = rng.sample([key for key, _ in open_table("foreign_words.tsv").items()], 600)
    parts = rng.sample([key for key, _ in open_table("foreign_parts.tsv").items()], 600)
    letters = ["".join(rng.choices("aeioustnrldkmvzfcy", k=rng.randrange(1, 14))) for _ in range(600)]
    inflected = [word + rng.choice(ENDINGS) for word in (*listed, *letters)]
    compounds = [one + rng.choice(("", "s", "en")) + other for one, other in zip(parts, parts[::-1], strict=True)]
    return [*listed, *letters, *inflected, *compounds, "", "a" * 50, "a" * 120, "βιβλιο"]


def test_no_language_is_missing() -> None:
    for word in words():
        assert not bits_of(_entries(word, _asked(None))) & ~listed_in(word), word
        assert not any(compound_parts(word, code) and not BITS[code] & compound_in(word) for code in COMPOUNDING), word
        guessed = _respelled(word) or any(made_small(word, code) for code in BITS)
        assert guessed_in(word) or not guessed, word


@pytest.mark.skipif(not is_compiled(), reason="installed without a C compiler")
@pytest.mark.parametrize("word", ["brelloquav", "quozzibern", "vremwitch"])
def test_coined_words_are_of_no_language(word: str) -> None:
    assert not compound_in(word)
    assert not listed_in(word)
    assert not guessed_in(word)
