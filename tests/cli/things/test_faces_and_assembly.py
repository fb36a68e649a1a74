"""Faces that are unlike, faces that are glued, and the order of both."""

from __future__ import annotations

from datetime import datetime

from tests.finisher import Finisher


def test_faces_that_got_ahead_are_listed_by_size_until_the_others_follow(finisher: Finisher):
    """One command coats one face of one size."""
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


def test_steps_with_mask_and_glue_up_are_planned_in_that_order(finisher: Finisher):
    """Insides flat, unmasked, glued, then the outsides; a warmer room brings the date nearer."""
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
    assert (
        "caution: offcut: over dewaxed shellac, 2 lb cut: A blend cannot soak into a film" in over
    )

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


def test_a_glue_face_that_was_ever_oiled_is_no_glue_face(finisher: Finisher):
    """Whatever the year of the oil; tape off and faces bare before the clamps."""
    finisher.types(
        "2006-05-01 08:00",
        "product new oil --class boiled-linseed-oil",
        "part new desk/slices -n 6 --species beech --face top --face old:joint --face sawn:joint",
        "part new desk/board --of slices:6",
        "air 21C 50%",
    )
    said = finisher.types("2006-05-01 08:10", "log slices oil --face old")
    assert "slices old is a glue face: glue needs bare wood" in said
    finisher.types("2026-05-01 07:50", "log slices mask --face sawn")
    finisher.types("2026-05-01 08:00", "air 21C 50%")
    why = finisher.types("2026-05-01 08:00", "why board")
    assert "finish on a glue face" in why
    assert "tape to come off" in why
    assert "BENCH NOW" not in finisher.types("2026-05-01 08:00", "ready"), "no coat over it"
    said = finisher.types("2026-05-01 08:10", "log board glue-up --glue 'yellow pva'")
    assert "slices: finish on a glue face: glue needs bare wood" in said
    said = finisher.types("2026-05-03 08:10", "fault board open-joint --where 'second and third'")
    assert "finish, wax or oil on the glue face: oil on slices ×6, old (act 5)" in said
    assert "every other joint with the same history" in said
    finisher.types("2026-05-03 08:20", "log board untape --face sawn")
    assert "finish on a glue face" in finisher.types("2026-05-03 08:21", "ready")
    finisher.types("2026-05-03 08:30", "off board --face old --scraped")
    assert "finish on a glue face" not in finisher.types("2026-05-03 08:31", "ready")


def test_pieces_of_a_member_that_stand_apart_in_an_assembly_are_told_by_number(finisher: Finisher):
    """Two rails of one frame: a line that names one of them can be typed back."""
    finisher.types(
        "2026-06-01 08:00",
        "product new shellac --class shellac-2lb",
        "product new oil --class oil-varnish-blend",
        "part new bench/legs -n 4 --species ash",
        "part new bench/rails -n 2 --species ash",
        "part new bench/frame --of legs:4 --of rails:2",
        "part new bench/seat --species ash",
        "air 21C 50%",
        "log frame glue-up",
    )
    assert "frame, rails:" not in finisher.types("2026-06-01 08:01", "when bench/frame")
    said = finisher.types("2026-06-05 08:00", "log rails:2 shellac")
    assert said.startswith("08:00  frame, rails:2: coat 1, shellac")
    seen = finisher.types("2026-06-05 08:00", "on rails")
    assert "bench/frame, rails:1 " in seen
    assert "bench/frame, rails:2 " in seen
    finisher.types("2026-06-05 08:05", "log legs oil", "log seat oil")
    card = finisher.types("2026-07-05 08:00", "handover bench")
    assert "  frame, rails:2 (ash): dewaxed shellac" in card
    assert "frame, legs; seat (ash): oil and varnish blend" in card
    alike = finisher.types("2026-07-05 08:05", "log rails:1 shellac", "on rails")
    assert "rails:1" in alike
    assert finisher.types("2026-07-06 08:00", "log rails shellac").startswith(
        "08:00  frame, rails: "
    )
