"""Kill a process that writes, again and again, and see what the database file is left with.

The child is forked from the warm test process, so that a kill costs no imports; it is a process
of its own with its own connection to the file.
"""

from __future__ import annotations

import os
import signal
import sqlite3
import time
import traceback
from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

_MOST_ACTS = 2

# Called by the child with an act's number once that act is on disk.
Acknowledge = Callable[[int], None]
# Writes acts to the file for ever.
Writer = Callable[[Path, Acknowledge], None]

_ROWS_OF_ACTS = """
    SELECT act.id,
        (SELECT count(*) FROM entry WHERE act_id = act.id),
        (SELECT count(*) FROM entry JOIN coat ON entry_id = entry.id WHERE act_id = act.id),
        (SELECT count(*) FROM entry JOIN entry_target ON entry_id = entry.id WHERE act_id = act.id)
    FROM act WHERE act.id > ? ORDER BY act.id
"""


@dataclass
class Toll:
    """What was seen over all kills."""

    kills: int = 0
    acknowledged: set[int] = field(default_factory=set)
    unacknowledged: int = 0
    journals_left: int = 0


def kill_again_and_again(
    path: Path, writer: Writer, *, kills: int, entries: int, targets: int
) -> Toll:
    """Kill `writer` in the midst of an act, again and again, and check the file after every kill.

    It is killed after none to two acts, and then at a random moment of the time that an act takes
    it: by its own pace, so that a busy machine changes nothing. Every act must have `entries` coats
    with `targets` targets altogether.
    """
    moments, toll, act_s = Random(20261124), Toll(), 0.0
    before = _last_act(path)
    for _ in range(kills):
        acts_first = moments.randint(0, _MOST_ACTS) if act_s else _MOST_ACTS
        acknowledged, took_s = _killed(path, writer, acts_first, moments.uniform(0, act_s))
        act_s = took_s or act_s
        toll.kills += 1
        toll.journals_left += path.with_name(f"{path.name}-journal").exists()
        _check_file(path)
        acts = _acts_since(path, before)
        assert all(rows == (entries, entries, targets) for rows in acts.values()), acts
        # Whatever was acknowledged is there; of what was not, only the very last can be.
        assert acknowledged == sorted(acts)[: len(acknowledged)]
        assert len(acts) - len(acknowledged) in (0, 1)
        toll.acknowledged |= set(acknowledged)
        toll.unacknowledged += len(acts) - len(acknowledged)
        before = max(acts, default=before)
    everything = _acts_since(path, 0)
    assert toll.acknowledged <= everything.keys()
    return toll


def _killed(
    path: Path, writer: Writer, acts: int, after_s: float
) -> tuple[list[int], float | None]:
    """Start the writer, kill it after some acts and a while.

    Return what it had acknowledged, and how long (s) its last whole act took; None: it made none.
    """
    pipe, told = os.pipe()
    child = os.fork()
    if child == 0:
        _write_until_killed(path, writer, told)
    os.close(told)
    heard, moments = b"", [time.monotonic()]
    while heard.count(b"\n") < acts and (more := os.read(pipe, 4096)):
        heard += more
        moments.append(time.monotonic())
    time.sleep(after_s)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    with os.fdopen(pipe) as lines:
        said = heard.decode() + lines.read()
    assert os.WIFSIGNALED(status), f"the writer ended by itself: {said}"
    took_s = moments[-1] - moments[-2] if len(moments) > 1 else None
    return [int(line) for line in said.splitlines()], took_s


def _write_until_killed(path: Path, writer: Writer, told: int) -> None:
    """Run in the child; it never comes back into the tests."""
    try:
        writer(path, lambda act: _tell(told, f"{act}\n"))
    except BaseException:
        _tell(told, traceback.format_exc())
    finally:
        os._exit(70)


def _tell(pipe: int, text: str) -> None:
    os.write(pipe, text.encode())


def _check_file(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []


def _acts_since(path: Path, act: int) -> dict[int, tuple[int, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        return {row[0]: tuple(row[1:]) for row in connection.execute(_ROWS_OF_ACTS, (act,))}


def _last_act(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        return int(connection.execute("SELECT max(id) FROM act").fetchone()[0])
