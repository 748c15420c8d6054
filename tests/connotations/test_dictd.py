"""Dictionaries in dictd's format: small ones of our own invention, in all three shapes, and broken ones."""

from __future__ import annotations

import gzip
import struct
import time
import zlib
from contextlib import suppress
from pathlib import Path

import pytest

from namescreen.connotations import coverage, readings
from namescreen.connotations.dictd import Dictd, number, open_dictd
from namescreen.connotations.meanings import judged
from namescreen.errors import InputError


@pytest.fixture(autouse=True)
def cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A cache of the test's own."""
    folder = tmp_path_factory.mktemp("cache")
    monkeypatch.setenv("XDG_CACHE_HOME", str(folder))
    return folder


DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"
ENTRIES = {
    "00databaseinfo": "A dictionary of invented words.\n",
    "blompf": "blompf /blɔmpf/ <n>\nwatering can, jug\n",
    "töpfling": "Töpfling <masc>\nsmall pot [bot.]\n   Note: rare\n",
    "zwick": "zwick /tsvɪk/\n shit, crap\n",
    "grän": "grän\n",
    "vor": "Vor…\nfront\n",
}


def base64(value: int) -> str:
    digits = DIGITS[value % 64]
    while value := value // 64:
        digits = DIGITS[value % 64] + digits
    return digits


def dictzip(text: bytes, chunk: int = 40) -> bytes:
    """A dictzip file: gzip with the sizes of its chunks in the extra field RA (dictzip(1))."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    chunks = []
    for at in range(0, len(text), chunk):
        chunks.append(packer.compress(text[at : at + chunk]) + packer.flush(zlib.Z_FULL_FLUSH))
    extra = b"RA" + struct.pack("<4H", 6 + 2 * len(chunks), 1, chunk, len(chunks))
    extra += struct.pack(f"<{len(chunks)}H", *map(len, chunks))
    head = b"\x1f\x8b\x08\x0c" + b"\0" * 4 + b"\x02\x03" + struct.pack("<H", len(extra)) + extra + b"small.dict\0"
    return head + b"".join(chunks) + packer.flush() + struct.pack("<2I", zlib.crc32(text), len(text))


def write(folder: Path, shape: str, name: str = "invented-deu-eng") -> Path:
    text, lines = b"", []
    for head, entry in ENTRIES.items():
        lines.append(f"{head}\t{base64(len(text))}\t{base64(len(entry.encode()))}")
        text += entry.encode()
    index = folder / f"{name}.index"
    index.write_text("\n".join(sorted(lines)) + "\n", encoding="utf-8")
    body = {"plain": text, "gzip": gzip.compress(text), "dictzip": dictzip(text)}[shape]
    (folder / f"{name}.dict{'' if shape == 'plain' else '.dz'}").write_bytes(body)
    return index


@pytest.fixture(params=["plain", "gzip", "dictzip"])
def index(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    return write(tmp_path, request.param)


@pytest.mark.parametrize(("text", "value"), [("A", 0), ("B", 1), ("/", 63), ("BA", 64), ("BAA", 4096), ("9n", 3943)])
def test_numbers_of_an_index(text: str, value: int) -> None:
    assert number(text) == value


def test_a_dictzip_file_is_a_gzip_file() -> None:
    text = b"".join(entry.encode() for entry in ENTRIES.values())
    assert gzip.decompress(dictzip(text)) == text


def test_meanings_are_found_by_folded_letters(index: Path) -> None:
    dictionary = Dictd(index)
    assert dictionary.languages == {"de"}
    assert [(m.word, m.text) for m in dictionary.meanings("blompf", "de")] == [("blompf", "watering can, jug")]
    assert [(m.word, m.text) for m in dictionary.meanings("topfling", "de")] == [("Töpfling", "small pot")]
    assert dictionary.meanings("gran", "de") == (), "an entry without a meaning says nothing"
    assert dictionary.meanings("vor", "de") == (), "a part of a word is no word"
    assert dictionary.meanings("blompf", "fr") == ()


def test_readings_use_the_dictionary(index: Path) -> None:
    found = readings("Blompf Zwick", languages=["de"], dictionaries=[index])
    told = {reading.word: reading for reading in found if reading.source == "invented-deu-eng"}
    assert told["blompf"].meaning == "watering can, jug"
    assert told["blompf"].severity == 0
    assert told["zwick"].kind in ("excrement", "vulgar")
    assert told["zwick"].severity >= 2
    assert "invented-deu-eng" in str(coverage(["de"], open_dictd(index))[0])


def test_a_folder_and_a_dict_path_open_too(index: Path) -> None:
    assert [one.name for one in open_dictd(index.parent)] == ["invented-deu-eng"]
    body = next(path for path in index.parent.iterdir() if ".dict" in path.name)
    assert [one.name for one in open_dictd(body)] == ["invented-deu-eng"]


def test_what_is_no_dictionary_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="not there"):
        open_dictd(tmp_path / "none.index")
    with pytest.raises(InputError, match="no dictd dictionary"):
        open_dictd(tmp_path)
    with pytest.raises(InputError, match="language"):
        open_dictd(write(tmp_path, "plain", "words"))
    assert open_dictd(tmp_path / "words.index", "fr")[0].languages == {"fr"}


@pytest.mark.parametrize(
    "contents",
    ["no tabs here\n", "word\tA\n", "word\t!!\tA\n", "word\tA\t!!\n", "word\t\tA\n", "word\tA\t" + "/" * 400 + "\n"],
)
def test_a_damaged_index_is_named_with_its_line(tmp_path: Path, contents: str) -> None:
    index = write(tmp_path, "plain")
    index.write_text(contents, encoding="utf-8")
    with pytest.raises(InputError, match="line 1"):
        Dictd(index).meanings("word", "de")


def test_damaged_texts_are_no_traceback(tmp_path: Path) -> None:
    index = write(tmp_path, "dictzip")
    body = tmp_path / "invented-deu-eng.dict.dz"
    whole = body.read_bytes()
    no_length = whole[:18] + b"\0\0" + whole[20:]  # chunks of no bytes
    for contents in (whole[:2], whole[:3], no_length, whole[:12], b"\x1f\x8b" + b"\0" * 20, whole[:60] + b"\xff" * 200):
        body.write_bytes(contents)
        with pytest.raises(InputError, match=r"invented-deu-eng\.dict\.dz"):
            Dictd(index).meanings("blompf", "de")
    body.unlink()
    with pytest.raises(InputError, match="neither"):
        Dictd(index).meanings("blompf", "de")


def test_any_changed_byte_is_an_answer_or_a_named_file(tmp_path: Path) -> None:
    index = write(tmp_path, "dictzip")
    body = tmp_path / "invented-deu-eng.dict.dz"
    whole = body.read_bytes()
    for place in range(len(whole)):
        for other in (0, 255, whole[place] ^ 1):
            body.write_bytes(whole[:place] + bytes([other]) + whole[place + 1 :])
            with suppress(InputError):
                Dictd(index).meanings("zwick", "de")


def test_an_entry_of_brackets_without_end_takes_no_time(tmp_path: Path) -> None:
    index = write(tmp_path, "plain")
    (tmp_path / "invented-deu-eng.dict").write_text("zwick\n" + "(" * 500_000 + ")" * 500_000)
    index.write_text("zwick\tA\t////\n")
    began = time.monotonic()
    Dictd(index).meanings("zwick", "de")
    assert time.monotonic() - began < 5


def test_meanings_are_rated_as_the_tables_rate_the_same_words() -> None:
    assert judged("watering can") == ("ordinary", 0)
    kind, severity = judged("shit")
    assert kind in ("excrement", "vulgar")
    assert severity == 3
    assert judged("something, shit")[1] == severity - 1
    assert judged("shit [coarse]") == (kind, severity)


def test_headwords_are_prepared_once_and_again_when_the_index_changes(tmp_path: Path, cache: Path) -> None:
    index = write(tmp_path, "plain")
    assert Dictd(index).meanings("blompf", "de")
    prepared = list(cache.rglob("*.tsv"))
    assert len(prepared) == 1
    written = prepared[0].stat().st_mtime_ns
    assert Dictd(index).meanings("blompf", "de")
    assert prepared[0].stat().st_mtime_ns == written
    index.write_text("zwick\tA\tB\n", encoding="utf-8")
    assert not Dictd(index).meanings("blompf", "de")
    assert len(list(cache.rglob("*.tsv"))) == 1


def test_a_damaged_or_unwritable_cache_costs_no_answer(
    tmp_path: Path, cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    index = write(tmp_path, "plain")
    assert Dictd(index).meanings("blompf", "de")
    next(cache.rglob("*.tsv")).write_bytes(b"not a table")
    assert Dictd(index).meanings("blompf", "de")
    blocked = tmp_path / "blocked"
    blocked.write_bytes(b"")
    monkeypatch.setenv("XDG_CACHE_HOME", str(blocked))
    assert Dictd(index).meanings("blompf", "de")
