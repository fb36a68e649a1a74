"""Where sources differ on a wait: what each asks for, and when that is over for this film.

The longest binds. What another source calls enough is only to be known: it moves no date.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage


class Guidance(Struct, frozen=True):
    """What one source asks for, and when it is over by the film's own clock.

    `binds`: it is the most cautious and counts. `held`: its hours are over sooner than the label
    of the film allows, and the label's moment is given.
    """

    figure: Figure
    time: StageTime
    binds: bool = False
    held: bool = False


def guidance(layer: Layer, figure: Figure, stage: Stage) -> tuple[Guidance, ...]:
    """Return what each source asks of a film, the one that counts first; empty: they agree."""
    of_pair = not _alike(figure, layer.coat.figures.stages.get(stage))
    of_class = layer.of.stages.get(stage)
    published = of_class if of_class is not None and _alike(figure, of_class) else figure
    others = sorted(published.sooner, key=lambda f: f.high_h, reverse=True)
    if not others:
        return ()
    own = layer.stage(stage) if of_pair else layer.waits(figure, stage).from_its_low_end
    each = [_held(layer.waits(other, stage), own) for other in others]
    binding, _ = _held(layer.waits(figure, stage), own)
    return (
        Guidance(published, binding, binds=True),
        *(Guidance(f, time, held=held) for f, (time, held) in zip(others, each, strict=True)),
    )


def _alike(one: Figure, other: Figure | None) -> bool:
    """Tell whether two figures are one; with a coat no other source's reading is kept."""
    return other is not None and replace(one, also=()) == replace(other, also=())


def _held(time: StageTime, own: StageTime | None) -> tuple[StageTime, bool]:
    """Hold a wait against the film's own; tell whether that moved its end."""
    if own is None:
        return time, False
    both = later(time, own)
    return both, both.high != time.high
