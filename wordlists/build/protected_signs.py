"""Turn wordlists/curated/protected_signs.txt and evocations.txt into wordlists/protected_signs.tsv: sign -> kind,
territory, classes; ~PLACE -> numbers of evocations, each with ! where the names hold the place; *NUMBER ->
TERRITORY|GOODS|NAMES|KIND of one, goods in base form, KIND craft or evocation.

python wordlists/build/protected_signs.py [--to FOLDER]

Signs are divided and folded as names are; a stem keeps the hyphen that says at which end it stands. A sign listed
several times has its entries joined by semicolons.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

from sources import folder_to_write, write_table

from namescreen.goods.places import Place, place_of
from namescreen.goods.words import base_form
from namescreen.tables import open_table, table_bytes
from namescreen.text import fold, parse

HERE = Path(__file__).resolve().parent.parent
SHORTEST, STEM = 4, 5
"""The fewest letters of a word that may name a place, and how many must be the same."""


def build() -> tuple[bytes, int]:
    """The table, and how many signs it holds."""
    table: dict[str, list[str]] = defaultdict(list)
    for line in (HERE / "curated" / "protected_signs.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            kind, territory, classes, signs = (part.strip() for part in line.split("|"))
            for sign in signs.split(","):
                key = sign.strip() if kind == "stem" else " ".join(parse(sign.strip()).words)
                numbers = " ".join(classes.replace(",", " ").split())
                table[key].append(f"{kind}|{territory}|{numbers}")
    rows = [(sign, ";".join(entries)) for sign, entries in table.items()]
    return table_bytes("protected_signs", (*rows, *_evocations())), len(table)


def _evocations() -> Iterator[tuple[str, str]]:
    """The rows of places that may evoke a name of origin, by the name of the place or the word itself."""
    places: dict[str, list[str]] = defaultdict(list)
    lines = (HERE / "curated" / "evocations.txt").read_text(encoding="utf-8").splitlines()
    crafts = next(at for at, line in enumerate(lines) if line.startswith("# Crafts"))
    numbered = [(at, line) for at, line in enumerate(lines) if line and not line.startswith("#")]
    for number, (at, line) in enumerate(numbered, 1):
        territory, words, goods, names = (part.strip() for part in line.split("|"))
        named = dict.fromkeys(" ".join(map(base_form, one.split())) for one in goods.split(","))
        yield f"*{number}", f"{territory}|{','.join(named)}|{names}|{'craft' if at > crafts else 'evocation'}"
        for word in map(fold, map(str.strip, words.split(","))):
            place = place_of(word.removeprefix("the "))
            for key in dict.fromkeys((word, fold(place.name) if place else word)):
                places[f"~{key}"].append(f"{number}{'!' if place and _holds(names, place) else ''}")
    yield from ((place, " ".join(dict.fromkeys(numbers))) for place, numbers in places.items())


def _holds(names: str, place: Place) -> bool:
    """Whether one of some names of origin holds a name or adjective of a place."""
    said = {word for word in parse(names).words if len(word) >= SHORTEST}
    forms = {form for form, value in open_table("places.tsv").items() if value.partition("|")[2] == place.name}
    stems = {form.replace(" ", "")[:STEM] for form in (*forms, fold(place.name)) if len(form) >= SHORTEST}
    return any(word.startswith(stem) for word in said for stem in stems) or place in map(place_of, said)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, count = build()
    write_table(
        to, "protected_signs.tsv", contents,
        source="wordlists/curated/protected_signs.txt and evocations.txt, written for namescreen from memory of "
        "registers of geographical indications, the Paris Convention (Article 6ter), laws on Olympic and royal emblems "
        "and the WHO's stems; incomplete, to be checked with the office",
        version=f"{count} signs", licence="facts; MIT, as namescreen",
        build="python wordlists/build/protected_signs.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
