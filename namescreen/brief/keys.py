"""The keys of a brief, each with how its value is read."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from ..files import names_a_file
from ..territories import COUNTRIES, members_of, territory
from .checker import Checker, Read, WrongError, shown
from .model import Concept, CostItem
from .toml_lines import Place
from .values import (
    list_of,
    matching,
    read_amount,
    read_day,
    read_text,
    read_weight,
    read_word,
    table_of,
    whole_number,
)  # fmt: skip

__all__ = ["HOMES", "TABLES", "TOP"]

COMPARISON_WEIGHTS = ("marks", "distinctiveness", "readings", "addresses")
"""What a side-by-side comparison of a shortlist weighs: one weight a check."""

LONGEST_NAME = 60
"""The most letters a length limit may ask for (common practice, no source)."""


def _nice_class(checker: Checker, value: Any, place: Place) -> int:
    try:
        number: int = whole_number(1, 45)(checker, value, place)
    except WrongError as wrong:
        from ..goods import list_of_classes

        raise WrongError(wrong.what, list_of_classes() if isinstance(value, int) else wrong.remedy) from None
    return number


def _weights(*names: str) -> Read:
    return table_of(dict.fromkeys(names, read_weight), "weights")


def _any_weights(checker: Checker, value: Any, place: Place) -> dict[str, float]:
    """Weights whose names are defined, and checked, by the package that uses them."""
    if not isinstance(value, dict):
        raise WrongError(f"must be a table, not {shown(value)}", "Write its keys below a line [weights.ranking]")
    return checker.table(value, dict.fromkeys(value, read_weight), place)


def _columns(checker: Checker, value: Any, place: Place) -> dict[str, str]:
    from ..marks.fields import OPTION_NAMES

    known: dict[str, str] = table_of(dict.fromkeys(OPTION_NAMES, read_word), "columns")(checker, value, place)
    return known


def _concept(checker: Checker, value: Any, place: Place) -> Concept:
    if isinstance(value, dict):
        found = checker.table(value, {"word": read_word, "senses": list_of(read_word)}, place)
        if "word" not in found:
            raise WrongError("has no `word`", 'Write { word = "spring", senses = ["season"] }')
        return _of_one_word(Concept(found["word"], found.get("senses", ())))
    if not isinstance(value, str):
        raise WrongError(
            f"must be a word, not {shown(value)}",
            'Write "herb", or { word = "spring", senses = ["season"] }',
        )
    concept = Concept.read(read_word(checker, value, place))
    if not concept.word:
        raise WrongError(f"{shown(value)} has no word before its meaning", 'Write "spring=season"')
    return _of_one_word(concept)


def _of_one_word(concept: Concept) -> Concept:
    """The concept; refused if it gives one meaning to several words."""
    words = concept.word.split()
    if len(words) > 1 and concept.senses:
        meaning = " ".join(concept.senses)
        remedy = f'Give each word alone, with its own meaning if it has several: "{words[0]}={meaning}", "{words[-1]}"'
        raise WrongError(f"{shown(concept.word)} has several words and one meaning", remedy)
    return concept


def _country(checker: Checker, value: Any, place: Place) -> str:
    remedy = "Write its code of two letters: NL, DE, GB; or a union: EU. `namescreen brief help` lists them"
    named = _code_of_country(value)
    if named:
        raise WrongError(f"{shown(value)} is not a country code", f"The code of {value.strip()} is {named}")
    code: str = matching("[A-Z]{2}", "a country code", remedy, str.upper)(checker, value, place)
    if code == "UK":
        raise WrongError("'UK' is not a country code", "The code of the United Kingdom is GB")
    found = territory(code)
    if found not in COUNTRIES and not members_of(found):
        raise WrongError(f"{shown(code)} is the code of no country", remedy)
    return found


def _code_of_country(value: Any) -> str:
    """The code of a country or office that is given by its usual name; "" for what is a code, or not known."""
    from ..marks.territory import office_code

    found = office_code(value) if isinstance(value, str) and len(value.strip()) > 2 else ""
    code = territory(found)
    return code if code in COUNTRIES or members_of(code) else ""


def _language(checker: Checker, value: Any, place: Place) -> str:
    from ..lexicon.language_codes import code_named

    named = code_named(value) if isinstance(value, str) else ""
    if named:
        called = value.strip().capitalize()
        raise WrongError(f"{shown(value)} is not a language's code", f"The code of {called} is {named}")
    remedy = "Write its code: nl, de, pt-BR. `namescreen brief help` lists them"
    tag: str = matching(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", "a language's code", remedy)(checker, value, place)
    return tag


def _path(checker: Checker, value: Any, place: Place) -> Path:
    text = read_word(checker, value, place)
    try:
        if "\0" in text:
            raise ValueError
        return checker.folder / Path(text).expanduser()
    except (RuntimeError, ValueError):  # ~nobody/marks.csv
        raise WrongError(f"{shown(text)} is no path of a file", "Write the path in full") from None


def _shortlist(checker: Checker, value: Any, place: Place) -> Path | tuple[str, ...]:
    if isinstance(value, str):
        return _path(checker, value, place)
    if not isinstance(value, list):
        raise WrongError(f"must be a list of names or a file, not {shown(value)}", 'Write ["Loamlet"] or "names.txt"')
    names: tuple[str, ...] = list_of(read_word)(checker, value, place)
    for number, name in enumerate(names):
        if names_a_file(name, checker.folder):
            remedy = f'For the names in it write, without brackets: shortlist = "{name}"'
            checker.wrong((*place, number), f"{shown(name)} is a file, and no name", remedy)
    return names


def _cost_items(checker: Checker, value: Any, place: Place) -> tuple[CostItem, ...]:
    if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
        raise WrongError("must be a list of tables", "Write each below a line [[costs.items]]")
    items = []
    for number, item in enumerate(value):
        there = (*place, number)
        found = checker.table(item, _COST_ITEM, there)
        missing = [key for key in ("what", "figure") if key not in item]
        if missing:
            checker.wrong(there, f"has no {' and no '.join(f'`{key}`' for key in missing)}", "Add it")
        elif {"what", "figure"} <= found.keys():
            items.append(CostItem(**found))
    return tuple(items)


_ENDING = r"(?!-)[^\W_](?:[\w-]*[^\W_])?(?:\.[^\W_](?:[\w-]*[^\W_])?)*"
_CURRENCY = matching("[A-Z]{3}", "a currency code", "Write three letters as in ISO 4217: EUR, GBP, USD", str.upper)
_COST_ITEM: dict[str, Read] = {
    "what": read_word, "figure": read_amount, "times": read_amount, "currency": _CURRENCY, "date": read_day,
    "source": read_text,
}  # fmt: skip
TABLES: dict[str, dict[str, Read]] = {
    "length": {
        "least_letters": whole_number(1, LONGEST_NAME),
        "most_letters": whole_number(1, LONGEST_NAME),
        "most_syllables": whole_number(1, 20),
        "most_words": whole_number(1, 6),
    },
    "addresses": {
        "endings": list_of(matching(_ENDING, "a domain ending", "Write it like com or co.uk",
                                      lambda text: text.lower().removeprefix("."))),
        "handle_lengths": list_of(whole_number(1, 100)),
        "handle_servers": list_of(matching(r"[^\s/:@]+(\.[^\s/:@]+)*(:\d+)?", "a server's name",
                                             "Write it without https:// and without a path", str.lower)),
        "handle_patterns": list_of(matching(r"https?://\S*\{handle\}\S*", "an address pattern",
                                              "Write a whole address with {handle} where the handle goes")),
    },
    "weights": {
        "ranking": _any_weights,
        "comparison": _weights(*COMPARISON_WEIGHTS),
    },
    "costs": {"currency": _CURRENCY, "budget": read_amount, "items": _cost_items},
}  # fmt: skip
TOP: dict[str, Read] = {
    "product": read_text,
    "goods": read_text,
    "classes": list_of(_nice_class),
    "concepts": list_of(_concept),
    "avoid": list_of(read_word),
    "tone": list_of(read_word),
    "markets": list_of(_country),
    "languages": list_of(_language),
    "marks": list_of(_path),
    "columns": _columns,
    "shortlist": _shortlist,
    "seed": whole_number(0, 2**31 - 1),
    "date": read_day,
    **{name: table_of(known, name) for name, known in TABLES.items()},
}  # fmt: skip
HOMES = {key: name for name, table in reversed(TABLES.items()) for key in table} | dict.fromkeys(TOP, "")
"""The table that each key belongs to; "" for the top of the brief."""
