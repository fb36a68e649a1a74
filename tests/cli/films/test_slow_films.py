"""Films that are slow: what checks teach, what helps, what becomes of the date."""

from __future__ import annotations

from datetime import datetime

from tests.finisher import Finisher, hours, said


def test_a_film_past_its_label_is_waited_for_and_what_spoilt_it_is_no_pace(finisher: Finisher):
    """Likely causes come from the log in order; what was not logged is said to be unknown."""
    finisher.types(
        "2026-02-20 08:00",
        "product new urethane --class oil-polyurethane --recoat 4h",
        "product new linseed --class boiled-linseed-oil",
        "room new shop",
        "can new tin --product urethane --opened '1 Mar 2022'",
        "steps new oiled linseed urethane*2",
        "part new gifts/boxes -n 4 --species pine --steps oiled",
        "log boxes linseed",
        "log boxes wipe",
    )
    finisher.types("2026-03-07 09:00", "log boxes urethane --from tin --film 150um --scuffed")
    assert finisher.asks("2026-03-07 13:05", "ready")["bench"] == []
    finisher.types("2026-03-07 21:00", "check boxes tacky")
    late = finisher.why("2026-03-07 21:01", "boxes")
    assert late["standing"]["answer"] == "blocked"
    assert "late: still tacky 12 h after the coat, its label hours are 4 h" in said(late)
    assert "neither coat it nor strip it yet" in said(late)
    shows, _, unseen = said(late).partition("cannot be ruled out")
    assert shows.index("an old can: open for 1467 d") < shows.index("too heavy a coat: 150 µm")
    assert "over boiled linseed oil, further down" in shows
    assert "cold air, damp air (not logged: the air, all the way)" in unseen
    assert "the room's air: no reading within a day" in late["unknown"]
    for name in ("recoat", "sand", "pack"):
        assert finisher.stage("2026-03-07 21:01", "boxes", name)["blocked"]
    films = finisher.types("2026-03-07 21:01", "ready").partition("BENCH NOW")[2]
    assert "check again  gifts/boxes ×4" in films
    assert "OVERDUE" not in films

    # Nobody measured, but the person knows how the shop usually is.
    finisher.types("2026-03-08 09:00", "room usual shop 6:00:12C/60% 16:00:16C/55%")
    finisher.types("2026-03-08 09:01", "check boxes tacky")
    assert finisher.why("2026-03-08 09:02", "boxes")["standing"]["answer"] == "blocked"
    finisher.types("2026-03-08 15:00", "air 16C 50%", "check boxes dry")
    dry = finisher.why("2026-03-08 15:01", "boxes")
    assert dry["standing"]["answer"] == "test first", "dry to the touch is not yet fit for a coat"
    finisher.types("2026-03-08 15:05", "check boxes powder")
    assert finisher.why("2026-03-08 15:06", "boxes")["standing"]["scuff_first"]
    finisher.types("2026-03-08 15:10", "log boxes scuff", "log boxes urethane --from tin")
    second = finisher.why("2026-03-08 15:11", "boxes")
    # What an old can and a thick coat kept soft says nothing of how the product dries here.
    assert (second["clock"]["longer"], second["pace"]) == (1, "")
    past = finisher.types("2026-03-08 15:12", "past urethane")
    assert "from tin, after 30.2 h (label 4 h)" in past


def test_a_skin_over_a_soft_film_is_cooled_and_aired_not_heated(finisher: Finisher):
    """With a due date stands the last day to decide."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-06-10 09:00",
        "product new poly --class oil-polyurethane --recoat 24h --pack 5d",
        "room new house",
        "project new nest --due '4 Jul 2026'",
        "steps new floor poly*3",
        "part new nest/floor --species oak --steps floor",
        "air 24C 70%",
        "log floor poly",
    )
    finisher.types("2026-06-12 09:00", "air 24C 74%", "log floor poly --scuffed")
    damp = finisher.types("2026-06-16 09:00", "air 26C 78%", "log floor poly --scuffed")
    assert "stop: floor: 78 % RH is above the 75 % limit" in damp
    for day in range(17, 26):
        finisher.types(f"2026-06-{day} 09:00", "air 31C 73%")
    finisher.types("2026-06-25 09:05", "check floor dry")
    finisher.types("2026-06-26 09:00", "air 31C 73%", "check floor prints")
    now = finisher.why("2026-06-26 09:01", "floor")
    assert "late: still prints 10 d after the coat" in said(now)
    assert "do not heat it" in said(now)
    assert "cool the room to about 21 °C and move dry air over it day and night" in said(now)
    assert "warm air" not in said(now)
    assert "the log shows: damp air: 78 % RH" in said(now)
    # The coat below had its hours, and is no oil.
    assert "oil or stain below" not in said(now)
    assert "take it off by Sat 27 Jun to keep Sat 4 Jul" in said(now)
    packed = finisher.stage("2026-06-26 09:01", "floor", "pack")
    assert packed["blocked"] == "thumbnail failed: prints"
    pairs = finisher.asks("2026-06-26 09:02", "past --pairs poly poly")
    told = [
        (p["hours_between"], p["air"]["humidity_pct"], p["air_between"]["humidity_pct"])
        for p in pairs
    ]
    assert told == [(96.0, 78.0, 74.0), (48.0, 74.0, 70.0)]
    assert pairs[0]["checks"] == ["touch: dry", "thumbnail: prints"]
    too_late = finisher.why("2026-06-28 09:01", "floor")
    assert "taken off and done again it is too late for Sat 4 Jul" in said(too_late)


def test_the_next_coat_goes_by_the_pace_that_checks_found(finisher: Finisher):
    """Failed checks, then a passed one, make the second coat slower; dust keeps other work away."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-09 08:00",
        "product new poly --class oil-polyurethane --recoat 6h --light-use 2d"
        " --label-air '21C 50%'",
        "room new shop",
        "shop hours 'mon-sun 7:00-22:00'",
        "project new party --due 'Sat 14 Nov 2026'",
        "steps new built poly*2",
        "steps new mended sand poly",
        "part new party/top --species oak --steps built",
        "part new trestle/legs -n 4 --species oak --steps mended",
        "air 19C 70%",
    )
    label = finisher.types("2026-11-09 08:01", "log top poly")
    assert "recoat" in label
    by_label = finisher.stage("2026-11-09 08:01", "top", "tack-free")
    finisher.types("2026-11-09 20:00", "air 19C 72%", "check top tacky")
    finisher.types("2026-11-10 05:00", "air 19C 72%", "check top tacky")
    finisher.types(
        "2026-11-10 08:00", "air 19C 72%", "check top dry", "check top powder", "log top scuff"
    )
    finisher.types("2026-11-10 08:01", "log top")
    second = finisher.why("2026-11-10 08:02", "top")
    assert second["clock"]["longer"] > 1.25
    assert second["clock"]["needed_h"] > 1.25 * 6
    assert "from 1 coat" in second["pace"]
    learnt = finisher.stage("2026-11-10 08:02", "top", "tack-free")
    first_h = hours("2026-11-09T13:01:00+00:00", by_label["high"])
    second_h = hours("2026-11-10T13:01:00+00:00", learnt["high"])
    assert second_h > 1.25 * first_h > 24
    assert "your pace: 1." in finisher.types("2026-11-10 08:03", "product show poly")

    # Two days of rain and snow to come, as the person expects them.
    finisher.types("2026-11-10 08:05", "room usual shop 0:00:15C/74% 12:00:15C/74%")
    colder = finisher.stage("2026-11-10 08:06", "top", "tack-free")
    assert colder["high"] > learnt["high"]
    finisher.types("2026-11-10 08:07", "room usual shop 0:00:19C/72% 12:00:19C/72%")

    legs = next(
        line
        for line in finisher.asks("2026-11-10 08:10", "ready")["drying"]
        if line["label"] == "legs ×4"
    )
    assert (legs["answer"], legs["waits_for"]) == ("waits for", "top to be dust-free")
    (party,) = finisher.asks("2026-11-10 08:10", "plan party")["projects"]
    assert party["promise"] == "late"
    used = datetime.fromisoformat(party["light_use"])
    assert used < datetime.fromisoformat(party["due"]) < datetime.fromisoformat(party["packed"])
    words = finisher.types("2026-11-10 08:10", "plan party")
    assert "light use from" in words
    assert "nothing hot, nothing wet, nothing left standing or lying on it" in words
    hard = finisher.stage("2026-11-10 08:10", "top", "cured")
    assert hard["high"] > "2026-12-10"


def gums_over(finisher: Finisher, below: str, kind: str, over: str) -> str:
    """Return what `ready` says of a coat that gums, put on two days over another."""
    finisher.types(
        "2026-04-12 19:00",
        f"product new below --class {below}",
        "product new barrier --class shellac-2lb",
        f"product new top --class {over} --recoat 2h",
        "room new shop",
        "air 21C 45%",
        "part new nest/tables -n 3 --species cherry",
        "log tables below",
        "log tables wipe",
    )
    finisher.types("2026-04-14 18:00", "air 21C 45%", *([kind] if kind else ()))
    finisher.types("2026-04-14 20:00", "air 21C 45%", "log tables top")
    finisher.types("2026-04-15 20:00", "air 21C 45%", "check tables gums")
    return finisher.types("2026-04-15 20:01", "ready").partition("BENCH NOW")[2]


def test_waterborne_over_oil_that_weeps_is_taken_off_and_not_waited_for(finisher: Finisher):
    """A finisher's answer to danish oil of two days under a waterborne sealer that gums: off."""
    said_of = gums_over(finisher, "oil-varnish-blend", "", "waterborne-clear")
    assert said_of.split()[:2] == ["mend", "nest/tables"]
    assert "no barrier over oil that still weeps" in said_of
    assert "take it off with lacquer thinner or stripper" in said_of
    told = said(finisher.why("2026-04-15 20:02", "tables"))
    assert "check again in days" not in told
    assert "give it until" not in told


def test_where_a_barrier_lies_between_nothing_is_said_of_one(finisher: Finisher):
    said_of = gums_over(finisher, "oil-varnish-blend", "log tables barrier", "waterborne-clear")
    assert "barrier over" not in said_of
    assert "take it off" not in said_of


def test_varnish_over_the_same_oil_is_only_slow(finisher: Finisher):
    said_of = gums_over(finisher, "oil-varnish-blend", "", "wiping-varnish")
    assert "barrier over" not in said_of
    assert "check again" in said_of


def test_a_film_as_tacky_as_it_may_still_be_is_left_alone_until_its_time_is_over(
    finisher: Finisher,
):
    """What is tacky three hours after the coat is no work of tonight."""
    finisher.types(
        "2026-05-04 20:00",
        "product new clear --class oil-polyurethane --recoat 6h --window 24h",
        "product new enamel --class latex-enamel",
        "part new t/top",
        "part new t/leg",
        "air 68F 50%",
        "log top clear",
        "log leg enamel",
    )
    finisher.types("2026-05-04 21:00", "check leg tacky")
    told = finisher.types("2026-05-04 23:00", "air 68F 50%", "check top tacky")
    assert "top: leave it: touch failed: tacky; check again after Tue 03:30" in told
    evening = finisher.types("2026-05-04 23:01", "ready")
    assert "BENCH NOW" not in evening
    assert "Next: check again leg after Tue 01:00" in evening
    assert finisher.stage("2026-05-04 23:01", "top", "recoat")["blocked"]
    after_it = finisher.types("2026-05-05 03:31", "ready").partition("BENCH NOW")[2]
    assert "check again  t/top" in after_it
    finisher.types("2026-05-05 04:00", "check top tacky")
    late = finisher.types("2026-05-05 04:01", "ready").partition("LEAVE ALONE")
    assert "t/top" in late[0].partition("BENCH NOW")[2]
