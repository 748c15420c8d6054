"""Turn trade_words.txt, ground_terms*.txt, initials.txt and label_words*.txt of wordlists/curated into
wordlists/trade_words.tsv: words of trades -> where they are told of.

python wordlists/build/trade_words.py [--to FOLDER]

term -> numbers of areas, separated by spaces; +WORD -> the same of a word of longer terms, or of another form;
LANGUAGE:term -> ENGLISH|NUMBERS, separated by ";", ENGLISH after ~ where only a spelling with accents means it;
^INITIALS -> NUMBER=what they stand for on such goods, separated by ";";
*NUMBER -> CLASSES|GOODS|WHAT of that area, goods in base form, WHAT =WARE for one of labels; =NUMBER -> NUMBER:COSINE
of the wares of which labels say the same. Terms are divided and folded as names are; a spelling with accents has a row
of its own where another word is folded alike.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path

import numpy as np
from sources import folder_to_write, write_table

from namescreen.goods.classification import classes
from namescreen.goods.words import base_form
from namescreen.lexicon import kinds, lexicon
from namescreen.lexicon.translation import listed_translations
from namescreen.tables import open_table, table_bytes
from namescreen.text import fold, parse

_SERIES = re.compile(r"(\D*)(\d+)(\D*)\.\.(\D*)(\d+)\3")
HERE = Path(__file__).resolve().parent.parent
SHORTEST_PART = 3
SURE = 0.85
"""How sure a translation of the dictionaries must be that makes a term superfluous."""
LIKELY = 0.2
"""The chance of a class from which a ware may be in it."""
LEAST_ALIKE = 0.03
"""The cosine of what is said of two wares from which it is kept."""


def build() -> tuple[bytes, str]:
    """The table, and what it holds, in words."""
    areas: dict[str, str] = {}
    terms: dict[str, list[str]] = defaultdict(list)
    for of_classes, goods, what, words in (*_lines("trade_words.txt"), *_lines("ground_terms*.txt")):
        number = _number(areas, of_classes, goods, what)
        for word in dict.fromkeys(_as_name(one) for one in _series(words)):
            terms[word].append(number)
    count = len(terms)
    wares: dict[str, str] = {}
    said_of: dict[str, set[str]] = defaultdict(set)
    foreign: dict[str, dict[str, dict[str, list[str]]]] = defaultdict(lambda: defaultdict(lambda: defaultdict(list)))
    for names, language, words in _lines("label_words*.txt"):
        if names not in wares:
            wares[names] = _number(areas, _classes(names), names, f"={names.split(',')[0]}")
            named = areas[f"*{wares[names]}"].split("|")[1].split(",")
            for name in dict.fromkeys((*map(_as_name, names.split(",")), *named)):
                terms[name].append(wares[names])
        number = wares[names]
        for one in dict.fromkeys(filter(None, (one.strip() for one in words.split(",")))):
            said, _, english = one.partition("=")
            said_of[number].add(_base(english or said))
            if language != "en":
                numbers = foreign[f"{language}:{_as_name(said)}"][" ".join(said.lower().split())][english.strip()]
            else:
                numbers = terms[_as_name(one)]
            numbers += [] if number in numbers else [number]
    initials = _initials(areas, foreign)
    rows = [*areas.items(), *initials, *((term, " ".join(numbers)) for term, numbers in terms.items())]
    rows += _parts(terms, {*wares.values()})
    rows += _alike(said_of)
    of_names = {number: areas[f"*{number}"].split("|")[1].split(",") for number in wares.values()}
    for key, spellings in foreign.items():
        rows += _spelt(key, _without_known(key, spellings, terms, of_names))
    said = f"{len(wares)} wares with {len(terms) - count} further words, and {len(foreign)} in other languages"
    told = f"{count} terms of art; {said}"
    return table_bytes("trade_words", rows), told


def _alike(said_of: Mapping[str, set[str]]) -> Iterator[tuple[str, str]]:
    """Each ware with those of which labels say the same, a term weighed by the logarithm of how few wares share it."""
    terms = sorted(set().union(*said_of.values()))
    said = np.array([[term in of for term in terms] for of in said_of.values()], dtype=float)
    weighed = said * np.log(len(said) / said.sum(axis=0))
    weighed /= np.linalg.norm(weighed, axis=1, keepdims=True)
    for number, cosines in zip(said_of, weighed @ weighed.T, strict=True):
        near = zip(said_of, cosines, strict=True)
        yield f"={number}", " ".join(f"{other}:{cosine:.2f}" for other, cosine in near if cosine >= LEAST_ALIKE)


def _parts(terms: dict[str, list[str]], wares: set[str]) -> Iterator[tuple[str, str]]:
    """Each word that stands among several on labels, or is another form of one, with the wares of which it is said only
    so."""
    found: dict[str, dict[str, None]] = defaultdict(dict)
    groups = open_table("goods_groups.tsv")
    for term, numbers in terms.items():
        *before, last = term.split()
        other = bool(before) and base_form(last) in groups  # a copper pan is of copper, what is sold beside it not
        for word in ([last] if other else term.split()) if before else _other_forms(term):
            told = [one for one in numbers if one in wares and one not in terms.get(word, ())]
            if len(word) >= SHORTEST_PART and "function word" not in kinds(word):
                found[f"+{word}"].update(dict.fromkeys(told))
    return ((word, " ".join(numbers)) for word, numbers in found.items() if numbers)


def _other_forms(word: str) -> tuple[str, ...]:
    """The other forms of a verb that labels may have, and who does it: whittle, whittled, whittling, whittler."""
    base = next(iter(lexicon().bases_by_pos(word).get("v", ())), word if lexicon().senses(word, "v") else "")
    base = base or (word[:-1] if word.endswith("er") and lexicon().senses(word[:-1], "v") else "")
    base = base or (word[:-2] if word.endswith("er") and lexicon().senses(word[:-2], "v") else "")
    senses = lexicon().senses(word, labelled=False)[:1]
    if not base or " " in base or not (word.endswith(("ed", "ing", "er")) or any(one.pos == "v" for one in senses)):
        return ()
    stems = (base.removesuffix("e"), base + base[-1])
    forms = (stem + ending for stem in stems for ending in ("ed", "ing", "er"))
    return tuple(form for form in dict.fromkeys((base, *forms)) if form != word)


def _without_known(
    key: str,
    spellings: dict[str, dict[str, list[str]]],
    terms: dict[str, list[str]],
    names: Mapping[str, list[str]],
) -> dict[str, dict[str, list[str]]]:
    """Without what the dictionaries tell: senses in which they translate a word before others, where the English word
    is said of the same wares. Names of wares are kept."""
    language, _, word = key.partition(":")
    listed = [one for one in listed_translations(word, language, compounds=False) if one.score >= SURE]
    best = {one.english for one in listed if one.score == listed[0].score}
    kept: dict[str, dict[str, list[str]]] = {}
    for spelling, senses in spellings.items():
        for english, numbers in senses.items():
            known = best if len(spellings) == 1 and not any(english in names.get(one, ()) for one in numbers) else set()
            said = terms.get(_as_name(english), []) if known & {english, base_form(english)} else []
            if rest := [one for one in numbers if one not in said]:
                kept.setdefault(spelling, {})[english] = rest
    return kept


def _spelt(key: str, spellings: dict[str, dict[str, list[str]]]) -> Iterator[tuple[str, str]]:
    """The rows of foreign words that are folded alike."""
    plain = key.partition(":")[2]
    together: dict[str, list[str]] = defaultdict(list)
    for spelling, senses in sorted(spellings.items(), key=lambda pair: pair[0] != plain):
        for english, numbers in senses.items():
            respelt = spelling != plain and plain in spellings and english not in spellings[plain]
            together[f"~{english}" if respelt else english] += numbers
        if spelling != fold(spelling) and len({*map(frozenset, spellings.values())}) > 1:
            yield f"{key.partition(':')[0]}:{spelling}", _senses(senses)
    if together:
        yield key, _senses(together)


def _senses(senses: dict[str, list[str]]) -> str:
    return ";".join(f"{english}|{' '.join(dict.fromkeys(numbers))}" for english, numbers in senses.items())


def _lines(files: str) -> Iterator[tuple[str, ...]]:
    """The lines of curated files, divided."""
    for path in sorted((HERE / "curated").glob(files)):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line and not line.startswith("#"):
                yield tuple(part.strip() for part in line.split("|"))


def _initials(areas: dict[str, str], foreign: dict[str, dict[str, dict[str, list[str]]]]) -> list[tuple[str, str]]:
    """The rows of initials of trades; those of another language are added to what labels say in it."""
    found: dict[str, list[str]] = defaultdict(list)
    for goods, words in _lines("initials.txt"):
        number = _number(areas, "0", goods, "initials of the trade")
        for one in words.split(","):
            letters, _, stands_for = one.strip().partition("=")
            language, _, rest = letters.rpartition(":")
            key = _as_name(rest)
            if language:
                foreign[f"{language}:{key}"][rest.lower()][stands_for].append(number)
            elif key:
                found[f"^{key}"].append(f"{number}={stands_for}")
    return [(key, ";".join(entries)) for key, entries in found.items()]


def _series(words: str) -> Iterator[str]:
    """The words of a line, with those between of a series (m1..m36)."""
    for one in words.split(","):
        found = _SERIES.fullmatch(one.strip())
        if found is None:
            yield one
        else:
            yield from (f"{found[1]}{number}{found[3]}" for number in range(int(found[2]), int(found[5]) + 1))


def _number(areas: dict[str, str], of_classes: str, goods: str, what: str) -> str:
    """The number of a new area."""
    number = str(len(areas) + 1)
    named = dict.fromkeys(map(_base, goods.split(",")))
    areas[f"*{number}"] = f"{of_classes}|{','.join(named)}|{what}"
    return number


def _classes(names: str) -> str:
    """The likely classes of a ware, by the mean chance of its names."""
    chances: dict[int, float] = defaultdict(float)
    each = names.split(",")
    for name in each:
        for guess in classes(name.strip(), limit=3):
            chances[guess.number] += guess.score / len(each)
    most = sorted(chances, key=lambda number: -chances[number])
    return " ".join(str(number) for number in most if chances[number] >= LIKELY or number == most[0])


def _base(term: str) -> str:
    return " ".join(map(base_form, term.split()))


def _as_name(term: str) -> str:
    return " ".join(parse(term.strip()).words)


def main() -> None:
    """Write the table and its source record."""
    to = folder_to_write(__doc__, HERE)
    contents, told = build()
    print(told)
    write_table(
        to, "trade_words.tsv", contents,
        source="wordlists/curated/trade_words.txt, terms of art of some eighty trades, ground_terms*.txt, stuffs, "
        "sorts, varieties, codes, users, occasions and qualities, ware by ware, initials.txt, initials with what they "
        "stand for, and label_words*.txt, what labels and shops say of wares "
        "in nine languages, with the English sense; written for namescreen from memory, no list was copied",
        version=told, licence="MIT, as namescreen", build="python wordlists/build/trade_words.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
