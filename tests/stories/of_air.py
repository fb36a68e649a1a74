"""Stories of the air about a coat, and of what burns in it."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

STORIES = {
    "air": (
        speaks("oak top; air 45C 30%; ask waterborne-clear"),
        speaks("oak top; night ?; ask waterborne-clear"),
        speaks("oak top; air 5C 50%; ask waterborne-clear 08:00", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; air 23C 95%; ask waterborne-clear 08:00", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; surface 12C 08:00; ask waterborne-clear", Answer.NOT_IN_THIS_AIR),
        speaks("oak top; air 23C 60%; ask lacquer-sprayed spray 08:00"),
        speaks("oak top; no-air; ask waterborne-clear 08:00", Answer.TEST),
        speaks("oak top; night 2C; one-air 20C 50%; ask waterborne-clear 08:00"),
        silent("oak top; ask waterborne-clear 08:00"),
        silent("oak top; air 23C 60%; ask lacquer-sprayed brush 08:00"),
    ),
    "wood-warms-up": (
        speaks("oak top; carried-in 2C 60% 08:00; ask waterborne-clear +1h", Answer.WAITS),
        silent("oak top; carried-in 22C 50% 08:00; ask waterborne-clear +1h"),
        silent("oak top; carried-in 2C 60% 08:00; ask waterborne-clear +7h"),
    ),
    "heater": (
        speaks("oak top; heater flame; heat 3h 08:00; ask lacquer-sprayed", Answer.WAITS),
        speaks("oak top; heat 3h 08:00; ask lacquer-sprayed"),
        silent("oak top; heater sealed; heat 3h 08:00; ask lacquer-sprayed"),
        silent("oak top; heater flame; ask lacquer-sprayed 08:00"),
        silent("oak top; heater flame; heat 3h 08:00; ask waterborne-clear"),
    ),
}
