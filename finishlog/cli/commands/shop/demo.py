"""demo: build the invented shop and walk through an evening in it, command by command."""

from __future__ import annotations

import contextlib
import io
import os
import shlex
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from pathlib import Path
from typing import Annotated

import typer
from msgspec import Struct

from finishlog import clock, paths
from finishlog.cli.answering.json_answer import show_json
from finishlog.cli.answering.options import Json
from finishlog.cli.answering.run import Run
from finishlog.cli.typed.files.sample import Typed, commands, folder
from finishlog.errors import BadData, UsageFault

_A_DAY = timedelta(days=1)
BUILT_FROM = ("last_year.toml", "cabinet_log.toml", "stools_log.toml")


class Played(Struct, frozen=True):
    """The invented shop as it was left, and the commands of its evening as they were typed."""

    database: str
    evening: tuple[str, ...]
    invented: bool = True


def demo(
    context: typer.Context,
    second: Annotated[
        bool, typer.Option("--second", help="Of the evening after: rags, vapour, a pilot light.")
    ] = False,
    json: Json = False,
) -> None:
    """Build an invented shop, walk through an evening in it, and leave it to play with."""
    here: Run = context.obj
    path = _fresh(here.chosen_path)
    now = here.clock.now
    evening = tuple(commands(folder() / "evening.toml"))
    with _database(path):
        _build(now - _A_DAY if second else now)
        if second:
            for typed in evening:
                _quietly(typed, now - _A_DAY)
            evening = tuple(commands(folder() / "second_evening.toml"))
        if json:
            for typed in evening:
                _quietly(typed, now)
        else:
            _walk_through(evening, now)
    if json:
        played = Played(str(path), tuple(typed.line for typed in evening))
        show_json("demo", now, played)
        return
    typer.echo("The shop is yours to play with:")
    typer.echo(f"  export {paths.DATABASE}={shlex.quote(str(path))}")
    typer.echo("  finishlog ready")


def _build(now: datetime) -> None:
    built = sorted(
        (typed for name in BUILT_FROM for typed in commands(folder() / name)),
        key=lambda typed: typed.ago,
        reverse=True,
    )
    for typed in built:
        _quietly(typed, now)


def _walk_through(evening: Sequence[Typed], now: datetime) -> None:
    typer.echo("An evening in an invented shop; no brand, no person, no real piece is in it.\n")
    for typed in evening:
        typer.echo(f"$ {typed.line}")
        _run(typed, now)
        typer.echo("")


def _fresh(chosen: Path | None) -> Path:
    """Find a place that holds nothing of the person's: a database of theirs is never replaced."""
    if chosen is not None:
        if chosen.exists():
            raise UsageFault(
                f"{chosen} is there already", "name a new file: finishlog --db FILE demo"
            )
        return chosen
    path = paths.data_folder() / "demo.db"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.unlink(missing_ok=True)
    return path


@contextlib.contextmanager
def _database(path: Path) -> Iterator[None]:
    """Let every command of the demo use its own database and its own time."""
    before = {name: os.environ.get(name) for name in (paths.DATABASE, clock.NOW)}
    os.environ[paths.DATABASE] = str(path)
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                os.environ.pop(name, None)
            else:
                os.environ[name] = value


def _run(typed: Typed, now: datetime) -> int:
    from finishlog.cli.app import run

    os.environ[clock.NOW] = (now - typed.ago).isoformat()
    return run(list(typed.words))


def _quietly(typed: Typed, now: datetime) -> None:
    """Replay a command of the past; its own words go to the log, its answer to nobody."""
    said = io.StringIO()
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(said):
        code = _run(typed, now)
    if code:
        raise BadData(f"sample data, {typed.line}: {said.getvalue().strip()}")


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("demo")(demo)
