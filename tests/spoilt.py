"""The facts with one word of one file changed, for tests of what is refused."""

from __future__ import annotations

import shutil
from pathlib import Path

from finishlog.core.published.facts import Facts
from finishlog.facts.read import DATA, read_facts


def read_spoilt(scratch: Path, file: str, good: str, bad: str) -> Facts:
    """Read a copy of the facts in which `bad` stands in place of the first `good`."""
    folder = Path(shutil.copytree(DATA, scratch / "data"))
    text = (folder / file).read_text(encoding="utf-8")
    assert good in text
    (folder / file).write_text(text.replace(good, bad, 1), encoding="utf-8")
    return read_facts(folder)
