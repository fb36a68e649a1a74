"""Stories of what lies beside: other faces, wet films in the room, the joint."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "joint-young": (
        speaks("oak rail; joint hot-hide; ask sand +3h"),
        speaks("oak rail; joint yellow-pva 08:00; ask rest +10m", Answer.WAITS),
        speaks("oak rail; joint yellow-pva 08:00; ask level +2d", Answer.WAITS),
        speaks("oak rail; joint 08:00; ask waterborne-clear +4h", Answer.WAITS),
        silent("oak rail; joint yellow-pva 08:00; ask rest +2d"),
        silent("oak rail; ask rest 08:00"),
    ),
    "cold-joint": (
        speaks("oak rail; air 5C 50%; joint yellow-pva 08:00; ask sand +9d", Answer.TEST),
        silent("oak rail; air 5C 50%; joint hot-hide 08:00; ask sand +9d"),
        silent("oak rail; joint yellow-pva 08:00; ask sand +9d"),
    ),
    "other-face": (
        speaks("oak top/front+back; back: alkyd-varnish 08:00; ask front: alkyd-varnish +1h"),
        speaks("oak top/front+back; back: alkyd-varnish 08:00; ask sand +1h", Answer.WAITS),
        silent("oak top/front+back; back: alkyd-varnish 08:00; ask alkyd-varnish +3d"),
        silent("oak top/front+back; back: alkyd-varnish 08:00; back: check no-print +1d; ask sand"),
        silent("oak top/front+back; back: shellac-2lb 08:00; alkyd-varnish; ask sand +3d"),
    ),
    "dust-on-wet": (
        speaks("oak top and oak rail; rail: alkyd-varnish 08:00; ask sand +1h", Answer.WAITS),
        silent("oak top and oak rail; rail: alkyd-varnish 08:00; ask sand +2d"),
        speaks("oak top and oak rail; rail: alkyd-varnish 08:00; rail: check tacky +1h; ask sand"),
        silent("oak top and oak rail; rail: boiled-linseed-oil 08:00; ask sand +1h"),
        silent("oak top and oak rail; rail: alkyd-varnish 08:00; ask wipe +1h"),
    ),
    "lead": (
        speaks("oak old-paint top; ask sand 08:00", Answer.TEST),
        silent("oak top; ask sand 08:00"),
        silent("oak old-paint top; off bare 08:00; ask sand +1h"),
        silent("oak old-paint top; ask wipe 08:00"),
    ),
}
