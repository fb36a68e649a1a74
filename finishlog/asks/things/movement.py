"""How much a width of wood moves from one moisture, or one season's air, to another."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from finishlog.asks.things.species import pick_wood
from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.published.facts import Facts
from finishlog.core.published.moisture import MoistureFigures, moves_mm, settles_pct
from finishlog.core.published.species import Species
from finishlog.errors import NotFound, UsageFault


class Moisture(Struct, frozen=True):
    """A moisture content; `air`: the air that wood settles at it in, where that was said."""

    moisture_pct: float
    air: Air | None = None


class Movement(Struct, frozen=True):
    """How a width changes; `change_mm` is below 0 where it shrinks.

    `per_pct` is the change of width, in parts of it, for each percent of moisture.
    """

    species: str
    name: str
    radial: bool
    per_pct: float
    source: str
    width_mm: float
    start: Moisture
    end: Moisture
    change_mm: float
    ends_mm: float
    remarks: tuple[str, ...]


def movement(
    facts: Facts,
    wood: str,
    width_mm: float,
    start: float | Air,
    end: float | Air,
    *,
    radial: bool = False,
) -> Movement:
    """Tell how a width (mm) moves between two moistures (%), or what wood settles at in two airs.

    NotFound for a wood that no movement is published of, UsageFault where wood is too wet to move.
    """
    found = pick_wood(facts, wood)
    per_pct = found.radial_per_pct if radial else found.tangential_per_pct
    if per_pct is None:
        raise NotFound(
            f"nothing is published here of how far {found.name} moves",
            _groups_of(found, facts, radial=radial) or Do.SPECIES_SHOW(found.key),
        )
    ends = _moisture(start, facts.moisture), _moisture(end, facts.moisture)
    change = moves_mm(width_mm, per_pct.value, *(each.moisture_pct for each in ends))
    return Movement(
        species=found.key,
        name=found.name,
        radial=radial,
        per_pct=per_pct.value,
        source=per_pct.source,
        width_mm=width_mm,
        start=ends[0],
        end=ends[1],
        change_mm=change,
        ends_mm=width_mm + change,
        remarks=tuple(_remarks(found, ends, facts.moisture, radial=radial)),
    )


def _groups_of(wood: Species, facts: Facts, *, radial: bool) -> str:
    """Name the woods of a group that differ in how far they move: red and white oak."""
    of = [s for s in facts.species if s.key.endswith(f"-{wood.key}")]
    keys = [s.key for s in of if (s.radial_per_pct if radial else s.tangential_per_pct)]
    return f"name which: {', '.join(keys)}" if keys else ""


def _moisture(typed: float | Air, figures: MoistureFigures) -> Moisture:
    found = Moisture(settles_pct(typed), typed) if isinstance(typed, Air) else Moisture(typed)
    most = figures.saturated_pct.value
    if found.moisture_pct > most:
        raise UsageFault(
            f"above about {most:g} % wood is full and does not move",
            f"give at most {most:g}%, or the air it stands in: '20C 35%'",
        )
    return found


def _remarks(
    wood: Species, ends: tuple[Moisture, Moisture], figures: MoistureFigures, *, radial: bool
) -> Iterator[str]:
    """Say where the published figures end, and what they leave out."""
    holds, outside = figures.moves_pct, [x.moisture_pct for x in ends]
    outside = [x for x in dict.fromkeys(outside) if not holds.low <= round(x, 1) <= holds.high]
    if outside:
        said = " and ".join(f"{x:.3g} %" for x in outside)
        verb = "is" if len(outside) == 1 else "are"
        yield (
            f"{said} {verb} outside {holds.low:g} to {holds.high:g} %, where the published figure "
            "holds: an estimate"
        )
    airs = [x.air for x in ends if x.air is not None]
    if not all(figures.lists(air) for air in airs):
        yield "such air is outside the published table of moisture in air: an estimate"
    if airs:
        yield "wood follows the air over weeks, slower under a finish: a season, not one evening"
    cut = "quarter-sawn" if radial else "flat-sawn"
    yield f"boards are rarely quite {cut}; where they are not, it is another amount" + (
        "" if radial else ", mostly less"
    )
    if wood.note:
        yield wood.note
