"""Names made elsewhere, by the maker or an adviser, on the scale of ours: how such a name was made is read from its
text, and it is judged by what decided of names of many sources (the forms "given ..." of `ranking`)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from ..brief import Brief
from ..errors import InputError, Problem
from ..text import fold, tokenize
from .brief_terms import BriefTerms, informativeness
from .candidate import Candidate, Proposal, form_of
from .constructions.changed import behind, heard, unmixed
from .constructions.pair import places, seam
from .flags import Flags, Refusal
from .ideas import Idea, ideas_of
from .parsing import parse
from .ranking import Judge, levels, weights_of
from .vocabulary import word
from .word_sounds import sounds_of

if TYPE_CHECKING:
    from ..register import Register

__all__ = ["GIVEN", "appraise", "given_form", "objection", "proposal_of"]

GIVEN = "given "
"""What stands before a form of names made elsewhere."""


def given_form(proposal: Proposal) -> str:
    """The form of a name made elsewhere, by which it is weighed; words that were changed are told from sayings."""
    closed = proposal.construction == "changed" and " " not in proposal.text.strip()
    return GIVEN + form_of(proposal) + " closed" * closed


def proposal_of(
    name: str, kind: str, words: str, brief_terms: BriefTerms, known: dict[str, Idea]
) -> tuple[Proposal, list[Idea]]:
    """The proposal that a construction would have made of `words`, and the ideas it was made of: those `known` of the
    brief, or new ones by the meaning that stands in brackets behind a word."""
    pieces = [_piece(piece) for piece in words.split(";")]
    original = pieces.pop(0)[0] if kind == "changed" and len(pieces) > 1 else words if kind == "saying" else ""
    affix = next((form for form, _ in pieces if form.startswith("-") or form.endswith("-")), "")
    pieces = [(form, meaning) for form, meaning in pieces if form != affix] or pieces
    if kind == "figure" and len(pieces) > 1:
        pieces = pieces[1:]
    ideas = [
        known[fold(form)] if fold(form) in known else _idea(form, meaning, brief_terms)
        for form, meaning in pieces
    ]
    sources = tuple(idea.word for idea in ideas)
    spelled = tuple(word for word in fold(name).replace("&", "and").replace("-", " ").split() if word.isalpha())
    sounds = tuple(sound for word in spelled for sound in sounds_of(word))
    join = 1.0
    if len(spelled) == 1 and kind == "pair" and len(sources) == 2:
        join = seam(*sources) * places(*map(word, sources))
    elif affix:
        join = seam(affix.strip("-"), sources[0]) if affix.endswith("-") else seam(sources[0], affix.strip("-"))
    clear = _seen(spelled, sources) if kind in ("blend", "clipping", "combining forms") else 1.0
    return Proposal(
        name, spelled, kind, "", sources, "", sounds, join, clear, original,
        1.0 if kind == "saying" else heard(sounds, original) if original else 0.0,
        behind(brief_terms, original) if original else 0.0,
        unmixed(brief_terms, _left_of(original, spelled)) if kind == "changed" and len(spelled) > 1 else 1.0,
    ), ideas  # fmt: skip


def _left_of(original: str, words: Sequence[str]) -> str:
    """The words of an original that a name still has."""
    return " ".join(word for word in fold(original).replace("-", " ").split() if word.replace("'", "") in words)


def _piece(text: str) -> tuple[str, str]:
    """A word and its meaning, from "haar (cold mist)" or "Italian un uovo (one egg)"."""
    form, _, meaning = text.strip().partition("(")
    form = form.strip()
    if meaning and re.match(r"(Old |Middle )?[A-Z][a-z]+ ", form) and form.split()[-1].islower():
        form = form.split()[-1]
    return form, meaning.rstrip(") ")


def _idea(form: str, meaning: str, brief_terms: BriefTerms) -> Idea:
    import numpy as np

    keys = [(word, informativeness(word) ** 0.5) for word in re.findall("[a-z]+", fold(meaning))]
    associations = brief_terms.of_word(fold(form))
    if keys:
        associations = np.maximum(brief_terms.of_meaning(keys), associations)
    return Idea(fold(form), "world", meaning, associations, "", brief_terms.relevance(associations))


def _seen(words: Iterable[str], sources: Sequence[str]) -> float:
    """The share of the letters of the sources that the name keeps at its beginning and end."""
    letters = "".join(words)
    kept = 0
    for source in sources:
        kept += max(
            (n for n in range(1, len(source) + 1) if source[:n] in letters or source[-n:] in letters), default=0
        )
    return min(1.0, kept / max(1, sum(map(len, sources))))


def objection(name: str, brief: Brief, register: Register | None) -> str:
    """For what a name made elsewhere would be left out of a brainstorm, were it ours; "" if for nothing."""
    kind, words = parse(name)
    spelled = tuple(filter(str.isalpha, tokenize(name)))
    found = Flags(brief, register).of(Proposal(name, spelled, kind, "", tuple(words.split(";")), "")) if spelled else ()
    return found.because if isinstance(found, Refusal) else ""


def appraise(name: str, brief: Brief) -> Candidate:
    """A name made elsewhere as a candidate for a brief: how it seems to be made, and its score on the scale of ours, by
    the weights fitted on names of many sources. Raises `InputError` if it has no letters a to z."""
    terms = BriefTerms.of(brief)
    ideas = ideas_of(brief, terms)
    kind, words = parse(name, {term.word for term in terms.terms})
    known = {idea.word.casefold(): idea for idea in reversed(ideas) if (idea.kind == "foreign") == (kind == "foreign")}
    proposal, met = proposal_of(name, kind, words, terms, known)
    if not proposal.words:
        raise InputError(Problem(f"{name!r} has no letters a to z", "Write the name in Latin letters"))
    judge = Judge(weights_of(brief), terms, ideas, brief.goods).knowing(met)
    form = given_form(proposal)
    parts = {**judge.parts(proposal), "kind": levels().get(form, 0.5)}
    how = f"{proposal.original}, changed" if proposal.original and kind == "changed" else " + ".join(proposal.sources)
    return Candidate(
        name, kind, how, proposal.sources, judge.score(parts, form), parts, origins=tuple(idea.reason for idea in met)
    )
