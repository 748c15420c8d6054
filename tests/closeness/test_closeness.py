"""Properties of closeness, over names of every kind."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from namescreen.closeness import (
    closeness,
    compare,
    explanation,
    features,
    word_similarity,
)
from namescreen.closeness.letters import spelled_alike
from namescreen.closeness.model import shipped_model
from namescreen.closeness.name_similarity import parts
from namescreen.closeness.parts import Parts, score_of_parts
from namescreen.closeness.vocabulary import english_readings
from namescreen.closeness.word_meaning import are_opposite
from namescreen.policy import Level, level_of

WORDS = ("terra", "thirst", "herb", "garden", "sill", "wick", "pot", "basil", "sun", "blue", "zarvo", "mellin", "quik",
         "the", "co", "4", "x", "ceramics", "moss", "fern", "drip", "well")  # fmt: skip
names = st.lists(st.sampled_from(WORDS), min_size=1, max_size=3).map(" ".join)
invented = st.text("abcdefghiklmnoprstuvz", min_size=3, max_size=9)
anything = st.one_of(names, invented, st.text(max_size=20))

ASPECTS = ("appearance", "sound", "meaning", "overall")


def numbers(one: str, other: str) -> list[float]:
    found = compare(one, other)
    return [getattr(found, aspect) for aspect in ASPECTS]


@settings(max_examples=150, deadline=None)
@given(anything, anything)
def test_symmetric_and_in_range(one: str, other: str) -> None:
    assert numbers(one, other) == numbers(other, one)
    assert all(0.0 <= number <= 1.0 for number in numbers(one, other))


@settings(max_examples=100, deadline=None)
@given(st.one_of(names, invented))
def test_identical_is_one_whatever_the_case_spacing_and_accents(name: str) -> None:
    assert numbers(name, name) == [1.0] * 4
    for same in (name.upper(), name.replace(" ", "-"), name.replace(" ", ""), name.replace("e", "é"), f"{name}!"):
        assert numbers(name, same) == [1.0] * 4


@pytest.mark.parametrize("added", ["Yuzuqoi", "Kettle", "Quux"])
@settings(max_examples=80, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.filter_too_much])
@given(one=names, other=names)
def test_a_word_that_shares_less_than_what_stands_there_raises_nothing_that_rests_on_words(
    added: str, one: str, other: str
) -> None:
    """Exactly: a word set behind a name, unlike every word of the other name and in look, sound and meaning no more
    like any of them than the words already there, none of them foreign, raises no part of closeness that rests on
    words. Only the names run together may be more alike by chance."""
    ours, theirs, longer = features(one), features(other), features(f"{other} {added}")
    assume(all(len(each.segmentations) == 1 for each in (ours, theirs, longer)))
    assume(not any(english_readings(each.name.words) for each in (ours, theirs, longer)))
    for place in range(4):
        grid = [[word_similarity(w, v)[place] for v in theirs.segmentations[0]] for w in ours.segmentations[0]]
        new = max(word_similarity(w, longer.segmentations[0][-1])[place] for w in ours.segmentations[0])
        assume(new <= min(*map(max, grid), *map(max, zip(*grid, strict=True)), 1.0 if place < 3 else 0.0))
    before, after = parts(ours, theirs), parts(ours, longer)
    for name in ("looks", "sounds", "meanings", "elements"):
        assert all(new <= old + 1e-12 for new, old in zip(getattr(after, name), getattr(before, name), strict=True))
    assert after.shared <= before.shared + 1e-12
    assert after.kept <= before.kept + 1e-12


@settings(max_examples=200, deadline=None)
@given(
    st.lists(st.floats(0, 1), min_size=14, max_size=14), st.integers(0, 13), st.floats(0, 1), st.booleans(),
    st.booleans(),
)  # fmt: skip
def test_more_of_any_part_is_never_less_close(
    values: list[float], place: int, raised: float, shares: bool, coined: bool
) -> None:
    def scores(numbers: list[float]) -> list[float]:
        look, sound, spelled, ordered, shared, kept, *rest = numbers
        looks, sounds, meanings, elements = ((min(pair), max(pair)) for pair in zip(rest[::2], rest[1::2], strict=True))
        found = score_of_parts(
            Parts(
                look, sound, spelled, ordered, looks, sounds, meanings, elements, shared, kept,
                heard=True, meant=True, breaks_phrase=False, divided_otherwise=False, shares_word=shares,
                one_coined_word=coined,
            ),
            shipped_model(),
        )
        return [float(value or 0.0) for value in found]

    more = [*values[:place], max(values[place], raised), *values[place + 1 :]]
    for low, high in zip(scores(values), scores(more), strict=True):
        assert 0.0 <= low <= high + 1e-12 <= 1.0 + 1e-9


def test_no_weight_is_negative_and_every_mean_is_a_mean() -> None:
    model = shipped_model()
    for mean in (model.look, model.sound, model.appearance, model.sound_of_names, model.meaning, model.overall):
        assert min(mean.weights) >= 0.0
        assert sum(mean.weights) == pytest.approx(1.0, abs=1e-3)
        assert mean.power > 0.0


@pytest.mark.parametrize(
    ("one", "other", "halves"),
    [
        ("cat", "kat", 1), ("cat", "bat", 2), ("hello", "helo", 0), ("white", "wite", 1), ("nelson", "neilsen", 2),
        ("fizz", "fiz", 0), ("lane", "rain", 4), ("kat", "k", 4), ("ab", "ba", 4),
    ],
)  # fmt: skip
def test_letters_said_alike_cost_half(one: str, other: str, halves: int) -> None:
    """Worked by hand from the definition of EDITEX (J. Zobel and P. Dart, 1996; from memory)."""
    alike = 1 - halves / (2 * max(len(one), len(other)))
    assert spelled_alike(one, other) == spelled_alike(other, one) == pytest.approx(alike)


def test_batch_equals_single() -> None:
    prepared = [features(word) for word in WORDS]
    for one in prepared:
        for other in prepared:
            assert closeness(one, other) == compare(one.name.text, other.name.text)


@pytest.mark.parametrize(
    ("words", "said"),
    [("le chat gris", "cat grey"), ("el lobo", "wolf"), ("bague d or", "ring gold"), ("die cast", "")],
)
def test_beside_words_of_a_language_english_ones_are_read_in_it(words: str, said: str) -> None:
    readings = [
        " ".join(word for word in way if word not in words.split()) for way in english_readings(tuple(words.split()))
    ]
    assert said in readings if said else not readings


@pytest.mark.parametrize(
    ("coined", "known"), [("Cmoor", "See Moor"), ("Nite Lite", "Night Light"), ("Bhive", "Beehive")]
)
def test_a_name_heard_as_known_words_has_their_meaning(coined: str, known: str) -> None:
    """TMEP 1209.03(j): a misspelling that is heard as a word has its meaning."""
    found = compare(coined, known)
    assert found.meaning > 0.9
    assert f'"{coined}" may be heard as "{known}"' in " ".join(found.reasons)


def test_known_words_that_sound_alike_keep_their_own_meanings() -> None:
    assert compare("Sail", "Sale").meaning < 0.4


def test_articles_and_prepositions_do_not_count_in_a_translation() -> None:
    alone, with_them = compare("Night Garden", "Jardin Nuit"), compare("The Night Garden", "Le Jardin de la Nuit")
    assert with_them.meaning == pytest.approx(alone.meaning, abs=0.02)


def test_a_part_of_a_word_in_both_is_not_told_as_a_shared_word() -> None:
    assert compare("Fernbasket", "Mossbasket").reasons[0] == 'Both hold "basket" inside a word.'
    assert compare("Glimbasket", "Basket Tree").reasons[0] == 'Shared: "basket".'


def test_unknown_words_are_unknown_in_meaning_not_dissimilar() -> None:
    unknown = compare("Zarvolin", "Zarvelin")
    assert [missing.check for missing in unknown.not_checked] == ["meaning"]
    known = compare("lion", "tiger")
    assert known.not_checked == ()
    assert known.meaning > 0.4
    # an unknown meaning leaves overall to the other aspects: it is not pulled down as a known difference is
    assert compare("Zarvolin", "Zarvelin").overall > compare("pocket", "rocket").overall


@pytest.mark.parametrize(("one", "other"), [("Zarvolin", "Zarvelin"), ("Knockto", "Knocto"), ("Velmora", "Velmira")])
def test_two_coined_names_have_no_meaning_to_compare(one: str, other: str) -> None:
    found = compare(one, other)
    assert [missing.check for missing in found.not_checked] == ["meaning"]
    assert not any(reason.startswith("Meaning: close") for reason in found.reasons)


@pytest.mark.parametrize(("one", "other"), [("Hot Clay", "Cold Clay"), ("dawn", "dusk"), ("big", "little")])
def test_opposites_share_an_idea_and_do_not_say_the_same(one: str, other: str) -> None:
    told = " ".join(compare(one, other).reasons)
    assert "are opposites" in told
    assert "say something alike" not in told


@pytest.mark.parametrize(("one", "other"), [("Knight Light", "Nite Lite"), ("Kwikleef", "Quick Leaf")])
def test_names_heard_as_one_are_serious_for_the_same_goods(one: str, other: str) -> None:
    """Similarity in sound can be enough (TMEP 1207.01(b)(iv))."""
    found = compare(one, other)
    assert found.sound == 1.0
    assert level_of(found.overall) is Level.SERIOUS


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("drowsy", "sleepy"),  # WordNet 3.0: both similar to asleep
        ("swift", "rapid"),  # both similar to fast
        ("daybreak", "sunrise"),  # synonyms, though sunset is the opposite of one
    ],
)
def test_words_that_say_nearly_the_same_are_close_and_no_opposites(one: str, other: str) -> None:
    found = compare(f"{one} heron", f"{other} heron")
    assert found.meaning > 0.75
    assert "opposites" not in " ".join(found.reasons)


def test_a_word_and_a_compound_that_holds_it_are_no_opposites() -> None:
    assert not are_opposite("ebb", "ebbtide")
    assert are_opposite("ebbing", "flooding") == are_opposite("flooding", "ebbing")
    assert are_opposite("man", "woman")


def test_what_a_foreign_name_says_in_english_is_told_and_which_of_its_words_are_weak() -> None:
    goods = "caramels and fudge"
    told = " ".join(compare("Ebb & Fudge", "Karamellkuste", name_goods=goods, mark_goods=goods).reasons)
    assert 'In translation "karamellkuste" may be read as "' in told
    assert '"fudge" says little of the maker' in told


@pytest.mark.parametrize(
    ("one", "other"),
    [("Jardin Bleu", "Blue Garden"), ("Le Chat", "The Cat"), ("Stern", "Star"), ("Casa Verde", "Green House Lamps"),
     ("Bonne Nuit", "Herb Night"), ("Herbgarten", "Garden Herb"), ("Zonnewijzer", "Sundial"), ("Loamlet", "Timelow")],
)  # fmt: skip
def test_an_english_reading_is_looked_for_wherever_there_may_be_one(
    one: str, other: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = compare(one, other).reasons
    monkeypatch.setattr(explanation, "_may_be_translated", lambda scores: scores.meaning is not None)
    assert found == compare(one, other).reasons


def test_a_word_that_both_names_have_is_not_its_own_opposite() -> None:
    assert '"show" and "show"' not in " ".join(compare("Hide and Show", "Show Window").reasons)
    assert not are_opposite("show", "show")


@pytest.mark.parametrize(("one", "other"), [("Velmora Pots", "Velmora"), ("Zarvolin by Quillan", "Zarvolin")])
def test_a_word_that_both_names_have_means_the_same_in_both_whatever_it_means(one: str, other: str) -> None:
    found = compare(one, other)
    assert found.not_checked == ()
    assert found.meaning > 0.5


@pytest.mark.parametrize(
    ("one", "other"), [("health", "healthy"), ("beauty", "beautiful"), ("sun", "sunny"), ("nature", "natural")]
)
def test_a_word_says_much_the_same_as_one_derived_from_it(one: str, other: str) -> None:
    """Derived by a suffix (grammars of English, from memory); WordNet joins beauty and beautiful to one opposite."""
    found = compare(f"{one} jug", f"{other} jug")
    assert found.meaning > 0.8
    assert "opposites" not in " ".join(found.reasons)


@pytest.mark.parametrize(("one", "other"), [("Maria", "Mary"), ("Giovanni", "John"), ("Pietro's", "Pierre")])
def test_a_given_name_is_one_name_in_every_language(one: str, other: str) -> None:
    """From memory of name books."""
    assert compare(one, other).meaning > 0.9
    assert compare(one, "Matilda").meaning < 0.5


@pytest.mark.parametrize(("phrase", "word"), [("Paper Tiger", "Tiger"), ("Red Herring Row", "Herring")])
def test_a_word_in_a_phrase_with_a_meaning_of_its_own_says_less_of_the_same(phrase: str, word: str) -> None:
    """The phrases are WordNet's; that a mark in one is not taken over is common practice, no source."""
    free, bound = compare(f"Pewter {word}", word), compare(phrase, word)
    assert bound.meaning < free.meaning
    assert "a meaning of its own" in " ".join(bound.reasons)
    assert "a meaning of its own" not in " ".join(free.reasons)


def test_borrowed_words_of_other_languages_say_what_they_mean() -> None:
    """Spanish and Italian luna, Latin aqua, Latin and Italian terra: from memory."""
    for word, english in (("luna", "moon"), ("aqua", "water"), ("terra", "earth")):
        assert compare(word, english).meaning > 0.8


@pytest.mark.parametrize("added", ["{} Pots", "Thurlow {}", "The {}", "{} by Thurlow"])
def test_a_distinctive_mark_taken_over_whole_is_serious(added: str) -> None:
    """TMEP 1207.01(b)(iii): a house mark or a word for the goods added (from memory)."""
    for mark in ("Zarvolin", "Thistledown", "Quillfern"):
        found = compare(added.format(mark), mark, name_goods="plant pots", mark_goods="plant pots")
        assert level_of(found.overall) is Level.SERIOUS


def test_names_without_letters_have_nothing_in_common() -> None:
    empty = compare("!!!", "Terra")
    assert (empty.overall, empty.appearance, empty.sound) == (0.0, 0.0, 0.0)
    assert "no letters" in empty.reasons[0]
