"""Print a page as fits where it goes: a pipe or a terminal."""

from __future__ import annotations

import sys

from finishlog.cli.terminal.page import Page, plain


def show(page: Page) -> None:
    """Print a page as fits where it goes."""
    if sys.stdout.isatty():
        from finishlog.cli.terminal.at_a_terminal import show_at_terminal

        show_at_terminal(page)
    else:
        sys.stdout.write(plain(page))
