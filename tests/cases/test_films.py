"""Questions about films that stay soft, wrinkle, blister, blush, or do not hold."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from tests.cases.finisher import Finisher

SHOP = "room new shop"
STILL = "21C 50%"


def whys(finisher: Finisher, when: str, part: str) -> list[Any]:
    """Ask why; every group of what is meant."""
    found: list[Any] = finisher.asks(when, f"why {part}")
    return found


def why(finisher: Finisher, when: str, part: str) -> Any:
    """Ask why of zones that stand alike."""
    (only,) = whys(finisher, when, part)
    return only


def said(answer: Any) -> str:
    """Return everything that is found about a group, what to do included."""
    findings = answer["standing"]["findings"]
    return " | ".join(f"{f['level']}: {f['sentence']}; {f['remedy']}" for f in findings)


def stage(finisher: Finisher, when: str, part: str, name: str) -> Any:
    """Return one milestone of zones that stand alike."""
    (line,) = finisher.asks(when, f"when {part}")["lines"]
    return next(each for each in line["stages"] if each["stage"] == name)


def hours(since: str, until: str) -> float:
    """Return the hours between two instants of an answer."""
    return (datetime.fromisoformat(until) - datetime.fromisoformat(since)).total_seconds() / 3600


def test_fc003_each_wood_of_a_piece_has_its_own_state_and_a_day_to_decide(finisher: Finisher):
    """Oily strips keep varnish soft: wash it off, dewaxed shellac at once, while time is left.

    The trap is one "last coat plus hours" for the piece, ready and not ready at once.
    """
    finisher.types(
        "2026-10-20 18:00",
        "product new blend --class oil-varnish-blend",
        "product new urethane --class oil-polyurethane",
        "product new sealer --class shellac-1lb",
        SHOP,
        f"air {STILL}",
        "project new gifts --due '13 Nov 2026'",
        "steps new coaster blend blend scuff urethane",
        "part new gifts/coasters -n 6 --species maple --face front=pale,red:padauk --steps coaster",
    )
    before = {tuple(x["standing"]["faces"]): x for x in whys(finisher, "2026-10-20 18:01", "coast")}
    assert before["front/pale",]["standing"]["answer"] == "go"
    assert before["front/red",]["standing"]["answer"] == "stopped by what is underneath"
    assert "extractives keep an oxidising finish from curing" in said(before["front/red",])
    assert "dewaxed shellac" in said(before["front/red",])
    finisher.types("2026-10-20 18:05", "log coasters blend", "log coasters wipe")
    finisher.types("2026-10-21 18:05", "log coasters blend", "log coasters wipe")
    finisher.types(
        "2026-10-24 18:00", f"air {STILL}", "log coasters urethane --method spray --scuffed"
    )
    finisher.types(
        "2026-10-31 18:00",
        f"air {STILL}",
        "check coasters@front/pale no-print",
        "check coasters@front/red tacky",
    )
    pale, red = whys(finisher, "2026-10-31 18:05", "coasters")
    assert pale["standing"]["faces"] == ["front/pale"]
    assert red["standing"]["faces"] == ["front/red"]
    assert [c["found"] for c in pale["checks"]] == ["no-print"]
    assert [c["found"] for c in red["checks"]] == ["tacky"]
    assert "late" not in said(pale)
    assert "the log shows: oil of the wood itself: padauk is oily" in said(red)
    assert "to begin again on padauk: wash the film off" in said(red)
    assert "take it off by Wed 4 Nov to keep Fri 13 Nov" in said(red)
    packed = stage(finisher, "2026-10-31 18:05", "coasters@front/red", "pack")
    assert packed["blocked"] == "touch failed: tacky"
    ready = finisher.asks("2026-10-31 18:05", "ready")
    assert [m["blocked"] for m in ready["milestones"]] == ["touch failed: tacky"]
    finisher.types(
        "2026-11-02 18:00",
        f"air {STILL}",
        "off coasters@front/red --to bare --washed",
        "log coasters@front/red solvent-wipe",
    )
    sealed = finisher.types("2026-11-02 18:10", "log coasters@front/red sealer")
    assert "stop:" not in sealed
    pale, red = finisher.asks("2026-11-02 18:15", "on coasters")
    assert [c["product"] for c in pale["coats"]] == ["blend", "blend", "urethane"]
    assert [c["product"] for c in red["coats"]] == ["sealer"]


def test_fc005_a_cool_basement_takes_a_day_or_more_not_the_hours_of_the_can(finisher: Finisher):
    """Plan a day or more a coat at 64 °F, test by touch, or carry the part where it is warm.

    The trap is the can's four hours unchanged, or a fifth more. A figure of the can counts at the
    air that the can names: 4 h at 77 °F are 6.6 h at 64 °F by the factor of 2 per 10 °C (an
    assumption), and the film is sanded before it is coated again (common practice: 24 h).
    """
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-21 18:00",
        "product new wipe-on --class wiping-varnish --recoat 4h --label-air '77F 50%'",
        "room new basement",
        "room new house",
        "air 64F 50% --room basement",
        "air 70F 45% --room house",
        "part new box/lid --species walnut --room basement",
        "log lid wipe-on --method wipe",
    )
    here = why(finisher, "2026-11-21 18:05", "lid")
    assert here["label"]["at"]["temperature_c"] == 25.0
    assert here["label"]["high_h"] == 4.0
    put_on = here["on_it"][0]["put_on"]
    low, high = here["standing"]["low"], here["standing"]["high"]
    assert 12 < hours(put_on, low) < hours(put_on, high)
    assert 24 < hours(put_on, high) < 96
    assert "assumption" in here["clock"]["by"]
    assert any("no check logged" in u for u in here["unknown"])
    (there,) = (s for s in here["sooner"] if s["room"])
    assert there["room"] == "house"
    assert "vapour" in there["caution"], "varnish is not carried among people"
    assert hours(there["high"], high) > 5
    finisher.types("2026-11-21 20:05", "check lid tacky")
    tacky = why(finisher, "2026-11-21 20:06", "lid")
    assert tacky["standing"]["answer"] == "blocked"
    assert "its time is not over" in said(tacky)
    assert [s["room"] for s in tacky["sooner"] if s["room"]] == ["house"]
    finisher.types("2026-11-21 20:10", "move lid house", "check lid dry")
    moved = why(finisher, "2026-11-21 20:11", "lid")
    assert moved["standing"]["answer"] == "drying"
    assert hours(moved["standing"]["high"], high) > 4
    assert hours(put_on, moved["standing"]["high"]) > 24


def test_fc009_tacky_again_from_another_can_it_is_the_wood_not_the_time(finisher: Finisher):
    """Stalled twice, from two cans: something in the wood; a barrier is tried, no date is given.

    The trap is "try again in a day", every day for seven weeks.
    """
    finisher.types(
        "2026-03-01 18:00",
        "product new poly --class oil-polyurethane",
        SHOP,
        "part new table/top --species oak",
        f"air {STILL}",
        "can new first --product poly",
        "can new second --product poly",
        "can opened first",
        "log top poly --from first",
    )
    finisher.types("2026-03-31 18:00", f"air {STILL}", "check top tacky")
    finisher.types(
        "2026-04-02 18:00",
        f"air {STILL}",
        "off top --to bare --strip",
        "log top sand",
        "log top solvent-wipe",
        "log top solvent-wipe",
        "can opened second",
        "log top poly --from second --film 60um",
    )
    finisher.types("2026-04-04 18:00", f"air {STILL}", "check top tacky")
    once = why(finisher, "2026-04-04 18:01", "top")
    assert once["standing"]["answer"] == "blocked"
    assert "as long as it gets better it is only slow" in said(once)
    finisher.types("2026-05-21 18:00", f"air {STILL}", "check top tacky")
    now = why(finisher, "2026-05-21 18:01", "top")
    assert now["standing"]["answer"] == "stalled"
    assert (now["standing"]["low"], now["standing"]["high"]) == (None, None)
    assert "the log shows: something in the wood, not in the can" in said(now)
    assert "poly from another can stayed soft there too" in said(now)
    assert "an old can" not in said(now)
    assert "too heavy a coat" not in said(now)
    assert "wax, silicone or stripper residue in the wood: try dewaxed shellac on a patch" in said(
        now
    )
    for name in ("recoat", "pack", "cured"):
        found = stage(finisher, "2026-05-21 18:01", "top", name)
        assert found["blocked"] == "touch failed: tacky"
    (line,) = finisher.asks("2026-05-21 18:01", "on top")
    assert [(a["coats"], a["why"]) for a in line["attempts"]] == [(["poly"], ["tacky"])]
    assert len(line["coats"]) == 1
    ready = finisher.asks("2026-05-21 18:01", "ready")
    assert (ready["next_at"], ready["bench"], ready["drying"]) == (None, [], [])


def test_getting_better_is_not_stalled(finisher: Finisher):
    finisher.types(
        "2026-03-01 18:00",
        "product new poly --class oil-polyurethane",
        SHOP,
        "part new table/top --species oak",
        f"air {STILL}",
        "log top poly",
    )
    finisher.types("2026-03-04 18:00", f"air {STILL}", "check top tacky")
    finisher.types("2026-03-05 18:00", f"air {STILL}", "check top gums")
    better = why(finisher, "2026-03-05 18:01", "top")
    assert better["standing"]["answer"] == "blocked"
    assert "it gets on: tacky, then gums" in said(better)


def test_fc011_an_oil_is_wiped_off_and_left_for_days_not_laid_on_like_varnish(finisher: Finisher):
    """Off the wood within half an hour, days between coats; no wax while it is tacky.

    The trap is the varnish's day: 24 h, next coat. A week between coats of pure tung oil is
    published, three days are common practice (facts/classes/tung-oil.toml).
    """
    finisher.types(
        "2026-03-01 18:00",
        "product new tung --class tung-oil",
        "product new wax --class paste-wax",
        SHOP,
        "steps new oiled tung*3 wax",
        "part new stand/rod --species cherry --steps oiled",
        f"air {STILL}",
    )
    told = finisher.types("2026-03-01 18:05", "log rod tung")
    assert "wipe off the surplus tung before 18:35" in told
    (line,) = finisher.asks("2026-03-01 18:10", "ready")["bench"]
    assert (line["answer"], line["deed"]) == ("hard deadline running", "wipe off")
    finisher.types("2026-03-01 18:30", "log rod wipe")
    finisher.types("2026-03-02 18:00", f"air {STILL}")
    assert finisher.asks("2026-03-02 18:01", "ready")["bench"] == []
    day = why(finisher, "2026-03-02 18:01", "rod")
    assert day["standing"]["answer"] == "drying"
    assert hours("2026-03-01T18:05:00+00:00", day["standing"]["low"]) >= 72
    assert hours("2026-03-01T18:05:00+00:00", day["standing"]["high"]) >= 168
    too_soon = finisher.types("2026-03-02 18:05", "log rod tung")
    assert "stop: drying" in too_soon
    finisher.types("2026-03-03 18:00", f"air {STILL}", "log rod tung")
    finisher.types("2026-03-17 18:00", f"air {STILL}", "check rod tacky")
    stuck = why(finisher, "2026-03-17 18:01", "rod")
    assert (stuck["standing"]["product"], stuck["standing"]["answer"]) == ("wax", "blocked")
    assert "tung went on 24 h before; 168 h is usual" in said(stuck)
    assert "surplus that was not wiped off" in said(stuck)
    assert "what stands on the wood and shines stays soft for good: rub it off" in said(stuck)
    assert "no wax over it" in said(stuck)
    waxed = finisher.types("2026-03-17 18:05", "log rod wax")
    assert "stop: blocked: touch failed: tacky" in waxed


def test_fc012_a_damp_night_dries_a_coat_on_top_only(finisher: Finisher):
    """Through-dry is proven, not counted: sands to powder. The wrinkled coat comes off, one stays.

    The trap is "20 h are more than the can's 12".
    """
    finisher.types(
        "2026-03-07 17:45",
        "product new urethane --class oil-polyurethane --recoat 12h",
        "room new bedroom",
        "part new floor/boards --species oak",
        "air 13C 95%",
    )
    damp = finisher.types("2026-03-07 18:00", "log boards urethane")
    assert "stop: 95 % RH is above the 75 % limit" in damp
    assert "recoat no date in this air" in damp
    finisher.types("2026-03-08 13:00", "air 13C 90%")
    after_20_h = why(finisher, "2026-03-08 14:00", "boards")
    assert after_20_h["standing"]["answer"] == "drying"
    assert after_20_h["standing"]["high"] is None
    assert after_20_h["clock"]["done_h"] == 0.0
    told = finisher.types("2026-03-08 14:00", "log boards urethane --scuffed")
    assert "stop: drying" in told
    wrinkled = finisher.types("2026-03-08 19:00", "fault boards wrinkle")
    assert "take the wrinkled coat off while it is soft" in wrinkled
    assert "20 h before; 12 h is usual, in that air more" in wrinkled
    assert "damp air slowed the coat below: 95 % RH" in wrinkled
    (below, _) = finisher.asks("2026-03-08 19:01", "on boards")[0]["coats"]
    finisher.types("2026-03-08 19:10", f"off boards --to {below['act']} --scraped")
    (line,) = finisher.asks("2026-03-08 19:11", "on boards")
    assert [c["put_on"] for c in line["coats"]] == [below["put_on"]]
    assert [(a["coats"], a["why"]) for a in line["attempts"]] == [(["urethane"], ["wrinkle"])]
    for day in ("09", "10", "11", "12"):
        finisher.types(f"2026-03-{day} 19:00", "air 21C 50%")
    dried = why(finisher, "2026-03-12 19:05", "boards")
    assert dried["clock"]["done_h"] == 12.0
    assert dried["standing"]["answer"] == "blocked"
    finisher.types("2026-03-12 19:10", "check boards powder")
    proven = why(finisher, "2026-03-12 19:11", "boards")
    assert proven["standing"]["answer"] == "test first"
    assert "coat a small patch first" in proven["standing"]["because"]


def test_without_a_wrinkle_too_the_sand_test_is_asked_for(finisher: Finisher):
    finisher.types(
        "2026-03-07 18:00",
        "product new urethane --class oil-polyurethane --recoat 12h",
        "room new bedroom",
        "part new floor/boards --species oak",
        "air 13C 95%",
        "log boards urethane",
    )
    for day in ("08", "09", "10", "11"):
        finisher.types(f"2026-03-{day} 18:00", "air 21C 50%")
    late = why(finisher, "2026-03-11 18:01", "boards")
    assert late["standing"]["answer"] == "test first"
    assert "sand a spot, it has to powder" in late["standing"]["because"]
    finisher.types("2026-03-11 18:05", "check boards powder")
    assert why(finisher, "2026-03-11 18:06", "boards")["standing"]["answer"] == "go after scuffing"


def test_fc013_two_days_are_no_guarantee_when_it_turns_cold_between(finisher: Finisher):
    """The whole interval counts, each wood is judged by itself, a patch goes before the rest.

    The trap is "48 h have passed", and one verdict for both woods.
    """
    finisher.types(
        "2026-03-04 18:00",
        "product new urethane --class oil-polyurethane --recoat 24h",
        "room new house",
        "part new floor/hall --species oak",
        "part new floor/kitchen --species pine",
        "air 65F 40%",
        "log hall kitchen urethane",
    )
    finisher.types("2026-03-05 18:00", "air 50F 70%")
    finisher.types("2026-03-06 16:00", "air 48F 75%")
    friday = why(finisher, "2026-03-06 18:00", "hall")
    assert friday["standing"]["answer"] == "drying"
    assert friday["clock"]["done_h"] < 24
    told = finisher.types("2026-03-06 18:00", "log hall kitchen urethane --scuffed")
    assert "stop: drying" in told
    finisher.types("2026-03-06 22:00", "fault hall wrinkle --where 'over the oak'")
    (oak,), (pine,) = (whys(finisher, "2026-03-06 22:01", part) for part in ("hall", "kitchen"))
    assert oak["standing"]["answer"] == "blocked"
    assert pine["standing"]["answer"] == "drying"
    assert "wrinkle" not in said(pine)
    first = finisher.asks("2026-03-07 09:00", "on hall")[0]["coats"][0]["act"]
    finisher.types("2026-03-07 09:00", "air 72F 45%", f"off hall --to {first} --scraped")
    for day in range(8, 14):
        finisher.types(f"2026-03-{day:02} 09:00", "air 72F 45%")
    finisher.types("2026-03-13 09:10", "check hall powder")
    hard = why(finisher, "2026-03-13 09:11", "hall")
    assert hard["standing"]["answer"] == "test first"
    assert "after wrinkle: coat a small patch first" in hard["standing"]["because"]
    finisher.types("2026-03-13 12:00", "check hall holds")
    assert why(finisher, "2026-03-13 12:01", "hall")["standing"]["answer"] == "go after scuffing"


def test_fc014_good_days_and_bad_days_stand_side_by_side(finisher: Finisher):
    """Compare what differed: wait after the stain, hours between coats, wet film, air, result.

    The trap is dates alone, by which good and bad days look alike.
    """
    finisher.types(
        "2026-03-02 09:00",
        "product new stain --class wiping-stain",
        "product new varnish --class conversion-varnish --recoat 1h --window 48h",
        SHOP,
        "part new kitchen/doors -n 8 --species maple",
        "air 22C 45%",
        "log doors:1-4 stain",
        "log doors:1-4 wipe",
    )
    finisher.types("2026-03-03 09:30", "air 22C 45%", "log doors:1-4 varnish --film 100um")
    gummy = finisher.types("2026-03-03 15:00", "check doors:1-4 gums")
    assert "blocks recoat, sand until a check passes" in gummy
    finisher.types("2026-03-04 08:00", "air 22C 45%", "check doors:1-4 powder")
    finisher.types("2026-03-04 08:10", "log doors:1-4 scuff", "log doors:1-4 varnish --film 100um")
    finisher.types("2026-03-04 12:00", "check doors:1-4 holds")
    finisher.types("2026-03-09 09:00", "air 22C 70%", "log doors:5-8 stain", "log doors:5-8 wipe")
    finisher.types("2026-03-09 14:00", "air 22C 70%", "log doors:5-8 varnish --film 130um")
    finisher.types("2026-03-12 08:00", "air 20C 65%")
    late = why(finisher, "2026-03-12 08:01", "doors:5-8")["standing"]
    assert late["scuff_first"]
    assert "even a scuffed film may wrinkle" in said({"standing": late})
    finisher.types("2026-03-12 08:10", "log doors:5-8 varnish --film 130um")
    finisher.types("2026-03-12 09:00", "fault doors:5,6 wrinkle --where 'spots near the rails'")
    pairs = finisher.asks("2026-03-12 09:05", "past --pairs varnish varnish")
    bad = next(p for p in pairs if p["wrong"])
    good = next(p for p in pairs if p["parts"] == ["kitchen/doors:1-4"])
    assert bad["parts"] == ["kitchen/doors:5-6"]
    assert bad["wrong"] == ["wrinkle (spots near the rails)"]
    assert good["checks"] == ["scratch: holds"]
    assert good["wrong"] == []
    told = ("hours_between", "label_closes_h", "colour_wait_h", "wet_film_um", "scuffed")
    assert [bad[name] for name in told] == [66.17, 48.0, 5.0, 130.0, None]
    assert [good[name] for name in told] == [22.67, 48.0, 24.5, 100.0, True]
    airs = [(p["air_between"]["temperature_c"], p["air_between"]["humidity_pct"]) for p in pairs]
    assert airs == [(22.0, 70.0), (22.0, 70.0), (22.0, 45.0)]


def test_fc016_fit_to_be_used_is_not_fit_for_another_class_on_top(finisher: Finisher):
    """Waterborne on an oil of two days is stopped; take it off, and count back from the wedding.

    The trap takes the oil's "ready for use" for its overcoat time.
    """
    finisher.types(
        "2026-03-01 17:00",
        "product new blend --class oil-varnish-blend --light-use 2d",
        "product new sealer --class waterborne-clear --recoat 2h --sand 2h",
        "product new wipe-on --class wiping-varnish",
        SHOP,
        "shop hours 'mon-fri 18:00-22:00' 'sat 9:00-17:00'",
        "project new nest --due '7 Mar 2026'",
        "steps new first blend sealer wipe-on*4",
        "part new nest/tops -n 3 --species cherry --steps first",
        "air 23C 50%",
        "log tops blend",
        "log tops wipe",
    )
    finisher.types("2026-03-02 17:00", "air 23C 50%")
    finisher.types("2026-03-03 17:00", "air 23C 50%")
    used = stage(finisher, "2026-03-03 20:00", "tops", "light-use")
    assert used["high"] <= "2026-03-03T20:00:00"
    over = why(finisher, "2026-03-03 20:00", "tops")
    assert over["standing"]["answer"] == "stopped by what is underneath"
    assert "Oil keeps weeping from the pores and blisters waterborne" in said(over)
    assert "72 h, then dewaxed shellac" in said(over)
    assert "without one a week at the very least" in said(over)
    (stopped,) = finisher.asks("2026-03-03 20:00", "ready")["stopped"]
    assert stopped["product"] == "sealer"
    assert "stop: over oil and varnish blend" in finisher.types(
        "2026-03-03 20:05", "log tops sealer"
    )
    finisher.types("2026-03-03 23:05", "check tops gums")
    gummy = why(finisher, "2026-03-03 23:06", "tops")["standing"]
    assert (gummy["answer"], gummy["because"]) == ("blocked", "sand failed: gums")
    finisher.types(
        "2026-03-03 23:10",
        "off tops --to bare --washed",
        "steps new again wipe-on*4",
        "steps new fewer wipe-on*2",
    )
    packed = {}
    for steps in ("again", "fewer"):
        finisher.types("2026-03-03 23:15", f"part steps tops --as {steps}")
        said_so = finisher.types("2026-03-03 23:16", "plan nest")
        assert "nest  due Sat 7 Mar  late by" in said_so
        (due,) = finisher.asks("2026-03-03 23:16", "plan nest")["projects"]
        packed[steps] = due["packed"]
    assert "2026-03-07" < packed["fewer"] < packed["again"]


def test_fc022_a_seal_that_scrapes_off_is_not_buried(finisher: Finisher):
    """What fails the scratch stops every coat there, chair by chair, area by area.

    The trap: five days have passed, so it is cured and the topcoat is due.
    """
    finisher.types(
        "2026-03-01 09:00",
        "product new stain --class wiping-stain",
        "product new sealer --class waterborne-clear --recoat 2h",
        "product new shellac --class shellac-1lb",
        SHOP,
        "steps new dark stain sealer*2",
        "part new set/chairs -n 4 --species oak --face seat --face back --face legs --steps dark",
        f"air {STILL}",
        "log chairs stain",
        "log chairs wipe",
    )
    finisher.types("2026-03-02 09:00", f"air {STILL}")
    day = why(finisher, "2026-03-02 09:01", "chairs")
    assert day["standing"]["answer"] == "drying"
    assert hours("2026-03-01T09:00:00+00:00", day["standing"]["low"]) >= 72
    assert hours("2026-03-01T09:00:00+00:00", day["standing"]["high"]) >= 168
    assert "after a day dewaxed shellac or vinyl sealer between" in said(day)
    assert "waterborne over oil stain" in finisher.types("2026-03-02 09:01", "why chairs")
    assert "stop: drying" in finisher.types("2026-03-02 09:05", "log chairs sealer --method spray")
    finisher.types("2026-03-07 09:00", f"air {STILL}")
    finisher.types("2026-03-07 09:01", "check chairs:1@seat chairs:3@back flakes")
    finisher.types("2026-03-07 09:02", "check chairs:2@seat holds")
    lines = whys(finisher, "2026-03-07 09:05", "chairs")
    failed = [x["standing"] for x in lines if x["standing"]["because"] == "scratch failed: flakes"]
    assert [(s["pieces"], s["faces"]) for s in failed] == [([1], ["seat"]), ([3], ["back"])]
    assert {s["answer"] for s in failed} == {"blocked"}
    rest = [(s["standing"]["pieces"], s["standing"]["faces"]) for s in lines]
    assert ([1], ["back", "legs"]) in rest
    assert ([3], ["seat", "legs"]) in rest
    for each in ("recoat", "light-use", "pack", "cured"):
        assert stage(finisher, "2026-03-07 09:05", "chairs:1@seat", each)["blocked"]
        assert not stage(finisher, "2026-03-07 09:05", "chairs:2@seat", each)["blocked"]
    buried = finisher.types("2026-03-07 09:06", "log chairs:1@seat sealer")
    assert "stop: blocked: scratch failed: flakes" in buried
    still = stage(finisher, "2026-03-20 09:00", "chairs:1@seat", "pack")
    assert still["blocked"] == "scratch failed: flakes"
    fault = finisher.types("2026-03-20 09:01", "fault chairs:3@back peel --where 'top rail'")
    assert "seal it with dewaxed shellac, scuff, and try one area first" in fault
    assert "oil or stain below had not dried" in fault


def test_fc023_oil_that_vents_through_waterborne_blisters_the_solid_wood(finisher: Finisher):
    """Solid and veneered parts differ; let it stand for days, then sand; next time no oil.

    The trap: the oil is dry, the waterborne is dry, so all is well.
    """
    finisher.types(
        "2026-03-01 09:00",
        "product new blend --class oil-varnish-blend",
        "product new clear --class waterborne-clear --recoat 2h",
        SHOP,
        "part new bath/solid -n 2 --species cherry",
        "part new bath/veneered -n 2 --species cherry",
        f"air {STILL}",
        "log solid veneered blend",
        "log solid veneered wipe",
    )
    finisher.types("2026-03-03 09:00", f"air {STILL}")
    first = finisher.types("2026-03-03 09:05", "log solid veneered clear")
    assert "stop: over oil and varnish blend: Oil keeps weeping" in first
    finisher.types("2026-03-04 09:00", f"air {STILL}", "log solid veneered clear --scuffed")
    stars = finisher.types("2026-03-06 09:00", f"air {STILL}", "fault solid blister")
    assert "let it stand two to three days and harden, then scrape or sand" in stars
    assert "blend went on 3 days before; 72 to 168 h is usual" in stars
    assert "blocks   pack, recoat" in stars
    (solid,), (veneered,) = (whys(finisher, "2026-03-06 09:01", x) for x in ("solid", "veneered"))
    assert solid["standing"]["answer"] == "blocked"
    assert solid["standing"]["deed"] == "mend"
    assert veneered["standing"]["answer"] == "stopped by what is underneath"
    assert [f["name"] for f in solid["standing"]["faults"]] == ["blister"]
    assert veneered["standing"]["faults"] == []
    assert stage(finisher, "2026-03-06 09:01", "solid", "pack")["blocked"] == "blister not mended"
    assert not stage(finisher, "2026-03-06 09:01", "veneered", "pack")["blocked"]
    finisher.types(
        "2026-03-06 09:05", "note solid --outcome -t 'under waterborne: shellac, not oil'"
    )
    past = finisher.types("2027-03-06 09:00", "past cherry")
    assert "under waterborne: shellac, not oil" in past
    assert "fault blister" in past


def test_fc035_blush_on_precatalysed_lacquer_is_mended_within_hours_or_not(finisher: Finisher):
    """A mist opens it for a few hours only: the clock time is named. Then it dries anew.

    The trap is "wait until tomorrow and look again". Two hours are the cautious end of "a few"
    (common practice).
    """
    finisher.types(
        "2026-07-01 09:00",
        "product new stain --class wiping-stain",
        "product new lacquer --class lacquer-precatalysed",
        SHOP,
        "part new set/doors -n 2 --species birch",
        "part new set/trim -n 6 --species pine",
        "air 29C 72%",
        "log doors trim stain",
        "log doors trim wipe",
    )
    finisher.types("2026-07-01 14:00", "air 29C 72%")
    sprayed = finisher.types("2026-07-01 14:05", "log doors trim lacquer --method spray")
    assert "stop: 72 % RH is above the 65 % limit" in sprayed
    clouds = finisher.types("2026-07-01 14:20", "fault doors trim blush")
    assert "only before 16:05" in clouds
    assert clouds.index("damp air") < clouds.index("stain went on 5 h before; 24 h is usual")
    assert "a fan on the wet film" in clouds
    (line,) = [
        x for x in finisher.asks("2026-07-01 14:21", "ready")["bench"] if "doors" in x["part"]
    ]
    assert (line["answer"], line["deed"]) == ("hard deadline running", "mend")
    assert line["closes"] == "2026-07-01T15:05:00Z"
    finisher.types("2026-07-01 15:00", "air 24C 45%")
    before = stage(finisher, "2026-07-01 15:30", "doors", "stack")
    finisher.types("2026-07-01 15:30", "fault doors mended --remedy 'retarder mist'")
    again = stage(finisher, "2026-07-01 15:31", "doors", "stack")
    assert again["high"] > before["high"]
    assert hours("2026-07-01T14:30:00+00:00", again["high"]) >= 48
    late = finisher.types("2026-07-01 19:00", "fault trim blush")
    assert "too late since 16:05" in late
    assert "leave it until fully dry" in late


def test_fc075_end_grain_stays_tacky_when_long_grain_is_dry(finisher: Finisher):
    """Oily heartwood: wipe, shellac, thin coats; the end grain decides, with a day to wait for.

    The trap: ready when the first spot is dry.
    """
    finisher.types(
        "2026-07-01 09:00",
        "product new wipe-on --class wiping-varnish",
        "product new seal --class shellac-1lb",
        SHOP,
        "project new boxes --due '20 Aug 2026'",
        "steps new turned wipe-on*3",
        "part new boxes/knobs -n 4 --species cocobolo --face all=long,end --steps turned",
        f"air {STILL}",
    )
    list_of_wood = finisher.types("2026-07-01 09:01", "species show cocobolo")
    assert "Wipe with solvent and within minutes seal" in list_of_wood
    assert "End grain drinks more" in list_of_wood
    before = why(finisher, "2026-07-01 09:01", "knobs")
    assert before["standing"]["answer"] == "stopped by what is underneath"
    assert "wipe it right before the coat" in said(before)
    finisher.types("2026-07-01 09:05", "log knobs wipe-on")
    finisher.types(
        "2026-07-11 09:00",
        f"air {STILL}",
        "check knobs@all/long no-print",
        "check knobs@all/end tacky",
    )
    long, end = whys(finisher, "2026-07-11 09:05", "knobs")
    assert (long["standing"]["faces"], end["standing"]["faces"]) == (["all/long"], ["all/end"])
    assert end["standing"]["answer"] == "blocked"
    assert "late: still tacky 9 d after the coat" in said(end)
    assert "the log shows: oil of the wood itself: cocobolo is oily" in said(end)
    assert "to begin again on cocobolo: wash the film off with its solvent" in said(end)
    assert "seal with one or two thin coats of dewaxed shellac" in said(end)
    assert "take it off by Tue 11 Aug to keep Thu 20 Aug" in said(end)
    assert "late" not in said(long)
    assert stage(finisher, "2026-07-11 09:05", "knobs@all/end", "pack")["blocked"]
    whole = finisher.asks("2026-07-11 09:05", "ready")
    assert whole["milestones"] == []
    assert {(x["answer"], x["faces"][0]) for x in whole["bench"]} >= {("blocked", "all/end")}


def test_fc104_stain_given_up_half_way_is_seen_to_at_once_and_not_varnished(finisher: Finisher):
    """Solvent within minutes; what set there stops the varnish until it is off or proven hard.

    The trap counts three coats of stain and plans the varnish for tomorrow.
    """
    finisher.types(
        "2026-07-01 09:00",
        "product new stain --class wiping-stain",
        "product new varnish --class oil-polyurethane",
        SHOP,
        "steps new dark stain*3 varnish*2",
        "part new table/top --species oak --steps dark",
        f"air {STILL}",
        "log top stain",
        "log top wipe",
    )
    finisher.types("2026-07-02 10:00", f"air {STILL}", "log top stain", "log top wipe")
    finisher.types("2026-07-03 11:00", f"air {STILL}", "log top stain --note 'half only, given up'")
    finisher.types("2026-07-03 11:20", "log top wipe --note 'some came off'")
    told = finisher.types(
        "2026-07-03 11:21", "fault top left-thick --where 'left half, partly wiped off'"
    )
    head, _, first, remedy, *_ = told.splitlines()
    assert head.startswith("11:21  top: unwiped surplus (left half, partly wiped off)")
    assert first.split() == ["mend", "only", "before", "11:30"]
    assert "scrub it off with its own solvent" in remedy
    (now,) = finisher.asks("2026-07-03 11:22", "ready")["bench"]
    assert (now["answer"], now["deed"]) == ("hard deadline running", "mend")
    finisher.types("2026-07-04 11:00", f"air {STILL}")
    finisher.types("2026-07-06 11:00", f"air {STILL}")
    later = why(finisher, "2026-07-06 11:01", "top")
    assert (later["standing"]["product"], later["standing"]["answer"]) == ("varnish", "blocked")
    assert "stays soft and holds no coat" in said(later)
    ready = finisher.asks("2026-07-06 11:01", "ready")
    assert [(x["answer"], x["deed"]) for x in ready["bench"]] == [("blocked", "mend")]
    (line,) = finisher.asks("2026-07-06 11:01", "on top")
    (fault,) = line["standing"]["faults"]
    assert fault["name"] == "unwiped surplus (left half, partly wiped off)"
    past = finisher.types("2026-07-06 11:02", "past oak")
    third = next(x for x in past.splitlines() if "given up" in x)
    assert "wiped after 20 min" in third
    assert "fault unwiped surplus (left half, partly wiped off)" in third
    varnished = finisher.types("2026-07-06 11:05", "log top varnish")
    assert "stop: unwiped surplus (left half, partly wiped off) on stain" in varnished
