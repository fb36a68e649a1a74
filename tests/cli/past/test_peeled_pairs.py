"""A film that lets go is told of every pair in it, not of the top alone (common practice)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.run import Finishlog

SHOP = """
2026-03-01T08:00 room new shop --night 20C
2026-03-01T08:00 product new sealer --class shellac-2lb
2026-03-01T08:00 product new clear --class waterborne-clear
2026-03-01T08:00 part new desk/top --species oak
2026-03-02T08:00 log top sealer
2026-03-03T08:00 log top clear
2026-03-04T08:00 log top clear
"""


@pytest.mark.parametrize(("fault", "told"), [("peel", True), ("dust", False)])
def test_a_peeled_pair_is_not_sound_under_a_later_coat(tmp_path: Path, fault: str, told: bool):
    shop = Finishlog(tmp_path).played(
        SHOP + f"2026-03-08T08:00 fault top {fault}\n", now="{}+00:00"
    )
    asked = shop.did("past", "--pairs", "sealer", "clear", "--json", now="2026-03-09T08:00+00:00")
    (pair,) = asked.document["answer"]
    assert bool(pair["wrong"]) is told
