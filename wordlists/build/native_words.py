"""Fit what makes an unknown word look native to a language. Writes wordlists/native_words.tsv.

    python wordlists/build/native_words.py --omw FOLDER [--to FOLDER]

A logistic regression on rare words of each language (those of the Wiktionary extension of the Open Multilingual
Wordnet, FOLDER/wikt, that no frequency list and no English dictionary has, 400 drawn by chance) against coined names:
a list of our own and blends of plain words. All languages share the weights but for a constant. Prints, for every
fifth of the words held out, the share of native words found and of coined names taken for native.
"""

from __future__ import annotations

import argparse
import random
import zlib
from itertools import combinations
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.generation.blending import blends
from namescreen.lexicon import lexicon, zipf
from namescreen.lexicon.native_words import NATIVE, SHORTEST, evidence
from namescreen.tables import table_bytes
from namescreen.text import fold

HERE = Path(__file__).resolve().parent.parent
FILES = {"de": "deu", "nl": "nld", "sv": "swe", "da": "dan", "nb": "nob", "fi": "fin", "hu": "hun", "fr": "fra",
         "es": "spa", "it": "ita", "pt": "por", "ro": "ron", "pl": "pol", "cs": "ces", "tr": "tur"}  # fmt: skip
PLAIN = """tea lamp bright velvet cloud maple honey stone river candle soft linen bread garden copper kettle spark
mellow timber leaf breeze cotton pepper silver frost meadow button ribbon nutmeg saddle anchor pebble lantern""".split()
DRAWN, SEED, FOLDS, RIDGE = 400, 4, 5, 1.0
PAIRS, BLENDS = 60, 4

Floats = NDArray[np.float64]


def native(omw: Path, language: str) -> list[str]:
    """Rare words of a language, drawn by chance."""
    found = set()
    for line in (omw / "wikt" / f"wn-wikt-{FILES[language]}.tab").read_text(encoding="utf-8").splitlines():
        _, kind, word = (*line.split("\t"), "", "", "")[:3]
        folded = fold(word)
        written = word.isalpha() and word[1:].islower() and (word[0].islower() or language == "de")
        rare = zipf(folded, language) == zipf(folded) == 0 and not lexicon().known(folded)
        if kind.endswith("lemma") and written and folded.isascii() and 6 <= len(folded) <= 18 and rare:
            found.add(folded)
    return random.Random(SEED).sample(sorted(found), min(DRAWN, len(found)))


def coined() -> list[str]:
    """Coined names of our own, and blends."""
    listed = (HERE / "curated" / "coined_names.txt").read_text(encoding="utf-8").splitlines()[1:]
    pairs = random.Random(SEED).sample(list(combinations(PLAIN, 2)), PAIRS)
    blended = [blend.text for one, other in pairs for blend in blends(one, other, limit=BLENDS)]
    names = {fold(word) for word in (*" ".join(listed).split(), *blended)}
    return sorted(name for name in names if len(name) >= SHORTEST and not lexicon().known(name))


def fit(values: Floats, is_native: Floats, counts: Floats) -> tuple[Floats, float]:
    """The weights of the logistic model and its constant (the last columns, of the languages, serve as constants)."""
    spread = values.std(0) + 1e-9
    scaled = np.c_[values / spread, np.ones(len(values))]
    held = RIDGE * np.eye(scaled.shape[1])
    held[-1, -1] = 0
    found = np.zeros(scaled.shape[1])
    for _ in range(30):
        chance = 1 / (1 + np.exp(-scaled @ found))
        curve = counts * chance * (1 - chance)
        slope = scaled.T @ (counts * (is_native - chance)) - held @ found
        found += np.linalg.solve(scaled.T @ (scaled * curve[:, None]) + held, slope)
    return found[:-1] / spread, float(found[-1])


def main() -> None:
    """Fit, say how well, write."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--omw", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=HERE)
    given = parser.parse_args()
    invented = coined()
    rows = [(word, language, True) for language in FILES for word in native(given.omw, language)]
    rows += [(word, language, False) for language in FILES for word in invented]
    asked = [evidence(word, language) for word, language, _ in rows]
    names = list(asked[0])
    languages = list(FILES)
    of_language = np.eye(len(languages))[[languages.index(language) for _, language, _ in rows]]
    values = np.c_[np.array([list(one.values()) for one in asked]), of_language]
    is_native = np.array([float(kind) for _, _, kind in rows])
    counts = np.where(is_native == 1, 1 / is_native.sum(), 1 / (1 - is_native).sum()) * len(rows) / 2
    fold_of = np.array([zlib.crc32(word.encode()) % FOLDS for word, _, _ in rows])  # a word is in one fold
    chance = np.zeros(len(rows))
    for part in range(FOLDS):
        kept = fold_of != part
        weights, constant = fit(values[kept], is_native[kept], counts[kept])
        chance[~kept] = 1 / (1 + np.exp(-(values[~kept] @ weights + constant)))
    taken = chance >= NATIVE
    for at, language in enumerate(languages):
        here = of_language[:, at] == 1
        found, wrong = (float(taken[here & (is_native == kind)].mean()) for kind in (1, 0))
        print(f"{language}: found {found:.2f}, coined names taken for native {wrong:.3f}")
    found, wrong = (float(taken[is_native == kind].mean()) for kind in (1, 0))
    weights, constant = fit(values, is_native, counts)
    fitted = dict(zip(names, weights, strict=False))
    of_one = zip(languages, weights[len(names) :], strict=True)
    fitted |= {f"language: {one}": constant + value for one, value in of_one}
    write_table(
        given.to,
        "native_words.tsv",
        table_bytes("native_words", ((name, f"{weight:.4f}") for name, weight in fitted.items())),
        source=f"fitted on {int(is_native.sum()):,} rare words of {len(languages)} languages (Wiktionary extension of "
        f"the Open Multilingual Wordnet) and {len(invented)} coined names (curated/coined_names.txt, and blends); held "
        f"out in {FOLDS} folds by word: {found:.2f} of native words found, {wrong:.3f} of coined names taken for one",
        version="our own",
        licence="CC BY-SA 3.0 (licences/omw-wiktionary.txt) for the words, of which none is in the table",
        build="python wordlists/build/native_words.py --omw FOLDER",
    )


if __name__ == "__main__":
    main()
