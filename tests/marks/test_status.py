from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.marks.fields import mark_from
from namescreen.marks.mark import Mark
from namescreen.marks.status import opposed_since, standing
from namescreen.marks.term import renewable_until
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


@pytest.mark.parametrize(
    ("status", "result", "opposed"),
    [
        ("Registered; opposed", "live", True),
        ("Registered, opposition pending", "live", True),
        ("Marke eingetragen, Widerspruch anhängig", "live", True),
        ("Registered; opposition dismissed", "live", False),
        ("Application opposed", "opposed", True),
        ("Not registered; opposed", "dead", True),
        ("Registered; cancelled after opposition", "dead", True),
        ("Registered", "live", False),
    ],
)
def test_opposition_may_follow_registration(status: str, result: str, opposed: bool) -> None:
    """In Germany it does (Markengesetz, section 42(1)), as in Austria, Switzerland and Japan: from memory."""
    assert standing(status, "DE") == result
    assert opposed_since(status) is opposed


@pytest.mark.parametrize(
    ("office", "registered", "result"),
    [("DE", "2026-07-01", "live"), ("DE", "", "opposed"), ("WO", "2023-11-01", "opposed")],
)
def test_what_its_own_office_registered_is_in_force_though_opposed(office: str, registered: str, result: str) -> None:
    values = {"text": "POT", "office": office, "status": "Opposed", "registered": registered}
    assert mark_from(values, "", 1, lambda *_: None).status == result


@pytest.mark.parametrize(
    ("status", "expires", "until"),
    [
        ("Expired", "2026-08-01", "2027-02-01"),
        ("Expired", "2026-08-31", "2027-02-28"),
        ("Lapsed", "2026-05-28", "2026-11-28"),
        ("Expired", "2026-05-27", ""),
        ("Cancelled", "2026-08-01", ""),
        ("Refused", "2026-08-01", ""),
        ("Expired", "", ""),
        ("Registered", "2026-08-01", ""),
    ],
)
def test_a_mark_can_be_renewed_for_six_months_after_its_term(status: str, expires: str, until: str) -> None:
    """Paris Convention, article 5bis(1): a period of grace of not less than six months."""
    mark = Mark("POT", office="GB", status=standing(status), status_as_given=status, expires=expires)
    assert renewable_until(mark, "2026-11-28") == until
    assert renewable_until(mark, "") == ""
