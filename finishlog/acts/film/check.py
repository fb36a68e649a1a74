"""Log a check of a film: what the finger, the thumbnail, the paper or the nose found."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.doubts import findings_of, of_a_check_too_soon
from finishlog.acts.answers.reconsidered import MovedDate, moved_dates
from finishlog.acts.meant.said import one_meant
from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.asks.look.went_wrong import went_wrong_words
from finishlog.context import Context
from finishlog.core.film.checks import (
    FOUND_BY,
    OF_NO_FILM,
    OF_THE_WOOD,
    PROVES,
    TRIED_BY,
    cures,
    denied,
    found_by,
    standing_failures,
    tells_of,
    test_that_finds,
)
from finishlog.core.film.faults import as_fault
from finishlog.core.findings import PASSED_TOO_SOON, Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.when import When
from finishlog.core.log.where import reaches
from finishlog.core.log.words import Found, Test
from finishlog.core.published.facts import Facts
from finishlog.core.shop.trade_words import plain_word
from finishlog.core.zone.grouping import labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones


class Checked(Struct, frozen=True):
    """A check as recorded, what it blocks or proves, and how things stand now."""

    act: int
    test: Test
    found: Found
    place: str
    at: When
    labels: tuple[str, ...]
    blocks: tuple[Stage, ...]
    proves: tuple[Stage, ...]
    standings: tuple[Standing, ...]
    in_the_white: tuple[str, ...]
    # What failed at other places of the same zones, and stands.
    elsewhere: tuple[str, ...] = ()
    # Of what is a fault of the wood: what it means, what mends it.
    means: str = ""
    remedies: tuple[str, ...] = ()
    warnings: tuple[Finding, ...] = ()
    # Other parts whose dates it moved, by what it taught of how their film dries here.
    moved: tuple[MovedDate, ...] = ()


# What a check that finds no progress asks for, besides the causes that `why` tells.
_PAST_WAITING = ("past-hope", "change-method", "stalled", "mark-the-can", "comes-off")

# No finger tells how hard a film is inside.
_NO_TEST = frozenset(
    {"hard", "felt-hard", "feels-hard", "fully-hard", "cured", "ok", "okay", "good", "fine", "well"}
)


def found_word(typed: str) -> Found:
    """Read a finding; UsageFault names the words there are."""
    if plain_word(typed) in _NO_TEST:
        raise UsageFault(
            f"{typed!r} is no test: a film that feels hard may still be soft inside",
            "smell it: no-smell or smells; press a thumbnail: no-print or prints",
        )
    return one_meant(Found, typed, f"no check finds {typed!r}")


def test_word(typed: str | None, found: Found) -> Test:
    """Read which test it was; by default the one that finds such a thing."""
    if typed is None:
        return test_that_finds(found)
    test = one_meant(Test, typed, f"no test is called {typed!r}")
    if found_by(test, found) not in FOUND_BY[test]:
        fits = ", ".join(f.value for f in FOUND_BY[test])
        raise UsageFault(f"a {test.value} test does not find {found.value!r}", f"it finds {fits}")
    return test


def log_check(
    context: Context,
    *,
    parts: Sequence[str],
    face: str | None,
    found: Found,
    test: Test,
    place: str,
    at: When,
    only_now: bool | None = None,
    sure: bool = True,
) -> Checked:
    """Record a check on the zones that were named; Doubtful when that is not `sure`."""
    with context.writing("check") as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, face)
        found = found_by(test, found)
        soon = of_a_check_too_soon(before, picked, found, at, ledger.act_id)
        doubts = findings_of(soon if test not in OF_NO_FILM else (), sure=sure)
        made = Check(
            when=at,
            targets=picked.targets,
            test=test,
            found=found,
            only_now=only_now,
            place=place,
        )
        ledger.record(made)
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        told = any(not s.top or tells_of(test, s.top.of) for s in states)
        tells = told and not any(each.rule == PASSED_TOO_SOON for each in doubts)
        others = _elsewhere(states, place)
        shows = as_fault(made)
        fault = before.facts.fault_known(shows.what) if shows else None
        denies = {stage for s in states for check, of in s.held if check in others for stage in of}
        tops = [s.top.coat.figures.stages for s in states if s.top and tells_of(test, s.top.of)]
        blocks = {stage for figures in tops or [{}] if tells for stage in denied(found, figures)}
        return Checked(
            act=ledger.act_id,
            test=test,
            found=found,
            place=place,
            at=at,
            labels=picked.labels,
            blocks=tuple(s for s in Stage if s in blocks),
            proves=tuple(
                s
                for s in Stage
                if (s in PROVES.get(found, ()) and tells and s not in denies)
                or _completes(states, s, ledger.act_id)
            ),
            standings=standings([s for s in states if s.layers or test in OF_THE_WOOD], after),
            in_the_white=_in_the_white(states) if test not in OF_NO_FILM else (),
            elsewhere=_named(others, after.facts),
            means=fault.means if fault else "",
            remedies=fault.remedies if fault else (),
            warnings=(*doubts, *_tells_nothing(states, test), *_past_waiting(states)),
            moved=tuple(m for m in moved_dates(before, after, picked.targets) if m.pace),
        )


def _completes(states: Sequence[ZoneState], stage: Stage, act: int) -> bool:
    """Tell whether, with this check, all that is tried for a stage has passed everywhere."""
    reached = [s.stages[stage] for s in states if stage in TRIED_BY and stage in s.stages]
    return bool(reached) and all(time.proved_by == act for time in reached)


def _tells_nothing(states: Sequence[ZoneState], test: Test) -> Iterator[Finding]:
    """Caution of a rub on films that their own solvent takes up at any age."""
    tops = [state.top for state in states if state.top and test is Test.SOLVENT_RUB]
    for name in dict.fromkeys(top.coat.product_name for top in tops if not cures(top.of)):
        yield finding("rub-tells-nothing", Level.CAUTION, COMMON_PRACTICE, of=name)


def _past_waiting(states: Sequence[ZoneState]) -> Iterator[Finding]:
    """Say at once that waiting mends no film that stands still, and how it comes off."""
    stalled = [s.verdict for s in states if s.verdict.answer is Answer.STALLED]
    said = (f for verdict in stalled for f in verdict.findings if f.rule in _PAST_WAITING)
    yield from dict.fromkeys(said)


def _elsewhere(states: Sequence[ZoneState], place: str) -> tuple[Check, ...]:
    """Return the failures that stand and that this place says nothing of."""
    standing = (check for state in states for check in standing_failures(state.checks))
    return tuple(check for check in standing if not reaches(place, check.place))


def _named(failures: Sequence[Check], facts: Facts) -> tuple[str, ...]:
    # One spot says nothing of a failure that was found without a place, either.
    told = (replace(check, place=check.place or "all over") for check in failures)
    return tuple(dict.fromkeys(went_wrong_words(check, facts) for check in told))


def _in_the_white(states: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the pieces that carry no film anywhere that was checked."""
    coated = {s.piece.id for s in states if not s.is_bare_wood}
    return labels_of(s for s in states if s.piece.id not in coated)
