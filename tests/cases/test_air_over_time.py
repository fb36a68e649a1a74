"""Questions about the air of the hours to come, and of the places that a piece is carried to."""

from __future__ import annotations

from datetime import datetime

from tests.cases.finisher import Finisher
from tests.cases.test_films import hours, said, stage, why


def test_fc026_the_heater_goes_off_for_the_night_so_begin_in_the_morning(finisher: Finisher):
    """Warmth until it is tack-free, or coat in the morning: the cold halts it, dew fogs it.

    The trap reads one temperature, that of the evening.
    """
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
    evening = why(finisher, "2026-11-09 18:05", "canoe")
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
    assert "caution: dew may fog it" in done
    night = why(finisher, "2026-11-09 18:11", "canoe")
    in_the_cold = [
        hour
        for hour in night["clock"]["course"]
        if hour["air"] and hour["air"]["temperature_c"] < 10
    ]
    assert in_the_cold
    put_on = night["on_it"][0]["put_on"]
    tack_free = stage(finisher, "2026-11-09 18:11", "canoe", "tack-free")
    # 3 h of heat are left tonight; the rest has to wait until the heater runs again at seven.
    assert tack_free["high"] >= "2026-11-10T12:00:00Z"
    assert hours(put_on, tack_free["high"]) > 14


def test_fc028_an_oil_finish_at_four_degrees_gets_no_date(finisher: Finisher):
    """Too cold: another room, another day, or a finish that the air allows; insisted on, it shows.

    Here no class is published for less than 10 °C, so none is offered. The trap extrapolates a
    slow curve and promises a date.
    """
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
    cold = why(finisher, "2026-01-09 08:05", "case")
    assert cold["standing"]["answer"] == "not in this air"
    assert "4.4 °C is below the 10 °C that oil and varnish blend needs" in said(cold)
    (warm,) = cold["starts"]
    assert (warm["room"], warm["earliest"]) == ("basement", "2026-01-09T13:05:00Z")
    assert "only where nobody lives, eats or sleeps" in warm["caution"]
    assert warm.keys() == {
        "air", "caution", "earliest", "latest", "room", "tack_free", "turns"
    }  # fmt: skip
    assert cold["instead"] == []
    assert any("room usual" in words for words in cold["unknown"])
    assert "other kinds: finishlog class list" in finisher.types("2026-01-09 08:05", "why case")
    least = {line["key"]: line["min_c"] for line in finisher.asks("2026-01-09 08:05", "class list")}
    assert least["oil-varnish-blend"] == least["shellac-2lb"] == least["waterborne-clear"] == 10
    assert least["waterborne-two-part"] > 10
    beside = finisher.types("2026-01-09 08:05", "class list")
    assert "oil and varnish blend  from 10 °C, to 75 %" in beside

    # Whoever insists: it is logged, gets no date, and the mark stays.
    told = finisher.types("2026-01-09 08:10", "log back blend")
    assert "stop: 4.4 °C is below the 10 °C" in told
    finisher.types("2026-01-09 08:20", "log back wipe")
    recoat = stage(finisher, "2026-01-09 08:21", "back", "recoat")
    assert (recoat["low"], recoat["high"]) == (None, None)
    finisher.types("2026-01-12 08:00", "air 40F 60% --room garage")
    assert stage(finisher, "2026-01-12 08:01", "back", "pack")["high"] is None
    mark = "4.4 °C, 60 % (TOO COLD, it needs 10 °C)"
    assert mark in finisher.types("2026-01-12 08:02", "past cherry")
    assert mark in finisher.types("2027-01-12 08:02", "past cherry")

    # Later: a usual day that is warm enough at noon is not warm for long enough; a heater is.
    finisher.types("2026-01-12 08:03", "room usual garage 6:00:3C/70% 13:00:12C/50% 20:00:6C")
    here = why(finisher, "2026-01-12 08:04", "case")["starts"][0]
    assert (here["room"], here["earliest"]) == ("", None)
    finisher.types("2026-01-12 08:05", "heat tomorrow 6 till 22 21C --room garage")
    here = why(finisher, "2026-01-12 08:06", "case")["starts"][0]
    assert here["earliest"] == "2026-01-13T11:00:00Z"
    assert here["turns"] == "2026-01-14T03:00:00Z"


def test_fc032_too_hot_is_not_twice_as_fast(finisher: Finisher):
    """It skins before it flows out: a cool, early hour, thin coats, no sun; the wait stays.

    The trap: hotter is faster, so recoat in half the time.
    """
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-07-09 13:30",
        "product new varnish --class spar-varnish --tack-free 6-8h --label-air '22C 50%'",
        "room new yard",
        "steps new bright varnish*3",
        "part new boat/deck -n 2 --species mahogany --steps bright",
        "room usual yard 5:00:18C/85% 9:00:24C/65% 15:00:32C/42% 20:00:25C/60%",
        "air 33C 48%",
    )
    finisher.types("2026-07-09 14:30", "air 34C 46%")
    hot = why(finisher, "2026-07-09 14:31", "deck")
    assert hot["standing"]["answer"] == "not in this air"
    assert "34.0 °C is above the 32 °C limit for spar varnish" in said(hot)
    assert "a film skins over before it has flowed out" in said(hot)
    assert "its hours get no shorter; it rises" in said(hot)
    assert "thin coats, out of the sun, early in the morning" in said(hot)
    (start,) = hot["starts"]
    # Seven in the morning: no longer damp, not yet hot.
    assert start["earliest"] == "2026-07-10T11:00:00Z"

    finisher.types("2026-07-10 10:00", "air 28C 60%", "surface deck 27C")
    finisher.types("2026-07-10 11:00", "air 29C 55%", "surface deck 28C")
    warm = why(finisher, "2026-07-10 11:01", "deck")
    assert "29.0 °C is hot" in said(warm)
    assert "it rises" in said(warm)
    assert "stop:" not in finisher.types("2026-07-10 11:02", "log deck varnish")
    recoat = stage(finisher, "2026-07-10 11:03", "deck", "recoat")
    put_on = "2026-07-10T15:02:00+00:00"
    assert hours(put_on, recoat["low"]) >= 24
    assert hours(put_on, recoat["high"]) >= 48


def test_fc036_coated_outdoors_and_cured_indoors_counts_both_airs(finisher: Finisher):
    """A hull from the cooled garage sweats outdoors; light the garage, or begin well before dew.

    The trap: one temperature and humidity for a coat, those of the better place.
    """
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
    asked = why(finisher, "2026-07-09 09:05", "hull")
    assert "measure it first" in asked["starts"][0]["caution"]
    told = finisher.types("2026-07-09 09:06", "surface hull 72F")
    assert "it sweats, nothing may go on it" in told
    sweats = why(finisher, "2026-07-09 09:07", "hull")
    assert sweats["standing"]["answer"] == "not in this air"
    assert "wood at about 22.2 °C is less than 3 °C above the dew point of 25.0 °C" in said(sweats)
    assert "garage" in [start["room"] for start in sweats["starts"]]

    deck = why(finisher, "2026-07-09 09:08", "deck")
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
    cured = why(finisher, "2026-07-09 14:00", "deck")
    met = {round(hour["air"]["temperature_c"]) for hour in cured["clock"]["course"]}
    assert {22, 26} <= met
    history = finisher.types("2026-07-09 14:00", "history deck")
    assert "coat varnish" in history
    assert "moved to garage" in history


def test_fc051_stacked_wrapped_and_hard_are_three_dates(finisher: Finisher):
    """Stackable is not packable; a humid log and a glaze make it later; what may touch it is said.

    At least 48 h to packing, longer when humid or glazed (finishing-education page). Wrapped means
    fit to be shipped. The trap wraps what is dry to the touch.
    """
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
        part: {name: stage(finisher, at, part, name)["high"] for name in ("stack", "pack", "cured")}
        for part in ("plain", "humid", "glazed")
    }
    plain = dates["plain"]
    on = "2026-07-02T08:00:00+00:00"
    assert hours(on, plain["stack"]) == 24
    assert hours(on, plain["pack"]) == 48
    assert hours(on, plain["cured"]) >= 21 * 24
    assert stage(finisher, at, "plain", "touch")["high"] < plain["stack"] < plain["pack"]
    assert hours(plain["pack"], dates["humid"]["pack"]) > 24
    assert hours(plain["pack"], dates["glazed"]["pack"]) >= 0
    assert hours(on, dates["glazed"]["stack"]) >= 48

    touch = finisher.tries("2026-07-02 20:00", "check plain dry")
    assert "proves touch, dust-free, tack-free, no more" in touch.out
    assert stage(finisher, "2026-07-02 20:00", "plain", "pack")["high"] >= plain["pack"]
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
