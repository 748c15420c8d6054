"""The Nice Classification: its 45 classes, and the classes that goods in plain words probably belong to.

Source: International Classification of Goods and Services for the Purposes of the Registration of Marks (Nice
Agreement), WIPO, 12th edition, written from memory in our own short words. The 13th edition, in force since 2026,
moved some goods (spectacles, for one, to class 10; from memory). The official list decides.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import lexicon
from ..tables import open_table
from ..text import parse

__all__ = ["CLASSES", "COORDINATED", "ClassGuess", "classes_for", "is_service", "listed_classes"]

CLASSES = {
    1: "chemicals for industry, science and agriculture; fertilisers",
    2: "paints, varnishes, dyes and inks",
    3: "cosmetics, soaps, perfumes and cleaning preparations",
    4: "industrial oils and greases, fuels, candles",
    5: "medicines, medical and veterinary preparations, dietary supplements, pest control",
    6: "common metals and goods made of them",
    7: "machines, machine tools, motors and engines",
    8: "hand tools, cutlery and razors",
    9: "software, computers, electronics, scientific and safety apparatus",
    10: "medical, surgical and dental apparatus",
    11: "lighting, heating, cooking, cooling, water and sanitary installations",
    12: "vehicles and their parts",
    13: "firearms, ammunition, explosives and fireworks",
    14: "jewellery, watches, clocks and precious metals",
    15: "musical instruments",
    16: "paper, printed matter, stationery and artists' materials",
    17: "rubber, plastics for manufacture, insulation, flexible pipes",
    18: "leather, bags, luggage and umbrellas",
    19: "building materials, not of metal",
    20: "furniture, mirrors, picture frames, goods of wood and similar materials",
    21: "household and kitchen utensils, glassware, porcelain and earthenware",
    22: "ropes, nets, tents, sacks and raw fibres",
    23: "yarns and threads",
    24: "textiles, bed and table linen",
    25: "clothing, footwear and headwear",
    26: "lace, ribbons, buttons, haberdashery, artificial flowers",
    27: "carpets, mats and wall hangings",
    28: "games, toys and sporting articles",
    29: "meat, fish, dairy products, preserved fruit and vegetables, edible oils",
    30: "coffee, tea, flour, bread, confectionery, sauces and spices",
    31: "raw agricultural and garden products, live plants and animals, animal feed",
    32: "beer, waters, juices and soft drinks",
    33: "wines, spirits and other alcoholic beverages",
    34: "tobacco and smokers' articles",
    35: "advertising, business management, retail services",
    36: "insurance, finance and real estate",
    37: "construction, repair, installation and cleaning services",
    38: "telecommunications",
    39: "transport, storage, packaging and travel arrangement",
    40: "treatment of materials, printing, custom manufacture",
    41: "education, training, entertainment, sport and culture",
    42: "scientific and technical services, software development, design",
    43: "food and drink services, temporary accommodation",
    44: "medical, veterinary, beauty, agricultural and gardening services",
    45: "legal, security, personal and social services",
}
"""Class number -> the subject of its heading, in our own short words."""

_GROUPS = (
    (29, 30, 31, 32, 33, 43), (3, 5, 44), (5, 10, 44), (14, 18, 25, 26), (9, 38, 41, 42), (9, 16, 41),
    (11, 20, 21, 24, 27), (8, 21), (21, 31, 44), (1, 31, 44), (1, 5, 31), (7, 8, 6), (4, 12, 37, 39),
    (2, 17, 19, 37), (6, 19, 37), (9, 28, 41), (25, 28), (22, 23, 24), (24, 25), (9, 15, 41), (35, 36),
    (36, 37), (5, 29, 30), (34, 4), (16, 40), (42, 45), (39, 43), (4, 3), (3, 21), (10, 20), (11, 7, 9),
)  # fmt: skip
COORDINATED = frozenset(
    frozenset((a, b)) for group in _GROUPS for a in group for b in group if a != b
)  # fmt: skip
"""Pairs of classes whose goods often come from one maker or are sold side by side. From memory of search
practice at trade mark offices (cross-class searching); a starting point, not a rule of any office."""

_LEVELS = 4
_SENSES = 3


@dataclass(frozen=True, slots=True)
class ClassGuess:
    """A class that the words of a goods text point to, and the word or broader term that does."""

    number: int
    because: str


def is_service(number: int) -> bool:
    """Whether the class holds services (35 to 45)."""
    return number >= 35


def listed_classes(term: str) -> tuple[int, ...]:
    """The classes under which our list holds this very term, folded; most words are not in it."""
    return tuple(int(number) for number in (open_table("nice_words.tsv").get(term) or "").split())


@lru_cache(maxsize=4096)
def classes_for(text: str) -> tuple[ClassGuess, ...]:
    """The Nice classes that goods in plain words probably belong to, likeliest first; empty if none is found.

    The longest known term at each place counts; a word that is not listed is tried through its broader terms
    (basil -> herb -> class 31). A guess to start from: the official list decides.
    """
    table = open_table("nice_words.tsv")
    words = parse(text).words
    votes: dict[int, tuple[float, str]] = {}

    def vote(term: str, weight: float, because: str) -> bool:
        value = table.get(term)
        for number in value.split() if value else ():
            before, reason = votes.get(int(number), (0.0, because))
            votes[int(number)] = (before + weight / len((value or "").split()), reason)
        return value is not None

    at = 0
    while at < len(words):
        for size in range(min(4, len(words) - at), 0, -1):
            phrase = words[at : at + size]
            forms = [(*phrase[:-1], last) for last in dict.fromkeys((phrase[-1], *_singular(phrase[-1])))]
            term = next((" ".join(form) for form in forms if vote(" ".join(form), float(size), " ".join(form))), None)
            if term is not None:
                break
        else:
            size = 1
            for because, term, level in _broader(words[at]):
                if vote(term, 0.5**level, because):
                    break
        at += size
    order = sorted(votes.items(), key=lambda item: (-item[1][0], item[0]))
    if not order:
        return ()
    least = order[0][1][0] / 3
    return tuple(ClassGuess(number, because) for number, (weight, because) in order if weight >= least)


def _singular(word: str) -> tuple[str, ...]:
    return lexicon().bases_by_pos(word).get("n", ())


def _broader(word: str) -> list[tuple[str, str, int]]:
    """(explanation, broader term, level) upward from the leading noun senses of `word`, nearest first."""
    words = lexicon()
    found = []
    layer = [(sense.id, word) for sense in words.senses(word, "n")[:_SENSES]]
    for level in range(1, _LEVELS + 1):
        layer = [
            (up, f"{path}, {words.entry(up).words[0]}")
            for sense_id, path in layer
            for up in words.related_ids(sense_id, "@", "@i")
        ]
        found += [(path, term.lower(), level) for sense_id, path in layer for term in words.entry(sense_id).words]
    return found
