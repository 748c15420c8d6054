"""`python -m namescreen` is `namescreen`."""

from __future__ import annotations

import sys

__all__ = ["main"]


def main() -> None:
    """Run the command line; the entry point of `namescreen` and `python -m namescreen`."""
    try:
        from .cli import main as run
    except KeyboardInterrupt:  # its imports take the first tenth of a second; afterwards `cli.guard` sees to this
        sys.stderr.write("namescreen: Stopped before anything was done.\n")
        exec("")  # as in `cli.guard`
        sys.exit(130)
    run()


if __name__ == "__main__":
    main()
