"""namescreen: brainstorm product names and screen them against existing marks.

A screening aid, not legal clearance. The names below are the public API; they are imported on first use, so
that `import namescreen` costs next to nothing.
"""

from __future__ import annotations

from .doors import lazy_door

TYPE_CHECKING = False  # that of `typing`, whose import would be half of this one
__version__ = "0.16.0"

if TYPE_CHECKING:
    from .brief import Brief as Brief
    from .brief import load_brief as load_brief
    from .closeness import Closeness as Closeness
    from .closeness import compare as compare
    from .connotations import Reading as Reading
    from .connotations import readings as readings
    from .errors import DataError as DataError
    from .errors import InputError as InputError
    from .errors import Interrupted as Interrupted
    from .errors import NamescreenError as NamescreenError
    from .generation import Blend as Blend
    from .generation import Candidate as Candidate
    from .generation import blends as blends
    from .generation import brainstorm as brainstorm
    from .goods import ClassGuess as ClassGuess
    from .goods import Distinctiveness as Distinctiveness
    from .goods import classes as classes
    from .goods import distinctiveness as distinctiveness
    from .marks import Mark as Mark
    from .outcome import NotChecked as NotChecked
    from .register import Register as Register
    from .register import read_register as read_register
    from .screening import Screening as Screening
    from .screening import screen as screen

_HOMES = {
    "Blend": "generation", "Brief": "brief", "Candidate": "generation", "ClassGuess": "goods", "Closeness": "closeness",
    "DataError": "errors", "Distinctiveness": "goods", "InputError": "errors", "Interrupted": "errors",
    "Mark": "marks", "NamescreenError": "errors", "NotChecked": "outcome", "Reading": "connotations",
    "Register": "register", "Screening": "screening", "blends": "generation", "brainstorm": "generation",
    "classes": "goods", "compare": "closeness", "distinctiveness": "goods", "load_brief": "brief",
    "read_register": "register", "readings": "connotations", "screen": "screening",
}  # fmt: skip

__all__ = [
    "Blend", "Brief", "Candidate", "ClassGuess", "Closeness", "DataError", "Distinctiveness", "InputError",
    "Interrupted", "Mark", "NamescreenError", "NotChecked", "Reading", "Register", "Screening", "__version__", "blends",
    "brainstorm", "classes", "compare", "distinctiveness", "load_brief", "read_register", "readings", "screen",
]  # fmt: skip

__getattr__ = lazy_door(__name__, _HOMES)


def __dir__() -> list[str]:
    return sorted(__all__)
