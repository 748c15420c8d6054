"""What the words of a name say about goods, as numbers: the evidence from which the category follows.

Each word of a name brings the values of `WORD`, the name as a whole those of `NAME`; `values` joins them: of the least
content word, which carries a name, and the mean of all. What each weighs is fitted: see `continuum`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from ..expressions import expression
from ..lexicon import kinds, lexicon, zipf
from ..tables import open_table
from ..text import parse
from ..text.spoken_forms import LETTER_NAMES
from .classification import chance_of_one_class
from .coinage import as_heard, as_respelt, divided, heard_as, heard_word, is_coined, understood
from .composition import LAST_OF_GOODS, is_picture
from .context import context
from .description import (
    NOTHING,
    SURNAME,
    Evidence,
    EvidenceKind,
    describe,
    in_context,
    most_associated,
    named_goods,
    of_a_kind,
    of_kind,
    says_what_is_kept_away,
)  # fmt: skip
from .doing import DOERS, OCCASIONS
from .firms import is_firm_word
from .initials import are_initials, initials_of, stands_for
from .judged import IN_USE, LONGEST_ACRONYM, SHORTEST_ACRONYM, WORD, Judged, Meaning, as_told_nothing, is_acronym
from .known_places import comes_from
from .phrases import base_form, items, plain_words
from .places import is_settled_place, place_meant, place_of
from .proper_names import after_given_name, is_surname
from .purposes import is_use
from .qualities import is_praise
from .together import DOING, HOLDS, as_told, holds_goods, say_what_goods_do, says_what_holds_goods, told_together
from .trade_words import LONGEST_TERM, is_term, is_unsaid, term_for
from .words import is_trade_word, without_possessives

__all__ = ["NAME", "WORD", "is_trade_word", "judge_phrase", "read", "values"]

NAME = ("two words", "three words or more", "domain ending", "nothing telling", "whole", "taken apart", "one entry")
"""What is asked of the name as a whole: `whole` is how plainly its words together describe."""
CARRIED = 0.4
"""The share of the most distinctive word in `whole`; the rest is the mean."""
PARTICLES = frozenset(
    "van von vom zu zur der den de del della dello di da do dos du la le las los el ter ten af av".split()
)
"""What stands before surnames in languages of Europe; and the fewest letters of what comes after."""
LEAST_BORNE = 3
SPELLED_OUT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "å": "aa", "ø": "oe", "æ": "ae"})
NAMED_BY_SOUND = 0.9
_SELLING = frozenset(
    """
    shop shops store stores market outlet boutique company firm factory mill workshop works manufactory studio house
    emporium warehouse depot bazaar trade trading maker makers goods products brand line collection range set kit pack
    """.split()
)
"""Kinds of business or offer that any goods may come from."""
SORT_OF_GOODS, LEAST_HEAD = 0.85, 4
"""How plainly a word is a kind of the goods that ends in the word for them; and the fewest letters of that word."""
TRADE_WORD, ONE_CLASS = 0.6, 0.5
"""The weight of a word that is used for goods of the same class, and how likely that class must be."""
_SAYING = frozenset(("quality", "colour", "number", "taste", "people", "laudatory", "generic head"))
"""Kinds of word that say something of any goods."""
_PERSONAL = expression(r"\b[A-Z]\.\s*(?=[A-Z][\w'’-]{2})|\b(?:sons|bros|brothers|daughters)\b", re.IGNORECASE)
_SAYS_WORD_FOR = expression(r".*\b(?:word|name|term) for (?:an? |the )?")
TOLD = 0.8
"""How plainly the meaning of a rare word must describe the goods to be told: few buyers know it."""
_LETTERS = frozenset(part for spoken in LETTER_NAMES.values() for part in spoken.split()) - {"you", "see", "are"}


def read(name: str, goods: str, meanings: Mapping[str, Meaning], *, surnames: bool = True) -> tuple[Judged, ...]:
    """The content words of `name`, read in the way that describes `goods` most plainly; empty if it has none.

    C-THRU says "see through", BED & BREAKFAST is one entry. Words of `meanings` are judged by what they mean. Without
    `surnames` being a surname counts for nothing, as where such names are registrable."""
    plain, letters, spelt_out = _without_initials(_with_prefix(_as_surnames(name)))
    personal = surnames and bool(_PERSONAL.search(name))
    spoken = parse(name).spoken if plain == plain_words(name) else ()
    said = [way for way in spoken if sum(word in _LETTERS for word in way) < 2 and len(way) < len(plain) + 2]
    said += [("".join(way),) for way in said if len(way) == 2 and not plain[0].isalpha() and len(plain) == 1]  # K9
    best: tuple[Judged, ...] = ()
    borne = after_given_name(plain)
    said += [("".join(plain),)] if len(plain) > 1 and are_initials("".join(plain)) else []  # NiMH
    said += [way for way in (as_heard(plain, goods), as_respelt(plain, goods)) if way != plain and not meanings]
    named = _entries(plain, goods, meanings, only_names=True)
    for words in (named, *(_entries(way, goods, meanings) for way in (plain, *said))):
        content = _content_words(words, goods, meanings, borne)
        each = tuple(_judge(word, goods, personal, surnames, meanings.get(word)) for word in content)
        judged = told_together(each, goods, words)
        if not best or (judged and _whole(judged) > _whole(best) + 0.05):
            best = judged
    return (_as_initials(letters, spelt_out, best), *best) if letters and best else best


def _without_initials(words: tuple[str, ...]) -> tuple[tuple[str, ...], str, str]:
    """The words without the one that is the initials of others beside it, that one, and the others; "" if none is."""
    for at, word in enumerate(words):
        rest = (*words[:at], *words[at + 1 :])
        initials = "".join(one[0] for one in rest)
        found = initials.find(word) if SHORTEST_ACRONYM <= len(word) <= LONGEST_ACRONYM else -1
        if found >= 0 and not lexicon().known(word):
            return rest, word, " ".join(rest[found : found + len(word)])
    return words, "", ""


def _as_initials(letters: str, spelt_out: str, others: tuple[Judged, ...]) -> Judged:
    """Letters beside the words whose initials they are: they share the fate of these (Strigl, C-90/11)."""
    least = min(others, key=lambda one: one.evidence.weight)
    why = f'the initials of "{spelt_out}", and no more than these words say (Strigl, C-90/11)'
    evidence = least.evidence._replace(why=why, section="1209.03(h)", names_goods=False)
    return least._replace(word=letters, evidence=evidence, meaning=None, heard="")


def _as_surnames(name: str) -> tuple[str, ...]:
    """The words of a name; one with an umlaut or the like as it is spelled out, if only that is a surname: Müller is no
    muller, which grinds."""
    plain, spelled = plain_words(name), plain_words(name.lower().translate(SPELLED_OUT))
    if plain == spelled or len(plain) != len(spelled):
        return plain
    pairs = zip(plain, spelled, strict=True)
    return tuple(other if is_surname(other) and not is_surname(word) else word for word, other in pairs)


def _with_prefix(words: tuple[str, ...]) -> tuple[str, ...]:
    """`words` with Mc, Mac and O' joined to the surname that they begin: McTavish is one word; and with the particles
    of other languages, if the whole is a surname (Van der Berg)."""
    joined: list[str] = []
    lead = next((at for at, word in enumerate(words) if word not in PARTICLES), len(words))
    whole = "".join(words[: lead + 1])
    if 0 < lead < len(words) and len(words[lead]) >= LEAST_BORNE and is_surname(whole):
        return _with_prefix((whole, *words[lead + 1 :])) if lead + 1 < len(words) else (whole,)
    for word in words:
        if joined and joined[-1] in ("mc", "mac", "o") and len(word) >= 4:
            joined[-1] += word
        else:
            joined.append(word)
    return tuple(joined)


def values(judged: tuple[Judged, ...], name: str) -> dict[str, float]:
    """Everything asked of a name: of its most distinctive word, of all its words on average, of the name as a whole."""
    plain = plain_words(name)
    least = min(judged, key=lambda one: one.evidence.weight, default=None)
    found: dict[str, float] = {}
    for at, asked in enumerate(WORD):
        found[f"least: {asked}"] = least.asked[at] if least else 0.0
        found[f"mean: {asked}"] = sum(one.asked[at] for one in judged) / len(judged) if judged else 0.0
    said = [word for word in plain if not kinds(word) & {"function word"}]
    about = (
        len(judged) == 2, len(judged) >= 3, bool(plain) and "domain ending" in kinds(plain[-1]), not judged,
        _whole(judged) if judged else 1.0, len(judged) > len(said),
        any(" " in one.word or "-" in one.word for one in judged),
    )  # fmt: skip
    return found | {asked: float(value) for asked, value in zip(NAME, about, strict=True)}


def _judge(word: str, goods: str, personal: bool, surnames: bool, meaning: Meaning | None) -> Judged:
    """Everything asked of one word; of a word with a `meaning`, of that."""
    if meaning is not None and (judged := _as_means(word, goods, meaning)) is not None:
        return judged
    of_trade = is_trade_word(word) or is_term(word) or is_praise(word, "la")
    coined = is_coined(word) and not is_acronym(word) and not of_trade
    misspelt = heard_word(word, goods) if coined else ""
    if misspelt and _names_goods(misspelt, goods):
        return _misspelt(word, misspelt, goods)
    found = [in_context(describe(word, goods), word, goods)]
    if is_trade_word(word) and not lexicon().known(word) and _same_class(word, goods) >= ONE_CLASS:
        found.append(Evidence(TRADE_WORD, "a word used for goods of this class"))
    if says_what_holds_goods(word, goods):
        found.append(HOLDS)
    if is_praise(word, "la") or is_praise(word, "en"):
        found.append(of_kind("laudatory"))
    if sort := _sort_of_goods(word, goods):
        found.append(Evidence(SORT_OF_GOODS, f'a kind of "{sort}" by its last part', names_goods=True))
    if (rare := _rare(word)) and (meant := judge_phrase(rare, goods)) and meant.evidence.weight >= TOLD:
        found.append(meant.evidence._replace(why=f'means "{rare}": {meant.evidence.why}'))
    heard = NOTHING if of_trade else heard_as(word, goods)
    if heard.weight >= NAMED_BY_SOUND:  # a known word that sounds like a word for the goods: doh for dough
        found.append(heard)
    unknown = [understood(word, goods), initials_of(word, goods)] if coined or is_acronym(word) else []
    stood = stands_for(word, goods) if not kinds(word) & _SAYING else NOTHING
    coined = coined and not stood.is_told
    unknown.append(stood)
    if personal and (coined or len(word) == 1):
        found.append(Evidence(SURNAME, "written as a surname, or an initial before it", kind=EvidenceKind.SURNAME))
    evidence = max((*found, *unknown), key=lambda one: (one.weight, one.why))
    is_name = is_surname(word)
    coined = coined and not is_name
    if is_name and not surnames:
        others = (one for one in (*found, *unknown) if one.kind is not EvidenceKind.SURNAME)
        evidence = max(others, key=lambda one: one.weight, default=NOTHING)
    told = _asked(word, goods, evidence, coined, personal, is_name and surnames)
    as_goods = heard_word(word, goods) if evidence is heard else ""
    known = lexicon().known(word) and not kinds(word) & _SAYING
    own = known and not evidence.is_told and is_unsaid(word, goods)
    return Judged(word, evidence, coined, told, heard=as_goods if _names_goods(as_goods, goods) else "", own=own)


def _as_means(word: str, goods: str, meaning: Meaning) -> Judged | None:
    """A word of another language, judged by what it means; None if its meaning has no content word."""
    meant = judge_phrase(meaning.english, goods) or judge_phrase(word, goods)
    if meant is None:
        return None
    said = meaning.english if meaning.english == meant.word or not meaning.guessed else meant.word
    term = term_for(said, goods) if meant.evidence.kind is EvidenceKind.TERM else None
    nowhere = meant.evidence.kind is EvidenceKind.PLACE and place_meant(word, meaning.english) is None
    image = term is not None and term.by_image  # a moon bag is no bolso luna
    if nowhere or image or _is_other_business(meant, goods):
        meant = as_told_nothing(meant)
    evidence, asked = meant.evidence, [*meant.asked]
    if meaning.said.weight > evidence.weight:
        evidence = meaning.said._replace(names_goods=meaning.said.names_goods or evidence.names_goods)
        asked[WORD.index("tie")], asked[WORD.index("names the goods")] = evidence.weight, float(evidence.names_goods)
    asked[WORD.index("coined")] = 0.0
    return Judged(word, evidence, False, tuple(asked), meaning, own=meant.own and not evidence.is_told)


@lru_cache(maxsize=1 << 13)
def _rare(word: str) -> str:
    """What a rare word that dictionaries lack means, by the list of existing words for names: bumbershoot, umbrella."""
    told = (open_table("naming_ideas.tsv").get(f"find {word}") or "").split("|")[0].split(";")[0]
    if not told or lexicon().known(word):
        return ""
    named = items(_SAYS_WORD_FOR.sub("", told))
    return " ".join((*named[0].modifiers, named[0].head)) if named else ""


def _sort_of_goods(word: str, goods: str) -> str:
    """The word for the goods in which a closed word that dictionaries lack ends, after another word (lovespoon, a
    spoon); "" if it does not."""
    heads = (one.word for one in context(goods).words if one.head and LEAST_HEAD <= len(one.word) < len(word))
    known = not lexicon().known(word) and not is_coined(word)
    ends = (head for head in heads if known and base_form(word).endswith(head))
    return next((head for head in ends if lexicon().known(base_form(word).removesuffix(head))), "")


def _names_goods(word: str, goods: str) -> bool:
    near = context(goods).near.get(word)
    return near is not None and near.weight >= NAMED_BY_SOUND


def _misspelt(word: str, heard: str, goods: str) -> Judged:
    """A misspelling of a word for the goods, judged as that word: buyers hear no difference (TMEP 1209.03(j))."""
    as_heard = _judge(heard, goods, False, False, None)
    told = heard_as(word, goods)
    evidence = as_heard.evidence._replace(why=told.why, kind=EvidenceKind.HEARD, section=told.section)
    return as_heard._replace(word=word, heard=heard, evidence=evidence)


def _is_other_business(one: Judged, goods: str) -> bool:
    """Whether all that ties a word to goods is that it is a kind of business, and none that makes or sells them: an
    agency says nothing of nuts."""
    of_any = "generic head" in kinds(one.word) and one.word not in _SELLING
    business = of_any and one.evidence.why == of_kind("generic head").why
    return business and max(context(goods).classes[:1], default=1) <= LAST_OF_GOODS


@lru_cache(maxsize=1 << 13)
def judge_phrase(english: str, goods: str) -> Judged | None:
    """An English phrase as one: by its last word where that names the goods (herb tea, for tea), else by the word that
    describes them least; None if it has no content word."""
    joined = _entries(plain := tuple(without_possessives(english).split()), goods, {})
    doing = len(plain) == 2 and plain[1] in DOERS | OCCASIONS
    ways = {joined} if all(map(lexicon().known, joined)) and not doing else {joined, plain}  # labels have a term as one
    found = (_as_one(words, goods) for words in sorted(ways))
    return max(filter(None, found), key=lambda one: one.evidence.weight, default=None)


def _as_one(words: tuple[str, ...], goods: str) -> Judged | None:
    parts = [_as_meant(_judge(one, goods, False, False, None)) for one in _content_words(words, goods, {})]
    if len(parts) == 2 and say_what_goods_do(parts[0], parts[1], goods):
        return as_told(parts[0]._replace(word=" ".join(one.word for one in parts), evidence=NOTHING), DOING)
    if parts and parts[-1].evidence.names_goods:
        return parts[-1]
    if len(parts) > 1 and holds_goods(*parts[-2:]):
        return as_told(parts[-1]._replace(word=" ".join(one.word for one in parts), evidence=NOTHING), HOLDS)
    return min(parts, key=lambda one: one.evidence.weight, default=None)


def _as_meant(judged: Judged) -> Judged:
    """A word that is not written but meant: it ends no domain (réserve, a store)."""
    if judged.evidence.kind is not EvidenceKind.DOMAIN_ENDING:
        return judged
    evidence = of_kind("generic head") if "generic head" in kinds(judged.word) else NOTHING
    return judged._replace(evidence=evidence, asked=(evidence.weight, *judged.asked[1:]))


def _asked(word: str, goods: str, evidence: Evidence, coined: bool, personal: bool, surname: bool) -> tuple[float, ...]:
    around = context(goods)
    base = base_form(word)
    texts = {one.word for one in around.words}
    heads = {one.word for one in around.words if one.head}
    of_kind = kinds(word)
    heard = evidence.weight if coined or evidence.kind is EvidenceKind.HEARD else 0.0
    tendency = describe(word, goods)
    return tuple(
        map(
            float,
            (
                evidence.weight,
                evidence.names_goods,
                bool({word, base} & texts),
                bool({word, base} & heads),
                most_associated(word, texts),
                most_associated(word, named_goods(goods)),
                _same_class(word, goods),
                heard,
                "laudatory" in of_kind,
                "quality" in of_kind or ("taste" in of_kind and around.food) or says_what_is_kept_away(word, goods),
                "people" in of_kind,
                is_firm_word(word, goods),
                "number" in of_kind or word.isdecimal(),
                "colour" in of_kind,
                is_settled_place(word),
                surname,
                personal and (coined or len(word) == 1),
                len(word) == 1 or is_acronym(word),
                coined,
                coined and zipf(word) >= IN_USE,
                min(zipf(word), 6.0) / 6.0,
                not tendency.is_told and tendency.weight,
            ),
        )
    )


@lru_cache(maxsize=1 << 13)
def _same_class(word: str, goods: str) -> float:
    """The chance that the word, were it goods, would be in the class of these; 0 for a word unknown as goods."""
    if not lexicon().known(word) and not is_trade_word(word):
        return 0.0
    return min(1.0, chance_of_one_class(word, goods))


def _content_words(
    words: tuple[str, ...], goods: str, meanings: Mapping[str, Meaning], borne: str = ""
) -> tuple[str, ...]:
    """The words that carry a name: compounds divided, but for one that someone bears (`borne`); small words, company
    forms and domain endings left out."""
    whole = {*meanings, borne}
    units = [part for word in words for part in ((word,) if word in whole else _divided(word, goods))]
    small = {"function word", "company form", "domain ending"}
    content = tuple(one for one in units if (meanings[one].english if one in meanings else not kinds(one) & small))
    return content or tuple(unit for unit in units if "generic head" in kinds(unit))


def _divided(word: str, goods: str) -> tuple[str, ...]:
    """The words that an unknown closed word is made of, unless as a whole it is a surname, or heard as a word for the
    goods (lether)."""
    whole = is_surname(word) or (is_coined(word) and _names_goods(heard_word(word, goods), goods))
    return (word,) if whole else divided(word, goods)


def _entries(
    words: tuple[str, ...], goods: str, meanings: Mapping[str, Meaning], *, only_names: bool = False
) -> tuple[str, ...]:
    """`words` with runs that mean something, or that the lexicon holds as one entry (bed and breakfast, see-through)
    taken together; with `only_names` of these those that are a place or a term of the trade."""
    units: list[str] = []
    at = 0
    while at < len(words):
        for size in range(min(LONGEST_TERM, len(words) - at), 1, -1):
            run = " ".join(words[at : at + size])
            known = (one for one in (run, run.replace(" ", "-")) if lexicon().known(one) and not only_names)
            entries = [run] if run in meanings or _is_name(run, goods) else list(known)
            if entries and not kinds(words[at + size - 1]) & {"company form", "domain ending"}:
                units.append(max(entries, key=lambda entry: describe(entry, goods).weight))
                at += size
                break
        else:
            units.append(words[at])
            at += 1
    return tuple(units)


def _is_name(run: str, goods: str) -> bool:
    """Whether several words are a place, a set phrase of praise or of a quality, a term told of such goods, or of what
    kind they are, or a fixed phrase that gives a picture (an early bird is no bird)."""
    term = term_for(run, goods)
    praised = bool(kinds(run) & {"laudatory", "quality"}) or is_praise(run, "la") or is_praise(run, "en")
    told = praised or is_use(run, goods) or place_of(run) is not None or is_picture(run) or comes_from(run, goods)
    return told or bool(of_a_kind(run, goods)) or (term is not None and term.weight > 0)


def _whole(judged: tuple[Judged, ...]) -> float:
    """How plainly the name as a whole describes: its most distinctive word against all of them."""
    weights = [one.evidence.weight for one in judged]
    return CARRIED * min(weights) + (1 - CARRIED) * sum(weights) / len(weights) if weights else 0.0
