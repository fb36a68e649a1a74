"""On `ready` and `log` the way out is that of what binds, not of what happens to be said first.

The shop is invented; what teak does to an oxidising finish stands in the facts with its source.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

DESK = """
product new glaze --class glaze
steps new s glaze
part new desk/top --species teak --steps s
air 20C 50%
"""
WOULD_HELP = "Wipe with solvent and within minutes seal"
WOULD_NOT = "Seal first, or try it on a sample board"


@pytest.fixture
def bare_teak(tmp_path: Path) -> Finishlog:
    """A glaze is due on bare teak: it stains unevenly there, and on teak it never dries."""
    return Finishlog(tmp_path).played(DESK)


def test_ready_tells_how_to_mend_what_stops_it(bare_teak: Finishlog):
    said = bare_teak.did("ready").out
    assert f"to mend it: {WOULD_HELP}" in said
    assert WOULD_NOT not in said
    assert WOULD_NOT in bare_teak.did("ready", "--verbose").out


def test_log_says_what_binds_once(bare_teak: Finishlog):
    said = bare_teak.did("log", "top", "glaze").out
    assert said.count("extractives keep an oxidising finish from curing") == 1
    assert WOULD_HELP in said
