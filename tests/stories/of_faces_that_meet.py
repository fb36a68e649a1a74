"""Stories of faces that slide or shut against others."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

DRAWER = "maple drawer/sides:slides"
DOOR = "maple door/edge:shuts"

STORIES = {
    "film-in-runner": (
        lets(f"{DRAWER}; ask alkyd-varnish 08:00", says="leave it bare and wax it"),
        lets(f"{DRAWER}; ask waterborne-clear 08:00"),
        lets(f"{DRAWER}; shellac-1lb 08:00; ask shellac-1lb +1d"),
        # One thin coat under the wax keeps dirt out; oil and wax build nothing.
        silent(f"{DRAWER}; ask shellac-1lb 08:00"),
        silent(f"{DRAWER}; ask paste-wax 08:00"),
        silent(f"{DRAWER}; shellac-1lb 08:00; ask paste-wax +2d"),
        silent(f"{DRAWER}; ask tung-oil 08:00"),
        silent(f"{DOOR}; ask alkyd-varnish 08:00"),
        silent("maple drawer; ask alkyd-varnish 08:00"),
    ),
    "shuts-while-soft": (
        # Latex is 21 to 30 days from fully hard (common practice); it stacks long before.
        speaks(f"{DOOR}; latex-enamel 08:00; ask close +20d", Answer.DRYING, "sticks to it"),
        speaks(f"{DRAWER}; alkyd-varnish 08:00; ask close +20d", Answer.DRYING),
        # No nose tells whether it blocks.
        speaks(f"{DOOR}; latex-enamel 08:00; check no-smell +9d; ask close +1d", Answer.DRYING),
        silent(f"{DOOR}; latex-enamel 08:00; ask close +60d"),
        silent("maple door; latex-enamel 08:00; ask close +20d"),
        silent(f"{DOOR}; paste-wax 08:00; ask close +1d"),
        silent(f"{DOOR}; latex-enamel 08:00; ask stack +20d"),
    ),
}
