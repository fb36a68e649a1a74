"""The plan on paper: does it hold, what on which evening, from when each part may be handled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.vapour_page import air_lines, evening_words, people_ahead
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.cli.words.finding_lines import before_rows
from finishlog.cli.words.finding_words import barred_by, plan_reason, sentence, short, waits_for
from finishlog.core.log.shown_times import clock_words, closes_at, wait_words
from finishlog.core.measure.quantities import celsius
from finishlog.core.plan.results import Chore, Promise
from finishlog.core.zone.grouping import Label, describe

if TYPE_CHECKING:
    from finishlog.asks.bench.plan import AirExpected, PlanAnswer
    from finishlog.clock import Clock
    from finishlog.core.bench.milestones import Milestone
    from finishlog.core.plan.results import PartDates, PlannedTask, ProjectPlan
    from finishlog.core.shop.things import Part

SESSIONS_SHOWN = 5


def plan_page(answer: PlanAnswer, clock: Clock, *, verbose: bool) -> Page:
    """Lay out the plan: the promises first, then the evenings, then the dates."""
    page = Page()
    if not answer.hours_known:
        page.line("no plan without opening hours: finishlog shop hours 'mon-fri 18:00-21:00'")
        return page
    projects = page.section("DUE")
    for project in answer.plan.projects:
        projects.row(project.project.name, *_promise(project, clock), tone=_tone(project))
        if project.by_due and project.due:
            projects.each(("", "", words) for words in _what_fits(project, answer, clock))
    page.section("WHO STAYS OUT").each((w,) for w in people_ahead(answer.people, clock))
    _sessions(page, answer, clock, verbose)
    _parts(page.section("FROM WHEN IT MAY BE"), answer.plan.parts, clock)
    _left(page, answer)
    _assumed(page.section("COUNTED ON"), answer, clock)
    return page


def _tone(project: ProjectPlan) -> Tone:
    tones = {Promise.HOLDS: Tone.GO, Promise.LATE: Tone.DANGER, Promise.TIGHT: Tone.DANGER}
    return tones.get(project.promise, Tone.PLAIN)


def _promise(project: ProjectPlan, clock: Clock) -> tuple[str, str]:
    """Say whether a date holds, and by how much."""
    due = f"due {_day(project.due, clock)}" if project.due else "no due date"
    packed = f"packed {clock.wait_until(project.packed)}" if project.packed else ""
    match project.promise:
        case Promise.HOLDS:
            assert project.spare is not None
            free = f"{_day(project.spare[0], clock)} is kept free for a coat that fails"
            words = f"holds: {packed}, {_slack(project)} to spare; {free}"
        case Promise.TIGHT:
            words = f"holds, but no evening is spare: {packed}, {_slack(project)} to spare"
        case Promise.LATE:
            late = wait_words(timedelta(hours=-(project.slack_h or 0)))
            few = project.late_openings
            openings = "1 opening" if few == 1 else f"{few} openings"
            words = f"late by {late} ({openings} too few): {packed}"
            words += _used_with_care(project, clock)
        case Promise.NO_DUE:
            words = packed
        case _:
            rest = f"; the rest is {packed}" if packed else ""
            words = f"cannot be said: {short(project.why) if project.why else ''}{rest}"
    return due, words


def _what_fits(project: ProjectPlan, answer: PlanAnswer, clock: Clock) -> Iterator[str]:
    """Say how far a late project comes by its date, and how far by testing every film early."""
    assert project.due is not None
    yield f"by {_day(project.due, clock)}: {_coats(project)}"
    tested = answer.tested.get(project.project.id)
    if tested is None or not _is_better(tested, project):
        return
    packed = f", packed {clock.wait_until(tested.packed)}" if tested.packed else ""
    coats = _coats(tested) if tested.by_due else "all coats by then"
    yield (
        f"each film tested and coated at its earliest: {coats}{packed}; what only seems dry may "
        "wrinkle, and costs more than it saves"
    )


def _is_better(tested: ProjectPlan, project: ProjectPlan) -> bool:
    more = sum(each.on for each in tested.by_due) > sum(each.on for each in project.by_due)
    sooner = tested.packed and project.packed and tested.packed < project.packed
    return more or bool(sooner)


def _coats(project: ProjectPlan) -> str:
    lacking = [each for each in project.by_due if each.on < each.of]
    parts = lacking or project.by_due
    lines = (f"{each.part.called} {each.on} of {each.of} coats" for each in parts)
    return ", ".join(lines)


_WITH_CARE = "with care, nothing hot, nothing wet, nothing left standing or lying on it"


def _used_with_care(project: ProjectPlan, clock: Clock) -> str:
    """Say what a late piece may be used for by its date, within which limits."""
    if project.light_use is None or project.due is None:
        return ""
    when = f"; light use from {clock.wait_until(project.light_use)}"
    if project.light_use <= project.due:
        return f"{when}: {_WITH_CARE}"
    tested = project.light_use_tested
    if tested is None or tested > project.due:
        return when
    day = _day(project.due, clock)
    return f"{when}; by {day} only where a thumbnail leaves no print: {_WITH_CARE}"


def _slack(project: ProjectPlan) -> str:
    hours = int((project.slack_shop_min or 0) // 60)
    days = int((project.slack_h or 0) // 24)
    return f"{hours} shop hours ({days} d)"


def _sessions(page: Page, answer: PlanAnswer, clock: Clock, verbose: bool) -> None:
    sessions = answer.plan.sessions
    shown = sessions if verbose else sessions[:SESSIONS_SHOWN]
    told: set[int] = set()
    first = next((each for each in shown if each.coats), None)
    for each in shown:
        day, ends = _day(each.start, clock).upper(), _clock(each.end, clock)
        section = page.section(f"{day}, {_clock(each.start, clock)} to {ends}")
        if each is first:
            rows = before_rows(answer.before)
            section.each(("", "before", names, words) for names, words in rows)
            air = (f"if it takes what it took: {evening_words(e)}" for e in answer.evening)
            section.each(("", "air", "", words) for words in air)
        for task in each.tasks:
            section.row(_clock(task.start, clock), *_task(task, answer, clock))
            if task.chore is Chore.SET_UP and task.product is not None:
                section.each(("", "", "", words) for words in _air(task.product, answer, told))
    if len(shown) < len(sessions):
        rest, last = len(sessions) - len(shown), _day(sessions[-1].start, clock)
        page.line(f"and {rest} more, the last on {last}: finishlog plan -v", Tone.FAINT)


def _air(product: int, answer: PlanAnswer, told: set[int]) -> Iterator[str]:
    """Say what to put out before a can is opened, each time; what the air takes of it, once."""
    ahead = answer.vapour[product]
    yield from dict.fromkeys(f"first: {waits_for(found)}" for found in ahead.lit)
    if product not in told:
        told.add(product)
        yield from (f"air: {words}" for _, words in air_lines(ahead.takes))


def _task(task: PlannedTask, answer: PlanAnswer, clock: Clock) -> tuple[str, str, str]:
    product = answer.products[task.product] if task.product is not None else ""
    match task.chore:
        case Chore.VACUUM:
            return "vacuum", "", "then the dust settles; wipe the parts"
        case Chore.SET_UP:
            return "set up", product, ""
        case Chore.CLEAN_UP:
            oily = "oily rags: spread flat outdoors, or water, or can"
            return "clean up", product, oily if task.product in answer.self_heating else ""
        case _:
            assert task.part is not None
            named = task.label.full
            wiped = ", wipe off" if task.wiped else ""
            return f"{task.operation}{wiped}", named, _why(task, product, clock)


def _why(task: PlannedTask, product: str, clock: Clock) -> str:
    """Say which coat it is, and why then."""
    words = [f"{product} {task.coat[0]} of {task.coat[1]}" if product else ""]
    if task.missed:
        closes = "closed" if task.missed <= task.start else "closes"
        words.append(f"its window {closes} {clock_words(task.missed, task.start, clock.zone)}")
    elif task.ready_since:
        words.append(f"ready since {clock_words(task.ready_since, task.start, clock.zone)}")
    if task.because:
        words.append(short(task.because))
    if task.closes:
        words.append(f"closes {closes_at(task.closes, task.start, clock.zone)}")
    if task.test:
        words.append(f"test first: {sentence(task.test)}")
    if task.lesson:
        words.append(short(task.lesson))
    return "; ".join(word for word in words if word)


def _parts(section: Section, parts: Sequence[PartDates], clock: Clock) -> None:
    """Set out the dates in columns."""
    if not parts:
        return
    section.row("", "clamped", "stacked", "packed", "fully hard", tone=Tone.FAINT)
    for each in parts:
        name = label_of(each.part).full
        dates = (each.clamp, each.stack, each.pack, each.cured)
        words = [_handling(date, clock) for date in dates]
        if each.joins:
            words = [words[0], "then it is glued up"]
        section.row(name, *(words[:1] if len(set(words)) == 1 else words))


def label_of(part: Part) -> Label:
    """Name all of a part: `doors ×2`."""
    return describe(part, [piece.number for piece in part.pieces], ())


def handling(milestone: Milestone) -> tuple[datetime | None, str]:
    """Return from when a stage may be counted on, and what stands against a date."""
    if milestone.blocked:
        return None, barred_by(milestone.blocked)
    if milestone.missing:
        return None, f"no figure for {', '.join(milestone.missing)}"
    why = "" if milestone.high else "not in this air"
    return milestone.high, why if milestone.air_read else "by label time only"


def _handling(milestone: Milestone | None, clock: Clock) -> str:
    if milestone is None:
        return "no figure"
    at, why = handling(milestone)
    if at is None:
        return why
    when = clock.wait_until(at)
    return f"{when} (label)" if why else when


def _left(page: Page, answer: PlanAnswer) -> None:
    """Name what is not planned: apart what only other air would help."""
    other_air, rest = page.section("NEEDS OTHER AIR"), page.section("NOT PLANNED")
    for each in answer.plan.unplanned:
        section = other_air if each.needs_air else rest
        because, path = plan_reason(each.because), each.part.path
        for room in answer.rooms.get(path, ())[:1]:
            because += f"; {room} suits: finishlog move {path} {room}"
        section.row(each.label.full, each.operation or "", because)


def _assumed(section: Section, answer: PlanAnswer, clock: Clock) -> None:
    """Say what the plan takes for granted."""
    section.each(((_air_expected(room, clock),) for room in answer.air), Tone.FAINT)
    tests = ((e.part.path, e.at, e.found) for e in answer.plan.counted_on)
    for part, at, found in dict.fromkeys(tests):
        when = clock.wait_until(at)
        words = f"{part} passes its check ({found.value}) by {when}: an estimate, check it first"
        section.row(words, tone=Tone.FAINT)
    for board, because in answer.plan.boards_passed:
        section.row(f"{board.path} cannot be ready first: {plan_reason(because)}", tone=Tone.FAINT)
    if missed := answer.plan.missed:
        many = "1 recoat window closes" if missed == 1 else f"{missed} recoat windows close"
        section.row(f"{many} before the next coat fits: scuffed first", tone=Tone.FAINT)
    if answer.plan.stopped:
        section.row(short(answer.plan.stopped), tone=Tone.FAINT)
    if answer.plan.sessions:
        section.row(
            "minutes at the bench are common practice, the longer end; "
            "a later start was not tried: this one is shown to work",
            tone=Tone.FAINT,
        )


def _air_expected(room: AirExpected, clock: Clock) -> str:
    if room.air is None or room.read_at is None:
        return f"{room.room}: air never read, label hours only: test before you coat"
    if room.as_usual:
        return (
            f"{room.room} goes on as usual after {show_air(room.air)}, read "
            f"{clock.words(room.read_at)}; read it again before each coat"
        )
    nights = ""
    if room.coldest_night_c is not None:
        nights = f", nights to {celsius(room.coldest_night_c, 1)}"
    return (
        f"{room.room} stays as read {clock.words(room.read_at)}: "
        f"{show_air(room.air)}{nights}; read it again before each coat"
    )


def _clock(moment: datetime, clock: Clock) -> str:
    return f"{moment.astimezone(clock.zone):%H:%M}"


def _day(moment: datetime | None, clock: Clock) -> str:
    assert moment is not None
    local = moment.astimezone(clock.zone)
    year = f" {local.year}" if local.year != clock.now.astimezone(clock.zone).year else ""
    return f"{local:%a} {local.day} {local:%b}{year}"
