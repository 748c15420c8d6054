"""Words for the body and its complaints in nine languages, folded, by what they are read as: of cosmetics only the skin
and what sits on it can complain; and some are everyday words first, which claim nothing beside a loose effect. From
memory; common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping

from ..lexicon import lexicon

__all__ = ["AMBIGUOUS", "FIGURATIVE", "LIMBS", "OF_SKIN", "have_own_sense", "with_figures"]

LIMBS = frozenset(
    "foot feet knee knees hip hips shoulder shoulders wrist ankle elbow hand hands finger fingers toe toes ear ears "
    "neck leg legs arm arms heel heels lip lips knie fuss fusse fuesse schulter schultern hand hande ohr ohren bein "
    "beine pied pieds genou genoux epaule epaules main mains oreille oreilles jambe jambes pie pies rodilla rodillas "
    "hombro hombros mano manos oreja orejas pierna piernas piede piedi ginocchio ginocchia spalla spalle mani orecchie "
    "gamba gambe voet voeten schouder schouders oren been benen joelho joelhos ombro ombros mao maos orelha stopa "
    "stopy kolano kolana dlon dlonie fot fotter kna knan axel axlar hander oron".split()
)
"""Parts of the body for which buyers look for nothing in food."""
OF_SKIN = frozenset(
    "itch itching itchy itchiness dry dryness redness spot spots blemish blemishes breakout breakouts wrinkle wrinkles "
    "puffiness puffy chapped cracked callus calluses corns blister blisters sting stings bite bites sunburn burn burns "
    "scar scars plaque tartar sweat sweating odour odor flea fleas tick ticks mites shedding juckreiz jucken "
    "trockenheit rotung pickel unreinheiten falten falte mundgeruch schweiss rissig hornhaut blasen narben narbe stich "
    "stiche muckenstich sonnenbrand zecken zecke floh flohe demangeaison demangeaisons secheresse rougeur rougeurs "
    "bouton boutons imperfections ride rides ridules cernes poches piqure piqures gercures crevasses cors ampoule "
    "ampoules cicatrice cicatrices transpiration puce puces tiques picor picores sequedad rojez rojeces grano granos "
    "imperfecciones arruga arrugas ojeras bolsas picadura picaduras quemadura quemaduras grietas callos ampollas "
    "cicatriz cicatrices sudor pulgas garrapatas prurito secchezza rossore rossori brufolo brufoli imperfezioni ruga "
    "rughe occhiaie borse puntura punture scottatura scottature screpolature calli vesciche sudore pulci zecche jeuk "
    "droogte roodheid puist puistjes oneffenheden rimpel rimpels wallen steek steken muggenbeet zonnebrand kloven eelt "
    "blaren litteken littekens zweet vlooien teken comichao secura vermelhidao borbulhas imperfeicoes rugas olheiras "
    "papos picada picadas queimadura queimaduras gretas calos bolhas cicatrizes suor carracas swedzenie swedzenia "
    "suchosc suchosci zaczerwienienia pryszcz pryszcze pryszczy zmarszczka zmarszczki zmarszczek ukaszenie ukaszenia "
    "ukaszen oparzenie oparzenia pekniecia odcisk odciski odciskow blizna blizny blizn pot potu pchly kleszcze klada "
    "torrhet rodnad finne finnar rynka rynkor pasar bett stick myggbett solbranna sprickor forhardnader skavsar blasor "
    "arr svett loppor fastingar".split()
) | frozenset(
    ("dark circles", "age spots", "stretch marks", "thinning hair", "split ends", "bad breath", "hot spots",
     "unreine haut", "coup de soleil", "mauvaise haleine", "mal aliento", "alito cattivo", "slechte adem",
     "mau halito", "cienie pod oczami", "dalig andedrakt")
)  # fmt: skip
"""Complaints that a cosmetic may be bought for: of the skin, hair, teeth and smell, and of what bites."""
AMBIGUOUS = frozenset(
    "cold heat pressure period periods sugar wind gas acid dry spot spots tight knot knots flush fog blues gloom slump "
    "crash flare flares strain strains tickle tickly sting stings bite bites burn burns cracked corns plaque tartar "
    "stiff shakes sweat worm worms tick ticks flea fleas fireworks nerves midlife tired weary restless wakeful "
    "sleepless kalte hitze druck periode regel zucker volle falten falte saure stich stiche brand blasen kratzen "
    "wurm zecke floh steif kummer sorgen froid chaleur pression regles sucre gaz bouton boutons ride rides poches "
    "tension tensions soucis cors ampoule ampoules vers puce puces frio calor presion regla azucar gases grano granos "
    "bolsas nervios callos ampollas picada picadas gusanos pulgas freddo caldo pressione ciclo zucchero gas borse "
    "puntura punture vermi pulci calli vesciche kou warmte druk suiker trek wallen spanning zuur steek steken teken "
    "kloven wormen vlooien stijf moe pressao periodo regras acucar gula papos nervos bolhas calos lombrigas pulgas "
    "zimno goraco cisnienie okres okresu cukier cukru apetyt gazy nerwy lek kwas odcisk odciski pot robaki pchly kyla "
    "varme tryck mens socker pasar spanning syra bett stick mask maskar loppor blasor stel trott".split()
)
"""Complaints that are everyday words first."""
FIGURATIVE = frozenset(
    "heart head mind soul spirit body eye eyes brow chest foot feet toe toes heel heels hand hands finger fingers arm "
    "arms elbow shoulder bone bones nerve vision memory focus mood herz herzens kopf geist seele sinne gemut auge "
    "augen korper leib blut fuss fusse hande coeur tete esprit corps oeil yeux sang pied pieds main mains ligne "
    "corazon cabeza mente cuerpo ojo ojos sangre pie pies mano manos linea cuore testa corpo occhio occhi sangue "
    "piede piedi mani hart hoofd geest lichaam oog ogen bloed voet voeten lijn coracao cabeca olho olhos mao maos "
    "linha serce serca sercu glowa glowy umysl cialo oko oczy oczu krew stopa stopy stop dlon hjarta hjartat huvud "
    "kropp oga ogon blod fot fotter hander".split()
)
"""Parts of the body of which names speak in a figure (Quiet Heart)."""
_OF_HEALTH = frozenset(("noun.state", "noun.body", "noun.process", "noun.phenomenon", "noun.act", "noun.attribute"))


def have_own_sense(words: tuple[str, ...]) -> bool:
    """Whether words together mean in the lexicon what has nothing to do with the body (cold feet, itchy feet)."""
    senses = lexicon().senses(" ".join(words), labelled=False)[:1] if len(words) > 1 else ()
    return any(one.domain not in _OF_HEALTH for one in senses)


def with_figures(told: Mapping[str, frozenset[str]]) -> dict[str, frozenset[str]]:
    """The words of a claim with their kinds, where a symptom that is an everyday word first is a "hint", and a part of
    the body of which names speak in a figure a "figure"."""
    return {
        sign: frozenset(
            "hint" if one == "symptom" and sign in AMBIGUOUS
            else "figure" if one == "organ" and sign in FIGURATIVE
            else one
            for one in of
        )
        for sign, of in told.items()
    }  # fmt: skip
