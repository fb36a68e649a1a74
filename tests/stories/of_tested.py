"""Stories of a rub with solvent and of a straightedge: each proves only what it can see."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STAINED = "oak top; wiping-stain 08:00; wipe +10m"
CUPPED = "ash panel/front+back+tongue; front: alkyd-varnish 08:00; front: fault cupped +5d"

STORIES = {
    "comes-off-coloured": (
        speaks(f"{STAINED}; check softens +2d; ask waterborne-clear", Answer.BLOCKED, "would too"),
        speaks("oak top; tung-oil 08:00; wipe +10m; check softens +9d; ask alkyd-varnish"),
        speaks(f"{STAINED}; check softens +2d; check resists @one-end +1d; ask waterborne-clear"),
        silent(f"{STAINED}; check softens +2d; check resists +1d; ask waterborne-clear"),
        # The same again wets it, and is meant to.
        silent(f"{STAINED}; check softens +2d; ask wiping-stain"),
        # A varnish takes its next coat long before it has cured; dye and shellac never do.
        silent("oak top; alkyd-varnish 08:00; check softens +2d; ask alkyd-varnish"),
        silent("oak top; water-dye 08:00; check softens +2d; ask waterborne-clear"),
        silent(f"{STAINED}; ask waterborne-clear +2d"),
    ),
    "sample-first": (
        speaks("oak top; check sample-soft 08:00; ask alkyd-varnish +1d", Answer.TEST, "fresh can"),
        speaks("maple top; check sample-dry 08:00; check sample-soft +2d; ask conversion-varnish"),
        silent("oak top; check sample-soft 08:00; check sample-dry +2d; ask alkyd-varnish +1h"),
        silent("oak top; check sample-dry 08:00; ask alkyd-varnish +1d"),
        silent("oak top; alkyd-varnish 08:00; check sample-soft +2d; ask alkyd-varnish +9d"),
        silent("oak top; ask alkyd-varnish"),
    ),
    "was-cupped": (
        speaks(f"{CUPPED}; front: mend +9d; ask front: close", Answer.TEST, "straightedge"),
        speaks(f"{CUPPED}; front: mend +9d; ask tongue: clamp", Answer.TEST),
        speaks("ash panel; check cupped 08:00; mend +9d; ask glue-up", Answer.TEST),
        silent(f"{CUPPED}; front: mend +9d; front: check flat; ask front: close"),
        silent("ash panel; check cupped 08:00; check flat +9d; ask glue-up"),
        speaks("ash panel; check cupped 08:00; check flat +9d; check cupped +9d; mend; ask close"),
        # While it stands the fault itself says so; what was never cupped is not asked about.
        silent(f"{CUPPED}; ask front: close"),
        silent("ash panel; check flat 08:00; ask glue-up +1h"),
        silent("ash panel; alkyd-varnish 08:00; ask close +60d"),
        silent(f"{CUPPED}; front: mend +9d; ask front: pack"),
    ),
}
