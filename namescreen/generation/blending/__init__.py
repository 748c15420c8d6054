"""Blends: two words made one (motor + hotel, motel)."""

from .model import Blend, blends

__all__ = ["Blend", "blends"]
