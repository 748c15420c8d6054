"""How a name fits as a domain and a handle: an estimate from the name alone, and a check only when asked.

A domain or a handle that nobody has taken gives no right to a name, and a taken one takes none away: see the
marks, and an adviser.
"""

from __future__ import annotations

from .estimate import DEFAULT_ENDINGS, Domain, Estimate, effort, estimate, slips
from .handles import COMMON_LENGTHS, Handle, handles_of
from .labels import Label, a_label, full_name_problem, label_problem, labels_of

__all__ = ["COMMON_LENGTHS", "DEFAULT_ENDINGS", "Domain", "Estimate", "Handle", "Label", "a_label", "effort",
           "estimate", "full_name_problem", "handles_of", "label_problem", "labels_of", "slips"]  # fmt: skip
