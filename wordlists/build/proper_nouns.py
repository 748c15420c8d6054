"""Proper nouns in the meanings of our lists, which are written in small letters: "went to gloucester in the rain".

A word gets its capital if WordNet 3.0 has it with a capital alone (Gloucester, African), if it is one of `NAMES`, and
as part of a name of several words (`PHRASES`; Saint, King or Queen before a given name). Words that are names now and
then (china, march, bath) keep their small letter, so a name may be missed, but a thing is not called one.
"""

from __future__ import annotations

import re
from functools import cache

from namescreen.lexicon import kinds, lexicon
from namescreen.tables import open_table

__all__ = ["with_capitals"]

NAMES = frozenset(
    """
    roman romans welsh japan alps pacific arctic victorian oxford morocco danish argentine easter troy shiva
    bible berlin wales cupid merlin goliath soviet bach messiah argus argonaut argonauts napoleon napoleons
    henrys chile ottoman somerset manhattan brazil geordie tangier ulster nelsons snoopys newtons franklin
    thanksgiving nativity gospels dorset suffolk oz quixote quixotes rapunzel pooh poppins snowdon northumbrian
    iceni languedoc epsom bodmin runnymede siena dolittle dolittles neverland neverlands kew kublai orkney
    cevennes saens scutari marner lohengrin amazonia muffet quasimodo tuscany bavaria devon kent
    """.split()
)
"""Names that no dictionary here has, or that are other words too and are meant as names in such meanings."""
PHRASES = tuple(
    phrase.strip()
    for phrase in """
    New Zealand, New Year, New York, New Orleans, New Mexico, New England, Great Bear, Old English, Old French,
    Old Norse, Old Irish, West Country, King Arthur, Silk Road, Van Gogh, Spice Islands, South America, South
    American, North America, North American, North Atlantic, South Pacific, West Africa, West Indian, Western
    Isles, Don Quixote, Bonfire Night, Dog Star, Irish Sea, North Sea, Baltic Sea, Red Sea, Stars and Stripes,
    Golden Fleece, Jazz Age, Milky Way, Christmas Day, May Day, Costa Rican, Costa Rica, Machu Picchu, Huck
    Finn, Trafalgar Square, Shrove Tuesday, North Star, Robin Hood, Lake District, Lord Chancellor, Kublai Khan,
    Sun King, Southern Cross, River Severn, Easter Island, Peter Rabbit, Robinson Crusoe, Sherlock Holmes,
    Mother Goose, Captain Hook, Puss in Boots, Tom Thumb, Peter Pan, Marco Polo, Guy Fawkes, Father Christmas,
    Jack Frost, Middle Ages, Big Ben, Isle of Wight, Isle of Man, Black Forest
    """.replace("\n", " ").split(",")
)
"""Names of several words."""
_TITLES = frozenset(("saint", "st", "king", "queen"))
_NOT_NAMES = frozenset("dodgem manzanilla frisbees oman omans otho esop hebes kentish scot als lps ara ull ido".split())
"""What WordNet has with a capital alone, and meanings as another word."""
_WORD = re.compile(r"[^\W\d_]+")
_PHRASE = re.compile(rf"\b(?:{'|'.join(map(re.escape, PHRASES))})\b", re.IGNORECASE)
_WRITTEN = {" ".join(phrase.lower().split()): " ".join(phrase.split()) for phrase in PHRASES}


def with_capitals(meaning: str) -> str:
    """A meaning with the capitals of its proper nouns."""
    told = _PHRASE.sub(lambda found: _WRITTEN[" ".join(found[0].lower().split())], meaning)
    words = list(_WORD.finditer(told))
    for at, found in enumerate(words):
        word = found[0]
        named = _is_name(word) or (at > 0 and words[at - 1][0].lower() in _TITLES and _is_given(word))
        titled = word in _TITLES and at + 1 < len(words) and _is_given(words[at + 1][0].lower())
        if word.islower() and (named or titled):
            told = told[: found.start()] + word[0].upper() + told[found.start() + 1 :]
    return told


@cache
def _is_given(word: str) -> bool:
    return word in open_table("given_names.tsv")


@cache
def _is_name(word: str) -> bool:
    if word in NAMES:
        return True
    if len(word) < 3 or word in _NOT_NAMES or "function word" in kinds(word):
        return False
    forms = [
        name.replace("_", " ")
        for lemma in dict.fromkeys((word, *lexicon().bases(word)))
        for sense in lexicon().senses(lemma, labelled=False)
        for name in lexicon().entry(sense.id).words
        if name.lower().replace("_", " ") == lemma
    ]
    return bool(forms) and all(form[0].isupper() and form[1:].islower() for form in forms)
