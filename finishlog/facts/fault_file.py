"""Read what is known of faults."""

from __future__ import annotations

from finishlog.core.findings import Level
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import FaultKind, Found, Operation
from finishlog.core.published.fault_kinds import Cause, Evidence, FamilyRemedy, KnownFault
from finishlog.facts.table import Table, read


def read_stall_causes(path: str) -> tuple[Cause, ...]:
    """Read why a film stays soft from faults.toml."""
    return tuple(_cause(one) for one in read(path).tables("stalled"))


def read_faults(path: str) -> dict[FaultKind, KnownFault]:
    """Read the faults of faults.toml; ValueError when a kind is missing or told twice."""
    table = read(path)
    found = [_fault(one) for one in table.tables("faults")]
    by_kind = {fault.kind: fault for fault in found}
    if len(by_kind) != len(found) or set(by_kind) != set(FaultKind):
        raise table.bad("faults", "every kind of fault stands here once")
    return by_kind


def _fault(table: Table) -> KnownFault:
    found = KnownFault(
        kind=table.choice("kind", FaultKind),
        name=table.text("name"),
        said_as=table.words("said_as"),
        means=table.text("means"),
        level=table.choice("level", Level),
        remedies=table.words("remedies"),
        source=table.text("source"),
        blocks=frozenset(table.choices("blocks", Stage)),
        waits_for=table.text("waits_for", ""),
        answered_by=frozenset(table.choices("answered_by", Operation)),
        answered_by_checks=frozenset(table.choices("answered_by_checks", Found)),
        answered_by_coat=table.flag("answered_by_coat", default=False),
        not_by_mending=table.flag("not_by_mending", default=False),
        outlives=table.text("outlives", ""),
        rewets=table.flag("rewets", default=False),
        patch_first=table.flag("patch_first", default=False),
        by_family=tuple(_family(one) for one in table.tables("by_family")),
        causes=tuple(_cause(one) for one in table.tables("causes")),
    )
    table.nothing_else()
    return found


def _family(table: Table) -> FamilyRemedy:
    found = FamilyRemedy(
        families=table.words("families"),
        remedies=table.words("remedies"),
        deadline=_deadline(table),
        too_late=table.text("too_late", ""),
    )
    table.nothing_else()
    return found


def _deadline(table: Table) -> Figure | None:
    if "deadline_low_h" not in table:
        return None
    low, high = table.number("deadline_low_h"), table.number("deadline_high_h")
    if not 0 < low <= high:
        raise table.bad("deadline_low_h", f"{low}, {high} are not in order")
    return Figure(low, low, high, table.text("deadline_source"))


def _cause(table: Table) -> Cause:
    found = Cause(table.text("words"), table.choice("evidence", Evidence), table.text("source"))
    table.nothing_else()
    return found
