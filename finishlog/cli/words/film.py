"""What the rules about the film say: its clocks, what lies below it, what it met."""

from __future__ import annotations

from finishlog.cli.words.observed import IT_FLAKES
from finishlog.cli.words.said import (
    Words,
    act,
    label_hours,
    measured,
    met_as_it_set,
    number,
    text,
    wanted,
)
from finishlog.core.commands import Do
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.log.words import Found
from finishlog.core.measure.quantities import celsius
from finishlog.core.published.care import UsedFor
from finishlog.core.shop.things import OldFinish

_SUSPECT = "suspect film: scratch test first"


def _scratch(of: Finding) -> str:
    scratch = "scratch a hidden spot; if it flakes, take it off"
    return IT_FLAKES if text(of, "flakes") else scratch


def _taped(of: Finding) -> str:
    tape = f"tape on a cross-cut tells; if it holds: {Do.CHECK('PART', Found.HOLDS)}"
    scuffed = f"; if it was scuffed: {Do.AMEND(act(of), scuffed=True)}"
    return tape + (scuffed if text(of, "how") == "untold" else "")


def _whose(of: Finding) -> str:
    return {UsedFor.FOOD: "food", UsedFor.CHILD: "a child"}[UsedFor(text(of, "used_for"))]


def _clock(of: Finding) -> str:
    """Name what a clock counts toward."""
    if text(of, "over"):
        return f"recoat over {text(of, 'over')}"
    if text(of, "what"):
        return "scuff and recoat"
    return shown(Stage(text(of, "stage")))


def _since(of: Finding) -> str:
    """Say why a published pair makes a coat wait."""
    reason = text(of, "reason")
    return f": {reason}" if reason else ""


def _no_figure(of: Finding) -> str:
    stage = Stage(text(of, "stage"))
    name = text(of, "of")
    return (
        f"no recoat figure for {name}"
        if stage is Stage.RECOAT
        else (f"no figure for {shown(stage)} of {name}")
    )


def _old(of: Finding) -> str:
    return name_of(OldFinish(text(of, "old")))


def _in_any_air(of: Finding) -> str:
    """Say in what air it would be over too, where not all of its air was measured."""
    slowest = of.wait.slowest if of.wait and not of.wait.known else None
    if slowest is None:
        return ""
    warm, damp = celsius(slowest.temperature_c, 1), slowest.humidity_pct
    return f" even at {warm}, {damp:.0f} % (not all of its air was measured)"


def _out_of_limits(of: Finding) -> str:
    """Name the air that holds a film up, and the limit that it is beyond."""
    if of.measured is None:
        return "this air is outside its limits"
    limit = f"at most {wanted(of)}" if text(of, "most") else f"it needs {wanted(of)}"
    return f"this air is outside its limits, {measured(of, 0)}, {limit}"


def _too_cold_while_young(of: Finding) -> str:
    return f"met air too cold for it while young: {measured(of, 0)}, it needs {wanted(of)}"


def _lies_wrong(of: Finding) -> str:
    under = text(of, "under")
    where = f"lies over {under}" if under else "on bare wood"
    return f"{text(of, 'over')} {where}: {text(of, 'reason')}"


def _met_cold(of: Finding) -> str:
    assert of.measured is not None
    assert of.wanted is not None
    # Half a degree under its limit is not said to be below itself.
    digits = 0 if of.wanted.value - of.measured.value >= 1 else 1
    return (
        f"{text(of, 'of')} met {measured(of, digits)} in its first hours, below "
        f"{wanted(of, digits)}: it may feel dry and stay weak"
    )


def _unscuffed(of: Finding) -> str:
    how = {
        "too young": "scuffed too young for grip",
        "untold": "with no scuffing on record",
        "none": "unscuffed",
    }[text(of, "how")]
    late = f" {measured(of)} after it, its window is {wanted(of)}," if of.measured else ""
    return f"{text(of, 'over')} went on over {text(of, 'under')}{late} {how}: it may peel"


def _left_there(of: Finding) -> str:
    """Say what a cure leaves on a film, in what air the more, and what it does."""
    smeared = "; a wipe alone smears it" if text(of, "smeared") else ""
    met = f" (the more so{met_as_it_set(of)})" if met_as_it_set(of) else ""
    return f"its cure leaves an {text(of, 'what')}{met}: {text(of, 'spoils')}{smeared}"


def _dried_late(of: Finding) -> str:
    """Say how long a film took, in the hours that its can is written in."""
    assert of.measured is not None
    assert of.wanted is not None
    least, most = number(of, "least"), of.wanted.value
    span = f"{most:g} h" if least == most else f"{least:g} to {most:g} h"
    at_least = "at least " if text(of, "least_so") else ""
    return f"{text(of, 'of')} took {at_least}{of.measured.value:.0f} h to be dry, against {span}"


def _thick(of: Finding) -> str:
    return "it runs hot, cracks and may smoke" if text(of, "hot") else "it stays soft inside"


WORDS = {
    "stands-still": Words(lambda f: f"stands still: {_out_of_limits(f)}", short=_out_of_limits),
    "not-reached": Words(
        lambda f: f"{_clock(f)} not reached{label_hours(f)}{_since(f)}",
        short=lambda f: f"{_clock(f)} not reached",
    ),
    "may-be-reached": Words(
        lambda f: f"{_clock(f)} may be reached, not promised yet{label_hours(f)}{_since(f)}",
        short=lambda f: f"{_clock(f)} may be reached, not promised yet",
    ),
    "air-reckoned": Words(
        lambda f: f"{_clock(f)} by the nearest readings: not all of its air was measured"
    ),
    "air-not-measured": Words(
        lambda f: f"{_clock(f)} by label time only: the air was not measured"
    ),
    "nothing-to-dry": Words("nothing under it has to dry"),
    "no-figure": Words(_no_figure),
    "no-sanding-figure": Words(lambda f: f"needs scuffing; no sanding figure for {text(f, 'of')}"),
    "perhaps-still": Words(
        lambda f: f"{_clock(f)}: still by the last reading, and long over in any air fit for it"
    ),
    "stage-reached": Words(lambda f: f"{_clock(f)} reached{_in_any_air(f)}"),
    "over-old-finish": Words(lambda f: f"over {name_of(OldFinish(text(f, 'of')))}"),
    "in-the-white": Words("in the white"),
    "dry-enough": Words(lambda f: f"dry enough to recoat{_in_any_air(f)}"),
    "dead-zone": Words(
        lambda f: f"too late to bond by itself, too soft to scuff{label_hours(f)}",
        short="too late to bond by itself, too soft to scuff",
    ),
    "between-windows": Words(
        "its window has closed and has not opened again: scuffing does not help now"
    ),
    "window-closed": Words(
        lambda f: "the recoat window has closed" + (f" ({wanted(f)})" if f.wanted else "")
    ),
    "scuff-now": Words("its window is open again, for a scuffed film"),
    "scuff-always": Words("scuff it every time"),
    "even-first": Words(lambda f: f"{text(f, 'fault')}: sand it smooth first"),
    "colour-on-the-spot": Words(
        "the film around the bare spot takes no colour",
        "on the spot alone, and off the sound film at once; then seal it",
    ),
    "window-unreliable": Words(
        "the window cannot be relied on in this air: it closes before the wait is over",
        "scuff once it sands",
    ),
    "may-wrinkle": Words(
        lambda f: (
            f"too late in its cure, its window is {wanted(f)}: even a scuffed film may wrinkle "
            "until it is fully hard"
        ),
        "scuff a spot and coat it first, or wait until it is fully hard",
    ),
    "steps-behind": Words("every step is behind"),
    "no-steps": Words("no steps"),
    "wrong-below": Words(_lies_wrong, _scratch),
    "old-finish": Words(
        lambda f: f"{_old(f)} of unknown age is underneath: it may not hold or not take it",
        f"scratch it and coat a patch; if it holds: {Do.CHECK('PART', Found.HOLDS)}",
    ),
    "old-wax": Words(
        "an old wax is underneath: nothing bonds over wax",
        f"wash it off first, and log it: {Do.OFF('PART', to='bare', washed=True)}",
    ),
    "met-cold": Words(_met_cold, _scratch, _too_cold_while_young, bars=_SUSPECT),
    "met-dew": Words(
        lambda f: f"dew lay on {text(f, 'of')} while it was wet: it may feel dry and stay weak",
        _scratch,
        "dew lay on it while it was wet",
        bars=_SUSPECT,
    ),
    "over-dew": Words(
        lambda f: (
            f"{text(f, 'of')} went on over dew: what lay below it was at {measured(f)}, the air's "
            f"dew point at {celsius(number(f, 'dew_c'), 1)}; it may come off in time"
        ),
        _scratch,
        lambda f: (
            f"went on over dew: {measured(f)} below, the dew point {celsius(number(f, 'dew_c'), 1)}"
        ),
        bars=_SUSPECT,
    ),
    "perhaps-over-dew": Words(
        lambda f: (
            f"it may have gone on over dew: the wood at about {measured(f)} by where it stood, the "
            f"air's dew point at {celsius(number(f, 'dew_c'), 1)}: scratch it"
        )
    ),
    "perhaps-cold": Words(
        lambda f: f"it may have met {measured(f, 0)} in its first hours: scratch it"
    ),
    "not-proved-through": Words(
        lambda f: (
            f"it met {measured(f, 0)}, {number(f, 'rh'):.0f} % RH while wet: sand a spot, "
            "it has to powder"
        )
    ),
    "wipe-off": Words(lambda f: f"wipe off the surplus {text(f, 'of')}"),
    "hard-before-use": Words(
        lambda f: f"it is for {_whose(f)}: {text(f, 'of')} has to be fully hard",
        "no date makes a finish safe for that: ask its maker, and your local rules",
        waits=lambda f: f"{text(f, 'of')} to be fully hard, for {_whose(f)}",
    ),
    "thick-film": Words(
        lambda f: (
            f"{text(f, 'of')} went on {measured(f, 0)} wet, {wanted(f)} is usual at most: it is "
            "soft inside for long"
        ),
        "sand a spot: it has to powder; the next coat thinner",
    ),
    "coats-a-day": Words(
        lambda f: (
            f"this would be coat {measured(f, 0)} of {text(f, 'of')} within a day, {wanted(f)} a "
            "day is usual at most: what each has to let go is shut in"
        ),
        "let it dry overnight, and go on when it sands to powder",
    ),
    "too-thick-in-all": Words(
        lambda f: (
            f"this coat brings the film to about {measured(f, 0)} dry, {wanted(f)} in all at most: "
            "thicker it cracks"
        ),
        "sand it back level first, or leave it at this",
        lambda f: f"it carries all the film that it bears, {wanted(f)}",
    ),
    "over-its-limit": Words(
        lambda f: (
            f"{text(f, 'of')} carries about {measured(f, 0)} dry, {wanted(f)} in all at most: "
            + ("it may crack yet" if text(f, "hard") else "it stays soft inside and may crack")
        ),
        lambda f: (
            "look it over across the grain before it leaves"
            if text(f, "hard")
            else "sand it back level; else press a thumbnail, look for fine cracks, and log what "
            f"you find: {Do.CHECK('PART', Found.NO_PRINT)}"
        ),
        lambda f: f"{text(f, 'of')} carries more film than it bears",
    ),
    "too-many-coats": Words(
        lambda f: (
            f"this would be coat {measured(f, 0)} of {text(f, 'of')}, {wanted(f)} in all is usual "
            "at most: a thick film stays soft and cracks"
        ),
        "sand it back level first, or leave it at this",
    ),
    "unscuffed-below": Words(
        _unscuffed,
        _taped,
        lambda f: f"unscuffed below {text(f, 'over')}: it may peel",
    ),
    "scuff-grit": Words(
        lambda f: (
            f"P{number(f, 'grit'):g} on {text(f, 'of')}, P{number(f, 'low'):g} to "
            f"P{number(f, 'high'):g} at most: "
            + (
                "the next coat has little to hold by"
                if text(f, "finer")
                else "its scratches show, and it cuts through a thin film"
            )
        ),
        lambda f: (
            f"scuff it once more, not finer than P{number(f, 'high'):g}"
            if text(f, "finer")
            else f"no more pressure; scuff once more from P{number(f, 'low'):g} up"
        ),
    ),
    "scuffed-long-ago": Words(
        lambda f: f"it was scuffed {measured(f)} ago: dust and hands have been on it since",
        lambda f: (
            "wipe it clean, and scuff it lightly again" if text(f, "stale") else "wipe it clean"
        ),
    ),
    "unwashed": Words(
        lambda f: f"{text(f, 'of')} was not washed, by the log: {_left_there(f)}",
        lambda f: f"wash it first: {text(f, 'wash')}; washed already: {Do.LOG('PART', 'rinse')}",
        lambda f: f"{text(f, 'what')} on {text(f, 'of')}: not washed",
        "the wash",
    ),
    "unwashed-below": Words(
        lambda f: (
            f"{text(f, 'over')} lies on {text(f, 'of')} unwashed, by the log: {_left_there(f)}"
        ),
        lambda f: (
            "try the coat on a hidden corner overnight; if it holds: "
            f"{Do.CHECK('PART', Found.HOLDS)}; else take {text(f, 'over')} off, wash "
            f"{text(f, 'of')}: {text(f, 'wash')}; was it washed before: log it with its time"
        ),
        lambda f: f"{text(f, 'what')} under {text(f, 'over')}: {text(f, 'of')} was not washed",
        bars="an unwashed film below: scratch test first",
    ),
    "dried-late": Words(
        _dried_late,
        lambda f: (
            "what kept it soft may keep the next coat so: try that on a hidden corner overnight; "
            f"if it holds: {Do.CHECK('PART', Found.HOLDS)}"
        ),
        lambda f: f"{text(f, 'of')} dried far too late",
    ),
    "too-thick-at-once": Words(
        lambda f: (
            f"{measured(f, 0)} of {text(f, 'of')} at once, {wanted(f)} a coat at most: {_thick(f)}"
        ),
        lambda f: f"in {number(f, 'pours'):.0f} coats, each in the window of the one before",
    ),
    "went-on-too-thick": Words(
        lambda f: (
            f"{text(f, 'of')} went on {measured(f, 0)} thick, {wanted(f)} a coat at most: "
            f"{_thick(f)}"
        ),
        "look for cracks and bubbles, sand a spot: it has to powder all through",
    ),
    "coat-while-wiped": Words("wiped with solvent, its oil comes back: coat it"),
}
