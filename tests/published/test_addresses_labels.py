"""Rules for labels and names, each row with the section it comes from, and the RFCs' own examples (from memory)."""

from __future__ import annotations

import pytest

from namescreen.addresses import full_name_problem, label_problem

ALLOWED = [
    ("a", "RFC 1035 section 2.3.1: a letter is a label"),
    ("VENERA", "RFC 1034 section 3.1: the example tree"),
    ("XX", "RFC 1034 section 3.1"),
    ("A-B", "RFC 1035 section 2.3.1: a hyphen inside"),
    ("3com", "RFC 1123 section 2.1: the first character may be a digit (its own example, 3Com.COM)"),
    ("0", "RFC 1123 section 2.1"),
    ("a" * 63, "RFC 1035 section 2.3.4: 63 octets"),
    ("a--b", "RFC 5891 section 4.2.3.1: hyphens in the second and third place only"),
    ("abc--d", "RFC 5891 section 4.2.3.1: hyphens in the fourth and fifth place"),
    ("xn--bcher-kva", "RFC 5890 section 2.3.2.1: an A-label"),
]
REFUSED = [
    ("", "RFC 1035 section 3.1: the empty label is the root's"),
    ("a" * 64, "RFC 1035 section 2.3.4: 63 octets"),
    ("-a", "RFC 1035 section 2.3.1; RFC 1123 section 2.1"),
    ("a-", "RFC 1035 section 2.3.1"),
    ("-", "RFC 1035 section 2.3.1"),
    ("a_b", "RFC 1035 section 2.3.1: no underscore in a host's name"),
    ("a b", "RFC 1035 section 2.3.1"),
    ("a.b", "RFC 1035 section 2.3.1: a dot divides labels"),
    ("bücher", "RFC 1035 section 2.3.1: not in ASCII"),
    ("ab--c", "RFC 5891 section 4.2.3.1: hyphens in the third and fourth place"),
    ("xn--", "RFC 5890 section 2.3.2.1: no A-label"),
    ("xn--a", "RFC 5890 section 2.3.2.1: a fake A-label"),
    ("xn--abc-", "RFC 5890 section 2.3.2.1: a fake A-label"),
    ("xn--bcher-KVA-", "RFC 1035 section 2.3.1: ends with a hyphen"),
]
NAMES = [
    ("ISI.EDU", True, "RFC 1034 section 3.1"),
    ("VENERA.ISI.EDU.", True, "RFC 1034 section 3.1: with the root's dot"),
    ("3Com.COM", True, "RFC 1123 section 2.1"),
    (".".join(["a" * 63] * 3 + ["b" * 61]), True, "RFC 1035 section 2.3.4: 253 written, 255 octets with lengths"),
    (".".join(["a" * 63] * 3 + ["b" * 62]), False, "RFC 1035 section 2.3.4: 254 written"),
    ("a..b", False, "RFC 1035 section 3.1: an empty label inside"),
    (".a", False, "RFC 1035 section 3.1"),
    ("a.-b", False, "RFC 1035 section 2.3.1"),
]


@pytest.mark.parametrize(("label", "section"), ALLOWED)
def test_allowed(label: str, section: str) -> None:
    assert label_problem(label) is None, section


@pytest.mark.parametrize(("label", "section"), REFUSED)
def test_refused_and_the_section_named(label: str, section: str) -> None:
    problem = label_problem(label)
    assert problem is not None, section
    assert problem == "it is empty" or "RFC" in problem


@pytest.mark.parametrize(("name", "allowed", "section"), NAMES)
def test_whole_names(name: str, allowed: bool, section: str) -> None:
    assert (full_name_problem(name) is None) == allowed, section
