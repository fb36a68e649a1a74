"""Stories of a coat that was broken off: a film, no coat, and an edge to be evened out."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

HALF = "oak top @steps alkyd-varnish*2; alkyd-varnish 08:00; scuff +2d; alkyd-varnish stopped:half"
STAIN = "oak top; wiping-stain stopped:half 08:00; wipe +10m"

STORIES = {
    "broken-off": (
        lets(f"{HALF}; ask alkyd-varnish +5m", "do not go back into it"),
        lets(f"{HALF}; ask alkyd-varnish +3d", "scuff all of it level"),
        lets(f"{HALF}; ask pack +30d", "what lies on half is no coat"),
        lets(f"{HALF}; ask rest +1h"),
        lets("oak top; shellac-2lb stopped:one-end 08:00; ask shellac-2lb +1d", "it melts in"),
        lets("oak top; waterborne-clear stopped:half 08:00; scuff +20m; ask waterborne-clear +3h"),
        lets(f"{HALF}; check dry +1h; ask rest", "scuff all of it level"),
        lets(f"{HALF}; check tacky +1h; ask rest", "do not go back into it"),
        # Colour is wetted again by its own kind; another coat would shut its edge in.
        lets(f"{STAIN}; ask wiping-stain +1d", "wiped even"),
        speaks(f"{STAIN}; ask waterborne-clear +3d", Answer.TEST, "shows for good"),
        silent(f"{HALF}; ask take-off +5m"),
        lets(f"{HALF}; ask scuff +1h", "do not go back into it"),
        silent(f"{HALF}; ask scuff +3d"),
        silent(f"{HALF}; ask sand +3d"),
        silent(f"{HALF}; scuff +3d; ask alkyd-varnish"),
        silent(f"{HALF}; scuff +3d; alkyd-varnish; ask alkyd-varnish +3d"),
        silent(f"{HALF}; off bare; ask alkyd-varnish +3d"),
        silent(f"{HALF}; mend +3d; ask pack +30d"),
        silent(f"{STAIN}; wiping-stain +1d; ask waterborne-clear +3d"),
        silent("oak top; alkyd-varnish 08:00; ask alkyd-varnish +3d"),
        silent(f"{STAIN}; ask wipe +1h"),
        silent(f"{STAIN}; solvent-wipe +15m; ask alkyd-varnish +3d"),
    ),
}
