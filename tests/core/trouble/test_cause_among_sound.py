"""Sick parts beside sound ones, a line each: the true cause of the story is named first.

Each line is invented, in the language of tests/stories/telling, told as it would be logged; the
sick part comes first. That a finisher compares with what came out right is common practice.
"""

from __future__ import annotations

import pytest

from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.causes import asked_first, looked_into
from finishlog.core.trouble.suspect import Suspect
from tests.rows import every_row
from tests.shop_of import FACTS
from tests.stories.telling import Teller
from tests.worded_in import sentence

BOTH = "maple sick and maple sound"
TRUE = {
    "a blister over oil of a day, none over oil of three weeks": (
        f"{BOTH}; sound: tung-oil 08:00; sound: wipe +10m; tung-oil +20d; wipe +10m;"
        " waterborne-clear +1d; sound: waterborne-clear; sound: check holds +9d; fault blister",
        Evidence.OIL_BELOW,
    ),
    "bubbles on a wood with wide vessels, none on maple": (
        "wenge sick and maple sound; shellac-2lb 08:00; sound: shellac-2lb; alkyd-varnish +1d;"
        " sound: alkyd-varnish; sound: check dry +2d; fault bubble",
        Evidence.OPEN_PORES,
    ),
    "brush marks under a hot roof": (
        f"{BOTH}; attic 34C 40% 08:00; move attic; waterborne-clear +1h; sound: waterborne-clear;"
        " sound: check dry +5h; fault brush-mark",
        Evidence.HOT,
    ),
    "surplus wiped off after five hours, and within the quarter": (
        f"{BOTH}; oil-varnish-blend 08:00; sound: oil-varnish-blend; sound: wipe +15m; wipe +5h;"
        " sound: check dry +2d; fault left-thick",
        Evidence.NOT_WIPED,
    ),
    "a dent in what was packed the next day": (
        "cherry sick and cherry sound; oil-polyurethane 08:00; sound: oil-polyurethane; pack +1d;"
        " sound: pack +30d; fault dent +5d; sound: check no-print",
        Evidence.HANDLED_EARLY,
    ),
    "a joint that was glued in the cold": (
        "oak sick; air 4C 60%; joint pva 08:00; air 20C 50% +3d; fault open-joint +9d",
        Evidence.COLD,
    ),
    "it gums where it went on three times as thick": (
        f"{BOTH}; alkyd-varnish 300um 08:00; sound: alkyd-varnish 90um; sound: check powder +3d;"
        " check gums",
        Evidence.THICK,
    ),
    "it prints in the cold room": (
        f"{BOTH}; attic 6C 60% 08:00; move attic; oil-polyurethane +1h; sound: oil-polyurethane;"
        " sound: check no-print +12d; check prints",
        Evidence.COLD,
    ),
    "it smells over oil of two days": (
        f"{BOTH}; sound: boiled-linseed-oil 08:00; sound: wipe +10m; boiled-linseed-oil +30d;"
        " wipe +10m; oil-polyurethane +2d; sound: oil-polyurethane; sound: check no-smell +40d;"
        " check smells",
        Evidence.OIL_BELOW,
    ),
    "its solvent takes it up where the hardener was too little": (
        f"{BOTH}; mix weak conversion-varnish base*100+hardener*2 08:00;"
        " mix right conversion-varnish base*100+hardener*10; conversion-varnish from-weak;"
        " sound: conversion-varnish from-right; sound: check resists +9d; check softens",
        Evidence.DOUBTFUL_CAN,
    ),
    "shellac tacky in the damp room": (
        f"{BOTH}; attic 21C 88% 08:00; move attic; shellac-2lb +1h; sound: shellac-2lb;"
        " sound: check dry +5h; check tacky",
        Evidence.HUMID,
    ),
    "laps where the sun heats the loft": (
        f"{BOTH}; attic 36C 30% 08:00; move attic; wiping-stain +1h; sound: wiping-stain;"
        " wipe; sound: wipe; sound: check dry +1d; fault lap-mark",
        Evidence.HOT,
    ),
    "too dark where the paper was coarser": (
        f"{BOTH}; sand P100 08:00; sound: sand P220; wiping-stain +1h; sound: wiping-stain;"
        " wipe +5m; sound: wipe; sound: check dry +2d; fault wrong-colour",
        Evidence.OTHER_GRIT,
    ),
    "pine stays tacky, maple does not": (
        "pine sick and maple sound; alkyd-varnish 08:00; sound: alkyd-varnish;"
        " sound: check dry +4d; check tacky",
        Evidence.RESINOUS_WOOD,
    ),
    "runs in the cold room": (
        f"{BOTH}; attic 7C 55% 08:00; move attic; oil-enamel +1h; sound: oil-enamel;"
        " sound: check dry +2d; fault run",
        Evidence.COLD,
    ),
    "it comes off, from the can that froze": (
        f"{BOTH}; can icy waterborne-clear; can new waterborne-clear; frozen icy 08:00;"
        " waterborne-clear from-icy +1d; sound: waterborne-clear from-new; sound: check holds +9d;"
        " check flakes",
        Evidence.DOUBTFUL_CAN,
    ),
    "blisters on the wet board": (
        f"{BOTH}; moisture 19% 08:00; sound: moisture 8%; latex-enamel; sound: latex-enamel;"
        " sound: check holds +9d; fault blister",
        Evidence.WET_WOOD,
    ),
    "both in the damp loft, and one from the old jar": (
        f"{BOTH}; attic 19C 82%; can old shellac-2lb opened:600d; can new shellac-2lb opened:9d;"
        " move attic; sound: move attic; shellac-2lb from-old 08:00; sound: shellac-2lb from-new;"
        " sound: check dry +9h; check tacky",
        Evidence.OLD_CONTAINER,
    ),
    "both in the damp loft, and one over wax": (
        f"{BOTH}; attic 19C 84%; move attic; sound: move attic; paste-wax 08:00;"
        " oil-polyurethane +2d; sound: oil-polyurethane; sound: check holds +20d; check flakes",
        Evidence.UNSUITED_BELOW,
    ),
    "crazed over a coat of an hour": (
        f"{BOTH}; spar-varnish 08:00; sound: spar-varnish; spar-varnish +2h;"
        " sound: spar-varnish +3d; sound: check holds +20d; fault craze",
        Evidence.BELOW_TOO_YOUNG,
    ),
    "it came off where it was stacked wet": (
        f"{BOTH}; latex-enamel 08:00; sound: latex-enamel; stack +2h; sound: stack +9d;"
        " sound: check holds +1d; check flakes",
        Evidence.HANDLED_EARLY,
    ),
    "redder where it stood for longer": (
        f"{BOTH}; gel-stain 08:00; sound: gel-stain; sound: wipe +3m; wipe +12m;"
        " sound: check dry +2d; fault wrong-colour",
        Evidence.STOOD_LONGER,
    ),
    "cold all over, and one over oil of a day": (
        f"{BOTH}; air 8C 70%; sound: boiled-linseed-oil 08:00; sound: wipe +9m;"
        " boiled-linseed-oil +40d; wipe +9m; lacquer-brushed +1d; sound: lacquer-brushed;"
        " sound: check dry +3d; fault blush",
        Evidence.OIL_BELOW,
    ),
    "teak stays tacky in the damp, beech does not": (
        "teak sick and beech sound; air 20C 82%; oil-enamel 08:00; sound: oil-enamel;"
        " sound: check dry +9d; check tacky",
        Evidence.OILY_WOOD,
    ),
    "the hardener was left out of one": (
        f"{BOTH}; mix bare lacquer-postcatalysed base 08:00;"
        " mix right lacquer-postcatalysed base*10+hardener; lacquer-postcatalysed from-bare;"
        " sound: lacquer-postcatalysed from-right; sound: check resists +3d; check softens",
        Evidence.DOUBTFUL_CAN,
    ),
    "all in the cold, and one over a stain of three hours": (
        f"{BOTH}; air 9C 60%; sound: wiping-stain 08:00; sound: wipe +5m; wiping-stain +9d;"
        " wipe +5m; waterborne-clear +3h; sound: waterborne-clear; sound: check holds +9d;"
        " fault peel",
        Evidence.OIL_BELOW,
    ),
}


def likely(line: str) -> tuple[Suspect, ...]:
    teller = Teller(f"{line}; ask rest +5m")
    teller.told()
    story = teller.story
    bench, log = story.look(teller.hour), story.log(teller.hour)
    state = next(z for z in bench.zones if z.member.id == teller.main.id)
    of = state.faults[-1] if state.faults else state.checks[-1]
    return looked_into(of, state, log, bench.zones, FACTS)[0]


@every_row("told", TRUE)
def test_the_true_cause_comes_first(told: str):
    line, true = TRUE[told]
    assert next(each.cause.evidence for each in likely(line)) is true


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("maple sick; alkyd-varnish 08:00; fault fisheye +1h", "silicone of a polish"),
        (
            "maple sick; waterborne-clear 08:00; fault wrong-sheen +1d",
            "whether its can was stirred",
        ),
        ("maple sick; alkyd-varnish 08:00; fault print-mark +9d", "when it was clamped"),
        ("maple sick; no-air; shellac-2lb 08:00; check tacky +2h", "which can it came from"),
    ],
)
def test_where_the_log_shows_no_cause_one_question_is_asked_first(line: str, asked: str):
    (question,) = asked_first(likely(line))
    assert sentence(question).startswith(f"what would tell most: {asked}")


def test_where_a_cause_is_shown_nothing_is_asked():
    for line, _ in TRUE.values():
        assert asked_first(likely(line)) == ()
