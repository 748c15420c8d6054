"""How readily speakers of a language can say and spell a name."""

from __future__ import annotations

from dataclasses import dataclass

from namescreen.outcome import NotChecked
from namescreen.text import fold, parse

from ..lexicon.language_codes import LANGUAGES, OTHER_SCRIPTS, code, language_name
from ..lexicon.letter_patterns import allowed, alphabet, consonant_groups, has_model, percentile
from .g2p_rules import has_rules, letter_sounds, read_aloud, sound_classes
from .scripts import lookalikes, script

__all__ = ["Ease", "ease"]

UNUSUAL = 10
"""The percentile below which a name's letters are called unusual: nine in ten words of the language are more usual."""

# What an English reader may make of a letter or group, as broad sound classes; another sound is a surprise.
# Vowel letters have many English sounds, so only groups of them are judged.
_ENGLISH_SOUNDS = {
    "c": "k s", "cc": "k ks", "ch": "tS k S", "ck": "k", "g": "g dZ", "gg": "g dZ", "gh": "g f",
    "gn": "gn n", "h": "h", "j": "dZ", "ll": "l", "lh": "l lh", "nh": "n nh", "ng": "n ng ndZ", "ph": "f",
    "q": "k", "qu": "kw k", "s": "s z", "sc": "s sk", "sch": "sk S", "sh": "S", "sk": "sk", "sj": "",
    "sp": "sp", "ss": "s S", "st": "st", "sz": "s z", "th": "s t d z", "ti": "S ti", "tz": "ts", "v": "v",
    "w": "w", "x": "ks z gz", "y": "j i ai", "z": "z", "zz": "z ts", "gli": "gli", "gl": "gl", "ñ": "nj n",
    "ç": "s", "au": "o au a", "eu": "ju u o", "ei": "i e ai ei", "ie": "i ai ie", "oi": "oi", "ou": "au u o",
    "ai": "e ei ai", "oe": "i o oe u", "ae": "e i a", "ue": "u ju ue", "ui": "u i ui", "ij": "i idZ",
    "oa": "o oa", "ea": "i e ea", "eau": "o ju", "r": "r", "d": "d", "t": "t", "b": "b", "p": "p", "f": "f",
    "k": "k", "l": "l", "m": "m", "n": "n", "cs": "ks", "zs": "z", "gy": "dZi gi", "ny": "ni nj", "ty": "ti",
    "ly": "li", "cz": "z tS", "rz": "rz", "dz": "dz",
}  # fmt: skip
# An English word for each sound, to say how a letter is read.
_LIKE = {
    "j": "y in yes", "h": "h in hat", "x": "ch in loch", "v": "v in vine", "f": "f in fine",
    "ts": "ts in cats", "s": "s in sun", "z": "z in zoo", "ʃ": "sh in ship", "ʒ": "s in measure",
    "tʃ": "ch in chip", "dʒ": "j in jam", "k": "k in kit", "ɡ": "g in get", "b": "b in bed", "t": "t in ten",
    "p": "p in pen", "d": "d in den", "θ": "th in thin", "ð": "th in this", "ɲ": "ny in canyon",
    "ʎ": "lli in million", "ʝ": "y in yes", "w": "w in wet", "ks": "x in box", "kv": "kv", "ɧ": "sh in ship",
    "ɕ": "sh in ship", "ʂ": "sh in ship", "ʐ": "s in measure", "ç": "h in huge", "ʋ": "v in vine",
    "kʋ": "kv", "tʂ": "ch in chip", "tɕ": "ch in chip", "dʑ": "j in jam", "dʐ": "j in jam",
    "ɣ": "ch in loch", "ɦ": "h in hat", "u": "oo in too", "y": "u in French tu", "ø": "eu in French deux",
    "œ": "eu in French neuf", "aɪ": "ie in pie", "ɔʏ": "oy in boy", "ʃp": "shp", "ʃt": "sht",
    "e": "e in bet", "ɛ": "e in bet", "i": "ee in see", "iː": "ee in see", "wa": "wa in watt",
    "o": "o in more", "c": "ty in tune", "ɟ": "dy in dune", "χ": "ch in loch", "sx": "s with the ch of loch",
    "œy": "eui in French feuille",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Ease:
    """How easily speakers of a language say and spell a name.

    `percentile` in 0 to 100: the share of the language's frequent words whose letters are as surprising as the name's,
    or more: at 100 the name is more usual than any of them, at 0 more surprising than all. A name of several words has
    the lowest of theirs. `otherwise` pairs letters with the way they are read there, where an English reader would not
    expect it; `hindrances` says in words what may be difficult; `likely_reading` is the name read by the language's
    spelling rules in broad IPA, empty where there are none.
    """

    language: str
    percentile: int
    foreign_letters: tuple[str, ...]
    hard_clusters: tuple[str, ...]
    otherwise: tuple[tuple[str, str], ...]
    likely_reading: str
    hindrances: tuple[str, ...]

    @property
    def reasons(self) -> tuple[str, ...]:
        """The findings in words, hindrances first."""
        read = (f"likely read [{self.likely_reading}]",) if self.likely_reading else ()
        return (*self.hindrances, f"letters plainer than in {self.percentile} % of its words", *read)

    def __str__(self) -> str:
        return f"{self.language}: {'; '.join(self.reasons)}"

    def to_json(self) -> dict[str, object]:
        """The findings as plain values, field by field."""
        return {
            "language": self.language,
            "percentile": self.percentile,
            "foreign_letters": list(self.foreign_letters),
            "hard_clusters": list(self.hard_clusters),
            "otherwise": [list(pair) for pair in self.otherwise],
            "likely_reading": self.likely_reading,
            "reasons": list(self.reasons),
        }


def ease(name: str, language: str) -> Ease | NotChecked:
    """How readily speakers of `language` (BCP 47) say and spell `name`, or why that could not be judged.

    Letters of another script that pass for Latin ones are judged as what readers take them for.
    """
    tag = code(language)
    passes_for = lookalikes(name)
    words = tuple(_written(passes_for.looks if passes_for else name))
    check = f"saying it in {language_name(tag)}"
    if not words:
        return NotChecked(check, "the name has no letters")
    if tag not in LANGUAGES or not has_model(tag):
        return NotChecked(check, "no letter patterns of that language are shipped")
    latin = all(script(letter) in ("Latin", "Common") for letter in "".join(words))
    if latin == (tag in OTHER_SCRIPTS):
        return NotChecked(check, "the name is not in the script of that language; it will be met in transcription")
    at_home = alphabet(tag)
    foreign = tuple(dict.fromkeys(letter for word in words for letter in _foreign(word, at_home)))
    clusters = tuple(dict.fromkeys(cluster for word in words for cluster in _hard(word, tag)))
    typical = min(percentile(word, tag) for word in words)
    spoken = has_rules(tag)
    otherwise = tuple(dict.fromkeys(pair for word in words for pair in _otherwise(word, tag))) if spoken else ()
    reading = " ".join(read_aloud(word, tag) for word in words) if spoken else ""
    hindrances = _hindrances(typical, foreign, clusters, otherwise)
    return Ease(tag, typical, foreign, clusters, otherwise, reading, hindrances)


def _written(name: str) -> list[str]:
    """The words of the name with their accents, in lower case."""
    parsed = parse(name)
    pieces = ["".join(filter(str.isalpha, piece)).lower() for piece in parsed.text.replace("-", " ").split()]
    if tuple(map(fold, filter(None, pieces))) == parsed.words:
        return [piece for piece in pieces if piece]
    return [word for word in parsed.words if word.isalpha()]


def _foreign(word: str, at_home: frozenset[str]) -> list[str]:
    """Letters that are not native to the language; q before u is at home wherever qu is read."""
    return [
        letter
        for at, letter in enumerate(word)
        if letter.isalpha() and letter not in at_home and not (letter == "q" and word[at + 1 : at + 2] == "u")
    ]


def _hard(word: str, language: str) -> list[str]:
    """Consonant groups the language's words do not have there, shown with a hyphen for the rest of the
    word."""
    shown = {"<": "{}-", ">": "-{}", "=": "-{}-"}
    return [shown[group[0]].format(group[1:]) for group in consonant_groups(word) if not allowed(group, language)]


def _otherwise(word: str, language: str) -> list[tuple[str, str]]:
    """Letters that are read differently from what an English reader expects, each with its reading."""
    found = []
    for letters, sound in letter_sounds(word, language):
        expected = _ENGLISH_SOUNDS.get(letters)
        if expected is None or sound_classes(sound) in ("".join(classes_of) for classes_of in expected.split()):
            continue
        found.append((letters, f"like {_LIKE[sound]}" if sound in _LIKE else f"as {sound}" if sound else "silent"))
    return found


def _hindrances(
    typical: int,
    foreign: tuple[str, ...],
    clusters: tuple[str, ...],
    otherwise: tuple[tuple[str, str], ...],
) -> tuple[str, ...]:
    said = []
    if foreign:
        said.append(f"letters kept for foreign words: {' '.join(foreign)}")
    if clusters:
        said.append(f"consonants not usual in that place: {' '.join(clusters)}")
    said += [f"{letters} is {'silent' if how == 'silent' else f'read {how}'}" for letters, how in otherwise]
    if typical < UNUSUAL:
        said.append("an unusual pattern of letters")
    return tuple(said)
