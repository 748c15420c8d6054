"""Domain labels: what the rules allow, and what a name becomes under them.

Rules: letters, digits and hyphens, no hyphen at either end (RFC 1123 section 2.1, RFC 1035 section 2.3.1); 63
octets a label, 253 in all without the final dot (RFC 1035 section 2.3.4: 255 with length octets); no hyphens in
the third and fourth place but in A-labels (RFC 5891 section 4.2.3.1). Letters beyond ASCII go through IDNA 2008
(RFC 5890 to 5893), as the idna package implements it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from ..names import Name, fold

__all__ = ["Label", "a_label", "full_name_problem", "internationalised", "label_problem", "labels_of", "plain_label"]

MOST_OCTETS, MOST_IN_ALL = 63, 253
_LDH = re.compile(r"[a-z0-9-]+")

PREFIXES, SUFFIXES = ("the", "get"), ("shop", "studio")
"""Short words put before or after a name when the name alone is taken; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Label:
    """A domain label made from a name: `text` in ASCII as it is registered, `shown` as people write it, `how` it
    was made, in words."""

    text: str
    shown: str
    how: str


def label_problem(text: str) -> str | None:
    """Why `text` cannot stand as one label of a domain name (in ASCII form), or None if it can."""
    if not text:
        return "it is empty"
    if len(text.encode()) > MOST_OCTETS:
        return f"it has {len(text.encode())} octets, {MOST_OCTETS} are allowed (RFC 1035 section 2.3.4)"
    if not _LDH.fullmatch(text.lower()):
        return "only letters, digits and hyphens are allowed (RFC 1123 section 2.1)"
    if text.startswith("-") or text.endswith("-"):
        return "a hyphen may not begin or end it (RFC 1123 section 2.1, RFC 1035 section 2.3.1)"
    if text[2:4] == "--" and not _is_a_label(text.lower()):
        return "hyphens in both the third and the fourth place are reserved (RFC 5891 section 4.2.3.1)"
    return None


def full_name_problem(text: str) -> str | None:
    """Why `text` cannot stand as a whole domain name (labels with dots between), or None if it can."""
    text = text.removesuffix(".")
    if len(text.encode()) > MOST_IN_ALL:
        return f"it has {len(text.encode())} octets, {MOST_IN_ALL} are allowed (RFC 1035 section 2.3.4)"
    return next((problem for label in text.split(".") if (problem := label_problem(label))), None)


def a_label(shown: str) -> str | None:
    """The A-label (xn--...) of one label by IDNA 2008, the label itself if it is ASCII, None if it has none."""
    import idna

    if shown.isascii():
        return shown.lower() if label_problem(shown) is None else None
    try:
        return idna.encode(shown.casefold(), uts46=False).decode("ascii")
    except idna.IDNAError:
        return None


def _is_a_label(text: str) -> bool:
    import idna

    if not text.startswith("xn--"):
        return False
    try:
        return idna.alabel(idna.ulabel(text)).decode("ascii") == text
    except idna.IDNAError:
        return False


def plain_label(text: str) -> str:
    """`text` as an ASCII label: folded, everything but letters and digits taken out; empty if nothing is left."""
    return re.sub(r"[^a-z0-9]+", "", fold(text))


def internationalised(name: Name) -> Label | None:
    """The name joined, with its own letters kept; None if they are all ASCII or IDNA does not allow them."""
    shown = "".join(character for character in name.text.casefold() if character.isalnum())
    encoded = a_label(shown) if not shown.isascii() else None
    return Label(encoded, shown, f"its own letters, written {encoded}") if encoded else None


@lru_cache(maxsize=1 << 12)
def labels_of(name: Name, goods_word: str = "") -> tuple[Label, ...]:
    """The labels worth having for a name, the plainest first; only those that the rules allow."""
    words = [part for word in name.words if (part := plain_label(word))]
    joined = "".join(words)
    made = [(joined, "joined")]
    if len(words) > 1:
        made.append(("-".join(words), "with hyphens"))
    if goods_word and not joined.endswith(goods_word):
        made.append((joined + goods_word, f'with the goods word "{goods_word}"'))
    made += [(prefix + joined, f'with "{prefix}" before it') for prefix in PREFIXES if words[:1] != [prefix]]
    made += [(joined + suffix, f'with "{suffix}" after it') for suffix in SUFFIXES if words[-1:] != [suffix]]
    plain = [Label(text, text, how) for text, how in made if joined and label_problem(text) is None]
    own = internationalised(name)
    return (*plain[:1], *([own] if own else []), *plain[1:])
