"""Random logs over random shops: what must hold whatever happened.

The shops and their work are random; the figures are the published ones.
"""

from __future__ import annotations

from dataclasses import dataclass

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.bench.state import BenchState, bench_state
from finishlog.core.findings import Answer, Level
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Coat, Reading
from finishlog.core.log.when import When
from finishlog.core.log.words import Found, Operation, RagsDeed
from finishlog.core.shop.things import Log
from finishlog.core.zone.verdict import MAY_ACT
from tests.examples import examples
from tests.shop_of import (
    FACTS,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    at,
)
from tests.worded_in import because, sentence

CLASSES = st.sampled_from([SHELLAC, WATERBORNE, VARNISH, LINSEED, LACQUER, STAIN, WAX])
BY_HAND = st.sampled_from(
    [Operation.SAND, Operation.SCUFF, Operation.DENIB, Operation.WIPE, Operation.BUFF]
)
WOODS = st.sampled_from([None, "ash", "cherry", "cocobolo", "driftwood"])
# From one thing to the next, and from the last to now: minutes to weeks, all to the minute.
GAPS_MIN = st.one_of(
    st.integers(1, 60),
    st.integers(60, 12 * 60),
    st.integers(12 * 60, 96 * 60),
    st.integers(1, 20_000),
)


@dataclass(frozen=True)
class Told:
    """A random shop with what happened in it, each thing at an hour of its own."""

    story: Story
    now: float

    def look(self) -> BenchState:
        return self.story.look(self.now)


def _shop(draw: st.DrawFn) -> tuple[Story, dict[int, str]]:
    """Build a shop; each part has a product of its own that most of its coats are of."""
    story, main = Story(), {}
    for name in ("sides", "door", "lid")[: draw(st.integers(1, 3))]:
        own = draw(CLASSES)
        part = story.part(
            name,
            *draw(st.lists(st.one_of(st.just(own), st.just(own), BY_HAND, CLASSES), max_size=6)),
            pieces=draw(st.integers(1, 3)),
            faces=draw(st.sampled_from([("all round",), ("front", "back")])),
            joints=draw(st.sampled_from([(), ("tenon",)])),
            species=draw(WOODS),
            room=draw(st.sampled_from([None, 1])),
        )
        main[part.id] = own
    if len(story.parts) > 1:
        story.part("case", Operation.GLUE_UP, VARNISH, faces=(), needs={"sides": 1, "door": 1})
    if draw(st.booleans()):
        story.cold_nights(draw(st.floats(-5, 20)))
    return story, main


@st.composite
def shops(draw: st.DrawFn, read: bool | None = None) -> Told:
    """Tell of a random shop; `read`: its air is read (None: perhaps)."""
    story, main = _shop(draw)
    finished = [p for p in story.parts if p.faces]
    hour = 0.0
    for minutes in draw(st.lists(GAPS_MIN, max_size=12)):
        hour += minutes / 60
        part = draw(st.sampled_from(finished))
        kind = draw(st.sampled_from("cccccwwkkkarr"))
        if kind == "c":
            vague = draw(st.sampled_from([0, 0, minutes / 60]))
            key = draw(st.sampled_from([main[part.id]] * 3) | CLASSES)
            story.coat((hour - vague, hour), key, part)
        elif kind == "w":
            story.work(hour, draw(BY_HAND), part)
        elif kind == "k":
            story.check(hour, draw(st.sampled_from(list(Found))), part)
        elif kind == "a" and read is not False:
            story.read(hour, draw(st.floats(-2, 38)), draw(st.floats(15, 100)))
        elif kind == "r":
            story.rags(hour, draw(st.sampled_from(list(RagsDeed))))
    if read is None:
        read = draw(st.booleans())
    if read:
        celsius, rh = draw(st.floats(9, 34)), draw(st.floats(25, 70))
        # At odd seconds, so that no reading falls on the minute of anything else.
        story.steady(celsius, rh, since=-6.01, days=hour / 24 + 8)
    return Told(story, hour + draw(GAPS_MIN) / 60 + 0.001)


@examples(100)
@given(shops())
def test_every_zone_has_exactly_one_answer_of_the_closed_set(told):
    bench = told.look()
    wanted = [
        (piece.id, zone.id)
        for part in told.story.parts
        for piece in part.pieces
        for face in part.faces
        for zone in face.zones
    ]
    assert sorted(z.target for z in bench.zones) == sorted(wanted)
    for state in bench.zones:
        verdict = state.verdict
        assert verdict.answer in set(Answer)
        assert because(verdict)
        for finding in verdict.findings:
            assert finding.level in set(Level)
            assert sentence(finding)
    for due in bench.glue_ups:
        assert due.verdict.answer in set(Answer)


@examples(100)
@given(shops())
def test_every_zone_says_why_and_a_wait_says_when_or_that_it_cannot(told):
    now = at(told.now)
    for state in told.look().zones:
        verdict = state.verdict
        if verdict.low is not None and verdict.high is not None:
            assert verdict.low <= verdict.high
        if verdict.answer is Answer.DRYING and verdict.low is not None:
            assert verdict.low > now
        if verdict.answer in {Answer.BLOCKED, Answer.STALLED, Answer.SUSPECT}:
            assert verdict.high is None, "no date while a test stands against it"
        if verdict.answer is Answer.GO and verdict.closes is not None and not state.top.abraded:
            assert verdict.closes >= now
        if verdict.answer in {Answer.BLOCKED, Answer.UNDERNEATH, Answer.SUSPECT, Answer.STALLED}:
            assert any(f.level is Level.STOP for f in verdict.findings)


@examples(100)
@given(shops(), st.randoms(use_true_random=False))
def test_the_order_of_typing_does_not_matter_only_the_order_of_the_work(told, random):
    entries = list(told.story.entries)
    random.shuffle(entries)
    again = replace_typing(entries)
    past = [e for e in again if e.when.latest <= at(told.now)]
    log = Log(tuple(sorted(past, key=lambda e: e.when.order)))
    shuffled = bench_state(told.story.shop, log, FACTS, at(told.now), told.story.zone)
    assert seen(shuffled) == seen(told.look())


def replace_typing(entries: list[AnyEntry]) -> list[AnyEntry]:
    """Give the entries the ties and typing times of the order in which they stand.

    Two readings or deeds of one instant do not occur: every hour of a story is its own.
    """
    return [
        replace(
            entry,
            typed_at=at(500 + n),
            when=When(entry.when.earliest, entry.when.latest, entry.when.sureness, n),
        )
        for n, entry in enumerate(entries)
    ]


def seen(bench: BenchState) -> list[object]:
    """Return what a person sees of the shop; when a thing was typed is not of it."""
    zones = [
        (
            z.target,
            z.part.id,
            [x.coat.id for x in z.layers],
            z.progress.done,
            {s: (t.low, t.high, t.known) for s in Stage if (t := z.stages.get(s))},
            (z.verdict.answer, because(z.verdict), z.verdict.low, z.verdict.high, z.verdict.closes),
            z.verdict.findings,
        )
        for z in bench.zones
    ]
    return [zones, [(g.members, g.verdict) for g in bench.glue_ups], bench.rags]


@examples(100)
@given(shops(), st.data())
def test_a_tacky_film_never_turns_a_no_into_a_go(told, data):
    """Adding a failed touch test, now or at any hour before, never lets a person act on it."""
    before = {z.target: z for z in told.look().zones}
    part = data.draw(st.sampled_from([p for p in told.story.parts if p.faces]))
    hour = data.draw(st.floats(0, told.now) | st.just(told.now))
    told.story.check(hour, Found.TACKY, part)
    for state in told.look().zones:
        was = before[state.target].verdict.answer
        if was not in MAY_ACT:
            assert state.verdict.answer is not Answer.GO, (was, state.verdict)


@examples(100)
@given(shops())
def test_a_film_just_found_tacky_takes_no_coat(told):
    for part in [p for p in told.story.parts if p.faces]:
        told.story.check(told.now, Found.TACKY, part)
    for state in told.look().zones:
        tested = state.layers and state.top.checks and state.top.checks[-1].found is Found.TACKY
        step = state.progress.next
        asks_for_a_coat = step is not None and step.operation is Operation.COAT
        if tested and asks_for_a_coat:
            assert state.verdict.answer not in MAY_ACT


@examples(100)
@given(shops())
def test_without_any_reading_no_coat_over_a_film_is_a_plain_go(told):
    """Unknown air gives label time only: test before you coat."""
    told.story.entries[:] = [e for e in told.story.entries if not isinstance(e, Reading)]
    for state in told.look().zones:
        step = state.progress.next
        coats = step.operation is Operation.COAT if step else not state.progress.steps
        if state.layers and coats:
            assert state.verdict.answer not in {Answer.GO, Answer.SCUFF}


@examples(100)
@given(shops(read=True))
def test_nobody_is_sent_to_a_coat_sooner_than_the_labels_minimum(told):
    now = at(told.now)
    for state in told.look().zones:
        step = state.progress.next
        coats = step.operation is Operation.COAT if step else not state.progress.steps
        if not (state.layers and coats and state.verdict.answer in MAY_ACT):
            continue
        top = state.top
        label = top.coat.figures.stages.get(Stage.RECOAT)
        if label is not None:
            assert (now - top.put_on).total_seconds() / 3600 >= label.low_h - 1e-6


@examples(100)
@given(shops())
def test_rags_of_every_self_heating_coat_are_on_an_item(told):
    bench = told.look()
    on_record = {entry for item in bench.rags for entry in item.entries}
    for entry in told.story.log(told.now).entries:
        if isinstance(entry, Coat) and FACTS.finish_class(entry.figures.class_key).self_heating:
            assert entry.id in on_record


@examples(100)
@given(shops())
def test_looking_twice_sees_the_same(told):
    assert seen(told.look()) == seen(told.look())


@examples(100)
@given(shops())
def test_what_happens_on_one_part_leaves_the_films_of_the_others(told):
    """Another part's coat may hold up dusty work and a glue-up, but not change a film."""
    *others, last = [p for p in told.story.parts if p.faces]
    kept = {p.id for p in others}
    before = {z.target: [x.coat.id for x in z.layers] for z in told.look().zones}
    stages = {z.target: dict(z.stages) for z in told.look().zones}
    told.story.coat(told.now, VARNISH, last)
    for state in told.look().zones:
        if state.member.id in kept:
            assert [x.coat.id for x in state.layers] == before[state.target]
            assert dict(state.stages) == stages[state.target]
