"""Write the facts in the form that a start reads: `python -m finishlog.facts.compile`."""

from __future__ import annotations

from pathlib import Path

import msgspec

from finishlog.facts.load import COMPILED
from finishlog.facts.read import read_tables


def compiled() -> bytes:
    """Return what is to be written: the same bytes for the same files."""
    tables = read_tables()
    return msgspec.msgpack.encode({name: tables[name] for name in sorted(tables)})


if __name__ == "__main__":
    Path(COMPILED).write_bytes(compiled())
