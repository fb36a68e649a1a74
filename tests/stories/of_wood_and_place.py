"""Stories of the rules about the wood, its preparation, the place and what is kept."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

# Wood that has stood long at 23 °C and 50 % holds 9.2 % (USDA Wood Handbook, equation 4-5).
INLAID = "maple top/field+inlay=rosewood"

STORIES = {
    "look-first": (
        # Asked, and no more: it keeps nobody from the colour.
        lets("maple top; sand P180 08:00; ask wiping-stain", says="look at it"),
        lets("maple top; sand P180 08:00; ask water-dye"),
        lets("maple top; check tacky; water-dye stopped:half; ask water-dye +1d"),
        silent("maple top; sand P180 08:00; check looks-clean; ask wiping-stain"),
        # What was found holds as a fault; that anybody looked is all that is asked.
        silent("maple top; check glue @left-edge 08:00; ask wiping-stain"),
        silent("maple top; check glue 08:00; sand; ask wiping-stain"),
        silent("maple top; fault snipe 08:00; sand; ask water-dye"),
        # A clear finish forgives, and what is covered is past it.
        silent("maple top; sand P180 08:00; ask tung-oil"),
        silent("maple top; sand P180 08:00; ask shellac-2lb"),
        silent("maple top; shellac-1lb 08:00; ask glaze +1d"),
        silent("maple old-varnish top; ask gel-stain 08:00"),
    ),
    "wood-too-wet": (
        speaks("oak top; moisture 18% 08:00; ask alkyd-varnish", Answer.WAITS),
        speaks("oak top; air 20C 30%; moisture 11% 08:00; ask alkyd-varnish", Answer.TEST),
        silent("oak top; moisture 8% 08:00; ask alkyd-varnish"),
        silent("oak top; moisture 18% 08:00; moisture 8% +20d; ask alkyd-varnish"),
        silent("oak top; moisture 18% 08:00; alkyd-varnish; ask alkyd-varnish +2d"),
        # UFGS 09995: at most 12 %.
        speaks("oak top; moisture 19%; ask waterborne-clear +1h", Answer.WAITS, "12 %"),
        speaks("oak top; moisture 19%; ask waterborne-clear +20d", Answer.WAITS, "measured 20 d"),
        speaks("oak top; moisture 19%; moisture 15% +6d; ask waterborne-clear +1h", None, "fell"),
        speaks("oak top; moisture 13%; moisture 15% +6d; ask waterborne-clear +1h", None, "rose"),
        speaks("oak top; moisture 13%; moisture 13% +6d; ask waterborne-clear +1h", None, "still"),
        silent("oak top; moisture 10%; ask waterborne-clear +1h"),
        silent("oak top; moisture 19%; moisture 10% +20d; ask waterborne-clear +1h"),
        silent("oak top; ask waterborne-clear +1h"),
        # 2 points over what the air makes of it (common practice): a test, it is not far off.
        speaks("oak top; moisture 11.5%; ask waterborne-clear +1h", Answer.TEST),
        silent("oak top; air 20C 65%; moisture 11.5%; ask waterborne-clear +1h"),
        speaks("oak top; moisture 19%; ask glue-up +1h", Answer.WAITS),
        silent("oak top; moisture 10%; ask glue-up +1h"),
        speaks("oak top; shellac-2lb; moisture 15% +9d; ask pack +1h", Answer.TEST),
        silent("oak top; shellac-2lb; moisture 15% +9d; ask pack +20d"),
        silent("oak top; shellac-2lb; moisture 15% +9d; ask waterborne-clear +1h"),
    ),
    "moisture-trend": (
        speaks("oak top; moisture 11%; moisture 10% +6d; ask waterborne-clear +1h", None, "fell"),
        silent("oak top; moisture 10% +6d; ask waterborne-clear +1h"),
        speaks(
            "oak top; moisture 11%; moisture 10% +6d; shellac-2lb stopped:half; ask shellac-2lb"
        ),
        silent("oak top; moisture 11%; moisture 10% +6d; shellac-2lb; ask shellac-2lb +1d"),
        # One finding a cause: what is too wet says it itself.
        silent("oak top; moisture 19%; moisture 15% +6d; ask waterborne-clear +1h"),
        # Two readings of one evening are one.
        silent("oak top; moisture 11%; moisture 10% +10m; ask waterborne-clear +1h"),
    ),
    "moisture-old": (
        # 20 °C and 75 % makes wood 14.4 % (Wood Handbook, table 4-2).
        speaks("oak top; moisture 9%; air 20C 75%; ask waterborne-clear +20d", Answer.TEST),
        silent("oak top; moisture 9%; air 20C 75%; ask waterborne-clear +2d"),
        silent("oak top; moisture 9%; air 20C 50%; ask waterborne-clear +20d"),
        silent("oak top; shellac-2lb; moisture 9%; air 20C 75%; ask waterborne-clear +20d"),
    ),
    "wood-too-dry": (
        speaks("oak top; air 20C 65%; moisture 6%; ask waterborne-clear +1h", None, "swell"),
        # Red oak, flat-sawn: 0.00369 of its width for each point (table 13-5), 12 less 6 points.
        speaks("red-oak top; air 20C 65%; moisture 6%; ask waterborne-clear +1h", None, "2.2 %"),
        silent("oak top; air 20C 65%; moisture 11%; ask waterborne-clear +1h"),
        silent("oak top; moisture 8%; ask waterborne-clear +1h"),
        silent("oak top; air 20C 65%; moisture 6%; ask waterborne-clear +20d"),
    ),
    "moved-in-store": (
        # 38 % makes wood 7.4 %, 22 % 4.8 % (equation 4-5); red oak moves 0.00369 of a flat-sawn
        # width for each point (table 13-5): 0.9 %.
        speaks(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +20d; "
            "move shop; ask waterborne-clear +1d",
            Answer.TEST,
            "shrunk",
        ),
        speaks(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +30d; "
            "ask glue-up +1h",
            Answer.TEST,
            "0.9 % of a flat-sawn width",
        ),
        lets(
            "red-oak top; air 21C 38%; alkyd-varnish +8d; attic 21C 22%; move attic; "
            "attic 21C 22% +30d; move shop; ask alkyd-varnish +1d",
            "bare tongues",
        ),
        lets(
            "elm top; air 21C 38%; alkyd-varnish +8d; attic 21C 65%; move attic; "
            "attic 21C 65% +30d; ask rest +1h",
            "swollen",
        ),
        lets(
            "ash rail; air 21C 38%; joint +8d; attic 21C 65%; move attic; attic 21C 65% +30d; "
            "ask rest +1h",
        ),
        # Measured 9 %, and four weeks at 22 % since.
        speaks(
            "elm top; moisture 9%; attic 21C 22% +8d; move attic; attic 21C 22% +30d; "
            "ask tung-oil +1h",
            Answer.TEST,
            "from 9.0",
        ),
        silent(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +30d; "
            "moisture 5%; ask waterborne-clear +1h"
        ),
        silent(
            "red-oak top; air 21C 38%; alkyd-varnish +8d; attic 21C 22%; move attic; "
            "attic 21C 22% +30d; check flat; ask alkyd-varnish +1d"
        ),
        # Scuffed by hand it is no drier; sanded flat it is as it is, and the room's air is asked.
        speaks(
            "ash top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +30d; "
            "move shop; scuff +1d; ask tung-oil +1h",
            Answer.TEST,
        ),
        silent(
            "ash top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +30d; "
            "move shop; sand +1d; ask tung-oil +1h"
        ),
        # An old reading in damper air says so itself.
        silent(
            "elm top; moisture 5%; attic 21C 65%; move attic; attic 21C 65% +30d; ask tung-oil +1h"
        ),
        # It has come back to what it was.
        silent(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +20d; "
            "move shop; ask waterborne-clear +9d"
        ),
        # A night there does nothing, nor does air that is nearly the same.
        silent(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +1d; "
            "move shop; ask waterborne-clear +1d"
        ),
        silent(
            "red-oak top; air 21C 38%; sand +8d; attic 21C 34%; move attic; attic 21C 34% +30d; "
            "ask waterborne-clear +1d"
        ),
        silent("red-oak top; sand; shellac-2lb; off bare +9d; ask shellac-2lb +9d"),
        silent("old-varnish red-oak top; sand; ask alkyd-varnish +90d"),
    ),
    "from-other-air": (
        # Worked here before it stood there: that says so itself.
        silent(
            "oak top; shellac-2lb stopped:half; air 21C 38%; attic 21C 22%; move attic; "
            "attic 21C 22% +20d; move shop; ask shellac-2lb +1d"
        ),
        silent(
            "oak top; shellac-2lb; air 21C 38%; attic 21C 22%; move attic; "
            "attic 21C 22% +20d; move shop; ask shellac-2lb +1d"
        ),
        silent(
            "oak top; air 21C 38%; sand +8d; attic 21C 22%; move attic; attic 21C 22% +20d; "
            "move shop; ask waterborne-clear +1d"
        ),
        silent(
            "oak top; air 21C 38%; shellac-2lb +8d; off bare; attic 21C 22%; move attic; "
            "attic 21C 22% +20d; move shop; ask waterborne-clear +1d"
        ),
        silent(
            "oak rail; air 21C 38%; joint +8d; attic 21C 22%; move attic; attic 21C 22% +20d; "
            "move shop; ask waterborne-clear +1d"
        ),
        # 22 % makes wood 4.8 %, 38 % 7.4 % (equation 4-5).
        speaks(
            "oak top; air 21C 38%; attic 21C 22%; move attic; attic 21C 22% +20d; move shop; "
            "ask waterborne-clear +1d",
            says="points",
        ),
        silent(
            "oak top; air 21C 38%; attic 21C 22%; move attic; attic 21C 22% +20d; move shop; "
            "ask waterborne-clear +8d"
        ),
        silent(
            "oak top; air 21C 38%; attic 21C 22%; move attic; attic 21C 22% +20d; move shop; "
            "moisture 7%; ask waterborne-clear +1d"
        ),
        silent(
            "oak top; air 21C 38%; attic 21C 36%; move attic; attic 21C 36% +20d; move shop; "
            "ask waterborne-clear +1d"
        ),
        # A night beside does nothing to it.
        silent(
            "oak top; air 21C 38%; attic 21C 22%; move attic; attic 21C 22% +1d; move shop; "
            "ask waterborne-clear +1d"
        ),
    ),
    "sanded-long-ago": (
        speaks("oak top; sand P180; ask waterborne-clear +90d", Answer.SCUFF, "90 d ago"),
        silent("oak top; sand P180; ask waterborne-clear +3d"),
        silent("oak top; sand P180; sand +90d; ask waterborne-clear +1h"),
        silent("oak top; sand P180; scuff +90d; ask waterborne-clear +1h"),
        silent("oak top; ask waterborne-clear +90d"),
        silent("oak top; sand P180; ask hardwax-oil +20d"),
        speaks("oak top; sand P180; ask hardwax-oil +40d", Answer.SCUFF),
        # Its own rule asks for a solvent wipe within the hour.
        silent("teak top; sand P180; ask waterborne-clear +90d"),
        silent("oak top; sand P180; shellac-2lb; ask waterborne-clear +90d"),
        silent("old-varnish oak top; sand P180; ask waterborne-clear +90d"),
        # What came off took its sanding with it, and laid the wood bare that day.
        silent("oak top; sand P180; shellac-2lb; off bare +90d; ask waterborne-clear +1h"),
        speaks(
            "elm top; shellac-2lb; off bare +9d; ask latex-enamel +9d", Answer.SCUFF, "stripped"
        ),
        speaks("elm top; shellac-2lb; off bare scrape +9d; ask water-dye +9d", None, "scraped off"),
        silent("elm top; shellac-2lb; off bare +9d; sand P150 +8d; ask latex-enamel +2d"),
        # Down to a coat that stays no wood lies open.
        silent("elm top; shellac-2lb; tung-oil +9d; off shellac-2lb; ask shellac-2lb +40d"),
    ),
    "glue-face-old": (
        speaks("ash rail/face+tenon:joint; tenon: sand 08:00; ask tenon: glue-up +3d", Answer.TEST),
        speaks("teak rail/face+tenon:joint; tenon: sand 08:00; ask tenon: clamp +9h", None, "oily"),
        silent("teak rail/face+tenon:joint; tenon: sand 08:00; ask tenon: clamp +1h"),
        silent(
            "teak rail/face+tenon:joint; tenon: sand 08:00; tenon: solvent-wipe +9h; "
            "ask tenon: clamp +20m"
        ),
        silent("ash rail/face+tenon:joint; tenon: sand 08:00; ask tenon: glue-up +9h"),
        silent("ash rail/face+tenon:joint; face: sand 08:00; ask tenon: glue-up +9d"),
        speaks(
            "ash rail/face+tenon:joint; tenon: tung-oil 08:00; tenon: off bare scrape +9d; "
            "ask tenon: glue-up +2d",
            Answer.TEST,
            "tenon",
        ),
        silent("ash rail/face+tenon:joint; tenon: sand 08:00; tenon: level +9d; ask tenon: clamp"),
        silent("ash rail/face+tenon:joint; tenon: sand 08:00; joint +9h; ask tenon: clamp +9d"),
        silent("ash rail/face+tenon:joint; tenon: sand 08:00; ask face: clamp +9d"),
    ),
    "wood-wetted": (
        speaks("oak top; raise-grain; ask waterborne-clear +10m", Answer.WAITS),
        speaks("ash top; sand; bleach-oxalic; rinse +1d; ask wiping-stain +10m", Answer.WAITS),
        speaks("oak top; rinse; ask sand +15m"),
        speaks("elm top; raise-grain; ask mask +1h", Answer.WAITS),
        silent("elm top; rinse; ask rinse +15m"),
        silent("elm top; rinse; ask wipe +15m"),
        silent("oak top; raise-grain; ask waterborne-clear +1d"),
        silent("oak top; sand; ask waterborne-clear +10m"),
        silent("oak top; shellac-2lb; rinse +1d; ask waterborne-clear +10m"),
        silent("old-varnish oak top; rinse; ask waterborne-clear +10m"),
    ),
    "grain-raised": (
        speaks("oak top; sand P180; raise-grain; ask waterborne-clear +1d", Answer.SCUFF),
        speaks("oak top; sand; bleach-oxalic; rinse +1d; ask alkyd-varnish +4d", Answer.SCUFF),
        silent("oak top; raise-grain; sand P220 +1d; ask waterborne-clear +1h"),
        speaks("cherry door; lye-stain 08:00; rinse +9h; ask alkyd-varnish +4d", Answer.SCUFF),
        silent("cherry door; dichromate-stain 08:00; rinse +9h; ask alkyd-varnish +4d"),
        silent("oak top; raise-grain; ask sand +1d"),
        silent("oak top; raise-grain; shellac-2lb +1d; ask waterborne-clear +1d"),
        silent("old-varnish oak top; raise-grain; ask waterborne-clear +1d"),
        silent("oak top; raise-grain; shellac-2lb +1d; off bare +1d; ask waterborne-clear +1h"),
    ),
    "last-grit": (
        speaks("oak top; sand P400; ask wiping-stain +1h", None, "P120 to P220"),
        speaks("oak top; sand P60; ask wiping-stain +1h", None, "scratches"),
        silent("oak top; sand P180; ask wiping-stain +1h"),
        silent("oak top; sand P400; ask hardwax-oil +1h"),
        silent("oak top; sand; ask wiping-stain +1h"),
        silent("oak top; sand P400; sand P180; ask wiping-stain +1h"),
        silent("oak top; sand P400; shellac-2lb; ask wiping-stain +1d"),
        silent("old-varnish oak top; sand P400; ask wiping-stain +1h"),
        silent("oak top; sand P400; shellac-2lb; off bare +1d; ask wiping-stain +1h"),
    ),
    "tape-left": (
        speaks("oak top; mask; ask waterborne-clear +5d", Answer.TEST, "5 d"),
        silent("oak top; mask; ask waterborne-clear +1d"),
        silent("oak top; mask; untape +1d; ask waterborne-clear +5d"),
        silent("oak top; mask; ask untape +5d"),
        speaks("oak top; alkyd-varnish; mask +6d; ask rest +9d"),
    ),
    "tape-on-young-film": (
        speaks("oak top; alkyd-varnish; mask +1h; ask waterborne-clear +1d", None, "before that"),
        silent("oak top; alkyd-varnish; mask +90d; ask waterborne-clear +1d"),
        speaks("oak top; alkyd-varnish; check dry +1d; mask; ask waterborne-clear +1d"),
        silent("oak top; mask; alkyd-varnish +1h; ask waterborne-clear +1d"),
        silent("oak top; alkyd-varnish; mask +1h; untape +1h; ask waterborne-clear +1d"),
    ),
    "on-the-wood": (
        speaks("pine top/knots; ask latex-enamel", Answer.UNDERNEATH, "knot"),
        silent("pine top/knots; ask pigmented-shellac"),
        silent("pine top/knots; pigmented-shellac; ask latex-enamel +1d"),
        silent("pine top; ask latex-enamel"),
        # Done every day: a word, no alarm.
        speaks("oak top/ends; ask wiping-stain", None, "finer"),
        speaks(
            "oak top; lacquer-sprayed; fault fisheye; off bare; ask lacquer-sprayed +1h",
            Answer.TEST,
        ),
        silent("oak top; lacquer-sprayed; fault run; off bare; ask lacquer-sprayed +1h"),
        silent("old-varnish oak top/ends; ask wiping-stain"),
        # Rosewood's colour runs into maple under a brush; a light spray carries nothing.
        speaks(f"{INLAID}; ask inlay: shellac-2lb 08:00", Answer.TEST, "never back"),
        speaks(f"{INLAID}; ask inlay: tung-oil 08:00", Answer.TEST),
        silent(f"{INLAID}; ask inlay: shellac-2lb spray 08:00"),
        silent(f"{INLAID}; ask inlay: waterborne-clear 08:00"),
        silent(f"{INLAID}; field: shellac-2lb 08:00; ask inlay: shellac-2lb"),
        silent(f"{INLAID.replace('maple', 'padauk')}; ask inlay: shellac-2lb 08:00"),
        silent(f"{INLAID.replace('rosewood', 'walnut')}; ask inlay: shellac-2lb 08:00"),
        silent("rosewood top; ask shellac-2lb 08:00"),
    ),
    "inside-closed": (
        speaks("oak drawer; ask boiled-linseed-oil", Answer.TEST, "shellac"),
        speaks("oak case/inside; ask alkyd-varnish", Answer.TEST),
        silent("oak drawer/front; ask boiled-linseed-oil"),
        silent("oak case/inside; ask shellac-2lb"),
        silent("oak top; ask boiled-linseed-oil"),
        # It was decided with the first coat.
        silent("oak drawer; boiled-linseed-oil; ask tung-oil +9d"),
    ),
    "warms-under-film": (
        speaks("oak top; air 16C 50%; air 22C 50% +2h; ask alkyd-varnish", None, "pores"),
        speaks("wenge top; air 16C 50%; air 22C 50% +2h; ask oil-varnish-blend", None, "pores"),
        silent("maple top; air 16C 50%; air 22C 50% +2h; ask alkyd-varnish"),
        silent("oak top; air 16C 50%; air 22C 50% +2h; ask waterborne-clear"),
        silent("oak top; air 22C 50%; air 16C 50% +2h; ask alkyd-varnish"),
        speaks("oak top; air 16C 50%; alkyd-varnish; air 22C 50% +2h; ask alkyd-varnish +2d"),
    ),
}
