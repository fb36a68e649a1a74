"""What was done to a film and seen on it, in every answer: `ready`, `plan`, `why` and `log` agree.

Common practice; the shop is invented. What each says in full is told in tests/stories.
"""

from __future__ import annotations

from tests.finisher import Finisher, said

SHOP = """room new shop
room night shop 20C
product new colour --class wiping-stain
product new poly --class oil-polyurethane
product new clear --class lacquer-sprayed
steps new stained colour poly*4
steps new sprayed clear*12
part new table/top --species oak --steps stained
part new table/apron --species oak --steps sprayed
shop hours 'mon-sun 7:00-23:00'
air 21C 50%"""
MON, THU = "2026-06-01", "2026-06-04"


def opened(finisher: Finisher) -> None:
    finisher.types(f"{MON} 09:00", *SHOP.splitlines())


def held_in_every_answer(
    finisher: Finisher, now: str, short: str, whole: str, level: str = "stop"
) -> None:
    """What holds a coat stands on the bench, keeps it out of the plan, and is said by `log`."""
    assert short in finisher.reads(now, "ready")
    plan = finisher.types(now, "plan")
    assert short in plan[plan.index("NOT PLANNED") : plan.index("COUNTED ON")]
    assert whole in said(finisher.why(now, "top"))
    assert f"{level}: top: {whole}" in finisher.types(now, "log top poly")


def test_a_late_wipe(finisher: Finisher):
    opened(finisher)
    finisher.types(f"{MON} 09:10", "log top colour")
    wiped = finisher.types(f"{MON} 11:40", "log top wipe")
    assert "surplus colour wiped too late: rub it off with its own solvent" in wiped
    finisher.types(f"{THU} 09:00", "air 21C 50%")
    held_in_every_answer(
        finisher, f"{THU} 09:01", "surplus colour wiped too late", "colour was wiped 2.5 h after"
    )


def test_a_late_wipe_that_a_test_or_its_true_time_settles(finisher: Finisher):
    opened(finisher)
    finisher.types(f"{MON} 09:10", "log top colour")
    act = finisher.asks(f"{MON} 11:40", "log top wipe")["act"]
    finisher.types(f"{THU} 09:00", "air 21C 50%")
    assert "wiped" in said(finisher.why(f"{THU} 09:01", "top"))
    finisher.types(f"{THU} 09:02", f"amend {act} --at '{MON} 09:20'")
    assert "wiped" not in said(finisher.why(f"{THU} 09:03", "top"))
    finisher.types(f"{THU} 09:04", "undo", "check top dry")
    assert "wiped" not in said(finisher.why(f"{THU} 09:05", "top"))


def test_cupped_waits_for_flat(finisher: Finisher):
    opened(finisher)
    finisher.types(f"{MON} 09:10", "log top colour")
    finisher.types(f"{MON} 09:15", "log top wipe")
    finisher.types(f"{THU} 09:00", "air 21C 50%", "fault top cupped")
    held_in_every_answer(finisher, f"{THU} 09:01", "cupped", "cupped on colour", "caution")


def test_ten_coats_of_lacquer_and_four_in_a_day(finisher: Finisher):
    opened(finisher)
    for hour in range(9, 19):
        told = finisher.types(
            f"{MON} {hour:02}:30", "air 21C 50%", "log apron clear --method spray"
        )
        of_a_day = f"coat {hour - 8} of nitrocellulose lacquer, sprayed within a day"
        assert (of_a_day in told) == (hour - 8 > 5), told
    assert "stop: apron: this coat brings the film to about 183 µm dry, 152 µm in all" in told
    ready = finisher.types(f"{MON} 21:30", "air 21C 50%", "ready -v")
    assert "it carries all the film that it bears, 152 µm" in ready
    assert "in all at most" in said(finisher.why(f"{MON} 21:31", "apron"))


def test_soft_twice_by_the_same_method(finisher: Finisher):
    opened(finisher)
    finisher.types(f"{MON} 09:10", "log top colour")
    finisher.types(f"{MON} 09:15", "log top wipe")
    for day in (4, 14):
        finisher.types(
            f"2026-06-{day:02} 09:00", "air 21C 50%", "log top poly --method brush --scuffed"
        )
        finisher.types(f"2026-06-{day + 5:02} 09:00", "air 21C 50%", "check top tacky")
        if day == 4:
            finisher.types("2026-06-09 09:30", "off top --to bare")
    held_in_every_answer(
        finisher, "2026-06-19 09:01", "stayed soft twice", "poly stayed soft here twice"
    )


def test_a_coat_too_many_for_a_day_is_not_told_of_the_day_when_it_is_due(finisher: Finisher):
    finisher.types(f"{MON} 06:00", "room new shop", "product new spar --class spar-varnish")
    finisher.types(f"{MON} 06:00", "product new shellac --class shellac-2lb", "air 23C 50%")
    finisher.types(f"{MON} 06:00", "part new job/sill --species 'white oak'", "log sill spar")
    finisher.types(f"{MON} 06:00", "part new job/leg --species pine")
    assert "within a day" not in said(finisher.why(f"{MON} 16:00", "sill"))
    for clock in ("06:30", "09:30", "12:30", "15:30", "18:30", "21:30"):
        assert "within a day" not in finisher.types(
            f"{MON} {clock}", "air 23C 50%", "log leg shellac"
        )
    assert "would be coat 7 of dewaxed shellac, 2 lb cut within a day" in finisher.types(
        "2026-06-02 03:30", "air 23C 50%", "log leg shellac"
    )
