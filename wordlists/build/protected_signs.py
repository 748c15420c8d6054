"""Turn protected_signs.txt, protected_origins.txt, health_claims.txt, evocations.txt, opposite_claims.txt and
morality.txt of wordlists/curated into wordlists/protected_signs.tsv: sign -> numbers of what is listed of it;
=NUMBER -> kind, territory, classes and the sort of goods; @ -> the sorts of goods and what
these are called; ~PLACE -> numbers of evocations, each with ! where the
names hold the place, or courts have found the word to evoke them; *NUMBER -> TERRITORY|GOODS|NAMES|KIND, goods
in base form, KIND evocation, craft or known (for such goods, without a name of origin); ?NUMBER -> GOODS|what a
name may promise|what rules it out; %WORDS -> KIND|LANGUAGES|WRITTEN of words that offend, KIND with ? if they are only
asked about, WRITTEN only of words with accents.

python wordlists/build/protected_signs.py [--to FOLDER]

Signs are divided and folded as names are; a stem keeps the hyphen that says at which end it stands. A sign listed
several times has several numbers.
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
LISTS = ("protected_signs.txt", "protected_origins.txt", "health_claims.txt")
PARTS = ("Crafts", "Known for")
"""How the comments begin that open the parts after the first."""
SHORTEST, STEM = 4, 5
"""The fewest letters of a word that may name a place, and how many must be the same."""


def build() -> tuple[bytes, int]:
    """The table, and how many signs it holds."""
    table: dict[str, dict[str, None]] = defaultdict(dict)
    sorts: list[str] = []
    numbers: dict[str, int] = {}
    for kind, *rest, signs in [line for name in LISTS for line in _lines(name)]:
        if kind == "goods":
            sorts.append(f"{rest[0]}={','.join(' '.join(map(base_form, one.split())) for one in signs.split(','))}")
            continue
        territory, classes = rest
        entry = f"{kind}|{territory}|{' '.join(classes.replace(',', ' ').split())}"
        number = str(numbers.setdefault(entry, len(numbers)))
        for sign in signs.split(","):
            key = sign.strip() if kind == "stem" else " ".join(parse(sign.strip()).words)
            table[key][number] = None
    rows = [(sign, " ".join(entries)) for sign, entries in table.items()]
    rows += [(f"={number}", entry) for entry, number in numbers.items()]
    rows += [("@", ";".join(sorts)), *_evocations(), *_claims(), *_offending()]
    return table_bytes("protected_signs", rows), len(table)


def _lines(name: str) -> list[list[str]]:
    """The fields of a list's lines."""
    lines = (HERE / "curated" / name).read_text(encoding="utf-8").splitlines()
    return [[part.strip() for part in line.split("|")] for line in lines if line and not line.startswith("#")]


def _evocations() -> Iterator[tuple[str, str]]:
    """The rows of places that may evoke a name of origin, by the name of the place or the word itself."""
    places: dict[str, list[str]] = defaultdict(list)
    lines = (HERE / "curated" / "evocations.txt").read_text(encoding="utf-8").splitlines()
    crafts, known = (next(at for at, line in enumerate(lines) if line.startswith(f"# {part}")) for part in PARTS)
    numbered = [(at, line) for at, line in enumerate(lines) if line and not line.startswith("#")]
    for number, (at, line) in enumerate(numbered, 1):
        territory, words, goods, *names = (part.strip() for part in line.split("|"))
        kind = "known" if at > known else "craft" if at > crafts else "evocation"
        named = dict.fromkeys(" ".join(map(base_form, one.split())) for one in goods.split(","))
        yield f"*{number}", f"{territory}|{','.join(named)}|{''.join(names)}|{kind}"
        for word in map(str.strip, words.split(",")):
            plain = fold(word.rstrip("!")).replace("-", " ").removeprefix("the ")
            place = place_of(plain)
            evokes = word.endswith("!") or any(
                plain in parse(one).words or (place is not None and _holds(one, place)) for one in names
            )
            for key in dict.fromkeys((plain, fold(place.name).replace("-", " ") if place else plain)):
                places[f"~{key}"].append(f"{number}{'!' if evokes else ''}")
    yield from ((place, " ".join(dict.fromkeys(numbers))) for place, numbers in places.items())


def _claims() -> Iterator[tuple[str, str]]:
    """The rows of promises, and of what goods state that rules them out."""
    lines = (HERE / "curated" / "opposite_claims.txt").read_text(encoding="utf-8").splitlines()
    for number, line in enumerate((line for line in lines if line and not line.startswith("#")), 1):
        goods, *lists = (part.strip() for part in line.split("|"))
        said = (",".join(" ".join(parse(one).words) for one in words.split(",")) for words in lists)
        yield f"?{number}", "|".join((goods, *said))


def _offending() -> Iterator[tuple[str, str]]:
    """The rows of words that offend, those of several lines with an entry for each."""
    found: dict[str, dict[str, None]] = defaultdict(dict)
    for line in (HERE / "curated" / "morality.txt").read_text(encoding="utf-8").splitlines():
        if not line or line.startswith("#"):
            continue
        kind, languages, words = (part.strip() for part in line.split("|"))
        codes = " ".join(languages.replace(",", " ").split())
        for word in map(str.strip, words.split(",")):
            key = " ".join(parse(word).words)
            if key:
                found[f"%{key}"][f"{kind}|{codes}|{'' if word.isascii() else word}"] = None
    return ((key, ";".join(entries)) for key, entries in found.items())


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
        source="wordlists/curated/protected_signs.txt, protected_origins.txt, health_claims.txt, evocations.txt, "
        "opposite_claims.txt and morality.txt, written for namescreen from memory of registers of geographical "
        "indications, the Paris Convention (Article 6ter), "
        "laws on Olympic and royal emblems and the WHO's stems; incomplete, to be checked with the office",
        version=f"{count} signs", licence="facts; MIT, as namescreen",
        build="python wordlists/build/protected_signs.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
