"""Names made elsewhere, by the maker or an adviser, on the scale of ours: how such a name was made is read from its
text, and it is judged by what decided of names of many sources (the forms "given ..." of `ranking`)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import cache

from rapidfuzz import process
from rapidfuzz.distance import Indel, Postfix, Prefix

from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import kinds, lexicon, zipf
from ..lexicon.embedding import FREQUENT, embedded_words
from ..tables import open_table
from ..text import fold, split_closed_compound
from .brief_terms import BriefTerms, informativeness
from .candidate import Candidate, Proposal, form_of
from .constructions.affixation import affixes
from .constructions.changed import behind, heard, unmixed
from .constructions.pair import places, seam
from .ideas import Idea, first_names, ideas_of
from .ranking import Judge, levels, weights_of
from .ties import known_words
from .vocabulary import word
from .word_sounds import sounds_of

__all__ = ["GIVEN", "appraise", "given_form", "parse", "proposal_of"]

GIVEN = "given "
"""What stands before a form of names made elsewhere."""
_FORMS = {"find": "found", "foreign": "foreign", "lore": "figure", "saying": "saying"}
_A_WORD, _A_PART = 2.0, 2.8  # Zipf frequencies of what is an ordinary word, and of what is seen as one within a name
_SHORTEST, _LONG = 3, 5  # letters of a part, and of a word that is heard behind a name
_RESEMBLES, _PLAINLY, _LOOKED_AT = 0.74, 0.8, 6
"""Shares of letters in common from which a name seems a familiar word changed, and from which it does though it may be
two words; how many words like it are looked at."""
_SEEN = 1.0  # a word beside another is seen as easily as one that is so much commoner


def given_form(proposal: Proposal) -> str:
    """The form of a name made elsewhere, by which it is weighed."""
    return GIVEN + form_of(proposal)


def parse(name: str) -> tuple[str, str]:
    """The construction that would make a name of which only the text is known, and the words that it is made of, parted
    by ";": of a changed name the original first, of an affix "-ling" or "un-"."""
    spelled = fold(name).replace("-", " ")
    words = spelled.replace("&", "and").split()
    whole = " ".join(words)
    for kind, construction in _FORMS.items():
        if open_table("naming_ideas.tsv").get(f"{kind} {whole}"):
            return construction, whole
    if len(words) == 3 and words[1] == "and":
        return "pair", f"{words[0]};{words[2]}"
    if len(words) == 2 and words[0] in {one.casefold() for names in first_names() for one in names}:
        return "figure", f"{words[0]};{words[1]}"
    if len(words) == 1 and (lexicon().known(whole) or zipf(whole) >= _A_WORD):
        return "found", whole
    if len(words) > 1:
        said = open_table("familiar_phrases.tsv").get(whole) or open_table("familiar_phrases.tsv").get(name.strip())
        if said:
            return "saying", whole
        changed = _changed(spelled, _RESEMBLES)
        return ("changed", ";".join(changed)) if changed else ("pair", ";".join(one for one in words if one != "and"))
    if affixed := _affixed(whole):
        return "affix", ";".join(affixed)
    parts = split_closed_compound(whole, _as_part)
    if changed := _changed(whole, _PLAINLY if len(parts) > 1 else _RESEMBLES):
        return "changed", ";".join(changed)
    return ("pair", ";".join(parts)) if len(parts) > 1 else ("blend", whole)


def _as_part(text: str) -> float:
    """The Zipf frequency of a word as a part of a name; 0 for what is no word."""
    return zipf(text) + _SEEN if lexicon().known(text) and zipf(text) >= _A_WORD else 0.0


def _changed(spelled: str, least: float) -> tuple[str, str] | None:
    """The familiar word or saying that a name resembles, and the word that was put in; None if there is none."""
    several = " " in spelled
    alike = process.extract(
        spelled, _originals()[several], scorer=Indel.normalized_similarity, score_cutoff=least, limit=_LOOKED_AT
    )
    for original, _, _ in alike:
        if original in spelled or spelled in original or original.count(" ") != spelled.count(" "):
            continue
        start = Prefix.similarity(spelled, original)
        end = len(spelled) - Postfix.similarity(spelled[start:], original[start:])
        ends = range(end, len(spelled) + 1)
        parts = ((at, stop) for at in range(start + 1) for stop in ends if stop - at >= _SHORTEST)
        words = [spelled[at:stop] for at, stop in parts if _stands(spelled, at, stop)]
        if words:
            return original, max(words, key=len)
    return None


def _stands(spelled: str, at: int, stop: int) -> bool:
    """Whether a part of a name is a word that is seen in it: of several words, one of them."""
    part = spelled[at:stop]
    whole = " " not in spelled or (spelled[at - 1 : at] in ("", " ") and spelled[stop : stop + 1] in ("", " "))
    return whole and part.isalpha() and _as_part(part) > 0 and "function word" not in kinds(part)


@cache
def _originals() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The words that everybody knows, and the familiar phrases."""
    phrases = (one for one, _ in open_table("familiar_phrases.tsv").items())
    sayings = (one.word for one in known_words() if one.kind == "saying")
    said = tuple(dict.fromkeys(fold(one).replace("-", " ") for one in (*phrases, *sayings)))
    words = (one for one in embedded_words()[:FREQUENT] if len(one) >= _LONG and lexicon().known(one))
    single = tuple(dict.fromkeys((*words, *(one for one in said if " " not in one))))
    return single, tuple(one for one in said if " " in one)


def _affixed(text: str) -> tuple[str, str] | None:
    """The word and the living affix that a name is made of."""
    for affix in affixes():
        form = affix.form.strip("-")
        rest = text.removeprefix(form) if affix.form.endswith("-") else text.removesuffix(form)
        if rest != text and len(rest) >= _SHORTEST:
            base = next((one for one in (rest, f"{rest}e") if zipf(one) >= _A_PART), "")
            if base:
                return (affix.form, base) if affix.form.endswith("-") else (base, affix.form)
    return None


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


def appraise(name: str, brief: Brief) -> Candidate:
    """A name made elsewhere as a candidate for a brief: how it seems to be made, and its score on the scale of ours, by
    the weights fitted on names of many sources. Raises `InputError` if it has no letters a to z."""
    terms = BriefTerms.of(brief)
    ideas = ideas_of(brief, terms)
    kind, words = parse(name)
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
