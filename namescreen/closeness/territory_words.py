"""Words for the territory in which a business trades, at the end of a name (Tugboat UK, Tugboat International): they
say where, not who, so that they keep no marks apart. A place that is no territory of business counts as any other word
(Tugboat Paris)."""

from __future__ import annotations

from collections.abc import Sequence

from ..lexicon import kinds, lexicon
from .weights import word_weight

__all__ = ["TERRITORY_ENDS", "is_added_to", "territory_at_end"]

_REACH = frozenset((
    "international internacional internationale internazionale intl worldwide global uk gb usa eu uae emea apac "
    "latam benelux"
).split())
"""How far a business reaches, whatever stands before it."""
_IN_CAPITALS = frozenset(("us", "dach"))
"""What is a word besides (us; roof, in German): a territory only where it alone is in capitals."""
_LANDS = frozenset((
    "europe european europa europeo america americas latinamerica asia asiapacific africa middleeast fareast "
    "scandinavia nordic nordics iberia balkans unitedkingdom greatbritain britain england scotland wales ireland "
    "eire unitedstates unitedstatesofamerica canada mexico brazil brasil argentina colombia peru uruguay paraguay "
    "venezuela ecuador bolivia panama costarica guatemala australia newzealand australasia oceania japan korea "
    "taiwan hongkong singapore malaysia indonesia thailand vietnam philippines india pakistan "
    "bangladesh srilanka nepal israel egypt morocco algeria tunisia nigeria kenya ghana ethiopia tanzania uganda "
    "senegal saudiarabia qatar kuwait bahrain unitedarabemirates germany deutschland france austria osterreich "
    "switzerland schweiz suisse svizzera italy italia spain espana portugal netherlands nederland holland belgium "
    "belgique belgie belgien luxembourg luxemburg denmark danmark norway norge sweden sverige finland suomi "
    "iceland poland polska czechia czechrepublic cesko slovakia slovensko hungary magyarorszag romania "
    "bulgaria greece hellas cyprus croatia hrvatska slovenia slovenija serbia srbija bosnia "
    "bosniaandherzegovina montenegro albania "
    "macedonia kosovo estonia eesti latvia latvija lithuania lietuva ukraine russia belarus moldova armenia "
    "azerbaijan kazakhstan uzbekistan turkiye"
).split())
"""Continents, the regions that businesses are divided by, and states, in English and as the larger ones call
themselves; from general knowledge and incomplete. What is a word besides, in English or as a given name, is not here
(turkey, china, jordan, georgia, jersey; Iceland's own name, island)."""
_PARTS = frozenset(
    [point + end for point in ("north", "south", "east", "west", "northeast", "northwest", "southeast", "southwest")
     for end in ("", "ern")] + ["central", "mid", "mainland", "continental"]
)  # fmt: skip
"""Words before a land that make one territory with it (North Korea, Southeast Asia)."""
_TERRITORIES = _REACH | _LANDS
_LONGEST = 4
"""The words of the longest (United States of America)."""
TERRITORY_ENDS = frozenset(one[at:] for one in _TERRITORIES for at in range(len(one))) | _IN_CAPITALS
"""What the last word may be."""
DISTINCTIVE = 0.45
"""The strength from which words are a name by themselves (`weights.word_weight`), as in `parts`: Air France is no
Air."""
_PART_OF_A_PHRASE = frozenset(("laudatory", "quality", "function word", "generic head", "people", "company form"))
_DESCRIBING = ("adj.", "adv.")


def territory_at_end(words: Sequence[str], name: str) -> int:
    """How many of the last words of a name are a territory; 0 if none is."""
    counts = range(min(_LONGEST, len(words) - 1), 0, -1)
    count = next((count for count in counts if _is_territory("".join(words[-count:]), name)), 0)
    while count and "".join(words[-count:]) not in _REACH and count + 1 < len(words) and words[-count - 1] in _PARTS:
        count += 1
    return count


def _is_territory(letters: str, name: str) -> bool:
    return letters in _TERRITORIES or (letters in _IN_CAPITALS and _is_in_capitals_alone(letters.upper(), name))


def is_added_to(words: Sequence[str], territory: str) -> bool:
    """Whether a `territory` is added to words which are a name by themselves: not where they only say what a business
    is, or how it is (Bank of England, Little Italy, New England), are weak, or make one phrase with a land (North
    Korea)."""
    senses = lexicon().senses(words[-1], labelled=False)
    describes = bool(senses) and senses[0].domain.startswith(_DESCRIBING)
    if describes or kinds(words[-1]) & _PART_OF_A_PHRASE:
        return False
    if max(word_weight(word).strength for word in words) < DISTINCTIVE:
        return False
    return territory in _REACH or not _is_one_unit(words[-1], territory)


def _is_one_unit(word: str, land: str) -> bool:
    """Whether a word and a land are read together: a part of it (North Korea), a title or an office (Captain America),
    a person's name (Kathy Ireland)."""
    senses = lexicon().senses(word, labelled=False)
    is_person = bool(senses) and senses[0].domain == "noun.person"
    return word in _PARTS or is_person or ("surname" in kinds(land) and "given name" in kinds(word))


def _is_in_capitals_alone(letters: str, name: str) -> bool:
    return letters in name.replace("(", " ").replace(")", " ").split() and not name.isupper()
