"""What is still open on pieces that leave, what a plan leaves out, what is not asked."""

from __future__ import annotations

from finishlog.cli.words.said import Worder, Words, each_of, found_there, measured, number, text
from finishlog.core.commands import Do
from finishlog.core.film.checks import NO_TIME_MENDS
from finishlog.core.findings import Finding
from finishlog.core.log.words import Found
from finishlog.core.mixing.containers import Lid

_NOTHING_TOUCHES = "nothing may touch it until then but air: no wrap, no blanket, no stacking"


def _parts(said: Worder, remedy: Worder = "") -> Words:
    """Say it of the parts that it is about."""

    def of_them(of: Finding) -> str:
        return f"{text(of, 'parts')}: {said if isinstance(said, str) else said(of)}"

    return Words(of_them, remedy)


def _mix(of: Finding) -> str:
    lid = Lid(text(of, "lid"))
    return "empty it or keep it shut" if lid is Lid.CLOSED else f"empty it, {lid}"


def _checked_again(of: Finding) -> str:
    first = "mend it, and " if Found(text(of, "found")) in NO_TIME_MENDS else ""
    return f"{first}check it again before it goes"


def _too_long(of: Finding) -> str:
    assert of.wanted is not None
    return f"one piece takes longer than the longest opening, {of.wanted.value:g} h"


WORDS = {
    "left-already": Words("by the log it was handed over already", Do.UNDO()),
    "rags-left": Words(
        lambda f: f"oily rags of {text(f, 'of')} are {text(f, 'state')}",
        f"they stay on the screen until something is done with them: {Do.RAGS()}",
    ),
    "goes-with": Words(
        lambda f: f"{text(f, 'parts')}: {text(f, 'answer_is')}", cause="{said}: {short}"
    ),
    "goes-with-failed-check": _parts(
        lambda f: f"the last {text(f, 'test')} check found {found_there(f)}",
        _checked_again,
    ),
    "goes-with-fault": _parts(lambda f: f"{text(f, 'fault')} not mended"),
    "packed-too-soon": _parts(
        lambda f: f"not to be packed before {text(f, 'until')}", _NOTHING_TOUCHES
    ),
    "goes-not-hard": Words(
        lambda f: f"{text(f, 'parts')}: not before {text(f, 'until') or 'a date that air gives'}",
        "keep it here until then; the maker's sheet and your local rules come first",
        cause="{said}: {long}",
    ),
    "packed-undated": _parts("no date for packing in this air", _NOTHING_TOUCHES),
    "packed-by-label": _parts(
        "packed by label time only: the air was not measured", _NOTHING_TOUCHES
    ),
    "steps-left-out": _parts(lambda f: f"still to come: {', '.join(each_of(f, 'steps'))}"),
    "goes-set-aside": _parts("set aside"),
    "goes-bare": _parts("no finish on record"),
    "goes-taped": _parts("tape is still on", "take it off: untape"),
    "goes-unglued": Words(lambda f: f"{text(f, 'part')}: not glued up yet"),
    "goes-with-nut-oil": Words(
        lambda f: f"{text(f, 'of')} is pressed from nuts: it may harm whoever is allergic to them",
        "ask who eats or sleeps there, and say with the piece what went on",
    ),
    "mix-left-open": Words(lambda f: f"{text(f, 'can')} still stands open", _mix),
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
    "out-of-step": Words("another step comes before it"),
    "to-scuff-first": Words("it has to be scuffed first", "scuff it, or plan the coat sooner"),
    "nothing-to-plan": Words("nothing is left to plan"),
}
