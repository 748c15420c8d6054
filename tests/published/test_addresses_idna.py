"""Internationalised labels against UTS #46, RFC 5891 to 5893, RFC 3492 and the idna package as a reference."""

from __future__ import annotations

import idna
import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.addresses import a_label, ascii_name

# Unicode Technical Standard #46, "Unicode IDNA Compatibility Processing": its tables of deviation characters and of
# examples of processing, from memory; non-transitional processing is the project's stated choice. Where UTS #46 lets
# through what IDNA 2008 does not, the stricter rule holds.
UTS46 = [
    ("Bloß.de", "xn--blo-7ka.de", "deviation characters: sharp s stays itself"),
    ("faß.de", "xn--fa-hia.de", "deviation characters"),
    ("Faß.de", "xn--fa-hia.de", "deviation characters, with the mapping of case"),
    ("βόλος.com", "xn--nxasmm1c.com", "deviation characters: final sigma stays itself"),
    ("βόλοσ.com", "xn--nxasmq6b.com", "deviation characters: the other sigma"),
    ("ශ්‍රී.com", "xn--10cl1a0b660p.com", "deviation characters: zero width joiner"),
    ("ශ්රී.com", "xn--10cl1a0b.com", "deviation characters: without it"),
    ("نامه‌ای.com", "xn--mgba3gch31f060k.com", "deviation characters: zero width non-joiner"),
    ("Bücher.de", "xn--bcher-kva.de", "mapping of case"),
    ("u\u0308.com", "xn--tda.com", "examples of processing: composed"),
    ("xn--tda.com", "xn--tda.com", "examples of processing: an A-label as it is"),
    ("xn--u-ccb.com", None, "examples of processing: not in normal form C"),
    ("a⒈com", None, "examples of processing: a dot inside a character is disallowed by STD3"),
    ("xn--a-ecp.ru", None, "examples of processing: an A-label of a disallowed character"),
    ("xn--0.pt", None, "examples of processing: not valid Punycode"),
    ("日本語。ＪＰ", "xn--wgv71a119e.jp", "examples of processing: full stop and width mapped"),
    ("☕.us", None, "examples of processing: a symbol, which IDNA 2008 does not allow (RFC 5892)"),
    ("I♥NY.de", None, "symbols: the like"),
]


@pytest.mark.parametrize(("shown", "registered", "section"), UTS46)
def test_examples_of_uts_46(shown: str, registered: str | None, section: str) -> None:
    assert ascii_name(shown) == registered, section


# RFC 3492 section 7.1, Punycode sample strings that are allowed as labels: Arabic (A), simplified Chinese (B),
# Hindi (F), Japanese (G), Russian (I, its capital mapped), Vietnamese (K) and the kana of (R), from memory.
RFC3492 = [
    ("ليهمابتكلموشعربي؟", None, "A: holds a question mark, not allowed in a label"),
    ("他们为什么不说中文", "xn--ihqwcrb4cv8a8dqg056pqjye", "B"),
    ("почемужеонинеговорятпорусски", "xn--b1abfaaepdrnnbgefbadotcwatmq2g4l", "I"),
    ("TạisaohọkhôngthểchỉnóitiếngViệt", "xn--tisaohkhngthchnitingvit-kjcr8268qyxafd2f1b9g", "K"),
    ("そのスピードで", "xn--d9juau41awczczp", "R"),
]


@pytest.mark.parametrize(("shown", "registered", "sample"), RFC3492)
def test_sample_strings_of_punycode(shown: str, registered: str | None, sample: str) -> None:
    assert a_label(shown) == registered, sample


@pytest.mark.parametrize(
    ("shown", "allowed", "section"),
    [
        # RFC 5892 appendix A, contextual rules; RFC 5893 section 2, the bidi rule; RFC 5891 section 4.2.3.
        ("l·l", True, "RFC 5892 A.3: middle dot between two l"),
        ("a·l", False, "RFC 5892 A.3: middle dot elsewhere"),
        ("͵β", True, "RFC 5892 A.4: Greek numeral sign before Greek"),
        ("͵a", False, "RFC 5892 A.4: before Latin"),
        ("א׳", True, "RFC 5892 A.5: geresh after Hebrew"),
        ("a׳", False, "RFC 5892 A.5: after Latin"),
        ("・カ", True, "RFC 5892 A.7: katakana middle dot with katakana"),
        ("a・b", False, "RFC 5892 A.7: without"),
        ("א1", True, "RFC 5893 section 2, rule 3"),
        ("אa", False, "RFC 5893 section 2, rule 2: left-to-right letter in a right-to-left label"),
        ("1א", False, "RFC 5893 section 2, rule 1: begins with a digit"),
        ("\u0301a", False, "RFC 5891 section 4.2.3.2: begins with a combining mark"),
        ("éab--c", True, "RFC 5891 section 4.2.3.1: hyphens in other places"),
        ("é---b", False, "RFC 5891 section 4.2.3.1: hyphens in the third and fourth place"),
        ("-é", False, "RFC 5891 section 4.2.3.1: begins with a hyphen"),
    ],
)
def test_rules_of_idna_2008(shown: str, allowed: bool, section: str) -> None:
    assert (a_label(shown) is not None) == allowed, section


@given(st.text("abcäöüßéèñøåçœžčšкотмираλόγος日本語カナहिन्दी", min_size=1, max_size=20))
def test_agrees_with_the_idna_package(shown: str) -> None:
    try:
        expected = idna.encode(shown, uts46=True, std3_rules=True, transitional=False).decode()
    except idna.IDNAError:
        expected = None
    assert a_label(shown) == expected
    if expected is not None:
        assert a_label(idna.decode(expected)) == expected
