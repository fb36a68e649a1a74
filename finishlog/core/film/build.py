"""How much film a coat leaves when it is dry, less what was sanded off it: an estimate."""

from __future__ import annotations

from finishlog.core.film.layers import ABRADES, Layer
from finishlog.core.finish.classes import FinishClass


def usual_dry_film_um(of: FinishClass) -> float:
    """Return what a usual coat of a class leaves (µm): the middles of wet film and solids.

    0 where either is not known. Dry film is wet film times solids by volume.
    """
    wet = of.wet_film_um
    return _dry(of, (wet.low + wet.high) / 2) if wet is not None else 0.0


def dry_film_um(layer: Layer, abrading_takes_um: float) -> float:
    """Return what a coat left (µm), by its measured wet film where one was told."""
    wet = layer.coat.wet_film_um
    left = usual_dry_film_um(layer.of) if wet is None else _dry(layer.of, wet)
    papered = sum(work.operation in ABRADES for work in layer.abraded)
    return max(0.0, left - abrading_takes_um * papered)


def _dry(of: FinishClass, wet_um: float) -> float:
    solids = of.solids_vol_pct
    return wet_um * (solids.low + solids.high) / 200 if solids is not None else 0.0
