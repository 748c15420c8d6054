"""Lists as people type them: numbers and signs before each line, goods after a dash, a colon or in brackets."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.errors import InputError
from namescreen.marks import read_marks, read_names

WARES = {"Brindle Oak": "belts", "Tannery Row": "bags, of leather", "Morrow-Fell": "wallets - of calf"}


def _read(tmp_path: Path, lines: list[str], name: str = "typed.txt") -> tuple[dict[str, str], str]:
    (tmp_path / name).write_text("\n".join(lines) + "\n", "utf-8")
    marks, _, problems = read_marks([tmp_path / name])
    return {mark.text: mark.goods for mark in marks}, "\n".join(map(str, problems))


@pytest.mark.parametrize("before", ["{}. ", "{}) ", "({}) ", "{}: ", "{} - ", "  {}.  "])
@pytest.mark.parametrize("first", [1, 8])
def test_numbers_that_count_the_lines_are_no_part_of_the_marks(tmp_path: Path, before: str, first: int) -> None:
    found, remarks = _read(tmp_path, [before.format(at) + name for at, name in enumerate(WARES, first)])
    assert list(found) == list(WARES)
    assert "numbered" in remarks
    names, _ = read_names(tmp_path / "typed.txt")
    assert names == tuple(WARES)


@pytest.mark.parametrize(
    ("lines", "names"),
    [
        (["1. Alder", "2. Birch", "Cedar"], ["Alder", "Birch", "Cedar"]),
        (["Cedar", "2) Alder", "7) Birch"], ["Cedar", "Alder", "Birch"]),
        (["Alder", "Birch", "3. Cedar"], ["Alder", "Birch", "Cedar"]),
        (["(4) Alder", "Birch", "(9) 99 Cedars", "Dogwood"], ["Alder", "Birch", "99 Cedars", "Dogwood"]),
        (["Alder", "7. Himmel", "Birch"], ["Alder", "7. Himmel", "Birch"]),  # not the place of its line
        (["Alder", "2 - Birch", "3 - Cedar"], ["Alder", "2 - Birch", "3 - Cedar"]),
    ],
)
def test_numbers_before_some_lines_only(tmp_path: Path, lines: list[str], names: list[str]) -> None:
    found, remarks = _read(tmp_path, lines)
    assert list(found) == names
    assert ("read as a sign of the list" in remarks) == (names != lines)
    assert read_names(tmp_path / "typed.txt")[0] == tuple(names)


@pytest.mark.parametrize("lines", [["3. Alder", "1. Birch"], ["1. Alder"], ["7 - Alder", "7 - Birch"]])
def test_other_numbers_stay_and_are_asked_about(tmp_path: Path, lines: list[str]) -> None:
    found, remarks = _read(tmp_path, lines)
    assert list(found) == lines
    assert "begin with a number" in remarks


@pytest.mark.parametrize(
    "lines", [["4 Winds", "5 Alders"], ["1815", "1816"], ["Route 66", "Quay 7"], ["2.5 Degrees", "3.5"]]
)
def test_numbers_of_a_name_are_left_alone(tmp_path: Path, lines: list[str]) -> None:
    found, remarks = _read(tmp_path, lines)
    assert list(found) == lines
    assert not remarks


PARTED = ["{} - {}", "{} – {}", "{} — {}", "{}: {}", "{} = {}", "{} ({})"]


@pytest.mark.parametrize("parted", [*PARTED, "{},{}", "{}; {}", "{}|{}"])
@pytest.mark.parametrize("before", ["", "- ", "{}. "])
def test_goods_beside_a_name_are_asked_about(tmp_path: Path, parted: str, before: str) -> None:
    lines = [before.format(at) + parted.format(*pair) for at, pair in enumerate(WARES.items(), 1)]
    _, remarks = _read(tmp_path, lines)
    assert "each line was read whole, as one mark" in remarks
    assert "If what follows it are goods, say so in a first line: mark" in remarks


@pytest.mark.parametrize("parted", [*PARTED, "{},{}", "{};{}"])
@pytest.mark.parametrize("heads", [("mark", "goods"), ("Name", "Goods"), ("brand", "products")])
@pytest.mark.parametrize("before", ["", "{}. "])
def test_a_first_line_says_that_goods_follow(tmp_path: Path, parted: str, heads: tuple[str, str], before: str) -> None:
    wares = {name: f'"{goods}"' if len(parted) < 6 else goods for name, goods in WARES.items()}
    lines = [before.format(at) + parted.format(*pair) for at, pair in enumerate(wares.items(), 1)]
    found, remarks = _read(tmp_path, [parted.format(*heads), *lines, "Alone"])
    if before:  # a line without its number: then numbers are no signs of the list
        found, remarks = _read(tmp_path, [parted.format(*heads), *lines])
        assert found == WARES
    else:
        assert found == {**WARES, "Alone": ""}
        assert not remarks


@pytest.mark.parametrize("lines", [["Fox & Son (Leeds)", "Alder", "Birch"], ["Semi-Detached", "Well-Worn"],
                                   ["Mark - Twain", "Alder", "Birch"], ["a:b", "c:d"]])  # fmt: skip
def test_signs_in_a_few_names_ask_nothing(tmp_path: Path, lines: list[str]) -> None:
    found, remarks = _read(tmp_path, lines)
    assert list(found) == lines
    assert not remarks


@pytest.mark.parametrize(("head", "rows"), [(";", ","), (",", ";"), ("\t", ","), (",", "\t"), ("|", ";")])
@pytest.mark.parametrize("ending", ["csv", "txt"])
def test_rows_are_parted_as_they_are_where_the_first_line_is_not(
    tmp_path: Path, head: str, rows: str, ending: str
) -> None:
    quoted = [f'{name}{rows}"{goods}{rows} more"' for name, goods in WARES.items()]
    found, remarks = _read(tmp_path, [f"Name{head}Goods", *quoted], f"typed.{ending}")
    assert set(found) == set(WARES)
    assert all(found[name].startswith(goods) for name, goods in WARES.items())
    assert "the first line is parted by" in remarks


def test_commas_in_goods_part_nothing_where_the_rows_are_parted_as_the_first_line(tmp_path: Path) -> None:
    found, remarks = _read(tmp_path, ["Name;Goods", *(f"{name};{goods}, and more" for name, goods in WARES.items())])
    assert found == {name: f"{goods}, and more" for name, goods in WARES.items()}
    assert not remarks


def test_columns_without_a_name_are_told_so(tmp_path: Path) -> None:
    for head in (",goods", ",", '"",""'):
        with pytest.raises(InputError, match=r"its columns are \(one without a name\), .*Call one of them mark"):
            _read(tmp_path, [head, "Brindle Oak,belts"], "typed.csv")


def test_a_line_as_long_as_a_file_takes_no_time(tmp_path: Path) -> None:
    found, _ = _read(tmp_path, ["a - (" * 100_000, "Alder"])
    assert "Alder" in found


MIXED = [
    "Brindle Oak - belts", "Alder", "3. Tannery Row: bags, of leather", "Cedar", "Morrow Fell (wallets)", "6. Dogwood",
]  # fmt: skip


def test_signs_that_are_mixed_in_a_list_are_asked_about_and_settled_by_one_first_line(tmp_path: Path) -> None:
    found, remarks = _read(tmp_path, MIXED)
    assert "3 lines hold a dash, a colon or something in brackets" in remarks
    assert "mark - goods" in remarks
    assert "Dogwood" in found
    found, remarks = _read(tmp_path, ["mark - goods", *MIXED])
    assert found == {
        "Brindle Oak": "belts", "Alder": "", "Tannery Row": "bags, of leather", "Cedar": "", "Morrow Fell": "wallets",
        "Dogwood": "",
    }  # fmt: skip
    assert "read whole" not in remarks
