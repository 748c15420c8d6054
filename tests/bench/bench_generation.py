"""How good and how fast generation is: blends beside the published figures, the first page, candidates a second.

    python tests/bench/bench_generation.py [--data ../shared/checks/blends.csv]

Prints figures and ratios; sets no limits. The published figures are those of A. Deri and K. Knight, "How to make
a Frenemy: Multitape FSTs for portmanteau generation" (NAACL 2015), and V. Gangal and others, "CharManteau:
Character embedding models for portmanteau creation" (EMNLP 2017), both on the whole of D_Blind (1,223 rows) and
both from memory; ours are on the part of it in --data, part of which the weights were fitted on: the
cross-validated figures stand in wordlists/SOURCES.md.
"""

from __future__ import annotations

import argparse
import csv
import subprocess
import sys
import time
from collections import Counter
from itertools import islice
from pathlib import Path
from typing import ClassVar

from namescreen import blends
from namescreen.brief import load_brief
from namescreen.generation import candidates

ROOT = Path(__file__).parents[2]
BRIEF = ROOT / "namescreen" / "demo" / "brief.toml"
TOPS = (1, 5, 10, 20)
PUBLISHED = {
    "finite-state (Deri and Knight 2015)": (0.316,),
    "neural ranking (Gangal and others 2017)": (0.323, 0.586, 0.688, 0.760),
}


def attested(path: Path) -> None:
    """The share of attested blends among the first 1, 5, 10 and 20, by data set."""
    hits: dict[str, Counter[int]] = {}
    rows: Counter[str] = Counter()
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            offered = [blend.text for blend in blends(row["first"], row["second"], limit=max(TOPS))]
            rows[row["set"]] += 1
            for top in TOPS:
                hits.setdefault(row["set"], Counter())[top] += row["blend"].lower() in offered[:top]
    print(f"attested blend at top {' / '.join(map(str, TOPS))}")
    for group, found in sorted(hits.items()):
        figures = " / ".join(f"{found[top] / rows[group]:.3f}" for top in TOPS)
        print(f"  namescreen, {group} ({rows[group]} rows): {figures}")
    for who, published in PUBLISHED.items():
        print(f"  {who}, D_Blind: {' / '.join(f'{figure:.3f}' for figure in published)}")


def cold(*arguments: str) -> float:
    """The shortest of five runs of a new process, in seconds."""
    times = []
    for _ in range(5):
        started = time.perf_counter()
        subprocess.run([sys.executable, *arguments], capture_output=True, check=True, cwd=ROOT)
        times.append(time.perf_counter() - started)
    return min(times)


def first_page() -> None:
    """A page of forty from a cold start, beside an interpreter that only imports the command-line library."""
    page = cold("-m", "namescreen", "brainstorm", str(BRIEF), "--limit", "40")
    base = cold("-c", "import typer")
    print(f"first page of the demo brief, cold: {page:.2f} s, {page / base:.1f} times `import typer` ({base:.2f} s)")


def scored() -> None:
    """Proposals made, sifted and judged a second, in one process, beside one table look-up for each."""
    from namescreen.generation import Taste
    from namescreen.generation.brainstorming import Candidates
    from namescreen.generation.candidate import Proposal
    from namescreen.lexicon import zipf

    class Counting(Candidates):
        drawn: ClassVar[list[str]] = []

        def _passes(self, proposal: Proposal) -> bool:
            self.drawn.append(proposal.text)
            return super()._passes(proposal)

    brief = load_brief(BRIEF)
    search = Counting(brief, None, Taste(), "", brief.seed, None)
    search._wave()
    Counting.drawn.clear()
    started = time.process_time()
    for _ in range(5):
        search._wave()
    passed = time.process_time() - started
    drawn = list(dict.fromkeys(Counting.drawn))
    started = time.process_time()
    for text in drawn:
        zipf(text.casefold())
    looked = (time.process_time() - started) / len(drawn) * len(Counting.drawn)
    print(
        f"{len(Counting.drawn):,} proposals made and judged in {passed:.2f} s of one core: "
        f"{len(Counting.drawn) / passed:,.0f} a second, {passed / looked:.0f} times one table look-up for each"
    )
    started = time.process_time()
    given = sum(1 for _ in islice(candidates(brief), 400))
    passed = time.process_time() - started
    print(f"{given} names given out, with their readings in four languages: {given / passed:,.0f} a second")


def main() -> None:
    """Print every figure."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", type=Path, default=ROOT.parent / "shared" / "checks" / "blends.csv")
    data = parser.parse_args().data
    if data.is_file():
        attested(data)
    else:
        print(f"blends: not measured, because {data} is missing")
    first_page()
    scored()


if __name__ == "__main__":
    main()
