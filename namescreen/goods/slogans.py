"""Names that are promotional messages: made with care, because you deserve it, the art of tea.

Buyers take them for praise of any maker's goods (TMEP 1202.04(b) and 1209.03(s); EUTMR Article 7(1)(b)), unless they
are a play on words (Vorsprung durch Technik, C-398/08): idioms are no slogans here. The formulas are from memory."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from ..lexicon import kinds, lexicon
from ..lexicon.phrases import fixed_phrases
from ..tables import open_table
from .classification import likely_classes
from .phrases import items
from .places import place_of

__all__ = ["message_in", "slogan_in"]

_MADE = (
    "made built crafted designed meant engineered baked brewed blended forged woven knitted sewn roasted cooked "
    "prepared tested trusted loved approved chosen recommended inspired created packed poured cut filled grown "
    "raised handmade"
)

_DO = "taste feel enjoy discover experience love savour savor choose embrace celebrate rediscover unwrap share indulge"
_ONLY = "simply just truly naturally purely totally absolutely really always forever nothing more so too pure"
_WHOLE = (
    "art joy taste power feel pleasure science secret gift beauty smell scent comfort luxury essence home flavour "
    "flavor"
)
_PROMISED = (
    "deserve need can trust taste feel love loved best better good great daily every day life home way style comfort "
    "like want matter happy well more right perfect quality skin hands body family dog cat pet feet hair kitchen "
    "garden sleep"
)


WORN_OR_GIVEN = frozenset((4, 14, 16, 18, 20, 21, 24, 25, 26, 27, 28))
"""The Nice classes of goods that carry messages: clothing, mugs, cards, candles, mats. Common practice, no source."""
GIVEN = frozenset(
    "balloon cake chocolate sweet candy cookie biscuit bouquet flower plaque sign wreath hamper sticker label".split()
)
"""Goods of other classes that carry them too."""
SHOWING = frozenset(
    "card doormat sign plaque banner balloon sash badge sticker bunting poster tag garland topper invitation".split()
)
"""Goods that are there to show a message."""
LONGEST_ROLE = 2
"""The most words that differ in a message: proud to be a pastry chef."""


_FROM = {
    "en": "oven farm field fields garden gardens press grill griddle orchard sea hive bakery kitchen tap tree vine "
    "loom dairy mill roaster smokehouse source ground forge kiln butcher baker maker factory workshop stove",
    "de": "ofen hof feld garten fass baum bauer bauern backer meer grill werk hersteller erzeuger imker metzger "
    "muller handwerker acker stall fischer bauernhof blech rost pfanne natur region manufaktur werkstatt kuche "
    "herd holzofen steinofen backofen",
    "fr": "four champ champs jardin jardins mer ferme ruche verger potager vigne source atelier terroir producteur "
    "moulin fournil grill",
    "es": "horno campo huerto huerta mar granja jardin colmena arbol mata molino vina productor fabrica taller obrador",
    "it": "forno campo campi orto mare fattoria giardino alveare albero mulino vigna produttore fabbrica bottega "
    "frantoio griglia",
    "nl": "oven boer land veld tuin zee boerderij bakker molen boom imker fabriek pers grill bron akker ambachtsman",
    "sv": "ugnen garden havet tradgarden bonden akern faltet kupan kvarnen bageriet fabriken grillen jorden",
    "pl": "pieca pola ogrodu sadu morza gospodarstwa ula mlyna drzewa rolnika producenta piekarni grilla fabryki "
    "krzaka pasieki wsi patelni",
    "pt": "forno campo horta mar quinta jardim colmeia arvore pomar moinho produtor fabrica oficina lagar",
}
"""What goods come fresh from, folded."""
_FRESHLY = {
    "fr": "sorti sortie cuit cuite cueilli cueillie moulu moulue presse pressee prepare preparee peche torrefie "
    "torrefiee coupe coupee",
    "es": "hech hornead cogid molid tostad salid pintad exprimid recolectad cosechad pescad cortad cocid amasad "
    "ordenad sacad prensad planchad lavad",
    "pl": "mielone mielona mielony palone palona palony pieczone pieczony pieczona wyciskane wyciskany tloczone "
    "tloczony tloczona zbierane zrywane parzone parzona robione robiony robiona szyte szyty szyta tkane malowane "
    "zdobione wykonane wykonany dziergane dziergany kute lepione rzezbione",
    "pt": "feit cozid colhid moid torrad said espremid apanhad pescad cortad assad prensad pintad lavad amassad",
}
"""What goods have just been, folded; in Spanish and Portuguese without the ending."""
_ENOUGH = "gott god sott salt starkt mjukt stort langt varmt mycket litet latt sotad skont surt"
"""What is just right, in Swedish (lagom)."""


def _any(words: str) -> str:
    return f"(?:{'|'.join(words.split())})"


@cache
def _formulas() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """The formulas by language, over folded words parted by spaces; the first that holds decides."""
    you = "(?:you|your|yours|yourself|we|us|our|it)"
    told = {
        "en": (
            rf"{_any(_MADE)} (?:to|with|for|by|from|in) .+", r"born (?:to|for) .+",
            r"(?:because|for when|where|when) .+ .+", rf"(?:.+ )?{you} (?:.+ )?{_any(_PROMISED)}(?: .+)?",
            rf"(?:.+ )?{_any(_PROMISED)} (?:.+ )?{you}(?: .+)?",
            rf"{_any(_DO)} (?:the|your|every|each|it|more|better|life|a|all|what) ?.*",
            rf"{_any(_ONLY)} {_any(_PROMISED)}", r"more than (?:just )?an? .+",
            r"nothing (?:but|better|beats|like) ?.*", rf"the {_any(_WHOLE)} of .+",
            r"(?:better|best|good|happy|great) (?:by|for|with|from|in|to|every|together|than) ?.*",
            r"(?:life|everything) .*(?:better|good|easier|sweeter|brighter).*",
            r"every (?:\w+) (?:counts|matters|deserves .+)", r".+ (?:with|and) (?:love|care|pride|passion)",
            r".+ (?:for life|for all|for everyone|for every \w+)", r".+ (?:the way|as) (?:it|nature|they|you) .+",
            r".+ (?:done right|at its best|you can trust|that (?:lasts?|works?|cares?))",
            r"(?:from|straight from) .+ to .+", r"live (?:well|better|more|life)(?: .+)?",
            r"feel (?:good|great|better|the)(?: .+)?", r"say (?:hello|goodbye) to .+",
            r"(?:treat|pamper|spoil) (?:your|yourself|them|him|her)(?: .+)?",
            r"(?:goodbye|no more|never again) \w+", r"(?:less|more) \w+ (?:less|more) \w+",
            r"(?:quality|comfort|nature|planet|earth|people|family|taste|flavou?r|safety|skin|fun|style|"
            r"function|health|"
            r"dogs?|cats?|pets?|baby|kids|coffee|tea|fit|freshness) (?:first|matters|always|above all)",
            r"melts? in (?:the|your) (?:mouth|hands?|oven|pan|middle|tongue)",
            r"(?:quality|goodness|comfort|flavour|taste) (?:that|which|inside|within)(?: .+)?",
            r"(?:just |tastes? |feels? |smells? |looks? )?like (?:home|homemade|new|grandma|granny|nan|mum|mom|nature)"
            r"(?: (?:made|makes|used to make|intended|cooking|baking))?",
            r"(?:as )?(?:good|soft|fresh|light|clean|bright|fluffy) as (?:new|can be|air|day|silk|a cloud|the day .+)",
            r"(?:walk|walking|sleep|float) on (?:air|clouds|a cloud)",
            rf"(?:straight|fresh|direct|hot) (?:from|out of|off) (?:the|our|your) {_any(_FROM['en'])}",
            r"(?:always|ever|forever) "
            r"(?:sharp|fresh|warm|dry|cool|soft|clean|bright|ready|tasty|comfy|cosy|cozy|clear|crisp|new)",
            r"(?:stay|keep|get|go|look|sleep|eat|drink) "
            r"(?:dry|warm|cool|cosy|cozy|fresh|clean|safe|healthy|fit|young|well|better|sharp|organised|"
            r"organized|comfortable)",
        ),
        "de": (
            r"(?:mit|aus|voller) (?:liebe|leidenschaft|herz)(?: .+)?",
            r"(?:einfach|immer|nur|so|wirklich|richtig) \w+", r"weil .+",
            r"(?:fur|furs) (?:dich|sie|alle|immer|leben|das leben)(?: .+)?",
            r"das (?:beste|gute|wahre|leben)(?: .+)?", r"(?:mehr|besser) .+", r"freude am .+", r"lust auf .+",
            r"(?:schmeckt|tut) .+", r".+ mit (?:liebe|herz)(?: .+)?",
            r"(?:gemacht|gebaut|geschaffen) (?:fur|mit|aus) .+", r"alles (?:fur|was) .+", r"damit .+ .+",
            r"so (?:schmeckt|riecht|klingt|geht|macht|gut|einfach|lecker|weich|schlaft|lebt)(?: .+)?",
            r"(?:schlafen|leben|essen|wohnen|kochen|backen|trinken|laufen|fuhlen|genieen|geniessen) wie .+",
            r".+ (?:macht|machen|bringt) (?:spa|spass|glucklich|freude|lust)", r"(?:zeit|platz|raum|luft) fur .+",
            r"(?:genie|geniess|geniesse|genieen|entdecke|erlebe|spure|probiere|gonn) (?:den|die|das|dir|sie) .+",
            r"(?:nie wieder|nie mehr|schluss mit|endlich|immer wieder) .+",
            r"fur (?:ihre|deine|jeden|alle) \w+ .+", r"qualitat (?:die|aus|von|fur|zum|mit) .+",
            r"(?:wie|fast wie|genau wie) (?:hausgemacht|selbstgemacht|selbst gemacht|neu|fruher|daheim|zu hause|"
            r"bei oma|bei mutti|bei muttern|bei mama|von oma|von hand|am ersten tag|"
            r"im (?:hotel|restaurant|urlaub|cafe)|"
            rf"(?:vom|aus dem|aus der) {_any(_FROM['de'])})",
            rf"(?:direkt|frisch|gerade) (?:vom|von|aus)(?: der| dem| den| unserem)? {_any(_FROM['de'])}",
            r"(?:frisch|gerade) (?:gebacken|gerostet|gepresst|gemahlen|geerntet|gezapft|gemacht|gekocht)",
            r"nach (?:omas|grossmutters|altem|alter|bester|traditionellem|traditioneller) "
            r"(?:rezept|rezeptur|art|tradition|brauch|sitte|handwerkskunst|verfahren|hausrezept|familienrezept)",
            r"zum (?:mitnehmen|verschenken|teilen|naschen|geniessen|wohlfuhlen|selbermachen|ausprobieren|"
            r"dahinschmelzen)",
        ),
        "fr": (
            r"(?:fait|cree|concu|prepare)s? avec .+", r"(?:avec|par) (?:amour|passion|coeur)", r"parce que .+",
            r"(?:tout )?simplement .+", r"(?:l )?art de .+",
            r"le (?:gout|plaisir|meilleur|bonheur|secret) (?:de|du|des|d) .+",
            r"pour (?:la vie|toujours|vous|tous|toi)", r"(?:mieux|bien) vivre(?: .+)?", r"plus qu(?:e|un|une)? .+",
            r"rien que .+", r"(?:que|du) bonheur", r"pour (?:tous|toutes|vos|votre|ceux|celles|mieux|bien) .+",
            r"(?:prenez|offrez|savourez|goutez|decouvrez|profitez|osez|vivez|retrouvez|partagez|prends|savoure) .+",
            r".+ (?:pour tous|pour toute la famille|comme (?:a la maison|autrefois|jamais))",
            r"(?:fini|finies|adieu) les .+",
            r"comme (?:neuf|neuve|a la maison|chez (?:mamie|maman|soi|nous|grand mere|papi|"
            r"le boulanger)|autrefois|avant|fait maison|un pro)",
            rf"(?:tout |tout juste |fraichement ){_any(_FRESHLY['fr'])}",
            rf"(?:tout droit|directement|frais|tout frais) (?:du|de la|de l|des|de nos|sorti du) {_any(_FROM['fr'])}",
            r"(?:la )?qualite (?:qui|que) .+",
            r"a (?:emporter|l ancienne|partager|offrir|croquer|tartiner|boire|deguster)",
        ),
        "es": (
            r"hech[oa]s? (?:con|para) .+", r"con (?:amor|carino|pasion)", r"porque .+", r"simplemente .+",
            r"el (?:arte|sabor|placer|gusto|secreto) de .+", r"para (?:ti|siempre|todos|toda la vida)",
            r"mas que un[ao]? .+", r"(?:lo|el|la) mejor(?: .+)?",
            r"vive (?:mas|mejor|bien|sano|sana|la vida|el momento|el sabor|cada|a tu) ?.*",
            r"(?:disfruta|disfrute|descubre|saborea|siente|prueba|cuida|cuide|regala|dale|elige) .+",
            r"para (?:tu|tus|toda|todas|cada|quien|quienes) .+", r".+ (?:de siempre|de verdad|como en casa)",
            r"como (?:nuevo|nueva|nuevos|en casa|hecho en casa|de casa|antes|antano|los de antes|siempre|la abuela)",
            rf"(?:recien|acabad[oa] de) (?:{_any(_FRESHLY['es'])}[oa]s?|hacer|hornear|coger|moler|tostar|"
            r"salir|exprimir)(?: en casa| hoy)?",
            rf"(?:directo|directamente|fresco) (?:del|de la|de|de nuestra|de nuestro) {_any(_FROM['es'])}",
            r"(?:la )?calidad que .+",
            r"(?:para|de) (?:llevar|compartir|regalar|picar|untar|usar y tirar)",
        ),
        "it": (
            r"fatt[oaie] (?:con|per) .+", r"con (?:amore|passione|cura)", r"perche .+", r"semplicemente .+",
            r"(?:il|l) ?(?:arte|gusto|piacere|sapore|segreto) (?:di|del|della) .+",
            r"per (?:te|sempre|tutti|la vita)", r"piu di un[ao]? .+", r"solo il meglio", r"il meglio(?: .+)?",
            r"(?:scopri|assapora|vivi|prova|senti|regala|goditi|concediti|scegli) .+",
            r".+ (?:di una volta|come a casa)",
            r"come (?:nuovo|nuova|una volta|a casa|fatt[oaie] in casa|la nonna|dalla nonna)",
            r"(?:appena|fresco) (?:fatto|fatta|sfornat[oaie]|colt[oaie]|macinat[oaie]|raccolt[oaie]|spremut[oaie])",
            rf"(?:direttamente|dritto|fresco) (?:dal|dalla|dai|dall) ?{_any(_FROM['it'])}", r"(?:la )?qualita che .+",
            r"da (?:asporto|condividere|regalare|spalmare|portare via)", r"pront[oaie] (?:da|per|all) ?.+",
            r"per (?:chi|tutta|ogni|i tuoi|le tue|la tua|il tuo) .+",
        ),
        "nl": (
            r"(?:gewoon|puur|altijd|echt) \w+", r"met (?:liefde|zorg|passie)(?: .+)?", r"omdat .+",
            r"gemaakt (?:met|voor) .+", r"voor (?:jou|u|iedereen|altijd|het leven)", r"meer dan .+",
            r"(?:geniet|proef|ontdek|voel|beleef) (?:van|de|het|je|elke) .+", r"lekker \w+",
            r"(?:nooit meer|tijd voor) .+",
            r"(?:net als|net zoals|zoals) (?:thuis|vroeger|oma|bij oma|nieuw|mama|toen|zelfgemaakt)",
            r"kant en klaar", rf"(?:vers|direct|recht|rechtstreeks) (?:van|uit) (?:de|het|onze|t) {_any(_FROM['nl'])}",
            r"kwaliteit die .+",
            r"om (?:mee te nemen|te delen|te geven|van te smullen)",
            r"voor (?:jouw|uw|elke|ieder|iedere|wie|alle) .+",
            r"het (?:beste|lekkerste|goede)(?: .+)?",
        ),
        "sv": (
            r"(?:gjord|gjort|gjorda|skapad|bakad|bakat) (?:med|for|av) .+", r"med (?:karlek|omsorg)(?: .+)?",
            r"helt enkelt .+", r"for (?:livet|dig|alla)", r"det basta(?: .+)?", r"mer an .+",
            r"sa (?:gott|mjukt|enkelt)",
            r"(?:precis )?(?:som|smakar som) (?:hemma|hemlagat|hemgjort|hembakat|ny|nytt|mormors|forr|i gamla tider)",
            rf"lagom {_any(_ENOUGH)}", r"kvalitet (?:som|i) .+",
            rf"(?:direkt|farskt|nyss) (?:fran|ur) {_any(_FROM['sv'])}", r"att ta med(?: .+)?",
        ),
        "pl": (
            r"(?:poczuj|odkryj|zasmakuj|sprobuj|ciesz sie) .+", r"dla (?:twojej|twojego|calej|kazdej) .+",
            r"(?:z miloscia|z pasja|z sercem)(?: .+)?", r"po prostu .+", r"dla (?:ciebie|kazdego|wszystkich)(?: .+)?",
            r"bo .+ .+", r"(?:smak|radosc|sztuka) \w+", r"stworzone .+", r"wiecej niz .+", r"najlepsz[eya](?: .+)?",
            r"jak (?:u mamy|u babci|domow[eya]|now[eya]|dawniej|w domu|z domu|kiedys)",
            rf"(?:prosto|wprost) (?:z|ze|od) {_any(_FROM['pl'])}",
            rf"(?:swiezo|recznie) {_any(_FRESHLY['pl'])}", r"jakosc (?:ktora|na) .+",
            r"na (?:wynos|prezent|kazdy dzien|co dzien)",
        ),
        "pt": (
            r"feit[oa]s? (?:com|para|a mao)(?: .+)?", r"com (?:amor|carinho|paixao)", r"porque .+", r"simplesmente .+",
            r"a arte (?:de|do|da) .+", r"(?:o|a) (?:sabor|gosto|prazer|segredo|melhor) (?:de|do|da|dos|das) .+",
            r"para (?:ti|voce|sempre|todos|toda a vida|toda a familia)", r"mais (?:do )?que um[a]? .+",
            r"como (?:novo|nova|antigamente|em casa|feito em casa|a avo|da avo|antes)",
            r"acabad[oa] de (?:fazer|sair|cozer|colher|moer|torrar|espremer|assar)",
            rf"recem {_any(_FRESHLY['pt'])}[oa]s?",
            rf"(?:direto|diretamente|fresco) (?:do|da|de) {_any(_FROM['pt'])}", r"(?:a )?qualidade que .+",
            r"(?:desfruta|descobre|saboreia|sente|prova|cuida|vive|escolhe|oferece) "
            r"(?:o|a|os|as|do|da|cada|mais|melhor) .+",
            r".+ (?:de sempre|a serio)",
            r"(?:para|de) (?:levar|partilhar|oferecer|barrar)",
        ),
    }  # fmt: skip
    since = {"en": "since|est|established", "de": "seit", "fr": "depuis", "es": "desde", "it": "dal", "nl": "sinds",
             "sv": "sedan", "pl": "od"}  # fmt: skip
    dated = tuple((language, re.compile(rf"(?:{ways}) \d{{4}}")) for language, ways in since.items())
    return dated + tuple((language, re.compile(one)) for language, ways in told.items() for one in ways)


@lru_cache(maxsize=1 << 12)
def slogan_in(words: tuple[str, ...]) -> str:
    """The language (BCP 47) of the promotional formula that folded words follow as a whole; "" if they follow none,
    hold a word that English lacks beside an English formula, or are an idiom."""
    if len(words) < 2 or any("".join(words) == "".join(each) for each in fixed_phrases(words)):
        return ""
    text = " ".join(words)
    said = [word for word in words if not word.isdecimal()]
    ordinary = all(lexicon().known(word) or kinds(word) & {"function word", "laudatory", "quality"} for word in said)
    held = (language for language, formula in _formulas() if formula.fullmatch(text))
    return next((language for language in held if language != "en" or ordinary), "")


@lru_cache(maxsize=1 << 12)
def message_in(words: tuple[str, ...], goods: str) -> tuple[str, ...]:
    """The languages of the message that folded words are, which all makers put on such goods, and which tells no maker
    (TMEP 1202.04): proud to be a farmer; none if they are none, or the goods are not to wear, to give or to put up. A
    single word is one only on goods that are there to show it."""
    heads = {item.head for item in items(goods)}
    if not set(likely_classes(goods)[:1]) & WORN_OR_GIVEN and not GIVEN & heads:
        return ()
    if len(words) < 2:
        return _listed(words[0]) if SHOWING & heads else ()
    cuts = ((at, at + size) for size in range(1, LONGEST_ROLE + 1) for at in range(len(words) - size + 1))
    ways = ((*words[:at], "*", *words[end:]) for at, end in cuts if all(map(_is_common, words[at:end])))
    return next(filter(None, (_listed(" ".join(way)) for way in (words, *ways))), ())


def _listed(message: str) -> tuple[str, ...]:
    return tuple((open_table("praise.tsv").get(f"!{message}") or "").split())


def _is_common(word: str) -> bool:
    return lexicon().known(word) or place_of(word) is not None
