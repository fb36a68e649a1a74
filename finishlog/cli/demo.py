"""demo: build the invented shop and walk through an evening in it."""

from __future__ import annotations

import typer


def demo() -> None:
    """Placeholder until the walk is in."""


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("demo")(demo)
