"""Stories of what must be done soon or is spoilt for good."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

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
        # Of what was broken off nobody takes it as wiped: nothing waits for that to dry.
        speaks(
            "oak top; wiping-stain stopped:half 08:00; ask alkyd-varnish +1d",
            Answer.BLOCKED,
            "own solvent (mineral spirits)",
        ),
        speaks("oak top; gel-stain stopped:half 08:00; ask pack +10m", Answer.BLOCKED, "minutes"),
        speaks(
            "oak top; wiping-stain stopped:half 08:00; ask wiping-stain +1d",
            Answer.BLOCKED,
            "the same again",
        ),
        silent("oak top; wiping-stain stopped:half 08:00; wipe +5m; ask alkyd-varnish +3d"),
        silent("oak top; tung-oil stopped:half 08:00; solvent-wipe +2h; ask alkyd-varnish +9d"),
        # Flooded on there surely was a surplus: tested first, whatever time has passed.
        speaks(
            "oak top; tung-oil flooded 08:00; ask alkyd-varnish +90d",
            Answer.TEST,
            "flooded on, and no wipe is on record",
        ),
        silent("oak top; tung-oil flooded 08:00; wipe +20m; ask alkyd-varnish +90d"),
        silent("oak top; tung-oil flooded 08:00; check dry +80d; ask alkyd-varnish +10d"),
        lets("oak top; tung-oil thin 08:00; ask alkyd-varnish +90d", "was the surplus"),
    ),
    "bleeds-back": (
        speaks(
            "ash top; oil-varnish-blend flooded 18:00; wipe +20m; ask rest +25m",
            Answer.DEADLINE,
            "look 30 min after the wipe",
        ),
        speaks(
            "red oak top; tung-oil flooded 18:00; wipe +20m; wipe +35m; ask rest +20m",
            Answer.DEADLINE,
            "look 1 h after the wipe",
        ),
        speaks(
            "mahogany lid; heat-bodied-oil flooded 18:00; wipe +15m; wipe +1h10; ask due",
            Answer.DEADLINE,
            "look 2 h after the wipe",
        ),
        # Its vessels lie all over the ring, and are wide.
        speaks("wenge top; tung-oil flooded 18:00; wipe +20m; ask rest +25m", Answer.DEADLINE),
        silent("cherry top; tung-oil flooded 18:00; wipe +20m; ask rest +25m"),
        # Nobody said that it was looked at: it is asked, and a test answers it.
        lets(
            "ash top; tung-oil flooded 18:00; wipe +20m; ask alkyd-varnish +30d",
            "did our tung-oil come back out",
        ),
        silent("ash top; tung-oil flooded 18:00; wipe +20m; check dry +9d; ask tung-oil +1d"),
        silent("ash top; tung-oil flooded 18:00; wipe +20m; wipe +2h; ask alkyd-varnish +30d"),
        silent("ash top; tung-oil flooded 18:00; wipe +20m; ask turn +30d"),
        # What had set when it was wiped is no oil that comes back.
        silent("ash top; tung-oil flooded 18:00; wipe +13h; ask rest +25m"),
        # Thin or not said; pores that are closed; what is no oil; what stands there still.
        silent("ash top; tung-oil thin 18:00; wipe +20m; ask rest +25m"),
        silent("ash top; tung-oil 18:00; wipe +20m; ask rest +25m"),
        silent("cherry top; tung-oil flooded 18:00; wipe +20m; ask rest +25m"),
        silent("ash top; wiping-stain flooded 18:00; wipe +5m; ask rest +25m"),
        silent("ash top; tung-oil flooded 18:00; ask rest +10m"),
        silent("ash top; tung-oil flooded 18:00; wipe +20m; off bare +10m; ask rest +5m"),
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
        speaks(
            "oak top; air 20C 80%; conversion-varnish 08:00; fault blush +10m; ask rest +5m",
            Answer.DEADLINE,
            "blush: dry the air to 75 % RH first, then mist",
        ),
        speaks(
            "oak top; air 20C 70%; conversion-varnish 08:00; fault blush +10m; ask rest +5m",
            Answer.DEADLINE,
            "blush: mist",
        ),
        silent("oak top; conversion-varnish 08:00; fault blush +10m; mend +5m; ask rest +5m"),
        silent("oak top; conversion-varnish 08:00; fault blush +10m; ask rest +3h"),
        silent("oak top; lacquer-sprayed 08:00; fault blush +10m; ask rest +5m"),
    ),
}
