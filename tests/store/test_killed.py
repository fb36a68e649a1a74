"""A program that is killed in the middle of writing loses nothing that it said was written."""

from __future__ import annotations

from itertools import count
from pathlib import Path

from conftest import FIGURES, NOW, Bench, hours_ago
from killing import Acknowledge, kill_again_and_again

from finishlog.core.finish.classes import FigureSet
from finishlog.core.log.entries import Coat
from finishlog.store.database import open_database

COATS = 3


def test_kills_lose_nothing_acknowledged_and_leave_nothing_by_halves(bench: Bench, kills: int):
    targets = bench.targets("doors")

    def logs_coats(path: Path, acknowledge: Acknowledge) -> None:
        """Log three coats an act, each act with figures of its own; acknowledge after it."""
        database = open_database(path, NOW)
        for number in count():
            figures = FigureSet("oil-varnish", str(number), FIGURES.stages, FIGURES.window)
            with database.writing("log", f"log doors {number}", NOW, "UTC") as ledger:
                for _ in range(COATS):
                    ledger.record(
                        Coat(
                            when=hours_ago(1),
                            targets=targets,
                            product=bench.product,
                            figures=figures,
                        )
                    )
            acknowledge(ledger.act_id)

    toll = kill_again_and_again(
        bench.db.path,
        logs_coats,
        kills=kills,
        entries=COATS,
        targets=COATS * len(targets),
    )
    assert toll.kills == kills
    # Else nothing was tried: acts were finished, and some were cut off in the middle.
    assert len(toll.acknowledged) > kills / 10
    assert toll.journals_left > 0
