"""Equal reports give equal bytes, whatever the order of hashing, the zone or the locale."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

from namescreen.report import Report, to_json

DRAW = """
import sys, pathlib
from namescreen.report import changes, from_json, to_csv, to_html, to_json, to_markdown, to_svg
report = from_json(pathlib.Path(sys.argv[1]).read_text("utf-8"))
since = changes(report, report)
forms = (to_markdown(report, figure="f.svg", changes=since), to_html(report), to_json(report, changes=since),
         to_csv(report), to_svg(report))
sys.stdout.buffer.write("\\0".join(forms).encode())
"""


@pytest.mark.parametrize("kind", ["report", "hostile"])
def test_every_form_is_the_same_under_every_hash_seed(
    kind: str, request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    report: Report = request.getfixturevalue(kind)
    source = tmp_path / "report.json"
    source.write_text(to_json(report), "utf-8")
    digests = set()
    for seed, zone, locale in (
        ("0", "UTC", "C"),
        ("1", "Asia/Tokyo", "C.UTF-8"),
        ("4242", "America/Lima", "C"),
    ):
        told = subprocess.run(
            [sys.executable, "-c", DRAW, str(source)],
            env=os.environ | {"PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": locale},
            capture_output=True,
            check=True,
            cwd=Path(__file__).parents[2],
        )
        digests.add(hashlib.sha256(told.stdout).hexdigest())
        assert len(told.stdout) > 10_000
    assert len(digests) == 1
