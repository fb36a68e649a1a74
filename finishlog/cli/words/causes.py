"""Words for why something went wrong: a published cause, and what the log says to it."""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.cli.words.said import (
    Words,
    each_of,
    measured,
    met_as_it_set,
    number,
    text,
    wanted,
)
from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.trouble.again import Same
from finishlog.core.trouble.controls import Apart
from finishlog.core.trouble.scene import Missing

# What is not on record, as it is asked for.
NOT_LOGGED: Mapping[Missing, str] = {
    Missing.AIR: "the air, all the way",
    Missing.SUN: "whether the sun was on it",
    Missing.SCUFFING: "whether it was scuffed",
    Missing.WIPING: "how it went on, and when the surplus was wiped off",
    Missing.THICKNESS: "how thick it went on",
    Missing.THEIR_CAN: "which can the sound one came from",
    Missing.CAN: "which can it came from, and since when that is open",
    Missing.WOOD: "which wood it is",
    Missing.OF_THE_WOOD: "whether this wood does that: nothing is published of it",
    Missing.MOISTURE: "the moisture of the wood",
    Missing.SANDING: "when it was sanded, or anything beside it",
    Missing.HANDLING: "when it was clamped, stacked, packed or used",
    Missing.SAME_CAN: "whether both attempts came from the same can",
    Missing.GRIT: "the last paper",
    Missing.IRON: "whether iron touched it: steel wool, a rusty can, filings",
    Missing.STIRRED: "whether its can was stirred",
    Missing.TOOL: "what it went on with",
    Missing.ADDED: "what was put into it",
    Missing.SANDED: "how the wood was sanded",
    Missing.GLUED: "when it was glued up",
    Missing.BUFFED: "when it was buffed",
}

_APART: Mapping[Apart, str] = {
    Apart.WOOD: "another wood",
    Apart.BELOW: "another coat below",
    Apart.CAN: "another can",
    Apart.ROOM: "another room",
    Apart.METHOD: "put on in another way",
    Apart.GRIT: "another paper",
    Apart.FACE: "another face",
}


_SAME: Mapping[Same, str] = {
    Same.PRODUCT: "the product",
    Same.CAN: "its can",
    Same.TOOL: "its tool",
    Same.METHOD: "how it went on",
}


def _cause(of: Finding) -> str:
    return text(of, "cause")


def _shown(of: Finding) -> str:
    """Say the cause, and in which coat below it sits."""
    lower = text(of, "lower")
    return f"{_cause(of)}, in {lower} below" if lower else _cause(of)


def _not_on(of: Finding) -> str:
    return f"{_shown(of)} (not so on {text(of, 'sound')}, which is sound)"


def _not_logged(of: Finding) -> str:
    return f"{_cause(of)}{_missing(text(of, 'missing'))}"


def _missing(what: str) -> str:
    return f" (not logged: {NOT_LOGGED[Missing(what)]})" if what else ""


def _open(of: Finding) -> str:
    without: dict[str, list[str]] = {}
    for cause, what in zip(each_of(of, "causes"), each_of(of, "missing"), strict=True):
        without.setdefault(what, []).append(cause)
    said = (f"{', '.join(causes)}{_missing(what)}" for what, causes in without.items())
    return f"cannot be ruled out: {'; '.join(said)}"


def _ask(of: Finding) -> str:
    missing = text(of, "missing")
    return f"what would tell most: {NOT_LOGGED[Missing(missing)] if missing else _cause(of)}"


def _then(of: Finding) -> str:
    return text(of, "then")


def _age(of: Finding) -> str:
    """Word how long before, or after: no finer than it tells."""
    assert of.measured is not None, of.rule
    hours = of.measured.value
    if hours < 3:
        return measured(of)
    return f"{hours:.0f} h" if hours < 72 else f"{hours // 24:.0f} d"


def _damp(of: Finding) -> str:
    limit = f", the limit is {wanted(of)} RH" if of.wanted else ""
    return f"{measured(of, 0)} RH{limit}"


def _young(of: Finding) -> str:
    more = ", in that air more" if of.value("more") else ""
    return f"{text(of, 'under')} went on {_age(of)} before; {text(of, 'label')} h is usual{more}"


def _oil(of: Finding) -> str:
    usual = f"; {text(of, 'label')} h is usual" if of.wanted else ""
    return f"{text(of, 'under')} went on {_age(of)} before{usual}"


def _handled(of: Finding) -> str:
    stage = shown(Stage(text(of, "stage")))
    return f"{text(of, 'deed')} after {_age(of)}, before {stage}"


def _added(of: Finding) -> str:
    share = f", {measured(of, 0)} of the rest" if of.measured else ""
    usual = f"; {wanted(of, 0)} is usual" if of.wanted and of.wanted.value else ""
    return f"{text(of, 'added')}{share}{usual}"


def _old_can(of: Finding) -> str:
    since = text(of, "since")
    age = f"open for {measured(of)}" if since == "opened" else f"{since} {measured(of)} before"
    return f"{age}, it keeps {wanted(of)}"


def _tool(of: Finding) -> str:
    had = f"{text(of, 'tool')} had {text(of, 'had')} in it"
    return f"{had}, which crawled" if of.value("crawled") else f"{had} last, not cleaned since"


def _again(of: Finding) -> str:
    times = of.value("times")
    often = "once" if times == 1 else f"{times:g} times"
    acts = ", ".join(str(act) for act in of.acts)
    return f"{text(of, 'fault')} was found here {often} before, and mended (act {acts})"


def _change(of: Finding) -> str:
    same = ", ".join(_SAME[Same(each)] for each in each_of(of, "same"))
    told = f"the same both times: {same}; " if same else ""
    return f"{told}do it otherwise this time, and on a scrap of the same wood first"


def _differs(of: Finding) -> str:
    what = _APART[Apart(text(of, "what"))]
    return f"{what}: {text(of, 'here')} here, {text(of, 'there')} on {text(of, 'sound')}, sound"


WORDS: Mapping[str, Words] = {
    "cause-apart": Words(
        lambda f: f"the log shows: {_not_on(f)}",
        _then,
        _not_on,
        cause="{said}: {long}",
    ),
    "cause-shown": Words(
        lambda f: f"the log shows: {_shown(f)}", _then, _shown, cause="{said}: {long}"
    ),
    # What it would ask for is told once the log shows it.
    "cause-open": Words(_not_logged),
    "cause-shared": Words(
        lambda f: f"the log shows: {_cause(f)}",
        lambda f: f"so it was on {text(f, 'sound')} too, which is sound",
        _cause,
        cause="{said}: {long}",
    ),
    "cause-same": Words(
        _not_logged, lambda f: f"the same on {text(f, 'sound')}, which is sound", _cause
    ),
    "causes-open": Words(_open),
    "causes-same": Words(
        lambda f: (
            f"the same on {text(f, 'sound')}, which is sound: {', '.join(each_of(f, 'causes'))}"
        )
    ),
    "ask-first": Words(_ask),
    "differs": Words(_differs),
    "found-again": Words(_again, _change),
    "shows-damp": Words(_damp),
    "shows-cold": Words(lambda f: f"{measured(f, 0)}, it needs {wanted(f)}"),
    "shows-slow-cold": Words(
        lambda f: f"down to {measured(f, 0)}, its hours count at {wanted(f)}",
    ),
    "shows-heat": Words(lambda f: f"{measured(f, 0)}, the limit is {wanted(f)}"),
    "below-was-young": Words(_young),
    "window-had-closed": Words(lambda f: f"it had closed {_age(f)} before"),
    "said-not-scuffed": Words("logged as not scuffed"),
    "was-wiped-late": Words(lambda f: f"wiped {measured(f)} after it, at most {wanted(f)}"),
    "flooded-unwiped": Words("flooded on, and no wipe is on record"),
    "never-wiped": Words("no wipe is on record"),
    "never-wiped-below": Words(lambda f: f"no wipe of {text(f, 'under')} below is on record"),
    "stood-longer": Words(
        lambda f: f"wiped {measured(f)} after it; {wanted(f)} on {text(f, 'sound')}"
    ),
    "does-not-suit": Words(lambda f: text(f, "reason")),
    "oil-lies-below": Words(_oil),
    "unwashed-lies-below": Words(
        lambda f: (
            f"{' – '.join(each_of(f, 'chain'))}: {each_of(f, 'chain')[0]} was not washed"
            f"{met_as_it_set(f)}"
        )
    ),
    "went-on-thick": Words(
        lambda f: (
            f"{text(f, 'under') + ' below: ' if f.value('under') else ''}"
            f"{measured(f)} wet, {wanted(f)} is usual at most"
        )
    ),
    "film-in-all": Words(lambda f: f"{measured(f)} dry in all, it bears {wanted(f)}"),
    "coats-in-all": Words(lambda f: f"{measured(f)} coats, at most {wanted(f)}"),
    "handled-early": Words(_handled),
    "sanded-early": Words(lambda f: f"{text(f, 'deed')} {_age(f)} after it"),
    "faces-differ": Words(lambda f: ", ".join(each_of(f, "faces"))),
    "joint-coated": Words(lambda f: "; ".join(each_of(f, "where"))),
    "wood-is-oily": Words(lambda f: f"{text(f, 'wood')} is oily"),
    "wood-has-pitch": Words(lambda f: f"{text(f, 'wood')} holds pitch"),
    "wood-blotches": Words(lambda f: f"{text(f, 'wood')} blotches, and it was bare"),
    "wood-has-open-pores": Words(lambda f: f"the pores of {text(f, 'wood')} stand open"),
    "steel-wool-on-tannin": Words(lambda f: f"steel wool on {text(f, 'wood')}, which holds tannin"),
    "wood-was-wet": Words(lambda f: f"{measured(f, 0)} moisture, at most {wanted(f)}"),
    "wood-lost-weight": Words(
        lambda f: f"it was still losing weight: {number(f, 'fell'):.1f} % in all"
    ),
    "can-was-open": Words(_old_can),
    "added-to-mix": Words(_added),
    "was-not-stirred": Words("its can was not stirred"),
    "left-in-its-tool": Words(_tool),
    "another-tool": Words(
        lambda f: f"{text(f, 'here')} here, {text(f, 'there')} on {text(f, 'sound')}"
    ),
    "glued-not-sanded": Words("glued up, and no sanding since is on record"),
    "grit-left-out": Words(lambda f: f"from {text(f, 'here')} straight to {text(f, 'there')}"),
    "began-finer": Words(
        lambda f: f"begun with {text(f, 'here')}, with {text(f, 'there')} on {text(f, 'sound')}"
    ),
    "another-number": Words(
        lambda f: f"{measured(f)} of it here, {wanted(f)} on {text(f, 'sound')}"
    ),
    "joint-loaded": Words(lambda f: f"{text(f, 'deed')} {_age(f)} after it was glued up"),
    "wood-was-wetted": Words(
        lambda f: f"{text(f, 'deed')} {_age(f)} before it; wood dries for {wanted(f)}"
    ),
    "no-sanding": Words("no sanding is on record, and where it is sound it is"),
    "sanded-then-shaped": Words("shaped after it was sanded, and not sanded since"),
    "old-finish-below": Words(lambda f: f"{text(f, 'old')} lies below"),
    "carried-into-other-air": Words(
        lambda f: f"wood settles at {measured(f, 0)} where it stands, at {wanted(f, 0)} before"
    ),
    "carried-into-cold": Words(lambda f: f"down to {measured(f, 0)}, it was {wanted(f)} before"),
    "surplus-wiped-late": Words(
        lambda f: f"{text(f, 'under')} below was wiped {measured(f)} after it, at most {wanted(f)}"
    ),
    "surplus-unwiped": Words(
        lambda f: f"{text(f, 'under')} below was flooded on, and no wipe is on record"
    ),
    "went-on-flooded": Words("flooded on"),
    "coloured-when-joined": Words("its colour went on after the glue-up"),
    "wood-is-solid": Words(lambda f: f"{text(f, 'wood')}, solid"),
    "buffed-when": Words(lambda f: f"buffed {measured(f)} after it, {wanted(f, 1)} is its time"),
    "doubtful-can": Words(
        lambda f: f"{text(f, 'can')}: {text(f, 'why')}" if f.value("can") else text(f, "why")
    ),
    "another-ratio": Words(
        lambda f: f"{text(f, 'can')}: {measured(f)} hardener, {wanted(f)} on {text(f, 'sound')}"
    ),
    "another-can": Words(lambda f: f"not the can of {text(f, 'sound')}"),
    "another-grit": Words(
        lambda f: f"{text(f, 'here')} here, {text(f, 'there')} on {text(f, 'sound')}"
    ),
    "sanded-near": Words(lambda f: f"{text(f, 'deed')} logged within the hour or while it was wet"),
    "soft-there-before": Words(lambda f: f"{text(f, 'of')} from another can stayed soft there too"),
}
