"""Dictionaries in the format of dictd, the DICT servers of RFC 2229: an .index beside a .dict or .dict.dz.

The index has one line an entry: headword, offset and length of its text, numbers in base 64 with the digits
of RFC 2045 (A is 0, / is 63) and the highest digit first, as dictd's dictfmt(1) describes. A .dict.dz is a
gzip file whose extra field ``RA`` lists the sizes of chunks that can be decompressed on their own
(dictzip(1)); a plain gzip file is read too.
"""

from __future__ import annotations

import gzip
import re
import struct
import zlib
from collections.abc import Callable
from functools import cached_property
from pathlib import Path

from namescreen.errors import InputError, Problem

from ..lexicon.language_codes import LANGUAGES, code
from .headwords import Headword, headwords
from .meanings import Meaning

__all__ = ["Dictd", "dictd_dictionaries", "number", "open_dictd"]

_DIGITS = {digit: value for value, digit in enumerate(
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/")}  # fmt: skip
_LONGEST_ENTRY = 1 << 14  # bytes read of an entry
_LONGEST_TEXT = 1 << 28  # bytes that a gzipped dictionary may have when it is unpacked
_LONGEST_MEANING = 80  # characters shown of an entry; the first senses stand first
_SENSES = 3


def number(text: str) -> int:
    """A base-64 number of an index: ``BA`` is 64. Raises ValueError for another character."""
    value = 0
    for digit in text:
        if digit not in _DIGITS:
            raise ValueError(f"{text!r} is not a base-64 number")
        value = value * 64 + _DIGITS[digit]
    return value


class Dictd:
    """One dictionary; opened on first use. The language of its headwords is taken from its file name
    (``freedict-deu-eng`` is German with meanings in English) unless given."""

    def __init__(self, index: Path, language: str | None = None) -> None:
        self._index_path = index
        tags = [code(part) for part in re.split(r"[-_.]", index.name.removesuffix(".index"))]
        known = [tag for tag in tags if tag in LANGUAGES or tag == "en"]
        self._language = code(language) if language else (known[0] if known else "")
        self.in_english = bool(language) or len(known) < 2 or known[1] == "en"

    @property
    def name(self) -> str:
        """The dictionary's file name without its ending."""
        return self._index_path.name.removesuffix(".index")

    @property
    def languages(self) -> frozenset[str]:
        """The language of the headwords, or none if the file name does not say."""
        return frozenset({self._language}) if self._language else frozenset()

    def meanings(self, letters: str, language: str) -> tuple[Meaning, ...]:
        """See `Dictionary`. Raises `InputError` if the files are damaged."""
        if language not in self.languages:
            return ()
        found: dict[Meaning, None] = {}
        for head, offset, length in self._headwords(letters):
            text = self._text(offset, length)
            meaning = _first_senses(text)
            if meaning and not re.search("…|^-|-$", _headword(text)):  # a part of a word is no word
                found[Meaning(_headword(text) or head, meaning)] = None
        return tuple(found)

    @cached_property
    def _headwords(self) -> Callable[[str], list[Headword]]:
        return headwords(self._index_path)

    @cached_property
    def _body(self) -> _Body:
        base = str(self._index_path).removesuffix(".index")
        for path in (Path(base + ".dict.dz"), Path(base + ".dict")):
            if path.is_file():
                return _Body(path)
        raise InputError(Problem("has neither .dict nor .dict.dz beside it", "Put the files together",
                                 str(self._index_path)))  # fmt: skip

    def _text(self, offset: str, length: str) -> str:
        try:
            start, size = number(offset), number(length)
        except ValueError as error:
            raise InputError(Problem(f"is damaged ({error})", "Fetch it again", str(self._index_path))) from None
        return self._body.read(start, min(size, _LONGEST_ENTRY)).decode("utf-8", errors="replace")


class _Body:
    """The texts of a dictionary, plain, gzipped, or in dictzip's chunks."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._data = path.read_bytes()
        self._chunks: list[int] | None = None
        self._chunk_length = 0
        if self._data[:2] == b"\x1f\x8b":
            self._read_header()

    def read(self, offset: int, length: int) -> bytes:
        if self._chunks is None:
            return self._data[offset : offset + length]
        first, last = offset // self._chunk_length, (offset + length - 1) // self._chunk_length
        try:
            parts = b"".join(
                zlib.decompressobj(-zlib.MAX_WBITS).decompress(self._data[start:end], self._chunk_length)
                for start, end in zip(self._chunks[first : last + 1], self._chunks[first + 1 : last + 2], strict=False)
            )
        except zlib.error as error:
            raise InputError(Problem(f"is damaged ({error})", "Fetch it again", str(self._path))) from error
        start = offset - first * self._chunk_length
        return parts[start : start + length]

    def _read_header(self) -> None:
        """Find the chunks (RFC 1952 for the header's flags); without them, decompress it all."""
        sizes: tuple[int, ...] = ()
        try:
            flags, at = self._data[3], 10
            if flags & 4:
                extra = self._data[12 : 12 + struct.unpack_from("<H", self._data, 10)[0]]
                at = 12 + len(extra)
                while len(extra) >= 4:
                    length = struct.unpack_from("<H", extra, 2)[0]
                    if extra[:2] == b"RA":
                        _, self._chunk_length, count = struct.unpack_from("<3H", extra, 4)
                        sizes = struct.unpack_from(f"<{count}H", extra, 10)
                    extra = extra[4 + length :]
            for flag in (8, 16):  # the file's name and a comment, each ended by a zero byte
                if flags & flag:
                    at = self._data.index(b"\0", at) + 1
            at += 2 * bool(flags & 2)
            if not sizes:
                with gzip.open(self._path) as whole:
                    self._data = whole.read(_LONGEST_TEXT + 1)
                if len(self._data) > _LONGEST_TEXT:
                    raise ValueError(f"it holds more than {_LONGEST_TEXT:,} bytes")
                return
            if not self._chunk_length:
                raise ValueError("its chunks have no length")
        except (struct.error, IndexError, ValueError, OSError, EOFError, zlib.error) as error:
            problem = Problem(f"is not a whole gzip file ({error})", "Fetch it again", str(self._path))
            raise InputError(problem) from error
        self._chunks = [at]
        for size in sizes:
            self._chunks.append(self._chunks[-1] + size)


def dictd_dictionaries(folder: Path) -> list[Dictd]:
    """The dictionaries in a folder whose headwords are in a known language and whose meanings are in
    English."""
    if not folder.is_dir():
        return []
    found = [Dictd(index) for index in sorted(folder.glob("*.index"))]
    return [one for one in found if one.languages and "en" not in one.languages and one.in_english]


def open_dictd(path: Path, language: str | None = None) -> list[Dictd]:
    """The dictionary at a path (its .index, .dict or .dict.dz), or those in a folder.

    Raises `InputError` where there is none, or its language is neither given nor in its name.
    """
    if path.is_dir():
        found = dictd_dictionaries(path)
        if not found:
            raise InputError(
                Problem("holds no dictd dictionary with meanings in English", "Give another folder", str(path))
            )
        return found
    index = path.parent / f"{re.sub(r'[.](index|dict|dict[.]dz)$', '', path.name)}.index"
    if not index.is_file():
        raise InputError(Problem("is not there", "Give the path of a dictd .index", str(index)))
    one = Dictd(index, language)
    if not one.languages:
        raise InputError(Problem("does not say its language", "Name it like freedict-deu-eng.index", str(index)))
    return [one]


def _headword(text: str) -> str:
    """The headword as the entry's first line spells it, before sounds, grammar and punctuation."""
    return re.split(r"\s*[/<\[{(]", text.splitlines()[0] if text else "", maxsplit=1)[0].strip(" !?.:")


def _first_senses(text: str) -> str:
    """The first senses of an entry, each by its first line of words, without grammar, remarks and
    examples."""
    senses: list[str] = []
    wanted = True
    for line in text.splitlines()[1:]:
        numbered = re.match(r"\s*\d+[.)]\s*", line)
        wanted = wanted or bool(numbered)
        bare = _bare(line[numbered.end() :] if numbered else line)
        if wanted and bare:
            senses += [part for part in (part.strip(" .") for part in re.split("[,;]", bare)) if part]
            wanted = False  # what follows in this sense explains it, often in its own language
    return ", ".join(dict.fromkeys(senses[:_SENSES]))[:_LONGEST_MEANING]


def _bare(line: str) -> str:
    """A line of an entry without what stands in brackets; empty for remarks, examples and
    cross-references."""
    kept = re.sub(r"<[^>]*>|\[[^\]]*\]|\{[^}]*\}", "", line)
    while (fewer := re.sub(r"\([^()]*\)", "", kept)) != kept:
        kept = fewer
    kept = " ".join(kept.split())
    remark = kept.startswith(('"', "-")) or re.match(r"(see|note|synonym|antonym)s?\b.*:", kept, re.I)
    return "" if remark else kept
