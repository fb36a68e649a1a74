"""Stories of what must be done soon or is spoilt for good."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "wipe-off": (
        speaks("oak top; wiping-stain 08:00; ask rest +3m", Answer.DEADLINE),
        silent("oak top; wiping-stain 08:00; wipe +5m; ask rest +3m"),
        silent("oak top; waterborne-clear 08:00; ask rest +3m"),
    ),
    "wiped-in-time": (
        speaks("ash leg; boiled-linseed-oil 19:00; ask pack +30d"),
        speaks("ash leg; boiled-linseed-oil 19:00; ask rub-out +30d"),
        silent("ash leg; boiled-linseed-oil 19:00; wipe +20m; ask pack +30d"),
        silent("ash leg; boiled-linseed-oil 19:00; check dry +9d; ask pack +21d"),
        silent("ash leg; boiled-linseed-oil 19:00; ask turn +3d"),
        speaks("oak top; boiled-linseed-oil 08:00; ask alkyd-varnish +5d"),
        silent("oak top; boiled-linseed-oil 08:00; wipe +10m; ask alkyd-varnish +5d"),
        silent("oak top; boiled-linseed-oil 08:00; check dry +4d; ask alkyd-varnish +1d"),
    ),
    "coat-while-wiped": (
        speaks("teak top; solvent-wipe 08:00; ask shellac-2lb +5m", Answer.DEADLINE),
        silent("oak top; solvent-wipe 08:00; ask shellac-2lb +5m"),
        silent("teak top; solvent-wipe 08:00; sand +5m; ask shellac-2lb +5m"),
    ),
    "mend-by": (
        speaks(
            "oak top; conversion-varnish 08:00; fault blush +10m; ask rest +5m", Answer.DEADLINE
        ),
        silent("oak top; conversion-varnish 08:00; fault blush +10m; mend +5m; ask rest +5m"),
        silent("oak top; conversion-varnish 08:00; fault blush +10m; ask rest +3h"),
        silent("oak top; lacquer-sprayed 08:00; fault blush +10m; ask rest +5m"),
    ),
}
