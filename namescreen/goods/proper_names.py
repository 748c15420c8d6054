"""Words that name someone or something: surnames, and what one maker has coined."""

from __future__ import annotations

import math
from functools import lru_cache

from ..lexicon import Sense, frequency_languages, kinds, lexicon, name_rank, translations, zipf
from ..lexicon.translation import compound_parts
from ..text.inflection import other_number
from .broader import names_above
from .places import place_of

__all__ = [
    "after_given_name", "has_form_of_surname", "is_proper", "is_surname", "is_trade_name", "listed_surname",
]  # fmt: skip

SURNAME_ENDINGS = ("sson", "qvist", "quist", "wicz", "owski", "ewski", "owska", "ewska", "opoulos", "oglu", "escu",
                   "shvili", "dottir", "ovich", "evich", "enko", "strom", "ingham", "huizen", "meyer",
                   "meier", "combe", "thorpe", "thwaite", "worth", "berger", "hoffer", "hofer", "inski", "ynski",
                   "auskas", "hauser", "huber", "schneider", "macher", "mueller", "bauer", "hauer", "schmidt",
                   "schmitt", "schmied", "becker", "fischer", "schuster", "gruber")  # fmt: skip
OF_TRADES = ("schneider", "macher", "mueller", "hauer", "schmidt", "schmitt", "schmied", "schuster", "becker")
"""Words for trades in which surnames end that a German compound makes; from memory."""
SURNAME_BEGINNINGS = ("mc", "fitz", "vander", "vanden")
"""Endings and beginnings of surnames that few other words have; from memory."""
PATRONYMICS = ("sen", "son", "sson", "sdottir", "sdotter", "datter", "ovich", "ovic", "evich", "evic", "owicz",
               "ewicz", "escu", "opoulos", "akis", "idis", "iadis", "oglu", "enko", "chuk", "czyk")  # fmt: skip
"""What makes a surname of a first name; from memory."""
LEAST_GIVEN = 4
SURE = 0.75
"""How sure a translation must be for a word of another language to be one, and no surname by its form alone."""
LEAST_SURNAME = 7
SHORTEST_NAME = 4
WELL_KNOWN = 500
KNOWN_BEARERS, AT_ONE, SLOPE = 4500, 5.85, 0.65
"""The rank up to which a word may be a surname first; and what Zipf value its bearers explain, by the logarithm of the
rank: half more than surnames of that rank have that are no words (langley, 994th, 3.4; seen on a dozen of them)."""
OF_PLACES = ("wood", "ford", "ley", "ton", "croft", "field", "bourne", "brook", "dale", "hurst", "worth", "head")
"""Endings of compounds that are names of places first, and surnames by these."""
ALSO_WORDS = frozenset(
    """
    reed moss may marsh drake warren curry hardy moody huff barber baker brewer butler griffin mason weaver warden
    packer shoemaker valentine mace hooker bourgeois looney motley blocker peeler smiley garner
""".split()
)
"""Surnames whose other meaning is readily recognised, of all those that are ordinary words too and that a dictionary
gives hardly any use; from memory. Others are known as names first (cole, hart, perry, cooper)."""
_RECIPES = frozenset(("cheese", "wine", "alcohol", "dish", "bread", "sauce", "sausage", "herb", "edible fruit"))


def is_proper(sense: Sense, word: str) -> bool:
    """Whether the lexicon writes `word` with a capital in this sense."""
    return next((form for form in sense.words if form.lower() == word), word)[:1].isupper()


@lru_cache(maxsize=1 << 13)
def is_trade_name(word: str) -> bool:
    """Whether WordNet holds `word` as a maker's coinage: marked as a trademark, or a thing with a capital
    letter."""
    found = False
    for sense in lexicon().senses(word, labelled=False):
        marked = any(r.kind == "usage" and "trademark" in lexicon().entry(r.sense_id).words
                     for r in lexicon().relations(sense))  # fmt: skip
        if marked or (is_proper(sense, word) and _is_made(sense)):
            found = True
        elif sense.count:
            return False
    return found and not kinds(word) & {"place"}


def _is_made(sense: Sense) -> bool:
    """A thing that a maker may name; dishes, cheeses and wines take their capitals from places and people."""
    if sense.domain == "noun.food":
        return not names_above(sense.id) & _RECIPES
    if sense.domain == "noun.communication":  # a site is an instance of its kind; languages are no instances
        return bool(lexicon().related_ids(sense.id, "@i"))
    return sense.domain in ("noun.artifact", "noun.substance")


def has_form_of_surname(word: str) -> bool:
    """Whether `word` is built like a surname of some language (TMEP 1211.01(a)(vi): structure and pronunciation)."""
    return len(word) >= LEAST_SURNAME and (word.endswith(SURNAME_ENDINGS) or word.startswith(SURNAME_BEGINNINGS))


def is_patronymic(word: str) -> bool:
    """Whether a word that no dictionary has is a first name with what makes a surname of it (Haraldsen)."""
    if lexicon().known(word) or place_of(word) is not None or "given name" in kinds(word):
        return False
    stems = (word.removesuffix(end) for end in PATRONYMICS if word.endswith(end))
    full = ((stem, f"{stem}a", f"{stem}e", f"{stem}o") for stem in stems if len(stem) >= LEAST_GIVEN)
    return any("given name" in kinds(name) and _is_only_name(name) for names in full for name in names)


def _is_only_name(word: str) -> bool:
    return all(is_proper(sense, word) for sense in lexicon().senses(word, labelled=False))


@lru_cache(maxsize=1 << 13)
def is_surname(word: str) -> bool:
    """Whether `word` is primarily merely a surname (TMEP 1211): listed, and no ordinary word, place or first name."""
    word, rank = listed_surname(word)
    if rank is None:  # an ending alone makes no surname: someone must be found to bear it
        if is_patronymic(word):
            return True
        if not has_form_of_surname(word):
            return False
        borne = word.startswith(SURNAME_BEGINNINGS) or any(zipf(word, one) for one in ("en", *frequency_languages()))
        borne = borne or (word.endswith(OF_TRADES) and bool(compound_parts(word, "de")))  # brettschneider
        foreign = any(one.score >= SURE for one in translations(word))  # a hérisson is a hedgehog
        return borne and not lexicon().known(word) and place_of(word) is None and not foreign
    if "place" in kinds(word) or place_of(word) is not None or (name_rank(word, "given name") or rank) < rank:
        return False
    common = [sense for sense in lexicon().senses(word, labelled=False) if not is_proper(sense, word)]
    if common and word in ALSO_WORDS:  # not primarily merely a surname (TMEP 1211.01(a)(ii))
        return False
    uses = sum(sense.count for sense in common)
    forgotten = uses <= 1 and rank <= WELL_KNOWN  # smith: the name outlived it
    return forgotten or not common or (not uses and _is_name_before_all(word, rank, common[0]))


def _is_name_before_all(word: str, rank: int, leading: Sense) -> bool:
    """Whether a word for a trade or rank (thatcher), or a compound like a place's name (greenwood), is hardly more used
    than those who are so called explain: then it is a surname to most (TMEP 1211.01(a)(ii))."""
    like_name = leading.domain == "noun.person" or (
        word.endswith(OF_PLACES) and any(lexicon().known(word.removesuffix(end)) for end in OF_PLACES)
    )
    return like_name and rank <= KNOWN_BEARERS and zipf(word) <= AT_ONE - SLOPE * math.log10(rank)


def listed_surname(word: str) -> tuple[str, int | None]:
    """`word`, or the surname whose bearers it names (Brandreths), with its rank; None if the list has neither."""
    several = word.endswith("s") and len(word) > SHORTEST_NAME and not lexicon().known(word)
    bearers = other_number(word) if several else ()
    either = (word, *sorted(one for one in bearers if len(one) < len(word)))
    return next(((one, rank) for one in either if (rank := name_rank(one)) is not None), (word, None))


def after_given_name(words: tuple[str, ...]) -> str:
    """The word after a first name, as whose surname it is read whatever it is made of: the name is someone's as a whole
    (TMEP 1211.01(b)(iii)). "" if the first word is more than a first name."""
    if len(words) != 2 or "given name" not in kinds(words[0]):
        return ""
    ordinary = any(not is_proper(one, words[0]) for one in lexicon().senses(words[0], labelled=False))
    return "" if ordinary or place_of(words[0]) is not None else words[1]
