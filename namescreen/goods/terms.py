"""The telling words of a goods text: "retail store services featuring herbs" is about herbs, sold in a
store."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import kinds, lexicon, zipf
from ..lexicon.morphology import DETACHMENTS
from ..text import parse

__all__ = ["GoodsWord", "base_form", "goods_words", "plain_words"]


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


# Words that frame a list of goods and say nothing about them (wording of goods lists at trade mark offices).
_FRAME = _words("""
    self featuring namely including include includes providing provide provides related relating particularly
    especially such etc other others kind nature use used using via field fields form goods product products
    good service services based made containing consisting comprising various same seller selling sold
    things items item articles article type types purposes general
""")
# Dealing in goods: the goods dealt in matter as much as the dealing (In re Hotels.com, 573 F.3d 1300).
_DEALING = _words("""
    retail wholesale rental sale sales store shop distribution information provision import export
    reservation website blog directory manufacture manufacturing repair delivery supply facility online
""")
_ENDS_PHRASE = _words("""
    of for with in on to from about by at that which using featuring selling via including namely providing
    open
""")
_POSSESSIVE = re.compile(r"['’`´]s\b|(?<=s)['’`´](?=\s|$)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class GoodsWord:
    """A base form from a goods text, or two or three words that the lexicon holds as one (soft drink).

    `head` if it names the goods themselves: hose in "hydraulic hose".
    """

    word: str
    head: bool


def plain_words(text: str) -> tuple[str, ...]:
    """The folded words of `text` with possessives taken off: women's magazine -> women, magazine."""
    return parse(_POSSESSIVE.sub("", text)).words


def base_form(word: str) -> str:
    """The base form under which the lexicon holds `word`, a noun first; the word itself if it is unknown."""
    bases = lexicon().bases_by_pos(word)
    nouns = bases.get("n", ())
    if len(nouns) > 1 and not (nouns[0] == word and _has_own_meaning(word)):
        return max((form for form in nouns if form != word), key=zipf)
    return (nouns or bases.get("v") or bases.get("a") or (_regular_singular(word),))[0]


def _regular_singular(word: str) -> str:
    """The singular of a word that is not in the lexicon, if that is in use (apps: app); else the word."""
    forms = (word[: -len(old)] + new for old, new in DETACHMENTS["n"] if word.endswith(old))
    return max((word, *forms), key=lambda form: zipf(form) if len(form) > 2 else 0.0) if len(word) > 3 else word


def _has_own_meaning(plural: str) -> bool:
    """Whether a plural is the name of a thing of its own (glasses, arms), and in use as such."""
    own = (sense for sense in lexicon().senses(plural, "n", labelled=False) if plural in sense.words)
    return any(sense.domain == "noun.artifact" and sense.count > 2 for sense in own)


@lru_cache(maxsize=4096)
def goods_words(text: str) -> tuple[GoodsWord, ...]:
    """The telling words of a goods text, in order, each once.

    A head is the last word of a phrase; of dealing services ("retail of herbs") also the goods dealt in.
    """
    found: dict[str, bool] = {}
    for part in re.split(r"[,;()/]|\b(?:and|or)\b", text):
        opened = False  # whether this part already has its head
        for phrase in _phrases(plain_words(part)):
            telling = [w for w in phrase if w not in _FRAME and "function word" not in kinds(w) and not w.isdecimal()]
            for word in telling:
                found.setdefault(base_form(word), False)
            for joined in _joined(phrase):
                found[joined] = found.get(joined, False) or (not opened and joined.endswith(base_form(phrase[-1])))
            if telling and not opened:
                found[base_form(telling[-1])] = True
                opened = not any(w in _DEALING or base_form(w) in _DEALING for w in telling)
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
    for size in (3, 2):
        for at in range(len(phrase) - size + 1):
            run = phrase[at : at + size]
            singular = (*run[:-1], base_form(run[-1]))
            tried = (" ".join(run), " ".join(singular), "".join(singular))
            found += [one for one in dict.fromkeys(tried) if words.is_lemma(one)][:1]
    return found
