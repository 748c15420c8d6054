"""How a name reads in other languages: unlucky words it is, holds, or sounds like; how readily it is said
there.

The function `readings` shares this module's name in the package's public API. The module is therefore
callable itself, so that ``namescreen.readings("KONA")`` works whichever of the two ``import`` has left there.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from types import ModuleType

from .dictionaries import Dictionary, Meaning
from .ease import Ease, ease
from .languages import LANGUAGES, language_name
from .lookup import coverage, readings
from .reading import KINDS, MATCHES, SEVERITIES, Coverage, Reading
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
    "language_name",
    "lookalikes",
    "readings",
]


class _CallableModule(ModuleType):
    def __call__(
        self,
        name: str,
        *,
        languages: Iterable[str] | None = None,
        dictionaries: Iterable[Dictionary | str | Path] | None = None,
    ) -> list[Reading]:
        """`readings`, under the module's own name."""
        return readings(name, languages=languages, dictionaries=dictionaries)


sys.modules[__name__].__class__ = _CallableModule
