"""Folding: a text without case, accents, ligatures and control characters."""

from __future__ import annotations

import unicodedata

__all__ = ["fold"]

# Latin letters that Unicode does not decompose, as they are commonly transcribed in English.
_LIGATURES = str.maketrans(
    {"æ": "ae", "œ": "oe", "ø": "o", "đ": "d", "ð": "d", "þ": "th", "ł": "l", "ħ": "h", "ı": "i", "ŋ": "ng",
     "ƒ": "f", "ß": "ss", "ĸ": "k", "ŧ": "t"}
)  # fmt: skip
# Scripts whose combining marks are accents; elsewhere (Devanagari, Arabic, kana) marks carry the sound.
_ACCENTED_SCRIPTS = ("LATIN", "GREEK", "CYRILLIC")


def fold(text: str) -> str:
    """`text` without case, accents, ligatures, character width and control characters.

    Idempotent. Accents go from Latin, Greek and Cyrillic letters; marks of other scripts stay.
    """
    if text.isascii() and text.isprintable():
        return text.lower()
    decomposed = unicodedata.normalize("NFKD", unicodedata.normalize("NFKC", text).casefold())
    kept: list[str] = []
    base_takes_accents = False
    for character in decomposed:
        kind = unicodedata.category(character)
        if kind in ("Mn", "Me"):
            if not base_takes_accents:
                kept.append(character)
        elif kind.startswith("C"):
            if character in "\t\n\r":
                kept.append(" ")
        else:
            base_takes_accents = unicodedata.name(character, "").startswith(_ACCENTED_SCRIPTS)
            kept.append(character)
    return unicodedata.normalize("NFC", "".join(kept).translate(_LIGATURES))
