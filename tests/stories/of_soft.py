"""Stories of a film that stays soft."""

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
}
