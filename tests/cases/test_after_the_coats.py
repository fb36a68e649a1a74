"""Questions about what a film bears, from the last coat to full hardness."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

FC051 = Question(
    "wrapped and shipped: how long after the last coat, and in what",
    shows=(
        "stacked, packed, shipped, fully hard: each with a date of its own",
        "packing waits longer where the log shows damp air, or a glaze below",
        "the card says what to pack it in",
    ),
    trap="dry to the touch is taken for fit to be wrapped",
)


def test_fc051_what_may_be_stacked_may_not_be_wrapped_yet(finisher: Finisher):
    finisher.types(
        "2026-07-06 08:00",
        "product new stain --class wiping-stain",
        "product new clear --class lacquer-precatalysed",
        "product new glaze --class glaze",
        *(f"room new {room}" for room in ("dry", "damp")),
        *(f"part new job/{part} --room dry" for part in ("plain", "glazed")),
        "part new job/humid --room damp",
        "air 22C 50% --room dry",
        "air 22C 50% --room damp",
        *(f"log {part} stain" for part in ("plain", "glazed", "humid")),
        *(f"log {part} wipe" for part in ("plain", "glazed", "humid")),
    )
    finisher.types("2026-07-08 09:00", "log glazed clear")
    finisher.types("2026-07-08 12:00", "log glazed glaze")
    finisher.types("2026-07-08 12:10", "log glazed wipe")
    finisher.types(
        "2026-07-10 09:00",
        "air 22C 50% --room dry",
        "air 22C 50% --room damp",
        *(f"log {part} clear" for part in ("plain", "glazed", "humid")),
    )
    now = "2026-07-10 20:00"
    finisher.types(now, "air 22C 72% --room damp")
    plain = finisher.reads(now, "when plain")
    glazed, humid = (finisher.reads(now, f"when {part}") for part in ("glazed", "humid"))
    with FC051.line(1):
        # 48 h; 72 to 168 h; with the last of packing, shutting in and handling; 30 days.
        dates = [finisher.after(plain, stage) for stage in ("stack", "pack", "ship", "fully hard")]
        assert dates == ["Sun 12:30", "Sat 18 Jul", "Sat 18 Jul", "Wed 12 Aug"]
        assert "pack after Sat 18 Jul, test from Mon 14:30" in plain
    with FC051.line(2):
        assert "half as long again" not in plain
        assert "(half as long again: a glaze or filler lies below)" in glazed
        assert "(half as long again: damp air)" in humid
        # 252 h where 168 h stood, at 0.93 of a label hour each.
        assert finisher.after(glazed, "pack") == finisher.after(humid, "pack") == "Wed 22 Jul"
    with FC051.line(3):
        card = finisher.reads(now, "handover job --card")
        assert "never face to face: plain paper or closed-cell foam between" in card
        assert "before fully hard no corrugated board, newsprint, wax paper or plastic film" in card
    with FC051.trap:
        assert "touch reached" in plain
        assert "dry to the touch is not dry enough to pack" in card
        wrapped = finisher.types(now, "log plain pack")
        assert "stop: plain: drying: pack not reached" in wrapped


FC053 = Question(
    "furniture back on the floor the same evening: used too early, or bad adhesion",
    shows=(
        "a date each for walking on it, light load, rugs; and what is glued on, of what age ever",
        "that it was loaded is on record, with the age of the film and the stage that it broke",
        "no single cause is claimed",
    ),
    trap="ready for another coat is taken for ready for furniture",
)


def test_fc053_a_floor_that_may_be_recoated_bears_no_furniture(finisher: Finisher):
    finisher.types(
        "2026-07-06 09:00",
        "product new poly --class oil-polyurethane --recoat 2h",
        "part new house/floor",
        "air 22C 50%",
        "log floor poly",
    )
    finisher.types("2026-07-06 11:30", "log floor poly")
    finisher.types("2026-07-06 13:30", "log floor poly")
    when = finisher.reads("2026-07-06 20:00", "when floor")
    ready = finisher.reads("2026-07-06 20:00", "ready")
    loaded = finisher.reads("2026-07-06 20:00", "log floor use")
    with FC053.line(1):
        assert finisher.after(when, "turn") == "Tue 15:30"
        assert "· handled; a floor walked on in socks" in when
        assert finisher.after(when, "light use") == "Wed 15 Jul"
        assert "· nothing left on it, nothing hot or wet, no cloth" in when
        assert finisher.after(when, "fully hard") == "Sat 8 Aug"
        assert "· rugs, cloths, felt pads; nothing glued on, no rubber, at any age" in when
    with FC053.line(2):
        assert "stop: floor: drying: light use not reached" in loaded
        on = finisher.reads("2026-07-13 10:00", "on floor")
        assert "in use Mon 6 Jul 20:00, after 6.5 h, before light use (act 7)" in on
    fault = finisher.reads("2026-07-13 10:00", "fault floor peel --where 'under a pad'")
    with FC053.line(3):
        shown, _, others = fault.partition(" or no scuffing between the coats")
        assert (
            "the log loaded, taped or set on glued pads while it was soft: use after 6 h" in shown
        )
        assert "the coat below was not dry through: poly went on 2 h before" in shown
        assert "wax, silicone or stripper residue below" in others
    with FC053.trap:
        assert "recoat test first; promised after Tue 15:30" in when
        assert "test, scuff, coat house/floor poly, coat 4 may be ready" in ready
        assert "light use after" in when


FC057 = Question(
    "two weeks after the last coat: is it time to rub it out and wax it",
    shows=(
        "rubbing out has a date by class, from the last coat, later in the cold",
        "after 14 days it may be done if nothing smells; three weeks are better",
        "wax before a coat that is still to come draws a warning",
    ),
    trap="fully hard, or fit for another coat, is taken for it",
)


def test_fc057_rubbed_out_by_its_class_and_its_nose(finisher: Finisher):
    finisher.types(
        "2026-11-01 10:00",
        "product new varnish --class alkyd-varnish",
        "product new shellac --class shellac-2lb",
        "product new acrylic --class waterborne-clear",
        "product new wax --class paste-wax",
        "room new shop",
        "room new cellar",
        "part new lap/desk --species ash --room shop",
        "part new lap/cool --species ash --room cellar",
        "part new lap/quick --room shop",
        "part new lap/slow --room shop",
        "steps new two varnish*2 wax",
        "part new lap/waxed --room shop --steps two",
        "air 23C 50% --room shop",
        "air 13C 50% --room cellar",
        *(f"log {part} varnish" for part in ("desk", "cool", "waxed")),
        "log quick shellac",
        "log slow acrylic",
    )
    finisher.types("2026-11-15 10:00", "air 23C 50% --room shop", "air 13C 50% --room cellar")
    desk, cool, quick, slow = (
        finisher.reads("2026-11-15 10:00", f"when {part}")
        for part in ("desk", "cool", "quick", "slow")
    )
    with FC057.line(1):
        assert "rub test first (smell, thumbnail)" in desk
        assert "rub reached" in quick
        assert "rub after Wed 2 Dec, test from Mon 23 Nov" in slow
        # Half as fast by 10 °C: 7 days are 14, 21 are 42.
        assert "rub test first (smell, thumbnail); better after Mon 14 Dec" in cool
    with FC057.line(2):
        assert "better after Mon 23 Nov; promised after Wed 2 Dec" in desk
        one = finisher.reads("2026-11-15 10:05", "check desk no-smell", "when desk")
        assert "rub test first" in one
        proved = finisher.reads("2026-11-15 10:10", "check desk no-print")
        assert "clamp, rub, no more" in proved
        assert "rub reached; better after Mon 23 Nov" in finisher.reads(
            "2026-11-15 10:10", "when desk"
        )
        assert "caution: desk" not in finisher.types("2026-11-15 10:15", "log desk rub-out")
        assert "may be reached" not in finisher.types("2026-11-15 10:20", "log desk wax")
    with FC057.line(3):
        early = finisher.reads("2026-11-15 10:30", "log waxed wax")
        assert "caution: waxed: varnish is still to come: Nothing sticks to wax" in early
        late = finisher.reads("2026-11-15 10:40", "log desk varnish")
        assert "stop: desk: over paste wax: Nothing sticks to wax" in late
    with FC057.trap:
        assert "recoat reached" in desk
        assert "fully hard after Wed 2 Dec" in desk
        smells = finisher.reads("2026-11-15 10:45", "check cool smells", "when cool")
        assert "rub blocked: smell failed: smells" in smells
