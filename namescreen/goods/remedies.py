"""Which goods are sold as remedies, whatever their class: herbal teas, drops, balms, supports, heat pads. Of these a
name that speaks of the body or of a complaint is no play on words. From general knowledge; common practice, no
source."""

from __future__ import annotations

from functools import lru_cache

from ..tables import open_table
from .classification import likely_classes
from .kept_off import said_of
from .phrases import goods_words
from .signs import SIGNS, listed

__all__ = ["are_for_health", "are_remedies"]

_HEADS = frozenset(
    """
    supplement capsule tablet lozenge pastille tincture tonic elixir tisane infusion balm salve ointment liniment
    probiotic vitamin mineral electrolyte nutraceutical pill remedy medicine rub poultice compress bandage plaster
    inhaler suppository linctus cordial kombucha kefir melatonin collagen gummy mouthwash roll-on orthosis brace insole
    chew
    """.split()
) | {"herbal tea", "herb tea", "herbal infusion", "ginger shot", "bath salt", "bath bomb", "essential oil",
     "massage oil", "massage gel", "nasal strip", "nasal spray", "cough sweet", "cough drop", "cough candy",
     "throat sweet", "herb candy", "herbal candy", "herb sweet", "herbal sweet", "herb drop", "pillow spray",
     "protein powder", "smoothie powder", "drink powder", "teething ring", "teething toy", "dental chew",
     "heat pad", "heat patch", "heat pack", "heat cushion", "heat pillow", "warming cushion", "wheat bag",
     "cherry stone pillow", "ice pack", "gel pack", "bone broth", "apple cider vinegar"}  # fmt: skip
"""What remedies are called, in base form."""
_SAID = frozenset(
    """
    magnetic magnet orthopaedic orthopedic orthopaedics compression acupressure acupuncture massage massager
    therapeutic infrared lumbar posture medicinal medicated remedial homeopathic aromatherapy probiotic teething
    arthritis nursing lactation weighted copper-infused electrolyte anti-snoring
    """.split()
)
"""What is said of remedies alone."""
_HERBS = frozenset(
    """
    herb herbal valerian chamomile camomile fennel sage melissa peppermint mint nettle hawthorn thistle artichoke
    turmeric curcuma ginger echinacea elderberry elderflower elder ginseng ashwagandha hemp cbd aloe arnica eucalyptus
    calendula rosehip thyme licorice liquorice propolis psyllium spirulina chlorella collagen manuka lavender hop hops
    rosemary dandelion linden lime-blossom verbena passionflower marshmallow plantain ivy anise aniseed caraway
    garlic cranberry bilberry sea-buckthorn moringa baobab maca reishi chaga mushroom cordyceps rhodiola ginkgo
    tea-tree witch-hazel comfrey camphor menthol bamboo probiotic fibre fiber magnesium zinc iron calcium vitamin
    protein amber oatmeal cinnamon clove lemon honey fermented
    """.split()
)
_FORMS = frozenset(
    """
    tea juice powder syrup drop shot oil cream gel lotion blend mix extract bath salt sachet tablet capsule spray
    granule pearl essence water pastille lozenge sweet candy poultice patch flake concentrate chew tea-bag roll-on
    """.split()
)
"""Herbs and the like, and in what form they are sold as remedies."""
_PLAIN_FOODS = frozenset("lemon honey cinnamon clove mint garlic oatmeal mushroom protein lavender rosemary".split())
_TAKEN = frozenset("drop shot syrup capsule tablet extract pastille lozenge granule patch powder chew roll-on".split())
"""Foods and scents that many goods are of, and the forms in which alone they are remedies."""
_WARMING = frozenset(("heating", "heated", "hot", "warm", "warming", "warmth", "wheat", "heat", "cooling", "cherry"))
_WARMERS = frozenset(("pad", "pillow", "cushion", "pack", "bag", "bottle", "belt", "wrap", "headband", "mask", "patch"))
"""What goods are called, in base form, that are put on the body for health whatever their class: heat pads."""
_WITHOUT_PLAY = frozenset((5, 10))
"""Classes of what treats the body: medicines and supplements, medical devices."""


@lru_cache(maxsize=256)
def are_remedies(goods: str) -> bool:
    """Whether goods are sold as remedies: by what they are called, what is said of them, or a herb and its form."""
    said, heads = said_of(goods)
    heads |= {one for one in said if " " in one}
    herbs, forms = said & _HERBS, heads & _FORMS
    plain = herbs <= _PLAIN_FOODS and not forms & _TAKEN
    return (
        (bool(likely_classes(goods)[:1]) and likely_classes(goods)[0] in _WITHOUT_PLAY)
        or not _HEADS.isdisjoint(heads | said & _HEADS)
        or not _SAID.isdisjoint(said)
        or bool(herbs and forms and not plain)
        or ("amber" in said and not said.isdisjoint(("baby", "teether", "bracelet", "necklace")))
        or (not _WARMING.isdisjoint(said) and not _WARMERS.isdisjoint(heads))
    )


@lru_cache(maxsize=1 << 10)
def are_for_health(goods: str) -> bool:
    """Whether goods are put on the body for health, or state an illness: only of these is a cure alone no figure of
    speech (Remedy, of earrings, cures nothing)."""
    said = {one.word for one in goods_words(goods)}
    rows = (str(open_table(SIGNS).get(word) or "") for word in said)
    ill = any(entry.kind in ("illness", "ailment") for row in rows if row for entry in listed(row))
    first = 10 in likely_classes(goods)[:1]
    worn = _SAID | {"insole", "bandage", "compress", "heat"}
    return first or ill or bool(said & worn) or bool(said & _WARMING and said & _WARMERS)
