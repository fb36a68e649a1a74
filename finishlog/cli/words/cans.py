"""What the rules about cans, jars and mixes say, and about what must never meet."""

from __future__ import annotations

from datetime import timedelta

from finishlog.cli.words.said import Words, each_of, length, measured, number, text
from finishlog.core.commands import Do
from finishlog.core.findings import POT_LIFE, Finding
from finishlog.core.log.shown_times import length_words, wait_words
from finishlog.core.log.words import Found
from finishlog.core.mixing.chemistry import LEAVE_NOW
from finishlog.core.mixing.keeping import UNKNOWN_END

_DAY, _YEAR = timedelta(days=1), timedelta(days=365)
_RINSE_FIRST = "rinse what is in the wood out with plenty of water and let it dry first; "
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


def _of_batch(of: Finding, can: str, batch: str) -> str:
    said = text(of, batch)
    return text(of, can) + (f" (batch {said})" if said else "")


def _condemned(of: Finding) -> str:
    note = text(of, "note")
    return f"{text(of, 'can')} is marked: do not use" + (f": {note}" if note else "")


def _tested(of: Finding, test: str) -> str:
    return f"{text(of, test)}; then: {Do.CAN_TESTED(text(of, 'can'))}"


def _came(of: Finding) -> str:
    return f"{text(of, 'of')} came from {text(of, 'can') or 'a can'}"


def _untold(of: Finding) -> str:
    """Say how it is answered: by the mix, by the coat, or by the film."""
    mix = Do.MIX(text(of, "of"), "base:AMOUNT", "hardener:AMOUNT", at="WHEN")
    then = f", then {Do.AMEND(of.acts[0], from_='NAME')}" if text(of, "can") and of.acts else ""
    return f"log what was mixed: {mix}{then}; or {_SCRATCH}"


def _off_ratio(of: Finding) -> str:
    return (
        f"{_came(of)}, with {measured(of)} of hardener in it, {number(of, 'low'):g} to "
        f"{number(of, 'high'):g} % is usual: off its ratio it never hardens right"
    )


def _off_ratio_short(of: Finding) -> str:
    usual = f"{number(of, 'low'):g} to {number(of, 'high'):g} % is usual"
    return f"mixed off its ratio: {measured(of)} of hardener, {usual}"


def _marked(of: Finding) -> str:
    since, note = text(of, "since"), text(of, "note")
    return f"{_came(of)}, which is {'since ' if since else ''}marked: do not use" + (
        f": {note}" if note else ""
    )


def _aged(of: Finding) -> str:
    since, age = text(of, "since"), _ago(length(of, "age"))
    return f"{age} old then" if since == "made" else f"{since} {age} before"


def _from_old(of: Finding) -> str:
    return f"{_came(of)}, {_aged(of)}; it keeps {text(of, 'keeps')}"


_SCRATCH = f"scratch a hidden spot: {Do.CHECK('PART', Found.HOLDS)}"
_OR_OFF = f"{_SCRATCH}; if it flakes or stays soft, take it off"
_IS_IT_HARD = f"press a thumbnail into it: {Do.CHECK('PART', Found.NO_PRINT)}, or {_SCRATCH}"

WORDS = {
    "hardener-left-out": Words(
        lambda f: f"{_came(f)}, which was mixed without its hardener: it stays soft, however long",
        _OR_OFF,
        "mixed without its hardener",
    ),
    "hardener-untold": Words(
        lambda f: f"was the hardener of {text(f, 'of')} in it? Nothing on record says so",
        _untold,
        "was its hardener in it?",
        "word that its hardener was in it",
    ),
    "off-ratio": Words(_off_ratio, _OR_OFF, _off_ratio_short),
    "from-wrong-thinner": Words(
        lambda f: f"{_came(f)}, which was thinned with {text(f, 'thinner')}: it may stay soft",
        _OR_OFF,
        lambda f: f"thinned with {text(f, 'thinner')}",
    ),
    "past-pot-life": Words(
        lambda f: (
            f"{_came(f)}, {wait_words(length(f, 'past'))} past its pot life: "
            "it may look good and stay soft"
        ),
        _IS_IT_HARD,
        lambda f: (
            f"it came from a mix {wait_words(length(f, 'past'))} past its pot life: press a "
            "thumbnail into it"
        ),
    ),
    "from-frozen": Words(
        lambda f: f"{_came(f)}, which had frozen: it may never be a sound film",
        lambda f: f"{_OR_OFF}; or try the can on scrap: {Do.CAN_TESTED(text(f, 'can'))}",
        "it came from a can that had frozen",
    ),
    "from-condemned": Words(_marked, _OR_OFF, lambda f: f"it came from {text(f, 'can')}, now bad"),
    "sample-first": Words(
        "a sample on a scrap of this wood stayed soft: so may the coat",
        "first a fresh can on a scrap of the same wood; if that dries: "
        f"{Do.CHECK('PART', Found.SAMPLE_DRY)}",
        "the sample stayed soft",
    ),
    "sample-soft": Words(
        lambda f: (
            f"a sample of {text(f, 'can') or text(f, 'of')} on a scrap of the same wood stayed "
            "soft: it is the can or the wood"
        ),
        f"{_OR_OFF}; to tell which, a drop on glass: soft there too, it is the can; dry there, "
        "it is the wood, and a barrier goes first",
        "a sample of it stayed soft",
    ),
    "from-old": Words(
        _from_old,
        lambda f: (
            f"touch it, and log it: {Do.CHECK('PART', Found.DRY)}; or a drop of the can on glass: "
            f"{Do.CAN_TESTED(text(f, 'can'))}"
        ),
        lambda f: f"it came from {text(f, 'can')}, {_aged(f)}, too old to be trusted: is it dry?",
        "a check that finds it dry",
    ),
    "mixes-apart": Words(
        lambda f: (
            f"one coat went on from a mix {_age(length(f, 'under'))}, the next from a mix "
            f"{_age(length(f, 'this'))}: layers of mixes so different in age may wrinkle"
        ),
        _IS_IT_HARD,
    ),
    "not-stirred": Words(
        lambda f: f"{_came(f)}, not stirred: its {text(f, 'what')} settles, {text(f, 'shows')}",
        "look at it beside what is right; where it differs scuff it and give it one more coat, "
        "well stirred: nothing has to come off",
        "its can was not stirred",
    ),
    "stirred-untold": Words(
        lambda f: f"was {text(f, 'of')} stirred? Its {text(f, 'what')} settles",
        lambda f: (
            f"{Do.AMEND(f.acts[0], stirred=True)}, or {Do.AMEND(f.acts[0], not_stirred=True)}"
        ),
    ),
    "two-batches": Words(
        lambda f: (
            f"its last coat came from {_of_batch(f, 'can', 'batch')}, on "
            f"{', '.join(each_of(f, 'parts'))} from {_of_batch(f, 'theirs', 'their_batch')}: "
            "two cans may differ in sheen or tone"
        ),
        "look at them side by side; for what is still to come pour the cans together first, and "
        "give the last coat to all of it from one",
        "its last coat came from another can",
    ),
    "can-unstirred": Words(
        lambda f: (
            f"{text(f, 'can')} was poured from without stirring: what is left in it is mixed "
            "otherwise than its label says"
        ),
        lambda f: (
            "try it on a card, and take a fresh can for the last coat; then: "
            f"{Do.CAN_TESTED(text(f, 'can'))}"
        ),
    ),
    "can-tinted": Words(
        lambda f: f"{text(f, 'can')} is tinted: colour from below got into it, it is not clear",
        "not for pale wood or another colour; pour what a coat needs into a cup, and put nothing "
        "back",
    ),
    "left-in-tool": Words(
        lambda f: (
            f"{text(f, 'tool')} had {text(f, 'had')} in it last (act {text(f, 'used')}), now "
            f"{text(f, 'of')}: {text(f, 'reason')}"
        ),
        lambda f: (
            f"clean it: {text(f, 'clean')}; was it cleaned before: "
            f"{Do.CLEAN(text(f, 'tool'), at='WHEN')}"
        ),
    ),
    "crawled-from-tool": Words(
        lambda f: (
            f"{text(f, 'had')} crawled when it came from {text(f, 'tool')} (act {text(f, 'used')}):"
            f" what made the fisheyes may still be in it, and {text(f, 'of')} may crawl too"
        ),
        lambda f: (
            "strip and wash it, drain the air line, and spray a card first; then: "
            f"{Do.CLEAN(text(f, 'tool'))}"
        ),
    ),
    "can-condemned": Words(_condemned, lambda f: Do.CAN_THROWN_OUT(text(f, "can"))),
    "mark-the-can": Words(
        lambda f: f"nothing more from {text(f, 'can')}: it is the likeliest cause",
        lambda f: (
            f"mark it, do not use: {Do.CAN_CONDEMNED(text(f, 'can'))}; or, if a drop of it dries "
            f"on glass: {Do.CAN_TESTED(text(f, 'can'))}"
        ),
    ),
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
    "wrong-thinner": Words(
        lambda f: (
            f"{text(f, 'of')} is thinned with {text(f, 'by')}; {text(f, 'thinner')} may "
            "curdle it or keep it soft"
        ),
        "try a little of it in a jar first, then a coat of it on a scrap",
    ),
    "reacts": Words(lambda f: text(f, "reason"), "goggles and gloves, a little at a time"),
    "poison-made": Words(lambda f: f"{LEAVE_NOW}: {text(f, 'reason')}", _STAY_OUT),
    "makes-poison": Words(
        lambda f: f"do not: {text(f, 'reason')}",
        lambda f: (
            f"{_RINSE_FIRST if text(f, 'in_the_wood') else ''}"
            f"if it is done: {LEAVE_NOW}; {_STAY_OUT}"
        ),
    ),
}
