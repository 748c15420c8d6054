"""Combining forms: what people hear in the beginning of a coined word (hydro: water, dermo: skin)."""

from __future__ import annotations

from functools import cache, lru_cache

from ..tables import open_table

__all__ = ["combining_form", "combining_parts"]

VARIES_FROM = 5
"""Letters of a form from which its last vowel may be another: shorter ones are in words by chance."""
VOWELS = "aeiou"


@cache
def _forms() -> dict[str, str]:
    """Every form, long ones without their last vowel, and its meaning."""
    listed = open_table("combining_forms.tsv").items()
    return {form.rstrip(VOWELS) if len(form) >= VARIES_FROM else form: meaning for form, meaning in listed}


def combining_parts() -> set[str]:
    """Every part that may be a `combining_form`."""
    return {form + vowel for form in _forms() for vowel in ("", *VOWELS)}


@lru_cache(maxsize=1 << 14)
def combining_form(part: str) -> str:
    """What the folded `part` of a coined word means, in English, if it is a combining form; else ""."""
    forms = _forms()
    if len(part) >= VARIES_FROM and part[-1] in VOWELS:
        return forms.get(part[:-1], "")
    return forms.get(part, "")
