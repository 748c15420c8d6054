"""The limits of a check: pauses, timeouts, retries and amounts."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from ..files import user_cache
from .bootstrap import IANA

__all__ = ["DAY", "Settings", "cache_file"]

DAY = 24 * 60 * 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """The bounds of a check. Times are in seconds; every default is common practice, no source.

    `pause` is the least time between the end of one request to a host and the start of the next; `patience` how
    long to wait for a connection or for the next piece of an answer; `longest` how long a whole exchange may take;
    `retries` how often a request that failed in passing is sent again, after `back_off` seconds, doubled each time,
    with up to half as much again by chance; `longest_wait` the longest Retry-After that is waited for;
    `gives_up` the number of unanswered questions in a row after which a host is asked nothing more. `keep_found` and
    `keep_missing` say how long an answer is stored: that something is there, that nothing is.
    """

    cache: Path | None = None
    bootstrap: str = IANA
    allow_private: bool = False
    refresh: bool = False
    offline: bool = False
    most_requests: int = 200
    most_bytes: int = 2_000_000
    most_redirects: int = 5
    at_once: int = 8
    pause: float = 1.0
    patience: float = 10.0
    longest: float = 20.0
    retries: int = 2
    back_off: float = 1.0
    longest_wait: float = 30.0
    gives_up: int = 3
    keep_found: float = 7 * DAY
    keep_missing: float = 1 * DAY


def cache_file() -> Path:
    """Where answers are stored: in the user's cache folder."""
    return user_cache() / "addresses.sqlite"
