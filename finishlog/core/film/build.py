"""How much film lies on a zone when it is dry, less what was sanded off it: an estimate."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.core.film.layers import ABRADES, Layer
from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.mixing.mixes import is_thinner
from finishlog.core.published.facts import Facts


class CoatBuild(Struct, frozen=True):
    """What one coat left: its wet film, as measured (`told`) or usual, and its solids by volume.

    `thinned`: the thinner that was in it, by volume of the rest; `sanded_um`: what was taken off
    it again.
    """

    act: int
    wet_um: float
    told: bool
    solids_pct: float
    thinned: float
    sanded_um: float

    @property
    def dry_um(self) -> float:
        """What it left before it was sanded."""
        return dry_um(self.wet_um, self.solids_pct, self.thinned)

    @property
    def left_um(self) -> float:
        """What of it is still there."""
        return max(0.0, self.dry_um - self.sanded_um)


class FilmBuild(Struct, frozen=True):
    """All film on a zone, oldest coat first, and what the finish that comes, or lies on top, bears.

    `next_um`: what one more coat would leave, as the last one like it was measured, else as usual;
    0: not known.
    """

    coats: tuple[CoatBuild, ...]
    next_um: float
    limit: Range | None

    @property
    def total_um(self) -> float:
        """What lies on it in all."""
        # Sanded again and again it goes through more than the newest of them.
        return max(0.0, sum(coat.dry_um - coat.sanded_um for coat in self.coats))

    @property
    def more(self) -> int | None:
        """How many more such coats stay below where it may crack; None: nothing tells."""
        if self.limit is None or not self.next_um:
            return None
        return max(0, int((self.limit.low - self.total_um) / self.next_um + 1e-9))


def dry_um(wet_um: float, solids_pct: float, thinned: float = 0.0) -> float:
    """Return the dry film (µm) of a wet one: solids by volume (%), over what thinner added."""
    return wet_um * solids_pct / 100 / (1 + thinned)


def usual_dry_film_um(of: FinishClass) -> float:
    """Return what a usual coat of a class leaves (µm): the middles of wet film and solids.

    0 where either is not known.
    """
    wet, solids = of.wet_film_um, of.solids_vol_pct
    return dry_um(_middle(wet), _middle(solids)) if wet and solids else 0.0


def film_build(layers: Sequence[Layer], over: FinishClass | None, facts: Facts) -> FilmBuild:
    """Return what lies on a zone, and what it bears with `over` on it; None: with its top coat.

    What was taken off again is no layer any more. Colour and oil, which build no film, are none.
    """
    taken = facts.drying.abrading_takes_um.value
    coats = tuple(built for each in layers if (built := _built(each, taken)))
    of = over or (layers[-1].of if layers else None)
    if of is None:
        return FilmBuild(coats, 0.0, None)
    acts = {each.coat.act for each in layers if each.of.key == of.key}
    alike = [coat.dry_um for coat in coats if coat.told and coat.act in acts]
    return FilmBuild(coats, alike[-1] if alike else usual_dry_film_um(of), of.dry_film_limit_um)


def _built(layer: Layer, abrading_takes_um: float) -> CoatBuild | None:
    of, laid = layer.of, layer.coat.wet_film_um
    if not of.builds_film or of.solids_vol_pct is None or (laid is None and of.wet_film_um is None):
        return None
    return CoatBuild(
        act=layer.coat.act,
        wet_um=laid if laid is not None else _middle(of.wet_film_um),
        told=laid is not None,
        solids_pct=_middle(of.solids_vol_pct),
        thinned=_thinned(layer.came_from),
        sanded_um=abrading_takes_um * sum(work.operation in ABRADES for work in layer.abraded),
    )


def _thinned(came_from: CameFrom | None) -> float:
    """Return the thinner in what a coat came from, by volume of the rest; 0: none on record."""
    parts = came_from.state.container.parts if came_from and came_from.state else ()
    rest = sum(part.parts for part in parts if not is_thinner(part))
    return sum(part.parts for part in parts if is_thinner(part)) / rest if rest else 0.0


def _middle(of: Range | None) -> float:
    return (of.low + of.high) / 2 if of is not None else 0.0
