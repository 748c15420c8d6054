"""Ask a server one question, with redirects, retries and stored answers; never raises an exception."""

from __future__ import annotations

import datetime
import hashlib
import sqlite3
import threading
from collections.abc import Iterable
from urllib.parse import urljoin, urlsplit

import requests
from requests_cache.models import AnyResponse
from requests_cache.models.response import CachedResponse

from .answers import is_passing, retry_after
from .findings import Answer, Question
from .questions import address_problem
from .settings import Settings
from .store import damaged_entries, keep_in_memory, open_store
from .transport import TOO_LARGE, PoliteAdapter, RateLimiter, RefusedError, StoppedError

__all__ = ["Asker", "chance"]

_REDIRECTS = (301, 302, 303, 307, 308)


class Asker:
    """Asks questions within the limits of `settings`. Safe to use from several threads."""

    def __init__(self, settings: Settings) -> None:
        self.settings = settings
        self.stopped = threading.Event()
        self._limiter = RateLimiter(settings.pause, self.stopped)
        self._named: set[str] = set()
        self._adapter = PoliteAdapter(settings, self._limiter, self._may_be_private)
        self._session, self._remarks = open_store(settings)
        self._damaged = damaged_entries()
        self._session.mount("http://", self._adapter)
        self._session.mount("https://", self._adapter)
        self._silent: dict[str, int] = {}
        self._closed: dict[str, str] = {}
        self._lock = threading.Lock()

    @property
    def remarks(self) -> tuple[str, ...]:
        """Problems with the stored answers."""
        unread = damaged_entries() > self._damaged
        return (*self._remarks, *(["Some stored answers are damaged; they are asked again."] if unread else []))

    @property
    def sent(self) -> int:
        """How many requests went out."""
        return self._adapter.sent

    def close(self) -> None:
        """Stop all waiting requests, and close the store."""
        self.stopped.set()
        self._session.close()  # type: ignore[no-untyped-call]

    def name_hosts(self, questions: Iterable[Question]) -> None:
        """Note whom the user, or the list of servers, names to be asked: with --allow-private a server may send us on
        to these, and to no other private host."""
        self._named.update(_host(question.url) for question in questions)

    def is_stored(self, question: Question) -> bool:
        """Whether nobody will be asked: an answer is stored that still counts, or leads to where nobody is asked."""
        url = question.url
        for _ in range(self.settings.most_redirects + 1):
            if self._problem(url, question):
                return True
            found = self._stored(url)
            if found is None:
                return False
            if found.status_code not in _REDIRECTS:
                return True
            url = _onward(url, found.headers.get("Location", ""))
        return True

    def ask(self, question: Question) -> Answer:
        """The answer to `question`, stored or fresh, after redirects; where there is none, the reason."""
        try:
            return self._follow(question)
        except Exception as error:  # an error in one question must not end the run or lose the question
            return Answer(failure=f"asking failed in an unforeseen way ({type(error).__name__}: {error})")

    def _follow(self, question: Question) -> Answer:
        self.name_hosts([question])
        url = question.url
        for _ in range(self.settings.most_redirects + 1):
            problem = self._problem(url, question)
            if problem:
                return Answer(failure=problem)
            answer = self._one(question, url)
            if answer.failure or answer.status not in _REDIRECTS:
                return answer
            if not answer.header("location"):
                return Answer(failure=f"the server sent us on ({answer.status}) without saying where to")
            onward = _onward(url, answer.header("location"))
            if urlsplit(url).scheme == "https" and onward.startswith("http:"):
                return Answer(failure="the server sent us on from https to http, which is not followed")
            url = onward
        return Answer(failure=f"the server sent us on more than {self.settings.most_redirects} times")

    def _problem(self, url: str, question: Question) -> str | None:
        """Why `url`, on the way to the answer of `question`, is not asked; None if it may be."""
        if url == question.url:
            problem = address_problem(url, allow_private=self.settings.allow_private)
            return f"it would mean to ask an address that is not asked: {problem}" if problem else None
        problem = address_problem(url, allow_private=self._may_be_private(url))
        return f"the server sent us on to an address that is not asked: {problem}" if problem else None

    def _may_be_private(self, url: str) -> bool:
        return self.settings.allow_private and _host(url) in self._named

    def _one(self, question: Question, url: str) -> Answer:
        """One address asked, and asked again where it failed in passing."""
        host = _host(url)
        for attempt in range(self.settings.retries + 1):
            if host in self._closed and self._stored(url) is None:
                return Answer(failure=self._closed[host])
            answer, passing = self._send(question, url)
            if not passing:
                if not answer.failure:
                    self._silent[host] = 0
                return answer
            seconds = self._wait(answer, url, attempt)
            if seconds > self.settings.longest_wait:
                self._closed[host] = f"{host} asks to wait {seconds:,.0f} seconds, longer than a run does"
                return Answer(failure=self._closed[host])
            self._limiter.hold(host, seconds)
        with self._lock:
            self._silent[host] = self._silent.get(host, 0) + 1
            if self._silent[host] >= self.settings.gives_up:
                times = f"{self._silent[host]} questions in a row"
                self._closed[host] = f"{host} gave no usable answer to {times}, and was asked no more"
        return answer

    def _wait(self, answer: Answer, url: str, attempt: int) -> float:
        """Seconds before the next try: what the server asks for, or ever longer, never at once with others."""
        asked = retry_after(answer.header("retry-after"), datetime.datetime.now(datetime.UTC)) or 0.0
        own = self.settings.back_off * (1 << attempt) * (1.0 + chance(url, attempt) / 2)
        return max(asked, own)

    def _stored(self, url: str) -> CachedResponse | None:
        """The stored answer of one address, if it still counts."""
        if self.settings.refresh:
            return None
        try:
            request = self._session.prepare_request(requests.Request("GET", url))
            found = self._session.cache.get_response(self._session.cache.create_key(request))
        except (sqlite3.Error, requests.RequestException, ValueError):  # no such address: `ask` says so
            return None
        return None if found is None or found.is_expired else found

    def _send(self, question: Question, url: str) -> tuple[Answer, bool]:
        """One attempt, and whether a retry may help."""
        try:
            return self._exchange(question, url)
        except RefusedError as refusal:
            return Answer(failure=str(refusal)), False
        except StoppedError:
            return Answer(failure="the check was stopped"), False
        except requests.exceptions.SSLError:
            return Answer(failure="the server's certificate could not be verified"), False
        except requests.Timeout:
            return Answer(failure="the server did not answer in time"), True
        except requests.exceptions.InvalidURL:
            return Answer(failure="the address is not valid"), False
        except requests.RequestException as error:
            return Answer(failure=_in_words(error)), True
        except (UnicodeError, ValueError):
            return Answer(failure="the answer was not understood: it is not valid HTTP"), False

    def _exchange(self, question: Question, url: str) -> tuple[Answer, bool]:
        accept = ", ".join(question.accept) or "*/*"
        try:
            response = self._get(url, accept)
        except sqlite3.Error as error:  # damaged, or taken away, since it was opened
            with self._lock:
                if keep_in_memory(self._session):
                    self._remarks += (f"Answers can no longer be stored ({error}); they are kept for this run only.",)
            response = self._get(url, accept)
        answer = Answer(
            response.status_code,
            tuple((name.lower(), value) for name, value in response.headers.items()),
            response.content or b"",
            TOO_LARGE in response.headers,
            response.created_at.astimezone(datetime.UTC).date().isoformat(),
        )
        return answer, is_passing(response.status_code)

    def _get(self, url: str, accept: str) -> AnyResponse:
        return self._session.get(
            url, headers={"Accept": accept}, allow_redirects=False, force_refresh=self.settings.refresh
        )


def _host(url: str) -> str:
    return urlsplit(url).hostname or ""


def _onward(url: str, location: str) -> str:
    """Where a redirect from `url` leads; what cannot be parsed stays as it came, and is then not asked."""
    try:
        return urljoin(url, location)
    except ValueError:
        return location


def chance(url: str, attempt: int) -> float:
    """A number in [0, 1) that is the same for the same question and attempt, so that runs repeat."""
    digest = hashlib.sha256(f"{url} {attempt}".encode()).digest()
    return int.from_bytes(digest[:8]) / 2**64


def _in_words(error: requests.RequestException) -> str:
    text = str(error)
    if "NameResolution" in text or "getaddrinfo" in text or "Name or service" in text:
        return "the server's name could not be resolved"
    if "refused" in text:
        return "the server refused the connection"
    if "IncompleteRead" in text:
        return "the answer broke off"
    return "the connection failed"
