"""Questions about addresses, answers and findings: plain data, without network access."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["Answer", "Asked", "Finding", "Question"]


class Asked(StrEnum):
    """The subject of a question."""

    domain = "domain"
    account = "account"
    page = "page"
    servers = "servers"


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to ask: of which kind, about which domain or handle (`text`), at which address, and what content
    types (most wanted first) the answer may have; none where the status alone decides."""

    asked: Asked
    text: str
    url: str
    accept: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Answer:
    """An HTTP answer, or why there is none.

    `headers` have names in lower case; `body` is empty where the status alone decides. `too_large` says that the
    body was longer than is read. `date` is the day it was given, ISO 8601. With `failure`, in words that follow
    "because", nothing was answered and the rest is empty.
    """

    status: int = 0
    headers: tuple[tuple[str, str], ...] = ()
    body: bytes = b""
    too_large: bool = False
    date: str = ""
    failure: str = ""

    def header(self, name: str) -> str:
        """The header of this name (lower case), or an empty text."""
        return next((value for key, value in self.headers if key == name), "")


@dataclass(frozen=True, slots=True)
class Finding:
    """The result for one domain or handle.

    `kind` is domain or handle; `where` the server or the page that was asked. `taken` is True (registered, or a page
    was found), False (not in the registry, or no page) or None (not checked); `finding` says it in words. `since` and
    `until` are ISO 8601 dates, and `date` the day of the answer. An address that is not taken may still be unavailable.
    """

    kind: str
    text: str
    where: str
    finding: str
    taken: bool | None = None
    since: str = ""
    until: str = ""
    registrar: str = ""
    date: str = ""

    @classmethod
    def unchecked(cls, kind: str, text: str, where: str, because: str) -> Finding:
        """The finding that an address was not checked, and why."""
        return cls(kind, text, where, f"not checked, because {because}")

    def to_json(self) -> dict[str, object]:
        """The finding as plain data."""
        return {
            "kind": self.kind,
            "address": self.text,
            "where": self.where,
            "finding": self.finding,
            "taken": self.taken,
            "since": self.since,
            "until": self.until,
            "registrar": self.registrar,
            "date": self.date,
        }
