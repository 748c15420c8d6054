"""The command line: the only place that knows Typer and Rich.

A command's module is imported when the command runs, so that help and shell completion take little longer than Typer
itself.
"""

from __future__ import annotations

import gc
import os
import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from importlib import import_module
from typing import Annotated, Any, NamedTuple

import typer
from typer.core import TyperGroup

from namescreen import __version__
from namescreen.errors import InputError, Problem
from namescreen.outcome import DISCLAIMER

from .guard import EXIT_CODES, guarded
from .narrow import Context

__all__ = ["COMMANDS", "app", "main"]


class _Entry(NamedTuple):
    """A command: its module in this package (which holds a Typer named `app`), what it does, an example."""

    module: str
    summary: str
    example: str


COMMANDS = {
    "brief": _Entry("brief", "Start a naming brief.", "brief new brief.toml"),
    "classes": _Entry("classes", "Find the Nice classes of goods.", "classes 'glazed herb planters'"),
    "brainstorm": _Entry(
        "brainstorm", "Make candidate names from concept words.", "brainstorm --concept herb --concept well"
    ),
    "screen": _Entry("screen", "Screen names against existing marks.", "screen --name Sprigwick --register marks.csv"),
    "compare": _Entry("compare", "Show why two names are close, or not.", "compare Rainsip Reignsipp"),
    "readings": _Entry(
        "readings", "See how a name reads in other languages.", "readings 'Mist Patch' --languages de,fr"
    ),
    "addresses": _Entry(
        "addresses", "Fit a name to domains and handles.", "addresses Loamlet --ending com --ending nl"
    ),
    "register": _Entry(
        "register",
        "Prepare a list of marks for fast searching.",
        "register prepare marks.csv --output marks.nsr",
    ),
    "report": _Entry("report", "Write the report for an adviser.", "report brief.toml -o report.md"),
    "columns": _Entry("columns", "Explain the columns of CSV output.", "columns screen"),
    "demo": _Entry("demo", "Show the whole job on an invented example.", "demo"),
}


def _adapt(command: Any) -> None:
    """Let help fit narrow terminals, and refuse arguments with invalid bytes, which would silently be
    left out of a name. The path of a file may hold some."""
    command.context_class = Context
    for inner in getattr(command, "commands", {}).values():
        _adapt(inner)
    for param in command.params:
        if type(param.type).__name__ == "StringParamType":  # Click's, or Typer's own copy of it
            param.type_cast_value = partial(_text_of, param, param.type_cast_value)


def _text_of(param: Any, cast: Callable[[Any, Any], Any], ctx: Any, given: Any) -> Any:
    value = cast(ctx, given)
    for text in [value] if isinstance(value, str) else value or ():
        no_text = not text.isascii() and any("\ud800" <= letter <= "\udfff" for letter in text)
        if no_text and not os.path.lexists(text):
            where = param.opts[0] if param.opts[0].startswith("-") else ""
            raise InputError(Problem(f"{text!r} holds a byte that is not text", "Write it in UTF-8", where))
    return value


class _LazyGroup(TyperGroup):
    """A group whose commands are only summaries until one is called."""

    context_class = Context

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        name, command, rest = super().resolve_command(ctx, args)
        if name in COMMANDS:
            module = import_module(f".{COMMANDS[name].module}", __name__)
            command = typer.main.get_command(module.app)
            command.name = name
            _adapt(command)
            command.epilog = "\n\n".join(filter(None, (command.epilog, DISCLAIMER)))
        return name, command, rest

    def format_commands(self, ctx: Any, formatter: Any) -> None:
        """Every summary in full, folded where the terminal is narrow."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, entry.summary) for name, entry in COMMANDS.items()])

    def make_context(self, *given: Any, **more: Any) -> Any:
        with _bounded_messages():
            return super().make_context(*given, **more)

    def invoke(self, ctx: Any) -> Any:
        with guarded(), _bounded_messages():
            return super().invoke(ctx)


@contextmanager
def _bounded_messages() -> Iterator[None]:
    """Bound what the parser of commands says of a command that it cannot use: it quotes it whole."""
    try:
        yield
    except Exception as error:
        message = getattr(error, "message", None)  # that of Click's errors, or Typer's own copy of them
        if isinstance(message, str):
            from namescreen.plain_text import bounded

            error.message = bounded(message)  # type: ignore[attr-defined]
        raise


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"namescreen {__version__}")
        raise typer.Exit


_EPILOG = "\n\n".join(
    (
        "\b\nExamples:\n" + "\n".join(f"  namescreen {entry.example}" for entry in COMMANDS.values()),
        "\b\nExit codes:\n" + "\n".join(f"  {code:<4} {meaning}" for code, meaning in EXIT_CODES.items()),
        DISCLAIMER,
    )
)

app = typer.Typer(
    cls=_LazyGroup,
    name="namescreen",
    help="Brainstorm product names, and screen them against existing marks.",
    epilog=_EPILOG,
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


@app.callback()
def _namescreen(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version and stop.")
    ] = False,
) -> None:
    pass


def _stand_in() -> None:
    """Placeholder for a command until its module is imported."""


for _name, _entry in COMMANDS.items():
    app.command(_name, help=_entry.summary)(_stand_in)


def _stand_in_for_closed_streams() -> None:
    """Python has None where the caller closed a standard stream. Input is then empty and remarks are dropped. Data that
    cannot be written is an error, like a full disk: the substitute for standard output refuses every write.
    """
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            flags = os.O_WRONLY if name == "stderr" else os.O_RDONLY
            setattr(sys, name, os.fdopen(os.open(os.devnull, flags), mode, encoding="utf-8"))


def main() -> None:
    """Run the command line; the entry point of `namescreen` and `python -m namescreen`."""
    # The threads of numpy's library for matrices only wait, which takes a twentieth of a second of the other processor:
    # work here is shared out to processes.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    _stand_in_for_closed_streams()
    for measure in ("COLUMNS", "LINES"):  # some libraries take any digit for a number, such as "²"
        if not re.fullmatch("[1-9][0-9]{0,3}", os.environ.get(measure, "80")):
            del os.environ[measure]
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:  # a pipe or a C locale must not turn a name into a traceback
            reconfigure(encoding="utf-8", errors="backslashreplace")
    try:
        with guarded():
            app(prog_name="namescreen")
    finally:
        gc.freeze()  # else Python goes through all of them once more as it ends: a sixth of a report
