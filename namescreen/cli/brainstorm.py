"""`namescreen brainstorm`: candidates from concept words, at once or steered by hand."""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError, Problem
from namescreen.plain_text import plural, some

from .options import (
    AlsoBriefOption,
    FormatOption,
    GoodsOption,
    LanguagesOption,
    RegisterOption,
    SeedOption,
    brief_with,
    language_list,
    make_app,
    one_brief,
)
from .output import BELOW, PARTS_SHOWN, Column, Format, Row, print_disclaimer, say_below, show, width
from .talk import counted, say

if TYPE_CHECKING:
    from namescreen.generation import Candidate, Candidates
    from namescreen.lexicon import Sense
    from namescreen.register import Register

__all__ = ["COLUMNS", "app", "show_candidates"]

app = make_app("Make candidate names from concept words.")

LIMIT = 40
"""Names shown unless told otherwise: what fits two screens."""
_ROOM_FOR_WHY = 72
"""Columns from which the reason stands beside a name; in a narrower terminal it stands below it."""
TELLING = 10
"""The fewest names of which it means something that none is about a concept (set by judgement)."""


MADE = (
    "Only names made in this way; repeat it: found (a word one step from the goods), saying (a set phrase), "
    "pair (two short words), changed (a saying with a word of yours), figure (a person or creature of lore), foreign "
    "(a word of another language), local (in the buyers' own), affix (a word with a beginning or ending), blend (two "
    "words run together; made only if asked for)."
)


def _part(name: str, title: str) -> Column:
    return Column(name, title, text=lambda row: f"{row[name]:.2f}", right=True)


COLUMNS = (
    Column("name", "name", shrink=False),
    Column("score", "score", text=lambda row: f"{row['score']:.2f}", right=True),
    Column("made", "why it might work"),
    *(_part(name, title) for name, title in PARTS_SHOWN.items()),
    Column("flags", "remarks"),
)
CSV = (
    Column("name", "name"),
    Column("score", "score", text=lambda row: f"{row['score']:.4f}"),
    Column("construction", "construction"),
    Column("how", "how"),
    Column("sources", "sources"),
)
LEFT_OUT = (
    Column("name", "left out", shrink=False),
    Column("construction", "made as"),
    Column("because", "because"),
)


@app.command(
    epilog="Examples:\n\nnamescreen brainstorm brief.toml --limit 60\n\n"
    "namescreen brainstorm --concept herb --concept well --goods 'herb planters' --length 5-9\n\n"
    "namescreen brainstorm brief.toml --steer"
)
def brainstorm(
    brief: Annotated[
        Path | None, typer.Argument(help="A naming brief; an option given here takes the place of its own.")
    ] = None,
    concept: Annotated[
        list[str] | None,
        typer.Option("--concept", "-c", help="A word to grow names from; spring=season picks a meaning. Repeat."),
    ] = None,
    goods: GoodsOption = None,
    limit: Annotated[int, typer.Option("--limit", "-l", min=1, max=1_000_000, help="How many names.")] = LIMIT,
    construction: Annotated[list[str] | None, typer.Option("--construction", "-k", help=MADE)] = None,
    length: Annotated[str | None, typer.Option("--length", help="Letters, such as 5-9 or 7.")] = None,
    starts: Annotated[str, typer.Option("--starts", help="The letters a name begins with.")] = "",
    avoid: Annotated[
        list[str] | None, typer.Option("--avoid", help="Letters or a word no name may hold. Repeat.")
    ] = None,
    like: Annotated[list[str] | None, typer.Option("--like", help="A name to resemble. Repeat.")] = None,
    tone: Annotated[
        list[str] | None, typer.Option("--tone", help="A manner, such as warm: which affixes come first. Repeat.")
    ] = None,
    languages: LanguagesOption = None,
    register: RegisterOption = None,
    seed: SeedOption = None,
    form: FormatOption = Format.table,
    everything: Annotated[
        bool, typer.Option("--all", help="Also list the names that were left out, each with the reason.")
    ] = False,
    ideas: Annotated[
        bool, typer.Option("--ideas", help="Show the meanings of the concepts and the words they bring to mind.")
    ] = False,
    steer: Annotated[bool, typer.Option("--steer", help="Go on by hand: keep, drop, ask for more like it.")] = False,
    session: Annotated[
        Path | None, typer.Option("--session", help="Where a steered session is kept, and taken up again.")
    ] = None,
    shortlist: Annotated[
        Path | None, typer.Option("--shortlist", help="The file that a steered session saves kept names to.")
    ] = None,
    also_brief: AlsoBriefOption = None,
) -> None:
    """Make candidate names from concept words, the best and most varied first, each with how it was made.

    What is much like a name already shown comes later, so the scores do not fall evenly. Score and the numbers beside
    it run from 0 to 1, 1 the better end: how much of the brief its sources bring to mind (evokes), how usual its
    letters and sounds are (says), how indirectly it speaks of the goods (indirect; how distinctive a name is, screen
    judges). A name with an unlucky reading in the brief's languages, all but the same as a mark, or (of the first 400)
    one that screen would call plainly descriptive or kept for others, is left out; how many were is told, and --all
    lists them. A name that an office may refuse (a surname, a place) has a remark. Names beyond the brief's lengths are
    not counted.
    """
    from namescreen.generation import candidates
    from namescreen.generation.material import TONES, tone_of
    from namescreen.generation.senses import doubt
    from namescreen.text import fold

    _in_latin_letters(starts and [starts], "--starts")
    _in_latin_letters(like, "--like")
    if steer and form is not Format.table:
        raise InputError(Problem("a steered session shows pages to read", "Leave --format out, or --steer", "--format"))
    brief = one_brief(brief, also_brief)
    settled = _settled(brief, concept, goods, avoid, tone, language_list(languages), length, seed, register)
    for doubted in filter(None, map(doubt, settled.concepts)):
        say(doubted)
    if ideas:
        show_ideas(settled, limit, form)
        return
    unknown = [word for word in settled.tone if tone_of(word) is None]
    if unknown:
        say(f"Not a tone known here, and passed over: {', '.join(unknown)}. Known: {', '.join(TONES)}.")
    others = {word: tone_of(word) for word in settled.tone if word not in unknown and fold(word) not in TONES}
    if others:
        say(f"Tones in other words: {', '.join(f'{word} is taken as {tone}' for word, tone in others.items())}.")
    marks = _marks(settled, register)
    if steer:
        from .steer import steer_session

        steer_session(settled, session, shortlist, marks)
        return
    found = candidates(settled, constructions=construction, like=like or (), starts=starts, register=marks)
    names = _first(found, limit)
    show_candidates(names, form)
    print_disclaimer(form)
    if len(names) < limit:
        letters = f"{settled.least_letters} to {settled.most_letters} letters"
        say(f"{plural(len(names), 'name')}, and no more within these limits ({letters}).")
    tell_missed(found, names)
    tell_left_out(found, len(names), form if everything else None)


def _in_latin_letters(given: Iterable[str] | None, option: str) -> None:
    """Refuse what no name can begin with or resemble."""
    from namescreen.generation.wanted import usable_words

    strange = [text for text in given or () if not usable_words(text)]
    if strange:
        remedy = "Names are made in Latin letters: write it in them"
        raise InputError(Problem(f"{strange[0][:40]!r} has no letters a to z", remedy, option))


def _first(found: Iterable[Candidate], limit: int) -> list[Candidate]:
    from itertools import islice

    return list(counted(islice(found, limit), limit, "Brainstorming"))


def show_candidates(found: Sequence[Candidate], form: Format) -> None:
    """Write candidates to stdout in the chosen form; the caller adds the disclaimer, once a screen."""
    if form is Format.jsonl:
        show((candidate.to_json() for candidate in found), (), form)
    elif form is Format.csv:
        from namescreen.generation import PARTS

        show(map(_row, found), (*CSV, *(_fine(name) for name in PARTS), Column("flags", "flags")), form)
    else:
        whole = form is Format.markdown
        narrow = not whole and width() < _ROOM_FOR_WHY
        columns = [column for column in COLUMNS if not narrow or column.key != "made"]
        # a column of remarks would leave the others little room
        rows = ({**_row(one), BELOW: "; ".join((one.how, *one.flags)[not narrow :])} for one in found)
        show(rows, columns if whole and any(one.flags for one in found) else columns[:-1], form)


def tell_missed(found: Candidates, names: Sequence[Candidate]) -> None:
    """Say which concepts none of the names is about and what to do about it, and in which language none is."""
    missed = found.missed(names) if len(names) >= TELLING else []
    if missed:
        single = next((word for word in missed if " " not in word), "")
        pick = f", or pick a meaning (in the brief, or --concept {single}=WORD)" if single else ""
        say(f"None of these names is plainly about {some(missed, 'or')}: give a nearer everyday word{pick}.")
    if lacking := found.not_held():
        from namescreen.lexicon.language_codes import language_name

        say(f"No names in {language_name(lacking)} are known here: the names are English, those first that are words "
            "there too.")  # fmt: skip


def tell_left_out(found: Candidates, given: int, form: Format | None) -> None:
    """Say how many names were left out on the way to those given, and why; with a form, list them all to stdout."""
    if not found.left_out:
        return
    marks = sum(one.kind == "mark" for one in found.left_out)
    read = Counter(one.language for one in found.left_out if one.kind == "reading")
    counts = [f"{marks} all but the same as a mark"] if marks else []
    wares = sum(one.kind == "goods" for one in found.left_out)
    counts += [f"{wares} for naming the goods or a ware like them"] if wares else []
    avoided = sum(one.kind == "avoid" for one in found.left_out)
    counts += [f"{avoided} for what is to be avoided"] if avoided else []
    refused = sum(one.kind == "refused" for one in found.left_out)
    counts += [f"{refused} for what an office would likely refuse (descriptive, or kept for others)"] if refused else []
    counts += [f"{count} for an unlucky reading in {language}" for language, count in sorted(read.items())]
    way = f"Left out on the way to {'this name' if given == 1 else f'these {given:,} names'}"
    say(f"{way}: {'; '.join(counts)}." + ("" if form else " --all lists them."))
    if form in (Format.table, Format.markdown):
        sys.stdout.write("\n")
        rows = [{"name": o.candidate.text, "construction": o.candidate.construction, "because": o.because}
                for o in found.left_out]  # fmt: skip
        show(rows, LEFT_OUT, form)
    elif form is Format.jsonl:
        show(({"left_out": one.candidate.text, "because": one.because} for one in found.left_out), (), form)


IDEAS = (
    Column("word", "word", shrink=False),
    Column("why", "what it is, and what for"),
    Column("weight", "weight", text=lambda row: f"{row['weight']:.2f}", right=True),
)


def show_ideas(brief: Brief, limit: int, form: Format) -> None:
    """Write the words names are made from, the weightiest first, then the meanings of the concepts."""
    from namescreen.generation.brainstorming import require_concepts
    from namescreen.generation.brief_terms import BriefTerms
    from namescreen.generation.ideas import ideas_of
    from namescreen.generation.senses import chosen_senses, is_coarse
    from namescreen.lexicon import lexicon

    require_concepts(brief)
    rows = [
        {"word": idea.word, "kind": idea.kind, "why": idea.why, "term": idea.term, "weight": idea.weight}
        for idea in ideas_of(brief, BriefTerms.of(brief))[:limit]
    ]
    show(rows, IDEAS, form)
    if form is Format.table:
        sys.stdout.write("\n")
        say_below("The meanings of each concept", indent="")
        for concept in brief.concepts:
            used = chosen_senses(concept)
            left = (sense for sense in lexicon().senses(concept.word) if sense not in used)
            others = _meanings(sense for sense in left if not is_coarse(sense, concept.word))
            decent = sorted(used, key=lambda sense: is_coarse(sense, concept.word))
            say_below(f"{concept.word}: {_meanings(decent)}" + (f". Not used: {others}" if others else ""))
        say_below("A meaning is picked with --concept word=meaning, or in the brief.")


def _meanings(senses: Iterable[Sense]) -> str:
    """What senses mean, each once; not those of things of one name (an organization called hum), unless all are."""
    from namescreen.lexicon import lexicon

    told = list(senses)
    kinds = [sense for sense in told if not lexicon().related_ids(sense.id, "@i")] or told
    return "; ".join(dict.fromkeys(sense.tag or sense.label for sense in kinds))


def _fine(name: str) -> Column:
    return Column(name, name, text=lambda row: f"{row[name]:.4f}")


def _row(candidate: Candidate) -> Row:
    return {
        "name": candidate.text, "score": candidate.score, "construction": candidate.construction,
        "made": candidate.how, "how": candidate.how, "sources": candidate.sources, "flags": candidate.flags,
        **candidate.parts,
    }  # fmt: skip


def _settled(
    path: Path | None, concepts: list[str] | None, goods: str | None, avoid: list[str] | None,
    tone: list[str] | None, languages: tuple[str, ...] | None, length: str | None, seed: int | None,
    register: list[Path] | None,
) -> Brief:  # fmt: skip
    """The brief with the options in their places; words to avoid are added to the brief's own."""
    least, most = _lengths(length)
    settled = brief_with(
        path, goods=goods, seed=seed, least_letters=least, most_letters=most, languages=languages,
        tone=tuple(tone) if tone else None, marks=tuple(register) if register else None,
        concepts=tuple(_concept(text) for text in concepts) if concepts else None,
    )  # fmt: skip
    if avoid:
        settled = brief_with(None, **{**_fields(settled), "avoid": (*settled.avoid, *avoid)})
    if not settled.concepts:
        raise InputError(
            Problem("there is no concept to start from", "Give a brief with `concepts`, or --concept WORD")
        )
    return settled


def _fields(brief: Brief) -> dict[str, object]:
    return {name: getattr(brief, name) for name in Brief.__dataclass_fields__}


def _concept(text: str) -> Concept:
    from namescreen.generation.senses import meaning_of_several

    concept = Concept.read(text)
    if not concept.word:
        raise InputError(Problem(f"{text!r} is no concept", "Write a word, or word=meaning", "--concept"))
    instead = meaning_of_several(concept) if concept.senses else ""
    if instead:
        raise InputError(Problem(f"{text!r} gives a meaning to several words", instead, "--concept"))
    return concept


def _lengths(text: str | None) -> tuple[int | None, int | None]:
    if text is None:
        return None, None
    found = re.fullmatch(r"\s*(\d{1,2})\s*(?:-\s*(\d{1,2})\s*)?", text)
    least, most = (int(found[1]), int(found[2] or found[1])) if found else (0, 0)
    if not 1 <= least <= most:
        raise InputError(Problem(f"{text!r} is no length", "Write letters, such as 5-9 or 7", "--length"))
    return least, most


def _marks(brief: Brief, asked: Sequence[Path] | None) -> Register | None:
    """The marks that no name may equal; a list that only the brief names may come later."""
    if not brief.marks:
        return None
    from .inputs import existing_marks, those_there

    marks = brief.marks if asked else those_there(brief.marks, "names that equal its marks are not left out")
    return existing_marks(brief_with(None, **{**_fields(brief), "marks": marks})) if marks else None
