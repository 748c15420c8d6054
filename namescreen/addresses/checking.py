"""Running a check: many questions to many hosts, several hosts at once, one question at a time to each. A stopped run
keeps its answers: every question ends in a finding.
"""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from urllib.parse import urlsplit

from .answers import finding_of, unusable
from .bootstrap import Bootstrap, read_bootstrap
from .findings import Answer, Finding, Question
from .questions import domain_question, handle_questions, servers_question
from .session import Asker

__all__ = ["Plan", "plan", "run"]


@dataclass(frozen=True, slots=True)
class Plan:
    """The questions to ask, most wanted first, and the findings that need no question."""

    questions: tuple[Question, ...]
    settled: tuple[Finding, ...]

    def hosts(self, asker: Asker) -> dict[str, int]:
        """The number of questions for each host, without stored answers, in the order in which they come."""
        counts: dict[str, int] = {}
        for question in self.questions:
            if not asker.is_stored(question):
                host = urlsplit(question.url).netloc
                counts[host] = counts.get(host, 0) + 1
        return counts


def plan(
    domains: Iterable[str], handles: Iterable[str], servers: Sequence[str], patterns: Sequence[str], asker: Asker
) -> Plan:
    """What to ask about `domains` and `handles`. Asks for the list of RDAP servers if there is a domain."""
    questions: dict[Question, None] = {}
    settled: list[Finding] = []
    wanted = list(domains)
    rdap = _rdap_servers(asker) if wanted else Bootstrap("", {})
    for domain in wanted:
        one = domain_question(domain, rdap) if isinstance(rdap, Bootstrap) else unlisted(domain, rdap)
        if isinstance(one, Finding):
            settled.append(one)
        else:
            questions[one] = None
    for handle in handles:
        questions |= dict.fromkeys(handle_questions(handle, servers, patterns))
    return Plan(tuple(questions), tuple(settled))


def unlisted(domain: str, because: str) -> Finding:
    """The finding for a domain when the list of RDAP servers could not be had."""
    return Finding.unchecked("domain", domain, "", because)


def run(
    planned: Plan, asker: Asker, progress: Callable[[int, int | None], None] | None = None
) -> tuple[tuple[Finding, ...], bool]:
    """A finding for every question, in the order of the plan, then those settled beforehand; and whether the run
    was stopped (Ctrl-C) before all were asked."""
    asker.name_hosts(planned.questions)
    answers, stopped = _answers(planned.questions, asker, progress or (lambda done, total: None))
    nothing = Answer(failure="the check was stopped before it was asked")
    found = (finding_of(question, answers.get(question, nothing)) for question in planned.questions)
    return (*found, *planned.settled), stopped


def _rdap_servers(asker: Asker) -> Bootstrap | str:
    question = servers_question(asker.settings.bootstrap)
    answer = asker.ask(question)
    because: str | None = answer.failure
    if not because and answer.status != 200:
        because = f"the server answered {answer.status}"
    because = because or unusable(question, answer)
    found = because or read_bootstrap(answer.body)
    return found if isinstance(found, Bootstrap) else f"{found} ({question.url})"


def _answers(
    questions: Sequence[Question], asker: Asker, progress: Callable[[int, int | None], None]
) -> tuple[dict[Question, Answer], bool]:
    """The answers, each host's questions asked by one thread in their order."""
    waiting: dict[str, list[Question]] = {}
    for question in questions:
        waiting.setdefault(urlsplit(question.url).hostname or "", []).append(question)
    hosts: queue.SimpleQueue[list[Question]] = queue.SimpleQueue()
    for mine in waiting.values():
        hosts.put(mine)
    done: queue.SimpleQueue[tuple[Question, Answer]] = queue.SimpleQueue()

    def work() -> None:
        while not asker.stopped.is_set():
            try:
                mine = hosts.get_nowait()
            except queue.Empty:
                return
            for question in mine:
                if asker.stopped.is_set():
                    return
                done.put((question, asker.ask(question)))

    threads = [threading.Thread(target=work, daemon=True) for _ in range(min(asker.settings.at_once, len(waiting)))]
    for thread in threads:
        thread.start()
    answers: dict[Question, Answer] = {}
    try:
        while len(answers) < len(questions):
            question, answer = done.get()
            answers[question] = answer
            progress(len(answers), len(questions))
    except KeyboardInterrupt:
        asker.stopped.set()
        while not done.empty():
            question, answer = done.get()
            answers[question] = answer
        return answers, True
    return answers, False
