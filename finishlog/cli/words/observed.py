"""What the rules say of what a check or an eye found: failures, faults, softness, and an end."""

from __future__ import annotations

from finishlog.cli.words.said import (
    Words,
    each_of,
    found_so,
    found_there,
    length,
    measured,
    number,
    text,
    wanted,
)
from finishlog.core.commands import Do
from finishlog.core.film.checks import NO_TIME_MENDS
from finishlog.core.findings import NO_FLAME, Finding
from finishlog.core.log.shown_times import length_words, wait_words
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import Found
from finishlog.core.measure.quantities import celsius

# What a scratch found to flake no time mends. common practice
IT_FLAKES = (
    "no time mends that: take it off, or sand it back to what holds; then scratch that, and log "
    f"it: {Do.CHECK('PART', Found.HOLDS)}"
)
_IT_IS_SLOW = (
    "as long as it gets better it is only slow: wait in moving, warm air, no flame or glowing wire "
    "in the vapour, and check again; neither coat it nor strip it yet"
)
_IT_IS_HOT = (
    "do not heat it: heat closes the skin over what is soft below; cool the room to about "
    f"{celsius(21)} and move dry air over it day and night, with a little let out, and check "
    "again; neither coat it nor strip it yet"
)
# common practice
_NO_TIME = (
    "time alone is unlikely to help: see what the log shows, and try the same can on a scrap of "
    "the same wood before anything else goes on"
)
_SAMPLED = (
    "time alone is unlikely to help, and a sample stayed soft as well: take it off; a drop on "
    "glass tells whether it is the can or the wood"
)
# Oil that was not wiped off is a film that was never meant to be one. common practice
_OIL_ON_TOP = (
    "what stands on the wood and shines stays soft for good: rub it off with its own solvent, then "
    "thin coats, each wiped off; no wax over it"
)


def _check_again(of: Finding) -> str:
    where = "that place again later, or all of it" if text(of, "place") else "again later"
    later = f"check {where}; a failed check beats the clock"
    return IT_FLAKES if Found(text(of, "found")) in NO_TIME_MENDS else later


def _same_method(of: Finding) -> str:
    air = f"at {measured(of, 0)}" if of.measured is not None else ""
    can = "the same can" if text(of, "can") else ""
    told = [each for each in ("the same product", can, text(of, "method"), air) if each]
    return (
        f"{text(of, 'of')} stayed soft here twice (act {number(of, 'before'):.0f} before), both "
        f"times by the same method: {', '.join(told)}"
    )


def _fault(of: Finding) -> str:
    return text(of, "fault") + in_brackets(text(of, "place"))


def _failed(of: Finding) -> str:
    return text(of, "found") + in_brackets(text(of, "place"))


def dried_first(remedy: str, dry_to: float | None) -> str:
    """Say what is done to the air before a remedy that wets the film; None: nothing."""
    return remedy if dry_to is None else f"dry the air to {dry_to:.0f} % RH first, then {remedy}"


def _dried_first(of: Finding, remedy: str) -> str:
    return dried_first(remedy, None if of.value("dry_to") is None else number(of, "dry_to"))


def _fault_short(of: Finding) -> str:
    ends = each_of(of, "ends")
    remedy = _dried_first(of, next(iter(each_of(of, "remedies")), ""))
    what = f"until a check finds {' or '.join(ends)}" if ends else remedy
    if of.value("most") is not None:
        least, most = (length(of, key) for key in ("least", "most"))
        span = f"{wait_words(least)} to " if least else "at most "
        what = f"{what} ({span}{wait_words(most)} to go)"
    return f"{_fault(of)}: {what}"


def _late(of: Finding) -> str:
    before = text(of, "before")
    progress = f"; it gets on: {before}, then {text(of, 'found')}" if before else ""
    return (
        f"late: still {text(of, 'found')} {length_words(length(of, 'age'))} after the coat, its "
        f"label hours are {wanted(of)}{progress}"
    )


_HOW_LATE = {
    "slow": _IT_IS_SLOW,
    "hot": _IT_IS_HOT,
    "oil-on-top": _OIL_ON_TOP,
    "no-time": _NO_TIME,
    "sampled": _SAMPLED,
}


def _how_late(of: Finding) -> str:
    return _HOW_LATE[text(of, "how")]


def _stalled_remedy(of: Finding) -> str:
    heat = "cool" if text(of, "hot") else "warm"
    return f"{heat} and change the air ({NO_FLAME}); if it does not change, take it off"


def _again(of: Finding) -> str:
    return (
        f"all its coats again take {number(of, 'days'):.0f} days at label time, air and hands not "
        "counted"
    )


WORDS = {
    "check-failed": Words(
        lambda f: f"the {text(f, 'test')} check found {found_there(f)}",
        _check_again,
        lambda f: f"{text(f, 'test')} failed: {_failed(f)}",
    ),
    "comes-off-coloured": Words(
        lambda f: f"a rub with its own solvent takes {text(f, 'of')} up: the next coat would too",
        f"leave it to cure, and rub a spot again: {Do.CHECK('PART', Found.RESISTS)}",
        lambda f: f"{text(f, 'of')} comes off in its own solvent",
    ),
    "was-cupped": Words(
        "it was cupped: is it flat now?",
        f"lay a straightedge across it, both ways: {Do.CHECK('PART', Found.FLAT)}",
    ),
    "still-prints": Words("it still prints"),
    "repair-first": Words(
        lambda f: f"{_fault(f)} since it was found", waits=lambda f: text(f, "waits")
    ),
    "fault": Words(
        lambda f: f"{_fault(f)} on {text(f, 'of') or 'the wood'}: {text(f, 'means')}",
        lambda f: _dried_first(f, ", ".join(each_of(f, "remedies"))),
        _fault_short,
        bars=lambda f: f"{_fault(f)} not mended",
    ),
    "patch-first": Words(
        lambda f: f"after {text(f, 'fault')}: coat a small patch first, scratch it: it holds?"
    ),
    "mend-by": Words(lambda f: f"{_fault(f)}: {_dried_first(f, text(f, 'remedy'))}"),
    "past-hope": Words(
        "more waiting is unlikely to help it now",
        "take it off, and begin again",
        lambda f: (
            f"still {text(f, 'found')} when by its class it might be fully hard, "
            f"{length_words(length(f, 'age'))} old"
        ),
    ),
    "change-method": Words(
        _same_method,
        "more waiting or another coat like it will not do: take it off, and change one thing. "
        "First a control sample: a fresh can, on a scrap of the same wood",
        lambda f: f"{text(f, 'of')} stayed soft twice by the same method: change it",
    ),
    "stalled": Words(
        "no progress over repeated checks: more time alone may not cure it",
        _stalled_remedy,
        lambda f: f"still {text(f, 'found')}, and no better than before",
    ),
    "check-again": Words(
        lambda f: f"the last check found {found_so(f)}, but its time is over since",
        "check it again now",
    ),
    "still-in-time": Words(
        lambda f: (
            f"the last check found {found_so(f)}, and its time is not over: "
            f"{wait_words(length(f, 'left'))} still to go"
        ),
        "check it again after that",
    ),
    "late": Words(_late, _how_late),
    "begin-again": Words(
        lambda f: f"to begin again on {text(f, 'wood')}: wash the film off with its solvent",
        lambda f: text(f, "remedy"),
    ),
    "comes-off": Words(
        lambda f: f"it comes off with {', then '.join(each_of(f, 'ladder'))}",
        lambda f: text(f, "again"),
    ),
    "take-off-by": Words(
        lambda f: f"take it off by {text(f, 'by')} to keep {text(f, 'due')}",
        _again,
    ),
    "give-it-until": Words(
        lambda f: (
            f"give it until {text(f, 'by')}, when {text(f, 'of')} may be fully hard by its class"
        ),
        "still soft then, take it off",
    ),
    "too-late-to-begin-again": Words(
        lambda f: (
            f"taken off and done again it is too late for {text(f, 'due')}: {text(f, 'by')} was "
            "the last day; another date, or go on with what there is"
        ),
        _again,
    ),
}
