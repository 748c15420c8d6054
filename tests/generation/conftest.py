"""A brief to brainstorm from, and what it gives: worked out once."""

from __future__ import annotations

import pytest

from namescreen import processes
from namescreen.brief import Brief, Concept
from namescreen.generation import Candidate, brainstorm
from namescreen.generation.flags import Flags
from namescreen.generation.material import Material, gather

STUDIO = Brief(
    product="A self-watering herb planter",
    goods="self-watering planters of glazed stoneware for kitchen herbs",
    concepts=(Concept("herb"), Concept("clay"), Concept("sip"), Concept("spring", ("fountain",))),
    avoid=("smart", "eco", "ella"),
    tone=("plain", "warm"),
    languages=("de", "nl"),
    least_letters=5,
    most_letters=12,
    most_syllables=3,
    most_words=2,
    seed=7,
)


@pytest.fixture(scope="session")
def studio() -> Brief:
    return STUDIO


@pytest.fixture(scope="session")
def material() -> Material:
    return gather(Brief(concepts=STUDIO.concepts, goods=STUDIO.goods), seed=1)


@pytest.fixture(scope="session")
def hundred() -> list[Candidate]:
    return brainstorm(STUDIO, limit=100)


@pytest.fixture(autouse=True)
def not_screened(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """Most tests are not about what an office may refuse, which costs more than all else and a process for each
    brainstorm: only those marked `screened` judge it."""
    if not request.node.get_closest_marker("screened"):
        monkeypatch.setattr(Flags, "_refused", lambda self, text: "")
        monkeypatch.setattr(processes, "can_fork", lambda: False)
