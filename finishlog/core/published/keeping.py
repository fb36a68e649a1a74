"""How finishes keep and are tested, what mixing asks for; how pieces are kept meanwhile."""

from __future__ import annotations

from enum import StrEnum

from finishlog.core.finish.classes import FinishClass, Limit, Published, Sheen
from finishlog.core.finish.overcoat import named_by
from finishlog.core.log.words import FaultKind, Found, Keeping
from finishlog.core.measure.units import Cut, to_base

POUND_CUT_G_PER_L = to_base(1.0, Cut.POUND_CUT)


class Additive(Published, frozen=True):
    """What is put into a finish beside itself, and what more of it than usual makes.

    `words` of its name; `of`: classes or families; `makes`: faults, and `keeps_soft`. More than
    `usual_pct` of the rest is more than usual.
    """

    words: tuple[str, ...]
    of: tuple[str, ...]
    usual_pct: float
    source: str
    makes: frozenset[FaultKind] = frozenset()
    keeps_soft: bool = False

    def is_named(self, said: str) -> bool:
        """Tell whether words name it: `linseed oil`, `10 % retarder`."""
        words = f" {' '.join(said.casefold().replace('-', ' ').split())} "
        return any(f" {word} " in words for word in self.words)


class MixingFigures(Published, frozen=True):
    """Published figures of mixing. `volume_per_lb_cut_pct`: what 1 lb cut adds to the alcohol."""

    volume_per_lb_cut_pct: Limit
    additives: tuple[Additive, ...]

    @property
    def flakes_l_per_g(self) -> float:
        """The volume (L) that a gram of dissolved flakes takes up."""
        return self.volume_per_lb_cut_pct.value / 100 / POUND_CUT_G_PER_L


class ContainerTest(Published, frozen=True):
    """How a finish of some families is tested before it is trusted; no families: any other."""

    families: tuple[str, ...]
    test: str
    source: str


class Frost(Published, frozen=True):
    """What frost does to a finish. `stops`: nothing of it goes on before a test."""

    stops: bool
    reason: str
    remedy: str
    source: str


class Settles(Published, frozen=True):
    """What sinks to the bottom of a can, in these classes or families; `sheens`: in these alone."""

    of: tuple[str, ...]
    what: str
    shows: str
    source: str
    sheens: frozenset[Sheen] = frozenset()


class KeepingFigures(Published, frozen=True):
    """What is known about keeping finishes."""

    tests: tuple[ContainerTest, ...]
    frost_on_water: Frost
    frost_on_others: Frost
    # Finish that holds water stands no colder (°C).
    keep_above_c: Limit
    settles: tuple[Settles, ...]
    # A can that was stirred so long ago has to be stirred again (h).
    stirred_h: Limit

    def settles_in(self, of: FinishClass, sheen: Sheen | None) -> Settles | None:
        """Return what settles in a can of a class with a sheen; None: nothing known."""
        rows = (row for row in self.settles if named_by(row.of, of) is not None)
        return next((row for row in rows if not row.sheens or sheen in row.sheens), None)

    def test_for(self, family: str) -> ContainerTest:
        """Return the test of a family, or the one for any other."""
        mine = [t for t in self.tests if family in t.families]
        return (mine or [t for t in self.tests if not t.families])[0]


class Lies(StrEnum):
    """What lies open on a piece that is kept."""

    BARE_WOOD = "bare-wood"
    # A film that is not fully hard, of any class; with an oil or an oil varnish in it.
    YOUNG_FILM = "young-film"
    YOUNG_OIL = "young-oil"


class LookAgain(Published, frozen=True):
    """A look at what is kept `how`, with such a thing `of` it, after so many days and every time.

    `reason`, `remedy`: what happens else, and what to do, in words; `found`: what a look that finds
    it sound is logged as.
    """

    how: tuple[Keeping, ...]
    of: Lies
    days: Limit
    reason: str
    remedy: str
    found: Found


class KeptFigures(Published, frozen=True):
    """Figures of keeping. `no_air_h`: so long without moving air an oil is tested, not trusted."""

    look: tuple[LookAgain, ...]
    no_air_h: Limit
