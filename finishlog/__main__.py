"""Start finishlog."""

from __future__ import annotations

import sys


def main() -> None:
    """Run the command that was typed and leave with its exit code."""
    from finishlog.cli.app import run

    sys.exit(run(sys.argv[1:]))


if __name__ == "__main__":
    main()
