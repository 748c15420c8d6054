"""What is worth knowing before a name is liked too much: unlucky readings, and marks it nearly is."""

from __future__ import annotations

from typing import Any

from ..brief import Brief
from ..readings import readings
from .candidate import Proposal

__all__ = ["Flags"]

_AWKWARD = 2  # severity (0 to 3) from which a reading keeps a name out
_NEAR = 0.93  # overall closeness from which a mark keeps a name out: identical or nearly so


class Flags:
    """Looks at names for one brief; `register` is a `namescreen.register.Register`, or None."""

    def __init__(self, brief: Brief, register: Any | None) -> None:
        self._languages = tuple(dict.fromkeys(("en", *brief.languages)))
        self._register = register

    def of(self, proposal: Proposal) -> tuple[str, ...] | None:
        """Remarks on a name, or None if it should not be shown at all."""
        remarks = []
        for reading in readings(proposal.text, languages=self._languages, dictionaries=()):
            if reading.severity >= _AWKWARD:
                return None
            if reading.severity == 1:
                remarks.append(f"{reading.language}: {reading.word} ({reading.meaning})")
        return tuple(dict.fromkeys(remarks))
