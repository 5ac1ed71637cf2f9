"""Where the program begins: a command goes to the command line, everything else opens the window."""

import sys
from pathlib import Path


def main(argv: list[str] | None = None) -> int:
    """Run a command or the editor; return the exit code."""
    arguments = sys.argv[1:] if argv is None else argv
    if arguments and not _is_plan(arguments[0]):
        from wiring.commands.main import main as command_line

        return command_line(arguments)
    from app.start import run

    return run(Path(arguments[0]) if arguments else None)


def _is_plan(word: str) -> bool:
    return word.endswith(".underboard") or (not word.startswith("-") and Path(word).is_file())


if __name__ == "__main__":
    sys.exit(main())
