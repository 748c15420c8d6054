"""Results: a word of one language found in a name, and the sources that were searched."""

from __future__ import annotations

from dataclasses import dataclass, replace

__all__ = ["KINDS", "MATCHES", "SEVERITIES", "Coverage", "Reading", "stands_as_word"]

KINDS = (
    "vulgar",
    "excrement",
    "sex",
    "insult",
    "death",
    "disease",
    "crime",
    "dirt",
    "evil",
    "failure",
    "pain",
)
"""What makes a word unlucky on a product. Any other word has the kind ``ordinary``."""

SEVERITIES = ("ordinary", "mild", "awkward", "severe")
"""Severity 0 to 3 in words."""

MATCHES = (
    "exact",
    "without accents",
    "inflected",
    "inside",
    "heard as",
    "said in English",
    "one letter away",
)
"""The ways a name can match a word, plainest first."""


_WRITTEN, _HEARD = MATCHES[:3], MATCHES[4:6]


def stands_as_word(match: str, where: str) -> bool:
    """Whether a word so met (see `MATCHES`), there in a name, is met as a word: written as one, or heard as all of the
    name. One that only stands inside another word, or is a letter away, is not. Where no place is told it is the
    whole."""
    whole = not where or where.startswith("the whole name")
    return (match in _HEARD and whole) or (match in _WRITTEN and (whole or where.startswith("the word")))


@dataclass(frozen=True, slots=True)
class Reading:
    """A word of another language that a name contains, sounds like, or nearly equals.

    `severity` is how much it harms the name: 0 ordinary, 1 mild, 2 awkward, 3 severe. It is never above
    `base_severity`, how bad the word is by itself: a bad word deep inside a long name weighs less than the word
    alone. `abroad` says that few buyers know the language, so that it counts nothing. `meaning` None: a word of the
    language whose meaning is not known here. `frequency` is the word's Zipf value in that language (log10 of
    occurrences per thousand million words), None when not in its frequency list.
    """

    language: str
    word: str
    meaning: str | None
    kind: str
    severity: int
    match: str
    where: str
    frequency: float | None
    source: str
    base_severity: int = 0
    abroad: bool = False

    def __str__(self) -> str:
        meaning = self.meaning or "meaning not known here"
        grave = f"{SEVERITIES[self.base_severity]} there" if self.abroad else SEVERITIES[self.severity]
        return f"{self.language}: {self.word} ({meaning}), {self.match}, {self.where}; {grave}"

    @property
    def stands(self) -> bool:
        """Whether readers meet it as a word: it is written in the name as a word, or the whole name is heard as it."""
        return stands_as_word(self.match, self.where)

    def elsewhere(self) -> Reading:
        """The same reading where few of the buyers know the language: nothing against the name, and worth knowing where
        it is plainly a bad word there."""
        return replace(self, severity=0, abroad=self.severity > 1 and self.stands)

    def mild(self) -> Reading:
        """The same reading with a severe word shown by its first letter only; its kind still says what it
        is."""
        if self.base_severity < 3:
            return self
        return replace(self, word=f"{self.word[:1]}***", meaning=f"({self.kind}, masked)")

    def to_json(self) -> dict[str, object]:
        """The reading as plain values, field by field."""
        return {
            "language": self.language, "word": self.word, "meaning": self.meaning, "kind": self.kind,
            "severity": self.severity, "match": self.match, "where": self.where, "frequency": self.frequency,
            "source": self.source, "gravity": self.base_severity, "abroad": self.abroad,
        }  # fmt: skip

    @property
    def order(self) -> tuple[object, ...]:
        """Sorting key: worst first, then the plainest match, the most frequent word, and the language."""
        return (-self.severity, -self.base_severity, MATCHES.index(self.match), -(self.frequency or 0.0),
                self.language, self.word, self.where)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a language was checked with: so many words by frequency, so many unlucky words with meanings,
    whether its sounds are known, and which further sources of meanings were found."""

    language: str
    words: int
    unlucky: int
    sounds: bool
    meanings: tuple[str, ...]

    @property
    def how(self) -> str:
        """How names are read in the language, in words."""
        if self.language == "en":
            return "looked up as they are spelled"
        return "read aloud by its spelling rules" if self.sounds else "heard by its transcription only"

    def __str__(self) -> str:
        return (f"{self.language}: {self.words:,} words, {self.unlucky:,} unlucky words with meanings, {self.how}; "
                f"meanings from {', '.join(self.meanings)}")  # fmt: skip

    def to_json(self) -> dict[str, object]:
        """The coverage as plain values, field by field."""
        return {"language": self.language, "words": self.words, "unlucky": self.unlucky, "sounds": self.sounds,
                "meanings": list(self.meanings)}  # fmt: skip
