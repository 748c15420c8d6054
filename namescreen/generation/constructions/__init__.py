"""The constructions, each with the word-formation it follows. A construction proposes; it does not judge."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..candidate import Proposal
from ..material import Material
from . import affixation, blend, clipping, combining, compound, echo, initials, invented, phrase, respelling

__all__ = ["CONSTRUCTIONS"]

CONSTRUCTIONS: dict[str, Callable[[Material], Iterator[Proposal]]] = {
    "compound": compound.propose,
    "blend": blend.propose,
    "affix": affixation.propose,
    "clipping": clipping.propose,
    "adjective + noun": phrase.adjective_noun,
    "verb + noun": phrase.verb_noun,
    "noun of noun": phrase.noun_of_noun,
    "word pair": phrase.pair,
    "alliteration": echo.alliteration,
    "echo": echo.reduplication,
    "respelling": respelling.propose,
    "combining forms": combining.propose,
    "initials": initials.propose,
    "invented": invented.propose,
}
"""Every construction by its name; each proposes lazily, the weightiest ideas first."""
