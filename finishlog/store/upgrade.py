"""Bring a database file to the schema of this program: make it, upgrade it, or refuse it.

The migrations run with foreign keys off: SQLite alters a table by copying and dropping it, and a
drop with foreign keys on would delete the rows of other tables that point to it.
"""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from msgspec import Struct
from sqlalchemy import Connection

from finishlog.errors import DatabaseFault
from finishlog.store.backup_sqlite import back_up
from finishlog.store.engine_sqlite import IMMEDIATE, begun, faults_named, opened
from finishlog.store.revision_sqlite import revision_inside, revision_of_file

# The newest revision in migrations/versions (a test compares them). Kept here so that a start
# need not import Alembic, which costs more than everything else together.
HEAD = "0016"

# Another process that creates or upgrades the same file is worth waiting for.
_PATIENCE_S = 30.0


class Upgraded(Struct, frozen=True):
    """An older database was upgraded; the file as it was is at `backup_path`."""

    from_: str
    to: str
    backup_path: Path


class Scripts(Struct, frozen=True):
    """A folder of migrations and its newest revision."""

    folder: Path
    head: str


def bring_up(
    path: Path, now: datetime, patience_s: float, scripts: Scripts | None = None
) -> Upgraded | None:
    """Make or upgrade the database file when it needs that; `now` stamps the backup.

    None when there was nothing to upgrade. DatabaseFault for a file that is locked, damaged, not
    ours, or newer than this program.
    """
    with faults_named(path):
        found = revision_of_file(path, patience_s)
        if found == (scripts.head if scripts else HEAD):
            return None
        return _migrate(path, now, scripts or Scripts(migrations_folder(), HEAD))


def migrations_folder(package: Path = Path(__file__).parents[1]) -> Path:
    """Find the migrations: inside an installed package, beside it in a checkout."""
    package = package.resolve()
    for folder in (package / "_migrations", package.parent / "migrations"):
        if (folder / "env.py").is_file():
            return folder
    raise DatabaseFault(f"the migrations are missing from {package}", "install finishlog again")


def _migrate(path: Path, now: datetime, scripts: Scripts) -> Upgraded | None:
    import alembic.command  # noqa: F401  (before the lock: others wait for it)

    _make_folder(path)
    with (
        opened(path, _PATIENCE_S, foreign_keys=False) as engine,
        begun(engine, IMMEDIATE) as connection,
    ):
        # Asked again under the lock: another process may have been quicker.
        found = revision_inside(path, connection)
        if found == scripts.head:
            return None
        _refuse_newer(path, found, scripts)
        # Under the lock too, so that the copy is of exactly what is upgraded.
        backup = back_up(path, f"at-{found}", now) if found else None
        _run(connection, scripts)
        _check_references(path, connection)
    return Upgraded(found, scripts.head, backup) if found and backup else None


def _make_folder(path: Path) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise DatabaseFault(
            f"the folder {path.parent} cannot be made: {error.strerror}",
            "set FINISHLOG_DB to a file in a folder that you may write to",
        ) from error


def _refuse_newer(path: Path, found: str | None, scripts: Scripts) -> None:
    from alembic.script import ScriptDirectory

    known = {script.revision for script in ScriptDirectory(str(scripts.folder)).walk_revisions()}
    if found is not None and found not in known:
        raise DatabaseFault(
            f"{path} was written by a newer finishlog (its revision is {found},"
            f" this program knows up to {scripts.head})",
            "install the newer finishlog; the file was left untouched",
        )


def _run(connection: Connection, scripts: Scripts) -> None:
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(scripts.folder).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, scripts.head)


def _check_references(path: Path, connection: Connection) -> None:
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
    if broken is not None:
        raise DatabaseFault(
            f"{path} was not upgraded: a row of {broken[0]} points to nothing in {broken[2]}",
            "nothing was changed; keep the file and the backup beside it",
        )
