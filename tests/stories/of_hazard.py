"""Stories of the rules about whoever does the work: lead, isocyanate, solvents, cartridges."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

STORIES = {
    "lead": (
        speaks("oak old-paint top; ask sand 08:00", Answer.TEST),
        speaks("oak old-unknown top; ask scuff 08:00", Answer.TEST, "dry or power"),
        speaks("oak old-varnish top; ask sand 08:00", Answer.TEST),
        speaks("pine old-paint door; ask scrape 08:00", Answer.TEST),
        speaks("pine old-paint door; ask strip with a torch 08:00", Answer.TEST),
        speaks("oak old-paint top; check lead 08:00; ask sand +1h", Answer.BLOCKED, "certified"),
        speaks("oak old-paint top; check lead 08:00; check no-lead; ask sand +1h", Answer.BLOCKED),
        lets("oak old-paint top; ask sand with wet paper 08:00", "may hold lead"),
        silent("oak top; ask sand 08:00"),
        silent("oak old-paint top; check no-lead 08:00; ask sand +1h"),
        silent("oak old-paint top; off bare 08:00; ask sand +1h"),
        silent("oak old-paint top; ask wipe 08:00"),
        silent("pine old-paint door; ask strip 08:00"),
        silent("oak old-paint top; latex-enamel 08:00; ask scuff +3d"),
    ),
    "isocyanate-sprayed": (
        speaks("oak top; ask waterborne-two-part spray 08:00", Answer.BLOCKED, "supplied air"),
        speaks(
            "oak top; respirator half organic-vapour 08:00; ask waterborne-two-part spray +1h",
            Answer.BLOCKED,
        ),
        speaks(
            "oak top; respirator hood supplied-air 08:00; gone hood +1d;"
            " ask waterborne-two-part spray +1h",
            Answer.BLOCKED,
        ),
        lets(
            "oak top; respirator hood supplied-air 08:00; ask waterborne-two-part spray +1h",
            "nobody else in the room",
        ),
        speaks(
            "ash top; says waterborne-clear holds isocyanate; ask waterborne-clear spray 08:00",
            Answer.BLOCKED,
        ),
        silent(
            "ash top; says waterborne-two-part free-of isocyanate;"
            " ask waterborne-two-part spray 08:00"
        ),
        silent("oak top; ask waterborne-two-part brush 08:00"),
        silent("oak top; ask waterborne-clear spray 08:00"),
        silent("oak top; ask lacquer-sprayed spray 08:00"),
    ),
    "chromate-dust": (
        speaks("oak top; dichromate-stain 08:00; rinse +1d; ask sand +3d", Answer.BLOCKED, "seal"),
        speaks("cherry door; dichromate-stain 08:00; ask scuff +3d", Answer.BLOCKED),
        speaks(
            "oak top; dichromate-stain 08:00; rinse +1d; shellac-2lb +3d; ask scrape +9d",
            Answer.BLOCKED,
        ),
        silent("oak top; dichromate-stain 08:00; rinse +1d; shellac-2lb +3d; ask scuff +9d"),
        silent("oak top; permanganate-stain 08:00; rinse +1d; ask sand +3d"),
        silent("oak top; dichromate-stain 08:00; rinse +1d; ask wipe +3d"),
        silent("oak top; ask sand 08:00"),
    ),
    "isocyanate-heated": (
        speaks(
            "ash top; waterborne-two-part 08:00; ask strip with a heat gun +90d", Answer.BLOCKED
        ),
        speaks("ash top; waterborne-two-part 08:00; ask work with a heat lamp +1d", Answer.BLOCKED),
        speaks("oak lid; air 36C 40%; ask waterborne-two-part brush +3d", Answer.BLOCKED, "cool"),
        speaks(
            "pine lid; mix pot alkyd-varnish base+hardener 08:00; alkyd-varnish from-pot;"
            " ask strip with hot air +40d",
            Answer.BLOCKED,
        ),
        lets(
            "ash top; respirator hood supplied-air 08:00; waterborne-two-part 09:00;"
            " ask strip with a heat gun +90d"
        ),
        silent("ash top; waterborne-two-part 08:00; ask strip with no heat gun +90d"),
        silent("ash top; waterborne-clear 08:00; ask strip with a heat gun +90d"),
        silent("ash top; waterborne-two-part 08:00; ask work with a lamp from the side +2d"),
        speaks(
            "oak top; waterborne-two-part 08:00; ask strip with a heat gun +200d",
            Answer.BLOCKED,
            "no torch and no heat gun",
        ),
        silent("elm top; waterborne-clear 08:00; ask strip with a heat gun +1d"),
        silent("birch top; waterborne-two-part; ask work with flame birch in view +2d"),
        silent("oak lid; air 29C 40%; ask waterborne-two-part brush +3d"),
        silent("oak lid; air 36C 40%; ask alkyd-varnish brush +3d"),
        silent(
            "ash top; says waterborne-two-part free-of isocyanate; waterborne-two-part 08:00;"
            " ask strip with a heat gun +90d"
        ),
    ),
    "by-your-sheet": (
        lets(
            "pine door; says waterborne-two-part free-of isocyanate;"
            " ask waterborne-two-part spray 08:00",
            "by your sheet no isocyanate",
        ),
        lets(
            "oak top; says boiled-linseed-oil free-of self-heating; ask boiled-linseed-oil 08:00",
            "no self-heating",
        ),
        silent("pine door; ask waterborne-two-part spray 08:00"),
        silent("oak top; says tung-oil free-of isocyanate; ask tung-oil 08:00"),
        silent("oak top; says waterborne-clear holds isocyanate; ask waterborne-clear 08:00"),
        silent(
            "oak top; says alkyd-varnish free-of flammable; says alkyd-varnish holds flammable;"
            " ask alkyd-varnish 08:00"
        ),
    ),
    "isocyanate-dust": (
        speaks("oak top; waterborne-two-part 08:00; ask sand +1d", Answer.BLOCKED, "wet paper"),
        lets("oak top; waterborne-two-part 08:00; ask scuff +1d", "isocyanate"),
        speaks(
            "ash top; says waterborne-clear holds isocyanate; waterborne-clear 08:00; ask sand +1d",
            Answer.BLOCKED,
        ),
        silent(
            "ash top; says waterborne-two-part free-of isocyanate; waterborne-two-part 08:00;"
            " ask sand +1d"
        ),
        speaks("elm top; waterborne-two-part 08:00; ask sand-through +1d", Answer.BLOCKED),
        lets("elm top; waterborne-two-part 08:00; ask scrape +1d", "isocyanate"),
        silent("elm top; waterborne-two-part 08:00; ask sand-through +200d"),
        silent("elm top; waterborne-two-part 08:00; ask strip +1d"),
        speaks(
            "elm shelf; mix pot alkyd-varnish base+hardener 20:00; alkyd-varnish from-pot;"
            " ask sand +1d",
            Answer.BLOCKED,
        ),
        silent(
            "elm shelf; mix pot alkyd-varnish base+spirits 20:00; alkyd-varnish from-pot;"
            " ask sand +1d"
        ),
        silent("oak top; waterborne-two-part 08:00; ask sand +60d"),
        silent("oak top; waterborne-clear 08:00; ask sand +1d"),
        silent("oak top; waterborne-two-part 08:00; off bare +1d; ask sand +1h"),
        lets(
            "oak top; respirator hood supplied-air 08:00; waterborne-two-part 09:00; ask sand +1d",
        ),
    ),
    "chlorinated-indoors": (
        speaks("oak top; ask strip with dichloromethane 08:00", Answer.BLOCKED, "never alone"),
        speaks("oak top; ask wipe with trichloroethylene 08:00", Answer.BLOCKED),
        lets(
            "oak top; respirator hood supplied-air 08:00; ask strip with dichloromethane +1h",
            "killed people",
        ),
        lets("oak top; place kind:outdoors; ask strip with dichloromethane +1h", "never alone"),
        silent("oak top; ask strip with alcohol 08:00"),
        silent("oak top; ask strip with no dichloromethane 08:00"),
        silent("oak top; ask alkyd-varnish 08:00"),
    ),
    "cartridge": (
        lets(
            "oak top; respirator half organic-vapour 08:00; ask alkyd-varnish +365d",
            "half: open for 365 d",
        ),
        lets("oak top; respirator half organic-vapour 08:00; ask lacquer-sprayed +3d", "3 d"),
        lets(
            "oak top; respirator half organic-vapour 08:00; worn half 2h +1d;"
            " ask lacquer-brushed +3d",
            "worn 2 h",
        ),
        lets(
            "oak top; respirator half organic-vapour 08:00; ask shellac-2lb +1h",
            "none holds methanol",
        ),
        lets(
            "oak top; respirator half organic-vapour 08:00; hung half open +1h;"
            " ask alkyd-varnish +2d",
            "hung in the open",
        ),
        silent("oak top; ask alkyd-varnish 08:00"),
        silent(
            "oak top; respirator half organic-vapour 08:00; hung half bag +1h;"
            " ask alkyd-varnish +20h"
        ),
        silent("oak top; respirator half organic-vapour 08:00; ask alkyd-varnish +2h"),
        silent("oak top; respirator half organic-vapour 08:00; ask tung-oil +365d"),
        silent("oak top; respirator half particles 08:00; ask alkyd-varnish +365d"),
        silent(
            "oak top; respirator half organic-vapour 08:00; gone half +1d; ask alkyd-varnish +365d"
        ),
    ),
}
