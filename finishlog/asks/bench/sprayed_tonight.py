"""What was sprayed this evening: guns and filters to clean, solvent in the air of the room."""

from __future__ import annotations

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Cleaned, Coat
from finishlog.core.log.where import same_words
from finishlog.core.mixing.tools import tools_in
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.safety.oily_waste import is_sprayed, overspray_heats
from finishlog.core.safety.rags import evening_of

_SOLVENT = frozenset({Hazard.FLAMMABLE, Hazard.VAPOUR})


class SprayedTonight(Struct, frozen=True):
    """One product that was sprayed this evening, and in which rooms.

    `solvent`: its vapour is in the room; `burns_dry`: its dry overspray burns like tinder;
    `heats`: what it left in filters and on paper heats like oily rags.
    """

    product: str
    rooms: tuple[str, ...]
    solvent: bool
    burns_dry: bool
    acts: tuple[int, ...]
    heats: bool = False
    # By the log every gun that it went on with was cleaned since.
    cleaned: bool = False


def sprayed_tonight(seen: Look) -> tuple[SprayedTonight, ...]:
    """Return what was sprayed this evening, in the order in which it began."""
    tonight = evening_of(seen.clock.now, seen.clock.zone)
    found: dict[str, list[Coat]] = {}
    for coat in (e for e in seen.log.entries if isinstance(e, Coat)):
        sprayed = is_sprayed(coat.method, seen.facts.finish_class(coat.figures.class_key))
        if sprayed and evening_of(coat.when.latest, seen.clock.zone) == tonight:
            found.setdefault(coat.product_name, []).append(coat)
    return tuple(_line(product, coats, seen) for product, coats in found.items())


def _line(product: str, coats: list[Coat], seen: Look) -> SprayedTonight:
    hazards = {h for coat in coats for h in hazards_of(coat, seen.shop, seen.facts)}
    reached = {target for coat in coats for target in coat.targets}
    rooms = {z.room.id for z in seen.bench.zones if z.target in reached}
    return SprayedTonight(
        product=product,
        rooms=tuple(r.name for r in seen.shop.rooms.values() if r.id in rooms),
        solvent=bool(_SOLVENT & hazards),
        burns_dry=Hazard.NITROCELLULOSE in hazards,
        acts=tuple(dict.fromkeys(coat.act for coat in coats)),
        heats=any(overspray_heats(coat, seen.shop, seen.facts) for coat in coats),
        cleaned=all(_was_cleaned(coat, seen) for coat in coats),
    )


def _was_cleaned(coat: Coat, seen: Look) -> bool:
    """Tell whether its guns were named, and each cleaned after it."""
    since = {
        same_words(name)
        for entry in seen.log.entries
        if isinstance(entry, Cleaned) and entry.when.order > coat.when.order
        for name in tools_in(entry.tool)
    }
    guns = {same_words(name) for name in tools_in(coat.tool)}
    return bool(guns) and guns <= since
