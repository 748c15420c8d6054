"""Candidates from concepts: the constructions of word-formation, their ranking, and steering by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door
from .candidate import Candidate

if TYPE_CHECKING:
    from .blending import Blend as Blend
    from .blending import blends as blends
    from .brainstorming import Candidates as Candidates
    from .brainstorming import LeftOut as LeftOut
    from .brainstorming import brainstorm as brainstorm
    from .brainstorming import candidates as candidates
    from .constructions import CONSTRUCTIONS as CONSTRUCTIONS
    from .ranking import PARTS as PARTS
    from .steering import Session as Session
    from .steering import Step as Step
    from .taste import Taste as Taste

__all__ = [
    "CONSTRUCTIONS",
    "PARTS",
    "Blend",
    "Candidate",
    "Candidates",
    "LeftOut",
    "Session",
    "Step",
    "Taste",
    "blends",
    "brainstorm",
    "candidates",
]

__getattr__ = lazy_door(
    __name__,
    {
        **dict.fromkeys(("Blend", "blends"), "blending"),
        **dict.fromkeys(("Candidates", "LeftOut", "brainstorm", "candidates"), "brainstorming"),
        **dict.fromkeys(("Session", "Step"), "steering"),
        "CONSTRUCTIONS": "constructions",
        "PARTS": "ranking",
        "Taste": "taste",
    },
)
