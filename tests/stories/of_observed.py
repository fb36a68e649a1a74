"""Stories of what a check or an eye found."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "check-failed": (
        speaks("oak top; alkyd-varnish 08:00; check tacky +2d; ask sand", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; check prints +9d; ask pack", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check tacky +2d; check dry +3h; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check tacky +2d; off bare; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check prints +9d; ask sand"),
    ),
    "still-prints": (
        speaks("oak top; alkyd-varnish 08:00; check prints +2d; ask alkyd-varnish", Answer.TEST),
        silent("oak top; alkyd-varnish 08:00; check no-print +2d; ask alkyd-varnish"),
        silent("oak top; lacquer-sprayed 08:00; check prints +2d; ask lacquer-sprayed"),
    ),
    "repair-first": (
        speaks("oak top; fault open-joint 08:00; ask alkyd-varnish", Answer.WAITS),
        silent("oak top; fault cupped 08:00; ask alkyd-varnish"),
        silent("oak top; fault open-joint 08:00; glue-up +1h; ask alkyd-varnish"),
    ),
    "fault": (
        speaks("oak top; alkyd-varnish 08:00; fault blush +5h; ask alkyd-varnish", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; fault dust +5h; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; fault blush +1d; sand +1d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; fault blush +1d; off bare +1d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; ask alkyd-varnish +1d"),
    ),
    "patch-first": (
        speaks("oak top; lacquer-sprayed 08:00; fault wrinkle; ask lacquer-sprayed +1d"),
        silent("oak top; lacquer-sprayed 08:00; fault dust; ask lacquer-sprayed +1d"),
        silent(
            "oak top; lacquer-sprayed 08:00; fault wrinkle; check holds +1d; ask lacquer-sprayed"
        ),
        silent("oak top; lacquer-sprayed 08:00; fault wrinkle; off bare +1d; ask lacquer-sprayed"),
    ),
}
