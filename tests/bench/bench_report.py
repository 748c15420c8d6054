"""What a report costs beyond the screening it rests on, as a ratio of the two in the same run.

    python tests/bench/bench_report.py [--names 20] [--marks 1000000] [--register PREPARED]

Goal: a report on 20 names against 1,000,000 prepared marks takes at most 1.3 times the screening itself. Without
--register, marks are made up of syllables and prepared in a temporary folder. The report is written in all its
forms (Markdown with picture, HTML, JSON, CSV); the screening is timed to its last result.
"""

from __future__ import annotations

import argparse
import random
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from namescreen.brief import Brief
from namescreen.register import Register, prepare, read_register
from namescreen.report import Report, assemble, changes, from_json, to_csv, to_html, to_json, to_markdown, to_svg
from namescreen.screening import Screening, screen

Made = TypeVar("Made")

STARTS = "b br c ch d dr f fl g gl h j k kl l m n p pl qu r s sh sl st t tr v w z".split()
MIDDLES = "a e i o u ai ea ee oo ou".split()
ENDS = ("", *"ck l ll m n nd r rt s st t x".split())
GOODS = ("planters", "herbs", "lamps", "clothing", "tea", "tools", "games", "soap", "retail of plants", "software")


def invented(rng: random.Random, syllables: int) -> str:
    return "".join(rng.choice(STARTS) + rng.choice(MIDDLES) + rng.choice(ENDS) for _ in range(syllables))


def invented_marks(count: int, path: Path) -> None:
    rng = random.Random(20261125)
    with path.open("w", encoding="utf-8") as file:
        file.write("mark,number,office,classes,goods,status,owner,filed\n")
        for at in range(count):
            words = " ".join(invented(rng, rng.choice((1, 2, 2, 3))) for _ in range(rng.choice((1, 1, 2))))
            file.write(
                f"{words},{at},XA,{rng.randint(1, 45)},{rng.choice(GOODS)},{rng.choice(('live', 'dead'))},"
                f"Owner {rng.randrange(count // 5 + 1)},20{rng.randint(10, 25)}-01-31\n"
            )


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--names", type=int, default=20)
    parser.add_argument("--marks", type=int, default=1_000_000)
    parser.add_argument("--register", type=Path)
    asked = parser.parse_args()
    rng = random.Random(7)
    names = [invented(rng, 2).capitalize() for _ in range(asked.names)]
    brief = Brief(
        product="Herb planter", goods="self-watering planters for herbs", classes=(21,), languages=("nl", "de")
    )
    with tempfile.TemporaryDirectory() as folder:
        prepared = asked.register or Path(folder, "marks.nsr")
        if asked.register is None:
            invented_marks(asked.marks, Path(folder, "marks.csv"))
            prepare([Path(folder, "marks.csv")], prepared)
        register = read_register([prepared])

        screened(names, register, brief)  # tables are opened and caches filled before the clock counts
        begun = time.perf_counter()
        found = screened(names, register, brief)
        screening = time.perf_counter() - begun
        seconds = timed_forms(brief, found, register)
    print(f"{len(names)} names, {len(register):,} marks: screening {screening:.2f} s")
    for form, one in seconds.items():
        print(f"  {form}: {one:.3f} s")
    ratio = 1 + sum(seconds.values()) / screening
    print(f"report = {ratio:.3f} times the screening itself (goal: at most 1.3)")


def screened(names: list[str], register: Register, brief: Brief) -> list[Screening]:
    return list(screen(names, register, goods=brief.goods, classes=brief.classes, languages=brief.languages, top=10))


def timed_forms(brief: Brief, found: list[Screening], register: Register) -> dict[str, float]:
    """The seconds that assembling the report and each of its forms take."""
    seconds: dict[str, float] = {}

    def timed(form: str, make: Callable[[], Made]) -> Made:
        begun = time.perf_counter()
        made = make()
        seconds[form] = time.perf_counter() - begun
        return made

    def assembled() -> Report:
        return assemble(
            brief, found, register, date="2026-11-25", date_from="--date", version="0", command=("namescreen",)
        )

    report = timed("assembling", assembled)
    text = timed("JSON", lambda: to_json(report))
    since = timed("what changed since", lambda: changes(from_json(text), report))
    timed("Markdown", lambda: to_markdown(report, figure="f.svg", changes=since))
    timed("picture", lambda: to_svg(report))
    timed("HTML", lambda: to_html(report))
    timed("CSV", lambda: to_csv(report))
    return seconds


if __name__ == "__main__":
    main()
