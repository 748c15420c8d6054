"""Domain labels: what the rules allow, and what a name becomes under them.

Rules: letters, digits and hyphens, no hyphen at either end (RFC 1123 section 2.1, RFC 1035 section 2.3.1); 63
octets a label, 253 in all without the final dot (RFC 1035 section 2.3.4: 255 with length octets); no hyphens in
the third and fourth place but in A-labels (RFC 5891 section 4.2.3.1). Letters beyond ASCII go through IDNA 2008
(RFC 5890 to 5893), as the idna package implements it, after the mapping of UTS #46 (non-transitional, with the
rules for letters, digits and hyphens): what people type is mapped (case, width, composition), ß and final sigma
stay themselves, and what IDNA 2008 does not allow, such as a picture, is refused.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from ..expressions import expression
from ..text import Name, fold
from .joins import unlucky_break

__all__ = [
    "Label",
    "a_label",
    "ascii_name",
    "full_name_problem",
    "internationalised",
    "label_problem",
    "labels_of",
    "plain_label",
    "written_out",
]

MOST_OCTETS, MOST_IN_ALL = 63, 253
_LDH = expression(r"[a-z0-9-]+")
_WRITTEN_OUT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "å": "aa", "ø": "oe"})

PREFIXES, SUFFIXES = ("the", "get"), ("shop", "studio")
"""Short words put before or after a name when the name alone is taken; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Label:
    """A domain label made from a name: `text` in ASCII as it is registered, `shown` as people write it, `how` it
    was made, in words; `spare` if it adds a word to the name."""

    text: str
    shown: str
    how: str
    spare: bool = False


@lru_cache(maxsize=1 << 16)
def label_problem(text: str) -> str | None:
    """Why `text` cannot stand as one label of a domain name (in ASCII form), or None if it can."""
    if not text:
        return "it is empty"
    if not _LDH.fullmatch(text.lower()):
        return "only letters, digits and hyphens are allowed (RFC 1123 section 2.1)"
    if len(text) > MOST_OCTETS:
        return f"it has {len(text)} octets, {MOST_OCTETS} are allowed (RFC 1035 section 2.3.4)"
    if text.startswith("-") or text.endswith("-"):
        return "a hyphen may not begin or end it (RFC 1123 section 2.1, RFC 1035 section 2.3.1)"
    if text[2:4] == "--" and not _is_a_label(text.lower()):
        return "hyphens in both the third and the fourth place are reserved (RFC 5891 section 4.2.3.1)"
    return None


def full_name_problem(text: str) -> str | None:
    """Why `text` cannot stand as a whole domain name (labels with dots between), or None if it can."""
    text = text.removesuffix(".")
    for label in text.split("."):
        problem = label_problem(label)
        if problem:
            return problem
    if len(text) > MOST_IN_ALL:
        return f"it has {len(text)} octets, {MOST_IN_ALL} are allowed (RFC 1035 section 2.3.4)"
    return None


@lru_cache(maxsize=1 << 12)
def a_label(shown: str) -> str | None:
    """One label as it is registered: mapped by UTS #46, then in ASCII by IDNA 2008; None if it has no such form."""
    if shown.isascii():
        return shown.lower() if label_problem(shown) is None else None
    import idna

    try:
        mapped = idna.uts46_remap(shown, std3_rules=True, transitional=False)
        text = idna.alabel(mapped).decode("ascii")
    except (idna.IDNAError, UnicodeError):
        return None
    return text if "." not in mapped and label_problem(text) is None else None


def ascii_name(shown: str) -> str | None:
    """A whole domain name or ending as it is registered, label by label; None if a label has no such form."""
    labels = [a_label(label) for label in re.split("[.\u3002\uff0e\uff61]", shown.removesuffix("."))]
    text = ".".join(label or "" for label in labels)
    return text if full_name_problem(text) is None else None


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
    composed = unicodedata.normalize("NFC", name.text)
    shown = "".join(letter for letter in composed if unicodedata.category(letter)[0] in "LMN").lower()
    encoded = a_label(shown) if not shown.isascii() else None
    if encoded is None or not encoded.startswith("xn--"):
        return None
    import idna

    return Label(encoded, idna.ulabel(encoded), f"its own letters, registered in {len(encoded)} characters")


def written_out(name: Name) -> str:
    """The name joined, its umlauts as German, Danish and Swedish spell them out (ä as ae); empty without umlauts."""
    text = unicodedata.normalize("NFC", name.text).lower()
    return plain_label(text.translate(_WRITTEN_OUT)) if any(letter in text for letter in "äöüåø") else ""


@lru_cache(maxsize=1 << 12)
def labels_of(name: Name, goods_word: str = "") -> tuple[Label, ...]:
    """The labels worth having for a name, the plainest first; only those that the rules allow.

    Those that add a word to the name (`spare`) come last.
    """
    words = [part for word in name.words if (part := plain_label(word))]
    joined = "".join(words)
    own = internationalised(name)
    made = [Label(joined, joined, "joined")]
    if own:
        made.append(own)
    if out := written_out(name):
        made.append(Label(out, out, "umlauts written out"))
    if len(words) > 1:
        hyphened = "-".join(words)
        made.append(Label(hyphened, hyphened, "with hyphens"))
    if words:
        made += _spare_labels(tuple(words), goods_word)
    found: dict[str, Label] = {}
    for label in made:
        if label_problem(label.text) is None:
            found.setdefault(label.text, label)
    return tuple(found.values())


def _spare_labels(words: tuple[str, ...], goods_word: str) -> Iterator[Label]:
    """Labels that add a word which the name does not have there, and whose joins let no rude word appear."""
    joined = "".join(words)
    made = [((*words, goods_word), f'with the goods word "{goods_word}"')] if goods_word else []
    made += [((prefix, *words), f'with "{prefix}" before it') for prefix in PREFIXES if not joined.startswith(prefix)]
    made += [((*words, suffix), f'with "{suffix}" after it') for suffix in SUFFIXES]
    for together, how in made:
        repeats = together[:-1] == words and (joined.endswith(together[-1]) or together[-1] in words)
        if not repeats and unlucky_break(together) in (None, unlucky_break(words)):
            text = "".join(together)
            yield Label(text, text, how, spare=True)
