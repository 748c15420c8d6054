"""The measured qualities of the readings, on samples; tests/bench/bench_readings.py measures them in full."""

from __future__ import annotations

import random
import sys

import pytest

from namescreen.connotations import readings
from namescreen.lexicon.letter_patterns import letter_cost, train
from namescreen.tables import open_table, wordlists_folder

FIFTEEN = "de fr es it pt nl sv da nb fi pl cs tr hu ro".split()


def test_few_ordinary_english_words_are_flagged_severe() -> None:
    rows = ((float(value), word) for word, value in open_table("frequency/en.tsv").items())
    common = sorted(((zipf, word) for zipf, word in rows if len(word) >= 3 and word.isascii()), reverse=True)
    drawn = random.Random(3).sample([word for _, word in common[:20_000]], 500)
    worst = {word: readings(word.capitalize(), languages=FIFTEEN, dictionaries=())[:1] for word in drawn}
    flagged = [word for word, found in worst.items() if found and found[0].severity == 3]
    assert len(flagged) / len(drawn) <= 0.02, flagged


def test_held_out_words_stand_above_words_of_other_languages(monkeypatch: pytest.MonkeyPatch) -> None:
    pytest.importorskip("wordfreq", reason="needs the package wordfreq, which only the build scripts use")
    monkeypatch.syspath_prepend(str(wordlists_folder() / "build"))
    words = __import__("letters").words
    known = {language: words(language)[:15_000] for language in ("it", "nl", "da", "pl")}
    monkeypatch.delitem(sys.modules, "letters")
    for language, all_words in known.items():
        rng = random.Random(2)
        own = sorted(all_words)
        rng.shuffle(own)
        model = train(own[150:]).get
        others = [word for other in known if other != language for word in rng.sample(known[other], 60)]
        foreign = [letter_cost(word, model) for word in others if word not in set(own)]
        costs = [letter_cost(word, model) for word in own[:150]]
        area = sum((a < b) + 0.5 * (a == b) for a in costs for b in foreign) / (len(costs) * len(foreign))
        assert area >= 0.85, (language, area)
