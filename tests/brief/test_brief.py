from __future__ import annotations

import dataclasses
import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.brief import Brief, Concept, CostItem, Costs, load_brief, parse_brief, starter
from namescreen.errors import InputError, Problem
from namescreen.goods import list_of_classes
from namescreen.territories import COUNTRIES, UNIONS, domain_endings
from tests.conftest import Run

WHOLE = """
product = "A  herb planter"
goods = "planters"
classes = [31, 21, 21]
concepts = ["herb", { word = "spring", senses = ["season"] }]
avoid = ["smart"]
tone = ["warm"]
markets = ["nl", "GB"]
languages = ["nl", "pt-BR"]
marks = ["lists/marks.csv", "/far/away.csv"]
shortlist = ["Loamlet", "Mistpatch"]
seed = 5
date = 2026-05-31
[length]
least_letters = 4
most_letters = 10
most_syllables = 3
most_words = 2
[addresses]
endings = [".Com", "co.uk", "москва"]
handle_lengths = [15, 30]
handle_servers = ["Social.example", "localhost:8080"]
handle_patterns = ["https://shop.example/{handle}"]
[weights.ranking]
sound = 2
[weights.comparison]
marks = 0.5
[costs]
currency = "eur"
budget = 600.50
[[costs.items]]
what = "fee"
figure = 0.10
times = 3
currency = "GBP"
date = "2026-02-01"
source = "the office"
"""


def problems(text: str) -> list[str]:
    with pytest.raises(InputError) as caught:
        parse_brief(text)
    return [str(problem) for problem in caught.value.problems]


def test_every_key_reaches_the_brief(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text(WHOLE, "utf-8")
    assert load_brief(path) == Brief(
        product="A herb planter",
        goods="planters",
        classes=(21, 31),
        concepts=(Concept("herb"), Concept("spring", ("season",))),
        avoid=("smart",),
        tone=("warm",),
        least_letters=4,
        most_letters=10,
        most_syllables=3,
        most_words=2,
        markets=("NL", "GB"),
        languages=("nl", "pt-BR"),
        endings=("com", "co.uk", "москва"),
        handle_lengths=(15, 30),
        handle_servers=("social.example", "localhost:8080"),
        handle_patterns=("https://shop.example/{handle}",),
        marks=(tmp_path / "lists/marks.csv", Path("/far/away.csv")),
        shortlist=("Loamlet", "Mistpatch"),
        ranking_weights={"sound": 2.0},
        comparison_weights={"marks": 0.5},
        costs=Costs(
            "EUR",
            Decimal("600.50"),
            (CostItem("fee", Decimal("0.10"), Decimal(3), "GBP", datetime.date(2026, 2, 1), "the office"),),
        ),
        seed=5,
        date=datetime.date(2026, 5, 31),
        source=path,
    )


def test_a_shortlist_may_be_a_file_beside_the_brief(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text('shortlist = "names.txt"')
    brief = load_brief(path)
    assert (brief.shortlist, brief.shortlist_file) == ((), tmp_path / "names.txt")


def test_one_value_is_a_list_of_it() -> None:
    """marks = "marks.csv" can mean nothing else, and neither can tone = "", as product = "" is left out too."""
    told = 'marks = "marks.csv"\nclasses = 21\nmarkets = "nl"\nconcepts = "spring=season"\ntone = " "'
    listed = 'marks = ["marks.csv"]\nclasses = [21]\nmarkets = ["nl"]\nconcepts = ["spring=season"]\ntone = []'
    assert parse_brief(told) == parse_brief(listed)


def test_an_empty_brief_is_the_default_one() -> None:
    assert parse_brief("") == Brief()


def test_all_problems_are_told_together_in_the_order_of_their_lines() -> None:
    assert problems("""\
product = 3
clases = [1]
classes = [21, 99,
  "x"]
concepts = ["herb", { word = "a", sense = "b" }, { senses = [] }]
avoid = ["Herb"]
[length]
most_letters = 2
goods = "pots"
[weights.comparison]
looks = 1
marks = -1
""") == [
        'brief, line 1, product: must be a text, not 3. Write it in quotes: product = "..."',
        "brief, line 2, clases: is not a key of the brief. Did you mean `classes`?",
        "brief, line 3, classes, item 2: must be from 1 to 45, not 99. " + list_of_classes(),
        "brief, line 4, classes, item 3: must be a whole number, not 'x'. Write it without quotes",
        "brief, line 5, concepts, item 2, sense: is not a key of the brief. Did you mean `senses`?",
        'brief, line 5, concepts, item 3: has no `word`. Write { word = "spring", senses = ["season"] }',
        "brief, line 5, concepts, item 1: 'herb' is also a word to avoid. Take it out of one of the lists",
        "brief, line 8, length.most_letters: leaves no length: at least 3 and at most 2 letters. "
        "Raise most_letters or lower least_letters",
        "brief, line 9, length.goods: is not a key of the brief. "
        "`goods` stands at the top of the brief, before the first [table]",
        "brief, line 11, weights.comparison.looks: is not a key of the brief. "
        "Known here: marks, distinctiveness, readings, addresses",
        "brief, line 12, weights.comparison.marks: must be 0 or more, not -1. Correct the number",
    ]


@pytest.mark.parametrize(
    ("text", "line", "field", "words"),
    [
        ("most_letters = 9", 1, "most_letters", "belongs in the table [length]"),
        ("zzz = 1", 1, "zzz", "Known at the top: product, goods"),
        ("seed = true", 1, "seed", "must be a whole number, not true"),
        ("seed = 1.5", 1, "seed", "must be a whole number, not 1.5"),
        ("length = 3", 1, "length", "Write its keys below a line [length]"),
        ("avoid = 'a, b'", 1, "avoid", 'Write it in brackets: avoid = ["a", "b"]'),
        ("avoid = true", 1, "avoid", "Write it in brackets: avoid = [...]"),
        ("classes = '21; 31'", 1, "classes", "Write it in brackets: classes = [21, 31]"),
        ("classes = '21'", 1, "classes", "must be a whole number, not '21'. Write it without quotes"),
        ("classes = 46", 1, "classes", "must be from 1 to 45, not 46"),
        ("markets = 'Germany'", 1, "markets", "The code of Germany is DE"),
        ("avoid = ['']", 1, "avoid, item 1", "is empty"),
        ("markets = ['UK']", 1, "markets, item 1", "GB"),
        ("markets = ['Holland']", 1, "markets, item 1", "two letters: NL"),
        ("languages = ['Dutch!']", 1, "languages, item 1", "pt-BR"),
        ("date = '31-05-2026'", 1, "date", "2026-05-31"),
        ("shortlist = 3", 1, "shortlist", "names.txt"),
        ("\n[addresses]\nendings = ['-x']", 3, "addresses.endings, item 1", "co.uk"),
        ("[addresses]\nhandle_servers = ['https://a.b/x']", 2, "addresses.handle_servers, item 1", "https"),
        ("[addresses]\nhandle_patterns = ['https://a']", 2, "addresses.handle_patterns, item 1", "goes"),
        ("[addresses]\nhandle_patterns = ['a:/{handle}']", 2, "addresses.handle_patterns, item 1", "whole"),
        ("[costs]\nbudget = nan", 2, "costs.budget", "must be 0 or more"),
        ("[costs]\nbudget = '600'", 2, "costs.budget", "without quotes"),
        ("[[costs.items]]\nwhat = 'fee'", 1, "costs.items, item 1", "has no `figure`"),
        ("[weights]\nranking = 3", 2, "weights.ranking", "[weights.ranking]"),
        ("[weights.ranking]\nsound = 1e9", 2, "weights.ranking.sound", "Only the ratios"),
        ("a = 1\na = 2", 2, "", "is not valid TOML"),
        ('a = "x', 1, "", "is not valid TOML"),
        ("seed = 1\nconcepts = [\u201cherb\u201d]", 2, "", "curly quotation marks (\u201c \u201d): type straight"),
    ],
)  # fmt: skip
def test_each_impossible_value_names_line_key_and_remedy(text: str, line: int, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_brief(text)
    (problem,) = caught.value.problems
    assert (problem.line, problem.field) == (line, field)
    assert words in str(problem)


@pytest.mark.parametrize(
    ("contents", "words"),
    [
        (None, "no such file. Name the brief's file; `namescreen brief new"),
        (b"\xff\xfe\x00", "line 1: is not UTF-8 text"),
        (b'a = "\n\n\xe9"', "line 3: is not UTF-8 text"),
    ],
)
def test_a_file_that_cannot_be_read_says_why(tmp_path: Path, contents: bytes | None, words: str) -> None:
    path = tmp_path / "brief.toml"
    if contents is not None:
        path.write_bytes(contents)
    with pytest.raises(InputError, match=r"brief\.toml") as caught:
        load_brief(path)
    assert words in str(caught.value)


def test_a_folder_is_no_brief(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="is a folder"):
        load_brief(tmp_path)


def test_a_byte_order_mark_and_windows_line_ends_do_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_bytes(b'\xef\xbb\xbfproduct = "pot"\r\nclasses = [21]\r\n')
    assert load_brief(path).classes == (21,)


def test_the_starter_is_a_brief_that_names_every_key() -> None:
    brief = parse_brief(starter())
    assert brief.endings == ()
    # Every line in its remarks is a line that works: take the marks off and it still reads.
    woken = "\n".join(line.removeprefix("#   ") if line.startswith("#   ") else line for line in starter().split("\n"))
    kept: list[str] = []
    for line in woken.split("\n"):  # a key shown by example replaces the empty one below it
        key = line.partition(" =")[0]
        if not any(other.partition(" =")[0] == key and " =" in other for other in kept) or " =" not in line:
            kept.append(line)
    full = parse_brief("\n".join(kept))
    # `ranking` weights are named by the ranking itself.
    unset = {f.name for f in dataclasses.fields(Brief) if getattr(full, f.name) == getattr(Brief(), f.name)}
    assert unset <= {
        "product",
        "goods",
        "classes",
        "avoid",
        "tone",
        "shortlist",
        "ranking_weights",
        "seed",
        "source",
    }


def refused(text: str) -> tuple[Problem, ...]:
    """What is wrong with `text` as a brief; nothing else than `InputError` may come out of it."""
    try:
        parse_brief(text)
    except InputError as error:
        return error.problems
    return ()


@given(st.text(max_size=200))
def test_any_text_is_a_brief_or_an_input_error(text: str) -> None:
    assert all(problem.line for problem in refused(text))


KEYS = [
    "product",
    "classes",
    "concepts",
    "avoid",
    "seed",
    "date",
    "shortlist",
    "length",
    "costs",
    "weights",
    "addresses",
    "markets",
    "clases",
]
SCALARS = ["1", "-1", "1.5", "true", '"x"', '""', "2026-01-01", "nan", "99999999999999999999"]
values = st.recursive(
    st.sampled_from(SCALARS),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]")
        | st.dictionaries(
            st.sampled_from(["word", "items", "figure", "comparison", "endings", "b"]), inner, max_size=3
        ).map(lambda table: "{" + ", ".join(f"{key} = {value}" for key, value in table.items()) + "}")
    ),
    max_leaves=6,
)


@given(st.dictionaries(st.sampled_from(KEYS), values, max_size=4))
def test_any_value_under_any_key_is_taken_or_refused_with_a_line(table: dict[str, str]) -> None:
    found = refused("\n".join(f"{key} = {value}" for key, value in table.items()))
    assert all(problem.line and problem.remedy for problem in found)


def test_brief_new_writes_a_starter_and_never_overwrites(run: Run, tmp_path: Path) -> None:
    first = run("brief", "new", "planter.toml")
    assert (first.returncode, first.stdout) == (0, "")
    assert first.stderr.endswith("then: namescreen brainstorm planter.toml\n")
    assert (tmp_path / "planter.toml").read_text("utf-8") == starter()
    (tmp_path / "planter.toml").write_text("mine")
    second = run("brief", "new", "planter.toml")
    assert (second.returncode, (tmp_path / "planter.toml").read_text()) == (2, "mine")
    assert second.stderr == "namescreen: planter.toml: exists already. Name another file, or move this one\n"
    assert run("brief", "new").stdout == starter()
    assert run("brief", "new", "no/such/folder/b.toml").returncode == 2


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("goods = " + "[" * 3000 + "]" * 3000, "nested too deeply or too long"),
        ("goods = " + "[" * 400 + "]" * 400, ""),
        ("seed = " + "9" * 6000, "nested too deeply or too long"),
        ("seed = " + "9" * 4000, "must be from 0 to"),
        ('marks = ["~nobody-of-this-name/marks.csv"]', "is no path of a file"),
        ('marks = ["a\\u0000b"]', "is no path of a file"),
        ('shortlist = "a\\u0000b"', "is no path of a file"),
        ("[costs]\nbudget = 1e999999", "must be at most"),
        ("[costs]\nbudget = 1e999999999999999999999", "nested too deeply or too long"),
        ("[costs]\nbudget = 1e-999999999999999999999", "nested too deeply or too long"),
        ("seed = 0x" + "F" * 5000, "must be from 0 to 2147483647, not a number of thousands of digits"),
        ("classes = [0x" + "F" * 5000 + "]", "must be from 1 to 45, not a number of thousands of digits"),
        ("goods = [[0x" + "F" * 5000 + "]]", "must be a text, not a number of thousands of digits"),
        ("[weights.ranking]\nx = 0x" + "F" * 5000, "must be at most"),
        ("a." * 100_000 + "b = 1", "nested too deeply or too long"),
        ("[" + "a . " * 100_000 + "b]", "nested too deeply or too long"),
        ("[[costs.items]]\nwhat = 'fee'\nfigure = 1\ntimes = 1e10", "must be at most"),
    ],
)
def test_values_beyond_all_measure_are_refused(text: str, told: str) -> None:
    with pytest.raises(InputError) as refused:
        parse_brief(text)
    assert told in str(refused.value)
    assert len(str(refused.value)) < 1_200  # the list of all classes included


def test_a_file_too_large_for_a_brief_is_not_read_whole(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    with path.open("wb") as file:
        file.truncate(1 << 40)  # a sparse file: reading it whole would need a terabyte
    with pytest.raises(InputError, match="more than 1,048,576 bytes"):
        load_brief(path)


def test_a_concept_with_its_meaning_is_written_as_it_is_typed(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    path.write_text('concepts = ["spring=season, coil", "herb"]\n')
    assert load_brief(path).concepts == (Concept("spring", ("season", "coil")), Concept("herb"))
    path.write_text('concepts = ["=season"]\n')
    with pytest.raises(InputError, match="no word before its meaning"):
        load_brief(path)


@pytest.mark.parametrize("code", ["XX", "EN", "SP", "JA", "ZZ"])
def test_a_market_that_is_no_country_is_refused(tmp_path: Path, code: str) -> None:
    path = tmp_path / "brief.toml"
    path.write_text(f'markets = ["GB", "{code}"]\n')
    with pytest.raises(InputError, match=f"line 1, markets, item 2: '{code}' is the code of no country"):
        load_brief(path)


def test_every_country_and_union_may_be_a_market(tmp_path: Path) -> None:
    path = tmp_path / "brief.toml"
    codes = sorted({*COUNTRIES, *UNIONS})
    assert len(COUNTRIES) == 250  # ISO 3166-1 has 249 codes (from memory), and XK
    path.write_text(f"markets = {codes}\n")
    assert set(load_brief(path).markets) == set(codes)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('languages = ["german"]', "The code of German is de"),
        ('languages = ["en", "Czech"]', "item 2: 'Czech' is not a language's code. The code of Czech is cs"),
        ('languages = ["klingonese"]', "`namescreen brief help` lists them"),
        ('markets = ["Germany"]', "The code of Germany is DE"),
        ('markets = ["GB", "european union"]', "The code of european union is EU"),
        ('markets = ["Freedonia"]', "`namescreen brief help` lists them"),
    ],
)
def test_what_is_written_out_is_answered_with_its_code(tmp_path: Path, line: str, told: str) -> None:
    path = tmp_path / "brief.toml"
    path.write_text(line + "\n")
    with pytest.raises(InputError) as refused:
        load_brief(path)
    assert told in str(refused.value)


@pytest.mark.parametrize(
    ("markets", "endings"),
    [
        ((), ("com",)),
        (("DE", "IE"), ("com", "de", "ie")),  # RFC 1591, section 2: the codes of ISO 3166-1
        (("GB", "NZ", "AU"), ("com", "co.uk", "co.nz", "com.au")),  # common practice, no source
        (("EU",), ("com", "eu")),
        (("BX", "NL"), ("com", "be", "lu", "nl")),
        (("US", "OA"), ("com",)),
    ],
)
def test_domain_endings_follow_the_markets(markets: tuple[str, ...], endings: tuple[str, ...]) -> None:
    assert domain_endings(markets) == endings
