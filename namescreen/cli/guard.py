"""The end of a run: one clear paragraph for an error, and an exit code with a stated meaning."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from namescreen.errors import InputError, Interrupted, NamescreenError

__all__ = [
    "BAD_INPUT",
    "EXIT_CODES",
    "LIMIT_EXCEEDED",
    "NOT_CHECKED",
    "guarded",
]

LIMIT_EXCEEDED, BAD_INPUT, NOT_CHECKED, STOPPED, PIPE_CLOSED = 1, 2, 3, 130, 141

EXIT_CODES = {
    0: "done",
    LIMIT_EXCEEDED: "a limit you asked for is exceeded (--fail-above)",
    BAD_INPUT: "the command or its input cannot be used",
    NOT_CHECKED: "some check could not be made (with --strict)",
    STOPPED: "stopped with Ctrl-C; what was finished is kept",
    PIPE_CLOSED: "the reader of the output went away",
}
MOST_PROBLEMS = 20
"""The most problems listed for one input; the rest are counted."""


@contextmanager
def guarded() -> Iterator[None]:
    """Turn expected errors into a message on stderr and an exit code; nothing else is caught, save what a damaged table
    led to."""
    try:
        yield
        sys.stdout.flush()
    except Interrupted as stop:
        _end(str(stop), STOPPED)
    except KeyboardInterrupt:
        _end("Stopped. Nothing was left half-written.", STOPPED)
    except BrokenPipeError:
        _give_up_output()
        sys.exit(PIPE_CLOSED)
    except NamescreenError as error:
        _end(_told(error), BAD_INPUT)
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError, AssertionError):
        from namescreen.tables import damage

        damaged = damage()  # a table with other contents may lead anywhere
        if damaged is None:
            raise
        _give_up_output()
        _end(_told(damaged), BAD_INPUT)
    except OSError as error:  # a full disk, a folder that was removed: the system's message is shown
        _give_up_output()
        reason, check = error.strerror or error, "Check the place and the room there, then start again"
        if error.filename:
            _end(_told(InputError(f"{os.fsdecode(error.filename)}: {reason}. {check}")), BAD_INPUT)
        _end(f"the output cannot be written ({reason}). What is there is not whole. {check}", BAD_INPUT)


def _give_up_output() -> None:
    """Redirect stdout: the interpreter would report the error again when it flushes at exit."""
    with contextlib.suppress(OSError, ValueError):  # not a real file, as under a test
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _told(error: NamescreenError) -> str:
    from namescreen.plain_text import bounded, visible

    lines = [str(problem) for problem in error.problems] if isinstance(error, InputError) else [str(error)]
    more = len(lines) - MOST_PROBLEMS
    shown = [*lines[:MOST_PROBLEMS], *([f"... and {more} more like these."] if more > 0 else [])]
    return "\n".join(bounded(visible(line)) for line in shown)


def _end(text: str, code: int) -> None:
    from .talk import on_terminal

    told = "\n".join(map(on_terminal, f"namescreen: {text}".split("\n")))
    sys.stderr.write(f"{told}\n")
    if code == STOPPED:
        exec("")  # else CPython remembers a Ctrl-C amid an `exec`, as of a named tuple's making, and ends by the signal
    sys.exit(code)
