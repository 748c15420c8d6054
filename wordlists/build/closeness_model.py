"""Fit the weights of closeness, measure them by nested cross-validation, and calibrate what the numbers mean.

    python wordlists/build/closeness_model.py PATH

PATH is a folder with the evidence of `closeness_evidence`. First the measures of two words are weighed
(`closeness_words`), then, with these, the means of two names (`closeness_names`). What is reported is what was
predicted of rows held out; what is shipped is fitted on all of them.
"""

from __future__ import annotations

import sys
from itertools import compress
from pathlib import Path

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers
from closeness_names import (
    MEANS,
    SEED,
    Pairs,
    fit_names,
    held_out,
    name_figures,
    pairs_of,
    real_figures,
)
from closeness_words import SOUND, letter_parts, read_words, sound_parts, weigh_words
from scipy.optimize import minimize
from sources import write_table

from namescreen.closeness import letters
from namescreen.closeness import sound as sounds
from namescreen.closeness.model import PARTS, Mean, Model
from namescreen.tables import table_bytes, wordlists_folder

REPEATS = 2
SAMPLES = 300
"""Samples of the cases, drawn with replacement, for the spread of the calibration."""


def calibrated(decided: Pairs, values: Numbers) -> dict[str, str]:
    """For closeness in steps, the share of decided pairs held similar by a logistic curve, with where nine of ten
    samples of the cases put it."""
    whole = np.array([evidence.judged_as_a_whole(row) for row in decided.rows])
    rows = list(compress(decided.rows, whole))
    similar = np.array([row["label"] == "similar" for row in rows])
    group = np.array(evidence.groups([(row["mark_a"], row["mark_b"]) for row in rows]))
    steps = np.linspace(0, 1, 21)

    def curve(chosen: np.ndarray) -> Numbers:
        value, label = values[whole][chosen], similar[chosen]

        def loss(line: Numbers) -> float:
            told = line[0] + line[1] * value
            return float(np.logaddexp(0, np.where(label, -told, told)).mean()) + 1e-4 * float(line @ line)

        line = minimize(loss, np.array([-1.0, 3.0]), bounds=[(None, None), (0, None)], method="L-BFGS-B").x
        return np.asarray(1 / (1 + np.exp(-(line[0] + line[1] * steps))))

    for step in np.arange(0, 1, 0.1):  # the reliability diagram of the contributors' guide
        there = (values[whole] >= step) & (values[whole] < step + 0.1)
        if there.any():
            print(f"reliability: {step:.1f} {there.sum()} pairs, {similar[there].mean():.2f} held similar")
    rng = np.random.default_rng(SEED)
    members = [np.flatnonzero(group == one) for one in range(group.max() + 1)]
    samples = [
        curve(np.concatenate([members[one] for one in rng.integers(0, len(members), len(members))]))
        for _ in range(SAMPLES)
    ]
    low, high = np.percentile(samples, (5, 95), axis=0)
    best = curve(np.arange(len(rows)))
    return {
        f"calibration: {step:.2f}": f"{middle:.3f} {below:.3f} {above:.3f}"
        for step, middle, below, above in zip(steps, best, low, high, strict=True)
    }


def main() -> None:
    """Read the evidence, fit, measure, and write wordlists/closeness_model.tsv."""
    folder = Path(sys.argv[1])
    looked, confused, heard, misheard = read_words(folder)
    look, look_figures = weigh_words("look", letter_parts, looked, confused)
    sound, sound_figures = weigh_words("sound", sound_parts, heard, misheard, SOUND)
    print(look, look_figures, sound, sound_figures, file=sys.stderr)
    words = Model(Mean(look), Mean(sound), *(Mean(()) for _ in MEANS))
    letters.shipped_model = sounds.shipped_model = lambda: words  # type: ignore
    rows = {name: evidence.rows(folder / f"{name}_pairs.csv") for name in ("rated", "decided", "graded")}
    rows["rated"] += evidence.drawn_pairs()
    rated, decided, graded = map(pairs_of, rows.values())
    sets = rated, decided, graded
    repeats = [held_out(sets, SEED + repeat) for repeat in range(REPEATS)]
    every = [name_figures(sets, found) for found in repeats]
    figures = look_figures | sound_figures
    figures |= {name: f"{np.mean([one[name] for one in every]):.3f}" for name in every[0]}
    means = fit_names(rated, decided)
    real = pairs_of(evidence.real_pairs())
    figures |= {name: f"{value:.3f}" for name, value in real_figures(real, real.values(means)).items()}
    fitted = name_figures(sets, [pairs.values(means) for pairs in sets])
    for name, value in figures.items():
        print(f"{name}: {value}", f"(fitted {fitted[name]:.3f})" if name in fitted else "")
    values = {}
    for part, mean in {"look": words.look, "sound": words.sound, **means}.items():
        values[f"{part}: power"] = mean.power
        values |= {f"{part}: {name}": one for name, one in zip(PARTS[part], mean.weights, strict=True)}
    entries = {name: f"{value:.4f}" for name, value in values.items()}
    entries |= {f"held out: {name}": value for name, value in figures.items()}
    entries |= calibrated(decided, np.mean([found[1]["overall"] for found in repeats], axis=0))
    contents = table_bytes("closeness_model", sorted(entries.items()))
    write_table(
        wordlists_folder(),
        "closeness_model.tsv",
        contents,
        source="fitted on word mark decisions of the TTAB, the Federal Circuit and other US courts (some through TMEP "
        "1207.01(b)), the UK IPO, the EU General Court, and Danish, Norwegian, Singapore, Japanese and "
        "Australian offices and courts; on ratings of some of these pairs by two blind readers (runs of a "
        "language model), and of further ones, most of them drawn by rule (curated/rated_pairs.csv), others "
        "invented in the style of disputes (curated/invented_pairs.csv, word_sharing_pairs.csv), by two readers (the "
        "same kind) from names and goods alone; on the FDA Name Differentiation list (2026) among the names of "
        "Drugs@FDA (2022), public domain; on brand names of medicines really confused (curated/confused_names.csv: "
        "from the list of the Institute for Safe Medication Practices, from memory, about one in ten may be wrong); on "
        "ratings of written words (Hout and others 2023, CC BY) and of spoken ones (Vitz and Winkler 1973), and on "
        "the English Consistent Confusion Corpus 1.2 (Marxer and others 2016, CC BY 4.0)",
        version=f"{len(rated.rows)} rated, {len(decided.rows)} decided and {len(graded.rows)} graded pairs; figures on "
        'rows held out stand in the table under "held out", those of real pairs (curated/real_pairs.csv, BSD-3-Clause, '
        "licences/name-suggestion-index.txt), which took no part, as well",
        licence="the project's own (facts only)",
        build="python wordlists/build/closeness_model.py PATH",
    )


if __name__ == "__main__":
    main()
