"""Changed names: a familiar word or saying of which one part gives way to a word of the brief that sounds much like
it, so that the whole is still heard (the substitution blend of S. Gries, "Shouldn't it be breakfunch?", 2004)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from ...lexicon import kinds, zipf
from ...pronunciation.alignment import sound_similarity, syllables_in
from ...pronunciation.phones import VOWEL_LETTERS, code_of
from ...tables import open_table
from ..brief_terms import BriefTerms
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, title
from ..vocabulary import part_of_speech, word
from ..word_sounds import is_vowel

__all__ = ["Slot", "behind", "changed", "codes", "heard", "propose", "slots", "sound_keys"]

NAME = "changed"
_WORDS = 140  # of the best short words are tried
_HEARD = 0.7  # how nearly an original must still be heard
_NOTHING = 0.5  # likeness of sound at which an original is not heard at all
_AT_ONCE = 400  # so many of the likeliest are ranked together by how well the original is heard in them
_LEFT = 3  # letters of the original that must be left
_KNOWN = 0.95  # familiarity of what everybody knows


@dataclass(frozen=True, slots=True)
class Slot:
    """A part of a familiar word or saying that may give way: what stands before and after it, its sounds as a code,
    whether it carries the main stress, and how many sounds of its word come before it."""

    original: str
    before: str
    part: str
    after: str
    code: str
    stressed: bool
    at: int


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
    """Originals in which a word of the brief is heard: those first that have to do with the brief themselves, are still
    heard well, and hold a word that stands for it surely."""
    suits: dict[str, float] = {}
    possible = []
    for idea in _audible(material):
        code = code_of(idea.facts.sounds)
        sure = material.brief_terms.strongest(idea.associations)
        alike = (one for one in dict.fromkeys(one for key in sound_keys(code) for one in codes(key))
                 if _heard_at_once(code, one))  # fmt: skip
        for slot in (slot for one in alike for slot in slots(one)):
            if _fits(material, idea, slot):
                if slot.original not in suits:
                    suits[slot.original] = behind(material.brief_terms, slot.original)
                possible.append((sure * (0.4 + suits[slot.original]), idea, slot))
    possible.sort(key=lambda entry: (-entry[0], entry[1].word, entry[2].original, entry[2].before))
    for start in range(0, len(possible), _AT_ONCE):  # what is heard of an original costs most: of the best first
        ranked = []
        for worth, idea, slot in possible[start : start + _AT_ONCE]:
            proposal = replace(changed(idea, slot), behind=suits[slot.original])
            if proposal.heard >= _HEARD:
                ranked.append((proposal.heard * worth, proposal))
        ranked.sort(key=lambda entry: (-entry[0], entry[1].text))
        yield from (proposal for _, proposal in ranked)


def behind(brief_terms: BriefTerms, original: str) -> float:
    """How strongly an original is associated with a brief, in [0, 1]: as strongly as its closest word."""
    words = [one for one in original.casefold().replace("-", " ").split() if "function word" not in kinds(one)]
    return max((brief_terms.strongest(brief_terms.of_word(one)) for one in words), default=0.0)


def _audible(material: Material) -> Iterator[Idea]:
    """Short words that a hearer must know at once: those of the brief, and others strongly associated with a term."""
    return iter([idea for idea in material.short if material.is_firm(idea)][:_WORDS])


def _fits(material: Material, idea: Idea, slot: Slot) -> bool:
    if idea.word in slot.original.casefold() or slot.original.casefold() in (idea.word, f"{idea.word}s"):
        return False
    left = sum(map(str.isalpha, slot.before + slot.after))
    many = slot.original.count(" ") + 1
    if left < _LEFT or many > material.most_words or left + len(idea.word) > material.most_letters + 4:
        return False
    return idea.kind == "concept" or part_of_speech(slot.part) == idea.pos


def _heard_at_once(code: str, other: str) -> bool:
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


def changed(idea: Idea, slot: Slot) -> Proposal:
    """The original with the word in place of its part."""
    text = slot.before + idea.word + slot.after
    words = _words(text)
    sounds = _sounds(idea, slot) if len(words) == 1 else tuple(sound for one in words for sound in word(one).sounds)
    how = f"{slot.original}, with {idea.named} in place of {slot.part}"
    return Proposal(
        title(*text.split(" ")), words, NAME, how, (idea.word,), slot.original, sounds, original=slot.original,
        heard=heard(sounds, slot.original),
    )  # fmt: skip


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


def _sounds(idea: Idea, slot: Slot) -> tuple[str, ...]:
    """The sounds of a single changed word: those of its rest are the original's."""
    whole = word(slot.original.casefold()).sounds
    middle = idea.facts.sounds
    if not slot.stressed:
        middle = tuple(s[:-1] + "2" if is_vowel(s) and s.endswith("1") else s for s in middle)
    return whole[: slot.at] + middle + whole[slot.at + len(slot.code) :]
