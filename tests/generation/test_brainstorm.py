"""A brainstorm keeps the brief's limits, is varied, repeatable, and as long as it is asked to be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import islice
from pathlib import Path
from typing import Any

import pytest

from namescreen import readings
from namescreen.ahead import Ahead
from namescreen.brief import Brief, Concept
from namescreen.errors import InputError
from namescreen.generation import CONSTRUCTIONS, Candidate, Taste, brainstorm, candidates
from namescreen.generation.brainstorming import Candidates
from namescreen.generation.candidate import Proposal
from namescreen.generation.flags import Flags, Refusal
from namescreen.generation.senses import unfit
from namescreen.goods import distinctiveness
from namescreen.lexicon import association
from namescreen.outcome import NotChecked
from namescreen.policy import PLAINLY_DESCRIPTIVE
from namescreen.pronunciation import pronounce_words
from namescreen.pronunciation.phones import is_vowel
from namescreen.register import read_register
from namescreen.text import parse


def test_the_first_hundred_keep_every_limit(hundred: list[Candidate], studio: Brief) -> None:
    assert len(hundred) == 100
    for candidate in hundred:
        name = parse(candidate.text)
        assert 5 <= len(name.letters) <= 12
        assert len(name.words) <= 2
        assert not any(word in name.letters for word in studio.avoid)
        assert not any(unfit(word) for word in (*name.words, *candidate.sources))
        met = readings(candidate.text, languages=("en", "de", "nl"), dictionaries=())
        assert all(reading.severity < (1 if reading.stands else 2) for reading in met), candidate


def test_syllables_stay_within_the_limit_but_for_odd_readings(hundred: list[Candidate]) -> None:
    # A name is counted as it is meant to be said; a reader may now and then find another way.
    over = [
        candidate.text
        for candidate in hundred
        if sum(map(is_vowel, pronounce_words(parse(candidate.text).words, 1)[0].phones)) > 3
    ]
    assert len(over) <= 5, over


def test_the_first_forty_are_varied(hundred: list[Candidate]) -> None:
    first = hundred[:40]
    alike = Counter((candidate.construction, candidate.stem) for candidate in first)
    assert sum(count - 1 for count in alike.values()) <= 4, alike.most_common(5)
    made = Counter(candidate.construction for candidate in first)
    assert len(made) >= 2, made  # some of every taste, though readers liked existing words best
    assert sum(made[kind] for kind in ("pair", "changed", "affix", "foreign")) <= 6, made
    for page in (hundred[:20], hundred[20:40]):
        words = Counter(word for candidate in page for word in set(candidate.sources))
        assert words.most_common(1)[0][1] <= 2


def test_names_stand_once_and_say_how_they_were_made(hundred: list[Candidate]) -> None:
    assert len({candidate.text.casefold() for candidate in hundred}) == 100
    assert all(candidate.how and candidate.sources and 0 <= candidate.score <= 1 for candidate in hundred)


@pytest.mark.screened  # as the names it is compared with
def test_the_same_brief_gives_the_same_names_and_more_only_adds(hundred: list[Candidate], studio: Brief) -> None:
    assert brainstorm(studio, limit=130)[:100] == hundred


def test_another_seed_gives_other_names(hundred: list[Candidate], studio: Brief) -> None:
    other = {candidate.text for candidate in brainstorm(studio, limit=100, seed=8)}
    assert len(other & {candidate.text for candidate in hundred}) < 95


def test_any_number_can_be_asked_for(studio: Brief) -> None:
    many = [candidate.text for candidate in islice(candidates(studio), 800)]
    assert len(set(many)) == len(many) == 800


@pytest.mark.parametrize("name", list(CONSTRUCTIONS))
def test_one_construction_can_be_asked_for(name: str, studio: Brief) -> None:
    wide = replace(studio, most_words=3, most_syllables=None, least_letters=3, most_letters=20)
    wide = replace(wide, markets=("DE",)) if name == "local" else wide
    found = brainstorm(wide, limit=5, constructions=[name])
    assert len(found) == 5
    assert {candidate.construction for candidate in found} == {name}


@pytest.mark.parametrize("constructions", [("foreign",), ("foreign", "figure"), ("saying", "figure")])
def test_no_name_is_lost_where_the_next_wave_is_drawn_meanwhile(
    constructions: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    brief = Brief(concepts=(Concept("wind"), Concept("string"), Concept("sky")), goods="kites", seed=1)
    alone = brainstorm(brief, limit=5_000, constructions=constructions)
    here = Ahead.__call__

    def after_all_else(self: Ahead[Any, Any], item: object, meanwhile: Iterator[object]) -> object:
        for _ in meanwhile:
            pass
        return here(self, item)

    monkeypatch.setattr(Ahead, "__call__", after_all_else)
    assert brainstorm(brief, limit=5_000, constructions=constructions) == alone


def test_a_construction_may_be_named_in_any_case(studio: Brief) -> None:
    assert brainstorm(studio, limit=3, constructions=["Found"])[0].construction == "found"


def test_starts_and_drop(studio: Brief) -> None:
    assert all(c.text.startswith("Cl") for c in brainstorm(studio, limit=10, starts="Cl"))
    first = brainstorm(studio, limit=10)
    again = brainstorm(studio, limit=60, drop=[first[0].text, "clay"])
    assert first[0].text not in {candidate.text for candidate in again}
    assert not any("clay" in candidate.sources for candidate in again)


def test_names_on_the_shortlist_already_are_not_offered_again(studio: Brief) -> None:
    first = brainstorm(studio, limit=3)
    again = brainstorm(replace(studio, shortlist=tuple(candidate.text for candidate in first)), limit=40)
    assert not {candidate.text for candidate in first} & {candidate.text for candidate in again}


def test_a_rich_brief_does_not_explode() -> None:
    words = "herb clay sip sill spring moss stone garden kettle thyme brook loaf wick ember oak barn".split()
    found = brainstorm(Brief(concepts=tuple(map(Concept, words))), limit=40)
    assert len(found) == 40
    about = {origin.rpartition("(for ")[2].rstrip(")") for candidate in found for origin in candidate.origins}
    assert len(about & set(words)) >= 8


def test_like_brings_names_nearer_without_saying_them_again(studio: Brief) -> None:
    def nearness(found: list[Candidate]) -> float:
        return sum(max(association(word, "brook") or 0 for word in one.sources) for one in found)

    alike = brainstorm(studio, limit=20, like="Brookwell")
    assert nearness(alike) > nearness(brainstorm(studio, limit=20))
    assert sum(one.text.startswith("Brook") for one in alike) <= 2


def test_taste_moves_the_words(studio: Brief) -> None:
    def share(found: list[Candidate], word: str) -> int:
        return sum(word in candidate.sources for candidate in found)

    plain = brainstorm(studio, limit=40, constructions=("pair", "affix"))
    fond = brainstorm(studio, limit=40, constructions=("pair", "affix"), taste=Taste(words={"sip": 2.0, "clay": 0.2}))
    assert share(fond, "sip") - share(fond, "clay") > share(plain, "sip") - share(plain, "clay")


def test_names_all_but_the_same_as_a_mark_are_left_out(studio: Brief, tmp_path: Path) -> None:
    first = brainstorm(studio, limit=3)
    marks = tmp_path / "marks.txt"
    marks.write_text("\n".join(candidate.text.upper() for candidate in first) + "\n", "utf-8")
    again = brainstorm(studio, limit=60, register=read_register(marks))
    assert not {candidate.text for candidate in first} & {candidate.text for candidate in again}


@pytest.mark.parametrize(
    "call",
    [
        lambda: brainstorm(Brief()),
        lambda: brainstorm(Brief(concepts=(Concept("東京"), Concept("'")))),
        lambda: brainstorm(Brief(concepts=(Concept("clay"),)), constructions=["pun"]),
        lambda: brainstorm(Brief(concepts=(Concept("clay"),), ranking_weights={"glamour": 1.0})),
    ],
)
def test_what_cannot_be_done_is_refused_with_a_remedy(call: Callable[[], object]) -> None:
    with pytest.raises(InputError, match=r"concept|construction|Known parts"):
        call()


@pytest.mark.parametrize("word", ["é", "a", "well-being", "ice cream", "qqqq", "Øl", "St. John's", "  spaced  "])
def test_any_latin_concept_is_taken(word: str) -> None:
    found = brainstorm(Brief(concepts=(Concept(word),)), limit=5)
    assert len(found) == 5
    assert all(parse(candidate.text).letters.isascii() for candidate in found)


def test_narrow_limits_end_instead_of_looping() -> None:
    narrow = Brief(concepts=(Concept("clay"),), least_letters=4, most_letters=4)
    found = brainstorm(narrow, limit=20, constructions=["affix"], starts="z")
    assert found == []


def test_json_holds_every_part(hundred: list[Candidate]) -> None:
    facts = hundred[0].to_json()
    assert facts["name"] == hundred[0].text
    assert set(facts) == {"name", "construction", "how", "sources", "origins", "score", "parts", "flags"}


def test_a_coined_name_that_is_heard_as_a_word_is_remarked_on(studio: Brief) -> None:

    flags = Flags(replace(studio, languages=()), None)
    springe = Proposal("Springe", ("springe",), "blend", "", ("spring", "hinge"), "spri",
                       ("S", "P", "R", "IH1", "NG"))  # fmt: skip
    assert flags.of(springe) == ("heard as spring",)
    assert flags.of(springe._replace(construction="changed")) == ()


def test_what_is_left_out_is_told_with_the_reason(studio: Brief, tmp_path: Path) -> None:
    first = brainstorm(studio, limit=3)
    marks = tmp_path / "marks.txt"
    marks.write_text(first[0].text.upper() + "\n", "utf-8")
    found = candidates(studio, register=read_register(marks))
    shown = [candidate.text for candidate in islice(found, 20)]
    (mark,) = [one for one in found.left_out if one.kind == "mark"]
    assert mark.candidate.text == first[0].text not in shown
    assert first[0].text.upper() in mark.because
    for one in found.left_out:
        if one.kind == "reading":
            assert one.language in ("en", *studio.languages)
            assert readings(one.candidate.text, languages=(one.language,), dictionaries=())


@pytest.mark.screened
@pytest.mark.parametrize("markets", [(), ("GB",), ("US", "DE")])
def test_no_name_is_offered_that_a_screening_would_refuse_for_what_it_is(markets: tuple[str, ...]) -> None:
    brief = Brief(goods="cooking spoons of cherry wood", concepts=tuple(map(Concept, ("stir", "grain", "hearth"))),
                  markets=markets)  # fmt: skip

    def refused(name: str) -> bool:
        told = distinctiveness(name, brief.goods, markets=markets)
        if isinstance(told, NotChecked):  # a word of the buyers' language that no dictionary here has
            return False
        grave = told.category in ("generic", "descriptive") and told.score < PLAINLY_DESCRIPTIVE
        return grave or any(sign.serious for sign in told.protected)

    found = candidates(brief)
    shown = [candidate.text for candidate in islice(found, 40)]
    left = {one.candidate.text: one.because for one in found.left_out if one.kind == "refused"}
    assert not any(map(refused, shown))
    assert left
    assert all(map(refused, left))
    assert 'descriptive: "spurtle": said of "wooden spoon" on labels (from memory)' in left.values()


@pytest.mark.parametrize(
    ("name", "because"), [("Pussyfoot", "en: pussy (sexual, coarse)"), ("Windfall", ""), ("Frog", "")]
)
def test_a_coarse_english_word_keeps_a_name_out_as_a_screening_tells_it(name: str, because: str) -> None:
    told = Flags(Brief(goods="felt slippers", languages=("de",)), None).of(
        Proposal(name, (name.casefold(),), "found", "", (name.casefold(),), "")
    )
    assert (told.because if isinstance(told, Refusal) else "") == because


def test_another_ware_of_the_same_trade_is_left_out_with_the_reason() -> None:
    found = candidates(Brief(goods="bags for bicycles", concepts=(Concept("carry"), Concept("ride"))))
    shown = {candidate.text for candidate in islice(found, 60)}
    left = {one.candidate.text for one in found.left_out if one.kind == "goods"}
    assert left
    assert not left & shown
    assert "Pannier" not in shown


def first_term(found: Candidates, one: Candidate) -> str:
    """The term of the brief that the first source of a candidate stands for."""
    return found._liking.term_of(one.sources[0])


def test_what_is_liked_of_one_term_brings_more_of_that_term_and_leaves_the_others(studio: Brief) -> None:
    """A word is shown once, so what is learned of it must reach other words that stand for the same."""
    plain = candidates(studio)
    first = list(islice(plain, 40))
    term = Counter(first_term(plain, one) for one in first).most_common()[1][0]
    liked = {one.sources[0]: 1.25 for one in first if first_term(plain, one) == term}
    shown = Taste(worn=Counter(word for one in first for word in one.sources), seen=tuple(one.text for one in first))
    other = candidates(studio, taste=shown)
    without = Counter(first_term(other, one) for one in islice(other, 40))
    found = candidates(studio, taste=replace(shown, words=liked))
    about = Counter(first_term(found, one) for one in islice(found, 40))
    assert about[term] > without[term]
    assert len(about) > 1


def test_names_unlike_a_name_come_where_less_of_it_is_wanted(studio: Brief) -> None:
    def nearness(found: list[Candidate]) -> float:
        return sum(max(association(word, "thyme") or 0 for word in one.sources) for one in found)

    less = brainstorm(studio, limit=40, taste=Taste(unlike=("Thymewood",)))
    assert nearness(less) < nearness(brainstorm(studio, limit=40))


def test_a_pair_of_worn_words_comes_later(studio: Brief) -> None:
    def place(taste: Taste) -> int:
        pairs = brainstorm(studio, limit=120, constructions=["pair"], taste=taste)
        return next((at for at, one in enumerate(pairs) if word in one.sources), len(pairs))

    word = brainstorm(studio, limit=1, constructions=["pair"])[0].sources[0]
    assert place(Taste()) == 0
    assert place(Taste(worn={word: 6})) > 0


def test_concepts_that_no_name_is_about_are_told(studio: Brief) -> None:
    found = candidates(studio)
    page = list(islice(found, 20))
    assert found.missed([]) == ["herb", "clay", "sip", "spring"]
    assert not {"herb", "clay"} & set(found.missed(page))
    told = {term for one in page for term in found.about(one)}
    assert all(concept not in told for concept in found.missed(page))


def test_no_page_is_about_a_single_concept() -> None:
    brief = Brief(goods="oat biscuits", concepts=tuple(map(Concept, ("sea", "crisp", "wild", "share"))))
    found = candidates(brief)
    about = Counter(term for one in islice(found, 20) for term in found.about(one))
    assert about["sea"] <= 12
    assert not found.missed(list(islice(candidates(brief), 20)))


def test_a_saying_with_the_goods_own_word_stands_back() -> None:
    """TMEP 1213.05(c): a double meaning may be owned; the plain word for the goods in it is not to be had."""

    def indirect(goods: str) -> float:
        brief = Brief(goods=goods, concepts=(Concept("breakfast"), Concept("bread")))
        found = candidates(brief, constructions=("saying",))
        met = [*islice(found, 200), *(one.candidate for one in found.left_out)]
        return next(one.parts["indirect"] for one in met if one.text == "Bread and Butter")

    assert indirect("butter dishes") == 0
    assert indirect("egg cups") > 0


def test_a_name_heard_as_a_mark_is_left_out_as_one_spelled_like_it(tmp_path: Path) -> None:

    marks = tmp_path / "marks.txt"
    marks.write_text("PIROUET\nSOLE MAIT\nTOWN LYFE\nOTHER THING\n", "utf-8")

    def named(text: str) -> Proposal:
        return Proposal(text, tuple(text.casefold().split()), "found", "", (text.casefold(),), text)

    flags = Flags(Brief(goods="wooden toys"), read_register(marks))
    for name, mark in (("Pirouette", "PIROUET"), ("Soul Mate", "SOLE MAIT"), ("Town Life", "TOWN LYFE")):
        told = flags.of(named(name))
        assert isinstance(told, Refusal)
        assert mark in told.because
    assert not isinstance(flags.of(named("Windfall")), Refusal)
