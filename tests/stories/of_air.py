"""Stories of the air about a coat, and of what burns in it."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

FLAME = "oak top; heater flame; heat 3h 08:00"
STORIES = {
    "air": (
        speaks("oak top; air 45C 30%; ask waterborne-clear"),
        speaks("oak top; night ?; ask waterborne-clear"),
        speaks("oak top; air 5C 50%; ask waterborne-clear 08:00", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; air 23C 95%; ask waterborne-clear 08:00", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; surface 12C 08:00; ask waterborne-clear", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; air 23C 60%; ask lacquer-sprayed spray 08:00"),
        speaks("oak top; night 8C; one-air 18C 60%; ask alkyd-varnish +1h", None, "dew may fog"),
        speaks("oak top; no-air; ask waterborne-clear 08:00", Answer.TEST),
        speaks("oak top; night 2C; one-air 20C 50%; ask waterborne-clear 08:00"),
        silent("oak top; ask waterborne-clear 08:00"),
        # Of a thermometer alone nobody knows how damp it is.
        speaks("oak top; thermometer 20C 50%; ask shellac-2lb +1h", Answer.TEST, "up to 65 %"),
        speaks(
            "oak top; one-air 20C 50%; thermometer 20C 50% +9h; ask waterborne-clear +1h",
            Answer.TEST,
            "50 % RH is supposed",
        ),
        # The water that was read in the last hours is still there; read since; wax has no limit.
        silent("oak top; one-air 20C 50%; thermometer 21C 47% +2h; ask waterborne-clear +1h"),
        silent("oak top; thermometer 20C 50%; one-air 20C 50% +1h; ask waterborne-clear +1h"),
        silent("oak top; thermometer 20C 50%; ask paste-wax +1h"),
        silent("oak top; air 23C 60%; ask lacquer-sprayed brush 08:00"),
    ),
    "wood-warms-up": (
        speaks("oak top; carried-in 2C 60% 08:00; ask waterborne-clear +1h", Answer.WAITS),
        silent("oak top; carried-in 22C 50% 08:00; ask waterborne-clear +1h"),
        silent("oak top; carried-in 2C 60% 08:00; ask waterborne-clear +7h"),
        speaks("oak top; carried-in 2C 60% 08:00; surface 9C +1h; ask alkyd-varnish", Answer.WAITS),
        silent("oak top; carried-in 2C 60% 08:00; surface 21C +1h; ask alkyd-varnish"),
        speaks("oak top; surface 21C 07:30; carried-in 2C 60%; ask alkyd-varnish", Answer.WAITS),
    ),
    "heater": (
        speaks("oak top; heater flame; heat 3h 08:00; ask lacquer-sprayed", Answer.WAITS),
        speaks("oak top; heat 3h 08:00; ask lacquer-sprayed"),
        silent("oak top; heater sealed; heat 3h 08:00; ask lacquer-sprayed"),
        silent("oak top; heater flame; ask lacquer-sprayed 08:00"),
        silent("oak top; heater flame; heat 3h 08:00; ask waterborne-clear"),
        # What is wiped, rubbed and taken off with gives off vapour as well; water gives off none.
        speaks(f"{FLAME}; ask solvent-wipe", Answer.WAITS, "the solvent gives off vapour"),
        speaks(f"{FLAME}; ask wipe with white spirit", Answer.WAITS, "petroleum gives off"),
        speaks(f"{FLAME}; alkyd-varnish; ask rub-out with mineral spirits +30m", Answer.WAITS),
        speaks(
            f"{FLAME}; alkyd-varnish; ask take-off +30m", Answer.WAITS, "the stripper gives off"
        ),
        speaks(f"{FLAME}; shellac-2lb; ask wash with alcohol +1h", Answer.WAITS, "alcohol gives"),
        speaks(f"{FLAME}; shellac-2lb; ask strip with methylene chloride", None, "is poison in a"),
        speaks("oak top; heat 3h 08:00; ask solvent-wipe"),
        silent(f"{FLAME}; ask wipe with water"),
        silent(f"{FLAME}; ask wipe"),
        silent(f"{FLAME}; ask solvent-wipe with water"),
        silent(f"{FLAME}; alkyd-varnish; ask rub-out with paraffin oil and pumice"),
        silent(f"{FLAME}; alkyd-varnish; ask rub-out"),
        silent(f"{FLAME}; shellac-2lb; ask scrape"),
        silent(f"{FLAME}; shellac-2lb; ask strip with lye and water"),
        silent(f"{FLAME}; ask solvent-wipe +5h"),
        silent("oak top; heater sealed; heat 3h 08:00; ask solvent-wipe"),
    ),
}
