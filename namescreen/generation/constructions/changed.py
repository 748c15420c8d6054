"""Changed names: a familiar word or saying of which one part gives way to a word of the brief that sounds much like
it, so that the whole is still heard (the substitution blend of S. Gries, "Shouldn't it be breakfunch?", 2004).

What makes one please was read from 627 of them for 36 briefs (wordlists/curated/read_made.csv): a word of the brief
itself, one that is not worn; much of the original left; a saying of three words or more; nothing in it that is another
ware's (bread and honey, where nothing is eaten). Whether the original has to do with the brief told nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import islice
from typing import NamedTuple

from rapidfuzz.distance import Indel, Postfix, Prefix

from ...lexicon import kinds, lexicon, zipf
from ...pronunciation.alignment import sound_similarity, syllables_in
from ...pronunciation.phones import VOWEL_LETTERS, code_of
from ...tables import open_table
from ...text.inflection import other_number
from ..brief_terms import BriefTerms
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, title
from ..purpose import NAMED
from ..senses import unfit, unfit_in
from ..vocabulary import word
from ..word_sounds import is_vowel

__all__ = [
    *("Slot", "behind", "changed", "codes", "heard", "heard_at_once", "kept", "propose", "slots", "sound_keys"),
    *("spared", "unmixed"),
]

NAME = "changed"
_WORDS = 40  # of the words close to the brief are tried
_SAYS, _SHORTEST, _LONGEST = 0.4, 3, 9  # the weight of a word of the brief, and its letters, from and up to which it is
_KNOWN_WORD, _CLOSE, _BY_ITSELF = 2.9, 0.8, 0.3
"""Zipf frequency of a word that a hearer knows at once, its association with a term, and that without its meaning."""
_HEARD = 0.7  # how nearly an original must still be heard
_NOTHING = 0.5  # likeness of sound at which an original is not heard at all
_LEFT, _ENOUGH_LEFT = 3, 10  # letters of the original that must be left, and that are as good as all
_LENGTHS, _NEW = 4, 6  # letters by which a name may differ in length, and that are all new
_LEAST_KEPT = 0.4  # what little is left of nearly every original
_KNOWN = 0.95  # familiarity of what everybody knows
_MOST_WORDS = 4  # of a saying
_RELATED = 0.4  # association with the brief from which a word is no stranger to it
_TOLD, _FRESH, _KEPT, _UNMIXED = 1.05, 1.2, 1.2, 0.7
_CONCEPT, _PASSING = 0.75, 0.5  # a concept, and a word of the goods that does not name them, beside one that does
_SAYING = (0.15, 0.0, 0.5, 0.5)
"""What a word of the brief, one that is not worn, what is kept, and what shows nothing strange are worth, and an
original by its words: points of seven, by least squares on the readings (with each brief left out in turn the rank
correlation is 0.38; the best three of each brief's 17 have mean 4.2, 0.39 at 5 or more and 0.13 at 2 or less)."""


class Slot(NamedTuple):
    """A part of a familiar word or saying that may give way: what stands before and after it, its sounds as a code,
    whether it carries the main stress, and how many sounds of its word come before it."""

    original: str
    before: str
    part: str
    after: str
    code: str
    stressed: bool
    at: int

    @property
    def size(self) -> int:
        """How many words the original has, less one; 3 stands for all beyond."""
        return min(_MOST_WORDS - 1, self.original.replace("-", " ").count(" "))


@lru_cache(maxsize=1 << 12)
def codes(key: str) -> tuple[str, ...]:
    """The codes of the parts that share a rhyme, a beginning or their consonants, by one of `sound_keys`."""
    return tuple((open_table("familiar_sounds.tsv").get(key) or "").split())


@lru_cache(maxsize=1 << 12)
def slots(code: str) -> tuple[Slot, ...]:
    """The slots of which the part sounds so."""
    rows = (row.split("~") for row in (open_table("familiar_sounds.tsv").get(f"={code}") or "").split("|") if row)
    return tuple(
        Slot(before + part + after, before, part, after, code, stress == "1", int(at))
        for before, part, after, stress, at in rows
    )


@lru_cache(maxsize=1 << 13)
def sound_keys(code: str) -> tuple[str, ...]:
    """By what a part is found: its rhyme, its beginning with the vowel, its consonants."""
    vowel = next((place for place, letter in enumerate(code) if letter in VOWEL_LETTERS), len(code))
    consonants = "".join(letter for letter in code if letter not in VOWEL_LETTERS)
    keys = [f"r{code[vowel:]}", f"b{code[: vowel + 1]}"]
    return (*keys, f"c{consonants}") if len(consonants) > 1 else tuple(keys)


def propose(material: Material) -> Iterator[Proposal]:
    """Originals in which a word of the brief is heard: those first that, by the readings, are likeliest to please."""
    seen: dict[str, float] = {}
    found = []
    for idea, spoken in _audible(material):
        code = code_of(word(spoken).sounds)
        told = _TOLD * _told(material, idea)
        alike = (one for one in dict.fromkeys(one for key in sound_keys(code) for one in codes(key))
                 if heard_at_once(code, one))  # fmt: skip
        for slot in (slot for one in alike for slot in slots(one)):
            if not _fits(material, spoken, slot):
                continue
            whole = f"{slot.before}~{slot.after}"
            if whole not in seen:
                seen[whole] = unmixed(material.brief_terms, slot.before + slot.after) if slot.size else 1.0
            worth = (
                told + _FRESH * word(spoken).fresh + _KEPT * kept(slot.before + spoken + slot.after, slot.original)
                + _SAYING[slot.size] + _UNMIXED * seen[whole]
            )  # fmt: skip
            found.append((worth, idea, spoken, slot, seen[whole]))
    found.sort(key=lambda entry: (-entry[0], entry[1].word, entry[3].original, entry[3].before))
    for _, idea, spoken, slot, clear in found:
        if unfit_in(slot.original.casefold()):
            continue
        proposal = changed(idea, slot, spoken)._replace(unmixed=clear)
        if proposal.heard >= _HEARD:
            yield proposal


def kept(text: str, original: str) -> float:
    """How much is left of an original, 0 = as little as may be, 1 = nearly all: by the letters on either side of the
    change, ten of which are enough, and by those of the part that gave way."""
    one, other = text.casefold(), original.casefold()
    start = Prefix.similarity(one, other)
    end = Postfix.similarity(one[start:], other[start:])
    left = sum(map(str.isalpha, other[:start] + other[len(other) - end :]))
    letters = Indel.normalized_similarity(one, other)
    both = 0.5 * min(1.0, left / _ENOUGH_LEFT) + 0.5 * max(0.0, 2 * letters - 1)
    return max(0.0, (both - _LEAST_KEPT) / (1 - _LEAST_KEPT))


def spared(text: str, original: str) -> tuple[float, float, float]:
    """Of a familiar word that was changed: how nearly the name is as long (1 = as long, 0 = four letters off), how few
    of its letters are new (1 = none, 0 = six), and whether what is left beside them is a word by itself."""
    one, other = (re.sub("[^a-z]", "", text.casefold()) for text in (text, original))
    start = Prefix.similarity(one, other)
    end = Postfix.similarity(one[start:], other[start:])
    left = (one[:start], one[len(one) - end :])
    whole = any(len(part) >= _LEFT and zipf(part) >= _KNOWN_WORD for part in left)
    return (
        1 - min(1.0, abs(len(one) - len(other)) / _LENGTHS), 1 - min(1.0, (len(one) - start - end) / _NEW), float(whole)
    )  # fmt: skip


def unmixed(brief_terms: BriefTerms, rest: str) -> float:
    """Whether what is left of a phrase shows no thing that the brief has nothing to do with, in [0, 1]: 0 = one that is
    seen at a glance (honey, of bread and honey, where nothing is sweet)."""
    shown = [word(one) for one in _words(rest) if len(one) > 2 and "function word" not in kinds(one)]
    strange = (one.picture * max(0.0, 1 - brief_terms.strongest(brief_terms.of_word(one.text)) / _RELATED)
               for one in shown if one.pos == "n")  # fmt: skip
    return 1.0 - max(strange, default=0.0)


def behind(brief_terms: BriefTerms, original: str) -> float:
    """How strongly an original is associated with a brief, in [0, 1]: as strongly as its closest word."""
    words = [one for one in original.casefold().replace("-", " ").split() if "function word" not in kinds(one)]
    return max((brief_terms.strongest(brief_terms.of_word(one)) for one in words), default=0.0)


def _audible(material: Material) -> Iterator[tuple[Idea, str]]:
    """The words of the brief, each as it is heard (of stars, star too), and then words close to them by themselves."""
    told = [idea for idea in material.of_kind("concept", "goods") if _is_said(material, idea)]
    for idea in told:
        yield idea, idea.word
        yield from ((idea, one) for one in _singular(idea.word))
    known = {idea.word for idea in told}
    close = (idea for idea in material.short if idea.word not in known and idea.facts.zipf >= _KNOWN_WORD
             and material.brief_terms.strongest(idea.associations) >= _CLOSE
             and float(material.brief_terms.of_word(idea.word).max(initial=0.0)) >= _BY_ITSELF)  # fmt: skip
    yield from ((idea, idea.word) for idea in islice(close, _WORDS))


def _told(material: Material, idea: Idea) -> float:
    """How much a word says of the brief: all if it names the goods, less as a concept, and less yet if it is said in
    passing; nothing if it is only close."""
    if idea.kind == "concept":
        return _CONCEPT
    names = material.brief_terms.weight_of.get(idea.word, 0.0) >= NAMED
    return (1.0 if names else _PASSING) if idea.kind == "goods" else 0.0


def _is_said(material: Material, idea: Idea) -> bool:
    """Whether a word of the brief says enough of it to be made a name of."""
    weight = material.brief_terms.weight_of.get(idea.word, 0.0)
    return weight >= _SAYS and _SHORTEST <= len(idea.word) <= _LONGEST and idea.word.isalpha() and not unfit(idea.word)


@lru_cache(maxsize=1 << 12)
def _singular(text: str) -> tuple[str, ...]:
    """The singular of a plural; nothing for any other word."""
    return tuple(one for one in lexicon().bases(text) if one in other_number(text) and len(one) < len(text))


def _fits(material: Material, spoken: str, slot: Slot) -> bool:
    original = slot.original.casefold()
    if spoken in original or original in (spoken, f"{spoken}s"):
        return False
    if _singular(spoken) and not _singular(slot.part):  # upon a stars
        return False
    left = sum(map(str.isalpha, slot.before + slot.after))
    if left < _LEFT or slot.size >= (material.most_words if material.most_words < 3 else _MOST_WORDS):
        return False
    return left + len(spoken) <= material.most_letters + 4


def heard_at_once(code: str, other: str) -> bool:
    """Whether a word is heard at once as what it takes the place of: it rhymes with it from the first vowel on, or one
    sound is another, more or less."""
    if _vowels(code) != _vowels(other):
        return False
    return sound_keys(code)[0] == sound_keys(other)[0] or _one_sound_apart(code, other)


_vowels = lru_cache(maxsize=1 << 13)(syllables_in)


def _one_sound_apart(one: str, other: str) -> bool:
    """Whether two codes are equal but for one sound that is another, added or left out."""
    if abs(len(one) - len(other)) > 1:
        return False
    shorter = min(len(one), len(other))
    at = next((place for place in range(shorter) if one[place] != other[place]), shorter)
    return one[at + (len(one) >= len(other)) :] == other[at + (len(other) >= len(one)) :]


def changed(idea: Idea, slot: Slot, spoken: str = "") -> Proposal:
    """The original with the word in place of its part, as `spoken` where it has another form there."""
    text = _agreeing(slot.before, spoken or idea.word) + slot.after
    words = _words(text)
    whole = (sound for one in words for sound in word(one).sounds)
    sounds = _sounds(spoken or idea.word, slot) if len(words) == 1 else tuple(whole)
    how = f"{slot.original}, with {idea.named} in place of {slot.part}"
    return Proposal(
        title(*text.split(" ")), words, NAME, how, (idea.word,), slot.original, sounds, original=slot.original,
        heard=heard(sounds, slot.original),
    )  # fmt: skip


def _agreeing(before: str, spoken: str) -> str:
    """What stands before a word, and the word, with the article that goes with it (an egg)."""
    start, space, article = before.removesuffix(" ").rpartition(" ")
    if article not in ("a", "an") or not before.endswith(" "):
        return before + spoken
    return f"{start}{space}{'an' if is_vowel(word(spoken).sounds[0]) else 'a'} {spoken}"


def _words(text: str) -> tuple[str, ...]:
    """The words of a text, as `text.tokenize` parts them: an apostrophe joins (it's -> its)."""
    return tuple(text.casefold().replace("-", " ").replace("'", "").split())


def heard(sounds: tuple[str, ...], original: str) -> float:
    """How nearly a familiar word or saying is heard in these sounds, in [0, 1], less if it is little known."""
    whole = tuple(sound for one in _words(original) for sound in word(one).sounds)
    alike = sound_similarity(code_of(sounds), code_of(whole), 0.0)
    return max(0.0, (alike - _NOTHING) / (1 - _NOTHING)) * familiarity(original)


@lru_cache(maxsize=1 << 12)
def familiarity(original: str) -> float:
    """How well known an original is, in [0, 1]: what stands in our list is known, else by its frequency."""
    if " " in original or "-" in original or open_table("familiar_phrases.tsv").get(original) == "1":
        return _KNOWN
    return max(0.5, min(_KNOWN, 0.5 + (zipf(original) - 2.2) / 3))


def _sounds(spoken: str, slot: Slot) -> tuple[str, ...]:
    """The sounds of a single changed word: those of its rest are the original's."""
    whole = word(slot.original.casefold()).sounds
    middle = word(spoken).sounds
    if not slot.stressed:
        middle = tuple(s[:-1] + "2" if is_vowel(s) and s.endswith("1") else s for s in middle)
    return whole[: slot.at] + middle + whole[slot.at + len(slot.code) :]
