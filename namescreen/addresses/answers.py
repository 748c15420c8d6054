"""Interpret an answer: pure functions from status, headers and body to a finding.

RDAP: RFC 7480 (HTTP), 9083 (answers). WebFinger: RFC 7033. An answer that is not understood is never taken for
"not registered".
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Iterator
from email.utils import parsedate_to_datetime
from typing import Any
from urllib.parse import urlsplit

from .findings import Answer, Asked, Finding, Question

__all__ = ["NOT_IN_REGISTRY", "finding_of", "is_passing", "retry_after", "unusable"]

NOT_IN_REGISTRY = "not found in the registry: it may be free; price and reserved names unknown"
_LONGEST = 80
"""The most characters kept of a text from a server."""


def finding_of(question: Question, answer: Answer) -> Finding:
    """The finding that `answer` gives for `question`."""
    where = question.url if question.asked is Asked.page else urlsplit(question.url).netloc
    kind = "domain" if question.asked is Asked.domain else "handle"
    if answer.failure:
        return Finding.unchecked(kind, question.text, where, answer.failure)
    if question.asked is Asked.domain:
        return _domain(question, answer, where)
    if question.asked is Asked.account:
        return _account(question, answer, where)
    return _page(question, answer, where)


def is_passing(status: int) -> bool:
    """Whether a status says to try again later: too many requests (RFC 6585 section 4), or a server error."""
    return status in (429, 500, 502, 503, 504)


def retry_after(value: str, now: datetime.datetime) -> float | None:
    """The seconds that a Retry-After header asks to wait, in either form (RFC 9110 section 10.2.3); None without."""
    value = value.strip()
    if value.isascii() and value.isdigit():
        return float(value[:9])
    try:
        moment = parsedate_to_datetime(value)
    except (TypeError, ValueError, IndexError, OverflowError):
        return None
    if moment.tzinfo is None:
        moment = moment.replace(tzinfo=datetime.UTC)
    return max(0.0, (moment - now).total_seconds())


def unusable(question: Question, answer: Answer) -> str | None:
    """Why the body of an answer with status 200 cannot be read, in words that follow "because"; None if it can."""
    kind = answer.header("content-type").partition(";")[0].strip().lower()
    if answer.too_large:
        return "the answer was too large to read"
    if kind not in question.accept:
        return f"the answer was not understood: its content type is {_shown(kind) or 'not stated'}"
    return None


def _domain(question: Question, answer: Answer, where: str) -> Finding:
    domain = question.text
    if answer.status == 404:  # RFC 7480 section 5.3
        return Finding("domain", domain, where, NOT_IN_REGISTRY, False, date=answer.date)
    if answer.status != 200:
        return Finding.unchecked("domain", domain, where, _status(answer.status))
    because = unusable(question, answer)
    data = None if because else _object(answer.body)
    if because is None and data is None:
        because = "the answer was not understood: it is not a JSON object"
    elif data is not None:
        because = _not_about(domain, data)
    if because or data is None:
        return Finding.unchecked("domain", domain, where, because or "")
    since, until = _event(data, "registration"), _event(data, "expiration")
    registrar = next(_registrars(data), "")
    told = ["registered"]
    told += [f"since {since}"] if since else []
    told += [f"until {until}"] if until else []
    told += [f"with {registrar}"] if registrar else []
    states = [_shown(state) for state in _list(data, "status") if isinstance(state, str) and _telling(state)]
    told += [f"({', '.join(states)})"] if states else []
    return Finding("domain", domain, where, " ".join(told), True, since, until, registrar, answer.date)


def _not_about(domain: str, data: dict[str, Any]) -> str | None:
    """Why an RDAP answer is not one about `domain` (RFC 9083 sections 5.3 and 6), or None if it is."""
    if data.get("objectClassName") != "domain":
        return "the answer was not understood: it is not about a domain (RFC 9083 section 5.3)"
    name = data.get("ldhName")
    if isinstance(name, str) and name.lower().removesuffix(".") != domain:
        return f"the answer was not understood: it is about {_shown(name)}"
    return None


def _telling(state: str) -> bool:
    """Whether a status says that a registration is ending or special (RFC 8056 section 2), not merely guarded."""
    return state in ("redemption period", "pending delete", "pending restore", "inactive", "reserved")


def _event(data: dict[str, Any], action: str) -> str:
    """The day of an event (RFC 9083 section 4.5), ISO 8601; empty if there is none that can be read."""
    for event in _list(data, "events"):
        if isinstance(event, dict) and event.get("eventAction") == action and isinstance(event.get("eventDate"), str):
            try:
                return datetime.date.fromisoformat(event["eventDate"][:10]).isoformat()
            except ValueError:
                return ""
    return ""


def _registrars(data: dict[str, Any]) -> Iterator[str]:
    """The names of the entities with the role of registrar (RFC 9083 section 5.1), from their jCard (RFC 7095)."""
    for entity in _list(data, "entities"):
        if not isinstance(entity, dict) or "registrar" not in _list(entity, "roles"):
            continue
        card = _list(entity, "vcardArray")
        for part in card[1] if len(card) > 1 and isinstance(card[1], list) else ():
            if isinstance(part, list) and len(part) > 3 and part[0] == "fn" and isinstance(part[3], str) and part[3]:
                yield _shown(part[3])
        if isinstance(entity.get("handle"), str):
            yield _shown(entity["handle"])


def _account(question: Question, answer: Answer, where: str) -> Finding:
    text = question.text
    if answer.status == 404:  # RFC 7033 section 4.2
        return Finding("handle", text, where, "no page found: the server knows no such account", False,
                       date=answer.date)  # fmt: skip
    because = unusable(question, answer) if answer.status == 200 else _status(answer.status)
    if because is None:
        data = _object(answer.body)
        if data is not None and data.keys() & {"subject", "aliases", "links"}:
            return Finding("handle", text, where, "page found: the server knows this account", True, date=answer.date)
        because = "the answer was not understood: it is not a JSON resource descriptor (RFC 7033 section 4.4)"
    return Finding.unchecked("handle", text, where, because)


def _page(question: Question, answer: Answer, where: str) -> Finding:
    if 200 <= answer.status < 300:
        return Finding("handle", question.text, where, "page found", True, date=answer.date)
    if answer.status in (404, 410):
        return Finding("handle", question.text, where, "no page found", False, date=answer.date)
    return Finding.unchecked("handle", question.text, where, _status(answer.status))


def _status(status: int) -> str:
    """The meaning of an inconclusive status, in words that follow "because"."""
    if status == 429:
        return "the server asks for fewer requests (429): try again later"
    if status in (401, 403):
        return f"the server refuses to answer ({status})"
    if status >= 500:
        return f"the server is in trouble ({status}): try again later"
    return f"the server gave an answer that decides nothing ({status})"


def _object(body: bytes) -> dict[str, Any] | None:
    try:
        data = json.loads(body)
    except (ValueError, RecursionError):
        return None
    return data if isinstance(data, dict) else None


def _list(data: dict[str, Any], key: str) -> list[Any]:
    value = data.get(key)
    return value if isinstance(value, list) else []


def _shown(text: str) -> str:
    """A server's text on one line, printable and short."""
    line = "".join(character if character.isprintable() else " " for character in text)
    return " ".join(line.split())[:_LONGEST]
