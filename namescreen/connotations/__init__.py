"""How a name reads in other languages: unlucky words it equals, contains or sounds like, and how easily it is said
there."""

from __future__ import annotations

from ..lexicon.language_codes import LANGUAGES, language_name
from .ease import Ease, ease
from .english import english_coverage, english_readings
from .lookup import coverage, not_read, readings
from .meanings import Dictionary, Meaning
from .results import KINDS, MATCHES, SEVERITIES, Coverage, Reading
from .scripts import LookAlikes, lookalikes

__all__ = [
    "KINDS",
    "LANGUAGES",
    "MATCHES",
    "SEVERITIES",
    "Coverage",
    "Dictionary",
    "Ease",
    "LookAlikes",
    "Meaning",
    "Reading",
    "coverage",
    "ease",
    "english_coverage",
    "english_readings",
    "language_name",
    "lookalikes",
    "not_read",
    "readings",
]
