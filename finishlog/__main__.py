"""Start finishlog."""

from __future__ import annotations

import gc
import os
import sys

# What is written is the person's own, however open their system leaves new files.
_FOR_NOBODY_ELSE = 0o077


def main() -> None:
    """Run the command that was typed and leave with its exit code."""
    os.umask(os.umask(_FOR_NOBODY_ELSE) | _FOR_NOBODY_ELSE)
    _take_the_places_of_closed_streams()
    # A command is short and makes few cycles: to look for them costs more than it frees, a twelfth
    # of a start while it runs and a sixth at its end, which would look whatever is said here.
    gc.disable()
    try:
        code = run(sys.argv[1:])
    except KeyboardInterrupt:
        code = 130
    gc.freeze()
    sys.exit(code)


def run(arguments: list[str]) -> int:
    """Run one command; return its exit code. What completes a half-typed one loads no parser."""
    if arguments[:1] == ["--complete"]:
        from finishlog.cli.completion.complete import complete

        return complete(arguments[1:])
    from finishlog.cli.app import run as run_command

    return run_command(arguments)


def _take_the_places_of_closed_streams() -> None:
    """Keep 0, 1 and 2 from becoming files of ours, into which a message would then be written."""
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:
            os.open(os.devnull, os.O_RDWR)


if __name__ == "__main__":
    main()
