"""The constructions, each with the word-formation it follows. A construction proposes; it does not judge."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..candidate import Proposal
from ..material import Material
from . import affixation, blend, changed, figure, found, pair, saying

__all__ = ["CONSTRUCTIONS", "FORMER", "ON_REQUEST"]

CONSTRUCTIONS: dict[str, Callable[[Material], Iterator[Proposal]]] = {
    "found": found.propose,
    "saying": saying.propose,
    "pair": pair.propose,
    "changed": changed.propose,
    "figure": figure.propose,
    "affix": affixation.propose,
    "foreign": found.propose_foreign,
    "local": found.propose_local,
    "blend": blend.propose,
}
"""Every construction by its name; each proposes lazily, the weightiest ideas first."""

ON_REQUEST = frozenset(("blend",))
"""Constructions that only serve where they are asked for: what they make seldom pleased readers."""

FORMER = (
    "compound", "clipping", "adjective + noun", "verb + noun", "noun of noun", "word pair", "alliteration", "echo",
    "respelling", "combining forms", "initials", "invented",
)  # fmt: skip
"""Constructions of earlier versions, whose names may stand in a shortlist."""
