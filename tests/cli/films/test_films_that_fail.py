"""Films that stay soft, wrinkle, blister or let go: what is found, what is blocked, what mends."""

from __future__ import annotations

from tests.finisher import Finisher, hours, said

SHOP = "room new shop"
STILL = "21C 50%"


def test_a_label_for_a_warm_room_is_stretched_in_a_cool_one(finisher: Finisher):
    """Figures of a can count at the air that the can names, and another room is offered."""
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
    here = finisher.why("2026-11-21 18:05", "lid")
    put_on = here["on_it"][0]["put_on"]
    low, high = here["standing"]["low"], here["standing"]["high"]
    # From then on a spot may be tried: the 4 h of the can, as cold as it is.
    assert 6 < hours(put_on, low) < 12
    assert 24 < hours(put_on, high) < 96
    assert "assumption" in here["clock"]["by"]
    assert any("no check logged" in u for u in here["unknown"])
    (there,) = (s for s in here["sooner"] if s["room"])
    assert there["room"] == "house"
    assert "vapour" in there["caution"], "varnish is not carried among people"
    assert hours(there["high"], high) > 5
    finisher.types("2026-11-21 20:05", "check lid tacky")
    tacky = finisher.why("2026-11-21 20:06", "lid")
    assert tacky["standing"]["answer"] == "blocked"
    assert "its time is not over" in said(tacky)
    assert [s["room"] for s in tacky["sooner"] if s["room"]] == ["house"]
    finisher.types("2026-11-21 20:10", "move lid house", "check lid dry")
    moved = finisher.why("2026-11-21 20:11", "lid")
    assert moved["standing"]["answer"] == "drying"
    assert hours(moved["standing"]["high"], high) > 4
    assert hours(put_on, moved["standing"]["high"]) > 24


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
    better = finisher.why("2026-03-05 18:01", "top")
    assert better["standing"]["answer"] == "blocked"
    assert "it gets on: tacky, then gums" in said(better)


def test_cold_between_two_coats_counts_and_a_wrinkle_asks_for_a_patch(finisher: Finisher):
    """Each wood is judged by itself; after a wrinkle the sand test alone does not open the film."""
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
    friday = finisher.why("2026-03-06 18:00", "hall")
    assert friday["standing"]["answer"] == "drying"
    assert friday["clock"]["done_h"] < 24
    told = finisher.types("2026-03-06 18:00", "log hall kitchen urethane --scuffed")
    assert "stop: hall and kitchen: drying" in told
    finisher.types("2026-03-06 22:00", "fault hall wrinkle --where 'over the oak'")
    (oak,), (pine,) = (finisher.whys("2026-03-06 22:01", part) for part in ("hall", "kitchen"))
    assert oak["standing"]["answer"] == "blocked"
    assert pine["standing"]["answer"] == "drying"
    assert "wrinkle" not in said(pine)
    first = finisher.asks("2026-03-07 09:00", "on hall")[0]["coats"][0]["act"]
    finisher.types("2026-03-07 09:00", "air 72F 45%", f"off hall --to {first} --scraped")
    for day in range(8, 14):
        finisher.types(f"2026-03-{day:02} 09:00", "air 72F 45%")
    finisher.types("2026-03-13 09:10", "check hall powder")
    hard = finisher.why("2026-03-13 09:11", "hall")
    assert hard["standing"]["answer"] == "test first"
    assert "after wrinkle: coat a small patch first" in hard["standing"]["because"]
    finisher.types("2026-03-13 12:00", "check hall holds")
    assert finisher.why("2026-03-13 12:01", "hall")["standing"]["answer"] == "go after scuffing"


def test_fit_to_be_used_is_not_fit_for_another_class_on_top(finisher: Finisher):
    """Waterborne on an oil of two days is stopped, though the oil may be used."""
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
    used = finisher.stage("2026-03-03 20:00", "tops", "light-use")
    assert used["high"] <= "2026-03-03T20:00:00"
    over = finisher.why("2026-03-03 20:00", "tops")
    assert over["standing"]["answer"] == "stopped by what is underneath"
    assert "Oil keeps weeping from the pores and blisters waterborne" in said(over)
    assert "72 h, then dewaxed shellac" in said(over)
    assert "without one a week at the very least" in said(over)
    (stopped,) = finisher.asks("2026-03-03 20:00", "ready")["stopped"]
    assert stopped["product"] == "sealer"
    assert "stop: tops ×3: over oil and varnish blend" in finisher.types(
        "2026-03-03 20:05", "log tops sealer"
    )
    finisher.types("2026-03-03 23:05", "check tops gums")
    gummy = finisher.why("2026-03-03 23:06", "tops")["standing"]
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


def test_what_fails_the_scratch_blocks_its_own_face(finisher: Finisher):
    """Piece by piece and face by face; time alone never lifts it."""
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
    day = finisher.why("2026-03-02 09:01", "chairs")
    assert day["standing"]["answer"] == "drying"
    assert hours("2026-03-01T09:00:00+00:00", day["standing"]["low"]) >= 72
    assert hours("2026-03-01T09:00:00+00:00", day["standing"]["high"]) >= 168
    assert "after a day dewaxed shellac or vinyl sealer between" in said(day)
    assert "waterborne over oil stain" in finisher.types("2026-03-02 09:01", "why chairs")
    assert "stop: chairs ×4: drying" in finisher.types(
        "2026-03-02 09:05", "log chairs sealer --method spray"
    )
    finisher.types("2026-03-07 09:00", f"air {STILL}")
    finisher.types("2026-03-07 09:01", "check chairs:1@seat chairs:3@back flakes")
    finisher.types("2026-03-07 09:02", "check chairs:2@seat holds")
    lines = finisher.whys("2026-03-07 09:05", "chairs")
    failed = [x["standing"] for x in lines if x["standing"]["because"] == "scratch failed: flakes"]
    assert [(s["pieces"], s["faces"]) for s in failed] == [([1], ["seat"]), ([3], ["back"])]
    assert {s["answer"] for s in failed} == {"blocked"}
    rest = [(s["standing"]["pieces"], s["standing"]["faces"]) for s in lines]
    assert ([1], ["back", "legs"]) in rest
    assert ([3], ["seat", "legs"]) in rest
    for each in ("recoat", "light-use", "pack", "cured"):
        assert finisher.stage("2026-03-07 09:05", "chairs:1@seat", each)["blocked"]
        assert not finisher.stage("2026-03-07 09:05", "chairs:2@seat", each)["blocked"]
    buried = finisher.types("2026-03-07 09:06", "log chairs:1@seat sealer")
    assert "stop: chairs:1, seat: the scratch check found that it flakes" in buried
    still = finisher.stage("2026-03-20 09:00", "chairs:1@seat", "pack")
    assert still["blocked"] == "scratch failed: flakes"
    fault = finisher.types("2026-03-20 09:01", "fault chairs:3@back peel --where 'top rail'")
    assert "seal it with dewaxed shellac, scuff, and try one area first" in fault
    assert "oil or stain below had not dried" in fault


def test_a_blister_blocks_the_parts_that_have_it(finisher: Finisher):
    """Oil below that still vents is found from the log."""
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
    assert "stop: solid ×2 and veneered ×2: over oil and varnish blend: Oil keeps weeping" in first
    finisher.types("2026-03-04 09:00", f"air {STILL}", "log solid veneered clear --scuffed")
    stars = finisher.types("2026-03-06 09:00", f"air {STILL}", "fault solid blister")
    assert "let it stand two to three days and harden, then scrape or sand" in stars
    assert "blend went on 3 d before; 72 to 168 h is usual" in stars
    assert "blocks   stack, pack, recoat, rub" in stars
    (solid,), (veneered,) = (finisher.whys("2026-03-06 09:01", x) for x in ("solid", "veneered"))
    assert solid["standing"]["answer"] == "blocked"
    # It is left to harden for two days at the least, and mended then.
    assert solid["standing"]["deed"] == "leave it"
    assert veneered["standing"]["answer"] == "stopped by what is underneath"
    assert [f["name"] for f in solid["standing"]["faults"]] == ["blister"]
    assert veneered["standing"]["faults"] == []
    assert finisher.stage("2026-03-06 09:01", "solid", "pack")["blocked"] == "blister not mended"
    assert not finisher.stage("2026-03-06 09:01", "veneered", "pack")["blocked"]
    finisher.types(
        "2026-03-06 09:05", "note solid --outcome -t 'under waterborne: shellac, not oil'"
    )
    past = finisher.types("2027-03-06 09:00", "past cherry")
    assert "under waterborne: shellac, not oil" in past
    assert "fault blister" in past


def test_end_grain_has_its_own_checks_and_holds_up_the_whole(finisher: Finisher):
    """A due date gives the day by which it must come off."""
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
    before = finisher.why("2026-07-01 09:01", "knobs")
    assert before["standing"]["answer"] == "stopped by what is underneath"
    assert "wipe it right before the coat" in said(before)
    finisher.types("2026-07-01 09:05", "log knobs wipe-on")
    finisher.types(
        "2026-07-11 09:00",
        f"air {STILL}",
        "check knobs@all/long no-print",
        "check knobs@all/end tacky",
    )
    long, end = finisher.whys("2026-07-11 09:05", "knobs")
    assert (long["standing"]["faces"], end["standing"]["faces"]) == (["all/long"], ["all/end"])
    assert end["standing"]["answer"] == "blocked"
    assert "late: still tacky 9 d after the coat" in said(end)
    assert "the log shows: oil of the wood itself: cocobolo is oily" in said(end)
    assert "to begin again on cocobolo: wash the film off with its solvent" in said(end)
    assert "seal with one or two thin coats of dewaxed shellac" in said(end)
    assert "take it off by Tue 11 Aug to keep Thu 20 Aug" in said(end)
    assert "late" not in said(long)
    assert finisher.stage("2026-07-11 09:05", "knobs@all/end", "pack")["blocked"]
    whole = finisher.asks("2026-07-11 09:05", "ready")
    assert whole["milestones"] == []
    assert {(x["answer"], x["faces"][0]) for x in whole["bench"]} >= {("blocked", "all/end")}


def test_surplus_left_to_set_is_mended_within_minutes_or_stops_the_varnish(finisher: Finisher):
    """Solvent within minutes; unmended it stops the varnish."""
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
    later = finisher.why("2026-07-06 11:01", "top")
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
    assert "stop: top: unwiped surplus (left half, partly wiped off) on stain" in varnished


def test_a_film_that_fails_says_in_the_evening_what_lies_behind_it(finisher: Finisher):
    """Where the log shows it no hour ends it: the row says so, not only that it is tacky."""
    finisher.types(
        "2026-11-01 18:00",
        "product new danish --class oil-varnish-blend",
        "product new varnish --class alkyd-varnish",
        "product new sealer --class waterborne-clear",
        SHOP,
        f"air {STILL}",
        "part new coaster/padauk --species padauk",
        "part new coaster/maple --species maple",
        "part new tables/nest --species cherry",
        "part new rod/stand --species cherry",
        "product new tung --class tung-oil",
        "log coaster/padauk varnish",
        "log coaster/maple varnish",
        "log tables/nest danish --thin",
        "log rod/stand tung",
    )
    finisher.types("2026-11-03 18:00", f"air {STILL}", "log tables/nest sealer")
    finisher.types("2026-11-03 22:00", "check tables/nest gums")
    assert "gums; over oil and varnish blend" in finisher.reads("2026-11-03 22:01", "ready")
    finisher.types(
        "2026-11-12 18:00",
        f"air {STILL}",
        "check coaster/padauk tacky",
        "check coaster/maple dry",
        "check rod/stand tacky",
    )
    ready = finisher.reads("2026-11-12 18:01", "ready")
    assert "tacky; likely oil of the wood itself" in ready
    assert "tacky; what stands on the wood and shines stays soft for good: rub it off" in ready
    # Within its time nothing lies behind it but the hours.
    finisher.types("2026-11-12 19:00", "part new box/lid --species oak", "log box/lid varnish")
    finisher.types("2026-11-13 08:00", f"air {STILL}", "check box/lid tacky")
    (row,) = (
        line
        for line in finisher.reads("2026-11-13 08:01", "ready").splitlines()
        if "box/lid" in line and "check again" in line
    )
    assert row.endswith("touch failed: tacky; check again after 23:00")


def test_colour_that_was_put_back_on_a_spot_is_no_coat_of_the_face(finisher: Finisher):
    """Without steps the film goes on as it was, not a second coat of dye over it."""
    finisher.types(
        "2026-11-02 09:00",
        "product new dye --class water-dye",
        "product new shellac --class shellac-2lb",
        SHOP,
        f"air {STILL}",
        "part new box/lid --species maple",
        "log box/lid dye",
    )
    finisher.types("2026-11-03 15:00", f"air {STILL}", "log box/lid shellac --method spray")
    finisher.types("2026-11-04 15:00", f"air {STILL}", "log box/lid scuff --grit 320")
    finisher.types(
        "2026-11-04 15:00", "fault box/lid rubbed-through --where edge", "log box/lid dye"
    )
    ready = finisher.reads("2026-11-06 15:00", "ready")
    assert "shellac, coat 2" in ready
    assert "takes no colour" not in ready
