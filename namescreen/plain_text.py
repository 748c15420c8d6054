"""Text that others wrote, made safe to show: in Markdown, in CSV, in a picture.

What a register or a shop holds may carry markup, line breaks or controls that turn the reading order round.
`visible` makes every such character seen; `cell` then takes away its meaning in Markdown. Nothing is dropped.
"""

from __future__ import annotations

import csv
import io
import textwrap
import unicodedata
from collections.abc import Iterable, Sequence
from typing import Any

from .expressions import expression
from .outcome import NotChecked

__all__ = ["bounded", "cell", "clauses", "csv_line", "in_one_sentence", "number", "number_beside", "plural",
           "score_words", "shorten", "some", "table", "unseen_escaped", "visible", "width", "wrapped"]  # fmt: skip

# Controls but the line break, soft hyphen, zero-width and direction characters, line separators, lone surrogates.
_UNSEEN = expression(
    "[\x00-\x09\x0b-\x1f\x7f-\x9f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]"
)
_LONG_WORD = expression(r"\S{257,}")  # longer than the name of any file
_WORD_SHOWN, _END_SHOWN = 80, 20
_LONGEST_MESSAGE = 1_200
_JOINERS = "\u200c\u200d"  # needed inside words of Persian and Indic scripts and inside emoji

# CommonMark 0.31.2, section 2.4: a backslash takes the meaning from any ASCII punctuation. Only what can
# carry meaning inside a line is escaped, so that the text stays readable: code, emphasis, links, HTML, table
# bars (GFM section 4.10), strikethrough (GFM section 6.5), formulas, and entities.
_ALWAYS = expression(r"[\\`*\[\]<>|~$]")
_UNDERSCORE = expression(r"(?<![^\W_])_|_(?![^\W_])")
_ENTITY = expression(r"&(?=#?\w+;)")
# GFM section 6.9 makes links of bare addresses.
_ADDRESS = expression(r"(?i)\b(https?|ftp)(?=://)|\b(mailto|xmpp)(?=:)|\b(www)(?=\.)")
_PADDED = 48  # columns; a wider column holds sentences, and padding it would only push the rest out of sight
_AT = expression(r"(?<=\w)@(?=\w)")
_LINE_START = expression(r"^(\d{1,9})(?=[.)](?:\s|$))|^(?=[+\-](?:\s|$)|#{1,6}(?:\s|$)|>|[-=\s]+$)")


# What a spreadsheet takes for a formula (OWASP, "CSV Injection", from memory); a number is none.
_FORMULA = expression(r"(?![+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?$)[=+\-@＝＋－＠]")


def visible(text: str) -> str:
    """`text` on one line, with every control, override and unassigned character written as ⟨U+202E⟩."""
    text = " ".join(text.split())
    if text.isascii() and text.isprintable():
        return text
    shown: list[str] = []
    for place, character in enumerate(text):
        kind = unicodedata.category(character)
        if (kind.startswith("C") and not _joins(text, place)) or kind in ("Zl", "Zp"):
            shown.append(f"⟨U+{ord(character):04X}⟩")
        elif kind.startswith("Z"):
            shown.append(" ")
        elif kind in ("Mn", "Me") and not place:
            shown.append("◌" + character)
        else:
            shown.append(character)
    return " ".join("".join(shown).split())


def unseen_escaped(text: str) -> str:
    """JSON `text` with every unseen character as its escape: equal as JSON, and safe on a terminal."""
    return _UNSEEN.sub(lambda found: f"\\u{ord(found[0]):04x}", text)


def _joins(text: str, place: int) -> bool:
    """Whether the character at `place` is a joiner between two characters that are not ASCII."""
    return text[place] in _JOINERS and 0 < place < len(text) - 1 and not (text[place - 1] + text[place + 1]).isascii()


def shorten(text: str, most: int) -> str:
    """`text` made visible and cut to at most `most` characters, with … where something is left out; between words, as
    far as that leaves half of what there is room for."""
    text = visible(text)
    if len(text) <= most:
        return text
    end = most - 1
    if text[end] != " ":
        between = text.rfind(" ", 0, end)
        end = between if 2 * between >= most else end
    while end > 1 and unicodedata.combining(text[end]):
        end -= 1
    return text[:end].rstrip() + "…"


def bounded(text: str) -> str:
    """A message with no word and no whole longer than anyone reads: of both the middle is left out. What a user gave
    stands quoted in messages, and may be a file's worth."""
    text = _LONG_WORD.sub(lambda found: f"{found[0][:_WORD_SHOWN]}…{found[0][-_END_SHOWN:]}", text)
    if len(text) <= _LONGEST_MESSAGE:
        return text
    half = _LONGEST_MESSAGE // 2
    return f"{text[:half].rstrip()} … {text[-half:].lstrip()}"


def clauses(text: str, most: int) -> str:
    """As many of the clauses of `text`, parted by semicolons, as go into `most` characters, each of them whole; of a
    first one that is longer its beginning."""
    told, *further = visible(text).split("; ")
    told = shorten(told, most)
    for one in further:
        if len(told) + 2 + len(one) > most:
            break
        told += f"; {one}"
    return told


def cell(text: str) -> str:
    """`text` as Markdown that shows exactly `visible(text)`, in a table cell or within a line."""
    text = _ALWAYS.sub(r"\\\g<0>", visible(text))
    text = _UNDERSCORE.sub(r"\\_", text)
    text = _ENTITY.sub(r"\\&", text)
    text = _AT.sub(r"\\@", text)
    text = _ADDRESS.sub(r"\g<0>\\", text)
    return _LINE_START.sub(lambda m: f"{m[1]}\\" if m[1] else "\\", text)


def csv_line(cells: Iterable[str]) -> str:
    """A row of CSV (RFC 4180, but for the line feed at its end), every cell `visible`.

    A text that a spreadsheet would take for a formula is set behind an apostrophe.
    """
    out = io.StringIO()
    safe = (f"'{text}" if _FORMULA.match(text) else text for text in map(visible, cells))
    csv.writer(out, lineterminator="\n").writerow(list(safe))
    return out.getvalue()


def number(value: float) -> str:
    """A score with two decimals; never rounds to 1.00 what is not identical, nor to 0.00 what is above
    nothing."""
    shown = f"{value:.2f}"
    if shown == "1.00" and value < 1:
        return "0.99"
    return "0.01" if shown == "0.00" and value > 0 else shown


def number_beside(value: float, lines: Iterable[float]) -> str:
    """A score as `number` shows it, but never rounded up onto one of the `lines` that it stays below, which would say
    that it reaches it."""
    shown = number(value)
    return next((number(line - 0.01) for line in lines if value < line and shown == number(line)), shown)


def score_words(value: float | NotChecked, why: str = "") -> str:
    """A score with two decimals, or that it was not checked, and in a word why."""
    return f"not checked{why and f': {why}'}" if isinstance(value, NotChecked) else number(value)


def plural(count: int, one: str, many: str = "") -> str:
    """`count` with its noun: 1 mark, 2 marks; thousands set apart with a comma."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def some(items: Iterable[str], last: str = "and") -> str:
    """A list in words: a, b and c."""
    parts = list(items)
    return f" {last} ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else "".join(parts)


def in_one_sentence(sentences: Iterable[str]) -> str:
    """Sentences as one, with semicolons for their full stops."""
    return "; ".join(sentence.rstrip(".") for sentence in sentences)


def width(text: str) -> int:
    """Columns `text` takes in a terminal: wide East Asian characters two, combining marks none."""
    return sum(
        0 if unicodedata.category(c) in ("Mn", "Me", "Cf") else 2 if unicodedata.east_asian_width(c) in "WF" else 1
        for c in text
    )


def wrapped(text: str, columns: int, **options: Any) -> list[str]:
    """Lines of `text`, folded between words so that none takes more than `columns` of a terminal; `options` are those
    of `textwrap.wrap`."""
    # While lines are folded, a NUL, which no visible text contains, stands beside a character that takes two columns.
    padded = "".join(one + "\0" if width(one) == 2 else one for one in text)
    return [line.replace("\0", "") for line in textwrap.wrap(padded, columns, **options)]


def table(heads: Sequence[str], rows: Iterable[Sequence[str]], numeric: Iterable[int] = ()) -> str:
    """A Markdown table of raw texts, every cell escaped; columns aligned so that it reads well as it stands.

    `numeric` columns are set to the right. Columns that hold sentences are not padded.
    """
    lines = [[cell(text) for text in heads], *([cell(text) for text in row] for row in rows)]
    right = set(numeric)
    widths = [max(3, *(width(line[column]) for line in lines)) for column in range(len(heads))]
    widths = [wide if wide <= _PADDED else max(3, width(head)) for wide, head in zip(widths, lines[0], strict=True)]

    def laid(line: Sequence[str]) -> str:
        parts = []
        for column, text in enumerate(line):
            gap = " " * max(0, widths[column] - width(text))
            parts.append(gap + text if column in right else text + gap)
        return "| " + " | ".join(parts) + " |"

    rule = [("-" * (w - 1) + ":") if column in right else "-" * w for column, w in enumerate(widths)]
    return "\n".join([laid(lines[0]), "| " + " | ".join(rule) + " |", *(laid(line) for line in lines[1:])]) + "\n"
