"""The senses of a concept that a brief means, and which words may not stand in a name."""

from __future__ import annotations

from functools import cache, lru_cache

from ..brief import Concept
from ..lexicon import Sense, association, lexicon
from ..tables import open_table
from ..text import fold, tokenize

__all__ = ["chosen_senses", "doubt", "guide_words", "meaning_found", "unfit", "usable_words"]


_HIGHEST, _STEP = 9, 0.07
"""The most steps up to an everyday word (a seal is an animal in seven), and the cost of each."""
_BESIDE = 12  # the most neighbouring senses considered
_NEARLY = 0.6  # of the association with a sense's words, where no broader word is the one that is wanted


def chosen_senses(concept: Concept) -> tuple[Sense, ...]:
    """The senses of a concept that its wanted meanings select; all of them if none is wanted, or none fits."""
    senses = lexicon().senses(fold(concept.word))
    scores = [_fit(sense, concept) for sense in senses]
    best = max(scores, default=0.0)
    return tuple(s for s, score in zip(senses, scores, strict=True) if score >= max(0.3, best - 0.1)) or senses


def meaning_found(concept: Concept) -> bool:
    """Whether some sense of the concept fits the meanings wanted; True if none is wanted."""
    return not concept.senses or any(_fit(sense, concept) >= 0.3 for sense in lexicon().senses(fold(concept.word)))


def doubt(concept: Concept) -> str:
    """What a maker should know of a concept before names are made from it: that its word is not known here, or that no
    meaning of it fits the one wanted. Empty if all is well."""
    if not any(map(lexicon().known, usable_words(concept.word))):
        return f"{concept.word!r} is no word known here: it brings nothing else to mind. Add a common word beside it."
    if meaning_found(concept):
        return ""
    wanted = " ".join(concept.senses)
    return f"No meaning of {concept.word!r} fits {wanted!r}, so all are used. --ideas lists them."


def _fit(sense: Sense, concept: Concept) -> float:
    wanted = {word for meaning in concept.senses for word in fold(meaning).replace(",", " ").split()}
    return max((_points_at(sense, word) for word in wanted), default=0.0)


def _points_at(sense: Sense, wanted: str) -> float:
    if any(wanted in fold(word).split() for word in (*sense.words[0:], sense.label.partition("(")[2].rstrip(")"))):
        return 1.0
    book = lexicon()
    beside = book.related_ids(sense.id, "@", "@i", "~", "%p", "#p", "#s", "#m", "+")[:_BESIDE]
    around = [fold(word) for one in beside for word in book.entry(one).words]
    if wanted in around:
        return 1.0 - _STEP
    # a part is of the kind that its whole is: a tail is an animal's
    above, height = book.related_ids(sense.id, "@", "@i", "#p"), 1
    while above and height < _HIGHEST:
        height += 1
        above = list(dict.fromkeys(other for one in above for other in book.related_ids(one, "@", "@i")))
        if any(fold(word) == wanted for one in above for word in book.entry(one).words):
            return 1.0 - _STEP * height
    near = [association(wanted, word) or 0.0 for word in (*map(fold, sense.words[1:3]), *around) if word.isalpha()]
    return _NEARLY * max(near, default=0.0)


def _broader(sense: Sense) -> tuple[str, ...]:
    return tuple(lexicon().entry(above).words[0] for above in lexicon().related_ids(sense.id, "@")[:2])


def guide_words(concept: Concept) -> tuple[str, ...]:
    """The words that guide to the wanted meanings of a concept: those of the brief, then those of the chosen senses and
    of their broader ones. Empty if no meaning is wanted."""
    if not concept.senses:
        return ()
    found = {fold(part): None for meaning in concept.senses for part in fold(meaning).replace(",", " ").split()}
    for sense in chosen_senses(concept):
        words = (*sense.words, *_broader(sense))
        found.update((fold(word), None) for word in words if fold(word) != fold(concept.word))
    return tuple(found)


@lru_cache(maxsize=1 << 16)
def unfit(word: str) -> str | None:
    """Why a word should not stand in a name (death, illness, filth ...), or None. Inflected forms count too."""
    table = _unfit_words()
    for form in (word, *lexicon().bases(word)):
        kind = table.get(form)
        if kind is not None:
            return kind
    return None


@cache
def _unfit_words() -> dict[str, str]:
    return dict(open_table("unfit_words.tsv").items())


def usable_words(text: str) -> tuple[str, ...]:
    """The words of a concept that names can be made from: those in letters a to z once folded."""
    return tuple(word for word in tokenize(text) if word.isascii() and word.isalpha())
