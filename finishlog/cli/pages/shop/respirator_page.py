"""Respirators: what each is for, what passes it, since when it is open; never what is left."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.commands import Do
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import MaskKept, RespiratorDeed

if TYPE_CHECKING:
    from finishlog.acts.air.respirator import RespiratorLogged
    from finishlog.asks.things.respirators import RespiratorLine
    from finishlog.clock import Clock

_NO_PROOF = "no mask is proof: the safety data sheet names the kind, its maker when to change it"


def respirators_page(lines: Sequence[RespiratorLine], clock: Clock) -> Page:
    """List them."""
    page = Page()
    if not lines:
        page.line(
            "no respirator is on record: finishlog respirator half opened --for organic-vapour"
        )
    for line in lines:
        _row(page, line, clock)
    return page.line(_NO_PROOF, Tone.FAINT)


def respirator_page(answer: RespiratorLogged, clock: Clock) -> Page:
    """Echo what was logged, and how it stands."""
    page = Page().line(f"{clock.happened(answer.at)}  {answer.name}: {answer.deed.value}")
    if answer.line is not None:
        _row(page, answer.line, clock)
    page.line(_NO_PROOF, Tone.FAINT)
    return page.line(f"act {answer.act}", Tone.FAINT)


def _row(page: Page, line: RespiratorLine, clock: Clock) -> None:
    section = page.section()
    section.row(line.name, line.kind or "for what? finishlog respirator NAME opened --for KIND")
    since = f"open since {clock.words(line.opened)}" if line.opened else "opened: not on record"
    days = f", {line.open_d} d" if line.open_d else ""
    worn = f", worn {length_words(line.worn)}" if line.worn else ""
    if line.cartridge:
        section.row("", f"{since}{days}{worn}; nothing tells what is left of it")
    if line.cartridge and line.kept is MaskKept.OPEN:
        section.row("", "hung in the open: it fills from the air of the shop", tone=Tone.DANGER)
    if line.cartridge and line.kept is not MaskKept.BAG:
        bag = Do.RESPIRATOR(line.name, RespiratorDeed.WORN, "2h", kept=MaskKept.BAG.value)
        section.row("", f"a date on it, and into a closed bag after each session: {bag}")
    if line.made_for:
        section.row("", f"made for: {_listed(line.made_for)}")
    if line.never:
        section.row("", f"never for: {_listed(line.never)}", tone=Tone.DANGER)
    section.row("", line.wear, tone=Tone.FAINT)


def _listed(hazards: Iterable[str]) -> str:
    return ", ".join(hazard.replace("-", " ") for hazard in hazards)
