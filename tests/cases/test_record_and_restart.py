"""Questions about the record: found again, corrected, in order, and about beginning again."""

from __future__ import annotations

from tests.cases.finisher import Finisher


def test_fc078_two_products_called_tung_and_two_finishes_on_one_wood(finisher: Finisher):
    """A varnish sold as tung oil on table one, real tung oil on table two: one film, one sunk in.

    Take the wax off, put a wiping varnish over the oil, try it on a board first. The trap: the
    names on the shelf, and a piece that is finished takes no more entries.
    """
    finisher.types(
        "2025-01-01 18:00",
        "product new tung-finish --class wiping-varnish",
        "product new tung-oil --class tung-oil",
        "product new wax --class paste-wax",
        "part new tables/one --species cherry",
        "part new tables/two --species cherry",
        "air 21C 50%",
    )
    for day in ("02", "04", "06"):
        finisher.types(f"2025-01-{day} 18:00", "log one tung-finish --scuffed")
    finisher.types("2025-01-20 18:00", "log one wax")
    for day in ("03", "06", "09", "12", "15"):
        finisher.types(f"2025-02-{day} 18:00", "log two tung-oil", "log two wipe")
    finisher.types("2025-03-20 18:00", "log two wax")
    finisher.types("2025-03-30 18:00", "handover one two", "review one good")
    finisher.types("2025-04-30 18:00", "review two fair -t 'lost its sheen, chalky'")
    said = finisher.types("2025-05-01 18:00", "past cherry")
    assert said.index("tables/one") < said.index("tables/two")
    assert "wiping varnish" in said
    assert "pure tung oil" in said
    one, two = finisher.asks("2025-05-01 18:00", "past cherry")["finishes"]
    assert [c["class_name"] for c in one["attempts"][0]["coats"]] == [
        *["wiping varnish"] * 3,
        "paste wax",
    ]
    assert [c["class_name"] for c in two["attempts"][0]["coats"]] == [
        *["pure tung oil"] * 5,
        "paste wax",
    ]
    assert two["attempts"][0]["coats"][1]["hours_since_last"] == 72.0
    assert (one["outcome"], two["outcome"]) == ("good", "fair")
    assert two["reviews"][0]["said"] == "lost its sheen, chalky"
    assert two["reviews"][0]["at"]["latest"].startswith("2025-04-30")
    coats = finisher.asks("2025-05-01 18:01", "on two")[0]["coats"]
    last_oil = coats[-2]["act"]
    over_wax = finisher.types("2025-05-01 18:05", "log two tung-finish --scuffed")
    assert "Nothing sticks to wax" in over_wax
    finisher.types("2025-05-01 18:06", "undo --never-happened")
    finisher.types("2025-05-01 18:10", f"off two --to {last_oil} --washed --note 'wax off'")
    repaired = finisher.types("2025-05-02 18:00", "log two tung-finish --scuffed")
    assert "Nothing sticks to wax" not in repaired
    coats = finisher.asks("2025-05-02 18:01", "on two")[0]["coats"]
    assert [c["product"] for c in coats] == [*["tung-oil"] * 5, "tung-finish"]
    assert "tung-finish" in finisher.types("2025-05-02 18:02", "steps new good --like one")


def test_fc079_a_dye_mix_and_a_stain_time_are_found_and_done_again(finisher: Finisher):
    """Ratio, minutes on the wood, grit, coats, and where the sample board lies, years later.

    The same can on another wood is another colour. The trap: only what and when.
    """
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
    assert "sand, dye, light, wipe, dark, wipe, poly" in said


def test_fc091_thirty_minutes_are_not_thirty_months(finisher: Finisher):
    """What has two readings is refused; all is undone and kept; a correction says what it moved.

    The trap: the old entry overwritten, and nothing to go back to.
    """
    when = "2026-05-01 18:00"
    for typed in ("30m", "3mo", "+2d"):
        refused = finisher.tries(
            when, f"product new poly --class oil-polyurethane --recoat {typed}"
        )
        assert refused.code == 2
        assert typed in refused.err
    assert (
        "minutes or months"
        in finisher.tries(when, "product new poly --class oil-polyurethane --recoat 30m").err
    )
    unlikely = finisher.tries(when, "product new poly --class oil-polyurethane --recoat 900d")
    assert unlikely.code == 2
    finisher.types(
        when,
        "product new poly --class oil-polyurethane --recoat 12h",
        "part new kitchen/doors --count 50",
        "air 23C 50%",
    )
    finisher.types("2026-05-01 18:10", "log doors poly")
    undone = finisher.types("2026-05-01 18:20", "undo --never-happened")
    assert "withdrawn: act 4" in undone
    (line,) = finisher.asks("2026-05-01 18:21", "on doors")
    assert line["coats"] == []
    assert "in force again" in finisher.types("2026-05-01 18:22", "undo 5")
    (line,) = finisher.asks("2026-05-01 18:23", "on doors")
    assert len(line["standing"]["pieces"]) == 50
    assert [c["act"] for c in line["coats"]] == [4]
    finisher.types("2026-05-03 07:00", "air 23C 50%")
    finisher.types("2026-05-03 07:10", "log doors:1-3 poly --scuffed")
    said = finisher.types("2026-05-03 10:00", "amend 4 --at 'Sun 00:10'")
    assert "Fri 18:10 → 00:10; the old entry stays in history" in said
    assert "moved    kitchen/doors:4-50: after" in said
    assert "was ready" in said
    assert "stop: act 8, poly: drying" in said
    first = next(a for a in finisher.asks("2026-05-03 10:01", "history") if a["act"] == 4)
    assert first["happened"]["latest"] == "2026-05-01T17:10:00Z"
    assert first["amended_by"] == 9


INSTANTS = ("2026-08-21T16:00:00Z", "2026-08-22T01:00:00+09:00", "2026-08-21T16:00Z")


def test_fc092_the_last_coat_is_the_last_whatever_the_clock_it_was_written_by(finisher: Finisher):
    """Three ways to write one instant, and a local time after it: instants are compared, not texts.

    The zone of entry is kept beside it; a local time is one of the shop's zone, and one that occurs
    twice there is asked. The trap: as text, 22 August 01:00 comes after 22 August 00:30.
    """
    finisher.zone = "Europe/London"
    finisher.types(
        "2026-08-21 09:00",
        "product new varnish --class oil-polyurethane --recoat 12h --label-air '23C 50%'",
        "air 23C 50%",
        *(f"part new table/{part}" for part in ("one", "two", "three", "top")),
    )
    later = "2026-08-23 10:00"
    for part, instant in zip(("one", "two", "three"), INSTANTS, strict=True):
        finisher.types(later, f"log {part} varnish --at {instant}")
        (line,) = finisher.asks(later, f"on {part}")
        assert [c["put_on"] for c in line["coats"]] == ["2026-08-21T16:00:00Z"]
    ends = {
        finisher.asks(later, f"when {p}")["lines"][0]["standing"]["high"] for p in ("one", "two")
    }
    assert len(ends) == 1

    finisher.types(later, "log top varnish --at '2026-08-22 00:30' --note last")
    finisher.types(later, f"log top varnish --at {INSTANTS[1]} --note first")
    finisher.types(later, "log top varnish --at 2026-08-21T16:00:00.5Z --note second")
    finisher.types(later, "log top varnish --at 2026-08-21T16:00:00.25Z --note between")
    coats = finisher.asks(later, "on top")[0]["coats"]
    assert [c["put_on"] for c in coats] == [
        "2026-08-21T16:00:00Z",
        "2026-08-21T16:00:00.250000Z",
        "2026-08-21T16:00:00.500000Z",
        "2026-08-21T23:30:00Z",
    ]
    found = finisher.asks(later, "past varnish")["finishes"]
    (top,) = (f for f in found if f["part"] == "table/top")
    notes = [c["note"] for c in top["attempts"][0]["coats"]]
    assert notes == ["first", "between", "second", "last"]
    last = finisher.asks(later, "when top")["lines"][0]
    assert last["since"] == "2026-08-21T23:30:00Z"


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
    """The zone is declared once, kept with every act, and moving shop moves no coat."""
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


def test_fc096_the_first_attempt_is_kept_as_the_failure_that_it_was(finisher: Finisher):
    """Lacquer still took fingerprints after five weeks: stripped, and done in waterborne.

    Rubbing out counts from the last new coat, by the new finish; the old attempt stays on record,
    heavy coats and all. The trap: hours of the old coats, or the lesson deleted.
    """
    finisher.types(
        "2026-03-01 18:00",
        "product new nitro --class lacquer-sprayed",
        "product new water --class waterborne-clear",
        "part new guitar/body --species alder",
        "air 23C 45%",
    )
    finisher.types("2026-03-01 18:10", "log body nitro --method spray --film 300um")
    finisher.types("2026-03-01 21:10", "log body nitro --method spray --film 300um")
    finisher.types("2026-04-10 18:00", "air 23C 45%")
    finisher.types("2026-04-10 18:10", "check body prints")
    why = finisher.types("2026-04-10 18:11", "why body")
    assert "too heavy a coat: 300 µm wet" in why
    finisher.types("2026-04-10 18:30", "off body --strip --note 'never hardened'")
    for day in ("14", "15", "16"):
        finisher.types(f"2026-04-{day} 08:50", "air 23C 50%")
        finisher.types(f"2026-04-{day} 09:00", "log body water --scuffed")
        finisher.types(f"2026-04-{day} 13:30", "air 23C 50%", "log body water --scuffed")
    (line,) = finisher.asks("2026-04-16 14:00", "when body")["lines"]
    assert line["since"] == "2026-04-16T12:30:00Z"
    rub = next(s for s in line["stages"] if s["stage"] == "rub")
    assert rub["low"] == "2026-05-07T12:30:00Z"
    assert rub["high"] == "2026-05-16T12:30:00Z"
    (line,) = finisher.asks("2026-04-16 14:00", "on body")
    assert [c["product"] for c in line["coats"]] == ["water"] * 6
    (past,) = finisher.asks("2026-04-16 14:00", "past lacquer-sprayed")["finishes"]
    first, second = past["attempts"]
    assert [c["product"] for c in first["coats"]] == ["nitro", "nitro"]
    assert first["off"]["why"] == ["prints", "never hardened"]
    assert second["off"] is None
    said = finisher.types("2026-04-16 14:00", "past lacquer-sprayed")
    assert "TAKEN OFF after 40 d" in said
    assert "1 attempt taken off" in said


def test_fc098_a_glue_face_that_was_ever_oiled_is_no_glue_face(finisher: Finisher):
    """Glue needs bare wood, whatever the year of the oil: plane it off, and open every such joint.

    Before the clamps: tape off, faces bare. The trap: coated before glued, so all is in order.
    """
    finisher.types(
        "2006-05-01 08:00",
        "product new oil --class boiled-linseed-oil",
        "part new desk/slices -n 6 --species beech --face top --face old:joint --face sawn:joint",
        "part new desk/board --of slices:6",
        "air 21C 50%",
    )
    said = finisher.types("2006-05-01 08:10", "log slices oil --face old")
    assert "slices old is a glue face: glue needs bare wood" in said
    finisher.types("2026-05-01 07:50", "log slices mask --face sawn")
    finisher.types("2026-05-01 08:00", "air 21C 50%")
    why = finisher.types("2026-05-01 08:00", "why board")
    assert "finish on a glue face" in why
    assert "tape to come off" in why
    assert "BENCH NOW" not in finisher.types("2026-05-01 08:00", "ready"), "no coat over it"
    said = finisher.types("2026-05-01 08:10", "log board glue-up --glue 'yellow pva'")
    assert "caution: finish on a glue face of slices: glue needs bare wood" in said
    said = finisher.types("2026-05-03 08:10", "fault board open-joint --where 'second and third'")
    assert "finish, wax or oil on the glue face: oil on slices ×6, old (act 5)" in said
    assert "every other joint with the same history" in said
    finisher.types("2026-05-03 08:20", "log board untape --face sawn")
    assert "finish on a glue face" in finisher.types("2026-05-03 08:21", "ready")
    finisher.types("2026-05-03 08:30", "off board --face old --scraped")
    assert "finish on a glue face" not in finisher.types("2026-05-03 08:31", "ready")
