"""The report that a maker takes to an adviser: plain data in, text out, in every form.

The door is `Report` (data) and `assemble` (a brief and its screenings as a `Report`); the forms
`to_markdown`,
`to_html`, `to_json`, `to_csv` and `to_svg`; `from_json`, which reads an earlier report; and `changes`, what
is new since. Each is imported when first used, so that `namescreen.plain_text` alone costs next to nothing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door

if TYPE_CHECKING:
    from .assembly import assemble as assemble
    from .comparison import Changes as Changes
    from .comparison import changes as changes
    from .csv import to_csv as to_csv
    from .figure import to_svg as to_svg
    from .html import to_html as to_html
    from .json import from_json as from_json
    from .json import schema as schema
    from .json import to_json as to_json
    from .markdown import to_markdown as to_markdown
    from .model import Report as Report

_HOMES = {
    "Changes": "comparison",
    "Report": "model",
    "assemble": "assembly",
    "changes": "comparison",
    "from_json": "json",
    "schema": "json",
    "to_csv": "csv",
    "to_html": "html",
    "to_json": "json",
    "to_markdown": "markdown",
    "to_svg": "figure",
}

__all__ = [
    "Changes",
    "Report",
    "assemble",
    "changes",
    "from_json",
    "schema",
    "to_csv",
    "to_html",
    "to_json",
    "to_markdown",
    "to_svg",
]

__getattr__ = lazy_door(__name__, _HOMES)
