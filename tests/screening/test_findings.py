"""What a screening finds beside close spellings, and that it does not turn on how much is shown."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from namescreen import demo
from namescreen.lexicon.language_codes import LANGUAGES
from namescreen.outcome import NotChecked
from namescreen.policy import Level
from namescreen.register import read_register
from namescreen.screening import checks, screen
from namescreen.screening.foreign_words import told_of
from namescreen.screening.translated import foreign_words_held, translated_in
from tests.screening.conftest import marks_of, validate

DEMO = Path(demo.__file__).parent


def test_what_a_name_is_in_the_buyers_languages_is_searched_too(tmp_path: Path) -> None:
    """Two words, and a compound written as one word, which shares no letter with the name."""
    path = tmp_path / "marks.csv"
    path.write_text("mark,class,goods\nTaschendrachen,28,kites\nStiller Wald,28,kites\nSilent Wood,28,kites\n")
    register = read_register([path])
    kite, forest = screen(
        ["Pocket Kite", "Quiet Forest"], register, goods="kites", classes=[28], languages=["nl", "de"]
    )
    found = {close.mark.text: close for close in marks_of(kite)}
    assert found["Taschendrachen"].translation == "de"
    assert found["Taschendrachen"].level is Level.SERIOUS
    found = {close.mark.text: close for close in marks_of(forest)}
    assert found["Stiller Wald"].translation == "de"
    assert found["Silent Wood"].translation == ""  # the same idea in the name's own language
    for one in (kite, forest):
        validate(one)
    (dutch,) = screen(["Pocket Kite"], register, goods="kites", classes=[28], languages=["nl"])
    assert all(close.translation == "" for close in marks_of(dutch))  # closeness in meaning may find it all the same


@pytest.mark.parametrize(
    ("name", "mark", "languages", "language"),
    [
        ("Quiet Forest", "FORÊT TRANQUILLE", ["fr"], "fr"),
        ("Forêt Tranquille", "QUIET FOREST", ["fr"], "en"),
        ("Green Dragon", "DRAGON VERDE", ["es"], "es"),  # a word that both share does not hide the translation
        ("Dragon Verde", "GREEN DRAGON", ["es"], "en"),
        ("Bosco Verde", "GRÜNER WALD", ["it", "de"], "de"),  # from one foreign language into another
        ("Waldstille", "FOREST SILENCE", ["de"], "en"),
        ("Waldstille", "QUIET FOREST", ["de"], ""),  # the silence of a forest
        ("La Luna", "MOON", ["it"], "en"),
        ("Bosco Verde", "GRÜNER WALD", ["de"], ""),  # nobody among the buyers reads Italian
        ("Quiet Forest", "SILENT WOOD", ["fr"], ""),  # the same idea in the same language
        ("Morning Dew", "MORNING STAR", ["fr", "de"], ""),
        ("Silent Owl", "SILENT OWLS", ["de", "fr"], ""),  # the plural is English
        ("Winter Hand", "WINTER HANDS", ["de"], ""),
        ("Plumecroft", "PLUMCROFT", ["es", "de"], ""),  # the name is English as it stands
        ("Prime Carry", "PRIMO CARRY", ["es", "fr"], ""),  # a word that both share, in English
        ("Silent Otter", "LOUTRE SILENCIEUSE", ["de", "fr"], "fr"),  # the order of words is French
        ("Red Fox", "MAISON RENARD ROUGE", ["fr"], ""),  # it says more than the name
        ("Vellumbra Otter", "VELLUMBRA LOUTRE", ["fr"], "fr"),  # a coined word is its own translation
        ("Moon Garden", "JARDIN LUNAR", ["es"], "es"),  # an adjective for the noun of the name
        ("The Dancing Hedgehog", "LE HÉRISSON DANSANT", ["fr"], "fr"),
        # Names of one thing in several words, of which none says it: the usual words of each language, from memory.
        ("Snowflake", "COPO DE NIEVE", ["es"], "es"),
        ("Copo de Nieve", "SNOWFLAKE", ["es"], "en"),
        ("Sunflower", "FLOAREA SOARELUI", ["ro"], "ro"),
        ("Rainbow", "L'ARC-EN-CIEL", ["fr"], "fr"),  # with an article
        ("Dente di Leone", "DANDELION", ["it"], "en"),
        ("Fireplace", "OPEN HAARD", ["nl"], "nl"),
        ("Open Haard", "FIREPLACE", ["fr"], ""),  # nobody among the buyers reads Dutch
        ("Hummingbird", "BEIJA-FLOR", ["pt"], "pt"),
        ("Humming Bird", "BEIJA-FLOR", ["pt"], "pt"),  # English writes it as one word
        ("Dandelions", "DENTE DI LEONE", ["it"], "it"),  # the plural of what the mark says
        ("Silent Owls", "STILLE EULE", ["de"], "de"),
        ("Hummingbird", "BEIJA O MAR", ["pt"], ""),  # part of a phrase
    ],
)
def test_a_translation_is_seen_in_either_direction(
    tmp_path: Path, name: str, mark: str, languages: list[str], language: str
) -> None:
    path = tmp_path / "marks.csv"
    path.write_text(f"mark,class,goods\n{mark},28,kites\n", "utf-8")
    (found,) = screen([name], read_register([path]), goods="kites", classes=[28], languages=languages)
    assert next((close.translation for close in marks_of(found)), "") == language


def test_buyers_of_a_market_translate_into_its_languages(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,class,goods\nLoutre Silencieuse,28,kites\n")
    (found,) = screen(["Silent Otter"], read_register([path]), goods="kites", languages=["de"], markets=["US", "EU"])
    assert [close.translation for close in marks_of(found)] == ["fr"]


def test_the_verdict_does_not_turn_on_how_many_marks_are_shown(tmp_path: Path) -> None:
    """Dead marks and marks for other goods, closer in letters, do not hide the mark that matters."""
    near = "".join(f"Nettlegri{letter},dead,9,telephones\n" for letter in "abcdefghijkl")
    path = tmp_path / "marks.csv"
    path.write_text(f"mark,status,class,goods\n{near}Nettlegrunth,registered,30,sauces\n")
    register = read_register([path])
    worst = [
        max(mark.concern for mark in marks_of(one))
        for top in (1, 5, 20)
        for one in screen(["Nettlegrin"], register, goods="sauces", classes=[30], top=top)
    ]
    assert worst[0] == worst[1] == worst[2] > 0


def test_a_protected_sign_is_a_finding_and_a_question_of_its_own(tmp_path: Path) -> None:
    """Whatever the place on the continuum: the word of the Olympic movement for any goods."""
    (found,) = screen(["Olympic Ember"], None, goods="hot sauce", classes=[30])
    assert not isinstance(found.distinctiveness, NotChecked)
    assert [one.sign for one in found.distinctiveness.protected] == ["olympic"]
    assert found.distinctiveness.protected[0].ask
    assert any("220506" in law for law in found.distinctiveness.laws)  # 36 U.S.C. 220506, from memory


@pytest.mark.parametrize(
    ("name", "mark", "told"),
    [
        ("Blue Door", "PORTE ROUGE", 'In French "porte" says "door".'),
        ("Porte Bleue", "DOOR TO DOOR", 'In English "door" says "porte".'),
        ("Blue Door", "PORTE BLEUE", ""),  # all of it: the name in French
        ("Blue Door", "DOOR BELL", ""),  # no other language
    ],
)
def test_a_mark_that_says_a_word_of_the_name_is_not_said_to_be_the_name(name: str, mark: str, told: str) -> None:
    """Only marks of the same meaning are foreign equivalents (TMEP 1207.01(b)(vi)(B): exact equivalence)."""
    held = told_of(foreign_words_held(name, mark, ["fr"]))
    if translated_in(name, mark, ["fr"]):
        assert not told
    else:
        assert f"{held}." == told if told else not held


@pytest.mark.parametrize("mark", ["MITTERNACHTEULE", "MITTERNACHTSEULE", "Mitternachts Eule"])
def test_a_compound_says_the_name_with_its_linking_element_and_without(mark: str) -> None:
    """TMEP 1207.01(b)(vi), foreign equivalents; German compounds take a linking -s (Duden, from memory)."""
    assert translated_in("Midnight Owl", mark, ["de"]) == "de"
    assert not translated_in("Midnight Fox", mark, ["de"])


@pytest.mark.parametrize(
    ("name", "mark", "told"),
    [
        ("Lantern Hill", "LATERNENHÜGEL", "de"),
        ("Lantern Hill", "HÜGELLATERNE", ""),  # a lantern of the hill
        ("Otter Bridge", "BRÜCKENOTTER", ""),
        ("Crow Lake", "LAKE KRÄHE", ""),
        ("Hügellaterne", "LANTERN HILL", ""),
        ("Hügellaterne", "HILL LANTERN", "en"),
        ("Bosco Verde", "GRÜNER WALD", "de"),  # Italian puts the head first
    ],
)
def test_a_compound_is_what_its_last_part_says(name: str, mark: str, told: str) -> None:
    """Duden: the last part of a compound is its head, in German as in English (from memory)."""
    assert translated_in(name, mark, ["de", "it"]) == told


@pytest.mark.parametrize(
    ("name", "mark"),
    [("Cumberland Wolf", "LANDWOLF"), ("Stockport Lamp", "PORTLAMPE"), ("Saltburn Blade", "BURNBLADE")],
)
def test_a_place_in_a_name_is_not_read_as_foreign_words(name: str, mark: str) -> None:
    """Only exact equivalents of the whole are foreign equivalents (TMEP 1207.01(b)(vi)(B))."""
    assert not translated_in(name, mark, list(LANGUAGES))


def test_a_place_or_a_word_for_the_goods_hides_no_translation_of_the_rest(tmp_path: Path) -> None:
    """Where goods come from, or what they are, keeps no marks apart (TMEP 1207.01(b)(viii)); the mark is not said to be
    the whole name, and a compound of the same parts the other way round is not graver than an everyday word."""
    path = tmp_path / "marks.csv"
    path.write_text("mark,class,goods,status\nWolke,21,mugs,registered\nWolkenbrücke,21,mugs,registered\n", "utf-8")
    register = read_register([path])
    asked = ["Cloud", "Vienna Cloud", "Cloud Mugs", "Vienna Mugs", "Bridge Cloud"]
    levels = [
        {close.mark.text: close for close in marks_of(one)}
        for name in asked
        for one in screen([name], register, goods="mugs", classes=[21], languages=["de"])
    ]
    assert [one["Wolke"].level for one in levels[:3]] == [Level.SERIOUS] * 3
    assert [one["Wolke"].translation for one in levels[:3]] == ["de", "", ""]
    assert 'In German "wolke" says "cloud".' in levels[1]["Wolke"].closeness.reasons
    assert "Wolke" not in levels[3]
    (germany,) = screen(["Vienna Cloud"], register, goods="mugs", classes=[21], markets=["EU", "DE"])
    told = {close.mark.text: close.closeness.reasons for close in marks_of(germany)}
    assert 'In German "wolke" says "cloud".' in told["Wolke"]  # of some languages of the Union no words are known
    assert levels[4]["Wolkenbrücke"].translation == ""
    assert levels[4]["Wolkenbrücke"].concern < levels[0]["Wolke"].concern


@pytest.mark.parametrize(
    ("name", "mark", "status", "level"),
    [
        ("Coffee Mug", "COFFEEMUG PLUS", "registered", Level.LOOK),
        ("Coffee Mug", "COFFEEMUG", "expired", Level.MINOR),
        ("Finest Mug", "FINE MUG", "pending", Level.LOOK),  # hardly told apart: weak, and opposed all the same
        ("Coffee Mug", "TEA MUG", "registered", Level.MINOR),
    ],
)
def test_a_registered_mark_near_as_a_whole_is_asked_about_though_it_describes(
    tmp_path: Path, name: str, mark: str, status: str, level: Level
) -> None:
    """Court of Justice, C-196/11 P, F1-Live (from memory): while it is registered it counts for something."""
    path = tmp_path / "marks.csv"
    path.write_text(f"mark,class,goods,status\n{mark},21,coffee mugs,{status}\n")
    (found,) = screen([name], read_register([path]), goods="coffee mugs", classes=[21])
    assert [close.level for close in marks_of(found)] == [level]


def test_a_reading_in_a_language_of_no_market_is_told_and_weighs_nothing() -> None:
    """Where no languages are stated, those of the markets are the buyers'."""
    (italy,), (germany,) = (
        [
            (one.severity, one.abroad)
            for one in found.readings  # type: ignore[union-attr]
            if one.language == "it" and one.match == "exact"
        ]
        for markets in (["IT"], ["DE"])
        for found in screen(["Puttana"], None, goods="kites", markets=markets)
    )
    assert (italy, germany) == ((3, False), (0, True))


@pytest.mark.parametrize(
    ("markets", "languages", "lacking"),
    [
        (("GB", "IE"), None, "Welsh, Scottish Gaelic and Irish"),
        (("IE",), ("fr",), "Irish"),
        (("LV", "DE"), None, "Latvian"),
        (("DE", "FR"), None, ""),
        (("IE",), ("ga",), ""),  # told by itself, as it was asked for
    ],
)
def test_languages_of_the_markets_without_a_table_are_said_not_to_be_read(
    markets: tuple[str, ...], languages: tuple[str, ...] | None, lacking: str
) -> None:
    (found,) = screen(["Puttana"], None, goods="kites", markets=markets, languages=languages)
    told = [one.check for one in found.not_checked if one.check.startswith("readings in")]
    assert told == ([f"readings in {lacking}"] if lacking else ["readings in Irish"] if languages else [])


def test_a_translation_word_for_word_is_serious_and_in_the_language_of_its_market(tmp_path: Path) -> None:
    """Small words, which translations add, take nothing away; a word of several languages is read in that of the
    territory (EUIPO Guidelines, part C, section 2, chapter 4, on the relevant public)."""
    path = tmp_path / "marks.csv"
    path.write_text("mark,office,class,goods\nLINO LENTO,IT,28,kites\nNIEBLA DEL MAR,ES,28,kites\n")
    found = {
        close.mark.text: close
        for one in screen(
            ["Slow Linen", "Sea Fog"], read_register([path]), goods="kites", classes=[28], markets=["ES", "IT"]
        )
        for close in marks_of(one)
    }
    assert (found["LINO LENTO"].translation, found["NIEBLA DEL MAR"].translation) == ("it", "es")
    assert found["NIEBLA DEL MAR"].level is Level.LOOK  # few there know both languages


def test_a_translation_weighs_by_what_the_buyers_of_its_market_know(tmp_path: Path) -> None:
    """In the United States an examiner translates (TMEP 1207.01(b)(vi)); the Dutch know English (General Court,
    T-435/07, New Look); elsewhere buyers know everyday words of it."""
    path = tmp_path / "marks.csv"
    path.write_text(
        "mark,office,class,goods\nNIEBLA DEL MAR,ES,28,kites\nNIEBLA DE MAR,US,28,kites\n"
        "ZEEMIST,NL,28,kites\nNOCHE BLANCA,ES,28,kites\n"
    )
    names, markets = ["Sea Fog", "White Night"], ["ES", "US", "NL"]
    found = {
        close.mark.text: close
        for one in screen(names, read_register([path]), goods="kites", classes=[28], markets=markets)
        for close in marks_of(one)
        if close.translation
    }
    abroad = {text: close.abroad for text, close in found.items()}
    assert abroad == {"NIEBLA DEL MAR": True, "NIEBLA DE MAR": False, "NOCHE BLANCA": False, "ZEEMIST": False}
    assert found["NIEBLA DEL MAR"].concern < found["NIEBLA DE MAR"].concern
    assert found["NIEBLA DE MAR"].level is Level.SERIOUS


def test_marks_that_are_passed_over_change_nothing_that_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    register, passed_over = read_register([DEMO / "marks.csv"]), list[int]()
    judge = checks._surely_minor

    def noted(*given: Any) -> dict[int, float]:
        minor = judge(*given)
        passed_over.extend(minor)
        return minor

    def found() -> list[object]:
        names = ["Sprigwick", "Quiet Forest", "Loamlet"]
        told = screen(names, register, goods="herb planters", languages=["nl", "de"], markets=["GB", "NL"], top=3)
        return [one.to_json() for one in told]

    with monkeypatch.context() as patch:
        patch.setattr("namescreen.screening.checks._surely_minor", lambda *_: {})
        every = found()
    with monkeypatch.context() as patch:
        patch.setattr("namescreen.screening.checks._surely_minor", noted)
        assert found() == every
    assert len(passed_over) > 60
