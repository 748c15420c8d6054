"""64-bit signatures of strings: a cheap lower bound on how many edits part two of them.

A signature counts the characters of a string in unary, up to two or three of each: a string with at least
one e has the first of e's bits set, with at least two the second. Every bit set in one signature and not in
the other is a character that one string has and the other lacks. An insertion or deletion settles one such
character, a substitution one on each side, a swap of neighbours none; so the larger of the two counts of bits
is never more than the OSA distance, and their sum never more than the distance of insertions and deletions
(Indel). Counting bits is some hundred times cheaper than aligning.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Words = NDArray[np.uint64]

__all__ = ["LETTERS", "PROTOTYPES", "lacking", "lengths", "one_signature", "popcount", "signatures"]

# Byte -> how many occurrences of it are counted: three for the letters most common in English words, two for
# the other letters. Four more bits count all other characters together. Characters whose shapes are easily
# taken for one another (`confusable_skeleton`) count as one, so the bound holds for shapes too.
PROTOTYPES = str.maketrans("il058", "11osb")
"""Easily confused characters, each with its prototype: `confusable_skeleton` one character at a time."""
_PROTOTYPES = bytes.maketrans(b"il058", b"11osb")
LETTERS: dict[bytes, int] = {bytes([c]): 2 for c in b"abcdefghjkmopqrstuvwxyz1n"}
LETTERS.update({bytes([c]): 3 for c in b"aeinorst1"})
LETTERS.pop(b"i")
_MOST = {letter.decode(): most for letter, most in LETTERS.items()}
_OTHER = 5  # 17 * 2 + 8 * 3 = 58 bits for letters, five for whatever else


def _counts(blob: NDArray[np.uint8], starts: NDArray[np.int64], chosen: NDArray[np.bool_]) -> NDArray[np.int64]:
    sums = np.zeros(len(blob) + 1, np.int32)
    np.cumsum(chosen, out=sums[1:])
    return (sums[starts[1:]] - sums[starts[:-1]]).astype(np.int64)


def signatures(blob: NDArray[np.uint8], starts: NDArray[np.int64]) -> Words:
    """The signature of each string of a UTF-8 blob whose n + 1 boundaries are `starts`."""
    result = np.zeros(len(starts) - 1, np.uint64)
    bit = 0
    blob = np.frombuffer(blob.tobytes().translate(_PROTOTYPES), np.uint8)
    rest = np.ones(256, bool)
    rest[0x80:0xC0] = False  # the further bytes of a character that takes several
    for letter, most in LETTERS.items():
        rest[letter[0]] = False
        found = _counts(blob, starts, blob == letter[0])
        for needed in range(1, most + 1):
            result |= (found >= needed).astype(np.uint64) << np.uint64(bit)
            bit += 1
    found = _counts(blob, starts, rest[blob])
    for needed in range(1, _OTHER + 1):
        result |= (found >= needed).astype(np.uint64) << np.uint64(bit)
        bit += 1
    return result


def one_signature(text: str) -> np.uint64:
    """The signature of one string."""
    result = bit = 0
    rest = text.translate(PROTOTYPES)
    left = len(rest)
    for letter, most in _MOST.items():
        found = rest.count(letter)
        left -= found
        result |= ((1 << min(found, most)) - 1) << bit
        bit += most
    return np.uint64(result | ((1 << min(left, _OTHER)) - 1) << bit)


def lengths(blob: NDArray[np.uint8], starts: NDArray[np.int64]) -> NDArray[np.int64]:
    """The number of characters of each string of a UTF-8 blob."""
    return _counts(blob, starts, (blob & 0xC0) != 0x80)


def popcount(bits: Words) -> NDArray[np.uint8]:
    """How many bits are set in each number."""
    if hasattr(np, "bitwise_count"):
        counted: NDArray[np.uint8] = np.bitwise_count(bits)
        return counted
    return np.asarray(_TABLE[bits.view(np.uint16)].reshape(-1, 4).sum(axis=1), np.uint8)


_TABLE = (
    np.array([n.bit_count() for n in range(1 << 16)], np.uint8)
    if not hasattr(np, "bitwise_count")
    else (np.zeros(0, np.uint8))
)


def lacking(one: np.uint64, others: Words) -> NDArray[np.uint8]:
    """The larger count of characters that one string has and the other lacks: at most their OSA distance."""
    return np.maximum(popcount(one & ~others), popcount(others & ~one))
