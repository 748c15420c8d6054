"""A name without what says nothing of the maker: words that name its goods, which anyone may add, so that they keep no
marks apart (TMEP 1207.01(b)(iii) and (viii); Court of Justice, C-120/04, Thomson Life; from memory), legal forms (TMEP
1213.03(d): no significance as a source; from memory), words for the territory of a business (Companies House leaves
UK, GB, England and the like out of account where it asks whether two names are the same: SI 2015/17, the Company,
Limited Liability Partnership and Business (Names and Trading Disclosures) Regulations 2015, schedule 3; a place
describes: TMEP 1210; both from memory), articles, and the ending of a domain."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from ..expressions import expression
from ..lexicon import kinds, lexicon
from ..plain_text import number, some
from ..text import parse
from ..text.inflection import other_number
from .territory_words import TERRITORY_ENDS, is_added_to, territory_at_end

__all__ = ["ADDED", "NOT_IDENTICAL", "left_out", "may_tell_less", "registered_part", "telling_part", "words_for_goods"]

ADDED = 0.97
"""What the closeness of two names counts where one of them has such words besides: next to nothing is lost. Ours, not
fitted; with it US clear decisions are told apart at 0.793 (0.785 without), ratings no worse."""
NOT_IDENTICAL = 0.99
"""The most closeness in appearance and sound of names that are the same but for such words; ours."""
LONGEST_PHRASE = 4
SHORTEST = 3
"""Letters of the shortest rest of a name that is compared by itself; ours."""


_LEGAL_FORMS = frozenset((
    "ltd limited plc llp llc lp inc incorporated corp corporation co company pty ptyltd pte pvt cic "
    "gmbh ggmbh gesmbh mbh ag kg kgaa ohg ug gbr ev eg ek haftungsbeschrankt "
    "sa sas sasu sarl eurl sc snc scs sca scop ei spa srl srls sapa sl slu sau slne "
    "bv nv vof bvba cvba cv srlcv ab hb kb as asa ans da aps is ks oy oyj ou sia uab lda ltda unipessoal eireli "
    "spzoo spj spk sro vos kft kkt zrt nyrt rt bt doo dd ad ood eood sae kk gk se sce eeig jsc pjsc ooo oao zao "
    "sdnbhd bhd tm"
).split())  # fmt: skip
"""Legal forms of companies, folded, without points and spaces, and the sign of a trade mark: from general knowledge of
the states' company law, not checked one by one."""
_WORDS_TOO = frozenset("spa da is ad bt ei sc ev dd cv rt sia".split())
"""Of these, what is a word as well: a legal form only with points, or in capitals and small letters (SpA)."""
_BRANDS = frozenset(("brand", "brands"))
_SEEN = frozenset(("company", "co", *_BRANDS))
"""Of these, what is also a word of a name, seen and heard by those who rate how alike names are."""
_ARTICLES = frozenset("the le la les el los las il lo der das het".split())
_DOMAIN = expression(r"(?:https?://)?(?:www\.)?([a-z0-9-]{3,})((?:\.[a-z]{2,6}){1,2})/?", re.IGNORECASE)
_ENDS = frozenset(form[at:] for form in (*_LEGAL_FORMS, *_BRANDS) for at in range(len(form)))
"""The last word of every form, into however many words it falls."""
_AND = frozenset("and und et y e".split())
_LONGEST_FORM = 4
"""The words into which a legal form with points may fall (sp. z o.o.)."""


@lru_cache(maxsize=1 << 15)
def telling_part(name: str, goods: str) -> str:
    """A name without the words that name `goods` and what says nothing whatever they are, or `name` itself where it has
    none, nothing else is left, or they are part of a set phrase (soap opera)."""
    words = _without_forms(name)
    named = words_for_goods(goods)
    cut = [bool(named) and not named.isdisjoint({word, *other_number(word)}) and not _in_a_phrase(words, at)
           for at, word in enumerate(words)]  # fmt: skip
    kept = [word for word, out in zip(words, cut, strict=True) if not out]
    while kept and cut[-1] and "function word" in kinds(kept[-1]):
        kept.pop()
    while kept and cut[0] and "function word" in kinds(kept[0]):
        del kept[0]
    left = " ".join(kept)
    return left if left != " ".join(parse(name).words) and len(left) >= SHORTEST else name


def may_tell_less(name: str, words: Sequence[str]) -> bool:
    """Whether `telling_part` may be less than a name with these words, whatever the goods; asked of millions of marks,
    it costs next to nothing."""
    first, last = words[0], words[-1]
    return first in _ARTICLES or last == "the" or last in _ENDS or last in TERRITORY_ENDS or "." in name


@lru_cache(maxsize=1 << 15)
def registered_part(name: str) -> str:
    """A name without the legal form at its end, which is no part of a mark, or `name` itself where it has none or
    nothing else is left. Other words that say nothing stay: readers who rate how alike names look count them."""
    words = parse(name).words
    rest = _without_legal_form(words, name, _SEEN)
    told = rest != words and len("".join(rest)) >= SHORTEST and not _ARTICLES.issuperset(rest)
    return " ".join(rest) if told else name


def _without_forms(name: str) -> tuple[str, ...]:
    """The words of a name without legal forms and territories at its end, an article at either end, and the ending of a
    domain; all of them where nothing else is left."""
    words = parse(name).words
    domain = _DOMAIN.fullmatch(name.strip())
    if domain and all("domain ending" in kinds(one) for one in domain[2].lower().split(".")[1:]):
        words = parse(domain[1]).words
    rest = _without_legal_form(words, name)
    while cut := territory_at_end(rest, name):
        bare = _without_legal_form(rest[:-cut], name)
        if not is_added_to(bare, "".join(rest[-cut:])):
            break
        rest = bare
    if len(rest) > 1 and rest[0] in _ARTICLES and not _in_a_phrase(rest, 0):
        rest = rest[1:]
    elif len(rest) > 1 and rest[-1] == "the":
        rest = rest[:-1]
    left = "".join(rest)
    says_nothing = _ARTICLES.issuperset(rest) or left in _LEGAL_FORMS - _WORDS_TOO  # GmbH UK
    return words if says_nothing or len(left) < SHORTEST else rest


def _without_legal_form(
    words: tuple[str, ...], name: str, kept: frozenset[str] = frozenset()
) -> tuple[str, ...]:
    """Words without the legal forms at their end, but for those that are `kept`."""
    while words and words[-1] not in kept and (cut := _form_at_end(words, name)):
        words = words[:-cut]
        while len(words) > 1 and words[-1] in _AND:  # & Co
            words = words[:-1]
    return words


def _form_at_end(words: Sequence[str], name: str) -> int:
    """How many of the last words are a legal form; 0 if none is."""
    if len(words) > 1 and words[-1] in _BRANDS:
        return 1
    for count in range(min(_LONGEST_FORM, len(words) - 1), 0, -1):
        form = "".join(words[-count:])
        if form not in _LEGAL_FORMS:
            continue
        if len(words[-count - 1]) > 1 if count > 1 else form not in _WORDS_TOO or _is_written_as_form(form, name):
            return count  # and no part of longer initials (U S A)
    return 0


def _is_written_as_form(form: str, name: str) -> bool:
    return any(one.casefold() == form and not (one.isupper() or one.islower() or one.istitle()) for one in name.split())


@lru_cache(maxsize=256)
def words_for_goods(goods: str) -> frozenset[str]:
    """The words of some goods, in base forms."""
    if not goods:
        return frozenset()
    from ..goods import goods_words

    return frozenset(one.word for one in goods_words(goods))


def _in_a_phrase(words: tuple[str, ...], at: int) -> bool:
    """Whether a word and those beside it are an entry of the lexicon, which may mean something else."""
    spans = ((first, first + size) for size in range(2, LONGEST_PHRASE + 1) for first in range(at - size + 1, at + 1))
    return any(
        first >= 0 and last <= len(words) and lexicon().is_lemma(" ".join(words[first:last])) for first, last in spans
    )


def left_out(names: Iterable[str], forms: Iterable[str], so: tuple[float, float] | None = None) -> str:
    """Which words of two names their `forms` are without, as a sentence; and how close these are in appearance and in
    sound, where that is not told elsewhere."""
    words = [
        word for name, form in zip(names, forms, strict=True) for text in name.split()
        for word in _not_among(parse(form).words, text)
    ]  # fmt: skip
    quoted = some(f'"{word}"' for word in dict.fromkeys(words))
    told = f"; the rest is {number(so[0])} alike in appearance and {number(so[1])} in sound" if so else ""
    return f"Compared without {quoted}{' overall' if so else ''}, as anyone may add that{told}."


def _not_among(kept: Sequence[str], text: str) -> Iterable[str]:
    """The words of a text that are not `kept`."""
    words = parse(text).words
    if len(words) > 1 and text.isascii() and text.isalpha() and set(kept).isdisjoint(words):
        return (text,)  # GmbH falls into words
    return (word for word in words if word not in kept)
