"""Several thin passes in one sitting: `--passes 4 --every 30min`."""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.cli.typed.times.durations import duration
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import When
from finishlog.errors import UsageFault

# More in one sitting is a slip of the finger.
_MOST = 40


def sitting(
    at: When, now: datetime, passes: int, every: str | None, *, began: bool
) -> tuple[tuple[When, ...], When]:
    """Return the passes before the last one, and the last.

    `at` is when the first went on if that was said (`began`), else when the last did. UsageFault
    for passes without their distance, or a last pass that is still to come.
    """
    if passes == 1 and every is None:
        return (), at
    if not 2 <= passes <= _MOST:
        raise UsageFault(f"{passes} passes?", f"type 2 to {_MOST}: --passes 4 --every 30min")
    if every is None:
        raise UsageFault(f"{passes} passes, how far apart?", "add --every 30min")
    between = duration(every)
    before_at = timedelta() if began else between * (passes - 1)
    offsets = [between * n - before_at for n in range(passes)]
    times = [replace(at, earliest=at.earliest + o, latest=at.latest + o) for o in offsets]
    if times[-1].latest > now:
        raise UsageFault(
            f"{passes} passes every {length_words(between)} from then on end after now",
            "log those that are on, with --at for the first of them",
        )
    return tuple(times[:-1]), times[-1]
