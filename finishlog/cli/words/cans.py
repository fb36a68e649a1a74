"""What the rules about cans, jars and mixes say, and about what must never meet."""

from __future__ import annotations

from datetime import timedelta

from finishlog.cli.words.said import Words, length, text
from finishlog.core.commands import Do
from finishlog.core.findings import POT_LIFE, Finding
from finishlog.core.log.shown_times import length_words, wait_words
from finishlog.core.mixing.chemistry import LEAVE_NOW
from finishlog.core.mixing.keeping import UNKNOWN_END

_DAY, _YEAR = timedelta(days=1), timedelta(days=365)
_STAY_OUT = (
    "keep everybody out and say what met what; pour nothing into it, carry nothing out, wash "
    "whom it touched with plenty of water"
)


def _ago(age: timedelta) -> str:
    """Say an age in days, from two years on in years."""
    return length_words(age // _DAY * _DAY) if age < 2 * _YEAR else f"{age // _YEAR} years"


def _old(of: Finding) -> str:
    since, age = text(of, "since"), _ago(length(of, "age"))
    aged = f"is {age} old" if since == "made" else f"was {since} {age} ago"
    return f"{text(of, 'can')} {aged}; {text(of, 'of')} keeps {text(of, 'keeps')}"


def _age(age: timedelta) -> str:
    return f"{length_words(age)} old" if age >= timedelta(minutes=30) else "just made"


def _condemned(of: Finding) -> str:
    note = text(of, "note")
    return f"{text(of, 'can')} is marked: do not use" + (f": {note}" if note else "")


def _tested(of: Finding, test: str) -> str:
    return f"{text(of, test)}; then: {Do.CAN_TESTED(text(of, 'can'))}"


WORDS = {
    "can-condemned": Words(_condemned, lambda f: Do.CAN_THROWN_OUT(text(f, "can"))),
    "can-ended": Words(
        lambda f: f"{text(f, 'can')} is on record as {text(f, 'deed').replace('-', ' ')}",
        f"say which it came from: {Do.LOG.option(from_='NAME')}",
    ),
    "can-froze": Words(
        lambda f: f"{text(f, 'can')} froze: {text(f, 'reason')}", lambda f: _tested(f, "remedy")
    ),
    "can-old": Words(_old, lambda f: _tested(f, "test")),
    POT_LIFE: Words(
        lambda f: f"{text(f, 'can')} is past its pot life by {wait_words(length(f, 'past'))}",
        "use no more of it and mix afresh; watch what it went on for softness and wrinkling",
    ),
    "never-close": Words(
        lambda f: f"never close {text(f, 'can')}: bleach gives off gas, and a closed can may burst",
        "mix what is used now and keep none; what is left as its sheet says",
    ),
    "pot-life-unknown": Words(
        lambda f: f"{text(f, 'can')} hardens in the pot, and nothing says how soon: {UNKNOWN_END}",
        lambda f: f"its sheet does: {Do.CAN_EDIT(text(f, 'can'), use_by='4h')}",
    ),
    "topped-up": Words(
        lambda f: f"{text(f, 'can')} was topped up: the age of the first mixing counts",
        "use it up by then and mix afresh; never top up what hardens in the pot",
    ),
    "mix-ages-differ": Words(
        lambda f: (
            f"the coat under it went on from a mix {_age(length(f, 'under'))}, this one from a mix "
            f"{_age(length(f, 'this'))}: layers of mixes so different in age may wrinkle"
        ),
        "keep the coats light, and mix afresh for each coat",
    ),
    "stranger-in-the-pot": Words(lambda f: text(f, "reason"), lambda f: text(f, "remedy")),
    "reacts": Words(lambda f: text(f, "reason"), "goggles and gloves, a little at a time"),
    "poison-made": Words(lambda f: f"{LEAVE_NOW}: {text(f, 'reason')}", _STAY_OUT),
    "makes-poison": Words(
        lambda f: f"do not: {text(f, 'reason')}", f"if it is done: {LEAVE_NOW}; {_STAY_OUT}"
    ),
}
