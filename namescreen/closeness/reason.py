"""A reason why two names are close: a sentence that knows what it is about, so that nobody has to read it for that."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["About", "Reason", "about"]


class About(StrEnum):
    """What a reason is about."""

    SAME = "the same letters"
    SHARED = "words that both have"
    INSIDE = "words that stand inside others in both"
    APPEARANCE = "appearance"
    SOUND = "sound"
    MEANING = "meaning"
    WHAT_IS_SAID = "what both say"
    TRANSLATION = "what one says in another language"
    WEAK = "weak words"
    WEAK_ALONE = "that only weak words are shared"
    OTHER = ""


class Reason(str):
    """A sentence, what it is `about`, and the `words` that it tells of: for sound how both are read."""

    about: About
    words: tuple[str, ...]

    def __new__(cls, text: str, about: About = About.OTHER, words: tuple[str, ...] = ()) -> Reason:
        """The sentence `text` as a reason."""
        reason = super().__new__(cls, text)
        reason.about, reason.words = about, words
        return reason


def about(reason: str) -> About:
    """What a reason is about; `About.OTHER` for a sentence that does not say."""
    return reason.about if isinstance(reason, Reason) else About.OTHER
