"""A glue-up from the command line: when its clamps come off, and when a coat may go on."""

from __future__ import annotations

from pathlib import Path

from run import Finishlog


def test_the_clamps_come_off_sooner_than_a_coat_goes_on(tmp_path: Path):
    """Yellow PVA at its label's air: an hour in clamps, a day before finish (facts/data)."""
    program = Finishlog(tmp_path)
    for line in (
        "air 23C 50%",
        "room night 20C",
        "product new topcoat --class waterborne-clear",
        "steps new s glue-up topcoat",
        "part new desk/side --count 2",
        "part new desk/case --of side:2 --steps s",
    ):
        program.did(*line.split())
    answer = program.did("log", "case", "glue-up", "--glue", "yellow-pva", "--json").document
    (line,) = answer["answer"]["after"]
    clamps = answer["answer"]["clamped_until"]
    assert "2026-11-24T21:30" < clamps < "2026-11-25T00:00"
    assert line["high"] == "2026-11-25T21:05:00Z"
