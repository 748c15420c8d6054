"""Inflected forms of a word, by the endings of its language.

A light suffix rule set of our own rather than NLTK's Snowball stemmers: those cost 0.2 to 1 second to import,
lack Polish, Czech, Turkish, Greek, Ukrainian, Hebrew and Hindi, and cut further than is wanted here (Snowball
French brings *poussin* near *pousser*). The rules know endings of inflection and the plainest endings of
derivation (agent, feminine, diminutive, abstract noun), written from memory of each language's grammar, without
accents, as the words they are taken from are folded first.
"""

from __future__ import annotations

from functools import cache, lru_cache

__all__ = ["PREFIXES", "stem"]

_ENDINGS = {
    "de": "e en er es em n s ens ern erin erinnen in innen t st te ten tet test end ende ender enden endes ung ungen "
          "ig ige iger iges igen igem heit heiten keit keiten lich liche licher liches lichen isch ische ischer "
          "isches ischen chen lein ei eien eln elt elte elnd ler",
    "nl": "e en s er ers ster sters je jes tje tjes pje pjes t te ten de den end ende ing ingen ig ige ige heid "
          "heden lijk lijke elijk elijke erij erijen aar aars es essen eren eert eerde erig erige n",
    "sv": "a ar or er en et n na arna orna erna s as ad ade at t te tt ande ende are aren arna arens ning ningen "
          "ningar het heten heter ig iga igt lig liga ligt isk iska iskt else elser r ens ets",
    "da": "e en er et erne ne ene r s es te t ede ende ere eren erne ning ningen ninger hed heden heder ig ige igt "
          "lig lige ligt isk iske else elsen elser n ens ets",
    "nb": "e en er et a ene erne ne r s es te t ede et ende ere eren erne ing ning ningen ninger het heten heter ig "
          "ige lig lige isk iske else elsen elser n ens ets",
    "fr": "e s es x ee ees er ez ent ant ante ants antes ait ais aient ons ions eur eurs euse euses rice rices eux "
          "ment ement ements age ages ation ations ie ies if ive ifs ives ique iques iste istes isme ite ites in ine "
          "ins ines ard arde ards ardes asse asses ir is it i ie issant aille able ables on onne onnes",
    "es": "o a os as e es ar er ir ado ada ados adas ido ida idos idas ando iendo aba ia amos an en o on or ora ores "
          "oras dor dora dores doras ador adora adores adoras ero era eros eras ito ita itos itas illo illa illos "
          "illas on ona ones onas azo oso osa osos osas cion ciones acion aciones miento mientos idad idades mente "
          "amente ico ica icos icas ista istas ismo able ables ura uras ez eza ecer uelo ivo iva ivos ivas",
    "it": "o a i e are ere ire ato ata ati ate ito ita iti ite uto uta uti ute ando endo ante anti ente enti ino ina "
          "ini ine etto etta etti ette one ona oni accio accia acci acce ore ori tore tori trice trici atore atori "
          "atrice iere iera ieri oso osa osi ose zione zioni azione azioni mento menti amento amenti ita mente "
          "amente ico ica ici iche ista isti iste ismo abile abili ivo iva ivi ive ezza ezze aro ai ura ure aggio",
    "pt": "o a os as e es ar er ir ado ada ados adas ido ida idos idas ando endo indo ava ia am em ou or ora ores "
          "oras dor dora dores doras ador adora adores adoras eiro eira eiros eiras inho inha inhos inhas ao oes ona "
          "onas oso osa osos osas cao coes acao acoes mento mentos amento idade idades mente amente ico ica icos "
          "icas ista istas ismo avel aveis ivel ura uras eza ecer ice ivo iva ivos ivas ense",
    "ro": "a e i u ul ului ii iei ilor le lor uri urile urilor ele elor ea eaua a at ata ati ate it ita iti ite ut "
          "uta uti ute and ind are ire ere uire ator atoare atori tor toare tori ar ara ari as os oasa osi oase ie "
          "ii iune iuni ment mente itate ist ista isti el ica oi oaica esc easca esti este escu ului",
    "pl": "a e i y o u ow owi om ami ach em ego emu ej ym ymi ich ymi ie iem iach iami ka ki ke ko ek kow kach ac "
          "al ala alo ali any ana ane ani ony ona one eni ic yc il ila ilo ili ony enie ania anie eniem ja owa owac "
          "owy owe owego ny na ne ni nik nika nicy nica ski ska skie stwo stwa osc osci iec cy ca ce liwy iwa isty",
    "cs": "a e i y o u ou ove ovi um am em im ami emi imi ach ech ich eho emu ej ym ymi ka ky ku ek ko ce ice at al "
          "ala alo ali an ana ano ani en ena eno eni it il ila ilo ili et el ela eni ani ovat uje ny na ne ni ik nik "
          "nice ec ci sky ska ske stvi stvo ost osti ivy iva ove ovy ova ak aci acka",
    "hu": "k ok ek ak t ot et at nak nek ban ben ba be bol rol tol ra re on en val vel a e i s os es as is u ul jai "
          "ja je ai ei ni ott ett t tak tek ik unk ok om em od ed o ogat eget as es asok ast ezik ozik odik "
          "edik alom elem o ok tlan telen talan sag seg ka ke",
    "fi": "a t n ta tta ssa sta lla lta lle na ksi in an on en un yn it ien jen ien oiden issa ista illa i e aa "
          "ee ja jan jat jia minen mista va van vat nut neet tu ttu us ukset uksen uus inen isen iset ista set sen "
          "ton ttomat la lta ia ea ella ilee",
    "tr": "lar ler lari leri lara lere i u a e in un nin nun da de ta te dan den tan ten li lu lik luk siz suz ci "
          "cu cilik ca ce im um sin sun mek mak di du ti tu mis mus iyor uyor me ma en an ici ucu ilik le la",
    "id": "an kan nya i lah kah",
    "el": "ο η α ος ου ον οι ων ους ης ας ες εις ι ια ιες ιου ιων ω εις ει ουμε ουν μα ματα ματος αμε ικος ικη ικο "
          "ικα ικοι ικες τρα ρα ιση ισμος αρα ακι ακια αρης",
    "ru": "а я о е ы и у ю ой ей ою ею ам ям ами ями ах ях ов ев ом ем ый ий ая яя ое ее ые ие ого его ому ему ым им "
          "ых их ыми ими ую юю ть ти л ла ло ли ать ять ить еть ешь ет ут ют ат ят ит ишь нуть ка ки ку ке кой ек "
          "ик ник ница ный ная ное ные ский ская ское ские ость ости ство ь овать ение ания ание ец ун уха",
    "uk": "а я о е и і у ю ою ею ам ям ами ями ах ях ів їв ом ем ий ій а я е є ого его ому ему им ім их іх ими іми у "
          "ю ти в ла ло ли ати яти ити іти еш є уть ють ать ять ить нути ка ки ку ці кою ок ик ник ниця ний на не ні "
          "ський ська ське ські ість ості ство ь увати ення ання ець ун уха",
    "hi": "ा े ी ों ो ें ि ु ू ना ने नी ता ते ती",
}
_LEAST = 4
"""Letters that stay; shorter stems are shared by unrelated words (3 for words of four letters)."""

PREFIXES = {
    "de": "ab an auf aus be bei durch ein ent er fort ge her hin los miss nach um un ver vor weg zer zu",
    "nl": "aan af be door ge her in mis na om on ont op over toe uit ver voor weg",
    "sv": "an av be fram for genom in mis ned ner om o pa sonder till upp ur ut van",
    "da": "af an be bort for frem gen in ind mis ned om op over pa til u ud under van",
    "nb": "an av be bort for frem gjen inn mis ned om opp over pa til u ut under van",
    "fr": "de des dis em en entre in im mal re", "es": "des en em in im mal re", "it": "dis in im mal ri s stra",
    "pt": "des en em in im mal re", "ro": "dez des in im ne re",
    "pl": "do na nad nie o ob od po pod prze przy roz s u w wy z za", "cs": "do na nad ne o ob od po pod pre pri roz s u v vy z za",
    "hu": "at be bele el fel ki le meg ossze szet", "ru": "в вы до за из ис на не о об от по под при про раз рас с у",
    "uk": "в ви від до за з на не о об по під при про роз с у", "id": "ber di ke me mem men meng menge pe pem pen peng ter",
}  # fmt: skip
"""Verb prefixes (folded): a verb with one of these before it stays close to the verb without."""


@cache
def _endings(language: str) -> tuple[str, ...]:
    return tuple(sorted(set(_ENDINGS.get(language, "").split()), key=lambda ending: (-len(ending), ending)))


@lru_cache(maxsize=65536)
def stem(word: str, language: str) -> str:
    """The folded `word` without its longest ending in `language`; unchanged where no rule applies.

    At least four letters stay, or three of a word of four. A doubled last consonant counts once, since German,
    Dutch, Scandinavian and Hungarian spelling doubles it before an ending.
    """
    for ending in _endings(language):
        kept = len(word) - len(ending)
        if word.endswith(ending) and kept >= min(_LEAST, max(3, len(word) - 1)):
            word = word[:kept]
            break
    if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "aeiou":
        return word[:-1]
    return word
