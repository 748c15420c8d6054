"""`python -m namescreen` is `namescreen`."""

from __future__ import annotations

import gc
import sys

__all__ = ["main"]

MOST_UNCOLLECTED = 1_000_000
"""New objects that may be garbage before it is collected: some hundred megabytes."""


def main() -> None:
    """Run the command line; the entry point of `namescreen` and `python -m namescreen`."""
    # Modules, tables and caches make many objects that live to the end: to go through them for garbage costs a quarter
    # of a run (measured: 2.1 against 1.5 s of processor time for 1,000 names' addresses), and a tenth of the imports.
    gc.set_threshold(MOST_UNCOLLECTED, 10, 10)
    try:
        from .cli import main as run
    except KeyboardInterrupt:  # its imports take the first tenth of a second; afterwards `cli.guard` sees to this
        sys.stderr.write("namescreen: Stopped before anything was done.\n")
        exec("")  # as in `cli.guard`
        sys.exit(130)
    run()


if __name__ == "__main__":
    main()
