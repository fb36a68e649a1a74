"""Start finishlog."""

from __future__ import annotations

import gc
import sys


def main() -> None:
    """Run the command that was typed and leave with its exit code."""
    try:
        from finishlog.cli.app import run
    except KeyboardInterrupt:
        sys.exit(130)

    # A command is short and makes few cycles: collecting while it starts costs more than it frees.
    gc.set_threshold(100_000)
    sys.exit(run(sys.argv[1:]))


if __name__ == "__main__":
    main()
