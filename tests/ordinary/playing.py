"""Play a schedule through the real commands, and keep whatever spoke against it."""

from __future__ import annotations

import shlex
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache
from math import inf
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tests.cli.run import Finishlog
from tests.ordinary.schedules import ORDINARY, Schedule

# A mild week's start in an invented shop.
BEGINS = datetime(2026, 6, 1, 17, 0, tzinfo=ZoneInfo("Europe/London"))
SHOP = (
    "room new shop --night 20C",
    "room usual shop 5:20C/52% 14:21C/50%",
    "shop hours 'mon-sun 6:00-23:00'",
)
AIR = "air 21C 50%"
MAY_GO_ON = {"go", "go after scuffing"}
# No steps of a schedule, but acts beside it.
BESIDE = {"wipe", "pack"}


@dataclass(frozen=True)
class Alarm:
    """What spoke against an act: `ready`, `why` or `plan` before it, or the answer of `log`."""

    schedule: int
    act: str
    said_by: str
    said: str


def product_name(schedule: Schedule, product: str) -> str:
    """Name a product of a schedule: its class is its name, told apart where two are alike."""
    return f"{product}-{schedule.products[product]}"


@cache
def _shop() -> str:
    """Set up the shop with every product."""
    names = {(product_name(s, p), c) for s in ORDINARY for p, c in s.products.items()}
    return "\n".join([*SHOP, *(f"product new {n} --class {key}" for n, key in sorted(names))])


class Bench:
    """One schedule on a bench of its own, one part a wood.

    `ahead`: before how many of its coats `why` and `plan` are asked.
    """

    def __init__(
        self, folder: Path, schedule: Schedule, *, night: str = "", ahead: float = inf
    ) -> None:
        self.program = Finishlog(folder).played(_shop(), now=BEGINS.isoformat())
        self.schedule = schedule
        self.now = BEGINS
        self.alarms: list[Alarm] = []
        self.ahead = ahead
        self.parts = {wood: wood.replace(" ", "-") for wood in schedule.woods}
        if night:
            self.types("room usual shop none")
            self.types(f"room night shop {night}")
        for wood, part in self.parts.items():
            steps = " ".join(self._steps(wood))
            faces = "--face back:hidden --face front" if schedule.number == 25 else ""
            self.types(f"steps new {part} {steps}")
            self.types(f"part new desk/{part} --species '{wood}' {faces} --steps {part}")
            if schedule.moisture_pct is not None:
                self.types(f"moisture {part} {schedule.moisture_pct:g}%")

    def types(self, line: str) -> Any:
        """Type a command that must end well; return its answer as a script gets it."""
        words = shlex.split(line)
        return self.program.did(*words, "--json", now=self.now.isoformat()).document["answer"]

    def _steps(self, wood: str) -> list[str]:
        steps = []
        due = self.schedule.due or self.schedule.acts
        for _, words, only in replace(self.schedule, acts=due).lines:
            what, *face = words.split()
            if what in BESIDE or only not in {None, wood}:
                continue
            named = what in self.schedule.products
            if face == ["front"]:
                continue
            steps.append(product_name(self.schedule, what) if named else what)
        return steps

    def play(self) -> Bench:
        """Do every act at its hour."""
        for number, (wait, words, only) in enumerate(self.schedule.lines, start=1):
            self.now += wait
            self._act(f"{number} {words}", words, self.parts[only] if only else self._all())
        return self

    def _all(self) -> str:
        return " ".join(self.parts.values())

    def _act(self, name: str, words: str, parts: str) -> None:
        what, *face = words.split()
        drawn = ""
        if what in self.schedule.products:
            product = product_name(self.schedule, what)
            self.types(AIR)
            if what in self.schedule.mixes:
                mixed = self.types(f"mix {product} {self.schedule.mixes[what]}")
                drawn = f"--from {mixed['name']}"
            self._ask_first(name, parts.split(), face)
            what = product
        on = f"--face {face[0]}" if face else ""
        logged = self.types(f"log {parts} {what} {on} {drawn}")
        self._keep(name, "log", [f"{w['level']}: {w['sentence']}" for w in logged["warnings"]])

    def _ask_first(self, name: str, parts: list[str], face: list[str]) -> None:
        """Ask what may be done before a coat: `ready` has to offer it on every part."""
        ready = self.types("ready")
        lines = [
            line
            for group in ("bench", "stopped", "drying", "set_aside")
            for line in ready[group]
            if not face or line["faces"] in ([], face)
        ]
        offered = {line["part"].split("/")[-1] for line in lines}
        assert offered == set(parts), f"{name}: ready names {offered}"
        for line in lines:
            self._keep(name, "ready", _against(line))
        if self.ahead <= 0:
            return
        self.ahead -= 1
        for each in self.types(f"why {' '.join(parts)}"):
            if not face or each["standing"]["faces"] in ([], face):
                self._keep(name, "why", _against(each["standing"]))
        self._keep(name, "plan", _against_the_plan(self.types("plan")))

    def _keep(self, act: str, by: str, said: list[str]) -> None:
        self.alarms += [Alarm(self.schedule.number, act, by, each) for each in said]


def _against(line: Any) -> list[str]:
    """Return what an answer holds against the coat that is due: what binds, and what weighs."""
    coats_now = line["answer"] == "hard deadline running" and line["deed"] == "coat"
    may_go_on = line["answer"] in MAY_GO_ON or coats_now
    said = [] if may_go_on else [f"{line['answer']}: {line['because']}"]
    weighs = (f for f in line["findings"] if f["level"] != "note")
    return said + [f"{f['level']}: {f['sentence']}" for f in weighs]


def _against_the_plan(plan: Any) -> list[str]:
    """Return what a plan could not place, would have tried first, or gives no date for."""
    tasks = [task for session in plan["sessions"] for task in session["tasks"]]
    tested = [f"test first: {task['test']['sentence']}" for task in tasks if task["test"]]
    left = [f"not planned: {each['label']}: {each['because']}" for each in plan["unplanned"]]
    why = [each["why"]["sentence"] for each in plan["projects"] if each["why"]]
    return [*tested, *left, *why, *([plan["stopped"]] if plan["stopped"] else [])]
