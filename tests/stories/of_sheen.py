"""Stories of what shows in the look alone: a can not stirred, two cans in one piece."""

from __future__ import annotations

from tests.stories.telling import lets, silent, speaks

SATIN = "oak top; sheen waterborne-clear satin"
POURED = f"{SATIN}; waterborne-clear unstirred 08:00"
OF_TIN = f"{SATIN}; can tin waterborne-clear opened:5d 07:00"
DUE = "oak top @steps waterborne-clear*2; sheen waterborne-clear satin"
PAIR = "oak door @steps waterborne-clear and oak rail @steps waterborne-clear"
TWO = (
    f"{PAIR}; sheen waterborne-clear satin; can tin waterborne-clear batch:A1 07:00; "
    "can new waterborne-clear batch:B7"
)
PLAIN = TWO.replace(" batch:A1", "").replace(" batch:B7", "")
BOTH = "rail: waterborne-clear from-tin 08:00; waterborne-clear from-new"

STORIES = {
    "not-stirred": (
        lets(f"{POURED}; ask rest +3d", says="flatting agent"),
        lets(f"{POURED}; ask hand-over +30d", says="nothing has to come off"),
        # What goes over it shuts it in, or shines in its stead.
        lets(f"{POURED}; ask paste-wax +30d"),
        silent(f"{POURED}; ask waterborne-clear +1d"),
        silent(f"{POURED}; waterborne-clear stirred +1d; ask rest +3d"),
        # Nobody said: that is asked as it goes on, and no doubt of the film.
        silent(f"{SATIN}; waterborne-clear 08:00; ask rest +3d"),
        # What is still to come makes the sheen.
        silent(f"{DUE}; waterborne-clear unstirred 08:00; ask rest +3d"),
        speaks(
            f"{DUE}; waterborne-clear stirred 08:00; waterborne-clear unstirred +1d; ask rest +3d"
        ),
        # In gloss nothing settles; pigment does, whatever it shines like.
        silent(
            "oak top; sheen waterborne-clear gloss; waterborne-clear unstirred 08:00; ask rest +3d"
        ),
        silent("oak top; waterborne-clear unstirred 08:00; ask rest +3d"),
        lets("pine top; latex-enamel unstirred 08:00; ask rest +9d", says="pigment"),
        lets("ash top; wiping-stain unstirred 08:00; wipe; ask alkyd-varnish +2d", says="paler"),
        silent("ash top; water-dye unstirred 08:00; ask alkyd-varnish +2d"),
        # The can tells it too, and a can that was stirred this evening needs no word of the coat.
        lets(f"{OF_TIN}; unstirred tin; waterborne-clear from-tin +1h; ask rest +3d", says="tin"),
        silent(f"{OF_TIN}; stirred tin; waterborne-clear from-tin +1h; ask rest +3d"),
        # A rubbed-out half lies open beside the rest.
        lets(f"{POURED}; waterborne-clear stirred stopped:half +1d; ask pack +30d"),
    ),
    "two-batches": (
        lets(f"{TWO}; {BOTH}; ask rest +3d", says="batch B7"),
        lets(f"{TWO}; {BOTH}; ask pack +30d", says="side by side"),
        lets(f"{TWO.replace('oak rail', 'oak rail*2')}; {BOTH}; ask rest +3d", says="rail:2"),
        lets(f"{TWO}; {BOTH}; ask rail: rest +3d", says="on door from new"),
        # Of cans without a number it is a question: they may be of one batch.
        lets(f"{PLAIN}; {BOTH}; ask rest +3d", says="on rail from tin"),
        silent(f"{PLAIN.replace('satin', 'gloss')}; {BOTH}; ask rest +3d"),
        silent(f"{TWO.replace('B7', 'A1')}; {BOTH}; ask rest +3d"),
        silent(f"{TWO}; {BOTH.replace('from-new', 'from-tin')}; ask rest +3d"),
        silent(f"{TWO}; {BOTH.replace('waterborne-clear from-new', 'shellac-2lb')}; ask rest +3d"),
        # A coat more is due, and may come from one can for all of it.
        silent(
            f"{TWO.replace('rail @steps waterborne-clear', 'rail @steps waterborne-clear*2')}; "
            f"{BOTH}; ask rest +3d"
        ),
    ),
}
