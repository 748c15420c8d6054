"""Answers in the shapes that the RFCs print, from memory, shortened where a member plays no part."""

from __future__ import annotations

import json

import pytest

from namescreen.addresses.answers import NOT_IN_REGISTRY, finding_of
from namescreen.addresses.bootstrap import Bootstrap, read_bootstrap
from namescreen.addresses.findings import Answer, Asked, Question
from namescreen.addresses.questions import RDAP, WEBFINGER, domain_question, handle_questions

# RFC 9083 section 5.3: the domain object.
DOMAIN_OBJECT = """
{
  "objectClassName" : "domain",
  "handle" : "XXXX",
  "ldhName" : "xn--fo-5ja.example",
  "unicodeName" : "fóo.example",
  "variants" :
  [
    { "relation" : [ "registered", "conjoined" ],
      "variantNames" : [ { "ldhName" : "xn--fo-cka.example", "unicodeName" : "fõo.example" } ] }
  ],
  "status" : [ "locked", "transfer prohibited" ],
  "publicIds": [ { "type": "ENS_Auth ID", "identifier": "1234567890" } ],
  "nameservers" :
  [
    { "objectClassName" : "nameserver", "handle" : "XXXX", "ldhName" : "ns1.example.com", "status" : [ "active" ] }
  ],
  "secureDNS": { "zoneSigned": true, "delegationSigned": true, "maxSigLife": 604800 },
  "remarks" : [ { "description" : [ "She sells sea shells down by the sea shore." ] } ],
  "links" : [ { "value": "https://example.net/domain/xn--fo-5ja.example", "rel" : "self",
                "href" : "https://example.net/domain/xn--fo-5ja.example", "type" : "application/rdap+json" } ],
  "port43" : "whois.example.net",
  "events" :
  [
    { "eventAction" : "registration", "eventDate" : "1990-12-31T23:59:59Z" },
    { "eventAction" : "last changed", "eventDate" : "1991-12-31T23:59:59Z", "eventActor" : "joe@example.com" },
    { "eventAction" : "transfer", "eventDate" : "1991-12-31T23:59:59Z", "eventActor" : "joe@example.com" },
    { "eventAction" : "expiration", "eventDate" : "2016-12-31T23:59:59Z", "eventActor" : "joe@example.com" }
  ],
  "entities" :
  [
    {
      "objectClassName" : "entity",
      "handle" : "XXXX",
      "vcardArray":[ "vcard", [ ["version", {}, "text", "4.0"], ["fn", {}, "text", "Joe User"],
                                ["kind", {}, "text", "individual"] ] ],
      "status" : [ "validated", "locked" ],
      "roles" : [ "registrant" ]
    }
  ]
}
"""

# RFC 9224 section 4: the domain name registry, with its own names.
BOOTSTRAP = """
{
  "version": "1.0",
  "publication": "2024-01-07T10:11:12Z",
  "description": "Some text",
  "services": [
    [ ["net", "com"], ["https://registry.example.com/myrdap/"] ],
    [ ["org", "mytld"], ["https://example.org/"] ],
    [ ["xn--zckzah"], ["https://example.net/rdap/xn--zckzah/", "http://example.net/rdap/xn--zckzah/"] ]
  ]
}
"""

# RFC 7033 section 3.1: the answer about an account, shortened.
DESCRIPTOR = """
{
  "subject" : "acct:bob@example.com",
  "aliases" : [ "https://www.example.com/~bob/" ],
  "properties" : { "http://example.com/ns/role" : "employee" },
  "links" : [ { "rel" : "http://webfinger.example/rel/profile-page", "href" : "https://www.example.com/~bob/" } ]
}
"""


def answer(body: str, kind: str) -> Answer:
    return Answer(200, (("content-type", kind),), body.encode())


def test_the_domain_object_of_rfc_9083() -> None:
    question = Question(Asked.domain, "xn--fo-5ja.example", "https://example.net/domain/xn--fo-5ja.example", RDAP)
    found = finding_of(question, answer(DOMAIN_OBJECT, "application/rdap+json; charset=utf-8"))
    assert found.finding == "registered since 1990-12-31 until 2016-12-31"
    assert (found.taken, found.registrar) == (True, "")  # the one entity is the registrant, who is not told


def test_the_same_with_a_registrar() -> None:
    data = json.loads(DOMAIN_OBJECT)
    data["entities"][0]["roles"] = ["registrar"]  # RFC 9083 section 10.2.4 lists the roles
    question = Question(Asked.domain, "xn--fo-5ja.example", "https://example.net/domain/xn--fo-5ja.example", RDAP)
    assert finding_of(question, answer(json.dumps(data), "application/rdap+json")).registrar == "Joe User"


def test_the_error_answer_of_rfc_9083_section_6_decides_nothing() -> None:
    body = '{"errorCode": 418, "title": "Your Beverage Choice is Not Available", "description": ["no coffee"]}'
    question = Question(Asked.domain, "a.example", "https://example.net/domain/a.example", RDAP)
    assert finding_of(question, answer(body, "application/rdap+json")).taken is None
    assert finding_of(question, Answer(418, (), body.encode())).taken is None


@pytest.mark.parametrize(
    ("status", "taken"),
    [(404, False), (400, None), (401, None), (403, None), (429, None), (500, None), (503, None), (204, None)],
)
def test_statuses_of_rfc_7480_section_5(status: int, taken: bool | None) -> None:
    question = Question(Asked.domain, "a.example", "https://example.net/domain/a.example", RDAP)
    found = finding_of(question, Answer(status))
    assert found.taken is taken
    assert (found.finding == NOT_IN_REGISTRY) == (status == 404)


@pytest.mark.parametrize(
    ("domain", "url"),
    [
        # RFC 9224 section 4: "the base RDAP URL for example.com" and the like, then RFC 9082 section 3.1.3.
        ("a.b.example.com", "https://registry.example.com/myrdap/domain/a.b.example.com"),
        ("example.org", "https://example.org/domain/example.org"),
        ("example.xn--zckzah", "https://example.net/rdap/xn--zckzah/domain/example.xn--zckzah"),
        ("example.info", None),
    ],
)
def test_the_bootstrap_file_of_rfc_9224(domain: str, url: str | None) -> None:
    servers = read_bootstrap(BOOTSTRAP.encode())
    assert isinstance(servers, Bootstrap)
    assert servers.publication == "2024-01-07T10:11:12Z"
    question = domain_question(domain, servers)
    assert (question.url if isinstance(question, Question) else None) == url


def test_the_account_of_rfc_7033() -> None:
    (question,) = handle_questions("bob", ["example.com"], [])
    # RFC 7033 section 4.1: the parameter is percent-encoded.
    assert question.url == "https://example.com/.well-known/webfinger?resource=acct%3Abob%40example.com"
    assert question.accept == WEBFINGER
    assert finding_of(question, answer(DESCRIPTOR, "application/jrd+json")).taken is True
    assert finding_of(question, Answer(404)).taken is False  # section 4.2
    assert finding_of(question, Answer(400)).taken is None  # section 4.2: the request was not understood
