"""Stories of what is stacked, packed, stored, set aside: could it bear it, when to look."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

STORIES = {
    "unpack-first": (
        speaks("oak top; alkyd-varnish; pack +90d; ask alkyd-varnish +9d", Answer.TEST, "9 d"),
        silent("oak top; alkyd-varnish; pack +90d; scuff +9d; ask alkyd-varnish +1h"),
        silent("oak top; alkyd-varnish; pack +90d; ask pack +9d"),
        silent("oak top; alkyd-varnish; aside +90d; ask alkyd-varnish +9d"),
        silent("oak top; alkyd-varnish; pack +90d; resume +9d; ask alkyd-varnish +1h"),
        silent("oak rail; shellac-2lb; pack +90d; joint +9d; ask shellac-2lb +9d"),
        silent("oak top; alkyd-varnish; ask alkyd-varnish +9d"),
        speaks("oak top; alkyd-varnish; stack +9d; ask alkyd-varnish +1d", None, "look for prints"),
        speaks("oak top; stack; ask alkyd-varnish +9d", None, "let it stand free"),
        speaks("oak old-varnish top; stack; ask alkyd-varnish +9d", None, "look for prints"),
    ),
    "kept-too-young": (
        speaks("oak top; alkyd-varnish; stack +1d; ask alkyd-varnish +9d", Answer.TEST),
        speaks("oak top; alkyd-varnish; check tacky +1d; stack; ask alkyd-varnish +9d"),
        silent("oak top; alkyd-varnish; stack +90d; ask alkyd-varnish +9d"),
        silent("oak top; alkyd-varnish; stack +1d; check no-print +9d; ask alkyd-varnish +1h"),
        silent("oak top; alkyd-varnish; stack +1d; fault print-mark +9d; ask alkyd-varnish +1h"),
        silent("oak top; stack +1d; ask alkyd-varnish +9d"),
        silent("oak top; alkyd-varnish; aside +1d; resume +1d; ask alkyd-varnish +9d"),
        silent("oak rail; alkyd-varnish; stack +1d; joint +1d; ask rest +9d"),
    ),
    "look-again": (
        # A film that is not fully hard sticks in a stack (common practice).
        lets("cherry top; alkyd-varnish; check no-print +9d; stack; ask rest +3d", "sticks"),
        lets("cherry top; alkyd-varnish; stack +9d; ask rest +3d", "3 d, every 1 d"),
        silent("cherry top; alkyd-varnish; stack +9d; ask rest +20h"),
        silent("cherry top; alkyd-varnish; stack +9d; check no-print +2d; ask rest +20h"),
        silent("cherry top; alkyd-varnish; stack +9d; fault print-mark +2d; ask rest +20h"),
        silent("cherry top; alkyd-varnish; stack stickers +9d; ask rest +9d"),
        silent("cherry top; alkyd-varnish; store standing +9d; ask rest +9d"),
        # What is fully hard asks for nothing.
        silent("cherry top; shellac-2lb; stack +90d; ask rest +90d"),
        # It was kept before it could bear it: that says so itself.
        silent("cherry top; alkyd-varnish; stack +1d; ask rest +9d"),
        lets("cherry top; tung-oil; store shut-in +20d; ask rest +9d", "moving air"),
        silent("cherry top; waterborne-clear; store shut-in +20d; ask rest +9d"),
        silent("cherry top; tung-oil; store shut-in +20d; resume +1d; ask rest +9d"),
        speaks("cherry top; tung-oil; store shut-in +20d; ask hand-over +9d", Answer.TEST),
        silent("cherry top; tung-oil; store shut-in +20d; aside +1d; wipe +1d; ask rest +9d"),
        # A wide board that lies on one face cups.
        speaks("elm top; store flat; ask tung-oil +3d", Answer.TEST, "straightedge"),
        silent("elm top; store flat; check flat +3d; ask tung-oil +1h"),
        silent("elm top; store flat; ask tung-oil +9h"),
        silent("elm top; store flat; moisture 9% +3d; ask tung-oil +1h"),
        silent("elm top; store stickers; ask tung-oil +30d"),
        silent("elm top; store flat; store standing +9h; ask tung-oil +30d"),
        silent("old-varnish elm top; store flat; ask alkyd-varnish +30d"),
        silent("elm rail/face+tenon:joint; store flat; ask tenon: rest +9d"),
        silent("elm rail; store flat; joint +9h; ask rest +9d"),
        silent("elm top; store flat; aside; ask rest +9h"),
        silent("elm top; aside; ask rest +90d"),
    ),
    "no-air": (
        speaks("oak top; tung-oil; store shut-in +2d; scuff +9d; ask tung-oil", Answer.TEST, "9 d"),
        speaks("oak top; alkyd-varnish; store wrapped +3d; ask alkyd-varnish +2d", Answer.TEST),
        silent("oak top; alkyd-varnish; store wrapped +3d; check no-print +2d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish; store wrapped +3d; ask alkyd-varnish +6h"),
        silent("oak top; alkyd-varnish; store standing +3d; ask alkyd-varnish +9d"),
        silent("oak top; waterborne-clear; store wrapped +3d; ask waterborne-clear +2d"),
        # Fully hard, it needs no air any more.
        silent("oak top; tung-oil; store shut-in +200d; ask tung-oil +9d"),
        silent("oak top; tung-oil; aside +2d; resume +9d; ask tung-oil"),
        silent("oak rail; tung-oil; store shut-in +2d; joint +2h; ask tung-oil +9d"),
        # What lay shut in before its coat met air since.
        silent("oak top; store shut-in; tung-oil +9d; ask tung-oil +3d"),
    ),
}
