"""Where the database and the fault log are kept."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from finishlog.errors import UsageFault

DATABASE = "FINISHLOG_DB"
_FILE = "shop.db"


def data_folder() -> Path:
    """Return the folder for a person's data, by the custom of the system.

    Where a database was begun before the system's own word was asked, it stays.
    """
    from platformdirs import user_data_path

    try:
        folder = user_data_path("finishlog", appauthor=False)
    except RuntimeError:
        raise UsageFault(
            "no home folder is known", f"name the database: set {DATABASE} to a file"
        ) from None
    if (folder / _FILE).exists():
        return folder
    named = [os.environ.get(name) for name in ("XDG_DATA_HOME", "LOCALAPPDATA")]
    if sys.platform == "darwin":
        named.append(str(Path.home() / "Library" / "Application Support"))
    before = (Path(base) / "finishlog" for base in named if base)
    return next((each for each in before if (each / _FILE).exists()), folder)


def database_path() -> Path:
    """Return the database: FINISHLOG_DB, else shop.db in the data folder."""
    named = os.environ.get(DATABASE)
    if not named:
        return data_folder() / _FILE
    try:
        return Path(named).expanduser()
    except RuntimeError:
        raise UsageFault(
            f"{DATABASE} is {named!r}, in a home that is not known", "write the whole path"
        ) from None


def fault_log_path() -> Path:
    """Return the file that a fault of ours is written to."""
    return data_folder() / "fault.log"
