"""Does a word tell buyers something about the goods? Evidence, word by word.

A word is merely descriptive if it tells of an ingredient, quality, characteristic, function, feature,
purpose, use, user, provider or place of the goods (TMEP 1209.01(b)). Each kind of evidence below stands for
one of these, with a weight in [0, 1]: how plainly it makes the word descriptive. The weights are an
ordering made plain, set by reasons and then checked on published examples (tests/published/), not fitted to
them."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from ..lexicon import Sense, associated, association, kinds, lexicon, zipf
from ..lexicon.derivation import nouns_of
from ..tables import open_table
from .animals import is_animal, is_other_animal, is_sort_of_theirs
from .broader import ancestors, leading_senses, names_above
from .context import ASSOCIATED, NAMES_GOODS, Context, Near, context
from .firms import is_firm_word
from .groups import is_listed, ties
from .kept_off import LEAST_TERM, may_lack
from .known_places import comes_from
from .materials import is_material, is_sort_of_stuff
from .phrases import Item, base_form, items, plain_words
from .places import is_settled_place, place_of
from .proper_names import is_proper, is_surname, is_trade_name, listed_surname
from .purposes import is_lack_of_others, keeps_off, used_by
from .qualities import quality_like
from .tells import DESCRIBES, KINDS, NOTHING, SURNAMES, Evidence, EvidenceKind, of_kind, of_term
from .trade_words import called, term_for

__all__ = [
    "DESCRIBES", "KEPT_AWAY", "KINDS", "NOTHING", "SURNAME", "SURNAMES", "Evidence", "EvidenceKind", "describe",
    "describe_in_conflict", "describe_plainly", "in_context", "most_associated", "named_goods",
    "of_a_kind", "of_kind", "of_term", "says_what_is_kept_away",
]  # fmt: skip

SETTLED_PLACE = 0.6
SURNAME, COMMON_SURNAME = 0.6, 5000
"""How plainly a surname says no more than one, and the rank down to which one is common; chosen, not fitted."""
INGREDIENT, LIKE_A_QUALITY = 0.55, 0.65
"""How plainly what goods may hold, and a word much like a listed quality, describe; chosen, not fitted."""
MATERIAL = "a material that such goods are made of or hold"
THOUGHT_OF_WITH = 0.35
"""Association from which a material belongs to the goods: beeswax and hand balm have 0.36, leather and candle 0."""
RELATED, IN_THE_TEXT, BRINGS_TO_MIND, OUT_OF_CONTEXT = 0.3, 0.8, 0.15, 0.5
"""Evidence between the first two weights is reduced to the last share if association is below the third: ours."""
NAMES = frozenset(("surname", "given name"))
PHRASE, KIND_IN_TRADE = 0.75, 0.85
"""How plainly a word that makes a kind of goods does, by a dictionary and by the trade; chosen, not fitted."""
SAME_GROUP, SAME_MARKET = 0.75, 0.25
"""How plainly a word describes that names goods for the same purpose, or others that the same shops sell, which is a
hint at most. Chosen, not fitted."""
KEPT_AWAY = frozenset("free proof safe resistant repellent tight friendly ready tested stopping".split())
"""What makes a quality of the word before it: tangle free, chew proof, oven ready."""
THROUGH = 0.9
"""The factor for evidence that runs through one more word."""
INITIAL = 0.3
ADJECTIVE, FORM = 0.7, 0.7
"""How plainly a word describes that is the adjective of a word of the goods (a feature), or the form in which they
come; each below a term of the trade. Chosen, not fitted."""
CLOSE_SORT, NARROW = 0.8, 150
"""How plainly a sort of the goods describes them, and the most sorts of them that there may be. Chosen, not fitted."""
SORTS_OF = frozenset(("noun.artifact", "noun.food"))
"""The domains of WordNet in whose senses goods are named."""
MANY = 20
"""Senses of a word that are looked at, all but of the commonest."""
BLENDS = frozenset("blend mix mixture medley melange assortment".split())
"""Words for goods that are mixed; from memory."""
# How descriptive a word without a tie to the goods tends to be, by its lexicographer domain: names of acts, qualities
# and ideas describe, names of animals, plants and stars are images. Ours; common practice, no source.
TENDENCY = {"act": 0.3, "attribute": 0.3, "cognition": 0.25, "communication": 0.25, "state": 0.3,
            "event": 0.2, "group": 0.2, "possession": 0.25, "quantity": 0.3, "relation": 0.25, "process": 0.3,
            "artifact": 0.2, "time": 0.2, "body": 0.2, "substance": 0.2, "food": 0.15, "all": 0.3,
            "pert": 0.3}  # fmt: skip
VERB = 0.3
PROVIDER = 0.3


FAMILIAR = 3.0
"""Zipf value from which a word explains anything to a reader; a rarer one is left out of a reason."""


@lru_cache(maxsize=1 << 16)
def describe_plainly(word: str, goods: str) -> Evidence:
    """The evidence that needs no inference: the kind of the word, and its place in the context of the goods.

    A part of `describe`, cheap enough for every word of a register.
    """
    found = [describe_in_conflict(word, goods)]
    if not is_trade_name(word):
        found.append(_surname(word))
    return _strongest(found)


@lru_cache(maxsize=1 << 16)
def describe_in_conflict(word: str, goods: str) -> Evidence:
    """As `describe_plainly`, but for that a surname says nothing about the goods: it bars a registration at first, yet
    once it is a mark it tells its maker."""
    found = [of_kind(kind) for kind in KINDS if kind in kinds(word) and not is_lack_of_others(word, goods)]
    found += [of_kind("generic head")] if is_firm_word(word, goods) else []
    found += [of_kind("quality")] if "taste" in kinds(word) and context(goods).food else []
    if word.isdecimal():
        found.append(of_kind("number"))
    elif len(word) == 1:
        found.append(Evidence(INITIAL, "a single letter"))
    around = context(goods)
    tied = [_ingredient(word, around), _of_group(word, goods), _term(word, goods), keeps_off(word, goods)]
    tied += [_of_noun(word, around), _form(word, goods), _sort_of_head(word, goods), used_by(word, goods)]
    if is_settled_place(word) or comes_from(word, goods):  # also if labels say it
        term = term_for(word, goods)
        weight = max(SETTLED_PLACE, term.weight if term and term.of_labels else 0.0)
        tied = [one for one in tied if one.kind is not EvidenceKind.TERM or one.weight > weight]
        tied.append(Evidence(weight, f"geographic: {_from(word)}", kind=EvidenceKind.PLACE, section="1210"))
    inferred = [one for one in (_near(word, around), _kind_of(word, around)) if one.weight]
    if inferred and not is_other_animal(word, goods):  # asked of few words: it costs more than all else
        # An animal is seen before its skin is thought of (an otter on leather bags), but for those that goods are for.
        theirs = is_sort_of_theirs(word, goods)
        inferred = [one._replace(kind=EvidenceKind.PURPOSE) for one in inferred] if theirs else inferred
        pictured = is_animal(word) and not theirs
        tied += [in_context(one, word, goods) for one in inferred] if pictured else inferred
    tied = [one for one in tied if one.weight]
    return _strongest([*found, *tied] if tied and not is_trade_name(word) else found)


@lru_cache(maxsize=1 << 14)
def describe(word: str, goods: str) -> Evidence:
    """The strongest evidence that the folded `word` (or entry of several words) describes `goods`; 0 if none."""
    found = [describe_plainly(word, goods)]
    if "number" in kinds(word):  # whatever games and idioms a dictionary has it in
        found.append(_in_phrase(word, context(goods), goods))
    elif not is_trade_name(word):
        around = context(goods)
        found += [] if is_other_animal(word, goods) else [_associated(word, around)]
        found += [] if is_animal(word) and not around.food else [_through(word, around)]
        found += [
            _in_phrase(word, around, goods),
            _quality(word),
            of_kind("quality") if says_what_is_kept_away(word, goods) else NOTHING,
            _material(word, goods),
            Evidence(_tendency(word)),
        ]
    return _strongest(found)


def in_context(evidence: Evidence, word: str, goods: str) -> Evidence:
    """Evidence that a dictionary gives, held back where the word does not bring the item as a whole to mind, and not
    told where it is loose besides: skyline is related to line, and not to kite lines."""
    named = named_goods(goods)
    if (
        not RELATED < evidence.weight < IN_THE_TEXT
        or kinds(word) - NAMES
        or evidence.kind in (EvidenceKind.TERM, EvidenceKind.SORT, EvidenceKind.PURPOSE)
        or quality_like(word)
        or most_associated(word, named) >= BRINGS_TO_MIND
    ):
        return evidence
    if any(association(word, one) is None for one in named):
        return evidence
    told = "" if evidence.kind is EvidenceKind.LOOSE else evidence.why
    return evidence._replace(weight=evidence.weight * OUT_OF_CONTEXT, why=told)


@lru_cache(maxsize=256)
def named_goods(goods: str) -> tuple[str, ...]:
    """The items of a list by their modifiers and head."""
    return tuple(sorted({" ".join((*item.modifiers, item.head)) for item in items(goods)}))


def most_associated(word: str, others: Iterable[str]) -> float:
    """How much a word brings the one of `others` to mind that it brings most, 0 to 1."""
    return max((association(*sorted((word, other))) or 0.0 for other in others), default=0.0)


def _quality(word: str) -> Evidence:
    """The word is a quality that the senses perceive, much like one that is listed."""
    like = quality_like(word)
    why = "a quality that many goods may have" if like == word else f'a quality, much like "{like}"'
    return Evidence(LIKE_A_QUALITY, why, section=DESCRIBES) if like else NOTHING


def says_what_is_kept_away(phrase: str, goods: str) -> bool:
    """Whether folded words say what goods lack or withstand: sugar free, chew proof; but pigeon free of such alone as
    keep pigeons off."""
    what, _, how = phrase.rpartition(" ")
    return how in KEPT_AWAY and lexicon().known(what) and may_lack(what, goods)


def _material(word: str, goods: str) -> Evidence:
    """The word is a material that is thought of with goods of this kind: wool with scarves, beeswax with balms."""
    if is_sort_of_stuff(base_form(word), goods):
        return Evidence(INGREDIENT, MATERIAL, kind=EvidenceKind.MATERIAL, section=DESCRIBES)
    if not is_material(word, ("noun.substance",)):  # foods are ingredients
        return NOTHING
    tied = most_associated(base_form(word), {*named_goods(goods), *(item.head for item in items(goods))})
    if tied < THOUGHT_OF_WITH:
        return NOTHING
    return Evidence(INGREDIENT, MATERIAL, kind=EvidenceKind.MATERIAL, section=DESCRIBES)


def _from(word: str) -> str:
    """That goods may come from the place that `word` names, or is an adjective of."""
    place = place_of(word)
    if place is None or place.name.lower() == word:
        return "a place that the goods may come from"
    return f"says that the goods come from {place.name}"


def _strongest(found: list[Evidence]) -> Evidence:
    best = max(found, key=lambda evidence: (evidence.weight, evidence.why), default=NOTHING)
    names_goods = any(one.names_goods and one.weight >= 0.7 for one in found)
    return best if best.names_goods == names_goods else best._replace(names_goods=names_goods)


def _near(word: str, around: Context) -> Evidence:
    """The word is in the context of the goods."""
    found = [around.near[form] for form in (word, *lexicon().bases(word)) if form in around.near]
    return _strongest([_from_near(near) for near in found])


def _from_near(near: Near) -> Evidence:
    other = EvidenceKind.ASSOCIATED if near.brought else EvidenceKind.OTHER
    kind = EvidenceKind.LOOSE if near.loose else other
    return Evidence(near.weight, near.why, near.names_goods, kind=kind)


def _through(word: str, around: Context) -> Evidence:
    """A word close to it in meaning is in the context of the goods; what is only related to them carries no further."""
    best = NOTHING
    for other, closeness in lexicon().neighbours(word).items():
        near = around.near.get(other) if closeness >= 0.6 else None
        if near is None or near.loose or near.weight < 0.4:
            continue
        if THROUGH * closeness * near.weight > best.weight:
            bridge = f', through "{other}"' if zipf(other) >= FAMILIAR else ""
            loose = EvidenceKind.LOOSE if bridge else EvidenceKind.OTHER
            best = Evidence(THROUGH * closeness * near.weight, near.why + bridge, kind=loose)
    return best


def _kind_of(word: str, around: Context) -> Evidence:
    """The word is narrower than the goods or than what goods of this kind are."""
    best = NOTHING
    for sense_id, strength in leading_senses(base_form(word), 2):
        for up in sorted(ancestors(sense_id) & around.senses.keys()):
            near = around.senses[up]
            if near.weight * strength > best.weight:
                best = Evidence(near.weight * strength, near.why, near.names_goods and near.weight * strength >= 0.7)
    return best


def _associated(word: str, around: Context) -> Evidence:
    best = NOTHING
    for one in around.words:
        if one.word in around.parts:
            continue
        weight = ASSOCIATED * associated(word).get(one.word, 0.0)
        if weight > best.weight:
            best = Evidence(weight, f'brings "{one.word}" to mind', kind=EvidenceKind.ASSOCIATED)
    return best


def _in_phrase(word: str, around: Context, goods: str) -> Evidence:
    """The word stands before the goods' own word in the trade, in an entry of a dictionary, or in lists of goods
    (snuffle mat, maple syrup, hiking boots): it says which kind they are."""
    if name := of_a_kind(word, goods):
        term = term_for(word, goods)
        if term is not None and term.weight >= LEAST_TERM:
            return of_term(term)._replace(weight=max(KIND_IN_TRADE, term.weight))
        return Evidence(KIND_IN_TRADE, f'"{word} {name}" is a kind of them (from memory)')
    for head in (one.word for one in around.words if one.head and one.word != word):
        phrases = [one for one in (f"{base_form(word)} {head}", f"{word} {head}") if lexicon().known(one)]
        listed = not phrases and f"b:{base_form(word)} {head}" in open_table("class_weights.tsv")
        if listed or any(_is_sort_of(one, head) for one in phrases):
            return Evidence(PHRASE, f'"{word} {head}" is a kind of them', kind=EvidenceKind.SORT)
    return NOTHING


def _is_sort_of(phrase: str, head: str) -> bool:
    """Whether a dictionary has a phrase for a sort of what the `head` of some goods means: red lead is a pigment and no
    lead for dogs."""
    senses = lexicon().senses(phrase, labelled=False)
    own = {sense_id for sense_id, _ in leading_senses(head, MANY)}
    return bool(senses) and (not own or any(not own.isdisjoint(ancestors(one.id)) for one in senses))


def of_a_kind(words: str, goods: str) -> str:
    """The name of the goods before which folded `words` stand in the trade to say of what kind they are (snuffle: mat);
    "" if there is none."""
    forms = {words, base_form(words)}
    names = (name for name in sorted(called(goods)) if forms.isdisjoint(name.split()))
    return next((name for name in names if forms & _kinds_of(name)), "")


@lru_cache(maxsize=1 << 10)
def _kinds_of(name: str) -> frozenset[str]:
    table = open_table("kinds_of_goods.tsv")
    said = (table.get(name) or "").split(",")
    alike = (table.get(one[1:]) or "" for one in said if one.startswith("="))
    return frozenset((*said, *(word for row in alike for word in row.split(","))))


def _of_group(word: str, goods: str) -> Evidence:
    """The word names goods that serve the same purpose, or that makers and shops of these goods sell."""
    *before, last = word.split()
    said = " ".join((*before, base_form(last)))
    if before and said in called(goods):
        return Evidence(NAMES_GOODS, f'"{said}" is what the goods are called', names_goods=True)
    as_goods = Item(word, base_form(word))
    if not is_listed(as_goods):
        return NOTHING
    found = [(tied, item) for item in items(goods) if (tied := ties(as_goods, item))]
    purpose = (("one group",), SAME_GROUP, "names goods for the same purpose")
    trade = (("one range", "one market"), SAME_MARKET, "")  # a kettle, on bread bags, is an image like others
    for asked, weight, why in (purpose, trade):
        of = next((item.text for tied, item in found if any(tied[name] for name in asked)), "")
        if of and why:
            return Evidence(weight, f'{why} as "{of}"' if len(items(goods)) > 1 else why)
        if of:
            return Evidence(weight)
    return NOTHING


def _term(word: str, goods: str) -> Evidence:
    """The word is a term of the trade, or labels say it of such goods."""
    term = term_for(word, goods)
    return NOTHING if term is None or not term.weight else of_term(term)


def _of_noun(word: str, around: Context) -> Evidence:
    """The word is the adjective of a word of the goods: draughty, of draught excluders."""
    stated = {one.word for one in around.words}
    stem = word.removesuffix("y")  # draughty, woolly
    formed = (stem, f"{stem}e", stem[:-1] if stem[-1:] == stem[-2:-1] else stem) if stem != word else ()
    noun = next((one for one in (*nouns_of(word), *formed) if one in stated and len(one) > 2), "")
    why = f'the adjective of "{noun}"'
    return Evidence(ADJECTIVE, why, kind=EvidenceKind.PURPOSE, section=DESCRIBES) if noun else NOTHING


def _sort_of_head(word: str, goods: str) -> Evidence:
    """The word is a sort of the goods by its leading sense, one step down in a dictionary (trivet, of stands), whatever
    else their name means."""
    leading = leading_senses(word, 1) if lexicon().is_lemma(word) else []
    above = {up for sense_id, _ in leading for up in lexicon().related_ids(sense_id, "@")}
    for item in items(goods) if above else ():
        senses = [one for one in lexicon().senses(item.head, "n", labelled=False) if one.domain in SORTS_OF]
        if any(one.id in above and lexicon().entry(one.id).below < NARROW for one in senses):
            return Evidence(CLOSE_SORT, f'a kind of "{item.head}"', kind=EvidenceKind.SORT)
    return NOTHING


def _form(word: str, goods: str) -> Evidence:
    """The word says in what form goods come that say so themselves: a mix, of blends."""
    said = word in BLENDS and not BLENDS.isdisjoint(map(base_form, plain_words(goods)))
    why = "the form in which the goods come"
    return Evidence(FORM, why, kind=EvidenceKind.PURPOSE, section=DESCRIBES) if said else NOTHING


def _ingredient(word: str, around: Context) -> Evidence:
    """On food and drink, the name of a food is read as what is in it, or what it tastes of."""
    if around.food:
        for sense_id, strength in leading_senses(base_form(word), 2):
            if lexicon().domain(sense_id) == "noun.food" and not _is_fare(sense_id):
                return Evidence(INGREDIENT * strength, "may name an ingredient or flavour", section=DESCRIBES)
    return NOTHING


def _is_fare(sense_id: str) -> bool:
    """Whether it is a meal, or food in stock (larder), and no food of its own."""
    return bool(names_above(sense_id) & {"fare", "meal", "ration", "course", "commissariat"})


def _tendency(word: str) -> float:
    common = [s for s in lexicon().senses(word, labelled=False) if not is_proper(s, word)]
    if not common:
        return 0.0
    if common[0].pos == "v":
        return VERB
    if common[0].domain == "noun.person" and _does(common[0], word):
        return PROVIDER
    return TENDENCY.get(common[0].domain.partition(".")[2], 0.0)


def _does(sense: Sense, word: str) -> bool:
    """Whether a person is named after what they do (designer, baker): a word for a provider (TMEP 1209.03(q))."""
    derived = [r.other.lower() for r in lexicon().relations(sense) if r.kind == "derived" and r.sense_id[0] == "v"]
    return any(verb[:3] == word[:3] and len(verb) < len(word) for verb in derived)


def _surname(word: str) -> Evidence:
    if not is_surname(word):
        return NOTHING
    _, rank = listed_surname(word)
    weight = SURNAME * (1.0 if rank is not None and rank <= COMMON_SURNAME else 0.6)
    return Evidence(weight, "a surname", kind=EvidenceKind.SURNAME, section=SURNAMES)
