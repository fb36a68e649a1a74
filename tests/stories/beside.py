"""Stories of what no rule finds: how late a soft film is, and what a glue-up waits for."""

from __future__ import annotations

from tests.stories.telling import silent, speaks

PAIR = "oak rail and oak stile; frame rail stile"
TENON = "oak rail/face+tenon:joint and oak stile; frame rail stile"
BESIDE = {
    "still-in-time": (
        speaks("oak top; alkyd-varnish 08:00; check tacky +2h; ask rest", says="still to go"),
        silent("oak top; alkyd-varnish 08:00; check dry +2h; ask rest"),
        silent("oak top; alkyd-varnish 08:00; check tacky +3d; ask rest"),
    ),
    "check-again": (
        speaks(
            "oak top; alkyd-varnish 08:00; check tacky +2h; ask rest +3d", says="check it again"
        ),
        silent("oak top; alkyd-varnish 08:00; check tacky +2h; ask rest +1h"),
        silent("oak top; alkyd-varnish 08:00; check tacky +2h; check dry +3d; ask rest +1h"),
    ),
    "late": (
        speaks("oak top; alkyd-varnish 08:00; check tacky +3d; ask rest", says="late: still tacky"),
        silent("oak top; alkyd-varnish 08:00; check tacky +2h; ask rest"),
        silent("oak top; alkyd-varnish 08:00; check tacky +3d; check dry +1d; ask rest"),
        # What was tried on a scrap is not asked for again.
        speaks("teak top; alkyd-varnish 08:00; check tacky +9d; ask rest", says="try the same can"),
        speaks(
            "teak top; check sample-soft 08:00; alkyd-varnish +1d; check tacky +9d; ask rest",
            says="a sample stayed soft as well",
        ),
    ),
    "members-ready": (
        speaks(f"{PAIR}; ask rest 08:00"),
        speaks(f"{PAIR}; shellac-2lb 08:00; ask rest +2d"),
        silent(f"{PAIR}; shellac-2lb 08:00; ask rest +1h"),
    ),
    "members-missing": (
        speaks("oak rail; frame rail*2; ask rest 08:00", says="rail"),
        silent(f"{PAIR}; ask rest 08:00"),
    ),
    "members-not-ready": (
        speaks(f"{PAIR}; alkyd-varnish 08:00; ask rest +1h", says="rail"),
        speaks(f"{PAIR}; stile: mask 08:00; ask rest +1h", says="stile"),
        silent(f"{PAIR}; alkyd-varnish 08:00; ask rest +30d"),
    ),
    "dirty-joint": (
        speaks(f"{TENON}; tenon: shellac-2lb 08:00; stile: mask; ask rest +9d", says="rail"),
        silent(f"{TENON}; face: shellac-2lb 08:00; ask rest +9d"),
    ),
    "clamp-by-label": (
        speaks(f"{PAIR}; no-air; shellac-2lb 08:00; ask rest +9d"),
        silent(f"{PAIR}; shellac-2lb 08:00; ask rest +9d"),
    ),
    "moisture-apart": (
        speaks(f"{PAIR}; moisture 7%; stile: moisture 11.5%; ask rest", says="stile"),
        silent(f"{PAIR}; moisture 8%; stile: moisture 9%; ask rest"),
        silent(f"{PAIR}; moisture 7%; moisture 11.5%; ask rest"),
    ),
}
