"""Questions about domains and handles, whom to ask, and which addresses may be asked at all."""

from __future__ import annotations

import ipaddress
from collections.abc import Iterable, Iterator, Sequence
from urllib.parse import quote, urlsplit

from ..errors import InputError, Problem
from ..expressions import expression
from .bootstrap import Bootstrap
from .estimate import Estimate
from .findings import Asked, Finding, Question
from .labels import ascii_name

__all__ = [
    "RDAP",
    "WEBFINGER",
    "address_problem",
    "domain_question",
    "domains_to_ask",
    "handle_questions",
    "handles_to_ask",
    "is_public",
    "places",
    "servers_question",
]

RDAP = ("application/rdap+json", "application/json")
"""RFC 7480 section 4.2: the first is the type of an answer; the second is to be expected as well."""
WEBFINGER = ("application/jrd+json", "application/json")
"""RFC 7033 section 4.2 and 10.2."""

_LOCAL = ("localhost", "local", "internal", "home.arpa", "test", "onion", "lan")
"""Endings of names that are not of the public network: RFC 6761, 6762, 7686, 8375, and common practice (internal,
lan)."""

_PLAIN_HOST = expression(r"[0-9a-f:]*:[0-9a-f:.]+(%.+)?|[a-z0-9_-]+(\.[a-z0-9_-]+)*\.?")
"""An IP address, or a name; those of small networks may hold an underscore."""


def servers_question(url: str) -> Question:
    """The question which RDAP servers there are."""
    return Question(Asked.servers, "", url, ("application/json", "application/rdap+json", "text/json"))


def domains_to_ask(estimates: Iterable[Estimate], *, spare: bool = False) -> tuple[str, ...]:
    """The domains to ask about, each once: the plainest of every name first, then its others; those that add a word
    to the name only if `spare`."""
    wanted = [[one.text for one in estimate.domains if spare or not one.spare] for estimate in estimates]
    return tuple(_in_turn(wanted))


def handles_to_ask(estimates: Iterable[Estimate]) -> tuple[str, ...]:
    """The handles to ask about, each once: the one that fits everywhere of every name first, then longer ones."""
    return tuple(_in_turn([[one.text for one in estimate.handles] for estimate in estimates]))


def domain_question(domain: str, servers: Bootstrap) -> Question | Finding:
    """The RDAP question about `domain` (RFC 9082 section 3.1.3), or why there is none."""
    base = servers.base(domain)
    if base is None:
        because = f"no RDAP server is listed for .{domain.rpartition('.')[2]}: ask the registry's own web page"
        return Finding.unchecked("domain", domain, "", because)
    return Question(Asked.domain, domain, f"{base.rstrip('/')}/domain/{quote(domain)}", RDAP)


def places(servers: Sequence[str], patterns: Sequence[str], *, allow_private: bool) -> None:
    """Refuse servers and patterns that may not be asked; raises `InputError` with all of them."""
    problems = [
        Problem(f"{server!r} cannot be asked: {problem}", "Correct or remove it", field="handle_servers")
        for server in servers
        if (problem := address_problem(f"https://{server}/", allow_private=allow_private))
    ]
    for pattern in patterns:
        problem = _pattern_problem(pattern, allow_private)
        if problem:
            problems.append(
                Problem(f"{pattern!r} cannot be asked: {problem}", "Correct or remove it", field="handle_patterns")
            )
    if problems:
        raise InputError(problems)


def _pattern_problem(pattern: str, allow_private: bool) -> str | None:
    if "{handle}" not in pattern:
        return "it has no {handle} where the handle goes"
    one, other = (pattern.replace("{handle}", handle) for handle in ("a", "b"))
    problem = address_problem(one, allow_private=allow_private)
    if problem is None and urlsplit(one).netloc != urlsplit(other).netloc:
        problem = "{handle} may stand in the path or after it, not in the server's name"
    return problem


def handle_questions(handle: str, servers: Iterable[str], patterns: Iterable[str]) -> Iterator[Question]:
    """The questions about one handle: WebFinger at every server (RFC 7033 section 4.1), and every page."""
    for server in servers:
        host = urlsplit(f"https://{server}/").hostname or server
        resource = quote(f"acct:{handle}@{host}", safe="")
        url = f"https://{server}/.well-known/webfinger?resource={resource}"
        yield Question(Asked.account, handle, url, WEBFINGER)
    for pattern in patterns:
        yield Question(Asked.page, handle, pattern.replace("{handle}", quote(handle, safe="")))


def address_problem(url: str, *, allow_private: bool = False) -> str | None:
    """Why `url` may not be asked, or None if it may: other schemes, credentials, private places, no such address.

    A name that only turns out to lead to a private place is refused when it is connected to.
    """
    try:
        parts = urlsplit(url)
        host, _ = parts.hostname, parts.port
    except ValueError:
        return "it is not a valid address"
    if parts.scheme not in ("http", "https"):
        return f"only http and https are asked, not {parts.scheme or 'an address without a scheme'}"
    if not host:
        return "it names no server"
    if parts.username is not None or parts.password is not None:
        return "it holds a user name or password, and none is ever sent"
    if any(character.isspace() or not character.isprintable() for character in url):
        return "it holds a space or control character"
    # Other letters are mapped as they are when the server is asked: a full-width dot is a dot (UTS #46).
    name = host.removesuffix(".") if _PLAIN_HOST.fullmatch(host) else ascii_name(host)
    if name is None:
        return "its server's name is not valid"
    if allow_private:
        return None
    if name.rpartition(".")[2] in _LOCAL or name.endswith(".home.arpa") or not is_public(name):
        return "it lies in a private network (--allow-private allows that for servers that are named)"
    return None


def is_public(host: str) -> bool:
    """Whether `host` is no IP address outside the public network (RFC 6890); a name counts as public."""
    try:
        address = ipaddress.ip_address(host.partition("%")[0])
    except ValueError:
        return True
    mapped = getattr(address, "ipv4_mapped", None) or getattr(address, "sixtofour", None)
    return address.is_global and not address.is_multicast and (mapped is None or is_public(str(mapped)))


def _in_turn(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """The first of every row, then the second of every row, and so on; each text once."""
    seen: dict[str, None] = {}
    for place in range(max(map(len, rows), default=0)):
        for row in rows:
            if place < len(row) and row[place] not in seen:
                seen[row[place]] = None
                yield row[place]
