"""The scorer that a search uses unless another is given: the closeness room."""

from __future__ import annotations

from .hit import Scorer

__all__ = ["standard"]


def standard() -> Scorer:
    """Closeness in appearance, sound and meaning."""
    from .. import closeness

    return closeness
