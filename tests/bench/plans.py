"""Plan the shops of a file and say how good the plans are: `python -m tests.bench --plans FILE`.

A file is of the form that `tests/bench/made_shops.py` reads: shop hours, what a session costs, rack
places, and instances with their operations, some with the best plan known. What was found is held
against a checker written apart before it is scored. `--out FILE` writes every start, session and
abrading, so that another checker may score it again.
"""

from __future__ import annotations

import json
import resource
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from msgspec import Struct

from finishlog.core.plan.search.search import Found, budget, search
from finishlog.core.plan.search.shop import CompiledShop
from tests.bench.made_shops import Instance, compiled, products_of
from tests.checked_shop import Count, checked

DAY = 24 * 60


class Scored(Struct, frozen=True):
    """One shop planned: what the plan comes to, and what it cost to find."""

    name: str
    parts: int
    count: Count
    known: int | None
    bound: int
    cpu: float
    decodes: int

    @property
    def over(self) -> float:
        """By how much of 1 the plan is over the best one known, or over the bound."""
        return self.count.cost / (self.known or self.bound) - 1


def run(file: Path, out: Path | None) -> None:
    """Plan every instance of a file and print what came of it."""
    read = json.loads(file.read_text(encoding="utf-8"))
    scored, written = [], []
    for one in read["instances"]:
        shop = compiled(read, one)
        before = _cpu()
        found = search(shop, budget(len(shop.tasks)))
        each = _score(one, shop, found, _cpu() - before)
        print(_line(each), flush=True)
        scored.append(each)
        written.append(_written(one, found))
    if out is not None:
        out.write_text(json.dumps(written), encoding="utf-8")
    for parts in sorted({each.parts for each in scored}):
        of = [each for each in scored if each.parts == parts]
        print(f"CPU {parts} parts: {max(each.cpu for each in of):.1f} s at most")
    for parts in sorted({each.parts for each in scored}):
        of = [each for each in scored if each.parts == parts]
        known = "" if all(each.known for each in of) else " over the bound"
        mean = sum(each.over for each in of) / len(of)
        print(f"mean {parts} parts: {100 * mean:+.2f} %{known}")


def _cpu() -> float:
    used = resource.getrusage(resource.RUSAGE_SELF)
    return used.ru_utime + used.ru_stime


def _score(one: Instance, shop: CompiledShop, found: Found, cpu: float) -> Scored:
    filled = 1 + sum(opens < found.plan.finish for opens in shop.opens)
    return Scored(
        name=one["name"],
        parts=one["parts"],
        count=checked(shop, found.plan),
        known=_objective(one.get("best_known")),
        bound=found.bounds.finish,
        cpu=cpu,
        decodes=found.evenings // filled,
    )


def _objective(known: Mapping[str, Any] | None) -> int | None:
    """Return the objective of a plan that a file tells of; its days are rounded there."""
    if not known:
        return None
    days = round(known["finish_days"] * DAY)
    return days + 15 * int(known["sessions"]) + 30 * int(known["missed_windows"])


def _line(each: Scored) -> str:
    of = "best known" if each.known else "bound"
    return (
        f"{each.name:<8} {100 * each.over:+6.2f} % over {of}  {each.count.days_late:3} days late"
        f"  finish {each.count.finish / DAY:6.2f} d  {each.count.sessions:3} sessions"
        f"  {each.count.missed:3} missed  {each.cpu:5.1f} s CPU  {each.decodes:6} decodes"
    )


def _written(one: Instance, found: Found) -> dict[str, Any]:
    """Return a plan in the words of its file."""
    names, plan = products_of(one), found.plan
    return {
        "name": one["name"],
        "starts": {str(x["id"]): s for x, s in zip(one["operations"], plan.starts, strict=True)},
        "sessions": [[names[product], start, end] for product, start, end in plan.sessions],
        "abrades": {str(one["operations"][n]["id"]): start for n, start in plan.abrades},
    }
