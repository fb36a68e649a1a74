"""Stories of the bare wood: its kind, its oil and moisture, iron and bleach in it."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

BLEACHED = "oak top; bleach-two-part 08:00; rinse +1d"

STORIES = {
    "wood": (
        speaks("teak top; ask alkyd-varnish 08:00", Answer.UNDERNEATH),
        speaks("teak top; solvent-wipe 08:00; ask alkyd-varnish", Answer.TEST),
        silent("oak top; ask alkyd-varnish 08:00"),
        silent("teak top; shellac-2lb 08:00; ask alkyd-varnish +2d"),
        speaks(
            "teak top; says alkyd-varnish overrule oily-wood-under-oil because it dried on scrap; "
            "ask alkyd-varnish 08:00",
            says="as you said: it dried on scrap, act 1; published: ",
        ),
    ),
    "oily-wood-below": (
        speaks("teak top; alkyd-varnish 08:00; ask alkyd-varnish +9d", Answer.TEST, "thumbnail"),
        speaks("rosewood top; tung-oil 08:00; wipe +10m; ask pack +40d", Answer.TEST),
        speaks("teak top; alkyd-varnish 08:00; check dry +3d; ask stack +9d", Answer.TEST),
        speaks("teak top; solvent-wipe 08:00; alkyd-varnish +2d; ask pack +40d", Answer.TEST),
        silent("teak top; solvent-wipe 08:00; alkyd-varnish; ask alkyd-varnish +9d"),
        silent("teak top; alkyd-varnish 08:00; check no-print +9d; ask pack +1h"),
        silent("teak top; shellac-2lb 08:00; alkyd-varnish +1d; ask pack +40d"),
        silent("teak old-varnish top; alkyd-varnish 08:00; ask pack +40d"),
        silent("oak top; alkyd-varnish 08:00; ask pack +40d"),
        silent(
            "teak top; says alkyd-varnish overrule oily-wood-under-oil because it dried on scrap; "
            "alkyd-varnish 08:00; ask pack +40d"
        ),
    ),
    "solvent-wipe": (
        speaks("teak top; ask shellac-2lb 08:00"),
        speaks("teak top; solvent-wipe 08:00; ask shellac-2lb +6h"),
        speaks("teak top; solvent-wipe 08:00; sand; ask shellac-2lb"),
        silent("teak top; solvent-wipe 08:00; ask shellac-2lb"),
        # What was broken off left wood open.
        speaks("teak top; solvent-wipe 08:00; shellac-2lb stopped:half; ask shellac-2lb +6h"),
        silent("teak top; solvent-wipe 08:00; shellac-2lb; ask shellac-2lb +6h"),
        silent("oak top; ask shellac-2lb 08:00"),
    ),
    "iron": (
        speaks("oak top; steel-wool 08:00; ask waterborne-clear +1h", Answer.UNDERNEATH),
        speaks("oak top; steel-wool 08:00; off bare +1h; ask waterborne-clear +1h"),
        # On any wood, and on a film, fibres that stay rust; a wood of which nobody told is any.
        speaks("maple top; steel-wool 08:00; ask waterborne-clear +1h", Answer.TEST, "rust"),
        speaks("top; waterborne-clear 08:00; steel-wool +1d; ask waterborne-clear", Answer.TEST),
        silent("maple top; steel-wool 08:00; ask oil-polyurethane +1h"),
        silent("maple top; scuff 08:00; ask waterborne-clear +1h"),
        silent("oak top; sand 08:00; ask waterborne-clear +1h"),
        silent("oak top; steel-wool 08:00; ask alkyd-varnish +1h"),
        silent("oak top; steel-wool 08:00; off bare sand-through +1h; ask waterborne-clear +1h"),
        silent("oak top; steel-wool 08:00; shellac-2lb +1h; ask waterborne-clear +1d"),
        # Noughts are the grade of a wool, whatever the work is called.
        speaks("oak top; scuff 0000 08:00; ask waterborne-clear +1h", says="dewaxed shellac"),
        silent("oak top; scuff P320 08:00; ask waterborne-clear +1h"),
    ),
    "iron-to-come": (
        speaks("oak top @steps steel-wool waterborne-clear; ask due", Answer.BLOCKED, "nylon pad"),
        speaks("oak top @steps scuff waterborne-clear; ask scuff 0000", Answer.BLOCKED),
        speaks("maple top @steps steel-wool conversion-varnish; ask due", Answer.BLOCKED),
        # Without steps the same comes again.
        speaks("walnut top; waterborne-clear 08:00; ask steel-wool +1d", Answer.BLOCKED),
        silent("oak top @steps steel-wool alkyd-varnish; ask due"),
        lets("maple top @steps steel-wool waterborne-clear; ask due", "rust"),
        lets("top @steps steel-wool water-dye; ask due", "leaves none"),
        silent("maple top @steps steel-wool oil-polyurethane; ask due"),
        silent("oak top @steps scuff waterborne-clear; ask due"),
        # Shellac closes the wood before anything with water comes.
        silent("oak top @steps steel-wool shellac-2lb waterborne-clear; ask due"),
        # The last coat is on: it is rubbed to its sheen.
        silent("oak top @steps waterborne-clear; waterborne-clear 08:00; ask steel-wool +30d"),
        silent(
            "oak top @steps steel-wool waterborne-clear; says waterborne-clear overrule"
            " steel-wool-under-water because it was tried; ask due"
        ),
    ),
    "no-steel-wool": (
        lets("oak top @steps scuff waterborne-clear; ask due", "synthetic pad"),
        lets("maple top; waterborne-clear 08:00; ask waterborne-clear +9d", "synthetic pad"),
        lets("oak top @steps denib tung-oil; ask due"),
        silent("maple top @steps scuff alkyd-varnish; ask due"),
        silent("oak top; alkyd-varnish 08:00; ask alkyd-varnish +9d"),
        silent("oak top; alkyd-varnish 08:00; ask scuff +9d"),
        silent("oak top @steps sand waterborne-clear; ask due"),
        silent("oak top @steps steel-wool waterborne-clear; ask due"),
    ),
    "bleached-skin": (
        lets(f"{BLEACHED}; sand P120 +2d; ask shellac-2lb", says="bleach again"),
        lets(f"{BLEACHED}; ask sand P100 +2d", says="P100"),
        # Nobody said which paper: it is told which.
        lets(f"{BLEACHED}; ask sand +2d", says="P180 or finer"),
        silent(f"{BLEACHED}; sand P220 +2d; ask shellac-2lb"),
        silent(f"{BLEACHED}; ask sand P240 +2d"),
        silent(f"{BLEACHED}; sand P120 +2d; ask bleach-two-part"),
        silent("oak top; sand P120 08:00; bleach-two-part; rinse +1d; ask shellac-2lb +2d"),
        silent(f"{BLEACHED}; sand P120 +2d; shellac-2lb; ask shellac-2lb +1d"),
    ),
    "dust-of-bleach": (
        speaks("oak top; bleach-oxalic 08:00; ask sand +1d", Answer.UNDERNEATH),
        silent("oak top; bleach-oxalic 08:00; rinse +1h; ask sand +1d"),
        speaks("cherry door; lye-stain 08:00; ask denib +30h", Answer.UNDERNEATH),
        speaks("ash leg; permanganate-stain 14:00; ask steel-wool +2d", Answer.UNDERNEATH),
        silent("cherry door; lye-stain 08:00; rinse +3h; ask denib +30h"),
        silent("oak leg; iron-vinegar 08:00; ask sand +3d"),
        silent("chestnut lid; ammonia-fume 08:00; ask sand +3d"),
        silent("oak top; water-dye 08:00; ask sand +1d"),
        silent("oak top; bleach-oxalic 08:00; ask rinse +1h"),
        silent("oak top; bleach-oxalic 08:00; off bare sand-through +4d; ask sand +1h"),
        speaks("oak top; bleach-oxalic 08:00; off bare strip +4d; ask sand +1h"),
        speaks("oak top; bleach-oxalic 08:00; alkyd-varnish +4d; off bare strip +4d; ask sand"),
        silent("oak top; bleach-oxalic 08:00; alkyd-varnish +4d; off alkyd-varnish; ask sand +4d"),
        silent("oak top; bleach-oxalic; rinse +1d; shellac-2lb +4d; off bare strip; ask sand +1h"),
    ),
    "met-in-the-wood": (
        speaks("oak top; note fumed with ammonia 08:00; ask bleach-chlorine +1h"),
        speaks("oak top; bleach-chlorine 08:00; ask bleach-oxalic +1h", Answer.UNDERNEATH),
        silent("oak top; bleach-chlorine 08:00; rinse +1h; ask bleach-oxalic +1h"),
        speaks("chestnut lid; ammonia-fume 08:00; ask bleach-chlorine +2d", Answer.UNDERNEATH),
        speaks("maple lid; iron-vinegar 08:00; ask bleach-chlorine +2d", Answer.UNDERNEATH),
        speaks("ash rail; bleach-chlorine 08:00; ask ammonia-fume +2d", Answer.UNDERNEATH),
        speaks("ash rail; bleach-chlorine 08:00; ask shellac-2lb +2d", Answer.UNDERNEATH),
        speaks("elm rail; bleach-chlorine 08:00; ask wipe with peroxide +2d", Answer.UNDERNEATH),
        silent("ash rail; bleach-chlorine 08:00; rinse +1h; ask ammonia-fume +3d"),
        silent("maple lid; tannin-wash 08:00; ask iron-vinegar +1d"),
        silent("oak top; ask bleach-oxalic 08:00"),
        # Another bleach over it, where they make no poison.
        speaks("ash leg; bleach-oxalic 08:00; ask bleach-two-part +1h"),
        silent("ash leg; bleach-oxalic 08:00; ask bleach-oxalic +1h"),
        # Also by a cloth or a rinse.
        speaks("ash leg; bleach-chlorine 08:00; ask rinse with vinegar +1h", Answer.UNDERNEATH),
        speaks("ash leg; bleach-chlorine 08:00; ask wipe with ammonia +1h", Answer.UNDERNEATH),
        speaks("ash leg; rinse with vinegar 08:00; ask wipe with laundry bleach +1h"),
        silent("ash leg; bleach-chlorine 08:00; ask rinse with water +1h"),
        silent("ash leg; bleach-chlorine 08:00; ask wipe +1h"),
        silent("ash leg; bleach-chlorine 08:00; rinse +1h; ask wipe with ammonia +1h"),
        silent("ash leg; bleach-oxalic 08:00; ask wipe with alcohol +1h"),
        silent("oak top; bleach-chlorine 08:00; off bare sand-through +1d; ask bleach-oxalic +1h"),
        speaks("oak top; bleach-chlorine; soap +2d; off bare strip +1d; ask bleach-oxalic +1h"),
        speaks("oak top; bleach-chlorine; latex-enamel +2d; off bare strip; ask bleach-oxalic +1h"),
    ),
    "bleach-shut-in": (
        speaks("oak top; bleach-oxalic 08:00; shellac-2lb +4d; ask alkyd-varnish +2d", Answer.TEST),
        speaks("maple top; bleach-two-part; lacquer-sprayed +3d; ask pack +40d", Answer.TEST),
        speaks("oak top; bleach-oxalic; shellac-2lb +4d; check tacky +1h; ask stack +9d"),
        speaks("oak top; bleach-oxalic; shellac-2lb; off bare strip; shellac-2lb; ask pack +9d"),
        silent("oak top; bleach-oxalic; shellac-2lb +4d; check holds +9d; ask alkyd-varnish +1h"),
        silent("oak top; bleach-oxalic 08:00; rinse +1d; alkyd-varnish +3d; ask pack +90d"),
        silent("oak top; bleach-oxalic 08:00; ask alkyd-varnish +4d"),
        silent("oak top; shellac-2lb 08:00; ask alkyd-varnish +4d"),
    ),
    "bleach-not-rinsed": (
        speaks("oak top; bleach-two-part 08:00; ask alkyd-varnish +4d", Answer.WAITS),
        speaks("oak top; bleach-chlorine 08:00; ask water-dye +4d", Answer.WAITS),
        speaks("oak top; bleach-oxalic; spar-varnish +4d; off bare strip +9d; ask shellac-2lb"),
        silent("oak top; bleach-two-part 08:00; rinse +8h; ask alkyd-varnish +4d"),
        speaks("walnut box; iron-vinegar 19:00; ask waterborne-clear +4d", Answer.WAITS),
        speaks("beech box; permanganate-stain 19:00; ask tung-oil +4d", Answer.WAITS),
        silent("walnut box; iron-vinegar 19:00; rinse +9h; ask waterborne-clear +4d"),
        silent("oak box; ammonia-fume 19:00; ask hardwax-oil +4d"),
        silent("maple box; tannin-wash 19:00; ask iron-vinegar +1d"),
        silent("maple box; iron-vinegar 19:00; ask bleach-oxalic +1d"),
        silent("oak top; bleach-two-part 08:00; ask bleach-two-part +4h"),
        silent("oak top; bleach-oxalic 08:00; off bare sand-through +4d; ask alkyd-varnish"),
        silent("oak top; bleach-oxalic 08:00; rinse +1d; alkyd-varnish +3d; ask alkyd-varnish +2d"),
        silent("oak top; bleach-oxalic 08:00; shellac-2lb +4d; ask alkyd-varnish +2d"),
    ),
}
