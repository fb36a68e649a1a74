"""Stories of what was done to a film: wiped, rubbed, scuffed, built up, waited for."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

RUBBED_THROUGH = (
    "oak top; wiping-stain 08:00; wipe +10m; oil-polyurethane +5d; sand +3d; fault rubbed-through"
)

STORIES = {
    "wiped-late": (
        # Each line beside the next differs in the time of the wipe, or in what settled it.
        speaks(
            "oak top; wiping-stain 08:00; wipe 10:30; ask waterborne-clear +3d",
            Answer.BLOCKED,
            "2.5 h after it went on, at most 15 min",
        ),
        silent("oak top; wiping-stain 08:00; wipe 08:10; ask waterborne-clear +7d"),
        silent("oak top; wiping-stain 08:00; ask waterborne-clear +7d"),
        silent("oak top; wiping-stain 08:00; wipe 08:10; wipe 10:30; ask waterborne-clear +7d"),
        speaks("oak top; wiping-stain 08:00; wipe 10:30; check tacky +1d; ask shellac-2lb +3d"),
        silent("oak top; wiping-stain 08:00; wipe 10:30; check dry +1d; ask shellac-2lb +3d"),
        silent("oak top; wiping-stain 08:00; wipe 10:30; solvent-wipe +30m; ask shellac-2lb +3d"),
        speaks("oak top; wiping-stain 08:00; check dry +1h; wipe +1h30; ask shellac-2lb +3d"),
        # It never hardens by waiting, and a film over it does not mend it.
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask pack +60d", Answer.BLOCKED),
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask stack +60d", Answer.BLOCKED),
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask rub-out +60d", Answer.BLOCKED),
        speaks("ash leg; tung-oil 19:00; wipe +2h; shellac-2lb +9d; ask pack +30d"),
        silent(
            "ash leg; tung-oil 19:00; wipe +2h; shellac-2lb +9d; check holds +3d; ask pack +30d"
        ),
        # A fresh coat of the same wets it again; taking it off is never barred.
        silent("ash leg; tung-oil 19:00; wipe +2h; tung-oil +9d; wipe +20m; ask tung-oil +9d"),
        speaks("ash leg; tung-oil 19:00; wipe +2h; tung-oil +9d; wipe +2h; ask tung-oil +9d"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; ask sand +9d"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; ask solvent-wipe +5m"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; off bare +1h; ask hardwax-oil +2d"),
        silent("ash leg; hardwax-oil 19:00; wipe +20m; ask hardwax-oil +2d"),
        # What has no surplus is not wiped off in time.
        silent("maple top; paste-wax 19:00; wipe +2h; ask pack +9d"),
    ),
}
