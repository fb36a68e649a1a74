"""The same fault again, after it was mended: what was the same both times?

What is mended is what shows; what made it may be there still. Done as before it comes again, so the
method changes: common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from msgspec.structs import replace

from finishlog.core.film.faults import StandingFault
from finishlog.core.findings import Finding, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Coat, Fault
from finishlog.core.log.where import reaches, same_words
from finishlog.core.zone.state import ZoneState


class Same(StrEnum):
    """What two coats of a zone may have in common."""

    PRODUCT = "product"
    CAN = "can"
    TOOL = "tool"
    METHOD = "method"


def found_again(of: StandingFault, state: ZoneState) -> tuple[Finding, ...]:
    """Return that a fault was found there before and made good, and what was the same; or nothing.

    One that still stands is found once more, not again.
    """
    standing = {each.fault.id for each in state.faults}
    before = [
        e
        for e in state.entries
        if isinstance(e, Fault)
        and e.what is of.fault.what
        and e.when.order < of.fault.when.order
        and e.id not in standing
        and reaches(of.fault.place, e.place)
    ]
    if not before:
        return ()
    same = tuple(_same(_coat_then(before[-1], state), of.coat))
    found = finding(
        "found-again",
        source=COMMON_PRACTICE,
        fault=of.known.name,
        times=float(len(before)),
        same=same,
    )
    return (replace(found, acts=tuple(e.act for e in before)),)


def _coat_then(fault: Fault, state: ZoneState) -> Coat | None:
    """Return the coat that an earlier fault was found on, also one that came off since."""
    coats = (e for e in state.entries if isinstance(e, Coat) and e.when.order < fault.when.order)
    return max(coats, key=lambda coat: coat.when.order, default=None)


def _same(then: Coat | None, now: Coat | None) -> Iterator[str]:
    if then is None or now is None or then.id == now.id:
        return
    if then.product == now.product:
        yield Same.PRODUCT
    if then.container is not None and then.container == now.container:
        yield Same.CAN
    if then.tool and same_words(then.tool) == same_words(now.tool):
        yield Same.TOOL
    if then.method is not None and then.method is now.method:
        yield Same.METHOD
