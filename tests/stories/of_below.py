"""Stories of what lies below: pairs of finishes, an old finish, what should never have gone on."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

BARE_SPOT = "oak top; wiping-stain 08:00; wipe +10m; oil-polyurethane +5d; sand +3d"

GELLED = "oak top; gel-stain 08:00; wipe +5m"

STORIES = {
    "wrong-below": (
        speaks("oak top; paste-wax 08:00; ask rest +2d"),
        silent("oak drawer/sides:slides; paste-wax 08:00; ask rest +2d"),
        speaks("oak top; shellac-waxy 08:00; conversion-varnish +1d; ask rest +2d"),
        silent("oak top; shellac-2lb 08:00; waterborne-clear +1d; ask rest +2d"),
        silent("oak top; shellac-waxy 08:00; conversion-varnish +1d; check holds +3d; ask rest"),
        silent("oak top; shellac-waxy 08:00; conversion-varnish +1d; off bare +2d; ask rest"),
        # Colour that was put back on a bare spot has no film under it.
        silent(f"{BARE_SPOT}; fault rubbed-through; wiping-stain +5m; ask rest +2d"),
        speaks(f"{BARE_SPOT}; wiping-stain +5m; ask rest +2d"),
    ),
    "pair": (
        # What drags the colour drags it while it goes on, however long it dried: told, and stops
        # nobody. There by then, it is no worse ground.
        speaks("maple seat; water-dye 08:00; ask waterborne-clear brush +1d", Answer.TEST, "cup"),
        silent("maple seat; water-dye 08:00; waterborne-clear brush +1d; ask waterborne-clear +6h"),
        speaks("ash leg; alcohol-dye 08:00; ask shellac-2lb brush +9d", Answer.TEST, "Spray"),
        silent("ash leg; alcohol-dye 08:00; shellac-2lb brush +3h; ask shellac-2lb +9h"),
        speaks("ash leg; alcohol-dye 08:00; ask lacquer-brushed brush +9d", Answer.TEST, "cup"),
        silent("ash leg; alcohol-dye 08:00; ask lacquer-sanding-sealer spray +9d"),
        silent("ash leg; alcohol-dye 08:00; ask alkyd-varnish brush +9d"),
        silent("maple seat; water-dye 08:00; ask lacquer-brushed brush +2d"),
        speaks("walnut top; water-dye 08:00; ask latex-enamel brush +30d", Answer.TEST, "cup"),
        silent("oak top; water-dye 08:00; shellac-2lb +1d; ask waterborne-clear brush +1d"),
        silent("oak top; water-dye 08:00; ask waterborne-clear spray +2d"),
        lets("ash leg; wiping-stain 08:00; waterborne-clear +1d; ask waterborne-clear +6h"),
        speaks("oak top; shellac-waxy 08:00; ask waterborne-clear +7d", Answer.UNDERNEATH),
        speaks("oak top; hardwax-oil 08:00; wipe +5m; ask lacquer-sprayed spray +30d"),
        # A pair of which nothing is published is tried first.
        speaks(
            "oak top; conversion-varnish spray 08:00; ask waterborne-clear +40d",
            Answer.TEST,
            "nothing published",
        ),
        silent("oak top; shellac-2lb 08:00; ask shellac-waxy +7d"),
        silent("oak top; shellac-waxy 08:00; off bare +1d; ask waterborne-clear +7d"),
        silent("oak top; ask waterborne-clear 08:00"),
        # Wax is off after two washes, not after one, nor after what it was rubbed with dry.
        speaks(
            "oak top; tung-oil 08:00; wipe +10m; paste-wax +60d; solvent-wipe +90d; wipe; "
            "ask tung-oil +1h",
            Answer.UNDERNEATH,
            "Nothing sticks to wax",
        ),
        silent(
            "oak top; tung-oil 08:00; wipe +10m; paste-wax +60d; solvent-wipe +90d; solvent-wipe; "
            "ask tung-oil +1h"
        ),
        # A barrier that was broken off shields nothing for certain.
        silent(f"{GELLED}; shellac-2lb +2d; ask waterborne-clear +1d"),
        lets(f"{GELLED}; shellac-2lb stopped:half +2d; ask waterborne-clear +1d", "dries slowly"),
        speaks(f"{BARE_SPOT}; ask wiping-stain", Answer.UNDERNEATH),
        # A plain yes says how it is done, once, and nothing of a film that covers it.
        lets(
            "oak top; shellac-1lb 08:00; ask lacquer-brushed +1d", "first passes of lacquer light"
        ),
        silent(
            "oak top; shellac-2lb 08:00; vinyl-sealer +1d; ask lacquer-sprayed spray +2d",
        ),
        lets(f"{BARE_SPOT}; fault rubbed-through; ask wiping-stain", "on the spot alone"),
        # A magazine says overnight, common practice a week.
        lets(
            "oak top; oil-varnish-blend 08:00; wipe +10m; ask alkyd-varnish +9d",
            "Sources ask for 12 h to 7 d: the longest binds",
        ),
        # Overruled with a reason the row does not hold, and that is said instead.
        speaks(
            "oak top; says waterborne-clear overrule waxy-shellac-under-varnish because it held; "
            "shellac-waxy 08:00; ask waterborne-clear +7d",
            says="as you said: it held, act 1; published: ",
        ),
    ),
    "ways": (
        # A conditioner is stained over wet, or the next day; an hour later is neither.
        lets("pine top; washcoat 08:00; ask wiping-stain +1h", "neither way, the worst of all"),
        lets("pine top; washcoat 08:00; ask wiping-stain +8m", "within 10 min"),
        lets("pine top; washcoat 08:00; ask gel-stain +1d", "dry: after 6 h"),
        silent("pine top; washcoat 08:00; ask water-dye +1h"),
        silent("pine top; washcoat 08:00; shellac-2lb +1d; ask wiping-stain +1h"),
        lets("pine top; washcoat 08:00; shellac-2lb stopped:half +1d; ask wiping-stain +1h"),
        # What the person chose is chosen.
        silent(
            "pine top; says wiping-stain wait 8h over washcoat because dry; washcoat 08:00; "
            "ask wiping-stain +1h"
        ),
        silent(
            "pine top; says wiping-stain overrule washcoat-under-stain because board; "
            "washcoat 08:00; ask wiping-stain +1h"
        ),
    ),
    "which-kind": (
        lets("oak top; wiping-stain 08:00; wipe +5m; ask polyurethane-unknown +9d", "24 h: The"),
        lets("oak top; polyurethane-unknown 08:00; ask shellac-2lb +40d", "if it is oil poly"),
        lets("oak top; polyurethane-unknown 08:00; ask oil-polyurethane +40d", "itself"),
        # Brushed over a water dye it needs a barrier, sprayed it does not.
        lets("oak top; water-dye 08:00; ask polyurethane-unknown spray +2d", "once it is dry"),
        silent("oak top; polyurethane-unknown 08:00; ask polyurethane-unknown +40d"),
        silent("oak top; polyurethane-unknown 08:00; ask tung-oil +40d"),
        silent("oak top; oil-polyurethane 08:00; ask waterborne-clear +40d"),
        silent("oak top; polyurethane-unknown 08:00; off bare +1d; ask oil-polyurethane +1d"),
    ),
    "pair-on-wood": (
        speaks("oak top; ask paste-wax 08:00"),
        # What slides wants nothing better.
        silent("oak drawer/sides:slides; ask paste-wax 08:00"),
        speaks("oak door/edge:shuts; ask paste-wax 08:00"),
        silent("oak top; ask alkyd-varnish 08:00"),
        silent("oak top; shellac-2lb 08:00; ask paste-wax +30d"),
        speaks("oak top; shellac-2lb stopped:half 08:00; ask paste-wax +30d"),
    ),
    "last-chance": (
        lets("oak chair; milk-paint 08:00; ask tung-oil +1d", "last chance to put our milk-paint"),
        lets("oak top; water-dye 08:00; ask alkyd-varnish +1d", "look it all over first"),
        silent("oak chair; milk-paint 08:00; ask milk-paint +1d"),
        silent("oak top; gel-stain 08:00; ask alkyd-varnish +3d"),
        silent("oak top; shellac-2lb 08:00; ask alkyd-varnish +1d"),
        silent("oak chair; milk-paint 08:00; tung-oil +1d; ask alkyd-varnish +9d"),
    ),
    "old-finish": (
        speaks("old-wax oak top; ask alkyd-varnish"),
        speaks("oak old-varnish top; ask alkyd-varnish 08:00", Answer.TEST),
        silent("oak top; ask alkyd-varnish 08:00"),
        silent("oak old-varnish top; check holds 08:00; ask alkyd-varnish +1h"),
        silent("oak old-varnish top; off bare 08:00; ask alkyd-varnish +1h"),
    ),
}
