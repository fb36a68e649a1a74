"""The demo at some hours of a day, each played once a run, whichever worker asks first."""

from __future__ import annotations

import fcntl
import json
from dataclasses import asdict, dataclass
from pathlib import Path

from run import Answer, Finishlog

# Before an evening ends at four in the morning, after it, by day, and at night, for a script.
HOURS = ("03:30", "07:10", "10:52", "23:50")
FOR_A_SCRIPT = "23:50"


@dataclass(frozen=True)
class Demo:
    """What the demo answered, and the database that it left: to read, and to copy."""

    hour: str
    database: Path
    answer: Answer

    def shop(self, folder: Path) -> Finishlog:
        """Hand out a copy of the shop that it left, at the same time."""
        program = _at(self.hour, folder)
        program.database.write_bytes(self.database.read_bytes())
        return program


def the_demo(for_all_workers: Path, hour: str = FOR_A_SCRIPT) -> Demo:
    """Play the demo at an hour, or take what another test was answered."""
    folder = for_all_workers / f"demo-{hour}"
    folder.mkdir(exist_ok=True)
    database, kept = folder / "demo.db", folder / "answer.json"
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not kept.exists():
            options = ["--json"] if hour == FOR_A_SCRIPT else []
            answer = _at(hour, folder)("--db", str(database), "demo", *options)
            kept.write_text(json.dumps(asdict(answer)), encoding="utf-8")
    return Demo(hour, database, Answer(**json.loads(kept.read_text(encoding="utf-8"))))


def _at(hour: str, folder: Path) -> Finishlog:
    return Finishlog(folder, f"2026-11-25T{hour}+00:00", {"FINISHLOG_ZONE": "UTC"})
