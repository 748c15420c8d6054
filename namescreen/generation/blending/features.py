"""What can be said of a candidate blend, as numbers: each has a meaning, and a weight (blend_weights.tsv).

Sources of the ideas: Gries, "Shouldn't it be breakfunch?", Linguistics 42 (2004), on likeness, the amount
kept and recognition; Plag, Word-Formation in English (2003), on syllable structure and the length of the
second word; Deri and Knight, NAACL 2015, and Gangal and others, EMNLP 2017, on letters and sounds (all from
memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from ..word_sounds import is_onset, is_vowel
from .cuts import Cut, shared
from .letter_statistics import doubt_of_beginning, doubt_of_ending, is_word, surprise, turn_of_beginning, turn_of_ending
from .source_word import Source

__all__ = ["FEATURES", "Similarity", "features"]

FEATURES = {
    # the amount kept
    "first_whole": "the whole first word is kept",
    "second_whole": "the whole second word is kept",
    "plain_compound": "both are whole and share nothing",
    "first_lost_letters": "how many",
    "second_lost_letters": "letters of the second word that are lost",
    "one_letter_first": "one letter of the first word is left",
    "one_letter_second": "one letter of the second word is left",
    "imbalance": "letters kept of the one more than of the other, as a share of the blend",
    "overlap": "letters that belong to both, up to three",
    # recognition
    "first_doubt": "bits of doubt which word the kept beginning stands for",
    "second_doubt": "bits of doubt which word the kept ending stands for",
    "first_part_known": "what is kept of the first word is a word by itself",
    "second_part_known": "what is kept of the second word is a word by itself",
    "first_turn": "bits the next letter of the first word would have told: high where a part of it ends",
    "second_turn": "bits the letter before would have told in the second word",
    # likeness
    "like_first": "the blend sounds like the first word",
    "like_second": "the blend sounds like the second word",
    "replaced_alike": "what is kept of the first sounds like what it replaces in the second",
    "tail_alike": "what is lost of the first sounds like what replaces it",
    # syllables and stress
    "syllables_second": "as many syllables as the second word",
    "syllables_under": "syllables fewer than the longer word",
    "stress_first_kept": "the stressed vowel of the first word is kept",
    "stress_second_kept": "the stressed vowel of the second word is kept",
    "no_vowel_first": "no vowel of the first word is heard",
    "no_vowel_second": "no vowel of the second word is heard",
    "bad_onset": "it begins with consonants that begin no English syllable, and the first word does not",
    # where the cuts fall, in sounds
    "first_syllable": "the first word is cut between syllables",
    "second_syllable": "the second word is cut between syllables",
    "first_cut_after_vowel": "the first word is cut after a vowel",
    "first_cut_before_vowel": "the first word is cut between onset and rime",
    "second_cut_before_vowel": "the second word is cut between onset and rime",
    "second_cut_consonants": "the second word is cut between consonants",
    "seam_after_vowel": "a vowel, then a consonant, meet at the seam",
    "seam_before_vowel": "a consonant, then a vowel, meet at the seam",
    "seam_consonants": "two consonants meet at the seam",
    # the whole
    "surprise": "bits of surprise a letter, by English trigrams",
    "worst": "bits of its most surprising letter",
    "doubled": "the same letter on both sides of a seam without overlap",
    "seam_surprise": "the most surprising letter at a seam without overlap",
    "length": "letters",
    "over_longer": "letters more than the longer word has",
    # other joinings
    "turned": "the second word comes first",
    "beginnings": "the beginnings of both words",
    "beginnings_first_letters": "letters more or fewer than three of the first",
    "beginnings_second_letters": "letters more or fewer than three of the second",
    "beginnings_first_clip": "the first is cut where English clips words: after the consonant after a vowel",
    "beginnings_second_clip": "and so is the second",
    "beginnings_first_cut": "the first is cut between syllables",
    "linked": "with a linking vowel",
    "link_first_whole": "the whole first word, linked",
    "link_second_whole": "linked to the whole second word",
    "inside": "one word inside the other",
    "inside_alike": "the stretch replaced is like the word put in",
    "endings": "the ending of the first word",
    "endings_second_whole": "before the whole second word",
}
"""Every feature and what it says."""


class Similarity:
    """The similarity in sound of stretches of two sources; both tables are computed once for a pair.

    Edit distance over sounds, where changing a vowel for a vowel, or a consonant for a consonant, costs 0.7,
    and one for the other 1.3 (set by hand: a vowel never sounds like a consonant).
    """

    def __init__(self, first: Source, second: Source) -> None:
        self._a, self._b = first.bare, second.bare

    @cached_property
    def _heads(self) -> list[list[float]]:
        return _distances(self._a, self._b)

    @cached_property
    def _tails(self) -> list[list[float]]:
        return _distances(self._a[::-1], self._b[::-1])

    def heads(self, p: int, q: int) -> float:
        """The distance of the first p sounds of the one and the first q of the other."""
        return self._heads[p][q]

    def tails(self, p: int, q: int) -> float:
        """The distance of what follows the first p sounds and what follows the first q."""
        return self._tails[len(self._a) - p][len(self._b) - q]


def _distances(one: Sequence[str], other: Sequence[str]) -> list[list[float]]:
    table = [[float(n) for n in range(len(other) + 1)]]
    kinds = [is_vowel(theirs) for theirs in other]
    for place, mine in enumerate(one, 1):
        above, row, vowel = table[-1], [float(place)], is_vowel(mine)
        for at, theirs in enumerate(other):
            change = 0.0 if mine == theirs else 0.7 if vowel == kinds[at] else 1.3
            row.append(min(above[at] + change, above[at + 1] + 1, row[at] + 1))
        table.append(row)
    return table


def features(cut: Cut, similarity: Similarity) -> dict[str, float]:
    """The features of `cut` that are not zero; `similarity` is that of `cut.first` and `cut.second`."""
    bits = surprise(cut.text)
    found = {"surprise": sum(bits) / len(bits), "worst": max(bits), "length": float(len(cut.text))}
    if cut.kind in ("joined", "turned"):
        _amounts(cut, bits, found)
        _sounds(cut, similarity, found)
        if cut.kind == "turned":
            found["turned"] = 1.0
    else:
        found[cut.kind] = 1.0
        _OTHERS[cut.kind](cut, found)
    return found


def _amounts(cut: Cut, bits: list[float], found: dict[str, float]) -> None:
    text, a, b = cut.text, cut.first.letters, cut.second.letters
    lost_a, lost_b, overlap = len(a) - cut.front, len(b) - cut.back, cut.overlap
    if not lost_a:
        found["first_whole"] = 1.0
    if not lost_b:
        found["second_whole"] = 1.0
        if not lost_a and not overlap:
            found["plain_compound"] = 1.0
    found["first_lost_letters"] = float(lost_a)
    found["second_lost_letters"] = float(lost_b)
    if cut.front == 1:
        found["one_letter_first"] = 1.0
    if cut.back == 1:
        found["one_letter_second"] = 1.0
    if overlap:
        found["overlap"] = float(min(3, overlap))
    else:
        found["seam_surprise"] = max(bits[cut.front : cut.front + 2])
        if text[cut.front - 1] == text[cut.front]:
            found["doubled"] = 1.0
    found["first_doubt"] = doubt_of_beginning(text[: cut.front], a)
    found["second_doubt"] = doubt_of_ending(text[len(text) - cut.back :], b)
    if lost_a and is_word(text[: cut.front]):
        found["first_part_known"] = 1.0
    if lost_b and is_word(text[len(text) - cut.back :]):
        found["second_part_known"] = 1.0
    found["first_turn"] = turn_of_beginning(text[: cut.front], a)
    found["second_turn"] = turn_of_ending(text[len(text) - cut.back :], b)
    found["imbalance"] = abs(cut.front - cut.back) / len(text)
    found["over_longer"] = float(max(0, len(text) - max(len(a), len(b))))


def _sounds(cut: Cut, similarity: Similarity, found: dict[str, float]) -> None:
    a, b = cut.first, cut.second
    p, q, sounds, lead, trail = _best_seam(cut)
    heads, tails = similarity.heads(p, q), similarity.tails(p, q)
    many_a, many_b, many = len(a.bare), len(b.bare), len(sounds)
    # the kept part of a word is unchanged, so only the replaced stretch can differ
    found["like_second"] = 1 - heads / max(many, many_b, 1)
    found["like_first"] = 1 - tails / max(many, many_a, 1)
    found["replaced_alike"] = 1 - heads / max(p, q, 1)
    found["tail_alike"] = 1 - tails / max(many_a - p, many_b - q, 1)
    syllables = sum(map(is_vowel, sounds))
    if syllables == len(b.nuclei):
        found["syllables_second"] = 1.0
    found["syllables_under"] = float(max(0, len(a.nuclei) - syllables, len(b.nuclei) - syllables))
    if 0 <= a.stressed < lead:
        found["stress_first_kept"] = 1.0
    if b.stressed >= many_b - trail:
        found["stress_second_kept"] = 1.0
    if not is_onset(sounds) and is_onset(a.bare):
        found["bad_onset"] = 1.0
    if not any(map(is_vowel, sounds[:lead])):
        found["no_vowel_first"] = 1.0
    if not any(map(is_vowel, sounds[many - trail :])):
        found["no_vowel_second"] = 1.0
    if p in a.joints:
        found["first_syllable"] = 1.0
    if q in b.joints:
        found["second_syllable"] = 1.0
    for side, word, at in (("first_cut", a.bare, p), ("second_cut", b.bare, q), ("seam", sounds, p)):
        place = _cut_place(word, at)
        if f"{side}_{place}" in FEATURES:
            found[f"{side}_{place}"] = 1.0


def _best_seam(cut: Cut) -> tuple[int, int, tuple[str, ...], int, int]:
    """The seam within the letters both share that keeps the most sounds of both.

    Sounds before it in the first word and in the second; the blend's sounds; how many of them agree with the
    first word from the front, and with the second from the back.
    """
    a, b = cut.first, cut.second
    best: tuple[int, int, tuple[str, ...], int, int] | None = None
    for earlier in range(cut.overlap + 1):
        i = cut.front - earlier
        p, q = a.before[i], b.before[len(b.letters) - (len(cut.text) - i)]
        sounds = a.bare[:p] + b.bare[q:]
        lead, trail = shared(sounds, a.bare), shared(sounds[::-1], b.bare[::-1])
        if best is None or lead + trail - len(sounds) > best[3] + best[4] - len(best[2]):
            best = p, q, sounds, lead, trail
    assert best is not None
    return best


def _cut_place(sounds: Sequence[str], at: int) -> str:
    if at <= 0 or at >= len(sounds):
        return ""
    if is_vowel(sounds[at - 1]):
        return "" if is_vowel(sounds[at]) else "after_vowel"
    return "before_vowel" if is_vowel(sounds[at]) else "consonants"


def _beginnings(cut: Cut, found: dict[str, float]) -> None:
    a = cut.first.letters
    found["first_doubt"] = doubt_of_beginning(a[: cut.front], a)
    if _clipped(cut.first, cut.front):
        found["beginnings_first_clip"] = 1.0
    if _clipped(cut.second, cut.back):
        found["beginnings_second_clip"] = 1.0
    if cut.first.before[cut.front] in cut.first.joints:
        found["beginnings_first_cut"] = 1.0
    found["beginnings_first_letters"] = float(abs(cut.front - 3))
    found["beginnings_second_letters"] = float(abs(cut.back - 3))


def _clipped(word: Source, kept: int) -> bool:
    """Whether the kept letters end with a consonant after a vowel, the usual shape of English clippings (fab,
    prof; L. Bauer, English Word-Formation, 1983, 7.2)."""
    sounds = word.before[kept]
    return (
        1 < sounds < len(word.bare)
        and word.before[kept] > word.before[kept - 1]
        and not is_vowel(word.bare[sounds - 1])
        and is_vowel(word.bare[sounds - 2])
    )


def _linked(cut: Cut, found: dict[str, float]) -> None:
    a, b = cut.first.letters, cut.second.letters
    found["first_doubt"] = doubt_of_beginning(a[: cut.front], a)
    found["second_doubt"] = doubt_of_ending(b[len(b) - cut.back :], b)
    if cut.front == len(a):
        found["link_first_whole"] = 1.0
    if cut.back == len(b):
        found["link_second_whole"] = 1.0


def _inside(cut: Cut, found: dict[str, float]) -> None:
    outer, inner = cut.first.letters, cut.second.letters
    gone = outer[cut.front : len(outer) - cut.back]
    table = _distances(gone, inner)  # letters serve as sounds here: they are only compared
    found["inside_alike"] = 1 - table[-1][-1] / max(len(gone), len(inner))


def _endings(cut: Cut, found: dict[str, float]) -> None:
    if cut.back == len(cut.second.letters):
        found["endings_second_whole"] = 1.0


_OTHERS = {"beginnings": _beginnings, "linked": _linked, "inside": _inside, "endings": _endings}
