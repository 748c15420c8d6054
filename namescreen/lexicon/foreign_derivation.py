"""Words of other languages derived from known ones by living suffixes: savonnerie from savon, moledora from moler.

A derivation is about what its base is about, whatever the suffix adds: a place, a maker, a tool, a smaller one, a
quality. Suffixes and endings are folded, from memory of each language's grammar; they only lead to words in the table.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from ..text.segmentation import cuts
from .foreign_forms import LINKING
from .translation import Translation, listed_translations

__all__ = ["SUFFIXES", "Part", "compound_of", "derived", "modifier_senses", "what_does"]

SUFFIXES = {
    "it": "eria erie ificio ista isti aio aia iere iera tore trice tori toio ino ina ini etto etta etti ello ella "
          "uccio uzzo one oso osa ale ico ica esco ato ata ati ito ita uto zione mento aggio tura ura ezza ita abile "
          "issimo issima issimi issime ibile ante ente ame ume iero",
    "es": "eria ista ero era eros eras dor dora dores doras dero torio ito ita illo illa uelo oso osa al ico ica ado "
          "ada ados idos ido ida cion miento aje ura eza dad able ible ante iente ado azo mente "
          "isimo isima",
    "pt": "aria eria ista eiro eira dor dora douro inho inha zinho zinha oso osa al ico ica ado ada ido ida cao mento "
          "agem ura eza dade avel ivel ante ente mente issimo issima",
    "fr": "erie eries eur eurs euse euses ateur atrice ier iere iers ieres iste oir oire ette ettes et on eux al ique "
          "ee e ant ante ation tion ement age ages ure ite able ible ard aison eraie",
    "ro": "arie arii erie ar ari tor tori toare ist ica uta ut el os oasa at ata it ita tie tii ment are ire ere tate "
          "esc easca bil ura ic aj",
    "pl": "arnia arnie ownia arz arze nik nica ista acz acze arka arki ek ka ki eczka ik yk owy owa owe ny na ne ski "
          "ska skie any ana ane ony ona one anie enie osc stwo ista owiec ak",
    "cs": "arna arny irna ovna ar ari nik nice ista tel telka ac acka ek ka ky ik icka ovy ova ove ny na ne sky ska "
          "ske any ana eny ena ani eni ost stvi stvo ak ivo",
    "de": "erei er erin ler ner chen lein ig ige iger iges isch ische lich liche haft sam bar los ung ungen heit keit "
          "schaft nis tum ling frei",
    "nl": "erij er ster aar je tje pje ig ige isch lijk lijke zaam baar loos ing heid schap sel",
    "sv": "eri are erska ig igt iga isk iskt lig ligt sam bar los ning het skap ad at ade",
    "da": "eri er ig igt isk lig som bar los ning hed skab et ede else",
    "nb": "eri er ig isk lig som bar los ning het skap et ede else",
    "fi": "inen llinen ja minen us uus ys yys ton mo la lainen isto uri in ttu",
    "hu": "os es as ito i talan telen sag seg as es o ott ett da de ka ke us ista",
    "tr": "ci cu lik luk li lu siz suz hane ce ca",
    "hr": "arnica ar ica ic nik ski ska sko ni na no an ana anje enje ost stvo",
    "sk": "aren arna ar nik ka ek ovy ova ove ny na ne sky ska ske any ana anie enie ost stvo",
    "sl": "arna ar ica ec nik ski ska sko ni na no anje enje ost",
}  # fmt: skip
_BASES = {
    "it": "a o e are ere ire", "es": "a o e ar er ir", "pt": "a o e ar er ir", "fr": "e er ir re", "ro": "a e i",
    "pl": "a o ac ic owac", "cs": "a o at it ovat", "de": "e en n eln ern", "nl": "e en", "sv": "a e", "da": "e",
    "nb": "e", "fi": "a i e aa", "hu": "a e", "tr": "mak mek", "hr": "a o ati iti", "sk": "a o at it",
    "sl": "a o ati iti",
}  # fmt: skip
"""What a base may have lost before a suffix: the ending of its noun or of its infinitive."""
_PARTICIPLES = {
    "de": "t et en", "nl": "d t en", "sv": "d t ad at dd tt", "da": "et t", "nb": "et t", "fi": "ttu tty tu ty",
    "hu": "t ott ett",
}  # fmt: skip
_INFINITIVES = {"de": "en n eln ern", "nl": "en", "sv": "a", "da": "e", "nb": "e", "fi": "aa a", "hu": ""}
_ADJECTIVES = {"de": "ig", "nl": "ig", "sv": "ig", "da": "ig", "nb": "ig"}
"""What makes an adjective of a stem that may begin a compound as well: kuschelig, Kuscheltier."""
_DOES = {
    "it": "porta=holder copri=cover salva=saver guarda=guard para=guard apri=opener taglia=cutter cava=puller "
          "schiaccia=crusher spremi=squeezer asciuga=drier tosta=toaster appendi=hanger reggi=holder ferma=holder "
          "lava=washer gratta=grater macina=grinder affila=sharpener accendi=lighter scalda=warmer trita=chopper "
          "togli=remover caccia=repeller scaccia=repeller acchiappa=catcher cattura=catcher smacchia=remover "
          "pulisci=cleaner lucida=polisher raccogli=collector tieni=holder aggiusta=mender proteggi=protector "
          "ordina=organizer blocca=blocker "
          "poggia=rest attacca=hanger segna=marker scola=drainer stendi=rack tira=puller pela=peeler rompi=cracker "
          "spazza=brush monta=frother batti=beater leva=remover tritura=grinder",
    "es": "porta=holder guarda=guard cubre=cover salva=saver para=guard abre=opener corta=cutter saca=puller "
          "exprime=squeezer seca=drier tuesta=toaster cuelga=hanger sujeta=holder lava=washer ralla=grater "
          "muele=grinder afila=sharpener enciende=lighter calienta=warmer pica=chopper posa=rest reposa=rest "
          "marca=marker monta=frother escurre=drainer limpia=cleaner pela=peeler rompe=cracker casca=cracker "
          "tapa=cover quita=remover mata=killer tira=puller lanza=thrower "
          "atrapa=catcher caza=catcher recoge=collector protege=protector repele=repeller espanta=repeller "
          "ahuyenta=repeller abrillanta=polisher ordena=organizer organiza=organizer arregla=mender bloquea=blocker",
    "fr": "porte=holder porta=holder couvre=cover garde=guard pare=guard ouvre=opener coupe=cutter tire=puller "
          "presse=press seche=drier grille=toaster accroche=hanger serre=holder lave=washer rape=grater moud=grinder "
          "aiguise=sharpener affute=sharpener allume=lighter chauffe=warmer hache=chopper pose=rest repose=rest "
          "marque=marker essuie=wiper ramasse=scoop casse=cracker egoutte=drainer passe=passer perce=drill "
          "protege=protector range=organizer vide=emptier cache=cover sous=mat "
          "attrape=catcher chasse=repeller enleve=remover ote=remover nettoie=cleaner trie=sorter epluche=peeler "
          "tue=killer bloque=blocker cire=polisher repare=mender tient=holder stop=blocker",
    "pt": "porta=holder guarda=guard cobre=cover salva=saver para=guard abre=opener corta=cutter saca=puller "
          "espreme=squeezer seca=drier pendura=hanger lava=washer rala=grater moi=grinder afia=sharpener "
          "acende=lighter aquece=warmer pica=chopper pousa=rest marca=marker limpa=cleaner quebra=cracker "
          "descasca=peeler tira=remover apanha=catcher mata=killer protege=protector organiza=organizer "
          "lustra=polisher afasta=repeller arruma=organizer bloqueia=blocker",
}  # fmt: skip
"""Verbs before a noun, which make a word for what does so to it (portacandele, holder of candles), in the Romance
languages; from memory of shops."""
SHORTEST_DONE = 4
"""The fewest letters of that noun."""
_EVERYTHING = frozenset(("todo", "todos", "tudo", "tout", "tutto"))
"""What stands for that noun in words for what does so to anything (guardatodo)."""
DERIVED = 0.9
"""The factor on the score of the base."""
SHORTEST_BASE, SHORTEST_PART, SHORTEST_MODIFIER = 4, 3, 2
"""Letters that must remain before a suffix, as many words hold a shorter one by chance; of a part of a compound, and of
an everyday word that begins one (ny-, te-)."""
COMMON_KNOWLEDGE = ("own list", "goods lists")
RELIABILITY = 20
"""What fully reliable parts of a compound are worth, in letters of the shorter one, as in `translation`."""


class Part(NamedTuple):
    """A part of a word as it is written, with its senses, best first."""

    written: str
    senses: tuple[Translation, ...]


@lru_cache(maxsize=1 << 14)
def derived(word: str, language: str) -> tuple[Translation, ...]:
    """What the folded `word` is about, as the senses of the word of `language` that it is derived from, best first; the
    `parts` are that base and the suffix. Empty if no base is known."""
    found: list[Translation] = []
    for suffix in SUFFIXES.get(language, "").split():
        stem = word.removesuffix(suffix)
        if stem == word or len(stem) < SHORTEST_BASE:
            continue
        for base in (stem, *(stem + ending for ending in _BASES[language].split())):
            if base != word:
                senses = listed_translations(base, language, compounds=False)
                found += [
                    one._replace(score=one.score * DERIVED, source="derivation", parts=(base, suffix)) for one in senses
                ]
        if found:
            break
    return tuple(sorted(dict.fromkeys(found), key=lambda one: (-one.score, one.english)))


@lru_cache(maxsize=1 << 13)
def compound_of(word: str, language: str) -> tuple[Part, ...]:
    """The two parts of an unknown compound; empty if there are none. Freer than `translations`: a part may also be the
    stem of a verb (Schleif-), a participle (-bakt) or a derivation. To be asked of words that look native only: coined
    names hold such parts by chance."""
    if language not in _INFINITIVES:
        return ()
    best: tuple[float, tuple[Part, ...]] = (0.0, ())
    for cut in cuts(word, SHORTEST_MODIFIER, SHORTEST_PART):
        head = _as_head(word[cut:], language)
        first = _as_modifier(word[:cut], language) if head else ()
        if first:
            value = min(cut, len(word) - cut) + RELIABILITY * min(first[0].score, head[0].score)
            best = max(best, (value, (Part(word[:cut], first), Part(word[cut:], head))), key=lambda one: one[0])
    return best[1]


@lru_cache(maxsize=1 << 13)
def what_does(word: str, language: str) -> tuple[Part, ...]:
    """A noun, and what does to it as the verb before it says, as the parts of an unknown word of a Romance language;
    empty if it is none."""
    verbs = (one.split("=") for one in _DOES.get(language, "").split())
    for verb, does in verbs:
        noun = word.removeprefix(verb)
        if noun == word or len(noun) < SHORTEST_DONE:
            continue
        anything = (Translation(language, "all", 1.0, "compound"),) if noun in _EVERYTHING else ()
        if senses := anything or _senses((noun,), (), language):
            return Part(noun, senses), Part(verb, (Translation(language, does, 1.0, "compound"),))
    return ()


def modifier_senses(part: str, language: str) -> tuple[Translation, ...]:
    """What a folded part may mean that begins a compound of a language; empty if it means nothing, or the language has
    none."""
    return _as_modifier(part, language) if language in _INFINITIVES and len(part) >= SHORTEST_MODIFIER else ()


def _as_head(part: str, language: str) -> tuple[Translation, ...]:
    """The senses of the last part of a compound: a word, or a participle."""
    infinitives = [
        part.removesuffix(ending).removeprefix("ge" if language in ("de", "nl") else "") + infinitive
        for ending in _PARTICIPLES[language].split()
        if part.endswith(ending)
        for infinitive in _INFINITIVES[language].split()
    ]
    return _senses((part,), infinitives, language)


def _as_modifier(part: str, language: str) -> tuple[Translation, ...]:
    """The senses of the first part: a word, with a linking element or without, or the stem of a verb or adjective."""
    if len(part) < SHORTEST_PART:
        senses = listed_translations(part, language, compounds=False)
        return tuple(one for one in senses if one.source in COMMON_KNOWLEDGE and one.score == 1)
    plain = [part.removesuffix(link) for link in LINKING[language] if part.endswith(link) and len(part) - len(link) > 2]
    endings = f"{_INFINITIVES[language]} {_ADJECTIVES.get(language, '')}"
    return _senses((part, *plain), [part + one for one in endings.split()], language)


def _senses(words: Iterable[str], verbs: Iterable[str], language: str) -> tuple[Translation, ...]:
    found = [one for word in words for one in listed_translations(word, language, compounds=False)]
    for verb in verbs:
        if len(verb) > SHORTEST_PART:
            senses = listed_translations(verb, language, compounds=False)
            found += [one._replace(score=one.score * DERIVED, source="derivation") for one in senses]
    best: dict[str, Translation] = {}
    for one in found:
        if one.english not in best or best[one.english].score < one.score:
            best[one.english] = one
    return tuple(sorted(best.values(), key=lambda one: (-one.score, one.english)))
