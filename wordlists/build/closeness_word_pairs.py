"""Draw pairs of words to be rated for how alike they are in meaning, by readers who see the two words alone.

    python wordlists/build/closeness_word_pairs.py GOODS SEED > words.txt 2> kinds.tsv

GOODS is a CSV of goods terms (column `term`). Every pair is drawn by rule: words that stand against each other in
invented pairs of names, words that the lexicon joins in one of its relations, words that the thesaurus, the
definitions or running text bring together, translations, and words by chance. Readers do not see the kind.
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Callable, Iterable, Iterator
from itertools import product
from pathlib import Path
from random import Random

import closeness_evidence as evidence
from closeness_pair_words import idea, related, translated, words

from namescreen.closeness.vocabulary import base_forms, english_choices, has_senses
from namescreen.lexicon import association, kinds, lexicon, neighbours, thesaurus_similarity, zipf
from namescreen.lexicon.association import associated
from namescreen.lexicon.derivation import derived_words
from namescreen.tables import wordlists_folder
from namescreen.text import parse

Pair = tuple[str, str]
CLASSES = (
    "red blue green black white silver golden amber crimson violet grey pink scarlet ivory azure",
    "north south east west",
    "one two three four five seven ten twelve hundred thousand",
    "spring summer autumn winter",
    "monday friday sunday saturday",
    "first second third prime primary single double twin triple",
    "big large great grand giant tiny small little mini mega",
    "king queen prince princess duke lord lady emperor royal crown",
    "oak pine cedar maple elm willow birch ash",
    "lion tiger bear wolf fox eagle hawk falcon owl raven",
    "sun moon star sky earth mars comet nova",
    "river lake sea ocean stream creek brook bay",
    "mountain hill peak summit ridge valley canyon",
    "boy girl man woman lad lass kid child baby",
    "house home cottage cabin lodge manor villa barn",
    "shop store market outlet depot boutique emporium",
    "company group studio works factory lab labs workshop",
)
"""Words of one kind that meet in names: common knowledge, no source."""


def fit(word: str) -> bool:
    """Whether a word has a meaning to compare and is no function word."""
    return len(word) > 2 and word.isalpha() and "function word" not in kinds(word) and has_senses(word)


def met() -> Iterator[Pair]:
    """Words of one invented name against those of the other, less those that both have."""
    for row in evidence.rows(wordlists_folder() / "curated" / "invented_pairs.csv"):
        one, other = (dict.fromkeys(parse(row[key]).words) for key in ("mark_a", "mark_b"))
        ours = [word for word in one if word not in other and fit(word)]
        theirs = [word for word in other if word not in one and fit(word)]
        if len(one) <= 4 and len(other) <= 4:
            yield from product(ours, theirs)


def from_goods(path: str) -> tuple[str, ...]:
    """Words of goods terms that ordinary readers know."""
    with Path(path).open(encoding="utf-8", newline="") as file:
        terms = [row["term"] for row in csv.DictReader(line for line in file if not line.startswith("#"))]
    return tuple(sorted({word for term in terms for word in parse(term).words if fit(word) and 3 <= zipf(word) <= 5.5}))


def steps_up(rng: Random, one: str, steps: int) -> str | None:
    """A word some steps broader."""
    found: str | None = one
    for _ in range(steps):
        found = found and related(rng, found, "broader")
    return found


def derived(rng: Random, one: str) -> str | None:
    """A word derived from it, or that it is derived from."""
    found = [other for base in base_forms(one) for other in derived_words(base) if other != one and zipf(other) >= 2.5]
    return rng.choice(sorted(found)) if found else None


def through_derived(rng: Random, one: str) -> str | None:
    """A synonym of a word derived from it."""
    other = derived(rng, one)
    return other and related(rng, other, "synonym")


def opposite(rng: Random, one: str) -> str | None:
    """Its opposite."""
    return related(rng, one, "opposite")


def defined(rng: Random, one: str) -> str | None:
    """A word that definitions mention with it."""
    found = [other for other in associated(one) if zipf(other) >= 3 and fit(other)][:12]
    return rng.choice(found) if found else None


def listed(rng: Random, one: str) -> str | None:
    """A word that thesaurus entries list with it and no relation joins to it."""
    found = [
        other for other, _ in neighbours(one, limit=60)
        if (thesaurus_similarity(one, other) or 0) > 0.45 and (lexicon().closeness(one, other) or 0) < 0.4
    ]  # fmt: skip
    return rng.choice(found) if found else None


def unlike(rng: Random, one: str) -> str | None:
    """A word whose association with it is loose."""
    some = rng.sample(words(2.8, 5.5, things=False), 60)
    found = [other for other in some if 0.05 < (association(one, other) or 0) < 0.45]
    return rng.choice(found) if found else None


def foreign(rng: Random, one: str) -> str | None:
    """A word of another language for it, or for a word that is its synonym, its sister or by chance."""
    kind = rng.random()
    meant = one if kind < 0.55 else related(rng, one, "synonym" if kind < 0.7 else "sister") if kind < 0.85 else None
    other = translated(rng, meant or rng.choice(words()))
    return other if other and " " not in other and english_choices(other) else None


def across(rng: Random, one: str) -> Pair | None:
    """The same in two foreign languages."""
    first, second = translated(rng, one), translated(rng, one)
    return (first, second) if first and second and first != second and " " not in first + second else None


def spelled_near(rng: Random, one: str) -> str | None:
    """A word of another meaning that begins alike or differs in a letter."""
    found = [other for other in words(2.8, 5.5, things=False) if other[:4] == one[:4] and other != one and len(one) > 4]
    return rng.choice(found) if found else None


def of_a_class(rng: Random) -> Pair:
    """Two words of one kind."""
    one, other = rng.sample(rng.choice(CLASSES).split(), 2)
    return one, other


def named(kind: str) -> Callable[[Random, str], str | None]:
    """A word of this relation."""
    return lambda rng, one: related(rng, one, kind)


KINDS: dict[str, tuple[Callable[[Random, str], str | None], int]] = {
    "synonym": (named("synonym"), 380),
    "similar": (named("similar"), 110),
    "sister": (named("sister"), 330),
    "broader": (named("broader"), 220),
    "two broader": (lambda rng, one: steps_up(rng, one, 2), 120),
    "part": (named("part"), 70),
    "opposite": (opposite, 130),
    "derived": (derived, 170),
    "through derived": (through_derived, 130),
    "idea": (idea, 420),
    "defined": (defined, 170),
    "listed": (listed, 230),
    "loose": (unlike, 230),
    "foreign": (foreign, 220),
    "near": (spelled_near, 60),
    "chance": (lambda rng, one: rng.choice(words(2.8, 5.5, things=False)), 160),
}


def drawn(goods: tuple[str, ...], seed: int) -> list[tuple[str, str, str]]:
    """Kind and words of every pair."""
    rng = Random(seed)
    found: dict[frozenset[str], tuple[str, str, str]] = {}
    from_names = sorted({word for pair in met() for word in pair})

    def add(kind: str, pair: Pair | None) -> bool:
        if not pair or not all(pair) or len(set(pair)) < 2 or not all(map(fit, pair)) or frozenset(pair) in found:
            return False
        one, other = rng.sample(pair, 2)
        found[frozenset(pair)] = kind, one, other
        return True

    for pair in met():
        add("met", pair)
    sources: tuple[Iterable[str], ...] = (from_names, goods, words(), words(2.8, 5.5, things=False))
    pools = [tuple(word for word in pool if word.isascii()) for pool in sources]
    for kind, (draw, count) in KINDS.items():
        tries = 0
        while count and tries < 40_000:
            tries += 1
            one = rng.choice(rng.choice(pools))
            other = draw(rng, one)
            count -= add(kind, (one, other) if other else None)
    more: tuple[tuple[str, Callable[[], Pair | None], int], ...] = (
        ("foreign", lambda: across(rng, rng.choice(words())), 40),
        ("class", lambda: of_a_class(rng), 140),
    )
    for kind, draw_pair, count in more:
        while count:
            count -= add(kind, draw_pair())
    rows = list(found.values())
    rng.shuffle(rows)
    return rows


def main() -> None:
    """Write a line for each pair, its number, then the words; on stderr with its kind."""
    rows = drawn(from_goods(sys.argv[1]), int(sys.argv[2]))
    for number, (kind, one, other) in enumerate(rows, 1):
        print(f"{number} | {one} / {other}")
        print(number, kind, one, other, sep="\t", file=sys.stderr)


if __name__ == "__main__":
    main()
