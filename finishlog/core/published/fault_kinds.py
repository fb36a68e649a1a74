"""What is known of each kind of fault, as facts/data/faults.toml holds it."""

from __future__ import annotations

from enum import StrEnum

from finishlog.core.findings import Level
from finishlog.core.finish.classes import Figure, Published
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import FaultKind, Found, Operation


class Evidence(StrEnum):
    """What in a log can speak for a cause; each is looked for in core.trouble.evidence."""

    HUMID = "humid air"
    COLD = "cold air"
    HOT = "hot air"
    BELOW_TOO_YOUNG = "the coat below was young"
    WINDOW_MISSED = "the window had closed"
    NOT_SCUFFED = "not scuffed"
    NOT_WIPED = "not wiped off"
    STOOD_LONGER = "stood longer than where it is sound"
    UNSUITED_BELOW = "what is below does not suit"
    OIL_BELOW = "oil or stain below"
    UNWASHED_BELOW = "unwashed below"
    BARRIER_LEFT_OUT = "no barrier over what needed one"
    THICK = "thick coat"
    FILM_IN_ALL = "too much film in all"
    OLD_CONTAINER = "old can"
    DOUBTFUL_CAN = "a doubtful can or mix"
    OTHER_CAN = "another can than where it is sound"
    NOT_STIRRED = "not stirred"
    ADDED = "something added to the mix"
    TOOL = "what was in the tool"
    OTHER_GRIT = "another paper than where it is sound"
    OTHER_SCUFF = "another paper on the film than where it is sound"
    GRIT_LEFT_OUT = "a grit was left out"
    BEGAN_FINER = "began with a finer paper than where it is sound"
    OTHER_COATS = "more or fewer coats than where it is sound"
    NOT_SANDED = "not sanded"
    GLUED_UP = "glued up, and not sanded since"
    COLOURED_JOINED = "coloured after it was glued up"
    SOLID_WOOD = "solid wood"
    BUFFED_LATE = "buffed late, or not at all"
    BUFFED_EARLY = "buffed early"
    OLD_FINISH = "an old finish below"
    OTHER_AIR = "carried into other air"
    SURPLUS_BELOW = "surplus below that was not wiped off"
    OILY_WOOD = "oily wood"
    RESINOUS_WOOD = "resinous wood"
    BLOTCHY_WOOD = "blotching wood"
    OPEN_PORES = "open pores"
    WET_WOOD = "wet wood"
    IRON = "iron on tannin"
    DUSTY = "sanding in the room"
    HANDLED_EARLY = "handled early"
    SANDED_BEFORE = "sanded before"
    ONE_FACE = "one face coated more"
    GLUE_FACE_COATED = "finish on a glue face"
    EARLIER_TOO = "an earlier attempt failed so too"
    # Silicone, wax, stripper residue, a poor brush: no log can show it.
    UNSEEN = "not to be seen in a log"


class Lower(StrEnum):
    """Which layers below the one in trouble a cause may sit in; NO: it is asked of the top alone.

    COLOUR: what carries colour, down to what hides all below it; FILM: any.
    """

    NO = ""
    COLOUR = "colour"
    FILM = "film"


class Cause(Published, frozen=True):
    """One likely cause, what in the log would speak for it, and its source.

    `then`: what it asks for, and what tells it apart, where that is another thing than the remedy.
    `mend`: what mends the fault where it came from this; none: as its kind says. `time_helps`:
    whether a film that it keeps soft hardens by waiting. `seldom`: it is told of only where the log
    shows it, and asked of nobody. `lower`: in which layers below it may sit as well.
    """

    words: str
    evidence: Evidence
    source: str
    then: str = ""
    mend: tuple[str, ...] = ()
    time_helps: bool = True
    seldom: bool = False
    lower: Lower = Lower.NO


class FamilyRemedy(Published, frozen=True):
    """What mends a fault in some families of finish, and until when.

    `families` are families or class keys. `deadline`: hours after the coat within which the remedy
    works; None: at any time. `too_late`: what is left then. `puts_on`: it wets the film again, in
    air that would let a coat of it go on.
    """

    families: tuple[str, ...]
    remedies: tuple[str, ...]
    puts_on: bool = False
    deadline: Figure | None = None
    too_late: str = ""


class Outlives(StrEnum):
    """What a fault may still come from once its coat is off; NOTHING: it goes with its coat."""

    NOTHING = ""
    FILM = "film"
    WOOD = "wood"


class Blames(StrEnum):
    """What a fault teaches not to do again; NOTHING: air, hands or an accident made it.

    BOND: the finish over whatever it lies on, the wood too; COAT_BELOW: a coat on the one right
    under it; WOOD: the first coat on that wood.
    """

    NOTHING = ""
    BOND = "bond"
    COAT_BELOW = "coat below"
    WOOD = "wood"


class KnownFault(Published, frozen=True):
    """What is known of a kind of fault.

    `shows`: the failed check that it amounts to, which denies what that denies; `blocks`: what else
    it keeps a film from. `waits_for`: what must be done again before any
    other step. `answered_by`, `answered_by_checks`, `answered_by_coat`: what ends it; `mend` does
    too, unless `not_by_mending`; `on_the_way`: what the remedy names beside. `colour_first`: where
    colour lies below only a coat of colour answers it. `evened_first`: it is sanded or scuffed
    before the next coat. `bears_after`: checks after which it keeps the film from nothing that is
    laid on it, though it stays in sight. `balanced_by_coats`: a coat on the barer face helps it.
    `outlives`: taking the coat off does not end it while that is left. `rewets`: the remedy
    dissolves the film again, which dries from then on. `patch_first`: after it a small patch is
    tried and scratched before the rest. `blames`: what is told of it when it goes on again.
    `stands_h`: hours that it is left alone to harden once it was found; sooner nothing mends it.
    `colour_before_glue_up`: done again, the colour goes on before the parts are glued up.
    """

    kind: FaultKind
    name: str
    said_as: tuple[str, ...]
    means: str
    level: Level
    remedies: tuple[str, ...]
    source: str
    shows: Found | None = None
    blocks: frozenset[Stage] = frozenset()
    waits_for: str = ""
    answered_by: frozenset[Operation] = frozenset()
    on_the_way: frozenset[Operation] = frozenset()
    answered_by_checks: frozenset[Found] = frozenset()
    answered_by_coat: bool = False
    colour_first: bool = False
    evened_first: bool = False
    bears_after: frozenset[Found] = frozenset()
    balanced_by_coats: bool = False
    not_by_mending: bool = False
    outlives: Outlives = Outlives.NOTHING
    rewets: bool = False
    patch_first: bool = False
    blames: Blames = Blames.NOTHING
    stands_h: Figure | None = None
    colour_before_glue_up: bool = False
    by_family: tuple[FamilyRemedy, ...] = ()
    causes: tuple[Cause, ...] = ()

    def for_class(self, key: str, family: str) -> FamilyRemedy | None:
        """Return the remedy for a class, by its key before its family."""
        by_key = (r for r in self.by_family if key in r.families)
        by_family = (r for r in self.by_family if family in r.families)
        return next(by_key, next(by_family, None))
