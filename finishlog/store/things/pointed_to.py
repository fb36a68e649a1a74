"""A file of the person's that is only pointed to: it stays where it is, and is never opened."""

from __future__ import annotations

from pathlib import Path

from finishlog.errors import UsageFault


def whole_path(typed: str) -> Path:
    """Return the whole path: the next look may come from elsewhere.

    UsageFault for what is no file's name on any system.
    """
    try:
        return Path(typed).expanduser().absolute()
    except RuntimeError:
        raise UsageFault(
            f"{typed!r} is in a home that is not known", "write the whole path"
        ) from None


def is_there(file: Path) -> bool:
    """Tell whether a file is there now; a name that the system cannot hold is not."""
    try:
        return file.is_file()
    except (OSError, ValueError):
        return False
