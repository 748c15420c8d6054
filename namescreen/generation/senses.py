"""The senses of a concept that a brief means, and which words may not stand in a name."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache, lru_cache

from ..brief import Concept
from ..lexicon import Sense, association, lexicon, zipf
from ..lexicon.embedding import vector
from ..plain_text import some
from ..tables import open_table
from ..text import fold, split_closed_compound, tokenize
from .wanted import usable_words, words_of_concept

__all__ = ["chosen_senses", "doubt", "guide_words", "is_coarse", "key_of", "likeliest_sense", "meaning_found",
           "meaning_of_several", "newer_word", "other_meanings", "unfit", "unfit_in"]  # fmt: skip


_HIGHEST, _STEP = 9, 0.07
"""The most steps up to an everyday word (a seal is an animal in seven), and the cost of each."""
_BESIDE = 12  # the most neighbouring senses considered
_NEARLY = 0.6  # of the association with a sense's words, where no broader word is the one that is wanted
_FITS = 0.3  # least fit of a meaning
_COMPANY = 0.32  # association from which an everyday word says which meaning of another is meant (by trying some)
_ALIKE = 0.1  # difference in fit up to which meanings are taken together
_MOST_TOLD = 8  # meanings
_COARSE = frozenset(("sex", "vulgar", "excrement"))
"""Kinds of ill words that make a meaning coarse; what WordNet calls sexual is too."""
_SHORTEST_KEY = 3  # letters


def chosen_senses(concept: Concept) -> tuple[Sense, ...]:
    """The senses of a concept that its wanted meanings select; all of them if none is wanted, or none fits."""
    senses = lexicon().senses(fold(concept.word))
    scores = [_fit(sense, concept) for sense in senses]
    best = max(scores, default=0.0)
    return tuple(s for s, score in zip(senses, scores, strict=True) if score >= max(_FITS, best - _ALIKE)) or senses


def likeliest_sense(concept: Concept) -> Sense | None:
    """The sense of a concept that fits its wanted meanings best, a noun before others; None if it has none."""
    senses = lexicon().senses(fold(concept.word))
    return max(senses, key=lambda one: (round(_fit(one, concept), 2), one.pos == "n"), default=None)


def meaning_found(concept: Concept) -> bool:
    """Whether some sense of the concept fits the meanings wanted; True if none is wanted."""
    if not concept.senses or _told_by_company(concept):
        return True
    return any(_fit(sense, concept) >= _FITS for sense in lexicon().senses(fold(concept.word)))


def doubt(concept: Concept) -> str:
    """What a maker should know of a concept before names are made from it: that its word is not known here, or that no
    meaning of it is the one wanted, and which there are. Empty if all is well."""
    several = tuple(words_of_concept(concept.word))
    if not several and usable_words(concept.word):
        return f"{concept.word!r} says what is not wanted, and no name is made from it. Say what there is instead."
    if len(several) > 1 and any(map(lexicon().known, several)):
        return (f"{concept.word!r} is taken as {some(several)}, each less than a concept of one word. If one of them "
                "is not meant, give the others alone.")  # fmt: skip
    if len(several) == 1 and (said := newer_word(several[0])) and not lexicon().senses(several[0]):
        return f"{concept.word!r} is taken as {some(said)}. If that is not meant, give other words for it."
    if not any(lexicon().known(one) or vector(one, lexicon().bases) is not None for one in several):
        return f"{concept.word!r} is no word known here: it brings nothing else to mind. Add a common word beside it."
    senses = lexicon().senses(fold(concept.word))
    if not concept.senses or any(_named(sense, word) for sense in senses for word in _wanted(concept)):
        return ""
    word, wanted = f"{concept.word!r}", f"{' '.join(concept.senses)!r}"
    if not meaning_found(concept):
        return f"No meaning of {word} fits {wanted}, so all are used: {_told(senses)}. --ideas lists them."
    if _told_by_company(concept):
        return ""  # what has to do with it says which is meant, as the rest of a brief does
    taken = chosen_senses(concept)
    others = [sense for sense in senses if sense not in taken]
    further = f"; others are {_told(others)}" if others else ""
    return f"{wanted} names no meaning of {word}. The nearest is taken: {_told(taken)}{further}. --ideas lists them."


def meaning_of_several(concept: Concept) -> str:
    """What to do instead where one meaning is wanted of several words: each may have its own. "" where it is of one."""
    several = usable_words(concept.word)
    if len(several) < 2 or not concept.senses:
        return ""
    meaning = " ".join(concept.senses)
    return f"Give each word alone, with its own meaning if it has several: {several[0]}={meaning}, {several[-1]}"


def is_coarse(sense: Sense, word: str) -> bool:
    """Whether a sense of `word` is of sex, or otherwise coarse, by the other words for it and for what it is a kind
    of."""
    from ..connotations.english import kind_of

    book = lexicon()
    above = book.related_ids(sense.id, "@", "@i")
    further = [one for broader in above for one in book.related_ids(broader, "@", "@i", "+")]
    words = (*sense.words, *(word for one in (*above, *further) for word in book.entry(one).words))
    own = (fold(word), *book.bases(fold(word)))
    others = {fold(one) for one in words} - {*own}
    return any("sexual" in one.split() or kind_of(one) in _COARSE for one in others)


def key_of(sense: Sense, word: str) -> tuple[str, tuple[Sense, ...]]:
    """The word that picks a sense of `word` from among its others, and all senses that it picks: no others, if there is
    such a word, and "" if no word picks it. It is one of its label, its synonyms or what it is a kind of, the first
    that serves best, else the commonest word of the senses beside it."""
    senses = lexicon().senses(fold(word))
    own = (fold(word), *lexicon().bases(fold(word)))
    near = _keys((sense.tag.removeprefix("to "), *sense.words, *_broader(sense)), own)
    beside = sorted(_keys(_around(sense), own), key=lambda key: -zipf(key))
    best: tuple[str, tuple[Sense, ...]] = ("", (sense,))
    for key in dict.fromkeys((*near, *beside)):
        scores = [_named(one, key) for one in senses]
        picked = tuple(one for one, score in zip(senses, scores, strict=True) if score >= max(scores) - _ALIKE)
        if sense in picked and (not best[0] or len(picked) < len(best[1])):
            best = key, picked
        if len(best[1]) == 1:
            break
    return best


def _keys(texts: Iterable[str], own: Sequence[str]) -> list[str]:
    """The words of some texts that may pick a sense: none that is too short, nor a form of the word itself."""
    tokens = (token for text in texts for token in tokenize(fold(text)))
    return [token for token in tokens if len(token) >= _SHORTEST_KEY and token not in own]


@lru_cache(maxsize=1 << 10)
def newer_word(word: str) -> tuple[str, ...]:
    """The everyday words that say a word which the lexicon lacks: by our list of newer words and those of hobbies
    (umami, thock), else the parts of a closed compound (rainproof); empty for a word that it knows, and any other."""
    if lexicon().known(word) or lexicon().bases(word):
        return ()
    if told := open_table("naming_senses.tsv").get(word):
        return tuple(told.split())
    parts = split_closed_compound(word, zipf)
    return tuple(parts) if len(parts) > 1 else ()


def other_meanings(word: str, left: Sequence[str]) -> tuple[str, ...]:
    """What the meanings of a word are but for those that `left` tells."""
    away = chosen_senses(Concept(word, tuple(left)))
    return tuple(told for sense in lexicon().senses(word) if sense not in away
                 if (told := sense.tag))  # fmt: skip


def _told(senses: Sequence[Sense]) -> str:
    """What senses mean, in words, each once: the first few."""
    labels = list(dict.fromkeys(sense.tag or sense.label for sense in senses))
    more = len(labels) - _MOST_TOLD
    return "; ".join([*labels[:_MOST_TOLD], *([f"and {more} more"] if more > 0 else [])])


def _wanted(concept: Concept) -> set[str]:
    return {word for meaning in concept.senses for word in fold(meaning).replace(",", " ").split()}


def _fit(sense: Sense, concept: Concept) -> float:
    return max((_named(sense, word) or _nearness(sense, word) for word in _wanted(concept)), default=0.0)


def _named(sense: Sense, wanted: str) -> float:
    """How surely a word names a sense: as a synonym, a neighbour or a broader word of it; 0 if it is none."""
    if any(wanted in fold(word).split() for word in (*sense.words, sense.tag)):
        return 1.0
    book = lexicon()
    if wanted in _around(sense):
        return 1.0 - _STEP
    # a part is of the kind that its whole is: a tail is an animal's
    above, height = book.related_ids(sense.id, "@", "@i", "#p"), 1
    while above and height < _HIGHEST:
        height += 1
        above = list(dict.fromkeys(other for one in above for other in book.related_ids(one, "@", "@i")))
        if any(fold(word) == wanted for one in above for word in book.entry(one).words):
            return 1.0 - _STEP * height
    return 0.0


def _told_by_company(concept: Concept) -> bool:
    """Whether the meaning wanted is told by an everyday word that names none but plainly has to do with the concept
    (turning=lathe)."""
    wanted = _wanted(concept)
    if any(_named(sense, word) for sense in lexicon().senses(fold(concept.word)) for word in wanted):
        return False
    return max((association(word, fold(concept.word)) or 0.0 for word in wanted), default=0.0) >= _COMPANY


def _around(sense: Sense) -> list[str]:
    """The words of the neighbouring senses."""
    beside = lexicon().related_ids(sense.id, "@", "@i", "~", "%p", "#p", "#s", "#m", "+")[:_BESIDE]
    return [fold(word) for one in beside for word in lexicon().entry(one).words]


def _nearness(sense: Sense, wanted: str) -> float:
    """How much a word that does not name a sense has to do with it."""
    words = (*map(fold, sense.words[1:3]), *_around(sense))
    near = [association(wanted, word) or 0.0 for word in words if word.isalpha()]
    return _NEARLY * max(near, default=0.0)


def _broader(sense: Sense) -> tuple[str, ...]:
    return tuple(lexicon().entry(above).words[0] for above in lexicon().related_ids(sense.id, "@")[:2])


def guide_words(concept: Concept) -> tuple[str, ...]:
    """The words that guide to the wanted meanings of a concept: those of the brief, then those of the chosen senses and
    of their broader ones. Empty if no meaning is wanted."""
    if not concept.senses:
        return ()
    found = {fold(part): None for meaning in concept.senses for part in fold(meaning).replace(",", " ").split()}
    if _told_by_company(concept):
        return tuple(found)
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


def unfit_in(phrase: str) -> str | None:
    """Why a word or set phrase should not be a name, or None. Plain words do no harm within a phrase (be mother)."""
    words = phrase.casefold().split()
    found = filter(None, map(unfit, words))
    return next((why for why in found if why != "plain" or len(words) == 1), None)


@cache
def _unfit_words() -> dict[str, str]:
    return dict(open_table("unfit_words.tsv").items())
