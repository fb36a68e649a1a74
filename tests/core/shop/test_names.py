"""A name means the thing that has it now; an old name helps only where nothing living has it."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.shop.names import find, old_names
from finishlog.core.shop.selectors import Known, NoSuch, Picked, Several, parse, resolve_with_old
from finishlog.core.shop.things import Alias, Product, ThingKind

CANS = (Product(1, "clear", "waterborne-clear"), Product(2, "sealer", "shellac-2lb"))
ONCE = (
    Alias(ThingKind.PRODUCT, "topcoat", 1),
    Alias(ThingKind.PRODUCT, "seal", 1),
    Alias(ThingKind.ROOM, "shop", 2),
)


def found(typed: str) -> list[str]:
    return [can.name for can in find(typed, CANS, ONCE, ThingKind.PRODUCT)]


def test_by_its_name_by_a_beginning_or_by_what_it_was_called():
    assert found("clear") == ["clear"]
    assert found("CL") == ["clear"]
    assert found("Topcoat") == ["clear"]
    assert found("shop") == [], "that is what a room was called"
    assert found("top") == [], "an old name is typed in full"
    assert found("") == []


def test_an_old_name_beside_a_beginning_gives_both():
    assert found("seal") == ["clear", "sealer"]
    assert found("sealer") == ["sealer"]


def test_the_old_names_stand_in_the_order_they_were_given_up():
    assert old_names(ONCE, ThingKind.PRODUCT, 1) == ("topcoat", "seal")


PARTS = (Known("cabinet/wing", (1, 2), ("front",)), Known("cabinet/door-stop", (1,), ()))
OLD = ((Known("cabinet/door", (1, 2), ("front",)), "cabinet/wing"),)


def test_an_old_path_comes_back_as_the_new_one_and_says_what_was_typed():
    resolved = resolve_with_old(parse("cabinet/door:2@front"), PARTS[:1], OLD)
    assert isinstance(resolved, Picked)
    (chosen,) = resolved.found
    assert (chosen.path, chosen.pieces, chosen.faces) == ("cabinet/wing", (2,), ("front",))
    assert chosen.once == "cabinet/door"


def test_an_old_path_beside_a_beginning_is_not_guessed():
    resolved = resolve_with_old(parse("door"), PARTS, OLD)
    assert resolved == Several("door", ("cabinet/wing", "cabinet/door-stop"))


def test_what_an_old_part_does_not_have_is_still_refused():
    assert isinstance(resolve_with_old(parse("cabinet/door:7"), PARTS[:1], OLD), NoSuch)


words = st.text("abc-", min_size=1, max_size=4)


@given(st.lists(words, min_size=1, unique_by=str.casefold), st.lists(words))
def test_whatever_things_were_called_each_is_found_by_its_own_name(names, once):
    cans = [Product(n, name, "wax") for n, name in enumerate(names)]
    old = [Alias(ThingKind.PRODUCT, name, n % len(cans)) for n, name in enumerate(once)]
    for can in cans:
        assert find(can.name, cans, old, ThingKind.PRODUCT) == [can]
