"""Goods as phrases: a list is split into items, and an item into its head, its modifiers and the rest.

"self-watering planters of glazed stoneware for kitchen herbs" is a planter; the rest says which one. Of services in
goods ("retail of tea", "repair of bicycles") the goods dealt in matter as much as the dealing.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import dropwhile
from typing import NamedTuple

from ..expressions import expression
from ..lexicon import kinds, lexicon
from ..tables import open_table
from .broader import leading_senses, names_above
from .left_out import as_stated
from .users import for_both
from .wording import in_english
from .words import MADE_SO, as_one_word, base_form, is_noun, plain_words, runs

__all__ = ["AT_LARGE", "GoodsWord", "Item", "base_form", "goods_words", "items", "plain_words"]


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


# Words of the frame of a goods list, without content (wording of goods lists at trade mark offices).
_FRAME = _words("""
    self connected concerning featuring namely including include includes providing provide provides related relating
    relation particularly especially such etc other others kind nature use used using via field fields made containing
    consisting comprising various same seller selling sold based purpose purposes general adapted designed intended
    suitable specially specifically shaped online
""") | MADE_SO
# Words for the form alone: the word before it, or after "of", says what the goods are.
_FORM = _words("""
    good product service item article thing type range collection selection assortment set kit pack box piece pair
    blend mix mixture preparation accessory part fitting supply material substance form
""")
_BELONGING = _words("accessory part fitting supply")
AT_LARGE = _words("equipment article gear product good supply requisite item accessory tackle")
"""Words for whatever a trade or a use has: fishing articles, fishing tackle."""
# Dealing in goods (In re Hotels.com, 573 F.3d 1300 (Fed. Cir. 2009): the goods dealt in count as well).
_DEALING = _words("""
    retail retailing wholesale rental hire sale store shop distribution information provision import export reservation
    website blog directory manufacture manufacturing repair maintenance installation delivery facility cleaning
    consultancy development publishing
""")
# Portions of goods: the word before says what they are where that is listed as goods, and the two are not (soap bars,
# but snack bars, protein powder); a bar for a drink is a place.
_PORTIONS = _words("bar stick powder liquid block tablet capsule cube sheet flake")
_SERVED = ("alcohol|", "hot drinks|", "soft drinks|", "bedding|", "household linen|", "electronics|")
_ENDS_PHRASE = _words("""
    of for with in on to from about by at that which using featuring selling via including namely providing open as
    being relating containing like while resembling without where whose who when during under between into onto inside
    around through against
    i we
""")
_MADE = _words("of from in")
# What materials are to a dictionary, which are goods of their own in general (fabrics, metals).
_MATERIALS = frozenset(("material", "fabric", "ceramic ware", "metallic element"))
_PARTICLE = expression(r"(?<=\w)-(?:in|on|off|out|up|down|over|to|by|for|with|about|at)\b(?=[-\s])", re.IGNORECASE)
"""A particle joined to its word begins no phrase: carry-on bags, clip-on lights, ready-to-wear clothing."""
_BEING = expression(r"\s+\bbeing\b.*$", re.IGNORECASE)
"""What goods are besides (caps being headwear) is no other goods: the wording of offices."""
_FOR_ALL = expression(
    r"[,;]?\s*\ball (?:of )?(?:the )?(?:aforesaid|foregoing|aforementioned)?\s*(?:goods|items)?\s*(?:being )?"
    r"(?:adapted |intended |designed )?for\s+(?P<what>[^,;]+)$",
    re.IGNORECASE,
)
_ADAPTED = expression(r"\s+(?:specially |specifically )?adapted for\s+(?P<what>[^,;]+)$", re.IGNORECASE)
_SERVICE_NAMELY = expression(
    r".*?\b(?P<how>retail|wholesale|sale|repair|maintenance|rental|cleaning|delivery)\b.*?[,:]? namely,? (?P<what>.+)$",
    re.IGNORECASE,
)
"""A service in goods that are named one by one: each is dealt in so."""
_IN_GOODS = _words("retail retailing wholesale sale rental hire repair distribution import export")
_DEALT = expression(r"\b(?:of|for|with|in|featuring|to|selling|concerning) \w", re.IGNORECASE)
"""Services that lists name once for several goods, and what comes between them and the goods."""
_WORK = expression(
    r"(?<![^,;\n])\s*\b(?:(?:repairing|mending|restoring|servicing|regrinding|resoling|reproofing|restringing|truing|"
    r"reupholstering|rewaxing)(?: of)?|(?:re-?)?(?:waxing|proofing|soling|stringing|grinding|sharpening|tuning|dyeing|"
    r"upholstering|polishing|painting) of)\s+(?!services?\b)",
    re.IGNORECASE,
)
"""Work on goods, said by a verb: regrinding spades, re-waxing of coats."""
_LISTS = expression(r"[;\n]")
_HAS_PURPOSE = expression(r"\bfor\b", re.IGNORECASE)
_QUALIFIES = expression(r"(?:for|of|in|with|made|being|as|at|to) ", re.IGNORECASE)
"""How what is said of the goods before a comma begins, and no further goods: castors, not of metal, for furniture."""
_HOW = expression(r"[\w'’]+-\w+(?:ed|en|wn|ut|de)$", re.IGNORECASE)
"""A compound participle, which says how the goods before a comma work or are made: tools, hand-operated."""
_GOES_ON = expression(r"[a-z]+ed (?:like|with|to|in|from|by|on|for|into|at|as)\b", re.IGNORECASE)
"""A participle with more to it goes on with the goods before: stops filled with sand and shaped like hens."""
_NEGATED = expression(r"not ", re.IGNORECASE)
_BETWEEN = expression(r"[,;()/\n]|\b(?:and|or)\b", re.IGNORECASE)


class Item(NamedTuple):
    """One item of a list of goods: its `text`, in English, and what it says, in base forms. `head` is what it is, or
    what is dealt in; `dealing` the service in it (retail, repair), empty for goods and for other services; `modifiers`
    which kind of it, `rest` what else is said: material, purpose, contents."""

    text: str
    head: str
    modifiers: tuple[str, ...] = ()
    rest: tuple[str, ...] = ()
    dealing: str = ""

    @property
    def words(self) -> tuple[str, ...]:
        """Every content word of the item."""
        return (*self.modifiers, self.head, *self.rest)


class GoodsWord(NamedTuple):
    """A base form from a goods text, or two or three words that the lexicon holds as one (soft drink).

    `head` if it names the goods themselves: hose in "garden hose".
    """

    word: str
    head: bool


@lru_cache(maxsize=4096)
def items(text: str) -> tuple[Item, ...]:
    """The items of a list of goods or services, in order, each once; empty if it holds no content word."""
    found = [item for part in _parts(in_english(text).english) if (item := _item(part)) is not None]
    return tuple(dict.fromkeys(found))


def _parts(text: str) -> list[str]:
    """The items of a list as they are written, each with the qualifier that ends it and holds for all: between commas
    (bags, saddlebags adapted for bicycles), and for the whole list where it says so (all for babies)."""
    text = _WORK.sub("repair of ", as_one_word(as_stated(text)))
    ends = _FOR_ALL.search(text)
    if ends is not None:
        return _qualified(_BETWEEN.split(text[: ends.start()]), ends["what"])
    return [part for listed in _LISTS.split(text) for part in _with_last(listed)]


def _with_last(listed: str) -> list[str]:
    served = _SERVICE_NAMELY.match(listed)
    if served:  # retail services in relation to foodstuffs, namely honey and syrups
        return [f"{served['how']} of {part.strip()}" for part in _BETWEEN.split(served["what"]) if part.strip()]
    ends = _ADAPTED.search(listed)
    if ends:
        return _qualified(_BETWEEN.split(listed[: ends.start()]), ends["what"])
    parts = _with_qualifiers([part.strip() for part in _BETWEEN.split(listed)])
    return _dealt_in(_completed(_of_materials(for_both(parts, listed))))


def _dealt_in(parts: list[str]) -> list[str]:
    """Items with the service that the one before them names with the goods that it deals in: retail of candles and
    lanterns deals in both."""
    found: list[str] = []
    dealing = ""
    for part in parts:
        item = _item(part) if part else None
        served = item is not None and ("service" in item.words or item.dealing)
        if item is not None and item.dealing in _IN_GOODS and _DEALT.search(part):
            dealing = item.dealing
        elif served:
            dealing = ""
        elif dealing and item is not None:
            part = f"{dealing} of {part}"
        found.append(part)
    return found


def _with_qualifiers(parts: list[str]) -> list[str]:
    """Items with what is said of them after a comma (castors, not of metal, for furniture; tools, hand-operated); what
    they are not is left out. An adjective before another with its goods is said of these: floral and woody perfumes."""
    found: list[str] = []
    for part, after in zip(parts, (*parts[1:], ""), strict=True):
        if found and found[-1] and _NEGATED.match(part):
            continue
        first, _, more = after.partition(" ")
        if found and found[-1] and _GOES_ON.match(part):
            found[-1] += f" {part}"
            continue
        said = _HOW.fullmatch(part) or (_is_only_said(part) and not (more and _is_only_said(first)))
        if found and found[-1] and (said or _QUALIFIES.match(part)):
            found[-1] += f" for {part}" if said else f" {part}"
        else:
            found.append(part)
    return found


@lru_cache(maxsize=1 << 12)
def _is_only_said(part: str) -> bool:
    """Whether a part of a list is one word that only says of what kind goods are: infusions, medicinal."""
    word = part.lower()
    senses = lexicon().senses(word, labelled=False) if word.isalpha() else ()
    return bool(senses) and all(sense.pos == "a" for sense in senses) and not _is_participle(word)


def _of_materials(parts: list[str]) -> list[str]:
    """Items with all that they are made of: a material after "of" or "in" and a further one (coats of wool and silk) is
    no list of goods."""
    found: list[str] = []
    for part in parts:
        if found and _is_bare_material(plain_words(part)) and _ends_in_material(found[-1]):
            found[-1] += f" and {part}"
        else:
            found.append(part)
    return found


def _ends_in_material(part: str) -> bool:
    """Whether goods, which are no material themselves, are said last to be made of one."""
    words = plain_words(part)
    at = max((at for at, word in enumerate(words) if word in _ENDS_PHRASE), default=0)
    if not at or words[at] not in _MADE or not _is_material(words[-1]):
        return False
    item = _item(part)
    return item is not None and not item.dealing and item.head != base_form(words[-1])


def _is_bare_material(words: tuple[str, ...]) -> bool:
    """Whether words name a material and nothing else: waxed cotton."""
    return bool(words) and _is_material(words[-1]) and not any(
        word in _ENDS_PHRASE or (is_noun(word) and not _is_material(word)) for word in words
    )


@lru_cache(maxsize=1 << 12)
def _is_material(word: str) -> bool:
    """Whether a leading sense of a word is something that things are made of: leather, tweed, porcelain."""
    named = [names_above(sense) for sense, _ in leading_senses(base_form(word), 2)]
    return base_form(word) not in _MATERIALS and any(not _MATERIALS.isdisjoint(names) for names in named)


def _completed(parts: list[str]) -> list[str]:
    """Items with the goods to which what is only a participle belongs: those before it (fruits, frozen or dried), or
    those after it that begin with one too (frozen and dried fruits)."""
    found: list[str] = []
    before = ""
    for at, part in enumerate(parts):
        words = plain_words(part)
        if not words or not all(map(_is_participle, words)):
            found.append(part)
            before = part or before
            continue
        after = next((one for one in map(plain_words, parts[at:]) if one and not all(map(_is_participle, one))), ())
        whose = " ".join(dropwhile(_is_participle, after)) if after and _is_participle(after[0]) else before
        found.append(f"{part} {whose}".strip())
    return found


@lru_cache(maxsize=1 << 13)
def _is_participle(word: str) -> bool:
    """Whether a word is a past participle and no noun: frozen, canned."""
    bases = lexicon().bases_by_pos(word)
    return "n" not in bases and word not in bases.get("v", (word,)) and not word.endswith(("ing", "s"))


@lru_cache(maxsize=1 << 13)
def _names_a_thing(word: str) -> bool:
    return word in _FORM or word in _DEALING or is_noun(word)


def _qualified(parts: list[str], purpose: str) -> list[str]:
    """Items with a purpose, where they state none of their own."""
    said = f"adapted for {purpose}"
    return [part if not part.strip() or _HAS_PURPOSE.search(part) else f"{part.strip()} {said}" for part in parts]


def _item(text: str) -> Item | None:
    """An item from the words between two commas: the first phrase with a word that says what it is gives the head."""
    text = _BEING.sub("", text)
    split = _phrases(plain_words(_PARTICLE.sub("", text)))
    phrases = [_content_words(phrase, last=at == len(split) - 1) for at, phrase in enumerate(split)]
    phrases = [phrase for phrase in phrases if phrase]
    dealing = ""
    kept: list[str] = []
    for at, phrase in enumerate(phrases):
        named = [*kept, *phrase]
        last = at == len(phrases) - 1
        while named and _says_no_more(named[-1], named[:-1], last=last):
            word = named.pop()
            if word in _DEALING:
                dealing = dealing or word
        dealing = dealing or next((word for word in named[:-1] if word in _DEALING), "")
        named = [*(word for word in named[:-1] if word not in _DEALING), *named[-1:]]
        kept = named if len(named) < len(phrase) and not last and not (named and is_noun(named[-1])) else []
        if named and not kept:
            rest = tuple(dict.fromkeys(word for other in phrases[at + 1 :] for word in other if word not in _FORM))
            if not dealing and any(other[-1] == "service" for other in phrases[at + 1 :]):
                dealing = "service"  # software as a service
            return Item(" ".join(text.split()), named[-1], tuple(named[:-1]), rest, dealing)
    return None


def _says_no_more(word: str, before: list[str], *, last: bool) -> bool:
    """Whether the last word of a phrase does not say what the goods are, but the noun before it or the next phrase
    does."""
    if word in _PORTIONS and before and _is_portion(word, before):
        return True
    if word not in _FORM and word not in _DEALING:
        return False
    if before and word in _BELONGING and _is_belonging(before[-1], word):
        return False  # pet accessories are no pets, nor bike accessories bikes
    if before and word in AT_LARGE and any(_is_belonging(before[-1], one) for one in AT_LARGE):
        return False  # fishing articles are no fishing
    if before and word in _FORM:
        whole = open_table("goods_groups.tsv").get(f"{before[-1]} {word}")
        if whole and whole != open_table("goods_groups.tsv").get(before[-1]):
            return False  # building material is no building, a jewellery box no jewellery, but a tea blend tea
    if before and word == "box" and not _is_eaten(before[-1]):
        return False  # a ring box is no ring, but a box of chocolates may be called a chocolate box
    return bool(before and is_noun(before[-1])) or not last


@lru_cache(maxsize=1 << 12)
def _is_belonging(thing: str, word: str) -> bool:
    """Whether what belongs to a thing, by this or another name of it, is goods of the trade by themselves."""
    table = open_table("broader_goods.tsv")
    named = (thing, *(table.get(thing) or "").split(","))
    return any(f"{one} {word}" in table for one in named if one)


@lru_cache(maxsize=1 << 12)
def _is_eaten(word: str) -> bool:
    """Whether a word is first of all food or drink."""
    named = (names_above(sense) for sense, _ in leading_senses(word, 1))
    return any(not names.isdisjoint(("food", "foodstuff", "beverage")) for names in named)


def _is_portion(word: str, before: list[str]) -> bool:
    table = open_table("goods_groups.tsv")
    row = table.get(before[-1])
    return bool(row) and f"{before[-1]} {word}" not in table and not str(row).startswith(_SERVED)


def _content_words(phrase: list[str], *, last: bool) -> tuple[str, ...]:
    """The content words of a phrase, in base form; a participle at its end says which goods (fish, canned), and so does
    an adjective with a phrase of its own (books bound in cloth, bars free of sugar), if it is not the `last`."""
    said = len(phrase) > 1 and (_is_participle(phrase[-1]) or not (last or _names_a_thing(phrase[-1])))
    if said and is_noun(phrase[-2]):
        phrase = [phrase[-1], *phrase[:-1]]
    little = [("function word" in kinds(word) or word in _FRAME or word.isdecimal()) for word in phrase]
    if len(phrase) > 1 and phrase[-1] not in _FRAME and is_noun(phrase[-1]) and lexicon().known(phrase[-1]):
        little[-1] = False  # a small word that is a noun too, where a noun stands: a watering can
    kept = (word for word, says_nothing in zip(phrase, little, strict=True) if not says_nothing)
    return tuple(map(base_form, kept))


@lru_cache(maxsize=4096)
def goods_words(text: str) -> tuple[GoodsWord, ...]:
    """The content words of a goods text, in order, each once, and those that together are one entry of the lexicon."""
    found: dict[str, bool] = {}
    for part in _parts(in_english(text).english):
        item = _item(part)
        if item is None:
            continue
        for word in (*item.modifiers, item.dealing, item.head, *item.rest):
            if word:
                found[word] = found.get(word, False) or word == item.head or word == item.dealing
        for joined in (one for phrase in _phrases(plain_words(part)) for one in _joined(phrase)):
            found[joined] = found.get(joined, False) or joined.endswith(item.head)
    return tuple(GoodsWord(word, head) for word, head in found.items())


def _phrases(words: tuple[str, ...]) -> list[list[str]]:
    phrases: list[list[str]] = [[]]
    for word in words:
        if word in _ENDS_PHRASE:
            phrases.append([])
        else:
            phrases[-1].append(word)
    return [phrase for phrase in phrases if phrase]


def _joined(phrase: list[str]) -> list[str]:
    """Runs of two or three words that are one entry of the lexicon, in base form."""
    words = lexicon()
    found = []
    for _, run in runs(phrase, 3, 2):
        singular = (*run[:-1], base_form(run[-1]))
        tried = (" ".join(run), " ".join(singular), "".join(singular))
        found += [one for one in dict.fromkeys(tried) if words.is_lemma(one)][:1]
    return found
