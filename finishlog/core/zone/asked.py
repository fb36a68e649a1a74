"""What is asked of a zone: a coat, work by hand, a milestone, or nothing."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.findings import Act
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import KEEPS, Keeping, Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient

# Taking a film off, as what is done.
OFF = "off"

# What a piece of work asks of the film under it; work not named asks nothing. common practice
NEEDS: Mapping[Operation, Stage] = {
    Operation.COAT: Stage.RECOAT,
    Operation.SCUFF: Stage.SAND,
    Operation.DENIB: Stage.SAND,
    Operation.SAND: Stage.SAND,
    Operation.STEEL_WOOL: Stage.SAND,
    Operation.MASK: Stage.CLAMP,
    Operation.UNTAPE: Stage.TACK_FREE,
    Operation.RUB: Stage.RUB,
    Operation.HARDWARE: Stage.STACK,
    Operation.GLUE_UP: Stage.CLAMP,
    Operation.STACK: Stage.STACK,
    Operation.PACK: Stage.PACK,
    Operation.USE: Stage.LIGHT_USE,
}

# What a film must bear to be kept so; how not to be found here asks nothing. common practice
_KEPT: Mapping[Keeping, Stage] = {
    Keeping.STICKERS: Stage.STACK,
    Keeping.STACKED: Stage.STACK,
    Keeping.WRAPPED: Stage.PACK,
    Keeping.STANDING: Stage.TURN,
}

_BY_DEED: Mapping[str, Stage] = {o.value: NEEDS[o] for o in KEEPS if o in NEEDS}

_ACT_OF: Mapping[Operation, Act] = {
    Operation.COAT: Act.COAT,
    Operation.WIPE: Act.WIPE,
    Operation.SCUFF: Act.SCUFF,
    Operation.DENIB: Act.SCUFF,
    Operation.STEEL_WOOL: Act.SCUFF,
    Operation.SAND: Act.SAND,
    Operation.RUB: Act.RUB,
    Operation.GLUE_UP: Act.GLUE_UP,
    Operation.STACK: Act.STACK,
    Operation.PACK: Act.PACK,
    Operation.STORE: Act.STORE,
    Operation.USE: Act.USE,
}

# What is handled is asked of the film by these.
_STAGE_OF: Mapping[Act, Stage] = {
    Act.TURN: Stage.TURN,
    Act.CLAMP: Stage.CLAMP,
    Act.CLOSE: Stage.CLOSE,
    Act.STORE: Stage.STACK,
    Act.HAND_OVER: Stage.PACK,
}


class Asked(Struct, frozen=True):
    """One act that is asked after.

    `over`: the class of a coat, `product` its id, `comes`: what is brought onto the wood, as the
    person calls it, for what its name tells of it. `operation`: the work by hand, `grit` its paper,
    `stripping`: how a film is taken off. `done`: it is being done, whatever else is due. `toward`:
    the stage that is asked for, where the act alone does not say it. `then`: the product of the
    coat that comes after work by hand. `film_um`: how thick the coat goes on wet, measured.
    """

    act: Act
    operation: Operation | None = None
    over: FinishClass | None = None
    method: Method | None = None
    comes: Ingredient | None = None
    done: bool = False
    toward: Stage | None = None
    product: int | None = None
    stripping: Stripping | None = None
    grit: str = ""
    then: int | None = None
    film_um: float | None = None

    @property
    def does(self) -> str:
        """What is done, in a word: an operation, or `off`; empty: nothing by hand."""
        if self.act is Act.TAKE_OFF:
            return OFF
        return self.operation.value if self.operation else ""

    @property
    def stage(self) -> Stage | None:
        """What the film under it must have reached; None: it asks nothing of the film."""
        if self.toward is not None:
            return self.toward
        if self.operation is not None:
            return NEEDS.get(self.operation)
        return Stage.RECOAT if self.over is not None else _STAGE_OF.get(self.act)


NOTHING = Asked(Act.REST)


def coat_asked(
    over: FinishClass,
    method: Method | None = None,
    comes: Ingredient | None = None,
    *,
    done: bool = False,
    product: int | None = None,
    film_um: float | None = None,
) -> Asked:
    """Ask whether a coat may go on; `film_um`: how thick, measured wet."""
    asked = Asked(Act.COAT, Operation.COAT, over, method, comes, done, product=product)
    return replace(asked, film_um=film_um) if film_um else asked


def stage_kept(deed: str, how: Keeping | None) -> Stage | None:
    """Return what a film must have reached to be kept so; None: it asks nothing of the film."""
    return _KEPT.get(how) if how is not None else _BY_DEED.get(deed)


def work_asked(
    operation: Operation,
    comes: Ingredient | None = None,
    *,
    grit: str = "",
    done: bool = False,
    then: int | None = None,
    kept: Keeping | None = None,
) -> Asked:
    """Ask whether a piece of work may be done; a coat of nothing that is known asks nothing.

    `comes`: what is on the cloth, or in the rinse; `grit`: the paper; `then`: the next coat;
    `kept`: how it is stored.
    """
    if operation is Operation.COAT:
        return Asked(Act.WORK)
    act = _ACT_OF.get(operation, Act.WORK)
    toward = stage_kept(operation, kept) if kept is not None else None
    return Asked(act, operation, None, None, comes, done, toward, grit=grit, then=then)


def taking_off(how: Stripping, comes: Ingredient | None = None) -> Asked:
    """Ask whether a film may come off; `comes`: what takes it off, where that was told."""
    return Asked(Act.TAKE_OFF, comes=comes, stripping=how)
