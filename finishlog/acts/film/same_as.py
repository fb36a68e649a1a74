"""Log on many pieces what another one got last: product, can, thickness, method; never its time.

When it was is asked; untold it is the span since then, whose later end counts for every wait.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.logged import Instead, Logged, Same, ToLog
from finishlog.acts.film.log import log_in
from finishlog.acts.film.off import BARE, off_in
from finishlog.acts.meant.what import PRODUCT_MARK
from finishlog.acts.mixing.can import NONE
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Coat, Work
from finishlog.core.log.when import Sureness, When
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.shop.same_as import SameAs
from finishlog.core.shop.trade_words import plain_word
from finishlog.core.zone.grouping import typed_as
from finishlog.errors import Ambiguous, NotFound, UsageFault
from finishlog.picking import pick_parts, pick_zones
from finishlog.store.log.ledger import Ledger

# Said of a film that was sanded, it may be any of these: the coat stays, or the wood is bare.
_SANDED_BACK = frozenset(
    {"sanded-back", "sand-back", "sanded", "sanded-down", "rubbed-back", "cut-back", "rubbed-down"}
)
SCUFFED, LEVELLED, TO_BARE = "scuffed", "levelled", "bare wood"
_HOW_FAR = (SCUFFED, LEVELLED, TO_BARE)


class Model(Struct, frozen=True):
    """What the piece got last that is to be done again: its name, the entry, its faces."""

    label: str
    entry: Coat | Work
    faces: tuple[str, ...] = ()


def parts_meant(context: Context, typed: Sequence[str]) -> None:
    """Resolve the parts alone: what is misnamed is asked before what hangs on it."""
    with context.reading() as connection:
        pick_parts(look(context, connection).shop, typed)


def same_meant(context: Context, typed: SameAs) -> When:
    """Return when that was which is done again; faults as `log_same` raises them."""
    with context.reading() as connection:
        now = look(context, connection)
        _others(now, typed)
        return _model(now, typed.like).entry.when


def log_same(
    context: Context, typed: SameAs, *, at: When | None, note: str, how: str, sure: bool
) -> Logged:
    """Record it, and what was done instead on what is left out, in one act.

    `how`: how far what was sanded back was sanded; empty: as it was said.
    """
    with context.writing("log") as ledger:
        now = look(context, ledger.connection)
        model = _model(now, typed.like)
        others = _others(now, typed)
        _how_far(typed, how)
        when = at or _since_then(now, model, others)
        done = log_in(ledger, now, _to_log(now, model, others, when, note, sure=sure))
        instead = _instead(ledger, now, typed, when, how)
        like = Same(model.label, model.entry.act, at is not None, typed.but, instead)
        return replace(done, same=like)


def _model(now: Look, typed: str) -> Model:
    """Find what one piece got last: a coat, or work by hand."""
    picked = pick_zones(now.shop, now.bench, [typed], None)
    label = ", ".join(picked.labels)
    if len(picked.pieces) != 1:
        raise UsageFault(f"{label} is more than one piece", "same as ONE piece, such as doors:3")
    got = [e for e in now.log.entries if e.targets & picked.targets and isinstance(e, Coat | Work)]
    if not got:
        raise NotFound(f"nothing is on record on {label}", f"{Do.LOG(typed, 'WHAT')}")
    last = max(got, key=lambda e: e.when.order)
    zones = [z for z in now.bench.zones if z.target in picked.targets]
    faces = dict.fromkeys(z.face.name for z in zones if z.target in last.targets)
    every = {z.face.name for z in zones}
    return Model(label, last, () if set(faces) == every else tuple(faces))


def _others(now: Look, typed: SameAs) -> tuple[str, ...]:
    """Return what was named without what is left out and without the model, as it is typed."""
    out = {(p.id, n) for p, c in pick_parts(now.shop, (*typed.but, typed.like)) for n in c.pieces}
    found = []
    for part, chosen in pick_parts(now.shop, typed.parts):
        left = [n for n in chosen.pieces if (part.id, n) not in out]
        if left:
            found.append(typed_as(part, left))
    if not found:
        raise UsageFault("nothing is left to log", "name the pieces that got the same")
    return tuple(found)


def _since_then(now: Look, model: Model, others: Sequence[str]) -> When:
    """Return the span in which it was if nobody says when: since the model, and what lies below."""
    picked = pick_zones(now.shop, now.bench, others, None)
    mine = [z for z in now.bench.zones if z.target in picked.targets]
    before = [z.top.coat.when.latest for z in mine if z.top is not None]
    first = max((model.entry.when.earliest, *before))
    return When(min(first, now.bench.now), now.bench.now, Sureness.PART_OF_DAY)


def _to_log(
    now: Look, model: Model, others: tuple[str, ...], when: When, note: str, *, sure: bool
) -> ToLog:
    of, face = model.entry, ",".join(model.faces) or None
    if isinstance(of, Work):
        words = (*others, of.operation.value)
        return ToLog(words, when, face, grit=of.grit, kept=of.kept, note=note, sure=sure)
    can = now.shop.containers.get(of.container) if of.container is not None else None
    return ToLog(
        (*others, f"{PRODUCT_MARK}{of.product_name}"),
        when,
        face,
        method=of.method,
        scuffed=of.scuffed_before,
        note=note,
        flooded=of.flooded,
        wet_film_um=of.wet_film_um,
        container=can.name if can else NONE,
        stirred=of.stirred,
        tool=of.tool,
        sure=sure,
    )


def _how_far(typed: SameAs, how: str) -> None:
    """Ask how far it was sanded back, before anything of it is told: Ambiguous."""
    if plain_word(typed.instead) in _SANDED_BACK and how not in _HOW_FAR:
        where = " ".join(typed.but)
        raise Ambiguous(
            f"{typed.instead!r} on {where} may be {SCUFFED} (the coat stays), {LEVELLED}, or down "
            f"to {TO_BARE}",
            f"say which behind but: {where} {' | '.join(_HOW_FAR)}",
            typed.instead,
            _HOW_FAR,
        )


def _instead(ledger: Ledger, now: Look, typed: SameAs, when: When, how: str) -> Instead | None:
    """Record what was done on what is left out; None: nothing was said of it."""
    said = how or typed.instead
    if not said:
        return None
    after = now.after(ledger)
    if plain_word(said) in {plain_word(TO_BARE), BARE, "to-bare-wood", "to-bare"}:
        off = off_in(
            ledger,
            after,
            parts=typed.but,
            to=BARE,
            operation=Stripping.SAND_THROUGH,
            face=None,
            at=when,
            note="",
        )
        return Instead(", ".join(off.labels), TO_BARE, off.warnings, off.after)
    level = plain_word(said) == plain_word(LEVELLED)
    words = (*typed.but, Operation.SAND.value if level else said)
    done = log_in(ledger, after, ToLog(words, when, note=LEVELLED if level else ""))
    deed = LEVELLED if level else done.operation.value
    return Instead(", ".join(done.labels), deed, done.warnings, done.after)
