"""False alarms, letter patterns and speed of the readings, measured and printed.

    python tests/bench/bench_readings.py [--alarms] [--letters] [--speed] [--agreement]

--alarms     Share of 2,000 ordinary English words, and of 500 of our own candidates, flagged severe in any of 15
             languages. Goal: at most 2 %. Every severe one is printed with its reason.
--letters    Area under the curve for each language: its held-out words above words of the other languages, by
             letter cost, under a model trained without them. Goal: at least 0.85. Needs the package wordfreq.
--speed      All languages for one name, cold, as a multiple of `python -c "import typer"`; and 1,000 names as a
             multiple of asking of every shipped unlucky word whether it stands in the name. Goals: 1.0 s, 15 s.
--agreement  Shipped meanings beside those of installed dictionaries: how many have an English word in common.
Without an option, all of them.
"""

from __future__ import annotations

import argparse
import random
import re
import statistics
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Sequence
from pathlib import Path

from namescreen.connotations import LANGUAGES, readings
from namescreen.connotations.unlucky_entries import Entry, read_entries
from namescreen.lexicon.letter_patterns import letter_cost, train
from namescreen.tables import open_table, wordlists_folder
from namescreen.text import fold

FIFTEEN = "de fr es it pt nl sv da nb fi pl cs tr hu ro".split()


def ordinary_english(number: int = 2000, seed: int = 7) -> list[str]:
    """Words drawn from the 20,000 most frequent English ones of three letters and more."""
    rows = ((float(value), word) for word, value in open_table("frequency/en.tsv").items())
    common = sorted(((zipf, word) for zipf, word in rows if len(word) >= 3 and word.isascii()), reverse=True)
    return random.Random(seed).sample([word for _, word in common[:20_000]], number)


def own_candidates(number: int = 500) -> list[str]:
    """Candidates from the demo's kind of brief, as the brainstorm ranks them."""
    from namescreen import brainstorm
    from namescreen.brief import Brief, Concept

    words = ("herb", "well", "clay", "garden", "drip", "leaf", "kitchen", "root")
    brief = Brief(concepts=tuple(Concept(word) for word in words))
    return [candidate.text for candidate in brainstorm(brief, limit=number)]


def alarms() -> None:
    for label, names in (
        ("ordinary English words", ordinary_english()),
        ("the same, another draw", ordinary_english(seed=8)),
        ("our own candidates", own_candidates()),
    ):
        worst: Counter[int] = Counter()
        severe = []
        for name in names:
            found = readings(name.capitalize(), languages=FIFTEEN, dictionaries=())
            worst[found[0].severity if found else 0] += 1
            severe += [(name, reading) for reading in found[:1] if reading.severity == 3]
        for name, reading in severe:
            print(f"  {name}: {reading}")
        exact = sum(reading.match in ("exact", "without accents", "inflected") for _, reading in severe)
        print(
            f"{label}, {len(names)}: severe {worst[3] / len(names):.2%} ({exact} of {worst[3]} are such words there), "
            f"awkward {worst[2] / len(names):.2%}, mild {worst[1] / len(names):.2%}"
        )


def area(own: Sequence[float], others: Sequence[float]) -> float:
    """The chance that a word of the language costs less than another language's; ties count half."""
    return sum((a < b) + 0.5 * (a == b) for a in own for b in others) / (len(own) * len(others))


def letters() -> None:
    sys.path.insert(0, str(wordlists_folder() / "build"))
    words: Callable[[str], list[str]] = __import__("letters").words
    known = {language: words(language) for language in FIFTEEN}
    for language in FIFTEEN:
        rng = random.Random(2)
        own = sorted(known[language])
        rng.shuffle(own)
        model = train(own[400:]).get
        elsewhere = {word for other in FIFTEEN if other != language for word in rng.sample(known[other], 60)}
        foreign = sorted(elsewhere - set(own))
        result = area([letter_cost(w, model) for w in own[:400]], [letter_cost(w, model) for w in foreign])
        print(f"{language}: area under the curve {result:.3f}")


def speed() -> None:
    commands = {
        "typer": [sys.executable, "-c", "import typer"],
        "one name": [sys.executable, "-c", "import namescreen; namescreen.readings('Mistpatch', dictionaries=())"],
    }
    runs: dict[str, list[float]] = {label: [] for label in commands}
    for _ in range(7):
        for label, command in commands.items():
            start = time.perf_counter()
            subprocess.run(command, check=True)
            runs[label].append(time.perf_counter() - start)
    cold, typer = (statistics.median(runs[label]) for label in ("one name", "typer"))
    print(f"one name in {len(LANGUAGES)} languages, cold: {cold:.2f} s, {cold / typer:.2f} times 'import typer'")
    names = ordinary_english(1000, seed=9)
    start = time.perf_counter()
    for name in names:
        readings(name, dictionaries=())
    took = time.perf_counter() - start
    everything = [fold(entry.word) for tag in LANGUAGES for entry in _entries(tag)]
    start = time.perf_counter()
    for name in names:
        _ = [word for word in everything if word in name]
    plain = time.perf_counter() - start
    print(f"1,000 names in {len(LANGUAGES)} languages: {took:.1f} s, {took / plain:.1f} times a plain search for "
          f"{len(everything):,} words")  # fmt: skip


def agreement() -> None:
    from namescreen.connotations.dictionaries import installed

    sources = installed()
    if not sources:
        print("agreement: not checked, because no dictionary is installed")
    for source in sources:
        for language in sorted(source.languages & set(LANGUAGES)):
            both, agreed, apart = 0, 0, []
            for entry in _entries(language):
                told = source.meanings(fold(entry.word), language)
                if told:
                    both += 1
                    theirs = " ".join(meaning.text for meaning in told)
                    if _roots(entry.meaning) & _roots(theirs):
                        agreed += 1
                    else:
                        apart.append(f"{entry.word}: {entry.meaning} / {theirs[:50]}")
            if both:
                print(f"{source.name}, {language}: {agreed} of {both} shipped meanings share a word with it "
                      f"({agreed / both:.0%})")  # fmt: skip
                for line in apart[:40]:
                    print(f"    {line}")


def _roots(text: str) -> set[str]:
    """The English words of a meaning by their first five letters, so that vomit meets vomiting."""
    return {word[:5] for word in re.findall(r"[a-z]{3,}", text.lower())} - {"the", "and", "for", "with"}


def _entries(language: str) -> list[Entry]:
    path = Path(wordlists_folder() / "unlucky" / f"{language}.tsv")
    return read_entries(path) if path.is_file() else []


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parts = (alarms, letters, speed, agreement)
    for part in parts:
        parser.add_argument(f"--{part.__name__}", action="store_true")
    asked = vars(parser.parse_args())
    for part in parts:
        if asked[part.__name__] or not any(asked.values()):
            part()


if __name__ == "__main__":
    main()
