"""Where the database and the fault log are kept."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from finishlog.errors import UsageFault

DATABASE = "FINISHLOG_DB"


def data_folder() -> Path:
    """Return the folder for a person's data, by the custom of the system."""
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA", Path.home() / "AppData" / "Local")) / "finishlog"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support" / "finishlog"
    base = os.environ.get("XDG_DATA_HOME")
    return (Path(base) if base else _home() / ".local" / "share") / "finishlog"


def _home() -> Path:
    """Return the person's home: HOME, else the one that the system keeps for them."""
    if os.environ.get("HOME"):
        return Path.home()
    import pwd

    try:
        return Path(pwd.getpwuid(os.getuid()).pw_dir)
    except KeyError:
        raise UsageFault(
            "no home folder is known", f"name the database: set {DATABASE} to a file"
        ) from None


def database_path() -> Path:
    """Return the database: FINISHLOG_DB, else shop.db in the data folder."""
    named = os.environ.get(DATABASE)
    if not named:
        return data_folder() / "shop.db"
    try:
        return Path(named).expanduser()
    except RuntimeError:
        raise UsageFault(
            f"{DATABASE} is {named!r}, in a home that is not known", "write the whole path"
        ) from None


def fault_log_path() -> Path:
    """Return the file that a fault of ours is written to."""
    return data_folder() / "fault.log"
