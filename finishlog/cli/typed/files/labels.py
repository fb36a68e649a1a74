"""Read what is typed off a can."""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.acts.things.products import ProductTyped
from finishlog.cli.typed.figures import measures
from finishlog.cli.typed.times import durations
from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.finish.classes import YOUR_CAN, Figure, RecoatWindow, WindowKind
from finishlog.core.finish.stages import ON_A_LABEL
from finishlog.core.measure.units import Temperature


def product_typed(
    name: str, finish: str, label: Mapping[str, str | None], unit: Temperature, note: str = ""
) -> ProductTyped:
    """Read a product and what its label says, by stage, `window` and `label-air`.

    The standard air where the label names none.
    """
    said = {word: typed for word, typed in label.items() if typed is not None}
    spoken_of = said.get("label-air")
    air = measures.air(spoken_of, unit) if spoken_of else STANDARD_AIR
    window = None
    if "window" in said:
        window = RecoatWindow(WindowKind.CLOSES, YOUR_CAN, _figure(said["window"], air))
    figures = {stage: _figure(said[stage], air) for stage in ON_A_LABEL if stage in said}
    return ProductTyped(name, finish, figures, window, note)


def _figure(typed: str, air: Air) -> Figure:
    low, high = durations.hours(typed)
    return Figure(low, (low + high) / 2, high, YOUR_CAN, air)
