"""Whatever order acts are typed in, the log is the same, and so are its warnings."""

from __future__ import annotations

import tempfile
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tests.cli.run import ZONE, Finishlog
from tests.examples import examples

pytestmark = pytest.mark.thorough

FIRST = datetime.fromisoformat("2026-05-06T08:00+00:00")
CLASSES = (
    "alkyd-varnish",
    "boiled-linseed-oil",
    "conversion-varnish",
    "lacquer-sprayed",
    "oil-varnish-blend",
    "paste-wax",
    "shellac-2lb",
    "water-dye",
    "waterborne-clear",
    "wiping-stain",
)
# One bare shelf and a product of each class.
SHOP = "\n".join(
    (
        "room new shop --night 20C",
        "part new desk/shelf --species ash",
        *(f"product new {key} --class {key}" for key in CLASSES),
        "air 21C 50%",
    )
)
Warned = set[tuple[str, str]]


def warned(program: Finishlog, now: datetime, *words: str) -> Warned:
    """Type one `log` and return what it warns of."""
    logged = program.did("log", "shelf", *words, "--json", now=now.isoformat()).document["answer"]
    return {(w["level"], w["sentence"]) for w in logged["warnings"]}


@examples(12)
@given(st.sampled_from(CLASSES), st.sampled_from(CLASSES), st.floats(0.5, 400))
@example("alkyd-varnish", "alkyd-varnish", 4.5)
@example("wiping-stain", "waterborne-clear", 30.0)
@example("water-dye", "shellac-2lb", 40.0)
@example("alkyd-varnish", "alkyd-varnish", 49.0)
def test_two_coats_are_warned_of_alike_in_order_and_late(below, above, hours):
    """Typed late, the first coat says its own warnings, and what it makes of the second."""
    second = FIRST + timedelta(minutes=round(60 * hours))
    late = second + timedelta(minutes=20)
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as other:
        in_order, afterwards = (
            Finishlog(Path(folder)).played(SHOP, now=FIRST.isoformat()) for folder in (one, other)
        )
        its_own = warned(in_order, FIRST, below)
        for program in (in_order, afterwards):
            program.did("air", "21C", "50%", now=second.isoformat())
        of_the_second = warned(in_order, second, above)
        alone = warned(afterwards, second, above)
        at = FIRST.astimezone(ZoneInfo(ZONE)).strftime("%Y-%m-%d %H:%M")
        said = warned(afterwards, late, below, "--at", at)
    own = {each for each in said if not each[1].startswith("act ")}
    later = {(level, words.split(": ", 1)[1]) for level, words in said - own}
    assert own == its_own
    assert later == of_the_second - alone
