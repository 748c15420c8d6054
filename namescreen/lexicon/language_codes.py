"""The languages whose words are shipped, by BCP 47 code, and the other codes people write for them."""

from __future__ import annotations

from collections.abc import Iterable

__all__ = ["COMPOUNDING", "LANGUAGES", "OTHER_SCRIPTS", "code", "code_named", "language_name", "wanted"]

LANGUAGES = {
    "de": "German", "fr": "French", "es": "Spanish", "it": "Italian", "pt": "Portuguese", "nl": "Dutch",
    "sv": "Swedish", "da": "Danish", "nb": "Norwegian", "fi": "Finnish", "pl": "Polish", "cs": "Czech",
    "tr": "Turkish", "hu": "Hungarian", "ro": "Romanian", "el": "Greek", "ru": "Russian", "uk": "Ukrainian",
    "ar": "Arabic", "he": "Hebrew", "hi": "Hindi", "id": "Indonesian", "ja": "Japanese", "zh": "Chinese",
    "ko": "Korean",
}  # fmt: skip

_NAMED_ONLY = {
    "en": "English", "bg": "Bulgarian", "et": "Estonian", "hr": "Croatian", "lt": "Lithuanian", "lv": "Latvian",
    "sk": "Slovak", "sl": "Slovene", "la": "Latin",
    "ga": "Irish", "cy": "Welsh", "gd": "Scottish Gaelic", "ca": "Catalan", "gl": "Galician", "eu": "Basque",
    "fy": "Frisian", "lb": "Luxembourgish", "rm": "Romansh", "mi": "Maori", "mt": "Maltese", "is": "Icelandic",
    "zu": "Zulu", "xh": "Xhosa", "af": "Afrikaans",
}  # fmt: skip

COMPOUNDING = frozenset({"de", "nl", "sv", "da", "nb", "fi", "hu"})
"""Languages that write a compound as one word whose last part says what the thing is."""

OTHER_SCRIPTS = frozenset({"el", "ru", "uk", "ar", "he", "hi", "ja", "zh", "ko"})
"""Languages that are not written in Latin letters."""

# ISO 639-2/3 codes (as dictionaries and wordnets name their files), macrolanguages and superseded codes.
_OTHER_CODES = {
    "no": "nb", "nn": "nb", "iw": "he", "in": "id", "cmn": "zh", "zho": "zh", "deu": "de", "ger": "de",
    "fra": "fr", "fre": "fr", "spa": "es", "ita": "it", "por": "pt", "nld": "nl", "dut": "nl", "swe": "sv",
    "dan": "da", "nob": "nb", "nor": "nb", "nno": "nb", "fin": "fi", "pol": "pl", "ces": "cs", "cze": "cs",
    "tur": "tr", "hun": "hu", "ron": "ro", "rum": "ro", "ell": "el", "gre": "el", "rus": "ru", "ukr": "uk",
    "ara": "ar", "arb": "ar", "heb": "he", "hin": "hi", "ind": "id", "jpn": "ja", "kor": "ko", "eng": "en",
}  # fmt: skip


def code(tag: str) -> str:
    """The two-letter code for a language tag: pt-BR -> pt, no -> nb, deu -> de; the first part of an unknown tag."""
    first = tag.strip().lower().replace("_", "-").partition("-")[0]
    return _OTHER_CODES.get(first, first)


def language_name(tag: str) -> str:
    """The English name of a language, or the tag itself for one that nothing here is about."""
    return LANGUAGES.get(code(tag)) or _NAMED_ONLY.get(code(tag), tag)


def code_named(name: str) -> str:
    """The code of a language given by its English name: German -> de; "" if it is none that is known here."""
    plain = name.strip().casefold()
    return next((tag for tag, known in (LANGUAGES | _NAMED_ONLY).items() if known.casefold() == plain), "")


def wanted(languages: Iterable[str] | None) -> tuple[str, ...]:
    """The asked-for languages by their codes, each once, in the order given; all of them for None."""
    return tuple(LANGUAGES) if languages is None else tuple(dict.fromkeys(code(tag) for tag in languages))
