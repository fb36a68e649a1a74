"""The plan: what to do on which visit to the shop, and whether the due dates hold.

Forward in shop hours, visit by visit, like products together, on the one drying clock. It is a
pure function of its inputs: no randomness, the same inputs give the same plan.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, tzinfo

from finishlog.core.clock.pace import Paces
from finishlog.core.film.lessons import Lessons
from finishlog.core.plan.forward import Forward
from finishlog.core.plan.results import Plan
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Log, Shop


def plan(
    shop: Shop,
    log: Log,
    facts: Facts,
    now: datetime,
    zone: tzinfo,
    due: Mapping[int, datetime] | None = None,
    paces: Paces = Paces.none,
    lessons: Lessons = Lessons.none,
    *,
    early: bool = False,
) -> Plan:
    """Plan everything that is open. `due` (by project) comes before the due dates on record.

    `early`: every coat as soon as its film may be tested, instead of when it is promised.
    """
    wanted = {p.id: p.due for p in shop.projects if p.due is not None} | dict(due or {})
    planner = Forward(shop, log, facts, now, zone, wanted, paces, lessons, early)
    planner.run()
    return planner.plan()
