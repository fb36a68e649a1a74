"""All openings filled by one policy, one after another."""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.core.plan.search.evening import Evening
from finishlog.core.plan.search.policy import Policy
from finishlog.core.plan.search.shop import NEVER, Plan
from finishlog.core.plan.search.state import State, begin
from finishlog.core.plan.search.tables import Tables

# Behind so many openings in which nothing was done nothing ever is, unless it is waited for.
IDLE = 14


def decode(tables: Tables, policy: Policy, rank: Sequence[float]) -> list[State]:
    """Return how a plan stands at the head of each opening, and its end.

    The task of the lowest `rank` goes first. It ends before all is done where nothing that is left
    can be done any more.
    """
    states, idle, aim = [begin(tables)], 0, [NEVER] * tables.size
    for number in range(len(tables.shop.openings)):
        state = states[-1].copy()
        evening = Evening(tables, state, number, policy, rank, aim)
        evening.run()
        states.append(state)
        idle = 0 if evening.done else idle + 1
        if state.left == 0 or (idle > IDLE and not _comes_free(tables, state, number)):
            break
    return states


def _comes_free(tables: Tables, state: State, number: int) -> bool:
    """Tell whether something that is waited for comes free behind an opening."""
    at = [state.ready_at[task] for task in state.ready]
    at += [free for held in state.racks for free in held]
    at += [*state.wet.values(), *state.down.values()]
    at += [until for task in state.ready for _, until in tables.blocked[task]]
    return any(tables.shop.openings[number][1] < minute < NEVER for minute in at)


def plan_of(tables: Tables, state: State) -> Plan:
    """Return a state as a plan."""
    return Plan(
        starts=tuple(state.starts),
        sessions=tuple(state.sessions),
        abrades=tuple(sorted(state.abrades.items())),
        vacuums=tuple(state.vacuums),
        days_late=state.late,
        finish=state.finish,
        is_whole=state.left == 0,
    )
