from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.marks.status import standing
from namescreen.marks.uspto import dead_class


# The codes are values of MarkCurrentStatusCode in WIPO ST.66, from memory; the others are words of our own
# choice.
@pytest.mark.parametrize(
    ("status", "result"),
    [
        ("Application filed", "pending"),
        ("Application published", "pending"),
        ("Application under examination", "pending"),
        ("Application opposed", "opposed"),
        ("Application refused", "dead"),
        ("Application withdrawn", "dead"),
        ("Registered", "live"),
        ("Registration cancelled", "dead"),
        ("Registration surrendered", "dead"),
        ("Registration cancellation pending", "live"),
        ("RegistrationExpired", "dead"),
        ("Expired", "dead"),
        ("LIVE", "live"),
        ("DEAD", "dead"),
        ("lapsed", "dead"),
        ("Removed - not renewed", "dead"),
        ("Revocation requested", "live"),
        ("Opposition pending", "opposed"),
        ("Published for opposition", "pending"),
        ("Registered : Registered/protected", "live"),
        ("Removed - Not Renewed : Renewal fee not paid", "dead"),
        ("Accepted : Awaiting registration fee", "pending"),
        ("Not Protected : Refused", "dead"),
        ("Linked : Merged with another", "dead"),
        ("Marque enregistrée", "live"),
        ("Marque expirée", "dead"),
        ("Demande publiée", "pending"),
        ("Concessão de registro", "live"),
        ("Publicação de pedido de registro para oposição", "pending"),
        ("Notificação de oposição para manifestação", "opposed"),
        ("Indeferimento do pedido", "dead"),
        ("등록", "live"),
        ("출원", "pending"),
        ("거절", "dead"),
        ("Marke eingetragen", "live"),
        ("Anmeldung zurückgewiesen", "dead"),
        ("Widerspruch anhängig", "opposed"),
        ("Marca concedida", "live"),
        ("Solicitud en trámite", "pending"),
        ("Marca caducada", "dead"),
        ("what nobody wrote yet", "unknown"),
        ("700", "unknown"),
        ("", "unknown"),
    ],
)
def test_standing(status: str, result: str) -> None:
    assert standing(status) == result


# Codes of the United States with their definitions, from the documentation of the office's bulk XML (V2.0, Table 1);
# the standing is our reading of the definition.
@pytest.mark.parametrize(
    ("code", "result"),
    [
        ("630", "pending"),  # new application
        ("688", "pending"),  # notice of allowance issued
        ("700", "live"),  # registered
        ("702", "live"),  # section 8 and 15 accepted
        ("800", "live"),  # registered and renewed
        ("774", "opposed"),  # opposition pending
        ("790", "live"),  # cancellation pending
        ("602", "dead"),  # abandoned
        ("710", "dead"),  # cancelled, section 8
        ("900", "dead"),  # expired
        ("715", "pending"),  # cancelled, restored to pendency
        ("620", "unknown"),  # status not recorded
    ],
)
def test_codes_of_the_united_states(code: str, result: str) -> None:
    assert standing(code, "US") == result
    assert standing(code) == "unknown"


def test_a_class_is_dead_by_its_own_code() -> None:
    assert [dead_class(code) for code in ("6", "", "2", "A", "8")] == [False, False, True, True, True]


@pytest.mark.shared
def test_every_code_of_the_united_states(shared_folder: Path) -> None:
    """The office's list of codes with a standing of live, dead, or not a mark, read from the definitions by another."""
    rows = (shared_folder / "registers/uspto-bulk/status-codes.tsv").read_text("utf-8").splitlines()[1:]
    for row in rows:
        code, reading, _ = row.split("\t")
        ours = standing(code, "US")
        plain = "live" if ours in ("live", "pending", "opposed") else ours
        assert plain == (reading if reading in ("live", "dead") else "unknown"), row
