"""A batch is one act on everything that it names: recorded on all of it, or refused whole.

Random shops of two projects, random work on some of their pieces, and then a random batch with
every verb that takes parts. All invented.
"""

from __future__ import annotations

import contextlib
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishlog.acts.air.moisture import log_moisture
from finishlog.acts.air.surface import log_surface
from finishlog.acts.air.weigh import log_weight
from finishlog.acts.answers.logged import ToLog
from finishlog.acts.film.check import log_check
from finishlog.acts.film.fault import log_fault, log_mended
from finishlog.acts.film.log import log
from finishlog.acts.film.off import log_off
from finishlog.acts.pieces.handover import hand_over
from finishlog.acts.pieces.move import move
from finishlog.acts.pieces.note import log_note
from finishlog.acts.pieces.pause import resume, set_aside
from finishlog.acts.pieces.photo import log_photo
from finishlog.acts.pieces.review import log_review
from finishlog.asks.look.look import look
from finishlog.cli.pages.evening.log_page import log_page
from finishlog.cli.terminal.page import plain
from finishlog.core.finish.classes import judged_by
from finishlog.core.log.entries import Coat, Fault, Joined, Moved, Target, Work
from finishlog.core.log.when import at
from finishlog.core.log.words import FaultKind, Found, Operation, Outcome, Stripping, Test
from finishlog.core.shop.things import FaceKind, Need, Part, Step
from finishlog.errors import FinishlogError
from finishlog.store.database import Database, open_database
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_log import read_log
from finishlog.store.things.add import (
    NewFace,
    NewPart,
    add_part,
    add_product,
    add_project,
    add_room,
)
from finishlog.store.things.read_shop import read_shop
from tests.examples import examples
from tests.once import blank
from tests.shop_of import FACTS, SHELLAC, WATERBORNE
from tests.shop_on_file import CLOCK, NOW, ago, context_of
from tests.worded_in import remedy, sentence

pytestmark = pytest.mark.thorough

STEPS = (
    (),
    ("sealer", "topcoat", "topcoat"),
    ("sand", "sealer", "scuff", "topcoat"),
    ("topcoat@front", "sealer@back"),
)
PRODUCTS = {"sealer": SHELLAC, "topcoat": WATERBORNE}
NAMES = ("stool/leg", "stool/rail", "bench/leg", "stool/frame")
ALL_WORK = ("sealer", "topcoat", "sand", "scuff", "wipe", "pack", None)


@dataclass(frozen=True)
class Batch:
    """What was done before, and the pieces that are named now: part index to piece numbers."""

    steps: tuple[int, ...]
    before: tuple[tuple[str, int, tuple[int, ...], str], ...]
    named: tuple[tuple[int, tuple[int, ...]], ...]
    word: str | None
    verb: str

    @property
    def typed(self) -> tuple[str, ...]:
        """The batch as it is typed."""
        return tuple(f"{NAMES[p]}:{','.join(map(str, n))}" for p, n in self.named)


@st.composite
def batches(draw: st.DrawFn) -> Batch:
    pieces = st.sets(st.integers(1, 3), min_size=1).map(lambda s: tuple(sorted(s)))
    doing = st.sampled_from(["sealer", "topcoat", "sand", "scuff", "fault", "glue"])
    did = st.tuples(doing, st.integers(0, 2), pieces, st.sampled_from(["", "front", "back"]))
    parts = draw(st.lists(st.integers(0, 3), min_size=1, max_size=4, unique=True))
    return Batch(
        steps=tuple(draw(st.integers(0, 3)) for _ in range(4)),
        before=tuple(draw(st.lists(did, max_size=5))),
        named=tuple((part, draw(pieces)) for part in parts),
        word=draw(st.sampled_from(ALL_WORK)),
        verb=draw(st.just("log") | st.sampled_from(sorted(VERBS))),
    )


@contextmanager
def kept(told: Batch) -> Iterator[tuple[Database, tuple[Part, ...]]]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.db"
        path.write_bytes(blank())
        database = open_database(path, NOW)
        with database.writing("part new", "", ago(99), CLOCK.zone.key) as ledger:
            products = _furnish(ledger, told)
        with database.reading() as connection:
            parts = read_shop(connection, NOW).parts
        for n, (doing, part, numbers, face) in enumerate(told.before):
            with database.writing("log", doing, ago(90 - n), CLOCK.zone.key) as ledger:
                _happen(ledger, 90 - n, doing, parts[part], parts, numbers, face, products)
        yield database, parts


def _furnish(ledger: Ledger, told: Batch) -> dict[str, int]:
    c, begun = ledger.connection, ago(99)
    products = {name: add_product(c, name, of, begun) for name, of in PRODUCTS.items()}
    room = add_room(c, "shop")
    add_room(c, "loft")
    projects = {name: add_project(c, name, begun) for name in ("stool", "bench")}
    faces = (
        (NewFace("front"), NewFace("back"), NewFace("tenon", FaceKind.JOINT)),
        (NewFace("front"), NewFace("back"), NewFace("edges", FaceKind.EDGE)),
        (NewFace("front"),),
    )
    ids: list[int] = []
    for n, path in enumerate(NAMES):
        project, name = path.split("/")
        steps = tuple(_step(w, products, p) for p, w in enumerate(STEPS[told.steps[n]], 1))
        needs = tuple(Need(each, 1) for each in ids[:2]) if n == 3 else ()
        of = () if needs else faces[n]
        new = NewPart(name, 3, "ash", of, steps, needs=needs, room=room)
        ids.append(add_part(c, projects[project], new, begun))
    return products


def _step(word: str, products: dict[str, int], place: int) -> Step:
    name, _, face = word.partition("@")
    if name in products:
        return Step(place, Operation.COAT, products[name], (face,) if face else ())
    return Step(place, Operation(name))


def _happen(
    ledger: Ledger,
    hours: float,
    doing: str,
    part: Part,
    parts: tuple[Part, ...],
    numbers: tuple[int, ...],
    face: str,
    products: dict[str, int],
) -> None:
    when = at(ago(hours))
    targets = {
        Target(piece.id, zone.id)
        for piece in part.pieces
        if piece.number in numbers
        for each in part.faces
        if each.kind is not FaceKind.JOINT and (not face or each.name in {face, "front"})
        for zone in each.zones
    }
    if doing in products:
        figures = judged_by(FACTS.finish_class(PRODUCTS[doing]), {}, None, FACTS.version)
        ledger.record(Coat(when=when, targets=targets, product=products[doing], figures=figures))
    elif doing == "fault":
        ledger.record(Fault(when=when, targets=targets, what=FaultKind.RUN))
    elif doing == "glue":
        made = numbers[0] - 1
        members = [p.pieces[made].id for p in parts[:2]]
        frame = next(p for p in parts if p.needs)
        zones = {
            Target(p.pieces[made].id, z.id) for p in parts[:2] for f in p.faces for z in f.zones
        }
        ledger.record(
            Joined(when=when, targets=zones, into=frame.pieces[made].id, members=frozenset(members))
        )
    else:
        ledger.record(Work(when=when, targets=targets, operation=Operation(doing)))


def _with(verb: Callable[..., Any], **more: Any) -> Callable[[Database, Batch], Any]:
    def act(database: Database, told: Batch) -> Any:
        return verb(context_of(database), parts=told.typed, at=at(NOW), **more)

    return act


def _log(database: Database, told: Batch) -> Any:
    words = (*told.typed, told.word) if told.word else told.typed
    return log(context_of(database), ToLog(words, at(NOW)))


VERBS: dict[str, Callable[[Database, Batch], Any]] = {
    "log": _log,
    "check": _with(log_check, face=None, found=Found.DRY, test=Test.TOUCH, place=""),
    "fault": _with(log_fault, kind=FaultKind.RUN, place="", remedy="", face=None),
    "mended": _with(log_mended, place="", note="", face=None),
    "off": _with(log_off, to="bare", operation=Stripping.STRIP, face=None, note=""),
    "off to": _with(log_off, to="sealer", operation=Stripping.SAND_THROUGH, face=None, note=""),
    "move": _with(move, room="loft"),
    "aside": _with(set_aside, next_time=""),
    "resume": _with(resume),
    "note": _with(log_note, text="words", outcome=False),
    "moisture": _with(log_moisture, face=None, moisture_pct=9.0),
    "weigh": _with(log_weight, weight_g=640.0),
    "surface": _with(log_surface, face=None, temperature_c=18.0),
    "handover": _with(hand_over, note=""),
    "review": _with(log_review, face=None, outcome=Outcome.GOOD, text=""),
    "photo": _with(log_photo, face=None, path="picture.jpg", text=""),
}


# Two members of one glued-up stool are two pieces: the coat is due on the rail alone.
GLUED = Batch(
    steps=(0, 0, 0, 1),
    before=(("glue", 0, (1,), ""), ("sealer", 0, (1,), "")),
    named=((0, (1,)), (1, (1,))),
    word="sealer",
    verb="log",
)

# A glued-up frame is carried beside one of its own legs: its rail goes with it.
CARRIED = Batch(
    steps=(0, 0, 0, 0),
    before=(("glue", 0, (1,), ""),),
    named=((0, (1,)), (1, (2,)), (2, (1,)), (3, (1,))),
    word="sealer",
    verb="move",
)


@examples(100)
@given(batches())
@example(GLUED)
@example(CARRIED)
def test_every_piece_that_was_named_is_recorded_or_the_whole_act_is_refused(told: Batch):
    with kept(told) as (database, parts):
        by_path = {part.path: part for part in parts}
        named = {
            piece.id: part
            for n, numbers in told.named
            for part in (by_path[NAMES[n]],)
            for piece in part.pieces
            if piece.number in numbers
        }
        before, frames = _entries(database, parts), _members(database, parts)
        recorded_it = True
        try:
            VERBS[told.verb](database, told)
        except FinishlogError:
            recorded_it = False
        if not recorded_it:
            assert _entries(database, parts) == before
            return
        recorded = [e for e in _entries(database, parts) if e not in before]
        reached = {t.piece for e in recorded for t in e.targets}
        moved = {p for e in recorded if isinstance(e, Moved) for p in e.pieces}
        # A frame that is carried takes its wood along.
        reached |= moved.union(*(frames.get(piece, ()) for piece in moved))
        for piece, part in named.items():
            wood = frames.get(piece, set()) if part.needs else {piece}
            assert wood & reached, (part.path, piece, told.typed)
            if told.verb not in {"log", "mended"}:
                assert wood <= reached, (part.path, piece, told.typed)


# A fault that was found twice is one (drawn by a search).
TWICE = Batch(
    steps=(0, 0, 0, 0),
    before=(("sealer", 0, (1,), ""), ("fault", 0, (1,), ""), ("fault", 0, (1,), "")),
    named=((0, (1,)),),
    word="sealer",
    verb="log",
)


@examples(50)
@given(batches())
@example(TWICE)
def test_the_answer_counts_the_pieces_and_warns_of_nothing_twice(told: Batch):
    with kept(told) as (database, _):
        answer = None
        with contextlib.suppress(FinishlogError):
            answer = _log(database, told)
        if answer is None:
            return
        assert answer.recorded == answer.named > 0
        warned = [(f.level, str(sentence(f)), str(remedy(f))) for f in answer.warnings]
        assert len(set(warned)) == len(warned)
        assert all(f.on or f.get_out for f in answer.warnings if answer.operation != "glue-up")
        page = plain(log_page(answer, CLOCK, verbose=False)).splitlines()
        assert len(set(page)) == len(page)


def _entries(database: Database, parts: tuple[Part, ...]) -> list[Any]:
    with database.reading() as connection:
        return list(read_log(connection, [p.id for part in parts for p in part.pieces]).entries)


def _members(database: Database, parts: tuple[Part, ...]) -> dict[int, set[int]]:
    """Return what wood the pieces of the frame are or will be made of."""
    with database.reading() as connection:
        seen = look(context_of(database), connection)
    found: dict[int, set[int]] = {}
    for glue_up in seen.bench.glue_ups:
        found.setdefault(glue_up.piece.id, set()).update(glue_up.members)
    for zone in seen.bench.zones:
        if zone.joined:
            found.setdefault(zone.piece.id, set()).add(zone.member_piece.id)
    return found
