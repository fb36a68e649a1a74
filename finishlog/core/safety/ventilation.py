"""What leaves a coat, what the air of its room comes to, and how much air it would take.

Dilution ventilation as the ACGIH manual and 29 CFR 1910.94 count it, in L, g, m³, hours and ppm by
volume at 21 °C. It is an average of a room: at the face and near the floor there is far more. It
never says that air is safe; where dilution is no answer it gives no figure (`no_figure`).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from enum import StrEnum

from msgspec import Struct

from finishlog.core.published.vapours import Solvent

# A mole of vapour at 21 °C (70 °F) fills so many litres: 387 ft³ a pound-mole.
MOLAR_L = 24.1
# The US spray rule holds vapour below a quarter of the lower explosive limit; for a room where
# somebody works it is a tenth (29 CFR 1915.35 twin; the IDLH of the NIOSH Pocket Guide).
_QUARTER = 4.0
TENTH = 0.1
# Rooms mix badly: 1 perfectly, 10 hardly; this where nobody told.
WORST_MIXING = 10.0
# The day that a day's limit is meant for.
DAY_H = 8.0
# Below this, dilution is no answer; up to the other it is a poor one (ACGIH manual, chapter 2).
_NO_ANSWER_PPM = 50.0
_POOR_PPM = 100.0
# Of what leaves, so much and more is a main part.
_MAIN = 0.1


class Vented(Struct, frozen=True):
    """A room's air: volume (m³), measured exhaust (m³/h; None: none measured), mixing 1 to 10."""

    volume_m3: float
    exhaust_m3_h: float | None = None
    mixing: float = WORST_MIXING

    @property
    def changes_h(self) -> float:
        """How often an hour its air is changed as it really mixes."""
        return (self.exhaust_m3_h or 0.0) / self.mixing / self.volume_m3


class Leaves(Struct, frozen=True):
    """So much of a solvent (ml of the liquid) leaves."""

    solvent: Solvent
    ml: float

    @property
    def vapour_l(self) -> float:
        """Its vapour at 21 °C."""
        return vapour_l(self.ml * self.solvent.density, self.solvent.molar_mass)


class Release(Struct, frozen=True):
    """What leaves evenly from an hour on, for so many `hours` (over 0)."""

    leaves: tuple[Leaves, ...]
    start_h: float = 0.0
    hours: float = 1.0


def vapour_l(grams: float, molar_mass: float) -> float:
    """Return the vapour (L, 21 °C) of so many grams; g/mol."""
    return MOLAR_L * grams / molar_mass


def all_vapour_l(leaves: Iterable[Leaves]) -> float:
    """Return the vapour of all that leaves (L)."""
    return math.fsum(each.vapour_l for each in leaves)


def mixed_lel_pct(leaves: Sequence[Leaves]) -> float:
    """Return the lower explosive limit (%) of a mixture of vapours (Le Chatelier)."""
    return all_vapour_l(leaves) / math.fsum(e.vapour_l / e.solvent.lel_pct for e in leaves)


def air_for_fire(vapour: float, lel_pct: float, safety: float = _QUARTER) -> float:
    """Return the air that keeps vapour at 1/`safety` of its limit, in the unit of the vapour.

    29 CFR 1910.94(c)(6)(ii): 4 (100 - LEL) / LEL for each part of vapour.
    """
    return safety * (100 - lel_pct) / lel_pct * vapour


def exhaust_for_fire(vapour: float, lel_pct: float, safety: float = _QUARTER) -> float:
    """Return what a fan draws for that: the air, and the vapour in it (ACGIH manual)."""
    return air_for_fire(vapour, lel_pct, safety) + safety * vapour


def exhaust_for_health(vapour: float, limit_ppm: float, mixing: float) -> float:
    """Return the exhaust that holds a steady vapour at a limit, in the unit of the vapour.

    Q = (G / C) K; in pints and ft³/min 403 × 10⁶ × SG × ER × K / (MW × C).
    """
    return vapour / (limit_ppm * 1e-6) * mixing


def share_of_limits(found: Iterable[tuple[float, float]]) -> float:
    """Return the sum of amounts over their limits; of concentrations over 1 is too much.

    29 CFR 1910.1000(d)(2)(i), for what harms alike.
    """
    return math.fsum(amount / limit for amount, limit in found)


def risen(changes_h: float, hours: float) -> float:
    """Return for how many hours' vapour a room holds after `hours` of steady release.

    (1 - e^(-nt)) / n for n air changes an hour; without exhaust all of it. Times the vapour of an
    hour over the volume it is the concentration: C = (G / Q')(1 - e^(-Q't/V)).
    """
    n = changes_h * hours
    return hours * (-math.expm1(-n) / n if n else 1.0)


def purge_h(room: Vented, times: float) -> float | None:
    """Return the hours until vapour has fallen to 1/`times` of it, K (V / Q) ln; None: no exhaust.

    Only from when the film gives off no more, and only with clean air coming in.
    """
    return math.log(times) / room.changes_h if room.changes_h else None


def highest(releases: Sequence[Release], room: Vented, of: Sequence[float]) -> float:
    """Return the highest that a sum of releases comes to (L/m³), `of` each so many litres.

    Between two turns of the releases it runs straight to where it would stay, so it is highest at
    one of them.
    """
    turns = {t for r in releases for t in (r.start_h, r.start_h + r.hours)}
    amounts = list(zip(releases, of, strict=True))
    return max((at_hour(amounts, room, t) for t in turns), default=0.0)


def at_hour(amounts: Iterable[tuple[Release, float]], room: Vented, hour: float) -> float:
    """Return what releases of so many litres each come to (L/m³) at an hour of the day."""
    found = 0.0
    for release, litres in amounts:
        since = hour - release.start_h
        if since > 0:
            during = min(since, release.hours)
            left = math.exp(-room.changes_h * (since - during))
            found += litres / release.hours * risen(room.changes_h, during) * left
    return found / room.volume_m3


def day_average(releases: Sequence[Release], room: Vented, of: Sequence[float]) -> float:
    """Return the average (L/m³) over the eight hours from the first release on.

    For whoever stays in it: nobody says who leaves.
    """
    first = min((r.start_h for r in releases), default=0.0)
    return sum(
        litres * _hours_held(r.start_h - first, r.hours, room.changes_h)
        for r, litres in zip(releases, of, strict=True)
    ) / (DAY_H * room.volume_m3)


def _hours_held(after: float, hours: float, changes_h: float) -> float:
    """Return for how many hours a litre that is released hangs in the air, within the day."""
    during = max(0.0, min(hours, DAY_H - after))
    then = max(0.0, DAY_H - after - hours)
    n = changes_h * during
    # The integral of `risen`, by its series where the air hardly changes.
    rise = 0.5 - n / 6 + n * n / 24 if n < 1e-3 else (1 + math.expm1(-n) / n) / n
    return (during**2 * rise + risen(changes_h, during) * risen(changes_h, then)) / hours


class Governs(StrEnum):
    """Which answer asks for more air."""

    FIRE = "fire"
    HEALTH = "health"


class Weighs(StrEnum):
    """What the average of a room's air comes to. None of them says that it is safe."""

    UNDER = "under the limits"
    OVER_DAY = "over the day's limit"
    NOT_ENOUGH = "not enough air"


class Air(Struct, frozen=True):
    """What a room's air comes to. Shares are of a limit: 1 is at it.

    `shut_ppm`, `of_lel_shut`: without any exhaust. `of_lel`: of the lower explosive limit; of the
    limits of 15 minutes (`of_short`, None: none is known) and of the day (`of_day`, over eight
    hours; `day_highest`, at its highest). `fire_m3_h`, `health_m3_h`: what exhaust it would take.
    """

    vapour_l: float
    shut_ppm: float
    of_lel_shut: float
    highest_ppm: float
    of_lel: float
    of_short: float | None
    of_day: float
    day_highest: float
    fire_m3_h: float
    health_m3_h: float

    @property
    def governs(self) -> Governs:
        """Which of the two answers asks for more."""
        return Governs.FIRE if self.fire_m3_h > self.health_m3_h else Governs.HEALTH

    @property
    def needs_m3_h(self) -> float:
        """The exhaust that it would take."""
        return max(self.fire_m3_h, self.health_m3_h)

    @property
    def weighs(self) -> Weighs:
        """What it comes to, by the first limit that is passed."""
        if self.of_lel > TENTH or (self.of_short or 0.0) > 1:
            return Weighs.NOT_ENOUGH
        return Weighs.OVER_DAY if self.of_day > 1 else Weighs.UNDER

    @property
    def times_over(self) -> float:
        """How many times the limit that binds first is passed; up to 1 none is."""
        return max(self.of_lel / TENTH, self.of_short or 0.0, self.of_day)


def air_of(releases: Sequence[Release], room: Vented) -> Air:
    """Work out what the air of a room comes to, and what it would take."""
    all_l = [all_vapour_l(r.leaves) for r in releases]
    lel = [share_of_limits((e.vapour_l, e.solvent.lel_pct) for e in r.leaves) for r in releases]
    day = [share_of_limits((e.vapour_l, e.solvent.day_ppm) for e in r.leaves) for r in releases]
    short = [_short(r.leaves) for r in releases]
    shut = Vented(room.volume_m3)
    return Air(
        vapour_l=math.fsum(all_l),
        shut_ppm=1e3 * highest(releases, shut, all_l),
        of_lel_shut=0.1 * highest(releases, shut, lel),
        highest_ppm=1e3 * highest(releases, room, all_l),
        # L/m³ are tenths of a per cent.
        of_lel=0.1 * highest(releases, room, lel),
        of_short=1e3 * highest(releases, room, short) if any(short) else None,
        of_day=1e3 * day_average(releases, room, day),
        day_highest=1e3 * highest(releases, room, day),
        fire_m3_h=max((_fire(r) for r in releases), default=0.0),
        health_m3_h=max((_health(r, room.mixing) for r in releases), default=0.0),
    )


def _short(leaves: Iterable[Leaves]) -> float:
    known = ((e.vapour_l, e.solvent.short_ppm) for e in leaves)
    return share_of_limits((vapour, limit) for vapour, limit in known if limit)


def _fire(release: Release) -> float:
    if not release.leaves:
        return 0.0
    vapour_m3_h = all_vapour_l(release.leaves) / 1e3 / release.hours
    return exhaust_for_fire(vapour_m3_h, mixed_lel_pct(release.leaves))


def _health(release: Release, mixing: float) -> float:
    flows = (
        exhaust_for_health(e.vapour_l / 1e3 / release.hours, e.solvent.day_ppm, mixing)
        for e in release.leaves
    )
    return math.fsum(flows)


class NoFigure(StrEnum):
    """Why dilution is no answer, so that no figure is given."""

    SPRAYED = "sprayed"
    ISOCYANATE = "isocyanate"
    FORMALDEHYDE = "formaldehyde"
    CHLORINATED = "chlorinated solvent"
    LOW_LIMIT = "a low limit"
    UNKNOWN = "what leaves is not known"


def main_parts(leaves: Sequence[Leaves]) -> tuple[Solvent, ...]:
    """Return the solvents that are over a tenth of what leaves, the lowest limit first."""
    vapour = all_vapour_l(leaves)
    mass = math.fsum(e.ml * e.solvent.density for e in leaves)
    main = {
        e.solvent
        for e in leaves
        if e.vapour_l > _MAIN * vapour or e.ml * e.solvent.density > _MAIN * mass
    }
    return tuple(sorted(main, key=lambda solvent: (solvent.day_ppm, solvent.name)))


def is_no_answer(solvent: Solvent) -> bool:
    """Tell whether a main solvent's limit is too low for dilution."""
    return solvent.day_ppm < _NO_ANSWER_PPM


def is_poor_answer(leaves: Sequence[Leaves]) -> bool:
    """Tell whether dilution is a poor answer to what leaves."""
    return any(solvent.day_ppm <= _POOR_PPM for solvent in main_parts(leaves))


def between_h(releases: Sequence[Release], room: Vented) -> float | None:
    """Return how many hours apart such an evening may be had again and again; None: never.

    Its highest adds up to C / (1 - e^(-nt)); it stays below the limit of 15 minutes, and a tenth
    of the explosive one, or of the day where it knows no other. None too without exhaust.
    """
    air = air_of(releases, room)
    share = max(air.of_lel / TENTH, air.of_short or air.of_day)
    if not room.changes_h or share >= 1:
        return None
    return -math.log1p(-share) / room.changes_h
