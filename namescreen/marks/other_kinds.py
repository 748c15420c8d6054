"""Files that are no lists of marks or names, by their endings and contents."""

from __future__ import annotations

import zipfile
from contextlib import suppress
from pathlib import Path

from ..errors import Problem

__all__ = ["KINDS_NOT_READ", "no_list"]

_SHEET = "a spreadsheet (Excel or the like)", "Save it as CSV there (Save as, CSV UTF-8), and give that file"
_LETTER = "a text with layout", "Save the list as plain text, one a line, or as CSV"
_PAGE = "a page or a document", "Copy the list into a text file, one a line, or a CSV"
_PICTURE = "a picture or a recording", "Type the list into a text file, one a line"
_SETTINGS = (
    "settings, such as a naming brief",
    "Give the list itself: text, one a line, or CSV. A brief names its lists in `marks` and is given with --brief",
)
_PROGRAM = "part of a program or its data", "Give the list itself: text, one a line, or CSV"

_KINDS = {
    _SHEET: ".xls .xlsx .xlsm .ods",
    _LETTER: ".doc .docx .odt .rtf",
    _PAGE: ".pdf .html .htm .md",
    _PICTURE: ".png .jpg .jpeg .gif .tif .tiff .bmp .svg .mp3 .mp4 .wav",
    _SETTINGS: ".toml .ini",
    _PROGRAM: ".css .xsl .xslt .js .dtd .xsd .sqlite .db .parquet .exe .py .log",
}
_BY_ENDING = {ending: kind for kind, endings in _KINDS.items() for ending in endings.split()}
_INSIDE = {"xl/workbook.xml": _SHEET, "word/document.xml": _LETTER}
"""Files in an archive by which an office program's document is known (ECMA-376, part 2: from memory)."""
_OPEN_DOCUMENT = b"mimetypeapplication/vnd.oasis.opendocument."
"""What an OpenDocument file holds from byte 30 on (OpenDocument 1.2, part 3, 3.3: from memory)."""
LARGEST_SETTINGS = 1 << 17
"""The most bytes of a file of another ending that is tried as TOML; a brief has a few thousand."""

KINDS_NOT_READ = frozenset({*_BY_ENDING, ".zip"})
"""Endings of files that are passed over in a folder or an archive."""


def no_list(path: Path) -> Problem | None:
    """Why a file that was named as a list cannot be one, with the next step; None if it may be a list."""
    kind = _kind_inside(path) or _BY_ENDING.get(path.suffix.lower())
    return Problem(f"is {kind[0]}, not a list that can be read", kind[1], str(path)) if kind else None


def _kind_inside(path: Path) -> tuple[str, str] | None:
    with path.open("rb") as file:
        head = file.read(128)
    if head.startswith(b"PK\x03\x04"):
        if head[30:].startswith(_OPEN_DOCUMENT):
            return _SHEET if head[30 + len(_OPEN_DOCUMENT) :].startswith(b"spreadsheet") else _LETTER
        with suppress(zipfile.BadZipFile, OSError, ValueError, NotImplementedError), zipfile.ZipFile(path) as archive:
            inside = set(archive.namelist())
            return next((kind for name, kind in _INSIDE.items() if name in inside), None)
    elif path.suffix.lower() in ("", ".txt") and path.stat().st_size <= LARGEST_SETTINGS and b"\0" not in head:
        import tomllib

        with suppress(ValueError, RecursionError):  # no TOML, or no UTF-8
            found = tomllib.loads(path.read_text("utf-8-sig"))
            return _SETTINGS if any(value != {} for value in found.values()) else None
    return None
