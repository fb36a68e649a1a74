"""What checks tell of how long a film took: common practice in telling it, invented hours.

Everything stands at the label's air, so that an hour is an hour of the label.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

import pytest
from msgspec.structs import replace

from finishlog.core.bench.cans import Cans
from finishlog.core.clock.pace import PaceKey, Paces
from finishlog.core.clock.pace_posterior import Bracket
from finishlog.core.finish.classes import Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation
from finishlog.core.pace.learnt import learn
from finishlog.core.pace.seen import Seen, films, observed
from finishlog.core.zone.stood_in import rooms_air
from tests.rows import every_row
from tests.shop_of import FACTS, SHELLAC, VARNISH, WATERBORNE, Story, figure, whole_part
from tests.stories.telling import Teller

LABEL = {Stage.TACK_FREE: figure(4), Stage.SAND: figure(8), Stage.CLAMP: figure(24)}
WITHIN = 0.01


def a_door(*, pieces: int = 1) -> Story:
    story = Story()
    story.part(pieces=pieces)
    return story.steady(since=-12)


def coated(hour: float = 0.0, **more) -> Story:
    story = a_door()
    story.coat(hour, VARNISH, label=LABEL, **more)
    return story


def told(story: Story, until: float = 1000) -> tuple[Seen, ...]:
    woods = {target: part.species for part in story.parts for target in whole_part(part)}
    shop, log = story.shop, story.log(until)
    cans = Cans(shop, log.entries, rooms_air(shop, log, story.zone), FACTS)
    stacks = films(shop, log, story.zone, woods, FACTS, cans.came_from)
    return observed(stacks, FACTS)


def bracket(story: Story) -> Bracket | None:
    found = told(story)
    assert len(found) <= 1
    return found[0].bracket if found else None


def checked(*found: tuple[float, Found | Operation]) -> Story:
    story = coated()
    for hour, what in found:
        if isinstance(what, Operation):
            story.work(hour, what)
        else:
            story.check(hour, what)
    return story


@every_row(
    ("found", "expected"),
    [
        ([(5, Found.TACKY), (7, Found.DRY)], (4, 5, 7)),
        ([(3, Found.TACKY), (5, Found.TACKY), (7, Found.DRY), (9, Found.DRY)], (4, 5, 7)),
        ([(6, Found.TACKY)], (4, 6, inf)),
        ([(3, Found.DRY)], (4, 0, 3)),
        # It was dry, then it was not: the last failure counts.
        ([(3, Found.DRY), (5, Found.TACKY)], (4, 5, inf)),
        ([(10, Found.GUMS), (14, Found.POWDER)], (8, 10, 14)),
        ([(30, Found.PRINTS), (40, Found.NO_PRINT)], (24, 30, 40)),
        ([(10, Found.GUMS), (14, Operation.SAND)], (8, 10, 14)),
        ([(6, Operation.SCUFF)], (8, 0, 6)),
        # Sanded, and it gummed: no pass.
        ([(9, Operation.SAND), (9, Found.GUMS)], (8, 9, inf)),
        ([(9, Operation.SAND), (10, Found.GUMS)], (8, 10, inf)),
        # Several tests of one coat are one observation: (1.25, 1.5] of its label.
        ([(5, Found.TACKY), (20, Found.DRY), (12, Found.POWDER)], (4, 5, 6)),
        # They contradict each other: soft at 2.5 times the label, sanded at 1.5 times.
        ([(10, Found.TACKY), (12, Operation.SAND)], (4, 10, inf)),
    ],
)
def test_one_coat_is_one_bracket(found, expected):
    assert bracket(checked(*found)) == pytest.approx(Bracket(*expected), abs=WITHIN)


@every_row(
    "found",
    [
        [],
        [(30, Found.SMELLS), (40, Found.NO_SMELL)],
        [(30, Found.FLAKES)],
        [(5, Operation.DENIB)],
        # Nobody would have expected anything else.
        [(1, Found.TACKY)],
        [(13, Found.DRY)],
        [(1, Found.TACKY), (13, Found.DRY)],
        [(5, Operation.WIPE)],
    ],
)
def test_what_tells_no_hours(found):
    assert bracket(checked(*found)) is None


def test_a_vague_evening_widens_the_bracket_both_ways():
    story = a_door()
    story.coat((0, 3), VARNISH, label=LABEL)
    story.check((8, 10), Found.TACKY)
    story.check((11, 12), Found.DRY)
    # At the least 5 h after the coat, at the most 12.
    assert bracket(story) == pytest.approx(Bracket(4, 5, 12), abs=WITHIN)


def test_hours_are_those_of_the_label_in_colder_air():
    story = Story()
    story.part()
    story.steady(13.0, since=-12)
    story.coat(0, VARNISH, label=LABEL)
    story.check(12, Found.TACKY)
    # Oxidation at half the pace 10 °C below the label's air.
    assert bracket(story) == pytest.approx(Bracket(4, 6), abs=WITHIN)


def test_eight_doors_coated_together_are_one_coat():
    story = a_door(pieces=8)
    story.coat(0, VARNISH, label=LABEL)
    story.check(5, Found.TACKY)
    story.check(7, Found.DRY)
    found = told(story)
    assert [each.bracket for each in found] == [pytest.approx(Bracket(4, 5, 7), abs=WITHIN)]


def test_pieces_that_differ_are_believed_by_the_slowest():
    story = a_door()
    other = story.part("other")
    both = whole_part(story.parts[0]) | whole_part(other)
    coat = story.coat(0, VARNISH, label=LABEL)
    story.entries[story.entries.index(coat)] = replace(coat, targets=both)
    story.check(5, Found.DRY)
    story.check(6, Found.TACKY, other)
    story.check(8, Found.DRY, other)
    assert bracket(story) == pytest.approx(Bracket(4, 6, 8), abs=WITHIN)


def keys(story: Story) -> list[PaceKey]:
    return [each.key for each in told(story)]


def test_first_and_later_coats_methods_and_cans_are_apart():
    story = a_door()
    for day, method in enumerate((Method.BRUSH, Method.BRUSH, Method.WIPE)):
        hour = 100 * day
        story.coat(hour, VARNISH, label=LABEL, method=method)
        story.check(hour + 7, Found.DRY)
    varnish = story.product(VARNISH)
    assert keys(story) == [
        PaceKey(varnish, first=True, method=Method.BRUSH),
        PaceKey(varnish, first=False, method=Method.BRUSH),
        PaceKey(varnish, first=False, method=Method.WIPE),
    ]


def test_over_a_sealer_a_coat_is_a_later_one():
    story = a_door()
    story.coat(-100, SHELLAC)
    story.coat(0, VARNISH, label=LABEL)
    story.check(7, Found.DRY)
    assert keys(story) == [PaceKey(story.product(VARNISH), first=False)]


def test_a_film_that_stands_still_is_not_slow():
    slow = checked((26, Found.TACKY))
    assert bracket(slow) is not None
    assert bracket(checked((26, Found.TACKY), (50, Found.TACKY))) is None


def test_a_film_soft_when_it_might_be_hard_teaches_nothing():
    assert bracket(checked((2000, Found.TACKY))) is None


def test_damaging_cold_teaches_nothing():
    story = Story()
    story.part()
    story.coat(0, WATERBORNE)
    story.steady(2.0, since=-6)
    story.check(30, Found.TACKY)
    assert bracket(story) is None


def story_of(line: str) -> Story:
    teller = Teller(f"{line}; ask rest")
    teller.told()
    return teller.story


# Each keeps a film soft by itself, whatever its product: what a check finds there is no pace.
NO_MATTER_OF_PACE = {
    "alkyd-varnish 08:00; check tacky +30h": True,
    "alkyd-varnish 08:00; check tacky @rim +30h": False,
    "alkyd-varnish 260um 08:00; check tacky +30h": False,
    "can tin alkyd-varnish opened:900d; alkyd-varnish from-tin 08:00; check tacky +30h": False,
    "can tin alkyd-varnish; alkyd-varnish from-tin 08:00; check tacky +30h": True,
    "can tin alkyd-varnish; alkyd-varnish from-tin 08:00; check tacky +30h; condemned tin": False,
    "alkyd-varnish 08:00; fault run +2h; check tacky +28h; mend": False,
    "alkyd-varnish 08:00; fault dust +2h; check tacky +28h": True,
    "air 4C 60%; alkyd-varnish 08:00; check tacky +90h": False,
    "air 14C 60%; alkyd-varnish 08:00; check tacky +90h": True,
    "boiled-linseed-oil 08:00; check tacky +3d": False,
    "boiled-linseed-oil 08:00; wipe +15m; check tacky +3d": True,
    "boiled-linseed-oil 08:00; wipe +7h; check tacky +3d": False,
    "boiled-linseed-oil flooded 08:00; check tacky +3d": False,
    "boiled-linseed-oil thin 08:00; check tacky +3d": True,
    # Evaporated by the next day: what is soft then is old, not slow.
    "shellac-2lb 08:00; check tacky +3h": True,
    "shellac-2lb 08:00; check tacky +3d": False,
    "lacquer-brushed 08:00; check gums +5d": False,
    "waterborne-clear 08:00; check tacky +8h": True,
    "conversion-varnish 08:00; check tacky +5h": True,
    "conversion-varnish from-nothing 08:00; check tacky +5h": False,
    # What lies below keeps it soft, or is published not to take it.
    "paste-wax 08:00; alkyd-varnish +9d; check tacky +30h": False,
    "shellac-2lb 08:00; alkyd-varnish +9d; check tacky +30h": True,
}


@every_row("line", NO_MATTER_OF_PACE)
def test_what_keeps_a_film_soft_by_itself_teaches_no_pace(line: str):
    """That each of them does is common practice, or published with its class, pair or fault."""
    taught = NO_MATTER_OF_PACE[line]
    soft = [each for each in told(story_of(f"maple top; {line}")) if each.bracket.soft_h]
    assert bool(soft) == taught


def test_a_wood_that_keeps_a_first_coat_soft_teaches_no_pace():
    """Extractives of oily wood keep an oxidising finish tacky for weeks (oily-exotics-article)."""
    assert not told(story_of("rosewood top; alkyd-varnish 08:00; check tacky +30h"))
    assert told(story_of("rosewood top; shellac-2lb 08:00; alkyd-varnish +1d; check tacky +30h"))


@pytest.mark.parametrize(
    ("line", "proved"),
    [
        # Wiped off, oil feels dry at once: from memory.
        ("boiled-linseed-oil 08:00; wipe +10m; check dry +10m", False),
        ("boiled-linseed-oil 08:00; wipe +10m; check dry +20h", True),
        ("alkyd-varnish 08:00; check dry +10m", False),
        ("alkyd-varnish 08:00; check dry +5h", True),
        ("oil-polyurethane 08:00; check powder +1h", False),
        ("shellac-2lb 08:00; check dry +15m", True),
        ("waterborne-clear 08:00; check no-print +1h", False),
    ],
)
def test_a_pass_that_came_too_soon_neither_proves_nor_teaches(line: str, proved: bool):
    """How soon is our own assumption (facts: pace); that a film takes its time, common practice."""
    story = story_of(f"maple top; air 12C 60%; {line}")
    tack_free = story.state(200).top.stage(Stage.TACK_FREE)
    assert (tack_free.proved_by is not None) == proved
    assert bool(told(story)) == proved


def test_air_that_nobody_read_teaches_of_such_air_alone():
    story = Story()
    story.part()
    story.coat(0, VARNISH, label=LABEL)
    story.check(5, Found.TACKY)
    story.check(7, Found.DRY)
    assert bracket(story) == Bracket(4, 5, 7)
    (key,) = keys(story)
    unread = learn(told(story), FACTS.pace)
    assert key.unread
    assert unread.factor(key._replace(first=False)) is not None
    assert unread.factor(key._replace(unread=False)) is None


def test_air_that_was_read_teaches_of_air_that_is_not():
    story = checked((5, Found.TACKY), (7, Found.DRY))
    (key,) = keys(story)
    assert not key.unread
    assert learn(told(story), FACTS.pace).factor(key._replace(unread=True)) is not None


def test_a_coat_over_a_wet_one_teaches_nothing():
    story = a_door()
    story.coat(-2, VARNISH, label=LABEL)
    story.coat(0, VARNISH, label=LABEL)
    story.check(9, Found.TACKY)
    assert bracket(story) is None


def test_what_a_later_coat_covers_is_not_checked_through_it():
    story = coated()
    story.coat(100, VARNISH, label=LABEL)
    story.check(107, Found.DRY)
    assert [each.key.first for each in told(story)] == [False]


def of_coats(*tells: Bracket, first: bool = False, method: Method | None = None) -> Iterable[Seen]:
    story = a_door()
    for told_of in tells:
        coat = story.coat(0, VARNISH, method=method)
        yield Seen(PaceKey(7, first, method), coat, told_of)


SLOW, QUICK = Bracket(4, 5, 7), Bracket(4, 0, 3)


def test_what_is_learnt_names_its_acts():
    seen = list(of_coats(SLOW, SLOW))
    found = learn(seen, FACTS.pace).factor(PaceKey(7, first=False))
    assert found.acts == tuple(each.coat.act for each in seen)
    assert found.factor == found.median > 1.36


def test_one_coat_of_a_method_is_not_enough_alone():
    brushed = PaceKey(7, first=False, method=Method.BRUSH)
    sprayed = PaceKey(7, first=False, method=Method.SPRAY)
    seen = [
        *of_coats(SLOW, method=Method.BRUSH),
        *of_coats(QUICK, QUICK, method=Method.SPRAY),
    ]
    paces = learn(seen, FACTS.pace)
    assert paces.factor(brushed).key.any_way
    assert paces.factor(brushed).coats == 3
    assert paces.factor(sprayed).key == sprayed
    assert paces.factor(sprayed).median < paces.factor(brushed).median


def test_first_and_later_coats_are_learnt_apart():
    first = of_coats(SLOW, first=True)
    paces = learn([*first, *of_coats(QUICK, QUICK)], FACTS.pace)
    assert paces.factor(PaceKey(7, first=True)).median > 1.36
    assert paces.factor(PaceKey(7, first=False)).median < 1
    assert not paces.factor(PaceKey(7, first=False)).key.first
    assert learn([], FACTS.pace) == Paces.none


def test_until_later_coats_were_checked_they_go_by_the_first_ones():
    """A second coat often takes no less than the first. common practice"""
    paces = learn(of_coats(SLOW, first=True), FACTS.pace)
    assert paces.factor(PaceKey(7, first=False)) == paces.factor(PaceKey(7, first=True))
    assert learn(of_coats(SLOW), FACTS.pace).factor(PaceKey(7, first=True)) is None
