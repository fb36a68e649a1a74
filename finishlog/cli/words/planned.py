"""What stands on no rule of the trade: what a plan leaves out, what is not asked or set aside."""

from __future__ import annotations

from finishlog.cli.words.said import Words, measured, number, text
from finishlog.core.findings import Finding


def _too_long(of: Finding) -> str:
    assert of.wanted is not None
    return f"one piece takes longer than the longest opening, {of.wanted.value:g} h"


WORDS = {
    "not-asked": Words(""),
    "nothing-against": Words("nothing speaks against it"),
    "set-aside-free": Words(lambda f: "scuff it first" if text(f, "scuff") else "go on"),
    "set-aside-held": Words(
        lambda f: text(f, "needs") + (", then scuff" if text(f, "scuff") else "")
    ),
    "fine": Words("fine"),
    "handed-over": Words("handed over"),
    "kept-board": Words("kept in the shop; its piece was handed over"),
    "board-first": Words(lambda f: f"the sample board {text(f, 'board')} first"),
    "first-night-cold": Words(
        lambda f: f"its first night may have been {measured(f, 0)}: scratch it"
    ),
    "plan-full": Words(
        lambda f: f"nothing is planned after the first {number(f, 'tasks'):.0f} tasks"
    ),
    "plan-too-far": Words(
        lambda f: f"nothing is planned further than {number(f, 'days'):.0f} days ahead"
    ),
    "no-hours": Words("the shop's hours are not on record"),
    "shop-shut": Words("the shop is never open"),
    "no-steps-to-plan": Words("it has no steps"),
    "no-place": Words("it found no place"),
    "too-long": Words(_too_long),
    "not-planned": Words(lambda f: f"{text(f, 'label')} is not planned"),
    "no-figure-to-pack": Words(lambda f: f"no figure for packing {text(f, 'part')}"),
    "part-blocked": Words(lambda f: f"{text(f, 'part')} is blocked"),
    "dries-not": Words(lambda f: f"{text(f, 'part')} does not dry in this air"),
    "nothing-to-plan": Words("nothing is left to plan"),
}
