"""Build tables on goods: which classes are claimed together, and broader terms of the trade.

python wordlists/build/goods_relations.py [--records FOLDER] [--to FOLDER]

class_pairs.tsv     "LOW HIGH" -> how often two classes are claimed together, 0 to 1: 0.35 for
                    classes that offices search together (goods/nice.py: COORDINATED);
                    with a FOLDER of records (XML of trade mark offices, ST.66 or ST.96)
                    at least their doubled cosine n(a, b) / sqrt((n(a) + 3) (n(b) + 3)).
                    The shipped table is built without records
goods_groups.tsv    term in base form -> the groups it stands in, MARKET|GROUP; *MARKET|GROUP -> groups used
                    together with it; from wordlists/curated/goods_groups.txt and goods_links.txt
broader_goods.tsv   term in base form -> the broader terms that cover it, from wordlists/curated/broader_goods.txt
"""

from __future__ import annotations

import argparse
import math
import re
from collections import Counter, defaultdict
from collections.abc import Callable
from itertools import combinations
from pathlib import Path

from sources import write_table

from namescreen.goods.nice import COORDINATED
from namescreen.goods.phrases import base_form
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
SMOOTH, SEARCHED_TOGETHER, LEAST = 3, 0.35, 0.05
_CLASS = re.compile(r"<(?:\w+:)?ClassNumber>\s*(\d+)\s*</")


def class_pairs(records: Path | None) -> tuple[bytes, int]:
    """The table, and how many records with a class it rests on."""
    single: Counter[int] = Counter()
    pairs: Counter[tuple[int, int]] = Counter()
    count = 0
    for path in sorted(records.rglob("*.xml")) if records else ():
        text = path.read_text(encoding="utf-8", errors="replace")
        found = sorted({int(number) for number in _CLASS.findall(text) if 1 <= int(number) <= 45})
        count += bool(found)
        single.update(found)
        pairs.update(combinations(found, 2))
    table = {}
    for low, high in combinations(range(1, 46), 2):
        drawn = 2 * pairs[low, high] / math.sqrt((single[low] + SMOOTH) * (single[high] + SMOOTH))
        value = min(1.0, max(drawn, SEARCHED_TOGETHER if frozenset((low, high)) in COORDINATED else 0.0))
        if value >= LEAST:
            table[f"{low} {high}"] = f"{value:.2f}"
    return table_bytes("class_pairs", table.items()), count


def _headings_of_terms(file: str, heading: Callable[[str], str]) -> dict[str, set[str]]:
    """The terms of a list in base form, each with the headings it stands under; a line is HEADING: TERM, TERM."""
    found: dict[str, set[str]] = defaultdict(set)
    for line in _lines(file):
        name, terms = line.split(":")
        for term in terms.split(","):
            found[_base(term)].add(heading(name))
    return found


def broader_goods() -> bytes:
    """The table of broader terms."""
    table = _headings_of_terms("broader_goods.txt", _base)
    return table_bytes("broader_goods", ((term, ",".join(sorted(broad))) for term, broad in table.items()))


def goods_groups() -> bytes:
    """The table of groups and of those that are used together."""
    groups = _headings_of_terms("goods_groups.txt", _key)
    linked: dict[str, set[str]] = defaultdict(set)
    for line in _lines("goods_links.txt"):
        one, other = map(_key, line.split(" with "))
        unknown = {one, other} - {name for names in groups.values() for name in names}
        if unknown:
            raise ValueError(f"goods_links.txt: no such group: {', '.join(sorted(unknown))}")
        linked[f"*{one}"].add(other)
        linked[f"*{other}"].add(one)
    return table_bytes("goods_groups", ((key, ";".join(sorted(names))) for key, names in (groups | linked).items()))


def _lines(file: str) -> list[str]:
    lines = (HERE / "curated" / file).read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def _key(name: str) -> str:
    return "|".join(part.strip() for part in name.split("|"))


def _base(term: str) -> str:
    return " ".join(map(base_form, term.split()))


def main() -> None:
    """Write both tables and their source records."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--records", type=Path)
    parser.add_argument("--to", type=Path, default=HERE)
    given = parser.parse_args()
    build = "python wordlists/build/goods_relations.py"
    pairs, count = class_pairs(given.records)
    broader = broader_goods()
    write_table(
        given.to, "class_pairs.tsv", pairs,
        source="pairs of classes that offices search together, from memory of search practice"
        + (f", and counts of classes claimed together in {count} public records" if count else ""),
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip
    write_table(
        given.to, "broader_goods.tsv", broader,
        source="wordlists/curated/broader_goods.txt, written for namescreen from memory of the wording of goods lists",
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip
    write_table(
        given.to, "goods_groups.tsv", goods_groups(),
        source="wordlists/curated/goods_groups.txt and goods_links.txt, written for namescreen from memory of markets: "
        "what serves one purpose, what comes from one trade, what is used together",
        version="1", licence="MIT, as namescreen", build=build,
    )  # fmt: skip


if __name__ == "__main__":
    main()
