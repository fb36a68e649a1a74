"""The pages of cans and mixes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.asks.bench.open_cans import part_words
from finishlog.asks.things.can_list import CanHow
from finishlog.cli.pages.evening.words import echo
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.words.finding_lines import remedies, warn
from finishlog.cli.words.finding_words import sentence, with_remedy
from finishlog.core.findings import POT_LIFE, Level
from finishlog.core.log.words import ContainerDeed
from finishlog.core.measure.quantities import millilitres

if TYPE_CHECKING:
    from finishlog.acts.mixing.can import DeedDone
    from finishlog.acts.mixing.mix import Mixed
    from finishlog.acts.mixing.tool import ToolCleaned
    from finishlog.asks.bench.open_cans import CanInDoubt, MixLine
    from finishlog.asks.bench.tools import ToolLine
    from finishlog.asks.things.can_list import CanLine, CanShown
    from finishlog.clock import Clock
    from finishlog.core.mixing.mixes import Dilution

_WASTE = "safety: its sheet and the local waste rules say where it goes; no drain, no bin of rags"
_A_CUT = "a cut is the weight of flakes to the volume of alcohol, not of the liquid it makes"


def mix_page(answer: Mixed, clock: Clock) -> Page:
    """Echo a mix: what is in it, until when, what to heed."""
    page = Page()
    warn(page, [w for w in answer.warnings if w.get_out])
    page.line(_mixed(answer, clock))
    if answer.about_l:
        page.line(f"makes about {millilitres(1000 * answer.about_l)}")
    if answer.dilution:
        page.line(_dilution(answer.dilution))
    elif answer.cut_g_per_l:
        page.line(_A_CUT)
    if answer.solids_pct:
        low, high = answer.solids_pct.low, answer.solids_pct.high
        page.line(f"thinned, so a coat leaves less: solids about {low:.0f} to {high:.0f} %")
    if answer.use_by:
        page.line(_until(answer, clock))
    warn(page, [w for w in answer.warnings if not w.get_out])
    if answer.others_open:
        page.line(f"also open: {', '.join(answer.others_open)}")
    page.lines(f"safety: {note.text}" for note in answer.notes)
    return page.line(f"act {answer.act}" if answer.act else "nothing was put on record", Tone.FAINT)


def _until(answer: Mixed, clock: Clock) -> str:
    past = answer.use_by is not None and answer.use_by <= clock.now
    heat = "" if past else "; heat shortens that, cold lengthens nothing"
    return f"use it {by_words(answer, clock)}{heat}"


def _mixed(answer: Mixed, clock: Clock) -> str:
    ratio = f", {answer.ratio}" if answer.ratio else ""
    poured = ", ".join(part_words(part) for part in answer.parts)
    what = ": ".join(x for x in (f"{answer.product}{ratio}", poured) if x)
    if not answer.act:
        return what
    how = "topped up" if answer.topped_up else "mixed"
    return f"{clock.happened(answer.at)}  {answer.name} {how}: {what}"


def _dilution(by: Dilution) -> str:
    return (
        f"to 1 part of the old cut about {_part_words(by.by_alcohol)} of alcohol: {_A_CUT}; "
        f"charts that take it to the liquid say {_part_words(by.by_liquid)}. It hardly matters: "
        "keep to one"
    )


def _part_words(parts: float) -> str:
    """Say parts as a fraction where one fits: `5/6 part`, `1 1/2 parts`."""
    # It loads slowly, and only a thinned cut needs it.
    from fractions import Fraction

    near = Fraction(parts).limit_denominator(6)
    if abs(float(near) - parts) > 0.02 * parts:
        return f"{parts:.2g} parts"
    whole, rest = divmod(near, 1)
    said = " ".join(str(x) for x in (whole, rest) if x)
    return f"{said} part{'' if near <= 1 else 's'}"


def by_words(line: Mixed | MixLine | CanLine, clock: Clock) -> str:
    """Say until when a mix may be used: `by 22:30`, or since when it is past that."""
    if line.use_by is None:
        return ""
    if line.use_by <= clock.now:
        return f"no more: past its pot life since {clock.words(line.use_by)}"
    return clock.closes_at(line.use_by, by="by ")


def deed_page(answer: DeedDone, clock: Clock) -> Page:
    """Echo what was done with a can, and what follows."""
    from finishlog.asks.look.entry_words import deed_words

    note = f", {answer.note}" if answer.note else ""
    can = f"{answer.name} ({answer.product})"
    page = echo(clock, answer.at, [can], f"{deed_words(answer.deed)}{note}")
    warn(page, answer.findings)
    if answer.coats and answer.findings:
        page.line(f"coats from it: {', '.join(answer.coats)}")
    if answer.deed in {ContainerDeed.EMPTIED, ContainerDeed.THROWN_OUT}:
        page.line(_WASTE)
    return page.line(f"act {answer.act}", Tone.FAINT)


def cans_page(lines: Sequence[CanLine], clock: Clock) -> Page:
    """List containers."""
    page = Page()
    if not lines:
        page.line("no cans yet: finishlog can new NAME --product PRODUCT, or finishlog mix")
    section = page.section()
    for line in lines:
        section.row(line.name, line.product, line.ratio, line.how, _dates(line, clock))
        section.each(("", "", "", "", words) for words in remedies(line.findings))
    return page


def tools_page(lines: Sequence[ToolLine], clock: Clock) -> Page:
    """List tools with what was in each last."""
    page = Page()
    if not lines:
        page.line("no tool is on record yet: finishlog log PART --with gun1")
    section = page.section()
    for line in lines:
        had = f"{line.had}, {clock.words(line.at)} (act {line.act})" if line.at else ""
        cleaned = (
            f"cleaned {clock.words(line.cleaned_at)}" if line.cleaned_at else "not cleaned since"
        )
        section.row(line.name, had, cleaned)
    return page


def cleaned_page(answer: ToolCleaned, clock: Clock) -> Page:
    """Echo a tool that was cleaned."""
    note = f", {answer.note}" if answer.note else ""
    page = Page().line(f"{clock.happened(answer.at)}  {answer.tool}: cleaned{note}")
    return page.line(f"act {answer.act}", Tone.FAINT)


def _dates(line: CanLine, clock: Clock) -> str:
    named = (("made", line.made_at), ("opened", line.opened_at))
    said = [f"{w} {clock.words(m)}" for w, m in named if m]
    use = f"use {by_words(line, clock)}" if line.use_by and line.how is CanHow.OPEN else ""
    batch = f"batch {line.batch}" if line.batch else ""
    return ", ".join(x for x in (use, *said, batch) if x)


def can_page(answer: CanShown, clock: Clock) -> Page:
    """Show one container."""
    page = Page()
    line = answer.line
    section = page.section(f"{line.name}: {line.kind.value} of {line.product}, {line.how}")
    section.said("is", line.ratio)
    section.each(("part", part_words(part)) for part in answer.parts)
    if answer.solids_pct:
        section.row("solids", "about {:.0f} to {:.0f} % by volume".format(*answer.solids_pct))
    if line.amount_ml and not answer.parts:
        section.row("held", millilitres(line.amount_ml))
    section.said("dates", _dates(line, clock))
    section.said("drawn from", answer.drawn_from)
    section.said("was", ", ".join(line.old_names))
    section.said("note", answer.note)
    for event in answer.events:
        note = f", {event.note}" if event.note else ""
        section.row("logged", f"{event.what}, {clock.happened(event.at)}{note} (act {event.act})")
    section.each(("heed", words) for words in remedies(line.findings))
    for coat in answer.coats:
        laid = f"{', '.join(coat.parts)}, {clock.happened(coat.at)}"
        stirred = {None: "", True: ", stirred", False: ", NOT STIRRED"}[coat.stirred]
        section.row("coat", f"{laid}{stirred} (act {coat.act})")
    return page


def mixed_section(
    section: Section, mixes: Sequence[MixLine], cans: Sequence[CanInDoubt], clock: Clock
) -> None:
    """Lay out, on the screen of the evening, what stands open and what is in doubt."""
    for line in mixes:
        past = line.overdue or any(f.level is Level.STOP for f in line.findings)
        made = f"mixed {clock.words(line.made_at)}"
        use = f"use it {by_words(line, clock)}" if line.use_by else made
        # Of its pot life the line itself speaks already.
        more = (sentence(f) for f in line.findings if f.rule != POT_LIFE)
        said = "; ".join((use, *more))
        tone = Tone.DANGER if past else Tone.PLAIN
        section.row(line.name, line.product, line.ratio, said, tone=tone)
    for can in cans:
        for finding in can.findings:
            said = f"{finding.level.value}: {with_remedy(finding)}"
            tone = Tone.DANGER if finding.level is Level.STOP else Tone.PLAIN
            section.row(can.name, can.product, "", said, tone=tone)
