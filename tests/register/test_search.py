"""A search finds what scoring every mark finds, with the same numbers."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from namescreen.closeness import compare, features, score
from namescreen.register import Register, open_prepared, prepare, read_register
from namescreen.register import nearest as nearest_module

WORDS = (
    "herb garden water moss stone clay pot planter leaf root sprig well spring green blue lantern kiln basil mint "
    "thyme urban balcony window sill drip wick bloom petal fern cedar willow river brook harbour copper silver"
).split()
ENDINGS = ("ora", "eta", "ling", "wick", "veil", "ify", "ia", "en")


def invented_marks(count: int, seed: int = 3) -> list[str]:
    rng = random.Random(seed)
    marks = ["HERBWICK", "HERB WICK", "Herb-Wick Ltd", "4EVER GREEN", "THE MOSS", "CAFÉ FERN", "ΓΛΑΣΤΡΑ", "X"]
    while len(marks) < count:
        words = [rng.choice(WORDS) for _ in range(rng.choice((1, 2, 2, 3)))]
        if rng.random() < 0.4:
            words[0] = words[0][: rng.randrange(2, 6)] + rng.choice(ENDINGS)
        marks.append(" ".join(words).upper())
    return marks


NAMES = ("Herbwick", "Hydra Pore", "Urbanwell", "Mossling", "Mintara", "Forever Green", "Kopper Fern", "the", "γλαστρα")


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
    return [score(own, features(mark)).overall for mark in marks]


@pytest.mark.parametrize("name", NAMES)
def test_the_closest_are_those_of_scoring_every_mark(name: str, marks: list[str], prepared: Path) -> None:
    [(found, hits)] = open_prepared(prepared).search([name], top=20)
    assert found == name
    scores = every_score(name, marks)
    expected = sorted(range(len(marks)), key=lambda at: (-round(scores[at], 9), at))
    expected = [at for at in expected if scores[at] > 0][:20]
    assert [hit.mark.text for hit in hits] == [marks[at] for at in expected]
    assert [hit.overall for hit in hits] == pytest.approx([scores[at] for at in expected], abs=1e-9)


@pytest.mark.parametrize("name", NAMES)
def test_in_two_stages_the_closest_is_never_lost(
    name: str, marks: list[str], prepared: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(nearest_module, "FEW_WORDS", 0)
    [(_, hits)] = open_prepared(prepared).search([name], top=10)
    scores = every_score(name, marks)
    if max(scores) > 0.3:
        assert hits[0].overall == pytest.approx(max(scores), abs=1e-9)
    for hit in hits:
        assert hit.overall == pytest.approx(compare(name, hit.mark.text).overall, abs=1e-9)


def test_a_list_read_on_the_fly_and_a_prepared_one_give_the_same(marks: list[str], prepared: Path) -> None:
    read = read_register(prepared.with_name("marks.txt"))
    for (_, one), (_, other) in zip(read.search(NAMES, 5), open_prepared(prepared).search(NAMES, 5), strict=True):
        assert [(hit.mark.text, hit.overall) for hit in one] == [(hit.mark.text, hit.overall) for hit in other]


def test_many_processes_give_what_one_gives(prepared: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    names = [*NAMES, *map(str.title, WORDS[:12])]
    one = [(name, [hit.mark for hit in hits]) for name, hits in open_prepared(prepared).search(names, 5)]
    monkeypatch.setattr("namescreen.register.search.WORTH_A_POOL", 1)
    monkeypatch.setattr("namescreen.register.search.processors", lambda: 2)
    calls: list[tuple[int, int | None]] = []
    several = open_prepared(prepared).search(names, 5, progress=lambda done, total: calls.append((done, total)))
    assert [(name, [hit.mark for hit in hits]) for name, hits in several] == one
    assert calls[-1] == (len(names), len(names))


def test_equal_marks_stand_in_the_order_of_the_register(tmp_path: Path) -> None:
    (tmp_path / "m.csv").write_text("mark,number\n" + "".join(f"HERBWICK,{n}\n" for n in range(300)) + "MOSS,x\n")
    register = read_register(tmp_path / "m.csv")
    [(_, hits)] = register.search(["Herbwick"], top=50)
    assert [hit.mark.number for hit in hits] == [str(n) for n in range(50)]
    assert {hit.overall for hit in hits} == {1.0}


def test_filters_hold_in_a_search(tmp_path: Path) -> None:
    (tmp_path / "m.csv").write_text(
        "mark,class,status\nHERBWICK,9,dead\nHERBWICK,21,live\nHERBWICKS,9,live\nHERBWICKEN,,\n"
    )

    def found(register: Register) -> list[tuple[str, tuple[int, ...]]]:
        [(_, hits)] = register.search(["Herbwick"], top=3)
        return [(hit.mark.text, hit.mark.classes) for hit in hits]

    whole = read_register(tmp_path / "m.csv")
    assert found(whole)[:2] == [("HERBWICK", (9,)), ("HERBWICK", (21,))]
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
