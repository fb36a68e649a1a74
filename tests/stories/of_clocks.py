"""Stories of the clocks of a film: the wait, the window, the dead zone, the steps."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

_FAST = "says oil-polyurethane window 0-2h, 24h- scuffed"

SEALED = "oak top; vinyl-sealer 08:00; lacquer-sprayed"

_STAINED, _WIPED = "oak top; one-air", "wiping-stain 08:00; wipe +5m"

STORIES = {
    "film-clock": (
        speaks("oak top; alkyd-varnish 08:00; ask sand +2h", Answer.DRYING),
        speaks("oak top; alkyd-varnish 08:00; ask stack +2h", Answer.DRYING),
        speaks("oak top; alkyd-varnish 08:00; ask turn +1h", Answer.DRYING),
        speaks("oak top; one-air 23C 50%; alkyd-varnish 08:00; ask hardware +7d", Answer.TEST),
        # Over in the slowest air that it may dry in: what nobody measured is in doubt no longer.
        silent("oak top; one-air 23C 50%; alkyd-varnish 08:00; ask hardware +90d"),
        silent("oak top; one-air 23C 50%; alkyd-varnish 08:00; ask pack +90d"),
        speaks("oak top; wiping-stain 08:00; wipe +5m; ask pack +90d", Answer.TEST),
        speaks("oak top; night 2C; one-air 20C 50%; alkyd-varnish 08:00; ask pack +9d"),
        speaks("oak top; one-air 12C 50%; alkyd-varnish 08:00; heat 30h +1h; ask pack +9d"),
        speaks("oak top; alkyd-varnish 08:00; carried-in 5C 50% +9d; ask pack +1h"),
        silent("oak top; ask sand 08:00"),
        silent("oak top; alkyd-varnish 08:00; ask wipe +2h"),
        silent("oak top; alkyd-varnish 08:00; ask sand +3d"),
        silent("oak top; alkyd-varnish 08:00; check powder +1d; ask sand +1d"),
    ),
    "recoat-clock": (
        # A coat a day is what is usual, also in a shop of 21 °C.
        silent("oak top; air 21C 50%; hardwax-oil 08:00; wipe +20m; ask hardwax-oil +26h"),
        speaks("oak top; air 21C 50%; hardwax-oil 08:00; wipe +20m; ask hardwax-oil +20h"),
        speaks("oak top; air 16C 50%; hardwax-oil 08:00; wipe +20m; ask hardwax-oil +26h"),
        # A glaze that was not sealed in time cannot be scuffed.
        speaks("maple top; glaze 08:00; wipe +15m; ask alkyd-varnish +5d", Answer.TEST, "scuffing"),
        # The edge of what was broken off is scuffed; what a next coat melts is not.
        speaks(
            "oak top; waterborne-clear stopped:half 08:00; ask waterborne-clear +7h",
            Answer.SCUFF,
            "scuff its edge level",
        ),
        silent("oak top; waterborne-clear 08:00; ask waterborne-clear +7h"),
        silent("oak top; lacquer-sprayed stopped:half 08:00; ask lacquer-sprayed +10h"),
        # It left a film open whose window is over.
        speaks(f"{SEALED} stopped:half +20h; ask lacquer-sprayed +10h", Answer.SCUFF, "has closed"),
        silent(f"{SEALED} +20h; ask lacquer-sprayed +10h"),
        # A window with a gap: melts in within 2 h, else a day and then scuffed.
        silent(f"oak top; {_FAST}; oil-polyurethane 08:00; ask oil-polyurethane +1h"),
        speaks(
            f"oak top; {_FAST}; oil-polyurethane 08:00; ask oil-polyurethane +5h",
            Answer.DEAD_ZONE,
            "has not opened again",
        ),
        speaks(
            f"oak top; {_FAST}; oil-polyurethane 08:00; scuff +4h; ask oil-polyurethane +1h",
            Answer.DEAD_ZONE,
        ),
        speaks(
            f"oak top; {_FAST}; oil-polyurethane 08:00; ask oil-polyurethane +25h",
            Answer.SCUFF,
        ),
        silent(f"oak top; {_FAST}; oil-polyurethane 08:00; scuff +25h; ask oil-polyurethane +1h"),
        # Within 1 h or after 48 h, and nothing is said of scuffing.
        speaks(
            "oak top; says lacquer-sprayed window within 1h or after 48h; lacquer-sprayed 08:00; "
            "ask lacquer-sprayed +20h",
            Answer.DEAD_ZONE,
        ),
        silent(
            "oak top; says lacquer-sprayed window within 1h or after 48h; lacquer-sprayed 08:00; "
            "ask lacquer-sprayed +49h"
        ),
        # Its own window closes again.
        speaks(
            "oak top; says lacquer-sprayed window 0-1h, 48-72h; lacquer-sprayed 08:00; "
            "ask lacquer-sprayed +80h",
            Answer.SCUFF,
        ),
        silent(
            "oak top; says oil-polyurethane no-window; oil-polyurethane 08:00; "
            "ask oil-polyurethane +9d"
        ),
        speaks("oak top; no-air; alkyd-varnish 08:00; ask alkyd-varnish +6d"),
        # A week of label hours: a fortnight without a reading may have been too cold for it, at
        # 10 °C it is over in 17 days; by a reading below that it stood still.
        speaks(f"{_STAINED} 20C 50%; {_WIPED}; ask waterborne-clear +14d", Answer.TEST),
        silent(f"{_STAINED} 20C 50%; {_WIPED}; ask waterborne-clear +20d"),
        speaks(f"{_STAINED} 8C 50%; {_WIPED}; ask waterborne-clear +14d", Answer.DRYING),
        speaks(f"{_STAINED} 8C 50%; {_WIPED}; ask waterborne-clear +30d", Answer.TEST, "long over"),
        speaks("oak top; alkyd-varnish 08:00; ask alkyd-varnish +2h", Answer.DRYING),
        speaks("oak top; oil-polyurethane 08:00; ask oil-polyurethane +3d", Answer.SCUFF),
        speaks("oak top; wiping-stain 08:00; wipe +5m; ask waterborne-clear +3h", Answer.DRYING),
        # Nibs are sanded off first, also of a film that would melt in.
        speaks("oak top; shellac-2lb 08:00; fault dust +5m; ask shellac-2lb +1d", Answer.SCUFF),
        silent("oak top; shellac-2lb 08:00; fault dust; denib +1d; ask shellac-2lb"),
        speaks("oak top; shellac-2lb 08:00; fault brush-mark; ask shellac-2lb +1d", Answer.SCUFF),
        silent("oak top; shellac-2lb 08:00; fault brush-mark; scuff +1d; ask shellac-2lb"),
        silent("oak top; ask alkyd-varnish 08:00"),
        silent("oak top; oil-polyurethane 08:00; scuff +2d; ask oil-polyurethane +1h"),
        silent("oak top; shellac-2lb 08:00; ask shellac-2lb +30d"),
        silent("oak top; alkyd-varnish 08:00; check powder +1d; scuff; ask alkyd-varnish"),
        silent("oak top; oil-polyurethane 08:00; ask paste-wax +60d"),
        # Its window may close at 2 h, when another system's wait ends: it may go on from 1 h.
        speaks("maple top; conversion-varnish 08:00; ask conversion-varnish +50m", Answer.DRYING),
        silent("maple top; conversion-varnish 08:00; ask conversion-varnish +70m"),
        speaks("maple top; conversion-varnish 08:00; ask conversion-varnish +121m"),
    ),
    "may-wrinkle": (
        speaks("oak top; conversion-varnish 08:00; ask conversion-varnish +3d", Answer.TEST),
        silent("oak top; conversion-varnish 08:00; ask conversion-varnish +1h"),
        silent("oak top; conversion-varnish 08:00; ask conversion-varnish +40d"),
        speaks("oak top; conversion-varnish 08:00; check dry +2d; ask conversion-varnish +1d"),
        silent("oak top; waterborne-clear 08:00; ask waterborne-clear +3d"),
    ),
    "steps-behind": (
        speaks("oak top; ask rest 08:00", Answer.DONE),
        speaks("oak top @steps shellac-2lb; shellac-2lb 08:00; ask rest +1d", Answer.DONE),
        silent("oak top @steps shellac-2lb; ask due 08:00"),
    ),
}
