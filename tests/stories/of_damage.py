"""Stories of what a young film met."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "suspect": (
        speaks("oak top; air 5C 50%; waterborne-clear 08:00; ask sand +3d", Answer.SUSPECT),
        speaks("oak top; waterborne-clear 08:00; surface 4C +1h; ask sand +3d", Answer.SUSPECT),
        speaks("oak top; air 22C 100%; waterborne-clear 08:00; ask rest +3d", Answer.SUSPECT),
        silent("oak top; air 5C 50%; alkyd-varnish 08:00; ask sand +3d"),
        speaks("oak top; surface 9C; alkyd-varnish 08:00; ask alkyd-varnish +3d", Answer.SUSPECT),
        speaks("oak top; surface 9C; tung-oil 06:30; surface 12C; alkyd-varnish +1h; ask pack +9d"),
        silent("oak top; surface 9C; surface 19C +1h; alkyd-varnish; ask sand +3d"),
        speaks(
            "oak top; surface 9C; alkyd-varnish 08:00; check flakes +5d; ask pack +9d",
            says="no time mends that",
        ),
        silent("oak top; surface 9C; surface 19C +1h; waterborne-clear; ask sand +3d"),
        silent("oak top; surface 14C; alkyd-varnish 08:00; ask sand +3d"),
        silent("oak top; surface 9C; alkyd-varnish 08:00; check holds +2d; ask alkyd-varnish"),
        silent("oak top; surface 9C; tung-oil 08:00; wipe +15m; ask rest +9d"),
        silent("oak top; waterborne-clear 08:00; ask sand +3d"),
        silent("oak top; air 5C 50%; waterborne-clear 08:00; check holds +3d; ask sand"),
        silent("oak top; air 5C 50%; waterborne-clear 08:00; off bare +3d; ask sand"),
    ),
    "perhaps-cold": (
        speaks("oak top; night 2C; one-air 20C 50%; waterborne-clear 08:00; ask latex-enamel +1d"),
        speaks(
            "oak top; carried-in 6C 70% 08:00; alkyd-varnish; ask alkyd-varnish +3d", Answer.TEST
        ),
        silent("oak top; carried-in 6C 70% 08:00; surface 20C +1h; oil-enamel; ask oil-enamel +3d"),
        silent(
            "oak top; carried-in 6C 70% 08:00; alkyd-varnish; check holds +2d; ask alkyd-varnish"
        ),
        silent("oak top; carried-in 16C 70% 08:00; alkyd-varnish; ask alkyd-varnish +3d"),
        silent("oak top; carried-in 6C 70% 08:00; tung-oil +1h; wipe +15m; ask tung-oil +2d"),
        silent("oak top; night 15C; one-air 20C 50%; waterborne-clear 08:00; ask latex-enamel +1d"),
        silent("oak top; night 2C; waterborne-clear 08:00; ask waterborne-clear +1d"),
        silent("oak top; night 2C; one-air 20C 50%; alkyd-varnish 08:00; ask alkyd-varnish +1d"),
        silent("oak top; night 2C; one-air 20C 50%; waterborne-clear 08:00; check holds; ask soap"),
    ),
    "not-proved-through": (
        speaks("oak top; air 23C 95%; alkyd-varnish 08:00; check dry +6d; ask alkyd-varnish"),
        silent("oak top; air 23C 50%; alkyd-varnish 08:00; check dry +6d; ask alkyd-varnish"),
        silent("oak top; air 23C 95%; alkyd-varnish 08:00; check powder +6d; ask alkyd-varnish"),
        silent("oak top; air 23C 95%; shellac-2lb 08:00; check dry +6d; ask shellac-2lb"),
        silent("oak top; air 23C 95%; alkyd-varnish 08:00; check resists +6d; ask alkyd-varnish"),
    ),
}
