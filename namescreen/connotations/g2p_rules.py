"""Grapheme-to-phoneme rules of a language: readings in broad IPA, and the broad sound classes that listeners hear.

The rules are plain tables, ``wordlists/sounds/<language>.tsv``: `letters` with a regular expression for what
stands before and after give a `sound`. At each place the rule with the longest letters applies, then the one
with more context, then the earlier one. A letter the table does not know is read as its base letter.

The rules are our own. epitran covers most of these languages, but it needs panphon with numpy and tables of some
6,000 segments, over a second to start, and Flite for English.
"""

from __future__ import annotations

import re
import unicodedata
from functools import cache, lru_cache
from itertools import groupby

from namescreen.errors import DataError
from namescreen.tables import wordlists_folder

__all__ = [
    "TRANSCRIPTION",
    "doubled_otherwise",
    "english_heard_in",
    "has_rules",
    "inventory",
    "letter_sounds",
    "read_aloud",
    "sound_classes",
    "sound_code",
]

TRANSCRIPTION = "transcription"
"""The rules for a word of another script that is written in Latin transcription."""

_CLASSES = {
    "a": "aɑɐʌ", "e": "eɛəæ", "i": "iɪɨ", "o": "oɔɒ", "u": "uʊɯʉ", "y": "yʏ", "2": "øœɜɵ",
    "p": "p", "b": "bβ", "t": "t", "d": "dð", "k": "kc", "g": "ɡgɟ", "f": "f", "v": "vʋ", "s": "sθ", "z": "z",
    "S": "ʃʂɕɧ", "Z": "ʒʐʑ", "h": "hɦxçχħɣ", "m": "m", "n": "n\u0303", "N": "ŋ", "l": "lɫ", "r": "rʁɾɹʀ", "j": "jʝ",
    "w": "wɥ",
}  # fmt: skip
_CLASS_OF = {phone: name for name, phones in _CLASSES.items() for phone in phones} | {"ɲ": "nj", "ʎ": "lj"}
_VOWELS = "aeiouy2"

# English phones (ARPABET without stress) as broad IPA, each with what a listener who lacks it takes it for,
# nearest first (the usual substitutions of loan words and foreign accents; common practice, no source).
_ENGLISH = {
    "AA": "ɑ o", "AE": "æ a", "AH": "ʌ a", "AO": "ɔ", "AW": "aʊ", "AY": "aɪ", "B": "b", "CH": "tʃ", "D": "d",
    "DH": "ð z", "EH": "ɛ", "ER": "ɜr e", "EY": "eɪ", "F": "f", "G": "ɡ", "HH": "h", "IH": "ɪ", "IY": "i", "JH": "dʒ",
    "K": "k", "L": "l", "M": "m", "N": "n", "NG": "ŋ", "OW": "oʊ", "OY": "ɔɪ", "P": "p", "R": "r", "S": "s",
    "SH": "ʃ", "T": "t", "TH": "θ t", "UH": "ʊ", "UW": "u", "V": "v", "W": "w", "Y": "j", "Z": "z", "ZH": "ʒ",
}  # fmt: skip
_NEAREST = {
    "N": "n",
    "w": "vu",
    "v": "bf",
    "z": "s",
    "Z": "Sz",
    "S": "s",
    "h": "",
    "y": "iu",
    "2": "eo",
    "j": "i",
    "f": "p",
}


class _Rules:
    """One language's table. Its patterns are compiled when a word has their letters."""

    def __init__(self, language: str) -> None:
        path = wordlists_folder() / "sounds" / f"{language}.tsv"
        try:
            lines = path.read_text(encoding="utf-8").splitlines()
        except OSError as error:
            raise DataError(path, f"cannot be opened ({error})", "Install namescreen again") from error
        sets = {"C": "", "V": ""}
        rows: list[tuple[str, str, str, str]] = []
        for line in lines:
            fields = line.split("\t")
            if line.startswith("#") or fields[0] == "letters" or not line:
                continue
            if fields[0] == "set":
                sets[fields[1]] = fields[2]
            elif len(fields) == 4:
                rows.append((fields[0], fields[1], fields[2], fields[3]))
            else:
                raise DataError(path, f"has a row that is not four columns: {line!r}", "Install namescreen again")
        sets["C"] = "[^" + sets["V"] + "]"
        self.first: dict[str, list[tuple[str, str, str, str]]] = {}
        for letters, before, after, sound in sorted(rows, key=lambda row: (-len(row[0]), -bool(row[1]) - bool(row[2]))):
            for name, members in sets.items():
                before, after = before.replace(f"{{{name}}}", _members(members, before, name)), after.replace(
                    f"{{{name}}}", _members(members, after, name))  # fmt: skip
            before = before and f"(?:{before})$"
            self.first.setdefault(letters[0], []).append((letters, before, after, "" if sound == "-" else sound))


def _members(members: str, context: str, name: str) -> str:
    """Expand a set: to its members inside brackets, else to a bracket of its own."""
    if members.startswith("["):
        return members
    at = context.find(f"{{{name}}}")
    return members if context.rfind("[", 0, at) > context.rfind("]", 0, at) else f"[{members}]"


_compiled = cache(re.compile)


@cache
def _rules(language: str) -> _Rules:
    return _Rules(language)


@cache
def has_rules(language: str) -> bool:
    """Whether names can be read aloud in this language."""
    return (wordlists_folder() / "sounds" / f"{language}.tsv").is_file()


@lru_cache(maxsize=1 << 12)
def letter_sounds(word: str, language: str) -> tuple[tuple[str, str], ...]:
    """One word as a reader of `language` takes it: each letter or letter group with its sound in broad IPA.

    Raises `DataError` if the language has no rules; see `has_rules`.
    """
    rules = _rules(language).first
    word = unicodedata.normalize("NFC", word.casefold())
    word = "".join(letter if letter in rules else _base(letter) for letter in word)
    said: list[tuple[str, str]] = []
    at = 0
    while at < len(word):
        for letters, before, after, sound in rules.get(word[at], ()):
            end = at + len(letters)
            if (
                word.startswith(letters, at)
                and (not after or _compiled(after).match(word, end))
                and (not before or _compiled(before).search(word[:at]))
            ):
                said.append((letters, sound))
                at = end
                break
        else:
            at += 1
    return tuple(said)


def read_aloud(word: str, language: str) -> str:
    """One word in broad IPA, without stress marks, as a reader of `language` says it; see `letter_sounds`."""
    return "".join(sound for _, sound in letter_sounds(word, language))


def _base(letter: str) -> str:
    kept = unicodedata.normalize("NFD", letter)[0]
    return {"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "ı": "i", "đ": "d"}.get(kept, kept)


@lru_cache(maxsize=1 << 13)
def sound_classes(ipa: str) -> str:
    """IPA as a string of broad sound classes, one character each, doubled classes once.

    Length, stress, aspiration and palatalisation go; so do differences that listeners of other languages do
    not keep: open and close e and o, the kinds of r, the kinds of h and ch, the nasal vowels (a vowel with
    n).
    """
    phones = (phone for phone in unicodedata.normalize("NFD", ipa) if phone in _CLASS_OF)
    joined = "".join(name for name, _ in groupby("".join(_CLASS_OF[phone] for phone, _ in groupby(phones))))
    # A glide after a vowel is the end of a diphthong: aj = ai, aw = au.
    return re.sub(f"(?<=[{_VOWELS}])([jw])(?![{_VOWELS}])", lambda m: "i" if m[1] == "j" else "u", joined)


@lru_cache(maxsize=1 << 13)
def sound_code(word: str, language: str) -> str:
    """How a word of the language, or a name read in it, sounds: its broad sound classes."""
    return sound_classes(read_aloud(word, language))


@cache
def inventory(language: str) -> frozenset[str]:
    """The broad sound classes that the language's own spelling can give."""
    return frozenset("".join(sound_classes(rule[3]) for rules in _rules(language).first.values() for rule in rules))


@cache
def doubled_otherwise(language: str) -> frozenset[str]:
    """The doubled letters that have a sound of their own there, wherever they stand, which the single letter never has:
    Spanish ll. None where the language has no rules."""
    if not has_rules(language):
        return frozenset()
    rules = [rule for each in _rules(language).first.values() for rule in each]
    doubled = [(letters, sound) for letters, before, after, sound in rules
               if len(letters) == 2 and letters[0] == letters[1] and not before and not after]  # fmt: skip
    single = {(letters, sound_classes(sound)) for letters, _, _, sound in rules}
    return frozenset(letters for letters, sound in doubled if (letters[0], sound_classes(sound)) not in single)


@lru_cache(maxsize=1 << 13)
def english_heard_in(phones: tuple[str, ...], language: str) -> tuple[str, ...]:
    """The sound codes that a listener of `language` hears in English speech (ARPABET phones),
    likeliest first.

    A vowel that only English has is heard both as the one with the same spelling and as the nearest (hut: a; hat: e or
    a).
    """
    own = inventory(language)
    plain, bent = "", ""
    for phone in phones:
        ways = _ENGLISH.get(phone.rstrip("012"), "").split()
        if ways:
            plain += ways[0]
            bent += ways[-1]
    heard = []
    for said in (plain, bent):
        code = "".join(_nearest_class(name, own) for name in sound_classes(said))
        heard.append("".join(name for name, _ in groupby(code)))
        # English o and e end in a glide that other languages hear as a long vowel.
        heard.append(heard[-1].replace("ou", "o").replace("ei", "e"))
    return tuple(dict.fromkeys(heard))


def _nearest_class(name: str, own: frozenset[str]) -> str:
    if name in own:
        return name
    return next((other for other in _NEAREST.get(name, name) if other in own), "")
