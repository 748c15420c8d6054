"""What a brief's words are wanted for: how much each word of a concept of several says, and which words of the goods
are what they are against (mice, of a mouse trap).

A fixed term is one idea: first light is not about all that is first. What a brief does not want (no fuss, against
moths) is no idea of it at all, and a name about it would mislead.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..lexicon import kinds, lexicon, zipf
from ..text import tokenize

__all__ = ["informative", "unwanted", "usable_words", "words_of_concept"]

_TELLING = 0.65  # the weight of the word of a fixed term that says most
_DESCRIBES, _PRAISES = 0.8, 0.5  # factors for a word that says how something is, and for one that praises or orders
_OF_A_TERM = 0.5  # factor for the words before the last one of a fixed term
_EMPTY = frozenset(
    "bit lot thing things something way kind sort put get got let make made take keep have feel own".split()
)
"""Words that say little beside another one (ours)."""
_NOT = frozenset("no not without never non zero anti".split())
_SHIELDS = frozenset("protect guard shield defend proof treat fight seal protection".split())
_LIST_ON = frozenset(("and", "or", "nor"))
_KEEPS = frozenset("keep hold ward fend drive shoo scare fight".split())
_AWAY = frozenset("out off away bay".split())
_FENDS = frozenset("deter repel prevent banish eliminate exclude discourage avoid".split())
_FENDERS = frozenset(
    "repellent repeller deterrent trap excluder remover killer scarer baffle barrier proof free removal control".split()
)
"""What follows the name of a pest or an ill that goods are against (mouse trap, stain remover, squirrel proof)."""
_ILLS = frozenset(
    "mouse mice rat rodent vermin slug snail moth fly wasp ant tick flea louse nit mosquito midge gnat weevil aphid "
    "draught draft damp mould mildew limescale odour odor glare".split()
)
"""What nobody wants, so that goods named after it are against it, whatever they are (mouse gate, fly mask; ours)."""
_LURES = frozenset("bait lure fishing rod tying toy costume plush print doll pad mat farm house hotel kit".split())
"""What follows the name of one where it is not meant (fly rod, computer mouse)."""
_REACH = 3  # words between the verb and away


def informative(frequency: float) -> float:
    """How informative a word of a Zipf frequency is, in [0, 1]."""
    return max(0.25, min(1.0, (6.6 - frequency) / 2.6))


def usable_words(text: str) -> tuple[str, ...]:
    """The words of a concept that names can be made from: those in letters a to z once folded."""
    return tuple(word for word in tokenize(text) if word.isascii() and word.isalpha())


def words_of_concept(text: str) -> dict[str, float]:
    """The words of a concept that names can be made from, each with its weight in [0, 1]: 1 for a concept of one word
    and for the word of several that says most; of the others the more the rarer it is, less for one that only says how
    something is, and of a fixed term, which is one idea, less for all. None that is said not to be wanted, so that
    "no fuss" has none."""
    words = usable_words(text)
    if len(words) == 1:
        return {words[0]: 1.0}
    denied = set(_denied(words))
    kept = [word for word in words if word not in denied | _NOT and "function word" not in kinds(word)]
    kept = [word for word in kept if word not in _EMPTY] or kept
    if not kept:
        return {} if denied else dict.fromkeys(words, _TELLING)
    told, full = {word: informative(zipf(word)) * _says(word) for word in kept}, 1.0
    if lexicon().known(" ".join(words)):  # a mountain goat is a goat
        told |= {word: told[word] * _OF_A_TERM for word in kept if word != words[-1]}
        full = _TELLING
    most = max(told.values())
    return {word: full * value / most for word, value in told.items()}


def _says(word: str) -> float:
    """What a word says as a part of a phrase, beside its rarity."""
    if {"laudatory", "number"} & kinds(word):
        return _PRAISES
    known = lexicon().bases_by_pos(word)
    says_what = not known or bool({"n", "v"} & set(known))
    return 1.0 if says_what and "quality" not in kinds(word) else _DESCRIBES


def unwanted(words: Sequence[str]) -> set[str]:
    """The words of goods that say what they are against, or do without: what they deny (without screws, anti-slip, no
    plastic), fend off (keep mice out, deter foxes) and have before a word for what does so (mouse trap, stain remover).
    `words` are those of a text in order, in lower case, hyphens taken apart."""
    found = set(_denied(words))
    for place, word in enumerate(words):
        bases = {word, *lexicon().bases(word)}
        after = words[place + 1 : place + 2 + _REACH]
        if bases & _FENDS or (word == "against" and _SHIELDS & {*_last_forms(words[:place])}):
            found.update(_listed(words[place + 1 :]))
        elif bases & _KEEPS:
            away = next((at for at, one in enumerate(after) if one in _AWAY), 0)
            found.update(one for one in after[:away] if "function word" not in kinds(one))
        elif bases & _FENDERS and place:
            found.add(words[place - 1])
        elif bases & _ILLS and after and _LURES.isdisjoint((after[0], *lexicon().bases(after[0]))):
            found.update((word,) if "n" in lexicon().bases_by_pos(after[0]) else ())
    return found


def _last_forms(words: Sequence[str]) -> Iterator[str]:
    """The last words of these, and their base forms."""
    for word in words[-_REACH:]:
        yield from (word, *lexicon().bases(word))


def _denied(words: Sequence[str]) -> Iterator[str]:
    """The words after one that denies them."""
    for place, word in enumerate(words):
        if word in _NOT:
            yield from _listed(words[place + 1 :])


def _listed(words: Sequence[str]) -> Iterator[str]:
    """The first word that says something, and what is joined to it (without glue or screws)."""
    joined = True
    for word in words:
        if word in _LIST_ON:
            joined = True
        elif "function word" not in kinds(word):
            if not joined:
                return
            yield word
            joined = False
