"""What a check of a film proves, and what it blocks. A failed check beats any clock."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta

from finishlog.core.finish.classes import Figure, FinishClass, Mechanism
from finishlog.core.finish.stages import Stage, with_later
from finishlog.core.log.entries import AnyEntry, Check, Coat
from finishlog.core.log.where import reaches
from finishlog.core.log.words import SEEN_ON_WOOD, SOFT, Found, Test

Figures = Mapping[Stage, Figure]
FiguresOf = Callable[[Check], Figures]

# common practice; "dry" is a light touch and proves no more than tack-free.
PROVES: dict[Found, frozenset[Stage]] = {
    Found.DRY: frozenset({Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE}),
    Found.NO_PRINT: frozenset(
        {Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE, Stage.TURN, Stage.CLAMP}
    ),
    Found.POWDER: frozenset({Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE, Stage.SAND}),
    Found.NO_SMELL: frozenset({Stage.CLOSE}),
    Found.HOLDS: frozenset(),
    # A rub sees the surface: how hard it is inside it does not tell.
    Found.RESISTS: frozenset({Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE}),
    Found.FLAT: frozenset(),
    Found.SAMPLE_DRY: frozenset(),
    Found.LOOKS_CLEAN: frozenset(),
    # What an old finish holds: it says nothing of how dry anything is.
    Found.NO_LEAD: frozenset(),
    Found.LEAD: frozenset(),
}

# What is tried on a film between the early and the promised end of a stage: all of it passed then
# answers for the stage. How hard a film is inside no such test tells: nothing is tried for cured.
TRIED_BY: dict[Stage, frozenset[Found]] = {
    Stage.SAND: frozenset({Found.POWDER}),
    Stage.CLAMP: frozenset({Found.NO_PRINT}),
    Stage.STACK: frozenset({Found.NO_PRINT}),
    Stage.PACK: frozenset({Found.NO_PRINT}),
    Stage.CLOSE: frozenset({Found.NO_SMELL}),
    Stage.LIGHT_USE: frozenset({Found.NO_SMELL, Found.NO_PRINT}),
    Stage.RUB: frozenset({Found.NO_SMELL, Found.NO_PRINT}),
}

# What a failure shows not to be reached: first the stage that its test is about, then what else a
# film that is so cannot bear. All that comes after those is not reached either. common practice
DENIES: dict[Found, tuple[Stage, ...]] = {
    Found.TACKY: (Stage.TACK_FREE, Stage.RECOAT, Stage.SAND),
    Found.GUMS: (Stage.SAND, Stage.RECOAT, Stage.RUB),
    Found.PRINTS: (Stage.CLAMP, Stage.RUB),
    # What smells gives off vapour still: it is neither shut in nor wrapped.
    Found.SMELLS: (Stage.CLOSE, Stage.PACK, Stage.LIGHT_USE, Stage.RUB),
    # It does not hold: nothing more goes on it, and it goes nowhere. Taking it off is not barred.
    Found.FLAKES: (Stage.CURED, Stage.RECOAT, Stage.CLAMP, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB),
    # Its own solvent takes it up still: it has not cured, and softens where it is shut in or lies
    # on another.
    Found.SOFTENS: (Stage.CURED, Stage.STACK, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB),
    # These speak of the wood, and of the can: what they hold up is not the film.
    Found.CUPPED: (),
    Found.SAMPLE_SOFT: (),
    **dict.fromkeys(SEEN_ON_WOOD, ()),
}

# What asks for a film that is hard, in the order of its own figures.
_ASKS_HARDNESS = frozenset(
    {Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB, Stage.CURED}
)
# What a thumbnail that leaves no mark shows it to bear, whatever its surface does under paper.
_BORNE = frozenset({Stage.CLAMP, Stage.STACK, Stage.PACK})

# Which later finding answers a failure: only a test that could have shown it again.
LIFTED_BY: dict[Found, frozenset[Found]] = {
    Found.TACKY: frozenset(
        {Found.DRY, Found.NO_PRINT, Found.POWDER, Found.GUMS, Found.PRINTS, Found.RESISTS}
    ),
    Found.GUMS: frozenset({Found.POWDER}),
    Found.PRINTS: frozenset({Found.NO_PRINT}),
    Found.SMELLS: frozenset({Found.NO_SMELL}),
    Found.FLAKES: frozenset({Found.HOLDS}),
    Found.SOFTENS: frozenset({Found.RESISTS}),
    Found.CUPPED: frozenset({Found.FLAT}),
    Found.SAMPLE_SOFT: frozenset({Found.SAMPLE_DRY}),
    **dict.fromkeys(SEEN_ON_WOOD, frozenset({Found.LOOKS_CLEAN})),
}

# A soft film may harden, and a smell go; what does not hold never will. common practice
NO_TIME_MENDS = frozenset({Found.FLAKES})

FOUND_BY: dict[Test, tuple[Found, ...]] = {
    Test.TOUCH: (Found.TACKY, Found.DRY),
    Test.THUMBNAIL: (Found.TACKY, Found.PRINTS, Found.NO_PRINT),
    Test.SAND: (Found.GUMS, Found.POWDER),
    Test.SMELL: (Found.SMELLS, Found.NO_SMELL),
    Test.SCRATCH: (Found.FLAKES, Found.HOLDS),
    Test.SOLVENT_RUB: (Found.SOFTENS, Found.RESISTS),
    Test.STRAIGHTEDGE: (Found.CUPPED, Found.FLAT),
    Test.SAMPLE: (Found.SAMPLE_SOFT, Found.SAMPLE_DRY),
    Test.LOOK: (*SEEN_ON_WOOD, Found.LOOKS_CLEAN),
    Test.LEAD: (Found.NO_LEAD, Found.LEAD),
}


# What a finding is called by another test, and is here.
_SAID_OF: dict[Test, dict[Found, Found]] = {
    Test.LOOK: {Found.NO_PRINT: Found.LOOKS_CLEAN},
    Test.SOLVENT_RUB: {Found.HOLDS: Found.RESISTS, Found.GUMS: Found.SOFTENS},
    Test.SAMPLE: {
        **dict.fromkeys(SOFT, Found.SAMPLE_SOFT),
        **dict.fromkeys((Found.DRY, Found.NO_PRINT, Found.POWDER), Found.SAMPLE_DRY),
    },
}


def found_by(test: Test, said: Found) -> Found:
    """Return what a word means as the result of a test: a sample that is `dry`, a rub `holds`."""
    return _SAID_OF.get(test, {}).get(said, said)


def cures(of: FinishClass) -> bool:
    """Tell whether a class cures, so that its own solvent does not take it up for ever.

    Shellac, lacquer, wax and dye dissolve again at any age: of them a rub tells nothing.
    """
    return of.mechanism in {Mechanism.OXIDATION, Mechanism.CROSS_LINKING} or (
        of.hardener_pct is not None
    )


OF_THE_WOOD = frozenset({Test.STRAIGHTEDGE, Test.LOOK, Test.LEAD})
# Of the wood, and of the can.
OF_NO_FILM = OF_THE_WOOD | {Test.SAMPLE}


def tells_of(test: Test, of: FinishClass) -> bool:
    """Tell whether a test sees anything of a film of a class."""
    if test is Test.SOLVENT_RUB:
        return cures(of)
    return test not in OF_NO_FILM


# What a pass shows at the least, by which it is told that it came too soon.
_SHOWS = {Found.NO_PRINT: Stage.CLAMP, Found.POWDER: Stage.SAND}


def passes_share(found: Found, coat: Coat, share: float) -> timedelta | None:
    """Return after how long a coat may pass a test at the soonest; None: nothing tells.

    `share`: of the least hours of what the test shows; to a light touch it may be as soon as that.
    """
    if failed(found):
        return None
    stages = coat.figures.stages
    figure = stages.get(_SHOWS.get(found, Stage.TACK_FREE))
    touch = stages.get(Stage.TOUCH) if found is Found.DRY else None
    if figure is None:
        return None
    hours = share * figure.low_h
    return timedelta(hours=min(hours, touch.low_h) if touch else hours)


def passed_too_soon(check: Check, coat: Coat, share: float) -> bool:
    """Tell whether a check passed when the film cannot have been so far: it tells nothing of it."""
    least = passes_share(check.found, coat, share)
    return least is not None and check.when.latest - coat.when.earliest < least


def failed(found: Found) -> bool:
    """Tell whether a finding is a failure."""
    return found in DENIES


def test_that_finds(found: Found) -> Test:
    """Return the test whose result a word is ("prints" is the thumbnail's)."""
    if found is Found.TACKY:
        return Test.TOUCH
    return next(test for test, results in FOUND_BY.items() if found in results)


def pass_of(test: Test) -> Found:
    """Return what a test finds where nothing is wrong."""
    return next(found for found in FOUND_BY[test] if not failed(found))


test_that_finds.__test__ = False  # type: ignore[attr-defined]


def standing_failures(checks: Sequence[Check]) -> tuple[Check, ...]:
    """Return the failed checks, oldest first, that no later check answers."""
    return tuple(
        check
        for n, check in enumerate(checks)
        if failed(check.found) and not any(_answers(later, check) for later in checks[n + 1 :])
    )


def _answers(later: Check, failure: Check) -> bool:
    """Tell whether a later check answers a failure: it could have shown it again, and there."""
    return later.found in LIFTED_BY[failure.found] and reaches(later.place, failure.place)


def last_of_each_place(checks: Sequence[Check]) -> tuple[Check, ...]:
    """Return the checks that no later one was made over: at the same place, or all over."""
    return tuple(
        check
        for n, check in enumerate(checks)
        if not any(reaches(later.place, check.place) for later in checks[n + 1 :])
    )


def denied(found: Found, figures: Figures) -> frozenset[Stage]:
    """Return every stage that a failure shows a film of such figures not to have reached.

    What comes after a stage that it lacks, whatever the finish; and where it is soft also what its
    own figures promise no sooner: they were wrong about the one, and are not believed of the other.
    """
    lacks = DENIES.get(found, ())
    promised = figures.get(lacks[0]) if found in SOFT else None
    later = {s for s, f in figures.items() if s in _ASKS_HARDNESS and _no_sooner(f, promised)}
    return with_later(lacks) | later


def _no_sooner(figure: Figure, than: Figure | None) -> bool:
    return than is not None and figure.high_h >= than.high_h


def held(
    checks: Sequence[Check], figures_of: FiguresOf
) -> Iterator[tuple[Check, frozenset[Stage]]]:
    """Yield the failures that stand, oldest first, each with the stages it keeps a film from."""
    for n, check in enumerate(checks):
        later = [c for c in checks[n + 1 :] if reaches(c.place, check.place)]
        if not failed(check.found) or any(_answers(c, check) for c in later):
            continue
        stages = denied(check.found, figures_of(check))
        if any(c.found is Found.NO_PRINT for c in later):
            stages -= _BORNE - with_later(DENIES[check.found])
        yield check, stages


def blocking(checks: Sequence[Check], stage: Stage) -> Check | None:
    """Return the newest standing failure that blocks a stage, whatever the finish, if any."""
    blocks = [c for c in standing_failures(checks) if _blocks(c, stage)]
    return blocks[-1] if blocks else None


def proof(checks: Sequence[Check], stage: Stage, builds_film: bool) -> Check | None:
    """Return the first passed check since the last failure that proves a stage.

    "Sands to powder" also proves a film finish ready to recoat; of oil and colour, which build no
    film, that its own solvent does not take it up. What passes while another place
    still fails proves nothing.
    """
    if blocking(checks, stage):
        return None
    since = max((n for n, c in enumerate(checks) if _blocks(c, stage)), default=-1) + 1
    for n, check in enumerate(checks[since:], since + 1):
        if _proves(check, stage, builds_film) and blocking(checks[:n], stage) is None:
            return check
    return None


def passed_all(checks: Sequence[Check], stage: Stage, since: datetime | None) -> Check | None:
    """Return the check by which all that is tried for a stage had passed; None: not all of it.

    Only what was found since its early end counts, and nothing while a failure bars the stage.
    """
    tried = TRIED_BY.get(stage)
    if tried is None or since is None or blocking(checks, stage):
        return None
    missing = set(tried)
    for check in (c for c in checks if c.when.earliest >= since):
        missing = set(tried) if _blocks(check, stage) else missing - {check.found}
        if not missing:
            return check
    return None


def _proves(check: Check, stage: Stage, builds_film: bool) -> bool:
    ready = Found.POWDER if builds_film else Found.RESISTS
    if stage is Stage.RECOAT and check.found is ready:
        return True
    return stage in PROVES.get(check.found, frozenset())


def _blocks(check: Check, stage: Stage) -> bool:
    return stage in with_later(DENIES.get(check.found, ()))


def last_sample(entries: Sequence[AnyEntry]) -> Check | None:
    """Return the last control sample of what reached a zone, before its coat or since."""
    samples = (e for e in reversed(entries) if isinstance(e, Check) and e.test is Test.SAMPLE)
    return next(samples, None)


def no_better(before: Found, now: Found) -> bool:
    """Tell whether a failure shows no progress since another one.

    A film that goes from tacky to printing is slow, but it does get on.
    """
    if before not in SOFT or now not in SOFT:
        return before is now
    return SOFT.index(now) <= SOFT.index(before)


def stalled(checks: Sequence[Check], late_from: datetime, slow: timedelta) -> bool:
    """Tell whether a film makes no progress: not slow, but stopped.

    It failed when it was already late by every clock (`late_from`), and failed no better as long
    again after as makes a film slow (TM 43-0139 chapter 5: 12 h), with nothing passed since.
    """
    standing = standing_failures(checks)
    if not standing:
        return False
    last = standing[-1]
    same = [
        c
        for n, c in enumerate(checks)
        if failed(c.found)
        and c.when.earliest >= late_from
        and no_better(c.found, last.found)
        and not _passed_since(checks[n + 1 :], c)
    ]
    return bool(same) and last.when.earliest - same[0].when.earliest >= slow


def _passed_since(later: Sequence[Check], failure: Check) -> bool:
    return any(_answers(c, failure) and not failed(c.found) for c in later)
