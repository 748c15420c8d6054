"""Build tables on goods: which classes are claimed together, and broader terms of the trade.

python wordlists/build/goods_relations.py [--to FOLDER]

class_pairs.tsv     "LOW HIGH" -> how closely offices tie two classes, 0 to 1: FULL / sqrt(d(a) d(b)) for the classes
                    that they search together (wordlists/curated/coordinated_classes.txt), d being with how many
                    classes one is searched: one that goes with nearly all others says nothing of any.
                    "N N" -> how much it says that goods are in class N, 1 / sqrt(m), m being from how many
                    markets its goods come (class 9 holds software, batteries and fire extinguishers)
goods_groups.tsv    term in base form -> the groups it stands in, MARKET|GROUP; *MARKET|GROUP -> groups used
                    together with it; =MARKET -> markets side by side with it; =range -> markets of one range;
                    =channel -> those where a service is the same thing by another channel; ~MARKET|GROUP -> the
                    share of its terms in each class; @WORD -> the fields of use it speaks of; from goods_groups.txt,
                    goods_links.txt, goods_markets.txt and goods_fields.txt
broader_goods.tsv   term in base form -> the broader terms that cover it, none for the broadest, and other names of the
                    same goods, from wordlists/curated/broader_goods.txt and same_goods.txt
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.goods.classification import classes
from namescreen.goods.phrases import base_form, items
from namescreen.lexicon import kinds
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
LEAST = 0.01
FULL = 4
"""The number of classes searched with each of two from which their tie counts less than 1; ours."""


def class_pairs(groups: Mapping[str, set[str]]) -> bytes:
    """The table of classes that offices search together, and how much being in one class says."""
    pairs = set()
    for line in _lines("coordinated_classes.txt"):
        one, others = line.split(":")
        pairs |= {(min(int(one), other), max(int(one), other)) for other in map(int, others.split())}
    searched = Counter(number for pair in pairs for number in pair)
    values = {(a, b): FULL / math.sqrt(searched[a] * searched[b]) for a, b in pairs}
    values |= {(number, number): 1 / math.sqrt(held) for number, held in _markets_in_class(groups).items()}
    rows = ((f"{a} {b}", f"{min(value, 1.0):.2f}") for (a, b), value in sorted(values.items()))
    return table_bytes("class_pairs", rows)


def _markets_in_class(groups: Mapping[str, set[str]]) -> dict[int, float]:
    """Class -> how many markets its goods come from: the exponential of the entropy of the listed terms' markets."""
    found: dict[int, dict[str, float]] = {number: defaultdict(float) for number in range(1, 46)}
    for group, chances in _classes_of_groups(groups).items():
        for number, chance in chances.items():
            found[number][group.split("|")[0]] += chance
    return {number: math.exp(_entropy(list(counts.values()))) for number, counts in found.items()}


@cache
def _chances(term: str) -> tuple[tuple[int, float], ...]:
    return tuple((guess.number, guess.score) for guess in classes(term, limit=45))


def _classes_of_groups(groups: Mapping[str, set[str]]) -> dict[str, dict[int, float]]:
    """Group -> how many of its terms are in each class, a term of several groups being shared among them."""
    found: dict[str, dict[int, float]] = defaultdict(lambda: defaultdict(float))
    for term, names in groups.items():
        for name in names:
            for number, chance in _chances(term):
                found[name][number] += chance / len(names)
    return found


def _entropy(weights: list[float]) -> float:
    whole = sum(weights)
    return -sum(one / whole * math.log(one / whole) for one in weights)


def _headings_of_terms(file: str, heading: Callable[[str], str]) -> dict[str, set[str]]:
    """The terms of a list in base form, each with the headings it stands under; a line is HEADING: TERM, TERM."""
    found: dict[str, set[str]] = defaultdict(set)
    for line in _lines(file):
        name, terms = line.split(":")
        for term in terms.split(","):
            found[_base(term)].add(heading(name))
    return found


def broader_goods() -> bytes:
    """The table of broader terms; names of the same goods cover each other."""
    table = _headings_of_terms("broader_goods.txt", _base)
    for line in _lines("broader_goods.txt"):
        table[_base(line.split(":")[0])] |= set()  # a name of the trade, though nothing is above it
    for line in _lines("same_goods.txt"):
        names = {_base(name.strip()) for name in line.split(",")}
        for name in names:
            table[name] |= names - {name}
    return table_bytes("broader_goods", ((term, ",".join(sorted(broad))) for term, broad in table.items()))


def goods_groups(groups: dict[str, set[str]]) -> bytes:
    """The table of groups and of those that are used together."""
    linked: dict[str, set[str]] = defaultdict(set)
    for line in _lines("goods_links.txt"):
        one, other = map(_key, line.split(" with "))
        unknown = {one, other} - {name for names in groups.values() for name in names}
        if unknown:
            raise ValueError(f"goods_links.txt: no such group: {', '.join(sorted(unknown))}")
        linked[f"*{one}"].add(other)
        linked[f"*{other}"].add(one)
    likely = {f"~{name}": _shares(counts) for name, counts in _classes_of_groups(groups).items()}
    markets = _markets({name.split("|")[0] for names in groups.values() for name in names})
    rows = (groups | linked | likely | markets | _fields()).items()
    told = ((key, names if isinstance(names, str) else ";".join(sorted(names))) for key, names in rows)
    return table_bytes("goods_groups", told)


def _fields() -> dict[str, set[str]]:
    """The fields of use that a word speaks of."""
    found: dict[str, set[str]] = defaultdict(set)
    for line in _lines("goods_fields.txt"):
        field, words = line.split(": ")
        for word in words.split():
            found[f"@{' '.join(map(base_form, word.split('_')))}"].add(field)
    return found


def _shares(counts: Mapping[int, float]) -> str:
    whole = sum(counts.values())
    shares = ((number, count / whole) for number, count in sorted(counts.items()))
    return " ".join(f"{number}:{share:.2f}" for number, share in shares if share >= LEAST)


def _markets(known: set[str]) -> dict[str, set[str]]:
    """What is said of whole markets: which are of one range, and which stand side by side."""
    found: dict[str, set[str]] = defaultdict(set)
    for line in _lines("goods_markets.txt"):
        kind = ":" in line  # range or channel
        one, listed = line.split(":" if kind else " with ")
        others = {name.strip() for name in listed.split(",")}
        if unknown := (others | (set() if kind else {one})) - known:
            raise ValueError(f"goods_markets.txt: no such market: {', '.join(sorted(unknown))}")
        found[f"={one}"] |= others
        for other in () if kind else others:
            found[f"={other}"].add(one)
    return found


def _lines(file: str) -> list[str]:
    lines = (HERE / "curated" / file).read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def _key(name: str) -> str:
    return "|".join(part.strip() for part in name.split("|"))


def _base(term: str) -> str:
    """A term as an item of goods is looked up: bags for bicycles as bicycle bag, eau de toilette as eau toilette."""
    if any("function word" in kinds(word) for word in term.split()):
        (item, *others) = items(term)
        if len(item.words) > 1 and not others and not item.dealing:
            return " ".join((*item.rest, *item.modifiers, item.head))
    return " ".join(map(base_form, term.split()))


def main() -> None:
    """Write both tables and their source records."""
    to = folder_to_write(__doc__, HERE)
    build = "python wordlists/build/goods_relations.py"
    broader = broader_goods()
    groups = _headings_of_terms("goods_groups.txt", _key)
    write_table(
        to, "class_pairs.tsv", class_pairs(groups),
        source="classes that the USPTO coordinates for searches (practitioners say, in part by how often they are "
        "claimed in one application), and further pairs from memory of search practice; no records were counted, as no "
        "office's counts of classes claimed together were at hand (against 73 EU marks of several classes: "
        "tests/published/test_class_pairs.py)",
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip
    write_table(
        to, "broader_goods.tsv", broader,
        source="wordlists/curated/broader_goods.txt and same_goods.txt, written for namescreen from memory of the "
        "wording of goods lists",
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip
    write_table(
        to, "goods_groups.tsv", goods_groups(groups),
        source="wordlists/curated/goods_groups.txt, goods_links.txt and goods_fields.txt, written for "
        "namescreen from memory of markets: what serves one purpose, what comes from one trade, what is used together, "
        "and in which field",
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip


if __name__ == "__main__":
    main()
