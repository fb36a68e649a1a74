"""Stories of the air about a coat, and of what burns in it."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import lets, silent, speaks

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
    "flame": (
        speaks("oak top; place has:pilot; ask lacquer-sprayed 08:00", Answer.WAITS, "pilot light"),
        speaks("oak top; place has:stove,motor; ask alkyd-varnish 08:00", Answer.WAITS, "a stove"),
        speaks("oak top; place has:glow; ask shellac-2lb 08:00", Answer.WAITS, "glowing wire"),
        # In a room that vapour comes to; what leads there is said.
        speaks(
            "oak top; place has:none kind:basement; beside door has:pilot; ask alkyd-varnish 08:00",
            Answer.WAITS,
            "a pilot light in boiler room, through the door",
        ),
        speaks("oak top; beside duct has:flame; ask lacquer-brushed 08:00", Answer.WAITS, "duct"),
        speaks("oak top; place has:pilot; ask solvent-wipe 08:00", Answer.WAITS, "the solvent"),
        speaks("oak top; place has:pilot; alkyd-varnish; ask take-off +30m", Answer.WAITS),
        lets("oak top; place has:motor; ask lacquer-sprayed 08:00", "it sparks"),
        lets("oak top; place has:fan; ask wipe with white spirit 08:00", "a hot coil with a fan"),
        silent("oak top; place has:none; beside door has:motor; ask lacquer-sprayed 08:00"),
        # A heater is of the kind that was told; what was put out burns again after the evening.
        speaks("oak top; heater flame; place has:heater; ask lacquer-sprayed 08:00", Answer.WAITS),
        lets("oak top; place has:heater; ask lacquer-sprayed 08:00", "not told of what kind"),
        speaks("oak top; place has:pilot out:pilot 08:00; ask lacquer-sprayed +13h", Answer.WAITS),
        silent("oak top; place has:pilot out:pilot 08:00; ask lacquer-sprayed +1h"),
        silent("oak top; heater sealed; place has:heater; ask lacquer-sprayed 08:00"),
        silent("oak top; place has:sealed; ask lacquer-sprayed 08:00"),
        silent("oak top; place has:none; ask lacquer-sprayed 08:00"),
        # Water and neat oil give off nothing that burns.
        silent("oak top; place has:pilot; ask waterborne-clear 08:00"),
        silent("oak top; place has:stove; ask tung-oil 08:00"),
        silent("oak top; place has:pilot; ask wipe with water 08:00"),
        silent("oak top; place has:pilot; shellac-2lb; ask sand +3d"),
    ),
    "at-home": (
        lets("oak top; place kind:attached; ask lacquer-sprayed spray 08:00", "onto the house"),
        lets("oak top; place kind:basement; ask alkyd-varnish 08:00", "is a basement"),
        lets("oak top; place kind:dwelling lives:bird,child; ask shellac-2lb 08:00", "a bird"),
        lets("oak top; place lives:pregnant; ask conversion-varnish 08:00", "pregnant"),
        silent("oak top; place kind:garage; ask lacquer-sprayed spray 08:00"),
        silent("oak top; place kind:outdoors; ask lacquer-sprayed spray 08:00"),
        silent("oak top; place kind:attached lives:child; ask waterborne-clear 08:00"),
        silent("oak top; place kind:dwelling; ask tung-oil 08:00"),
    ),
    "place-untold": (
        lets("oak top; ask lacquer-sprayed 08:00", "was not told"),
        lets("oak top; place kind:garage; ask alkyd-varnish 08:00", "was not told"),
        silent("oak top; place has:none; ask alkyd-varnish 08:00"),
        silent("oak top; ask waterborne-clear 08:00"),
        silent("oak top; ask tung-oil 08:00"),
    ),
}
