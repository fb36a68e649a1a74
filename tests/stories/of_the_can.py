"""Stories of what the person says of a product beyond its hours.

The rules are invented cans; that a film shields what it covers is common practice.
"""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

_NOT_OVER = "says alkyd-varnish not-over wiping-stain because it lifts it"
_NEEDS = "says alkyd-varnish needs shellac-2lb over wiping-stain"
_WAIT = "says alkyd-varnish wait 240h over boiled-linseed-oil"
_OIL = "boiled-linseed-oil 08:00; wipe +10m"

STORIES = {
    "can-not-over": (
        speaks(
            f"oak top; {_NOT_OVER}; wiping-stain 08:00; wipe +5m; ask alkyd-varnish +9d",
            Answer.UNDERNEATH,
            "your rule (act 1): not over",
        ),
        silent("oak top; wiping-stain 08:00; wipe +5m; ask alkyd-varnish +9d"),
        silent(f"oak top; {_NOT_OVER}; wiping-stain 08:00; wipe +5m; ask spar-varnish +9d"),
        silent(f"oak top; {_NOT_OVER}; wiping-stain 08:00; shellac-2lb +2d; ask alkyd-varnish +9d"),
        silent(f"oak top; {_NOT_OVER}; wiping-stain 08:00; off bare +1d; ask alkyd-varnish +9d"),
        silent(f"oak top; {_NOT_OVER}; gel-stain 08:00; wipe +5m; ask alkyd-varnish +9d"),
        speaks(
            "oak top; says alkyd-varnish not-over product:wiping-stain; wiping-stain 08:00; "
            "wipe +5m; ask alkyd-varnish +9d"
        ),
        silent(
            "oak top; says alkyd-varnish not-over product:wiping-stain; gel-stain 08:00; "
            "wipe +5m; ask alkyd-varnish +9d"
        ),
    ),
    "can-needs": (
        speaks(
            f"oak top; {_NEEDS}; wiping-stain 08:00; wipe +5m; ask alkyd-varnish +9d",
            Answer.UNDERNEATH,
        ),
        silent(f"oak top; {_NEEDS}; wiping-stain 08:00; shellac-2lb +2d; ask alkyd-varnish +9d"),
        silent(f"oak top; {_NEEDS}; gel-stain 08:00; wipe +5m; ask alkyd-varnish +9d"),
        silent("oak top; wiping-stain 08:00; wipe +5m; ask alkyd-varnish +9d"),
        speaks("oak top; says alkyd-varnish needs shellac-2lb; ask alkyd-varnish 08:00"),
        silent(
            "oak top; says alkyd-varnish needs shellac-2lb; shellac-2lb 08:00; alkyd-varnish +1d; "
            "ask alkyd-varnish +3d"
        ),
    ),
    "can-wait": (
        speaks(f"oak top; {_WAIT}; {_OIL}; ask alkyd-varnish +8d", says="10 d over"),
        silent(f"oak top; {_WAIT}; {_OIL}; ask alkyd-varnish +11d"),
        silent(f"oak top; {_OIL}; ask alkyd-varnish +8d"),
        # A shorter wait counts with a reason alone, which is said while it is what counts.
        silent(
            f"oak top; says alkyd-varnish wait 30h over boiled-linseed-oil; {_OIL}; "
            "ask alkyd-varnish +40h"
        ),
        speaks(
            "oak top; says alkyd-varnish wait 30h over boiled-linseed-oil because it is dry; "
            f"{_OIL}; ask alkyd-varnish +40h",
            says="as you said: it is dry, act 1",
        ),
        silent(
            "oak top; says alkyd-varnish wait 30h over boiled-linseed-oil because it is dry; "
            f"{_OIL}; ask alkyd-varnish +20d"
        ),
    ),
    "can-window": (
        speaks(
            "oak top; says alkyd-varnish no-window because it melts in; alkyd-varnish 08:00; "
            "ask alkyd-varnish +9d",
            says="as you said: it melts in, act 1",
        ),
        silent(
            "oak top; says alkyd-varnish no-window because it melts in; alkyd-varnish 08:00; "
            "ask paste-wax +9d"
        ),
        silent("oak top; alkyd-varnish 08:00; ask alkyd-varnish +9d"),
        speaks(
            "oak top; says waterborne-clear no-window because it melts in; waterborne-clear 08:00; "
            "ask waterborne-clear +9d"
        ),
        silent(
            "oak top; says waterborne-clear no-window because it melts in; waterborne-clear 08:00; "
            "ask waterborne-clear +5h"
        ),
    ),
    "can-coats-a-day": (
        speaks(
            "oak top; says shellac-2lb coats-a-day 2; shellac-2lb 08:00; shellac-2lb +3h; "
            "ask shellac-2lb +3h",
            Answer.DRYING,
        ),
        silent("oak top; shellac-2lb 08:00; shellac-2lb +3h; ask shellac-2lb +3h"),
        silent("oak top; says shellac-2lb coats-a-day 2; shellac-2lb 08:00; ask shellac-2lb +3h"),
        silent(
            "oak top; says shellac-2lb coats-a-day 2; shellac-2lb 08:00; shellac-2lb +3h; "
            "ask shellac-2lb +21h"
        ),
    ),
    "can-most-coats": (
        speaks(
            "oak top; says shellac-2lb most-coats 2; shellac-2lb 08:00; shellac-2lb +1d; "
            "ask shellac-2lb +1d",
            Answer.UNDERNEATH,
        ),
        silent("oak top; shellac-2lb 08:00; shellac-2lb +1d; ask shellac-2lb +1d"),
        silent("oak top; says shellac-2lb most-coats 2; shellac-2lb 08:00; ask shellac-2lb +1d"),
        silent(
            "oak top; says shellac-2lb most-coats 2; shellac-2lb 08:00; shellac-2lb +1d; "
            "off bare +1d; ask shellac-2lb +1d"
        ),
    ),
    "can-not-on": (
        speaks(
            "teak top; says alkyd-varnish not-on oily; ask alkyd-varnish 08:00", Answer.UNDERNEATH
        ),
        silent("oak top; says alkyd-varnish not-on oily; ask alkyd-varnish 08:00"),
        silent("teak top; ask alkyd-varnish 08:00"),
        silent(
            "teak top; says alkyd-varnish not-on oily; shellac-2lb 08:00; ask alkyd-varnish +2d"
        ),
        silent("teak old-varnish top; says alkyd-varnish not-on oily; ask alkyd-varnish 08:00"),
    ),
}
