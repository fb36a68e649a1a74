"""The published facts as a start reads them: compiled (finishlog.facts.compile), all at once.

Reading the files themselves takes longer than a start may; a test holds both to be the same.
"""

from __future__ import annotations

import os
from functools import cache

import msgspec

from finishlog.core.published.facts import Facts

COMPILED = f"{os.path.dirname(__file__)}/compiled.msgpack"


@cache
def load_facts() -> Facts:
    """Return the facts that are shipped."""
    with open(COMPILED, "rb") as file:
        return msgspec.msgpack.decode(file.read(), type=Facts)
