"""What is said of what lies below a coat: the pair, one broken off, its surplus."""

from __future__ import annotations

from datetime import timedelta

from finishlog.cli.words.said import Words, each_of, measured, number, text, wanted
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.finish.overcoat import OvercoatAnswer
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import FaultKind, Found

_WET_EDGE = {
    "scuffed": "once it is dry scuff all of it level, the edge first, then coat the whole face",
    "melted": "once it is dry coat the whole face: it melts in; a ridge is scuffed level first",
    "wetted": "finish it before its edge sets, or wipe all of it even; once it is dry the same "
    "again over the whole face wets it",
}
_DRY_EDGE = {
    **_WET_EDGE,
    "scuffed": "scuff all of it level, the edge first, then coat the whole face",
    "melted": "coat the whole face: it melts in; a ridge is scuffed level first",
    "wetted": "the same again over the whole face wets it, and is wiped even; under another coat "
    "its edge shows for good",
}


def _even_it_out(of: Finding) -> str:
    """Say how what was broken off is evened out, and what to type where it was not so."""
    how, act = text(of, "how"), f"{number(of, 'act'):.0f}"
    after = f"finished after all: {Do.AMEND(act, finished=True)}"
    if not text(of, "wet"):
        mark = Do.FAULT("PART", FaultKind.LAP_MARK)
        return f"{_DRY_EDGE[how]}; a mark that stays: {mark}; {after}"
    off = f"take it off while it is wet: {Do.OFF('PART', to='COAT', washed=True)}"
    leave = "" if how == "wetted" else "do not go back into it, it drags: "
    return f"{leave}{_WET_EDGE[how]}; or {off}; {after}"


def _buried(of: Finding) -> str:
    return f"over {text(of, 'under')}" + (", further down" if text(of, "buried") else "")


# What a row says of one kind that it may be; none: nothing is published.
_MAY = {
    OvercoatAnswer.OK: "once it is dry",
    OvercoatAnswer.SCUFF: "scuffed",
    OvercoatAnswer.WAIT: "after a wait",
    OvercoatAnswer.TEST: "on a test board first",
    OvercoatAnswer.BARRIER: "not without a barrier",
    OvercoatAnswer.AVOID: "not at all",
}


def _which_kind(of: Finding) -> str:
    kinds = f"{text(of, 'of')}: if it is {' or '.join(each_of(of, 'kinds'))}"
    if text(of, "itself"):
        return f"{kinds}: itself, at its recoat time"
    if of.value("may") is None:
        return f"{kinds}: nothing is published, on a test board first"
    hours = f", {wanted(of)}" if of.wanted else ""
    return f"{kinds}: {_MAY[OvercoatAnswer(text(of, 'may'))]}{hours}: {text(of, 'reason')}"


def _way(of: Finding) -> str:
    """Say one way of a pair; with the age where it falls between all of them."""
    ends = "within" if text(of, "until") else "after"
    said = f"{text(of, 'way')}: {ends} {wanted(of)}, {text(of, 'reason')}"
    return (
        f"{measured(of)} after it is neither way, the worst of all; {said}" if of.measured else said
    )


def _name_the_kind(of: Finding) -> str:
    return f"once its kind is known: {Do.AMEND('ACT', product='NAME')}" if text(of, "last") else ""


def _sources_differ(of: Finding) -> str:
    """Say how far the published waits of a pair lie apart."""
    if of.value("least") is None:
        return ""
    least = length_words(timedelta(hours=number(of, "least")))
    return f" Sources ask for {least} to {wanted(of)}: the longest binds."


_STAYS_SOFT = "stays soft for good"


def _wiped_late(of: Finding) -> str:
    """Say what helps where it lies open, and what under another film, which no solvent passes."""
    wipe = f"{number(of, 'wipe'):.0f}"
    sooner = f"was it wiped sooner: {Do.AMEND(wipe, at='TIME')}"
    if text(of, "buried"):
        return (
            "leave it alone until it can be tested, then scratch it. It holds: go on, and log it: "
            f"{Do.CHECK('PART', Found.HOLDS)}; it comes off: {Do.OFF('PART', to='bare')}; {sooner}"
        )
    return (
        f"rub it with {_own_solvent(of)} and log it: {Do.LOG('PART', 'solvent-wipe')}; or, once it "
        "has had its time, try a spot with that: the cloth stays clean: "
        f"{Do.CHECK('PART', Found.RESISTS)}; {sooner}"
    )


def _own_solvent(of: Finding) -> str:
    return f"its own solvent ({text(of, 'solvent')})"


def _left_in_part(of: Finding) -> str:
    """Help first that only works within minutes; then what is left."""
    return (
        f"at once, minutes count: wet all of it with {_own_solvent(of)} and a rough pad, wipe it "
        f"even, and log it: {Do.LOG('PART', 'solvent-wipe')}; or the same again over all of it; "
        "if nothing moves any more: let it dry, sand the whole face back evenly: "
        f"{Do.OFF('PART', sanded=True)}; was it wiped: {Do.LOG('PART', 'wipe', at='TIME')}"
    )


def _wiped_late_short(of: Finding) -> str:
    open_ = f"rub it off with {_own_solvent(of)}"
    do = "scratch it when it can be tested" if text(of, "buried") else open_
    late = f"{measured(of)} after it, at most {wanted(of)}"
    return f"surplus {text(of, 'of')} wiped too late: {do} ({late})"


WORDS = {
    "pair": Words(
        lambda f: f"{_buried(f)}: {text(f, 'reason')}{_sources_differ(f)}",
        lambda f: text(f, "remedy"),
        lambda f: f"{_buried(f)}: {text(f, 'reason')}",
    ),
    "which-kind": Words(_which_kind, _name_the_kind),
    "ways": Words(
        _way,
        lambda f: (
            "try it with the real stain on a board, and keep what you choose: "
            f"{Do.PRODUCT_SAYS('STAIN', wait='8h', over=text(f, 'under'), because='dry, board B3')}"
            if not text(f, "until")
            else ""
        ),
    ),
    "pair-unknown": Words(
        lambda f: f"nothing published on {text(f, 'over')} over {text(f, 'under')}",
        "try it on a sample board first",
    ),
    "pair-on-wood": Words(
        lambda f: f"on bare wood: {text(f, 'reason')}", lambda f: text(f, "remedy")
    ),
    "last-chance": Words(
        lambda f: (
            f"the last chance to put {text(f, 'of')} right: nothing of it goes over "
            f"{text(f, 'over')}"
        ),
        "look it all over first",
    ),
    "broken-off": Words(
        lambda f: f"{text(f, 'of')} was broken off: what lies on {text(f, 'covered')} is no coat",
        _even_it_out,
        lambda f: f"{text(f, 'of')} broken off: even it out",
    ),
    "edge-first": Words("it was broken off: scuff its edge level first"),
    "wiped-in-time": Words(
        lambda f: f"was the surplus {text(f, 'of')} wiped off in time? It is not on record",
        "test that it is not sticky, or log the wipe with its time",
    ),
    "flooded-left": Words(
        lambda f: (
            f"{text(f, 'of')} was flooded on, and no wipe is on record: what stands on the wood "
            "stays soft for good"
        ),
        "test that it is not sticky, rub it off with its own solvent, or log the wipe with its "
        "time",
        lambda f: f"{text(f, 'of')} was flooded on, and no wipe is on record",
    ),
    "left-in-part": Words(
        lambda f: (
            f"{text(f, 'of')} was broken off and not wiped: what stands on {text(f, 'covered')} "
            "stays soft for good, and nothing dries over it"
        ),
        _left_in_part,
        lambda f: (
            f"{text(f, 'of')} stands unwiped on {text(f, 'covered')}: rub it off with "
            f"{_own_solvent(f)}, at once"
        ),
        bars=lambda f: f"surplus {text(f, 'of')} left on",
    ),
    "bleeds-back": Words(
        lambda f: (
            f"{text(f, 'of')} comes back out of the open pores of {text(f, 'wood')}: look "
            f"{wanted(f)} after the wipe, and wipe again"
        )
    ),
    "bled-back": Words(
        lambda f: (
            f"did {text(f, 'of')} come back out of the pores of {text(f, 'wood')} after it was "
            "wiped off? No later wipe is on record, and what set there stays soft"
        ),
        "test that it is not sticky, or log the wipe with its time",
    ),
    "wiped-late": Words(
        lambda f: (
            f"{text(f, 'of')} was wiped {measured(f)} after it went on, at most {wanted(f)}: what "
            "had set by then "
            + ("is too thick to hold what goes over it" if text(f, "glaze") else _STAYS_SOFT)
        ),
        _wiped_late,
        _wiped_late_short,
        bars=lambda f: f"surplus {text(f, 'of')} wiped off too late",
    ),
    "wiped-late-perhaps": Words(
        lambda f: (
            f"was the surplus {text(f, 'of')} off within {wanted(f)}? By the times on record it "
            "may not have been"
        ),
        _wiped_late,
    ),
}
