"""WIPO Standard ST.66, as the offices use it: one record as served, the European Union's and Sweden's open data, the
exchange format of the national offices in Europe, and France's notices.

Element names are those of ST.66 (schema of 2012). A comment marks each place where an office departs from them.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from urllib.parse import urlsplit

from .status import most_informative
from .uspto import current_owners, dead_class, nice_only, plain_goods
from .xml_records import Node, Values, XmlLayout

__all__ = ["LAYOUT", "best_language", "goods_of", "holders", "joined_name", "mark_type", "words_of"]

MOST_OWNERS = 1000
"""Owners of one mark that are kept; a mark has a few."""
_TYPES = (
    ("combin", "combined"), ("mixed", "combined"), ("3", "shape"), ("shape", "shape"), ("tridim", "shape"),
    ("figur", "figurative"), ("image", "figurative"), ("device", "figurative"), ("design", "figurative"),
    ("drawing", "figurative"), ("sound", "sound"), ("son", "sound"), ("motion", "motion"), ("multimedia", "multimedia"),
    ("colour", "colour"), ("color", "colour"), ("hologram", "hologram"), ("olfactory", "smell"), ("scent", "smell"),
    ("position", "position"), ("pattern", "pattern"), ("typeset", "word"), ("standard char", "word"), ("word", "word"),
    ("verbal", "word"), ("nominativ", "word"), ("denominativ", "word"), ("character", "word"), ("mista", "combined"),
    ("mixta", "combined"), ("other", "other"),
)  # fmt: skip


def mark_type(feature: str) -> str:
    """The type of a mark in one of our words, by what an office calls it; "" if that is not known."""
    plain = feature.casefold()
    return next((kind for part, kind in _TYPES if part in plain), "")


def best_language(texts: list[tuple[str, str]], own: str) -> tuple[list[str], str]:
    """The texts in one language, and which: English, else the application's language, else that of the first text."""
    given = {language.lower()[:2] for _, language in texts}
    first = texts[0][1].lower()[:2] if texts else ""
    language = next((one for one in ("en", own.lower()[:2], first) if one in given), "")
    return [text for text, stated in texts if stated.lower()[:2] == language], language


def words_of(texts: list[tuple[str, str]]) -> str:
    """The words of a mark: parts in the first language given belong together, the same in other languages does not."""
    return " ".join(dict.fromkeys(text for text, language in texts if language == texts[0][1]))


def goods_of(parts: list[Node], own: str) -> tuple[str, str]:
    """The goods of all classes, each in its best language, and the language of the first."""
    chosen = [best_language(part.values.get("goods", []), own) for part in parts]
    texts = dict.fromkeys(text for found, _ in chosen for text in found)
    return "; ".join(texts), next((language for found, language in chosen if found), "")


def joined_name(person: Node) -> str:
    """A person's or firm's name once, though several elements may repeat it."""
    names = person.all("organization") or person.all("whole") or [*person.all("given"), *person.all("family")]
    return " ".join(dict.fromkeys(names))


def holders(node: Node) -> list[Node]:
    """The owners of a mark: its holders if any are named, else its applicants."""
    return [part for part in node.below("holder") if joined_name(part)] or list(node.below("owner"))


def owner_key(node: Node, key: str) -> str:
    """A key under which an owner stands in another file: keys of different publishers never match."""
    return f"{urlsplit(node.first('namespace')).netloc} {key.rstrip('/').rpartition('/')[2].lstrip('0')}" if key else ""


def _assemble(nodes: Iterator[tuple[int, str, Node]]) -> Iterator[tuple[int, Values]]:
    """Marks, and the owners of files that hold owners alone.

    In the records that the USPTO serves the applicants stand after the mark, not in it: those after the one mark of a
    transaction are its own.
    """
    held: tuple[int, Node] | None = None
    applicants: list[Node] = []
    alone = True
    for line, name, node in chain(nodes, [(0, "", Node())]):
        if name in ("Applicant", "Holder"):
            if held is None:
                yield from _owner(line, node)
            elif len(applicants) < MOST_OWNERS:
                applicants.append(node)
            continue
        if held is not None:  # the next mark, or the end of the transaction
            alone = alone and name != "TradeMark"
            if alone and applicants:
                held[1].parts.setdefault("owner", []).extend(applicants)
            yield held[0], _mark(held[1])
            held, applicants = None, []
        if name == "TradeMark":
            held = (line, node)
        else:
            alone = True


def _owner(line: int, applicant: Node) -> Iterator[tuple[int, Values]]:
    key = owner_key(applicant, applicant.first("id"))
    if key:
        yield line, {"operation": "owner", "owner_key": key, "owner": joined_name(applicant)}


def _mark(node: Node) -> Values:
    office = node.first("office")
    american = office == "US"
    classes = [part for part in node.below("class") if not (american and dead_class(part.first("class_status")))]
    goods, language = goods_of(classes, node.first("language"))
    owners = [part for kind in ("holder", "owner") for part in node.below(kind) if part.values]
    parties = [(part.first("party"), joined_name(part)) for part in holders(node)]
    return {
        "operation": "delete" if node.first("operation").casefold() == "delete" else "",
        "text": words_of(node.values.get("text", [])),
        "mark_type": mark_type(node.first("feature")),
        "number": node.first("application"),
        "registration_number": node.first("registration", "international"),
        "office": office,
        "classes": (nice_only if american else ", ".join)(number for part in classes for number in part.all("number")),
        "goods": plain_goods(goods) if american else goods,
        "goods_language": language or ("en" if american else ""),
        "status": most_informative(map(node.first, ("status", "status_words")), office),
        "owner": current_owners(parties) or "; ".join(dict.fromkeys(node.all("owner"))),
        "owner_key": next((owner_key(node, part.first("key")) for part in owners if part.first("key")), ""),
        "filed": node.first("filed"),
        "priority": min((part.first("date") for part in node.below("priority") if part.first("date")), default=""),
        "registered": node.first("registered"),
        "expires": node.first("expires"),
        "territories": " ".join(node.all("designated")),
    }


LAYOUT = XmlLayout(
    name="WIPO ST.66 XML",
    records=frozenset({"TradeMark", "Applicant", "Holder"}),
    markers=frozenset({"TransactionData"}),
    fields={
        "ApplicationNumber": "application",
        "RegistrationNumber": "registration",
        "InternationalRegistrationNumber": "international",
        "RegistrationOfficeCode": "office",
        "ApplicationLanguageCode": "language",
        "MarkCurrentStatusCode": "status",
        "MarkCurrentStatusExternalDescriptionText": "status_words",
        "ApplicationDate": "filed",
        "RegistrationDate": "registered",
        "ExpiryDate": "expires",
        "PriorityDate": "date",
        "MarkFeature": "feature",
        "MarkVerbalElementText": "text",
        "ClassNumber": "number",
        "ClassNumberStatusCode": "class_status",
        "GoodsServicesDescription": "goods",
        "DesignatedCountryCode": "designated",
        "PartyTypeCode": "party",
        "OrganizationName": "organization",
        "OrganizationStandardName": "organization",
        "FreeFormatNameLine": "whole",
        "FormattedName": "formatted",
        "FirstName": "given",
        "LastName": "family",
        "Identifier": "key",
        "URI": "key",
        "ApplicantIdentifier": "id",
        "HolderIdentifier": "id",
    },
    groups={
        "ClassDescription": "class",
        "Applicant": "owner",
        "Holder": "holder",
        "ApplicantKey": "owner",
        "HolderKey": "holder",
        "Priority": "priority",
    },
    attributes={"TradeMark": {"operationCode": "operation"}},
    # Elements about other marks and other people.
    skipped=frozenset({
        "MarkRecordDetails", "RepresentativeDetails", "CorrespondenceAddress", "MarkImageDetails", "MarkEventDetails",
        "PublicationDetails", "StaffDetails", "ClassDescriptionExt",
    }),
    skipped_beginnings=(
        "Seniority", "Exhibition", "Opposition", "Appeal", "Related", "TradeMarkRelation", "Transformation",
        "Conversion", "Cancellation", "Licen", "Division", "Limitation", "BaseMark", "BasicMark", "BasicRecord",
        "Payment",
    ),
    translated=frozenset({"goods"}),
    assemble=_assemble,
)  # fmt: skip
