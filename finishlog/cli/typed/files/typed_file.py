"""Read a file that the person named."""

from __future__ import annotations

from pathlib import Path

from finishlog.errors import NotFound


def bytes_of(path: Path) -> bytes:
    """Return what is in a file; NotFound where there is none to read.

    A pipe or a device may never end: it is refused, not waited for.
    """
    try:
        if path.exists() and not path.is_file():
            kind = "a folder" if path.is_dir() else "no file"
            raise NotFound(f"{path} is {kind}", "name a file; save what comes from a pipe first")
        return path.read_bytes()
    except OSError as fault:
        raise NotFound(f"{path} cannot be read: {fault.strerror}", "name a file") from None
    except ValueError:
        raise NotFound(f"{str(path)!r} cannot be a file's name", "name a file") from None
