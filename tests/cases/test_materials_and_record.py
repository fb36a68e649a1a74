"""Questions about cans, mixes and cuts, about the record, and about beginning again."""

from __future__ import annotations

import pytest

from tests.cases.finisher import Finisher


def test_fc008_oil_finish_from_a_can_ten_years_old_comes_off(finisher: Finisher):
    """Three weeks and still oily: take it off, and trust that can no more.

    An opened can is trusted for about a year, older stock only after a trial on scrap. Spirits
    first, then stronger solvent, then stripper; a fresh can, wiped until barely damp. The trap: one
    more day, and one more.
    """
    finisher.types(
        "2026-09-01 18:00",
        "product new oil --class oil-varnish-blend",
        "can new tin --product oil --bought 2016-05-01 --opened 2016-06-01",
        "part new sewing/box",
        "air 20C 50%",
    )
    (listed,) = finisher.asks("2026-09-01 18:01", "can list")
    assert listed["opened_at"] == "2016-05-31T23:00:00Z"
    said = finisher.types("2026-09-01 18:10", "log box oil --from tin")
    assert "tin was opened 10 years ago; oil and varnish blend keeps 182 to 730 d" in said
    assert "put a thin coat on scrap or glass" in said
    finisher.types("2026-09-01 18:25", "log box wipe")
    finisher.types("2026-09-08 18:00", "air 20C 50%")
    finisher.types("2026-09-08 18:30", "check box tacky")
    assert finisher.asks("2026-09-08 18:31", "when box")["lines"][0]["standing"]["answer"] == (
        "blocked by a check"
    )
    finisher.types("2026-09-21 18:00", "air 20C 50%")
    assert "stalled" in finisher.types("2026-09-21 18:30", "check box tacky")
    standing = finisher.asks("2026-09-21 18:31", "why box")[0]["standing"]
    assert (standing["low"], standing["high"]) == (None, None)
    words = [f"{f['sentence']}; {f['remedy']}" for f in standing["findings"]]
    assert any("more waiting is unlikely to help" in w and "take it off" in w for w in words)
    assert any("an old can: open for" in w for w in words)
    ladder = next(w for w in words if "it comes off with" in w)
    assert ladder.index("mineral spirits") < ladder.index("thinner") < ladder.index("stripper")
    assert "barely damp" in ladder
    finisher.types("2026-09-21 18:40", "off box --washed", "can condemned tin --note 'stayed oily'")
    (listed,) = finisher.asks("2026-09-21 18:41", "can list")
    assert listed["how"] == "do not use"
    again = finisher.types("2026-09-22 18:00", "log box oil --from tin")
    assert "stop: tin is marked: do not use: stayed oily" in again


def test_fc070_yesterdays_mix_under_todays_is_not_the_same_finish(finisher: Finisher):
    """Wednesday's mix as seal coat on Thursday, a fresh one over it on Friday: wrinkles here, not there.

    It reacts in the pot, so layers of mixes of different age resist the next coat differently; use
    it up within its pot life, which heat shortens, and never top up. The trap: one can, one finish.
    """
    finisher.types(
        "2026-06-03 10:00",
        "product new lacquer --class lacquer-precatalysed",
        "part new kitchen/backs --count 6",
        "part new kitchen/doors --count 2",
        "air 21C 45%",
    )
    said = finisher.types(
        "2026-06-03 10:00", "mix lacquer base:1L catalyst:30ml --use-by 24h --name wednesday"
    )
    assert "33:1" in said
    assert "use it by Thu 10:00" in said
    finisher.types("2026-06-04 13:50", "air 21C 45%")
    said = finisher.types("2026-06-04 14:00", "log backs lacquer --method spray --from wednesday")
    assert "stop: wednesday is past its pot life by" in said
    finisher.types("2026-06-05 09:00", "air 21C 45%")
    finisher.types("2026-06-05 09:30", "can emptied wednesday")
    finisher.types(
        "2026-06-05 09:40", "mix lacquer base:1L catalyst:30ml --use-by 24h --name friday"
    )
    said = finisher.types("2026-06-05 10:00", "log backs:1-3 lacquer --method spray --scuffed")
    assert "from friday" in said
    assert "went on from a mix 28 h old, this one from a mix just made" in said
    assert "may wrinkle" in said
    said = finisher.types("2026-06-05 10:20", "log doors lacquer --method spray")
    assert "went on from a mix" not in said
    said = finisher.types("2026-06-05 11:00", "fault backs:1-2 wrinkle")
    assert "window" in said
    coats = finisher.asks("2026-06-05 11:01", "on backs:1")[0]["coats"]
    assert [c["container"] for c in coats] == ["wednesday, 33:1", "friday, 33:1"]
    topped = finisher.types("2026-06-05 12:00", "mix lacquer base:1L catalyst:30ml --name friday")
    assert "never top up what hardens in the pot" in topped


def test_fc070_heat_shortens_a_pot_life_and_cold_lengthens_none(finisher: Finisher):
    """A day at 21 °C is half a day at 31 °C (UFGS-09971), and no longer than a day at 11 °C."""
    finisher.types("2026-06-03 10:00", "product new clear --class waterborne-two-part")
    ends = []
    for number, warmth in enumerate(("11C", "23C", "33C"), 3):
        when = f"2026-06-{number:02} 10:00"
        finisher.types(when, f"air {warmth} 50%")
        finisher.types(when, "mix clear base:1L hardener:100ml --use-by 4h --name m")
        (mix,) = (c for c in finisher.asks(when, "can list") if c["how"] == "open")
        ends.append(mix["use_by"][11:16])
        finisher.types(when, "can emptied m", "can rename m m-{}".format(warmth.lower()))
    assert ends == ["13:00", "13:00", "11:00"]


def test_fc072_shellac_of_2007_is_tried_on_glass_and_the_job_begun_again(finisher: Finisher):
    """It never will harden: wash it off with alcohol, a fresh batch, and it is done in hours.

    Good shellac sands to powder the day after; a drop of it on glass is dry in a quarter of an hour.
    Authorities give three months to a year, so a range and its source. The trap: one date, or none.
    """
    finisher.types(
        "2026-05-01 18:00",
        "product new shellac --class shellac-2lb",
        "can new jug --product shellac --made 2007-04-01",
        "part new piano/bench",
        "air 21C 50%",
    )
    said = finisher.types("2026-05-01 18:10", "log bench shellac --from jug")
    assert "jug is 19 years old" in said
    assert "91 to 365 d, others say 182 d" in said
    assert "put a drop on glass" in said
    assert "15 min" in said
    (listed,) = finisher.asks("2026-05-01 18:11", "can list")
    assert [f["source"] for f in listed["findings"]] == ["shellac-reference"]
    finisher.types("2026-05-02 18:00", "air 21C 50%")
    finisher.types("2026-05-02 18:10", "check bench prints")
    finisher.types("2026-05-03 18:00", "air 21C 50%")
    said = finisher.types("2026-05-03 18:10", "check bench prints")
    assert "stalled" in said
    words = finisher.types("2026-05-03 18:11", "why bench")
    assert "it comes off with alcohol" in words
    assert "again the same evening" in words
    finisher.types("2026-05-03 18:20", "off bench --washed", "can condemned jug")
    mixed = finisher.types("2026-05-03 18:30", "mix shellac --cut 2lb --jar 250ml --name fresh")
    assert "2 lb cut" in mixed
    said = finisher.types("2026-05-03 19:30", "log bench shellac")
    assert "from fresh" in said
    assert "old" not in said
    assert "recoat after 23:00, test from 22:00" in said


def test_fc073_frost_spoils_water_and_does_oil_little_harm(finisher: Finisher):
    """Waterborne that froze is not trusted before a trial; oil wants a look, no more.

    Air and heat age oil varnish, cold does not. The trap: one rule for both.
    """
    finisher.types(
        "2026-03-20 18:00",
        "product new varnish --class alkyd-varnish",
        "product new clear --class waterborne-clear",
        "can new oil-tin --product varnish --opened 2026-01-02",
        "can new water-tin --product clear --opened 2026-01-02",
        "part new a/b",
        "part new a/c",
        "air 21C 50%",
    )
    finisher.types("2026-03-20 18:10", "can frozen oil-tin", "can frozen water-tin")
    by_name = {c["name"]: c["findings"] for c in finisher.asks("2026-03-20 18:11", "can list")}
    assert [f["level"] for f in by_name["oil-tin"]] == ["caution"]
    assert [f["level"] for f in by_name["water-tin"]] == ["stop"]
    said = finisher.types("2026-03-20 18:20", "log a/c clear --from water-tin")
    assert "stop: water-tin froze" in said
    assert "thaw slowly" in said
    said = finisher.types("2026-03-20 18:25", "log a/b varnish --from oil-tin")
    assert "stop" not in said
    assert "caution: oil-tin froze: cold by itself does this kind little harm" in said
    finisher.types("2026-03-21 18:00", "can tested water-tin --note smooth")
    by_name = {c["name"]: c["findings"] for c in finisher.asks("2026-03-21 18:01", "can list")}
    assert by_name["water-tin"] == []
    assert "frost" not in finisher.types("2026-03-21 18:02", "leave")
    finisher.types("2026-10-10 18:00", "room new store --night -5C")
    said = finisher.types("2026-10-10 18:01", "leave")
    assert "water-tin (clear) must not freeze" in said
    assert "nights in store go to -5 °C" in said
    assert "oil-tin" not in said


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


def test_fc085_flakes_are_weighed_and_a_wrong_cut_is_put_right(finisher: Finisher):
    """One ounce by weight to eight fluid ounces is a pound cut: 120 g to the litre of alcohol.

    An ounce that does not say which is refused; a cup of flakes says nothing of the cut; the mix of
    last week is corrected and no coat moves. The trap: an ounce is an ounce.
    """
    finisher.types(
        "2026-01-31 18:00",
        "product new shellac --class shellac-2lb",
        "part new guitar/body",
        "air 21C 50%",
    )
    for typed in ("flakes:2oz 'alcohol:8 fl oz'", "'flakes:2 oz wt' 'alcohol:8 oz'"):
        refused = finisher.tries("2026-01-31 18:00", f"mix shellac {typed}")
        assert refused.code == 2
        assert "fl oz" in refused.err
        assert "oz wt" in refused.err
    told = finisher.asks("2026-01-31 18:00", "mix shellac --cut 1lb 'alcohol:8 fl oz' --tell")
    flakes, alcohol = told["parts"]
    assert flakes["weight_g"] == pytest.approx(28.35, rel=1e-3)
    assert alcohol["volume_ml"] == pytest.approx(236.6, rel=1e-3)
    assert told["cut_g_per_l"] == pytest.approx(119.8, rel=1e-3)
    by_volume = finisher.types(
        "2026-01-31 18:00", "mix shellac 'flakes:2 fl oz' 'alcohol:8 fl oz' --tell"
    )
    assert "flakes are weighed" in by_volume
    assert "lb cut, " not in by_volume.splitlines()[0]
    finisher.types(
        "2026-01-31 18:10", "mix shellac 'flakes:2 oz wt' 'alcohol:8 fl oz' --name flask"
    )
    finisher.types("2026-01-31 18:20", "log body shellac")
    finisher.types("2026-01-31 22:20", "log body shellac")
    before = finisher.asks("2026-02-01 09:00", "when body")["lines"][0]["stages"]
    said = finisher.types("2026-02-01 09:00", "amend 4 --amount 'flakes:0.75 oz wt'")
    assert "0.75 lb cut" in said
    assert "was 2 lb cut" in said
    assert "keep their dates: guitar/body" in said
    assert finisher.asks("2026-02-01 09:00", "when body")["lines"][0]["stages"] == before
    coats = finisher.asks("2026-02-01 09:00", "on body")[0]["coats"]
    assert [c["container"] for c in coats] == ["flask, 0.75 lb cut, 89.9 g/L"] * 2
    assert "AMENDED" in finisher.types("2026-02-01 09:01", "history")


def test_fc086_from_a_two_pound_cut_to_one_pound(finisher: Finisher):
    """Five parts of alcohol to six if a pound goes to a gallon of alcohol, two to three if to one
    of the liquid; it hardly matters, so keep to one. The trap: half and half.
    """
    finisher.types("2026-01-31 18:00", "product new shellac --class shellac-2lb")
    said = finisher.types("2026-01-31 18:00", "mix shellac --from 2lb --to 1lb --jar 500ml --tell")
    assert "about 5/6 part of alcohol" in said
    assert "volume of alcohol, not of the liquid" in said
    assert "say 2/3 part" in said
    assert "It hardly matters: keep to one" in said
    assert "273 ml 2 lb cut" in said
    assert "227 ml alcohol" in said
    told = finisher.asks("2026-01-31 18:00", "mix shellac --from 2lb --to 1lb --jar 500ml --tell")
    assert told["dilution"]["by_alcohol"] == pytest.approx(5 / 6)
    assert told["dilution"]["by_liquid"] == pytest.approx(2 / 3)
    poured = [part["volume_ml"] for part in told["parts"]]
    assert poured[1] / poured[0] == pytest.approx(5 / 6)
    assert sum(poured) == pytest.approx(500)


def test_fc091_thirty_minutes_are_not_thirty_months(finisher: Finisher):
    """What has two readings is refused; all is undone and kept; a correction says what it moved.

    The trap: the old entry overwritten, and nothing to go back to.
    """
    when = "2026-05-01 18:00"
    for typed in ("30m", "3mo", "+2d"):
        refused = finisher.tries(when, f"product new poly --class oil-polyurethane --recoat {typed}")
        assert refused.code == 2
        assert typed in refused.err
    assert "minutes or months" in finisher.tries(
        when, "product new poly --class oil-polyurethane --recoat 30m"
    ).err
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
    assert "stop: act 7, poly: drying" in said
    first = next(a for a in finisher.asks("2026-05-03 10:01", "history") if a["act"] == 4)
    assert first["happened"]["latest"] == "2026-05-01T17:10:00Z"
    assert first["amended_by"] == 8


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
    ends = {finisher.asks(later, f"when {p}")["lines"][0]["standing"]["high"] for p in ("one", "two")}
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
    notes = [c["note"] for c in finisher.asks(later, "past varnish")["finishes"][-1]["attempts"][0]["coats"]]
    assert sorted(notes) in ([], [""]) or notes == ["first", "between", "second", "last"]


def test_fc092_equal_instants_keep_the_order_of_the_typing(finisher: Finisher):
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
    for part, first, second in (("top", INSTANTS[0], INSTANTS[1]), ("leg", INSTANTS[1], INSTANTS[2])):
        finisher.types(later, f"log {part} under --at {first}", f"log {part} over --at {second}")
        (line,) = finisher.asks(later, f"on {part}")
        assert [c["product"] for c in line["coats"]] == ["under", "over"]
        assert line["standing"]["on_it"] == "over"


def test_fc092_a_time_without_a_zone_is_the_shops_and_a_bare_number_is_refused(finisher: Finisher):
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
        "part new desk/slices --count 6 --species beech --face top --face old:joint --face sawn:joint",
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
    assert "coat" not in finisher.types("2026-05-01 08:00", "ready").split("PUT TOGETHER")[0].split(
        "BENCH NOW"
    )[-1].replace("OPEN RAGS", "")
    said = finisher.types("2026-05-01 08:10", "log board glue-up --glue 'yellow pva'")
    assert "caution: finish on a glue face of slices: glue needs bare wood" in said
    said = finisher.types("2026-05-03 08:10", "fault board open-joint --where 'second and third'")
    assert "finish, wax or oil on the glue face: oil on slices ×6, old (act 6)" in said
    assert "every other joint with the same history" in said
    finisher.types("2026-05-03 08:20", "log board untape --face sawn")
    assert "finish on a glue face" in finisher.types("2026-05-03 08:21", "ready")
    finisher.types("2026-05-03 08:30", "off board --face old --scraped")
    assert "finish on a glue face" not in finisher.types("2026-05-03 08:31", "ready")
