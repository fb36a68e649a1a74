"""Old cans, and mixes that harden in the pot."""

from __future__ import annotations

from tests.finisher import Finisher


def test_oil_finish_from_an_old_can_stalls_and_comes_off(finisher: Finisher):
    """A condemned can is stopped from then on."""
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


def test_layers_of_mixes_of_different_age_are_named(finisher: Finisher):
    """A use-by that was told is held; never top up."""
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
