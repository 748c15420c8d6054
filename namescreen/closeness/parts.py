"""From the parts of the closeness of two names to closeness in each aspect and overall, of one pair or of many.

Fitted weighted means of the parts (`model`), and the least that practice asks for (`at_least`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from .appearance import SHAPE_ONLY, Numbers, above_floor, greater, positive_part
from .model import Model
from .sound import FLOOR

__all__ = ["SAME_SOUND", "Parts", "Scores", "all_looks", "all_sounds", "at_least", "of_overall", "score_of_parts"]

ENOUGH = 0.65
"""The least closeness of names with the same meaning word for word, however different they look and sound: similarity
in one aspect can be enough (TMEP 1207.01(b)). Readers give whole translations some 0.4, tribunals found all of the few
decided ones similar. Of ratings and decisions together 0.6 has the least loss (drawn pairs 0.830, with 0.65 0.825, with
0.7 0.815); with 0.65 a whole translation still asks for a closer look (`policy.STEPS`)."""
TAKEN_OVER, DISTINCTIVE, ALMOST = 0.62, 0.45, 0.9
"""The least closeness to a distinctive mark that another takes over whole, with a house mark or a word for the goods
added (TMEP 1207.01(b)(iii)), the least that is serious for the same or near goods (`policy.STEPS`); the strength of the
shared element from which a mark is distinctive; and the covered share from which it begins to be taken over whole."""
COINED_TAKEN_OVER, STRONG, COINED = 0.8, 0.72, 0.85
"""The same of a mark as strong as a coined word, and the strengths between which it rises to that. With the limits
above it was chosen in 18 of 21 fits of folds by the loss on the rest, of 32 sets of limits: what was held out gained
(rated overall 0.706 to 0.709, invented 0.811 to 0.818; decided pairs elsewhere 0.874 to 0.879, US, clear: 0.786)."""
HEARD_AS_ONE, HEARD_FROM = 0.65, 0.9
"""The least closeness of names that are heard as the same, which can be enough by itself (TMEP 1207.01(b)(iv)), so that
it is serious for the same goods, and the similarity in sound from which it begins. Held out, no pairs lose by it."""
SAME_SOUND = 24
"""The power of similarity in sound that tells names heard as the same from those that sound close: 0.97 gives 0.48, 0.9
gives 0.08."""


class Scores(NamedTuple):
    """Closeness of two names: each aspect and overall, in [0, 1], 1 = the same; symmetric.

    `meaning` is None if a name is coined and they have no word in common, and none that is recalled; `sound` if one
    cannot be read aloud. `translated` is what one has in common with an English reading of the other in meaning, less
    covered; 0 for the same letters.
    """

    appearance: float
    sound: float | None
    meaning: float | None
    overall: float
    translated: float = 0.0


class Parts(NamedTuple):
    """The parts from which the means are taken, each in [0, 1]; pairs are (less covered, better covered), the second of
    `sounds` only by what is alike beyond chance (`sound.FLOOR`). `sound` is that of the letters if one of the names
    cannot be read aloud (`heard` is then False). `spelled` and `in_any_order` are `letters.spelled_alike` of the
    unspaced names and `letters.in_any_order` of their words. `shared` is the strength of all that they share, every
    word an independent ground to take one for the other (noisy or): a phrase is stronger than each of its words.
    `kept` is how well the better covered name is covered, less the weight of the strongest word that is left over in
    both.
    """

    look: float
    sound: float
    spelled: float
    in_any_order: float
    looks: tuple[float, float]
    sounds: tuple[float, float]
    meanings: tuple[float, float]
    elements: tuple[float, float]
    shared: float
    kept: float
    heard: bool
    meant: bool
    breaks_phrase: bool
    """Whether a word that they share means something else in one of them (`lexicon.broken_phrases`)."""
    divided_otherwise: bool
    """Whether they have different numbers of words, so that word for word says less (see saw, seesaw)."""
    shares_word: bool
    """Whether they share a word that is no function word."""
    translated: float = 0.0
    """`Scores.translated`, which `meanings` include."""
    one_coined_word: bool = False
    """Whether both are a single word, and neither is known."""

    @property
    def all_looks(self) -> tuple[float, ...]:
        """What the mean in appearance is taken of."""
        return all_looks(self.look, self.looks, self.spelled, self.in_any_order)

    @property
    def all_sounds(self) -> tuple[float, ...]:
        """What the mean in sound is taken of."""
        return all_sounds(self.sound, self.sounds, float(self.divided_otherwise), self.look)

    @property
    def all_meanings(self) -> tuple[float, float, float, float, float]:
        """What the mean in meaning is taken of. Of names that share a word readers disregard words that tell little of
        the maker, and what is short beside it; names that share none go by what is meant alone."""
        less, better = self.meanings
        rest = (self.elements[0], self.in_any_order) if self.shares_word else (less, less)
        return less, better, 0.0 if self.breaks_phrase else less, *rest

    @property
    def of_words(self) -> tuple[float, ...]:
        """What the mean overall is taken of but for appearance and sound (`of_overall`)."""
        return self.elements[0], self.shared, self.sounds[0], self.sound**SAME_SOUND, self.kept


def all_looks(look: Numbers, looks: Sequence[Numbers], spelled: Numbers, in_any_order: Numbers) -> tuple[Numbers, ...]:
    """The parts of appearance, of one pair of names or of many. What is alike run together or word by word counts once
    more as the better of the two, as buyers go by what strikes them."""
    less, better = looks
    return look, less, better, spelled, in_any_order, greater(look, less)


def all_sounds(
    sound: Numbers, sounds: Sequence[Numbers], divided_otherwise: Numbers, look: Numbers
) -> tuple[Numbers, ...]:
    """The parts of the sound of names, as `all_looks`; `divided_otherwise`: 1 for other numbers of words, else 0."""
    beyond_chance = above_floor(sound, FLOOR)
    less, better = sounds
    better = greater(better, divided_otherwise * beyond_chance)
    return beyond_chance, less, better, look, greater(beyond_chance, less)


def of_overall(
    of_words: Sequence[Numbers], appearance: Numbers, sound: Numbers, one_coined_word: Numbers
) -> tuple[Numbers, ...]:
    """The parts of overall closeness, from `Parts.of_words` and closeness in appearance and sound. Elements in common
    and a common look count by the better of them, and by what both have (their geometric mean). Single coined words (1;
    0 for all other names) have no other elements than their letters, so that they share at least what they look alike.
    """
    less, shared, of_sound, same_sound, kept = of_words
    closer, together = greater(less, appearance), (less * appearance) ** 0.5
    less, shared = (each + one_coined_word * positive_part(appearance - each) for each in (less, shared))
    return less, shared, of_sound, same_sound, kept, sound, above_floor(sound, FLOOR), closer, together


def score_of_parts(found: Parts, model: Model) -> Scores:
    """The closeness that a model gives to two names with these parts."""
    # A sum of shares may end a last digit above 1.
    appearance = min(1.0, model.appearance(*found.all_looks))
    if found.look >= SHAPE_ONLY:
        appearance = max(appearance, found.look)  # but for shapes easily confused, the same from end to end
    heard = min(1.0, model.sound_of_names(*found.all_sounds))
    if found.heard and found.sound >= 1.0:
        heard = 1.0  # read the same from end to end, whatever the segmentation (4ever, forever)
    said = min(1.0, model.meaning(*found.all_meanings))
    overall = at_least(
        model.overall(*of_overall(found.of_words, appearance, heard, float(found.one_coined_word))),
        found.elements,
        0.0 if found.breaks_phrase else found.shared,
        found.sound if found.heard else 0.0,
    )
    sound, meaning = heard if found.heard else None, said if found.meant else None
    return Scores(appearance, sound, meaning, min(1.0, overall), found.translated)


def at_least(overall: Numbers, elements: Sequence[Numbers], shared: Numbers, heard: Numbers) -> Numbers:
    """`overall`, at least `ENOUGH` times what both names have in common word for word, and where all of one name is
    taken over, at least `TAKEN_OVER` if what is taken is distinctive, `COINED_TAKEN_OVER` if it is as strong as a
    coined word, and in proportion if it is not distinctive. `shared` is to be 0 where an element that they share is
    part of another phrase. Names `heard` as one (similarity in sound of the whole; 0 if it is not known) are at least
    `HEARD_AS_ONE`."""
    less, better = elements
    overall = overall + positive_part(ENOUGH * less - overall)
    whole = positive_part(better - ALMOST) / (1 - ALMOST)
    distinctive = 1 - positive_part(1 - shared / DISTINCTIVE)
    coined = 1 - positive_part(1 - positive_part(shared - STRONG) / (COINED - STRONG))
    least = (TAKEN_OVER + (COINED_TAKEN_OVER - TAKEN_OVER) * coined) * whole * distinctive
    overall = overall + positive_part(least - overall)
    return overall + positive_part(HEARD_AS_ONE * positive_part(heard - HEARD_FROM) / (1 - HEARD_FROM) - overall)
