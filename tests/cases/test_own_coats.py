"""Questions in which the person's own coats, and the air they met, say more than a label."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from tests.cases.question import Question
from tests.finisher import Finisher, hours

FC006 = Question(
    "the can says 16 h at 55 °F, the night was colder: why is it slower than last year",
    shows=(
        "a row for each temperature; straight between them, and never silently below the coldest",
        "the night's low counts, not the reading at seven",
        "last year's coat of the same varnish beside it: how long it took, and in which air",
    ),
    trap="the row for 55 °F is taken all night",
)


def recoat(finisher: Finisher, when: str, part: str) -> Any:
    return finisher.stage(when, part, "recoat")


def test_fc006_a_night_below_the_cans_coldest_row(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2025-06-10 15:00",
        "settings temperature F",
        "room new garage",
        "product new varnish --class spar-varnish --recoat 16h@55F",
        "part new boat/dinghy --room garage",
        "air 75F 50%",
    )
    finisher.types("2025-06-10 15:30", "log dinghy varnish")
    finisher.types("2025-06-11 05:20", "air 64F 60%", "log dinghy sand", "log dinghy varnish")
    finisher.types("2026-04-20 18:50", "part new boat/hull --room garage", "room night garage 46F")
    finisher.types("2026-04-20 19:00", "air 55F 60%", "log hull varnish")
    # The low end, from when a spot may be tried with paper, is what the can's own rows decide.
    began = "2026-04-20T23:00:00Z"
    at_seven = hours(began, recoat(finisher, "2026-04-20 19:01", "hull")["low"])
    with FC006.line(2):
        assert at_seven > 16, "the night that is expected counts before it was read"
    for when, air in (("23:00", "50F 65%"), ("03:00", "46F 70%"), ("07:00", "47F 70%")):
        day = "2026-04-20" if when == "23:00" else "2026-04-21"
        finisher.types(f"{day} {when}", f"air {air}")
    finisher.types("2026-04-21 14:00", "air 56F 60%", "check hull tacky")
    after = finisher.why("2026-04-21 14:05", "hull")
    words = finisher.reads("2026-04-21 14:05", "why hull")
    with FC006.trap:
        assert hours(began, recoat(finisher, "2026-04-20 23:30", "hull")["low"]) > 16
        assert "blocked" in after["standing"]["answer"]
    with FC006.line(3):
        assert (
            "beside now: 55 °F, 60 %, down to 46 °F, thickness not logged; soft after 19" in words
        )
        assert "Tue 10 Jun 2025, boat/dinghy: 75 °F, 50 %, down to 64 °F" in words
        assert "coated again after 13.8 h" in words
        assert words.index("beside now") < words.index("its time is not over")
    told = finisher.reads(
        "2026-05-01 10:00",
        "product label varnish --recoat 16h@55F --recoat 6h@70F",
    )
    finisher.types("2026-05-01 10:01", "part new boat/rail --room garage", "air 62F 50%")
    finisher.types("2026-05-01 10:02", "log rail varnish", "room night garage 62F")
    rail = recoat(finisher, "2026-05-01 10:03", "rail")
    finisher.types("2026-05-01 10:04", "part new boat/oar --room garage", "room night garage 48F")
    finisher.types("2026-05-01 10:05", "air 52F 50%", "log oar varnish")
    oar = recoat(finisher, "2026-05-01 10:06", "oar")
    with FC006.line(1):
        assert "recoat 6 h at 70 °F, 16 h at 55 °F" in told
        assert 6 < hours("2026-05-01T14:02:00Z", rail["low"]) < 16
        assert hours("2026-05-01T14:05:00Z", oar["low"]) > 16
        assert "16 h at 55 °F" in finisher.reads("2026-05-01 10:07", "product show varnish")


FC105 = Question(
    "the first coat took a whole damp day: when is the second dry, and the party is on Saturday",
    shows=(
        "what this project's own first coat took, adjusted for the air, and not the label",
        "when it bears light use against the day of the party: yes, within limits",
        "the legs are worked on away from the wet top",
    ),
    trap="the label's hours for coat 2",
)


def test_fc105_what_the_first_coat_really_took(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-29 07:30",
        "settings temperature F",
        "room new dining --night 70F",
        "room new cellar",
        "product new poly --class oil-polyurethane",
        "steps new two poly*2",
        "steps new repair sand poly",
        "part new table/top --steps two --room dining",
        "part new table/legs --count 4 --steps repair --room dining",
        "project edit table --due 2026-12-05",
        "shop hours 'mon-sun 7:00-22:00'",
    )
    finisher.types("2026-11-29 08:00", "air 70F 68%", "log top poly")
    finisher.types("2026-11-29 22:00", "air 70F 68%", "check top tacky")
    finisher.types("2026-11-30 08:00", "air 70F 68%", "check top dry")
    finisher.types("2026-11-30 08:30", "log top poly --scuffed")

    def dry(when: str) -> Any:
        return finisher.stage(when, "top", "tack-free")

    second, told = "2026-11-30T13:30:00Z", finisher.reads("2026-11-30 08:31", "why top")
    first = dry("2026-11-30 08:31")
    finisher.types("2026-11-30 12:00", "air 70F 74%")
    damper = dry("2026-11-30 12:01")
    with FC105.line(1):
        assert hours(second, first["low"]) >= 24
        assert datetime.fromisoformat(damper["low"]) > datetime.fromisoformat(first["low"])
        assert datetime.fromisoformat(damper["high"]) > datetime.fromisoformat(first["high"])
        assert "the last was dry after" in told
        assert "slower still, an assumption" in told
    with FC105.trap:
        # The class's own least hours to tack-free are 6.
        assert hours(second, first["low"]) > 2 * 6
    paper = finisher.reads("2026-11-30 12:05", "plan table")
    with FC105.line(2):
        assert "table due Sat 5 Dec late" in paper
        assert "light use from" in paper
        assert (
            "by Sat 5 Dec only where a thumbnail leaves no print: with care, nothing hot" in paper
        )
        assert "light use" in finisher.reads("2026-11-30 12:06", "when top")
    with FC105.line(3):
        beside = finisher.reads("2026-11-30 12:09", "ready").partition("LEAVE ALONE")[2]
        assert "table/legs ×4 waits for top to be dust-free" in beside
        wet = finisher.reads("2026-11-30 12:10", "log legs sand")
        assert "dust" in wet
        assert "top" in wet
        finisher.types("2026-11-30 12:11", "undo", "move legs cellar")
        assert "BENCH NOW sand table/legs ×4" in finisher.reads("2026-11-30 12:12", "ready")
