"""How a name fits as a domain and a handle, from the name alone: nothing is asked of any network."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import lexicon, zipf
from ..names import Name, parse, split_compound
from ..pronunciation import pronounce_words
from ..pronunciation.predictability import heard_as_spelled, spellings
from ..tables import open_table
from .handles import COMMON_LENGTHS, Handle, handles_of
from .labels import Label, full_name_problem, label_problem, labels_of, plain_label

__all__ = ["DEFAULT_ENDINGS", "Domain", "Estimate", "effort", "estimate", "slips"]

DEFAULT_ENDINGS = ("com",)
"""Used when no ending is named; the commonest one, from memory."""

SHORT, LONG = 8, 24
"""Letters up to which a label is as short as anyone asks for, and from which it is as good as too long; common
practice, no source."""

HYPHEN, DIGIT = 0.8, 0.85
"""What is left of the fit for a hyphen or a digit in the plainest label: both must be explained when it is said
aloud. Common practice, no source."""
JOINT = 0.9
"""What is left where the same letter ends one word and begins the next, so that one is easily dropped."""
RUDE_JOINT = 0.3
"""What is left where a coarse word appears across a join."""
HEARD_SHARE = 0.4
"""How much of the fit rests on being spelled right after being heard."""

_NEIGHBOURS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")


@dataclass(frozen=True, slots=True)
class Domain:
    """A domain name made from a name: `text` as it is registered, `shown` as people write it, `how` it was made."""

    text: str
    shown: str
    how: str


@dataclass(frozen=True, slots=True)
class Estimate:
    """How a name fits as a domain and a handle.

    `score` is in [0, 1], 1 = fits best: short, spelled right after hearing it, nothing to explain, no cut handle.
    `heard` is how surely it is spelled right after hearing it (the radio test), `effort` the keys to type it,
    `slips` misspellings worth owning, `everywhere` the one handle that fits every limit. Whether anything is free
    is not known from this.
    """

    score: float
    domains: tuple[Domain, ...]
    handles: tuple[Handle, ...]
    everywhere: str
    heard: float | None
    effort: int
    slips: tuple[str, ...]
    reasons: tuple[str, ...]

    def to_json(self) -> dict[str, object]:
        """The estimate as plain data."""
        return {
            "score": round(self.score, 3),
            "domains": [{"domain": one.text, "shown": one.shown, "how": one.how} for one in self.domains],
            "handles": [{"handle": one.text, "limit": one.limit, "lost": one.lost} for one in self.handles],
            "handle_everywhere": self.everywhere,
            "spelled_after_hearing": None if self.heard is None else round(self.heard, 3),
            "keys": self.effort,
            "slips": list(self.slips),
            "reasons": list(self.reasons),
        }


def estimate(
    name: str, *, endings: Sequence[str] = (), handle_lengths: Sequence[int] = (), goods: str = ""
) -> Estimate:
    """How `name` fits as a domain under `endings` and as a handle within `handle_lengths`; nothing is looked up."""
    parsed = parse(name)
    labels = labels_of(parsed, _goods_word(goods))
    limits = tuple(handle_lengths) or COMMON_LENGTHS
    handles = handles_of(parsed, limits)
    domains = tuple(_domains(labels, endings or DEFAULT_ENDINGS))
    if not labels:
        reason = "No letter or digit of the name can stand in a domain name."
        return Estimate(0.0, domains, handles, "", None, 0, (), (reason,))
    heard = _heard(parsed)
    fit, reasons = _judged(parsed, labels[0], heard)
    handle_fit = sum(handle.fit for handle in handles) / len(handles) if handles else 0.0
    cut = [handle for handle in handles if handle.lost]
    if cut:
        reasons.append(f"A handle of {cut[0].limit} characters loses {cut[0].lost}: {cut[0].text}.")
    return Estimate(
        score=fit * (0.8 + 0.2 * handle_fit),
        domains=domains,
        handles=handles,
        everywhere=handles[0].text if handles else "",
        heard=heard,
        effort=effort(labels[0].text),
        slips=slips(parsed),
        reasons=tuple(reasons) or ("Short, and easily spelled after hearing it.",),
    )


def _domains(labels: Sequence[Label], endings: Sequence[str]) -> Iterator[Domain]:
    """Every label under every ending, the plainest label first, where the whole is not too long."""
    for label in labels:
        for ending in endings:
            text = f"{label.text}.{ending.removeprefix('.')}"
            if full_name_problem(text) is None:
                yield Domain(text, f"{label.shown}.{ending.removeprefix('.')}", label.how)


def _judged(name: Name, label: Label, heard: float | None) -> tuple[float, list[str]]:
    text, reasons = label.shown, []
    fit = 1.0 - min(1.0, max(0.0, (len(text) - SHORT) / (LONG - SHORT)))
    fit = 0.3 + 0.7 * fit
    if len(text) > (SHORT + LONG) // 2:
        reasons.append(f"{len(text)} letters are long to type.")
    if any(character.isdigit() for character in text):
        fit *= DIGIT
        reasons.append("A digit must be explained when it is said aloud.")
    if heard is not None:
        fit *= 1.0 - HEARD_SHARE * (1.0 - heard)
        if heard < 0.5:
            reasons.append(f"Heard, it is spelled right about {round(heard * 100)} times in 100.")
    joints = [(one, other) for one, other in zip(name.words, name.words[1:], strict=False) if one[-1] == other[0]]
    if joints:
        fit *= JOINT
        reasons.append(f'The "{joints[0][0][-1]}" stands twice where "{joints[0][0]}" meets "{joints[0][1]}".')
    rude = rude_across_joints(name.words)
    if rude:
        fit *= RUDE_JOINT
        reasons.append(f'Without spaces, "{rude}" can be read across the join.')
    return fit, reasons


def rude_across_joints(words: Sequence[str]) -> str | None:
    """A coarse English word that appears across the join of two words when spaces go; None if there is none."""
    joined, joins, at = "".join(words), [], 0
    for word in words[:-1]:
        at += len(word)
        joins.append(at)
    found = [
        joined[start:end]
        for join in joins
        for start in range(max(0, join - 10), join)
        for end in range(join + 1, min(len(joined), join + 10) + 1)
        if end - start >= 4 and joined[start:end] in _coarse()
    ]
    return max(found, key=len, default=None)


@lru_cache(maxsize=1)
def _coarse() -> frozenset[str]:
    return frozenset(word for word, kind in open_table("unfit_words.tsv").items() if kind in ("body", "contempt"))


def _heard(name: Name) -> float | None:
    """How surely the whole is spelled right after hearing it: the least sure of its words; None if unreadable."""
    words = [word for word in name.words if word.isascii() and word.isalpha()]
    return min(map(_heard_word, words)) if words else None


def _heard_word(word: str) -> float:
    """As `heard_as_spelled`, for one word that may be heard as two known ones (claysill: clay sill)."""
    parts = split_compound(word, zipf)
    return max(heard_as_spelled(word), min(map(heard_as_spelled, parts)))


def effort(label: str) -> int:
    """Keys to press for a label: one each, two for a digit or a hyphen, which lie off the letter rows."""
    return sum(1 if character.isalpha() else 2 for character in label)


def slips(name: Name, limit: int = 5) -> tuple[str, ...]:
    """Likely wrong spellings of the joined name, which a maker may want to own too, likeliest kind first.

    What listeners would write, a doubled letter dropped, two letters swapped where words meet, one key aside.
    """
    joined = "".join(plain_label(word) for word in name.words)
    if not joined.isalpha():
        return ()
    found: dict[str, None] = {}
    for reading in pronounce_words(name.words, 1):
        for written, _ in spellings(reading.phones, 3):
            found.setdefault(written)
    for place in range(1, len(joined)):
        if joined[place] == joined[place - 1]:
            found.setdefault(joined[:place] + joined[place + 1 :])
    join = len(plain_label(name.words[0])) if len(name.words) > 1 else len(joined) // 2
    if 1 <= join < len(joined):
        found.setdefault(joined[: join - 1] + joined[join] + joined[join - 1] + joined[join + 1 :])
    found.setdefault(_one_key_aside(joined))
    found.pop(joined, None)
    return tuple(slip for slip in found if slip and label_problem(slip) is None)[:limit]


def _one_key_aside(word: str) -> str:
    """`word` with its last letter typed one key to the right (to the left at the end of a row)."""
    row = next((row for row in _NEIGHBOURS if word[-1] in row), "")
    if not row:
        return ""
    place = row.index(word[-1])
    return word[:-1] + (row[place + 1] if place + 1 < len(row) else row[place - 1])


@lru_cache(maxsize=256)
def _goods_word(goods: str) -> str:
    """The noun that names the goods, for a label beside the name: the last word that the lexicon holds as a noun."""
    words = [word for word in parse(goods).words if word.isascii()]
    head = []
    for word in words:
        if word in ("of", "for", "with", "in", "made", "from"):
            break
        head.append(word)
    senses = lexicon().senses
    nouns = [base for word in head for base in lexicon().bases(word) if any(sense.pos == "n" for sense in senses(base))]
    return plain_label(nouns[-1]) if nouns else ""
