"""The wood itself on the command line: moisture, surface, movement; logged, shown, put right.

The shop is invented. Figures: USDA Wood Handbook, FPL-GTR-282 (2021) equation 4-5 and FPL-GTR-190
(2010) chapter 13 with its worked example; 12 % before finishing: UFGS 09995.
"""

from __future__ import annotations

import re
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from run import Finishlog, furnished

from finishlog.asks.look.entry_words import Words
from finishlog.cli.typed.figures.amounts import width
from finishlog.cli.typed.figures.measures import moisture, moisture_or_air
from finishlog.core.air.psychrometrics import Air
from finishlog.core.log import entries as records
from finishlog.core.log.when import at
from finishlog.core.measure.units import Length, Temperature
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Room, Shop
from finishlog.errors import UsageFault
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.worded_in import in_si


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """The finishing room is at 17.2 °C and 58 %: wood settles at 10.7 % there."""
    return furnished(tmp_path)


def act_of(shop: Finishlog, *words: str) -> str:
    return str(shop.did(*words, "--json").document["answer"]["act"])


def next_coat(shop: Finishlog, part: str = "doors") -> dict[str, Any]:
    """How the parts stand once they are sanded: their next step is a coat."""
    return shop.did("when", part, "--json").document["answer"]["lines"][0]["standing"]


def test_moisture_is_held_against_the_air_of_the_room(shop: Finishlog):
    said = shop.did("moisture", "doors", "11%").out
    assert "doors ×2: wood at 11 % moisture" in said
    assert "finishing, 17.2 °C, 58 %: wood settles at 10.7 %: it is at home here" in said
    assert "caution" not in said
    assert "2.7 points drier, and will swell" in shop.did("moisture", "leg", "8").out


def test_wet_wood_is_warned_of_at_once(shop: Finishlog):
    said = shop.did("moisture", "doors", "14.5%").out
    assert "3.8 points wetter, and will shrink" in said
    assert "caution: wood at 14.5 % moisture: over the 12 % to finish at" in said


def test_a_coat_waits_for_wet_wood_and_is_warned_of(shop: Finishlog):
    shop.did("moisture", "doors", "14%", "--at", "2h ago")
    shop.did("log", "doors", "sand", "--at", "1h ago")
    before = next_coat(shop)
    assert (before["answer"], before["operation"]) == ("waits for", "coat")
    assert before["high"] is None
    assert before["because"].startswith("wood at 14 % moisture")
    assert "caution: doors ×2: wood at 14 % moisture" in shop.did("log", "doors", "sealer").out


def test_a_plan_holds_no_coat_on_wet_wood(shop: Finishlog):
    shop.did("log", "doors", "sand", "--at", "3h ago")
    shop.did("shop", "hours", "mon-fri 18:00-21:00")
    assert "the wood to dry" not in shop.did("plan", "cabinet").out
    shop.did("moisture", "doors", "19%", "--at", "2h ago")
    said = shop.did("plan", "cabinet").out
    assert "the wood to dry to 12 %: wood at 19 % moisture" in " ".join(said.split())
    shop.did("moisture", "doors", "10%", "--at", "1h ago")
    assert "the wood to dry" not in shop.did("plan", "cabinet").out


def test_no_glue_on_wood_too_wet_nor_on_parts_far_apart(shop: Finishlog):
    """12 % before finishing: UFGS 09995; parts of a joint 2 points apart: common practice."""
    shop.did("moisture", "leg", "19%")
    shop.did("moisture", "seat", "10%")
    said = " ".join(shop.did("when", "stool").out.split())
    assert "waits for leg: wood at 19 % moisture: over the 12 % to finish at" in said
    shop.did("moisture", "leg", "7%", now="2026-12-06T12:00:00+00:00")
    said = " ".join(shop.did("why", "stool", now="2026-12-06T12:00:00+00:00").out.split())
    assert "seat at 10 %, leg at 7 %: 3.0 % apart" in said


def test_the_act_behind_it_is_named(shop: Finishlog):
    act = act_of(shop, "moisture", "doors", "14%", "--at", "2h ago")
    shop.did("log", "doors", "sand")
    assert int(act) in next_coat(shop)["acts"]
    assert "UFGS 09995" in shop.did("why", "doors").out


def test_a_moisture_is_taken_back_and_amended(shop: Finishlog):
    shop.did("log", "doors", "sand", "--at", "3h ago")
    act = act_of(shop, "moisture", "doors", "14%", "--at", "2h ago")
    assert next_coat(shop)["answer"] == "waits for"
    undone = act_of(shop, "undo", act)
    assert next_coat(shop)["answer"] == "go"
    shop.did("undo", undone)
    assert next_coat(shop)["answer"] == "waits for"
    said = shop.did("amend", act, "--moisture", "9.5%").out
    assert f"act {act} amended (wood)" in said
    assert next_coat(shop)["answer"] == "go"
    assert "wood at 9.5 % moisture" in shop.did("history", "doors").out


def test_an_amended_time_or_part_keeps_the_reading(shop: Finishlog):
    act = act_of(shop, "moisture", "doors", "14%")
    shop.did("amend", act, "--at", "2h ago")
    shop.did("amend", act, "--on", "door-stop")
    history = shop.did("history", "door-stop").out
    assert "wood at 14 % moisture" in history


def test_what_was_not_measured_is_not_amended(shop: Finishlog):
    act = act_of(shop, "surface", "doors", "14C")
    assert shop("amend", act, "--moisture", "9%").code == 2
    shop.did("amend", act, "--surface", "12C")
    assert "surface 12 °C" in shop.did("history", "doors").out
    assert "surface 14 °C" in shop.did("history", "doors").out


def test_one_face_alone(shop: Finishlog):
    shop.did("moisture", "doors@back", "11%")
    assert "cabinet/doors ×2, back: wood at 11 % moisture" in shop.did("history", "doors").out
    shop.did("moisture", "doors", "12%", "--face", "front")
    assert "front: wood at 12 % moisture" in shop.did("history", "doors").out


def test_a_meter_out_of_its_range_is_said(shop: Finishlog):
    assert "a meter is good from 4 to 30 %" in shop.did("moisture", "leg", "3.5%").out
    assert "a meter is good" not in shop.did("moisture", "leg", "8%").out


def test_a_room_that_was_not_read_says_so(shop: Finishlog):
    shop.did("room", "new", "attic")
    shop.did("move", "doors", "attic")
    for words in (("moisture", "doors", "11%"), ("surface", "doors", "14C")):
        said = shop.did(*words).out
        assert "the air of attic was not read in the last day" in said
        assert "finishlog air 17C 58% --room attic" in said


def test_what_wood_settles_at_is_told_alone(shop: Finishlog):
    before = shop.database.read_bytes()
    assert "20 °C, 50 %: wood settles at 9.3 %" in shop.did("moisture", "--air", "20C 50%").out
    assert shop.database.read_bytes() == before


def test_a_cold_surface_sweats(shop: Finishlog):
    """17.2 °C and 58 %: dew point 8.9 °C; a coat wants 3 °C more (MIL-HDBK-1110)."""
    assert "dew point 8.9 °C: it is 5.1 °C above (at least 3 °C)" in (
        shop.did("surface", "doors", "14C").out
    )
    assert "1.1 °C above, too near" in shop.did("surface", "doors", "10C").out
    assert "it sweats" in shop.did("surface", "doors", "-2C").out


def test_a_cold_surface_holds_up_a_coat(shop: Finishlog):
    shop.did("log", "doors", "sand", "--at", "1h ago")
    assert next_coat(shop)["answer"] == "go"
    shop.did("surface", "doors", "10C")
    assert next_coat(shop)["answer"] == "not in this air"


def test_degrees_are_shown_as_the_person_wants_them(shop: Finishlog):
    shop.did("settings", "temperature", "F")
    said = shop.did("surface", "doors", "57").out
    assert "surface 57 °F" in said
    assert "(at least 5.4 °F)" in said
    assert "surface 57 °F" in shop.did("history", "doors").out


def test_the_board_of_the_handbook(shop: Finishlog):
    """Page 13-17: a flat-sawn 9.15 in board from 8 to 11 % grows by 0.067 in, to 9.217 in."""
    said = shop.did("movement", "white fir", "9.15in", "--from", "8%", "--to", "11%").out
    assert "0.067 in wider, ends 9.217 in" in said
    assert "estimate" not in said


def test_two_seasons_as_air(shop: Finishlog):
    line = ("movement", "cherry", "300mm", "--from", "20C 35%", "--to", "22C 65%")
    there = shop.did(*line, "--json").document["answer"]
    assert there["start"]["moisture_pct"] == pytest.approx(6.96, abs=0.01)
    assert there["change_mm"] == pytest.approx(
        300 * 0.00248 * (there["end"]["moisture_pct"] - there["start"]["moisture_pct"])
    )
    assert "20 °C, 35 %: wood settles at 7.0 %" in shop.did(*line).out
    back = shop.did("movement", "cherry", "300mm", "--from", "22C 65%", "--to", "20C 35%", "--json")
    assert back.document["answer"]["change_mm"] == pytest.approx(-there["change_mm"])


def test_quarter_sawn_moves_less(shop: Finishlog):
    line = ("movement", "ash", "12 in", "--from", "11", "--to", "8", "--json")
    flat, quarter = shop.did(*line), shop.did(*line, "--radial")
    flat_mm, quarter_mm = (a.document["answer"]["change_mm"] for a in (flat, quarter))
    assert flat_mm < quarter_mm < 0


def test_an_estimate_says_that_it_is_one(shop: Finishlog):
    line = ("movement", "ash", "300mm", "--from", "8%", "--to")
    assert "18 % is outside 6 to 14 %" in shop.did(*line, "18%").out
    assert "outside the published table" in shop.did(*line, "20C 97%").out
    assert "no change, ends 300 mm" in shop.did(*line, "8%").out


def test_movement_makes_no_database(tmp_path: Path):
    program = Finishlog(tmp_path)
    program.did("movement", "ash", "300mm", "--from", "8%", "--to", "11%")
    program.did("moisture", "--air", "20C 50%")
    assert not program.database.exists()


@every_row(
    ("typed", "mm", "unit"),
    [
        # NIST SP 811, appendix B: an inch is 25.4 mm, a foot 304.8 mm.
        ("300mm", 300, Length.MILLIMETRE),
        ("30 cm", 300, Length.CENTIMETRE),
        ("0,3 m", 300, Length.METRE),
        ("9.15in", 232.41, Length.INCH),
        ('9 1/4"', 234.95, Length.INCH),
        ("9-1/4in", 234.95, Length.INCH),
        ("half a foot", 152.4, Length.FOOT),
        ("1 ft", 304.8, Length.FOOT),
    ],
)
def test_widths_as_people_type_them(typed: str, mm: float, unit: Length):
    assert width(typed) == (pytest.approx(mm), unit)


@every_row("typed", ["", "wide", "300", "3 kg", "0 mm", "-3 mm", "9 um", "1000 m"])
def test_no_width_is_refused(typed: str):
    with pytest.raises(UsageFault):
        width(typed)


@pytest.mark.parametrize("typed", ["11%", "11", " 11 % ", "11 %MC", "11,0%"])
def test_moistures_as_people_type_them(typed: str):
    assert moisture(typed) == 11


@pytest.mark.parametrize("typed", ["", "wet", "11C", "-3%", "201%!", "2%", "70%"])
def test_no_moisture_is_refused(typed: str):
    with pytest.raises(UsageFault):
        moisture(typed)


def test_an_unlikely_moisture_is_insisted_on():
    assert moisture("70%!") == 70
    assert moisture_or_air("2%!", Temperature.CELSIUS) == 2
    assert moisture_or_air("68F 50%", Temperature.CELSIUS) == Air(pytest.approx(20), 50)


def test_history_says_what_came_from_a_logger_and_from_a_heater():
    shop = Shop((), (), {}, {1: Room(1, "finishing")}, ShopHours((), "UTC"))
    words = Words(shop, load_facts())
    moment = datetime(2026, 11, 24, 18, tzinfo=UTC)
    head: dict[str, Any] = {"id": 1, "act": 1, "when": at(moment), "typed_at": moment}
    told = (
        records.AirImported(**head, room=1, file_name="shop.csv", count=240),
        records.AirImported(**head, room=1, file_name="shop.csv", count=1),
        records.Heated(**head, room=1, temperature_c=21.0),
        records.Heated(**head, room=2),
        records.PieceReading(**head, temperature_c=14.0, moisture_pct=11.0),
    )
    assert [in_si(words.of(entry)) for entry in told] == [
        "air of finishing: 240 readings of shop.csv",
        "air of finishing: 1 reading of shop.csv",
        "heater in finishing to 21 °C",
        "heater in a room",
        "surface 14 °C, wood at 11 % moisture",
    ]


def test_every_page_is_plain_lines(shop: Finishlog):
    for words in (
        ("moisture", "doors", "14%"),
        ("surface", "doors", "14C"),
        ("movement", "ash", "300mm", "--from", "8%", "--to", "11%"),
    ):
        assert not re.search(r"[ \t]$|\x1b", shop.did(*words).out, re.MULTILINE)


def test_a_sanding_of_last_month_is_gone_over_again(shop: Finishlog):
    """It holds 30 days before shellac, 7 before waterborne: common practice."""
    shop.did("shop", "hours", "mon-fri 18:00-21:00")
    shop.did("log", "doors", "sand", "--grit", "P400")
    later = "2027-01-11T18:05:00+00:00"
    shop.did("air", "18C", "55%", now=later)
    ready = " ".join(shop.did("ready", "doors", now=later).out.split())
    assert "scuff, coat" in ready
    assert "sanded too long ago" in ready
    plan = " ".join(shop.did("plan", "cabinet", now=later).out.split())
    assert "18:05 scuff cabinet/doors ×2, back sanded too long ago: 47 d, it holds 30 d" in plan
    why = " ".join(shop.did("why", "doors", now=later).out.split())
    assert "sanded P400 Tue 24 Nov 21:05: was good until Thu 24 Dec 21:05" in why
    logged = shop.did("log", "doors", "sealer", now=later).out
    assert "sanded 47 d ago" in logged
    assert "no scuffing on record" not in logged


def test_what_was_sanded_again_draws_no_word(shop: Finishlog):
    shop.did("log", "doors", "sand")
    later = "2027-01-11T18:05:00+00:00"
    shop.did("air", "18C", "55%", now=later)
    logged = shop.did("log", "doors", "sealer", "--scuffed", now=later).out
    assert "sanded" not in logged


def test_tape_left_on_is_asked_off_before_the_coat(shop: Finishlog):
    """It comes off whole within three days: common practice."""
    shop.did("log", "doors", "sand", "--at", "1h ago")
    shop.did("log", "doors", "mask")
    later = "2026-11-29T18:05:00+00:00"
    shop.did("air", "18C", "55%", now=later)
    assert "tape has been on for 4 d" in " ".join(shop.did("ready", "doors", now=later).out.split())
    shop.did("shop", "hours", "mon-sun 18:00-21:00")
    plan = " ".join(shop.did("plan", "cabinet", now=later).out.split())
    assert "tape has been on for" in plan
    shop.did("log", "doors", "untape", now=later)
    assert "tape has been on" not in shop.did("ready", "doors", now=later).out


def test_what_is_packed_is_taken_out_before_a_coat(shop: Finishlog):
    """Packed a day after a coat that wants longer: it may print (common practice)."""
    shop.did("log", "door-stop", "oil", "--at", "3d ago")
    shop.did("log", "door-stop", "pack", "--at", "2d ago")
    said = " ".join(shop.did("log", "door-stop", "oil").out.split())
    assert "packed for 1 d, in finishing" in said
    assert "packed before oil could bear it" in said


def test_what_smells_is_not_put_inside_a_drawer_unasked(shop: Finishlog):
    """It smells there for months: common practice."""
    shop.did("part", "new", "cabinet/drawer", "--species", "oak", "--face", "inside")
    shop.did("steps", "new", "oiled", "oil")
    shop.did("part", "steps", "drawer", "--as", "oiled")
    assert "smells for months" in " ".join(shop.did("ready", "drawer").out.split())
    shop.did("shop", "hours", "mon-sun 18:00-21:00")
    assert "smells for months" in " ".join(shop.did("plan", "cabinet").out.split())
    assert "smells for months" in " ".join(shop.did("log", "drawer", "oil").out.split())


def test_knots_want_a_seal_before_paint(shop: Finishlog):
    """What is in a knot bleeds through paint: Wood Handbook, chapter 16."""
    shop.did("product", "new", "enamel", "--class", "latex-enamel")
    shop.did("steps", "new", "painted", "enamel")
    shop.did("part", "new", "cabinet/board", "--species", "pine", "--face", "front=field,knots")
    shop.did("part", "steps", "board", "--as", "painted")
    shop.did("shop", "hours", "mon-sun 18:00-21:00")
    assert "in a knot bleeds" in " ".join(shop.did("ready", "board").out.split())
    assert "in a knot bleeds" in " ".join(shop.did("plan", "cabinet").out.split())
