"""Questions about oily rags, dust and scrapings."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

AIR = "air 23C 50%"
POLY = "product new poly --class oil-polyurethane"

FC059 = Question(
    "one oily rag on a ledge: does it matter, and when",
    shows=(
        "with the coat comes the question of its rags, open until it is answered",
        "asked again on leaving, and by the next screen",
        "said of a single rag too",
    ),
    trap="a general word of caution in the help",
)


def test_fc059_one_rag_on_a_ledge_is_asked_for_until_it_is_dealt_with(finisher: Finisher):
    finisher.types(
        "2026-05-02 13:00",
        "product new teak --class oil-varnish-blend",
        AIR,
        "part new patio/bench",
    )
    said = finisher.reads("2026-05-02 13:10", "log bench teak")
    with FC059.line(1):
        assert "rags 1: teak, open since 13:10" in said
        assert "spread flat outdoors, or water, or can" in said
        assert "OPEN RAGS 1 teak" in finisher.reads("2026-05-09 13:10", "ready")
    finisher.types("2026-05-02 13:20", "log bench wipe")
    with FC059.line(2):
        for hour in ("13:30", "17:10", "23:00"):
            assert finisher.reads(f"2026-05-02 {hour}", "leave").startswith("not yet: rags teak")
            assert "OPEN RAGS 1 teak" in finisher.reads(f"2026-05-02 {hour}", "ready")
    with FC059.line(3):
        assert "even a single one" in said
    spread = finisher.reads("2026-05-02 17:10", "rags spread")
    with FC059.trap:
        assert "one layer, outdoors, clear of buildings, fences and decks: still open" in spread
        assert "patio/bench" in finisher.types("2026-05-02 17:11", "rags")


FC060 = Question(
    "rags that felt dry after five hours outdoors: how long must they dry",
    shows=(
        "open for a day or two at the least, and asked: stiff and crisp right through",
        "longer for a thick gel",
        "nothing closes them but a person",
    ),
    trap="closed once the coat itself would be dry to the touch",
)


def test_fc060_rags_that_felt_dry_after_an_afternoon_stay_open(finisher: Finisher):
    finisher.types(
        "2026-05-02 09:00",
        "product new gel --class gel-stain",
        "product new thin --class wiping-stain",
        AIR,
        "part new table/top",
        "part new table/leg",
        "log top gel",
        "log leg thin",
        "log top leg wipe",
        "rags spread",
    )
    with FC060.trap:
        assert "still open" in finisher.types("2026-05-02 14:00", "rags stiff")
        assert "OPEN RAGS" in finisher.types("2026-05-02 14:01", "ready")
    with FC060.line(1):
        for hours_later in ("2026-05-03 09:00", "2026-05-04 08:00"):
            assert "stiff and crisp right through?" not in finisher.types(hours_later, "rags")
        asked = finisher.types("2026-05-12 09:00", "rags")
        assert asked.count("stiff and crisp right through?") == 2
    with FC060.line(2):
        first, second = finisher.asks("2026-05-02 14:01", "rags")
        opens = {first["product"]: first["stiff_from"], second["product"]: second["stiff_from"]}
        assert opens["thin"] < opens["gel"]
    with FC060.line(3):
        assert "OPEN RAGS" in finisher.types("2026-06-02 09:00", "ready")
        assert finisher.types("2026-06-02 09:00", "rags").count("stiff and crisp") == 2
        finisher.types("2026-06-02 09:01", "rags stiff")
        assert "OPEN RAGS" not in finisher.types("2026-06-02 09:02", "ready")


FC061 = Question(
    "gloves on the ground, a day later: do only rags matter",
    shows=("gloves, pads, wool, paper and dust are named", "the next day it is asked again"),
    trap="only rags, and only that evening",
)


def test_fc061_gloves_count_and_the_next_day_asks_again(finisher: Finisher):
    finisher.types(
        "2026-05-07 19:00",
        "product new deckstain --class wiping-stain",
        AIR,
        "part new deck/boards",
        "log boards deckstain",
    )
    named = finisher.types("2026-05-07 19:30", "rags")
    with FC061.line(1):
        for what in ("Gloves", "pads", "brushes", "paper", "steel wool", "dust"):
            assert what in named
        assert "gloves, pads, brushes, paper" in finisher.types("2026-05-07 22:00", "leave")
    with FC061.line(2):
        for screen in ("ready", "rags", "leave"):
            asked = finisher.types("2026-05-08 18:00", screen)
            assert "where are they, with gloves, pads, wool, paper and dust?" in asked
    with FC061.trap:
        assert "gloves" in finisher.types("2026-05-14 18:00", "ready")


FC064 = Question(
    "scrapings of half-cured urethane in the bin: is a removed finish a hazard",
    shows=(
        "a young oil film scraped or stripped off is waste that stays open",
        "the hours to watch, through the evening at least",
    ),
    trap="safety only when something is put on",
)


def test_fc064_scrapings_of_a_young_film_are_worse_than_rags(finisher: Finisher):
    finisher.types("2026-05-02 08:00", POLY, AIR, "part new kitchen/floor", "log floor poly")
    finisher.types("2026-05-03 18:55", AIR, "log floor poly", "rags gone")
    with FC064.trap:
        assert "OPEN RAGS" not in finisher.types("2026-05-04 12:00", "ready")
        said = finisher.reads("2026-05-04 13:00", "off floor --scraped")
        assert "safety:" in said
    with FC064.line(1):
        assert "rags 1: poly (scrapings)" in said
        assert "into water in a lidded metal can outdoors" in said
        assert "OPEN RAGS 1 poly (scrapings)" in finisher.reads("2026-05-04 18:30", "ready")
    with FC064.line(2):
        assert "fires start 1 h to 3 days later, watch all evening" in said
        assert "OVERDUE" in finisher.types("2026-05-04 18:30", "ready")
        assert finisher.types("2026-05-04 18:30", "leave").startswith("not yet:")


FC065 = Question(
    "sanding off a coat that never dried: what of the dust",
    shows=(
        "strong words on the dust of a film found soft, or younger than it is hard",
        "the bag is to be emptied",
    ),
    trap="sanding is harmless",
)


def test_fc065_dust_of_a_coat_that_never_dried(finisher: Finisher):
    finisher.types("2026-01-03 10:00", POLY, AIR, "part new mantel/shelf", "log shelf poly")
    finisher.types("2026-01-03 18:00", "rags gone")
    finisher.types("2026-01-13 09:00", "air 18C 50%", "check shelf gums")
    said = finisher.reads("2026-01-13 10:00", "log shelf sand")
    with FC065.line(1):
        assert "from a film that was still soft: it heats more than rags do" in said
        assert "rags 1: poly (dust and sander bag), open since 10:00: into water" in said
    with FC065.line(2):
        assert "empty the bag often, outdoors, into water" in said
    with FC065.trap:
        later = finisher.reads("2026-01-13 11:30", "ready")
        assert "poly (dust and sander bag): mantel/shelf open since 10:00: OVERDUE" in later


def test_dust_of_a_film_that_only_is_young_counts_too(finisher: Finisher):
    """Younger than it is hard: also when no check found it soft; an old film leaves wood dust."""
    finisher.types("2026-01-03 10:00", POLY, AIR, "part new mantel/shelf", "log shelf poly")
    finisher.types("2026-01-03 18:00", "rags gone")
    finisher.types("2026-01-23 10:00", "log shelf sand")
    assert [item["dust"] for item in finisher.asks("2026-01-23 10:01", "rags")] == [True]
    finisher.types("2026-01-23 18:00", "rags gone")
    finisher.types("2026-03-23 10:00", "log shelf sand")
    assert finisher.asks("2026-03-23 10:01", "rags") == []


FC232 = Question(
    "the wiping towels were washed, tumble-dried and stacked: is that the end of them",
    shows=(
        "washed leaves them open",
        "no dryer, not folded or stacked warm, hung singly outdoors",
        "stiff, or under water and taken away, ends it",
        "cloths of shellac draw no such alarm",
    ),
    trap="washed counts as done with",
)


def test_fc232_washed_is_not_free_of_oil(finisher: Finisher):
    finisher.types(
        "2026-11-01 18:00",
        "product new shellac --class shellac-2lb",
        "product new linseed --class boiled-linseed-oil",
        "room new shop",
        "part new chest/lid",
        "part new chest/case",
        AIR,
        "log lid shellac",
    )
    shellac = finisher.tries("2026-11-01 19:00", "rags washed")
    with FC232.line(4):
        assert "no rags are open" in shellac.err
        assert "dryer" not in shellac.err
    finisher.types("2026-11-01 20:00", "log case linseed")
    washed = finisher.tries("2026-11-02 20:00", "rags 'washed 40 C, tumble dryer, folded warm'")
    rags = finisher.reads("2026-11-02 20:01", "rags")
    with FC232.line(1):
        assert washed.code == 2
        assert "1 linseed: chest/case open since Sun 20:00: OVERDUE" in rags
    with FC232.line(2):
        for what in ("no dryer", "never folded or stacked warm", "hang them singly outdoors"):
            assert what in washed.err
    with FC232.trap:
        assert "OPEN RAGS" in finisher.reads("2026-11-02 20:02", "ready")
        assert finisher.reads("2026-11-02 20:02", "leave").startswith("not yet: rags linseed")
    finisher.types("2026-11-02 20:10", "rags spread")
    with FC232.line(3):
        assert "still open" in finisher.types("2026-11-02 20:30", "rags stiff")
        finisher.types("2026-11-30 20:00", "rags stiff")
        assert "OPEN RAGS" not in finisher.types("2026-11-30 20:01", "rags")
        finisher.types("2026-12-01 20:00", AIR, "log case linseed", "rags water")
        assert "under water since 20:00" in finisher.types("2026-12-01 20:01", "rags")
        finisher.types("2026-12-02 09:00", "rags gone")
        assert "OPEN RAGS" not in finisher.types("2026-12-02 09:01", "rags")


FC063 = Question(
    "a clear oil stain burned at three at night: which finishes need the rag drill",
    shows=(
        "whatever dries by oxidation, and what nobody knows, opens rags that no time closes",
        "cloths of solvent are told of in other words than those that heat by themselves",
    ),
    trap="only what is called linseed",
)


def test_fc063_what_dries_by_oxidation_or_may_do_so_needs_the_rag_drill(finisher: Finisher):
    finisher.types(
        "2026-06-01 19:00",
        "product new deck-stain --class wiping-stain",
        "product new gel --class gel-stain",
        "product new teak --class oil-varnish-blend",
        "product new tung --class tung-oil",
        "product new varnish --class alkyd-varnish",
        "product new poly --class oil-polyurethane",
        "product new no-label --class unknown",
        "product new sealer --class shellac-2lb",
        "product new nitro --class lacquer-sprayed",
        "product new water --class waterborne-clear",
        "part new deck/cover --count 6",
        "part new shelf/board",
        "part new door/panel",
        "part new box/lid",
    )
    drill = ("deck-stain", "gel", "teak", "tung", "varnish", "poly", "no-label")
    said = {each: finisher.types("2026-06-01 20:00", f"log cover {each}") for each in drill}
    at_night = finisher.reads("2026-06-02 03:00", "rags")
    with FC063.line(1):
        assert "even a single one, can heat and burn without a spark" in said["deck-stain"]
        for n, each in enumerate(drill, 1):
            assert f"rags {n}: {each}, open since 20:00" in said[each]
            assert f"{n} {each}: deck/cover ×6 open since Mon 20:00: OVERDUE" in at_night
        assert finisher.reads("2026-06-02 03:01", "leave").startswith("not yet: rags deck-stain")
    with FC063.trap:
        assert "linseed" not in at_night
        no_such = finisher.tries("2026-06-02 03:02", "product new clear --class 'mystery wipe'")
        assert no_such.code == 3
        assert "where nothing on the can tells: unknown" in no_such.err
    finisher.types("2026-06-02 03:10", "rags water")
    finisher.types("2026-06-03 19:00", "log board sealer --method wipe", "log lid water")
    burns = finisher.reads("2026-06-03 19:10", "leave")
    with FC063.line(2):
        assert "solvent rags of sealer: they do not heat by themselves, a spark lights" in burns
        assert "water" not in burns.partition("solvent rags of")[2].partition("guns")[0]
        assert "can heat and burn without a spark" not in burns
        assert "sealer" not in finisher.types("2026-06-03 19:11", "rags")
    finisher.types("2026-06-04 19:00", "log panel nitro --method spray")
    with FC063.line(2):
        assert "solvent rags" not in finisher.types("2026-06-04 19:10", "leave")
