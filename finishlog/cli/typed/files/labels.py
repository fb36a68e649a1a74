"""Read what is typed off a can."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from finishlog.acts.things.products import ProductTyped
from finishlog.cli.typed.figures import measures
from finishlog.cli.typed.times import durations
from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.finish.classes import YOUR_CAN, Figure, RecoatWindow, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.measure.units import Temperature

_ON_A_LABEL = (
    *(Stage.RECOAT, Stage.SAND, Stage.TOUCH, Stage.TACK_FREE),
    *(Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.LIGHT_USE, Stage.CURED),
)


class LabelTyped(Struct, frozen=True):
    """The label's figures as typed; None: the can does not say."""

    recoat: str | None = None
    sand: str | None = None
    touch: str | None = None
    tack_free: str | None = None
    light_use: str | None = None
    cured: str | None = None
    window: str | None = None
    air: str | None = None
    clamp: str | None = None
    stack: str | None = None
    pack: str | None = None

    def stages(self) -> Iterator[tuple[Stage, str]]:
        """Yield the stages that the label speaks of."""
        for stage in _ON_A_LABEL:
            typed: str | None = getattr(self, stage.replace("-", "_"))
            if typed is not None:
                yield stage, typed


def product_typed(
    name: str, finish: str, label: LabelTyped, unit: Temperature, note: str = ""
) -> ProductTyped:
    """Read a product and its label; the standard air where the label names none."""
    air = measures.air(label.air, unit) if label.air else STANDARD_AIR
    window = None
    if label.window is not None:
        window = RecoatWindow(WindowKind.CLOSES, YOUR_CAN, _figure(label.window, air))
    figures = {stage: _figure(typed, air) for stage, typed in label.stages()}
    return ProductTyped(name, finish, figures, window, note)


def _figure(typed: str, air: Air) -> Figure:
    low, high = durations.hours(typed)
    return Figure(low, (low + high) / 2, high, YOUR_CAN, air)
