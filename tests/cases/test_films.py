"""Questions about films that stay soft, wrinkle, or blush."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

SHOP = "room new shop"
STILL = "air 21C 50%"

FC003 = Question(
    "one wood of a piece is dry, the oily one beside it is not: what can be saved",
    shows=(
        "zones of one part have states of their own",
        "oily wood under an oxidising finish is named before the first coat, with solvent wipe "
        "and dewaxed shellac",
        "a day to decide: no later than that the rescue begins, since it takes so long itself",
    ),
    trap="one clock for the piece: ready and not ready at once",
)


def test_fc003_each_wood_of_a_piece_has_its_own_state_and_a_day_to_decide(finisher: Finisher):
    finisher.types(
        "2026-10-20 18:00",
        "product new blend --class oil-varnish-blend",
        "product new urethane --class oil-polyurethane",
        "product new sealer --class shellac-1lb",
        SHOP,
        STILL,
        "project new gifts --due '13 Nov 2026'",
        "steps new coaster blend*2 urethane",
        "part new gifts/coasters -n 6 --species maple --face front=pale,red:padauk --steps coaster",
    )
    before = finisher.reads("2026-10-20 18:01", "ready")
    with FC003.line(2):
        assert "coat gifts/coasters ×6, front/pale" in before
        assert "front/red blend 1 of 2 stopped by what is underneath: on padauk" in before
        assert "Wipe with solvent and within minutes seal" in before
        assert "dewaxed shellac" in before
    finisher.types("2026-10-20 18:05", "log coasters blend", "log coasters wipe")
    finisher.types("2026-10-21 18:05", "log coasters blend", "log coasters wipe")
    finisher.types("2026-10-24 18:05", STILL, "log coasters urethane --method spray")
    finisher.types("2026-10-31 18:00", STILL, "check coasters@front/pale dry")
    finisher.types("2026-10-31 18:00", "check coasters@front/red tacky")
    pale = finisher.reads("2026-10-31 18:05", "when coasters@front/pale")
    red = finisher.reads("2026-10-31 18:05", "when coasters@front/red")
    with FC003.line(1):
        assert "recoat reached" in pale
        assert "recoat blocked: touch failed: tacky" in red
    why = finisher.reads("2026-10-31 18:05", "why coasters@front/red")
    with FC003.line(3):
        assert "take it off by Wed 4 Nov to keep Fri 13 Nov" in why
        assert "all its coats again take 9 days" in why
        assert "padauk is oily" in why
    with FC003.trap:
        whole = finisher.types("2026-10-31 18:05", "when coasters")
        assert whole.count("  recoat ") == 2
        assert "blocked" not in pale
        assert "take it off" not in finisher.types("2026-10-31 18:05", "why coasters@front/pale")
    finisher.types(
        "2026-11-02 18:00",
        STILL,
        "off coasters@front/red --to bare --washed",
        "log coasters@front/red solvent-wipe",
    )
    assert "stop:" not in finisher.types("2026-11-02 18:10", "log coasters@front/red sealer")


FC009 = Question(
    "stripped once, tacky again with a fresh can",
    shows=(
        "getting better is told from standing still by the checks after each other",
        "both attempts stand under the part, the first as stripped",
        "no date any more; a cause is looked for: dewaxed shellac on a patch",
    ),
    trap="try again in a day, every day for seven weeks",
)


def test_fc009_tacky_again_from_another_can_it_is_the_wood_not_the_time(finisher: Finisher):
    finisher.types(
        "2026-03-01 18:00",
        "product new poly --class oil-polyurethane",
        SHOP,
        "part new table/top",
        STILL,
        "can new first --product poly",
        "can new second --product poly",
        "log top poly --from first",
    )
    finisher.types("2026-03-31 18:00", STILL, "check top tacky")
    finisher.types(
        "2026-04-02 18:00",
        STILL,
        "off top --to bare --strip",
        "log top sand",
        "log top solvent-wipe",
        "log top solvent-wipe",
        "log top poly --from second",
    )
    finisher.types("2026-04-03 18:00", STILL, "check top gums")
    finisher.types("2026-04-04 18:00", "check top tacky")
    young = finisher.reads("2026-04-04 18:01", "why top")
    finisher.types("2026-05-21 18:00", STILL, "check top tacky")
    why = finisher.reads("2026-05-21 18:01", "why top")
    with FC009.line(1):
        assert "as long as it gets better it is only slow" in young
        assert "stalled" not in young
        assert "top: stalled" in why
        assert "as long as it gets better" not in why
    on = finisher.reads("2026-05-21 18:01", "on top")
    with FC009.line(2):
        assert "attempt 1 poly, stripped" in on
        assert "tacky" in on
        assert "coat 1 poly from second" in on
    when = finisher.reads("2026-05-21 18:01", "when top")
    with FC009.line(3):
        for stage in ("recoat", "sand", "pack", "fully hard"):
            late = "still tacky when by its class it might be fully hard"
            assert f"{stage} blocked: {late}" in when
        assert "after " not in when
        assert "something in the wood, not in the can: poly from another can stayed soft" in why
        assert "try dewaxed shellac on a patch" in why
    with FC009.trap:
        ready = finisher.reads("2026-05-21 18:01", "ready")
        assert "check again" not in ready
        assert "more waiting is unlikely to help" in why


FC011 = Question(
    "raw oil laid on like varnish, a coat a day: wax, wait or strip",
    shows=(
        "an oil that is wiped off has a second step with its own clock time, within half an hour",
        "days between coats of this kind, not 24 h",
        "no wax as the next step while the last check is tacky",
    ),
    trap="the varnish's day: 24 h, next coat",
)


def test_fc011_an_oil_is_wiped_off_and_left_for_days_not_laid_on_like_varnish(finisher: Finisher):
    """A week between coats of pure tung oil is published, three days are common practice."""
    finisher.types(
        "2026-03-01 18:00",
        "product new tung --class tung-oil",
        "product new wax --class paste-wax",
        SHOP,
        "steps new oiled tung*3 wax",
        "part new stand/rod --species cherry --steps oiled",
        STILL,
    )
    told = finisher.reads("2026-03-01 18:05", "log rod tung")
    with FC011.line(1):
        assert "wipe off the surplus tung before 18:35" in told
        assert "wipe off stand/rod tung" in finisher.reads("2026-03-01 18:10", "ready")
    finisher.types("2026-03-01 18:30", "log rod wipe")
    next_day = finisher.reads("2026-03-02 18:06", STILL, "ready")
    with FC011.line(2):
        assert "recoat after Tue 10 Mar, test from Thu 05:00" in next_day
    with FC011.trap:
        assert "BENCH NOW" not in next_day
        assert "stop: rod: drying" in finisher.types("2026-03-02 18:06", "log rod tung")
    finisher.types("2026-03-02 18:30", "log rod wipe")
    finisher.types("2026-03-03 18:06", STILL, "log rod tung", "log rod wipe")
    finisher.types("2026-03-17 18:00", STILL, "check rod tacky")
    why = finisher.reads("2026-03-17 18:01", "why rod")
    with FC011.line(3):
        assert "what stands on the wood and shines stays soft for good" in why
        assert "no wax over it" in why
        assert "stop: rod: the touch check found it tacky" in finisher.types(
            "2026-03-17 18:05", "log rod wax"
        )


FC012 = Question(
    "the second coat wrinkled after a damp, cool night: 20 h are enough, are they not",
    shows=(
        "air of 95 % and cool is called unfit for the coat itself, and its hours stand still",
        "a check that it sands to powder comes before the next coat",
        "the wrinkled coat comes off on record; the coat below keeps its own date",
    ),
    trap="20 h are more than the least wait",
)


def test_fc012_a_damp_night_dries_a_coat_on_top_only(finisher: Finisher):
    finisher.types(
        "2026-03-07 17:45",
        "product new urethane --class oil-polyurethane",
        "room new bedroom",
        "part new floor/boards",
        "air 13C 95%",
    )
    damp = finisher.types("2026-03-07 18:00", "log boards urethane")
    with FC012.line(1):
        assert "stop: boards: 95 % RH is above the 75 % limit" in damp
        assert "recoat no date in this air" in damp
    finisher.types("2026-03-08 13:00", "air 13C 95%")
    with FC012.trap:
        after_20_h = finisher.reads("2026-03-08 14:00", "ready")
        assert "recoat no date in this air" in after_20_h
        assert "BENCH NOW" not in after_20_h
        assert "stop: boards: drying" in finisher.types(
            "2026-03-08 14:00", "log boards urethane --scuffed"
        )
    wrinkled = finisher.types("2026-03-08 19:00", "fault boards wrinkle")
    assert "the coat below was not dry through: urethane went on 20 h before" in wrinkled
    assert "damp air slowed the coat below: 95 % RH" in wrinkled
    (below, _) = finisher.asks("2026-03-08 19:01", "on boards")[0]["coats"]
    finisher.types("2026-03-08 19:10", f"off boards --to {below['act']} --scraped")
    on = finisher.reads("2026-03-08 19:11", "on boards")
    with FC012.line(3):
        assert "coat 1 urethane, Sat 18:00" in on
        assert "coat 2 urethane" not in on
        assert "attempt 1 urethane, scraped" in on
        assert "wrinkle" in on
    for day in ("09", "10", "11", "12"):
        finisher.types(f"2026-03-{day} 19:00", "air 21C 50%")
    dried = finisher.reads("2026-03-12 19:05", "ready")
    with FC012.line(2):
        assert "check again floor/boards" in dried
        assert "until a check finds holds or powder" in dried
        sanded = finisher.reads("2026-03-12 19:10", "check boards powder")
        assert "proves touch, dust-free, tack-free, sand" in sanded


def test_without_a_wrinkle_too_the_sand_test_is_asked_for(finisher: Finisher):
    finisher.types(
        "2026-03-07 18:00",
        "product new urethane --class oil-polyurethane",
        "room new bedroom",
        "part new floor/boards --species oak",
        "air 13C 95%",
        "log boards urethane",
    )
    for day in ("08", "09", "10", "11"):
        finisher.types(f"2026-03-{day} 18:00", "air 21C 50%")
    late = finisher.reads("2026-03-11 18:01", "ready")
    assert "test, scuff, coat floor/boards" in late
    assert "sand a spot, it has to powder" in late
    finisher.types("2026-03-11 18:05", "check boards powder")
    assert "BENCH NOW scuff, coat floor/boards" in finisher.reads("2026-03-11 18:06", "ready")


FC014 = Question(
    "catalysed varnish wrinkles on some days only: what is different on the bad days",
    shows=(
        "every pair of coats of this product: hours between, air, stain's wait, how it came out",
        "how a coat came out, and where, is kept with the coat",
        "a window with two ends, and what is asked for beyond it",
    ),
    trap="dates alone, by which good and bad days look alike",
)


def test_fc014_good_days_and_bad_days_stand_side_by_side(finisher: Finisher):
    finisher.types(
        "2026-03-02 09:00",
        "product new stain --class wiping-stain",
        "product new varnish --class conversion-varnish",
        SHOP,
        "part new kitchen/doors -n 8",
        "air 22C 45%",
        "log doors:1-4 stain",
        "log doors:1-4 wipe",
    )
    finisher.types("2026-03-03 09:30", "air 22C 45%")
    told = finisher.reads("2026-03-03 09:30", "log doors:1-4 varnish --method spray")
    with FC014.line(3):
        assert "recoat after 11:00; closes 11:30" in told
        when = finisher.reads("2026-03-03 09:31", "when doors:1-4")
        assert "window closes 11:30, later it needs a scuff" in when
    assert ", recoat, sand, " in finisher.types("2026-03-03 15:00", "check doors:1-4 gums")
    finisher.types("2026-03-04 08:00", "air 22C 45%", "check doors:1-4 powder")
    finisher.types("2026-03-04 08:10", "log doors:1-4 scuff", "log doors:1-4 varnish")
    finisher.types("2026-03-05 09:00", "check doors:1-4 holds")
    finisher.types("2026-03-09 09:00", "air 22C 70%", "log doors:5-8 stain", "log doors:5-8 wipe")
    finisher.types("2026-03-09 14:00", "air 22C 70%", "log doors:5-8 varnish --method spray")
    finisher.types("2026-03-10 08:00", "air 20C 65%", "log doors:5-8 scuff")
    finisher.types("2026-03-10 08:10", "log doors:5-8 varnish --method spray")
    finisher.types("2026-03-10 12:00", "fault doors:5,6 wrinkle --where 'spots near the rails'")
    pairs = finisher.types("2026-03-10 12:05", "past --pairs varnish varnish")
    bad, _, good = (" ".join(pair.split()) for pair in pairs.split("varnish over varnish: ")[1:])
    with FC014.line(1):
        for what in ("after 18.2 h", "20 °C, 65 %; under it 22 °C, 70 %", "stain had 5 h"):
            assert what in bad
        for what in ("after 22.7 h", "22 °C, 45 %; under it 22 °C, 45 %", "stain had 24.5 h"):
            assert what in good
    with FC014.line(2):
        assert "kitchen/doors:5-6" in bad
        assert "WENT WRONG: wrinkle (spots near the rails)" in bad
        assert "kitchen/doors:1-4" in good
        assert "no fault on record; scratch: holds" in good
    with FC014.trap:
        differs = [(a, b) for a, b in zip(bad.split(), good.split(), strict=False) if a != b]
        assert len(differs) > 8
        assert "3 in all: 1 went wrong, 2 without a fault on record" in pairs


FC035 = Question(
    "white clouds in lacquer sprayed on a hot, damp day: what made them, what mends them",
    shows=(
        "with the fault stands until when it can be mended, as a clock time",
        "how long the stain had is the second suspect",
        "the time until it may be handled begins anew with the mending mist",
    ),
    trap="wait until tomorrow and look again",
)


def test_fc035_blush_on_precatalysed_lacquer_is_mended_within_hours_or_not(finisher: Finisher):
    """Two hours are the cautious end of "a few" (common practice)."""
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
    finisher.types("2026-07-01 14:05", "log doors trim lacquer --method spray --film 4mil")
    clouds = finisher.reads("2026-07-01 14:20", "fault doors trim blush")
    with FC035.line(1):
        assert "only before 16:05" in clouds
        assert "mist it lightly with retarder before 16:05" in clouds
        assert "mend set/doors ×2" in finisher.reads("2026-07-01 14:21", "ready")
    with FC035.line(2):
        assert clouds.index("damp air") < clouds.index("stain went on 5 h before; 24 h is usual")
    finisher.types("2026-07-01 14:25", "air 24C 45%")
    before = finisher.reads("2026-07-01 15:30", "when doors")
    finisher.types("2026-07-01 15:30", "fault doors mended --remedy 'retarder mist'")
    after = finisher.reads("2026-07-01 15:31", "when doors")
    with FC035.line(3):
        for stage in ("clamp", "stack"):
            assert finisher.after(before, stage) != finisher.after(after, stage)
    with FC035.trap:
        late = finisher.types("2026-07-01 19:00", "fault trim blush")
        assert "too late since 16:05" in late
        assert "leave it until fully dry" in late


FC013 = Question(
    "two days between coats were not enough on one of two woods",
    shows=(
        "the air of all the days between counts, not that of the first evening",
        "after a wrinkle a check has to pass before the next coat",
        "the two woods stand apart",
    ),
    trap="48 h are over: ready; and one verdict for both woods",
)


def test_fc013_two_days_in_cold_and_rain_are_no_two_days(finisher: Finisher):
    finisher.types(
        "2026-05-06 08:00",
        "product new poly --class oil-polyurethane",
        SHOP,
        "part new bench/oak --species oak",
        "part new bench/pine --species pine",
        "air 64F 40%",
        "log oak pine poly",
    )
    for day in ("07", "08"):
        finisher.types(f"2026-05-{day} 08:00", "air 55F 80%")
    ready = finisher.reads("2026-05-08 08:01", "ready")
    early = finisher.reads("2026-05-08 08:05", "log oak pine poly")
    with FC013.line(1):
        assert "recoat no date in this air" in ready
        assert "stands still: this air is outside its limits" in early
    wrinkled = finisher.reads("2026-05-08 12:00", "fault pine wrinkle")
    again = finisher.reads("2026-05-08 12:10", "log pine poly")
    with FC013.line(2):
        assert "coat a small patch first, thin; log what the check finds" in wrinkled
        assert (
            "blocks clamp, stack, pack, fully hard, recoat, close, light use, rub, until a"
            in wrinkled
        )
        assert "stop: pine: wrinkle on poly" in again
    finisher.types("2026-05-08 12:11", "undo")
    after = finisher.reads("2026-05-08 12:12", "ready")
    with FC013.line(3):
        assert "check again bench/pine poly, coat 3 wrinkle" in after
        assert "bench/oak poly scuff, recoat no date in this air" in after
        assert "oak, sound" in wrinkled
    with FC013.trap:
        assert "BENCH NOW" not in ready
        assert "wrinkle" not in finisher.reads("2026-05-08 12:13", "why oak")


FC022 = Question(
    "a waterborne sealer scrapes off an oil stain of one day: is it cured by now",
    shows=(
        "what flakes at a scratch blocks everything above it on that part",
        "several days to a week in a warm room or a barrier, and who says so",
        "each chair has its own findings, at their places",
    ),
    trap="five days have passed, so the sealer is cured and the next coat is due",
)


def test_fc022_a_sealer_that_flakes_holds_its_own_chair(finisher: Finisher):
    finisher.types(
        "2026-05-02 08:00",
        "product new stain --class wiping-stain",
        "product new sealer --class waterborne-clear",
        SHOP,
        "part new dining/chairs -n 4 --species oak",
        STILL,
        "log chairs stain",
        "log chairs wipe",
    )
    finisher.types("2026-05-03 08:00", STILL)
    early = finisher.reads("2026-05-03 08:00", "log chairs sealer")
    over = finisher.reads("2026-05-03 08:00", "over stain sealer")
    with FC022.line(2):
        assert "stop: chairs ×4: drying: recoat over stain not reached (label 72–168 h" in early
        assert "longer in the cold, or after a day dewaxed shellac or vinyl sealer between" in early
        assert "3 d to 7 d" in over
        assert "[Finishing-tip page, waterborne over oil stain]" in over
        assert "sources 72 h (trade press or page, Trade questions and answers" in over
    finisher.types("2026-05-08 08:00", STILL, "check chairs:2-4 holds")
    finisher.types("2026-05-08 08:05", "check chairs:1 flakes --where seat")
    ready = finisher.reads("2026-05-08 08:10", "ready")
    when = finisher.reads("2026-05-08 08:10", "when chairs:1")
    with FC022.line(1):
        for stage in ("recoat", "clamp", "stack", "pack", "light use"):
            assert f"{stage} blocked: scratch failed: flakes (seat)" in when
        assert "no time mends that: take it off" in finisher.reads(
            "2026-05-08 08:15", "log chairs:1 sealer"
        )
    with FC022.line(3):
        assert "dining/chairs:1 sealer, coat 2 scratch failed: flakes (seat)" in ready
        assert "blocked" not in finisher.reads("2026-05-08 08:10", "when chairs:2-4")
    with FC022.trap:
        assert "coat dining/chairs:1 " not in ready
        assert "coat 2 is due" not in ready
        assert "check again dining/chairs:1 " in ready


FC039 = Question(
    "polyurethane over linseed oil: two days or a week",
    shows=(
        "the varnish waits for a week after the last oil, and it says why",
        "oil over oil is one wait, varnish over oil another",
        "a day in the sun is a step and no coat",
    ),
    trap="the oil's own day for the product that comes next",
)


def test_fc039_varnish_waits_longer_over_oil_than_oil_does(finisher: Finisher):
    finisher.types(
        "2026-05-02 08:00",
        "product new linseed --class boiled-linseed-oil",
        "product new poly --class oil-polyurethane",
        SHOP,
        "steps new oiled linseed*2 sun poly",
        "part new table/top --species cherry --steps oiled",
        STILL,
        "log top linseed",
        "log top wipe",
    )
    finisher.types("2026-05-03 08:00", STILL, "log top linseed", "log top wipe")
    oils = finisher.reads("2026-05-03 08:00", "over linseed linseed")
    varnish = finisher.reads("2026-05-03 08:00", "over linseed poly")
    with FC039.line(2):
        assert "wait 24 h to 3 d" in oils
        assert "wait 3 d to 7 d" in varnish
    sunned = finisher.reads("2026-05-04 18:00", STILL, "log top sun")
    on = finisher.reads("2026-05-04 18:01", "on top")
    with FC039.line(3):
        assert "top: sun" in sunned
        assert "coat 2 linseed" in on
        assert "coat 3" not in on
        assert "to come poly" in on
    why = finisher.reads("2026-05-05 08:00", STILL, "why top")
    early = finisher.reads("2026-05-05 08:00", "log top poly")
    with FC039.line(1):
        assert "recoat after Tue 12 May" in why
        assert "sources 72 to 168 h" in why
        assert "The chemistry agrees, but the oil must be cured first" in early
        assert "A week after the last oil" in early
    with FC039.trap:
        assert early.count("stop: top: drying: recoat over linseed not reached") == 1
        assert "BENCH NOW" not in finisher.reads("2026-05-05 07:59", "ready")


FC221 = Question(
    "wax over cured polyurethane over stain: today, or is something wrong with it",
    shows=(
        "wax is allowed at 35 days, and nothing stops it",
        "it lies on top and is no fourth coat",
        "polyurethane over it later is stopped: the wax comes off first",
        "two days after the last coat: not yet",
    ),
    trap="no finish over wax, said of the waxing itself; or a wax that waits for a next coat",
)


def test_fc221_wax_is_the_last_layer_and_no_coat(finisher: Finisher):
    finisher.types(
        "2026-10-19 18:00",
        "product new stain --class water-dye",
        "product new poly --class oil-polyurethane",
        "product new wax --class paste-wax",
        SHOP,
        "part new cabinet/shelves -n 3",
        STILL,
        "log shelves stain",
    )
    for day in ("21", "22", "24"):
        finisher.types(f"2026-10-{day} 18:00", STILL, "log shelves poly --scuffed")
    young = finisher.reads("2026-10-26 18:00", STILL, "log shelves wax")
    with FC221.line(4):
        assert "stop: shelves ×3: drying: recoat over poly not reached" in young
        assert "The solvent in wax attacks a young film; leave it alone now" in young
    finisher.types("2026-10-26 18:01", "undo --never-happened")
    finisher.types("2026-11-28 18:00", STILL, "check shelves no-smell")
    may = finisher.reads("2026-11-28 18:01", "over poly wax")
    waxed = finisher.reads("2026-11-28 18:05", "log shelves wax")
    on = finisher.reads("2026-11-28 18:06", "on shelves")
    ready = finisher.reads("2026-11-28 18:06", "ready")
    with FC221.line(1):
        assert may.startswith("wax over poly: yes")
        assert "stop:" not in waxed
    with FC221.line(2):
        assert "on top wax, 18:05" in on
        assert "coat 4 poly" in on
        assert "coat 5" not in on
    with FC221.trap:
        assert "Nothing sticks to wax" not in waxed
        assert "LEAVE ALONE" not in ready
        assert "BENCH NOW" not in ready
        assert "recoat after" not in waxed
    over = finisher.reads("2026-11-30 18:00", "log shelves poly --scuffed")
    with FC221.line(3):
        assert "stop: shelves ×3: over paste wax: Nothing sticks to wax" in over
        assert "Wash it off twice with solvent and clean cloths" in over


FC222 = Question(
    "lacquer over yesterday's shellac: two products, may it go over",
    shows=(
        "yes, with light first passes, and a scuff that is no must",
        "over polyurethane the same lacquer may lift it",
        "an acid-cured varnish over shellac only where its own sheet allows it",
        "no days of waiting that nobody asks for",
    ),
    trap="two products, so stop; or a yes for every solvent finish",
)


def test_fc222_lacquer_bites_into_shellac_and_lifts_varnish(finisher: Finisher):
    finisher.types(
        "2026-11-23 16:00",
        "product new shellac --class shellac-2lb",
        "product new lacquer --class lacquer-sprayed",
        "product new poly --class oil-polyurethane",
        "product new acid-cured --class conversion-varnish",
        "part new cabinet/case",
        "air 21C 50%",
        "log case shellac --thin",
    )
    finisher.types("2026-11-24 08:50", STILL, "check case powder")
    over = finisher.reads("2026-11-24 08:55", "over shellac lacquer --method spray")
    logged = finisher.types("2026-11-24 09:00", "log case lacquer --method spray")
    with FC222.line(1):
        assert over.startswith("lacquer over shellac: yes")
        assert "the first passes of lacquer light; a scuff is no must" in over
        assert "stop:" not in logged
        assert "scuff" not in logged
    with FC222.line(2):
        lifts = finisher.reads("2026-11-24 09:01", "over poly lacquer")
        assert "Lacquer solvents wrinkle and lift oil films" in lifts
        assert "try it on a board" in lifts
    with FC222.line(3):
        sheet = finisher.reads("2026-11-24 09:01", "over shellac acid-cured")
        assert "over shellac only where its own sheet allows it" in sheet
    with FC222.line(4):
        assert "wait 2 h to 3 h" in over
        assert "days" not in over
    with FC222.trap:
        assert "caution: case" not in logged
        assert "yes" not in lifts
        assert "yes" not in sheet


FC104 = Question(
    "a third coat of stain given up half-way, and wiped off too late: carry on, wipe, or sand",
    shows=(
        "the third is no coat: what it covers, and for how many minutes it was on the wood",
        "the varnish is held by the stain that is left, not by hours",
        "what works only within minutes comes first: its solvent; what is asked comes after",
    ),
    trap="three coats of stain, and the varnish tomorrow",
)


def test_fc104_a_stain_given_up_half_way_is_no_coat_and_holds_the_varnish(finisher: Finisher):
    finisher.types(
        "2026-01-10 10:00",
        "product new stain --class wiping-stain",
        "product new varnish --class oil-polyurethane",
        "steps new dark stain*3 varnish*3",
        "part new coffee/table --steps dark",
        "log table stain",
    )
    finisher.types("2026-01-10 10:10", "log table wipe")
    finisher.types("2026-01-11 10:00", "log table stain")
    finisher.types("2026-01-11 10:10", "log table wipe")
    given_up = finisher.reads("2026-01-12 10:20", "log table stain --stopped half --at 10:00")
    with FC104.line(3):
        first, _, rest = given_up.partition("caution:")
        assert "stop: stain was broken off and not wiped" in first
        assert "at once, minutes count: wet all of it with its own solvent (mineral spi" in first
        assert "let it dry, sand the whole face back evenly: finishlog off PART --sand" in first
        assert "the room's air was not read" in rest
        assert "own solvent (mineral spirits), at once" in finisher.reads(
            "2026-01-12 10:21", "ready"
        )
    wiped = finisher.reads("2026-01-12 10:25", "log table wipe --note 'the rag stuck'")
    on = finisher.reads("2026-01-12 10:26", "on table")
    with FC104.line(1):
        assert "in part half, broken off: stain, 10:00 (act 9), wiped after 25 min" in on
        assert "coat 2 stain, Sun 10:00 (act 7), wiped after 10 min (act 8)" in on
    with FC104.trap:
        assert "coat 3" not in on
        assert "to come stain, varnish, varnish, varnish" in on
        finisher.types("2026-01-12 10:27", "shop hours 'mon-sun 8:00-20:00'")
        plan = finisher.reads("2026-01-12 10:27", "plan coffee")
        assert "NOT PLANNED coffee/table coat surplus stain wiped too late" in plan
        assert "varnish 1 of 3" not in plan
    tomorrow = finisher.reads("2026-01-13 10:00", "ready")
    with FC104.line(2):
        assert "surplus stain wiped too late" in wiped
        assert "rub it off with its own solvent (mineral spirits) (25 min after it" in tomorrow
        over = finisher.reads("2026-01-13 10:01", "log table varnish")
        assert "stop: table: stain was wiped 25 min after it went on, at most 15 min" in over
        assert "what had set by then stays soft for good" in over


FC223 = Question(
    "may oil go over milk paint that dried overnight; and paint on the arm, a day after the oil",
    shows=(
        "the oil may go on, no stop, and it is the last chance to put the paint right",
        "paint over the oil is stopped on that arm alone, with the way out",
        "the oil opens an item of rags, the paint none",
    ),
    trap="one rule for both orders: both are fine, or both are stopped",
)


def test_fc223_oil_goes_over_milk_paint_and_no_paint_over_the_oil(finisher: Finisher):
    finisher.types(
        "2026-11-04 10:00",
        "product new red --class milk-paint",
        "product new black --class milk-paint",
        "product new danish --class oil-varnish-blend",
        "steps new windsor red*2 black*2 rub danish",
        "part new chair/frame --face left-arm --face rest --steps windsor",
        "log frame red --at 'mon 10:00'",
        "log frame red --at 'tue 10:00'",
        "log frame black",
    )
    finisher.types("2026-11-05 18:00", "log frame black")
    with FC223.line(3):
        assert "no rags are open" in finisher.reads("2026-11-06 09:00", "rags")
    finisher.types("2026-11-06 10:00", "log frame rub")
    friday = finisher.reads("2026-11-06 15:00", "ready -v")
    oiled = finisher.reads("2026-11-06 15:00", "log frame danish")
    with FC223.line(1):
        assert "coat chair/frame danish 1 of 1" in friday
        assert "the last chance to put black right: nothing of it goes over oil and" in friday
        assert "a wipe of alcohol shows the colour beforehand" in friday
        assert "stop" not in friday.casefold()
        assert "stop:" not in oiled
    with FC223.line(3):
        assert "rags 1: danish, open since 15:00" in oiled
        assert finisher.reads("2026-11-06 15:01", "rags").count("chair/frame") == 1
    finisher.types("2026-11-06 15:20", "log frame wipe")
    fault = finisher.reads("2026-11-07 09:00", "fault frame rubbed-through --face left-arm")
    painted = finisher.reads("2026-11-07 09:05", "log frame black --face left-arm")
    after = finisher.reads("2026-11-07 09:06", "ready")
    with FC223.line(2):
        way_out = "Scrape that place to bare wood and build the paint up again, or leave a rubbed"
        assert way_out in fault
        assert "put the colour back first" not in fault
        assert "stop: frame, left-arm: over oil and varnish blend: Milk paint bonds to" in painted
        assert way_out in painted
        assert "STOPPED chair/frame, left-arm stopped by what is underneath" in after
        rest = finisher.reads("2026-11-07 09:06", "when frame@rest")
        assert "next every step is behind; clamp after Mon 15:00" in rest
        assert "blocked" not in rest
    with FC223.trap:
        assert "yes, once it is dry" in finisher.reads("2026-11-07 09:07", "over black danish")
        assert "no: over oil" in finisher.reads("2026-11-07 09:07", "over danish black")


FC023 = Question(
    "waterborne over an oil of two days: blisters on the solid parts, none on the veneered ones",
    shows=(
        "solid and veneered parts stand differently, and the veneer clears the oil of nothing",
        "it is left for two to three days before it is sanded, and not coated now",
        "the next schedule is told: shellac under waterborne, no oil",
    ),
    trap="the oil was dry and the waterborne was dry, so all is well",
)


def test_fc023_blisters_over_oil_are_left_alone_and_the_veneer_clears_nothing(finisher: Finisher):
    finisher.types(
        "2026-11-01 10:00",
        "product new oil --class oil-varnish-blend",
        "product new water --class waterborne-clear",
        "steps new clear oil water*2",
        "part new bath/doors --species cherry --steps clear",
        "part new bath/panels --species 'cherry veneer' --steps clear",
        "log doors panels oil",
    )
    first = finisher.reads("2026-11-03 10:00", "log doors panels water")
    with FC023.trap:
        assert "stop: doors and panels: over oil and varnish blend: Oil keeps weeping" in first
    finisher.types("2026-11-03 18:00", "log doors panels water --scuffed")
    blisters = finisher.reads("2026-11-04 18:00", "fault doors blisters")
    ready = finisher.reads("2026-11-04 18:01", "ready")
    with FC023.line(1):
        assert "apart another wood: cherry here, cherry veneer on panels, sound" in blisters
        assert "the log oil or solvent below, still leaving: oil went on 56 h before" in blisters
        assert "so it was on panels too" not in blisters
        assert "LEAVE ALONE bath/doors water blister: let it stand" in ready
        assert "blister" not in finisher.reads("2026-11-04 18:01", "when panels")
        assert "pack blocked: blister" in finisher.reads("2026-11-04 18:01", "when doors")
    told = finisher.reads("2026-11-04 18:02", "steps new again oil water*2")
    part = finisher.reads("2026-11-04 18:02", "part new bath/next --species cherry --steps again")
    with FC023.line(3):
        for said in (told, part):
            assert "caution: water over oil on cherry went wrong before: blister" in said
            assert "dewaxed shellac or vinyl sealer, then waterborne" in said
            assert "next time shellac for the warm tone, and no oil under it" in said
    with FC023.line(2):
        assert "let it stand two to three days and harden, then scrape or sand" in ready
        assert "(2 d to 3 d to go)" in ready
        early = finisher.reads("2026-11-05 09:00", "log doors sand")
        assert "stop: doors: blister on water" in early
        assert "leave it" in early
        again = finisher.reads("2026-11-05 09:01", "log doors water --scuffed")
        assert "stop: doors: blister on water" in again
        finisher.types("2026-11-05 09:02", "undo --never-happened")
        mended = finisher.reads("2026-11-07 19:00", "log doors sand")
        assert "blister" not in mended
    with FC023.trap:
        later = finisher.reads("2026-11-07 19:01", "log doors water")
        assert "stop: doors: over oil and varnish blend, further down" in later


FC033 = Question(
    "third coat of a floor in wet, then hot weather: fans, heat or a dehumidifier, before a party",
    shows=(
        "the intervals between the coats, each beside its air",
        "a skinned film is cooled and given dry, moving air, and not heated",
        "the risk to the date at once, with the last day to decide",
    ),
    trap="heat is advised, since heat is faster",
)


def test_fc033_a_skinned_floor_is_cooled_and_the_party_is_at_risk(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-06-11 09:30",
        "settings temperature F",
        "product new poly --class oil-polyurethane",
        "project new house --due 'Sat 4 Jul 2026'",
        "part new house/floor",
        "air 72F 80%",
        "log floor poly",
    )
    finisher.types("2026-06-12 15:30", "air 74F 82%", "log floor poly")
    finisher.types("2026-06-16 09:30", "air 70F 80%", "log floor poly")
    finisher.types("2026-06-22 09:30", "air 90F 60%")
    finisher.types("2026-06-26 09:30", "air 84F 78%", "check floor prints")
    past = finisher.reads("2026-06-26 09:31", "past poly")
    with FC033.line(1):
        assert "poly Thu 11 Jun 09:30 oil polyurethane, 72 °F, 80 % (TOO DAMP" in past
        assert "poly Fri 12 Jun 15:30 after 30 h (label 6 to 24 h), 74 °F, 82 % (TOO DAMP" in past
        assert "poly Tue 16 Jun 09:30 after 4 d (label 6 to 24 h), 70 °F, 80 % (TOO DAMP" in past
    why = finisher.reads("2026-06-26 09:31", "why floor")
    with FC033.line(2):
        assert "do not heat it: heat closes the skin over what is soft below" in why
        assert "cool the room to about 70 °F and move dry air over it day and night" in why
    with FC033.line(3):
        # 24 h, 24 h and 7 days to packing.
        assert "too late for Sat 4 Jul: Thu 25 Jun was the last day" in why
        assert "all its coats again take 9 days at label time" in why
    with FC033.trap:
        assert "warm air" not in why
        for line in finisher.types("2026-06-26 09:31", "why floor").splitlines():
            assert "sooner" not in line or "here at 73" in line


FC075 = Question(
    "a wiped urethane on an oily exotic: the long grain is dry, the end grain takes a print",
    shows=(
        "what is found is kept for its place, the end grain",
        "until when to give it time, and then the steps of the rescue",
        "what to do before the first coat on such a wood",
    ),
    trap="ready when the first spot is dry",
)


def test_fc075_the_end_grain_of_cocobolo_is_waited_for_until_a_day(finisher: Finisher):
    finisher.types(
        "2026-03-01 09:00",
        "product new wiping --class wiping-varnish",
        "steps new clear wiping*2",
        "part new small/box -n 3 --species cocobolo --steps clear",
        STILL,
    )
    before = finisher.reads("2026-03-01 09:00", "why box")
    with FC075.line(3):
        assert "on cocobolo: The wood's extractives keep an oxidising finish from curing" in before
        assert "Wipe with solvent and within minutes seal with one or two thin coats" in before
        assert "caution: oily wood: not wiped with solvent" in before
    finisher.types("2026-03-01 09:05", "log box wiping")
    finisher.types("2026-03-11 09:00", STILL, "check box dry")
    finisher.types("2026-03-11 09:01", "check box tacky --where 'end grain'")
    why = finisher.reads("2026-03-11 09:02", "why box")
    with FC075.line(1):
        assert "check touch: dry, 09:00" in why
        assert "check touch: tacky (end grain), 09:01" in why
    with FC075.line(2):
        # 21 days by its class, at 0.87 of a label hour an hour.
        assert "give it until Wed 25 Mar, when wiping may be fully hard by its class" in why
        assert "still soft then, take it off" in why
        assert "to begin again on cocobolo: wash the film off with its solvent. Wipe with" in why
    with FC075.trap:
        ready = finisher.reads("2026-03-11 09:02", "ready")
        assert "check again small/box ×3 wiping 2 of 2 touch failed: tacky (end grain)" in ready
        assert "recoat blocked: touch failed: tacky (end grain)" in finisher.reads(
            "2026-03-11 09:02", "when box"
        )
    with FC075.line(2):
        finisher.types("2026-03-26 09:00", STILL, "check box tacky --where 'end grain'")
        late = finisher.reads("2026-03-26 09:01", "why box")
        assert "more waiting is unlikely to help" in late
        assert "give it until" not in late


FC001 = Question(
    "eight hours past the label a film still grabs the finger: strip it or wait",
    shows=(
        "a film found tacky is ready no more, whatever its label's hours say",
        "the next coat waits until a check finds it dry, and it sands to powder",
        "what it took is held against the label, and the next coat waits longer",
        "the likely causes stand in order, from the log, with what is not known",
    ),
    trap="ready at four hours and for ever, or a wait that failed is called overdue",
)


def test_fc001_a_slow_film_is_waited_for_and_teaches_the_next(finisher: Finisher):
    """No air was read: the shop's own hours are all there is."""
    finisher.types(
        "2026-10-20 09:00",
        "product new oil --class boiled-linseed-oil",
        "product new poly --class oil-polyurethane --recoat 4h",
        "steps new clear oil poly*3",
        "part new boxes/box -n 4 --steps clear",
        "log box oil",
    )
    finisher.types("2026-10-20 09:10", "log box wipe")
    finisher.types("2026-11-07 09:30", "log box poly")
    four = finisher.reads("2026-11-07 13:35", "ready")
    tacky = finisher.reads("2026-11-07 21:30", "check box tacky")
    night = finisher.reads("2026-11-07 21:31", "ready")
    why = finisher.reads("2026-11-07 21:31", "why box")
    with FC001.line(1):
        assert "tack-free, turn" in tacky
        assert "recoat, sand" in tacky
        assert "check again boxes/box ×4 poly 2 of 3 touch failed: tacky" in night
        assert "recoat blocked: touch failed: tacky" in finisher.reads(
            "2026-11-07 21:31", "when box"
        )
    with FC001.line(4):
        causes = why.partition("cannot be ruled out: ")[2]
        old, heavy, cold = map(causes.index, ("an old can", "too heavy a coat", "cold air"))
        assert old < heavy < cold
        assert "(not logged: which can it came from, and since when that is open)" in causes
        assert "(not logged: how thick it went on)" in causes
        assert "(not logged: the air, all the way)" in causes
    with FC001.trap:
        assert "coat boxes/box" not in four
        for screen in (night, why):
            assert "overdue" not in screen.replace("OVERDUE, where are they", "")
        assert "neither coat it nor strip it yet" in why
    finisher.types("2026-11-08 09:30", "check box tacky")
    dry = finisher.reads("2026-11-08 15:30", "check box dry")
    with FC001.line(2):
        assert (
            "BENCH NOW test, scuff, coat boxes/box ×4 poly 2 of 3 may be ready"
            in finisher.reads("2026-11-08 15:31", "ready")
        )
        sands = finisher.reads("2026-11-08 15:35", "check box powder", "ready")
        assert "BENCH NOW test, scuff, coat boxes/box ×4 poly 2 of 3" in sands
    with FC001.line(3):
        assert "your pace moved it: by the label alone reached, by yours, 1.9 × its hours" in dry
        finisher.types("2026-11-08 15:40", "log box scuff")
        second = finisher.reads("2026-11-08 15:45", "log box poly")
        assert finisher.after(second, "recoat") == "Tue 14:30"
        pace = finisher.reads("2026-11-08 15:46", "why box")
        assert "pace 1.94 × the label's hours (1.52–2.47), later coats, in air not read" in pace
