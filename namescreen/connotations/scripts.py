"""The scripts of a name, and letters of one script that pass for another's (Unicode Technical Standard
#39)."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from namescreen.tables import open_table

__all__ = ["LookAlikes", "confusable", "lookalikes", "looks_latin", "resolved_scripts", "script", "skeleton"]

# First words of Unicode character names, for the scripts that hold letters of today's languages. "CJK UNIFIED
# IDEOGRAPH" is Han; halfwidth and fullwidth forms are Latin or kana by their decomposition.
_SCRIPTS = {
    "LATIN", "GREEK", "CYRILLIC", "ARMENIAN", "HEBREW", "ARABIC", "DEVANAGARI", "BENGALI", "TAMIL", "TELUGU", "THAI",
    "GEORGIAN", "HANGUL", "ETHIOPIC", "CHEROKEE", "HIRAGANA", "KATAKANA", "COPTIC", "LISU",
}  # fmt: skip
# UTS #39 section 5.1: scripts that are written together count as one.
_AUGMENTED = {
    "Han": {"Han", "Japanese", "Korean", "Bopomofo"}, "Hiragana": {"Hiragana", "Japanese"},
    "Katakana": {"Katakana", "Japanese"}, "Hangul": {"Hangul", "Korean"},
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class LookAlikes:
    """Letters in a name that pass for letters of another script.

    `letters` pairs each such letter with what it looks like; `scripts` are all the scripts of the name;
    `looks` is what a reader takes the name for. `mixed` says that no one script holds all its letters.
    """

    text: str
    looks: str
    scripts: tuple[str, ...]
    letters: tuple[tuple[str, str], ...]
    mixed: bool

    def __str__(self) -> str:
        pairs = ", ".join(f"{letter} (U+{ord(letter[0]):04X} {script(letter)}) looks like {like}"
                          for letter, like in self.letters)  # fmt: skip
        return f"{self.text} passes for {self.looks}: {pairs}"


def script(letter: str) -> str:
    """The script of one letter by its Unicode name (Latin, Cyrillic, Han ...); Common for digits and
    signs."""
    words = unicodedata.name(unicodedata.normalize("NFKD", letter)[0], "").split()
    if not words or unicodedata.category(letter)[0] != "L":
        return "Common"
    if words[0] == "CJK":
        return "Han"
    return words[0].title() if words[0] in _SCRIPTS else "Latin" if words[0] == "MODIFIER" else "Common"


def resolved_scripts(text: str) -> frozenset[str] | None:
    """The scripts that hold every letter of `text`, after UTS #39 section 5.1; empty if it mixes scripts,
    None if it has no letters."""
    common: frozenset[str] | None = None
    for letter in unicodedata.normalize("NFC", text):
        own = script(letter)
        if own != "Common":
            augmented = frozenset(_AUGMENTED.get(own, {own}))
            common = augmented if common is None else common & augmented
    return common


def skeleton(text: str) -> str:
    """The skeleton of `text`, UTS #39 section 4: decomposed, each character replaced by its prototype,
    decomposed.

    Two texts are confusable if their skeletons are equal. The prototypes are those of characters in the
    Latin, Greek, Cyrillic, Armenian and Common scripts, and of any letter that passes for a Latin one.
    """
    prototypes = open_table("confusables.tsv")
    mapped = "".join(prototypes.get(character) or character for character in unicodedata.normalize("NFD", text))
    return unicodedata.normalize("NFD", mapped)


def confusable(first: str, second: str) -> bool:
    """Whether two texts are confusable, letter for letter (UTS #39 section 4)."""
    return skeleton(first) == skeleton(second)


def looks_latin(letter: str) -> str | None:
    """The Latin letters that a letter of another script passes for, or None."""
    if letter.isascii() or script(letter) in ("Latin", "Common"):
        return None
    like = skeleton(letter)
    if not (like.isascii() and like.isalpha()):
        like = skeleton(letter.lower())
        like = like.upper() if letter.isupper() else like
    return like if like.isascii() and like.isalpha() else None


def lookalikes(text: str) -> LookAlikes | None:
    """The letters of `text` that pass for Latin ones, where it mixes scripts or every letter of it passes so.

    A name in one script gives None unless all its letters pass for Latin ones: not all of кот do.
    """
    letters = [letter for letter in unicodedata.normalize("NFC", text) if unicodedata.category(letter)[0] == "L"]
    pairs = {letter: like for letter in letters if (like := looks_latin(letter))}
    mixed = resolved_scripts(text) == frozenset()
    whole = bool(pairs) and all(letter in pairs or script(letter) == "Latin" for letter in letters)
    if not pairs or not (mixed or (whole and len(letters) > 1)):
        return None
    looks = "".join(pairs.get(letter, letter) for letter in unicodedata.normalize("NFC", text))
    scripts = tuple(sorted({script(letter) for letter in letters}))
    return LookAlikes(text, looks, scripts, tuple(pairs.items()), mixed)
