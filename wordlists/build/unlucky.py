"""Build the index of unlucky words, wordlists/unlucky.tsv, from the hand-written tables
wordlists/unlucky/*.tsv.

    python wordlists/build/unlucky.py [--to FOLDER]

One table, so that every language is asked at once. Keys and values, rows being numbered from 0 in each table:

    =FOLDED         language.row.how ...   how it stands in the table: w the word, 0 1 2 ... a form,
                                           t the transcription, s spelled without an umlaut (ae for a with
                                           dots)
    ~LANGUAGE:STEM  row ...                the folded stems of words and forms
    )LANGUAGE:CODE  row.how ...            broad sound classes of words and forms of severity 2 and 3
    ?LETTERS        language.row ...       words of severity 3 and five letters or more, with one letter left
    out #LANGUAGE.ROW   word, transcription, meaning, kind, severity (tabs between) !LANGUAGE       how many
    words @MEANING        kind severity          an English meaning that stands in several tables, as most of
    them rate it
"""

from __future__ import annotations

from collections import Counter, defaultdict
from pathlib import Path

from sources import folder_to_write, record_source, write_table

from namescreen.connotations.g2p_rules import TRANSCRIPTION, has_rules, sound_code
from namescreen.connotations.inflection import stem
from namescreen.connotations.orthography import single_deletions, without_umlauts
from namescreen.connotations.unlucky_entries import Entry, read_entries
from namescreen.tables import table_bytes, wordlists_folder
from namescreen.text import parse


def shapes(entry: Entry) -> list[tuple[str, str]]:
    """Every way the entry is written, each after how it stands in the table."""
    transcription = [("t", entry.transcription)] if entry.transcription else []
    return [("w", entry.word), *((str(at), form) for at, form in enumerate(entry.forms)), *transcription]


def spellings(entry: Entry) -> dict[str, str]:
    """Every folded spelling of the entry, with how it stands in the table."""
    found: dict[str, str] = {}
    for how, form in shapes(entry):
        letters = parse(form).letters
        if letters:
            found.setdefault(letters, how)
    for _, form in shapes(entry):
        spelled = parse(without_umlauts(form, entry.language)).letters
        if spelled:
            found.setdefault(spelled, "s")
    return found


def sounds(entry: Entry) -> dict[str, str]:
    """The sound codes of the entry, with how each stands in the table: of its word and forms in its own
    language, of its transcription in languages of other scripts."""
    own = has_rules(entry.language)
    found: dict[str, str] = {}
    for how, form in shapes(entry):
        if (how != "t") == own:
            found.setdefault(sound_code(form, entry.language if own else TRANSCRIPTION), how)
    return found


def draw(folder: Path) -> bytes:
    """The index of all tables in `folder`."""
    index: dict[str, dict[str, None]] = defaultdict(dict)
    meanings: dict[str, Counter[tuple[str, int]]] = defaultdict(Counter)
    for path in sorted(folder.glob("*.tsv")):
        entries = read_entries(path)
        language = path.stem
        index[f"!{language}"][str(len(entries))] = None
        for row, entry in enumerate(entries):
            forms = " ".join(entry.forms)
            fields = (entry.word, entry.transcription, entry.meaning, entry.kind, str(entry.severity), forms)
            index[f"#{language}.{row}"]["\t".join(fields)] = None
            meanings[entry.meaning.lower()][entry.kind, entry.severity] += 1
            for letters, how in spellings(entry).items():
                index[f"={letters}"][f"{language}.{row}.{how}"] = None
                if how != "s":
                    index[f"~{language}:{stem(letters, language)}"][str(row)] = None
                if entry.severity == 3 and len(letters) >= 5 and not how.isdecimal():
                    for rest in single_deletions(letters):
                        index[f"?{rest}"][f"{language}.{row}"] = None
            if entry.severity >= 2:
                for code, how in sounds(entry).items():
                    if len(code) >= 2:
                        index[f"){language}:{code}"][f"{row}.{how}"] = None
    for meaning, votes in meanings.items():
        if votes.total() >= 2:
            (kind, severity), _ = max(votes.items(), key=lambda vote: (vote[1], -vote[0][1], vote[0][0]))
            index[f"@{meaning}"][f"{kind} {severity}"] = None
    return table_bytes("unlucky", ((key, " ".join(values)) for key, values in index.items()))


WRITTEN = {
    "unlucky/*.tsv": "written for this project from memory, by kind and by semantic field; no list copied (see below)",
    "sounds/*.tsv": "grapheme-to-phoneme rules, written for this project from general knowledge of each spelling; "
    "tests/published/test_readings_sounds.py names the descriptions they are checked against",
    "inflection.tsv": "endings and prefixes, written for this project from memory of each language's grammar",
}
"""The hand-written tables that the index rests on."""


def record_written(to: Path) -> None:
    """A row of sources for each family of hand-written tables; its checksum is of the files in order of name."""
    for pattern, source in WRITTEN.items():
        files = sorted(wordlists_folder().glob(pattern))
        record_source(
            to,
            pattern,
            b"".join(file.read_bytes() for file in files),
            source=source,
            version=f"1, {len(files)} files" if len(files) > 1 else "1",
            licence="MIT, as the project",
            build="none, edited by hand; then python wordlists/build/unlucky.py",
        )


def main() -> None:
    """Draw, write, and say how much."""
    to = folder_to_write(__doc__, Path(__file__).resolve().parent.parent)
    contents = draw(wordlists_folder() / "unlucky")
    record_written(to)
    write_table(
        to, "unlucky.tsv", contents,
        source="drawn from wordlists/unlucky/*.tsv (written from memory), sounds/*.tsv and inflection.tsv",
        version="1", licence="MIT, as the project", build="python wordlists/build/unlucky.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
