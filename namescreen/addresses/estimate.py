"""How a name fits as a domain and a handle, from the name alone: nothing is asked of any network."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import zipf
from ..pronunciation.predictability import spelled_by_heart
from ..territories import domain_endings
from ..text import Name, parse, split_closed_compound
from .handles import COMMON_LENGTHS, Handle, handles_of, spare_handles
from .joins import doubled_at_join, parts_of, unlucky_break
from .keys import effort, lookalike_labels, slips
from .labels import MOST_IN_ALL, Label, ascii_name, labels_of, plain_label

__all__ = ["Domain", "Estimate", "estimate"]

SHORT, LONG = 8, 24
"""The lengths in letters at which a label is short enough, and too long; common practice, no source."""

HYPHEN, DIGIT = 0.9, 0.85
"""Factors on the fit for a hyphen or a digit in the name: both need an explanation when the name is said aloud, and a
hyphen may be left out. Common practice, no source."""
DOUBLED_LETTER = 0.9
"""The factor if the same letter ends one word and begins the next: one of the two is easily dropped."""
COARSE_WORD = 0.3
"""The factor if a coarse word appears across a join."""
PASSES_FOR = 0.5
"""The factor if letters of another script pass for Latin ones: registries refuse such labels or show them in
their xn-- form, and buyers mistrust them. Common practice, no source."""
HEARD_SHARE = 0.4
"""The share of the fit for being spelled right after being heard."""
LABEL_SHARE = 0.8
"""The share of the score for the label; the rest is for the handles."""


@dataclass(frozen=True, slots=True)
class Domain:
    """A domain name made from a name: `text` as it is registered, `shown` as people write it, `how` it was made;
    `spare` if it adds a word to the name."""

    text: str
    shown: str
    how: str
    spare: bool = False


@dataclass(frozen=True, slots=True)
class Estimate:
    """How a name fits as a domain and a handle.

    `score` is in [0, 1], 1 = fits best: short, spelled right after hearing it, nothing to explain, no cut handle. It
    is made of `domain_score`, what the plainest label deserves, and `handle_score`, how little handles lose on average,
    both in [0, 1] with 1 = best.
    `heard` is how surely it is spelled right after hearing it (the radio test), `effort` the keys to type it,
    `slips` likely misspellings, `everywhere` the one handle that fits every limit, `spare_handles` others for
    when it is taken, `lookalikes` labels that pass for it at a glance. Whether anything is free is not known from
    this.
    """

    score: float
    domains: tuple[Domain, ...]
    handles: tuple[Handle, ...]
    everywhere: str
    heard: float | None
    effort: int
    slips: tuple[str, ...]
    reasons: tuple[str, ...]
    spare_handles: tuple[str, ...] = ()
    lookalikes: tuple[str, ...] = ()
    domain_score: float = 0.0
    handle_score: float = 0.0

    def to_json(self) -> dict[str, object]:
        """The estimate as plain data."""
        return {
            "score": round(self.score, 3),
            "domain_score": round(self.domain_score, 3),
            "handle_score": round(self.handle_score, 3),
            "domains": [{"domain": one.text, "shown": one.shown, "how": one.how} for one in self.domains],
            "handles": [{"handle": one.text, "limit": one.limit, "lost": one.lost} for one in self.handles],
            "handle_everywhere": self.everywhere,
            "spare_handles": list(self.spare_handles),
            "spelled_after_hearing": None if self.heard is None else round(self.heard, 3),
            "keys": self.effort,
            "slips": list(self.slips),
            "lookalikes": list(self.lookalikes),
            "reasons": list(self.reasons),
        }


def estimate(
    name: str, *, endings: Sequence[str] = (), handle_lengths: Sequence[int] = (), goods: str = ""
) -> Estimate:
    """How `name` fits as a domain under `endings` and as a handle within `handle_lengths`; nothing is looked up.

    An invalid ending is ignored.
    """
    parsed = parse(name)
    goods_word = _goods_word(goods)
    labels = labels_of(parsed, goods_word)
    limits = tuple(handle_lengths) or COMMON_LENGTHS
    handles = handles_of(parsed, limits)
    handle_fit = sum(handle.fit for handle in handles) / len(handles) if handles else 0.0
    domains = tuple(_domains(labels, tuple(endings) or domain_endings(())))
    everywhere = handles[0].text if handles else ""
    if not labels:
        reasons = (_why_no_label(parsed),)
        return Estimate(0.0, domains, handles, everywhere, None, 0, (), reasons, handle_score=handle_fit)
    heard = _heard(parsed)
    fit, told = _judged(parsed, labels[0], heard)
    told.extend(_about_handles(handles))
    return Estimate(
        score=fit * (LABEL_SHARE + (1.0 - LABEL_SHARE) * handle_fit),
        domains=domains,
        handles=handles,
        everywhere=everywhere,
        heard=heard,
        effort=effort(labels[0].shown),
        slips=slips(parsed),
        reasons=tuple(told) or ("Short, and easily spelled after hearing it.",),
        spare_handles=spare_handles(parsed, goods_word, min(limits)),
        lookalikes=lookalike_labels(labels[0].text) if labels[0].shown.isascii() else (),
        domain_score=fit,
        handle_score=handle_fit,
    )


def _why_no_label(name: Name) -> str:
    joined = "".join(map(plain_label, name.words))
    if joined:
        return f"{len(joined)} letters are too many for a domain label: at most 63 (RFC 1035 section 2.3.4)."
    return "No letter or digit of the name can stand in a domain name."


def _about_handles(handles: Sequence[Handle]) -> Iterator[str]:
    if not handles:
        yield "No handle can be made: the name has no Latin letter or digit."
    cut = [handle for handle in handles if handle.lost]
    if cut:
        yield f"A handle of {cut[0].limit} characters loses {cut[0].lost}: {cut[0].text}."


def _domains(labels: Sequence[Label], endings: Sequence[str]) -> Iterator[Domain]:
    """Every label under every ending, the plainest label first, where the whole is not too long."""
    registered = {ending: text for ending in endings if (text := _ending(ending))}
    for label in labels:
        for ending, text in registered.items():
            whole = f"{label.text}.{text}"
            if len(whole) <= MOST_IN_ALL:  # the label and the ending are valid by themselves
                yield Domain(whole, f"{label.shown}.{ending.removeprefix('.')}", label.how, label.spare)


@lru_cache(maxsize=1 << 10)
def _ending(ending: str) -> str | None:
    return ascii_name(ending.removeprefix("."))


def _judged(name: Name, label: Label, heard: float | None) -> tuple[float, list[str]]:
    text, reasons = label.shown, []
    fit = 1.0 - min(1.0, max(0.0, (len(text) - SHORT) / (LONG - SHORT)))
    fit = 0.3 + 0.7 * fit
    if len(text) > (SHORT + LONG) // 2:
        reasons.append(f"{len(text)} letters are long to type.")
    if any(character.isdigit() for character in text):
        fit *= DIGIT
        reasons.append("A digit must be explained when it is said aloud.")
    if "-" in name.text.strip("-") and len(name.words) > 1:
        fit *= HYPHEN
        reasons.append("Written with a hyphen, it must be explained: is it typed or not?")
    if heard is not None:
        fit *= 1.0 - HEARD_SHARE * (1.0 - heard)
        if heard < 0.5:
            right = round(heard * 100)
            often = f"spelled right about {right} times in 100" if right > 1 else "hardly ever spelled right"
            reasons.append(f"Heard, it is {often}.")
    double = doubled_at_join(parts_of(name.words))
    if double:
        fit *= DOUBLED_LETTER
        reasons.append(f'The "{double[0][-1]}" stands twice where "{double[0]}" meets "{double[1]}".')
    rude = unlucky_break(name.words)
    if rude:
        fit *= COARSE_WORD
        reasons.append(f'Run together, "{rude}" can be read in it.')
    passes_for = _passes_for(name)
    if passes_for:
        fit *= PASSES_FOR
        reasons.append(f'Letters of another script make it pass for "{passes_for}": such a label is often refused.')
    return fit, reasons


def _passes_for(name: Name) -> str | None:
    """The reading of a name with look-alike letters of another script; None without such letters."""
    if name.text.isascii():
        return None
    from ..connotations.scripts import lookalikes

    found = lookalikes(name.text)
    return found.looks if found else None


def _heard(name: Name) -> float | None:
    """How likely the whole name is spelled correctly after hearing it, by its least likely word; None if unreadable.

    A closed compound of known words (claysill: clay sill) is heard as those words.
    """
    words = [word for word in name.words if word.isascii() and word.isalpha()]
    return (
        min(spelled_by_heart(part) for word in words for part in split_closed_compound(word, zipf)) if words else None
    )


@lru_cache(maxsize=256)
def _goods_word(goods: str) -> str:
    """The noun that names the goods, for a label beside the name: what the first of them is, not where it goes."""
    if not goods:
        return ""
    from ..goods import items

    heads = (plain_label(item.head) for item in items(goods) if item.head.isascii())
    return next(filter(None, heads), "")
