"""Stories of who will use a piece: food and a child want the film fully hard."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

SPOON = "maple spoon; for food; tung-oil 08:00; wipe +20m"
STORIES = {
    # Advice on a wait before food or a child differs from a day to 30; the longest counts.
    "hard-before-use": (
        speaks(f"{SPOON}; ask use +14d", Answer.WAITS, "it is for food"),
        # No check makes it hard sooner.
        speaks(f"{SPOON}; check no-print +13d; ask use +1d", Answer.WAITS),
        speaks(f"{SPOON}; ask hand-over +14d", Answer.WAITS, "fully hard"),
        speaks("ash cot; for child; waterborne-clear 08:00; ask use +10d", Answer.WAITS, "a child"),
        # Shellac is hard in two weeks, and is used after the longest wait advised.
        speaks("oak bowl; for food; shellac-2lb 08:00; ask use +20d", Answer.WAITS),
        silent("oak bowl; for food; shellac-2lb 08:00; ask hand-over +20d"),
        silent("oak bowl; for food; shellac-2lb 08:00; ask use +31d"),
        silent(f"{SPOON}; ask use +90d"),
        # Board oil never hardens: what is not wiped off has soaked in, and is used days after.
        silent("maple board; for food; mineral-oil 08:00; wipe +20m; ask use +4d"),
        speaks("maple board; for food; mineral-oil 08:00; ask use +1d", Answer.WAITS, "for food"),
        silent(f"{SPOON}; ask hand-over +90d"),
        # It may be packed and turned by its own clock; nobody else waits; bare wood is hard.
        silent(f"{SPOON}; ask pack +14d"),
        silent("maple spoon; tung-oil 08:00; wipe +20m; ask use +14d"),
        silent("maple spoon; for food; ask use +1d"),
        silent("oak bowl; for food; shellac-2lb 08:00; off bare +1d; ask hand-over +1d"),
    ),
}
