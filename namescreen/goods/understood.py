"""Whether buyers of a state understand the words of a name in a language that is not theirs."""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz.distance import JaroWinkler, Levenshtein

from ..lexicon import frequency_languages, lexicon, zipf
from ..lexicon.translation import equivalents_in, listed_translations
from ..territories import EU_MEMBERS, understood_in
from ..text import fold
from .grounds import languages_of
from .judged import Judged, Meaning
from .places import is_settled_place
from .spelt_by_ear import is_nearly
from .trade_table import is_term

__all__ = ["is_like_own", "is_understood"]

KNOWN = 2.8
"""The Zipf value, in English or in a language of the state, from which an English word is taken to be understood:
labels in English are read in every state, and only seldom words are strange. Ours; common practice, no source; higher
values, also by how much English a state learns, agreed no better with 480 cases graded from memory by two authors."""
NAMED, TIED = 0.85, 0.5
"""How plainly a word that is read must tell of the goods for a rarer one beside it, that tells of them too, to change
nothing: a beeswax bread bag is a bread bag to those who do not know beeswax. Ours; common practice, no source."""
LEAST_PART = 4
"""The fewest letters of a part by which a compound is understood."""
LIKE, SAME_LETTERS, LEAST_LIKE = 0.84, 0.55, 5
"""How like a word (Jaro-Winkler), with how many letters in place (Levenshtein), and how long must be what the buyers'
own language says for the same, for them to see it in a strange one: lavanda, Lavendel. Ours, not fitted."""
LISTED = 0.9
"""How sure an English word must be a meaning for English to have it beside the one that a word is told by. Ours."""


def is_understood(plain: tuple[Judged, ...], law: str) -> bool:
    """Whether buyers of a state read the English words of a name: all do where English is a language or widely known,
    elsewhere words that are not seldom, that their own texts use (T-435/07, New Look, on who knows English), or are
    much like their own; figures, places and terms of a trade that English has from elsewhere are read everywhere."""
    if law not in EU_MEMBERS or understood_in(law, "en"):
        return True
    read = [one for one in languages_of((law,)) if one in frequency_languages()]  # English first

    def known(word: str) -> bool:
        return any(zipf(word, one) >= KNOWN for one in read)

    def understood(word: str) -> bool:  # a compound by its parts: weatherproof
        if word.isdecimal() or is_settled_place(word) or _is_alike(word, Meaning(word, "en"), law):
            return True
        if is_term(word) and not lexicon().known(word):  # argan: no dictionary of English has it either
            return True
        cuts = range(LEAST_PART, len(word) - LEAST_PART + 1)
        return known(word) or any(known(word[:at]) and known(word[at:]) for at in cuts)

    read_so = [all(map(understood, (one.heard or one.word).split())) for one in plain]
    named = any(read and one.evidence.weight >= NAMED for read, one in zip(read_so, plain, strict=True))
    return all(read or (named and one.evidence.weight >= TIED) for read, one in zip(read_so, plain, strict=True))


def is_like_own(judged: tuple[Judged, ...], law: str) -> bool:
    """Whether buyers of a state see what the foreign words of a name mean, since each is all but the word of a language
    of theirs for it (Matratzen Concord, C-421/04, asks what they understand)."""
    foreign = [one for one in judged if one.meaning and one.meaning.english]
    others = tuple(one for one in judged if one.meaning is None)
    alike = all(one.meaning and _is_alike(one.word, one.meaning, law) for one in foreign)
    return bool(foreign) and alike and is_understood(others, law)


@lru_cache(maxsize=1 << 12)
def _is_alike(word: str, meaning: Meaning, law: str) -> bool:
    english = meaning.english
    own = {english} if law not in EU_MEMBERS or understood_in(law, "en") else set()
    if own:  # English may have the word itself, beside the one that it is told by: aquarelle
        senses = listed_translations(meaning.written_for or word, meaning.language, compounds=False)
        own.update(one.english for one in senses if one.score >= LISTED)
    own.update(fold(one) for language in languages_of((law,)) for one in equivalents_in(english, language))
    return any(is_nearly(word, one) for one in own) or any(
        min(len(word), len(one)) >= LEAST_LIKE
        and JaroWinkler.similarity(word, one) >= LIKE
        and Levenshtein.normalized_similarity(word, one) >= SAME_LETTERS
        for one in own
    )
