"""When the term of a mark ended, and until when it can be renewed. The laws are cited from memory: Regulation
2017/1001, articles 52 and 53(3); Trade Marks Act 1994, sections 42 and 43(3); 15 USC 1058(a) and 1059(a)."""

from __future__ import annotations

import pytest

from namescreen.marks import Mark
from namescreen.marks.term import renewable_until, term_ended

TODAY = "2026-11-30"


def mark(**fields: str | tuple[str, ...]) -> Mark:
    return Mark("QUILLOP", status="dead", **{"status_as_given": "expired", **fields})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("ended", "renewable", "fields"),
    [
        ("2026-07-15", "2027-01-15", {"office": "GB", "filed": "2016-07-15"}),  # ten years from filing
        ("2026-07-15", "2027-01-15", {"office": "EM", "filed": "2006-07-15", "registered": "2007-03-01"}),
        ("2026-10-04", "2027-04-04", {"office": "US", "filed": "2015-01-02", "registered": "2016-10-04"}),
        ("2026-07-15", "2027-01-15", {"territories": ("GB",), "filed": "2016-07-15"}),  # the list names no office
        ("2025-02-01", "", {"office": "GB", "filed": "2015-02-01"}),  # and the six months are over
        ("2026-09-01", "2027-03-01", {"office": "GB", "filed": "2016-07-15", "expires": "2026-09-01"}),  # as stated
        ("", "", {"office": "US", "filed": "2016-07-15"}),  # the day of registration is not stated
        ("", "", {"office": "CH", "filed": "2016-07-15"}),  # a law that is not known here
        ("", "", {"office": "GB", "filed": "2016-07-15", "status_as_given": "refused"}),
    ],
)
def test_a_term_is_reckoned_where_the_list_does_not_state_it(
    ended: str, renewable: str, fields: dict[str, str | tuple[str, ...]]
) -> None:
    assert term_ended(mark(**fields), TODAY) == ended
    assert renewable_until(mark(**fields), TODAY) == renewable
