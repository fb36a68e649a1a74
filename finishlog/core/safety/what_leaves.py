"""What of a finish leaves as vapour, by its class, its thinner and the parts of its mix.

The class's solids are taken at their low end, its solvents as `vapours.toml` assumes them: the
safety data sheet knows better, and what was told of it comes first.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.sheet import NO_SHEET, Sheet
from finishlog.core.mixing.chemistry import contents
from finishlog.core.mixing.containers import Container, MixPart
from finishlog.core.published.chemistry import Substance
from finishlog.core.published.facts import Facts
from finishlog.core.published.vapours import Solvent
from finishlog.core.safety.ventilation import Leaves, NoFigure, is_no_answer, main_parts
from finishlog.core.safety.whats_in import called, in_container, in_product
from finishlog.core.shop.things import Product, Shop

# Carriers that give off no solvent.
_NO_SOLVENT = frozenset({"water", "none"})
# What of a part is no figure for dilution, whatever else it holds.
_NEVER = {
    Substance.ISOCYANATE: NoFigure.ISOCYANATE,
    Substance.FORMALDEHYDE: NoFigure.FORMALDEHYDE,
    Substance.CHLORINATED: NoFigure.CHLORINATED,
}


class WhatLeaves(Struct, frozen=True):
    """What leaves of a finish: shares of its volume. `known`: all that leaves is known.

    `why_no_figure`: why dilution is no answer to it; None: it may be worked out. `main`: the main
    solvent with the lowest limit, where that is why.
    """

    shares: tuple[tuple[Solvent, float], ...]
    known: bool = True
    why_no_figure: NoFigure | None = None
    main: Solvent | None = None

    @property
    def is_nothing(self) -> bool:
        """Tell whether nothing that is known or suspected leaves."""
        return not self.shares and self.known and self.why_no_figure is None

    def of(self, ml: float) -> tuple[Leaves, ...]:
        """Return what leaves of so many ml of the finish."""
        return tuple(Leaves(solvent, ml * share) for solvent, share in self.shares)


def leaves_of(
    product: Product,
    container: Container | None,
    shop: Shop,
    facts: Facts,
    method: Method | None = None,
) -> WhatLeaves:
    """Return what leaves of a product, or of the can or mix that it comes from; sprayed or not."""
    shares: Mapping[Solvent, float] | None
    if container is not None and container.parts:
        shares = _of_mix(container, shop, facts, frozenset())
        holds = contents(in_container(container, shop), facts.chemistry)
    else:
        shares = _of_product(product, facts)
        holds = contents(in_product(product), facts.chemistry)
    of = facts.finish_class(product.class_key)
    found = tuple((s, share) for s, share in (shares or {}).items() if share > 0)
    known = shares is not None
    never = next((why for substance, why in _NEVER.items() if substance in holds), None)
    if never is not None:
        return WhatLeaves(found, known, never)
    if not found and known:
        return WhatLeaves((), True)
    if (method or of.methods[0]) is Method.SPRAY:
        return WhatLeaves(found, known, NoFigure.SPRAYED)
    if not known:
        return WhatLeaves(found, False, NoFigure.UNKNOWN)
    main = main_parts([Leaves(solvent, share) for solvent, share in found])
    if main and is_no_answer(main[0]):
        return WhatLeaves(found, True, NoFigure.LOW_LIMIT, main[0])
    return WhatLeaves(found)


def _of_product(product: Product, facts: Facts) -> dict[Solvent, float] | None:
    return _of_class(facts.finish_class(product.class_key), facts, product.sheet)


def solvents_of(product: Product, facts: Facts) -> tuple[Solvent, ...]:
    """Return the solvents of a product, with the limits and the flash point of its sheet."""
    return tuple(_of_product(product, facts) or ())


def _of_class(
    of: FinishClass, facts: Facts, sheet: Sheet = NO_SHEET
) -> dict[Solvent, float] | None:
    """Return what leaves of a class, by volume, as far as a sheet does not know better.

    None: not known. The limits of a sheet are those of all that leaves.
    """
    carrier, grams = sheet.carrier or of.carrier, sheet.solvent_g_per_l
    if grams == 0 or (grams is None and carrier in _NO_SOLVENT):
        return {}
    liquid = facts.vapours.of_carrier(carrier)
    if not liquid:
        return None
    solids = of.solids_vol_pct.low / 100 if of.solids_vol_pct else 0.0
    leaves = 1 - solids
    if grams is not None:
        leaves = grams / 1000 / sum(share * solvent.density for solvent, share in liquid)
    return {_with_limits(solvent, sheet): share * leaves for solvent, share in liquid}


def _with_limits(of: Solvent, sheet: Sheet) -> Solvent:
    """Return a solvent with the limits that a sheet says, each where it does."""
    return replace(
        of,
        lel_pct=sheet.lel_pct or of.lel_pct,
        day_ppm=sheet.day_ppm or of.day_ppm,
        short_ppm=sheet.short_ppm or of.short_ppm,
        flash_c=of.flash_c if sheet.flash_c is None else sheet.flash_c,
    )


def _of_mix(
    mix: Container, shop: Shop, facts: Facts, above: frozenset[int]
) -> dict[Solvent, float] | None:
    """Return what leaves of a mix by the shares of its parts; None: a part is not known."""
    found: dict[Solvent, float] = defaultdict(float)
    for part, share in _shares(mix.parts):
        of_part = _of_part(part, shop, facts, above | {mix.id})
        if of_part is None:
            return None
        for solvent, own in of_part.items():
            found[solvent] += share * own
    return found


def _shares(parts: Iterable[MixPart]) -> Iterator[tuple[MixPart, float]]:
    """Yield parts with their share of the whole: by what was poured, else by their ratio."""
    mine = tuple(parts)
    poured = [part.volume_ml for part in mine]
    by_volume = [ml for ml in poured if ml is not None]
    amounts = by_volume if len(by_volume) == len(mine) else [part.parts for part in mine]
    whole = sum(amounts) or 1.0
    yield from zip(mine, (amount / whole for amount in amounts), strict=True)


def _of_part(
    part: MixPart, shop: Shop, facts: Facts, above: frozenset[int]
) -> dict[Solvent, float] | None:
    product = shop.products.get(part.product) if part.product is not None else None
    if product is not None:
        return _of_product(product, facts)
    mix = called(part.name, shop)
    if mix is not None and mix.id not in above and mix.parts:
        return _of_mix(mix, shop, facts, above)
    if liquid := facts.vapours.of_name(part.name, facts.chemistry):
        return dict(liquid)
    known = facts.find_class(part.name)
    if len(known) == 1:
        return _of_class(facts.finish_class(known[0]), facts)
    burns = facts.chemistry.in_a_flame(facts.chemistry.in_name(part.name))
    return None if burns else {}
