"""Packing, use and the card: which film bears what, and from when."""

from __future__ import annotations

import re

from tests.finisher import Finisher, hours

ROOM = ("room new shop --night 20C", "air 23C 50%")
POLY = "product new poly --class oil-polyurethane"


def test_one_set_of_two_woods_is_packed_by_its_own_last_coat(finisher: Finisher):
    """Labels that say when foam may touch it; the late set alone is late."""
    finisher.types(
        "2026-03-02 08:00",
        *ROOM,
        "product new lacquer --class lacquer-sprayed --pack 4-12h",
        "product new skim --class wiping-varnish --pack 8-12h",
        "steps new system lacquer*3 skim",
        "part new trays/maple -n 4 --species maple --steps system",
        "part new trays/walnut -n 4 --species walnut --steps system",
        "shop hours 'mon-sun 7:00-23:00'",
        "log maple walnut lacquer",
    )
    finisher.types("2026-03-02 14:00", "air 23C 50%", "log maple walnut lacquer")
    finisher.types("2026-03-02 20:00", "log maple lacquer")
    to_come = {
        g["standing"]["label"]: g["to_come"]
        for g in finisher.asks("2026-03-03 07:00", "on trays/*")
    }
    assert to_come == {"maple ×4": ["skim"], "walnut ×4": ["lacquer", "skim"]}
    finisher.types("2026-03-03 08:00", "air 23C 50%", "log walnut lacquer", "log maple skim")
    finisher.types("2026-03-03 22:00", "air 23C 50%")
    maple = finisher.stage("2026-03-03 22:00", "maple", "pack")
    finisher.types("2026-03-03 22:00", "log walnut skim")
    assert finisher.stage("2026-03-03 22:05", "maple", "pack") == maple, "walnut's alone moved"
    assert maple["high"] < "2026-03-04T00:00"
    assert finisher.stage("2026-03-03 22:05", "walnut", "pack")["high"] > "2026-03-04T10:00"
    dates = {
        p["label"]: p["pack"]["at"] for p in finisher.asks("2026-03-03 22:05", "plan")["parts"]
    }
    assert dates["maple ×4"] < "2026-03-04T07:00" < dates["walnut ×4"]
    finisher.types("2026-03-04 05:30", "air 23C 50%")
    assert "touch       reached" in finisher.types("2026-03-04 05:30", "when walnut")
    said = finisher.types("2026-03-04 05:30", "log walnut pack")
    assert "stop: walnut ×4: drying: pack not reached (label " in said
    assert " done); nothing but air may touch it: foam" in said
    assert "stop" not in finisher.types("2026-03-04 05:30", "log maple pack")
    walnut = finisher.types("2026-03-04 08:00", "when walnut")
    assert "pack        test first (thumbnail); promised after" in walnut
    card = finisher.types("2026-03-04 07:30", "handover trays --card")
    assert "dry to the touch is not dry enough to pack: foam" in card


def test_a_skim_in_the_cold_is_packed_later(finisher: Finisher):
    finisher.types(
        "2026-03-03 12:30",
        *ROOM,
        "room new barn --night 10C",
        "air 10C 50% --room barn",
        "product new skim --class wiping-varnish --pack 8-12h",
        "part new trays/warm",
        "part new trays/cold --room barn",
        "log warm cold skim --at 'today 12:30'",
    )
    assert finisher.stage("2026-03-03 13:00", "warm", "pack")["high"] < "2026-03-04T07:00"
    assert finisher.stage("2026-03-03 13:00", "cold", "pack")["high"] > "2026-03-04T12:00"


def test_stacked_packed_and_hard_are_three_dates(finisher: Finisher):
    """A label of a can; a humid room makes each later."""
    finisher.types(
        "2026-07-01 09:00",
        "product new clear --class waterborne-clear --recoat 3h --stack 24h --pack 48h",
        "product new wash --class glaze",
        "room new shop",
        "room new damp",
        "steps new plain clear",
        "steps new glazed wash clear",
        "part new doors/plain -n 4 --species maple --steps plain --room shop",
        "part new doors/humid -n 4 --species maple --steps plain --room damp",
        "part new doors/glazed -n 4 --species maple --steps glazed --room shop",
        "air 23C 50% --room shop",
        "air 23C 70% --room damp",
        "log glazed wash",
        "log glazed wipe",
    )
    finisher.types(
        "2026-07-02 09:00",
        "air 23C 50% --room shop",
        "air 23C 70% --room damp",
        "log plain clear",
        "log humid clear",
        "log glazed clear",
    )
    at = "2026-07-02 09:05"
    dates = {
        part: {name: finisher.stage(at, part, name)["high"] for name in ("stack", "pack", "cured")}
        for part in ("plain", "humid", "glazed")
    }
    plain = dates["plain"]
    on = "2026-07-02T08:00:00+00:00"
    assert hours(on, plain["stack"]) == 24
    assert hours(on, plain["pack"]) == 48
    assert hours(on, plain["cured"]) >= 21 * 24
    assert finisher.stage(at, "plain", "touch")["high"] < plain["stack"] < plain["pack"]
    assert hours(plain["pack"], dates["humid"]["pack"]) > 24
    assert hours(plain["pack"], dates["glazed"]["pack"]) >= 0
    assert hours(on, dates["glazed"]["stack"]) >= 48

    touch = finisher.tries("2026-07-02 20:00", "check plain dry")
    assert "proves touch, dust-free, tack-free, no more" in touch.out
    assert finisher.stage("2026-07-02 20:00", "plain", "pack")["high"] >= plain["pack"]
    card = " ".join(finisher.types("2026-07-02 20:01", "handover doors --card").split())
    for words in (
        "packing",
        "fully hard",
        "dry to the touch is not dry enough to pack",
        "never face to face: plain paper or closed-cell foam between",
        "before fully hard no corrugated board, newsprint, wax paper or plastic film",
        "panels on edge",
        "no hot or freezing vehicle; unwrap soon",
    ):
        assert words in card


def test_load_before_light_use_is_named_when_a_film_peels(finisher: Finisher):
    """Early load and a weak bond both stand there, neither as the one cause."""
    finisher.types(
        "2026-03-02 09:00",
        *ROOM,
        "product new fast --class oil-polyurethane --recoat 2h --sand 2h",
        "part new house/floor --species oak",
        "log floor fast",
    )
    finisher.types("2026-03-02 11:30", "log floor fast --not-scuffed")
    finisher.types("2026-03-02 13:30", "log floor fast --not-scuffed")
    highs = [
        finisher.stage("2026-03-02 13:30", "floor", name)["high"]
        for name in ("recoat", "turn", "light-use", "cured")
    ]
    assert highs == sorted(highs)
    assert highs[0] < "2026-03-02T19:00"
    assert highs[2] > "2026-03-09T00:00"
    card = finisher.types("2026-03-02 13:30", "handover house --card")
    assert "still no rugs, table cloths or pads" in card
    assert "fully hard: rugs and cloths too" in card
    assert "adhesive pads and tape" in card
    loaded = finisher.types("2026-03-02 19:30", "log floor use")
    # A load that stays presses until the film is fully hard (common practice).
    (bare,) = re.findall("nothing left on it until .*", loaded)
    used = finisher.types("2026-03-09 19:20", "log floor use")
    assert bare in used
    assert "stop: floor: drying: light use not reached" in loaded
    said = finisher.types("2026-03-09 19:30", "fault floor peel")
    assert "use after 6 h, before light use" in said
    assert "no scuffing between the coats: logged as not scuffed" in said
    causes = finisher.asks("2026-03-09 19:31", "when floor")["lines"][0]["standing"]["faults"]
    assert [fault["name"] for fault in causes] == ["peeling"]
    assert "nothing left on it" not in finisher.types("2026-12-09 19:20", "log floor use")


def test_the_card_says_what_light_use_is_and_felt_hard_is_no_test(finisher: Finisher):
    """Later where it was cool; no test of the surface makes it harder inside."""
    finisher.types("2026-05-03 09:00", POLY, *ROOM, "part new table/top --species oak")
    for day in ("04", "06", "08"):
        finisher.types(f"2026-05-{day} 10:00", "air 18C 50%", "log top poly --scuffed")
    felt = finisher.tries("2026-05-10 10:00", "check top hard")
    assert felt.code == 2
    assert "may still be soft inside; smell it: no-smell or smells; press a thumbnail" in felt.err
    card = finisher.types("2026-05-10 10:00", "handover table --card")
    for line in (
        "packing, light use              Tue 19 May 2026",
        "waxing, normal use, fully hard  Sat 20 Jun 2026",
        "felt hard is no test. Shut up for a day: no smell. Thumbnail: no print.",
        "light use: nothing left on it, nothing hot or wet, no cloth.",
        "normal use: things on felt; still no rugs, table cloths or pads.",
    ):
        assert line in card
    light, hard = (
        finisher.stage("2026-05-10 10:00", "top", s)["high"] for s in ("light-use", "cured")
    )
    assert light > "2026-05-15", "seven days at the warmth of the figures, here it was cooler"
    assert hard > "2026-06-07", "and thirty"
    assert max(map(len, card.splitlines())) <= 80
    used = finisher.types("2026-05-10 10:00", "log top use")
    assert "stop: top: drying: light use not reached" in used
    finisher.types("2026-05-10 10:00", "check top no-smell", "check top no-print")
    after = finisher.stage("2026-05-10 10:01", "top", "cured")
    assert after["high"] == hard, "no test of the surface makes it harder inside"


def test_rubbing_out_goes_by_class_cold_and_smell(finisher: Finisher):
    """Nothing goes over wax."""
    finisher.types(
        "2026-03-02 09:00",
        "product new varnish --class alkyd-varnish",
        "product new shellac --class shellac-2lb",
        "product new water --class waterborne-clear",
        "product new wax --class paste-wax",
        *ROOM,
        "room new barn --night 13C",
        "air 13C 50% --room barn",
        "part new desk/lid --species ash",
        "part new desk/tray --species ash",
        "part new desk/box --species ash",
        "part new desk/cold --species ash --room barn",
        "log lid cold varnish",
        "log tray shellac",
        "log box water",
    )
    low = {
        p: finisher.stage("2026-03-02 10:00", p, "rub")["low"][:10]
        for p in ("lid", "tray", "box", "cold")
    }
    assert low["tray"] == "2026-03-04"
    assert "2026-03-09" <= low["lid"] <= "2026-03-11"
    assert "2026-03-23" <= low["box"]
    assert low["cold"] > low["lid"], "later where it was cold"
    soon = finisher.types("2026-03-05 09:00", "log lid rub-out")
    assert "stop: lid: drying: rub not reached" in soon
    finisher.types("2026-03-05 09:01", "undo")
    finisher.types("2026-03-16 09:00", "air 23C 50% --room shop")
    rub = finisher.stage("2026-03-16 09:00", "lid", "rub")
    assert rub["low"] < "2026-03-16" < rub["high"]
    assert "rub         test first (smell, thumbnail); better after" in finisher.types(
        "2026-03-16 09:00", "when lid"
    )
    finisher.types("2026-03-16 09:01", "check lid smells")
    assert "stop: lid: the smell check found that it smells" in finisher.types(
        "2026-03-16 09:02", "log lid rub-out"
    )
    finisher.types("2026-03-16 09:03", "undo")
    finisher.types("2026-03-17 09:00", "check lid no-smell")
    assert "stop: " not in finisher.types("2026-03-17 09:01", "log lid rub-out", "log lid wax")
    over_it = finisher.types("2026-03-18 09:00", "log lid varnish")
    assert "Nothing sticks to wax" in over_it
    finisher.types(
        "2026-03-18 09:10", "steps new two varnish*2 wax", "part new desk/leg --steps two"
    )
    finisher.types("2026-03-18 09:10", "log leg varnish")
    too_early = finisher.types("2026-03-28 09:10", "log leg wax")
    assert "caution: leg: varnish is still to come: Nothing sticks to wax" in too_early


def test_what_never_may_stand_on_a_film_is_no_question_of_weeks(finisher: Finisher):
    """By finish, at any age: soft plastic marks lacquer, and soap leaves no film to mark."""
    finisher.types(
        "2026-03-02 09:00",
        "product new lacquer --class lacquer-sprayed",
        "product new soap --class soap",
        *ROOM,
        "part new desk/top",
        "part new bench/seat",
        "log top lacquer",
        "log seat soap",
    )
    young = finisher.asks("2026-03-05 09:00", "handover desk --card")
    old = finisher.asks("2036-03-05 09:00", "handover desk --card")
    never = [line["text"] for line in old["lines"] if line["kind"] == "never"]
    assert never == [line["text"] for line in young["lines"] if line["kind"] == "never"]
    (soft,) = [text for text in never if text.startswith("soft plastic or rubber")]
    assert all(word in soft for word in ("vinyl mats", "rubber feet", "at any age", "felt"))
    assert "20" not in "".join(never), "no date on that list"
    assert {d["stage"] for d in young["dates"]} >= {"light-use", "cured"}
    seat = finisher.asks("2026-03-05 09:00", "handover bench --card")
    bare = [line["text"] for line in seat["lines"] if line["kind"] == "never"]
    assert soft not in bare, "soap leaves no film to soften"
    paper = finisher.types("2036-03-05 09:00", "handover desk --card")
    assert "NOT BEFORE" in paper
    assert "NEVER, HOWEVER OLD IT IS" in paper
    assert "use normally" not in paper
