"""Colour that never becomes insoluble: what carries the coat over it decides, and no time does.

Dry water dye dissolves in water alone, dry alcohol dye in alcohol and in lacquer thinner
(Woodworking magazine, understanding stains and dyes; lacquer thinner, and what carries waterborne:
common practice).
"""

from __future__ import annotations

from collections.abc import Iterator

from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.overcoat import LiftedBy, OvercoatAnswer, OvercoatRule, rule_between
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
# Of a dye: the carriers that dissolve it again.
DISSOLVES = {
    "water-dye": {"water"},
    "alcohol-dye": {"ethanol", "butyl-acetate"},
}
CLEAR = ("shellac", "lacquer", "oil-varnish", "waterborne")
HARMED = (OvercoatAnswer.BARRIER, OvercoatAnswer.TEST)


def clear_over(dye: str) -> Iterator[FinishClass]:
    for of in FACTS.classes.values():
        # A toner is misted on.
        if of.family in CLEAR and of.topcoat and Method.BRUSH in of.methods:
            yield of
    yield FACTS.finish_class("latex-enamel")


def row(dye: str, over: FinishClass, method: Method | None) -> OvercoatRule:
    found = rule_between(FACTS, FACTS.finish_class(dye), over, method)
    assert found is not None, (dye, over.key, method)
    return found


PAIRS = [(dye, of) for dye in DISSOLVES for of in clear_over(dye)]


def test_there_are_pairs_of_either_kind():
    kinds = {(dye, of.carrier in DISSOLVES[dye]) for dye, of in PAIRS}
    assert kinds == {("water-dye", True), ("water-dye", False),
                     ("alcohol-dye", True), ("alcohol-dye", False)}  # fmt: skip


@every_row(("dye", "over"), PAIRS, ids=lambda value: getattr(value, "key", value))
def test_what_dissolves_a_dye_is_told_of_while_it_goes_on_and_never_waited_for(
    dye: str, over: FinishClass
):
    brushed = row(dye, over, Method.BRUSH)
    # Of alcohol dye under waterborne trade pages differ: it is tried on a board (common practice).
    harmed = over.carrier in DISSOLVES[dye] or (dye == "alcohol-dye" and over.carrier == "water")
    assert brushed.at_once == harmed
    if harmed:
        assert brushed.answer in HARMED
        assert brushed.remedy
        assert "however long" in brushed.reason
        assert brushed.lifted_by is LiftedBy.ANY_FILM
        assert brushed.wait is not None
        assert brushed.wait.high_h <= 24, "dry enough is a matter of hours, never of days"
    else:
        assert brushed.answer is OvercoatAnswer.OK


@every_row(("dye", "over"), [(dye, of) for dye, of in PAIRS if of.carrier in DISSOLVES[dye]],
           ids=lambda value: getattr(value, "key", value))  # fmt: skip
def test_a_light_sprayed_coat_does_not_drag_it(dye: str, over: FinishClass):
    if Method.SPRAY in over.methods:
        assert row(dye, over, Method.SPRAY).answer is OvercoatAnswer.OK
