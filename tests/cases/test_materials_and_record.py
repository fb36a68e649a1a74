"""Questions about cans, mixes and cuts."""

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
    standing = finisher.asks("2026-09-08 18:31", "when box")["lines"][0]["standing"]
    assert standing["answer"] == "blocked", "a week late is slow, three weeks are past hope"
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
    """Wednesday's mix as seal coat on Thursday, Friday's over it: wrinkles here, not there.

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


def test_heat_shortens_a_pot_life_and_cold_lengthens_none(finisher: Finisher):
    """Twice as fast for each 10 °C (UFGS-09971): 4 h at 23 °C are 2 h at 33 °C, 4 h at 11 °C."""
    finisher.types("2026-06-03 10:00", "product new clear --class waterborne-two-part")
    ends = []
    for day, warmth in enumerate((11, 23, 33), 3):
        when = f"2026-06-{day:02} 10:00"
        finisher.types(when, f"air {warmth}C 50%")
        finisher.types(when, f"mix clear base:1L hardener:100ml --use-by 4h --name at-{warmth}")
        (mix,) = (c for c in finisher.asks(when, "can list") if c["how"] == "open")
        ends.append(mix["use_by"][11:16])
        finisher.types(when, f"can emptied at-{warmth}")
    assert ends == ["13:00", "13:00", "11:00"]


def test_fc072_shellac_of_2007_is_tried_on_glass_and_the_job_begun_again(finisher: Finisher):
    """It never will harden: wash it off with alcohol, a fresh batch, and it is done in hours.

    Good shellac sands to powder the day after; a drop of it on glass is dry in a quarter of an
    hour. Authorities give three months to a year: a range, and its source. The trap: one date, or
    none at all.
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
