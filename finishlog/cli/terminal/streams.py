"""The three standard streams: usable whatever became of them before we started."""

from __future__ import annotations

import errno
import io
import os
import sys

# What the system says when an answer finds no place: full, closed, too large, gone.
CANNOT_WRITE = frozenset(
    {errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EBADF, errno.EIO, errno.ENXIO}
)


class _Closed(io.TextIOBase):
    """Stands where stdout was closed: what is written to it is not written."""

    def write(self, text: str, /) -> int:
        raise OSError(errno.EBADF, os.strerror(errno.EBADF))


def make_usable() -> None:
    """Put something in the place of a closed stream; write in `?` what an encoding cannot."""
    # A stream that was closed at the start is None, whatever its type says.
    streams: dict[str, object] = {
        name: getattr(sys, name) for name in ("stdin", "stdout", "stderr")
    }
    if streams["stdin"] is None:
        sys.stdin = io.StringIO()
    if streams["stdout"] is None:
        sys.stdout = _Closed()
    if streams["stderr"] is None:
        sys.stderr = io.StringIO()
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def forget_the_rest() -> None:
    """Let what is still buffered not complain at exit that it cannot be written."""
    try:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except (OSError, ValueError):
        # No file behind it: nothing is buffered.
        return
