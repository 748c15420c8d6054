"""The compiled library is used only where it is whole, and never reads outside the arrays it is given."""

from __future__ import annotations

import ast
import hashlib
import logging
import shutil
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import namescreen.native
from namescreen.closeness.features import Word
from namescreen.closeness.weights import Weight
from namescreen.native import choose, is_compiled
from namescreen.native.library import load
from namescreen.register.bigram_index import bigrams, bigrams_of, pack_bigrams
from namescreen.register.packing import pack_inverse, pack_lists, pack_strings
from namescreen.register.phoneme_index import Codes, code_arrays
from namescreen.register.string_index import OrderedTexts, Strings
from namescreen.register.word_search import word_search

FOLDER = Path(namescreen.native.__file__).parent
needs_compiled = pytest.mark.skipif(not is_compiled(), reason="installed without a C compiler")


def test_it_imports_nothing_else_of_namescreen() -> None:
    for path in FOLDER.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom):
                assert node.level < 2, path
                assert not (node.module or "").startswith("namescreen"), path
            elif isinstance(node, ast.Import):
                assert not any(name.name.startswith("namescreen") for name in node.names), path


def copied(folder: Path, keep: float = 1.0, flip: int | None = None) -> Path:
    contents = bytearray((FOLDER / "native.so").read_bytes())
    if flip is not None:
        contents[flip] ^= 1
    (folder / "native.so").write_bytes(contents[: int(len(contents) * keep)])
    shutil.copy(FOLDER / "native.sha256", folder)
    return folder / "native.so"


@needs_compiled
@pytest.mark.parametrize(
    ("keep", "flip"), [(0.0, None), (0.3, None), (0.9, None), (0.999, None), (1.0, 5), (1.0, 9000)]
)
def test_a_damaged_library_is_left_alone_with_a_remark(
    keep: float, flip: int | None, tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    assert load(copied(tmp_path, keep, flip)) is None
    [record] = caplog.records
    assert record.levelno == logging.WARNING
    assert "does not match its checksum" in record.getMessage()
    assert "Install namescreen again" in record.getMessage()


def test_what_is_no_library_is_left_alone_with_a_remark(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    path = tmp_path / "native.so"
    path.write_bytes(b"no library")
    path.with_suffix(".sha256").write_text(hashlib.sha256(b"no library").hexdigest())
    assert load(path) is None
    assert len(caplog.records) == 1


def test_without_a_library_or_its_checksum_nothing_is_said(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    assert load(tmp_path / "native.so") is None
    (tmp_path / "native.so").write_bytes(b"left from an older build")
    assert load(tmp_path / "native.so") is None
    assert not caplog.records


@needs_compiled
def test_a_process_with_a_cut_library_gives_the_same_results(tmp_path: Path) -> None:
    package = tmp_path / "namescreen"
    shutil.copytree(FOLDER.parent, package, ignore=shutil.ignore_patterns("__pycache__", "wordlists"))
    (tmp_path / "wordlists").symlink_to(FOLDER.parent.parent / "wordlists")
    command = [sys.executable, "-m", "namescreen", "compare", "Mossling", "Mosslin"]
    outputs = []
    for keep in (1.0, 0.4):
        copied(package / "native", keep)
        done = subprocess.run(
            command, cwd=tmp_path, env={"PYTHONPATH": str(tmp_path)}, capture_output=True, check=False
        )
        assert done.returncode == 0, done.stderr
        assert (b"does not match" in done.stderr) == (keep < 1)
        outputs.append(done.stdout)
    assert outputs[0] == outputs[1]


def test_one_path_is_chosen() -> None:
    assert choose(lambda library: "compiled", lambda: "python") == ("compiled" if is_compiled() else "python")


WORDS = ["moss", "kiln", "herbwick", "rn", "cornbarn", "clay", "ivy", "planter"]
CODES = [("mos",), ("kiln", "kIln"), ("hRbwik",), ("R",), ("kOrnbArn",), ("klE",), ("IvY",), ("plantR", "planter")]


def arrays_of_a_register() -> dict[str, np.ndarray]:
    arrays: dict[str, np.ndarray] = {}
    ordered = sorted(WORDS, key=lambda word: (len(word), word))
    pack_strings(arrays, "word", ordered)
    pack_bigrams(arrays, "word")
    pack_strings(arrays, "lemma", sorted(WORDS), lengths=False)
    code_arrays(arrays, "word_code", CODES)
    rows = [[at, (at + 3) % len(WORDS)] for at in range(len(WORDS))]
    pack_lists(arrays, "row_words", rows)
    pack_inverse(arrays, "postings", arrays["row_words"], arrays["row_words_start"], len(WORDS))
    arrays["row_name"], arrays["name_rows"] = np.split(np.arange(2 * len(rows) + 1, dtype=np.uint32), [len(rows)])
    return arrays


WHOLE = arrays_of_a_register()


@settings(max_examples=400, deadline=None)
@given(st.sampled_from(sorted(WHOLE)), st.data())
def test_arrays_of_a_forged_register_end_in_an_error_or_an_answer(name: str, data: st.DataObject) -> None:
    """Whatever stands in an array, and however long it is: no crash, which would end this process."""
    arrays = {key: value.copy() for key, value in WHOLE.items()}
    forged = arrays[name]
    if data.draw(st.booleans()):
        arrays[name] = forged[: data.draw(st.integers(0, len(forged)))]
    elif len(forged):
        limit = int(np.iinfo(forged.dtype).max)
        for at in data.draw(st.lists(st.integers(0, len(forged) - 1), min_size=1, max_size=4)):
            forged[at] = data.draw(st.integers(0, limit) | st.integers(0, 300).map(lambda n: min(n, limit)))
    everything = np.arange(len(WORDS))
    try:
        strings, codes, lemmas = Strings(arrays, "word"), Codes(arrays, "word_code"), OrderedTexts(arrays, "lemma")
        alike, search = bigrams(arrays, "word"), word_search(arrays)
        for text in ("moss", "herbwik", "corn"):
            alike.sharing_most(bigrams_of(text), 3)
            strings.measures(text, everything)
            strings.find(text)
            lemmas.find([text])
        for reading in ("mos", "kOrn"):
            codes.sound_measures((reading,), everything)
            search.estimates(Word("herbwik", (reading,), Weight(0.5, 0.5)), everything)
            search.holding(everything, np.full(len(WORDS), 9, np.uint16), None, 3)
    except (IndexError, ValueError):
        pass
