"""Candidates from concepts: the constructions of word-formation, their ranking, and steering by hand."""

from .blending import Blend, blends

__all__ = ["Blend", "blends"]
