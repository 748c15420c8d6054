"""Latin and Greek combining forms of the ideas, with each other or with an English word (Hydrofern, Solaria)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain, zip_longest

from ...tables import open_table
from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs

__all__ = ["propose"]

NAME = "combining forms"
_ENDINGS = ("na", "ra", "lis", "via", "ria", "lia", "nia", "ta")


@dataclass(frozen=True, slots=True)
class _Form:
    form: str
    place: str
    origin: str
    idea: Idea
    weight: float


def propose(material: Material) -> Iterator[Proposal]:
    """First form with last form, first form with a short idea, and a form alone with a Latin ending."""
    forms = _forms(material)
    firsts = tuple(form for form in forms if form.place in ("first", "both"))
    lasts = tuple(form for form in forms if form.place in ("last", "both"))
    short = tuple(idea for idea in material.nouns if len(idea.word) <= 6)
    groups = (
        (_two(a, b) for a, b in best_pairs(firsts, lasts) if a.idea.word != b.idea.word and a.form != b.form),
        (_with_word(a, b) for a, b in best_pairs(firsts, short) if a.idea.word != b.word),
        (_ended(form, ending) for form in firsts for ending in _ENDINGS),
    )
    for proposal in chain.from_iterable(zip_longest(*groups)):
        if proposal is not None and len(proposal.letters) <= material.most_letters:
            yield proposal


def _forms(material: Material) -> tuple[_Form, ...]:
    table = open_table("combining_forms.tsv")
    found: dict[str, _Form] = {}
    for idea in material.ideas:
        for entry in (table.get(idea.word) or "").split():
            form, place, origin = entry.split(":")
            found.setdefault(form, _Form(form, place, origin, idea, idea.weight))
    return tuple(sorted(found.values(), key=lambda form: (-form.weight, form.form)))


def _join(first: str, second: str) -> str:
    if first[-1] in "aeiou" and second[0] in "aeiou":
        return first[:-1] + second
    return first + second


def _two(a: _Form, b: _Form) -> Proposal:
    text = _join(a.form, b.form)
    how = f"{_shown(a)} + {_shown(b)}"
    return Proposal(text.capitalize(), (text,), NAME, how, (a.idea.word, b.idea.word), a.form, (), 0.7, 0.45)


def _with_word(a: _Form, idea: Idea) -> Proposal:
    text = _join(a.form, idea.word)
    how = f"{_shown(a)} + {idea.word}"
    return Proposal(text.capitalize(), (text,), NAME, how, (a.idea.word, idea.word), a.form, (), 0.7, 0.6)


def _ended(form: _Form, ending: str) -> Proposal | None:
    text = form.form + ending if form.form[-1] in "aeiou" else form.form + "i" + ending
    if form.form.endswith(ending) or len(form.form) > 6:
        return None
    how = f"{_shown(form)} with a Latin ending, -{ending}"
    return Proposal(text.capitalize(), (text,), NAME, how, (form.idea.word,), form.form, (), 0.65, 0.4)


def _shown(form: _Form) -> str:
    return f"{form.form} ({form.origin}, {form.idea.word})"
