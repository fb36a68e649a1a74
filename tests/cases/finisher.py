"""A finisher who types: every command at its own time, on a database of its own."""

from __future__ import annotations

import shlex
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tests.cli.run import Answer, Finishlog


@dataclass
class Finisher:
    """Types commands as they would be typed, at local times of one zone.

    Invented throughout: products, parts and hours stand in for those of the question.
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

    def tries(self, when: str, line: str) -> Answer:
        """Type a command that may be refused."""
        return self.program(*shlex.split(line), now=self._at(when))

    def asks(self, when: str, line: str) -> Any:
        """Ask a question and return its answer as a script gets it."""
        return self.program.did(*shlex.split(line), "--json", now=self._at(when)).document["answer"]
