"""A finisher who types: every command at its own time, on a database of its own."""

from __future__ import annotations

import re
import shlex
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tests.cli.run import Answer, Finishlog
from tests.cli.terminal_session import TerminalSession


@dataclass
class Finisher:
    """Types commands as they would be typed, at local times of one zone.

    Types only what the question tells: no label, date or check that it does not have. Invented
    throughout: names and hours stand in for those of the question.
    """

    program: Finishlog
    zone: str = "Europe/London"

    def _at(self, when: str) -> str:
        self.program.environment["FINISHLOG_ZONE"] = self.zone
        return datetime.fromisoformat(when).replace(tzinfo=ZoneInfo(self.zone)).isoformat()

    def types(self, when: str, *lines: str) -> str:
        """Type commands that must end well; return what the last one said."""
        answer = Answer(0, "", "")
        for line in lines:
            answer = self.program.did(*shlex.split(line), now=self._at(when))
        return answer.out

    def reads(self, when: str, *lines: str) -> str:
        """Type commands; return the last screen, its columns closed up to single blanks."""
        return " ".join(self.types(when, *lines).split())

    @staticmethod
    def after(screen: str, stage: str) -> str:
        """Return what a closed-up `when` promises of one stage: "Sun 12 Apr", "Tue 14:00"."""
        moment = r"(?:\w{3} )?(?:\d\d:\d\d|\d+ \w{3})"
        found = re.search(rf" {stage} after ({moment})", screen)
        return found[1] if found else ""

    def tries(self, when: str, line: str) -> Answer:
        """Type a command that may be refused."""
        return self.program(*shlex.split(line), now=self._at(when))

    def at_a_terminal(self, when: str, line: str) -> TerminalSession:
        """Type a command at a terminal, where what it does not say is asked."""
        return TerminalSession(self.program, *shlex.split(line), FINISHLOG_NOW=self._at(when))

    def asks(self, when: str, line: str) -> Any:
        """Ask a question and return its answer as a script gets it."""
        return self.program.did(*shlex.split(line), "--json", now=self._at(when)).document["answer"]

    def whys(self, when: str, part: str) -> list[Any]:
        """Ask why; every group of what is meant."""
        found: list[Any] = self.asks(when, f"why {part}")
        return found

    def why(self, when: str, part: str) -> Any:
        """Ask why of zones that stand alike."""
        (only,) = self.whys(when, part)
        return only

    def stage(self, when: str, part: str, name: str) -> Any:
        """Return one milestone of zones that stand alike: low, high, what blocks it."""
        (line,) = self.asks(when, f"when {part}")["lines"]
        return next(each for each in line["stages"] if each["stage"] == name)


def said(answer: Any) -> str:
    """Return everything that is found about a group, what to do included."""
    findings = answer["standing"]["findings"]
    return " | ".join(f"{f['level']}: {f['sentence']}; {f['remedy']}" for f in findings)


def hours(since: str, until: str) -> float:
    """Return the hours between two instants of an answer."""
    return (datetime.fromisoformat(until) - datetime.fromisoformat(since)).total_seconds() / 3600
