"""A film that has stalled: why, as far as the log shows, and until when to take it off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta, tzinfo

from finishlog.core.book import Book
from finishlog.core.causes import causes_of_a_stall
from finishlog.core.findings import Finding, Level
from finishlog.core.finishes import COMMON_PRACTICE
from finishlog.core.records import Operation
from finishlog.core.shop import Log, Shop
from finishlog.core.stages import Stage
from finishlog.core.verdicts import Answer
from finishlog.core.zone import ZoneState


def explained(
    state: ZoneState,
    zones: Sequence[ZoneState],
    shop: Shop,
    log: Log,
    book: Book,
    zone: tzinfo,
) -> ZoneState:
    """Add to a stalled film what may lie behind it and when to decide; leave any other alone."""
    if state.verdict.answer is not Answer.STALLED:
        return state
    found = [*_why(state, zones, log, book), *_decide_by(state, shop, book, zone)]
    findings = (*state.verdict.findings, *found)
    return replace(state, verdict=replace(state.verdict, findings=findings))


def _why(state: ZoneState, zones: Sequence[ZoneState], log: Log, book: Book) -> list[Finding]:
    likely = causes_of_a_stall(state, log, zones, book)
    seen = "; ".join(c.words for c in likely if c.spoken_for)
    unseen = "; ".join(c.words for c in likely if not c.spoken_for)
    said = (("the log shows", seen), ("cannot be ruled out", unseen))
    return [
        Finding(Level.NOTE, f"{what}: {words}", "", COMMON_PRACTICE)
        for what, words in said
        if words
    ]


def _decide_by(state: ZoneState, shop: Shop, book: Book, zone: tzinfo) -> list[Finding]:
    """Say until when to take it off so that doing it again still keeps the date."""
    due = next((p.due for p in shop.projects if p.id == state.part.project), None)
    again = _again_h(state, shop, book)
    if due is None or again is None:
        return []
    words = f"take it off by {_day(due - timedelta(hours=again), zone)} to keep {_day(due, zone)}"
    days = (
        f"all its coats again take {again / 24:.0f} days at label time, air and hands not counted"
    )
    return [Finding(Level.CAUTION, words, days, COMMON_PRACTICE)]


def _again_h(state: ZoneState, shop: Shop, book: Book) -> float | None:
    """Return the label hours of all coats of its steps, to packing; None without steps."""
    products = [s.product for s in state.progress.steps if s.operation is Operation.COAT]
    known = [shop.products[p] for p in products if p is not None and p in shop.products]
    if not known:
        return None
    last = len(known) - 1
    hours = 0.0
    for n, product in enumerate(known):
        figures = {**book.finish_class(product.class_key).stages, **product.label}
        figure = figures.get(Stage.PACK if n == last else Stage.RECOAT)
        hours += figure.high_h if figure else 0.0
    return hours


def _day(moment: datetime, zone: tzinfo) -> str:
    local = moment.astimezone(zone)
    return f"{local:%a} {local.day} {local:%b}"
