"""Layouts of single offices' own: Brazil's gazette, Korea's interface, and France's answers to a search.

Sources: the schema of Brazil's Revista da Propriedade Industrial, section V (magazine.xsd), and published answers of
the two interfaces. Brazil's codes of decisions (IPAS...) are judged by the words that stand beside them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..errors import InputError, Problem
from .dates import plain_date
from .st66 import mark_type
from .status import standing
from .xml_records import Node, Values, XmlLayout

__all__ = ["BRAZIL", "FRANCE", "KOREA", "KOREA_GOODS"]

Nodes = Iterator[tuple[int, str, Node]]


def _day_first(text: str) -> str:
    return plain_date(text, "day") or text


def _brazil(nodes: Nodes) -> Iterator[tuple[int, Values]]:
    for line, _, node in nodes:
        decisions = [
            (part.first("code"), part.first("decision"))
            for part in node.below("decision")
            if _on_the_mark(part.first("decision"))
        ]
        classes = [part for part in node.below("class") if not _refused(part.first("class_status"))]
        yield (
            line,
            {
                # An issue tells of decisions: most of its records say of a mark only what was decided.
                "operation": "" if node.first("type") or node.first("text") else "part",
                "text": node.first("text"),
                "mark_type": mark_type(node.first("type")),
                "number": node.first("number"),
                "office": "BR",
                "classes": ", ".join(part.first("number") for part in classes),
                "goods": "; ".join(dict.fromkeys(text.rstrip(" ;") for part in classes for text in part.all("goods"))),
                "goods_language": "pt" if any("goods" in part.values for part in classes) else "",
                "status": decisions[-1][1] if decisions else "",
                "owner": "; ".join(dict.fromkeys(node.all("owner"))),
                "filed": _day_first(node.first("filed")),
                "priority": min((_day_first(text) for text in node.all("priority")), default=""),
                "registered": _day_first(node.first("registered")),
                "expires": _day_first(node.first("expires")),
            },
        )


def _on_the_mark(decision: str) -> bool:
    """Whether a decision says where the mark itself stands, not what became of a request about it."""
    return bool(decision) and not re.search(r"\bpeti[cç][aã]o\b|\brecurso\b|\bexig[eê]ncia\b", decision, re.IGNORECASE)


def _refused(status: str) -> bool:
    return standing(status) == "dead"


BRAZIL = XmlLayout(
    name="Brazil's gazette",
    roots=frozenset({"revista"}),
    records=frozenset({"processo"}),
    fields={
        "nome": "text",
        "especificacao": "goods",
        "status": "class_status",
    },
    groups={"classe-nice": "class", "despacho": "decision"},
    attributes={
        "processo": {
            "numero": "number",
            "data-deposito": "filed",
            "data-concessao": "registered",
            "data-vigencia": "expires",
        },
        "marca": {"apresentacao": "type"},
        "classe-nice": {"codigo": "number"},
        "despacho": {"codigo": "code", "nome": "decision"},
        "titular": {"nome-razao-social": "owner"},
        "prioridade": {"data": "priority"},
    },
    skipped=frozenset({
        "sobrestadores", "classes-vienna", "protocolo", "texto-complementar", "classe-nacional", "procurador",
        "apostila",
    }),
    assemble=_brazil,
)  # fmt: skip
"""Revista da Propriedade Industrial, section V (RM####.xml): a weekly list of decisions, in order."""


def _korea(nodes: Nodes) -> Iterator[tuple[int, Values]]:
    for line, _, node in nodes:
        yield (
            line,
            {
                "text": node.first("text"),
                "number": node.first("number"),
                "registration_number": node.first("registration"),
                "office": "KR",
                "classes": ", ".join(node.all("class")),
                "status": node.first("status"),
                "owner": node.first("holder", "applicant"),
                "filed": node.first("filed"),
                "priority": node.first("priority"),
                "registered": node.first("registered"),
            },
        )


KOREA = XmlLayout(
    name="Korea's open data",
    roots=frozenset({"response"}),
    records=frozenset({"TradeMarkInfo"}),
    fields={
        "Title": "text",
        "ApplicationNumber": "number",
        "RegistrationNumber": "registration",
        "GoodClassificationCode": "class",
        "ApplicationStatus": "status",
        "ApplicantName": "applicant",
        "RegistrationRightholderName": "holder",
        "ApplicationDate": "filed",
        "PriorityClaimDate": "priority",
        "RegistrationDate": "registered",
    },
    assemble=_korea,
)


def _france(nodes: Nodes) -> Iterator[tuple[int, Values]]:
    for line, _, node in nodes:
        found: dict[str, list[str]] = {}
        for part in node.below("field"):
            found.setdefault(part.first("name").casefold(), []).extend(part.all("value"))

        def first(*names: str, found: dict[str, list[str]] = found) -> str:
            return next((found[name][0] for name in names if found.get(name)), "")

        yield (
            line,
            {
                "text": first("mark"),
                "mark_type": mark_type(first("markfeature")),
                "number": first("applicationnumber") or first("ukey").rpartition("|")[2],
                "registration_number": first("registrationnumber"),
                "office": first("registrationofficecode") or "FR",
                "classes": ", ".join(found.get("classnumber", [])),
                "goods": "; ".join(dict.fromkeys(found.get("goodsservicesdescription", []))),
                "goods_language": "fr" if found.get("goodsservicesdescription") else "",
                "status": first("markcurrentstatuscode"),
                "owner": "; ".join(dict.fromkeys(found.get("deposant", []))),
                "filed": first("applicationdate"),
                "registered": first("registrationdate"),
                "expires": first("expirydate"),
            },
        )


def _korean_goods(nodes: Nodes) -> Iterator[tuple[int, Values]]:
    for _ in nodes:
        raise InputError(
            Problem(
                "lists goods without saying of which mark", "Give the files with the marks (TradeMarkInfo) themselves"
            )
        )
    return iter(())


KOREA_GOODS = XmlLayout(
    name="Korea's open data",
    roots=frozenset({"response"}),
    records=frozenset({"trademarkDesignationGoodstInfo"}),
    fields={},
    assemble=_korean_goods,
)


FRANCE = XmlLayout(
    name="France's search answers",
    roots=frozenset({"trademarkSearch"}),
    records=frozenset({"result"}),
    fields={"value": "value"},
    groups={"field": "field"},
    attributes={"field": {"name": "name"}},
    assemble=_france,
)
