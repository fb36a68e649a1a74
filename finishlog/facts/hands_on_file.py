"""Read the minutes of hands-on work."""

from __future__ import annotations

from finishlog.core.finish.classes import Method, Range
from finishlog.core.log.entries import Operation
from finishlog.core.published.hands_on import Each, HandsOn
from finishlog.facts.table import Table, between, read


def read_hands_on(path: str) -> HandsOn:
    """Read hands_on.toml: every method, and every operation but the coat, has its minutes."""
    table = read(path)
    methods, work, dust = table.table("methods"), table.table("work"), table.table("dust")
    wood = table.table("wet_wood")
    by_method = {method: _method(methods.table(method.value)) for method in Method}
    by_hand = [operation for operation in Operation if operation is not Operation.COAT]
    found = HandsOn(
        set_up_min={method: figures[0] for method, figures in by_method.items()},
        clean_up_min={method: figures[1] for method, figures in by_method.items()},
        coat={method: figures[2] for method, figures in by_method.items()},
        work={operation: _each(work.table(operation.value)) for operation in by_hand},
        vacuum_min=between(dust.table("vacuum_min")),
        settle_min=between(dust.table("settle_min")),
        wet_wood_min=between(wood.table("dry_min")),
    )
    for read_out in (methods, work, dust, wood, table):
        read_out.nothing_else()
    return found


def _method(table: Table) -> tuple[Range, Range, Each]:
    """Read set-up, clean-up and the coat itself."""
    set_up, clean_up = between(table.table("set_up_min")), between(table.table("clean_up_min"))
    return set_up, clean_up, _each(table)


def _each(table: Table) -> Each:
    """Read what stands under `piece_min`, else under `face_min`, and nothing beside it."""
    per_piece = "piece_min" in table
    found = Each(between(table.table("piece_min" if per_piece else "face_min")), per_piece)
    table.nothing_else()
    return found
