"""The air of the hours to come, and of the places that a piece is carried to."""

from __future__ import annotations

from datetime import datetime

from tests.finisher import Finisher, hours, said


def test_a_usual_night_that_freezes_moves_the_start_to_the_morning(finisher: Finisher):
    """With the usual day and the heat on record: the cold halts it, dew fogs it."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-09 18:00",
        "product new varnish --class spar-varnish --tack-free 6-8h --label-air '20C 50%'",
        "room new shed",
        "steps new bright varnish*3",
        "part new boat/canoe --species cedar --steps bright",
        "room usual shed 5:00:-1C/70% 9:00:4C 14:00:9C/50% 18:00:5C 23:00:1C",
        "air 20C 50%",
        "heat today 16 till 21 20C",
        "heat tomorrow 7 till 21 20C",
        "surface canoe 19C",
    )
    evening = finisher.why("2026-11-09 18:05", "canoe")
    assert evening["standing"]["answer"] == "test first"
    assert "the room goes to -1 °C before it is tack-free" in said(evening)
    assert "dew may fog it before it is tack-free" in said(evening)
    assert "the dew point of this air is 9.3 °C" in said(evening)
    assert "keep the heat on, or coat in the morning" in said(evening)
    (start,) = evening["starts"]
    assert start["earliest"] == "2026-11-10T12:00:00Z"
    # Eight hours before the heater goes off.
    assert start["latest"] == "2026-11-10T18:00:00Z"
    assert start["tack_free"] <= start["turns"] == "2026-11-11T02:00:00Z"
    asked = finisher.types("2026-11-09 18:05", "why canoe")
    assert "start    here from Tue 07:00, Tue 13:00 at the latest: tack-free before" in asked

    done = finisher.types("2026-11-09 18:10", "log canoe varnish")
    assert "caution: canoe: dew may fog it" in done
    night = finisher.why("2026-11-09 18:11", "canoe")
    in_the_cold = [
        hour
        for hour in night["clock"]["course"]
        if hour["air"] and hour["air"]["temperature_c"] < 10
    ]
    assert in_the_cold
    put_on = night["on_it"][0]["put_on"]
    tack_free = finisher.stage("2026-11-09 18:11", "canoe", "tack-free")
    # 3 h of heat are left tonight; the rest has to wait until the heater runs again at seven.
    assert tack_free["high"] >= "2026-11-10T12:00:00Z"
    assert hours(put_on, tack_free["high"]) > 14


def test_an_oil_finish_at_four_degrees_gets_no_date(finisher: Finisher):
    """A warmer room that was read is offered; insisted on, the mark stays in the record."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-01-09 08:00",
        "product new blend --class oil-varnish-blend --tack-free 8h --label-air '20C 50%'",
        "product new clear --class waterborne-clear",
        "product new shellac --class shellac-2lb",
        "room new garage",
        "room new basement",
        "steps new warm blend*3",
        "part new shelves/case --species cherry --steps warm --room garage",
        "part new shelves/back --species cherry --steps warm --room garage",
        "air 40F 60% --room garage",
        "air 66F 45% --room basement",
    )
    cold = finisher.why("2026-01-09 08:05", "case")
    assert cold["standing"]["answer"] == "not in this air"
    assert "4.4 °C is below the 10 °C that oil and varnish blend needs" in said(cold)
    (warm,) = cold["starts"]
    assert (warm["room"], warm["earliest"]) == ("basement", "2026-01-09T13:05:00Z")
    assert "only where nobody lives, eats or sleeps" in warm["caution"]
    assert warm.keys() == {
        "air", "caution", "earliest", "early", "latest", "room", "tack_free", "turns"
    }  # fmt: skip
    assert cold["instead"] == []
    assert any("room usual" in words for words in cold["unknown"])
    assert "other kinds: finishlog class list" in finisher.types("2026-01-09 08:05", "why case")
    least = {line["key"]: line["min_c"] for line in finisher.asks("2026-01-09 08:05", "class list")}
    assert least["oil-varnish-blend"] == least["shellac-2lb"] == 10
    assert least["waterborne-two-part"] == least["waterborne-clear"] > 10
    beside = finisher.types("2026-01-09 08:05", "class list")
    assert "oil and varnish blend  from 10 °C, to 75 %" in beside

    # Whoever insists: it is logged, gets no date, and the mark stays.
    told = finisher.types("2026-01-09 08:10", "log back blend")
    assert "stop: back: 4.4 °C is below the 10 °C" in told
    finisher.types("2026-01-09 08:20", "log back wipe")
    recoat = finisher.stage("2026-01-09 08:21", "back", "recoat")
    assert (recoat["low"], recoat["high"]) == (None, None)
    finisher.types("2026-01-12 08:00", "air 40F 60% --room garage")
    assert finisher.stage("2026-01-12 08:01", "back", "pack")["high"] is None
    mark = "4.4 °C, 60 % (TOO COLD, it needs 10 °C)"
    assert mark in finisher.types("2026-01-12 08:02", "past cherry")
    assert mark in finisher.types("2027-01-12 08:02", "past cherry")

    # Later: a usual day that is warm enough at noon is not warm for long enough; a heater is.
    finisher.types("2026-01-12 08:03", "room usual garage 6:00:3C/70% 13:00:12C/50% 20:00:6C")
    here = finisher.why("2026-01-12 08:04", "case")["starts"][0]
    assert (here["room"], here["earliest"]) == ("", None)
    finisher.types("2026-01-12 08:05", "heat tomorrow 6 till 22 21C --room garage")
    here = finisher.why("2026-01-12 08:06", "case")["starts"][0]
    assert here["earliest"] == "2026-01-13T11:00:00Z"
    assert here["turns"] == "2026-01-14T03:00:00Z"


def test_wood_colder_than_the_dew_point_sweats_and_the_clock_follows_a_move(finisher: Finisher):
    """The latest start lies before the air turns damp."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-07-09 09:00",
        "product new varnish --class spar-varnish --tack-free 6-8h --label-air '22C 50%'",
        "room new garage",
        "room new yard",
        "steps new bright varnish*3",
        "part new boat/hull --species mahogany --room garage --steps bright",
        "part new boat/deck --species mahogany --room yard --steps bright",
        "room usual yard 5:00:20C/90% 10:00:26C/65% 15:00:31C/50% 19:00:27C/60% 23:00:22C/90%",
        "air 88F 70% --room yard",
        "air 72F 50% --room garage",
        "move hull yard",
    )
    asked = finisher.why("2026-07-09 09:05", "hull")
    assert "measure it first" in asked["starts"][0]["caution"]
    told = finisher.types("2026-07-09 09:06", "surface hull 72F")
    assert "it sweats, nothing may go on it" in told
    sweats = finisher.why("2026-07-09 09:07", "hull")
    assert sweats["standing"]["answer"] == "not in this air"
    assert "wood at about 22.2 °C is less than 3 °C above the dew point of 25 °C" in said(sweats)
    assert "garage" in [start["room"] for start in sweats["starts"]]

    deck = finisher.why("2026-07-09 09:08", "deck")
    start = deck["starts"][0]
    assert start["room"] == ""
    # Tack-free before the air gets damp again.
    assert start["latest"] < start["tack_free"] <= start["turns"]
    latest = datetime.fromisoformat(start["latest"])
    assert latest < datetime.fromisoformat("2026-07-09T18:00:00Z")
    assert "at the latest: tack-free before the air turns on it" in finisher.types(
        "2026-07-09 09:08", "why deck"
    )
    finisher.types("2026-07-09 10:00", "air 79F 60% --room yard", "surface deck 77F")
    assert "stop:" not in finisher.types("2026-07-09 10:00", "log deck varnish")
    finisher.types("2026-07-09 12:00", "move deck garage")
    finisher.types("2026-07-09 13:00", "air 72F 50% --room garage")
    cured = finisher.why("2026-07-09 14:00", "deck")
    met = {round(hour["air"]["temperature_c"]) for hour in cured["clock"]["course"]}
    assert {22, 26} <= met
    history = finisher.types("2026-07-09 14:00", "history deck")
    assert "coat varnish" in history
    assert "moved to garage" in history
