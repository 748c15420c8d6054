"""A search finds what scoring every mark finds, with the same numbers."""

from __future__ import annotations

import random
import zlib
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from namescreen.closeness import Features, features, score
from namescreen.closeness.many import ManyScores
from namescreen.closeness.telling import ADDED, telling_part
from namescreen.marks import Mark
from namescreen.marks.columns import MarkWriter, Selection
from namescreen.register import Register, open_prepared, prepare, read_register, rescoring, word_scores
from namescreen.register.bigram_index import bigrams, pack_bigrams
from namescreen.register.packing import pack_strings
from namescreen.register.string_index import Texts
from namescreen.text import tokenize

WORDS = (
    "herb garden water moss stone clay pot planter leaf root sprig well spring green blue lantern kiln basil mint "
    "thyme urban balcony window sill drip wick bloom petal fern cedar willow river brook harbour copper silver"
).split()
ENDINGS = ("ora", "eta", "ling", "wick", "veil", "ify", "ia", "en")


def invented_marks(count: int, seed: int = 3) -> list[str]:
    rng = random.Random(seed)
    marks = ["HERBWICK", "HERB WICK", "Herb-Wick Ltd", "4EVER GREEN", "THE MOSS", "THE VASIL", "CAFÉ FERN", "ΓΛΑΣΤΡΑ"]
    marks.append("X")
    while len(marks) < count:
        words = [rng.choice(WORDS) for _ in range(rng.choice((1, 2, 2, 3)))]
        if rng.random() < 0.4:
            words[0] = words[0][: rng.randrange(2, 6)] + rng.choice(ENDINGS)
        marks.append(" ".join(words).upper())
    return marks


NAMES = ("Herbwick", "Hydra Pore", "Urbanwell", "Mossling", "Mintara", "Forever Green", "Kopper Fern", "the", "γλαστρα",
         "the basil", "the bosk")  # fmt: skip


@pytest.fixture(scope="module")
def marks() -> list[str]:
    return invented_marks(250)


@pytest.fixture(scope="module")
def prepared(marks: list[str], tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("prepared")
    (folder / "marks.txt").write_text("\n".join(marks), "utf-8")
    prepare(folder / "marks.txt", folder / "marks.nsr")
    return folder / "marks.nsr"


def every_score(name: str, marks: list[str]) -> list[float]:
    own = features(name)
    every = [score(own, features(mark)).overall for mark in marks]
    bare = [telling_part(mark, "") for mark in marks]
    told = [ADDED * score(own, features(rest)).overall if rest != mark else 0.0
            for mark, rest in zip(marks, bare, strict=True)]  # fmt: skip
    return list(map(max, every, told))


@pytest.mark.parametrize("name", NAMES)
def test_the_closest_are_those_of_scoring_every_mark(name: str, marks: list[str], prepared: Path) -> None:
    [(found, hits)] = open_prepared(prepared).search([name], top=20)
    assert found == name
    scores = every_score(name, marks)
    closest = sorted(range(len(marks)), key=lambda at: (-round(scores[at], 9), at))
    groups: dict[tuple[str, ...], list[int]] = {}
    for at in closest:
        if scores[at] > 0:
            groups.setdefault(tokenize(marks[at]), []).append(at)
    expected = list(groups.values())[:20]
    assert [[mark.text for mark in hit.marks] for hit in hits] == [[marks[at] for at in group] for group in expected]
    assert [hit.overall for hit in hits] == pytest.approx([scores[group[0]] for group in expected], abs=1e-9)


@pytest.mark.parametrize("name", NAMES)
def test_in_two_stages_the_closest_is_never_lost(
    name: str, marks: list[str], prepared: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(word_scores, "FEW_WORDS", 0)
    monkeypatch.setattr(rescoring, "SCORED_WHOLE", 0)
    monkeypatch.setattr(rescoring, "LEAST_FETCHED", 120)
    [(_, hits)] = open_prepared(prepared).search([name], top=10)
    scores = every_score(name, marks)
    if max(scores) > 0.4:
        assert hits[0].overall == pytest.approx(max(scores), abs=1e-9)
    found = every_score(name, [hit.mark.text for hit in hits])  # `compare` leaves out legal forms later
    assert [hit.overall for hit in hits] == pytest.approx(found, abs=1e-9)


def test_a_list_read_on_the_fly_and_a_prepared_one_give_the_same(marks: list[str], prepared: Path) -> None:
    read = read_register(prepared.with_name("marks.txt"))
    for (_, one), (_, other) in zip(read.search(NAMES, 5), open_prepared(prepared).search(NAMES, 5), strict=True):
        assert [(hit.mark.text, hit.overall) for hit in one] == [(hit.mark.text, hit.overall) for hit in other]


def test_many_processes_give_what_one_gives(prepared: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    names = [*NAMES, *map(str.title, WORDS[:12])]
    one = [(name, [hit.mark for hit in hits]) for name, hits in open_prepared(prepared).search(names, 5)]
    monkeypatch.setattr("namescreen.register.search.WORTH_A_POOL", 1)
    monkeypatch.setattr("namescreen.processes.processors", lambda: 2)
    calls: list[tuple[int, int | None]] = []
    several = open_prepared(prepared).search(names, 5, progress=lambda done, total: calls.append((done, total)))
    assert [(name, [hit.mark for hit in hits]) for name, hits in several] == one
    assert calls[-1] == (len(names), len(names))


def test_marks_of_the_same_words_take_one_place_in_the_order_of_the_register(tmp_path: Path) -> None:
    rows = "".join(f"{('HERBWICK', 'Herbwick!', 'herbwick')[n % 3]},{n}\n" for n in range(1, 301))
    (tmp_path / "m.csv").write_text("mark,number\n" + rows + "MOSS,x\nHERBWICKS,y\n")
    register = read_register(tmp_path / "m.csv")
    [(_, hits)] = register.search(["Herbwick"], top=2)
    assert [(hit.mark.number, len(hit.marks)) for hit in hits] == [("1", 300), ("y", 1)]
    assert [mark.number for mark in hits[0].marks] == [str(n) for n in range(1, 301)]
    assert hits[0].overall == 1.0


def test_equally_close_names_stand_in_the_order_of_the_register_whatever_the_last_bit(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bits = {"quoinmoss": 0.7 + 2e-16, "mossquoin": 0.7, "zedmoss": 0.7 - 2e-16, "herb": 0.2}

    def scores(compared: rescoring.Compared, name: Features, *_: object) -> ManyScores:
        names = compared.index.names.texts(compared.candidates.places)
        return ManyScores(*[np.array([bits[name] for name in names])] * len(ManyScores._fields))

    monkeypatch.setattr(rescoring.Compared, "scores", scores)
    for marks in (["MOSS QUOIN", "QUOIN MOSS", "ZED MOSS"], ["ZED MOSS", "QUOIN MOSS", "MOSS QUOIN"]):
        (tmp_path / "m.txt").write_text("\n".join(["HERB", *marks, marks[0]]))
        register = read_register(tmp_path / "m.txt")
        for top in (1, 2, 3):
            [(_, hits)] = register.search(["Moss"], top=top)
            assert [hit.mark.text for hit in hits] == marks[:top]
            assert {hit.overall for hit in hits} == {0.7}


SPELLINGS = ("HERBWICK", "Herbwick", "herb-wick", "HERB WICK", "MOSSLING", "Moss Ling", "THYME WELL", "ZZYX", "HERBWIK")
STATUSES = ("unknown", "live", "dead", "pending", "opposed")
listed = st.lists(
    st.tuples(st.sampled_from(SPELLINGS), st.sampled_from(["", "9", "21", "9;21"]), st.sampled_from(STATUSES)),
    min_size=1,
    max_size=40,
)


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(listed, st.sampled_from([(), (9,), (21,)]), st.booleans())
def test_every_close_mark_is_accounted_for_once(
    tmp_path: Path, rows: list[tuple[str, str, str]], classes: tuple[int, ...], live: bool
) -> None:
    lines = [f"{text},{n},{cls},{state}" for n, (text, cls, state) in enumerate(rows, 1)]
    (tmp_path / "m.csv").write_text("\n".join(["mark,number,class,status", *lines]))
    register = read_register(tmp_path / "m.csv", classes=classes or None, live_only=live)
    counted = [
        str(n) for n, (_, cls, state) in enumerate(rows, 1)
        if not (live and state == "dead") and (not classes or not cls or str(classes[0]) in cls.split(";"))
    ]  # fmt: skip
    assert [mark.number for mark in register.marks] == counted
    [(_, hits)] = register.search(["Herbwick"], top=50)
    own = features("Herbwick")
    close = [n for n in counted if score(own, features(rows[int(n) - 1][0])).overall > 0]
    found = [mark.number for hit in hits for mark in hit.marks]
    assert sorted(found, key=int) == close
    assert len({tokenize(hit.mark.text) for hit in hits}) == len(hits)
    for hit in hits:
        numbers = [int(mark.number) for mark in hit.marks]
        assert numbers == sorted(numbers)
        assert {tokenize(mark.text) for mark in hit.marks} == {tokenize(hit.mark.text)}
        assert {mark.text for mark in hit.marks} <= set(SPELLINGS)


marked = st.lists(st.tuples(st.sets(st.sampled_from([9, 21, 36]), max_size=2), st.sampled_from(STATUSES)))


@given(marked, st.sets(st.sampled_from([9, 21, 36]), max_size=1), st.integers(1, 8))
def test_the_foremost_are_live_and_of_every_class(
    rows: list[tuple[set[int], str]], classes: set[int], most: int
) -> None:
    writer = MarkWriter()
    for number, (stated, status) in enumerate(rows, 1):
        writer.add(Mark("HERBWICK", number=str(number), classes=tuple(sorted(stated)), status=status))
    chosen = Selection(writer.columns(), np.arange(len(rows))).prioritized(classes, most)
    numbers = [int(mark.number) for mark in chosen]
    assert numbers == sorted(set(numbers))
    assert len(numbers) == min(most, len(rows))
    left = [(number, *row) for number, row in enumerate(rows, 1) if number not in numbers]
    if any(mark.status == "dead" for mark in chosen):
        assert all(status == "dead" for _, _, status in left)
    kinds = {frozenset(stated) for stated, status in rows if status != "dead"}
    of_interest = {kind for kind in kinds if not classes or not kind or kind & classes}
    taken = {frozenset(mark.classes) for mark in chosen if mark.status != "dead"}
    assert len(taken) == min(most, len(kinds))
    assert len(taken & of_interest) == min(most, len(of_interest))


def test_marks_of_one_name_are_decoded_only_as_far_as_they_are_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "m.txt").write_text("HERBWICK\n" * 20_000)
    register = read_register(tmp_path / "m.txt")
    register.index()
    blocks: list[int] = []
    decompress = zlib.decompress

    def counted(data: bytes) -> bytes:
        blocks.append(len(data))
        return decompress(data)

    monkeypatch.setattr("zlib.decompress", counted)
    [(_, [hit])] = register.search(["Herbwick"], top=50)
    assert (len(hit.marks), len(blocks)) == (20_000, 0)
    assert (hit.mark.line, len(blocks)) == (1, 1)
    assert len(hit.marks.prioritized([21], 50)) == 50
    assert len(blocks) <= 51


def test_filters_hold_in_a_search(tmp_path: Path) -> None:
    (tmp_path / "m.csv").write_text(
        "mark,class,status\nHERBWICK,9,dead\nHERBWICK,21,live\nHERBWICKS,9,live\nHERBWICKEN,,\n"
    )

    def found(register: Register) -> list[tuple[str, tuple[int, ...]]]:
        [(_, hits)] = register.search(["Herbwick"], top=3)
        return [(hit.mark.text, hit.mark.classes) for hit in hits]

    whole = read_register(tmp_path / "m.csv")
    assert found(whole)[:2] == [("HERBWICK", (9,)), ("HERBWICKS", (9,))]
    assert found(whole.only(classes=[21])) == [("HERBWICK", (21,)), ("HERBWICKEN", ())]
    assert found(whole.only(live_only=True))[:2] == [("HERBWICK", (21,)), ("HERBWICKS", (9,))]
    assert found(read_register(tmp_path / "m.csv", classes=[9], live_only=True))[0] == ("HERBWICKS", (9,))


def test_hits_explain_themselves_when_asked(prepared: Path) -> None:
    [(_, hits)] = open_prepared(prepared).search(["Herbwick"], top=1)
    assert hits[0].closeness.overall == 1.0
    assert hits[0].closeness.reasons


def test_names_without_words_and_names_like_nothing(prepared: Path) -> None:
    register = open_prepared(prepared)
    for name in ("!!!", "", "ъъъъъъъъ"):
        [(_, hits)] = register.search([name])
        assert all(hit.overall > 0 for hit in hits)


@pytest.mark.parametrize("part", ["ana", "aa", "a", "å", "nan", "zz"])
def test_strings_with_a_part_are_found_where_it_seems_to_stand_across_two(part: str) -> None:
    arrays: dict[str, np.ndarray[Any, np.dtype[np.generic]]] = {}
    strings = ["xan", "anab", "aaa", "bananas", "ana", "åna"]
    pack_strings(arrays, "word", strings)
    pack_bigrams(arrays, "word")
    found = Texts(arrays, "word").with_part(part, bigrams(arrays, "word").with_rarest(part))
    assert [strings[at] for at in found] == [one for one in strings if one.startswith(part) or one.endswith(part)]


def test_a_name_that_says_the_same_in_another_language_is_among_those_scored(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Words that look and sound unlike it, and mean what it means, are found by their meaning."""
    monkeypatch.setattr(rescoring, "SCORED_WHOLE", 0)
    monkeypatch.setattr(rescoring, "LEAST_FETCHED", 12)
    others = invented_marks(200)
    (tmp_path / "m.txt").write_text("\n".join([*others, "LUNE ROUGE", "GUMMISTEMPEL"]), "utf-8")
    register = read_register(tmp_path / "m.txt")
    for name, mark in (("Red Moon", "LUNE ROUGE"), ("Rubber Stamp", "GUMMISTEMPEL")):
        [(_, hits)] = register.search([name], top=3)
        assert mark in [hit.mark.text for hit in hits]


def test_words_that_go_together_are_compared_however_unlike_they_look(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(word_scores, "LIKELY", 1)
    (tmp_path / "m.txt").write_text("\n".join(["PEPPER", "QUORUM", "SALTS", *invented_marks(60)]), "utf-8")
    index = read_register(tmp_path / "m.txt").index()
    compared = word_scores.WordScores(features("Salt").segmentations[0][0], index).places
    assert {"pepper", "salts"} <= set(index.words.texts(compared))
    assert len(compared) < len(index.words) / 2
