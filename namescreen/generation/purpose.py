"""What goods are for, where that tells more of them than their name does.

A ring for freeing fishing lures is no jewel, and a board under a beehive no table: words for a form or a part name no
kind of goods by themselves. What they are for, what they do and what stands before them does.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from ..lexicon import kinds, lexicon
from .vocabulary import pos_of
from .vocabulary import word as facts

__all__ = ["FORM", "MODIFIES", "NAMED", "SERVED", "names_again", "purpose_weights"]

NAMED, MODIFIES = 0.95, 0.7
"""The weight of a noun that names the goods, beside 1 for a concept, and of one before it in a compound."""
FORM = 0.3  # the weight of a word for a form or a part
SERVED, _DONE = 0.8, 0.55  # of what such goods are for, and of what they do
_FORMS = frozenset(
    "ring band board strap clip attachment set kit cord wheel hook strip rod pole bar plate pad frame guide tool "
    "device gadget aid mount sleeve tag cap pin roll stick sheet panel block wedge channel template jig sensor "
    "system piece unit adapter insert accessory part fitting gauge grip handle line loop peg disc spring stop "
    "holder stand rest base arm tube pipe plug bracket clamp catch lever knob bead patch cover guard shield stamp "
    "thing pick switch trap collar module slider probe dial valve button nozzle tip head bit hinge bolt washer "
    "bearing rail shim jack".split()
)
"""Words that say what shape goods have, or that they are a part or an aid, not what kind they are (ours)."""
_SERVES = frozenset("for that under over which to".split())
_DOES = frozenset(("that", "which", "to"))
_WHERE = frozenset("against through around behind beside near above".split())
_SPOTS = frozenset("hole gap edge corner side end top line spot surface wall inside outside middle".split())
"""Words for where something is done, which tell no kind of goods either (ours)."""
_ARTICLES = frozenset(("a", "an", "the"))
_OPENING = 3  # words from the beginning of a sentence in which goods are looked for
_NO_THINGS = frozenset(("noun.person", "noun.group", "noun.state", "noun.time", "noun.cognition"))


def purpose_weights(
    words: Sequence[str], tokens: Sequence[str], found: Mapping[str, float], away: set[str]
) -> dict[str, float]:
    """The weights of words of the goods that tell what they are for, where these are more than `found` has for them; of
    a head that is a word of form, less, if what it is for is told. `words` are those of the text, `tokens` with their
    marks of punctuation, `away` what the goods are against."""
    start = next((at for at, word in enumerate(words) if word in _SERVES and at), 0)
    before = [word for word in words[:start] if word in found]
    if not start or not before:
        return {}
    end = next((at + 1 for at in range(start, len(words)) if tokens[at] != words[at]), len(words))
    doing = {after for serves, after in pairwise(words) if serves in _DOES}
    served = [word for word in words[start + 1 : end] if word in found and word not in away | _WHERE]
    things = {word for word in served if _is_thing(word) and word not in doing}
    of_form = not {before[-1], *lexicon().bases(before[-1])}.isdisjoint(_FORMS)
    if not things:
        return {}
    followed = {word for word, after in pairwise(words[start:end]) if after in things}
    owners = {after for of, after in pairwise(words[start:end]) if of == "of"}
    weights, first = {}, True
    for word in served:
        least = 0.0 if not of_form and word not in things - followed else _DONE
        if word in things - followed and (first or word in owners):
            least, first = SERVED if of_form else MODIFIES, False
        weights[word] = max(found[word], least)
    if of_form:
        weights[before[-1]] = FORM
        if len(before) > 1 and _is_thing(before[-2]):
            weights[before[-2]] = MODIFIES
    return weights


def _is_thing(word: str) -> bool:
    """Whether a word names a thing that goods can be for, and not who buys them."""
    known, bases = lexicon().bases_by_pos(word), lexicon().bases(word) or (word,)
    if not _SPOTS.isdisjoint((word, *bases)):
        return False
    noun = ("n" in known or not known) and not word.endswith(("ing", "ed")) and pos_of(bases[0]) in ("n", "v")
    return noun and "people" not in kinds(word) and facts(bases[0]).domain not in _NO_THINGS


def names_again(words: Sequence[str], said: Mapping[str, float]) -> bool:
    """Whether a sentence about goods begins with what they are, as "a clip that ..." or by a word that these were
    `said` to be, not with a verb, a pronoun or what there is beside them (city walkers throw away an umbrella)."""
    first = next((word for word in words if word not in _ARTICLES), "")
    if not first or "function word" in kinds(first) or pos_of(first) == "v":
        return False
    if words[0] in ("a", "an"):
        return True
    named = {form for word, weight in said.items() if weight >= NAMED for form in (word, *lexicon().bases(word))}
    return any(form in named for word in words[:_OPENING] for form in (word, *lexicon().bases(word)))
