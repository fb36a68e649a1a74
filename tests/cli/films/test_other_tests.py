"""A rub with solvent, a straightedge, a control sample: typed, heard, and put right.

A rub tells the cure of what cross-links and nothing of what dissolves again: ASTM D5402 and D4752
are for the former (from memory); that shellac and lacquer dissolve in their own solvent at any age
is common practice.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

from finishlog.core.film.checks import cures
from tests.shop_of import FACTS

SHOP = """
01T08:00 product new stain --class wiping-stain
01T08:00 product new top --class conversion-varnish
01T08:00 product new spit --class shellac-2lb
01T08:00 part new case/lid --species walnut
01T08:00 part new case/door --species walnut
01T08:00 air 23C 50%
01T08:00 room night shop 18C
"""


@pytest.fixture
def case(tmp_path: Path) -> Finishlog:
    """A lid and a door in the white."""
    return Finishlog(tmp_path, now="2026-05-04T10:00+00:00").played(SHOP, now="2026-05-{}+00:00")


def state(shop: Finishlog, part: str) -> dict[str, object]:
    found: dict[str, object] = shop.did("why", part, "--json").document["answer"][0]["standing"]
    return found


def test_a_stain_that_comes_off_coloured_is_not_buried_until_a_rub_stays_clean(case: Finishlog):
    case.did("log", "lid", "stain", "--at", "1 May 09:00")
    case.did("log", "lid", "wipe", "--at", "1 May 09:05")
    case.did("check", "lid", "comes-off-coloured", "--at", "3 May 09:00")
    coat = case.did("log", "lid", "top", "--at", "3 May 09:30")
    assert "its own solvent takes stain up" in coat.out
    case.did("undo")
    case.did("check", "lid", "holds", "--test", "solvent-rub", "--at", "3 May 18:00")
    assert "its own solvent" not in case.did("log", "lid", "top", "--at", "3 May 18:30").out


def test_of_a_film_that_dissolves_at_any_age_a_rub_tells_nothing(case: Finishlog):
    case.did("log", "lid", "spit", "--at", "1 May 09:00")
    said = case.did("check", "lid", "softens")
    assert "a rub tells nothing of it" in said.out
    assert "blocks" not in said.out
    assert state(case, "lid")["answer"] != "blocked"


def test_a_rub_tells_of_what_cures_and_of_nothing_else():
    cure = {key for key, of in FACTS.classes.items() if cures(of)}
    assert {"alkyd-varnish", "tung-oil", "wiping-stain", "conversion-varnish"} <= cure
    assert {"lacquer-postcatalysed", "waterborne-two-part", "gel-stain"} <= cure
    never = {"shellac-2lb", "french-polish", "lacquer-sprayed", "paste-wax", "water-dye"}
    assert not cure & (never | {"alcohol-dye", "soap", "bleach-oxalic"})


def test_a_straightedge_makes_a_fault_and_ends_one(case: Finishlog):
    case.did("check", "lid", "warped")
    assert "cupped on the wood" in case.did("on", "lid").out
    case.did("check", "lid", "flat", now="2026-05-08T10:00+00:00")
    assert "cupped" not in case.did("on", "lid", now="2026-05-08T10:01+00:00").out
    case.did("fault", "door", "cupped", now="2026-05-08T10:00+00:00")
    case.did("check", "door", "flat", now="2026-05-08T10:00+00:00")
    assert "cupped" not in case.did("on", "door", now="2026-05-08T10:01+00:00").out


def test_what_is_bare_is_no_matter_to_a_straightedge(case: Finishlog):
    assert "no film on record" not in case.did("check", "lid", "flat").out
    assert "no film on record" in case.did("check", "lid", "dry").out


def test_a_sample_of_the_same_can_speaks_for_every_part_that_it_went_on(case: Finishlog):
    case.did("can", "new", "jug", "--product", "spit", "--opened", "2024-01-01")
    for part in ("lid", "door"):
        case.did("log", part, "spit", "--from", "jug", "--at", "1 May 09:00")
    assert state(case, "door")["answer"] == "waits for"
    case.did("check", "lid", "dry", "--test", "sample", "--at", "4 May 09:00")
    assert state(case, "lid")["answer"] != "waits for"
    assert state(case, "door")["answer"] != "waits for"


def test_a_sample_that_stayed_soft_is_heard_and_put_right(case: Finishlog):
    case.did("log", "lid", "spit", "--at", "1 May 09:00")
    act = case.did("check", "lid", "sample-soft", "--json").document["answer"]["act"]
    assert state(case, "lid")["answer"] == "suspect"
    assert "the can or the wood" in case.did("why", "lid").out
    case.did("amend", str(act), "--found", "sample-dry")
    assert state(case, "lid")["answer"] != "suspect"
    assert "control-sample: sample-dry" in case.did("history").out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("lid", "dry", "--test", "straightedge"), "it finds cupped, flat"),
        (("lid", "flat", "--test", "rub"), "it finds softens, resists"),
        (("lid", "crooked"), "no check finds 'crooked'"),
    ],
)
def test_what_a_test_cannot_find_is_refused_with_what_it_finds(case: Finishlog, words, said: str):
    answer = case("check", *words)
    assert answer.code == 2
    assert said in answer.err
