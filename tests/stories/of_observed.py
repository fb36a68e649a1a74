"""Stories of what a check or an eye found."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

RUBBED_THROUGH = (
    "oak top; wiping-stain 08:00; wipe +10m; oil-polyurethane +5d; sand +3d; fault rubbed-through"
)
SPOT = "oak top; oil-polyurethane 08:00; fault rubbed-through +2d"
CUPPED = (
    "ash panel/front+back; front: alkyd-varnish 08:00; back: alkyd-varnish; "
    "front: alkyd-varnish +5d; fault cupped +5d"
)

STORIES = {
    "check-failed": (
        speaks("oak top; alkyd-varnish 08:00; check tacky +2d; ask sand", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; check prints +9d; ask pack", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check tacky +2d; check dry +3h; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check tacky +2d; off bare; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check prints +9d; ask sand"),
        # A rub with its own solvent sees whether it has cured, where it ever does.
        speaks("oak top; alkyd-varnish 08:00; check softens +30d; ask rub-out", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check softens +2d; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check softens +20d; check resists +9d; ask rub-out"),
        silent("oak top; shellac-2lb 08:00; check softens +30d; ask rub-out"),
        silent("oak top; alkyd-varnish 08:00; check tacky +2d; check resists +3d; ask sand"),
        # These say nothing of the film.
        silent("oak top; alkyd-varnish 08:00; check cupped +30d; ask sand"),
        silent("oak top; alkyd-varnish 08:00; check sample-soft +30d; ask sand"),
        # What failed at a place binds all of the face, and passes there or all over.
        speaks(
            "oak top; alkyd-varnish 08:00; check tacky @left-edge +2d; ask sand",
            Answer.BLOCKED,
            says="(left-edge)",
        ),
        speaks(
            "oak top; alkyd-varnish 08:00; check tacky @left-edge +2d; check dry @middle +3h;"
            " ask sand",
            Answer.BLOCKED,
        ),
        silent(
            "oak top; alkyd-varnish 08:00; check tacky @left-edge +2d; check dry @The-left-edge"
            " +3h; ask sand"
        ),
        silent("oak top; alkyd-varnish 08:00; check tacky @left-edge +2d; check dry +3h; ask sand"),
        # What failed all over is not answered by one spot.
        speaks(
            "ash rail; oil-polyurethane 08:00; check tacky +2d; check dry @middle +9h; ask scuff",
            Answer.BLOCKED,
        ),
        silent("oak top; alkyd-varnish 08:00; check dry @left-edge +3d; ask sand"),
        speaks("oak top; alkyd-varnish 08:00; check smells +9d; ask close", says="check again"),
        speaks(
            "oak top; alkyd-varnish 08:00; check flakes +9d; ask pack",
            says="found that it flakes no time mends that: take it off",
        ),
        silent("oak top; alkyd-varnish 08:00; check flakes +9d; ask sand"),
        # What gums lacks all that its own figures promise no sooner, until it sands to powder.
        speaks("oak top; alkyd-varnish 08:00; check gums +9d; ask stack +20d", Answer.BLOCKED),
        speaks("ash rail; lacquer-sprayed 08:00; check gums +9d; ask pack +20d", Answer.BLOCKED),
        speaks("ash rail; lacquer-sprayed 08:00; check gums +9d; ask rub-out +60d"),
        speaks("oak top; spar-varnish 08:00; check gums +30d; ask use +60d", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check gums +9d; ask turn"),
        silent("oak top; alkyd-varnish 08:00; check gums +9d; check no-print +1h; ask stack"),
        silent("oak top; alkyd-varnish 08:00; check gums +9d; check powder +1h; ask rub-out +60d"),
        # Waxy shellac bears a caul before it sands: paper that gums says nothing of that.
        silent("oak top; shellac-waxy 08:00; check gums +1d; ask clamp +5d"),
        speaks("oak top; shellac-waxy 08:00; check gums +1d; ask stack +5d"),
        # What has not cured is neither shut in nor laid on another; it takes paper and a coat.
        speaks("oak top; conversion-varnish 08:00; check softens +9d; ask stack +90d"),
        speaks("oak top; alkyd-varnish 08:00; check softens +60d; ask pack", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; check softens +60d; ask close", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check softens +60d; ask clamp"),
        # What smells is not wrapped, and what lies on it is the next to smell.
        speaks("oak top; alkyd-varnish 08:00; check smells +60d; ask hand-over", Answer.BLOCKED),
        silent("oak top; alkyd-varnish 08:00; check smells +60d; ask stack"),
        # A coat that waits longer for it than one of its own asks for what it reached by then.
        speaks("oak top; alkyd-varnish 08:00; check prints +20d; ask paste-wax", Answer.BLOCKED),
        speaks("oak top; wiping-stain 08:00; wipe; check smells +9d; ask waterborne-clear +1h"),
        silent("oak top; alkyd-varnish 08:00; check prints +20d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; check prints +9d; check no-print +9d; ask paste-wax"),
    ),
    "still-prints": (
        speaks("oak top; alkyd-varnish 08:00; check prints +2d; ask alkyd-varnish", Answer.TEST),
        silent("oak top; alkyd-varnish 08:00; check no-print +2d; ask alkyd-varnish"),
        silent("oak top; lacquer-sprayed 08:00; check prints +2d; ask lacquer-sprayed"),
    ),
    "repair-first": (
        speaks("oak top; fault open-joint 08:00; ask alkyd-varnish", Answer.WAITS),
        silent("oak top; fault cupped 08:00; ask alkyd-varnish"),
        silent("oak top; fault open-joint 08:00; glue-up +1h; ask alkyd-varnish"),
    ),
    "fault": (
        # What a look finds holds the colour until it is sanded away, or is not to be seen.
        speaks("oak top; check glue @left-edge 08:00; ask wiping-stain", Answer.BLOCKED, "scrape"),
        speaks("oak top; check glue 08:00; check looks-clean @foot; ask wiping-stain"),
        speaks("oak top; check snipe 08:00; ask water-dye", Answer.BLOCKED),
        lets("oak top; check snipe 08:00; ask sand"),
        silent("oak top; check snipe 08:00; sand P120; ask water-dye"),
        silent("oak top; check glue @left-edge 08:00; check looks-clean; ask wiping-stain"),
        speaks("oak top; alkyd-varnish 08:00; fault blush +5h; ask alkyd-varnish", Answer.BLOCKED),
        # A mist in the air that fogged the film fogs it again; in dry air it is the mist alone.
        speaks(
            "oak top; air 20C 80%; lacquer-sprayed 08:00; fault blush +10m; ask lacquer-sprayed",
            Answer.BLOCKED,
            "dry the air to 65 % RH first, then mist",
        ),
        speaks(
            "oak top; air 20C 60%; lacquer-sprayed 08:00; fault blush +10m; ask lacquer-sprayed",
            Answer.BLOCKED,
            "in it or on it. mist it",
        ),
        speaks("oak top; alkyd-varnish 08:00; fault dust +5h; ask alkyd-varnish"),
        # Blisters are left to harden: sanded on the next day they are no better.
        speaks(
            "oak top; alkyd-varnish 08:00; fault blister +1d; sand +1d; ask alkyd-varnish",
            Answer.BLOCKED,
            "let it stand",
        ),
        silent("oak top; alkyd-varnish 08:00; fault blister +1d; sand +3d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; fault blush +1d; sand +1d; ask alkyd-varnish"),
        silent("oak top; alkyd-varnish 08:00; fault blush +1d; off bare +1d; ask alkyd-varnish"),
        # The place tells two of a kind apart; mended at one, the other stands.
        speaks(
            "oak top; alkyd-varnish 08:00; fault dent @corner +5d; fault dent @front-edge;"
            " mend @corner +1d; ask pack +9d",
            says="(front-edge)",
        ),
        silent(
            "oak top; alkyd-varnish 08:00; fault dent @corner +5d; fault dent @front-edge;"
            " mend @corner +1d; mend @front-edge; ask pack +9d"
        ),
        silent(
            "oak top; alkyd-varnish 08:00; fault dent @corner +5d; fault dent @front-edge;"
            " mend +1d; ask pack +9d"
        ),
        speaks("oak top; alkyd-varnish 08:00; fault dent +5d; mend @corner; ask pack +9d"),
        silent("oak top; alkyd-varnish 08:00; ask alkyd-varnish +1d"),
        # A coat that was broken off mends nothing.
        silent(f"{SPOT}; oil-polyurethane; ask rest +3d"),
        speaks(f"{SPOT}; oil-polyurethane stopped:half; ask rest +3d"),
        # What would bury it or load it is held; what mends it is not.
        speaks(
            "ash panel; alkyd-varnish 08:00; fault cupped +5d; ask alkyd-varnish", Answer.BLOCKED
        ),
        speaks("ash panel; alkyd-varnish 08:00; fault cupped +9d; ask pack", Answer.BLOCKED),
        silent("ash panel; alkyd-varnish 08:00; fault cupped +5d; mend +9d; ask alkyd-varnish"),
        lets("ash panel; alkyd-varnish 08:00; fault cupped +5d; ask scuff"),
        speaks("ash panel; alkyd-varnish 08:00; check cupped +9d; ask pack", Answer.BLOCKED),
        silent("ash panel; alkyd-varnish 08:00; fault cupped +5d; check flat +9d; ask pack"),
        # The barer face of two is brought level; the other waits until it lies flat.
        lets(f"{CUPPED}; ask back: alkyd-varnish"),
        speaks(f"{CUPPED}; ask front: alkyd-varnish", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; fault run +5d; ask stack +9d", Answer.BLOCKED),
        lets("oak top; alkyd-varnish 08:00; fault run +5d; check no-print +9d; ask stack"),
        speaks("oak top; alkyd-varnish 08:00; fault print-mark +9d; ask pack", Answer.BLOCKED),
        lets("oak top; alkyd-varnish 08:00; fault print-mark +9d; check no-print +9d; ask pack"),
        lets("oak top; lacquer-sprayed 08:00; fault print-mark +2d; ask lacquer-sprayed"),
        # A fault that shows a soft film denies it what a thumbnail that prints would.
        speaks("oak top; alkyd-varnish 08:00; fault print-mark +9d; ask use +60d", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; fault run +5d; ask close +60d", Answer.BLOCKED),
        lets("oak top; alkyd-varnish 08:00; fault print-mark +9d; ask rub-out +60d"),
        speaks("oak top; alkyd-varnish 08:00; fault peel +9d; ask close +60d", Answer.BLOCKED),
        speaks("oak top; alkyd-varnish 08:00; fault bleed-back +9d; ask pack", Answer.BLOCKED),
        speaks("oak top; fault glue-spot 08:00; ask wiping-stain", Answer.BLOCKED),
        silent("oak top; fault glue-spot 08:00; sand +5m; ask wiping-stain"),
        speaks(
            "oak top; wiping-stain 08:00; fault wrong-colour +1d; ask shellac-2lb", Answer.BLOCKED
        ),
        silent("oak top; wiping-stain 08:00; fault wrong-colour +1d; glaze +1h; ask shellac-2lb"),
        speaks(f"{RUBBED_THROUGH}; ask oil-polyurethane", Answer.BLOCKED),
        lets(f"{RUBBED_THROUGH}; ask wiping-stain"),
        lets(f"{RUBBED_THROUGH}; ask glaze"),
        # Where no colour lies below, the next coat closes the spot.
        lets("oak top; oil-polyurethane 08:00; fault rubbed-through +2d; ask oil-polyurethane"),
        silent(f"{RUBBED_THROUGH}; wiping-stain +5m; ask oil-polyurethane +2d"),
        silent(f"{RUBBED_THROUGH}; mend +5m; ask oil-polyurethane +2d"),
    ),
    "patch-first": (
        speaks("oak top; lacquer-sprayed 08:00; fault wrinkle; ask lacquer-sprayed +1d"),
        silent("oak top; lacquer-sprayed 08:00; fault dust; ask lacquer-sprayed +1d"),
        silent(
            "oak top; lacquer-sprayed 08:00; fault wrinkle; check holds +1d; ask lacquer-sprayed"
        ),
        silent("oak top; lacquer-sprayed 08:00; fault wrinkle; off bare +1d; ask lacquer-sprayed"),
    ),
}
