"""How a name made elsewhere seems to be made, read from its text: an existing word, a saying, a word with an affix, two
words, or a familiar word or saying of which a part has given way.

Of several explanations the plainest counts: what is a word already; what is heard behind a name at once, by the sounds
that changed names of ours are made by (`constructions.changed`); a word with one of the living affixes, or of the
ordinary ones of English word-formation (L. Bauer, English Word-Formation, 1983); words side by side.

Of 391 changed names that two authors wrote by hand it finds 237, and takes 37 of 1,349 others for such; of 49 by a
consultant, on which nothing was set, 21, and 6 of 191 others.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from functools import cache

from rapidfuzz import process
from rapidfuzz.distance import Indel, Postfix, Prefix

from ..lexicon import kinds, lexicon, zipf
from ..lexicon.embedding import FREQUENT, embedded_words
from ..pronunciation.alignment import sound_similarity
from ..pronunciation.phones import code_of
from ..tables import open_table
from ..text import fold, split_closed_compound
from .constructions.affixation import affixes
from .constructions.changed import codes, heard_at_once, slots, sound_keys
from .ideas import first_names
from .ties import known_words
from .word_sounds import sounds_of

__all__ = ["parse"]

_FORMS = {"find": "found", "foreign": "foreign", "lore": "figure", "saying": "saying"}
_A_WORD, _A_PART = 2.0, 2.8  # Zipf frequencies of what is an ordinary word, and of what is seen as one within a name
_SHORTEST, _LONG = 3, 5  # letters of a part, and of a word that is heard behind a name
_RESEMBLES, _LOOKED_AT = 0.74, 6
"""The share of letters in common from which a name seems a familiar word changed; how many like it are looked at."""
_OF_THE_BRIEF = 0.14  # what is taken off that share where a word of the brief is seen in the name
_SEEN = 1.0  # a word beside another is seen as easily as one that is so much commoner
_LEFT, _SHARED, _LENGTHS = 4, 2, 3
"""Of a word of which the beginning or the end gave way: letters that are left at least, that both words may share, and
by which the name may be longer or shorter."""
_ALIKE = 0.72  # likeness of sound, or of letters, at which a word of a phrase is heard in place of another
_PLAINLY = 0.8  # the same where only two words are left
_WHOLE = 0.8  # likeness of sound at which a whole word is heard behind a name of other letters
_ENDINGS = (
    *("able", "age", "ant", "ate", "dom", "ee", "eer", "en", "ent", "er", "ery", "ess", "est", "ette", "ful", "hood"),
    *("ic", "ify", "ing", "ish", "ism", "ist", "ite", "ity", "ive", "ize", "less", "ly", "ment", "ness", "or", "ous"),
    *("ry", "ship", "ster", "th", "ty", "ure", "y"),
)
_BEGINNINGS = (
    *("anti", "be", "co", "counter", "de", "dis", "en", "fore", "il", "im", "in", "inter", "mis", "non", "out", "over"),
    *("pre", "pro", "re", "semi", "sub", "super", "trans", "un", "under"),
)
"""Affixes that words of English are made with every day."""


def parse(name: str, said: Collection[str] = ()) -> tuple[str, str]:
    """The construction that would make a name of which only the text is known, and the words that it is made of, parted
    by ";": of a changed name the original first, of an affix "-ling" or "un-". `said` are the words of the brief, which
    are looked for in it."""
    words = fold(name).replace("-", " ").replace("&", " and ").split()
    whole, letters = " ".join(words), "".join(filter(str.isalpha, fold(name)))
    for kind, construction in _FORMS.items():
        if any(open_table("naming_ideas.tsv").get(f"{kind} {one}") for one in (whole, whole.replace("'", ""))):
            return construction, whole
    if len(words) == 1 and (lexicon().known(whole) or zipf(whole) >= _A_WORD):
        return "found", whole
    if len(words) > 1:
        return _of_words(name, words)
    if affixed := _affixed(whole, said):
        return "affix", ";".join(affixed)
    if changed := _changed_at_once(letters):
        return "changed", ";".join(changed)
    parts = split_closed_compound(whole, _as_part)
    if len(parts) > 1:
        return "pair", ";".join(parts)
    if changed := _resembling(letters, said) or _ending_so(letters, said):
        return "changed", ";".join(changed)
    return "blend", whole


def _of_words(name: str, words: list[str]) -> tuple[str, str]:
    """The same of a name of several words."""
    whole = " ".join(words)
    phrases = open_table("familiar_phrases.tsv")
    if phrases.get(whole) or phrases.get(name.strip()) or lexicon().is_lemma(whole.replace(" ", "_")):
        return "saying", whole
    if changed := _changed_phrase(words):
        return "changed", ";".join(changed)
    first, titles = first_names()
    named = {one.casefold() for one in first}
    if len(words) == 2 and (words[1] in named or words[0] in named | {one.casefold() for one in titles}):
        return "figure", f"{words[0]};{words[1]}"
    return "pair", ";".join(one for one in words if one not in ("and", "'n'", "n"))


def _as_part(text: str) -> float:
    """The Zipf frequency of a word as a part of a name; 0 for what is no word."""
    return zipf(text) + _SEEN if lexicon().known(text) and zipf(text) >= _A_WORD else 0.0


@cache
def _phrases() -> dict[tuple[int, str], list[tuple[str, str]]]:
    """Familiar phrases by their words but for one: the place of that one and the others -> it, and the phrase."""
    said = (one for one, _ in open_table("familiar_phrases.tsv").items())
    known = (one.written or one.word for one in known_words() if " " in one.word)
    terms = (one.replace("_", " ") for one, _ in open_table("wordnet-words.tsv").items() if "_" in one or " " in one)
    found: dict[tuple[int, str], list[tuple[str, str]]] = {}
    for phrase in dict.fromkeys(fold(one).replace("-", " ") for one in (*said, *known, *terms)):
        words = phrase.split()
        for place, word in enumerate(words):
            rest = (*words[:place], "~", *words[place + 1 :])
            if len(words) > 1:
                found.setdefault((place, " ".join(rest)), []).append((word, phrase))
    return found


def _changed_phrase(words: list[str]) -> tuple[str, str] | None:
    """The familiar phrase of which a word gave way to one that sounds like it, and that one."""
    best: tuple[float, str, str] | None = None
    for place, word in enumerate(words):
        rest = " ".join((*words[:place], "~", *words[place + 1 :]))
        for other, phrase in _phrases().get((place, rest), ()):
            likeness = _likeness(word, other)
            heard = other != word and likeness >= (_ALIKE if len(words) > 2 else _PLAINLY)
            if heard and (best is None or likeness > best[0]):
                best = likeness, phrase, word
    return best[1:] if best else None


def _likeness(word: str, other: str) -> float:
    """How nearly a word is heard as another, or read as it, in [0, 1]; 1 where it rhymes or one sound is another."""
    one, two = (code_of(sounds_of(text)) for text in (word, other))
    if one and two and heard_at_once(one, two):
        return 1.0
    return max(sound_similarity(one, two, 0.0), Indel.normalized_similarity(word, other)) if one and two else 0.0


def _changed_at_once(letters: str) -> tuple[str, str] | None:
    """The familiar word of which a part gave way to a word that is seen in the name and sounds much like it."""
    best: tuple[int, str, str] | None = None
    for at in range(len(letters) - _SHORTEST + 1):
        for stop in range(at + _SHORTEST, len(letters) + 1):
            part = letters[at:stop]
            if len(part) == len(letters) or not _as_part(part) or "function word" in kinds(part):
                continue
            code = code_of(sounds_of(part))
            for slot in (slot for key in sound_keys(code) for one in codes(key) for slot in slots(one)):
                whole = "".join(filter(str.isalpha, fold(slot.before + part + slot.after)))
                is_it = whole == letters and slot.part != part and heard_at_once(code, slot.code)
                if is_it and (best is None or len(part) > best[0]):
                    best = len(part), slot.original, part
    return best[1:] if best else None


def _resembling(letters: str, said: Collection[str]) -> tuple[str, str] | None:
    """The familiar word that a name resembles in letters and in sound, and the word seen in it that was put in."""
    code = code_of(sounds_of(letters))
    seen = [one for one in said if len(one) >= _SHORTEST and one in letters]
    alike = process.extract(
        letters, _originals(), scorer=Indel.normalized_similarity, limit=_LOOKED_AT,
        score_cutoff=_RESEMBLES - _OF_THE_BRIEF * bool(seen),
    )
    for original, _, _ in alike:
        if original in letters or letters in original:
            continue
        if sound_similarity(code, code_of(sounds_of(original)), 0.0) < _WHOLE:
            continue
        start = Prefix.similarity(letters, original)
        end = len(letters) - Postfix.similarity(letters[start:], original[start:])
        ends = range(end, len(letters) + 1)
        parts = (letters[at:stop] for at in range(start + 1) for stop in ends if stop - at >= _SHORTEST)
        words = [part for part in parts if part in said or (_as_part(part) and "function word" not in kinds(part))]
        if words and (seen == [] or set(seen) & set(words)):
            return original, max(words, key=len)
    return None


def _ending_so(letters: str, said: Collection[str]) -> tuple[str, str] | None:
    """The familiar word of which the beginning or the end gave way to a word, where at least half of it is left."""
    best: tuple[int, str, str] | None = None
    for cut in range(_SHORTEST, len(letters)):
        for word, first in ((letters[:cut], True), (letters[-cut:], False)):
            if not _as_part(word) or zipf(word) < _A_PART or "function word" in kinds(word):
                continue
            for size in range(min(len(letters) - 1, len(letters) - cut + _SHARED), _LEFT - (word in said), -1):
                known = _by_end().get(letters[-size:] if first else f"{letters[:size]}-", ())
                original = next((one for one in known if _may_be(one, letters) and word not in one), "")
                if original and size * 2 >= len(original):
                    found = size + len(word), original, word
                    best = found if best is None or found[0] > best[0] else best
                    break
    return best[1:] if best else None


def _may_be(original: str, letters: str) -> bool:
    """Whether a familiar word may be behind these letters: about as long, and not seen in them as it is."""
    return abs(len(original) - len(letters)) <= _LENGTHS and original not in letters


@cache
def _by_end() -> dict[str, list[str]]:
    """The words that everybody knows by their last letters, and by their first with a hyphen."""
    found: dict[str, list[str]] = {}
    for one in _originals():
        for size in range(_LEFT, len(one)):
            found.setdefault(one[-size:], []).append(one)
            found.setdefault(f"{one[:size]}-", []).append(one)
    return found


@cache
def _originals() -> tuple[str, ...]:
    """The words that everybody knows."""
    phrases = (fold(one) for one, _ in open_table("familiar_phrases.tsv").items() if " " not in one)
    words = (one for one in embedded_words()[:FREQUENT] if len(one) >= _LONG and lexicon().known(one))
    return tuple(dict.fromkeys((*words, *phrases)))


def _affixed(text: str, said: Collection[str]) -> tuple[str, str] | None:
    """The word and the affix that a name is made of."""
    living = [affix.form for affix in affixes()]
    for form in (*living, *(f"-{one}" for one in _ENDINGS), *(f"{one}-" for one in _BEGINNINGS)):
        bare = form.strip("-")
        rest = text.removeprefix(bare) if form.endswith("-") else text.removesuffix(bare)
        if rest != text and len(rest) >= _SHORTEST:
            base = next((one for one in _bases(rest) if one in said or zipf(one) >= _A_PART), "")
            if base:
                return (form, base) if form.endswith("-") else (base, form)
    return None


def _bases(rest: str) -> Iterator[str]:
    """The words that what is left before an ending may stand for."""
    yield rest
    yield f"{rest}e"
    if rest[-1] == rest[-2]:
        yield rest[:-1]
    if rest.endswith("i"):
        yield f"{rest[:-1]}y"
