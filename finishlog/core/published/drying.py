"""Figures of the drying clock, of coating limits, of prepared wood, and of shops against labels."""

from __future__ import annotations

from typing import Annotated

import msgspec

from finishlog.core.finish.classes import FinishClass, Limit, Published, Range
from finishlog.core.finish.overcoat import named_by

Above0 = Annotated[float, msgspec.Meta(gt=0)]


class Rate(Published, frozen=True):
    """A factor on a pace for each 10 °C. `assumed`: the source prints it for something else."""

    factor_per_10c: Above0
    source: str
    assumed: bool
    basis: str


class DryingFigures(Published, frozen=True):
    """Figures of drying and of coating limits that hold for every class; hours, °C.

    `dew_margin_c`: surface over dew point; `slow_after_h`: a film still tacky then is slow;
    `solvent_wipe_h`: how long a solvent wipe of oily wood is good for; `hot_c`: in hotter air a
    film skins over what is soft below it; `scuff_clean_h`, `scuff_stale_h`: since when a scuffed
    film is wiped clean again, and scuffed again; `abrading_takes_um`: what one sanding or scuffing
    takes off a film; `bleeds_back_h`: when a flooded oil comes back out of open pores, since it was
    wiped off.
    """

    dew_margin_c: Limit
    slow_after_h: Limit
    solvent_wipe_h: Limit
    hot_c: Limit
    scuff_clean_h: Limit
    scuff_stale_h: Limit
    abrading_takes_um: Limit
    bleeds_back_h: tuple[Limit, ...]


class PaceFigures(Published, frozen=True):
    """The prior of ln f is normal about 0 with sd `spread`; one coat scatters by sd `scatter`.

    `carried_factor`, `own_factor`: a factor on the waits of other coats, and of the one that
    taught it; `evaporated_h`: when what only evaporates is out of a film (label hours);
    `passes_share`: the share of its least hours in which nothing passes a test yet;
    `damp_pct`: from how much humidity (RH) on damp made it slow. `basis`: what they rest on.
    """

    spread: Above0 = msgspec.field(name="spread_ln")
    scatter: Above0 = msgspec.field(name="scatter_ln")
    carried_factor: Above0
    own_factor: Above0
    evaporated_h: Above0
    passes_share: Above0
    damp_pct: Above0
    basis: tuple[str, ...] = ()


class SandedFor(Published, frozen=True):
    """Days that a sanding holds before a first coat of these classes or families."""

    over: tuple[str, ...]
    days: Limit


class LastGrit(Published, frozen=True):
    """The last paper (P grades) before a first coat of these classes or families."""

    over: tuple[str, ...]
    grit: Range


class ScuffedWith(Published, frozen=True):
    """The papers (P grades) that films of these classes or families are scuffed with at most."""

    of: tuple[str, ...]
    grit: Range


class LookBefore(Published, frozen=True):
    """Before a first coat of these classes or families the wood is looked over: they show all."""

    over: tuple[str, ...]
    source: str


class Slides(Published, frozen=True):
    """What a face that slides bears of film: `most_coats` of what is `thin`, by its class."""

    thin: tuple[str, ...]
    most_coats: Limit


class PreparationFigures(Published, frozen=True):
    """Figures of prepared wood; `tape_d`: days that tape stays on; `warms_c`: °C since a coat."""

    sanded: tuple[SandedFor, ...]
    last_grit: tuple[LastGrit, ...]
    scuffed_with: tuple[ScuffedWith, ...]
    look: tuple[LookBefore, ...]
    slides: Slides
    # The coarsest paper that leaves the skin of bleached wood on (P grade).
    after_bleach_grit: Limit
    tape_d: Limit
    warms_c: Limit
    # How long a glue face that was worked is good for glue; of oily wood.
    glue_face_h: Limit
    oily_glue_face_h: Limit

    def sanding_holds(self, over: FinishClass) -> Limit:
        """Return for how many days a sanding holds before a class."""
        return next(row.days for row in self.sanded if named_by(row.over, over) is not None)

    def grit_before(self, over: FinishClass) -> Range | None:
        """Return the last paper before a class; None: nothing is said of it."""
        rows = (row.grit for row in self.last_grit if named_by(row.over, over) is not None)
        return next(rows, None)

    def look_before(self, over: FinishClass) -> LookBefore | None:
        """Return who says that wood is looked over before a class; None: nobody."""
        return next((row for row in self.look if named_by(row.over, over) is not None), None)

    def grit_between(self, of: FinishClass) -> Range | None:
        """Return the papers that a film is scuffed with; None: nothing is said of it."""
        rows = (row.grit for row in self.scuffed_with if named_by(row.of, of) is not None)
        return next(rows, None)
