"""Questions about cans, mixes and cuts."""

from __future__ import annotations

import pytest

from tests.cases.question import Question
from tests.finisher import Finisher

FC072 = Question(
    "shellac of 2007 that does not harden: is it bad, and can the job be saved",
    shows=(
        "made, opened and mixed are dates; beyond half a year a drop is tried for a quarter hour",
        "how long it keeps is a range, with its source",
        "beginning again is a matter of hours, since it washes off",
    ),
    trap="one date, or none at all",
)


def test_fc072_shellac_of_2007_is_tried_on_glass_and_the_job_begun_again(finisher: Finisher):
    finisher.types(
        "2026-05-01 18:00",
        "product new shellac --class shellac-2lb",
        "can new jug --product shellac --made 2007-04-01",
        "part new piano/bench",
        "air 21C 50%",
    )
    told = finisher.reads("2026-05-01 18:10", "log bench shellac --from jug")
    cans = finisher.reads("2026-05-01 18:11", "can list")
    with FC072.line(1):
        assert "jug is 19 years old" in told
        assert "put a drop on glass" in told
        assert "15 min" in told
        assert "made Sun 1 Apr 2007" in cans
    with FC072.line(2):
        assert "91 to 365 d, others say 182 d" in told
        (listed,) = finisher.asks("2026-05-01 18:11", "can list")
        assert [finding["source"] for finding in listed["findings"]] == ["shellac-reference"]
    finisher.types("2026-05-02 18:00", "air 21C 50%", "check bench prints")
    finisher.types("2026-05-03 18:00", "air 21C 50%")
    assert "stalled" in finisher.types("2026-05-03 18:10", "check bench prints")
    why = finisher.reads("2026-05-03 18:11", "why bench")
    with FC072.line(3):
        assert "it comes off with alcohol" in why
        assert "again the same evening" in why
        finisher.types("2026-05-03 18:20", "off bench --washed")
        finisher.types("2026-05-03 18:30", "mix shellac --cut 2lb --jar 250ml --name fresh")
        fresh = finisher.reads("2026-05-03 19:30", "log bench shellac --from fresh")
        assert "recoat after 23:00" in fresh
        assert "years old" not in fresh
    with FC072.trap:
        assert "recoat after" not in finisher.reads("2026-05-01 18:12", "can list")
        assert "keeps" not in fresh


FC073 = Question(
    "cans that froze over the winter: which may still be used",
    shows=(
        "frozen: waterborne is stopped until it is tried, oil wants a look",
        "a cold place for cans is thought of in autumn",
    ),
    trap="one rule for both",
)


def test_fc073_frost_spoils_water_and_does_oil_little_harm(finisher: Finisher):
    finisher.types(
        "2026-03-20 18:00",
        "product new varnish --class alkyd-varnish",
        "product new clear --class waterborne-clear",
        "can new oil-tin --product varnish",
        "can new water-tin --product clear",
        "part new a/b",
        "part new a/c",
        "air 21C 50%",
    )
    finisher.types("2026-03-20 18:10", "can frozen oil-tin", "can frozen water-tin")
    water = finisher.reads("2026-03-20 18:20", "log a/c clear --from water-tin")
    oil = finisher.reads("2026-03-20 18:25", "log a/b varnish --from oil-tin")
    with FC073.line(1):
        assert "stop: water-tin froze" in water
        assert "thaw slowly" in water
        assert "caution: oil-tin froze: cold by itself does this kind little harm" in oil
        finisher.types("2026-03-21 18:00", "can tested water-tin --note smooth")
        assert "water-tin froze" not in finisher.types("2026-03-21 18:01", "can list")
    with FC073.trap:
        assert "stop:" not in oil
    with FC073.line(2):
        assert "must not freeze" not in finisher.types("2026-10-10 18:00", "leave")
        finisher.types("2026-10-10 18:00", "room new store", "room night store -34C!")
        leave = finisher.reads("2026-10-10 18:01", "leave")
        assert "water-tin (clear) must not freeze" in leave
        assert "nights in store go to -34 °C" in leave
        assert "oil-tin" not in leave


FC085 = Question(
    "flakes measured by volume: how is it mixed and written down",
    shows=(
        "an ounce that does not say by weight or by volume is refused",
        "the mix in grams and millilitres",
        "the cut of an earlier mix is put right, and no date moves",
    ),
    trap="an ounce is an ounce",
)


def test_fc085_flakes_are_weighed_and_a_wrong_cut_is_put_right(finisher: Finisher):
    """One ounce by weight to eight fluid ounces is a pound cut: 120 g to the litre of alcohol."""
    finisher.types(
        "2026-01-31 18:00",
        "product new shellac --class shellac-2lb",
        "part new guitar/body",
        "air 21C 50%",
    )
    with FC085.line(1):
        for typed in ("flakes:2oz 'alcohol:8 fl oz'", "'flakes:2 oz wt' 'alcohol:8 oz'"):
            refused = finisher.tries("2026-01-31 18:00", f"mix shellac {typed}")
            assert refused.code == 2
            assert "fl oz" in refused.err
            assert "oz wt" in refused.err
    told = finisher.reads("2026-01-31 18:00", "mix shellac --cut 1lb --jar 236.6ml --tell")
    with FC085.line(2):
        assert " g " in told
        assert " ml " in told
        mixed = finisher.asks("2026-01-31 18:00", "mix shellac --cut 1lb 'alcohol:8 fl oz' --tell")
        flakes, alcohol = mixed["parts"]
        assert flakes["weight_g"] == pytest.approx(28.35, rel=1e-3)
        assert alcohol["volume_ml"] == pytest.approx(236.6, rel=1e-3)
        assert mixed["cut_g_per_l"] == pytest.approx(119.8, rel=1e-3)
    by_volume = finisher.types(
        "2026-01-31 18:00", "mix shellac 'flakes:2 fl oz' 'alcohol:8 fl oz' --tell"
    )
    with FC085.trap:
        assert "flakes are weighed" in by_volume
        assert "lb cut, " not in by_volume.splitlines()[0]
    finisher.types(
        "2026-01-31 18:10", "mix shellac 'flakes:2 oz wt' 'alcohol:8 fl oz' --name flask"
    )
    finisher.types("2026-01-31 18:20", "log body shellac")
    finisher.types("2026-01-31 22:20", "log body shellac")
    before = finisher.types("2026-02-01 09:00", "when body")
    said = finisher.reads("2026-02-01 09:00", "amend 4 --amount 'flakes:0.75 oz wt'")
    with FC085.line(3):
        assert "0.75 lb cut" in said
        assert "was 2 lb cut" in said
        assert "keep their dates: guitar/body" in said
        assert finisher.types("2026-02-01 09:00", "when body") == before
        assert finisher.reads("2026-02-01 09:00", "on body").count("flask, 0.75 lb cut") == 2
        assert "AMENDED" in finisher.types("2026-02-01 09:01", "history")


FC086 = Question(
    "from a 2 lb cut to a 1 lb cut: which ratio",
    shows=(
        "by which definition it is reckoned",
        "the ratio, and millilitres for a given jar",
        "no more precision than there is",
    ),
    trap="half and half",
)


def test_fc086_from_a_two_pound_cut_to_one_pound(finisher: Finisher):
    """5/6 part of alcohol if a pound goes to a gallon of alcohol, 2/3 if to one of the liquid."""
    finisher.types("2026-01-31 18:00", "product new shellac --class shellac-2lb")
    said = finisher.reads("2026-01-31 18:00", "mix shellac --from 2lb --to 1lb --jar 500ml --tell")
    with FC086.line(1):
        assert "volume of alcohol, not of the liquid" in said
        assert "say 2/3 part" in said
    with FC086.line(2):
        assert "about 5/6 part of alcohol" in said
        assert "273 ml 2 lb cut" in said
        assert "227 ml alcohol" in said
        told = finisher.asks(
            "2026-01-31 18:00", "mix shellac --from 2lb --to 1lb --jar 500ml --tell"
        )
        cut, alcohol = (part["volume_ml"] for part in told["parts"])
        assert alcohol / cut == pytest.approx(5 / 6)
        assert cut + alcohol == pytest.approx(500)
    with FC086.line(3):
        assert "about" in said
        assert "It hardly matters: keep to one" in said
    with FC086.trap:
        assert "250 ml" not in said
        assert "1:1" not in said


FC070 = Question(
    "mixed on one day, used on the next, another mix on top",
    shows=(
        "a mix has its hour, its ratio and its end, and a coat says which it came from",
        "a mix past its pot life is called so, and layers of mixes far apart in age",
        "heat shortens the pot life",
    ),
    trap="one product, one can: both coats look the same",
)


def test_fc070_yesterdays_mix_under_todays(finisher: Finisher):
    finisher.types(
        "2026-05-06 08:00",
        "product new boosted --class lacquer-postcatalysed",
        "part new cabinet/door",
        "air 22C 50%",
    )
    mix = "mix boosted base:500ml hardener:50ml --name"
    cool = finisher.reads("2026-05-06 08:00", f"{mix} wed")
    finisher.types("2026-05-07 08:00", "air 22C 50%")
    late = finisher.reads("2026-05-07 08:05", "log door boosted --from wed")
    finisher.types("2026-05-08 08:00", "air 22C 50%", f"{mix} fri")
    over = finisher.reads("2026-05-08 08:05", "log door boosted --from fri")
    on = finisher.reads("2026-05-08 08:10", "on door")
    with FC070.line(1):
        assert cool.startswith("08:00 wed mixed: boosted, 10:1: 500 ml base, 50 ml hardener")
        assert "use it by 16:00" in cool
        assert "coat 1 boosted from wed, 10:1" in on
        assert "coat 2 boosted from fri, 10:1" in on
    with FC070.line(2):
        assert "stop: wed is past its pot life by 16.5 h" in late
        assert "the coat under it went on from a mix 24 h 5 min old, this one from a mix" in over
        assert "door: boosted came from wed, 16.5 h past its pot life" in over
    hot = finisher.reads("2026-05-09 08:00", "air 31C 50%", f"{mix} hot")
    with FC070.line(3):
        assert "use it by 12:30; heat shortens that" in hot
    with FC070.trap:
        assert "past its pot life" not in cool
        assert "fri, " not in over.partition("caution: door: boosted came from")[2].split(";")[0]


FC008 = Question(
    "oil finish from a can opened ten years ago is oily after 20 days: wait, or take it off",
    shows=(
        "the can's date is kept; before the first coat it is doubted, and a scrap test asked for",
        "after 20 days: no more waiting, and what takes it off, the mildest first",
        "the can is to be marked, and is refused from then on",
    ),
    trap="another day is asked for, day after day",
)


def test_fc008_oil_from_a_can_of_ten_years_is_taken_off_and_the_can_marked(finisher: Finisher):
    finisher.types(
        "2026-11-01 10:00",
        "product new oil --class oil-varnish-blend",
        "can new tin --product oil --opened 2016-11-01",
        "steps new oiled oil*2",
        "part new sewing/box --steps oiled",
    )
    before = finisher.reads("2026-11-01 10:01", "ready")
    with FC008.line(1):
        assert "tin oil caution: tin was opened 10 years ago" in before
        assert "keeps 182 to 730 d; put a thin coat on scrap or glass" in before
    finisher.types("2026-11-01 10:05", "log box oil --from tin")
    oily = finisher.reads("2026-11-21 10:00", "check box oily")
    with FC008.line(2):
        assert "stop: more waiting is unlikely to help it now; take it off" in oily
        assert "mineral spirits, then lacquer thinner, then stripper; begin again from a" in oily
        assert "wipe oil until the wood is barely damp" in oily
    with FC008.trap:
        for day in ("2026-11-22 10:00", "2026-12-24 10:00"):
            ready = finisher.reads(day, "ready")
            assert "STOPPED sewing/box oil 2 of 2 stalled: still tacky" in ready
            assert "check it again" not in ready
            assert "recoat blocked: still tacky" in finisher.reads(day, "when box")
    with FC008.line(3):
        assert "caution: nothing more from tin: it is the likeliest cause" in oily
        proposed = "can condemned tin"
        assert f"mark it, do not use: finishlog {proposed};" in oily
        finisher.types("2026-11-21 10:05", proposed)
        assert "do not use" in finisher.reads("2026-11-21 10:06", "can list")
        assert "nothing more from tin" not in finisher.reads("2026-11-22 10:00", "check box oily")
        again = finisher.reads("2026-11-22 10:01", "off box --washed", "log box oil --from tin")
        assert "stop: tin is marked: do not use" in again
        # From a fresh can nobody is asked to mark anything.
        finisher.types(
            "2026-11-22 10:02",
            "can new fresh --product oil --opened 2026-11-20",
            "part new sewing/lid",
            "log lid oil --from fresh",
        )
        soft = finisher.reads("2026-12-24 10:00", "check lid oily")
        assert "stop: more waiting is unlikely to help it now" in soft
        assert "nothing more from" not in soft
