"""`namescreen demo`: the whole job on an invented example, from the brief to the report."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen.errors import InputError, Problem
from namescreen.plain_text import some

from .inputs import existing_marks, settings_of
from .options import make_app
from .output import Format, print_disclaimer
from .screenings import show_ranking
from .talk import say

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.generation import Candidate

app = make_app("Show the whole job on an invented example.")

BRAINSTORMED = 10
"""So many candidates are shown."""


@app.command(epilog="Example: namescreen demo --output planter")
def demo(
    output: Annotated[
        Path, typer.Option("--output", "-o", help="The folder to write the example and its report to.")
    ] = Path("namescreen-demo"),
) -> None:
    """Run the whole job on an invented example: a pottery studio about to sell a herb planter.

    Writes the example's brief, its list of some 300 invented marks and the report to a folder, for you to try
    the other commands on. Needs no network.
    """
    from namescreen.brief import load_brief
    from namescreen.processes import beside
    from namescreen.screening import screen

    from .brainstorm import show_candidates
    from .report import Form, check_outputs, get_ready, write_report

    say(f"Everything in this example is invented. It is written to the folder {output}.")
    path = _unpacked(output)
    brief = load_brief(path)

    written = output / "report.md"
    forms: dict[Path | None, Form] = {written: Form.markdown}
    check_outputs([written], forms, [path, *brief.marks])
    existing = existing_marks(brief)
    assert existing is not None  # the example's brief names its list

    get_ready(forms)
    with beside(_brainstormed, brief) as brainstormed:
        found = list(screen(brief.shortlist, existing, **settings_of(brief)))
        sys.stdout.write(f"Brainstormed from {some(concept.word for concept in brief.concepts)}\n")
        show_candidates(brainstormed(), Format.table)
    sys.stdout.write(f"\nThe shortlist, screened against {len(existing)} marks\n")
    show_ranking(found, Format.table, brief)

    write_report(brief, found, existing, forms, {"--output": [written]})
    sys.stdout.write(f"\nReport: {written}\n")
    print_disclaimer(Format.table)


def _brainstormed(brief: Brief) -> list[Candidate]:
    from namescreen.generation import brainstorm

    return brainstorm(brief, limit=BRAINSTORMED)


def _unpacked(folder: Path) -> Path:
    """The path of the example's brief, written to `folder` with its list of marks; changed files are kept."""
    from namescreen.demo import demo_files
    from namescreen.files import write_whole

    changed: list[Problem] = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for file in demo_files():
            path, shipped = folder / file.name, file.read_bytes()
            if not path.exists():
                write_whole(path, shipped)
            elif path.read_bytes() != shipped:
                changed.append(Problem("is not the example's", "Name another folder with --output", str(path)))
    except OSError as error:
        raise InputError(
            Problem(f"cannot be written ({error.strerror})", "Name another folder with --output", str(folder))
        ) from None
    if changed:
        raise InputError(changed)
    return folder / "brief.toml"
