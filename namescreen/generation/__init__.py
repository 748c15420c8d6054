"""Candidates from concepts: the constructions of word-formation, their ranking, and steering by hand."""

from __future__ import annotations

from .blending import Blend, blends
from .brainstorming import Candidates, LeftOut, brainstorm, candidates
from .candidate import Candidate
from .constructions import CONSTRUCTIONS
from .ranking import PARTS
from .steering import Session, Step
from .taste import Taste

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
