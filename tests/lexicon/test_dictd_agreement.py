"""Our words for goods beside dictionaries of others: those in dictd's format that the machine has (Debian packages the
FreeDict dictionaries so, dict-freedict-deu-eng and the like). They are only compared, nothing of them is kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.connotations.dictd import Dictd, dictd_dictionaries
from namescreen.connotations.dictionaries import DICTD_FOLDERS
from namescreen.lexicon import lexicon, translations
from namescreen.tables import wordlists_folder
from namescreen.text import fold, tokenize

LEAST_AGREEMENT = 0.8
"""Of our words that the dictionary has. Seen with the FreeDict dictionaries of 2022: de 0.95 of 1,161 words, nl 0.90 of
440, fr 0.96 of 287, es 0.91 of 202, sv 0.92 of 161. Those that differ, read one by one, are nearly all other senses (a
noun of goods beside a verb, a part beside the whole) or synonyms that WordNet does not join (Holzhammer: maul)."""
LEAST_WORDS = 50


def listed(language: str) -> list[str]:
    """Our words for goods in a language, as written."""
    found: dict[str, None] = {}
    for path in sorted((wordlists_folder() / "curated").glob("goods_words*.txt")):
        columns: list[str] = []
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.startswith("# english"):
                columns = [cell.strip() for cell in line.removeprefix("# ").partition(";")[0].split("|")]
            elif line and not line.startswith("#") and language in columns:
                cell = line.split("|")[columns.index(language)]
                found.update(dict.fromkeys(word for word in cell.split() if len(word) > 3 and word.isalpha()))
    return list(found)


def agrees(word: str, language: str, dictionary: Dictd) -> bool | None:
    """Whether one of our readings is in the dictionary's first meanings, or means much the same; None without one."""
    texts = [one.text for one in dictionary.meanings(fold(word), language)]
    said = {token for text in texts for token in tokenize(text)}
    if not said:
        return None
    ours = {token for one in translations(word, language) for token in one.english.split()}
    words = lexicon()
    return bool(ours & said) or any((words.closeness(one, other) or 0.0) >= 0.65 for one in ours for other in said)


def agreement(dictionary: Dictd) -> tuple[float, int, list[str]]:
    """The share that agrees, of how many words, and those that do not."""
    (language,) = dictionary.languages
    answers = {word: agrees(word, language, dictionary) for word in listed(language)[::5]}
    known = {word: answer for word, answer in answers.items() if answer is not None}
    return sum(known.values()) / max(len(known), 1), len(known), [word for word, answer in known.items() if not answer]


def test_installed_dictionaries_agree() -> None:
    dictionaries = [one for folder in DICTD_FOLDERS for one in dictd_dictionaries(Path(folder)) if one.languages]
    asked = [one for one in dictionaries if next(iter(one.languages)) in ("de", "nl", "fr", "es", "it", "pt", "sv")]
    if not asked:
        pytest.skip("no dictd dictionary is installed (Debian: dict-freedict-deu-eng)")
    for dictionary in asked:
        share, of, others = agreement(dictionary)
        assert of < LEAST_WORDS or share >= LEAST_AGREEMENT, f"{dictionary.name}: {share:.2f} of {of}; {others[:20]}"
