"""How well a name works as a domain and a handle: an estimate from the name alone, and a check on request.

A domain or a handle that nobody has taken gives no right to a name, and a taken one takes none away: see the
marks, and an adviser.

The estimate is exported here. The check uses the network and is imported separately: `session.Asker` within
`settings.Settings`, `checking.plan` for what to ask, `checking.run` for the findings. Around them: `questions` and
`answers` (pure), `bootstrap` (which RDAP server), `transport` (how a request goes out), `store` (what is kept).
"""

from __future__ import annotations

from .estimate import Domain, Estimate, estimate
from .handles import COMMON_LENGTHS, Handle, handle_problem, handles_of
from .keys import effort, lookalike_labels, slips
from .labels import Label, a_label, ascii_name, full_name_problem, label_problem, labels_of

__all__ = [
    "COMMON_LENGTHS",
    "Domain",
    "Estimate",
    "Handle",
    "Label",
    "a_label",
    "ascii_name",
    "effort",
    "estimate",
    "full_name_problem",
    "handle_problem",
    "handles_of",
    "label_problem",
    "labels_of",
    "lookalike_labels",
    "slips",
]
