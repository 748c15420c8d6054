"""Lists kept ready in the user's cache folder: known by their contents, bounded, and never needed."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.register import read_register
from namescreen.register.loading import WORTH_CACHING


def test_a_long_list_is_kept_once_prepared_and_known_by_its_contents(tmp_path: Path, own_cache: Path) -> None:
    path = tmp_path / "long.txt"
    path.write_text("\n".join(f"HERBWICK {n}" for n in range(WORTH_CACHING)))
    [(_, first)] = read_register(path).search(["Herbwick 5"], 3)
    [kept] = (own_cache / "lists").glob("*.nsr")
    assert kept.parent.stat().st_mode & 0o777 == 0o700
    again = read_register(path)
    assert again.path == kept
    [(_, second)] = again.search(["Herbwick 5"], 3)
    assert [hit.mark for hit in first] == [hit.mark for hit in second]
    kept.write_bytes(kept.read_bytes()[:-100])  # a damaged one is made again
    assert read_register(path).path is None
    path.write_text(path.read_text() + "\nMOSS")
    assert read_register(path).path is None


def test_so_many_lists_are_kept_and_small_ones_take_no_place_of_large_ones(
    tmp_path: Path, own_cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("namescreen.register.loading.MOST_CACHED", {"prepared": 1, "lists": 2})
    monkeypatch.setattr("namescreen.register.loading.LARGE", 1_000)
    for count in (100, WORTH_CACHING, WORTH_CACHING + 1, WORTH_CACHING + 2, WORTH_CACHING - 1):
        path = tmp_path / f"{count}.txt"
        path.write_text("\n".join(f"HERBWICK {n}" for n in range(count)))
        read_register(path).index()
    kept = [len(list((own_cache / folder).glob("*.nsr"))) for folder in ("prepared", "lists")]
    assert kept == [1, 2]


def test_another_program_of_the_same_version_prepares_a_list_anew(
    tmp_path: Path, own_cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "long.txt"
    path.write_text("\n".join(f"HERBWICK {n}" for n in range(WORTH_CACHING)))
    read_register(path).index()
    assert read_register(path).path is not None
    monkeypatch.setattr("namescreen.register.loading._installed", lambda: "another")
    assert read_register(path).path is None


def test_a_cache_that_cannot_be_written_costs_nothing_but_time(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "blocked").write_text("a file where a folder should be")
    monkeypatch.setattr("namescreen.register.store.user_cache", lambda: tmp_path / "blocked")
    path = tmp_path / "long.txt"
    path.write_text("\n".join(f"HERBWICK {n}" for n in range(WORTH_CACHING)))
    [(_, hits)] = read_register(path).search(["Herbwick 5"], 3)
    assert hits[0].mark.text == "HERBWICK 5"
