"""Stories of what a coat holds by: a scuffed film below it, how it was scuffed, how long ago."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

LATE = "oak top; waterborne-clear 08:00; waterborne-clear unscuffed +3d"
SPOT = (
    "oak top; wiping-stain 08:00; wipe +8m; waterborne-clear +9d; fault rubbed-through +3d; "
    "wiping-stain"
)
STORIES = {
    "unscuffed-below": (
        speaks(
            f"{LATE}; ask waterborne-clear +4h",
            Answer.TEST,
            "3 d after it, its window is 8 h, unscuffed",
        ),
        speaks("oak top; waterborne-clear 08:00; waterborne-clear +3d; ask pack +9d", Answer.TEST),
        speaks(f"{LATE}; check flakes +9d; ask use +1d"),
        speaks(f"{LATE}; check dry +9d; ask stack +1d"),
        # Either way of saying that it was scuffed; inside the window; tested since.
        silent("oak top; waterborne-clear 08:00; waterborne-clear scuffed +3d; ask pack +9d"),
        silent("oak top; waterborne-clear 08:00; scuff +3d; waterborne-clear; ask pack +9d"),
        silent("birch top; waterborne-clear 08:00; steel-wool +3d; waterborne-clear; ask pack +9d"),
        speaks("birch top; alkyd-varnish; steel-wool +3h; alkyd-varnish +3d; ask pack +60d"),
        silent("oak top; waterborne-clear 08:00; waterborne-clear +5h; ask pack +9d"),
        silent(f"{LATE}; check holds +9d; ask pack +1d"),
        silent(f"{LATE}; waterborne-clear scuffed +9d; check holds +9d; ask pack +1d"),
        # A test of what lay below says nothing of what came over it.
        speaks(
            "oak top; waterborne-clear 08:00; check holds +3d; waterborne-clear; ask pack +9d",
            Answer.TEST,
        ),
        # Scuffed before it sands it got no grip.
        speaks(
            "oak top; alkyd-varnish 08:00; scuff +3h; alkyd-varnish +3d; ask pack +60d",
            Answer.TEST,
            "too young",
        ),
        # Varnish wants it every time, also for another finish over it.
        speaks("oak top; alkyd-varnish 08:00; alkyd-varnish +2d; ask rub-out +60d", Answer.TEST),
        speaks("oak top; alkyd-varnish 08:00; waterborne-clear +40d; ask use +60d", Answer.TEST),
        speaks("oak top; spar-varnish 08:00; denib +3d; spar-varnish; ask pack +60d", Answer.TEST),
        # What melts in holds by itself; wiped oil soaks in; wax lies on any film.
        silent("oak top; lacquer-sprayed 08:00; lacquer-sprayed +90d; ask pack +60d"),
        silent("oak top; shellac-2lb 08:00; shellac-2lb +90d; ask pack +60d"),
        silent(
            "oak top; boiled-linseed-oil 08:00; wipe +20m; boiled-linseed-oil +9d; wipe +20m; "
            "ask pack +90d"
        ),
        silent("oak top; alkyd-varnish 08:00; paste-wax +60d; ask pack +9d"),
        # It may be turned, scuffed and taken off; gone with the coat that was taken off.
        silent(f"{LATE}; ask turn +9d"),
        silent(f"{LATE}; ask scuff +9d"),
        silent(f"{LATE}; ask take-off +9d"),
        silent(f"{LATE}; off bare +9d; waterborne-clear +1d; ask pack +30d"),
        # Colour for a bare spot lies on no film.
        silent(f"{SPOT}; ask pack +9d"),
        silent(f"{SPOT}; scuff +1d; waterborne-clear +1h; ask pack +9d"),
        speaks(f"{SPOT}; waterborne-clear +1d; ask pack +9d", Answer.TEST),
    ),
    "scuffed-long-ago": (
        speaks("oak top; oil-polyurethane 08:00; scuff +2d; ask oil-polyurethane +9d"),
        speaks("oak top; oil-polyurethane 08:00; scuff +2d; ask oil-polyurethane +2d"),
        silent("oak top; oil-polyurethane 08:00; scuff +2d; ask oil-polyurethane +3h"),
        silent("oak top; oil-polyurethane 08:00; scuff +2d; wipe +9d; ask oil-polyurethane +1h"),
        silent("oak top; oil-polyurethane 08:00; scuff +2d; scuff +9d; ask oil-polyurethane"),
        silent("oak top; oil-polyurethane 08:00; ask oil-polyurethane +9d"),
        silent("oak top; oil-polyurethane 08:00; scuff +40d; ask paste-wax +9d"),
        speaks("ash rail; waterborne-clear 08:00; sand +2d; ask waterborne-clear +14d"),
    ),
    "scuff-grit": (
        speaks(
            "oak top; alkyd-varnish; scuff P80 +3d; ask alkyd-varnish +1h", None, "P150 to P400"
        ),
        speaks("oak top; alkyd-varnish; ask scuff P80 +3d", None, "cuts through"),
        speaks("oak top; waterborne-clear; scuff P100 +3d; ask scuff +1h", None, "from P180 up"),
        speaks("oak top; alkyd-varnish; scuff P1000 +3d; ask alkyd-varnish +1h", None, "hold by"),
        speaks("oak top; waterborne-clear; scuff 800 +3d; ask shellac-2lb +1h", None, "hold by"),
        silent("oak top; alkyd-varnish; scuff P320 +3d; ask alkyd-varnish +1h"),
        silent("oak top; alkyd-varnish; scuff P180 +3d; ask alkyd-varnish +1h"),
        silent("oak top; waterborne-clear; ask scuff P220 +3d"),
        silent("ash rail; alkyd-varnish; steel-wool 0000 +3d; ask alkyd-varnish +1h"),
        # Finer the second time; a pad has no grade; in its window it holds by itself.
        silent("oak top; alkyd-varnish; scuff P80 +3d; scuff P220; ask alkyd-varnish +1h"),
        silent("oak top; alkyd-varnish; scuff P80 +3d; ask scuff P220 +1h"),
        silent("oak top; alkyd-varnish; scuff grey-pad +3d; ask alkyd-varnish +1h"),
        silent("oak top; waterborne-clear; scuff P800 +6h; ask waterborne-clear +1h"),
        speaks(
            "oak top; says alkyd-varnish window 0-1h, 48h- because the can says so; alkyd-varnish; "
            "scuff P1000 +20h; ask alkyd-varnish +1h"
        ),
        # What melts in needs no tooth, wax none either; bare wood has its own papers.
        silent("oak top; shellac-2lb; scuff P1000 +1d; ask shellac-2lb +1h"),
        silent("oak top; alkyd-varnish; scuff P1000 +60d; ask paste-wax +1h"),
        silent("oak top; sand P80; ask alkyd-varnish +1h"),
    ),
    "unwashed": (
        speaks(
            "oak top; epoxy-seal 08:00; ask alkyd-varnish +9d",
            Answer.WAITS,
            "amine film: an oil over it",
        ),
        # Cold or damp air as it set leaves the more; what was read is said.
        speaks(
            "oak top; air 12C 90%; epoxy-seal 08:00; ask glaze +9d", Answer.WAITS, "12 °C⟩, 90 % RH"
        ),
        speaks("oak top; one-air 21C 85%; epoxy-pour 08:00; ask shellac-2lb +9d", None, "85 % RH"),
        # Sanded alone it is ground in; a wipe with solvent smears it.
        speaks("oak top; epoxy-seal 08:00; sand +9d; ask alkyd-varnish +1h", Answer.WAITS),
        speaks("oak top; epoxy-seal; solvent-wipe +9d; sand; ask alkyd-varnish", None, "smears it"),
        lets("oak top; epoxy-filler 08:00; ask sand +2d", "wash it first"),
        lets("oak top; epoxy-seal 08:00; ask scuff +2d"),
        # More of it past its window.
        speaks("oak top; epoxy-seal 08:00; ask epoxy-seal +3d", Answer.WAITS),
        speaks("oak top; epoxy-seal 08:00; ask epoxy-pour +3d"),
        # In the holes alone, also beneath what only fills holes.
        speaks("oak top; epoxy-filler 08:00; ask hardwax-oil +9d", Answer.WAITS),
        speaks("oak top; epoxy-seal 08:00; putty-water +9d; ask alkyd-varnish +1h", Answer.WAITS),
        # Washed; inside its window more of it bonds; what leaves nothing asks nothing.
        silent("oak top; epoxy-seal 08:00; rinse +9d; sand; ask alkyd-varnish +1h"),
        silent("oak top; epoxy-filler 08:00; rinse +2d; ask sand +1h"),
        silent("oak top; epoxy-pour 08:00; ask epoxy-pour +14h"),
        silent("oak top; epoxy-seal 08:00; ask epoxy-pour +12h"),
        silent("oak top; conversion-varnish 08:00; ask conversion-varnish +2h"),
        # The person knows of a hardener that leaves none.
        silent(
            "oak top; says epoxy-seal overrule amine-film because WORDS; epoxy-seal 08:00; "
            "ask alkyd-varnish +9d"
        ),
        silent("oak top; epoxy-seal 08:00; off bare +9d; ask alkyd-varnish +1h"),
        silent("oak top; epoxy-seal; rinse +9d; scuff; alkyd-varnish; ask alkyd-varnish +3d"),
    ),
    "unwashed-below": (
        speaks(
            "oak top; air 8C 90%; epoxy-seal 08:00; glaze +2d; wipe +15m; ask alkyd-varnish +3d",
            Answer.TEST,
            "hidden corner overnight",
        ),
        speaks("oak top; epoxy-seal 08:00; alkyd-varnish +9d; ask alkyd-varnish +3d", Answer.TEST),
        speaks("oak top; epoxy-pour 08:00; waterborne-clear +9d; ask pack +9d", Answer.TEST),
        speaks("oak top; epoxy-seal; oil-primer +9d; check flakes +3d; ask latex-enamel +1h"),
        # Washed in time; it holds; more of the same that bonded to it; gone.
        silent("oak top; epoxy-seal; rinse +9d; sand; alkyd-varnish; ask alkyd-varnish +3d"),
        silent("oak top; epoxy-seal; alkyd-varnish +9d; check holds +9d; ask alkyd-varnish"),
        silent("oak top; epoxy-pour; epoxy-pour +14h; epoxy-pour +14h; ask pack +12d"),
        silent(
            "oak top; says epoxy-seal overrule amine-film because WORDS; epoxy-seal 08:00; "
            "alkyd-varnish +9d; ask alkyd-varnish +9d"
        ),
        silent("oak top; epoxy-seal; alkyd-varnish +9d; off bare; ask alkyd-varnish +1h"),
        silent("oak top; epoxy-seal 08:00; alkyd-varnish +9d; ask wipe +1d"),
    ),
}
