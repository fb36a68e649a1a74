"""Mix finish: two parts, thinned, or flakes in alcohol; put it on record with its end."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.evening_notes import notes_of_mixing
from finishlog.acts.mixing.can import free_container_name, put_away_long_ended
from finishlog.asks.bench.open_cans import (
    against,
    misthinned,
    mixed_words,
    open_mixes,
    pick_container,
)
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, Range
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.when import When
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.came_from import hardener_in, needs_hardener
from finishlog.core.mixing.chemistry import contents, mixed_findings
from finishlog.core.mixing.containers import Container, ContainerKind, ContainerState, MixPart
from finishlog.core.mixing.mixes import (
    Dilution,
    cut_g_per_l,
    flakes_not_weighed,
    thinned_solids,
    together,
)
from finishlog.core.mixing.recipes import MixAsked, Recipe, recipe, with_products
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote
from finishlog.core.safety.whats_in import in_container
from finishlog.core.shop.things import Product
from finishlog.errors import Ambiguous, NotFound, UsageFault
from finishlog.picking import pick_product
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.containers import add_container, change_parts, next_mix_name


class ToMix(Struct, frozen=True):
    """A mix as typed. `use_by`: a moment, or how long it lasts; `drawn_from`: a can's name."""

    product: str
    asked: MixAsked
    at: When
    name: str | None = None
    use_by: datetime | timedelta | None = None
    drawn_from: str | None = None
    batch: str = ""
    note: str = ""
    # Only tell the amounts; put nothing on record.
    tell: bool = False


class Mixed(Struct, frozen=True):
    """A mix as recorded (`act` 0: only told), its end, and what to heed.

    Amounts in ml, g and L. `made_at`: the earliest mixing; `solids_pct`: by volume once thinned.
    """

    act: int
    name: str
    product: str
    topped_up: bool
    at: When
    parts: tuple[MixPart, ...]
    ratio: str
    cut_g_per_l: float | None
    dilution: Dilution | None
    about_l: float | None
    made_at: datetime
    use_by: datetime | None
    solids_pct: Range | None
    warnings: tuple[Finding, ...]
    notes: tuple[SafetyNote, ...]
    others_open: tuple[str, ...]


def mix(context: Context, typed: ToMix) -> Mixed:
    """Record a mix, or a topping-up of the one that is named and stands open."""
    if typed.tell:
        with context.reading() as connection:
            return _told(look(context, connection), typed)
    with context.writing("mix") as ledger:
        seen = look(context, ledger.connection)
        product, made = _worked_out(seen, typed)
        if not made.parts:
            raise UsageFault(
                "how much of it?",
                f"add {Do.MIX.option(jar='500ml')}; to be told the ratio alone: "
                f"{Do.MIX.option(tell=True)}",
            )
        there = _standing_open(seen, typed.name, product)
        if there is not None:
            container = _top_up(ledger, there, made, typed)
        else:
            container = _new(ledger, seen, product, made, typed)
        after = seen.after(ledger)
        state = after.bench.cans.states[container]
        warnings = (
            *_warnings(seen, state, typed),
            *_of_the_parts(product, made, context.facts),
        )
        return replace(
            _mixed(after, state, made, typed.at),
            act=ledger.act_id,
            topped_up=there is not None,
            warnings=warnings,
            notes=notes_of_mixing(in_container(state.container, after.shop, state.events), seen),
            others_open=tuple(
                line.name
                for line in open_mixes(seen)
                if line.product == product.name and line.name != state.container.name
            ),
        )


def _told(seen: Look, typed: ToMix) -> Mixed:
    product, made = _worked_out(seen, typed)
    of = seen.facts.finish_class(product.class_key)
    container = Container(
        0,
        "",
        ContainerKind.MIX,
        product.id,
        typed.at.earliest,
        note=typed.note,
        parts=made.parts,
        drawn_from=typed.drawn_from or "",
    )
    holds = contents(in_container(container, seen.shop), seen.facts.chemistry)
    state = ContainerState(container, of, typed.at.earliest, None, None, holds=holds)
    told = _mixed(seen, state, made, typed.at)
    warnings = (
        *mixed_findings(holds, of.family, seen.facts.chemistry, done=False),
        *misthinned(state, seen.facts),
        *_of_the_parts(product, made, seen.facts),
    )
    return replace(told, warnings=warnings)


def _worked_out(seen: Look, typed: ToMix) -> tuple[Product, Recipe]:
    """Work out the amounts, with the cut of the jar that it is thinned from."""
    product, asked = pick_product(seen.shop, typed.product), typed.asked
    if typed.drawn_from is not None:
        source = pick_container(seen.shop, typed.drawn_from)
        cut = cut_g_per_l(source.parts, seen.facts.mixing)
        if asked.thin_to is not None and cut is None:
            raise UsageFault(
                f"no cut of {source.name} is on record", f"type it: {Do.MIX.option(from_='2lb')}"
            )
        asked = replace(asked, thin_from=cut if asked.thin_to is not None else None)
    try:
        made = recipe(asked, seen.facts.mixing)
    except ValueError as fault:
        raise UsageFault(str(fault), f"{Do.MIX(help=True)} shows the forms") from None
    names = {p.name.casefold(): p.id for p in seen.shop.products.values()}
    return product, replace(made, parts=with_products(made.parts, names))


def _standing_open(seen: Look, name: str | None, product: Product) -> ContainerState | None:
    """Find the mix that is named and stands open; UsageFault when it holds something else."""
    if name is None:
        return None
    try:
        known = pick_container(seen.shop, name)
    except (NotFound, Ambiguous):
        return None
    state = seen.bench.cans.states.get(known.id)
    if state is None or not state.is_open_mix or known.name.casefold() != name.casefold():
        return None
    if known.product != product.id:
        holds = seen.shop.products[known.product].name
        raise UsageFault(
            f"{known.name} holds {holds}", f"another name, or: {Do.CAN_EMPTIED(known.name)}"
        )
    return state


def _top_up(ledger: Ledger, there: ContainerState, made: Recipe, typed: ToMix) -> int:
    if typed.use_by is not None:
        raise UsageFault(
            f"{there.container.name} is topped up: the age of the first mixing counts",
            f"to change its end: {Do.CAN_EDIT(there.container.name, use_by='4h')}",
        )
    can = there.container
    ledger.record(
        ContainerEvent(
            when=typed.at, container=can.id, deed=ContainerDeed.TOPPED_UP, note=typed.note
        )
    )
    change_parts(ledger, can, together(can.parts, made.parts))
    return can.id


def _new(ledger: Ledger, seen: Look, product: Product, made: Recipe, typed: ToMix) -> int:
    name = typed.name or next_mix_name(ledger.connection)
    name, _ = free_container_name(ledger, seen, name)
    source = pick_container(seen.shop, typed.drawn_from) if typed.drawn_from else None
    container = add_container(
        ledger,
        Container(
            0,
            name,
            ContainerKind.MIX,
            product.id,
            typed.at.earliest,
            use_by_at=_end(typed),
            amount_ml=1000 * made.about_l if made.about_l else None,
            batch=typed.batch or (source.batch if source else ""),
            note=typed.note,
            parts=made.parts,
            drawn_from=source.name if source else "",
        ),
    )
    ledger.record(ContainerEvent(when=typed.at, container=container, deed=ContainerDeed.MIXED))
    put_away_long_ended(ledger, seen)
    return container


def _end(typed: ToMix) -> datetime | None:
    """Return the end that a label or the person gives; UsageFault when that is before the mix."""
    if typed.use_by is None:
        return None
    made = typed.at.earliest
    end = made + typed.use_by if isinstance(typed.use_by, timedelta) else typed.use_by
    if end <= made:
        raise UsageFault(
            "it would end before it was mixed",
            f"type how long it lasts: {Do.MIX.option(use_by='4h')}",
        )
    return end


def _mixed(seen: Look, state: ContainerState, made: Recipe, at: When) -> Mixed:
    can, of = state.container, state.of
    return Mixed(
        act=0,
        name=can.name,
        product=seen.shop.products[can.product].name,
        topped_up=False,
        at=at,
        parts=made.parts,
        ratio=mixed_words(can, seen.facts),
        cut_g_per_l=cut_g_per_l(can.parts, seen.facts.mixing),
        dilution=made.dilution,
        about_l=made.about_l,
        made_at=state.made or at.earliest,
        use_by=state.use_by,
        solids_pct=thinned_solids(of.solids_vol_pct, can.parts) if of.solids_vol_pct else None,
        warnings=(),
        notes=(),
        others_open=(),
    )


def _warnings(seen: Look, state: ContainerState, typed: ToMix) -> tuple[Finding, ...]:
    """Return what to heed about the mix, and about the can that it was drawn from."""
    found = list(against(state, seen.bench.now, seen.facts))
    if typed.drawn_from is not None:
        source = seen.bench.cans.states.get(pick_container(seen.shop, typed.drawn_from).id)
        found += against(source, typed.at.latest, seen.facts) if source else ()
    return tuple(found)


def _of_the_parts(product: Product, made: Recipe, facts: Facts) -> Iterator[Finding]:
    """Yield what to heed about what goes into it."""
    names = [part.name for part in made.parts]
    needs = needs_hardener(facts.finish_class(product.class_key))
    if needs and not hardener_in(made.parts, names, facts.chemistry):
        yield finding("no-hardener", Level.CAUTION, COMMON_PRACTICE, of=product.name)
    if flakes_not_weighed(made.parts):
        yield finding("flakes-measured", Level.CAUTION, COMMON_PRACTICE)
