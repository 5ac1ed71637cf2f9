"""The command line: one small file per command, and the words when something cannot be done."""

import argparse
import os
import sys
from collections.abc import Sequence
from importlib import import_module
from importlib.metadata import PackageNotFoundError, version
from typing import Any, NoReturn

from wiring.commands.refusal import BAD_INPUT, FINE, Refused
from wiring.files.refusals import NotReadable, NotSaved
from wiring.plan.sentences import one_line

COMMANDS = {
    "figures": "volts, amperes and watts of every part and wire",
    "outlook": "how long each battery lasts",
    "check": "what is wrong or weak, and what would mend it",
    "sheets": "write the sheets for the bench as PDF",
    "export": "write a carry sheet, a netlist, lists, drawings or data",
    "built": "mark the wires ticked on a carry sheet as built",
    "kinds": "list the kinds of part there are",
}
EXAMPLES = """\
examples:
  underboard figures quay.underboard --positions S1=off
  underboard outlook quay.underboard --json
  underboard check quay.underboard && echo safe to wire
  underboard sheets quay.underboard quay.pdf --paper letter
  underboard export quay.underboard quay.html
  underboard built quay.underboard quay-ticks.json
  underboard kinds led-warm-white

exit status:
  0  fine
  1  figures, outlook or check found a danger
  2  the input is bad; one sentence on the error stream says why
"""
INTERRUPTED = 130  # what shells expect after Ctrl-C


class Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        """Say it and end with the status for bad input."""
        self.exit(BAD_INPUT, f"{self.prog}: {one_line(message)}; see {self.prog} --help\n")


def parser() -> argparse.ArgumentParser:
    """Return the parser of the whole command line."""
    top = Parser(
        prog="underboard",
        description="Plan, check and print the low-voltage wiring of a model-railway scene.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    top.add_argument("--version", action="version", version=f"underboard {_version()}")
    commands: Any = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, words in COMMANDS.items():
        module = import_module(f"wiring.commands.{name}")
        summary = f"{words[0].upper()}{words[1:]}."
        command = commands.add_parser(name, help=words, description=summary)
        module.add_arguments(command)
        command.set_defaults(run=module.run)
    return top


def _version() -> str:
    try:
        return version("underboard")
    except PackageNotFoundError:
        return "(not installed)"


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status; bad input gives one sentence and 2, never a traceback."""
    _speak_utf8()
    try:
        args = parser().parse_args(_joined(sys.argv[1:] if argv is None else argv))
    except SystemExit as ending:  # argparse ends this way after --help and after bad arguments
        return ending.code if isinstance(ending.code, int) else FINE
    try:
        status: int = args.run(args)
        sys.stdout.flush()
    except (Refused, NotReadable, NotSaved) as reason:
        return _sorry(str(reason))
    except BrokenPipeError:  # the reader, such as head, has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except OSError as error:
        where = f" {error.filename}" if error.filename else ""
        return _sorry(f"The disk refused to work with the file{where} ({error.strerror or error}).")
    except KeyboardInterrupt:
        return INTERRUPTED
    return status


def _joined(argv: Sequence[str]) -> list[str]:
    """Tie a value to --positions, so that a designation with its minus sign is not taken for an option."""
    tied: list[str] = []
    for argument in argv:
        if tied and tied[-1] == "--positions":
            tied[-1] = f"--positions={argument}"
        else:
            tied.append(argument)
    return tied


def _sorry(sentence: str) -> int:
    print(f"underboard: {one_line(sentence)}", file=sys.stderr)
    return BAD_INPUT


def _speak_utf8() -> None:
    """Write UTF-8 into pipes and files; on a terminal with another alphabet, replace what it lacks."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace") if stream.isatty() else reconfigure(
                encoding="utf-8", errors="replace"
            )
