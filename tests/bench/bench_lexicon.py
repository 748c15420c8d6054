"""What it costs to open the lexicon and answer, as a part of what importing NLTK alone costs, in the same run.

    python tests/bench/bench_lexicon.py

Goal: opening and the first answers together under 50 ms on a common machine, so that no command feels them; the
ratio here says the same without a clock. Also shown: what a warm answer costs against a dictionary look-up.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import timeit

ROUNDS = 11
BASELINE = "import nltk.corpus"
QUESTIONS = {
    "open, first answers": "from namescreen.lexicon import lexicon, zipf, kinds\n"
    "words = lexicon()\n"
    "words.senses('spring'); words.closeness('herb', 'basil'); zipf('garden'); kinds('best')",
    "open, first association": "from namescreen.lexicon import association, translations\n"
    "association('honey', 'bee'); translations('honigloeffel', 'de')",
    "open, goods, first judgement": "from namescreen.goods import distinctiveness\n"
    "distinctiveness('Kelbo Pot', 'self-watering herb planter')",
}
TIMED = "import time\nstart = time.perf_counter()\n{}\nprint(time.perf_counter() - start)"


def seconds(code: str) -> float:
    """What `code` takes in a new interpreter, its start left out."""
    done = subprocess.run([sys.executable, "-c", TIMED.format(code)], capture_output=True, text=True, check=True)
    return float(done.stdout)


def main() -> None:
    runs: dict[str, list[float]] = {name: [] for name in ("baseline", *QUESTIONS)}
    for code in (BASELINE, *QUESTIONS.values()):
        seconds(code)  # byte code is written and files are cached before the clock counts
    for _ in range(ROUNDS):
        for name, code in {"baseline": BASELINE, **QUESTIONS}.items():
            runs[name].append(seconds(code))
    baseline = statistics.median(runs["baseline"])
    print(f"{BASELINE}: {baseline * 1000:.0f} ms")
    for name in QUESTIONS:
        median = statistics.median(runs[name])
        print(f"{name}: {median * 1000:.0f} ms, {median / baseline:.2f} times that")

    from namescreen.goods import weakness
    from namescreen.lexicon import association, lexicon, neighbours
    from namescreen.lexicon.association import _nearest

    words = lexicon()
    table = {"herb": 1.0}
    lookup = min(timeit.repeat(lambda: table.get("herb"), number=20_000))
    for name, ask in {
        "closeness, warm": lambda: words.closeness("herb", "basil"),
        "neighbours, warm": lambda: words.neighbours("herb"),
        "weakness, warm": lambda: weakness("herb", ("herb", "planter")),
    }.items():
        print(f"{name}: {min(timeit.repeat(ask, number=20_000)) / lookup:.1f} dictionary look-ups")

    pair = min(timeit.repeat(lambda: association.__wrapped__("candle", "wax"), number=20_000)) / 20_000
    four = min(timeit.repeat(lambda: _nearest.__wrapped__(("candle", "scent", "home", "calm"), 100), number=20)) / 20
    assert neighbours("candle")
    print(f"association of two known words: {pair * 1e6:.1f} microseconds (goal 5)")
    print(f"100 neighbours of four words: {four * 1e3:.1f} ms (goal 5)")


if __name__ == "__main__":
    main()
