"""Questions about finishes of long ago: what they were, and how they are done again."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

FC239 = Question(
    "poly, 2 coats: which poly is meant, and which rules hold for the first can",
    shows=(
        "the word is asked back with the cans at hand, or kept as a kind that is unknown",
        "oil-modified waterborne: layers and abrasives of water, rags of oil, and why",
        "old entries are listed as unknown; what is confirmed later keeps the words of then",
        "what may go over what depends on which it is, and each case is told",
    ),
    trap="oil in its name makes it an oil varnish, or water in it drops the rags",
)


def test_fc239_poly_is_no_kind_of_finish_until_somebody_names_the_can(finisher: Finisher):
    when = "2026-10-01 18:00"
    finisher.types(
        when,
        "product new K1 --class waterborne-oil-modified",
        "product new K2 --class oil-polyurethane",
        "product new K3 --class waterborne-clear",
        "product new stain --class wiping-stain",
        "part new bed/frame",
        "part new shelf/board",
        "part new now/headboard",
        "air 21C 50%",
    )
    asked = finisher.tries(when, "log headboard poly")
    kinds = finisher.tries(when, "product new can4 --class poly")
    with FC239.line(1):
        assert asked.code == kinds.code == 3
        assert "did you mean K1 or K2 or K3?" in asked.err
        assert "oil-polyurethane, polyurethane-unknown, waterborne-clear" in kinds.err
        assert finisher.reads(when, "on headboard").endswith("now no steps")
    finisher.types(
        "2026-10-01 18:30",
        "product new poly --class polyurethane-unknown",
        "log frame poly --at '2024-05-01 18:00' --note 'poly, 2 coats'",
        "log board poly --at '2024-06-01 18:00' --note 'poly satin'",
        "log headboard stain",
        "log headboard wipe",
        "rags gone",
    )
    over = finisher.reads("2026-10-10 18:00", "over stain K1")
    said = finisher.reads("2026-10-10 18:05", "air 21C 50%", "log headboard K1")
    night = finisher.reads("2026-10-10 18:06", "leave")
    finisher.types("2026-10-11 18:00", "air 21C 50%", "log headboard steel-wool")
    wool = finisher.reads("2026-10-11 18:05", "log headboard K1")
    rules = finisher.reads("2026-10-11 18:10", "class show waterborne-oil-modified")
    with FC239.line(2):
        assert "Oil stain that is not cured makes waterborne wrinkle" in over
        assert "wait 3 d to 7 d" in over
        assert "Fibres of steel wool that stay in the grain or the film rust" in wool
        assert "Take all of it off with a magnet, vacuum and a cloth" in wool
        assert "or a nylon pad, no steel wool" in rules
        assert "K1: now/headboard: open since 18:05" in night
        assert "dries, recoats and is abraded as a waterborne finish" in rules
        assert "count as oily until its safety data sheet says otherwise" in rules
    with FC239.trap:
        assert "recoat after 23:00" in said
        assert "scuff, recoat" not in said
        assert "open since 18:05" in said
    old = finisher.reads("2026-10-12 09:00", "past 'kind unknown'")
    act = finisher.asks("2026-10-12 09:00", "on frame")[0]["coats"][0]["act"]
    finisher.types("2026-10-12 09:01", f"amend {act} --product K2")
    history = finisher.types("2026-10-12 09:02", "history")
    with FC239.line(3):
        assert old.count("polyurethane, kind unknown") == 2
        assert "shelf/board" in old
        assert "coat 1 K2" in finisher.reads("2026-10-12 09:02", "on frame")
        assert "coat poly, poly, 2 coats; AMENDED" in " ".join(history.split())
        assert "bed/frame" not in finisher.types("2026-10-12 09:03", "past 'kind unknown'")
    on_shelf = finisher.reads("2026-10-12 09:05", "over poly K3")
    over_stain = finisher.reads("2026-10-12 09:06", "over stain poly")
    with FC239.line(4):
        assert "K3 over poly: it depends on its kind" in on_shelf
        assert "if it is oil polyurethane: scuffed, 30 d" in on_shelf
        assert "if it is waterborne clear: itself, at its recoat time" in on_shelf
        assert "if it is oil polyurethane: after a wait, 24 h" in over_stain
        water = "if it is waterborne clear or oil-modified waterborne polyurethane"
        assert f"{water}: after a wait, 7 d" in over_stain
        assert "it depends" not in finisher.reads("2026-10-12 09:07", "over K2 K3")


FC079 = Question(
    "a dye mix and a stain time that somebody wants again years later",
    shows=(
        "found by wood, by kind and by words; the recipe comes back as steps",
        "the mix with what was in it, the grit and the minutes until the wipe are in the steps",
        "a sample is found by its own name, and another wood is warned of",
    ),
    trap="the product and its date, and nothing else",
)


def test_fc079_the_mix_and_the_minutes_come_back_as_steps(finisher: Finisher):
    finisher.types(
        "2019-03-02 09:00",
        "product new brown --class water-dye",
        "product new red --class water-dye",
        "product new stain --class wiping-stain",
        "product new poly --class oil-polyurethane",
        "part new doors/cupboard --species oak",
        "part new samples/A12 --species pine --board",
        "part new samples/A13 --species poplar --board",
        "log cupboard sand --grit P150",
        "mix brown red:30ml brown:90ml --name jar",
        "log cupboard brown --from jar",
    )
    finisher.types("2019-03-03 18:00", "log cupboard A12 A13 stain --note 'honey colour'")
    finisher.types("2019-03-03 18:10", "log cupboard A12 A13 wipe")
    finisher.types("2019-03-05 18:00", "log cupboard A12 poly")
    finisher.types("2019-03-20 18:00", "handover cupboard", "review cupboard good")
    years_later = "2026-10-04 18:00"
    past = finisher.reads(years_later, "past oak polyurethane honey")
    taken = finisher.reads(years_later, "steps new again --like cupboard")
    shown = finisher.reads(years_later, "steps show again")
    with FC079.line(1):
        assert past.startswith("doors/cupboard · oak")
        assert "samples/" not in past
        assert "1 finish: 1 came out good" in past
        assert "steps new NAME --like PART" in past
        assert shown.startswith("again 1 sand (P150) 2 brown (red:brown 1:3) 3 stain")
        assert "5 poly" in shown
    with FC079.line(2):
        assert "brown (red:brown 1:3)" in taken
        assert "stain (honey colour)" in taken
        assert "wipe (after 10 min)" in taken
        assert "sand (P150)" in taken
        assert "wiped after 10 min" in past
    with FC079.trap:
        made = finisher.reads("2026-10-04 18:05", "part new copy/door --species oak --steps again")
        assert "sample board" not in made
        to_come = finisher.reads("2026-10-04 18:06", "on copy/door")
        assert "sand (P150), brown (red:brown 1:3), stain (honey colour), wipe (after" in to_come
    with FC079.line(3):
        sample = finisher.reads("2026-10-04 18:07", "past A12")
        assert sample.startswith("samples/A12")
        assert "pine" in sample
        assert "doors/" not in sample
        other = finisher.reads(
            "2026-10-04 18:08", "part new copy/side --species pine --steps again"
        )
        assert "these steps were last on oak" in other
        assert "try them on a sample board of pine" in other


FC237 = Question(
    "two coats of gloss and one of satin: will three of satin look the same, was it a mistake",
    shows=(
        "what was done, coat by coat with its sheen, and how the last one shines",
        "gloss below satin of one finish draws no stop and no caution",
        "the plan beside the past: the same sheen, other coats below it",
        "where the last coat is to be gloss, it is said that it will differ",
    ),
    trap="polyurethane three times, or layers that do not suit each other",
)


def test_fc237_the_last_coat_alone_makes_the_sheen(finisher: Finisher):
    finisher.types(
        "2025-03-01 18:00",
        "product new full --class oil-polyurethane --sheen gloss",
        "product new silky --class oil-polyurethane --sheen satin",
        "part new one/table --species walnut",
        "air 23C 50%",
        "log table full",
    )
    finisher.types("2025-03-02 18:30", "air 23C 50%", "log table full --scuffed")
    last = finisher.types("2025-03-03 19:00", "air 23C 50%", "log table silky --scuffed")
    past = finisher.reads("2026-11-12 18:00", "past walnut")
    finisher.types("2026-11-12 18:01", "steps new three 'silky*3'", "steps new turned silky full")
    beside = finisher.reads("2026-11-12 18:02", "steps check three --on walnut --like table")
    turned = finisher.reads("2026-11-12 18:03", "steps check turned --on walnut --like table")
    with FC237.line(1):
        assert "full Sat 1 Mar 2025 18:00 oil polyurethane, gloss" in past
        assert "full Sun 2 Mar 2025 18:30 gloss, after 24.5 h" in past
        assert "silky Mon 3 Mar 2025 19:00 oil polyurethane, satin" in past
        assert "last coat satin: it alone makes the sheen" in past
    with FC237.line(2):
        for screen in (last, beside, finisher.types("2025-03-03 19:05", "why table")):
            assert "stop:" not in screen
            assert "caution:" not in screen
            assert "gloss below" not in screen
    with FC237.line(3):
        assert "BESIDE one/table sheen the same, last coat: satin" in beside
        assert "coats below it differ: silky (satin), silky (satin), there full (gloss)" in beside
        assert "many flattened coats are a little less clear, which dark wood shows" in beside
    with FC237.line(4):
        assert "sheen it will differ, last coat: gloss, there satin" in turned
        assert "a scuff and one coat of silky over it puts that right" in turned
    with FC237.trap:
        taken = finisher.reads("2026-11-12 18:04", "steps new same --like table")
        assert "full, scuff, full, scuff, silky" in taken
        same = finisher.reads("2026-11-12 18:05", "steps check same --like table")
        assert "sheen the same, last coat: satin" in same
        assert "differ" not in same


FC236 = Question(
    "a bench of two years ago was waxed: may its recipe simply be repeated on the seat",
    shows=(
        "its layers with the wax on top, and when that went on",
        "the repeat begins with the wax off, then the scuff, then the mix; not at bare wood",
        "no face but the seat gets the new coats",
        "taking the wax off is work, no coat; once is not enough",
    ),
    trap="the recipe from the first sanding on, or the mix laid on the wax",
)


def test_fc236_a_waxed_seat_is_washed_twice_before_its_oil_goes_on_again(finisher: Finisher):
    finisher.types(
        "2024-11-01 18:00",
        "product new mix --class oil-varnish-blend",
        "product new wax --class paste-wax",
        "part new entry/bench --species cherry --face seat --face legs",
        "log bench sand --grit P180",
    )
    for day in ("01", "03", "05"):
        finisher.types(f"2024-11-{day} 18:10", "log bench mix")
        finisher.types(f"2024-11-{day} 18:30", "log bench wipe")
    finisher.types("2024-12-20 18:00", "log bench wax", "rags gone", "handover bench")
    now = "2026-11-25 18:00"
    past = finisher.reads(now, "air 21C 50%", "past cherry")
    shown = finisher.reads(now, "steps new touch-up --over bench@seat", "steps show touch-up")
    with FC236.line(1):
        assert past.count(" mix ") == 3
        assert "wax Fri 20 Dec 2024 18:00 paste wax" in past
        assert "on top wax, Fri 20 Dec 2024 18:00" in finisher.reads(now, "on bench")
    with FC236.line(2):
        assert shown.startswith(
            "touch-up 1 solvent-wipe (wax off)@seat 2 solvent-wipe (wax off)@seat 3 scuff@seat "
            "4 mix@seat 5 wipe (after 20 min)@seat 6 wax@seat"
        )
        assert "sand" not in shown
    on_wax = finisher.reads("2026-11-25 18:01", "log bench@seat mix")
    with FC236.trap:
        assert "stop: bench, seat: over paste wax: Nothing sticks to wax." in on_wax
        assert "stays wet nowhere" in on_wax
        finisher.types("2026-11-25 18:02", "undo --never-happened")
    once = finisher.reads("2026-11-25 18:10", "log bench@seat solvent-wipe", "why bench@seat")
    finisher.types("2026-11-25 18:20", "log bench@seat solvent-wipe", "log bench@seat scuff")
    again = finisher.reads("2026-11-25 18:30", "log bench@seat mix")
    seat, legs = finisher.reads("2026-11-25 18:31", "on bench").split("entry/bench, legs")
    with FC236.line(4):
        assert "on top wax" in finisher.reads("2026-11-25 18:31", "on bench@legs")
        assert "wax, Fri 20 Dec 2024" in once
        assert "bench, seat: coat 4, mix" in again
        assert "stop:" not in again
        assert "rags 1: mix, open since 18:30" in again
    with FC236.line(3):
        assert "coat 4 mix, 18:30" in seat
        assert "on top wax" not in seat
        assert "coat 4" not in legs
        assert "on top wax, Fri 20 Dec 2024" in legs


FC077 = Question(
    "stain over a conditioner within two hours, or the next day: which timing is to be planned",
    shows=(
        "both ways with what speaks for each; what is chosen is kept, with its reason",
        "where the dry way was chosen a stain after an hour is warned of",
        "the board that it was tried on, and how that came out",
    ),
    trap="the hours of the label, and nothing of the other way",
)


def test_fc077_wet_or_dry_is_chosen_once_and_an_hour_is_neither(finisher: Finisher):
    finisher.types(
        "2026-10-01 17:00",
        "product new cond --class washcoat",
        "product new stain --class wiping-stain",
        "part new chest/sides --species pine",
        "part new chest/lid --species cherry",
        "part new tried/B3 --species pine --board",
        "air 23C 50%",
    )
    asked = finisher.reads("2026-10-01 17:10", "over cond stain --on pine")
    with FC077.line(1):
        assert "dry: after 6 h, the more even one on large pieces, and lighter in colour" in asked
        assert "wet: within 10 min, while it is still wet, on what can be stained at once" in asked
        assert "try it with the real stain on a board" in asked
        assert "product says STAIN --wait 8h --over" in asked
    finisher.types("2026-10-01 18:00", "log sides lid B3 cond")
    wet = finisher.types("2026-10-01 18:08", "log lid stain")
    middle = finisher.reads("2026-10-01 19:00", "log B3 stain")
    with FC077.trap:
        # Wet on wet it goes on at once, whatever the class says of drying; an hour later it errs.
        assert "stop:" not in wet
        assert "neither way" not in wet
        assert "caution: B3: 1 h after it is neither way, the worst of all; dry: after" in middle
        assert "the worst of all; wet: within 10 min" in middle
    finisher.types("2026-10-01 19:05", "undo --never-happened")
    finisher.types("2026-10-02 07:00", "air 23C 50%", "log B3 stain", "log B3 wipe")
    finisher.types("2026-10-05 07:00", "review B3 good -t 'even, a little pale'")
    finisher.types(
        "2026-10-05 08:00",
        "product says stain --wait 8h --over cond --because 'dry, even on board B3'",
        "part new chest/front --species pine",
        "air 23C 50%",
        "log front cond",
    )
    early = finisher.reads("2026-10-05 09:00", "log front stain")
    with FC077.line(2):
        assert "stop: front: drying: recoat over cond not reached (label 8 h, 1.0 done)" in early
    kept = finisher.reads("2026-10-05 09:01", "product show stain")
    finisher.types("2026-10-05 09:02", "undo --never-happened")
    next_day = finisher.types("2026-10-06 08:00", "air 23C 50%", "log front stain")
    with FC077.line(1):
        assert "8 h over cond dry, even on board B3" in kept
        assert "as you said: dry, even on board B3" in finisher.types(
            "2026-10-06 08:01", "over cond stain --on cherry"
        )
        assert "stop:" not in next_day
        assert "caution:" not in next_day
    with FC077.line(3):
        board = finisher.reads("2026-10-06 08:02", "past B3")
        assert "tried/B3 · pine, sample board" in board
        assert "after 13 h" in board
        assert "came out good, even, a little pale" in board


FC226 = Question(
    "seven of eighteen satin doors shine, since their can was not stirred: are they stripped",
    shows=(
        "the doors by how their can was stirred, and which came from its bottom",
        "a scuff and one stirred coat, nothing comes off; the third is within its four",
        "the can is marked, and says so when the last coat is drawn from it",
        "what is asked of the sheen of that kitchen later finds it",
    ),
    trap="eighteen doors that are alike, since product and date are",
)


def test_fc226_doors_from_a_can_that_was_not_stirred_take_one_more_coat(finisher: Finisher):
    finisher.types(
        "2026-06-01 08:00",
        "product new satin --class waterborne-clear --sheen satin",
        "product says satin --most-coats 4",
        "can new tin --product satin",
        "part new kitchen/doors --count 18",
        "air 23C 50%",
        "log doors satin --from tin --stirred",
    )
    day = "2026-06-02"
    finisher.types(f"{day} 08:00", "air 23C 50%")
    top = finisher.reads(f"{day} 08:00", "log doors:1-7 satin --scuffed --from tin --not-stirred")
    finisher.types(f"{day} 09:00", "can stirred tin", "log doors:8-16 satin --scuffed --stirred")
    low = "log doors:17-18 satin --scuffed --from tin --not-stirred --note 'bottom of the can'"
    bottom = finisher.reads(f"{day} 10:00", low)
    past = finisher.reads(f"{day} 12:00", "past kitchen")
    groups = {p[:4]: p for p in past.split("kitchen/doors:")[1:]}
    with FC226.line(1):
        assert "not stirred, scuffed before, act" in groups["1-7 "]
        assert "50 %, stirred, scuffed before" in groups["8-16"]
        assert "not stirred, scuffed before, bottom of the can" in groups["17-1"]
    with FC226.trap:
        assert past.count("kitchen/doors:") == 3
    with FC226.line(2):
        for said in (top, bottom):
            assert "scuff it and give it one more coat, well stirred" in said
            assert "nothing has to come off" in said
        assert "stop:" not in top
    with FC226.line(3):
        cans = finisher.reads(f"{day} 12:01", "can list")
        assert "tin was poured from without stirring" in cans
        assert "take a fresh can for the last coat" in cans
    finisher.types(f"{day} 12:02", "fault doors:1-7 wrong-sheen")
    finisher.types("2026-06-03 12:00", "air 23C 50%", "can new fresh --product satin")
    old_can = finisher.reads("2026-06-03 12:00", "log doors:17-18 satin --scuffed --from tin")
    third = finisher.reads(
        "2026-06-03 12:05", "log doors:1-7 satin --scuffed --from fresh --stirred"
    )
    with FC226.line(3):
        assert "take a fresh can for the last coat" in old_can
    with FC226.line(2):
        assert "doors:1-7: coat 3, satin from fresh" in third
        assert "stop:" not in third
    later = finisher.reads("2027-03-01 12:00", "past sheen kitchen")
    with FC226.line(4):
        assert "kitchen/doors:1-7" in later
        assert "fault wrong sheen" in later
        assert "not stirred" in later
        assert "doors:8-16" not in later


FC235 = Question(
    "pale lines beside the panels in January: how are they mended, with what, who else will call",
    shows=(
        "the vanity's dye and top with their date, 78 °F and 70 %",
        "solid panels, stained after assembly, over 60 %: vanity and kitchen, not desk or hutch",
        "the season: it is mended while it is shrunk",
        "when the recipe is copied the panels are coloured first",
    ),
    trap="found by the customer's name alone; nobody was asked which came first, colour or glue",
)


def test_fc235_a_pale_line_is_mended_while_it_is_shrunk_and_the_next_is_coloured_first(
    finisher: Finisher,
):
    finisher.types(
        "2026-07-01 08:00",
        "settings temperature F",
        "product new brown --class water-dye",
        "product new top --class conversion-varnish",
        "room new shop",
    )
    jobs = ("vanity", "kitchen", "desk", "hutch")
    for line in (
        "part new vanity/panels --species maple --room shop",
        "part new kitchen/panels --species oak --room shop",
        "part new desk/panels --species veneer --room shop",
        "part new hutch/panels --species cherry --room shop",
    ):
        finisher.types("2026-07-01 08:00", line)
    for job in jobs:
        finisher.types("2026-07-01 08:00", f"part new {job}/doors --of panels:1 --room shop")
    finisher.types("2026-07-10 08:00", "air 78F 70%", "log hutch/panels brown")
    for job in jobs:
        finisher.types("2026-07-16 08:00", f"log {job}/doors glue-up")
    for job, rh in (("desk", 66), ("kitchen", 68), ("vanity", 70)):
        at = f"2026-07-18 {rh - 58:02}:00"
        finisher.types(at, f"air 78F {rh}%", f"log {job}/doors brown")
    finisher.types("2026-07-20 08:00", "air 78F 70%", "mix top base:10 hardener:1")
    doors = " ".join(f"{job}/doors" for job in jobs)
    finisher.types("2026-07-20 08:10", f"log {doors} top --from mix-1")
    january = "2027-01-15 10:00"
    past = finisher.reads(january, "past vanity")
    with FC235.line(1):
        assert "brown Sat 18 Jul 2026 12:00 water-soluble dye, 78 °F, 70 %" in past
        assert "top Mon 20 Jul 08:10 conversion varnish" in past
    sought = "past 'solid panels, stained after assembly, RH over 60'"
    found = {f["part"] for f in finisher.asks(january, sought)["finishes"]}
    with FC235.line(2):
        assert found == {"vanity/panels", "kitchen/panels"}
    fault = finisher.reads(january, "fault vanity/doors pale-strips")
    with FC235.line(3):
        assert "mend now, while it is shrunk, in the heated months: its own colour, thin" in fault
        assert "no glue and no filler: the panel has to move" in fault
        assert "in the damp of summer the strip hides by itself" in fault
    with FC235.trap:
        assert "its colour went on after the glue-up" in fault
        assert "not so on hutch/panels, which is sound" in fault
        assert "others that were made so will show it too" in fault
    finisher.types(january, "note vanity/doors --next-time -t 'stain panels first'")
    copied = finisher.reads(january, "steps new next --like vanity/doors", "steps show next")
    as_it_was = finisher.reads(january, "steps new same --like kitchen/doors", "steps show same")
    with FC235.line(4):
        assert copied.startswith("next 1 brown (stain panels first) 2 glue-up 3 top")
        assert as_it_was.startswith("same 1 glue-up 2 brown 3 top")
