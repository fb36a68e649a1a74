"""One sick part beside a sound one: the true cause of the story comes first, or among the first.

Each story is invented, and told as it would be logged; that a finisher compares with what came out
right is common practice.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from finishlog.core.log.entries import Coat
from finishlog.core.log.words import FaultKind, Found, Operation
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.shop.things import Part
from finishlog.core.trouble.causes import looked_into
from finishlog.core.trouble.suspect import Suspect
from tests.rows import every_row
from tests.shop_of import BLEND, FACTS, LACQUER, LINSEED, SHELLAC, STAIN, VARNISH, WATERBORNE
from tests.trouble_of import Trouble

CATALYSED = "lacquer-postcatalysed"


def two(sick: str = "maple", sound: str = "maple", rooms: tuple[int, int] = (1, 1)) -> Trouble:
    story = Trouble()
    if 2 in rooms:
        story.another_room()
    story.part("sick", species=sick, room=rooms[0])
    story.part("sound", species=sound, room=rooms[1])
    return story


def coats(story: Trouble, hours: tuple[float, float], class_key: str, **how: object) -> list[Coat]:
    """Coat the sick part at the first hour, the sound one at the second."""
    both = zip(hours, story.parts, strict=True)
    return [story.coat(hour, class_key, on=part, **how) for hour, part in both]  # type: ignore[arg-type]


def put_right(story: Trouble, coat: Coat, **changes: object) -> None:
    story.entries[story.entries.index(coat)] = replace(coat, **changes)


def parts(story: Trouble) -> tuple[Part, Part]:
    sick, sound = story.parts
    return sick, sound


def found(story: Trouble, hour: float) -> list[Suspect]:
    zones = story.look(hour).zones
    state = next(z for z in zones if z.member.name == "sick" and (z.faults or z.checks))
    log = story.log(hour)
    of = state.faults[-1] if state.faults else state.checks[-1]
    return list(looked_into(of, state, log, zones, FACTS)[0])


def blushed_in_the_damp_room() -> list[Suspect]:
    story = two(rooms=(1, 2))
    story.steady(21, 84, since=-12, room=1).steady(21, 50, since=-12, room=2)
    coats(story, (0, 0.2), LACQUER)
    story.check(3, Found.DRY, on=story.parts[1])
    story.fault(3, FaultKind.BLUSH, on=story.parts[0])
    return found(story, 4)


def peels_over_a_stain_of_two_hours() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    for part in story.parts:
        story.coat(0, STAIN, on=part)
        story.work(0.1, Operation.WIPE, on=part)
    story.coat(2, WATERBORNE, on=sick)
    story.coat(40, WATERBORNE, on=sound)
    story.check(60, Found.HOLDS, on=sound)
    story.check(60, Found.FLAKES, on=sick)
    return found(story, 61)


def wrinkled_over_a_coat_of_ten_hours() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    coats(story, (0, 0), VARNISH)
    story.coat(10, VARNISH, on=sick)
    story.coat(50, VARNISH, on=sound)
    story.fault(60, FaultKind.WRINKLE, on=sick)
    return found(story, 61)


def crazed_with_nine_coats() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    for n in range(9):
        story.coat(24 * n, LACQUER, on=sick)
    for n in range(2):
        story.coat(24 * n, LACQUER, on=sound)
    story.check(230, Found.HOLDS, on=sound)
    story.fault(240, FaultKind.CRAZE, on=sick)
    return found(story, 241)


def dust_of_the_neighbour() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    story.coat(0, VARNISH, on=sound)
    story.check(30, Found.DRY, on=sound)
    story.coat(48, VARNISH, on=sick)
    story.work(49, Operation.SAND, on=sound)
    story.fault(70, FaultKind.DUST, on=sick)
    return found(story, 71)


def ran_where_it_was_thick() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    thick, thin = coats(story, (0, 0.1), VARNISH)
    put_right(story, thick, wet_film_um=260.0)
    put_right(story, thin, wet_film_um=80.0)
    story.check(30, Found.DRY, on=story.parts[1])
    story.fault(30, FaultKind.RUN, on=story.parts[0])
    return found(story, 31)


def marked_where_it_was_stacked_early() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    coats(story, (0, 0), VARNISH)
    story.work(20, Operation.STACK, on=sick)
    story.check(200, Found.NO_PRINT, on=sound)
    story.fault(200, FaultKind.PRINT_MARK, on=sick)
    return found(story, 201)


def blotched_on_cherry_and_not_on_walnut() -> list[Suspect]:
    story = two("cherry", "walnut")
    story.steady(since=-12)
    coats(story, (0, 0), STAIN)
    story.fault(10, FaultKind.BLOTCH, on=story.parts[0])
    story.check(20, Found.DRY, on=story.parts[1])
    return found(story, 21)


def tacky_where_the_oil_was_wiped_late() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    coats(story, (0, 0), BLEND)
    story.work(0.2, Operation.WIPE, on=sound)
    story.work(6, Operation.WIPE, on=sick)
    story.check(100, Found.DRY, on=sound)
    story.check(100, Found.TACKY, on=sick)
    return found(story, 101)


def tacky_where_the_hardener_was_left_out() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    without = story.mix(0, CATALYSED, {"base": 10.0})
    story.coat(0.2, CATALYSED, on=sick, container=without)
    story.coat(0.2, CATALYSED, on=sound)
    story.check(60, Found.HOLDS, on=sound)
    story.check(60, Found.TACKY, on=sick)
    return found(story, 61)


def rubbed_through_where_it_was_sanded_soft() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    coats(story, (0, 0), WATERBORNE)
    story.work(0.5, Operation.SAND, on=sick)
    story.work(30, Operation.SAND, on=sound)
    story.check(31, Found.POWDER, on=sound)
    story.fault(32, FaultKind.RUBBED_THROUGH, on=sick)
    return found(story, 33)


def bled_back_on_oak_and_not_on_maple() -> list[Suspect]:
    story = two("red-oak", "maple")
    story.steady(since=-12)
    coats(story, (0, 0), LINSEED)
    for part in story.parts:
        story.work(0.2, Operation.WIPE, on=part)
    story.check(30, Found.DRY, on=story.parts[1])
    story.fault(3, FaultKind.BLEED_BACK, on=story.parts[0])
    return found(story, 31)


def cupped_with_one_face_coated() -> list[Suspect]:
    story = Trouble()
    story.part("sick", faces=("front", "back"), species="oak")
    story.part("sound", faces=("front", "back"), species="oak")
    story.steady(since=-12)
    sick, sound = parts(story)
    for n in range(3):
        story.coat(50 * n, VARNISH, on=sick, face="front")
        story.coat(50 * n, VARNISH, on=sound)
    story.fault(300, FaultKind.CUPPED, on=sick, face="front")
    return found(story, 301)


def fisheyed_on_rosewood_and_not_on_maple() -> list[Suspect]:
    story = two("rosewood", "maple")
    story.steady(since=-12)
    coats(story, (0, 0), VARNISH)
    story.check(40, Found.DRY, on=story.parts[1])
    story.fault(1, FaultKind.FISHEYE, on=story.parts[0])
    return found(story, 41)


def peeled_where_nobody_scuffed() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    sick, sound = parts(story)
    coats(story, (0, 0), VARNISH)
    story.work(400, Operation.SCUFF, on=sound)
    over, _ = story.coat(401, VARNISH, on=sick), story.coat(401, VARNISH, on=sound)
    put_right(story, over, scuffed_before=False)
    story.check(600, Found.HOLDS, on=sound)
    story.fault(600, FaultKind.PEEL, on=sick)
    return found(story, 601)


def dull_from_the_other_can() -> list[Suspect]:
    story = two()
    story.steady(since=-12)
    one, other = story.can(WATERBORNE, "one"), story.can(WATERBORNE, "other")
    sick, sound = parts(story)
    story.coat(0, WATERBORNE, on=sick, container=one)
    story.coat(0, WATERBORNE, on=sound, container=other)
    story.check(20, Found.DRY, on=sound)
    story.fault(20, FaultKind.WRONG_SHEEN, on=sick)
    return found(story, 21)


def soft_over_shellac_in_the_cold_room() -> list[Suspect]:
    story = two(rooms=(1, 2))
    story.steady(6, 50, since=-12, room=1).steady(22, 50, since=-12, room=2)
    coats(story, (0, 0), SHELLAC)
    coats(story, (30, 30), VARNISH)
    story.check(300, Found.NO_PRINT, on=story.parts[1])
    story.check(300, Found.TACKY, on=story.parts[0])
    return found(story, 301)


def specked_where_steel_wool_met_oak() -> list[Suspect]:
    """Iron and tannin turn black (FPL, Iron Stain on Wood, 2013)."""
    story = two("red-oak", "red-oak")
    story.steady(since=-12)
    sick, _ = parts(story)
    coats(story, (0, 0), SHELLAC)
    story.work(20, Operation.STEEL_WOOL, on=sick)
    coats(story, (30, 30), WATERBORNE)
    story.fault(60, FaultKind.WRONG_COLOUR, on=sick)
    story.check(60, Found.POWDER, on=story.parts[1])
    return found(story, 61)


TRUE: list[tuple[Callable[[], list[Suspect]], Evidence]] = [
    (blushed_in_the_damp_room, Evidence.HUMID),
    (peels_over_a_stain_of_two_hours, Evidence.OIL_BELOW),
    (wrinkled_over_a_coat_of_ten_hours, Evidence.BELOW_TOO_YOUNG),
    (crazed_with_nine_coats, Evidence.FILM_IN_ALL),
    (dust_of_the_neighbour, Evidence.DUSTY),
    (ran_where_it_was_thick, Evidence.THICK),
    (marked_where_it_was_stacked_early, Evidence.HANDLED_EARLY),
    (blotched_on_cherry_and_not_on_walnut, Evidence.BLOTCHY_WOOD),
    (tacky_where_the_oil_was_wiped_late, Evidence.NOT_WIPED),
    (tacky_where_the_hardener_was_left_out, Evidence.DOUBTFUL_CAN),
    (rubbed_through_where_it_was_sanded_soft, Evidence.SANDED_BEFORE),
    (bled_back_on_oak_and_not_on_maple, Evidence.OPEN_PORES),
    (cupped_with_one_face_coated, Evidence.ONE_FACE),
    (fisheyed_on_rosewood_and_not_on_maple, Evidence.OILY_WOOD),
    (peeled_where_nobody_scuffed, Evidence.NOT_SCUFFED),
    (dull_from_the_other_can, Evidence.OTHER_CAN),
    (soft_over_shellac_in_the_cold_room, Evidence.COLD),
    (specked_where_steel_wool_met_oak, Evidence.IRON),
]


@every_row(("story", "true"), TRUE, ids=lambda x: getattr(x, "__name__", str(x)))
def test_the_true_cause_comes_first(story: Callable[[], list[Suspect]], true: Evidence):
    assert story()[0].cause.evidence is true
