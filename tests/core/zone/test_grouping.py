"""A batch is one line until its pieces differ, and then the line names those that do."""

from __future__ import annotations

from msgspec.structs import replace

from finishlog.core.log.words import Found
from finishlog.core.zone.grouping import describe, groups
from tests.shop_of import VARNISH, Story


def chairs() -> Story:
    story = Story()
    story.part("chairs", VARNISH, pieces=4, faces=("seat", "back"))
    story.steady(since=-12)
    story.coat(0, VARNISH)
    return story


def scratched(story: Story, piece: int, face: str, found: Found) -> None:
    """Test one face of one piece."""
    check = story.check(200, found, face=face)
    number = story.parts[0].pieces[piece - 1].id
    only = frozenset(target for target in check.targets if target.piece == number)
    story.entries[-1] = replace(check, targets=only)


def labels(story: Story, hour: float) -> set[str]:
    return {group.label for group in groups(story.look(hour).zones)}


def test_alike_they_are_one_line():
    assert labels(chairs(), 201) == {"chairs ×4"}


def test_what_failed_on_one_face_of_one_piece_stands_alone():
    """The rest of that piece is shown apart from the pieces of which nothing failed."""
    story = chairs()
    scratched(story, 1, "seat", Found.FLAKES)
    scratched(story, 3, "back", Found.FLAKES)
    assert labels(story, 201) == {
        "chairs:1, seat",
        "chairs:1, back",
        "chairs:3, back",
        "chairs:3, seat",
        "chairs:2,4",
    }


def test_a_failed_check_tells_zones_apart_though_every_step_is_behind():
    story = chairs()
    story.check(200, Found.TACKY, face="seat")
    assert labels(story, 201) == {"chairs ×4, seat", "chairs ×4, back"}


def test_no_zone_is_in_two_lines_and_none_is_left_out():
    story = chairs()
    scratched(story, 2, "seat", Found.FLAKES)
    zones = story.look(201).zones
    shown = [state.target for group in groups(zones) for state in group.states]
    assert sorted(shown) == sorted(state.target for state in zones)


def test_a_label_reads_with_its_project_and_without_its_count():
    (group,) = groups(chairs().look(201).zones)
    assert group.label == "chairs ×4"
    assert group.label.full == f"{group.part.project_name}/chairs ×4"
    assert group.label.uncounted == "chairs"


def test_some_pieces_are_named_with_their_numbers_always():
    part = groups(chairs().look(201).zones)[0].part
    label = describe(part, [1, 3], ["seat"])
    assert (label, label.uncounted) == ("chairs:1,3, seat", "chairs:1,3, seat")
    assert describe(replace(part, has_namesake=True), [1, 3], ()) == f"{part.path}:1,3"
