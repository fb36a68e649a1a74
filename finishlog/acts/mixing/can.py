"""Put cans and jars on record, change them, and log what is done with them or befalls them."""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.acts.answers.made import Made, Shelved, a_name, in_words
from finishlog.asks.bench.open_cans import against, coats_from, pick_container
from finishlog.asks.look.look import Look, look
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.when import When
from finishlog.core.log.words import ContainerDeed
from finishlog.core.measure.quantities import millilitres
from finishlog.core.mixing.containers import Container, ContainerKind
from finishlog.core.shop.things import ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import pick_product
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.archive import archive
from finishlog.store.things.containers import add_container, put_away
from finishlog.store.things.edit import set_value
from finishlog.store.things.naming import lend_name, rename

# `log --from none` says: from no container on record.
NONE = "none"
# What was emptied so long ago leaves the lists by itself; its history stays.
_LEAVES_AFTER = timedelta(days=30)


class CanTyped(Struct, frozen=True):
    """A can or jar as typed; None: not said."""

    name: str
    product: str
    kind: ContainerKind = ContainerKind.CAN
    made: datetime | None = None
    opened: When | None = None
    amount_ml: float | None = None
    batch: str = ""
    note: str = ""


class CanChange(Struct, frozen=True):
    """What is to be different about a can; None: as it was. `use_by` may be how long it lasts."""

    made: datetime | None = None
    use_by: datetime | timedelta | None = None
    amount_ml: float | None = None
    batch: str | None = None
    note: str | None = None


class DeedDone(Struct, frozen=True):
    """What was done with a container, what speaks against it now, and the coats that it gave."""

    act: int
    name: str
    product: str
    deed: ContainerDeed
    at: When
    note: str
    findings: tuple[Finding, ...]
    coats: tuple[str, ...]


def new_can(context: Context, typed: CanTyped) -> Made:
    """Put a can or jar on record, opened or not."""
    with context.writing("can new") as ledger:
        seen = look(context, ledger.connection)
        product = pick_product(seen.shop, typed.product)
        name, lent = free_container_name(ledger, seen, typed.name)
        made = add_container(
            ledger,
            Container(
                0,
                name,
                typed.kind,
                product.id,
                typed.made,
                amount_ml=typed.amount_ml,
                batch=typed.batch,
                note=typed.note,
            ),
        )
        if typed.opened is not None:
            ledger.record(
                ContainerEvent(when=typed.opened, container=made, deed=ContainerDeed.OPENED)
            )
        put_away_long_ended(ledger, seen)
    opened = "opened" if typed.opened else ""
    batch = f"batch {typed.batch}" if typed.batch else ""
    return Made(typed.kind.value, name, in_words(product.name, batch, opened, lent))


def put_away_long_ended(ledger: Ledger, seen: Look) -> None:
    """Put away what was emptied or thrown out long ago: nothing asks for it any more."""
    before = seen.clock.now - _LEAVES_AFTER
    gone = [
        state.container.id
        for state in seen.bench.cans.states.values()
        if state.ended and state.ended.when.latest < before and not state.container.archived
    ]
    put_away(ledger, gone, seen.clock.now)


def free_container_name(ledger: Ledger, seen: Look, typed: str) -> tuple[str, str]:
    """Read a name for a new container; one that is empty lends its own. Say so when it did."""
    name = a_name(typed, "can")
    if name.casefold() == NONE:
        raise UsageFault(
            f"{name!r} is what `{Do.LOG.words(from_=True)}` calls no container", "choose another"
        )
    known = seen.bench.cans.states
    for each in seen.shop.containers.values():
        # One whose mixing was undone never was: its name is free too.
        gone = each.id not in known or known[each.id].ended
        if each.name.casefold() == name.casefold() and gone and not each.archived:
            archive(ledger, ThingKind.CONTAINER, each.id, seen.clock.now)
    lent = lend_name(ledger, ThingKind.CONTAINER, name)
    return name, f"the {name} before it is called {lent} now" if lent else ""


def edit_can(context: Context, typed: str, change: CanChange) -> Made:
    """Change what is on record about a container; what it was stays beside it."""
    if change == CanChange():
        raise UsageFault(
            "nothing to change",
            f"say what is different: {Do.CAN_EDIT.options('batch', 'amount', 'use_by')}",
        )
    with context.writing("can edit") as ledger:
        can = _picked(context, ledger, typed)[1]
        said = [_put(ledger, can, *each) for each in _columns(can, change, context.clock)]
    return Made(can.kind.value, can.name, in_words(*said))


# A column, its value, and in words how it was and how it becomes.
_Column = tuple[str, object, str, str]


def _columns(can: Container, change: CanChange, clock: Clock) -> list[_Column]:
    found: list[_Column] = []
    if change.made is not None and can.kind is ContainerKind.MIX:
        hint = f"{Do.HISTORY()} shows its number: {Do.AMEND('ACT', at='WHEN')}"
        raise UsageFault(f"{can.name} was mixed by an act, which is amended", hint)
    if change.made is not None:
        found.append(_date("made_at", can.made_at, change.made, clock))
    if change.use_by is not None:
        found.append(_date("use_by_at", can.use_by_at, _end(can, change.use_by), clock))
    if change.amount_ml is not None:
        was = millilitres(can.amount_ml) if can.amount_ml else ""
        found.append(("amount_ml", change.amount_ml, was, millilitres(change.amount_ml)))
    if change.batch is not None:
        found.append(("batch", change.batch, can.batch, change.batch))
    if change.note is not None:
        found.append(("note", change.note, can.note, change.note))
    return found


def _date(column: str, was: datetime | None, becomes: datetime, clock: Clock) -> _Column:
    words = [f"{d.astimezone(clock.zone):%Y-%m-%d %H:%M}" if d else "" for d in (was, becomes)]
    return column, becomes, words[0], words[1]


def _end(can: Container, typed: datetime | timedelta) -> datetime:
    """Return the end of a mix; UsageFault where it is none, or ends before it was made."""
    if can.kind is not ContainerKind.MIX or can.made_at is None:
        hint = f"when it is bad: {Do.CAN_CONDEMNED(can.name)}"
        raise UsageFault(f"{can.name} is no mix: it has no pot life", hint)
    end = can.made_at + typed if isinstance(typed, timedelta) else typed
    if end <= can.made_at:
        raise UsageFault(
            f"{can.name} was mixed after that",
            f"type how long it lasts: {Do.CAN_EDIT.option(use_by='4h')}",
        )
    return end


def _put(ledger: Ledger, can: Container, column: str, value: object, was: str, now: str) -> str:
    what = column.removesuffix("_at").removesuffix("_ml").replace("_", " ")
    set_value(ledger, ThingKind.CONTAINER, can.id, column, value, (was, now), what)
    return f"{what} {now}"


def rename_can(context: Context, typed: str, new: str) -> Made:
    """Give a container another name; the old one still finds it."""
    with context.writing("can rename") as ledger:
        seen, can = _picked(context, ledger, typed)
        name, lent = free_container_name(ledger, seen, new)
        rename(ledger, ThingKind.CONTAINER, can.id, name)
    return Made(can.kind.value, name, in_words(f"{can.name} still finds it", lent))


def archive_can(context: Context, typed: str) -> Made:
    """Put a container away; refused for a mix that still stands there hardening."""
    with context.writing("can archive") as ledger:
        seen, can = _picked(context, ledger, typed)
        state = seen.bench.cans.states[can.id]
        if state.is_open_mix and state.reacts:
            raise UsageFault(
                f"{can.name} still stands there and hardens",
                f"see to it first: {Do.CAN_EMPTIED(can.name)}",
            )
        archive(ledger, ThingKind.CONTAINER, can.id, context.clock.now)
    return Shelved(f"put away: {can.kind.value}", can.name)


def log_deed(context: Context, *, name: str, deed: ContainerDeed, at: When, note: str) -> DeedDone:
    """Record what was done with a container, or what befell it."""
    with context.writing(f"can {deed.value}") as ledger:
        seen, can = _picked(context, ledger, name)
        ledger.record(ContainerEvent(when=at, container=can.id, deed=deed, note=note))
        after = seen.after(ledger)
        state = after.bench.cans.states[can.id]
        return DeedDone(
            act=ledger.act_id,
            name=can.name,
            product=after.shop.products[can.product].name,
            deed=deed,
            at=at,
            note=note,
            findings=() if state.ended else against(state, context.clock.now, context.facts),
            coats=coats_from(after, can.id),
        )


def _picked(context: Context, ledger: Ledger, typed: str) -> tuple[Look, Container]:
    seen = look(context, ledger.connection)
    return seen, pick_container(seen.shop, typed)
