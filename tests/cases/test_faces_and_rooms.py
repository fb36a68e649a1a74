"""Questions about the faces of a part and the rooms it stands in: what cups, what is too cold."""

from __future__ import annotations

from datetime import datetime

from tests.cases.finisher import Finisher


def test_fc042_a_top_that_has_a_coat_on_one_face_may_cup(finisher: Finisher):
    """Two coats on two faces are one each. Hidden face first, turned onto points, then the top.

    One face may not be ahead for a day. That a bare underside is to blame is disputed: a note.
    """
    finisher.types(
        "2026-01-12 07:30",
        "product new poly --class oil-polyurethane --recoat 12h",
        "steps new each poly@top poly@underside",
        "part new trestle/board --species walnut --face underside:hidden --face top --steps each",
        "shop hours 'mon-sun 7:00-21:00'",
        "air 21C 35%",
    )
    plan = finisher.asks("2026-01-12 07:30", "plan")
    coats = [t for s in plan["sessions"] for t in s["tasks"] if t["operation"] == "coat"]
    assert [coat["label"] for coat in coats] == ["board, underside", "board, top"]

    finisher.types("2026-01-12 08:00", "log board --face top")
    assert finisher.asks("2026-01-12 20:00", "ready")["uneven"] == []
    (waits,) = finisher.asks("2026-01-12 20:00", "ready")["drying"]
    turn = next(
        stage
        for line in finisher.asks("2026-01-12 20:00", "when board")["lines"]
        for stage in line["stages"]
        if stage["stage"] == "turn"
    )
    assert (waits["answer"], waits["label"]) == ("waits for", "board, underside")
    assert waits["high"] == turn["high"]

    finisher.types("2026-01-13 08:00", "air 14C 35%")
    (line,) = finisher.asks("2026-01-13 08:00", "ready")["uneven"]
    assert (line["ahead"], line["ahead_coats"]) == ("top", 1)
    assert (line["behind"], line["behind_coats"]) == ("underside", 0)
    assert line["since"] == "2026-01-12T08:00:00Z"
    said = finisher.types("2026-01-13 08:00", "ready -v")
    assert "top 1 coat, underside uncoated  since Mon 08:00 (1 d): it may cup" in said
    assert "note: one trade author holds that a bare underside matters little" in said

    finisher.types("2026-01-13 08:10", "log board poly --face underside")
    assert finisher.asks("2026-01-13 08:10", "ready")["uneven"] == []
    faces = {
        line["standing"]["faces"][0]: len(line["coats"])
        for line in finisher.asks("2026-01-14 08:00", "on board")
    }
    assert faces == {"underside": 1, "top": 1}
    cupped = finisher.types("2026-01-14 08:00", "air 14C 35%", "fault board cupped")
    assert "let air to both, and wait until it lies flat" in cupped


def test_fc043_tops_coated_above_only_are_not_finished(finisher: Finisher):
    """The undersides get as many coats, soon, with air on both faces; one command for a size.

    The trap: two coats of two are on, so it is done.
    """
    finisher.types(
        "2026-06-01 08:00",
        "product new stain --class wiping-stain",
        "product new catalysed --class conversion-varnish",
        "steps new above stain catalysed*2@top",
        "part new tops/30in -n 19 --species beech --face bottom:hidden --face top --steps above",
        "part new tops/42in -n 19 --like tops/30in",
        "shop hours 'mon-sun 8:00-20:00'",
        "air 23C 50%",
        "log tops/* stain",
        "log tops/* wipe",
    )
    finisher.types("2026-06-03 08:30", "air 23C 50%", "log tops/* catalysed --face top")
    finisher.types("2026-06-03 12:00", "log tops/* catalysed --face top --scuffed")
    finisher.types("2026-06-06 13:00", "air 23C 50%")
    seen = finisher.asks("2026-06-06 13:00", "ready")
    assert [
        (u["label"], u["ahead"], u["ahead_coats"], u["behind"], u["behind_coats"], u["since"])
        for u in seen["uneven"]
    ] == [
        ("30in ×19", "top", 2, "bottom", 0, "2026-06-03T07:30:00Z"),
        ("42in ×19", "top", 2, "bottom", 0, "2026-06-03T07:30:00Z"),
    ]
    said = finisher.types("2026-06-06 13:00", "ready")
    assert (
        "top 2 coats, bottom uncoated  since Wed 08:30 (3 d): it may cup; coat bottom soon" in said
    )
    assert "air to both faces" in said
    counts = {
        line["standing"]["label"]: [coat["product"] for coat in line["coats"]]
        for line in finisher.asks("2026-06-06 13:00", "on 42in")
    }
    assert counts == {
        "42in ×19, bottom": ["stain"],
        "42in ×19, top": ["stain", "catalysed", "catalysed"],
    }
    one = finisher.types("2026-06-06 13:05", "log 42in catalysed --face bottom")
    assert one.startswith("13:05  42in ×19, bottom: coat 1, catalysed")
    left = finisher.asks("2026-06-06 13:05", "ready")["uneven"]
    assert [u["label"] for u in left] == ["30in ×19"]


def test_fc099_panels_are_finished_before_they_are_glued_up(finisher: Finisher):
    """Mask, coat the insides flat, unmask, glue up, then the outsides; dry in the house.

    A penetrating mix over a film of shellac is pointless. The trap: a bare list of coats.
    """
    finisher.types(
        "2026-11-25 08:00",
        "room new shop --night 12C",
        "room new house --night 19C",
        "product new shellac --class shellac-2lb",
        "product new mix --class oil-varnish-blend",
        "steps new panel sand mask@inside mix*2@inside untape@inside",
        "steps new case glue-up mix*2@outside",
        "steps new first-idea shellac mix",
        "part new unit/side -n 2 --species 'red oak' --steps panel --room shop"
        " --face inside:hidden --face outside --face tongue:joint",
        "part new unit/case --of side:2 --steps case --room shop",
        "part new trial/offcut --species 'red oak' --steps first-idea --board --room shop",
        "shop hours 'mon-sun 8:00-21:00'",
        "air 12.8C 50% --room shop",
        "air 20C 45% --room house",
    )
    plan = finisher.asks("2026-11-25 08:10", "plan unit")
    work = [t for s in plan["sessions"] for t in s["tasks"] if t["operation"]]
    order = [f"{t['operation']} {t['label']}" for t in work if t["operation"] != "scuff"]
    assert order == [
        "sand side ×2",
        "mask side ×2, inside",
        "coat side ×2, inside",
        "coat side ×2, inside",
        "untape side ×2, inside",
        "glue-up case",
        "coat case, side outside",
        "coat case, side outside",
    ]
    finisher.types("2026-11-25 08:20", "log offcut shellac")
    finisher.types("2026-11-25 18:00", "air 12.8C 50% --room shop")
    over = finisher.types("2026-11-25 18:05", "log offcut mix")
    assert "caution: over dewaxed shellac, 2 lb cut: A blend cannot soak into a film" in over

    finisher.types("2026-11-25 18:10", "log side sand", "log side mask", "log side mix")
    finisher.types("2026-11-25 18:20", "log side wipe --face inside")
    early = finisher.tries("2026-11-25 18:30", "log case glue-up --json").document["answer"]
    assert any("not ready for cauls" in w["sentence"] for w in early["warnings"])
    finisher.types("2026-11-25 18:31", "undo")

    def recoat() -> datetime:
        lines = finisher.asks("2026-11-25 19:00", "when side")["lines"]
        stages = next(line["stages"] for line in lines if line["stages"])
        return datetime.fromisoformat(next(s["high"] for s in stages if s["stage"] == "recoat"))

    cold = recoat()
    assert (cold - datetime.fromisoformat("2026-11-25T18:10Z")).total_seconds() > 48 * 3600
    finisher.types("2026-11-25 18:40", "air 20C 45% --room house", "move side house")
    assert (cold - recoat()).total_seconds() > 12 * 3600


def test_fc027_too_cold_for_waterborne_is_not_the_same_as_slow(finisher: Finisher):
    """More hours do not mend it: warm the part and the can for hours, then coat in the warm room.

    The trap: the drying time is doubled and a date is printed.
    """
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-25 06:30",
        "settings temperature F",
        "room new garage --night 34F",
        "room new dining --night 67F",
        "product new acrylic --class waterborne-clear --recoat 2h --window 24h"
        " --label-air '77F 50%'",
        "steps new clear acrylic*3",
        "part new cabinet/case --species maple --steps clear --room garage",
        "shop hours 'mon-sun 6:00-22:00'",
        "air 48F 60% --room garage",
        "air 69F 45% --room dining",
    )
    plan = finisher.asks("2026-11-25 06:35", "plan")
    assert plan["sessions"] == []
    (left,) = plan["unplanned"]
    assert (left["needs_air"], left["rooms"]) == (True, ["dining"])
    (stop,) = finisher.asks("2026-11-25 06:35", "ready")["drying"]
    assert (stop["answer"], stop["high"]) == ("not in this air", None)
    assert "is below the 10 °C that waterborne clear needs" in stop["because"]
    paper = finisher.types("2026-11-25 06:35", "plan")
    assert "dining suits: finishlog move cabinet/case dining" in paper
    assert "cannot be said: case is not planned" in paper

    coated = finisher.asks("2026-11-25 06:36", "log case")
    assert coated["after"][0]["answer"] == "suspect"
    assert coated["after"][0]["high"] is None
    finisher.types("2026-11-25 06:37", "undo")

    moved = finisher.types("2026-11-25 06:40", "move case dining")
    assert "waits for the wood to warm up (after 13:00)" in moved
    early = finisher.types("2026-11-25 06:45", "log case")
    assert "let the part and the can warm up for some hours" in early
    finisher.types("2026-11-25 06:46", "undo")
    indoors = finisher.asks("2026-11-25 06:50", "plan")
    coats = [
        datetime.fromisoformat(t["start"])
        for s in indoors["sessions"]
        for t in s["tasks"]
        if t["operation"] == "coat"
    ]
    assert coats[0] >= datetime.fromisoformat("2026-11-25T17:40Z")
    assert 2 <= sum(coat < datetime.fromisoformat("2026-11-26T03:00Z") for coat in coats) <= 3
