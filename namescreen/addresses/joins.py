"""Effects of joining words: doubled letters, and coarse words that appear across a join."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import accumulate, pairwise

from ..lexicon import kinds, zipf
from ..text import split_closed_compound

__all__ = ["COARSE", "doubled_at_join", "parts_of", "unlucky_break"]

COARSE = frozenset(
    "anal anus arse arses ass asses bastard bitch bollocks boob boobs bum bums butt clit cock cocks crap cum cunt dick "
    "dicks dildo dyke fag fags faggot fart farts fuck fucks genital hooker horny jizz milf naked nazi nipple nude "
    "orgasm penis penises piss poof poop porn prick pricks pube pussy rape raped rapes rapist rapists retard scrotum "
    "semen sex sexy shag shit shits slag slut sluts sperm spunk tit tits titty tosser turd turds twat vagina wank "
    "whore whores".split()
)
"""Coarse English words that no join should spell; written by hand, no source."""

_LEAST = 4
"""The length from which a coarse word counts wherever it crosses a join. Shorter ones are in too many good names
(glass exit), and count only where all the other letters read as words too."""
_LONGEST = 14
_KNOWN, _RECOGNISED, _COMMON = 2.0, 3.0, 4.0
"""Zipf frequencies from which a word is known; from which it is recognised in a run of letters (once in a million
words; both as in `text.split_closed_compound`); and from which a word of three letters is recognised."""
_SMALL = frozenset("a i am an as at be by do go he if in is it me my no of on or so to up us we".split())


def parts_of(words: Sequence[str]) -> tuple[str, ...]:
    """`words` with closed compounds of known words divided: claysill is clay and sill."""
    return tuple(part for word in words for part in split_closed_compound(word, zipf))


def doubled_at_join(words: Sequence[str]) -> tuple[str, str] | None:
    """The first two words that meet in the same letter, so that one of the two is easily dropped."""
    pairs = pairwise(words)
    return next(((one, other) for one, other in pairs if one[-1] == other[0] and one[-1].isalpha()), None)


@lru_cache(maxsize=1 << 12)
def unlucky_break(words: tuple[str, ...]) -> str | None:
    """A coarse English word that readers may see in innocent words once their spaces go, the longest; or None.

    It crosses a join and has four letters or more; or it crosses a join, or lies in a word that nobody knows, and
    all the other letters read as words too. A coarse word that is a word of the name itself does not count.
    """
    joined = "".join(words)
    if not joined.isascii() or not any(coarse in joined for coarse in COARSE):
        return None
    parts = parts_of(words)
    bounds, joins = _starts(words), _starts(parts)
    readable = {small: (_readable(joined, small), _readable(joined, small, -1)) for small in (True, False)}
    found = set()
    for start in range(len(joined)):
        for end in range(start + 3, min(len(joined), start + _LONGEST) + 1):
            word = joined[start:end]
            if word not in COARSE or (start in bounds and end in bounds):
                continue
            crosses = any(start < join < end for join in joins)
            inside = next(part for part, at in zip(parts, joins, strict=False) if start < at + len(part))
            if not crosses and inside != word and zipf(inside) >= _KNOWN:
                continue
            before, after = readable[crosses]  # nobody recognises "a" and "in" inside an unknown word
            otherwise = start in before and len(joined) - end in after
            if otherwise or (crosses and len(word) >= _LEAST):
                found.add(word)
    return max(sorted(found), key=len, default=None)


def _starts(words: Sequence[str]) -> list[int]:
    """Where each word starts in their run of letters, and where the run ends."""
    return list(accumulate(map(len, words), initial=0))


def _readable(joined: str, small: bool, step: int = 1) -> set[int]:
    """How many of the first letters divide into words, `small` ones too; of the last letters if `step` is -1."""
    letters = joined[::step]
    lengths = {0}
    for end in range(1, len(letters) + 1):
        words = (letters[start:end][::step] for start in range(max(0, end - _LONGEST), end) if start in lengths)
        if any(_is_word(word) and (small or len(word) > 2) for word in words):
            lengths.add(end)
    return lengths


@lru_cache(maxsize=1 << 14)
def _is_word(text: str) -> bool:
    if text in COARSE or text in _SMALL:
        return True
    if len(text) < 3 or (len(text) == 3 and zipf(text) < _COMMON):
        return False
    return zipf(text) >= _RECOGNISED and not kinds(text) & {"domain ending", "company form"}
