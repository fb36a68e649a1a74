"""Stories of what was done to a film: wiped, rubbed, scuffed, built up, waited for."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

SOFT_ONCE = "ash top; alkyd-varnish brush 08:00; check tacky +5d; off bare +1d"
TWO_MORE = "wiping-varnish +5h; wiping-varnish +5h"
THINNED = "mix pot lacquer-sprayed base+thinner"
ONE_MORE, ANOTHER = "ask lacquer-sprayed +1d", "ask lacquer-precatalysed +1h"
OVER = "maple top" + "; lacquer-sprayed spray +1d" * 10

STORIES = {
    "wiped-late": (
        # Each line beside the next differs in the time of the wipe, or in what settled it.
        speaks(
            "oak top; wiping-stain 08:00; wipe 10:30; ask waterborne-clear +3d",
            Answer.BLOCKED,
            "2.5 h after it went on, at most 15 min",
        ),
        # Under another film no solvent comes to it: it is left alone until it can be scratched.
        speaks(
            "oak top; wiping-stain 08:00; wipe 10:30; shellac-2lb +2d; ask shellac-2lb +1d",
            Answer.BLOCKED,
            "leave it alone until it can be tested, then scratch it",
        ),
        # Two were: what lies open is rubbed first.
        speaks(
            "oak top; wiping-stain 08:00; wipe 09:00; oil-varnish-blend +1d; wipe +9h; ask pack",
            Answer.BLOCKED,
            "9 h after it went on, at most 30 min",
        ),
        silent("oak top; wiping-stain 08:00; wipe 10:30; check resists +2d; ask stack"),
        silent("oak top; wiping-stain 08:00; wipe 08:10; ask waterborne-clear +7d"),
        silent("oak top; wiping-stain 08:00; ask waterborne-clear +7d"),
        silent("oak top; wiping-stain 08:00; wipe 08:10; wipe 10:30; ask waterborne-clear +7d"),
        speaks("oak top; wiping-stain 08:00; wipe 10:30; check tacky +1d; ask shellac-2lb +3d"),
        silent("oak top; wiping-stain 08:00; wipe 10:30; check dry +1d; ask shellac-2lb +3d"),
        silent("oak top; wiping-stain 08:00; wipe 10:30; solvent-wipe +30m; ask shellac-2lb +3d"),
        speaks("oak top; wiping-stain 08:00; check dry +1h; wipe +1h30; ask shellac-2lb +3d"),
        # It never hardens by waiting, and a film over it does not mend it.
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask pack +60d", Answer.BLOCKED),
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask stack +60d", Answer.BLOCKED),
        speaks("ash leg; boiled-linseed-oil 19:00; wipe +9h; ask rub-out +60d", Answer.BLOCKED),
        speaks("ash leg; tung-oil 19:00; wipe +2h; shellac-2lb +9d; ask pack +30d"),
        silent(
            "ash leg; tung-oil 19:00; wipe +2h; shellac-2lb +9d; check holds +3d; ask pack +30d"
        ),
        # A fresh coat of the same wets it again; taking it off is never barred.
        silent("ash leg; tung-oil 19:00; wipe +2h; tung-oil +9d; wipe +20m; ask tung-oil +9d"),
        speaks("ash leg; tung-oil 19:00; wipe +2h; tung-oil +9d; wipe +2h; ask tung-oil +9d"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; ask sand +9d"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; ask solvent-wipe +5m"),
        silent("ash leg; hardwax-oil 19:00; wipe +2h; off bare +1h; ask hardwax-oil +2d"),
        silent("ash leg; hardwax-oil 19:00; wipe +20m; ask hardwax-oil +2d"),
        # By a time that is only roughly known it may have been in time: it is asked.
        speaks(
            "oak top; wiping-stain about:1h 09:00; wipe +10m; ask waterborne-clear +7d",
            None,
            "it may not have been",
        ),
        # A glaze that set is too thick to hold; dry tells nothing of that, a scratch does.
        speaks(
            "maple top; shellac-2lb; glaze +1d; wipe +45m; ask lacquer-sprayed +30h",
            Answer.BLOCKED,
            "is too thick to hold",
        ),
        speaks(
            "maple top; shellac-2lb; glaze +1d; wipe +45m; check dry +1d; ask alkyd-varnish +9h"
        ),
        silent("maple top; shellac-2lb; glaze +1d; wipe +45m; check holds +2d; ask alkyd-varnish"),
        silent("maple top; shellac-2lb; glaze +1d; wipe +15m; ask lacquer-sprayed +30h"),
        # What has no surplus is not wiped off in time.
        silent("maple top; paste-wax 19:00; wipe +2h; ask pack +9d"),
    ),
    "thick-film": (
        speaks(
            "oak top; alkyd-varnish brush 250um 08:00; scuff +20d; ask alkyd-varnish",
            says="250 µm⟩ wet, ⟨102 µm⟩ is usual at most",
        ),
        silent("oak top; alkyd-varnish brush 90um 08:00; scuff +20d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish brush 08:00; scuff +20d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 250um 08:00; check powder +20d; scuff; ask alkyd-varnish"),
        speaks("oak top; alkyd-varnish 250um 08:00; check dry +20d; scuff; ask alkyd-varnish"),
        silent("oak top; lacquer-sprayed spray 120um 08:00; ask lacquer-sprayed +1d"),
        speaks("oak top; lacquer-sprayed spray 200um 08:00; ask lacquer-sprayed +1d"),
        # Oil that was flooded on and wiped off was never that thick.
        silent("ash leg; boiled-linseed-oil 250um 08:00; wipe +25m; ask boiled-linseed-oil +5d"),
        speaks("ash leg; boiled-linseed-oil 250um 08:00; ask boiled-linseed-oil +5d"),
    ),
    "coats-a-day": (
        speaks(f"pine top; wiping-varnish 08:00; {TWO_MORE}; ask wiping-varnish +5h"),
        silent(f"pine top; wiping-varnish 08:00; {TWO_MORE}; ask wiping-varnish +1d"),
        silent("pine top; wiping-varnish 08:00; wiping-varnish +5h; ask wiping-varnish +5h"),
        speaks("pine top; oil-enamel 08:00; ask oil-enamel +3h", says="coat 2"),
        # By the time that the film may take one the day is over.
        silent("pine top; spar-varnish 08:00; ask spar-varnish +6h"),
        silent("pine top; alkyd-varnish; check powder +20h; ask alkyd-varnish +1h"),
        silent("pine top; spar-varnish 08:00; ask spar-varnish +2d"),
        silent(f"pine top; shellac-2lb 08:00; {'shellac-2lb +3h; ' * 3}ask shellac-2lb +3h"),
        silent("pine top; spar-varnish 08:00; off bare +1h; ask spar-varnish +1h"),
    ),
    "too-much-film": (
        speaks(
            f"maple top; {'lacquer-sprayed spray +1d; ' * 9}ask lacquer-sprayed +1d",
            Answer.UNDERNEATH,
            "sand it back",
        ),
        silent(f"maple top; {'lacquer-sprayed spray +1d; ' * 5}ask lacquer-sprayed +1d"),
        # Measured thick it is over sooner, sanded back later.
        speaks(f"maple top; {'lacquer-sprayed 150um +1d; ' * 5}ask lacquer-sprayed +1d"),
        # Thinned by half it leaves half; and what seals below is film too.
        silent(f"maple top; {THINNED}; {'lacquer-sprayed 150um from-pot +1d; ' * 5}{ONE_MORE}"),
        silent(f"oak top; shellac-2lb 08:00; {'lacquer-precatalysed +1h; ' * 2}{ANOTHER}"),
        speaks(f"oak top; {'shellac-2lb +5h; ' * 3}{'lacquer-precatalysed +1h; ' * 4}{ANOTHER}"),
        silent(f"maple top; {'lacquer-sprayed +1d; sand +1d; ' * 9}ask lacquer-sprayed"),
        silent(f"maple top; {'lacquer-sprayed +1d; ' * 9}off bare +1d; ask lacquer-sprayed"),
        speaks(f"oak top; {'lacquer-precatalysed +1h; ' * 5}ask lacquer-precatalysed +1h"),
        silent(f"oak top; {'lacquer-precatalysed +1h; ' * 2}ask lacquer-precatalysed +1h"),
        speaks(f"oak door; {'lacquer-sanding-sealer +1h; ' * 2}ask lacquer-sanding-sealer +1h"),
        silent("oak door; lacquer-sanding-sealer 08:00; ask lacquer-sanding-sealer +1h"),
        silent(f"oak door; {'shellac-2lb +5h; ' * 5}ask shellac-2lb +5h"),
        silent(f"teak rail; {'spar-varnish +3d; scuff +3d; ' * 7}ask spar-varnish"),
        speaks(f"teak rail; {'spar-varnish +3d; scuff +3d; ' * 10}ask spar-varnish"),
        silent(f"walnut box; {'french-polish wipe +1d; ' * 13}ask french-polish +1d"),
        silent(f"walnut box; {'tung-oil +7d; wipe +20m; ' * 9}ask tung-oil +7d"),
    ),
    "over-its-limit": (
        speaks(f"{OVER}; ask stack +30d", Answer.TEST, "stays soft inside"),
        speaks(f"{OVER}; ask use +60d", Answer.TEST),
        speaks(f"{OVER}; ask paste-wax +60d", Answer.TEST),
        # Hard through it is laid on; that it may crack is told where it leaves.
        silent(f"{OVER}; check no-print +30d; ask stack"),
        lets(f"{OVER}; check no-print +30d; ask pack"),
        lets(f"{OVER}; check no-print +30d; ask hand-over", "before it leaves"),
        silent(f"{OVER}; {'sand +1d; ' * 9}ask stack +30d"),
        silent(f"{OVER}; off bare; ask pack +30d"),
        silent(f"maple top; {'lacquer-sprayed spray +1d; ' * 6}ask stack +30d"),
        silent(f"{OVER}; ask clamp +30d"),
        # The coat of the same that is asked has that said of itself.
        silent(f"{OVER}; ask lacquer-sprayed +1d"),
        # A class that bears any film is never over it.
        silent(f"oak top; {'oil-polyurethane 200um +2d; ' * 7}ask pack +90d"),
        speaks(f"birch door; {'conversion-varnish 127um +1d; ' * 4}ask pack +30d", Answer.TEST),
    ),
    "change-method": (
        speaks(f"{SOFT_ONCE}; alkyd-varnish brush +2d; check tacky +5d; ask rest", Answer.STALLED),
        speaks(
            f"{SOFT_ONCE}; alkyd-varnish brush +2d; check tacky +5d; ask alkyd-varnish",
            Answer.STALLED,
            "by the same method: the same product, brush, at ⟨23 °C⟩",
        ),
        # Within its time nothing is said yet; another product, hand or air is another method.
        silent(f"{SOFT_ONCE}; alkyd-varnish brush +2d; check tacky +6h; ask rest"),
        silent(f"{SOFT_ONCE}; alkyd-varnish brush +2d; check dry +5d; ask rest"),
        silent(f"{SOFT_ONCE}; oil-polyurethane brush +2d; check tacky +5d; ask rest"),
        silent(f"{SOFT_ONCE}; alkyd-varnish spray +2d; check tacky +5d; ask rest"),
        silent(f"{SOFT_ONCE}; air 28C 50%; alkyd-varnish brush +2d; check tacky +5d; ask rest"),
        silent("ash top; alkyd-varnish brush 08:00; check tacky +5d; ask rest"),
        # Covered it counts as well.
        speaks(
            "ash top; tung-oil 08:00; wipe +20m; check tacky +14d; tung-oil +1d; wipe +20m; "
            "check tacky +14d; ask tung-oil"
        ),
        # A third time it is tried elsewhere first; what failed once may be tried again.
        speaks(
            f"{SOFT_ONCE}; alkyd-varnish brush +2d; check tacky +5d; off bare +1d; "
            "ask alkyd-varnish +1d",
            Answer.TEST,
            "a fresh can, on a scrap of the same wood",
        ),
        silent(f"{SOFT_ONCE}; ask alkyd-varnish +1d"),
        silent(
            f"{SOFT_ONCE}; alkyd-varnish brush +2d; check tacky +5d; off bare +1d; "
            "ask shellac-2lb +1d"
        ),
    ),
    "too-thick-at-once": (
        speaks(
            "oak top; ask epoxy-pour 12000um",
            Answer.UNDERNEATH,
            "in 4 coats, each in the window of the one before",
        ),
        speaks(
            "oak top; says epoxy-pour thickest 10000um; ask epoxy-pour 12000um",
            Answer.UNDERNEATH,
            "in 2 coats",
        ),
        # What the can bears decides, either way, and of any finish.
        silent("oak top; says epoxy-pour thickest 25000um; ask epoxy-pour 12000um"),
        speaks("oak top; says epoxy-pour thickest 4000um; ask epoxy-pour 5000um"),
        speaks("oak top; says latex-enamel thickest 90um; ask latex-enamel 120um", None, "soft"),
        # A pour that is on too thick is looked at before it is covered, until it sands all through.
        speaks(
            "oak top; epoxy-pour 12000um 08:00; ask epoxy-pour +14h", Answer.TEST, "sand a spot"
        ),
        speaks("oak top; epoxy-pour 12000um 08:00; check dry +1d; ask epoxy-pour", Answer.TEST),
        silent("oak top; epoxy-pour 12000um 08:00; check powder +3d; ask alkyd-varnish +9d"),
        silent("oak top; epoxy-pour 6000um 08:00; ask epoxy-pour 6000um +14h"),
        silent("oak top; epoxy-pour 08:00; ask epoxy-pour +14h"),
        silent("oak top; ask lacquer-sprayed spray 400um"),
    ),
}
