"""The plan as a document: the values of the plan by the names that a script knows them by."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from msgspec.structs import asdict

from finishlog.cli.pages.questions.plan_page import handling, label_of
from finishlog.cli.words.finding_words import plan_reason, short

if TYPE_CHECKING:
    from finishlog.asks.bench.plan import PlanAnswer
    from finishlog.core.bench.milestones import Milestone
    from finishlog.core.plan.results import (
        CoatsByDue,
        PartDates,
        PlannedSession,
        PlannedTask,
        ProjectPlan,
    )
    from finishlog.core.shop.things import Part

Document = Mapping[str, object]


def plan_document(answer: PlanAnswer) -> Document:
    """Put a plan into one level a line, things by their names."""
    plan = answer.plan
    return {
        "now": plan.now,
        "air": answer.air,
        "before": answer.before,
        "evening": answer.evening,
        "people": answer.people,
        "projects": [_project(each, answer) for each in plan.projects],
        "sessions": [_session(each, answer) for each in plan.sessions],
        "parts": [_part(each, answer) for each in plan.parts],
        "unplanned": [
            _left(
                answer,
                each.part,
                each.label,
                each.operation or "",
                plan_reason(each.because),
                each.needs_air,
            )
            for each in plan.unplanned
        ],
        "boards_passed": [
            _left(answer, board, board.name, "", plan_reason(because), needs_air=False)
            for board, because in plan.boards_passed
        ],
        "missed_windows": plan.missed,
        "hours_known": answer.hours_known,
        "stopped": short(plan.stopped) if plan.stopped else "",
    }


def _project(each: ProjectPlan, answer: PlanAnswer) -> Document:
    document = asdict(each)
    opens, closes = document.pop("spare") or (None, None)
    name = each.project.name
    tested = answer.tested.get(each.project.id)
    more = {
        "project": name,
        "acts": answer.acts[name],
        "by_due": [_by_due(line) for line in each.by_due],
        "tested": {"packed": tested.packed, "by_due": [_by_due(line) for line in tested.by_due]}
        if tested
        else None,
    }
    return document | more | {"spare_opens": opens, "spare_closes": closes}


def _by_due(line: CoatsByDue) -> Document:
    return {"part": line.part.path, "on": line.on, "of": line.of}


def _session(each: PlannedSession, answer: PlanAnswer) -> Document:
    tasks = [_task(task, answer) for task in each.tasks]
    return asdict(each) | {"start": each.start, "end": each.end, "tasks": tasks}


def _task(each: PlannedTask, answer: PlanAnswer) -> Document:
    document = asdict(each)
    del document["entries"]
    coat, coats = each.coat if each.product is not None else (0, 0)
    path = each.part.path if each.part else ""
    return document | {
        "operation": each.operation or "",
        "product": answer.products[each.product] if each.product is not None else "",
        "part": path,
        "coat": coat,
        "coats": coats,
        "self_heating": each.product in answer.self_heating,
        "acts": answer.acts.get(path, ()),
    }


def _part(each: PartDates, answer: PlanAnswer) -> Document:
    return {
        "part": each.part.path,
        "label": label_of(each.part),
        "joins": each.joins,
        "coats_done": each.coats_done,
        "clamp": _date(each.clamp),
        "stack": _date(each.stack),
        "pack": _date(each.pack),
        "fully_hard": _date(each.cured),
        "acts": answer.acts[each.part.path],
    }


def _left(
    answer: PlanAnswer, part: Part, label: str, operation: str, because: str, needs_air: bool
) -> Document:
    return {
        "part": part.path,
        "label": label,
        "operation": operation,
        "because": because,
        "needs_air": needs_air,
        "rooms": answer.rooms.get(part.path, ()),
        "acts": answer.acts[part.path],
    }


def _date(milestone: Milestone | None) -> Document | None:
    return dict(zip(("at", "why"), handling(milestone), strict=True)) if milestone else None
