"""Stories of a film that stays soft, or was dry far too late."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "stalled": (
        speaks(
            "oak top; alkyd-varnish 08:00; check tacky +5d; check tacky +1d; ask rest",
            Answer.STALLED,
        ),
        speaks("oak top; alkyd-varnish 08:00; check tacky +60d; ask rest", Answer.STALLED),
        silent("oak top; alkyd-varnish 08:00; check tacky +2h; check tacky +1h; ask rest"),
        silent("oak top; alkyd-varnish 08:00; check tacky +5d; check prints +1d; ask rest"),
        silent("oak top; alkyd-varnish 08:00; check tacky +5d; check dry +1d; ask rest"),
        silent("oak top; alkyd-varnish 08:00; check flakes +40d; check flakes +2d; ask rest"),
        speaks("oak top; alkyd-varnish; check tacky +5d; check flakes; check tacky +2d; ask rest"),
    ),
    "dried-late": (
        speaks(
            "oak top; alkyd-varnish 08:00; scuff +3d; glaze; wipe +15m; check dry only-now +3d; "
            "ask alkyd-varnish +1h",
            Answer.TEST,
            "glaze took 72 h to be dry, against 6 to 12 h",
        ),
        # Not said, but it was tacky long after its time; how long it took at least.
        speaks(
            "oak top; wiping-stain 08:00; wipe +8m; check tacky +3d; check dry +2d; "
            "ask shellac-2lb +1h",
            Answer.TEST,
            "at least 72 h",
        ),
        speaks("ash rail; alkyd-varnish 08:00; check dry only-now +6d; ask waterborne-clear +60d"),
        # Under what lies on it too.
        speaks(
            "oak top; gel-stain 08:00; wipe +3m; check dry only-now +9d; shellac-2lb; "
            "ask alkyd-varnish +2d"
        ),
        # A late look tells nothing by itself; tacky within its time is no wonder.
        silent("oak top; wiping-stain 08:00; wipe +8m; check dry +3d; ask shellac-2lb +1h"),
        silent("oak top; alkyd-varnish 08:00; check tacky +6h; check dry +3d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; check dry only-now +14h; ask alkyd-varnish +3d"),
        # Cold air that was read excuses it.
        silent("oak top; air 6C 50%; alkyd-varnish; check dry only-now +3d; ask alkyd-varnish"),
        # Sound all through, by paper, nail, tape or its own solvent.
        silent("oak top; alkyd-varnish; check dry only-now +6d; check powder; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish; check no-print only-now +6d; ask alkyd-varnish +1h"),
        silent("oak top; alkyd-varnish; check dry only-now +6d; check holds; ask alkyd-varnish"),
        silent("oak top; glaze; wipe +15m; check dry only-now +3d; check resists; ask shellac-2lb"),
        silent("oak top; glaze; wipe +15m; check dry only-now +3d; off bare; ask shellac-2lb +1h"),
    ),
}
