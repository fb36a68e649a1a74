"""Questions about what lies below: how dry the wood is, what its colour dissolves in."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher, said

FC224 = Question(
    "a rough-turned bowl, weighed every week, gained a few grams: still wet, or may it be turned",
    shows=(
        "the weights one by one, stable from the least to the most over three weeks, and ready",
        "the gain makes no warning",
        "weights that fall week after week are still losing, and hold turning and finish",
        "the last weights stay with the bowl, shown when something goes wrong with its finish",
    ),
    trap="a falling curve is demanded, or a rule of thumb beats the scale",
)


def test_fc224_a_bowl_that_got_heavier_is_dry(finisher: Finisher):
    finisher.types(
        "2026-11-02 18:00",
        "product new oil --class tung-oil",
        "steps new turned shape oil*2",
        "part new bowls/bowl --species maple --steps turned",
        "part new bowls/wet --species maple --steps turned",
    )
    for day, dry, wet in ((2, 642, 700), (9, 640, 680), (16, 641, 665), (23, 644, 655)):
        when = f"2026-11-{day:02d} 18:05"
        told = finisher.reads(when, f"weigh bowl {dry}g")
        other = finisher.reads(when, f"weigh wet {wet} g")
    with FC224.line(1):
        assert "weights: 2 Nov 642 g, 9 Nov 640 g, 16 Nov 641 g, 23 Nov 644 g" in told
        assert "READY: weight stable: 640 g to 644 g over 3 weeks" in told
    with FC224.line(2):
        assert "caution" not in told
        assert finisher.why("2026-11-23 18:06", "bowl")["standing"]["answer"] == "go"
        assert "caution" not in finisher.reads("2026-11-23 18:07", "log bowl turn")
    with FC224.trap:
        assert finisher.asks("2026-11-23 18:08", "weigh bowl 644g")["series"]["trend"] == "steady"
    screen = finisher.reads("2026-11-23 18:10", "ready")
    with FC224.line(3):
        assert "still losing weight" in other
        assert "READY" not in other
        assert "LEAVE ALONE bowls/wet waits for the wood to stop losing weight" in screen
        assert "coat bowls/bowl oil 1 of 2" in screen
        assert "still losing weight" in finisher.reads("2026-11-23 18:11", "log wet turn")
        assert "still losing weight" in finisher.reads("2026-11-23 18:12", "log wet oil")
    finisher.types("2026-11-23 18:20", "log bowl oil", "log bowl wipe")
    trouble = finisher.reads("2026-11-25 18:00", "fault bowl blister")
    with FC224.line(4):
        assert "weights 2 Nov 642 g, 9 Nov 640 g, 16 Nov 641 g, 23 Nov 644 g, stable" in trouble
        assert "wet wood" not in trouble
        assert "wet wood" in finisher.reads("2026-11-25 18:01", "fault wet blister")


FC227 = Question(
    "water dye dry since last evening: may waterborne be brushed over it",
    shows=(
        "a caution, no stop, for waterborne brushed right over water dye, and the ways round it",
        "none once shellac lies between, nor for oil varnish over it",
        "work from a cup; a can reported pink is marked as tinted",
        "no advice to wait some days longer",
    ),
    trap="a plain yes since both hold water, or a failure of adhesion",
)


def test_fc227_dry_dye_is_not_fixed(finisher: Finisher):
    finisher.types(
        "2026-11-23 18:30",
        "product new dye --class water-dye",
        "product new clear --class waterborne-clear",
        "product new sealer --class shellac-2lb",
        "product new varnish --class alkyd-varnish",
        "steps new plain dye clear*2",
        "steps new sealed dye sealer clear*2",
        "steps new varnished dye varnish*2",
        "room new shop --night 20C",
        "part new red/top --steps plain",
        "part new red/shelf --steps sealed",
        "part new red/rail --steps varnished",
        "can new tin --product clear",
        "air 21C 45%",
        "look red/* clean",
    )
    finisher.types("2026-11-23 19:00", "log red/top red/shelf red/rail dye")
    finisher.types("2026-11-24 08:55", "air 21C 45%")
    top = finisher.why("2026-11-24 09:00", "red/top")
    words = said(top)
    with FC227.line(1):
        assert top["standing"]["answer"] == "test first"
        assert "caution: over water-soluble dye" in words
        assert "stop" not in words
        assert "Spray a light first pass, or thin dewaxed shellac" in words
    with FC227.line(4):
        assert "however long it dries" in words
        assert "test, coat red/top" in finisher.reads("2026-11-24 09:00", "ready")
        late = finisher.why("2026-12-04 09:00", "red/top")
        assert "caution: over water-soluble dye" in said(late)
    with FC227.line(2):
        assert "dissolve the dye" not in said(finisher.why("2026-11-24 19:30", "red/rail"))
        assert "dissolve the dye" not in said(finisher.why("2026-11-24 19:30", "red/shelf"))
        finisher.types("2026-11-24 19:30", "log red/shelf sealer")
        assert "dissolve the dye" not in said(finisher.why("2026-11-25 19:30", "red/shelf"))
    brushed = finisher.reads("2026-11-24 19:40", "log red/top --method brush --from tin")
    with FC227.line(3):
        assert "pour a coat into a cup and put nothing back" in brushed
        assert "tinted" in finisher.reads("2026-11-24 19:45", "can tinted tin")
        assert "tin is tinted" in finisher.reads("2026-11-25 19:00", "can show tin")
    with FC227.trap:
        assert "caution" in brushed
        after = finisher.why("2026-11-25 19:30", "red/top")
        assert "peel" not in said(after)
        assert after["standing"]["answer"] not in {"suspect", "stopped by what is underneath"}
