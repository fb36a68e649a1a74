"""What is to be heeded about an act that is recorded: too early, unscuffed, hardly meant, mixed."""

from __future__ import annotations

from datetime import timedelta

from finishlog.cli.words.said import Words, act, each_of, length, measured, number, text, wanted
from finishlog.core.commands import Do
from finishlog.core.findings import Answer, Finding
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import Found

_AFTER_ALL = {
    Answer.DRYING: "leave it alone now, and check before the next coat",
    Answer.DEAD_ZONE: "watch for wrinkling; it may have to come off",
    Answer.BLOCKED: "check it again before anything else goes on",
    Answer.WAITS: "look for marks where it was held, or dust in what is wet",
    Answer.NOT_IN_THIS_AIR: "watch for blush, slow drying and poor bond",
}
_TOO_EARLY = {
    # Dry to the touch is not dry to pack.
    "pressed": "nothing but air may touch it: foam, paper and wrap press into a young film and "
    "stick",
    # What has to be wiped off is not left alone, however early it went on.
    "wiped off": "wipe every bit of it off in time; then leave it alone, and check before the next",
}


def _done_all_the_same(of: Finding) -> str:
    answer, early = Answer(text(of, "answer_is")), text(of, "too_early")
    if answer is Answer.DRYING and early:
        return _TOO_EARLY[early]
    return "; ".join(filter(None, (_AFTER_ALL.get(answer, ""), text(of, "lift"))))


def _glued_early(of: Finding) -> str:
    """Say what to do once it is in cauls: what is on a glue face cannot wait until they are off."""
    if text(of, "dirty"):
        return "part it before the glue sets, and scrape every such face back to bare wood"
    if text(of, "worked"):
        return "pull at the joint by hand once the clamps are off"
    return "look for prints from the cauls when they come off"


def _no_scuffing(of: Finding) -> str:
    late = f": {measured(of)} after the coat, its window is {wanted(of)}" if of.measured else ""
    return f"no scuffing on record{late}"


def _if_scuffed(of: Finding) -> str:
    return f"if you did scuff it: {Do.AMEND(act(of), scuffed=True)}"


def _scuffed_later(of: Finding) -> str:
    later = Do.AMEND(f"{number(of, 'scuff'):.0f}", at="TIME")
    return f"was that later: {later}; once more since: {Do.AMEND(act(of), scuffed=True)}"


def _is_done(of: Finding) -> str:
    return f"if it is done: {Do.LOG(*each_of(of, 'parts'), text(of, 'step'), at='WHEN')}"


def _of_the_other(of: Finding) -> str:
    another = Do.AMEND(act(of), from_="NAME")
    return f"if it is the other: {another}, or {Do.AMEND.option(product=True)}"


def _its_parts(of: Finding) -> str:
    return f"log what went in: {Do.MIX(text(of, 'of'), 'base:AMOUNT', 'hardener:AMOUNT')}"


def _apart(length: timedelta) -> str:
    return f"{length_words(length)} from this one" if length else "at the same time"


WORDS = {
    "rub-tells-nothing": Words(
        lambda f: f"its own solvent takes {text(f, 'of')} up at any age: a rub tells nothing of it",
        f"press a thumbnail into it: {Do.CHECK('PART', Found.NO_PRINT)}",
    ),
    "answered": Words(lambda f: text(f, "answer_is"), _done_all_the_same, cause="{said}: {long}"),
    "a-little-early": Words(lambda f: f"{measured(f)} early", "check before the next coat"),
    "no-scuffing": Words(_no_scuffing, _if_scuffed),
    "scuffed-too-young": Words(
        lambda f: f"it was scuffed too young (act {number(f, 'scuff'):.0f}), which gives no grip",
        _scuffed_later,
    ),
    "scuff-is-due": Words(
        "the step that is due is scuff, and no scuffing is on record", _if_scuffed
    ),
    "glue-face": Words(
        lambda f: f"{text(f, 'face')} is a glue face: glue needs bare wood",
        "scrape it back to bare wood before the glue-up",
    ),
    "shuts-out": Words(
        lambda f: f"{text(f, 'of')} is still to come: {text(f, 'reason')}",
        lambda f: text(f, "remedy"),
    ),
    "passes-too-close": Words(
        lambda f: (
            f"passes {measured(f)} apart; {text(f, 'of')} is recoated after {wanted(f)} at the "
            "soonest"
        ),
        "every pass wiped dry, and a check before the next sitting",
    ),
    "another-due": Words(
        lambda f: f"{text(f, 'step')} was due", _is_done, asks="Record this all the same?"
    ),
    "same-coat": Words(
        lambda f: (
            f"{text(f, 'of')} is on record {_apart(length(f, 'apart'))}: the same coat again?"
        ),
        lambda f: f"if it is one coat: {Do.UNDO(act(f))}",
    ),
    "checked-at-once": Words(
        "checked in the minute of its coat",
        lambda f: f"if one of them was at another time: {Do.AMEND(act(f), at='WHEN')}",
        asks="A check of that coat?",
    ),
    "passed-too-soon": Words(
        lambda f: (
            f"{text(f, 'found')} {measured(f)} after {text(f, 'of')} went on: that takes "
            f"{wanted(f)} at the least, and what was wiped off feels dry at once"
        ),
        lambda f: (
            "it opens nothing: check again when its time is over; if one of them was at another "
            f"time: {Do.AMEND(act(f), at='WHEN')}"
        ),
        asks="Record it all the same?",
    ),
    "glued-early": Words(
        lambda f: text(f, "part"),
        _glued_early,
        cause="{said}: {long}",
    ),
    "no-film-there": Words("no film is on record there: recorded as bare wood"),
    "stripper-goes-on": Words(
        "a stripper or solvent seldom stops at a coat",
        f"check that what stays is hard and holds: {Do.CHECK('PART', Found.HOLDS)}",
    ),
    "melted-into-one": Words(
        "its coats melt into one: what stays was wet again with the coat that came off",
        "its drying counts from that coat",
    ),
    "holds-another": Words(
        lambda f: f"{text(f, 'can')} holds {text(f, 'holds')}, not {text(f, 'of')}", _of_the_other
    ),
    "not-mixed-by-then": Words(
        lambda f: f"nothing on record says that {text(f, 'can')} was mixed by then",
        lambda f: f"amend the time of the one or of the other: {Do.AMEND(act(f), at=True)}",
    ),
    "opening-untold": Words(
        lambda f: f"nothing says when {text(f, 'can')} was opened",
        lambda f: Do.CAN_OPENED(text(f, "can"), at="2 weeks ago"),
    ),
    "no-hardener": Words(
        lambda f: f"nothing that hardens {text(f, 'of')} is among its parts: it stays soft without",
        _its_parts,
    ),
    "flakes-measured": Words(
        "flakes are weighed, not measured: heaped they are mostly air, and the cut comes out "
        "much weaker than meant",
        "weigh them, or the cut is not known: flakes:WEIGHT alcohol:VOLUME",
    ),
}
