"""What two words say that goods do: lint lifter, seed starter, stain remover, space saver; a thing, and who or what
does something with it (TMEP 1209.03(i), of purpose and function, from memory). From general knowledge of such words,
and incomplete."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from ..lexicon.phrases import is_saying
from ..tables import open_table
from .broader import leading_senses, names_above
from .classification import likely_classes
from .description import most_associated
from .groups import is_listed
from .kept_off import GUARDS, KEPT_OFF, keep_off, said_of
from .phrases import Item, base_form
from .purposes import is_use
from .tells import EvidenceKind

__all__ = ["DOERS", "MIXED", "OCCASIONS", "does"]

_REMOVERS = GUARDS | frozenset(
    "lifter eater releaser tamer remover vanisher begone buster chaser slayer zapper cleaner dissolver reducer "
    "softener "
    "lifting removing catching stopping away catch absorber blocker extractor picker scraper sweeper collector "
    "smoother relaxer straightener quieter silencer muncher beater rescue rescuer fix fixer solution control "
    "treatment detector".split()
)
"""Words for what takes away or lessens what is unwelcome, after that."""
_KEEPERS = frozenset(
    "saver keeper holder storer tidy organizer organiser stash catcher minder guard protector hanger carrier stacker "
    "stower".split()
)
"""Words for what holds or keeps something, after that."""
_SAVERS = frozenset("saver keeper storer tidy organizer organiser stash minder".split())
"""Those of them that are no names of wares of their own."""
_CARERS = frozenset(
    "restorer reviver renewer cleaner polisher protector preserver conditioner nourisher feeder care treatment shine "
    "brightener refresher saver mender repair repairer rescue".split()
)
"""Words for what takes care of something, after that."""
_MAKERS = frozenset(
    "helper starter opener cutter peeler slicer chopper grinder crusher squeezer presser warmer heater cooler "
    "chiller dryer drier softener whitener puller lifter picker sharpener mender fixer patcher shaper styler detangler "
    "booster builder trainer collector finder tracker splitter washer rinser scrubber duster sweeper wiper "
    "scraper lighter smoker steamer roaster toaster baker brewer frother strainer sifter sorter counter measurer "
    "grower planter waterer sower digger trimmer pruner edger shredder stacker folder binder fastener gripper puncher "
    "stamper printer painter carver sander filler pourer dispenser feeder drinker assistant companion aid helping "
    "essentials mate".split()
)
"""Words for what does something with a thing, or helps with it, after that."""
_HELPERS = frozenset("helper assistant aid companion essentials mate help".split())
OCCASIONS = frozenset(
    "time hour day night break season weekend evening morning party room corner nook shed trip lesson session moment "
    "fun joy pleasure happiness start".split()
)
"""Words for when or where something is done or enjoyed, after that: shave day, reading corner, baking fun."""
_ANYTHING = frozenset("all everything plenty whole space time place room anything".split())
"""What stands for whatever the goods are used on, or is spared by them."""
_CARE = frozenset((2, 3, 4))
"""The Nice classes of goods that treat things: paints, cleaners and polishes, oils and waxes."""
_TREATING = frozenset(
    "cloth wipe sponge brush duster mop cleaner polish balm wax oil soap spray powder cream conditioner "
    "detergent".split()
)
"""Heads of such goods, whatever their class."""
_HOLDING = frozenset(
    "bag box case pouch holder stand rack hook strap sleeve shelf basket hanger tray jar bottle tin pot sack bin "
    "container drawer crate chest caddy cupboard cabinet organiser organizer wallet canister tub clip peg".split()
)
"""Heads of goods that hold other things."""
_THINGS = frozenset(("noun.artifact", "noun.food", "noun.plant", "noun.substance", "noun.possession"))
_SIGHTS = frozenset(("noun.object", "noun.phenomenon"))
"""WordNet's fields of things that are made, grown or owned, and of what is seen in nature, an image beside a doer (star
catcher)."""
_NEVER_TREATED = _SIGHTS | {"noun.animal", "noun.body"}
_DONE = frozenset(("noun.act", "noun.person"))
MIXED = frozenset((3, 4, 5, 29, 30, 31, 32, 33, 34))
"""The Nice classes of goods that are made of stuffs mixed, whose terms are most often what they hold or smell of."""
_IN_PLAY = frozenset("tamer chaser slayer".split())
"""Words for who masters beasts and men, said of the weather in play: a wind tamer; a frizz tamer is none."""
_HANDLED = _THINGS | {"noun.body"}
_BY_HAND = frozenset(("verb.contact", "verb.change", "verb.creation", "verb.consumption"))
_WARES = _THINGS | {"noun.animal"}
THEIR_ACT = 0.25
"""How much goods must bring an act to mind for it to be theirs: grind and mortar have 0.45. Chosen, not fitted."""
DOERS = _REMOVERS | _KEEPERS | _CARERS | _MAKERS
"""All of these words."""


@lru_cache(maxsize=1 << 12)
def does(what: str, doer: str, goods: str, *, tie: EvidenceKind | None, names_goods: bool = False) -> bool:
    """Whether a folded English word for a thing and one for who or what does something with it say what goods do.

    The thing is what they keep off, treat, hold or work on, and `tie` how it is tied to them, if it is: what they are
    made of or smell of they do nothing to. A word that `names_goods` itself only beside a doer that they are called as
    (no tea lifter, of tea)."""
    doer = base_form(doer) if doer not in OCCASIONS else doer
    what_base = base_form(what)
    if doer in OCCASIONS:
        done = names_goods or (tie is not None and _is_done(what_base, goods, tie))
        return done and not _is_ware(f"{what_base} {doer}")
    if doer not in DOERS:
        handled = _is_thing(what_base, _HANDLED) and not names_goods and not _is_thing(doer, _WARES)
        done = _is_their_act(doer, goods) or (tie is not None and _is_work(doer))
        other = _is_one_word(what_base, doer) or _is_ware(f"{what_base} {doer}")  # a wall covering is no suit
        return handled and done and not other
    if doer in _REMOVERS and what_base in KEPT_OFF and keep_off(what_base, goods):
        return not (doer in _IN_PLAY and _is_thing(what_base, _SIGHTS))
    if _is_ware(f"{what_base} {doer}") or _is_one_word(what_base, doer):
        return False
    said, heads = said_of(goods)
    if names_goods:
        return doer in said or doer in _HELPERS
    if what_base in _ANYTHING and doer in _KEEPERS | _MAKERS:
        return True
    helps = doer in _KEEPERS | _CARERS | _MAKERS
    if tie is not None and helps and _is_treated(what_base, goods, tie):
        return True
    thing = _is_thing(what_base)
    care = bool(set(likely_classes(goods)[:1]) & _CARE or heads & _TREATING)
    return thing and (
        (care and doer in _CARERS)
        or (doer in _SAVERS and not heads.isdisjoint(_HOLDING))
        or (doer in _MAKERS and _is_their_act(doer, goods))
    )


def _is_done(word: str, goods: str, tie: EvidenceKind) -> bool:
    """Whether a word is for an act, a meal or a person, or for whom or what goods are: what an occasion is for."""
    if tie is EvidenceKind.PURPOSE or is_use(word, goods) or _is_thing(word, _DONE):
        return True
    leading = [sense for sense, _ in leading_senses(word, 1)]
    return (word.endswith("ing") and bool(_verbs_of(word))) or any("meal" in names_above(one) for one in leading)


def _is_treated(word: str, goods: str, tie: EvidenceKind) -> bool:
    """Whether goods treat, hold or work on a thing that is tied to them: they say so, or it is no part of a body, beast
    or sight, and nothing that they are made of, hold or smell of."""
    if word in said_of(goods)[0] or is_use(word, goods):
        return True
    mixed = tie is EvidenceKind.TERM and bool(set(likely_classes(goods)[:1]) & MIXED)
    stuff = tie is EvidenceKind.MATERIAL or mixed
    return not stuff and not _is_thing(word, _NEVER_TREATED)


@lru_cache(maxsize=1 << 12)
def _is_one_word(what: str, doer: str) -> bool:
    """Whether both are a word of its own when written together, or a saying: an eye-catcher, a bonesetter."""
    return is_saying(f"{what} {doer}") or lexicon().known(f"{what}-{doer}") or lexicon().known(what + doer)


@lru_cache(maxsize=1 << 12)
def _is_their_act(word: str, goods: str) -> bool:
    """Whether a word for an act or what does it (grinding, drainer) is of a verb that goods bring to mind."""
    heads = said_of(goods)[1]
    return bool(heads) and any(most_associated(verb, heads) >= THEIR_ACT for verb in _verbs_of(word))


@lru_cache(maxsize=1 << 12)
def _is_work(word: str) -> bool:
    """Whether a word is one for doing something with the hands: poaching, trimming; no singing."""
    leading = (lexicon().senses(verb, "v", labelled=False)[:1] for verb in _verbs_of(word))
    return any(one.domain in _BY_HAND for senses in leading for one in senses)


@lru_cache(maxsize=1 << 12)
def _verbs_of(word: str) -> tuple[str, ...]:
    """The verbs that a word in -ing or -er is of."""
    stems = {word[: -len(end)] + more for end in ("ing", "er") if word.endswith(end) for more in ("", "e")}
    stems |= {stem[:-1] for stem in stems if stem[-1:] == stem[-2:-1]}
    return tuple(sorted(stem for stem in stems if len(stem) > 2 and lexicon().senses(stem, "v")))


@lru_cache(maxsize=1 << 12)
def _is_ware(phrase: str) -> bool:
    """Whether two words are a ware of their own, in a dictionary or a list of goods: a bottle opener, of wine, is
    another thing."""
    leading = lexicon().senses(phrase, "n", labelled=False)[:1]
    listed = is_listed(Item(phrase, phrase)) or phrase in open_table("broader_goods.tsv")
    return listed or any(one.domain == "noun.artifact" for one in leading)


@lru_cache(maxsize=1 << 12)
def _is_thing(word: str, fields: frozenset[str] = _THINGS) -> bool:
    """Whether a word is first of all a made thing, a food, a plant or a stuff, or what else the `fields` are of."""
    leading = lexicon().senses(word, "n", labelled=False)[:1]
    return any(one.domain in fields for one in leading)
