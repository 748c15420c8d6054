"""The report that a maker takes to an adviser: plain data in, text out, in every form.

The door is `Report` (data), the forms `markdown`, `html`, `to_json`, `to_csv` and `figure`, `from_json` to
read an earlier report, and `compare` for what changed since.
"""

from __future__ import annotations

from .compare import Changes, compare
from .csv import to_csv
from .figure import figure
from .html import html
from .json import from_json, schema, to_json
from .markdown import markdown
from .model import Report

__all__ = [
    "Changes",
    "Report",
    "compare",
    "figure",
    "from_json",
    "html",
    "markdown",
    "schema",
    "to_csv",
    "to_json",
]
