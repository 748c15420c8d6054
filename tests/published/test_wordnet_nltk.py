"""The lexicon against WordNet's own statistics and documentation, and against NLTK's reader."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from namescreen.lexicon import lexicon
from namescreen.tables import open_table


def test_numbers_of_words_and_senses() -> None:
    """Unique strings and synsets by part of speech in WordNet 3.0: wnstats(7WN)."""
    strings: Counter[str] = Counter()
    for _, value in open_table("wordnet-words.tsv").items():
        strings.update({entry[0] for entry in value.split("=")[0].split()})
    assert strings == {"n": 117_798, "v": 11_529, "a": 21_479, "r": 4_481}
    synsets = Counter(sense_id[0] for sense_id, _ in open_table("wordnet-senses.tsv").items())
    assert synsets == {"n": 82_115, "v": 13_767, "a": 18_156, "r": 3_621}


@pytest.mark.parametrize(
    ("form", "pos", "base"),
    [
        ("dogs", "n", "dog"),
        ("churches", "n", "church"),
        ("aardwolves", "n", "aardwolf"),
        ("abaci", "n", "abacus"),
        ("denied", "v", "deny"),
        ("hardrock", "r", None),
        ("book", "n", "book"),
        ("harder", "a", "hard"),
    ],
)
def test_base_forms(form: str, pos: str, base: str | None) -> None:
    """Examples of NLTK's own documentation of morphy (nltk/test/wordnet.doctest); "harder" from morphy(7WN)."""
    found = lexicon().bases_by_pos(form).get(pos, ())
    assert found[:1] == ((base,) if base else ())


@pytest.fixture(scope="module")
def wordnet(shared_folder: Path) -> Any:
    """NLTK's reader over the shared copy of WordNet 3.0."""
    import nltk.data
    from nltk.corpus import wordnet as reader

    nltk.data.path.insert(0, str(shared_folder / "nltk_data"))
    reader.ensure_loaded()
    return reader


METHODS = {
    "broader": "hypernyms", "instance of": "instance_hypernyms", "narrower": "hyponyms",
    "instance": "instance_hyponyms", "member of": "member_holonyms", "part of": "part_holonyms",
    "substance of": "substance_holonyms", "member": "member_meronyms", "part": "part_meronyms",
    "substance": "substance_meronyms", "similar": "similar_tos", "entails": "entailments", "causes": "causes",
    "topic": "topic_domains",
}  # fmt: skip


@pytest.mark.shared
def test_senses_and_relations_as_nltk_reads_them(wordnet: Any) -> None:
    words = lexicon()
    for sense_id, _ in list(open_table("wordnet-senses.tsv").items())[::211]:
        pos, offset = sense_id[0], int(sense_id[1:])
        synset = wordnet.synset_from_pos_and_offset(pos, offset)
        sense = words.sense(sense_id)
        assert [word.replace(" ", "_") for word in sense.words] == synset.lemma_names()
        assert sense.domain == synset.lexname()
        ours: dict[str, set[int]] = {}
        for relation in words.relations(sense):
            ours.setdefault(relation.kind, set()).add(int(relation.sense_id[1:]))
        for kind, method in METHODS.items():
            assert ours.get(kind, set()) == {other.offset() for other in getattr(synset, method)()}, kind
        opposite = {other.synset().offset() for lemma in synset.lemmas() for other in lemma.antonyms()}
        assert ours.get("opposite", set()) == opposite


@pytest.mark.shared
def test_words_and_counts_as_nltk_reads_them(wordnet: Any) -> None:
    words = lexicon()
    for word, value in list(open_table("wordnet-words.tsv").items())[::307]:
        own = {sense_id: int(count) for sense_id, _, count in
               (entry.partition(":") for entry in value.split("=")[0].split())}  # fmt: skip
        theirs = {
            f"{synset.pos().replace('s', 'a')}{synset.offset()}": lemma.count()
            for synset in wordnet.synsets(word.replace(" ", "_"))
            for lemma in synset.lemmas()
            if lemma.name().lower().replace("_", " ") == word
        }
        assert own == theirs
        assert words.known(word)


@pytest.mark.shared
def test_first_base_forms_as_nltk_finds_them(wordnet: Any) -> None:
    forms = [form for form, _ in open_table("wordnet-exceptions.tsv").items()][::61]
    forms += ["gardens", "potteries", "boxes", "taxes", "quizzes", "wishes", "women", "growing", "watered"]
    for form in forms:
        for pos in "nvar":
            theirs = wordnet.morphy(form.replace(" ", "_"), pos)
            ours = lexicon().bases_by_pos(form).get(pos, ())
            assert (theirs is None) == (not ours), (form, pos)
            assert theirs is None or theirs.replace("_", " ") in ours, (form, pos)
