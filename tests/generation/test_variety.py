"""What a page does not hold twice: the same idea told by two words."""

from __future__ import annotations

from itertools import combinations

from namescreen.generation.candidate import Candidate, Proposal
from namescreen.generation.variety import Judged, choose, composition, judged


def found(word: str, meaning: str, rank: float) -> Judged:
    proposal = Proposal(word.capitalize(), (word,), "found", "", (word,), word, meaning=meaning)
    candidate = Candidate(proposal.text, "found", proposal.how, proposal.sources, rank, {})
    return judged(candidate, proposal, rank, frozenset({"shore"}), 0.0)


def page(*names: Judged) -> list[str]:
    chosen, _ = choose(names, lambda entry: entry.candidate)
    return [one.text for one in chosen]


def test_a_name_whose_meaning_says_the_same_comes_after_one_that_says_something_else() -> None:
    first = found("sanderling", "small bird that runs before the waves", 0.80)
    alike = found("dotterel", "small bird that runs along the shore", 0.78)
    other = found("ballast", "weight that steadies a ship", 0.72)
    assert page(first, alike, other) == ["Sanderling", "Ballast", "Dotterel"]
    assert page(alike, other) == ["Dotterel", "Ballast"]  # alone it keeps its place


def test_the_order_of_scores_is_kept_where_meanings_share_nothing() -> None:
    names = [found(word, meaning, 0.8 - 0.01 * place) for place, (word, meaning) in enumerate([
        ("halyard", "rope that hoists a sail"), ("gecko", "lizard that clings to walls"), ("aplomb", "calm confidence"),
    ])]  # fmt: skip
    assert page(*names) == ["Halyard", "Gecko", "Aplomb"]
    for one, other in combinations(names, 2):
        assert page(other, one)[0] == one.candidate.text


def test_what_was_asked_for_does_not_fill_the_page() -> None:
    asked = [judged(one.candidate, one.proposal, one.rank + 0.5, one.about, 0.0, 0.5, 1.0)
             for one in (found(f"w{place}x", f"meaning{place}", 0.6) for place in range(20))]  # fmt: skip
    others = [found(f"v{place}y", f"sense{place}", 0.62) for place in range(20)]
    first = page(*asked, *others)[:12]
    of_asked = sum(text.startswith("W") for text in first)
    assert first[0].startswith("W")
    assert 4 <= of_asked <= 8


def test_a_steered_page_holds_no_word_twice() -> None:
    names = []
    for place, other in enumerate(("tern", "wrack", "shingle")):
        proposal = Proposal(f"Ebb{other}", (f"ebb{other}",), "pair", "", ("ebb", other), f"{place}")
        candidate = Candidate(proposal.text, "pair", "", proposal.sources, 0.7, {})
        names.append(judged(candidate, proposal, 0.7, frozenset(), 0.0))
    held = {further: len(choose(names, lambda entry: entry.candidate, composition(local=False, further=further))[0])
            for further in (False, True)}  # fmt: skip
    assert held == {False: 2, True: 1}
