"""Stories of what lies beside: other faces, wet films in the room, the joint."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

_FRONT_AND_BACK = "oak top/front+back; front: alkyd-varnish 08:00; back: alkyd-varnish +2h"

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
    "glued-on-finish": (
        speaks(
            "oak rail/face+tenon:joint; tenon: tung-oil 08:00; joint yellow-pva +9d; ask pack +9d",
            Answer.TEST,
            "tung-oil on a glue face",
        ),
        silent("oak rail/face+tenon:joint; face: tung-oil 08:00; joint yellow-pva +9d; ask pack"),
        silent(
            "oak rail/face+tenon:joint; tenon: tung-oil 08:00; tenon: off bare +1d; "
            "joint yellow-pva +9d; ask pack +9d"
        ),
        silent(
            "oak rail/face+tenon:joint; tenon: tung-oil 08:00; joint yellow-pva +9d; "
            "tenon: check holds +9d; ask pack"
        ),
        silent("oak rail/face+tenon:joint; tenon: tung-oil 08:00; ask pack +9d"),
    ),
    "other-face": (
        speaks("oak top/front+back; back: alkyd-varnish 08:00; ask front: alkyd-varnish +1h"),
        speaks("oak top/front+back; back: alkyd-varnish 08:00; ask sand +1h", Answer.WAITS),
        silent(
            "oak top/front+back; surface 9C; back: alkyd-varnish 08:00; back: check holds +3d;"
            " ask front: alkyd-varnish"
        ),
        speaks("oak top/front+back; surface 9C; back: alkyd-varnish 08:00; ask alkyd-varnish +3d"),
        silent("oak top/front+back; back: alkyd-varnish 08:00; ask alkyd-varnish +3d"),
        silent("oak top/front+back; back: alkyd-varnish 08:00; back: check no-print +1d; ask sand"),
        silent("oak top/front+back; back: shellac-2lb 08:00; alkyd-varnish; ask sand +3d"),
    ),
    "failed-beside": (
        speaks(f"{_FRONT_AND_BACK}; back: check tacky +1d; ask front: alkyd-varnish", Answer.TEST),
        speaks(f"{_FRONT_AND_BACK}; back: check gums +2d; ask front: alkyd-varnish", Answer.TEST),
        speaks(f"{_FRONT_AND_BACK}; back: check prints +2d; ask front: alkyd-varnish", Answer.TEST),
        speaks(f"{_FRONT_AND_BACK}; back: check flakes +9d; ask front: alkyd-varnish", Answer.TEST),
        speaks(
            "oak top/front+back; alkyd-varnish 08:00; front: waterborne-clear +4d;"
            " back: waterborne-clear +3h; back: check tacky +1d; ask front: waterborne-clear",
            Answer.TEST,
        ),
        silent(f"{_FRONT_AND_BACK}; back: check smells +9d; ask front: alkyd-varnish"),
        silent(f"{_FRONT_AND_BACK}; back: check tacky +1d; back: check dry; ask front: soap +1d"),
        silent(f"{_FRONT_AND_BACK}; back: check tacky +1d; front: check dry; ask front: soap"),
        silent(f"{_FRONT_AND_BACK}; back: check flakes +9d; front: check holds; ask front: soap"),
        silent(f"{_FRONT_AND_BACK}; back: check tacky +1d; front: check tacky; ask front: soap"),
        silent(f"{_FRONT_AND_BACK}; back: check tacky +1d; back: off bare +1h; ask front: soap"),
        silent(f"{_FRONT_AND_BACK}; back: check tacky +1d; ask front: wipe"),
        silent(
            "oak top/front+back; front: alkyd-varnish 08:00; back: alkyd-varnish +1d;"
            " back: check tacky +1d; ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; front: alkyd-varnish 08:00; back: spar-varnish +1h;"
            " back: check tacky +1d; ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; back: boiled-linseed-oil 06:30; back: wipe +15m;"
            " alkyd-varnish +3d; back: check tacky +1d; ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; air 23C 50%; front: alkyd-varnish 08:00; air 15C 50% +1h;"
            " back: alkyd-varnish +1h; back: check tacky +1d; ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; front: alkyd-varnish brush 08:00; back: alkyd-varnish spray +1h;"
            " back: check tacky +1d; ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; can old alkyd-varnish; front: alkyd-varnish from-old 08:00;"
            " can new alkyd-varnish; back: alkyd-varnish from-new +1h; back: check tacky +1d;"
            " ask front: alkyd-varnish"
        ),
        silent(
            "oak top/front+back; front: shellac-2lb 08:00; back: shellac-2lb +1h;"
            " back: check prints +5h; ask front: shellac-2lb"
        ),
        silent("oak top and oak rail; alkyd-varnish 08:00; rail: check tacky; ask soap"),
    ),
    "dust-on-wet": (
        speaks("oak top and oak rail; rail: alkyd-varnish 08:00; ask sand +1h", Answer.WAITS),
        silent("oak top and oak rail; rail: alkyd-varnish 08:00; ask sand +2d"),
        # What was broken off is scuffed level for its coat.
        speaks(
            "oak top and oak rail; waterborne-clear stopped:half 08:00; rail: alkyd-varnish +4h; "
            "ask waterborne-clear"
        ),
        silent(
            "oak top and oak rail; waterborne-clear 08:00; rail: alkyd-varnish +4h; "
            "ask waterborne-clear"
        ),
        speaks("oak top and oak rail; rail: alkyd-varnish 08:00; rail: check tacky +1h; ask sand"),
        silent("oak top and oak rail; rail: boiled-linseed-oil 08:00; ask sand +1h"),
        silent("oak top and oak rail; rail: alkyd-varnish 08:00; ask wipe +1h"),
    ),
}
