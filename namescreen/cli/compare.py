"""`namescreen compare`: two names side by side, and why they are close or not."""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen.errors import InputError, Problem
from namescreen.plain_text import cell, number, visible
from namescreen.plain_text import width as columns
from namescreen.policy import SAME_GOODS

from .inputs import file_not_name
from .options import BriefOption, FormatOption, brief_with, make_app
from .output import Column, Format, json_line, print_disclaimer, say_below, say_point, show, width

if TYPE_CHECKING:
    from namescreen.closeness import Closeness, Explanation, Pair

app = make_app("Show why two names are close, or not.")

SCORES = (
    Column("aspect", "aspect", shrink=False),
    Column("closeness", "closeness", right=True),
)
WORDS = (
    Column("word", "word"),
    Column("weight", "counts", right=True),
    Column("counterpart", "nearest to it"),
    Column("closeness", "closeness", right=True),
    Column("meaning", "meaning", right=True),
)
GAP = "·"
NO_PAST_CASES = (
    "How often pairs this close were held too alike is known for the same or close goods only, and says nothing of "
    "these."
)


@app.command(
    epilog="Examples:\n\nnamescreen compare Rainsip Reignsipp\n\n"
    "namescreen compare 'Wickby Planter' 'Torvo Planter' --goods 'herb planters'"
)
def compare(
    name: Annotated[str, typer.Argument(help="The name.")],
    mark: Annotated[str, typer.Argument(help="The existing mark, or another name.")],
    goods: Annotated[str | None, typer.Option("--goods", help="The goods of the name, in plain words.")] = None,
    mark_goods: Annotated[
        str | None, typer.Option("--mark-goods", help="The goods of the mark, in plain words.")
    ] = None,
    form: FormatOption = Format.table,
    brief: BriefOption = None,
) -> None:
    """Compare two names by eye, ear and meaning, and show what each number rests on.

    Closeness is from 0 to 1, where 1 is identical. With --goods, or those of a brief, words that merely describe the
    goods count less. With --mark-goods too it is told how related the goods are, which no closeness counts.
    """
    from namescreen.closeness import compare as closeness_of
    from namescreen.closeness import explain, without_meaning
    from namescreen.closeness.spaced import as_readers_divide
    from namescreen.files import names_a_file
    from namescreen.text import MAX_LENGTH, parse

    for text in (name, mark):
        if names_a_file(text):
            raise InputError(file_not_name(text))
        if not parse(text).words:
            raise InputError(Problem(f"{text[:40]!r} has no letters or digits", "There is nothing to compare"))
        if len(text) > MAX_LENGTH:
            raise InputError(Problem(f"a name has {len(text):,} characters", f"At most {MAX_LENGTH} are compared"))
    goods = goods if goods is not None or brief is None else brief_with(brief).goods or None
    found = closeness_of(name, mark, name_goods=goods, mark_goods=mark_goods)
    written, other, found = as_readers_divide(name, mark, found, name_goods=goods)
    shown = found.compared or (written, other)
    if brief is not None and (markets := brief_with(brief).markets):
        found = _heard_in(found, *(found.compared or (name, mark)), markets)
    if goods and _is_coined(name, goods):
        found = without_meaning(found)
    evidence = explain(*shown, name_goods=goods, mark_goods=mark_goods)
    related = _related(goods, mark_goods) if goods and mark_goods else None
    if form is Format.jsonl:
        forms = {"compared_as": shown[0], "mark_compared_as": shown[1], "goods_relatedness": related and related[0]}
        sys.stdout.write(json_line(_whole(name, mark, found, evidence) | forms) + "\n")
    elif form is Format.csv:
        show(_scores(found), SCORES, form)
    else:
        _show((name, mark), (written, other), shown, found, evidence, related, form)
    print_disclaimer(form)


def _heard_in(found: Closeness, name: str, mark: str, markets: Sequence[str]) -> Closeness:
    """The closeness with the sound that buyers of the markets hear, as the screen and the report have it."""
    from namescreen.screening.heard import as_heard
    from namescreen.territories import languages_of, understood_in

    english = any(understood_in(market, "en") for market in markets)
    return as_heard(found, name, mark, languages_of(markets, main=True), english=english)


def _is_coined(name: str, goods: str) -> bool:
    """Whether a name is coined for the goods, so that it has no meaning to compare; as the screen judges it."""
    from namescreen.goods import distinctiveness
    from namescreen.outcome import NotChecked

    judged = distinctiveness(name, goods)
    return not isinstance(judged, NotChecked) and judged.category == "fanciful"


def _related(goods: str, mark_goods: str) -> tuple[float | None, str]:
    """How related the goods of both are, and the same in words, with the reasons."""
    from namescreen.goods import relatedness
    from namescreen.outcome import NotChecked

    found = relatedness(goods, mark_goods)
    if isinstance(found, NotChecked):
        return None, f"Goods: not checked, because {found.because}"
    reasons = "; ".join(reason.rstrip(".") for reason in found.reasons) or "nothing was found in common"
    return found.score, f"Goods: {number(found.score)} related, from 0 to 1 ({found.grade}): {reasons}."


def _scores(found: Closeness) -> list[dict[str, object]]:
    unknown = {one.check: "not checked" + (": coined" if one.check == "meaning" else "") for one in found.not_checked}
    return [
        {"aspect": aspect, "closeness": unknown.get(aspect) or getattr(found, aspect)}
        for aspect in ("appearance", "sound", "meaning", "overall")
    ]


def _words(pairs: Sequence[Pair]) -> list[dict[str, object]]:
    return [
        {
            "word": pair.word,
            "weight": pair.weight,
            "counterpart": pair.counterpart or "nothing",
            "closeness": pair.closeness,
            "meaning": "unknown" if pair.meaning is None else pair.meaning,
        }
        for pair in pairs
    ]


def _show(
    names: tuple[str, str],
    written: tuple[str, str],
    shown: tuple[str, str],
    found: Closeness,
    evidence: Explanation,
    related: tuple[float | None, str] | None,
    form: Format,
) -> None:
    _head(" / ".join(names), form, level=2)
    show(_scores(found), SCORES, form)
    sys.stdout.write("\n")
    for name, divided in zip(names, written, strict=True):
        if divided != name:
            say_point(f"{name} is compared as {divided}: readers see these words in it.", form)
    for sentence in found.reasons:
        say_point(sentence, form)
    score, told = related or (None, "")
    if told:
        say_point(told, form)
    say_point(found.calibration.statement if score is None or score >= SAME_GOODS else NO_PAST_CASES, form)
    _head("Letter by letter", form)
    _pairs(evidence.letters)
    if evidence.sounds:
        _head("Sound by sound", form)
        say_point(f"read as {' and '.join(evidence.readings)}", form)
        _pairs(evidence.sounds)
    for text, words in zip(shown, evidence.pairs, strict=True):
        _head(f"Words of {text}", form)
        show(_words(words), WORDS, form)


def _head(text: str, form: Format, level: int = 3) -> None:
    if level > 2:
        sys.stdout.write("\n")
    if form is Format.markdown:
        sys.stdout.write(f"{'#' * level} {cell(text)}\n\n")
    else:
        say_below(text, indent="")


def _pairs(pairs: Sequence[tuple[str | None, str | None]]) -> None:
    sys.stdout.write("\n")
    for line in _aligned(pairs):
        sys.stdout.write(f"    {line}".rstrip() + "\n")


def _aligned(pairs: Sequence[tuple[str | None, str | None]]) -> list[str]:
    """Two names one above the other, a bar between places that agree; as many lines as the width asks for."""
    lines: list[list[str]] = []
    room = width() - 8
    used = room
    for mine, yours in pairs:
        cells = (visible(mine or "") or GAP, "=" if mine == yours else " ", visible(yours or "") or GAP)
        wide = max(columns(text) for text in cells)
        if used + wide + 1 > room:
            lines += [["", "", ""]]
            used = 0
        used += wide + 1
        lines[-1] = [
            line + text + " " * (wide + 1 - columns(text)) for line, text in zip(lines[-1], cells, strict=True)
        ]
    return [line for block in lines for line in (*block, "")][:-1]


def _whole(name: str, mark: str, found: Closeness, evidence: Explanation) -> dict[str, object]:
    """Everything, for a program: the scores, and the evidence field by field."""
    return {
        "name": name,
        "mark": mark,
        **{str(row["aspect"]): None if isinstance(row["closeness"], str) else row["closeness"]
           for row in _scores(found)},
        "calibration": dataclasses.asdict(found.calibration),
        "not_checked": [{"check": one.check, "because": one.because} for one in found.not_checked],
        "letters": evidence.letters,
        "sounds": evidence.sounds,
        "read_as": evidence.readings,
        "words": [[pair._asdict() for pair in pairs] for pairs in evidence.pairs],
        "reasons": found.reasons,
    }
