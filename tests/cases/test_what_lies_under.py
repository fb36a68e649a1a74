"""Questions about what lies under a finish: epoxy that was not washed, a void that is poured."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher, said

FC225 = Question(
    "the glaze over the epoxy is dry at last, after three days: varnish tonight",
    shows=(
        "the varnish is held, by both entries: epoxy unwashed after 46 °F and 90 %, glaze 72 h "
        "against 2 to 6",
        "at the glaze it is asked already whether the epoxy was washed",
        "a test patch is offered; white in the morning: the chain from the epoxy up is the cause",
        "washed, and with a glaze that set in its time, neither is said",
    ),
    trap="the glaze is dry, so go: the epoxy of five days ago is no longer looked at",
)


def test_fc225_an_unwashed_epoxy_is_remembered_through_the_glaze(finisher: Finisher):
    """The seat beside the shelf was washed, and its glaze set in its time."""
    finisher.types(
        "2026-06-01 16:55",
        "product new epoxy --class epoxy-seal",
        "product new glaze --class glaze --tack-free 2-6h",
        "product new varnish --class alkyd-varnish",
        "steps new shelf epoxy glaze varnish",
        "part new window/shelf --steps shelf",
        "part new window/seat --steps shelf",
    )
    # The film is from its hardener, which was in it.
    finisher.types("2026-06-01 17:00", "log shelf seat epoxy --note 'with its hardener'")
    finisher.types("2026-06-01 23:00", "air 46F 90%")
    finisher.types("2026-06-03 17:00", "log seat rinse")
    glazed = finisher.reads("2026-06-03 18:00", "log shelf glaze")
    washed = finisher.reads("2026-06-03 18:00", "log seat glaze")
    with FC225.line(2):
        assert "epoxy was not washed, by the log: its cure leaves an amine film" in glazed
        assert "8 °C, 90 % RH as it set" in glazed
        assert "wash it first: clean water and a pad, never solvent first" in glazed
        assert "washed already: finishlog log PART rinse" in glazed
    finisher.types("2026-06-03 18:15", "log shelf seat wipe")
    finisher.types("2026-06-03 23:00", "check seat dry --only-now")
    finisher.types("2026-06-06 18:00", "check shelf dry --only-now")
    ready = finisher.reads("2026-06-06 19:00", "ready")
    (held,) = finisher.whys("2026-06-06 19:00", "shelf")
    (free,) = finisher.whys("2026-06-06 19:00", "seat")
    with FC225.line(1):
        assert held["standing"]["answer"] == "test first"
        assert "glaze lies on epoxy unwashed" in said(held)
        assert "8 °C, 90 % RH as it set" in said(held)
        assert "glaze took 72 h to be dry, against 2 to 6 h" in said(held)
    with FC225.line(4):
        assert "washed" not in washed
        assert "unwashed" not in said(free)
        assert "to be dry, against" not in said(free)
    with FC225.trap:
        assert "amine film under glaze: epoxy was not washed" in ready
        assert "coat window/shelf varnish 1 of 1 dry enough" not in ready
    with FC225.line(3):
        assert "try the coat on a hidden corner overnight" in said(held)
        assert "else take glaze off, wash epoxy" in said(held)
    finisher.types("2026-06-06 19:00", "log shelf varnish")
    white = finisher.reads("2026-06-07 08:00", "fault shelf white")
    with FC225.line(3):
        cause = white.partition("the log ")[2].partition(" or ")[0]
        assert "epoxy – glaze – varnish: epoxy was not washed" in cause
        assert "take the coats off down to it, wash it with clean water and a pad" in cause


FC230 = Question(
    "four pours of 6 mm in a weekend without sanding, and when can it be planed",
    shows=(
        "24 mm by 6 mm are 4 pours, each with both ends of its window",
        "a plan in the given hours alone; the last pour is solid two days later",
        "missed: sand before the next pour, and no word of overdue",
        "a pour of 12 mm is warned of, with the limit",
    ),
    trap="the end of the window is taken as a least wait, and ends on Monday; or two pours of 12",
)


def test_fc230_four_pours_in_a_weekend(finisher: Finisher):
    finisher.types(
        "2026-06-05 17:30",
        "product new resin --class epoxy-pour --recoat 12h --window 24h --sand 48h",
        "product says resin --thickest 6mm",
        "product says resin --overrule amine-film --because non-blushing",
    )
    steps = finisher.reads("2026-06-05 17:30", "steps new fill 'resin*24mm'")
    finisher.types(
        "2026-06-05 17:30",
        "part new table/void --steps fill",
        "shop hours 'fri 18:00-21:00 sat-sun 7:00-21:00'",
        "air 23C 50%",
    )
    plan = finisher.reads("2026-06-05 18:00", "plan")
    with FC230.line(1):
        assert "24 mm of resin, 6 mm a coat: 4 coats" in steps
        for pour, ends in (
            ("resin 2 of 4", "ready since 06:16; closes 18:00"),
            ("resin 3 of 4", "ready since 19:16; closes Sun 07:00"),
            ("resin 4 of 4", "ready since 07:32; closes 19:00"),
        ):
            assert f"{pour}; {ends}" in plan
    with FC230.line(2):
        days = ("FRI 5 JUN, 18:00", "SAT 6 JUN, 07:00", "SUN 7 JUN, 07:32")
        assert [plan.index(day) for day in days] == sorted(plan.index(day) for day in days)
    with FC230.trap:
        assert "MON 8 JUN" not in plan
        assert "scuff" not in plan
        assert "1 of 2" not in plan
    thick = finisher.reads("2026-06-05 18:00", "log void resin --film 12mm")
    with FC230.line(4):
        assert "stop: void: 12 mm of poured epoxy at once, 6 mm a coat at most" in thick
        assert "it runs hot, cracks and may smoke; in 2 coats" in thick
    finisher.types("2026-06-05 18:00", "undo")
    # Else it is asked; the question takes it for granted.
    poured = "log void resin --film 6mm --note 'with its hardener'"
    for when in ("05 18:00", "06 07:00", "06 20:00"):
        finisher.types(f"2026-06-{when}", poured)
    finisher.types("2026-06-07 09:00", "air 23C 50%", poured)
    solid = finisher.reads("2026-06-07 09:05", "when void")
    finisher.types("2026-06-07 09:05", "undo")
    open_ = finisher.reads("2026-06-07 09:10", "when void")
    missed = finisher.reads("2026-06-12 18:00", "air 23C 50%", "ready")
    with FC230.line(1):
        assert "window closes 20:00" in open_
        assert "later it needs a scuff" in open_
    with FC230.line(2):
        assert "sand after Tue 09:00" in solid
        assert "fully hard after Mon 15 Jun, test from Sat 13 Jun" in solid
    with FC230.line(3):
        assert "scuff, coat table/void resin 4 of 4 the recoat window has closed" in missed
        assert "overdue" not in missed.casefold()
