"""A part is named by as little as is unique, and is never guessed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.shop.selectors import (
    Chosen,
    Known,
    NoSuch,
    Picked,
    PieceRange,
    Several,
    parse,
    resolve,
)
from tests.rows import every_row

# Invented parts.
SHOP = (
    Known("cabinet/case", (1,), ("outside", "inside")),
    Known("cabinet/doors", (1, 2), ("front", "back", "edges")),
    Known("cabinet/back-panel", (1,), ("front", "back")),
    Known("cabinet/shelves", (1, 2), ()),
    Known("stools/legs", tuple(range(1, 13)), ()),
    Known("stools/seats", (1, 2, 3, 4), ("top", "underside")),
    Known("chest/case", (1,), ("outside", "inside")),
    Known("chest/case-lid", (1,), ()),
)


def paths(text: str) -> list[str]:
    found = resolve(parse(text), SHOP)
    assert isinstance(found, Picked), found
    return [chosen.path for chosen in found.found]


@every_row(
    ("typed", "meant"),
    [
        ("cabinet/doors", "cabinet/doors"),
        ("cab/do", "cabinet/doors"),
        ("doors", "cabinet/doors"),
        ("DOORS", "cabinet/doors"),
        ("  seats ", "stools/seats"),
        ("cab/case", "cabinet/case"),
        ("chest/case", "chest/case"),  # an exact name wins over case-lid
        ("chest/case-", "chest/case-lid"),
        ("ch/case-l", "chest/case-lid"),
    ],
)
def test_a_unique_beginning_is_enough(typed, meant):
    assert paths(typed) == [meant]


def test_every_part_of_a_project_and_every_part():
    assert paths("stools/*") == ["stools/legs", "stools/seats"]
    assert paths("*") == [part.path for part in SHOP]
    assert paths("*/case") == ["cabinet/case", "chest/case"]


def test_a_name_in_two_projects_is_not_guessed():
    found = resolve(parse("case"), SHOP)
    assert found == Several("case", ("cabinet/case", "chest/case"))
    assert resolve(parse("c/case:1"), SHOP) == Several(
        "c/case:1", ("cabinet/case:1", "chest/case:1")
    )


def test_pieces_by_number():
    found = resolve(parse("legs:1-3,7"), SHOP)
    assert found == Picked((Chosen("stools/legs", (1, 2, 3, 7), ()),))
    assert parse("legs:2,5").pieces == (PieceRange(2, 2), PieceRange(5, 5))


def test_without_numbers_all_pieces_are_meant():
    found = resolve(parse("seats"), SHOP)
    assert found == Picked((Chosen("stools/seats", (1, 2, 3, 4), ()),))


def test_a_piece_that_there_is_not_names_those_there_are():
    assert resolve(parse("legs:11-13"), SHOP) == NoSuch("legs:11-13", ("stools/legs:1-12",))


def test_faces_by_name_or_beginning():
    found = resolve(parse("doors@back"), SHOP)
    assert found == Picked((Chosen("cabinet/doors", (1, 2), ("back",)),))
    found = resolve(parse("doors:2@ba,edg"), SHOP)
    assert found == Picked((Chosen("cabinet/doors", (2,), ("back", "edges")),))


def test_a_face_that_there_is_not_names_those_there_are():
    assert resolve(parse("seats@back"), SHOP) == NoSuch(
        "seats@back", ("stools/seats@top", "stools/seats@underside")
    )


def test_every_back_is_the_backs_of_the_parts_that_have_one():
    assert paths("cabinet/*@back") == ["cabinet/doors", "cabinet/back-panel"]


def test_a_slip_of_the_finger_gets_a_suggestion():
    assert resolve(parse("dors"), SHOP) == NoSuch("dors", ("cabinet/doors",))
    assert resolve(parse("cabint/doors"), SHOP) == NoSuch("cabint/doors", ("cabinet/doors",))
    assert resolve(parse("lid"), SHOP) == NoSuch("lid", ("chest/case-lid",))
    assert resolve(parse("wardrobe"), SHOP) == NoSuch("wardrobe", ())


def test_a_project_typed_as_a_part_suggests_all_its_parts():
    assert resolve(parse("stools"), SHOP) == NoSuch("stools", ("stools/*",))


@every_row(
    ("typed", "fault"),
    [
        ("", "names no part"),
        ("cabinet/", "names no part"),
        ("/doors", "names no part"),
        ("a/b/c", "a face is told by @: a/b@c"),
        ("a/b/c/d", "names no part: project/part"),
        ("a//c", "names no part: project/part"),
        ("@back", "names no part"),
        ("doors@", "names no face"),
        ("doors@a,,b", "names no face"),
        ("legs:", "pieces are numbers"),
        ("legs:a", "pieces are numbers"),
        ("legs:1-2-3", "pieces are numbers"),
        ("legs:3-1", "type 1-3"),
        ("cab*/doors", "every name"),
    ],
)
def test_what_cannot_be_taken_apart_says_why(typed, fault):
    with pytest.raises(ValueError, match=fault):
        parse(typed)


NAMES = st.text(st.sampled_from("abAB-1é "), min_size=1, max_size=5).map(str.strip).filter(bool)
SHOPS = st.lists(st.tuples(NAMES, NAMES), min_size=1, max_size=8, unique=True).map(
    lambda pairs: tuple(Known(f"{project}/{part}", (1, 2), ("back",)) for project, part in pairs)
)


@given(SHOPS)
def test_a_full_path_always_means_itself(shop):
    for part in shop:
        assert resolve(parse(part.path), shop) == Picked((Chosen(part.path, (1, 2), ()),))


@given(SHOPS, st.data())
def test_a_beginning_that_only_one_part_has_means_that_part(shop, data):
    part = data.draw(st.sampled_from(shop))
    name = part.path.partition("/")[2]
    start = name[: data.draw(st.integers(1, len(name)))].strip()
    others = [other for other in shop if other is not part]
    if any(o.path.partition("/")[2].casefold().startswith(start.casefold()) for o in others):
        start = part.path
    assert resolve(parse(start), shop) == Picked((Chosen(part.path, (1, 2), ()),))


@given(SHOPS, NAMES)
def test_what_is_offered_can_be_typed(shop, typed):
    found = resolve(parse(typed), shop)
    offered = found.candidates if isinstance(found, Several) else ()
    offered += found.near if isinstance(found, NoSuch) else ()
    for again in offered:
        assert isinstance(resolve(parse(again), shop), Picked)
