"""An existing mark, as a register or a typed list gives it."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Mark"]

_FIRMNESS = {"live": 0, "pending": 1, "opposed": 1, "unknown": 2, "dead": 3}
_UNDATED = "9999"


@dataclass(frozen=True, slots=True)
class Mark:
    """One existing mark. `text` is its words; every other field may be empty, which means: not stated.

    `number` is the application's, or the only one given; `registration_number` that of the registration where it is
    another (and the same where no other is given, and it is known to be the registration's). `status` is "live"
    (registered and in force), "pending" (applied for), "opposed" (applied for and opposed), "dead", or "unknown": not
    stated or not understood; `status_as_given` keeps the office's own word or code. Dates are ISO 8601 (YYYY-MM-DD).
    `classes` are Nice classes, 1 to 45, ascending. `goods_language` is the ISO 639-1 code of the language the goods are
    given in. `mark_type` is "word", "combined" (words and picture), "figurative", "shape", "sound" or another plain
    word. `territories` are where the mark holds: ISO 3166-1 codes, and "EU" for the whole European Union (see
    `territory.bites_in`)."""

    text: str
    number: str = ""
    office: str = ""
    classes: tuple[int, ...] = ()
    goods: str = ""
    status: str = "unknown"
    status_as_given: str = ""
    owner: str = ""
    filed: str = ""
    registered: str = ""
    source: str = ""
    line: int = 0
    registration_number: str = ""
    goods_language: str = ""
    priority: str = ""
    expires: str = ""
    mark_type: str = ""
    territories: tuple[str, ...] = ()

    @property
    def stated_status(self) -> str:
        """The status where the list states it; "" where it is unknown."""
        return "" if self.status == "unknown" else self.status

    @property
    def is_dead(self) -> bool:
        """Whether the list says that the mark has ended, or was refused."""
        return self.status == "dead"

    @property
    def owner_folded(self) -> str:
        """The owner's name as it is compared: case, spaces and punctuation tell no owners apart; "" if not stated."""
        return "".join(filter(str.isalnum, self.owner.casefold()))

    def is_of_the_owner_of(self, other: Mark) -> bool:
        """Whether both marks are stated to be of one owner; of those whose owner is not stated nobody knows."""
        return bool(self.owner_folded) and self.owner_folded == other.owner_folded

    @property
    def seniority(self) -> tuple[int, str]:
        """Sort key of marks that are else alike: those in force before those applied for, those not known to stand and
        those that have ended; of each the earliest right first, undated ones last."""
        return _FIRMNESS[self.status], self.priority or self.filed or self.registered or _UNDATED

    def expired_by(self, date: str) -> bool:
        """Whether the day until which the mark is registered is stated and lies before `date` (YYYY-MM-DD)."""
        return bool(self.expires) and self.expires < date
