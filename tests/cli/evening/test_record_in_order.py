"""The record by the time of the work: late entries, corrections, zones, and finding it again."""

from __future__ import annotations

from tests.finisher import Finisher

CAN = "product new varnish --class oil-polyurethane --recoat 12h --window 48h --label-air '23C 50%'"
INSTANTS = ("2026-08-21T16:00:00Z", "2026-08-22T01:00:00+09:00", "2026-08-21T16:00Z")


def test_a_coat_written_down_late_lands_between_the_others(finisher: Finisher):
    """By the time of the work, not of the typing; the last coat and its date stay."""
    finisher.types("2026-11-18 18:00", CAN, "part new table/top", "air 23C 50%")
    finisher.types("2026-11-18 19:00", "log top varnish")
    finisher.types("2026-11-20 19:00", "air 23C 50%")
    finisher.types("2026-11-20 19:30", "log top varnish --scuffed")
    before = finisher.asks("2026-11-21 10:00", "when top")["lines"][0]["standing"]
    said = finisher.types("2026-11-21 10:00", "log top varnish --scuffed --at 'Thu 19:00'")
    assert "lands before 1 later entry" in said
    after = finisher.asks("2026-11-21 10:00", "when top")["lines"][0]["standing"]
    assert (after["low"], after["high"]) == (before["low"], before["high"])
    coats = finisher.asks("2026-11-21 10:00", "on top")[0]["coats"]
    assert [c["put_on"][:16] for c in coats] == [
        "2026-11-18T19:00",
        "2026-11-19T19:00",
        "2026-11-20T19:30",
    ]
    late = finisher.asks("2026-11-21 10:00", "history top")[-1]
    assert late["typed_at"].startswith("2026-11-21")
    assert late["happened"]["latest"].startswith("2026-11-19")


def test_a_dye_mix_and_a_stain_time_are_found_years_later(finisher: Finisher):
    """Ratio, minutes on the wood, grit, and where the sample board lies."""
    finisher.types(
        "2024-05-01 08:00",
        "product new dye --class alcohol-dye",
        "product new light --class wiping-stain",
        "product new dark --class wiping-stain",
        "product new poly --class oil-polyurethane",
        "part new boards/pine-17 --species pine --board",
        "part new boards/oak-17 --species oak --board",
        "air 21C 50%",
        "mix dye amber:3 brown:1 --name dye-3",
    )
    finisher.types("2024-05-01 08:10", "log pine-17 sand --grit P180")
    finisher.types("2024-05-01 08:20", "log pine-17 dye --from dye-3")
    finisher.types("2024-05-02 08:20", "log pine-17 light")
    finisher.types("2024-05-02 08:30", "log pine-17 wipe")
    finisher.types("2024-05-03 08:20:00", "log pine-17 dark")
    finisher.types("2024-05-03 08:20:30", "log pine-17 wipe")
    finisher.types("2024-05-05 08:20", "log pine-17 poly --method brush")
    finisher.types("2024-05-05 08:30", "note pine-17 --outcome -t 'warm brown, drawer 3'")
    found = finisher.asks("2027-05-01 08:00", "past pine wiping-stain warm")
    (board,) = found["finishes"]
    assert board["part"] == "boards/pine-17"
    assert board["is_board"]
    (attempt,) = board["attempts"]
    assert [d["said"] for d in attempt["prepared"]] == ["sand, P180"]
    assert [(c["product"], c["wiped_after_min"]) for c in attempt["coats"]] == [
        ("dye", None),
        ("light", 10.0),
        ("dark", 0.5),
        ("poly", None),
    ]
    assert attempt["coats"][0]["container"] == "dye-3, 3:1"
    assert board["outcomes"] == ["warm brown, drawer 3"]
    said = finisher.types("2027-05-01 08:00", "past light")
    assert "looks and dries otherwise on another wood" in said
    said = finisher.types("2027-05-01 08:01", "steps new doors --like pine-17")
    assert "sand (P180), dye (amber:brown 3:1), light, wipe (after 10 min), dark" in said
    assert "wipe (after 30 s), poly; taken from pine" in said


def test_equal_instants_keep_the_order_of_the_typing(finisher: Finisher):
    """Two coats at one instant, typed in two zones: the one typed later lies on top."""
    finisher.types(
        "2026-08-21 09:00",
        "product new under --class shellac-2lb",
        "product new over --class shellac-2lb",
        "air 23C 50%",
        "part new table/top",
        "part new table/leg",
    )
    later = "2026-08-23 10:00"
    for part, first, second in (
        ("top", INSTANTS[0], INSTANTS[1]),
        ("leg", INSTANTS[1], INSTANTS[2]),
    ):
        finisher.types(later, f"log {part} under --at {first}", f"log {part} over --at {second}")
        (line,) = finisher.asks(later, f"on {part}")
        assert [c["product"] for c in line["coats"]] == ["under", "over"]
        assert line["standing"]["on_it"] == "over"


def test_a_time_without_a_zone_is_the_shops_and_a_bare_number_is_refused(finisher: Finisher):
    """The zone is kept with every act, and moving shop moves no coat."""
    finisher.zone = "Asia/Tokyo"
    finisher.types(
        "2026-08-21 09:00",
        "product new varnish --class oil-polyurethane",
        "air 23C 50%",
        "part new table/top",
    )
    finisher.types("2026-08-22 10:00", "log top varnish --at '2026-08-22 00:30'")
    refused = finisher.tries("2026-08-22 10:00", "log top varnish --at 1787328000")
    assert refused.code == 2
    assert "2026-11-24 19:30" in refused.err
    finisher.zone = "Europe/London"
    finisher.types("2026-08-22 10:00", "log top varnish --at '2026-08-21 23:00' --scuffed")
    (line,) = finisher.asks("2026-08-22 11:00", "on top")
    assert [c["put_on"] for c in line["coats"]] == ["2026-08-21T15:30:00Z", "2026-08-21T22:00:00Z"]
    zones = [a["time_zone"] for a in finisher.asks("2026-08-22 11:00", "history top")]
    assert zones == ["Asia/Tokyo", "Asia/Tokyo", "Europe/London"]
    twice = finisher.tries("2026-10-26 10:00", "log top varnish --at '2026-10-25 01:30'")
    assert twice.code == 2
    assert "+01:00" in twice.err
