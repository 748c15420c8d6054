"""WIPO Standard ST.96, as the offices use it: the USPTO's records, Canada, Switzerland, Czechia, and, as JSON, Norway.

Element names are those of ST.96 (versions 1 to 8). Two offices mean other things by the same name: in the USPTO's
records LegalEntityName is the kind of owner ("CORPORATION"), in Canada's the owner.
"""

from __future__ import annotations

from collections.abc import Iterator

from .st66 import goods_of, holders, joined_name, mark_type, words_of
from .status import most_informative
from .uspto import current_owners, dead_class, drawing_type, nice_only, plain_goods
from .xml_records import Node, Values, XmlLayout

__all__ = ["LAYOUT", "is_st96", "marks_in_json"]

DEEPEST_JSON = 60
_TEXT_KEYS = ("value", "$", "#text", "_text", "content")
"""Where JSON made of XML keeps the text of an element that has attributes."""
_STATUS = ("status_inside", "status", "status_outside")
_US_STATUS = ("status", "status_inside", "status_outside")
_NOT_NICE = {"primary", "domestic"}


def _assemble(nodes: Iterator[tuple[int, str, Node]]) -> Iterator[tuple[int, Values]]:
    for line, _, node in nodes:
        yield line, mark_of(node)


def mark_of(node: Node) -> Values:
    """The fields of one record."""
    office = node.first("office")
    american = office == "US"
    goods_parts = [part for part in node.below("goods") if not (american and _dead(part))]
    if not node.parts.get("goods") and not goods_parts:
        goods_parts = [node]
    kinds = [part for one in goods_parts for part in one.below("classification")]
    described = [part for one in goods_parts for part in one.below("class")]
    classes = [
        number for part in kinds if part.first("kind").casefold() not in _NOT_NICE for number in part.all("number")
    ]
    if not classes:
        classes = [number for part in described for number in part.all("number")]
    texts = [*described, *goods_parts]
    goods, language = goods_of([part for part in texts if "goods" in part.values], node.first("language"))
    return {
        "operation": "delete" if node.first("operation").casefold() == "delete" else "",
        "text": words_of(node.values.get("text", []) or node.values.get("significant", [])),
        "mark_type": mark_type(node.first("feature")) or drawing_type(node.first("drawing") if american else ""),
        "number": node.first("application") or _national(node.first("st13")),
        "registration_number": node.first("registration", "international"),
        "office": office,
        "classes": (nice_only if american else ", ".join)(classes),
        "goods": plain_goods(goods) if american else goods,
        "goods_language": language or ("en" if american else ""),
        # The offices' own status texts are finer than the standard's, and come with their own codes.
        "status": most_informative(map(node.first, _US_STATUS if american else _STATUS), office),
        "owner": _owners(node, american),
        "filed": node.first("filed"),
        "priority": min((date for part in node.below("priority") if (date := part.first("date", "filed"))), default=""),
        "registered": node.first("registered"),
        "expires": node.first("expires"),
        "territories": " ".join(node.all("designated")),
    }


def _dead(goods: Node) -> bool:
    return any(dead_class(code) for part in (goods, *goods.below("class")) for code in part.all("class_status"))


def _owners(node: Node, american: bool) -> str:
    names = []
    for part in holders(node):
        name = joined_name(part) or ("" if american else part.first("legal"))
        # Only the USPTO numbers the generations of owners; elsewhere a sequence number tells joint owners apart.
        names.append((part.first("sequence") if american else "", name))
    return current_owners(names)


def _national(number: str) -> str:
    """The office's own number in one of WIPO ST.13: of Canada's the last nine digits, seven and an extension of two."""
    if len(number) == 15 and number.isdigit():
        return f"{int(number[-9:-2])}-{number[-2:]}"
    return number


LAYOUT = XmlLayout(
    name="WIPO ST.96 XML",
    records=frozenset({"Trademark", "KRTrademark"}),
    fields={
        "ApplicationNumber": "application",
        "ApplicationNumberText": "application",
        "ST13ApplicationNumber": "st13",
        "RegistrationNumber": "registration",
        "InternationalRegistrationNumber": "international",
        "RegistrationOfficeCode": "office",
        "ApplicationLanguageCode": "language",
        "MarkCurrentStatusCode": "status",
        "MarkCurrentStatusInternalDescriptionText": "status_inside",
        "MarkCurrentStatusExternalDescriptionText": "status_outside",
        "ApplicationDate": "filed",
        "RegistrationDate": "registered",
        "ExpiryDate": "expires",
        "PriorityApplicationFilingDate": "date",
        "MarkFeatureCategory": "feature",
        "MarkFeatureCode": "drawing",
        "MarkVerbalElementText": "text",
        "MarkSignificantVerbalElementText": "significant",
        "ClassNumber": "number",
        "ClassificationKindCode": "kind",
        "NationalStatusCode": "class_status",
        "GoodsServicesDescriptionText": "goods",
        "DesignatedCountryCode": "designated",
        "LegalEntityName": "legal",
        "OrganizationStandardName": "organization",
        "OrganizationName": "organization",
        "EntityName": "whole",
        "PersonFullName": "whole",
        "FirstName": "given",
        "LastName": "family",
    },
    groups={
        "GoodsServices": "goods",
        "GoodsServicesClassification": "classification",
        "ClassDescription": "class",
        "Applicant": "owner",
        "Holder": "holder",
        "Priority": "priority",
    },
    attributes={
        "Trademark": {"operationCategory": "operation"},
        "Applicant": {"sequenceNumber": "sequence"},
    },
    # Elements about other marks and other people.
    skipped=frozenset({
        "NationalCorrespondent", "AssociatedMarkBag", "MarkEventBag", "PublicationBag",
        "MarkImageBag", "MarkSoundBag", "PostalAddressBag", "NationalTrademarkInformation", "StaffBag",
    }),
    skipped_beginnings=(
        "Correspond", "Record", "Represent", "Seniority", "Exhibition", "Opposition", "Appeal", "Related",
        "Transformation", "Conversion", "Cancellation", "Licen", "Proceeding", "Division", "Limitation", "BaseMark",
        "BasicMark", "LegalProceeding", "Document", "Payment", "MarkEvent", "Assign",
    ),
    translated=frozenset({"goods"}),
    assemble=_assemble,
)  # fmt: skip


def is_st96(value: object) -> bool:
    """Whether a JSON value holds marks as ST.96 names them."""
    return next(_records(value, 0), None) is not None


def marks_in_json(value: object) -> Iterator[Values]:
    """The marks of a JSON value that has the elements of ST.96 as keys, in whatever case and however nested."""
    for record in _records(value, 0):
        node = Node()
        _gather(record, node, 0)
        yield {**mark_of(node), "format": "WIPO ST.96 as JSON"}


def _records(value: object, depth: int) -> Iterator[dict[str, object]]:
    if depth > DEEPEST_JSON:
        return
    if isinstance(value, list):
        for one in value:
            yield from _records(one, depth + 1)
    elif isinstance(value, dict):
        for key, one in value.items():
            if key.casefold() == "trademark" and isinstance(one, dict | list):
                yield from (record for record in (one if isinstance(one, list) else [one]) if isinstance(record, dict))
            else:
                yield from _records(one, depth + 1)


def _gather(value: object, node: Node, depth: int) -> None:
    if depth > DEEPEST_JSON:
        return
    if isinstance(value, list):
        for one in value:
            _gather(one, node, depth + 1)
    elif isinstance(value, dict):
        for key, one in value.items():
            _gather_element(key[:1].upper() + key[1:], one, node, depth)


def _gather_element(name: str, value: object, node: Node, depth: int) -> None:
    action = LAYOUT.actions[name] if name in LAYOUT.actions else LAYOUT.action(name)
    if action is None or action.kind == "attributes":
        _gather(value, node, depth + 1)
    elif action.kind == "group":
        for one in value if isinstance(value, list) else [value]:
            part = Node()
            node.parts.setdefault(action.name, []).append(part)
            _gather(one, part, depth + 1)
    elif action.kind == "field":
        for one in value if isinstance(value, list) else [value]:
            text = next((one[key] for key in _TEXT_KEYS if key in one), one) if isinstance(one, dict) else one
            if isinstance(text, dict | list):
                _gather(text, node, depth + 1)
            elif text not in (None, ""):
                language = str(one.get("languageCode", "")) if isinstance(one, dict) else ""
                node.add(action.name, " ".join(str(text).split()), language)
