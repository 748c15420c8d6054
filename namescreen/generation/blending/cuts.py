"""Every way to cut two words and join the pieces: the candidate blends, before any judgement.

The kinds of joining follow the word-formation handbooks (Bauer, English Word-Formation, 1983; Plag,
Word-Formation in English, 2003; from memory): the beginning of one word with the ending of the other, with or
without shared letters (blend proper); the beginnings of both (clipping compound); a blend with a linking
vowel (work-a-holic); one word set inside the other in the place of a stretch like it (ambi-sex-trous).
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from typing import NamedTuple

from .source_word import Source

__all__ = ["KINDS", "Cut", "cuts", "shared"]

KINDS = ("joined", "turned", "beginnings", "linked", "inside", "endings")


class Cut(NamedTuple):
    """One candidate: its text, how it was joined, and which letters of the sources it holds.

    `front` letters are kept from the beginning of `first` (which may be the second source, if `kind` is
    "turned"), and the last `back` letters from the end of `second`; together they may be more than the text,
    which is the overlap. For "beginnings" `back` counts from the beginning of `second`, for "endings" `front`
    from the end of `first`; for "inside" `front` and `back` are what is kept of the outer word, `first`.
    """

    text: str
    kind: str
    first: Source
    second: Source
    front: int
    back: int
    link: str = ""

    @property
    def overlap(self) -> int:
        """Letters that belong to both sources at once."""
        return max(0, self.front + self.back - len(self.text)) if self.kind in ("joined", "turned") else 0


def cuts(first: Source, second: Source, kinds: Collection[str] = KINDS) -> list[Cut]:
    """All candidates of two sources that are joined in one of these ways, each text once, in the order of
    `KINDS`."""
    found: dict[str, Cut] = {}
    sources = (first.letters, second.letters)
    for kind, make in _MAKERS.items():
        if kind in kinds:
            for cut in make(first, second):
                if cut.text not in sources and cut.text not in found and len(cut.text) > 2:
                    found[cut.text] = cut
    return list(found.values())


def _joined(first: Source, second: Source, kind: str = "joined") -> Iterator[Cut]:
    a, b = first.letters, second.letters
    for front in range(1, len(a) + 1):
        for start in range(len(b)):
            text = a[:front] + b[start:]
            yield Cut(text, kind, first, second, shared(text, a), shared(text[::-1], b[::-1]))


def _beginnings(first: Source, second: Source) -> Iterator[Cut]:
    a, b = first.letters, second.letters
    for front in range(1, len(a) + 1):
        for back in range(2, min(5, len(b) - 1) + 1):
            yield Cut(a[:front] + b[:back], "beginnings", first, second, front, back)


def _linked(first: Source, second: Source) -> Iterator[Cut]:
    a, b = first.letters, second.letters
    for front in range(2, len(a) + 1):
        if a[front - 1] in "aeiou":
            continue
        for start in range(len(b) - 2):
            if b[start] not in "aeiouy":
                for link in "oai":
                    yield Cut(a[:front] + link + b[start:], "linked", first, second, front, len(b) - start, link)


def _inside(outer: Source, inner: Source) -> Iterator[Cut]:
    """The inner word whole, in the place of a stretch of the outer that shares letters with it."""
    a, b = outer.letters, inner.letters
    for front in range(1, len(a) - 1):
        for end in range(max(front + 1, front + len(b) - 2), min(front + len(b) + 1, len(a) - 1) + 1):
            gone = a[front:end]
            if len(set(gone) & set(b)) >= 2 and gone != b:
                yield Cut(a[:front] + b + a[end:], "inside", outer, inner, front, len(a) - end)


def _endings(first: Source, second: Source) -> Iterator[Cut]:
    a, b = first.letters, second.letters
    for front in range(1, min(4, len(a) - 1) + 1):
        for start in range(len(b)):
            yield Cut(a[-front:] + b[start:], "endings", first, second, front, len(b) - start)


def shared(one: Sequence[str], other: Sequence[str]) -> int:
    """How many items two sequences share from their start."""
    many = 0
    for mine, theirs in zip(one, other, strict=False):
        if mine != theirs:
            break
        many += 1
    return many


def _turned(first: Source, second: Source) -> Iterator[Cut]:
    return _joined(second, first, "turned")


def _either_inside(first: Source, second: Source) -> Iterator[Cut]:
    yield from _inside(first, second)
    yield from _inside(second, first)


_MAKERS: dict[str, Callable[[Source, Source], Iterator[Cut]]] = {
    "joined": _joined, "turned": _turned, "beginnings": _beginnings, "linked": _linked, "inside": _either_inside,
    "endings": _endings,
}  # fmt: skip
