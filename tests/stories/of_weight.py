"""Stories of a piece on the scale: it loses, stands still, gains.

That wood which still loses weight is not dry, and that weights alike for weeks are those of wood at
rest in its air, is common practice; so are the one per cent and the two weeks.
"""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

LOSES = "maple bowl; weighs 700g 08:00; weighs 680g +7d; weighs 665g +7d; weighs 655g +7d"
STANDS = "maple bowl; weighs 642g 08:00; weighs 640g +7d; weighs 641g +7d; weighs 644g +7d"
# A thick blank, weighed at uneven times: never a per cent a week, and lower every time.
CREEPS = "oak blank; weighs 5200g 08:00; weighs 5185g +5d; weighs 5176g +4d; weighs 5160g +6d"

STORIES = {
    "weight-falls": (
        speaks(f"{LOSES}; ask shape +1h", Answer.WAITS, "6.4 % in all"),
        speaks(f"{LOSES}; ask tung-oil +1h", Answer.WAITS),
        speaks(f"{LOSES}; ask glue-up +1h", Answer.WAITS),
        speaks(f"{LOSES}; ask pack +1h", Answer.TEST),
        # In April it was wet: what it is in autumn only the scale tells.
        speaks(f"{LOSES}; ask shape +200d", Answer.TEST, "weighed 200 d ago"),
        speaks(f"{CREEPS}; ask spar-varnish +1h", Answer.WAITS),
        speaks("ash board; weighs 2000g 08:00; weighs 1970g +2d; ask shellac-2lb", Answer.WAITS),
        # It fell, and has stood still for a week: not long enough.
        speaks(f"{LOSES}; weighs 654g +7d; weighs 655g +4d; ask tung-oil", Answer.WAITS),
        # Turned all the same: what it weighed before still tells.
        speaks(f"{LOSES}; shape +1h; weighs 400g; ask tung-oil +1h", Answer.WAITS),
        # Its ends are sealed.
        speaks("walnut blank; paste-wax 08:00; weighs 900g; weighs 850g +9d; ask shape"),
        silent(f"{LOSES}; weighs 654g +7d; weighs 655g +9d; ask tung-oil"),
        silent(f"{STANDS}; ask shape +1h"),
        silent(f"{LOSES}; ask scuff +1h"),
        silent("maple bowl; weighs 700g 08:00; ask shape +40d"),
        silent("maple bowl; ask shape 08:00"),
        # Lighter by what was turned off, not by water.
        silent(f"{STANDS}; shape +1h; weighs 400g; ask tung-oil +1h"),
        silent(f"{STANDS}; shape +1h; weighs 400g; weighs 399g +3d; ask tung-oil +1h"),
        # An hour on the same scale, a piece each.
        silent("ash board and ash rail; weighs 900g 08:00; rail: weighs 700g +1h; ask shellac-2lb"),
    ),
    "weight-told": (
        lets(f"{STANDS}; ask shape +1h", "weight stable: ⟨640 gw⟩ to ⟨644 gw⟩ over 3 weeks"),
        lets(f"{STANDS}; ask tung-oil +1h", "it follows the room's air"),
        # Damp weather: a gain is no alarm, however far.
        lets("maple bowl; weighs 642g 08:00; weighs 650g +7d; ask tung-oil", "takes up damp"),
        lets("oak blank; weighs 5200g 08:00; weighs 5190g +20d; ask shellac-2lb", "over 20 days"),
        lets("maple bowl; weighs 642g 08:00; ask shape +1h", "weigh it again"),
        lets("maple bowl; weighs 642g 08:00; weighs 641g +3d; ask shape", "over 3 days"),
        # Autumn: the air dries, and a piece at rest goes with it by less than half a per cent.
        lets(
            "ash bowl; weighs 644g; weighs 643g +7d; weighs 642g +7d; weighs 641g +7d; ask shape",
            "weight stable",
        ),
        silent(f"{LOSES}; ask shape +1h"),
        silent(f"{STANDS}; tung-oil +1h; wipe +10m; ask tung-oil +3d"),
        silent(f"{STANDS}; ask mask +1h"),
        silent("maple bowl; ask shape 08:00"),
    ),
}
