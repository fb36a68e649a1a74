"""Questions about oily rags, dust and scrapings, and about heat near wet finish."""

from __future__ import annotations

from typing import Any

from tests.cases.finisher import Finisher

ROOM = ("room new shop --night 20C", "air 23C 50%")
POLY = "product new poly --class oil-polyurethane"


def rags(finisher: Finisher, when: str) -> Any:
    """Ask for the open rags."""
    return finisher.asks(when, "rags")


def test_fc059_one_rag_on_a_ledge_is_asked_for_until_it_is_dealt_with(finisher: Finisher):
    """At once, for one rag too: flat outdoors in one layer, or water, or a lidded metal can.

    The trap: a general word of caution in the help.
    """
    finisher.types(
        "2026-05-02 13:00",
        "product new teak --class oil-varnish-blend",
        *ROOM,
        "part new patio/bench",
    )
    said = finisher.types("2026-05-02 13:10", "log bench teak")
    assert "rags 1: teak, open since 13:10: spread flat outdoors, or water, or can" in said
    assert "even a single one" in said
    finisher.types("2026-05-02 13:20", "log bench wipe")
    for hour in ("13:30", "17:10", "23:00"):
        assert finisher.types(f"2026-05-02 {hour}", "leave").startswith("not yet:\nrags  teak")
        assert "OPEN RAGS" in finisher.types(f"2026-05-02 {hour}", "ready")
    assert finisher.tries("2026-05-02 17:10", "leave --exit-code").code == 1
    spread = finisher.types("2026-05-02 17:10", "rags spread")
    assert "one layer, outdoors, clear of buildings, fences and decks: still open" in spread


def test_fc060_rags_that_felt_dry_after_an_afternoon_stay_open(finisher: Finisher):
    """Until stiff and crisp right through: days, longer for a thick gel, and never by the clock.

    The trap: closed once the coat itself would be dry to the touch.
    """
    finisher.types(
        "2026-05-02 09:00",
        "product new gel --class gel-stain",
        "product new thin --class wiping-stain",
        *ROOM,
        "part new table/top",
        "part new table/leg",
        "log top gel",
        "log leg thin",
        "log top leg wipe",
        "rags spread",
    )
    felt = finisher.types("2026-05-02 14:00", "rags stiff")
    assert "still open" in felt
    thick, thin = rags(finisher, "2026-05-02 14:01")
    if thick["product"] != "gel":
        thick, thin = thin, thick
    assert thin["stiff_from"][:16] == "2026-05-04T08:00"
    assert thick["stiff_from"] > thin["stiff_from"]
    assert len(rags(finisher, "2026-06-02 09:00")) == 2, "a month closes nothing"
    asked = finisher.types("2026-05-06 09:00", "rags")
    assert asked.count("test them: stiff and crisp right through?") == 2
    finisher.types("2026-05-06 09:01", "rags stiff")
    assert rags(finisher, "2026-05-06 09:02") == []


def test_fc061_gloves_count_and_the_next_day_asks_again(finisher: Finisher):
    """Gloves, pads, brushes, paper, wool, dust; a day later is not too late to burn.

    The trap: only rags, and only that evening.
    """
    finisher.types(
        "2026-05-07 19:00",
        "product new deckstain --class wiping-stain",
        *ROOM,
        "part new deck/boards",
        "log boards deckstain",
    )
    named = finisher.types("2026-05-07 19:30", "rags")
    for what in ("Gloves", "pads", "brushes", "paper", "steel wool", "dust"):
        assert what in named
    assert "gloves, pads, brushes, paper" in finisher.types("2026-05-07 22:00", "leave")
    for screen in ("ready", "rags", "leave"):
        asked = finisher.types("2026-05-08 18:00", screen)
        assert "where are they, with gloves, pads, wool, paper and dust?" in asked


def test_fc064_scrapings_of_a_young_film_are_worse_than_rags(finisher: Finisher):
    """A loose heap of fresh urethane goes under water in metal, outdoors, and is watched.

    The trap: caution only when something is put on.
    """
    finisher.types("2026-05-02 08:00", POLY, *ROOM, "part new kitchen/floor", "log floor poly")
    finisher.types("2026-05-03 18:55", "air 23C 50%", "log floor poly", "rags gone")
    assert rags(finisher, "2026-05-04 12:00") == []
    said = finisher.types("2026-05-04 13:00", "off floor --scraped")
    assert "rags 1: poly (scrapings)" in said
    assert "into water in a lidded metal can outdoors" in said
    assert "fires start 1 h to 3 days later, watch all evening" in said
    (heap,) = rags(finisher, "2026-05-04 18:30")
    assert (heap["waste"], heap["overdue"]) == (["scrapings"], True)
    assert "not yet:" in finisher.types("2026-05-04 18:30", "leave")


def test_fc065_dust_of_a_coat_that_never_dried(finisher: Finisher):
    """Empty the bag often, outdoors, into water; nothing of it stays in machine or house.

    The trap: sanding is harmless.
    """
    finisher.types("2026-01-03 10:00", POLY, *ROOM, "part new mantel/shelf", "log shelf poly")
    finisher.types("2026-01-03 18:00", "rags gone")
    finisher.types("2026-01-13 09:00", "air 18C 50%", "check shelf gums")
    said = finisher.types("2026-01-13 10:00", "log shelf sand --grit P80")
    assert "empty the bag often, outdoors, into water" in said
    assert "from a film that was still soft: it heats more than rags do" in said
    assert "rags 1: poly (dust and sander bag), open since 10:00: into water" in said
    (bag,) = rags(finisher, "2026-01-13 11:30")
    assert (bag["dust"], bag["overdue"]) == (True, True)


def test_dust_of_a_film_that_only_is_young_counts_too(finisher: Finisher):
    """Younger than it is hard: also when no check found it soft; an old film leaves wood dust."""
    finisher.types("2026-01-03 10:00", POLY, *ROOM, "part new mantel/shelf", "log shelf poly")
    finisher.types("2026-01-03 18:00", "rags gone")
    finisher.types("2026-01-23 10:00", "log shelf sand")
    assert [item["dust"] for item in rags(finisher, "2026-01-23 10:01")] == [True]
    finisher.types("2026-01-23 18:00", "rags gone")
    finisher.types("2026-03-23 10:00", "log shelf sand")
    assert rags(finisher, "2026-03-23 10:01") == []


# --- heat, and whom it may harm ---------------------------------------------------------------


def test_fc068_whoever_is_told_to_warm_the_room_is_told_with_what_not(finisher: Finisher):
    """Warm it first, the source outside the vapour: no flame, no glowing wire, no blower running.

    The trap: too cold, add heat, and not a word more.
    """
    finisher.types("2026-01-03 09:00", POLY, "part new house/floor", "air 8C 50%")
    coat = finisher.types("2026-01-03 10:00", "log floor poly")
    assert (
        "warm the room and the part first: no flame, glowing wire or blower in the vapour" in coat
    )
    assert "put out pilots, heaters" in coat
    leaving = finisher.types("2026-01-03 22:00", "leave")
    assert "wants 10 °C" in leaving
    assert "no flame, no glowing element, no fan heater near wet solvent finish" in leaving
    assert "is the heating's blower off, and its return air shut?" in leaving
    wrinkled = finisher.types("2026-01-04 10:00", "fault floor wrinkle")
    assert "to warm it no flame, glowing wire or blower in the vapour" in wrinkled
    for each in (*coat.splitlines(), *wrinkled.splitlines()):
        assert "warm the" not in each or "no flame" in each
