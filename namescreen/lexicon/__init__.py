"""Words, their senses and relations (WordNet 3.0), how common they are, and what kind of word they are."""

from __future__ import annotations

from .association import Among, associated, association, neighbours, thesaurus_similarity
from .feeling import concreteness, feeling
from .foreign import Equivalent, equivalents, possible_meanings, read_as_english
from .foreign_phrases import phrase_equivalents, phrases_for
from .frequency import frequency_languages, zipf
from .phrases import broken_phrases, fixed_phrases
from .translation import Translation, equivalents_in, languages, translations
from .word_kinds import KINDS, kinds, name_rank, one_name, proper_name, words_of_kind
from .wordnet import Lexicon, Relation, Sense, lexicon

__all__ = [
    "KINDS",
    "Among",
    "Equivalent",
    "Lexicon",
    "Relation",
    "Sense",
    "Translation",
    "associated",
    "association",
    "broken_phrases",
    "concreteness",
    "equivalents",
    "equivalents_in",
    "feeling",
    "fixed_phrases",
    "frequency_languages",
    "kinds",
    "languages",
    "lexicon",
    "name_rank",
    "neighbours",
    "one_name",
    "phrase_equivalents",
    "phrases_for",
    "possible_meanings",
    "proper_name",
    "read_as_english",
    "thesaurus_similarity",
    "translations",
    "words_of_kind",
    "zipf",
]
