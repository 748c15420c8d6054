"""Which RDAP servers answer for which domain ending: the bootstrap file that IANA publishes (RFC 9224)."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlsplit

from .labels import ascii_name

__all__ = ["IANA", "Bootstrap", "read_bootstrap"]

IANA = "https://data.iana.org/rdap/dns.json"
"""Where the file is published (RFC 9224 section 4 names the registry, and IANA this address)."""


@dataclass(frozen=True, slots=True)
class Bootstrap:
    """RDAP servers by domain ending; `servers` maps an ending in ASCII to base addresses, in the file's order."""

    publication: str
    servers: Mapping[str, tuple[str, ...]]

    def base(self, domain: str) -> str | None:
        """The base address to ask about `domain` (in ASCII), or None if no server is listed.

        The longest ending that matches counts (RFC 9224 section 4); of its addresses the first with https, else
        the first (section 3 leaves the choice, and advises https).
        """
        labels = domain.lower().removesuffix(".").split(".")
        for start in range(1, len(labels) + 1):  # the last, the empty ending, is the root
            bases = self.servers.get(".".join(labels[start:]))
            if bases:
                return next((base for base in bases if base.startswith("https://")), bases[0])
        return None


def read_bootstrap(body: bytes) -> Bootstrap | str:
    """The bootstrap file in `body`, or why it cannot be read, in words that follow "because".

    A member that is not understood is ignored (RFC 9224 section 10.1 leaves room for others); an entry is
    a list of endings with a list of addresses (section 3).
    """
    try:
        data = json.loads(body)
    except (ValueError, RecursionError):
        return "the list of RDAP servers is not valid JSON"
    services = data.get("services") if isinstance(data, dict) else None
    if not isinstance(services, list):
        return 'the list of RDAP servers has no "services" (RFC 9224 section 3)'
    version = data.get("version")
    if version != "1.0":
        return f"the list of RDAP servers is of version {version!r}, and only 1.0 is known (RFC 9224 section 3)"
    servers: dict[str, tuple[str, ...]] = {}
    for entry in services:
        if not (isinstance(entry, list) and len(entry) >= 2 and all(isinstance(part, list) for part in entry[:2])):
            continue
        bases = tuple(base for base in entry[1] if isinstance(base, str) and _is_base(base))
        for ending in entry[0]:
            key = ascii_name(ending) if isinstance(ending, str) and ending else ending
            if isinstance(key, str) and bases:
                servers.setdefault(key, bases)
    publication = data.get("publication")
    return Bootstrap(publication if isinstance(publication, str) else "", servers)


def _is_base(text: str) -> bool:
    try:
        return urlsplit(text).scheme in ("http", "https") and bool(urlsplit(text).hostname)
    except ValueError:
        return False
