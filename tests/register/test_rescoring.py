"""What a search works out for many names at once is what is worked out for each pair, in every aspect."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import numpy as np
import pytest

from namescreen.closeness import Word, features, goods_words, kept, score
from namescreen.closeness.features import segmentations_of
from namescreen.closeness.said_abroad import language_read_in, reading_abroad
from namescreen.closeness.sound import phoneme_codes_of
from namescreen.closeness.vocabulary import (
    english_choices,
    everyday_in_others,
    has_senses,
    is_known,
    is_surname,
    meant,
    said_in_english,
    segmentations,
)
from namescreen.closeness.weights import own_weight, word_weight
from namescreen.closeness.word_meaning import meanings
from namescreen.closeness.word_similarity import _similarity, word_similarity
from namescreen.register import Wanted, read_register
from namescreen.register.candidates import Candidates
from namescreen.register.rescoring import Compared, best_of
from namescreen.register.word_entries import read_words
from namescreen.text import parse

MARKS = (
    "Herbwick", "Herb Wick", "The Moss", "Warm Feather", "Boligrafo Verde", "Green Pen", "La Luna", "Moon",
    "Kronometer",
    "Chronometer", "Hot Water", "Cold Water", "Antenatal", "Mated Assault", "Ended", "Baker Street", "Schmidt Taylor",
    "Smith", "4ever Green", "Forever Green", "Forêt Tranquille", "Quiet Forest", "Modern", "Modem", "X", "γλαστρα",
    "Kitchen Knife Kitchen", "Cats", "Cat", "Zarvoplanter", "Thymepot", "Thyme Pot", "Dimond", "Diamond",
    "Lily of the Valley", "Paper Tiger", "Tiger", "Maria", "William", "Sunny Jug", "Beautiful", "Velmora Pots",
    "Copo de Nieve", "Snowflake", "Velmoras", "Tigers",
)  # fmt: skip
NAMES = (*MARKS, "Parenthood Rodin", "Herbwik", "Kräutertee", "Crazy", "Pen", "Feather Bed", "Reignsip", "a",
         "Tiger Lily", "Mary's", "Guglielmo", "Sun Jug", "Beauty", "Velmora")  # fmt: skip


@pytest.mark.parametrize("goods", ["", "planters and kitchen herbs, pens"])
def test_many_names_at_once_score_as_each_does(goods: str, tmp_path: Path) -> None:
    (tmp_path / "marks.txt").write_text("\n".join(MARKS), encoding="utf-8")
    register = read_register(tmp_path / "marks.txt")
    index = register.index()
    places = np.diff(index.name_marks.start.astype(np.int64)).nonzero()[0]  # moss stands there for The Moss alone
    marks = [register.columns[int(index.name_marks.one(place)[0])].text for place in places.tolist()]
    described = goods_words(goods)
    kept._similarities.clear()
    kept._meanings.clear()
    each = {
        pair: (score(features(pair[0]), features(pair[1])), score(*(features(one, described) for one in pair)))
        for pair in product(NAMES, marks)
    }
    seen = apart = 0

    for name in NAMES:
        own = features(name, described)
        compared = Compared(index, features(name), Candidates(index, places))
        found = compared.scores(own, goods=described)
        some = compared.scores(own, np.arange(len(places))[::3], described)
        for aspect, every in zip(some, found, strict=True):
            assert aspect == pytest.approx(every[::3], abs=1e-12, nan_ok=True)
        best = {one.place: one for one in best_of(index, features(name), places, Wanted(name, 99, goods=goods))}
        further = compared.scored_alone(own, np.arange(len(marks)))
        for at, mark in enumerate(marks):
            without_goods, for_goods = each[name, mark]
            wanted = [np.nan if value is None else value for value in for_goods]
            if at in further:
                apart += 1
            else:
                assert [aspect[at] for aspect in found] == pytest.approx(wanted, abs=1e-12, nan_ok=True), (name, mark)
            if places[at] in best:
                one = best[int(places[at])]
                assert one.overall == pytest.approx(without_goods.overall, abs=1e-9)
                assert one.scores == pytest.approx(for_goods, abs=1e-12)
            seen += 1
    assert seen == len(NAMES) * len(MARKS)
    assert 0 < apart < seen / 10


PADDED = ("The Mirovo Company Ltd", "Mirovo UK", "www.mirovo.com", "La Mirovo", "Mirovo GmbH & Co. KG", "Miro Vo Ltd")
"""One name of our own, with what says nothing of the maker."""


def test_marks_that_are_a_name_but_for_what_says_nothing_come_first(tmp_path: Path) -> None:
    closer = [f"{first}i{second}o{third}o" for first in "MNBPT" for second in "rlndt" for third in "vbwfm"]
    closer.remove("Mirovo")
    others = [f"{one} {number}" for number, one in enumerate(["River Stone", "Hot Water", "Paper Tiger"] * 300)]
    (tmp_path / "marks.txt").write_text("\n".join([*closer, *others, *PADDED]), encoding="utf-8")
    register = read_register(tmp_path / "marks.txt")
    for name in ("Mirovo", "Miro Vo"):
        ((_, hits),) = register.search([name], top=len(PADDED))
        assert {hit.mark.text for hit in hits} == {*PADDED}
        assert all(hit.overall >= 0.97 * 0.95 for hit in hits)
    names = register.index()
    bare = names.bare[names.bare != np.arange(len(names.names))]
    assert [*names.names.texts(np.unique(bare).astype(np.int64))] == ["mirovo", "mirovo"]  # as one word, and as two
    only = register.only(classes=[9])
    assert {hit.mark.text for hit in next(only.search(["Mirovo"], top=len(PADDED)))[1]} == {*PADDED}


def test_of_marks_that_say_more_only_those_that_count_are_found(tmp_path: Path) -> None:
    rows = [f'"{mark}",{9 if at % 2 else 25}' for at, mark in enumerate(PADDED)]
    (tmp_path / "marks.csv").write_text("\n".join(["mark,classes", *rows, "Mirovo,25"]), encoding="utf-8")
    ((_, hits),) = read_register(tmp_path / "marks.csv").only(classes=[9]).search(["Mirovo"])
    assert {hit.mark.text for hit in hits} == {*PADDED[1::2]}


def test_what_a_search_keeps_of_pairs_of_words_is_what_closeness_works_out(tmp_path: Path) -> None:
    (tmp_path / "marks.txt").write_text("\n".join(MARKS), encoding="utf-8")
    index = read_register(tmp_path / "marks.txt").index()
    for name in NAMES:
        best_of(index, features(name), np.arange(len(index.names)), Wanted(name, 99))
    both = kept._meanings, kept._similarities
    for each in both:
        for compared in each.values():
            compared.get("")
    meant, similar = ({word: dict(compared._found) for word, compared in each.items()} for each in both)
    for each in both:
        each.clear()
    meanings.cache_clear()
    _similarity.cache_clear()
    seen = 0
    for word, others in meant.items():
        for other, found in others.items():
            wanted = meanings(word, other) or (np.nan, np.nan)
            assert found == pytest.approx(wanted, abs=1e-12, nan_ok=True), (word, other)
            seen += 1
    for word, others in similar.items():
        for other, found in others.items():
            pair = (Word(one, phoneme_codes_of(one), word_weight(one)) for one in (word, other))
            assert found == pytest.approx(word_similarity(*pair), abs=1e-12), (word, other)
            seen += 1
    assert seen > 5_000


def test_what_is_kept_of_pairs_of_words_stays_small() -> None:
    for number in range(100):
        kept.keep_meanings("often", lambda number=number: [(f"other{number}", (0.5, 0.5))])  # type: ignore[misc]
    assert kept.kept_meaning("other99", "often") == (0.5, 0.5)
    assert kept.kept_meaning("often", "other0") is None
    for number in range(20):
        kept.keep_meanings(
            "often", lambda at=number: [(f"word{at} {each}", (0.1, 0.1)) for each in range(1_000)]  # type: ignore[misc]
        )
        kept.kept_meaning("often", "none")
    assert len(kept._meanings["often"]._found) <= kept.MOST + 1_000
    for number in range(1_000):
        kept.keep_meanings(f"own{number}", list)
    assert len(kept._meanings) <= kept.MOST_COMPARED + 1


def test_what_is_kept_of_words_and_names_is_what_closeness_works_out(tmp_path: Path) -> None:
    names = ["Quendamoss Bergkristall", "Frschh Kettlewell", "Jassmin 22", "Gummistempel", "Smith Haus", "ΓΛΑΣΤΡΑ", "x",
             "Luna Bergkristall"]  # fmt: skip
    (tmp_path / "m.txt").write_text("\n".join(names), "utf-8")
    index = read_register(tmp_path / "m.txt").index()
    words = index.words.texts(np.unique(index.row_words.values))
    kept.forget()
    features.cache_clear()
    of_a_word = is_known, meant, has_senses, is_surname, said_in_english, english_choices, own_weight, phoneme_codes_of
    for cached in (*of_a_word, reading_abroad, language_read_in):
        cached.cache_clear()
    worked_out = read_words(words)
    said = {word: said_in_english(word) for word in words}
    abroad = {word: reading_abroad(word) for word in words}
    everyday = {word: everyday_in_others(word) for word in words}
    everyday_in_others.cache_clear()
    for cached in (said_in_english, reading_abroad, language_read_in):
        cached.cache_clear()
    said_so = {name: features(name).phoneme_codes for name in names}
    divisions = [segmentations_of(parse(name).words, segmentations) for name in names]
    index.keep(np.arange(len(index.names)))
    for word, one in zip(words, worked_out, strict=True):
        found, facts = kept.kept_word(word), one.facts
        assert found is not None
        assert found[:3] == (one.codes, one.weight, facts.english)
        assert said_in_english(word) == said[word]
        assert reading_abroad(word) == abroad[word]
        assert everyday_in_others(word) == everyday[word]
        flags = facts.has_senses, facts.is_known, facts.is_surname, facts.is_meant, facts.is_said, facts.is_abroad
        assert found[3:] == (*flags, facts.is_everyday_abroad)
    for name, ways in zip(names, divisions, strict=True):
        assert kept.kept_name(parse(name).words) == (ways, said_so[name])
